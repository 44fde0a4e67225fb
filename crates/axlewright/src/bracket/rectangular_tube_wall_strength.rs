use crate::units::{Force, Length, Stress};
use crate::{Result, valid};

/// Force square to the face of a rectangular tube at which a tab along the tube yields the wall under it.
///
/// # Formula
/// `F = R_e t_w^2 (2 l / B + 4 sqrt(1 - t / B)) / (1 - t / B)`
///
/// # Parameters
/// - `yield_strength` — `R_e`, yield strength of the tube beside the weld
/// - `wall` — `t_w`, wall of the tube
/// - `face_width` — `B`, width of the face that carries the tab, on its flat part
/// - `tab_length` — `l`, length of the tab along the tube, with its welds
/// - `tab_thickness` — `t`, thickness of the tab, with its welds
///
/// # Returns
/// Force pulling or pushing at which yield lines form in the face.
///
/// # Valid for
/// - `1000000 <= yield_strength <= 2000000000`
/// - `0.0003 <= wall <= 0.05`
/// - `0.005 <= face_width <= 1`
/// - `0.001 <= tab_length <= 1`
/// - `0.0005 <= tab_thickness <= 0.5`
/// - `face_width > tab_thickness`
///
/// A tab in the middle of the face, welded all round, at least one face width from the end of the tube, whose face is at most 40 walls wide. A tab wider than 85 % of the face loads the side walls instead. Take off what the tube itself carries: the stress along it weakens the face. A force along the tab's plane at a height bends the face: this is not in here.
///
/// # Source
/// Yield lines of a plate held at both edges; EN 1993-1-8:2005, table 7.13, and AISC 360-10, table K1.2, longitudinal plate (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{bracket, units::*};
/// let force = bracket::rectangular_tube_wall_strength(
///     Stress::of::<MPa>(235.0), Length::of::<mm>(3.0), Length::of::<mm>(40.0), Length::of::<mm>(60.0), Length::of::<mm>(6.0),
/// )?;
/// assert_eq!(format!("{:.1} kN", force.in_::<kN>()), "16.6 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A suspension or seat mount that tears out of its tube can kill. Local codes and licensed practice come first.
#[inline]
pub fn rectangular_tube_wall_strength(
    yield_strength: Stress,
    wall: Length,
    face_width: Length,
    tab_length: Length,
    tab_thickness: Length,
) -> Result<Force> {
    valid! {
        yield_strength: 1e6 <= .. <= 2e9 ; "plausibility limit: metals yield between 1 MPa and 2 GPa";
        wall: 0.0003 <= .. <= 0.05 ; "plausibility limit: walls are between 0.3 mm and 50 mm";
        face_width: 0.005 <= .. <= 1 ; "plausibility limit: tubes are between 5 mm and 1 m wide";
        tab_length: 0.001 <= .. <= 1 ; "plausibility limit: tabs are between 1 mm and 1 m long";
        tab_thickness: 0.0005 <= .. <= 0.5 ; "plausibility limit: tabs are between 0.5 mm and 0.5 m thick";
        face_width > tab_thickness ; "definition: the tab stands on the face";
    }
    let free = 1.0 - (tab_thickness / face_width).si();
    let lines = (2.0 * (tab_length / face_width).si() + 4.0 * free.sqrt()) / free;
    Ok(Force::from_si(yield_strength.si() * wall.si() * wall.si() * lines))
}

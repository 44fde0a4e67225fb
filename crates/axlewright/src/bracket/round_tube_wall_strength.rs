use crate::units::{Force, Length, Stress};
use crate::{Result, cannot, valid};

/// Force square to a round tube at which a tab along the tube yields the wall under it.
///
/// # Formula
/// `F = 5.5 R_e t_w^2 (1 + 0.25 l / D)`
///
/// # Parameters
/// - `yield_strength` — `R_e`, yield strength of the tube beside the weld
/// - `wall` — `t_w`, wall of the tube
/// - `diameter` — `D`, outside diameter of the tube
/// - `tab_length` — `l`, length of the tab along the tube, with its welds
///
/// # Returns
/// Force pulling or pushing at which the wall yields round the tab.
///
/// # Valid for
/// - `1000000 <= yield_strength <= 2000000000`
/// - `0.0003 <= wall <= 0.05`
/// - `0.005 <= diameter <= 1`
/// - `0.001 <= tab_length <= 1`
/// - `diameter > wall`
///
/// A tab along the tube's axis, welded all round, at least one diameter from the end of the tube, whose diameter is at most 50 walls. A tube that carries a stress of its own along its axis is weaker: take that off. A length above four diameters gives no more than four.
///
/// # Source
/// AISC 360-10, table K1.1, longitudinal plate on round tube (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a wall of half the diameter or more
///
/// # Example
/// ```
/// use axlewright::{bracket, units::*};
/// let force = bracket::round_tube_wall_strength(Stress::of::<MPa>(350.0), Length::of::<mm>(2.5), Length::of::<mm>(38.0), Length::of::<mm>(50.0))?;
/// assert_eq!(format!("{:.1} kN", force.in_::<kN>()), "16.0 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A suspension or seat mount that tears out of its tube can kill. Local codes and licensed practice come first.
#[inline]
pub fn round_tube_wall_strength(
    yield_strength: Stress,
    wall: Length,
    diameter: Length,
    tab_length: Length,
) -> Result<Force> {
    valid! {
        yield_strength: 1e6 <= .. <= 2e9 ; "plausibility limit: metals yield between 1 MPa and 2 GPa";
        wall: 0.0003 <= .. <= 0.05 ; "plausibility limit: walls are between 0.3 mm and 50 mm";
        diameter: 0.005 <= .. <= 1 ; "plausibility limit: tubes are between 5 mm and 1 m in diameter";
        tab_length: 0.001 <= .. <= 1 ; "plausibility limit: tabs are between 1 mm and 1 m long";
        diameter > wall ; "definition: a tube has a bore";
    }
    if 2.0 * wall.si() >= diameter.si() {
        return Err(cannot!(wall, diameter; "leave no bore: the wall is half the diameter or more"));
    }
    let length = (tab_length / diameter).si().min(4.0);
    Ok(Force::from_si(5.5 * yield_strength.si() * wall.si() * wall.si() * (1.0 + 0.25 * length)))
}

use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, cannot, valid};

/// Loaded radius of a tyre: wheel centre to ground, standing.
///
/// # Formula
/// `r_l = D / 2 - F / k`
///
/// # Parameters
/// - `free_diameter` — `D`, outer diameter of the unloaded tyre at its pressure
/// - `tyre_load` — `F`, load of this one tyre on the ground
/// - `tyre_rate` — `k`, vertical, at the pressure and about that load; the maker's figure or two readings
///
/// # Returns
/// The static loaded radius: the lever arm of forces. For speed use the effective rolling radius, `rolling_radius`.
///
/// # Valid for
/// - `0.001 <= free_diameter <= 100`
/// - `0 <= tyre_load <= 10000000`
/// - `1 <= tyre_rate <= 1000000000`
///
/// Deflection is the load over the rate. A tyre is softer at first, so use the secant rate from no load up if it is known. Upright and standing: a rolling tyre grows with speed.
///
/// # Source
/// Definition of the vertical rate; ISO 8855 and SAE J670 for the term loaded radius (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where the tyre would be pressed flat to its centre
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let radius = tyre::loaded_radius(Length::of::<mm>(696.0), Force::of::<kN>(6.5), LinearStiffness::of::<N_mm>(260.0))?;
/// assert_eq!(format!("{:.0} mm", radius.in_::<mm>()), "323 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A tyre that sags more than its maker allows is overloaded or soft, heats and bursts. Load index, the maker's pressures and local codes decide.
#[inline]
pub fn loaded_radius(free_diameter: Length, tyre_load: Force, tyre_rate: LinearStiffness) -> Result<Length> {
    valid! {
        free_diameter: 0.001 <= .. <= 100 ; "plausibility limit: tyres lie between 1 mm and 100 m";
        tyre_load: 0 <= .. <= 10e6 ; "definition: the ground only pushes; plausibility limit: at most 10 MN";
        tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: tyres lie between 1 N/m and 1 GN/m";
    }
    let free_radius = free_diameter / 2.0;
    let deflection = tyre_load / tyre_rate;
    if deflection >= free_radius {
        let most = tyre_rate * free_radius;
        return Err(cannot!(
            tyre_load < most, tyre_rate, free_diameter; "presses the tyre flat: it deflects by half of free_diameter"
        ));
    }
    Ok(free_radius - deflection)
}

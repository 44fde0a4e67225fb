use crate::units::{Length, TurnsPerDistance};
use crate::{Result, cannot, valid};
use core::f64::consts::TAU;

/// Effective rolling radius of a tyre from its diameter and its loaded radius.
///
/// # Formula
/// `r = D / 2 - (D / 2 - r_l) / 3`
///
/// # Parameters
/// - `free_diameter` — `D`, outer diameter of the unloaded tyre at its pressure
/// - `loaded_radius` — `r_l`, wheel centre to ground under load
///
/// # Returns
/// Distance per turn over 2 pi, without slip. It lies between the loaded and the free radius.
///
/// # Valid for
/// - `0.001 <= free_diameter <= 100`
/// - `0.0005 <= loaded_radius <= 50`
///
/// The loaded radius lies between a quarter and a half of the free diameter. The tread lies flat on the ground and keeps the length of its arc, roughly as a diagonal tyre does. The belt of a radial tyre hardly stretches or shrinks:
/// it rolls on about 3.05 times its free diameter at any proper load, see `Tyre`. A turn counted on the road is better than both.
///
/// # Source
/// Jazar, Vehicle Dynamics: Theory and Application (2008), sec. 3.1, effective radius: `R_w = R_g - (R_g - R_h) / 3` (from memory); it is the first term of `r_0 sin(a) / a`, `cos(a) = r_l / r_0`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where the loaded radius is more than the free one or less than half of it
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let radius = tyre::rolling_radius(Length::of::<mm>(696.0), Length::of::<mm>(323.0))?;
/// assert_eq!(format!("{:.1} mm", radius.in_::<mm>()), "339.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn rolling_radius(free_diameter: Length, loaded_radius: Length) -> Result<Length> {
    valid! {
        free_diameter: 0.001 <= .. <= 100 ; "plausibility limit: tyres lie between 1 mm and 100 m";
        loaded_radius: 0.0005 <= .. <= 50 ; "plausibility limit: tyres lie between 1 mm and 100 m";
    }
    let free_radius = free_diameter / 2.0;
    if loaded_radius > free_radius || loaded_radius < free_radius / 2.0 {
        let least = free_radius / 2.0;
        return Err(cannot!(
            least <= loaded_radius <= free_radius, free_diameter;
            "does not lie between a quarter and a half of free_diameter"
        ));
    }
    Ok(free_radius - (free_radius - loaded_radius) / 3.0)
}

/// Effective rolling radius from turns counted along a distance.
///
/// # Formula
/// `r = 1 / (2 pi n)`
///
/// # Parameters
/// - `rolling_turns` — `n`, turns along a distance: a maker's revolutions per mile, or chalk marks on the floor of the shop
///
/// # Returns
/// Distance per turn over 2 pi.
///
/// # Valid for
/// - `0.001 <= rolling_turns <= 1000`
///
/// At the load, the pressure and about the speed at which the turns were counted.
///
/// # Source
/// Definition of the effective rolling radius; ISO 8855 for the term (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let radius = tyre::rolling_radius_from_turns(TurnsPerDistance::of::<rev_mile>(758.0))?;
/// assert_eq!(format!("{:.1} mm", radius.in_::<mm>()), "337.9 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn rolling_radius_from_turns(rolling_turns: TurnsPerDistance) -> Result<Length> {
    valid! {
        rolling_turns: 0.001 <= .. <= 1000 ; "plausibility limit: a tyre turns between once a kilometre and a thousand times a metre";
    }
    Ok(Length::from_si(1.0 / (TAU * rolling_turns.si())))
}

/// Turns of a tyre along a distance.
///
/// # Formula
/// `n = 1 / (2 pi r)`
///
/// # Parameters
/// - `rolling_radius` — `r`, effective rolling radius (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// Revolutions per kilometre or per mile.
///
/// # Valid for
/// - `0.001 <= rolling_radius <= 100`
///
/// Without slip.
///
/// # Source
/// Definition of the effective rolling radius; ISO 8855 for the term (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let turns = tyre::rolling_turns(Length::of::<mm>(337.9))?;
/// assert_eq!(format!("{:.0} rev/mile", turns.in_::<rev_mile>()), "758 rev/mile");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn rolling_turns(rolling_radius: Length) -> Result<TurnsPerDistance> {
    valid! {
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(TurnsPerDistance::from_si(1.0 / (TAU * rolling_radius.si())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The arc `2 a r_0` of the free tread lies on the chord `2 r_0 sin(a)`: the tyre rolls on `r_0 sin(a) / a`.
        #[test]
        fn is_the_first_term_of_the_arc_on_its_chord(free in 0.2f64..0.6, share in 0.0f64..0.15) {
            let loaded = free * (1.0 - share);
            let angle = (loaded / free).acos();
            let arc = if angle > 0.0 { free * angle.sin() / angle } else { free };
            let found = rolling_radius(Length::from_si(2.0 * free), Length::from_si(loaded)).unwrap().si();
            prop_assert!((found / arc - 1.0).abs() < 0.05 * share * share + 1e-7, "{found} {arc}");
            prop_assert!(loaded <= found && found <= free);
        }
    }
}

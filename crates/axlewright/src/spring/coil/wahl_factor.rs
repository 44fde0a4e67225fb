use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Wahl's factor: by how much curvature and direct shear raise the stress at the inside of a coil.
///
/// # Formula
/// `K = (4 C - 1) / (4 C - 4) + 0.615 / C` with the spring index `C = D / d`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
///
/// # Returns
/// The factor on the plain torsional stress `8 F D / (pi d^3)`, always above 1.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
///
/// Round wire. EN 13906-1 covers an index of 4 to 20 and uses Bergsträsser's factor `(C + 0.5) / (C - 0.75)` instead, lower by
/// 1.4 % at an index of 4, 1.2 % at 6 and 0.9 % at 10. Below an index of 3 the factor runs away and so does the making of such a spring.
///
/// # Source
/// A. M. Wahl, Mechanical Springs, 2nd ed. (1963); Shigley's Mechanical Engineering Design, ch. 10; EN 13906-1:2013 for the other factor (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let factor = spring::wahl_factor(Length::of::<mm>(14.0), Length::of::<mm>(100.0))?;
/// assert_eq!(format!("{:.3}", factor.in_::<one>()), "1.208");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn wahl_factor(wire_diameter: Length, mean_diameter: Length) -> Result<Ratio> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
    }
    let (d, diameter) = (wire_diameter, mean_diameter);
    Ok((4.0 * diameter - d) / (4.0 * (diameter - d)) + 0.615 * d / diameter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::mm;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_straight_bar_has_none_and_a_tight_coil_more(index in 1.01f64..9e3) {
            let factor = |index: f64| wahl_factor(Length::of::<mm>(1.0), Length::of::<mm>(index)).unwrap().si();
            prop_assert!(factor(index) > 1.0 && factor(index) > factor(1.001 * index));
            prop_assert!(factor(9e3) < 1.0002);
        }

        #[test]
        fn near_the_factor_of_the_standard(index in 4.0f64..20.0) {
            // Bergsträsser's factor, EN 13906-1 (from memory).
            let other = (index + 0.5) / (index - 0.75);
            let factor = wahl_factor(Length::of::<mm>(1.0), Length::of::<mm>(index)).unwrap().si();
            prop_assert!(factor > other && factor < 1.014 * other, "{factor} {other}");
        }
    }
}

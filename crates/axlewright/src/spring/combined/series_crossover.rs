use super::series_rate::series_rate;
use crate::base::table::record;
use crate::base::text::said;
use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, cannot, valid};

record! {
    /// Points at which a stack of two springs changes its rate and ends.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct SeriesCrossover {
        /// Load at which the first of the two springs is solid.
        pub crossover_load: Force,
        /// Shortening of the stack, from its free length, at that load.
        pub crossover_deflection: Length,
        /// Rate of the stack up to there.
        pub rate_below: LinearStiffness,
        /// Rate from there on: of the spring that still works.
        pub rate_above: LinearStiffness,
        /// Load at which both springs are solid.
        pub solid_load: Force,
        /// Shortening of the stack, from its free length, at that load.
        pub solid_deflection: Length,
    }
}

/// Load and deflection at which one of two stacked springs goes solid and the stack takes the rate of the other.
///
/// # Formula
/// `F_i = k_i s_i`; crossover at the smaller, `F = min(F_1, F_2)`, with `x = F / k_1 + F / k_2`; solid at the greater, with `x = s_1 + s_2`
///
/// # Parameters
/// - `first_rate` — `k_1`, rate of one spring
/// - `first_travel_to_solid` — `s_1`, its free length less its solid length, or less the length at which a stop takes over
/// - `second_rate` — `k_2`, rate of the other spring
/// - `second_travel_to_solid` — `s_2`, its free length less its solid length, or less the length at which a stop takes over
///
/// # Returns
/// See the fields of [`SeriesCrossover`].
///
/// # Valid for
/// - `1 <= first_rate <= 1000000000`
/// - `0.000001 <= first_travel_to_solid <= 100`
/// - `1 <= second_rate <= 1000000000`
/// - `0.000001 <= second_travel_to_solid <= 100`
///
/// Linear springs that go solid at once, no preload, no friction of the slider between them. Which one is solid first is decided by rate times travel, not by the rate
/// alone; the order of the two does not matter. Where both are solid at the same load there is no crossover and the call is refused.
///
/// # Source
/// Springs in series: equal force, deflections add (Hooke's law)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where both are solid at the same load
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let stack = spring::series_crossover(
///     LinearStiffness::of::<N_mm>(30.0), Length::of::<mm>(60.0), LinearStiffness::of::<N_mm>(60.0), Length::of::<mm>(120.0),
/// )?;
/// assert_eq!(format!("{:.0} N at {:.0} mm", stack.crossover_load.in_::<N>(), stack.crossover_deflection.in_::<mm>()), "1800 N at 90 mm");
/// assert_eq!(format!("{:.0}, then {:.0} N/mm", stack.rate_below.in_::<N_mm>(), stack.rate_above.in_::<N_mm>()), "20, then 60 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A stack of springs stores energy like one; keep it captive on its slider at full droop, where the softer one may go slack.
#[inline]
pub fn series_crossover(
    first_rate: LinearStiffness,
    first_travel_to_solid: Length,
    second_rate: LinearStiffness,
    second_travel_to_solid: Length,
) -> Result<SeriesCrossover> {
    valid! {
        first_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        first_travel_to_solid: 0.000001 <= .. <= 100 ; "plausibility limit: springs travel between 1 µm and 100 m";
        second_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        second_travel_to_solid: 0.000001 <= .. <= 100 ; "plausibility limit: springs travel between 1 µm and 100 m";
    }
    let (first, second) = (first_rate * first_travel_to_solid, second_rate * second_travel_to_solid);
    if (first - second).abs() <= 4.0 * f64::EPSILON * first {
        let load = said(first);
        return Err(cannot!(
            first_travel_to_solid, first_rate, second_travel_to_solid, second_rate;
            "gives no crossover: both springs are solid at the same load, {load}"
        ));
    }
    let (crossover_load, rate_above, solid_load) =
        if first < second { (first, second_rate, second) } else { (second, first_rate, first) };
    Ok(SeriesCrossover {
        crossover_load,
        crossover_deflection: crossover_load / first_rate + crossover_load / second_rate,
        rate_below: series_rate(first_rate, second_rate)?,
        rate_above,
        solid_load,
        solid_deflection: first_travel_to_solid + second_travel_to_solid,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Error;
    use crate::units::{N_mm, mm};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    #[test]
    fn solid_together_is_no_crossover_for_all_its_rounding() {
        let (a, b) = (LinearStiffness::of::<N_mm>(7.0), LinearStiffness::of::<N_mm>(21.0));
        let (s, t) = (Length::of::<mm>(33.0), Length::of::<mm>(11.0));
        let refusal = series_crossover(a, s, b, t).unwrap_err();
        assert!(
            matches!(refusal, Error::NoSolution { .. }) && refusal.to_string().contains("231"),
            "{refusal}"
        );
    }

    proptest! {
        #[test]
        fn the_order_does_not_matter_and_the_pieces_meet(a in 1.0f64..500.0, s in 1.0f64..300.0, b in 1.0f64..500.0, t in 1.0f64..300.0) {
            prop_assume!((a * s / (b * t) - 1.0).abs() > 1e-12);
            let [a, b] = [a, b].map(LinearStiffness::of::<N_mm>);
            let [s, t] = [s, t].map(Length::of::<mm>);
            let (on, swapped) = (series_crossover(a, s, b, t).unwrap(), series_crossover(b, t, a, s).unwrap());
            assert_relative_eq!(on.crossover_load.si(), swapped.crossover_load.si());
            assert_relative_eq!(on.rate_above.si(), swapped.rate_above.si());
            // Along the two straight pieces to the end.
            let at_crossover = on.rate_below * on.crossover_deflection;
            assert_relative_eq!(at_crossover.si(), on.crossover_load.si(), max_relative = 1e-12);
            let at_solid = at_crossover + on.rate_above * (on.solid_deflection - on.crossover_deflection);
            assert_relative_eq!(at_solid.si(), on.solid_load.si(), max_relative = 1e-9);
        }
    }
}

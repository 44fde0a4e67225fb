use crate::units::{Angle, Ratio};
use crate::{Result, valid};

/// Axle ratio by counting, both wheels turned together.
///
/// # Formula
/// `i_f = n_p / n_w`
///
/// # Parameters
/// - `propeller_shaft_turns` — `n_p`, counted at the flange of the axle
/// - `wheel_turns` — `n_w`, turns of both wheels alike
///
/// # Returns
/// Propeller-shaft speed over wheel speed.
///
/// # Valid for
/// - `0.001 <= propeller_shaft_turns <= 1000000`
/// - `0.001 <= wheel_turns <= 1000000`
///
/// Both wheels turn by the same angle, as they do with a locked differential; where one lags the other, take the mean of the two. The error of
/// the ratio is that of the reading over the turns counted: ten turns of the wheels tell the neighbours that are sold apart, one often does not.
///
/// # Source
/// Kinematics of a bevel differential: the carrier turns by the mean of the two wheels; common practice, no source, for the method
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let ratio = driveline::axle_ratio_by_turns(Angle::of::<turn>(20.5), Angle::of::<turn>(5.0))?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "4.10");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Never work under a vehicle that a jack alone holds: stands, chocks at the wheels that stay on the ground, and nobody inside.
/// A vehicle in neutral rolls, and a parking brake that acts on the raised axle or on the propeller shaft holds nothing.
#[inline]
pub fn axle_ratio_by_turns(propeller_shaft_turns: Angle, wheel_turns: Angle) -> Result<Ratio> {
    valid! {
        propeller_shaft_turns: 0.001 <= .. <= 1e6 ; "plausibility limit: what a person counts lies between 0.001 rad and 1000000 rad";
        wheel_turns: 0.001 <= .. <= 1e6 ; "plausibility limit: what a person counts lies between 0.001 rad and 1000000 rad";
    }
    Ok(Ratio::from_si(propeller_shaft_turns.si() / wheel_turns.si()))
}

/// Axle ratio by counting, one wheel held: the free one turns twice as far as the carrier.
///
/// # Formula
/// `i_f = 2 n_p / n_w`
///
/// # Parameters
/// - `propeller_shaft_turns` — `n_p`, counted at the flange of the axle
/// - `free_wheel_turns` — `n_w`, turns of the wheel that is not held
///
/// # Returns
/// Propeller-shaft speed over wheel speed on a straight road.
///
/// # Valid for
/// - `0.001 <= propeller_shaft_turns <= 1000000`
/// - `0.001 <= free_wheel_turns <= 1000000`
///
/// An open differential with side gears alike; a locked one does not turn with a wheel held, and one that limits slip may not.
///
/// # Source
/// Kinematics of a bevel differential: the carrier turns by the mean of the two wheels; common practice, no source, for the method
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let ratio = driveline::axle_ratio_one_wheel_held(Angle::of::<turn>(10.25), Angle::of::<turn>(5.0))?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "4.10");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Never work under a vehicle that a jack alone holds: stands, chocks at the wheels that stay on the ground, and nobody inside.
/// A vehicle in neutral rolls, and a parking brake that acts on the raised axle or on the propeller shaft holds nothing.
#[inline]
pub fn axle_ratio_one_wheel_held(propeller_shaft_turns: Angle, free_wheel_turns: Angle) -> Result<Ratio> {
    valid! {
        propeller_shaft_turns: 0.001 <= .. <= 1e6 ; "plausibility limit: what a person counts lies between 0.001 rad and 1000000 rad";
        free_wheel_turns: 0.001 <= .. <= 1e6 ; "plausibility limit: what a person counts lies between 0.001 rad and 1000000 rad";
    }
    Ok(Ratio::from_si(2.0 * propeller_shaft_turns.si() / free_wheel_turns.si()))
}

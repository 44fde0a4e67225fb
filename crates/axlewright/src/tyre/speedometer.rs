use crate::units::{Length, Ratio, Velocity};
use crate::{Result, valid};

/// Error of the speedometer after a change of tyre.
///
/// # Formula
/// `e = r_1 / r_2 - 1`
///
/// # Parameters
/// - `rolling_radius_before` — `r_1`, effective rolling radius (distance per turn over 2 pi) with which the speedometer was right
/// - `rolling_radius_after` — `r_2`, rolling radius of the tyre now fitted, measured in the same way
///
/// # Returns
/// The reading over the true speed, less 1: positive if it reads too much, negative (the dangerous side) if it reads too little.
///
/// # Valid for
/// - `0.001 <= rolling_radius_before <= 100`
/// - `0.001 <= rolling_radius_after <= 100`
///
/// A speedometer that counts turns of the wheel or of the shaft and was right before. Add the error that it had when new.
///
/// # Source
/// Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let error = tyre::speedometer_error(Length::of::<mm>(337.9), Length::of::<mm>(365.0))?;
/// assert_eq!(format!("{:.1} %", error.in_::<percent>()), "-7.4 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A speedometer that reads too little is forbidden in many places (UN Regulation 39, from memory: never below the true speed). Have it set and checked before the road.
#[inline]
pub fn speedometer_error(rolling_radius_before: Length, rolling_radius_after: Length) -> Result<Ratio> {
    valid! {
        rolling_radius_before: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
        rolling_radius_after: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok((rolling_radius_before - rolling_radius_after) / rolling_radius_after)
}

/// Error of a speedometer that the propeller shaft or the gearbox drives, after a change of tyre and axle.
///
/// # Formula
/// `e = r_1 i_2 / (r_2 i_1) - 1`
///
/// # Parameters
/// - `rolling_radius_before` — `r_1`, effective rolling radius (distance per turn over 2 pi) with which the speedometer was right
/// - `rolling_radius_after` — `r_2`, rolling radius of the tyre now fitted, measured in the same way
/// - `final_drive_before` — `i_1`, propeller-shaft speed over wheel speed with which the speedometer was right
/// - `final_drive_after` — `i_2`, ratio of the axle now fitted
///
/// # Returns
/// The reading over the true speed, less 1: positive if it reads too much, negative (the dangerous side) if it reads too little.
///
/// # Valid for
/// - `0.001 <= rolling_radius_before <= 100`
/// - `0.001 <= rolling_radius_after <= 100`
/// - `0.1 <= final_drive_before <= 30`
/// - `0.1 <= final_drive_after <= 30`
///
/// A speedometer that was right before. For one that counts turns of a wheel use `speedometer_error`: the axle ratio does not change it.
///
/// # Source
/// Kinematics of rolling and of gears; ISO 8855 for the term effective rolling radius (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let error = tyre::speedometer_error_at_shaft(
///     Length::of::<mm>(337.9), Length::of::<mm>(365.0), Ratio::of::<one>(4.10), Ratio::of::<one>(4.56),
/// )?;
/// assert_eq!(format!("{:.1} %", error.in_::<percent>()), "3.0 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A speedometer that reads too little is forbidden in many places (UN Regulation 39, from memory: never below the true speed). Have it set and checked before the road.
#[inline]
pub fn speedometer_error_at_shaft(
    rolling_radius_before: Length,
    rolling_radius_after: Length,
    final_drive_before: Ratio,
    final_drive_after: Ratio,
) -> Result<Ratio> {
    valid! {
        rolling_radius_before: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
        rolling_radius_after: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
        final_drive_before: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive_after: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
    }
    let (before, after) =
        (rolling_radius_before * final_drive_after, rolling_radius_after * final_drive_before);
    Ok((before - after) / after)
}

/// True speed behind a reading of the speedometer.
///
/// # Formula
/// `v = v_i / (1 + e)`
///
/// # Parameters
/// - `indicated_speed` — `v_i`, reading of the speedometer
/// - `speedometer_error` — `e`, reading over true speed, less 1: positive if it reads too much
///
/// # Returns
/// The speed over the ground.
///
/// # Valid for
/// - `0 <= indicated_speed <= 200`
/// - `-0.99 <= speedometer_error <= 100`
///
/// An error in proportion to the speed, as after a change of tyre or axle.
///
/// # Source
/// Definition of the error
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let speed = tyre::true_speed(Velocity::of::<mph>(60.0), Ratio::of::<percent>(5.0))?;
/// assert_eq!(format!("{:.1} mph", speed.in_::<mph>()), "57.1 mph");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn true_speed(indicated_speed: Velocity, speedometer_error: Ratio) -> Result<Velocity> {
    valid! {
        indicated_speed: 0 <= .. <= 200 ; "definition: counted without direction; plausibility limit: no road vehicle is faster than 200 m/s";
        speedometer_error: (-0.99) <= .. <= 100 ; "definition: a reading of nothing tells nothing; plausibility limit: from -99 % on";
    }
    Ok(indicated_speed / (Ratio::from_si(1.0) + speedometer_error))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Turns of the shaft, read with the old figures, and the true speed by the new ones.
        #[test]
        fn the_true_speed_is_that_of_the_shaft(shaft in 1.0f64..500.0, r1 in 0.2f64..0.6, r2 in 0.2f64..0.6, i1 in 2.0f64..7.0, i2 in 2.0f64..7.0) {
            let (before, after) = (Length::from_si(r1), Length::from_si(r2));
            let error = speedometer_error_at_shaft(before, after, Ratio::from_si(i1), Ratio::from_si(i2)).unwrap();
            let speed = true_speed(Velocity::from_si(shaft / i1 * r1), error).unwrap().si();
            prop_assert!((speed / (shaft / i2 * r2) - 1.0).abs() < 1e-13);
        }
    }
}

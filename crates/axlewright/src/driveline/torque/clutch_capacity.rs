use crate::base::valid::whole;
use crate::units::{Force, Length, Ratio, Torque, torque};
use crate::{Result, valid};

/// Torque that a worn-in disc clutch holds before it slips: uniform wear, the lower of the two models.
///
/// # Formula
/// `T = n f F (D + d) / 4`
///
/// # Parameters
/// - `clamp_load` — `F`, force of the pressure plate, the same on every face
/// - `friction_coefficient` — `f`, friction coefficient of the facing, static and at its temperature; the maker's figure
/// - `outer_diameter` — `D`, outer diameter of the facing
/// - `inner_diameter` — `d`, inner diameter of the facing
/// - `friction_faces` — `n`, whole: 2 for a disc that is lined on both sides
///
/// # Returns
/// The static capacity at the crankshaft, to judge whether the clutch holds. For what a dropped clutch can pass on to the parts behind it take the
/// uniform pressure, which is higher.
///
/// # Valid for
/// - `0 < clamp_load <= 10000000`
/// - `0 < friction_coefficient <= 2`
/// - `0.001 <= outer_diameter <= 10`
/// - `0.001 <= inner_diameter <= 10`
/// - `outer_diameter > inner_diameter`
/// - `1 <= friction_faces <= 100`
///
/// `friction_faces` is a whole number. The pressure falls with the radius, so that every place wears alike: a clutch that has worn in. Loss of clamp load
/// by a spring that sags, by speed or by a pedal that does not release is not in it.
///
/// # Source
/// Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform wear (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for faces that are not whole
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let holds = driveline::clutch_capacity_uniform_wear(
///     Force::of::<kN>(9.0), Ratio::of::<one>(0.3), Length::of::<mm>(240.0), Length::of::<mm>(160.0), Ratio::of::<one>(2.0),
/// )?;
/// assert_eq!(format!("{:.0} N·m", holds.in_::<Nm>()), "540 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A slipping clutch heats, and a hot or oily one holds less: the capacity wants a reserve over the engine's torque. A disc or a flywheel that bursts cuts through its housing;
/// use parts rated for the speed. Makers' ratings, local codes and licensed practice come first.
#[inline]
pub fn clutch_capacity_uniform_wear(
    clamp_load: Force,
    friction_coefficient: Ratio,
    outer_diameter: Length,
    inner_diameter: Length,
    friction_faces: Ratio,
) -> Result<Torque> {
    valid! {
        clamp_load: 0 < .. <= 10e6 ; "plausibility limit: a clutch is pressed with less than 10 MN";
        friction_coefficient: 0 < .. <= 2 ; "plausibility limit: facings lie well below 2";
        outer_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        inner_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        outer_diameter > inner_diameter ; "definition: the facing is a ring";
        friction_faces: 1 <= .. <= 100 ; "definition: one face at least; plausibility limit: at most 100";
    }
    whole("friction_faces", friction_faces)?;
    let mean_radius = (outer_diameter + inner_diameter) / 4.0;
    Ok(torque(friction_faces * friction_coefficient * clamp_load, mean_radius))
}

/// Torque that a new disc clutch holds before it slips: uniform pressure, the higher of the two models.
///
/// # Formula
/// `T = n f F (D^3 - d^3) / (3 (D^2 - d^2))`
///
/// # Parameters
/// - `clamp_load` — `F`, force of the pressure plate, the same on every face
/// - `friction_coefficient` — `f`, friction coefficient of the facing, static and at its temperature; the maker's figure
/// - `outer_diameter` — `D`, outer diameter of the facing
/// - `inner_diameter` — `d`, inner diameter of the facing
/// - `friction_faces` — `n`, whole: 2 for a disc that is lined on both sides
///
/// # Returns
/// The static capacity at the crankshaft. It bounds from above what a dropped clutch can pass on; to judge whether the
/// clutch holds, take the uniform wear.
///
/// # Valid for
/// - `0 < clamp_load <= 10000000`
/// - `0 < friction_coefficient <= 2`
/// - `0.001 <= outer_diameter <= 10`
/// - `0.001 <= inner_diameter <= 10`
/// - `outer_diameter > inner_diameter`
/// - `1 <= friction_faces <= 100`
///
/// `friction_faces` is a whole number. A flat, new facing on a stiff plate. It exceeds the uniform wear by 1.3 % where `d = 2 D / 3`, by 3.7 % where `d = D / 2`.
///
/// # Source
/// Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform pressure (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for faces that are not whole
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let holds = driveline::clutch_capacity_uniform_pressure(
///     Force::of::<kN>(9.0), Ratio::of::<one>(0.3), Length::of::<mm>(240.0), Length::of::<mm>(160.0), Ratio::of::<one>(2.0),
/// )?;
/// assert_eq!(format!("{:.0} N·m", holds.in_::<Nm>()), "547 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A slipping clutch heats, and a hot or oily one holds less: the capacity wants a reserve over the engine's torque. A disc or a flywheel that bursts cuts through its housing;
/// use parts rated for the speed. Makers' ratings, local codes and licensed practice come first.
#[inline]
pub fn clutch_capacity_uniform_pressure(
    clamp_load: Force,
    friction_coefficient: Ratio,
    outer_diameter: Length,
    inner_diameter: Length,
    friction_faces: Ratio,
) -> Result<Torque> {
    valid! {
        clamp_load: 0 < .. <= 10e6 ; "plausibility limit: a clutch is pressed with less than 10 MN";
        friction_coefficient: 0 < .. <= 2 ; "plausibility limit: facings lie well below 2";
        outer_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        inner_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        outer_diameter > inner_diameter ; "definition: the facing is a ring";
        friction_faces: 1 <= .. <= 100 ; "definition: one face at least; plausibility limit: at most 100";
    }
    whole("friction_faces", friction_faces)?;
    // (D^3 - d^3) / (D^2 - d^2) without the two differences, which cancel in a narrow ring.
    let (outer, inner) = (outer_diameter.si(), inner_diameter.si());
    let friction_radius =
        Length::from_si((outer * outer + outer * inner + inner * inner) / (3.0 * (outer + inner)));
    Ok(torque(friction_faces * friction_coefficient * clamp_load, friction_radius))
}

/// Clamp load that a disc clutch wants for a capacity: uniform wear, the one of the two models that asks for more.
///
/// # Formula
/// `F = 4 T / (n f (D + d))`
///
/// # Parameters
/// - `clutch_capacity` — `T`, wanted at the crankshaft, the reserve over the engine's torque included
/// - `friction_coefficient` — `f`, friction coefficient of the facing, static and at its temperature; the maker's figure
/// - `outer_diameter` — `D`, outer diameter of the facing
/// - `inner_diameter` — `d`, inner diameter of the facing
/// - `friction_faces` — `n`, whole: 2 for a disc that is lined on both sides
///
/// # Returns
/// The load of the pressure plate on every face. More of it raises the pedal's effort and what a dropped clutch passes on.
///
/// # Valid for
/// - `0 < clutch_capacity <= 1000000`
/// - `0.001 <= friction_coefficient <= 2`
/// - `0.001 <= outer_diameter <= 10`
/// - `0.001 <= inner_diameter <= 10`
/// - `outer_diameter > inner_diameter`
/// - `1 <= friction_faces <= 100`
///
/// `friction_faces` is a whole number. A clutch that has worn in, with the clamp load that it still has when the facing is worn.
///
/// # Source
/// Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform wear (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for faces that are not whole
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let wanted = driveline::clamp_load_for_capacity(
///     Torque::of::<Nm>(480.0), Ratio::of::<one>(0.3), Length::of::<mm>(240.0), Length::of::<mm>(160.0), Ratio::of::<one>(2.0),
/// )?;
/// assert_eq!(format!("{:.1} kN", wanted.in_::<kN>()), "8.0 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A slipping clutch heats, and a hot or oily one holds less. A disc or a flywheel that bursts cuts through its housing;
/// use parts rated for the speed. Makers' ratings, local codes and licensed practice come first.
#[inline]
pub fn clamp_load_for_capacity(
    clutch_capacity: Torque,
    friction_coefficient: Ratio,
    outer_diameter: Length,
    inner_diameter: Length,
    friction_faces: Ratio,
) -> Result<Force> {
    valid! {
        clutch_capacity: 0 < .. <= 1e6 ; "definition: a clutch holds something; plausibility limit: at most 1 MN·m";
        friction_coefficient: 0.001 <= .. <= 2 ; "plausibility limit: facings lie well above 0.001 and well below 2";
        outer_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        inner_diameter: 0.001 <= .. <= 10 ; "plausibility limit: clutches lie between 1 mm and 10 m";
        outer_diameter > inner_diameter ; "definition: the facing is a ring";
        friction_faces: 1 <= .. <= 100 ; "definition: one face at least; plausibility limit: at most 100";
    }
    whole("friction_faces", friction_faces)?;
    let mean_radius = (outer_diameter + inner_diameter) / 4.0;
    Ok(Force::from_si(
        clutch_capacity.si() / (friction_faces.si() * friction_coefficient.si() * mean_radius.si()),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn both(outer: f64, inner: f64) -> (f64, f64) {
        let (load, one, two) = (Force::from_si(9e3), Ratio::from_si(0.3), Ratio::from_si(2.0));
        let (outer, inner) = (Length::from_si(outer), Length::from_si(inner));
        (
            clutch_capacity_uniform_wear(load, one, outer, inner, two).unwrap().si(),
            clutch_capacity_uniform_pressure(load, one, outer, inner, two).unwrap().si(),
        )
    }

    proptest! {
        /// The friction radius of the pressure model exceeds that of the wear model by `(D - d)^2 / (12 (D + d))`.
        #[test]
        fn pressure_exceeds_wear_and_a_narrow_ring_makes_them_one(outer in 0.1f64..0.5, share in 0.01f64..0.999_999) {
            let inner = outer * share;
            let (wear, pressure) = both(outer, inner);
            let more = 2.0 * 0.3 * 9e3 * (outer - inner).powi(2) / (12.0 * (outer + inner));
            prop_assert!((pressure - wear - more).abs() <= 1e-12 * wear, "{wear} {pressure} {more}");
        }
    }
}

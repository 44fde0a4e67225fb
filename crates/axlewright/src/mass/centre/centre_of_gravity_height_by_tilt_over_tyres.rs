use super::centre_of_gravity_height_by_tilt;
use crate::base::text::said;
use crate::units::{Acceleration, Length, LinearStiffness, Mass, STANDARD_GRAVITY};
use crate::{Result, cannot, valid};

/// Height of the centre of gravity from raising one axle, with the lift measured under the tyres and their deflection taken off.
///
/// # Formula
/// `H_c = H + (m_2 - m_1) g (1 / k_1 + 1 / k_2)`, `h = r + l (m_2 - m_1) sqrt(l^2 - H_c^2) / (m H_c)`
///
/// # Parameters
/// - `level_mass` — `m_1`, scale reading of the axle that stays down, vehicle level, both wheels together
/// - `tilted_mass` — `m_2`, scale reading of the axle that stays down, with the other one raised
/// - `total_mass` — `m`, mass of the whole vehicle: all scale readings together, vehicle level
/// - `wheelbase` — `l`, front to rear axle, along the vehicle
/// - `lift` — `H`, height of the supports of the raised tyres over those of the other tyres
/// - `loaded_radius` — `r`, height of the wheel centres above the ground, vehicle level; if the axles differ, the mean, weighted with the distance to the other axle
/// - `lower_axle_tyre_rate` — `k_1`, of both tyres that stay down, together: vertical rate
/// - `raised_axle_tyre_rate` — `k_2`, of both tyres that are raised, together: vertical rate
///
/// # Returns
/// Height above the ground, vehicle level.
///
/// # Valid for
/// - `0.001 <= level_mass <= 4000000`
/// - `0.001 <= tilted_mass <= 4000000`
/// - `0.001 <= total_mass <= 4000000`
/// - `total_mass > level_mass`
/// - `total_mass > tilted_mass`
/// - `0.01 <= wheelbase <= 100`
/// - `0.001 <= lift <= 100`
/// - `wheelbase > lift`
/// - `0.001 <= loaded_radius <= 10`
/// - `1 <= lower_axle_tyre_rate <= 1000000000`
/// - `1 <= raised_axle_tyre_rate <= 1000000000`
///
/// As `mass::centre_of_gravity_height_by_tilt`. The tyres that stay down take more load and sink, and the raised ones rise: the vehicle leans more than the lift shows. Linear tyres.
///
/// # Source
/// Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory); standard gravity: 3rd CGPM
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for a reading that falls
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let height = mass::centre_of_gravity_height_by_tilt_over_tyres(
///     Mass::of::<kg>(1223.0), Mass::of::<kg>(1289.0), Mass::of::<kg>(2400.0), Length::of::<mm>(2650.0), Length::of::<mm>(600.0), Length::of::<mm>(342.0),
///     LinearStiffness::of::<N_mm>(560.0), LinearStiffness::of::<N_mm>(560.0),
/// )?;
/// assert_eq!(format!("{:.1} mm", height.in_::<mm>()), "654.2 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A raised vehicle can roll off its stands and kill. Chock the wheels of the axle that stays down, strap the vehicle, use stands rated for the load, and keep out from under it. Local codes and licensed practice come first.
#[inline]
pub fn centre_of_gravity_height_by_tilt_over_tyres(
    level_mass: Mass,
    tilted_mass: Mass,
    total_mass: Mass,
    wheelbase: Length,
    lift: Length,
    loaded_radius: Length,
    lower_axle_tyre_rate: LinearStiffness,
    raised_axle_tyre_rate: LinearStiffness,
) -> Result<Length> {
    valid! {
        level_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        tilted_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        total_mass > level_mass ; "definition: the other axle carries something";
        total_mass > tilted_mass ; "definition: the other axle carries something";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        lift: 0.001 <= .. <= 100 ; "definition: a level vehicle gives no height";
        wheelbase > lift ; "definition: the vehicle leans less than upright";
        loaded_radius: 0.001 <= .. <= 10 ; "plausibility limit: no road tyre is 20 m high";
        lower_axle_tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: tyres lie between 1 N/m and 1 GN/m";
        raised_axle_tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: tyres lie between 1 N/m and 1 GN/m";
    }
    let moved = (tilted_mass - level_mass) * Acceleration::from_si(STANDARD_GRAVITY);
    let at_wheel_centres = lift + moved / lower_axle_tyre_rate + moved / raised_axle_tyre_rate;
    if !(at_wheel_centres.si() >= 0.001 && at_wheel_centres < wheelbase && at_wheel_centres.si() <= 100.0) {
        let there = said(at_wheel_centres);
        return Err(cannot!(
            lift, wheelbase, lower_axle_tyre_rate, raised_axle_tyre_rate, level_mass, tilted_mass;
            "is {there} at the wheel centres, where the tyres give: there it must lie between 1 mm and the wheelbase"
        ));
    }
    centre_of_gravity_height_by_tilt(
        level_mass,
        tilted_mass,
        total_mass,
        wheelbase,
        at_wheel_centres,
        loaded_radius,
    )
}

use crate::units::{Length, Mass};
use crate::{Result, cannot, valid};

/// Height of the centre of gravity from raising one axle, the lift measured at the wheel centres.
///
/// # Formula
/// `h = r + l (m_2 - m_1) sqrt(l^2 - H^2) / (m H)`
///
/// # Parameters
/// - `level_mass` — `m_1`, scale reading of the axle that stays down, vehicle level, both wheels together
/// - `tilted_mass` — `m_2`, scale reading of the axle that stays down, with the other one raised
/// - `total_mass` — `m`, mass of the whole vehicle: all scale readings together, vehicle level
/// - `wheelbase` — `l`, front to rear axle, along the vehicle
/// - `lift` — `H`, height of the wheel centres of one axle over those of the other, less that height with the vehicle level
/// - `loaded_radius` — `r`, height of the wheel centres above the ground, vehicle level; if the axles differ, the mean, weighted with the distance to the other axle
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
///
/// Suspension locked at ride height (blocks or solid links in place of springs), brakes off, wheels free to roll, tanks full or empty. A lift measured at the wheel centres includes the tyre deflection. A reading that falls is refused: it is that of the raised axle, or the centre of gravity lies below the wheel centres, where this weighing says little. The difference of two readings is small: the model `RaisedAxle` gives the uncertainty.
///
/// # Source
/// Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for a reading that falls
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let height = mass::centre_of_gravity_height_by_tilt(
///     Mass::of::<kg>(1223.0), Mass::of::<kg>(1289.0), Mass::of::<kg>(2400.0), Length::of::<mm>(2650.0), Length::of::<mm>(600.0), Length::of::<mm>(342.0),
/// )?;
/// assert_eq!(format!("{:.0} mm", height.in_::<mm>()), "656 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A raised vehicle can roll off its stands and kill. Chock the wheels of the axle that stays down, strap the vehicle, use stands rated for the load, and keep out from under it. Local codes and licensed practice come first.
#[inline]
pub fn centre_of_gravity_height_by_tilt(
    level_mass: Mass,
    tilted_mass: Mass,
    total_mass: Mass,
    wheelbase: Length,
    lift: Length,
    loaded_radius: Length,
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
    }
    if tilted_mass < level_mass {
        return Err(cannot!(
            tilted_mass, level_mass;
            "has fallen, but the axle that stays down carries more once the other is raised, unless the centre of gravity lies below the wheel centres: read the scales under the axle that stays down"
        ));
    }
    let (l, lift) = (wheelbase.si(), lift.si());
    let along = ((l - lift) * (l + lift)).sqrt();
    let moved = (tilted_mass.si() - level_mass.si()) / total_mass.si();
    let height = loaded_radius.si() + l * moved * (along / lift);
    Ok(Length::from_si(height))
}

use crate::units::{Length, Mass, MomentOfInertia, Ratio};
use crate::{Result, valid};

/// Dynamic index of a body in pitch; at 1, each axle is a centre about which the body swings.
///
/// # Formula
/// `i = I / (m_s a b)`
///
/// # Parameters
/// - `pitch_inertia` — `I`, pitch inertia of the sprung mass about the lateral axis through its centre
/// - `sprung_mass` — `m_s`, sprung mass of the whole vehicle
/// - `front_distance` — `a`, from the centre of the sprung mass to the front axle
/// - `rear_distance` — `b`, distance from the centre of the sprung mass to the rear axle
///
/// # Returns
/// The square of the radius of gyration over the product of the distances.
///
/// # Valid for
/// - `0.001 <= pitch_inertia <= 1000000000`
/// - `0.001 <= sprung_mass <= 4000000`
/// - `0.001 <= front_distance <= 100`
/// - `0.001 <= rear_distance <= 100`
///
/// # Source
/// Gillespie, Fundamentals of Vehicle Dynamics, chapter 5, bounce and pitch (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let index = ride::dynamic_index(
///     MomentOfInertia::of::<kg_m2>(3900.0), Mass::of::<kg>(2100.0), Length::of::<m>(1.2), Length::of::<m>(1.7),
/// )?;
/// assert_eq!(format!("{:.2}", index.in_::<one>()), "0.91");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn dynamic_index(
    pitch_inertia: MomentOfInertia,
    sprung_mass: Mass,
    front_distance: Length,
    rear_distance: Length,
) -> Result<Ratio> {
    valid! {
        pitch_inertia: 0.001 <= .. <= 1000000000 ; "plausibility limit: no vehicle has more than 1e9 kg·m²";
        sprung_mass: 0.001 <= .. <= 4000000 ; "plausibility limit: no vehicle weighs 4000 t";
        front_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
        rear_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
    }
    Ok(Ratio::from_raw(pitch_inertia.raw() / (sprung_mass.raw() * front_distance * rear_distance)))
}

use crate::Error;
use crate::base::error::NoSolution;
use crate::base::table::record;
use crate::units::{Length, Mass};
use crate::{Result, cannot, valid};

record! {
    /// Sprung mass and its centre of gravity.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct SprungCentre {
        /// Mass that the springs carry.
        pub sprung_mass: Mass,
        /// Distance of its centre of gravity behind the front axle; negative in front of the axle.
        pub sprung_behind_front_axle: Length,
        /// Height of its centre of gravity above the ground.
        pub height: Length,
    }
}

/// Sprung mass and its centre of gravity, from the whole vehicle and its unsprung masses.
///
/// # Formula
/// `m_s = m - m_f - m_r`, `a_s = (m a - m_r l) / m_s`, `h_s = (m h - m_f r_f - m_r r_r) / m_s`
///
/// # Parameters
/// - `total_mass` — `m`, mass of the whole vehicle as it stands: all scale readings together
/// - `behind_front_axle` — `a`, distance of the centre of gravity of the whole vehicle behind the front axle
/// - `centre_height` — `h`, height of the centre of gravity of the whole vehicle above the ground
/// - `wheelbase` — `l`, front to rear axle
/// - `front_unsprung_mass` — `m_f`, unsprung mass of the front axle, both wheels together
/// - `rear_unsprung_mass` — `m_r`, unsprung mass of the rear axle, both wheels together
/// - `front_unsprung_height` — `r_f`, height of the centre of gravity of the front unsprung mass above the ground: the loaded radius, nearly
/// - `rear_unsprung_height` — `r_r`, height of the centre of gravity of the rear unsprung mass above the ground
///
/// # Returns
/// See the fields of [`SprungCentre`].
///
/// # Valid for
/// - `0.001 <= total_mass <= 4000000`
/// - `0 <= behind_front_axle <= 100`
/// - `0 <= centre_height <= 100`
/// - `0.01 <= wheelbase <= 100`
/// - `wheelbase > behind_front_axle`
/// - `0 <= front_unsprung_mass <= 1000000`
/// - `0 <= rear_unsprung_mass <= 1000000`
/// - `0 <= front_unsprung_height <= 100`
/// - `0 <= rear_unsprung_height <= 100`
///
/// The unsprung masses lie on the lines of their axles. Where they are more than the vehicle, or than an axle carries, there is no answer.
///
/// # Source
/// Definition of the centre of gravity (first moments); Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) where an axle carries less than its unsprung mass, or the sprung mass would lie below the ground
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let on = mass::sprung_centre(
///     Mass::of::<kg>(2400.0), Length::of::<mm>(1300.0), Length::of::<mm>(720.0), Length::of::<mm>(2650.0),
///     Mass::of::<kg>(134.0), Mass::of::<kg>(196.0), Length::of::<mm>(340.0), Length::of::<mm>(345.0),
/// )?;
/// assert_eq!(format!("{:.0} kg, {:.0} mm high", on.sprung_mass.in_::<kg>(), on.height.in_::<mm>()), "2070 kg, 780 mm high");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn sprung_centre(
    total_mass: Mass,
    behind_front_axle: Length,
    centre_height: Length,
    wheelbase: Length,
    front_unsprung_mass: Mass,
    rear_unsprung_mass: Mass,
    front_unsprung_height: Length,
    rear_unsprung_height: Length,
) -> Result<SprungCentre> {
    valid! {
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        behind_front_axle: 0 <= .. <= 100 ; "definition: between the axles, so that both carry";
        centre_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        wheelbase > behind_front_axle ; "definition: the rear axle carries, and the front axle is not lifted";
        front_unsprung_mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; no axle weighs 1000 t";
        rear_unsprung_mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; no axle weighs 1000 t";
        front_unsprung_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        rear_unsprung_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
    }
    let sprung_mass = total_mass - front_unsprung_mass - rear_unsprung_mass;
    let behind = total_mass.raw() * behind_front_axle - rear_unsprung_mass.raw() * wheelbase;
    let high = total_mass.raw() * centre_height
        - front_unsprung_mass.raw() * front_unsprung_height
        - rear_unsprung_mass.raw() * rear_unsprung_height;
    let rear_axle = total_mass * (behind_front_axle / wheelbase);
    for (axle, unsprung, carried) in
        [("front", front_unsprung_mass, total_mass - rear_axle), ("rear", rear_unsprung_mass, rear_axle)]
    {
        if unsprung.si() >= carried.si() {
            let refusal = NoSolution::new(format!("is not less than the mass that the {axle} axle carries"));
            return Err(Error::no_solution(
                refusal.of(format!("{axle}_unsprung_mass"), unsprung).less_than(carried),
            ));
        }
    }
    let height = Length::from_raw(high / sprung_mass);
    if height.si() < 0.0 {
        let least = centre_height - height * (sprung_mass / total_mass);
        return Err(cannot!(
            centre_height >= least;
            "is too low for these unsprung masses: the sprung mass would lie below the ground"
        ));
    }
    Ok(SprungCentre { sprung_mass, sprung_behind_front_axle: Length::from_raw(behind / sprung_mass), height })
}

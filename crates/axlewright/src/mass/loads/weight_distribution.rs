use crate::base::table::record;
use crate::units::{Length, Mass, Ratio};
use crate::{Result, valid};

record! {
    /// Weight distribution of a vehicle on level ground, from four scale readings.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct WeightDistribution {
        /// Sum of the four readings.
        pub total_mass: Mass,
        /// Sum of the two front readings.
        pub front_axle_mass: Mass,
        /// Sum of the two rear readings.
        pub rear_axle_mass: Mass,
        /// Front readings over all.
        pub front_share: Ratio,
        /// Left readings over all.
        pub left_share: Ratio,
        /// Right front plus left rear over all.
        pub diagonal_share: Ratio,
        /// Distance of the centre of gravity behind the front axle.
        pub behind_front_axle: Length,
        /// Distance of the centre of gravity left of the centreline; negative to the right.
        pub left_of_centreline: Length,
    }
}

/// Axle loads, shares and centre of gravity from four scale readings.
///
/// # Formula
/// `a = l (m_3 + m_4) / m_t`, `y = (b_f (m_1 - m_2) + b_r (m_3 - m_4)) / (2 m_t)`, diagonal share `(m_2 + m_3) / m_t` with
/// `m_t = m_1 + m_2 + m_3 + m_4`
///
/// # Parameters
/// - `left_front` — `m_1`, scale reading
/// - `right_front` — `m_2`, scale reading
/// - `left_rear` — `m_3`, scale reading
/// - `right_rear` — `m_4`, scale reading
/// - `wheelbase` — `l`, front to rear axle
/// - `front_track` — `b_f`, distance between the centres of the front tyres
/// - `rear_track` — `b_r`, distance between the centres of the rear tyres
///
/// # Returns
/// See the fields of [`WeightDistribution`].
///
/// # Valid for
/// - `0 < left_front <= 1000000`
/// - `0 < right_front <= 1000000`
/// - `0 < left_rear <= 1000000`
/// - `0 < right_rear <= 1000000`
/// - `0 < wheelbase <= 100`
/// - `0 < front_track <= 100`
/// - `0 < rear_track <= 100`
///
/// Four scales in one level plane, dampers settled, nobody leaning on the vehicle.
///
/// # Source
/// Static equilibrium (moments about the front axle and the centreline); Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let on_scale = |reading| Mass::of::<kg>(reading);
/// let on = mass::weight_distribution(
///     on_scale(612.0), on_scale(598.0), on_scale(455.0), on_scale(467.0),
///     Length::of::<mm>(2650.0), Length::of::<mm>(1540.0), Length::of::<mm>(1520.0),
/// )?;
/// assert_eq!(format!("{:.1} % front", on.front_share.in_::<percent>()), "56.8 % front");
/// assert_eq!(format!("{:.0} mm", on.behind_front_axle.in_::<mm>()), "1146 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn weight_distribution(
    left_front: Mass,
    right_front: Mass,
    left_rear: Mass,
    right_rear: Mass,
    wheelbase: Length,
    front_track: Length,
    rear_track: Length,
) -> Result<WeightDistribution> {
    valid! {
        left_front: 0 < .. <= 1e6 ; "a wheel without load gives no balance; no scale reads 1000 t";
        right_front: 0 < .. <= 1e6 ; "a wheel without load gives no balance; no scale reads 1000 t";
        left_rear: 0 < .. <= 1e6 ; "a wheel without load gives no balance; no scale reads 1000 t";
        right_rear: 0 < .. <= 1e6 ; "a wheel without load gives no balance; no scale reads 1000 t";
        wheelbase: 0 < .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        front_track: 0 < .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
        rear_track: 0 < .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
    }
    let front = left_front + right_front;
    let rear = left_rear + right_rear;
    let total = front + rear;
    let sideways =
        front_track.raw() * (left_front - right_front) + rear_track.raw() * (left_rear - right_rear);
    Ok(WeightDistribution {
        total_mass: total,
        front_axle_mass: front,
        rear_axle_mass: rear,
        front_share: front / total,
        left_share: (left_front + left_rear) / total,
        diagonal_share: (right_front + left_rear) / total,
        behind_front_axle: Length::from_raw(wheelbase.raw() * rear / total),
        left_of_centreline: Length::from_raw(sideways / (2.0 * total)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kg, m};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn on_scales(readings: [f64; 4]) -> WeightDistribution {
        let [a, b, c, d] = readings.map(Mass::of::<kg>);
        let [l, f, r] = [2.6, 1.5, 1.4].map(Length::of::<m>);
        weight_distribution(a, b, c, d, l, f, r).unwrap()
    }

    proptest! {
        #[test]
        fn mirrored_readings_mirror_the_result(a in 1.0f64..2000.0, b in 1.0f64..2000.0, c in 1.0f64..2000.0, d in 1.0f64..2000.0) {
            let (on, mirrored) = (on_scales([a, b, c, d]), on_scales([b, a, d, c]));
            assert_relative_eq!(on.front_share.si(), mirrored.front_share.si(), max_relative = 1e-12);
            assert_relative_eq!(on.left_share.si(), 1.0 - mirrored.left_share.si(), max_relative = 1e-12);
            assert_relative_eq!(on.left_of_centreline.si(), -mirrored.left_of_centreline.si(), epsilon = 1e-12);
            assert_relative_eq!(on.diagonal_share.si() + mirrored.diagonal_share.si(), 1.0, max_relative = 1e-12);
        }

        #[test]
        fn a_point_mass_is_found_where_it_was_put(x in 0.1f64..2.5, y in -0.6f64..0.6, mass in 100.0f64..5000.0) {
            // A rigid body on two axles of equal track: each axle shares its load left to right in the same proportion.
            let (rear, left) = (x / 2.6, 0.5 + y / 1.4);
            let [lf, rf] = [left, 1.0 - left].map(|s| Mass::of::<kg>(mass * (1.0 - rear) * s));
            let [lr, rr] = [left, 1.0 - left].map(|s| Mass::of::<kg>(mass * rear * s));
            let track = Length::of::<m>(1.4);
            let on = weight_distribution(lf, rf, lr, rr, Length::of::<m>(2.6), track, track).unwrap();
            assert_relative_eq!(on.behind_front_axle.si(), x, max_relative = 1e-12);
            assert_relative_eq!(on.left_of_centreline.si(), y, epsilon = 1e-12);
        }
    }
}

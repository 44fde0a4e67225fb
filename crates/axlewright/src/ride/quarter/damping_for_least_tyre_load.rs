use crate::base::numeric::hypot;
use crate::units::{Damping, LinearStiffness, Mass};
use crate::{Result, valid};

/// Damping at the wheel that gives the least variation of the tyre load on a random road.
///
/// # Formula
/// `c = sqrt(k^2 M / k_t - 2 m_s m_u k / M + k_t m_s^2 m_u / M^2)`, `M = m_s + m_u`
///
/// # Parameters
/// - `sprung_mass` — `m_s`, sprung mass of the body on the wheel
/// - `unsprung_mass` — `m_u`, unsprung mass of the wheel
/// - `wheel_rate` — `k`, rate of the suspension at the wheel
/// - `tyre_rate` — `k_t`, vertical rate of the tyre
///
/// # Returns
/// The damping at the wheel for the best hold on the road.
///
/// # Valid for
/// - `0.001 <= sprung_mass <= 1000000`
/// - `0.001 <= unsprung_mass <= 1000000`
/// - `1 <= wheel_rate <= 1000000000`
/// - `1 <= tyre_rate <= 1000000000`
///
/// A linear quarter car without damping in the tyre, on a road of waviness 2 and all wavelengths; any roughness and speed.
///
/// # Source
/// Least of the closed form of the mean square, residues of a system of fourth order (from memory; agrees with a Lyapunov solution)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let damping = ride::damping_for_least_tyre_load(
///     Mass::of::<kg>(545.0), Mass::of::<kg>(62.0), LinearStiffness::of::<N_mm>(34.0), LinearStiffness::of::<N_mm>(260.0),
/// )?;
/// assert_eq!(format!("{:.0} N·s/m", damping.in_::<Ns_m>()), "3451 N·s/m");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn damping_for_least_tyre_load(
    sprung_mass: Mass,
    unsprung_mass: Mass,
    wheel_rate: LinearStiffness,
    tyre_rate: LinearStiffness,
) -> Result<Damping> {
    valid! {
        sprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel carries 1000 t";
        unsprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel carries 1000 t";
        wheel_rate: 1 <= .. <= 1000000000 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
        tyre_rate: 1 <= .. <= 1000000000 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
    }
    let (sprung, unsprung) = (sprung_mass.si(), unsprung_mass.si());
    let (wheel_rate, tyre_rate, total) = (wheel_rate.si(), tyre_rate.si(), sprung + unsprung);
    // Written as a sum of squares, so that it is never negative: with x = k sqrt(M / k_t) - m_s m_u sqrt(k_t / M^3).
    let share = sprung / total;
    let off = wheel_rate * (total / tyre_rate).sqrt() - share * unsprung * (tyre_rate / total).sqrt();
    let rest = share * (unsprung * tyre_rate).sqrt() * share.sqrt();
    Ok(Damping::from_si(hypot(off, rest)))
}

use crate::units::{Frequency, Ratio, angular_velocity};
use crate::{Result, valid};
use core::f64::consts::SQRT_2;

/// Magnitude of the frequency weighting Wk: the share of a vertical vibration of a seat that a person feels at this frequency.
///
/// # Formula
/// `W_k = |H_h H_l H_t H_s|` at `p = 2 pi i f`, with band limits `H_h = 1 / (1 + sqrt(2) w_1 / p + (w_1 / p)^2)` and
/// `H_l = 1 / (1 + sqrt(2) p / w_2 + (p / w_2)^2)`, transition `H_t = (1 + p / w_3) / (1 + p / (Q_4 w_4) + (p / w_4)^2)` and step
/// `H_s = (1 + p / (Q_5 w_5) + (p / w_5)^2) / (1 + p / (Q_6 w_6) + (p / w_6)^2) (w_5 / w_6)^2`; `w = 2 pi f` of 0.4, 100, 12.5, 12.5, 2.37 and 3.35 Hz;
/// `Q_4 = 0.63`, `Q_5 = Q_6 = 0.91`
///
/// # Parameters
/// - `frequency` — `f`, frequency of the vibration
///
/// # Returns
/// Share of the acceleration that counts: nearly all from 4 to 8 Hz, little far from there.
///
/// # Valid for
/// - `0 <= frequency <= 1000000000000`
///
/// Whole-body vibration along the spine of a person who sits or stands.
///
/// # Source
/// ISO 8041-1:2017 and ISO 2631-1:1997, weighting Wk: transfer function and parameters (from memory; the one-third-octave factors of ISO 2631-1 table 3 agree to 0.001)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let felt = ride::wk_weighting(Frequency::of::<Hz>(1.6))?;
/// assert_eq!(format!("{:.3}", felt.in_::<one>()), "0.494");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn wk_weighting(frequency: Frequency) -> Result<Ratio> {
    valid! { frequency: 0 <= .. <= 1e12 ; "definition: a frequency is not negative; plausibility limit: above 1 THz it is a typing error"; }
    let corner = |hertz: f64| angular_velocity(Frequency::from_si(hertz)).si();
    let omega = angular_velocity(frequency).si();
    // |1 + p / (Q w) + (p / w)^2|^2 at p = i omega, and so on: the gain alone needs no phase.
    let over = |corner: f64| (omega / corner) * (omega / corner);
    let quadratic = |corner: f64, q: f64| {
        let (square, direct) = (over(corner), 1.0 - over(corner));
        direct * direct + square / (q * q)
    };
    let (w1, w2, w3, w4) = (corner(0.4), corner(100.0), corner(12.5), corner(12.5));
    let (w5, w6) = (corner(2.37), corner(3.35));
    let high_pass = 1.0 / quadratic(w1, 1.0 / SQRT_2);
    let low_pass = 1.0 / quadratic(w2, 1.0 / SQRT_2);
    let transition = (1.0 + over(w3)) / quadratic(w4, 0.63);
    let step = quadratic(w5, 0.91) / quadratic(w6, 0.91);
    let gain = (high_pass * low_pass * transition * step).sqrt();
    // (p / w_1)^2 of H_h and (w_5 / w_6)^2 of H_s stand outside the root, where they are exact.
    Ok(Ratio::from_si(over(w1) * gain * (w5 / w6) * (w5 / w6)))
}

use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, valid};

/// Preload that a joint loses as its faces embed.
///
/// # Formula
/// `F_z = f_z k_b k_c / (k_b + k_c)`
///
/// # Parameters
/// - `embedding` — `f_z`, length by which the faces settle after tightening; from memory (VDI 2230): 3 µm in the thread, 3 µm a face under head and nut, 2 µm a face between parts, for machined faces; paint and plating settle far more
/// - `bolt_stiffness` — `k_b`, axial rate of the bolt
/// - `clamped_stiffness` — `k_c`, axial rate of the clamped parts
///
/// # Returns
/// The force to take from the preload.
///
/// # Valid for
/// - `0 <= embedding <= 0.01`
/// - `1000 <= bolt_stiffness <= 1000000000000`
/// - `1000 <= clamped_stiffness <= 1000000000000`
///
/// Elastic bolt and parts. A joint whose paint was left between its faces keeps settling.
///
/// # Source
/// Two springs in series; VDI 2230 part 1, loss of preload (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let loss = fastener::embedding_loss(Length::of::<mm>(0.011), LinearStiffness::of::<kN_m>(300e3), LinearStiffness::of::<kN_m>(1200e3))?;
/// assert_eq!(format!("{:.0} N", loss.in_::<N>()), "2640 N");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A short bolt loses most: less than three diameters of grip may lose half of the preload. Tighten again after the first load.
#[inline]
pub fn embedding_loss(
    embedding: Length,
    bolt_stiffness: LinearStiffness,
    clamped_stiffness: LinearStiffness,
) -> Result<Force> {
    valid! {
        embedding: 0 <= .. <= 0.01 ; "definition: faces settle; plausibility limit: at most 10 mm";
        bolt_stiffness: 1000 <= .. <= 1e12 ; "plausibility limit: between 1 N/mm and 1 GN/mm";
        clamped_stiffness: 1000 <= .. <= 1e12 ; "plausibility limit: between 1 N/mm and 1 GN/mm";
    }
    let share = clamped_stiffness / (bolt_stiffness + clamped_stiffness);
    Ok(bolt_stiffness * embedding * share)
}

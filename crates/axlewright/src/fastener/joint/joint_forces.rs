use crate::base::table::record;
use crate::units::{Force, LinearStiffness, Ratio};
use crate::{Result, valid};

record! {
    /// Forces of a joint under an external pull.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct JointForces {
        /// Share of the pull that the bolt takes while the faces touch.
        pub load_factor: Ratio,
        /// Tension in the bolt.
        pub bolt_force: Force,
        /// Force that still presses the faces together.
        pub clamp_force: Force,
        /// Pull at which the faces part.
        pub separation_force: Force,
    }
}

/// Forces of a bolted joint under a pull along the bolt, by the stiffness of bolt and clamped parts.
///
/// # Formula
/// `n = k_b / (k_b + k_c)`; up to `F_s = F / (1 - n)` the bolt carries `F + n F_x` and the faces keep `F - (1 - n) F_x`; past separation the bolt carries all of `F_x`
///
/// # Parameters
/// - `preload` — `F`, tension in the bolt without a pull, after the faces have embedded
/// - `external_tension` — `F_x`, pull that opens the joint
/// - `bolt_stiffness` — `k_b`, axial rate of the bolt
/// - `clamped_stiffness` — `k_c`, axial rate of the clamped parts
///
/// # Returns
/// See the fields of [`JointForces`].
///
/// # Valid for
/// - `0 <= preload <= 100000000`
/// - `0 <= external_tension <= 100000000`
/// - `1000 <= bolt_stiffness <= 1000000000000`
/// - `1000 <= clamped_stiffness <= 1000000000000`
///
/// An elastic joint whose pull acts under head and nut, along the bolt. A pull beside the bolt pries, and the bolt carries more than the pull.
///
/// # Source
/// Shigley's Mechanical Engineering Design, joint in tension (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let on = fastener::joint_forces(Force::of::<kN>(30.0), Force::of::<kN>(12.0), LinearStiffness::of::<kN_m>(300e3), LinearStiffness::of::<kN_m>(1200e3))?;
/// assert_eq!(format!("{:.1} kN, {:.1} kN", on.bolt_force.in_::<kN>(), on.separation_force.in_::<kN>()), "32.4 kN, 37.5 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A joint that opens works loose, and its bolt breaks by fatigue. Judge it at the least preload.
#[inline]
pub fn joint_forces(
    preload: Force,
    external_tension: Force,
    bolt_stiffness: LinearStiffness,
    clamped_stiffness: LinearStiffness,
) -> Result<JointForces> {
    valid! {
        preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
        external_tension: 0 <= .. <= 1e8 ; "definition: it opens the joint; plausibility limit: at most 100 MN";
        bolt_stiffness: 1000 <= .. <= 1e12 ; "plausibility limit: between 1 N/mm and 1 GN/mm";
        clamped_stiffness: 1000 <= .. <= 1e12 ; "plausibility limit: between 1 N/mm and 1 GN/mm";
    }
    let both = bolt_stiffness + clamped_stiffness;
    let (load_factor, parts) = (bolt_stiffness / both, clamped_stiffness / both);
    Ok(JointForces {
        load_factor,
        bolt_force: bolt_force(preload, external_tension, load_factor),
        clamp_force: (preload - external_tension * parts).max(Force::from_si(0.0)),
        separation_force: preload / parts,
    })
}

/// Tension in the bolt: past separation it carries all of the pull.
pub(super) fn bolt_force(preload: Force, external_tension: Force, load_factor: Ratio) -> Force {
    (preload + external_tension * load_factor).max(external_tension)
}

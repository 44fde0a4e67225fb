use crate::units::{Length, LinearStiffness, RotationalStiffness};

/// Moment over angle of two springs of this rate, this far apart: each travels half the distance times the angle.
#[inline]
pub(super) fn pair(rate: LinearStiffness, apart: Length) -> RotationalStiffness {
    RotationalStiffness::from_si(rate.si() * apart.si() * apart.si() / 2.0)
}

//! Solutions of linear equations of motion, and integrals over frequency.

pub(super) mod integral;
pub(super) mod linear;
pub(super) mod matrix;
pub(super) mod response;

//! Products and quotients of kinds that are a kind: one line each, its dimension checked when this file is compiled.
//!
//! `Force * Length` is not here: it is a torque or an energy, so [`torque`](super::torque) and
//! [`energy`](super::energy) say which.
#![expect(
    clippy::indexing_slicing,
    reason = "three dimensions of five exponents each, compared while compiling"
)]

use super::quantity::{Dimensional, Number, operator};
use super::*;

/// `A * B = C` gives the operators `A * B`, `B * A`, `C / A` and `C / B`; `A ^ 2 = C` gives `A * A`, `C / A` and `C.sqrt()`.
macro_rules! products {
    ($($left:ident $op:tt $right:tt = $out:ident;)+) => { $(products!(@line $left $op $right = $out);)+ };
    (@line $side:ident ^ 2 = $square:ident) => {
        operator!(Mul mul: $side * $side = $square);
        operator!(Div div: $square / $side = $side);
        impl $square {
            #[doc = concat!("The ", stringify!($side), " whose square this is; NaN below zero.")]
            #[inline]
            pub fn sqrt(self) -> $side {
                $side::from_si(self.si().sqrt())
            }
        }
        products!(@check $side $side $square);
    };
    (@line $left:ident * $right:ident = $out:ident) => {
        operator!(Mul mul: $left * $right = $out, $right * $left = $out);
        operator!(Div div: $out / $left = $right, $out / $right = $left);
        products!(@check $left $right $out);
    };
    (@check $left:ident $right:ident $out:ident) => {
        const _: () = assert!(
            is_product($left::EXPONENTS, $right::EXPONENTS, $out::EXPONENTS),
            concat!(stringify!($left), " * ", stringify!($right), " has not the dimension of ", stringify!($out)),
        );
    };
}

/// True if the exponents of a product are the sums of those of its factors.
const fn is_product(left: [i8; 4], right: [i8; 4], out: [i8; 4]) -> bool {
    let mut at = 0;
    while at < out.len() {
        if left[at] + right[at] != out[at] {
            return false;
        }
        at += 1;
    }
    true
}

products! {
    Length ^ 2 = Area;
    Length * Area = Volume;
    Length * RatioPerLength = Ratio;
    Time * Frequency = Ratio;
    Time * Velocity = Length;
    Time * Acceleration = Velocity;
    Time * AngularVelocity = Angle;
    Mass * Acceleration = Force;
    Mass * Area = MomentOfInertia;
    Density * Volume = Mass;
    LinearStiffness * Length = Force;
    Damping * Velocity = Force;
    Stress * Area = Force;
    Stress * SectionModulus = Torque;
    SectionModulus * Length = SecondMoment;
    Force * RatioPerLength = LinearStiffness;
    Force * Velocity = Power;
    Torque * AngularVelocity = Power;
    RotationalStiffness * Angle = Torque;
    Power * Time = Energy;
    ThermalExpansion * TemperatureDifference = Ratio;
}

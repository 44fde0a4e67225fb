//! The macro that makes the types of `kinds.rs`, and the trait that they share.

use super::{Kind, UnitOf};
use crate::base::Sealed;
use crate::base::error::Error;
use crate::base::text;
use core::fmt;
use uom::marker;
use uom::si::{Quantity as UomQuantity, SI};

/// A quantity of `uom` in coherent SI.
pub(super) type Raw<D> = UomQuantity<D, SI<f64>, f64>;

/// Separate kinds for quantities that share a dimension: the kind marker of the `uom` quantity,
/// so that no kind becomes another through `uom` either.
macro_rules! markers {
    ($($(#[$doc:meta])* $name:ident;)+) => {
        $(
            $(#[$doc])*
            pub trait $name:
                marker::Add + marker::AddAssign + marker::Sub + marker::SubAssign + marker::Mul + marker::MulAssign
                + marker::Div + marker::DivAssign + marker::Rem + marker::RemAssign + marker::Neg + marker::Saturating
            {
            }
        )+
    };
}
markers! {
    /// Kind of an angle, an angular velocity or a torque.
    RotationKind;
    /// Kind of a torque per angle.
    RotationalStiffnessKind;
    /// Kind of a viscous damping rate (the same dimension as a mass rate).
    DampingKind;
    /// Kind of a section modulus (the same dimension as a volume).
    ModulusKind;
}
/// Kind of a gauge pressure: a difference from the ambient pressure, whose value it does not hold.
pub trait GaugeKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of an absolute pressure: named functions only, no arithmetic.
pub trait AbsoluteKind {}
/// Kind of an angle per acceleration.
pub trait RollGradientKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of the spectral density of a road's height.
pub trait RoughnessKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of turns counted along a distance.
pub trait TurnsKind: marker::Add + marker::Sub + marker::Neg {}

/// Common functions of every quantity type, for code that is generic over the kind. Each type also has them as its own
/// `const fn`. Implemented by the types of this module only.
pub trait Quantity:
    Copy
    + fmt::Debug
    + fmt::Display
    + core::str::FromStr<Err = Error>
    + PartialEq
    + PartialOrd
    + Send
    + Sync
    + Sealed
    + 'static
{
    /// Its kind.
    const KIND: &'static Kind;
    /// The value in the coherent SI unit.
    fn si(self) -> f64;
    /// A quantity from a value in the coherent SI unit.
    fn from_si(value: f64) -> Self;
    /// A quantity from a value in a unit: `Length::of::<inch>(3.5)`.
    #[inline]
    fn of<U: UnitOf<Self>>(value: f64) -> Self {
        Self::from_si(U::UNIT.to_si(value))
    }
    /// The value in a unit: `length.in_::<inch>()`.
    #[inline]
    fn in_<U: UnitOf<Self>>(self) -> f64 {
        U::UNIT.from_si(self.si())
    }
}

/// `{}` in the unit that a metric shop prints, `{:#}` in that of a US shop, to four significant digits; `{:.1}` and
/// `{:#.1}` with one digit after the point.
pub(super) fn display(si: f64, kind: &'static Kind, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let system = if f.alternate() { text::System::Us } else { text::System::Metric };
    let text = match f.precision() {
        None => text::print(si, kind, system),
        Some(digits) => text::print_fixed(si, kind, system, digits),
    };
    match (f.width(), f.align()) {
        (None, _) => f.write_str(&text),
        (Some(width), Some(fmt::Alignment::Left)) => write!(f, "{text:<width$}"),
        (Some(width), Some(fmt::Alignment::Center)) => write!(f, "{text:^width$}"),
        (Some(width), _) => write!(f, "{text:>width$}"),
    }
}

/// Operators between a quantity and another type, on the number inside.
macro_rules! operator {
    ($trait:ident $function:ident: $($left:ident $op:tt $right:ident = $out:ident),+) => {$(
        impl core::ops::$trait<$right> for $left {
            type Output = $out;
            #[inline(always)]
            fn $function(self, right: $right) -> $out {
                Number::of(Number::number(self) $op Number::number(right))
            }
        }
    )+};
}
pub(super) use operator;

/// The number in coherent SI inside a quantity, or the number itself.
pub(super) trait Number: Copy {
    fn number(self) -> f64;
    fn of(number: f64) -> Self;
}
impl Number for f64 {
    #[inline(always)]
    fn number(self) -> f64 {
        self
    }
    #[inline(always)]
    fn of(number: f64) -> Self {
        number
    }
}

/// Arithmetic that a kind allows, by its name and marker.
macro_rules! arithmetic {
    (Ratio Plain) => {
        arithmetic!(@sums Ratio);
        arithmetic!(@scales Ratio);
        operator!(Mul mul: Ratio * Ratio = Ratio);
        operator!(Div div: Ratio / Ratio = Ratio, f64 / Ratio = Ratio);
    };
    ($type:ident GaugeKind) => { arithmetic!(@sums $type); };
    ($type:ident RollGradientKind) => { arithmetic!(@sums $type); };
    ($type:ident RoughnessKind) => { arithmetic!(@sums $type); };
    ($type:ident TurnsKind) => { arithmetic!(@sums $type); };
    ($type:ident AbsoluteKind) => {};
    ($type:ident uom::si::marker::TemperatureKind) => {
        operator!(Add add: $type + TemperatureDifference = $type);
        operator!(Sub sub: $type - TemperatureDifference = $type);
    };
    ($type:ident $marker:ident) => {
        arithmetic!(@sums $type);
        arithmetic!(@scales $type);
        operator!(Mul mul: $type * Ratio = $type, Ratio * $type = $type);
        operator!(Div div: $type / Ratio = $type, $type / $type = Ratio);
    };
    (@sums $type:ident) => {
        operator!(Add add: $type + $type = $type);
        operator!(Sub sub: $type - $type = $type);
        impl core::ops::Neg for $type {
            type Output = Self;
            #[inline(always)]
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl core::ops::AddAssign for $type {
            #[inline(always)]
            fn add_assign(&mut self, right: Self) {
                self.0 += right.0;
            }
        }
        impl core::ops::SubAssign for $type {
            #[inline(always)]
            fn sub_assign(&mut self, right: Self) {
                self.0 -= right.0;
            }
        }
        impl core::iter::Sum for $type {
            fn sum<I: Iterator<Item = Self>>(quantities: I) -> Self {
                Self(quantities.map(|quantity| quantity.0).sum())
            }
        }
        impl $type {
            /// The size without the sign.
            #[inline]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }
    };
    (@scales $type:ident) => {
        operator!(Mul mul: $type * f64 = $type, f64 * $type = $type);
        operator!(Div div: $type / f64 = $type);
        impl core::ops::MulAssign<f64> for $type {
            #[inline(always)]
            fn mul_assign(&mut self, right: f64) {
                self.0 *= right;
            }
        }
        impl core::ops::DivAssign<f64> for $type {
            #[inline(always)]
            fn div_assign(&mut self, right: f64) {
                self.0 /= right;
            }
        }
        arithmetic!(@raw $type Mul mul *);
        arithmetic!(@raw $type Div div /);
    };
    (@raw $type:ident $trait:ident $function:ident $op:tt) => {
        impl<D: uom::si::Dimension + ?Sized> core::ops::$trait<Raw<D>> for $type
        where
            Raw<<$type as Dimensional>::Dimension>: core::ops::$trait<Raw<D>>,
        {
            type Output = <Raw<<$type as Dimensional>::Dimension> as core::ops::$trait<Raw<D>>>::Output;
            #[inline(always)]
            fn $function(self, right: Raw<D>) -> Self::Output {
                self.raw() $op right
            }
        }
        impl<D: uom::si::Dimension + ?Sized> core::ops::$trait<$type> for Raw<D>
        where
            Raw<D>: core::ops::$trait<Raw<<$type as Dimensional>::Dimension>>,
        {
            type Output = <Raw<D> as core::ops::$trait<Raw<<$type as Dimensional>::Dimension>>>::Output;
            #[inline(always)]
            fn $function(self, right: $type) -> Self::Output {
                self $op right.raw()
            }
        }
    };
}
pub(super) use arithmetic;

/// The dimension of a quantity, kind marker included.
pub trait Dimensional {
    /// Dimension as a type of `uom`.
    type Dimension: ?Sized;
    /// Exponents of length, mass, time and temperature.
    const EXPONENTS: [i8; 4];
}

/// Declares the kinds: type, words, dimension (length, mass, time, temperature), kind marker, SI symbol, the two
/// shop units, then a unit a line: `name "symbol" ["other spelling", ...] numerator / denominator (+ offset);`.
macro_rules! quantities {
    ($(
        $(#[$doc:meta])*
        $type:ident $words:literal [$l:ty, $m:ty, $t:ty, $th:ty; dyn $($marker:ident)::+] $si:literal metric $metric:ident us $us:ident {
            $( $unit:ident $symbol:literal [$($spelling:literal),*] ($num:expr) / ($den:expr) $(+ $offset:literal)? ;)+
        }
    )+) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Copy, PartialEq, PartialOrd)]
            #[repr(transparent)]
            pub struct $type(f64);

            impl $type {
                /// A quantity from a value in the coherent SI unit.
                #[inline(always)]
                pub const fn from_si(value: f64) -> Self {
                    Self(value)
                }
                /// The value in the coherent SI unit.
                #[inline(always)]
                pub const fn si(self) -> f64 {
                    self.0
                }
                /// A quantity from a value in a unit.
                #[inline]
                pub const fn of<U: UnitOf<Self>>(value: f64) -> Self {
                    Self(U::UNIT.to_si(value))
                }
                /// The value in a unit.
                #[inline]
                pub const fn in_<U: UnitOf<Self>>(self) -> f64 {
                    U::UNIT.from_si(self.0)
                }
                /// This value as a quantity of `uom`, for a formula whose intermediate results have no kind.
                #[inline(always)]
                pub const fn raw(self) -> Raw<<Self as Dimensional>::Dimension> {
                    Raw { dimension: core::marker::PhantomData, units: core::marker::PhantomData, value: self.0 }
                }
                /// The kind of a quantity of `uom` that has this dimension and kind marker.
                #[inline(always)]
                pub const fn from_raw(raw: Raw<<Self as Dimensional>::Dimension>) -> Self {
                    Self(raw.value)
                }
                /// The lesser of the two; the other one if one is NaN.
                #[inline]
                pub const fn min(self, other: Self) -> Self {
                    Self(self.0.min(other.0))
                }
                /// The greater of the two; the other one if one is NaN.
                #[inline]
                pub const fn max(self, other: Self) -> Self {
                    Self(self.0.max(other.0))
                }
                /// True if it is neither infinite nor NaN.
                #[inline]
                pub const fn is_finite(self) -> bool {
                    self.0.is_finite()
                }
            }

            impl Dimensional for $type {
                type Dimension = uom::si::ISQ<$l, $m, $t, Z0, $th, Z0, Z0, dyn $($marker)::+>;
                const EXPONENTS: [i8; 4] = [
                    <$l as uom::typenum::Integer>::I8, <$m as uom::typenum::Integer>::I8,
                    <$t as uom::typenum::Integer>::I8, <$th as uom::typenum::Integer>::I8,
                ];
            }
            impl From<$type> for Raw<<$type as Dimensional>::Dimension> {
                #[inline(always)]
                fn from(quantity: $type) -> Self {
                    quantity.raw()
                }
            }
            impl From<Raw<<$type as Dimensional>::Dimension>> for $type {
                #[inline(always)]
                fn from(raw: Raw<<$type as Dimensional>::Dimension>) -> Self {
                    Self::from_raw(raw)
                }
            }

            impl crate::base::Sealed for $type {}
            impl Quantity for $type {
                const KIND: &'static Kind = &Kind {
                    name: stringify!($type),
                    words: $words,
                    si: $si,
                    units: &[$(Unit {
                        name: stringify!($unit),
                        symbol: $symbol,
                        spellings: &[$($spelling),*],
                        numerator: $num,
                        denominator: $den,
                        offset: 0.0 $(+ $offset)?,
                    }),+],
                    metric: stringify!($metric),
                    us: stringify!($us),
                };
                #[inline(always)]
                fn si(self) -> f64 {
                    self.0
                }
                #[inline(always)]
                fn from_si(value: f64) -> Self {
                    Self(value)
                }
            }
            impl Number for $type {
                #[inline(always)]
                fn number(self) -> f64 {
                    self.0
                }
                #[inline(always)]
                fn of(number: f64) -> Self {
                    Self(number)
                }
            }
            impl core::fmt::Debug for $type {
                fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                    write!(f, concat!(stringify!($type), "({:?} ", $si, ")"), self.0)
                }
            }
            impl core::fmt::Display for $type {
                fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                    display(self.0, Self::KIND, f)
                }
            }
            /// Reads text as [`base::text`](crate::base::text) does.
            impl core::str::FromStr for $type {
                type Err = $crate::Error;
                fn from_str(text: &str) -> $crate::Result<Self> {
                    $crate::base::text::parse(text)
                }
            }
            /// As text with the unit, which reads back to the same bits.
            #[cfg(feature = "serde")]
            impl serde::Serialize for $type {
                fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                    super::serde::write(self.0, Self::KIND, serializer)
                }
            }
            /// From text with the unit.
            #[cfg(feature = "serde")]
            impl<'de> serde::Deserialize<'de> for $type {
                fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                    super::serde::read(deserializer)
                }
            }
            arithmetic!($type $($marker)::+);
            $(
                #[doc = concat!("`", $symbol, "`, a unit of [`", stringify!($type), "`].")]
                pub enum $unit {}
                impl UnitOf<$type> for $unit {
                    const UNIT: &'static Unit = &Unit {
                        name: stringify!($unit),
                        symbol: $symbol,
                        spellings: &[$($spelling),*],
                        numerator: $num,
                        denominator: $den,
                        offset: 0.0 $(+ $offset)?,
                    };
                }
            )+
        )+
        /// Every kind of quantity, in the order of this file.
        pub static KINDS: &[&Kind] = &[$(<$type as Quantity>::KIND),+];
    };
}
pub(super) use quantities;

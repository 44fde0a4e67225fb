//! Quantities and units: the one folder that touches `uom`.
//!
//! Every public signature of this crate uses a type of this module. A type is a *kind* of quantity, not only a
//! dimension: torque is not energy, an angular velocity is not a frequency, and there are three pressures.
//! Each kind lists its units in `kinds.rs`, with exact factors; the same short name stands for a unit in Rust
//! (`LinearStiffness::of::<lbf_in>(225.0)`), in Python (`225 * lbf_in`) and, as its symbol, in text
//! (`"225 lbf/in"`).
//!
//! ```
//! use axlewright::units::*;
//! const RATE: LinearStiffness = LinearStiffness::of::<lbf_in>(225.0);
//! let load: Force = RATE * Length::of::<inch>(2.0);
//! assert_eq!(load.in_::<lbf>(), 450.0);
//! assert_eq!((format!("{load}"), format!("{load:.1}"), format!("{load:#}")), ("2002 N".into(), "2001.7 N".into(), "450 lbf".into()));
//! assert_eq!("225 lb/in".parse(), Ok(RATE));
//! ```
//!
//! # Arithmetic
//! Like kinds add, subtract and compare; a number or a [`Ratio`] scales a quantity; the ratio of like kinds is a [`Ratio`].
//! Products and quotients that have a kind are listed in `products.rs`: `Force / Length` is a [`LinearStiffness`].
//! A formula whose intermediate result has no kind goes through `uom`, which checks the dimension:
//! ```
//! use axlewright::units::*;
//! let (spring, tyre) = (LinearStiffness::of::<N_mm>(30.0), LinearStiffness::of::<N_mm>(200.0));
//! let both = LinearStiffness::from_raw(spring.raw() * tyre / (spring + tyre));
//! assert_eq!(format!("{both}"), "26.09 N/mm");
//! ```
//! A [`Temperature`] changes by a [`TemperatureDifference`] only. An [`AbsolutePressure`] has no arithmetic.
//!
//! # What does not compile, on purpose
//! Crossing from one kind to another is a named function; `.into()` and plain arithmetic do not do it.
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let speed: AngularVelocity = Frequency::of::<Hz>(1.0).into(); // one hertz is not one radian per second
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let energy: Energy = Torque::of::<Nm>(1.0).into();
//! ```
//! ```compile_fail,E0308
//! use axlewright::units::*;
//! let energy = Energy::from_raw(Torque::of::<Nm>(1.0).raw());
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let ratio: Ratio = Angle::of::<deg>(1.0).into();
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let ambiguous = Force::of::<N>(1.0) * Length::of::<m>(1.0); // a torque or an energy: `torque`, `energy`
//! ```
//! ```compile_fail,E0369
//! use axlewright::units::*;
//! let p = AbsolutePressure::of::<bar_absolute>(1.0) + AbsolutePressure::of::<bar_absolute>(1.0);
//! ```
//! ```compile_fail,E0369
//! use axlewright::units::*;
//! let p = AbsolutePressure::of::<bar_absolute>(1.0) * 2.0;
//! ```
//! ```compile_fail,E0369
//! use axlewright::units::*;
//! let p = GaugePressure::of::<psi_gauge>(15.0) * 2.0;
//! ```
//! ```compile_fail,E0369
//! use axlewright::units::*;
//! let force = GaugePressure::of::<psi_gauge>(15.0) * Area::of::<m2>(1.0); // `gauge_force`
//! ```
//! ```compile_fail,E0308
//! use axlewright::units::*;
//! let stress: Stress = GaugePressure::of::<psi_gauge>(15.0);
//! ```
//! ```compile_fail,E0308
//! use axlewright::units::*;
//! let sum = Temperature::of::<degC>(20.0) + Temperature::of::<degC>(20.0);
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let rate = LinearStiffness::of::<mm>(225.0); // `mm` is not a unit of LinearStiffness
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! struct Mine(f64);
//! impl Quantity for Mine { // sealed: the kinds of this module are all there are
//!     const KIND: &'static Kind = Length::KIND;
//!     fn si(self) -> f64 { self.0 }
//!     fn from_si(value: f64) -> Self { Self(value) }
//! }
//! ```
//!
//! # A limit of this guard
//! `uom` is re-exported for code that needs its algebra. Its own imperial units are rounded (its two spellings of psi
//! differ by 1e-7): build quantities with `of` and the units of this module only. An upgrade of `uom` is a breaking
//! change of this crate.

mod crossings;
mod kinds;
mod products;
mod quantity;
#[cfg(feature = "serde")]
mod serde;
#[cfg(test)]
mod tests;

pub use crossings::*;
pub use kinds::*;
pub use quantity::Quantity;
pub use uom;

/// Description of a quantity at run time: its name and its units.
pub struct Kind {
    /// Name of the Rust type, which is also the name on every other surface: `LinearStiffness`.
    pub name: &'static str,
    /// Words for it: `linear stiffness`.
    pub words: &'static str,
    /// Symbol of the coherent SI unit, the unit of every plain number in this library.
    pub si: &'static str,
    /// Units, the first one coherent SI.
    pub units: &'static [Unit],
    /// Name of the unit that a metric shop prints.
    pub metric: &'static str,
    /// Name of the unit that a US shop prints.
    pub us: &'static str,
}

impl PartialEq for Kind {
    fn eq(&self, other: &Self) -> bool {
        core::ptr::eq(self, other) || self.name == other.name
    }
}
impl Eq for Kind {}

impl core::fmt::Debug for Kind {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.name)
    }
}

impl Kind {
    /// The kind of this name, if there is one.
    pub fn named(name: &str) -> Option<&'static Kind> {
        KINDS.iter().copied().find(|kind| kind.name == name)
    }
    /// The unit of this name, if the kind has it.
    pub fn unit(&self, name: &str) -> Option<&'static Unit> {
        self.units.iter().find(|unit| unit.name == name)
    }
}

/// A unit of one kind of quantity: `si = (value + offset) * numerator / denominator`.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// Short name in Rust and Python: `lbf_in`.
    pub name: &'static str,
    /// Printed symbol: `lbf/in`.
    pub symbol: &'static str,
    /// Other spellings.
    pub spellings: &'static [&'static str],
    /// Numerator of the exact factor.
    pub numerator: f64,
    /// Denominator of the exact factor.
    pub denominator: f64,
    /// Value added before scaling; not zero for temperatures only.
    pub offset: f64,
}

impl Unit {
    /// A value in this unit, in coherent SI.
    #[inline]
    pub const fn to_si(&self, value: f64) -> f64 {
        let shifted = if self.offset != 0.0 { value + self.offset } else { value };
        shifted * self.numerator / self.denominator
    }
    /// A value in coherent SI, in this unit.
    #[inline]
    pub const fn from_si(&self, si: f64) -> f64 {
        let scaled = si * self.denominator / self.numerator;
        if self.offset != 0.0 { scaled - self.offset } else { scaled }
    }
}

/// A unit `U` (`lbf_in`, `mm` ...) of the quantity `Q`.
#[diagnostic::on_unimplemented(
    message = "`{Self}` is not a unit of `{Q}`",
    label = "not a unit of `{Q}`",
    note = "the units of each quantity are listed beside it in `axlewright::units`"
)]
pub trait UnitOf<Q> {
    /// The unit's factor and names.
    const UNIT: &'static Unit;
}

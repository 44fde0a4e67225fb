//! Quantities and units: the one file that touches `uom`.
//!
//! Every public signature of this crate uses a type of this file. A type is a *kind* of quantity, not only a
//! dimension: torque is not energy, an angular velocity is not a frequency, and there are three pressures.
//! Each kind lists its units below, with exact factors; the same short name stands for a unit in Rust
//! (`LinearStiffness::of::<lbf_in>(225.0)`), in Python (`225 * lbf_in`) and, as its symbol, in text
//! (`"225 lbf/in"`).
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
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let ratio: Ratio = Angle::of::<deg>(1.0).into();
//! ```
//! ```compile_fail
//! use axlewright::units::*;
//! let p = AbsolutePressure::of::<bar_absolute>(1.0) + AbsolutePressure::of::<bar_absolute>(1.0);
//! ```
//! ```compile_fail
//! use axlewright::units::*;
//! let p = AbsolutePressure::of::<bar_absolute>(1.0) * 2.0;
//! ```
//! ```compile_fail
//! use axlewright::units::*;
//! let force = GaugePressure::of::<psi_gauge>(15.0) * Area::of::<m2>(1.0);
//! ```
//! ```compile_fail
//! use axlewright::units::*;
//! let stress: Stress = GaugePressure::of::<psi_gauge>(15.0);
//! ```
//! ```compile_fail
//! use axlewright::units::*;
//! let sum = Temperature::of::<degC>(20.0) + Temperature::of::<degC>(20.0);
//! ```
//! ```compile_fail,E0277
//! use axlewright::units::*;
//! let rate = LinearStiffness::of::<mm>(225.0); // `mm` is not a unit of LinearStiffness
//! ```
//!
//! # A limit of this guard
//! The types are `uom` quantities, and `uom` is re-exported for code that needs its algebra. Its own imperial
//! units are rounded (its two spellings of psi differ by 1e-7): build quantities with `of` and the units of
//! this file only. An upgrade of `uom` is a breaking change of this crate.
#![allow(non_camel_case_types)]

pub use uom;
use uom::si::{ISQ, Quantity as Raw, SI};
use uom::typenum::{N1, N2, N3, P1, P2, P3, Z0};
use uom::{Kind as Plain, marker};

/// Kinds of their own for quantities that share a dimension with another one: like kinds add, and products are
/// plain, but none becomes another through `.into()`.
macro_rules! kinds {
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
kinds! {
    /// Kind of an angle, an angular velocity or a torque.
    RotationKind;
    /// Kind of a torque per angle.
    RotationalStiffnessKind;
    /// Kind of a viscous damping rate (the same dimension as a mass rate).
    DampingKind;
}
/// Kind of a gauge pressure: a difference from the ambient pressure, which it does not know.
pub trait GaugeKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of an absolute pressure: no arithmetic but named functions.
pub trait AbsoluteKind {}
/// Kind of an angle per acceleration.
pub trait RollGradientKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of the spectral density of a road's height.
pub trait RoughnessKind: marker::Add + marker::Sub + marker::Neg {}
/// Kind of turns counted along a distance.
pub trait TurnsKind: marker::Add + marker::Sub + marker::Neg {}

/// What is known of a quantity when the program runs: its name and its units.
pub struct Kind {
    /// Name of the Rust type, which is also the name on every other surface: `LinearStiffness`.
    pub name: &'static str,
    /// What it is, in words: `linear stiffness`.
    pub words: &'static str,
    /// Symbol of the coherent SI unit, in which every plain number of the library stands.
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
    /// Other ways in which people write it.
    pub spellings: &'static [&'static str],
    /// Numerator of the exact factor.
    pub numerator: f64,
    /// Denominator of the exact factor.
    pub denominator: f64,
    /// Added before scaling; other than zero for temperatures only.
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
    message = "`{Self}` is not a unit of this quantity",
    label = "not a unit of `{Q}`",
    note = "the units of each quantity stand beside it in `axlewright::units`"
)]
pub trait UnitOf<Q> {
    /// The unit's factor and names.
    const UNIT: &'static Unit;
}

/// What every quantity type can do.
pub trait Quantity: Copy + core::fmt::Debug + PartialEq + 'static {
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

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const MILE: f64 = 1609.344;
const POUND: f64 = 0.45359237;
/// Standard acceleration of free fall, 9.80665 m/s² exactly (3rd CGPM, 1901; ISO 80000-3).
pub const STANDARD_GRAVITY: f64 = 9.80665;
/// 0.45359237 kg times 9.80665 m/s²; this decimal is exact.
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// One square inch, exactly.
const SQUARE_INCH: f64 = 0.000_645_16;
const TURN: f64 = core::f64::consts::TAU;

/// Declares the kinds: type, words, dimension (length, mass, time, temperature), kind marker, SI symbol, the two
/// shop units, then a unit a line: `name "symbol" ["other spelling", ...] numerator / denominator (+ offset);`.
macro_rules! quantities {
    ($(
        $(#[$doc:meta])*
        $type:ident $words:literal [$l:ty, $m:ty, $t:ty, $th:ty; $kind:ty] $si:literal metric $metric:ident us $us:ident {
            $( $unit:ident $symbol:literal [$($spelling:literal),*] ($num:expr) / ($den:expr) $(+ $offset:literal)? ;)+
        }
    )+) => {
        $(
            $(#[$doc])*
            pub type $type = Raw<ISQ<$l, $m, $t, Z0, $th, Z0, Z0, $kind>, SI<f64>, f64>;

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
                    self.value
                }
                #[inline(always)]
                fn from_si(value: f64) -> Self {
                    Raw { dimension: core::marker::PhantomData, units: core::marker::PhantomData, value }
                }
            }
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

quantities! {
    /// A pure number: a gear ratio, a motion ratio, a share, an efficiency, a fraction.
    Ratio "ratio" [Z0, Z0, Z0, Z0; dyn Plain] "1" metric one us one {
        one "" ["1"] (1.0) / (1.0);
        percent "%" ["percent", "pct"] (1.0) / (100.0);
    }
    /// A plane angle.
    Angle "angle" [Z0, Z0, Z0, Z0; dyn RotationKind] "rad" metric deg us deg {
        rad "rad" ["radian", "radians"] (1.0) / (1.0);
        deg "deg" ["°", "degree", "degrees"] (TURN) / (360.0);
        turn "turn" ["turns", "rev", "revs", "revolution", "revolutions"] (TURN) / (1.0);
    }
    /// A length, a travel, a radius, an altitude.
    Length "length" [P1, Z0, Z0, Z0; dyn Plain] "m" metric mm us inch {
        m "m" ["meter", "metre", "meters", "metres"] (1.0) / (1.0);
        mil "thou" ["mil", "mils"] (254.0) / (1e7);
        mm "mm" ["millimeter", "millimetre", "millimeters", "millimetres"] (1.0) / (1000.0);
        cm "cm" ["centimeter", "centimetre", "centimeters", "centimetres"] (1.0) / (100.0);
        km "km" ["kilometer", "kilometre", "kilometers", "kilometres"] (1000.0) / (1.0);
        inch "in" ["\"", "inch", "inches", "″"] (254.0) / (10000.0);
        ft "ft" ["'", "foot", "feet", "′"] (3048.0) / (10000.0);
        mile "mile" ["miles", "mi"] (MILE) / (1.0);
    }
    /// An area.
    Area "area" [P2, Z0, Z0, Z0; dyn Plain] "m²" metric cm2 us in2 {
        m2 "m²" [] (1.0) / (1.0);
        cm2 "cm²" [] (1.0) / (10000.0);
        mm2 "mm²" [] (1.0) / (1e6);
        in2 "in²" ["sq in", "square inch", "square inches"] (SQUARE_INCH) / (1.0);
        ft2 "ft²" ["sq ft", "square foot", "square feet"] (FOOT * FOOT) / (1.0);
    }
    /// A volume.
    Volume "volume" [P3, Z0, Z0, Z0; dyn Plain] "m³" metric L us gal_us {
        m3 "m³" [] (1.0) / (1.0);
        L "L" ["l", "liter", "litre", "liters", "litres"] (1.0) / (1000.0);
        mL "mL" ["ml", "cc", "cm³"] (1.0) / (1e6);
        in3 "in³" ["cu in", "cubic inch", "cubic inches", "cid"] (16_387_064.0) / (1e12);
        gal_us "US gal" ["gal US", "US gallon", "US gallons"] (3_785_411_784.0) / (1e12);
        gal_imp "imp gal" ["gal imp", "imperial gallon", "imperial gallons", "UK gal"] (4_546_090.0) / (1e9);
        qt_us "US qt" ["US quart", "US quarts"] (946_352_946.0) / (1e12);
    }
    /// A mass; a scale reading.
    Mass "mass" [Z0, P1, Z0, Z0; dyn Plain] "kg" metric kg us lb {
        kg "kg" ["kilogram", "kilograms", "kilo", "kilos"] (1.0) / (1.0);
        g "g" ["gram", "grams"] (1.0) / (1000.0);
        t "t" ["tonne", "tonnes", "metric ton", "metric tons"] (1000.0) / (1.0);
        lb "lb" ["lbs", "lbm", "pound", "pounds"] (POUND) / (1.0);
        oz "oz" ["ounce", "ounces"] (POUND) / (16.0);
        ton_short "short ton" ["short tons", "US ton", "US tons"] (POUND * 2000.0) / (1.0);
        ton_long "long ton" ["long tons", "imperial ton", "imperial tons"] (POUND * 2240.0) / (1.0);
    }
    /// A duration.
    Time "time" [Z0, Z0, P1, Z0; dyn Plain] "s" metric s us s {
        s "s" ["sec", "second", "seconds"] (1.0) / (1.0);
        ms "ms" ["millisecond", "milliseconds"] (1.0) / (1000.0);
        minute "min" ["minute", "minutes"] (60.0) / (1.0);
        h "h" ["hr", "hour", "hours"] (3600.0) / (1.0);
    }
    /// Cycles per time: a natural frequency. Not an angular velocity.
    Frequency "frequency" [Z0, Z0, N1, Z0; dyn Plain] "Hz" metric Hz us Hz {
        Hz "Hz" ["hertz", "cycles/s", "cps"] (1.0) / (1.0);
        kHz "kHz" [] (1000.0) / (1.0);
        cpm "cpm" ["cycles/min"] (1.0) / (60.0);
    }
    /// Angle per time: an engine speed. Not a frequency.
    AngularVelocity "angular velocity" [Z0, Z0, N1, Z0; dyn RotationKind] "rad/s" metric rpm us rpm {
        rad_s "rad/s" ["rad/sec"] (1.0) / (1.0);
        rpm "rpm" ["r/min", "rev/min", "1/min", "RPM"] (TURN) / (60.0);
        deg_s "deg/s" ["°/s", "deg/sec"] (TURN) / (360.0);
    }
    /// A speed along a line.
    Velocity "velocity" [P1, Z0, N1, Z0; dyn Plain] "m/s" metric km_h us mph {
        m_s "m/s" ["m/sec"] (1.0) / (1.0);
        km_h "km/h" ["kph", "kmh", "km/hr", "km/hour"] (1000.0) / (3600.0);
        mph "mph" ["mi/h", "mile/h", "miles/hour"] (MILE) / (3600.0);
        ft_s "ft/s" ["fps", "ft/sec", "feet/second"] (FOOT) / (1.0);
        in_s "in/s" ["in/sec", "inches/second"] (INCH) / (1.0);
        mm_s "mm/s" [] (1.0) / (1000.0);
    }
    /// An acceleration.
    Acceleration "acceleration" [P1, Z0, N2, Z0; dyn Plain] "m/s²" metric m_s2 us gn {
        m_s2 "m/s²" [] (1.0) / (1.0);
        gn "g0" ["gn", "gee", "gees"] (STANDARD_GRAVITY) / (1.0);
        ft_s2 "ft/s²" [] (FOOT) / (1.0);
    }
    /// A force; a load on a spring or a tyre.
    Force "force" [P1, P1, N2, Z0; dyn Plain] "N" metric N us lbf {
        N "N" ["newton", "newtons"] (1.0) / (1.0);
        kN "kN" ["kilonewton", "kilonewtons"] (1000.0) / (1.0);
        lbf "lbf" ["pound-force", "pounds-force", "lbsf"] (POUND_FORCE) / (1.0);
        kgf "kgf" ["kp", "kilogram-force"] (STANDARD_GRAVITY) / (1.0);
    }
    /// A moment of a force. Not an energy.
    Torque "torque" [P2, P1, N2, Z0; dyn RotationKind] "N·m" metric Nm us ft_lbf {
        Nm "N·m" ["Nm", "newton·m"] (1.0) / (1.0);
        ft_lbf "ft·lbf" ["ft·lb", "ftlb", "lb·ft", "lbf·ft", "ft·lbs", "lbs·ft", "foot·pound", "foot·pounds", "pound·foot", "pound·feet"] (POUND_FORCE * FOOT) / (1.0);
        in_lbf "in·lbf" ["in·lb", "lb·in", "lbf·in", "in·lbs", "lbs·in", "inch·pound", "inch·pounds"] (POUND_FORCE * INCH) / (1.0);
        kgf_m "kgf·m" ["m·kgf", "mkg", "kg·m"] (STANDARD_GRAVITY) / (1.0);
    }
    /// An energy; work; heat.
    Energy "energy" [P2, P1, N2, Z0; dyn Plain] "J" metric kJ us Btu {
        J "J" ["joule", "joules"] (1.0) / (1.0);
        kJ "kJ" [] (1000.0) / (1.0);
        kWh "kWh" ["kW·h"] (3.6e6) / (1.0);
        Btu "Btu" ["BTU"] (1_055.055_852_62) / (1.0);
    }
    /// A power; a flow of heat.
    Power "power" [P2, P1, N3, Z0; dyn Plain] "W" metric kW us hp_mechanical {
        W "W" ["watt", "watts"] (1.0) / (1.0);
        kW "kW" ["kilowatt", "kilowatts"] (1000.0) / (1.0);
        hp_mechanical "mechanical hp" ["hp mechanical", "hp (mechanical)", "hp(mechanical)", "imperial hp"] (POUND_FORCE * FOOT * 550.0) / (1.0);
        hp_metric "metric hp" ["hp metric", "hp (metric)", "hp(metric)", "PS", "cv", "pk"] (STANDARD_GRAVITY * 75.0) / (1.0);
        Btu_min "Btu/min" ["BTU/min"] (1_055.055_852_62) / (60.0);
    }
    /// Force per length: the rate of a spring, a tyre, a wheel.
    LinearStiffness "linear stiffness" [Z0, P1, N2, Z0; dyn Plain] "N/m" metric N_mm us lbf_in {
        N_per_m "N/m" [] (1.0) / (1.0);
        N_mm "N/mm" [] (1000.0) / (1.0);
        kN_m "kN/m" [] (1000.0) / (1.0);
        lbf_in "lbf/in" ["lb/in", "lbs/in", "lbf/inch", "lb/inch", "lbs/inch", "lb/\"", "pounds/inch", "pound/inch", "#/in"] (POUND_FORCE) / (INCH);
        lbf_ft "lbf/ft" ["lb/ft", "lbs/ft"] (POUND_FORCE) / (FOOT);
        N_cm "N/cm" [] (100.0) / (1.0);
        kgf_mm "kgf/mm" ["kg/mm"] (STANDARD_GRAVITY * 1000.0) / (1.0);
        kgf_cm "kgf/cm" ["kg/cm"] (STANDARD_GRAVITY * 100.0) / (1.0);
    }
    /// Torque per angle: roll stiffness, torsional stiffness. Not an energy.
    RotationalStiffness "rotational stiffness" [P2, P1, N2, Z0; dyn RotationalStiffnessKind] "N·m/rad" metric Nm_deg us ft_lbf_deg {
        Nm_rad "N·m/rad" ["Nm/rad"] (1.0) / (1.0);
        Nm_deg "N·m/deg" ["Nm/deg", "N·m/°", "Nm/°"] (360.0) / (TURN);
        ft_lbf_deg "ft·lbf/deg" ["ft·lb/deg", "lb·ft/deg", "lbf·ft/deg"] (POUND_FORCE * FOOT * 360.0) / (TURN);
    }
    /// Force per velocity: the rate of a damper. Not a mass flow.
    Damping "damping" [Z0, P1, N1, Z0; dyn DampingKind] "N·s/m" metric Ns_m us lbf_s_in {
        Ns_m "N·s/m" ["Ns/m", "N/(m/s)"] (1.0) / (1.0);
        Ns_mm "N·s/mm" ["Ns/mm"] (1000.0) / (1.0);
        lbf_s_in "lbf·s/in" ["lb·s/in", "lbf·sec/in", "lb·sec/in", "lbf/(in/s)", "lb/(in/s)"] (POUND_FORCE) / (INCH);
    }
    /// Mass times the square of its distance from an axis. Not a stiffness of the section.
    MomentOfInertia "moment of inertia" [P2, P1, Z0, Z0; dyn Plain] "kg·m²" metric kg_m2 us lb_ft2 {
        kg_m2 "kg·m²" ["kg m²", "kgm²"] (1.0) / (1.0);
        lb_ft2 "lb·ft²" ["lb ft²", "lbm·ft²"] (421_401_100_938_048.0) / (1e16);
    }
    /// Roll angle per lateral acceleration (body to ground).
    RollGradient "roll gradient" [N1, Z0, P2, Z0; dyn RollGradientKind] "rad·s²/m" metric deg_gn us deg_gn {
        rad_s2_m "rad·s²/m" ["rad/(m/s²)"] (1.0) / (1.0);
        deg_gn "deg/g0" ["deg/g", "°/g", "deg/gee"] (TURN) / (360.0 * STANDARD_GRAVITY);
    }
    /// Turns counted along a distance: revolutions per mile. The value in SI is turns per metre.
    TurnsPerDistance "turns per distance" [N1, Z0, Z0, Z0; dyn TurnsKind] "turn/m" metric rev_km us rev_mile {
        rev_m "turn/m" ["rev/m", "revs/m", "revolutions/m"] (1.0) / (1.0);
        rev_km "rev/km" ["revs/km", "revolutions/km", "1/km"] (1.0) / (1000.0);
        rev_mile "rev/mile" ["revs/mile", "rev/mi", "revs/mi", "revolutions/mile", "1/mile"] (1.0) / (MILE);
    }
    /// Spectral density of a road's height over its spatial frequency (ISO 8608). Not a volume.
    RoadRoughness "road roughness" [P3, Z0, Z0, Z0; dyn RoughnessKind] "m³/cycle" metric cm3_cycle us in3_cycle {
        m3_cycle "m³/cycle" ["m²/(cycle/m)"] (1.0) / (1.0);
        cm3_cycle "cm³/cycle" [] (1.0) / (1e6);
        in3_cycle "in³/cycle" ["in²/(cycle/in)"] (16_387_064.0) / (1e12);
    }
    /// Change of a motion ratio along the wheel travel.
    RatioPerLength "ratio per length" [N1, Z0, Z0, Z0; dyn Plain] "1/m" metric per_mm us per_in {
        per_m "1/m" [] (1.0) / (1.0);
        per_mm "1/mm" [] (1000.0) / (1.0);
        per_in "1/in" [] (1.0) / (INCH);
    }
    /// Mass per volume.
    Density "density" [N3, P1, Z0, Z0; dyn Plain] "kg/m³" metric kg_m3 us lb_ft3 {
        kg_m3 "kg/m³" [] (1.0) / (1.0);
        g_cm3 "g/cm³" ["g/cc", "kg/L", "g/mL"] (1000.0) / (1.0);
        lb_ft3 "lb/ft³" [] (POUND) / (FOOT * FOOT * FOOT);
        lb_in3 "lb/in³" [] (POUND) / (0.000_016_387_064);
    }
    /// Heat per mass and temperature.
    SpecificHeat "specific heat" [P2, Z0, N2, N1; dyn Plain] "J/(kg·K)" metric kJ_kgK us Btu_lbF {
        J_kgK "J/(kg·K)" ["J/kgK", "J/(kg K)", "J/kg·K", "J/(kg·°C)"] (1.0) / (1.0);
        kJ_kgK "kJ/(kg·K)" ["kJ/kgK", "kJ/(kg K)", "kJ/kg·K", "kJ/(kg·°C)"] (1000.0) / (1.0);
        Btu_lbF "Btu/(lb·°F)" ["Btu/lb·°F", "Btu/(lb·F)", "Btu/lb·F", "Btu/lbF"] (4_186.8) / (1.0);
    }
    /// Resistance of a liquid to shear. Not a kinematic viscosity.
    DynamicViscosity "dynamic viscosity" [N1, P1, N1, Z0; dyn Plain] "Pa·s" metric mPa_s us cP {
        Pa_s "Pa·s" ["N·s/m²"] (1.0) / (1.0);
        mPa_s "mPa·s" [] (1.0) / (1000.0);
        cP "cP" ["centipoise"] (1.0) / (1000.0);
        lb_ft_s "lb/(ft·s)" ["lb/ft·s"] (POUND) / (FOOT);
    }
    /// Heat flow per area and temperature gradient.
    ThermalConductivity "thermal conductivity" [P1, P1, N3, N1; dyn Plain] "W/(m·K)" metric W_mK us Btu_hftF {
        W_mK "W/(m·K)" ["W/mK", "W/(m K)", "W/m·K", "W/(m·°C)"] (1.0) / (1.0);
        Btu_hftF "Btu/(h·ft·°F)" ["Btu/(hr·ft·°F)", "Btu/(h·ft·F)", "Btu/(hr·ft·F)"] (1_055.055_852_62 * 9.0) / (FOOT * 3600.0 * 5.0);
        Btu_in_hft2F "Btu·in/(h·ft²·°F)" ["Btu·in/(hr·ft²·°F)", "Btu·in/(h·ft²·F)", "Btu·in/(hr·ft²·F)"] (1_055.055_852_62 * 9.0) / (FOOT * 12.0 * 3600.0 * 5.0);
    }
    /// A pressure above vacuum: of the air, of steam.
    AbsolutePressure "absolute pressure" [N1, P1, N2, Z0; dyn AbsoluteKind] "Pa" metric kPa_absolute us psi_absolute {
        Pa_absolute "Pa absolute" ["Pa abs", "Pa(a)", "Pa a"] (1.0) / (1.0);
        hPa_absolute "hPa absolute" ["hPa abs", "hPa(a)", "hPa a", "mbar absolute", "mbar abs", "mbar a"] (100.0) / (1.0);
        kPa_absolute "kPa absolute" ["kPa abs", "kPa(a)", "kPa a"] (1000.0) / (1.0);
        MPa_absolute "MPa absolute" ["MPa abs", "MPa(a)", "MPa a"] (1e6) / (1.0);
        bar_absolute "bar absolute" ["bar abs", "bar(a)", "bara", "bar a"] (1e5) / (1.0);
        psi_absolute "psi absolute" ["psia", "psi abs", "psi(a)", "psi a"] (POUND_FORCE) / (SQUARE_INCH);
        atm_absolute "atm" ["atm absolute", "standard atmosphere"] (101_325.0) / (1.0);
        inHg_absolute "inHg absolute" ["inHg abs", "inHg a", "in Hg absolute"] (3_386.389) / (1.0);
    }
    /// A pressure above the ambient: a cap's rating, a tyre's inflation, boost.
    GaugePressure "gauge pressure" [N1, P1, N2, Z0; dyn GaugeKind] "Pa" metric kPa_gauge us psi_gauge {
        Pa_gauge "Pa gauge" ["Pa(g)", "Pa g"] (1.0) / (1.0);
        kPa_gauge "kPa gauge" ["kPa(g)", "kPa g"] (1000.0) / (1.0);
        bar_gauge "bar gauge" ["bar(g)", "barg", "bar g"] (1e5) / (1.0);
        psi_gauge "psi gauge" ["psig", "psi(g)", "psi g"] (POUND_FORCE) / (SQUARE_INCH);
        inHg_gauge "inHg gauge" ["inHg g", "in Hg gauge"] (3_386.389) / (1.0);
    }
    /// A stress, a modulus, or a difference of two pressures.
    Stress "stress or pressure difference" [N1, P1, N2, Z0; dyn Plain] "Pa" metric MPa us psi {
        Pa "Pa" ["Pa difference", "pascal", "pascals", "N/m²"] (1.0) / (1.0);
        kPa "kPa" ["kPa difference"] (1000.0) / (1.0);
        MPa "MPa" ["MPa difference", "N/mm²"] (1e6) / (1.0);
        GPa "GPa" ["kN/mm²"] (1e9) / (1.0);
        bar "bar" ["bar difference"] (1e5) / (1.0);
        psi "psi" ["psi difference", "lbf/in²", "lb/in²"] (POUND_FORCE) / (SQUARE_INCH);
        ksi "ksi" ["kpsi"] (POUND_FORCE * 1000.0) / (SQUARE_INCH);
        Mpsi "Mpsi" [] (POUND_FORCE * 1e6) / (SQUARE_INCH);
    }
    /// A temperature: a point on a scale.
    Temperature "temperature" [Z0, Z0, Z0, P1; dyn uom::si::marker::TemperatureKind] "K" metric degC us degF {
        K "K" ["kelvin"] (1.0) / (1.0);
        degC "°C" ["degC", "deg C", "C", "celsius"] (1.0) / (1.0) + 273.15;
        degF "°F" ["degF", "deg F", "F", "fahrenheit"] (5.0) / (9.0) + 459.67;
        degR "°R" ["degR", "deg R", "rankine"] (5.0) / (9.0);
    }
    /// A difference of two temperatures: a margin.
    TemperatureDifference "temperature difference" [Z0, Z0, Z0, P1; dyn Plain] "K" metric delta_K us delta_degF {
        delta_K "delta K" ["K", "delta_K", "ΔK", "Δ K"] (1.0) / (1.0);
        delta_degC "delta °C" ["delta_degC", "Δ°C", "Δ °C", "delta degC", "delta C"] (1.0) / (1.0);
        delta_degF "delta °F" ["delta_degF", "Δ°F", "Δ °F", "delta degF", "delta F"] (5.0) / (9.0);
    }
    /// Share by which a length or a volume grows with a temperature difference.
    ThermalExpansion "thermal expansion coefficient" [Z0, Z0, Z0, N1; dyn Plain] "1/K" metric ppm_K us ppm_degF {
        per_K "1/K" ["1/°C", "1/degC"] (1.0) / (1.0);
        ppm_K "ppm/K" ["ppm/°C", "ppm/degC"] (1.0) / (1e6);
        per_degF "1/°F" ["1/degF"] (9.0) / (5.0);
        ppm_degF "ppm/°F" ["ppm/degF"] (9.0) / (5e6);
    }
}

/// Absolute pressure of a gauge reading where the ambient (station) pressure is this.
#[inline]
pub fn absolute(reading: GaugePressure, ambient: AbsolutePressure) -> AbsolutePressure {
    AbsolutePressure::from_si(reading.si() + ambient.si())
}

/// Gauge reading of an absolute pressure where the ambient (station) pressure is this.
#[inline]
pub fn gauge(pressure: AbsolutePressure, ambient: AbsolutePressure) -> GaugePressure {
    GaugePressure::from_si(pressure.si() - ambient.si())
}

/// How much the first absolute pressure exceeds the second.
#[inline]
pub fn pressure_difference(pressure: AbsolutePressure, from: AbsolutePressure) -> Stress {
    Stress::from_si(pressure.si() - from.si())
}

/// The first absolute pressure over the second.
#[inline]
pub fn pressure_ratio(pressure: AbsolutePressure, over: AbsolutePressure) -> Ratio {
    Ratio::from_si(pressure.si() / over.si())
}

/// Torque of a force on a lever square to it.
#[inline]
pub fn torque(force: Force, lever: Length) -> Torque {
    Torque::from_si(force.si() * lever.si())
}

/// How much the first temperature exceeds the second.
#[inline]
pub fn temperature_difference(temperature: Temperature, from: Temperature) -> TemperatureDifference {
    TemperatureDifference::from_si(temperature.si() - from.si())
}

/// Angular velocity of one turn a cycle.
#[inline]
pub fn angular_velocity(frequency: Frequency) -> AngularVelocity {
    AngularVelocity::from_si(frequency.si() * TURN)
}

/// Cycles per time of one cycle a turn.
#[inline]
pub fn frequency(angular_velocity: AngularVelocity) -> Frequency {
    Frequency::from_si(angular_velocity.si() / TURN)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one_in_si(kind: &str, name: &str) -> f64 {
        Kind::named(kind).unwrap().unit(name).unwrap().to_si(1.0)
    }

    /// Kind, unit, one unit in SI to all digits that exist or seventeen of them. The definitions (inch, pound, standard
    /// gravity, International Table Btu, gallons) are those of NIST SP 811 (2008) Appendix B and NIST Handbook 44
    /// Appendix C, written from memory; the other numbers follow from them by exact rational arithmetic
    /// (an independent script), rounded once.
    #[allow(clippy::excessive_precision)] // the digits are those of the exact decimals
    const DEFINITIONS: &[(&str, &str, f64)] = &[
        ("Length", "inch", 0.0254),                             // exact, SP 811 B.8
        ("Length", "ft", 0.3048),                               // exact, SP 811 B.8
        ("Length", "mile", 1609.344),                           // 5280 ft, exact, SP 811 B.8
        ("Area", "in2", 0.000_645_16),                          // in²
        ("Area", "ft2", 0.092_903_04),                          // ft²
        ("Volume", "in3", 0.000_016_387_064),                   // in³
        ("Volume", "gal_us", 0.003_785_411_784),                // 231 in³, Handbook 44 App. C
        ("Volume", "qt_us", 0.000_946_352_946),                 // a quarter of it
        ("Volume", "gal_imp", 0.004_546_09),                    // 4.546 09 L, exact, SP 811 B.8
        ("Mass", "lb", 0.453_592_37),                           // exact, SP 811 B.8
        ("Mass", "oz", 0.028_349_523_125),                      // lb / 16
        ("Mass", "ton_short", 907.184_74),                      // 2000 lb, Handbook 44 App. C
        ("Mass", "ton_long", 1_016.046_908_8),                  // 2240 lb, Handbook 44 App. C
        ("Velocity", "km_h", 1.0 / 3.6),                        // exact
        ("Velocity", "mph", 0.447_04),                          // mile / h, exact, SP 811 B.8
        ("Velocity", "ft_s", 0.3048),                           // exact
        ("Acceleration", "gn", 9.806_65),                       // exact, SP 811 B.8 (3rd CGPM, 1901)
        ("Acceleration", "ft_s2", 0.3048),                      // exact
        ("Force", "lbf", 4.448_221_615_260_5),                  // lb g0, exact
        ("Force", "kgf", 9.806_65),                             // kg g0, exact
        ("Torque", "ft_lbf", 1.355_817_948_331_400_4),          // ft lbf
        ("Torque", "in_lbf", 0.112_984_829_027_616_7),          // in lbf
        ("Torque", "kgf_m", 9.806_65),                          // kgf m
        ("Energy", "Btu", 1_055.055_852_62),                    // Btu_IT, exact, SP 811 B.8
        ("Energy", "kWh", 3.6e6),                               // exact
        ("Power", "hp_mechanical", 745.699_871_582_270_22),     // 550 ft lbf/s, SP 811 B.8
        ("Power", "hp_metric", 735.498_75),                     // 75 kgf m/s, exact, SP 811 B.8
        ("Power", "Btu_min", 17.584_264_210_333_333),           // Btu_IT / 60 s
        ("LinearStiffness", "lbf_in", 175.126_835_246_476_4),   // lbf / in
        ("LinearStiffness", "lbf_ft", 14.593_902_937_206_364),  // lbf / ft
        ("LinearStiffness", "kgf_mm", 9_806.65),                // exact
        ("Damping", "lbf_s_in", 175.126_835_246_476_4),         // lbf s / in
        ("MomentOfInertia", "lb_ft2", 0.042_140_110_093_804_8), // lb ft², exact
        ("RoadRoughness", "in3_cycle", 0.000_016_387_064),      // in³, exact
        ("TurnsPerDistance", "rev_mile", 1.0 / 1609.344),       // one turn a mile
        ("Density", "lb_ft3", 16.018_463_373_960_14),           // lb / ft³
        ("Density", "lb_in3", 27_679.904_710_203_122),          // lb / in³
        ("Stress", "psi", 6_894.757_293_168_361_3),             // lbf / in²
        ("Stress", "ksi", 6_894_757.293_168_361),               // 1000 psi
        ("Stress", "Mpsi", 6_894_757_293.168_361),              // 1e6 psi
        ("AbsolutePressure", "psi_absolute", 6_894.757_293_168_361_3),
        ("GaugePressure", "psi_gauge", 6_894.757_293_168_361_3),
        // Btu_IT / (lb °F), exact, and poise, exact: SP 811 B.8; Btu_IT / (h ft °F).
        ("SpecificHeat", "Btu_lbF", 4_186.8),
        ("DynamicViscosity", "cP", 0.001),
        ("DynamicViscosity", "lb_ft_s", 1.488_163_943_569_553_7),
        ("ThermalConductivity", "Btu_hftF", 1.730_734_666_371_391_2),
        ("ThermalConductivity", "Btu_in_hft2F", 0.144_227_888_864_282_6),
        ("ThermalExpansion", "per_degF", 1.8), // exact, SP 811 B.8
        ("ThermalExpansion", "ppm_degF", 1.8e-6),
        ("AbsolutePressure", "atm_absolute", 101_325.0), // standard atmosphere, exact, SP 811 B.8
        ("AbsolutePressure", "inHg_absolute", 3_386.389), // inch of mercury, conventional, SP 811 B.8
        ("GaugePressure", "inHg_gauge", 3_386.389),      // the same
        ("TemperatureDifference", "delta_degF", 5.0 / 9.0), // exact, SP 811 B.8
        ("Angle", "deg", 0.017_453_292_519_943_295),     // pi / 180
        ("AngularVelocity", "rpm", 0.104_719_755_119_659_77), // 2 pi / 60
        ("MomentOfInertia", "lb_ft2", 0.042_140_110_093_804_8), // lb ft², exact
        ("RollGradient", "deg_gn", 0.001_779_740_535_243_258), // pi / 180 / g0
        ("RotationalStiffness", "Nm_deg", 57.295_779_513_082_32), // 180 / pi
    ];

    #[test]
    fn factors_follow_from_their_definitions() {
        for (kind, name, definition) in DEFINITIONS {
            let found = one_in_si(kind, name);
            let ulp = definition.next_up() - definition;
            assert!((found - definition).abs() <= ulp, "{name}: {found:e} is not {definition:e}");
        }
    }

    #[test]
    fn units_of_one_kind_agree_with_each_other() {
        let pairs = [
            ("Length", "ft", "inch", 12.0),                        // Handbook 44 App. C
            ("Length", "mile", "ft", 5280.0),                      // Handbook 44 App. C
            ("Volume", "gal_us", "in3", 231.0),                    // Handbook 44 App. C
            ("Volume", "gal_us", "qt_us", 4.0),                    // Handbook 44 App. C
            ("Mass", "lb", "oz", 16.0),                            // Handbook 44 App. C
            ("Torque", "ft_lbf", "in_lbf", 12.0),                  // from ft and in
            ("LinearStiffness", "lbf_in", "lbf_ft", 12.0),         // from ft and in
            ("Density", "lb_in3", "lb_ft3", 1728.0),               // from ft and in
            ("Velocity", "ft_s", "in_s", 12.0),                    // from ft and in
            ("TurnsPerDistance", "rev_km", "rev_mile", 1.609_344), // from mile and km
            ("RotationalStiffness", "ft_lbf_deg", "Nm_deg", 1.355_817_948_331_400_4), // from ft lbf
            // From kilo, milli, and the foot of twelve inches.
            ("SpecificHeat", "kJ_kgK", "J_kgK", 1000.0),
            ("DynamicViscosity", "Pa_s", "mPa_s", 1000.0),
            ("ThermalConductivity", "Btu_hftF", "Btu_in_hft2F", 12.0),
            ("ThermalExpansion", "per_K", "ppm_K", 1e6),
        ];
        for (kind, one, other, ratio) in pairs {
            let found = one_in_si(kind, one) / one_in_si(kind, other);
            assert!((found / ratio - 1.0).abs() <= 2.0 * f64::EPSILON, "{one} / {other} = {found}");
        }
    }

    /// The conventional inch of mercury is 25.4 times the conventional millimetre, 133.3224 Pa (SP 811 B.8; its digits
    /// 133.322 387 415 from memory), rounded to seven digits.
    #[test]
    fn inch_of_mercury_is_the_conventional_one() {
        assert!((one_in_si("AbsolutePressure", "inHg_absolute") - 25.4 * 133.322_387_415).abs() < 0.0005);
    }

    /// Fixed points of the scales: NIST SP 811 B.8, t/°C = T/K - 273.15, t/°F = T/°R - 459.67, T/K = (T/°R)/1.8.
    #[test]
    fn temperatures_meet_their_fixed_points() {
        let si =
            |name: &str, value: f64| Kind::named("Temperature").unwrap().unit(name).unwrap().to_si(value);
        for (celsius, fahrenheit) in [(0.0, 32.0), (100.0, 212.0), (-40.0, -40.0), (37.0, 98.6), (20.0, 68.0)]
        {
            assert!((si("degC", celsius) - si("degF", fahrenheit)).abs() < 2e-13, "{celsius} °C");
        }
        assert_eq!(si("degC", 0.0), 273.15);
        assert_eq!(si("degF", -459.67), 0.0);
        assert_eq!(si("degR", 1.8), 1.0);
        assert_eq!(one_in_si("TemperatureDifference", "delta_degC"), 1.0);
    }

    #[test]
    fn first_units_are_coherent_and_names_belong_to_one_kind() {
        let mut names = std::collections::BTreeSet::new();
        for kind in KINDS {
            let first = &kind.units[0];
            assert_eq!((first.numerator, first.denominator, first.offset), (1.0, 1.0, 0.0), "{}", kind.name);
            for unit in kind.units {
                assert!(names.insert(unit.name), "{} twice", unit.name);
                assert!((unit.from_si(unit.to_si(3.5)) / 3.5 - 1.0).abs() < 1e-13, "{}", unit.name);
            }
            assert!(kind.unit(kind.metric).is_some() && kind.unit(kind.us).is_some(), "{}", kind.name);
        }
    }
}

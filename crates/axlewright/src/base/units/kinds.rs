//! The kinds of quantity and their units.
#![allow(non_camel_case_types)]

use super::quantity::*;
use super::{Kind, Unit, UnitOf};
use core::f64::consts::TAU as TURN;
use uom::Kind as Plain;
use uom::typenum::{N1, N2, N3, P1, P2, P3, P4, P6, Z0};

pub(super) const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const MILE: f64 = 1609.344;
const POUND: f64 = 0.45359237;
/// Standard acceleration of free fall, 9.80665 m/s² exactly (3rd CGPM, 1901; ISO 80000-3).
pub const STANDARD_GRAVITY: f64 = 9.80665;
/// 0.45359237 kg times 9.80665 m/s²; this decimal is exact.
pub(super) const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// One square inch, exactly.
const SQUARE_INCH: f64 = 0.000_645_16;

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
        ft_min "ft/min" ["fpm", "feet/minute"] (FOOT) / (60.0);
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
    /// Second moment of a section's area: its resistance to bending or, as a torsion constant, to twist. Not a moment of inertia of a mass.
    SecondMoment "second moment of area" [P4, Z0, Z0, Z0; dyn Plain] "m⁴" metric cm4 us in4 {
        m4 "m⁴" [] (1.0) / (1.0);
        cm4 "cm⁴" [] (1.0) / (1e8);
        mm4 "mm⁴" [] (1.0) / (1e12);
        in4 "in⁴" [] (41_623_142_560_000.0) / (1e20);
    }
    /// Moment over the stress that it causes: elastic, plastic, or in torsion. Not a volume.
    SectionModulus "section modulus" [P3, Z0, Z0, Z0; dyn ModulusKind] "m³" metric cm3_modulus us in3_modulus {
        m3_modulus "m³ modulus" [] (1.0) / (1.0);
        cm3_modulus "cm³ modulus" [] (1.0) / (1e6);
        mm3_modulus "mm³ modulus" [] (1.0) / (1e9);
        in3_modulus "in³ modulus" [] (16_387_064.0) / (1e12);
    }
    /// Resistance of an open section to warping, when its ends are held plane.
    WarpingConstant "warping constant" [P6, Z0, Z0, Z0; dyn Plain] "m⁶" metric cm6 us in6 {
        m6 "m⁶" [] (1.0) / (1.0);
        cm6 "cm⁶" [] (1.0) / (1e12);
        mm6 "mm⁶" [] (1.0) / (1e18);
        in6 "in⁶" [] (268_535_866_540_096.0) / (1e24);
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

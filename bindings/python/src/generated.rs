// Generated from the core's signatures. Do not edit.
use crate::call::Kernels;
use crate::ufunc::Kernel;
use axlewright::Result;
use axlewright::units::{self, Kind, Quantity};
use pyo3::PyResult;

struct SpringWheelRate;

impl Kernel<3, 1> for SpringWheelRate {
    const NAME: &'static str = "spring.wheel_rate";
    const DOC: &'static str = "Wheel rate of a spring on a lever, from its motion ratio and its angle: the part that does not depend on load.";
    const PARAMETERS: [(&'static str, &'static Kind); 3] = [
        ("spring_rate", units::LinearStiffness::KIND),
        ("motion_ratio", units::Ratio::KIND),
        ("angle_from_measured_travel", units::Angle::KIND),
    ];
    const RESULTS: [(&'static str, &'static Kind); 1] = [("wheel_rate", units::LinearStiffness::KIND)];
    #[inline(always)]
    fn call([a, b, c]: [f64; 3]) -> Result<[f64; 1]> {
        let made =
            axlewright::spring::wheel_rate(Quantity::from_si(a), Quantity::from_si(b), Quantity::from_si(c))?;
        Ok([made.si()])
    }
}

struct SpringRideRate;

impl Kernel<2, 1> for SpringRideRate {
    const NAME: &'static str = "spring.ride_rate";
    const DOC: &'static str = "Rate of a wheel and its tyre in series.";
    const PARAMETERS: [(&'static str, &'static Kind); 2] =
        [("wheel_rate", units::LinearStiffness::KIND), ("tyre_rate", units::LinearStiffness::KIND)];
    const RESULTS: [(&'static str, &'static Kind); 1] = [("ride_rate", units::LinearStiffness::KIND)];
    #[inline(always)]
    fn call([a, b]: [f64; 2]) -> Result<[f64; 1]> {
        let made = axlewright::spring::ride_rate(Quantity::from_si(a), Quantity::from_si(b))?;
        Ok([made.si()])
    }
}

struct MassWeightDistribution;

impl Kernel<7, 8> for MassWeightDistribution {
    const NAME: &'static str = "mass.weight_distribution";
    const DOC: &'static str = "Axle loads, shares and centre of gravity from four scale readings.";
    const PARAMETERS: [(&'static str, &'static Kind); 7] = [
        ("left_front", units::Mass::KIND),
        ("right_front", units::Mass::KIND),
        ("left_rear", units::Mass::KIND),
        ("right_rear", units::Mass::KIND),
        ("wheelbase", units::Length::KIND),
        ("front_track", units::Length::KIND),
        ("rear_track", units::Length::KIND),
    ];
    const RESULTS: [(&'static str, &'static Kind); 8] = [
        ("total_mass", units::Mass::KIND),
        ("front_axle_mass", units::Mass::KIND),
        ("rear_axle_mass", units::Mass::KIND),
        ("front_share", units::Ratio::KIND),
        ("left_share", units::Ratio::KIND),
        ("diagonal_share", units::Ratio::KIND),
        ("behind_front_axle", units::Length::KIND),
        ("left_of_centreline", units::Length::KIND),
    ];
    #[inline(always)]
    fn call([a, b, c, d, e, f, g]: [f64; 7]) -> Result<[f64; 8]> {
        let made = axlewright::mass::weight_distribution(
            Quantity::from_si(a),
            Quantity::from_si(b),
            Quantity::from_si(c),
            Quantity::from_si(d),
            Quantity::from_si(e),
            Quantity::from_si(f),
            Quantity::from_si(g),
        )?;
        Ok([
            made.total_mass.si(),
            made.front_axle_mass.si(),
            made.rear_axle_mass.si(),
            made.front_share.si(),
            made.left_share.si(),
            made.diagonal_share.si(),
            made.behind_front_axle.si(),
            made.left_of_centreline.si(),
        ])
    }
}

pub fn register(kernels: &Kernels<'_>) -> PyResult<()> {
    kernels.add::<SpringWheelRate, 3, 1>()?;
    kernels.add::<SpringRideRate, 2, 1>()?;
    kernels.add::<MassWeightDistribution, 7, 8>()?;
    kernels.model::<axlewright::cooling::Coolant>("cooling.Coolant", "cooling.Coolant.to_json")?;
    kernels.method::<axlewright::cooling::Coolant>("cooling.Coolant.margin", |model, call| {
        let made = call.answer(model.margin())?;
        call.parts([
            call.give(made.absolute_pressure)?,
            call.give(made.mass_fraction)?,
            call.give(made.boiling_temperature)?,
            call.give(made.margin)?,
            call.word(made.verdict.word()),
        ])
    })?;
    kernels
        .method::<axlewright::cooling::Coolant>("cooling.Coolant.freezing_temperature", |model, call| {
            call.give(call.answer(model.freezing_temperature())?)
        })?;
    kernels.method::<axlewright::cooling::Coolant>("cooling.Coolant.margin_table", |model, call| {
        let cap = call.quantities(0, "cap")?;
        let altitude = call.quantities(1, "altitude")?;
        let strength = call.quantities(2, "strength")?;
        call.table(&call.answer(model.margin_table(&cap, &altitude, &strength))?)
    })?;
    Ok(())
}

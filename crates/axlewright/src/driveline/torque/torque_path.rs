#![expect(clippy::indexing_slicing, reason = "one demand and one grip a part, in the order of the parts")]

use super::demand::{AtGround, Bound, Geared, GripBounds, Pulling, Rated};
use super::rating::{RatingKind, Side};
use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::driveline::{Differential, grip_torque};
use crate::units::{Force, Length, Quantity, Ratio, Torque};
use crate::{Error, Result, cannot, valid};

/// The way of the torque from the clutch to the ground: parts in order, each with what it may carry.
///
/// # Formula
/// input `T_k = s_k T_(k-1)`, output `T_k i_k e_k`; `T_0` is the engine's torque, or for a dropped clutch its capacity times the shock factor;
/// both no more than the grip allows: output `G_k = m F r_l s_1 ... s_k / (i_(k+1) e_(k+1) ... i_n e_n)`, for a dropped clutch times the inertia factor;
/// margin = rating / torque on the rated side
///
/// # Fields
/// - `engine_torque` — peak torque at the crankshaft; behind a converter that at its turbine at stall
/// - `clutch_capacity` — what the clutch holds before it slips: it bounds the torque of a dropped clutch, not the engine does
/// - `shock_factor` — how much a dropped clutch multiplies the torque at its output (2 where it is applied suddenly and undamped); where nothing bounds a dropped clutch, a peak, yield or ultimate rating is `not known`, never guessed
/// - `grip` — where the tyres' grip is to bound the torque: `driven_load` (on the ground under all driven wheels, with the transfer that the same launch causes), `loaded_radius`, `strength_coefficient` (a high bound of grip, for what a part must bear; without it the grip relieves no part), `pull_coefficient` (a mean, for what the vehicle gets to the ground; wanted by `pull` alone), and `inertia_factor` (by how much the inertia between part and ground lets a dropped clutch exceed the grip; without it grip bounds the steady torque only)
/// - `parts` — from behind the clutch on, the transfer case in the range that is looked at among them, each with `name` and, where it has them, `ratio` (input over output speed), `least_ratio` (of the gear or range with the least ratio; that of the part itself where its ratio stays, as of an axle: a rating counts in every gear and range, so without it the grip relieves no rating on the input side, and the parts before it are relieved in that gear only), `efficiency`, `differential` (for one of the two shafts behind a differential: `open`, half of the torque and of the grip each; `limited_slip` or `locked`, all of both through one shaft, as the other wheel may hang; left out where it is not known, which counts as locked), `share` (for a part behind any other split: the share of torque and grip before it that goes its way at most), `torque_rating`, `rating_side` (input, output) and `rating_kind` (continuous, peak, yield, ultimate)
///
/// # Valid for
/// A steady pull, and the clutch dropped from rest. The strength coefficient is not less than the pull coefficient. A continuous rating is held against the steady
/// torque, the other kinds against that of a dropped clutch; one that the steady torque exceeds is `short` without a factor. A rating without kind, or without side where the sides differ, is `not known`.
/// One path is one gear and one range: look at reverse, at low range and at a converter's stall, too. A wheel in a rut or against a kerb has more grip than any tyre.
///
/// # Source
/// Balance of power through a geared train; Coulomb friction at the contact patch; suddenly applied load: factor 2 for an undamped elastic system (Shigley's Mechanical Engineering Design, from memory)
///
/// # Caution
/// A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers, local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TorquePath {
    /// Peak torque at the crankshaft.
    pub engine_torque: Value<Torque>,
    /// Torque that the clutch holds before it slips.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub clutch_capacity: Option<Value<Torque>>,
    /// Factor on the torque at the output of a dropped clutch.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shock_factor: Option<Value<Ratio>>,
    /// Grip of the tyres.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grip: Option<Grip>,
    /// Parts from behind the clutch on.
    pub parts: Vec<Part>,
}

/// Grip of the tyres of the driven wheels.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `driven_load`, `loaded_radius` and, where they are known, `strength_coefficient`, `pull_coefficient` and `inertia_factor`"
    )
)]
pub struct Grip {
    /// Load on the ground under all driven wheels, with the transfer of the same launch.
    pub driven_load: Value<Force>,
    /// Loaded radius: wheel centre to ground under load.
    pub loaded_radius: Value<Length>,
    /// A high bound of grip: for what a part must bear.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub strength_coefficient: Option<Value<Ratio>>,
    /// A mean of grip: for what the vehicle gets to the ground.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pull_coefficient: Option<Value<Ratio>>,
    /// By how much the inertia between part and ground lets a dropped clutch exceed the grip.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub inertia_factor: Option<Value<Ratio>>,
}

/// One part of a torque path.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `name` and, where they are known, `ratio`, `least_ratio`, `efficiency`, `differential`, `share`, `torque_rating`, `rating_side` and `rating_kind`"
    )
)]
pub struct Part {
    /// Name of the part.
    pub name: String,
    /// Input over output speed; 1 if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ratio: Option<Value<Ratio>>,
    /// Least ratio that can be shifted to; that of the part itself where its ratio stays.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_ratio: Option<Value<Ratio>>,
    /// Power out over power in; 1 if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub efficiency: Option<Value<Ratio>>,
    /// Differential before it, if it is one of the two shafts behind one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub differential: Option<Differential>,
    /// Share of torque and grip before it that goes its way at most; 1 where neither it nor `differential` is given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub share: Option<Value<Ratio>>,
    /// Torque that it may carry, as its maker says.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub torque_rating: Option<Value<Torque>>,
    /// Side on which the rating counts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating_side: Option<Side>,
    /// Kind of the rating.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating_kind: Option<RatingKind>,
}

record! {
    /// Torque and force at the ground.
    #[derive(Debug, Clone, PartialEq)]
    pub struct Pull {
        /// Torque of the driven wheels together.
        pub wheel_torque: Torque,
        /// Tractive force of the driven wheels together.
        pub tractive_force: Force,
        /// Bound on it: `engine` or `grip`.
        pub bound: String,
    }
}

record! {
    /// The part with the least known margin.
    #[derive(Debug, Clone, PartialEq)]
    pub struct Weakest {
        /// Name of the part.
        pub part: String,
        /// Torque on its rated side, shock included unless its rating is continuous.
        pub torque: Torque,
        /// Margin: its rating over that torque.
        pub margin: Ratio,
        /// Number of parts with an unknown margin.
        pub not_known: i64,
    }
}

record! {
    /// Steady torques of a part.
    struct Steady {
        input_torque: Torque,
        output_torque: Torque,
    }
}

type Word = &'static str;

record! {
    /// A part held against its rating.
    struct Held {
        demand: Torque,
        rating: Torque,
        margin: Ratio,
        why: Word,
        demand_bound: Word,
    }
}

record! {
    /// Bound on steady torques.
    struct Holding {
        bound: Word,
    }
}

/// Torques on both sides of a part, and what holds them down.
#[derive(Clone, Copy)]
struct Sides {
    input: Torque,
    output: Torque,
    bound: Bound,
}

/// Torques of one part.
struct Demand {
    steady: Sides,
    /// Torque on the rated side, shock included, what bounds it, and the margin; or why there is none.
    margin: Known<(Torque, Bound, Ratio)>,
}

/// A known value, or the reason why it is not known.
type Known<T> = core::result::Result<T, &'static str>;

impl crate::base::Sealed for TorquePath {}
impl Model for TorquePath {
    const WISHES: &'static [[&'static str; 3]] = &[["tight_below", "wanted.strength", "of_ratio"]];
    const FORMER: &'static [[&'static str; 2]] =
        &[["rating", "`torque_rating`, `rating_side` and `rating_kind`"]];

    fn check(&self) -> Result<()> {
        if self.parts.is_empty() {
            return Err(Error::Length {
                argument: "parts",
                length: 0,
                wanted: "at least one part is wanted",
            });
        }
        let engine_torque = self.engine_torque.quantity;
        valid! {
            engine_torque: 0 < .. <= 1e6 ; "definition: driving, not driven; plausibility limit: at most 1 MN·m";
        }
        if let Some(clutch_capacity) = &self.clutch_capacity {
            let clutch_capacity = clutch_capacity.quantity;
            valid! { clutch_capacity: 0 < .. <= 1e6 ; "definition: a clutch holds something; plausibility limit: at most 1 MN·m"; }
        }
        if let Some(shock_factor) = self.shock() {
            valid! { shock_factor: 1 <= .. <= 10 ; "plausibility limit: a shock adds to the torque, and a factor above 10 is a typing error"; }
        }
        if let Some(grip) = &self.grip {
            grip.check()?;
        }
        for (place, part) in self.parts.iter().enumerate() {
            part.check().map_err(|error| error.within(&format!("parts[{place}] ({})", part.name)))?;
        }
        Ok(())
    }
}

impl TorquePath {
    /// Torque, rating and margin of every part.
    ///
    /// # Returns
    /// One row a part, in order: `part`, `input_torque`, `output_torque`, `demand` (on the rated side, shock included where
    /// the rating is not continuous), `rating`, `margin`, `why` a margin is not known, `demand_bound` (what holds the demand down: engine, clutch or grip)
    /// and `bound` (what holds the steady torques down: engine or grip).
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, driveline::*, units::*};
    /// let part = |name: &str, ratio, torque, side, kind| Part {
    ///     name: name.to_owned(), ratio: Some(Value::new(Ratio::of::<one>(ratio))), least_ratio: None, efficiency: None, differential: None, share: None,
    ///     torque_rating: Some(Value::new(Torque::of::<Nm>(torque))), rating_side: Some(side), rating_kind: Some(kind),
    /// };
    /// let path = TorquePath {
    ///     engine_torque: Value::new(Torque::of::<Nm>(360.0)), clutch_capacity: None, shock_factor: None, grip: None,
    ///     parts: vec![
    ///         part("gearbox", 4.2, 400.0, Side::Input, RatingKind::Continuous),
    ///         part("axle", 4.1, 6200.0, Side::Output, RatingKind::Peak),
    ///     ],
    /// }.checked()?;
    /// let table = path.parts_table()?;
    /// let verdicts = table.numbers("margin").unwrap().iter().map(|margin| Verdict::of_ratio(Ratio::from_si(*margin), Ratio::of::<one>(1.25)));
    /// assert_eq!(verdicts.collect::<Vec<_>>(), [Verdict::Tight, Verdict::NotKnown]); // a peak rating, and nothing said of the clutch
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn parts_table(&self) -> Result<Table> {
        let mut rows = Filling::over(["part"], &[self.parts.len()])?;
        for (part, demand) in self.parts.iter().zip(self.demands(self.engine_torque.quantity, self.shock())?)
        {
            let Sides { input, output, bound } = demand.steady;
            let steady = Steady { input_torque: input, output_torque: output };
            let on = (steady, (self.held(part, &demand), Holding { bound: bound.word() }));
            rows.push((part.name.as_str(),), Ok(on));
        }
        Ok(rows.finish())
    }

    /// The part with the least known margin.
    ///
    /// # Returns
    /// - `part` — its name
    /// - `torque` — torque on its rated side, that of a dropped clutch where its rating is not continuous
    /// - `margin` — its rating over that torque
    /// - `not_known` — number of parts with an unknown margin: each of them may be weaker
    pub fn weakest(&self) -> Result<Weakest> {
        let demands = self.demands(self.engine_torque.quantity, self.shock())?;
        let not_known = demands.iter().filter(|demand| demand.margin.is_err()).count() as i64;
        let known =
            self.parts.iter().zip(&demands).filter_map(|(part, demand)| Some((part, demand.margin.ok()?)));
        let least = known.min_by(|a, b| a.1.2.si().total_cmp(&b.1.2.si()));
        let Some((part, (torque, _, margin))) = least else {
            return Err(cannot!(
                "no weakest part: none of the {not_known} parts has a known margin; give the torque_rating of one"
            ));
        };
        Ok(Weakest { part: part.name.clone(), torque, margin, not_known })
    }

    /// Margins of every part over engine torques and shock factors.
    ///
    /// # Parameters
    /// - `engine_torque` — torques at the crankshaft
    /// - `shock_factor` — shock factors
    ///
    /// # Returns
    /// One row a torque, factor and part: `engine_torque`, `shock_factor`, `part`, `demand`, `rating`, `margin`, `why`, `demand_bound`.
    pub fn table(&self, engine_torque: &[Torque], shock_factor: &[Ratio]) -> Result<Table> {
        let lists = [engine_torque.len(), shock_factor.len(), self.parts.len()];
        let mut rows = Filling::over(["engine_torque", "shock_factor", "part"], &lists)?;
        for torque in engine_torque {
            for shock in shock_factor {
                let changed = TorquePath {
                    engine_torque: Value::new(*torque),
                    shock_factor: Some(Value::new(*shock)),
                    ..self.clone()
                };
                let demands = changed.check().and_then(|()| changed.demands(*torque, Some(*shock)));
                for (place, part) in self.parts.iter().enumerate() {
                    let held = match &demands {
                        Ok(demands) => Ok(self.held(part, &demands[place])),
                        Err(reason) => Err(reason.clone()),
                    };
                    rows.push((*torque, *shock, part.name.as_str()), held);
                }
            }
        }
        Ok(rows.finish())
    }

    /// Torque and force at the ground in a steady pull, with the mean of grip.
    ///
    /// # Returns
    /// - `wheel_torque` — of the driven wheels together: the lesser of what the engine gives through all ratios and losses, and what the tyres hold
    /// - `tractive_force` — that torque over the loaded radius
    /// - `bound` — what holds it down: `engine` or `grip`
    pub fn pull(&self) -> Result<Pull> {
        self.check()?;
        let Some(grip) = &self.grip else {
            return Err(cannot!("no pull: grip is not given"));
        };
        let mut from_engine = self.engine_torque.quantity;
        for part in &self.parts {
            let (ratio, efficiency, _) = part.factors();
            from_engine = Geared { torque: from_engine, ratio, efficiency }.behind()?;
        }
        let Some(pull_coefficient) = of(&grip.pull_coefficient) else {
            return Err(cannot!("no pull: grip.pull_coefficient is not given"));
        };
        let held = grip.torque(pull_coefficient)?;
        let (wheel_torque, bound) = Pulling {
            engine: from_engine,
            grip: held,
            strength_coefficient: of(&grip.strength_coefficient),
            pull_coefficient: Some(pull_coefficient),
        }
        .bounded()?;
        let loaded_radius = grip.loaded_radius.quantity;
        let tractive_force = AtGround { torque: wheel_torque, loaded_radius }.force()?;
        Ok(Pull { wheel_torque, tractive_force, bound: bound.word().to_owned() })
    }

    fn shock(&self) -> Option<Ratio> {
        self.shock_factor.as_ref().map(|factor| factor.quantity)
    }

    fn held(&self, part: &Part, demand: &Demand) -> Held {
        let unknown = f64::NAN;
        let rating = of(&part.torque_rating).unwrap_or(Torque::from_si(unknown));
        let (demand, margin, why, bound) = match demand.margin {
            Ok((demand, bound, margin)) => (demand, margin, "", bound.word()),
            Err(why) => (Torque::from_si(unknown), Ratio::from_si(unknown), why, ""),
        };
        Held { demand, rating, margin, why, demand_bound: bound }
    }

    fn demands(&self, engine_torque: Torque, shock: Option<Ratio>) -> Result<Vec<Demand>> {
        self.check()?;
        let through = |from: Torque, bound| -> Result<Vec<Sides>> {
            let mut at = from;
            let sides = self.parts.iter().map(move |part| {
                let (ratio, efficiency, share) = part.factors();
                let input = at * share.si();
                at = Geared { torque: input, ratio, efficiency }.behind()?;
                Ok(Sides { input, output: at, bound })
            });
            sides.collect()
        };
        let capacity = self.clutch_capacity.as_ref().map(|capacity| capacity.quantity);
        let (dropped, why) = match (capacity, shock) {
            (Some(capacity), Some(shock)) => (Some(through(capacity * shock.si(), Bound::Clutch)?), ""),
            (None, _) => (None, "the rating is not a continuous one, and no clutch_capacity is given"),
            (_, None) => (None, "the rating is not a continuous one, and no shock_factor is given"),
        };
        let here = self.gripping(Part::ratio)?;
        let anywhere = self.gripping(|part| of(&part.least_ratio).unwrap_or_else(|| part.ratio()))?;
        let inertia_factor = self.grip.as_ref().and_then(|grip| of(&grip.inertia_factor));
        let demand = |(place, (part, engine)): (usize, (&Part, Sides))| {
            let at = |sides: &Option<Vec<Sides>>| sides.as_ref().map(|sides| sides[place]);
            let (dropped, grip) = (at(&dropped), at(&anywhere));
            let steady = match at(&here) {
                Some(here) if here.input < engine.input => here,
                _ => engine,
            };
            Demand { steady, margin: part.margin(engine, dropped, grip, inertia_factor, why) }
        };
        let engine = through(engine_torque, Bound::Engine)?;
        Ok(self.parts.iter().zip(engine).enumerate().map(demand).collect())
    }

    /// Load of every part from the grip of its wheels, in the high bound, with these ratios of the parts behind it.
    fn gripping(&self, ratio_of: impl Fn(&Part) -> Ratio) -> Result<Option<Vec<Sides>>> {
        let Some(grip) = &self.grip else { return Ok(None) };
        let Some(strength_coefficient) = of(&grip.strength_coefficient) else { return Ok(None) };
        let mut at = grip.torque(strength_coefficient)?;
        for part in &self.parts {
            at *= part.factors().2.si();
        }
        // From the ground up: the losses stand between the engine and the grip.
        let mut sides = Vec::with_capacity(self.parts.len());
        for part in self.parts.iter().rev() {
            let (_, efficiency, share) = part.factors();
            let (input, output) = (at / (ratio_of(part).si() * efficiency.si()), at);
            sides.push(Sides { input, output, bound: Bound::Grip });
            at = input / share.si();
        }
        sides.reverse();
        Ok(Some(sides))
    }
}

impl Grip {
    fn check(&self) -> Result<()> {
        let (driven_load, loaded_radius) = (self.driven_load.quantity, self.loaded_radius.quantity);
        valid! {
            driven_load: 1 <= .. <= 10e6 ; "plausibility limit: driven wheels bear between 1 N and 10 MN";
            loaded_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
        }
        let pull_coefficient = of(&self.pull_coefficient);
        if let Some(strength_coefficient) = of(&self.strength_coefficient) {
            valid! { strength_coefficient: 0.01 <= .. <= 10 ; "plausibility limit: above 10 it is a percentage"; }
            GripBounds { strength_coefficient, pull_coefficient }.high()?;
        }
        if let Some(pull_coefficient) = pull_coefficient {
            valid! { pull_coefficient: 0.01 <= .. <= 10 ; "plausibility limit: above 10 it is a percentage"; }
        }
        if let Some(inertia_factor) = &self.inertia_factor {
            let inertia_factor = inertia_factor.quantity;
            valid! { inertia_factor: 1 <= .. <= 10 ; "definition: inertia adds to the grip; plausibility limit: a factor above 10 is a typing error"; }
        }
        Ok(())
    }

    /// At the driven wheels together.
    fn torque(&self, coefficient: Ratio) -> Result<Torque> {
        grip_torque(self.driven_load.quantity, coefficient, self.loaded_radius.quantity)
    }
}

impl Part {
    fn check(&self) -> Result<()> {
        if self.differential.is_some() && self.share.is_some() {
            return Err(cannot!(
                "share and differential are both given: the share follows from the differential; leave one out"
            ));
        }
        let (ratio, efficiency, share) = self.factors();
        if let Some(least_ratio) = of(&self.least_ratio) {
            valid! { least_ratio: 0.001 <= .. <= 1000 ; "plausibility limit: no gear of a vehicle lies outside 0.001 to 1000"; }
            if least_ratio > ratio {
                return Err(cannot!(least_ratio <= ratio; "is more than ratio, which is the largest"));
            }
        }
        valid! {
            ratio: 0.001 <= .. <= 1000 ; "plausibility limit: no gear of a vehicle lies outside 0.001 to 1000";
            efficiency: 0.01 <= .. <= 1 ; "definition: no part gives more power than it takes";
            share: 0.01 <= .. <= 1 ; "definition: a share of the whole, and not nothing";
        }
        if let Some(torque_rating) = of(&self.torque_rating) {
            valid! { torque_rating: 0 < .. ; "definition: a part that carries nothing is no part"; }
        }
        Ok(())
    }

    /// Torque on the rated side, what bounds it, and the margin; or why it is not known. An input rating counts in every gear: only a ratio that
    /// stays lets grip relieve it.
    fn margin(
        &self,
        engine: Sides,
        dropped: Option<Sides>,
        grip: Option<Sides>,
        inertia_factor: Option<Ratio>,
        no_drop: &'static str,
    ) -> Known<(Torque, Bound, Ratio)> {
        let torque = of(&self.torque_rating).ok_or("no rating")?;
        let rated = Rated {
            side: self.rating_side,
            kind: self.rating_kind,
            rating: Some(torque),
            engine_input: Some(engine.input),
            engine_output: Some(engine.output),
            dropped_input: dropped.map(|sides| sides.input),
            dropped_output: dropped.map(|sides| sides.output),
            grip_input: grip.and_then(|sides| self.least_reduced(sides)),
            grip_output: grip.map(|sides| sides.output),
            inertia_factor,
        };
        match rated.governing() {
            Ok((demand, bound)) => Ok((demand, bound, torque / demand)),
            Err(Error::Missing { argument: "dropped_input", .. }) => Err(no_drop),
            Err(Error::Missing { why, .. }) => Err(why),
            Err(_) => Err("the torque on the rated side is not known"),
        }
    }

    /// Torque on the input side that the grip behind the part holds in the gear with the least ratio; without that ratio no bound.
    fn least_reduced(&self, grip: Sides) -> Option<Torque> {
        let (ratio, efficiency, _) = self.factors();
        // A part of which no ratio is written has none to shift.
        let least = of(&self.least_ratio).or(self.ratio.is_none().then_some(ratio))?;
        Some(grip.output / (least.si() * efficiency.si()))
    }

    fn ratio(&self) -> Ratio {
        of(&self.ratio).unwrap_or(Ratio::from_si(1.0))
    }

    /// Ratio, efficiency and share.
    fn factors(&self) -> (Ratio, Ratio, Ratio) {
        let of = |value: &Option<Value<Ratio>>| of(value).unwrap_or(Ratio::from_si(1.0));
        let of_shaft = self.differential.map(|differential| Ratio::from_si(differential.shaft_share()));
        (self.ratio(), of(&self.efficiency), of_shaft.unwrap_or_else(|| of(&self.share)))
    }
}

fn of<Q: Quantity>(value: &Option<Value<Q>>) -> Option<Q> {
    value.as_ref().map(|value| value.quantity)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Nm, one};

    fn part(name: &str, ratio: f64, rating: Option<(f64, Option<Side>, Option<RatingKind>)>) -> Part {
        Part {
            name: name.to_owned(),
            ratio: (ratio != 1.0).then(|| Value::new(Ratio::of::<one>(ratio))),
            least_ratio: None,
            efficiency: None,
            differential: None,
            share: None,
            torque_rating: rating.map(|(torque, ..)| Value::new(Torque::of::<Nm>(torque))),
            rating_side: rating.and_then(|(_, side, _)| side),
            rating_kind: rating.and_then(|(.., kind)| kind),
        }
    }

    fn path(parts: Vec<Part>, shock: Option<f64>) -> TorquePath {
        TorquePath {
            engine_torque: Value::new(Torque::of::<Nm>(100.0)),
            clutch_capacity: Some(Value::new(Torque::of::<Nm>(120.0))),
            shock_factor: shock.map(|s| Value::new(Ratio::of::<one>(s))),
            grip: None,
            parts,
        }
    }

    #[test]
    fn the_rated_side_decides() {
        let continuous = Some(RatingKind::Continuous);
        for (side, margin) in [(Side::Input, 3.0), (Side::Output, 1.0)] {
            let weakest = path(vec![part("gearbox", 3.0, Some((300.0, Some(side), continuous)))], None)
                .weakest()
                .unwrap();
            assert_eq!((weakest.margin.si(), weakest.not_known), (margin, 0));
        }
    }

    #[test]
    fn what_a_rating_does_not_say_is_not_known() {
        let parts = vec![
            part("no kind", 1.0, Some((300.0, Some(Side::Input), None))),
            part("no side", 3.0, Some((300.0, None, Some(RatingKind::Continuous)))),
            part("no rating", 1.0, None),
            part("peak", 1.0, Some((900.0, None, Some(RatingKind::Peak)))),
        ];
        let without = path(parts.clone(), None);
        let table = without.parts_table().unwrap();
        for row in 0..4 {
            assert!(table.numbers("margin").unwrap()[row].is_nan());
            assert!(table.word("why", row).is_some_and(|why| !why.is_empty()));
        }
        assert!(without.weakest().unwrap_err().to_string().contains("none of the 4 parts"));
        let weakest = path(parts, Some(2.0)).weakest().unwrap();
        assert_eq!((weakest.part.as_str(), weakest.margin.si(), weakest.not_known), ("peak", 1.25, 3));
    }

    #[test]
    fn a_dropped_clutch_is_bounded_by_its_capacity_not_by_the_engine() {
        // Clutch 500 N·m, engine 360 N·m, first gear 4.7 at 97 %, shock 2: 500 * 2 * 4.7 * 0.97 = 4559 N·m.
        let mut gearbox = part("gearbox", 4.7, None);
        gearbox.efficiency = Some(Value::new(Ratio::of::<one>(0.97)));
        let shaft = part("shaft", 1.0, Some((4000.0, None, Some(RatingKind::Peak))));
        let mut path = path(vec![gearbox, shaft], Some(2.0));
        path.engine_torque = Value::new(Torque::of::<Nm>(360.0));
        path.clutch_capacity = Some(Value::new(Torque::of::<Nm>(500.0)));
        let weakest = path.weakest().unwrap();
        assert!((weakest.torque.si() - 4559.0).abs() < 1e-9 && weakest.margin.si() < 1.0);
        path.clutch_capacity = None;
        let table = path.parts_table().unwrap();
        assert!(table.word("why", 1).is_some_and(|why| why.contains("clutch_capacity")));
    }

    #[test]
    fn what_breaks_without_a_shock_is_short() {
        let peak = |rating| {
            path(vec![part("axle", 4.0, Some((rating, Some(Side::Output), Some(RatingKind::Peak))))], None)
        };
        let weakest = peak(399.0).weakest().unwrap();
        assert_eq!((weakest.margin.si(), weakest.torque.si()), (399.0 / 400.0, 400.0));
        assert!(peak(400.0).weakest().is_err());
    }

    #[test]
    fn a_share_stays_with_what_follows() {
        let mut shaft = part("shaft", 1.0, None);
        shaft.share = Some(Value::new(Ratio::of::<one>(0.5)));
        let table =
            path(vec![part("axle", 4.0, None), shaft, part("hub", 1.0, None)], None).parts_table().unwrap();
        assert_eq!(table.numbers("output_torque"), Some(&[400.0, 200.0, 200.0][..]));
    }

    /// 10 kN at 0.3 m and a coefficient of 1.2: 3600 N·m at the wheels together; the mean of 0.8 holds 2400 N·m.
    fn gripping(parts: Vec<Part>, inertia_factor: Option<f64>) -> TorquePath {
        let ratio = |value| Value::new(Ratio::of::<one>(value));
        let grip = Grip {
            driven_load: Value::new(Force::from_si(10e3)),
            loaded_radius: Value::new(Length::from_si(0.3)),
            strength_coefficient: Some(ratio(1.2)),
            pull_coefficient: Some(ratio(0.8)),
            inertia_factor: inertia_factor.map(ratio),
        };
        let mut path = path(parts, Some(2.0));
        path.engine_torque = Value::new(Torque::of::<Nm>(400.0));
        path.clutch_capacity = Some(Value::new(Torque::of::<Nm>(500.0)));
        TorquePath { grip: Some(grip), ..path }
    }

    #[test]
    fn grip_holds_down_every_part_from_the_ground_up() {
        // Gearbox 4 and a transfer case at 1 or 2.5 in front of an axle of 4 at 90 %: the grip of 3600 N·m is 1000 N·m at the axle's input.
        let parts = |range| {
            let mut axle = part("axle", 4.0, None);
            axle.efficiency = Some(Value::new(Ratio::of::<one>(0.9)));
            vec![part("gearbox", 4.0, None), part("transfer case", range, None), axle]
        };
        let low = gripping(parts(2.5), None).parts_table().unwrap();
        assert_eq!(low.numbers("input_torque"), Some(&[100.0, 400.0, 1000.0][..]));
        assert_eq!(low.numbers("output_torque"), Some(&[400.0, 1000.0, 3600.0][..]));
        assert_eq!((0..3).map(|row| low.word("bound", row)).collect::<Vec<_>>(), vec![Some("grip"); 3]);
        let mut high = gripping(parts(1.0), None);
        high.engine_torque = Value::new(Torque::of::<Nm>(200.0));
        let table = high.parts_table().unwrap();
        assert_eq!(table.numbers("output_torque"), Some(&[800.0, 800.0, 2880.0][..]));
        assert_eq!(table.word("bound", 2), Some("engine"));
        // The pull takes the mean of grip: 2400 N·m, less than the 2880 N·m of the engine.
        let pull = high.pull().unwrap();
        assert_eq!((pull.wheel_torque.si(), pull.bound.as_str()), (2400.0, "grip"));
        assert!((pull.tractive_force.si() - 8000.0).abs() < 1e-9);
        high.engine_torque = Value::new(Torque::of::<Nm>(100.0));
        let pull = high.pull().unwrap();
        assert_eq!((pull.wheel_torque.si(), pull.bound.as_str()), (1440.0, "engine"));
        let mut unbounded = high.clone();
        unbounded.grip.as_mut().unwrap().strength_coefficient = None;
        let (table, pull) = (unbounded.parts_table().unwrap(), unbounded.pull().unwrap());
        assert_eq!((table.word("bound", 2), pull.wheel_torque.si()), (Some("engine"), 1440.0));
        high.grip.as_mut().unwrap().pull_coefficient = None;
        assert!(high.parts_table().is_ok());
        assert!(high.pull().unwrap_err().to_string().contains("pull_coefficient is not given"));
        high.grip = None;
        assert!(high.pull().unwrap_err().to_string().contains("grip is not given"));
    }

    /// The transfer case at 2.5, which can be shifted to 1: the gearbox counts in high range, where the grip is 1000 N·m behind it, too.
    #[test]
    fn a_low_range_relieves_no_part_before_it() {
        let mut axle = part("axle", 4.0, None);
        axle.efficiency = Some(Value::new(Ratio::of::<one>(0.9)));
        let rated = Some((1000.0, Some(Side::Output), Some(RatingKind::Continuous)));
        let mut case = part("transfer case", 2.5, None);
        for (least, demand) in [(None, 400.0), (Some(1.0), 1000.0)] {
            case.least_ratio = least.map(|least| Value::new(Ratio::of::<one>(least)));
            let parts = vec![part("gearbox", 4.0, rated), case.clone(), axle.clone()];
            let table = gripping(parts, None).parts_table().unwrap();
            assert_eq!(table.numbers("demand").unwrap()[0], demand);
            assert_eq!(table.numbers("output_torque"), Some(&[400.0, 1000.0, 3600.0][..]));
        }
        // An input of a part with a ratio of 1 that may be shifted is not relieved.
        let rated = Some((600.0, Some(Side::Input), Some(RatingKind::Continuous)));
        let one_to_one = Some(Value::new(Ratio::of::<one>(1.0)));
        for (least_ratio, demand) in [(None, 400.0), (one_to_one.clone(), 300.0)] {
            let direct = Part { ratio: one_to_one.clone(), least_ratio, ..part("gearbox", 1.0, rated) };
            let table = gripping(vec![direct, part("axle", 12.0, None)], None).parts_table().unwrap();
            assert_eq!(table.numbers("demand").unwrap()[0], demand);
        }
    }

    #[test]
    fn one_shaft_behind_a_locked_axle_carries_all_that_the_whole_load_holds() {
        let path = |differential, share: Option<f64>| {
            let mut shaft = part("shaft", 1.0, Some((3000.0, None, Some(RatingKind::Continuous))));
            shaft.differential = differential;
            shaft.share = share.map(|share| Value::new(Ratio::of::<one>(share)));
            gripping(vec![part("gearbox", 1.0, None), part("axle", 12.0, None), shaft], None)
        };
        // Engine 400 * 12 = 4800 N·m; the tyres hold 3600 N·m together, and one of them all of that while the other hangs.
        for (differential, share, torque, margin) in [
            (Some(Differential::Open), None, 1800.0, 3000.0 / 1800.0),
            (Some(Differential::LimitedSlip), None, 3600.0, 3000.0 / 3600.0),
            (Some(Differential::Locked), None, 3600.0, 3000.0 / 3600.0),
            // Nobody said which: no better than locked.
            (None, None, 3600.0, 3000.0 / 3600.0),
            (None, Some(0.5), 1800.0, 3000.0 / 1800.0),
        ] {
            let table = path(differential, share).parts_table().unwrap();
            assert_eq!(table.numbers("input_torque"), Some(&[300.0, 300.0, torque][..]), "{differential:?}");
            assert_eq!(table.numbers("margin").unwrap()[2], margin);
            assert_eq!((table.word("demand_bound", 2), table.word("bound", 2)), (Some("grip"), Some("grip")));
        }
        let both = path(Some(Differential::Locked), Some(0.5)).check().unwrap_err().to_string();
        assert!(both.contains("parts[2] (shaft)") && both.contains("share and differential"), "{both}");
    }

    #[test]
    fn a_dropped_clutch_meets_the_grip_only_with_the_inertia_on_top() {
        let parts = || vec![part("axle", 4.0, Some((8000.0, Some(Side::Output), Some(RatingKind::Peak))))];
        // Clutch 500 * 2 * 4 = 4000 N·m; grip 3600 N·m, with a factor of 1.05 3780 N·m, with 1.5 more than the clutch passes on.
        for (factor, demand, bound) in
            [(None, 4000.0, "clutch"), (Some(1.05), 3780.0, "grip"), (Some(1.5), 4000.0, "clutch")]
        {
            let table = gripping(parts(), factor).parts_table().unwrap();
            let found = table.numbers("demand").unwrap()[0];
            assert!((found - demand).abs() < 1e-9, "{factor:?}: {found}");
            assert_eq!(table.word("demand_bound", 0), Some(bound));
        }
        // Grip alone is a bound where nothing is said of the clutch.
        let mut path = gripping(parts(), Some(1.5));
        path.clutch_capacity = None;
        assert!((path.weakest().unwrap().torque.si() - 5400.0).abs() < 1e-9);
        let mut path = gripping(parts(), None);
        path.shock_factor = None;
        assert!(path.weakest().is_err());
    }

    #[test]
    fn a_clutch_that_slips_under_the_engine_relieves_no_part() {
        // Clutch 250 * 1 * 4 = 1000 N·m, engine 400 * 4 = 1600 N·m, grip 3600 * 1.05 N·m.
        for kind in [RatingKind::Continuous, RatingKind::Peak, RatingKind::Yield, RatingKind::Ultimate] {
            let parts = vec![part("axle", 4.0, Some((2000.0, Some(Side::Output), Some(kind))))];
            let mut path = gripping(parts, Some(1.05));
            path.clutch_capacity = Some(Value::new(Torque::from_si(250.0)));
            path.shock_factor = Some(Value::new(Ratio::of::<one>(1.0)));
            let table = path.parts_table().unwrap();
            let found = (table.numbers("demand").unwrap()[0], table.word("demand_bound", 0));
            assert_eq!(found, (1600.0, Some("engine")), "{kind:?}");
        }
    }

    #[test]
    fn refuses_what_is_no_grip() {
        type Change = fn(&mut Grip);
        let changes: [(&str, Change); 5] = [
            ("driven_load", |grip| grip.driven_load = Value::new(Force::from_si(-1.0))),
            ("loaded_radius", |grip| grip.loaded_radius = Value::new(Length::from_si(0.0))),
            ("pull_coefficient", |grip| grip.pull_coefficient = Some(Value::new(Ratio::from_si(1.3)))),
            ("pull_coefficient", |grip| grip.pull_coefficient = Some(Value::new(Ratio::from_si(0.0)))),
            ("inertia_factor", |grip| grip.inertia_factor = Some(Value::new(Ratio::from_si(0.9)))),
        ];
        for (name, change) in changes {
            let mut path = gripping(vec![part("x", 1.0, None)], None);
            path.grip.as_mut().map(change);
            let refused = path.check().unwrap_err().to_string();
            assert!(refused.contains(name), "{name}: {refused}");
        }
    }

    #[test]
    fn refuses_what_is_no_path() {
        assert!(path(vec![], None).check().is_err());
        for (ratio, shock) in
            [(0.0, None), (f64::NAN, None), (-1.0, None), (1.0, Some(0.5)), (1.0, Some(f64::INFINITY))]
        {
            assert!(path(vec![part("x", ratio, None)], shock).check().is_err(), "{ratio} {shock:?}");
        }
    }

    #[test]
    fn one_bad_row_does_not_spoil_the_others() {
        let parts = vec![part("axle", 4.0, Some((1920.0, Some(Side::Output), Some(RatingKind::Yield))))];
        let torques = [50.0, -1.0].map(Torque::of::<Nm>);
        let table = path(parts, None).table(&torques, &[2.0, 4.0].map(Ratio::of::<one>)).unwrap();
        assert_eq!(table.rows(), 4);
        assert_eq!(table.numbers("margin").map(|m| m[..2].to_vec()), Some(vec![2.0, 1.0]));
        assert!(table.reason(2).is_some_and(|error| error.to_string().contains("engine_torque = -1")));
    }
}

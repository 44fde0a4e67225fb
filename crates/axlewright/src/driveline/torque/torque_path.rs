#![expect(clippy::indexing_slicing, reason = "one demand and one grip a part, in the order of the parts")]

use super::demand::{AtGround, Bound, Coupling, Geared, Gears, GripBounds, Open, Pulling, Rated};
use super::rating::{RatingKind, Side, Wanted};
use crate::base::document::{Model, Stated, Value};
use crate::base::table::{Filling, Table, record};
use crate::driveline::{Differential, grip_torque};
use crate::units::{Force, Length, Quantity, Ratio, Torque};
use crate::{Error, Result, cannot, valid};

/// Path of the torque from the clutch to the ground: parts in order, each with its rating.
///
/// # Formula
/// input `T_k = s_k T_(k-1)`, output `T_k i_k e_k`; `T_0` is the engine's torque, behind a converter times its stall ratio, or for a dropped clutch its highest capacity times the shock factor;
/// both no more than the grip allows: output `G_k = m F r_l s_1 ... s_k / (i_(k+1) e_(k+1) ... i_n e_n)`, for a dropped clutch times the inertia factor;
/// margin = rating / torque on the rated side
///
/// # Fields
/// - `engine_torque` — peak torque at the crankshaft
/// - `clutch_capacity` — torque that the clutch surely holds before it slips: hot, worn in
/// - `clutch_high_capacity` — torque that the clutch holds at most: cold, new; for a dropped clutch it sets the torque, not the engine. Without it `clutch_capacity` counts, and every margin against a dropped clutch is an upper bound
/// - `stall_ratio` — of a torque converter: torque at its turbine over the engine's, at stall; `none` if there is no converter. If neither it nor anything of a clutch is given, a margin is `not known`, unless the engine alone is too much
/// - `shock_factor` — factor of a dropped clutch on the torque at its output, or of a converter when a gear is engaged (2 if it is applied suddenly and undamped); if nothing bounds a dropped clutch, the margin of a peak, yield or ultimate rating is `not known`, never guessed
/// - `grip` — grip of the tyres, if it is to limit the torque: `driven_load` (load on the ground under all driven wheels, with the transfer of the same launch), `load_at_rest` (of the same wheels: if it is known and the greater one, it counts for what a part must bear, because a dropped clutch meets it before the body moves), `loaded_radius`, `strength_coefficient` (a high bound of grip, for the torque that a part must bear; without it the grip relieves no part), `pull_coefficient` (a mean, for the torque that reaches the ground; only `pull` needs it), and `inertia_factor` (ratio by which the inertia between part and ground lets a dropped clutch exceed the grip; without it, grip limits the steady torque only)
/// - `parts` — parts behind the clutch, in order, with the transfer case in the range of interest; each has `name` and, if they apply, `ratio` (input over output speed), `least_ratio` (ratio of the lowest gear or range; for a fixed ratio, as of an axle, that ratio itself. A rating counts in every gear and range: without `least_ratio`, the grip relieves no rating on the input side, and the parts before it are relieved in that gear only), `peak_ratio` (ratio of the highest reduction: reverse and low range among them; for a fixed ratio, that ratio itself. Every rating behind it counts in that gear; without it, a part with a ratio or a loss may have a higher one, and no margin behind it is better than `tight`, unless grip bounds its torque), `efficiency` (without it a part passes all of the engine's torque on, and one with a ratio takes from the grip as if 0.7 were left, the least), `differential` (for one of the two shafts behind a differential: `open`, half of the torque and of the grip for each shaft; `limited_slip` or `locked`, all of both through one shaft, because the other wheel may be off the ground; left out if it is not known, which counts as locked), `share` (for a part behind any other split: the largest share of torque and grip before it that the part can take), `torque_rating`, `rating_side` (input, output) and `rating_kind` (continuous, peak, yield, ultimate)
///
/// # Valid for
/// A steady pull, and the clutch dropped from rest. The strength coefficient is not less than the pull coefficient. A continuous rating is compared with the steady
/// torque, any other rating with the torque of a dropped clutch; one without kind with both, as far as they are known. A rating below the steady torque is `short` even without a factor. A rating without side is `not known` if the sides differ.
/// While something is missing that could raise the torque, the wanted margin is infinite: no margin is then better than `tight`.
/// The steady torques and the pull are those of one gear and one range; a rating is held against the torque in the gear of its `peak_ratio`. A wheel in a rut or against a kerb resists more than the grip of any tyre.
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
    /// Torque that the clutch holds at most: cold, new.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub clutch_high_capacity: Option<Value<Torque>>,
    /// Torque at the turbine of a converter over the engine's, at stall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub stall_ratio: Stated<Value<Ratio>>,
    /// Factor on the torque at the output of a dropped clutch, or of a converter when a gear is engaged.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shock_factor: Option<Value<Ratio>>,
    /// Grip of the tyres.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grip: Option<Grip>,
    /// Parts behind the clutch, in order.
    pub parts: Vec<Part>,
}

/// Grip of the tyres of the driven wheels.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `driven_load`, `loaded_radius` and, where they are known, `load_at_rest`, `strength_coefficient`, `pull_coefficient` and `inertia_factor`"
    )
)]
pub struct Grip {
    /// Load on the ground under all driven wheels, with the transfer of the same launch.
    pub driven_load: Value<Force>,
    /// Load of the driven wheels at rest, which a dropped clutch meets before the body moves.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub load_at_rest: Option<Value<Force>>,
    /// Loaded radius: wheel centre to ground under load.
    pub loaded_radius: Value<Length>,
    /// High bound of grip, for the torque that a part must bear.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub strength_coefficient: Option<Value<Ratio>>,
    /// Mean grip, for the torque that reaches the ground.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pull_coefficient: Option<Value<Ratio>>,
    /// Ratio by which the inertia between part and ground lets a dropped clutch exceed the grip.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub inertia_factor: Option<Value<Ratio>>,
}

/// One part of a torque path.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `name` and, where they are known, `ratio`, `least_ratio`, `peak_ratio`, `efficiency`, `differential`, `share`, `torque_rating`, `rating_side` and `rating_kind`"
    )
)]
pub struct Part {
    /// Name of the part.
    pub name: String,
    /// Input over output speed; 1 if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ratio: Option<Value<Ratio>>,
    /// Least ratio to which the part can be shifted; for a fixed ratio, that ratio.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_ratio: Option<Value<Ratio>>,
    /// Highest ratio to which the part can be shifted, reverse and low range among them; for a fixed ratio, that ratio.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_ratio: Option<Value<Ratio>>,
    /// Power out over power in; if missing, 1 from the engine, and 0.7 from the grip where the part has a ratio.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub efficiency: Option<Value<Ratio>>,
    /// Differential before it, if it is one of the two shafts behind one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub differential: Option<Differential>,
    /// Largest share of torque and grip before it that the part can take; 1 where neither it nor `differential` is given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub share: Option<Value<Ratio>>,
    /// Torque that the part may carry, by its maker.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub torque_rating: Option<Value<Torque>>,
    /// Side on which the rating counts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating_side: Option<Side>,
    /// Kind of the rating.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating_kind: Option<RatingKind>,
}

/// Least power out over power in that a part may have: the lower limit of its check.
const LEAST_EFFICIENCY: f64 = 0.7;

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
        /// Number of parts with an unknown margin, or with one that is an upper bound; unless it is 0, the path is no better than `tight`.
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
        wanted: Ratio,
        open: Word,
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

/// Numbers that all parts of a path share.
struct Behind {
    coupling_ratio: Option<Ratio>,
    inertia_factor: Option<Ratio>,
    /// 1 where the shock is known, otherwise infinite.
    shock: f64,
    /// 1 where the highest capacity of the clutch is known, otherwise infinite.
    capacity: f64,
    /// Why no torque of a dropped clutch is known.
    no_drop: &'static str,
}

/// 1 on a side of a part where the highest ratio of everything before it is known, otherwise infinite.
#[derive(Clone, Copy)]
struct Geartrain {
    input: f64,
    output: f64,
}

/// Torques of one part.
struct Demand {
    steady: Sides,
    /// Margin of its rating, or why it is not known.
    margin: Known<Margin>,
}

/// Torque on the rated side, shock included, what bounds it, and the margin.
#[derive(Clone, Copy)]
struct Margin {
    torque: Torque,
    bound: Bound,
    margin: Ratio,
    wanted: Ratio,
    open: Open,
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
        if let Some(clutch_high_capacity) = of(&self.clutch_high_capacity) {
            valid! { clutch_high_capacity: 0 < .. <= 1e6 ; "definition: a clutch holds something; plausibility limit: at most 1 MN·m"; }
            if let Some(clutch_capacity) = of(&self.clutch_capacity)
                && clutch_high_capacity < clutch_capacity
            {
                return Err(
                    cannot!(clutch_high_capacity >= clutch_capacity; "is less than clutch_capacity, which the clutch surely holds"),
                );
            }
        }
        if let Some(stall_ratio) = self.stall_ratio.as_ref() {
            let stall_ratio = stall_ratio.quantity;
            valid! { stall_ratio: 1 <= .. <= 10 ; "definition: a converter does not reduce the torque; plausibility limit: at most 10"; }
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
    /// One row for each part, in order: `part`, `input_torque`, `output_torque`, `demand` (on the rated side, shock included where
    /// the rating is not continuous), `rating`, `margin`, `why` a margin is not known, `demand_bound` (limit of the demand: engine, clutch or grip),
    /// `wanted` (usual margin of the kind of rating: 1.25 continuous and peak, 1.5 yield, 3 ultimate or not stated; infinite while something is missing that could raise the demand),
    /// `open` (what that is) and `bound` (limit of the steady torques: engine or grip).
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, driveline::*, units::*};
    /// let part = |name: &str, ratio, torque, side, kind| Part {
    ///     name: name.to_owned(), ratio: Some(Value::new(Ratio::of::<one>(ratio))), least_ratio: None,
    ///     peak_ratio: Some(Value::new(Ratio::of::<one>(ratio))), efficiency: None, differential: None, share: None,
    ///     torque_rating: Some(Value::new(Torque::of::<Nm>(torque))), rating_side: Some(side), rating_kind: Some(kind),
    /// };
    /// let path = TorquePath {
    ///     engine_torque: Value::new(Torque::of::<Nm>(360.0)), clutch_capacity: Some(Value::new(Torque::of::<Nm>(480.0))), clutch_high_capacity: None,
    ///     stall_ratio: axlewright::Stated::Unknown, shock_factor: None, grip: None,
    ///     parts: vec![
    ///         part("gearbox", 4.2, 400.0, Side::Input, RatingKind::Continuous),
    ///         part("axle", 4.1, 6200.0, Side::Output, RatingKind::Peak),
    ///     ],
    /// }.checked()?;
    /// let table = path.parts_table()?;
    /// assert_eq!(format!("{:.2}", Ratio::from_si(table.numbers("margin").unwrap_or_default()[0]).in_::<one>()), "1.11");
    /// let verdicts = table.numbers("margin").unwrap().iter().map(|margin| Verdict::of_ratio(Ratio::from_si(*margin), Ratio::of::<one>(1.25)));
    /// assert_eq!(verdicts.collect::<Vec<_>>(), [Verdict::Tight, Verdict::NotKnown]); // a peak rating, and nothing said of the shock
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn parts_table(&self) -> Result<Table> {
        let mut rows = Filling::over(["part"], &[self.parts.len()])?;
        for (part, demand) in self.parts.iter().zip(self.demands()?) {
            let Sides { input, output, bound } = demand.steady;
            let steady = Steady { input_torque: input, output_torque: output };
            let on = (steady, (self.held(part, &demand), Holding { bound: bound.word() }));
            rows.push((part.name.as_str(),), Ok(on))?;
        }
        rows.finish()
    }

    /// The part with the least known margin.
    ///
    /// # Returns
    /// - `part` — its name
    /// - `torque` — torque on its rated side, that of a dropped clutch where its rating is not continuous
    /// - `margin` — its rating over that torque
    /// - `not_known` — number of parts whose margin is not known, or is an upper bound: each of them may be weaker, and the path is no better than `tight`
    pub fn weakest(&self) -> Result<Weakest> {
        let demands = self.demands()?;
        let open =
            |demand: &&Demand| demand.margin.as_ref().map_or(true, |known| known.open != Open::Nothing);
        let not_known = demands.iter().filter(open).count() as i64;
        let known =
            self.parts.iter().zip(&demands).filter_map(|(part, demand)| Some((part, demand.margin.ok()?)));
        let least = known.min_by(|a, b| a.1.margin.si().total_cmp(&b.1.margin.si()));
        let Some((part, Margin { torque, margin, .. })) = least else {
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
    /// One row for each torque, factor and part: `engine_torque`, `shock_factor`, `part`, `demand`, `rating`, `margin`, `why`, `demand_bound`, `wanted`, `open`.
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
                let demands = changed.demands();
                for (place, part) in self.parts.iter().enumerate() {
                    let held = match &demands {
                        Ok(demands) => Ok(self.held(part, &demands[place])),
                        Err(reason) => Err(reason.clone()),
                    };
                    rows.push((*torque, *shock, part.name.as_str()), held)?;
                }
            }
        }
        rows.finish()
    }

    /// Torque and force at the ground in a steady pull, with the mean of grip.
    ///
    /// # Returns
    /// - `wheel_torque` — torque of all driven wheels: the lesser of the engine's torque through all ratios and losses, and the torque that the tyres hold
    /// - `tractive_force` — that torque over the loaded radius
    /// - `bound` — limit of that torque: `engine` or `grip`
    pub fn pull(&self) -> Result<Pull> {
        self.check()?;
        let Some(grip) = &self.grip else {
            return Err(cannot!("no pull: grip is not given"));
        };
        let mut from_engine = self.coupling().torque()?;
        for part in &self.parts {
            let (ratio, efficiency, _) = part.factors();
            from_engine = Geared { torque: from_engine, ratio, efficiency }.behind()?;
        }
        let Some(pull_coefficient) = of(&grip.pull_coefficient) else {
            return Err(cannot!("no pull: grip.pull_coefficient is not given"));
        };
        let held = grip.torque(grip.driven_load.quantity, pull_coefficient)?;
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
        match demand.margin {
            Ok(Margin { torque, bound, margin, wanted, open }) => Held {
                demand: torque,
                rating,
                margin,
                why: "",
                demand_bound: bound.word(),
                wanted,
                open: open.why(),
            },
            Err(why) => Held {
                demand: Torque::from_si(unknown),
                rating,
                margin: Ratio::from_si(unknown),
                why,
                demand_bound: "",
                wanted: Wanted::usual().of(part.rating_kind),
                open: "",
            },
        }
    }

    /// Clutch or converter behind the engine.
    fn coupling(&self) -> Coupling {
        let stall_ratio = match &self.stall_ratio {
            Stated::Given(ratio) => Stated::Given(ratio.quantity),
            Stated::None => Stated::None,
            Stated::Unknown => Stated::Unknown,
        };
        let (capacity, high_capacity) = (of(&self.clutch_capacity), of(&self.clutch_high_capacity));
        // One factor for whichever of the two there is.
        let is_clutch = capacity.is_some() || high_capacity.is_some() || !stall_ratio.is_given();
        Coupling {
            engine: Some(self.engine_torque.quantity),
            capacity,
            high_capacity,
            shock_factor: self.shock().filter(|_| is_clutch),
            stall_ratio,
            converter_shock_factor: self.shock(),
        }
    }

    fn demands(&self) -> Result<Vec<Demand>> {
        self.check()?;
        let through = |from: Torque, bound, ratio_of: fn(&Part) -> Ratio| -> Result<Vec<Sides>> {
            let mut at = from;
            let sides = self.parts.iter().map(move |part| {
                let (_, efficiency, share) = part.factors();
                let ratio = ratio_of(part);
                let input = at * share.si();
                at = Geared { torque: input, ratio, efficiency }.behind()?;
                Ok(Sides { input, output: at, bound })
            });
            sides.collect()
        };
        let coupling = self.coupling();
        let (dropped, why) = match coupling.dropped() {
            Ok(dropped) => (Some(through(dropped, Bound::Clutch, Part::peak)?), ""),
            Err(Error::Missing { argument: "capacity", .. }) => {
                (None, "the rating is not a continuous one, and no clutch_capacity is given")
            }
            Err(_) => (None, "the rating is not a continuous one, and no shock_factor is given"),
        };
        let behind = Behind {
            coupling_ratio: coupling.ratio().ok(),
            inertia_factor: self.grip.as_ref().and_then(|grip| of(&grip.inertia_factor)),
            shock: if dropped.is_some() { 1.0 } else { f64::INFINITY },
            capacity: if coupling.is_bounded() { 1.0 } else { f64::INFINITY },
            no_drop: why,
        };
        let here = self.gripping(Part::ratio)?;
        let engine = through(coupling.torque()?, Bound::Engine, Part::ratio)?;
        let peak = through(coupling.torque()?, Bound::Engine, Part::peak)?;
        let gears = self.geartrain();
        let anywhere = self.gripping(|part| of(&part.least_ratio).unwrap_or_else(|| part.ratio()))?;
        let demand = |(place, (part, engine)): (usize, (&Part, Sides))| {
            let at = |sides: &Option<Vec<Sides>>| sides.as_ref().map(|sides| sides[place]);
            let (dropped, grip) = (at(&dropped), at(&anywhere));
            let steady = match at(&here) {
                Some(here) if here.input < engine.input => here,
                _ => engine,
            };
            Demand { steady, margin: part.margin(peak[place], dropped, grip, gears[place], &behind) }
        };
        Ok(self.parts.iter().zip(engine).enumerate().map(demand).collect())
    }

    /// Knowledge of the gears before every part.
    fn geartrain(&self) -> Vec<Geartrain> {
        let mut reserve = 1.0;
        let of = |part: &Part| {
            let input = reserve;
            reserve *= part.gears().reserve().map_or(f64::INFINITY, Ratio::si);
            Geartrain { input, output: reserve }
        };
        self.parts.iter().map(of).collect()
    }

    /// Load of every part from the grip of its wheels, in the high bound, with these ratios of the parts behind it.
    fn gripping(&self, ratio_of: impl Fn(&Part) -> Ratio) -> Result<Option<Vec<Sides>>> {
        let Some(grip) = &self.grip else { return Ok(None) };
        let Some(strength_coefficient) = of(&grip.strength_coefficient) else { return Ok(None) };
        let mut at = grip.torque(grip.highest_load(), strength_coefficient)?;
        for part in &self.parts {
            at *= part.factors().2.si();
        }
        // From the ground up: the losses stand between the engine and the grip.
        let mut sides = Vec::with_capacity(self.parts.len());
        for part in self.parts.iter().rev() {
            let (_, _, share) = part.factors();
            let (input, output) = (at / (ratio_of(part).si() * part.least_efficiency().si()), at);
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
        if let Some(load_at_rest) = of(&self.load_at_rest) {
            valid! { load_at_rest: 1 <= .. <= 10e6 ; "plausibility limit: driven wheels bear between 1 N and 10 MN"; }
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

    /// At the driven wheels together under this load.
    fn torque(&self, load: Force, coefficient: Ratio) -> Result<Torque> {
        grip_torque(load, coefficient, self.loaded_radius.quantity)
    }

    /// Load that bounds what a part must bear.
    fn highest_load(&self) -> Force {
        let launched = self.driven_load.quantity;
        of(&self.load_at_rest).filter(|rest| *rest > launched).unwrap_or(launched)
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
            valid! { least_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point"; }
            if least_ratio > ratio {
                return Err(cannot!(least_ratio <= ratio; "is more than ratio, and it is the least of them"));
            }
        }
        if let Some(peak_ratio) = of(&self.peak_ratio) {
            valid! { peak_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point"; }
            if peak_ratio < ratio {
                return Err(
                    cannot!(peak_ratio >= ratio; "is less than ratio, and it is the highest of them"),
                );
            }
        }
        valid! {
            ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
            efficiency: 0.7 <= .. <= 1 ; "definition: no part gives more power than it takes; plausibility limit: at full torque, worm gears lose most, less than 30 %";
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
        gears: Geartrain,
        behind: &Behind,
    ) -> Known<Margin> {
        let Wanted { strength, yield_strength, ultimate_strength } = Wanted::usual();
        let torque = of(&self.torque_rating).ok_or("no rating")?;
        let rated = Rated {
            side: self.rating_side,
            kind: self.rating_kind,
            rating: Some(torque),
            coupling_ratio: behind.coupling_ratio,
            engine_input: Some(engine.input),
            engine_output: Some(engine.output),
            dropped_input: dropped.map(|sides| sides.input),
            dropped_output: dropped.map(|sides| sides.output),
            grip_input: grip.and_then(|sides| self.least_reduced(sides)),
            grip_output: grip.map(|sides| sides.output),
            inertia_factor: behind.inertia_factor,
            strength,
            yield_strength,
            ultimate_strength,
            shock_reserve: Ratio::from_si(behind.shock),
            capacity_reserve: Ratio::from_si(behind.capacity),
            input_reserve: Ratio::from_si(gears.input),
            output_reserve: Ratio::from_si(gears.output),
        };
        match rated.governing() {
            Ok((demand, bound, open)) => {
                let wanted = rated.wanted(open);
                Ok(Margin { torque: demand, bound, margin: torque / demand, wanted, open })
            }
            Err(Error::Missing { argument: "dropped_input", .. }) => Err(behind.no_drop),
            Err(Error::Missing { why, .. }) => Err(why),
            Err(_) => Err("the torque on the rated side is not known"),
        }
    }

    /// Torque on the input side that the grip behind the part holds in the gear with the least ratio; without that ratio no bound.
    fn least_reduced(&self, grip: Sides) -> Option<Torque> {
        let (ratio, ..) = self.factors();
        // A part of which no ratio is written has none to shift.
        let least = of(&self.least_ratio).or(self.ratio.is_none().then_some(ratio))?;
        Some(grip.output / (least.si() * self.least_efficiency().si()))
    }

    /// Efficiency that counts between the grip and what stands before the part: gears of which none is given may lose as much as any.
    fn least_efficiency(&self) -> Ratio {
        let any = if self.ratio.is_some() { LEAST_EFFICIENCY } else { 1.0 };
        of(&self.efficiency).unwrap_or(Ratio::from_si(any))
    }

    fn ratio(&self) -> Ratio {
        of(&self.ratio).unwrap_or(Ratio::from_si(1.0))
    }

    /// Highest ratio that is known of the part.
    fn peak(&self) -> Ratio {
        of(&self.peak_ratio).unwrap_or_else(|| self.ratio())
    }

    fn gears(&self) -> Gears {
        Gears {
            peak_ratio: of(&self.peak_ratio),
            ratio: of(&self.ratio).or(of(&self.least_ratio)),
            efficiency: of(&self.efficiency),
        }
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
mod tests;

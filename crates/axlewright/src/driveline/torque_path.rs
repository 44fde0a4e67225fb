use crate::base::document::{Model, Value};
use crate::base::table::{Cell, Rows, Table};
use crate::units::{Quantity, Ratio, Torque};
use crate::{Error, Result, Verdict, valid};

/// The way of the torque from the clutch to the ground: parts in order, each with what it may carry.
///
/// # Formula
/// input `T_k = s_k T_(k-1)`, output `T_k i_k e_k`; `T_0` is the engine's torque, or for a dropped clutch its capacity times the shock factor;
/// margin = rating / torque on the rated side
///
/// # Fields
/// - `engine_torque` — greatest torque at the crankshaft
/// - `clutch_capacity` — what the clutch holds before it slips: it bounds the torque of a dropped clutch, not the engine does
/// - `shock_factor` — how much a dropped clutch multiplies the torque at its output (2 where it is applied suddenly and undamped); without both, a peak, yield or ultimate rating is `not known`, never guessed
/// - `tight_below` — margin that is wanted; a part below it is `tight`, below 1 `short`
/// - `parts` — from behind the clutch on, each with `name` and, where it has them, `ratio` (input over output speed), `efficiency`, `share` (of the torque before it that goes through it: 0.5 for one shaft behind an open differential, 1 behind a locked one) and `rating` with `torque`, `side` (input, output) and `kind` (continuous, peak, yield, ultimate)
///
/// # Valid for
/// Engine and clutch as the limit: grip of the tyres and inertia are not considered here. A continuous rating is held against the steady
/// torque, the other kinds against that of a dropped clutch; one that the steady torque exceeds is `short` without a factor. A rating without kind, or without side where the sides differ, is `not known`.
///
/// # Source
/// Balance of power through a geared train; suddenly applied load: factor 2 for an undamped elastic system (Shigley's Mechanical Engineering Design, from memory)
///
/// # Caution
/// A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers, local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TorquePath {
    /// Greatest torque at the crankshaft.
    pub engine_torque: Value<Torque>,
    /// What the clutch holds before it slips.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub clutch_capacity: Option<Value<Torque>>,
    /// How much a dropped clutch multiplies the torque at its output.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shock_factor: Option<Value<Ratio>>,
    /// Margin that is wanted.
    pub tight_below: Value<Ratio>,
    /// From behind the clutch on.
    pub parts: Vec<Part>,
}

/// One part of a torque path.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `name` and, where they are known, `ratio`, `efficiency`, `share` and `rating`"
    )
)]
pub struct Part {
    /// What it is.
    pub name: String,
    /// Input over output speed; 1 where it is missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ratio: Option<Value<Ratio>>,
    /// Power out over power in; 1 where it is missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub efficiency: Option<Value<Ratio>>,
    /// Share of the torque before it that goes through it; 1 where it is missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub share: Option<Value<Ratio>>,
    /// What it may carry.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating: Option<Rating>,
}

/// What a part may carry, as its maker says.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `torque` and, where they are known, `side` and `kind`")
)]
pub struct Rating {
    /// The torque.
    pub torque: Value<Torque>,
    /// On which side.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub side: Option<Side>,
    /// Of which kind.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub kind: Option<RatingKind>,
}

/// Side of a part on which its rating counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Side {
    /// Where the torque comes in.
    Input,
    /// Where it goes out.
    Output,
}

/// What a rating promises.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum RatingKind {
    /// For the part's life.
    Continuous,
    /// For a moment.
    Peak,
    /// Before it stays bent.
    Yield,
    /// Before it breaks.
    Ultimate,
}

/// The part with the least known margin.
#[derive(Debug, Clone, PartialEq)]
pub struct Weakest {
    /// Its name.
    pub part: String,
    /// Torque on its rated side, shock included where its rating is not continuous.
    pub torque: Torque,
    /// Its rating over that torque.
    pub margin: Ratio,
    /// What to call that.
    pub verdict: Verdict,
    /// How many parts have a margin that is not known.
    pub not_known: i64,
}

/// What one part sees.
struct Demand {
    input: Torque,
    output: Torque,
    /// Torque on the rated side, shock included; the margin; or why there is none.
    margin: Known<(Torque, Ratio)>,
}

/// What is known, or why it is not.
type Known<T> = core::result::Result<T, &'static str>;

impl Model for TorquePath {
    fn check(&self) -> Result<()> {
        if self.parts.is_empty() {
            return Err(Error::Length {
                argument: "parts",
                length: 0,
                wanted: "at least one part is wanted",
            });
        }
        let (engine_torque, tight_below) = (self.engine_torque.quantity, self.tight_below.quantity);
        valid! {
            engine_torque: 0 < .. ; "definition: driving, not driven";
            tight_below: 1 <= .. ; "definition: below 1 a part is short, not tight";
        }
        if let Some(clutch_capacity) = &self.clutch_capacity {
            let clutch_capacity = clutch_capacity.quantity;
            valid! { clutch_capacity: 0 < .. ; "definition: a clutch holds something"; }
        }
        if let Some(shock_factor) = self.shock() {
            valid! { shock_factor: 1 <= .. <= 10 ; "common practice, no source: a shock adds to the torque, and a factor above 10 is a slip"; }
        }
        for (place, part) in self.parts.iter().enumerate() {
            part.check().map_err(|error| Error::Document {
                line: 0,
                key: format!("parts[{place}] ({})", part.name),
                message: error.to_string(),
            })?;
        }
        Ok(())
    }
}

impl TorquePath {
    /// Torque, rating, margin and verdict of every part.
    ///
    /// # Returns
    /// One row a part, in order: `part`, `input_torque`, `output_torque`, `demand` (on the rated side, shock included where
    /// the rating is not continuous), `rating`, `margin`, `verdict`, and `why` a margin is not known.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, driveline::*, units::*};
    /// let rated = |torque, side, kind| Rating { torque: Value::new(Torque::of::<Nm>(torque)), side: Some(side), kind: Some(kind) };
    /// let part = |name: &str, ratio, rating| Part {
    ///     name: name.to_owned(), ratio: Some(Value::new(Ratio::of::<one>(ratio))), efficiency: None, share: None, rating: Some(rating),
    /// };
    /// let path = TorquePath {
    ///     engine_torque: Value::new(Torque::of::<Nm>(360.0)), clutch_capacity: None, shock_factor: None, tight_below: Value::new(Ratio::of::<one>(1.25)),
    ///     parts: vec![
    ///         part("gearbox", 4.2, rated(400.0, Side::Input, RatingKind::Continuous)),
    ///         part("axle", 4.1, rated(6200.0, Side::Output, RatingKind::Peak)),
    ///     ],
    /// }.checked()?;
    /// let table = path.parts_table()?;
    /// assert_eq!(table.word("verdict", 0), Some("tight"));
    /// assert_eq!(table.word("verdict", 1), Some("not known")); // a peak rating, and nothing said of the clutch
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn parts_table(&self) -> Result<Table> {
        let mut rows = Rows::new()
            .words("part")
            .quantity::<Torque>("input_torque")
            .quantity::<Torque>("output_torque")
            .quantity::<Torque>("demand")
            .quantity::<Torque>("rating")
            .quantity::<Ratio>("margin")
            .words("verdict")
            .words("why");
        for (part, demand) in self.parts.iter().zip(self.demands(self.engine_torque.quantity, self.shock())?)
        {
            let rest = self.cells(part, &demand);
            let first = [Cell::Word(&part.name), Cell::from(demand.input), Cell::from(demand.output)];
            rows.push(&first, Ok(&rest));
        }
        Ok(rows.finish())
    }

    /// The part with the least known margin.
    ///
    /// # Returns
    /// - `part` — its name
    /// - `torque` — torque on its rated side, that of a dropped clutch where its rating is not continuous
    /// - `margin` — its rating over that torque
    /// - `verdict` — what to call that
    /// - `not_known` — how many parts have a margin that is not known: each of them may be weaker
    pub fn weakest(&self) -> Result<Weakest> {
        let demands = self.demands(self.engine_torque.quantity, self.shock())?;
        let not_known = demands.iter().filter(|demand| demand.margin.is_err()).count() as i64;
        let known =
            self.parts.iter().zip(&demands).filter_map(|(part, demand)| Some((part, demand.margin.ok()?)));
        let least = known.min_by(|a, b| a.1.1.si().total_cmp(&b.1.1.si()));
        let Some((part, (torque, margin))) = least else {
            return Err(Error::NoSolution {
                message: format!("no weakest part: none of the {not_known} parts has a margin that is known"),
            });
        };
        let verdict = Verdict::of_ratio(margin, self.tight_below.quantity);
        Ok(Weakest { part: part.name.clone(), torque, margin, verdict, not_known })
    }

    /// Margins of every part over engine torques and shock factors.
    ///
    /// # Parameters
    /// - `engine_torque` — torques at the crankshaft
    /// - `shock_factor` — shock factors
    ///
    /// # Returns
    /// One row a torque, factor and part: `engine_torque`, `shock_factor`, `part`, `demand`, `rating`, `margin`, `verdict`, `why`.
    pub fn table(&self, engine_torque: &[Torque], shock_factor: &[Ratio]) -> Result<Table> {
        let mut rows = Rows::new()
            .quantity::<Torque>("engine_torque")
            .quantity::<Ratio>("shock_factor")
            .words("part")
            .quantity::<Torque>("demand")
            .quantity::<Torque>("rating")
            .quantity::<Ratio>("margin")
            .words("verdict")
            .words("why");
        for torque in engine_torque {
            for shock in shock_factor {
                let changed = TorquePath {
                    engine_torque: Value::new(*torque),
                    shock_factor: Some(Value::new(*shock)),
                    ..self.clone()
                };
                let demands = changed.check().and_then(|()| changed.demands(*torque, Some(*shock)));
                for (place, part) in self.parts.iter().enumerate() {
                    let first = [Cell::from(*torque), Cell::from(*shock), Cell::Word(&part.name)];
                    match &demands {
                        Ok(demands) => rows.push(&first, Ok(&self.cells(part, &demands[place]))),
                        Err(error) => rows.push(&first, Err(error.clone())),
                    }
                }
            }
        }
        Ok(rows.finish())
    }

    fn shock(&self) -> Option<Ratio> {
        self.shock_factor.as_ref().map(|factor| factor.quantity)
    }

    fn cells(&self, part: &Part, demand: &Demand) -> [Cell<'static>; 5] {
        let rating = part.rating.as_ref().map_or(f64::NAN, |rating| rating.torque.quantity.si());
        match demand.margin {
            Ok((torque, margin)) => {
                let verdict = Verdict::of_ratio(margin, self.tight_below.quantity);
                [
                    Cell::from(torque),
                    Cell::Number(rating),
                    Cell::from(margin),
                    Cell::Word(verdict.word()),
                    Cell::Word(""),
                ]
            }
            Err(why) => {
                let nothing = Cell::Number(f64::NAN);
                [
                    nothing,
                    Cell::Number(rating),
                    nothing,
                    Cell::Word(Verdict::NotKnown.word()),
                    Cell::Word(why),
                ]
            }
        }
    }

    fn demands(&self, engine_torque: Torque, shock: Option<Ratio>) -> Result<Vec<Demand>> {
        self.check()?;
        let capacity = self.clutch_capacity.as_ref().map(|capacity| capacity.quantity);
        let mut steady = engine_torque;
        let mut dropped = match (capacity, shock) {
            (Some(capacity), Some(shock)) => Ok(capacity * shock.si()),
            (None, _) => Err("the rating is not a continuous one, and no clutch_capacity is given"),
            (_, None) => Err("the rating is not a continuous one, and no shock_factor is given"),
        };
        let demand = |part: &Part| {
            let (ratio, efficiency, share) = part.factors();
            let through = ratio.si() * efficiency.si();
            let (input, of_drop) = (steady * share.si(), dropped.map(|torque| torque * share.si()));
            (steady, dropped) = (input * through, of_drop.map(|torque| torque * through));
            let margin = part.margin((input, steady), of_drop.and_then(|input| Ok((input, dropped?))));
            Demand { input, output: steady, margin }
        };
        Ok(self.parts.iter().map(demand).collect())
    }
}

impl Part {
    fn check(&self) -> Result<()> {
        let (ratio, efficiency, share) = self.factors();
        valid! {
            ratio: 0.01 <= .. <= 100 ; "common practice, no source: one part changes the speed by a hundred at the most";
            efficiency: 0.01 <= .. <= 1 ; "definition: no part gives more power than it takes";
            share: 0.01 <= .. <= 1 ; "definition: a share of the whole, and not nothing";
        }
        if let Some(rating) = &self.rating {
            let rating = rating.torque.quantity;
            valid! { rating: 0 < .. ; "definition: a part that carries nothing is no part"; }
        }
        Ok(())
    }

    /// Torque on the rated side and the margin, or why it is not known, from the torques on both sides: steady, and of a
    /// dropped clutch.
    fn margin(&self, steady: (Torque, Torque), dropped: Known<(Torque, Torque)>) -> Known<(Torque, Ratio)> {
        let rating = self.rating.as_ref().ok_or("no rating")?;
        let kind = rating.kind.ok_or("the rating does not say its kind")?;
        let rated = |(input, output): (Torque, Torque)| match rating.side {
            Some(Side::Input) => Ok(input),
            Some(Side::Output) => Ok(output),
            None if input == output => Ok(input),
            None => Err("the rating does not say its side"),
        };
        let torque = match kind {
            RatingKind::Continuous => rated(steady)?,
            _ => match dropped {
                Ok(dropped) => rated(dropped)?,
                // What breaks under the steady torque is no better off when the clutch is dropped.
                Err(_) if rated(steady)? > rating.torque.quantity => rated(steady)?,
                Err(why) => return Err(why),
            },
        };
        Ok((torque, rating.torque.quantity / torque))
    }

    /// Ratio, efficiency and share.
    fn factors(&self) -> (Ratio, Ratio, Ratio) {
        let of =
            |value: &Option<Value<Ratio>>| value.as_ref().map_or(Ratio::from_si(1.0), |value| value.quantity);
        (of(&self.ratio), of(&self.efficiency), of(&self.share))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Nm, one};

    fn part(name: &str, ratio: f64, rating: Option<(f64, Option<Side>, Option<RatingKind>)>) -> Part {
        Part {
            name: name.to_owned(),
            ratio: Some(Value::new(Ratio::of::<one>(ratio))),
            efficiency: None,
            share: None,
            rating: rating.map(|(torque, side, kind)| Rating {
                torque: Value::new(Torque::of::<Nm>(torque)),
                side,
                kind,
            }),
        }
    }

    fn path(parts: Vec<Part>, shock: Option<f64>) -> TorquePath {
        TorquePath {
            engine_torque: Value::new(Torque::of::<Nm>(100.0)),
            clutch_capacity: Some(Value::new(Torque::of::<Nm>(120.0))),
            shock_factor: shock.map(|s| Value::new(Ratio::of::<one>(s))),
            tight_below: Value::new(Ratio::of::<one>(1.5)),
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
            assert_eq!(table.word("verdict", row), Some("not known"));
            assert!(table.word("why", row).is_some_and(|why| !why.is_empty()));
        }
        assert!(without.weakest().unwrap_err().to_string().contains("none of the 4 parts"));
        let weakest = path(parts, Some(2.0)).weakest().unwrap();
        assert_eq!(
            (weakest.part.as_str(), weakest.margin.si(), weakest.verdict, weakest.not_known),
            ("peak", 1.25, Verdict::Tight, 3)
        );
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
        assert!((weakest.torque.si() - 4559.0).abs() < 1e-9 && weakest.verdict == Verdict::Short);
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
        assert_eq!((weakest.verdict, weakest.torque.si()), (Verdict::Short, 400.0));
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

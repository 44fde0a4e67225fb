//! Every suspension over its travel, drawn in the workshop's documents and moved at random: it answers where ride height leads and nowhere
//! else, and a slip of the drawing does not make it search without end.

use super::independent::linkage::Linkage;
use super::independent::prepared::{Independent, PreparedLinkage};
use super::kinematics::solved::steps_of;
use super::kinematics::vector::{Vector, vector};
use super::parts::Point;
use super::{
    DoubleWishbone, Fitted, LateralRod, LeafAxle, LiveAxle, Mount, Strut, TravelRange, WattLinkage, WattRod,
};
use crate::units::{Angle, Length};
use crate::{Model, Result, Stated, Value};

const WISHBONE: &str = include_str!("generated.dunlin_front_wishbone.toml");
const STRUT: &str = include_str!("generated.wagtail_rear_strut.toml");
const LIVE: &str = include_str!("generated.dunlin_rear_axle.toml");
const LEAF: &str = include_str!("generated.dray_rear_axle.toml");

/// Distance from the ends of a range within which nothing is asked: near a dead centre travel changes by 1e-8 m with the last digit of the angle.
const NEAR: f64 = 1e-6;

/// Numbers that look random and are the same in every run: SplitMix64 (G. L. Steele and others, 2014, from memory).
struct Random(u64);

impl Random {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut on = self.0;
        on = (on ^ (on >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        on = (on ^ (on >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((on ^ (on >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
    fn within(&mut self, most: f64) -> f64 {
        most * (2.0 * self.share() - 1.0)
    }
    fn below(&mut self, count: usize) -> usize {
        (self.share() * count as f64) as usize
    }
}

/// A model by its points. `by` is the travel of the rack of an independent suspension, the roll of an axle.
trait Suspension: Clone {
    fn points(&mut self) -> Vec<&mut Point>;
    fn answers(&self, up: f64, by: f64) -> Result<()>;
    fn range(&self, by: f64) -> Result<[f64; 2]>;
}

fn length(metres: f64) -> Length {
    Length::from_si(metres)
}

macro_rules! independent {
    ($kind:ty, $self:ident => $($guide:expr),+) => {
        impl Suspension for $kind {
            fn points(&mut $self) -> Vec<&mut Point> {
                let lower = &mut $self.lower_arm;
                vec![
                    &mut lower.front_pivot, &mut lower.rear_pivot, &mut lower.ball_joint,
                    &mut $self.tie_rod.inner, &mut $self.tie_rod.outer, $($guide),+
                ]
            }
            fn answers(&self, up: f64, by: f64) -> Result<()> {
                self.at(length(up), length(by)).map(drop)
            }
            fn range(&self, by: f64) -> Result<[f64; 2]> {
                let TravelRange { droop, bump, .. } = self.travel_range(length(by))?;
                Ok([droop.si(), bump.si()])
            }
        }
    };
}

independent!(DoubleWishbone, self => &mut self.upper_arm.front_pivot, &mut self.upper_arm.rear_pivot, &mut self.upper_arm.ball_joint);
independent!(Strut, self => &mut self.leg.top_mount, &mut self.leg.lower_end);

impl Suspension for LiveAxle {
    fn points(&mut self) -> Vec<&mut Point> {
        let mut points: Vec<&mut Point> =
            self.links.iter_mut().flat_map(|link| [&mut link.body, &mut link.axle]).collect();
        points.extend(self.lateral_rod.as_mut().into_iter().flat_map(|rod| [&mut rod.body, &mut rod.axle]));
        if let Some(WattLinkage { pivot, upper_rod, lower_rod, .. }) = self.watt.as_mut() {
            points.extend([
                pivot,
                &mut upper_rod.crank,
                &mut upper_rod.outer,
                &mut lower_rod.crank,
                &mut lower_rod.outer,
            ]);
        }
        points
    }
    fn answers(&self, up: f64, by: f64) -> Result<()> {
        self.at(length(up), Angle::from_si(by)).map(drop)
    }
    fn range(&self, by: f64) -> Result<[f64; 2]> {
        let TravelRange { droop, bump, .. } = self.travel_range(Angle::from_si(by))?;
        Ok([droop.si(), bump.si()])
    }
}

impl Suspension for LeafAxle {
    fn points(&mut self) -> Vec<&mut Point> {
        let spring = &mut self.leaf;
        vec![&mut spring.fixed_eye, &mut spring.shackle_eye, &mut spring.shackle_pivot, &mut spring.seat]
    }
    fn answers(&self, up: f64, by: f64) -> Result<()> {
        self.at(length(up), Angle::from_si(by)).map(drop)
    }
    fn range(&self, by: f64) -> Result<[f64; 2]> {
        let range = self.travel_range(Angle::from_si(by))?;
        Ok([range.droop.si(), range.bump.si()])
    }
}

/// The model with every point elsewhere, by at most so much along each axis.
fn moved<M: Suspension>(model: &M, random: &mut Random, most: f64) -> M {
    let mut other = model.clone();
    for point in other.points() {
        for value in [&mut point.x, &mut point.y, &mut point.z] {
            *value = Value::new(value.quantity + length(random.within(most)));
        }
    }
    other
}

/// The model with one slip of the drawing: a point copied from another or in one coordinate, mirrored, or 10 to 50 mm off along an axis
/// after that.
fn slipped<M: Suspension>(model: &M, random: &mut Random) -> M {
    let mut other = model.clone();
    let mut points = other.points();
    let (from, to) = (random.below(points.len()), random.below(points.len()));
    let copied = points[from].clone();
    let (way, axis) = (random.below(5), random.below(3));
    let by = (0.01 + 0.04 * random.share()).copysign(random.within(1.0));
    let point = &mut *points[to];
    let Point { x, y, z } = copied;
    match (way, axis) {
        (0, _) => *point = Point { x, y, z },
        (1, 0) => point.x = x,
        (1 | 2, 1) => point.y = y,
        (1, _) => point.z = z,
        (3, _) => point.y = Value::new(-point.y.quantity),
        _ => {}
    }
    if way != 3 && random.share() < 0.7 {
        let value = [&mut point.x, &mut point.y, &mut point.z].into_iter().nth(axis).unwrap();
        *value = Value::new(value.quantity + length(by));
    }
    other
}

/// Live axles of every kind: four links and a rod with and without bushes, three links and a rod, with a Watt linkage on the body and on
/// the axle, and four links that spread.
fn live_axles() -> Vec<LiveAxle> {
    let mut bushed = LiveAxle::from_text(LIVE).unwrap();
    // Parts that would end the travel before the links do.
    (bushed.anti_roll_bar, bushed.coil_over) = (Stated::None, Stated::None);
    let mut rigid = bushed.clone();
    for link in &mut rigid.links {
        (link.body_bush, link.axle_bush) = (None, None);
    }
    let rod = rigid.lateral_rod.as_mut().unwrap();
    (rod.body_bush, rod.axle_bush) = (None, None);
    let mut three = rigid.clone();
    three.links[1].fitted = Fitted::Single;
    three.links[1].body.y = Value::new(length(0.1));
    three.links[1].axle.y = Value::new(length(0.12));
    let watt = |carried_by: Mount| {
        let LateralRod { axle, .. } = three.lateral_rod.as_ref().unwrap().clone();
        let (x, z) = (axle.x.quantity, axle.z.quantity);
        let rod = |side: f64| WattRod {
            crank: Point::new(x, length(0.0), z + length(0.08 * side)),
            outer: Point::new(x, length(-0.45 * side), z + length(0.08 * side)),
            crank_bush: None,
            outer_bush: None,
            crank_limit: None,
            outer_limit: None,
        };
        let linkage = WattLinkage {
            carried_by,
            pivot: Point::new(x, length(0.0), z),
            upper_rod: rod(1.0),
            lower_rod: rod(-1.0),
        };
        LiveAxle { lateral_rod: Stated::None, watt: Stated::Given(linkage), ..three.clone() }
    };
    let watts = [watt(Mount::Body), watt(Mount::Axle)];
    let mut spread = rigid.clone();
    spread.lateral_rod = Stated::None;
    spread.links[1].axle.y = Value::new(length(0.09));
    let [body, axle] = watts;
    let axles = vec![bushed, rigid, three, body, axle, spread];
    assert!(axles.iter().all(|axle| axle.check().is_ok()));
    axles
}

/// Questions to many models, and their answers.
#[derive(Debug, Default)]
struct Count {
    models: usize,
    locked: usize,
    beyond: usize,
    within: usize,
    answered_beyond: Vec<String>,
    refused_within: Vec<String>,
}

impl Count {
    /// Asks within the range and beyond it.
    fn ask(&mut self, model: &impl Suspension, name: &str, by: f64) {
        self.models += 1;
        let Ok([low, high]) = model.range(by) else {
            self.locked += 1;
            for up in [0.0, -0.05, 0.05, -0.1, 0.1] {
                if model.answers(up, by).is_ok() {
                    self.answered_beyond.push(format!("{name}: locked at {by}, but answers at {up}"));
                }
            }
            return;
        };
        for off in [1e-5, 1e-3, 5e-3, 0.01, 0.02, 0.05, 0.1] {
            for up in [low - off, high + off] {
                self.beyond += 1;
                if model.answers(up, by).is_ok() {
                    self.answered_beyond.push(format!("{name}: {by}, {low} to {high}, answers at {up}"));
                }
            }
        }
        for share in [0.1, 0.3, 0.5, 0.7, 0.9] {
            self.within(model, name, by, [low, high], low + (high - low) * share);
        }
        self.within(model, name, by, [low, high], low + NEAR);
        self.within(model, name, by, [low, high], high - NEAR);
    }
    fn within(&mut self, model: &impl Suspension, name: &str, by: f64, [low, high]: [f64; 2], up: f64) {
        self.within += 1;
        if let Err(error) = model.answers(up, by) {
            self.refused_within.push(format!("{name}: {by}, {low} to {high}, refuses {up}: {error}"));
        }
    }
    fn is_right(&self) {
        println!(
            "{} asked, {} locked, {} beyond, {} within",
            self.models, self.locked, self.beyond, self.within
        );
        assert!(self.answered_beyond.is_empty(), "{:#?}", self.answered_beyond);
        assert!(self.refused_within.is_empty(), "{:#?}", self.refused_within);
        assert!(self.locked * 4 < self.models && self.beyond > 0);
    }
}

/// The links of an independent suspension keep their length, and its lower arm rises steadily with the wheel: one assembly.
fn holds_together(
    linkage: &Linkage,
    [lower, inner, outer]: &[Vector; 3],
    rack: f64,
    travels: &[f64],
) -> (usize, Vec<String>) {
    let (mut found, mut wrong, mut before) = (0, Vec::new(), f64::NEG_INFINITY);
    let mut reach = linkage.reach(rack);
    for travel in travels {
        let Some(pose) = reach.at(*travel) else { continue };
        found += 1;
        let end = *inner + vector(0.0, rack, 0.0) + pose.tie_rod;
        let [rod, arm] = [
            pose.tie_rod.norm() - (*outer - *inner).norm(),
            (end - pose.lower_ball).norm() - (*outer - *lower).norm(),
        ];
        let off = pose.wheel.at.z - linkage.rest.wheel.at.z - travel;
        let [angle, rate, _] = pose.lower_arm.turned(&linkage.rest.lower_arm);
        if rod.abs() > 1e-9 || arm.abs() > 1e-9 || off.abs() > 1e-8 || angle <= before || rate <= 0.0 {
            wrong.push(format!("rack {rack}, travel {travel}: {rod} {arm} {off} {angle} {before}"));
        }
        before = angle;
    }
    (found, wrong)
}

/// Asks one linkage.
fn ask_independent<M: Independent + Suspension>(count: &mut Count, model: &mut M, name: &str, rack: f64) {
    let points = model.points();
    let drawn = [&points[2], &points[3], &points[4]].map(|point| point.vector());
    let Ok(ready) = PreparedLinkage::new(model.parts()) else { return };
    count.models += 1;
    let mut reach = ready.linkage.reach(rack);
    let Ok([(low, _), (high, _)]) = reach.range() else {
        count.locked += 1;
        if [0.0, -0.05, 0.05, -0.1, 0.1].into_iter().any(|travel| reach.at(travel).is_some()) {
            count.answered_beyond.push(format!("{name}: locked at {rack}, but answers"));
        }
        return;
    };
    for off in [1e-6, 1e-3, 5e-3, 0.01, 0.02, 0.05, 0.1] {
        for travel in [low - off, high + off] {
            count.beyond += 1;
            if reach.at(travel).is_some() {
                count.answered_beyond.push(format!("{name}: {rack}, {low} to {high}, answers at {travel}"));
            }
        }
    }
    let mut within: Vec<f64> = (1..20).map(|step| low + (high - low) * f64::from(step) / 20.0).collect();
    within.insert(0, low + NEAR);
    within.push(high - NEAR);
    count.within += within.len();
    let (found, wrong) = holds_together(&ready.linkage, &drawn, rack, &within);
    if found < within.len() || !wrong.is_empty() {
        count.refused_within.push(format!("{name}: {rack}, {low} to {high}: {found} answered, {wrong:?}"));
    }
}

#[test]
fn no_linkage_answers_beyond_its_range() {
    let (wishbone, strut) = (DoubleWishbone::from_text(WISHBONE).unwrap(), Strut::from_text(STRUT).unwrap());
    let (mut count, mut random) = (Count::default(), Random(11));
    for number in 0..1200 {
        let rack = random.within(0.06);
        if number % 2 == 0 {
            let mut model = moved(&wishbone, &mut random, 0.03);
            ask_independent(&mut count, &mut model, &format!("wishbone {number}"), rack);
        } else {
            let mut model = moved(&strut, &mut random, 0.03);
            ask_independent(&mut count, &mut model, &format!("strut {number}"), rack);
        }
    }
    count.is_right();
}

#[test]
fn the_strut_of_the_wagtail_ends_where_its_tie_rod_is_in_line() {
    // Without its bar, whose drop link ends the travel earlier.
    let strut = Strut { anti_roll_bar: Stated::None, ..Strut::from_text(STRUT).unwrap() };
    let range = strut.travel_range(length(0.06)).unwrap();
    let beyond = strut.at(length(0.285), length(0.06)).unwrap_err().to_string();
    assert!(range.bump.si() < 0.275 && range.bump_end == "tie rod", "{range:?}");
    assert!(
        beyond.starts_with("travel = 285 mm (11.22 in) cannot be reached: the tie rod ")
            && beyond.contains(" to 274.5 mm "),
        "{beyond}"
    );
}

/// A row has the bits of the position alone at the ends of travel, too, where one finds the range that the other one has found.
#[test]
fn rows_about_the_ends_of_travel_are_positions_alone() {
    let travel: Vec<Length> = (-8..=8).map(|step| length(0.05 * f64::from(step))).collect();
    let racks = [-0.06, 0.0, 0.03, 0.06].map(length);
    super::independent::wheel_position::table_equals_single_calls(
        &Strut::from_text(STRUT).unwrap(),
        &travel,
        &racks,
    );
    super::independent::wheel_position::table_equals_single_calls(
        &DoubleWishbone::from_text(WISHBONE).unwrap(),
        &travel,
        &racks,
    );
}

#[test]
fn no_live_axle_answers_beyond_its_range() {
    let (axles, mut count, mut random) = (live_axles(), Count::default(), Random(12));
    for number in 0..40 {
        let model = moved(&axles[number % axles.len()], &mut random, 0.03);
        let roll = [0.0, 0.07, -0.26, 0.4, -0.77][number / axles.len() % 5];
        count.ask(&model, &format!("live axle {number}"), roll);
    }
    count.is_right();
}

#[test]
fn no_leaf_axle_answers_beyond_its_range() {
    let (axle, mut count, mut random) = (LeafAxle::from_text(LEAF).unwrap(), Count::default(), Random(13));
    for number in 0..4 {
        let model = moved(&axle, &mut random, 0.02);
        count.ask(&model, &format!("leaf axle {number}"), [0.0, 0.07, -0.2][number % 3]);
    }
    count.is_right();
}

/// The most steps that one call took, of models with a slip of the drawing; a refusal says where the travel ends.
fn most_steps(
    models: &[impl Suspension],
    kind: &str,
    slips: usize,
    positions: &[[f64; 2]],
    random: &mut Random,
) -> u64 {
    let (mut most, mut answered, mut refused) = (0, 0, 0);
    for number in 0..slips {
        let model = slipped(&models[number % models.len()], random);
        for [up, by] in positions {
            let (answer, steps) = steps_of(|| model.answers(*up, *by));
            match answer {
                Ok(()) => answered += 1,
                Err(error) => {
                    refused += 1;
                    assert!(error.to_string().len() > 20, "{error}");
                }
            }
            most = most.max(steps);
        }
        let (_, steps) = steps_of(|| model.range(positions[0][1]));
        most = most.max(steps);
    }
    println!("{kind}: {most} steps at the most, {answered} positions answered, {refused} refused");
    assert!(answered > slips / 4 && refused > 0, "{kind}: {answered} {refused}");
    most
}

#[test]
fn a_slip_of_the_drawing_does_not_search_without_end() {
    let mut random = Random(14);
    let axle = [[0.02, 0.0], [-0.06, 0.05], [0.08, -0.1], [0.3, 0.3]];
    let rack = [[0.02, 0.0], [-0.06, 0.03], [0.08, -0.06], [0.3, 0.05]];
    let live = most_steps(&live_axles(), "live axle", 60, &axle, &mut random);
    let leaf = most_steps(&[LeafAxle::from_text(LEAF).unwrap()], "leaf axle", 10, &axle, &mut random);
    let wishbone =
        most_steps(&[DoubleWishbone::from_text(WISHBONE).unwrap()], "wishbone", 60, &rack, &mut random);
    let strut = most_steps(&[Strut::from_text(STRUT).unwrap()], "strut", 60, &rack, &mut random);
    assert!(
        live < 20_000 && leaf < 20_000 && wishbone < 4_000 && strut < 4_000,
        "{live} {leaf} {wishbone} {strut}"
    );
}

/// The lateral rod of the Dunlin drawn with both ends on one side, 10 to 50 mm apart: each halving of a step once stayed for good.
#[test]
fn a_lateral_rod_with_both_ends_on_one_side_is_answered_soon() {
    let mut most = 0;
    let offs = [-0.05, -0.03, -0.02, -0.01, 0.0, 0.01, 0.02, 0.03, 0.05];
    let slips = offs.into_iter().flat_map(|off| [0, 1, 2].map(|axis| (off, axis)));
    for (off, axis) in slips {
        for mut model in live_axles().into_iter().take(2) {
            let LateralRod { body, axle, .. } = model.lateral_rod.as_mut().unwrap();
            axle.y = body.y.clone();
            let value = [&mut axle.x, &mut axle.y, &mut axle.z].into_iter().nth(axis).unwrap();
            *value = Value::new(value.quantity + length(off));
            let none = (body.vector() - axle.vector()).norm() < 0.001;
            for [heave, roll] in [[0.02, 0.0], [0.06, 0.0], [-0.06, 0.0], [0.0, 0.05], [0.05, -0.05]] {
                let (answer, steps) = steps_of(|| model.answers(heave, roll));
                if let Err(error) = answer {
                    let said = error.to_string();
                    let why = if none { "shorter than 1 mm" } else { "is over-extended" };
                    assert!(said.contains(why), "{said}");
                }
                most = most.max(steps);
            }
        }
    }
    println!("{most} steps at the most");
    assert!(most < 6000, "{most}");
}

//! A live axle on links on the build sheet: its links as lines, and what follows from them. Its wheel, the eyes of its coil-over and the
//! points of its anti-roll bar are lines of the double wishbone.

use super::axle_parts::{AxleBar, AxleCoilOver, AxleLink, Fitted, LateralRod, Mount, WattLinkage, WattRod};
use super::double_wishbone_lines::{
    BAR, EYES, POINTS, SOURCE, coordinate, joint, point, point_lines, travelled, value,
};
use super::live_axle::{Found, LiveAxle};
use super::parts::refused;
use super::{Axle, Wheel};
use crate::base::document::{Stated, Value};
use crate::base::section::{Line, Several, Step, choice, joined, line, one_of, paths};
use crate::units::{Angle, Length, LinearStiffness, Quantity};
use crate::{Error, Result};

const fn bush(path: &'static str, meaning: &'static str) -> Line {
    line(path, LinearStiffness::KIND, meaning).within(
        1.0,
        1e12,
        "common practice, no source: bushes lie between 1 N/m and 1 TN/m; leave out what is rigid",
    )
}

const FITTED: &[&str] = &["pair", "single"];
const MOUNTS: &[&str] = &["body", "axle"];

/// The points of both kinds of link.
const LINKS: [Line; 13] = joined(&[
    &point_lines!("axle.lower_links.body", "body end of the left lower link, at ride height"),
    &point_lines!("axle.lower_links.axle", "axle end of the left lower link, at ride height"),
    &point_lines!(
        "axle.upper_links.body",
        "body end of the upper link, of a pair the left one, at ride height"
    ),
    &point_lines!(
        "axle.upper_links.axle",
        "axle end of the upper link, of a pair the left one, at ride height"
    ),
    &[choice(
        "axle.upper_links.fitted",
        FITTED,
        "whether there are two upper links, the drawn one and its mirror image, or one",
    )],
]);

/// What may be left out of them.
const BUSHES: [Line; 5] = [
    choice(
        "axle.lower_links.fitted",
        FITTED,
        "whether there are two lower links or one; a pair where it is not said",
    ),
    bush(
        "axle.lower_links.body_bush",
        "stiffness along the lower link of the bush in its body end; leave out what is rigid",
    ),
    bush("axle.lower_links.axle_bush", "the same in its axle end"),
    bush(
        "axle.upper_links.body_bush",
        "stiffness along the upper link of the bush in its body end; leave out what is rigid",
    ),
    bush("axle.upper_links.axle_bush", "the same in its axle end"),
];

/// Across the vehicle: one rod, or two on a bell crank.
const ACROSS: [Line; 28] = joined(&[
    &point_lines!("axle.lateral_rod.body", "body end of the lateral rod, at ride height"),
    &point_lines!("axle.lateral_rod.axle", "axle end of the lateral rod, at ride height"),
    &[
        bush(
            "axle.lateral_rod.body_bush",
            "stiffness along the lateral rod of the bush in its body end; leave out what is rigid",
        ),
        bush("axle.lateral_rod.axle_bush", "the same in its axle end"),
        choice("axle.watt.carried_by", MOUNTS, "what carries the bell crank of a Watt linkage"),
    ],
    &point_lines!("axle.watt.pivot", "pivot of the bell crank, whose axis lies along the vehicle"),
    &point_lines!("axle.watt.upper_rod.crank", "end of the upper rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.upper_rod.outer", "other end of the upper rod, at ride height"),
    &point_lines!("axle.watt.lower_rod.crank", "end of the lower rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.lower_rod.outer", "other end of the lower rod, at ride height"),
    &[
        bush(
            "axle.watt.upper_rod.crank_bush",
            "stiffness along the upper rod of the bush in its end on the crank; leave out what is rigid",
        ),
        bush("axle.watt.upper_rod.outer_bush", "the same in its other end"),
        bush(
            "axle.watt.lower_rod.crank_bush",
            "stiffness along the lower rod of the bush in its end on the crank; leave out what is rigid",
        ),
        bush("axle.watt.lower_rod.outer_bush", "the same in its other end"),
    ],
]);

const LIMITS: [Line; 10] = [
    joint("axle.lower_links.body_limit", "lean that the body end of the lower link allows, from ride height"),
    joint("axle.lower_links.axle_limit", "the same of its axle end"),
    joint("axle.upper_links.body_limit", "lean that the body end of the upper link allows, from ride height"),
    joint("axle.upper_links.axle_limit", "the same of its axle end"),
    joint(
        "axle.lateral_rod.body_limit",
        "lean that the body end of the lateral rod allows, from ride height",
    ),
    joint("axle.lateral_rod.axle_limit", "the same of its axle end"),
    joint(
        "axle.watt.upper_rod.crank_limit",
        "lean of the upper rod against the crank that its end there allows, from ride height",
    ),
    joint("axle.watt.upper_rod.outer_limit", "the same of its other end"),
    joint(
        "axle.watt.lower_rod.crank_limit",
        "lean of the lower rod against the crank that its end there allows, from ride height",
    ),
    joint("axle.watt.lower_rod.outer_limit", "the same of its other end"),
];

pub(super) const BEARINGS: [Line; 1] = [choice(
    "axle.anti_roll_bar.bearings",
    MOUNTS,
    "what carries the bearings of a live axle's bar; its drop links lead to the other of the two",
)];

/// Everything that is measured of it alone.
pub(super) const MEASURED: [Line; 57] = joined(&[&LINKS, &BUSHES, &ACROSS, &LIMITS, &BEARINGS]);

/// The same paths, each of which may be missing.
macro_rules! optional {
    ($($path:literal),+ $(,)?) => { [$(concat!("?", $path)),+] };
}
const MAY_BE: [&str; 33] = optional![
    "axle.lower_links.fitted",
    "axle.lower_links.body_bush",
    "axle.lower_links.axle_bush",
    "axle.upper_links.body_bush",
    "axle.upper_links.axle_bush",
    "axle.lateral_rod.body.x",
    "axle.lateral_rod.body.y",
    "axle.lateral_rod.body.z",
    "axle.lateral_rod.axle.x",
    "axle.lateral_rod.axle.y",
    "axle.lateral_rod.axle.z",
    "axle.lateral_rod.body_bush",
    "axle.lateral_rod.axle_bush",
    "axle.watt.carried_by",
    "axle.watt.pivot.x",
    "axle.watt.pivot.y",
    "axle.watt.pivot.z",
    "axle.watt.upper_rod.crank.x",
    "axle.watt.upper_rod.crank.y",
    "axle.watt.upper_rod.crank.z",
    "axle.watt.upper_rod.outer.x",
    "axle.watt.upper_rod.outer.y",
    "axle.watt.upper_rod.outer.z",
    "axle.watt.lower_rod.crank.x",
    "axle.watt.lower_rod.crank.y",
    "axle.watt.lower_rod.crank.z",
    "axle.watt.lower_rod.outer.x",
    "axle.watt.lower_rod.outer.y",
    "axle.watt.lower_rod.outer.z",
    "axle.watt.upper_rod.crank_bush",
    "axle.watt.upper_rod.outer_bush",
    "axle.watt.lower_rod.crank_bush",
    "axle.watt.lower_rod.outer_bush",
];
const MAY_LEAN: [&str; 10] = optional![
    "axle.lower_links.body_limit",
    "axle.lower_links.axle_limit",
    "axle.upper_links.body_limit",
    "axle.upper_links.axle_limit",
    "axle.lateral_rod.body_limit",
    "axle.lateral_rod.axle_limit",
    "axle.watt.upper_rod.crank_limit",
    "axle.watt.upper_rod.outer_limit",
    "axle.watt.lower_rod.crank_limit",
    "axle.watt.lower_rod.outer_limit",
];
const OTHERWISE: [&str; 2] = optional!["axle.wheels", "axle.leaf.form"];

// What each step takes: the wheel, the links, what may be missing, then what hangs on the axle and other lines.
const WHEEL: &[Line] = POINTS.split_at(24).1;
const EYES_ALONE: &[Line] = EYES.split_at(6).0;
const LINKED: [&str; 53] = chained(&[&paths::<18>(&[WHEEL, &LINKS], &[]), &MAY_BE, &OTHERWISE]);
const STANDING: [&str; 54] = chained(&[&LINKED, &["axle.tyre.loaded_radius"]]);
const EYED: [&str; 59] = chained(&[&LINKED, &paths::<6>(&[EYES_ALONE], &[])]);
const ON_DAMPER: [&str; 62] =
    chained(&[&EYED, &["axle.damper.mounting", "axle.damper.open_length", "axle.damper.closed_length"]]);
const ON_SPRING: [&str; 60] = chained(&[&EYED, &["axle.spring.shortest_between_eyes"]]);
const BARRED: [&str; 63] = chained(&[&LINKED, &paths::<10>(&[BAR.split_at(9).0, &BEARINGS], &[])]);
const MOVING: [&str; 66] =
    chained(&[&LINKED, &MAY_LEAN, &["axle.spring_base", "axle.bump_left", "axle.droop_left"]]);

/// Groups of paths in a row.
pub(super) const fn chained<const N: usize>(parts: &[&[&'static str]]) -> [&'static str; N] {
    let mut all = [""; N];
    let (mut part, mut at) = (0, 0);
    while part < parts.len() {
        let mut place = 0;
        while place < parts[part].len() {
            all[at] = parts[part][place];
            (place, at) = (place + 1, at + 1);
        }
        part += 1;
    }
    assert!(at == N, "as many paths as the parts have together");
    all
}

/// How it steers, where it rolls and dives about, and how many ways it can move: the axle at ride height.
pub(super) const fn at_ride(place: usize) -> Step {
    const FORMULA: &str = "suspension.LiveAxle at ride height";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: at_rest }, &STANDING)
}

/// Motion ratio of the coil-over in heave, how it changes with travel, the length between its eyes, and the base of both in roll.
pub(super) const fn of_coil_over(place: usize) -> Step {
    const FORMULA: &str = "suspension.LiveAxle at ride height: r = -dL/dz; base 2 (dL/dphi) / (dL/dz)";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: coil_over }, &EYED)
}

/// Motion ratio of the anti-roll bar.
pub(super) const fn of_bar() -> Step {
    const FORMULA: &str =
        "suspension.LiveAxle at ride height: travel of the levers' ends over travel of the wheels, in roll";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: bar }, &BARRED)
}

/// Travel at which the damper of a coil-over is open, and at which it is closed.
pub(super) const fn of_damper(place: usize) -> Step {
    const FORMULA: &str = "suspension.LiveAxle: heave z where L(z) is the length of the damper";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: damper }, &ON_DAMPER)
}

/// Travel at which the spring has its least gaps.
pub(super) const fn of_spring() -> Step {
    const FORMULA: &str =
        "suspension.LiveAxle: heave z where L(z) is the least length, or where the linkage locks before";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: spring }, &ON_SPRING)
}

/// How far the linkage goes in droop and bump before a link is over-extended.
pub(super) const fn of_range(place: usize) -> Step {
    one_of(
        place,
        Several { formula: "suspension.LiveAxle.travel_range", source: SOURCE, call: range },
        &LINKED,
    )
}

/// What the axle does between full droop and full bump, and crossed: one side at its bump stop, the other fully drooped.
pub(super) const fn over_travel(place: usize) -> Step {
    const FORMULA: &str = "suspension.LiveAxle at full bump b and droop d, half way, and crossed: heave (b - d) / 2, sin(roll) = (b + d) / base to either side";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: moving }, &MOVING)
}

/// What a step takes, read in order.
struct Inputs<'a> {
    of: &'a [f64],
    at: usize,
}

impl Inputs<'_> {
    fn next(&mut self) -> f64 {
        self.at += 1;
        self.of[self.at - 1]
    }
    fn point(&mut self) -> super::Point {
        self.at += 3;
        point(self.of, self.at - 3)
    }
    /// The stiffness of a bush, where it gives.
    fn bush(&mut self) -> Option<Value<LinearStiffness>> {
        known(self.next())
    }
    /// Whether so many of the lines from here on are written: all or none of them.
    fn written(&self, count: usize) -> Result<bool> {
        let here = self.at..self.at + count;
        let mut missing = here.clone().filter(|place| self.of[*place].is_nan());
        let Some(first) = missing.next() else { return Ok(true) };
        let Some(there) = here.clone().find(|place| !self.of[*place].is_nan()) else { return Ok(false) };
        let [wanted, begun] = [first, there].map(|place| LINKED[place].trim_start_matches("?axle."));
        Err(refused(wanted, format!("it is not written although {begun} is")))
    }
}

pub(super) fn known<Q: Quantity>(si: f64) -> Option<Value<Q>> {
    (!si.is_nan()).then(|| value(si))
}

fn fitted(choice: f64) -> Fitted {
    if choice == 1.0 { Fitted::Single } else { Fitted::Pair }
}

fn mount(choice: f64) -> Mount {
    if choice == 0.0 { Mount::Body } else { Mount::Axle }
}

/// The axle on these links, in the order of their lines, its wheel of 1 m: what does not stand on the ground does not ask.
fn drawn(of: &[f64]) -> Result<LiveAxle> {
    let [wheels, leaf] = [of[51], of[52]];
    if wheels == 0.0 {
        return Err(refused("wheels", APART.to_owned()));
    }
    if !leaf.is_nan() {
        return Err(refused("leaf", BESIDE_LEAVES.to_owned()));
    }
    let mut on = Inputs { of, at: 0 };
    let wheel = Wheel {
        centre: on.point(),
        camber: value(on.next()),
        toe: value(on.next()),
        loaded_radius: value(1.0),
    };
    let mut link = |name: &str| AxleLink {
        name: name.to_owned(),
        fitted: Fitted::Pair,
        body: on.point(),
        axle: on.point(),
        body_bush: None,
        axle_bush: None,
        body_limit: None,
        axle_limit: None,
    };
    let mut links = vec![link("lower"), link("upper")];
    links[1].fitted = fitted(on.next());
    links[0].fitted = fitted(on.next());
    for link in &mut links {
        (link.body_bush, link.axle_bush) = (on.bush(), on.bush());
    }
    let mut model = LiveAxle {
        axle: Axle::Front,
        wheel,
        links,
        lateral_rod: Stated::Unknown,
        watt: Stated::Unknown,
        coil_over: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        pinion: Some(super::Pinion { angle: value(0.0), nose: None }),
        pitching: None,
    };
    let (rod, watt) = (on.written(6)?, Inputs { of, at: on.at + 8 }.written(16)?);
    let (body, axle, body_bush, axle_bush) = (on.point(), on.point(), on.bush(), on.bush());
    if rod {
        model.lateral_rod = Stated::Given(LateralRod {
            body,
            axle,
            body_bush,
            axle_bush,
            body_limit: None,
            axle_limit: None,
        });
    }
    let (carried_by, pivot) = (mount(on.next()), on.point());
    let mut rod = || WattRod {
        crank: on.point(),
        outer: on.point(),
        crank_bush: None,
        outer_bush: None,
        crank_limit: None,
        outer_limit: None,
    };
    let mut rods = [rod(), rod()];
    for rod in &mut rods {
        (rod.crank_bush, rod.outer_bush) = (on.bush(), on.bush());
    }
    if watt {
        let [upper_rod, lower_rod] = rods;
        model.watt = Stated::Given(WattLinkage { carried_by, pivot, upper_rod, lower_rod });
    }
    Ok(model)
}

pub(super) fn fill<const N: usize>(results: &mut [f64], found: [f64; N]) {
    results.iter_mut().zip(found).for_each(|(result, found)| *result = found);
}

/// The axle at ride height, as `at_ride` numbers it.
fn at_rest(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of)?;
    model.wheel.loaded_radius = value(of[53]);
    let ready = model.ready()?;
    let on = ready.at(Length::from_si(0.0), Angle::from_si(0.0))?;
    fill(
        results,
        [
            // Of the left wheel, which toes out where its axle steers to the left.
            -on.heave_steer.si(),
            on.roll_steer.si(),
            on.roll_centre_height.si(),
            on.side_view_angle.si(),
            on.freedoms as f64,
            on.redundant as f64,
            on.bind_roll_stiffness.si(),
        ],
    );
    Ok(())
}

fn on_coil_over(of: &[f64]) -> Result<LiveAxle> {
    let coil_over =
        AxleCoilOver { body_eye: point(of, 53), axle_eye: point(of, 56), spring: None, damper: None };
    Ok(LiveAxle { coil_over: Stated::Given(coil_over), ..drawn(of)? })
}

fn coil_over(of: &[f64], results: &mut [f64]) -> Result<()> {
    if let Some([length, motion_ratio, gradient, base]) = on_coil_over(of)?.ready()?.stroke_at_ride() {
        fill(results, [motion_ratio, gradient, length, base]);
    }
    Ok(())
}

/// The bar of a live axle: its points, then what carries its bearings.
pub(super) fn bar_of(of: &[f64]) -> AxleBar {
    AxleBar {
        carried_by: mount(of[9]),
        link_eye: point(of, 0),
        lever_end: point(of, 3),
        lever_pivot: point(of, 6),
    }
}

fn bar(of: &[f64], results: &mut [f64]) -> Result<()> {
    let model = LiveAxle { anti_roll_bar: Stated::Given(bar_of(&of[53..])), ..drawn(of)? };
    let ready = model.ready()?;
    let on = ready.at(Length::from_si(0.0), Angle::from_si(0.0))?;
    results[0] = on.bar_motion_ratio.si();
    Ok(())
}

fn damper(of: &[f64], results: &mut [f64]) -> Result<()> {
    if of[59] != 0.0 {
        return Ok(());
    }
    let model = on_coil_over(of)?;
    let ready = model.ready()?;
    fill(results, [ready.heave_for(of[60])?, ready.heave_for(of[61])?]);
    Ok(())
}

fn spring(of: &[f64], results: &mut [f64]) -> Result<()> {
    let model = on_coil_over(of)?;
    let ready = model.ready()?;
    results[0] = match ready.heave_for(of[59]) {
        Ok(heave) => heave,
        Err(_) => ready.travel_range(Angle::from_si(0.0))?.bump.si(),
    };
    Ok(())
}

fn range(of: &[f64], results: &mut [f64]) -> Result<()> {
    let on = drawn(of)?.ready()?.travel_range(Angle::from_si(0.0))?;
    fill(results, [-on.droop.si(), on.bump.si()]);
    Ok(())
}

/// The limits of the joints, where they are written; how many of the kinds of joint have none.
fn limit(model: &mut LiveAxle, of: &[f64]) -> usize {
    let lean = |place: usize| known(of[53 + place]);
    for (place, link) in model.links.iter_mut().enumerate() {
        (link.body_limit, link.axle_limit) = (lean(2 * place), lean(2 * place + 1));
    }
    let mut asked = 0..0;
    if let Stated::Given(rod) = &mut model.lateral_rod {
        (rod.body_limit, rod.axle_limit) = (lean(4), lean(5));
        asked = 4..6;
    }
    if let Stated::Given(watt) = &mut model.watt {
        for (rod, place) in [(&mut watt.upper_rod, 6), (&mut watt.lower_rod, 8)] {
            (rod.crank_limit, rod.outer_limit) = (lean(place), lean(place + 1));
        }
        asked = 6..10;
    }
    (0..4).chain(asked).filter(|place| of[53 + place].is_nan()).count()
}

/// Shift, pinion, bind and joints, as `over_travel` numbers them.
fn moving(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of)?;
    let unlimited = limit(&mut model, of);
    let (base, [bump, droop]) = (of[63], travelled([of[64], of[65]])?);
    let sine = (bump + droop) / base;
    if sine.abs() > CROSSED {
        let message = format!(
            "bump_left = {bump} m and droop_left = {droop} m over {base} m between the springs: the axle would stand on end"
        );
        return Err(Error::NoSolution { message });
    }
    let ready = model.ready()?;
    let at = |heave: f64, roll: f64| ready.at(Length::from_si(heave), Angle::from_si(roll));
    let (crossed, roll) = (0.5 * (bump - droop), sine.asin());
    let upright = [at(bump, 0.0)?, at(-droop, 0.0)?, at(0.5 * bump, 0.0)?, at(-0.5 * droop, 0.0)?];
    let ends = [&upright[0], &upright[1], &at(crossed, roll)?, &at(crossed, -roll)?];
    let most = |on: &[&Found<'_>], of: fn(&Found<'_>) -> f64| {
        // `max` would drop a NaN.
        on.iter()
            .map(|on| of(on).abs())
            .fold(0.0, |most: f64, on| if on.is_nan() || on > most { on } else { most })
    };
    let heaved = upright.each_ref();
    // Where no limit is written this is not a number in all of them.
    let least = ends.iter().map(|on| on.joint_left.si()).fold(f64::NAN, f64::min);
    fill(
        results,
        [
            most(&heaved, |on| on.lateral_shift.si()),
            most(&heaved, |on| on.pinion_angle_change.si()),
            most(&ends, |on| on.bind_misfit.si()),
            most(&ends, |on| on.bind_force.si()),
            least,
            roll,
            unlimited as f64,
        ],
    );
    Ok(())
}

/// Where both are drawn.
pub(super) const BESIDE_LEAVES: &str = "leaf springs lead an axle as links and rods do, both are drawn, and what they do to each other is not computed: write what was \
                                        measured of them together, such as bind_force and joint_left";
/// Where wheels that move by themselves have an axle between them.
pub(super) const APART: &str = "they are written as independent, but links or leaf springs of a live axle are drawn: one of the two is wrong";

/// Sine of the roll beyond which no axle is asked about.
const CROSSED: f64 = 0.8;

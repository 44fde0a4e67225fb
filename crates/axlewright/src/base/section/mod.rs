//! Description of a system for the build sheet: its lines, how each follows from others, and its findings.
//!
//! A *line* is one quantity, choice or text of the sheet, named by its path: `front.spring.rate`. A line that nobody wrote follows
//! from others by its *steps*, each one function of the catalogue, or is *assumed* where the trade has a usual value. A *finding*
//! holds one line against another. A path whose first word is `axle` stands for `front` and `rear`; `[]` in it stands for the
//! places of a list, counted from 0.
//!
//! A line belongs to the system that owns the part, and a section names only lines of its own layer and of those below. A system above adds
//! to a line with [`also`]. A line that is not written follows by the first of its steps whose inputs are known: those of the systems above
//! come first, the highest layer first, then those of the line itself. A system above knows more of the vehicle: a drawn linkage comes before
//! a ratio that was read at the spring's mount.
#![expect(
    clippy::indexing_slicing,
    reason = "lists are joined and checked while compiling: a wrong place is an error of the compiler"
)]

pub(crate) mod macros;
pub(crate) mod rule;

pub(crate) use macros::{fields, model, rule, words};
pub use rule::Rule;
pub(crate) use rule::Whole;

use super::error::{Limit, Result};
use super::units::Kind;

/// Lines and findings of one system.
#[derive(Debug)]
pub struct Section {
    /// Lines, in the order in which a sheet prints them.
    pub lines: &'static [Line],
    /// Findings, in the order in which a report prints them.
    pub findings: &'static [Finding],
    /// Additions to lines and findings of systems below it.
    pub also: &'static [Also],
    /// Models whose fields are lines.
    pub models: &'static [ModelOf],
    /// Parts that can be bought, each by the lines that describe it: another part drops those that it does not write itself.
    pub parts: &'static [&'static [&'static str]],
    /// Keys that had another name.
    pub renamed: &'static [Renamed],
}

impl Section {
    /// No lines, findings, additions, models, parts or renamed keys.
    pub const EMPTY: Section =
        Section { lines: &[], findings: &[], also: &[], models: &[], parts: &[], renamed: &[] };
}

/// Addition of a system to a line or a finding of a system below it.
#[derive(Debug, Clone, Copy)]
pub struct Also {
    /// Path of the line or finding, as the system below declares it.
    pub path: &'static str,
    /// Ways in which the line follows from lines of this system, too: they come before those of the systems below.
    pub steps: &'static [Step],
    /// Lines or tables of this system on which a reading of the line is taken, too.
    pub measured_on: &'static [&'static str],
    /// Parts of this system that the vehicle must have for the finding to be asked, too.
    pub about: &'static [About],
}

/// An addition to a line or a finding of a system below.
pub const fn also(path: &'static str) -> Also {
    Also { path, steps: &[], measured_on: &[], about: &[] }
}

impl Also {
    /// The line follows from other lines by the first of these steps whose inputs are known.
    pub const fn by(self, steps: &'static [Step]) -> Also {
        Also { steps, ..self }
    }
    /// The line is measured on these parts, too.
    pub const fn measured_on(self, parts: &'static [&'static str]) -> Also {
        Also { measured_on: parts, ..self }
    }
    /// The finding is about these parts, too.
    pub const fn about(self, about: &'static [About]) -> Also {
        Also { about, ..self }
    }
}

/// A model that a sheet holds: its fields are lines under the keys of the model, or lines of other tables.
#[derive(Debug)]
pub struct ModelOf {
    /// Name by which it is asked for: `axle.suspension`.
    pub path: &'static str,
    /// Its type: `suspension.DoubleWishbone`.
    pub model: &'static str,
    /// Table under which its own fields stand.
    pub table: &'static str,
    /// Its fields and their lines.
    pub inputs: &'static [rule::Taken],
    /// Fields that have a word of their own: names of the parts of a list.
    pub named: &'static [(&'static str, &'static str)],
    /// Field that says `front` or `rear`; empty where there is none.
    pub end: &'static str,
    /// Adds the shapes of its fields.
    pub shape: fn(&mut rule::Shape),
}

/// A line or a table that had another name. The old name is read and answered with a remark.
#[derive(Debug)]
pub struct Renamed {
    /// Old path.
    pub old: &'static str,
    /// Path of the line or table.
    pub new: &'static str,
    /// Old words of a choice, and the words for which they stand.
    pub words: &'static [(&'static str, &'static str)],
}

/// One line of the sheet.
#[derive(Debug, Clone, Copy)]
pub struct Line {
    /// Its path.
    pub path: &'static str,
    /// Content of the line.
    pub content: Content,
    /// Meaning of the line.
    pub meaning: &'static str,
    /// True if it may be written; otherwise it always follows from other lines.
    pub written: bool,
    /// Class of the written line; none if it is never written.
    pub class: Option<Class>,
    /// True if leaving the line out says that there is no such part. A dropped reading of it is then missing.
    pub left_out_is_none: bool,
    /// When missing, ask the user for this line itself rather than for its inputs.
    pub first_hand: bool,
    /// Allowed range, in coherent SI.
    pub range: Range,
    /// Steps by which it follows from other lines: the first one whose inputs are known, after those that systems above add.
    pub steps: &'static [Step],
    /// Assumed value in coherent SI, with its ground, if the line is neither written nor derived.
    pub assumed: Option<(f64, &'static str)>,
    /// Value in coherent SI if the sheet says that there is no such part: the rate of a bar that is `none` is 0 N/m.
    pub absent: Option<f64>,
    /// Places of a list; 1 if it is no list.
    pub places: usize,
    /// How a shop measures it, where that is not obvious; otherwise empty.
    pub how: &'static str,
    /// Names of the metric and the US unit that the trade uses for this line, where they are not those of its kind.
    pub shop_units: Option<(&'static str, &'static str)>,
}

/// Class of a written line; it says how long the line stays valid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Class {
    /// Statement of a maker, or a dimension of a part. It stands until somebody writes another.
    Rating,
    /// Reading of the shop, and the lines or tables of the parts on which it was taken; empty for the vehicle as a whole. Another part
    /// makes it void.
    Measurement(&'static [&'static str]),
    /// Aim of the builder, or a use for which the vehicle is built.
    Wish,
    /// Word for one of several ways to build.
    Choice,
}

/// Content of a line.
#[derive(Debug, Clone, Copy)]
pub enum Content {
    /// A quantity, as text with its unit.
    Quantity(&'static Kind),
    /// One of a few words.
    Choice(&'static [&'static str]),
    /// A marking, decoded into numbers that [`Call::Part`] takes from it.
    Marking(&'static Marking),
}

/// A marking and its numbers.
#[derive(Debug)]
pub struct Marking {
    /// Names of the numbers, in order.
    pub numbers: &'static [&'static str],
    /// Numbers of a text in coherent SI; not a number if the text does not give one.
    pub decode: fn(&str) -> Result<Vec<f64>>,
}

/// The range of a line, in coherent SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// The least value.
    pub lower: f64,
    /// The greatest value.
    pub upper: f64,
    /// True if the least value itself is outside.
    pub lower_open: bool,
    /// Source of the range.
    pub source: &'static str,
}

impl Range {
    /// The range as the limits of an argument: a line has the ends of every argument, too.
    fn limit(&self) -> Limit {
        let open = |end: f64, bound: f64, beyond: f64| if end == bound { beyond } else { end };
        Limit {
            argument: "",
            lower: open(self.lower, f64::MIN, f64::NEG_INFINITY),
            upper: open(self.upper, f64::MAX, f64::INFINITY),
            lower_open: self.lower_open,
            upper_open: false,
            source: self.source,
        }
    }

    /// True if a value lies inside; never true of NaN or an infinity.
    pub fn allows(&self, value: f64) -> bool {
        self.limit().allows(value)
    }

    /// This range if the value misses one of its own bounds, otherwise the one with the ends of every argument.
    pub(crate) fn missed_by(&self, value: f64) -> Range {
        let Limit { lower, upper, lower_open, source, .. } = self.limit().missed_by(value);
        Range { lower: lower.max(f64::MIN), upper: upper.min(f64::MAX), lower_open, source }
    }
}

/// One way in which a line follows from others.
#[derive(Debug, Clone, Copy)]
pub struct Step {
    /// Call that computes it.
    pub call: Call,
    /// Paths of its inputs, in order; one that begins with `?` may be missing, and is NaN then.
    pub inputs: &'static [&'static str],
    /// Largest difference, tolerances aside, between a written line and the result before they contradict each other: zero if the result must hold,
    /// infinite if the trade would merely assume it.
    pub leeway: f64,
    /// True if a written line is held against the result although an input that may be missing is assumed.
    pub assumed_too: bool,
    /// Message if the result is not a number although the inputs are known.
    pub lacking: &'static str,
    /// How a written line stands to the result.
    pub holds: Holds,
}

/// How a written line stands to the result of a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Holds {
    /// Both are the same: a line that is not written follows by the step.
    Equal,
    /// The line differs by at most this share of the result, which gives it no value.
    Near(f64),
    /// The line is at most so many times the result, which gives it no value.
    AtMost(f64),
    /// The line is at least so many times the result, which gives it no value.
    AtLeast(f64),
}

/// Call of a step.
#[derive(Debug, Clone, Copy)]
pub enum Call {
    /// A result of a function of the catalogue: its path and the place of the result.
    Function(&'static str, usize),
    /// A number of a marking.
    Part(usize),
    /// The line to which a choice points: the inputs are the choice, then a line for each of its words.
    Pick,
    /// Arithmetic that is no formula of its own: a sum, the least of several.
    Combine(Combine),
    /// A result of a typed rule, by its place.
    Rule(&'static Rule, usize),
}

/// Arithmetic between lines, by name.
#[derive(Debug, Clone, Copy)]
pub struct Combine {
    /// Operation of the combination.
    pub how: How,
    /// Source for the report, if there is one.
    pub source: &'static str,
}

/// Operation on the inputs of a combination.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// The line itself.
    Same,
    /// All of them together.
    Sum,
    /// The first less the second.
    Difference,
    /// One times the other.
    Product,
    /// The first over the second.
    Quotient,
    /// The least of the known ones.
    Least,
    /// The greatest of the known ones.
    Greatest,
    /// The middle between two lines.
    Mean,
    /// The line with its sign reversed.
    Negative,
}

impl How {
    /// Formula for the report.
    pub const fn formula(self) -> &'static str {
        match self {
            How::Same => "a",
            How::Sum => "a + b",
            How::Difference => "a - b",
            How::Product => "a b",
            How::Quotient => "a / b",
            How::Least => "least of those that are known",
            How::Greatest => "greatest of those that are known",
            How::Mean => "(a + b) / 2",
            How::Negative => "-a",
        }
    }

    /// The result for values in coherent SI; `f64::min` and `f64::max` leave out unknown values.
    #[inline]
    pub fn of(self, mut values: impl Iterator<Item = f64>) -> f64 {
        let mut next = || values.next().unwrap_or(f64::NAN);
        match self {
            How::Same => next(),
            How::Sum => values.sum(),
            How::Difference => next() - next(),
            How::Product => values.product(),
            How::Quotient => next() / next(),
            How::Least => values.fold(f64::NAN, f64::min),
            How::Greatest => values.fold(f64::NAN, f64::max),
            How::Mean => (next() + next()) / 2.0,
            How::Negative => -next(),
        }
    }
}

/// A question that a builder asks, and the lines that answer it.
#[derive(Debug, Clone, Copy)]
pub struct Finding {
    /// Its name: `axle.spring_bind`.
    pub path: &'static str,
    /// The question.
    pub question: &'static str,
    /// Margin that answers the question.
    pub margin: Margin,
    /// Line of the wanted margin: below it the finding is `tight`.
    pub wanted: &'static str,
    /// Lines that must be known although no step takes them, such as the kind of a rating.
    pub rests_on: &'static [&'static str],
    /// Parts that the vehicle must have for the question to apply; it always applies if this is empty.
    pub about: &'static [About],
    /// Caution for a finding that can hurt someone; such a finding counts as one of safety.
    pub caution: &'static str,
}

/// A part that a vehicle may lack, and how a sheet says so. A question about it does not apply then.
#[derive(Debug, Clone, Copy)]
pub struct About {
    /// Lines or tables of the part. The part is absent if the sheet says `none` of each of them.
    pub parts: &'static [&'static str],
    /// Path of a choice that decides whether there is such a part; empty if no choice does.
    pub choice: &'static str,
    /// Words of that choice with which the part may be present. With any other word it is absent.
    pub words: &'static [&'static str],
    /// True if these words say that the part is present, false if they say that it may be.
    pub sure: bool,
    /// Lines or tables beside which the part must be written or be `none`: until then nothing clears the finding. If this is not empty,
    /// the question is asked without the part, too.
    pub beside: &'static [&'static str],
    /// Lines that say that there is such a part where they are above zero, although they are none of its own.
    pub told_by: &'static [&'static str],
}

impl About {
    /// A part with these lines or tables.
    pub const fn parts(parts: &'static [&'static str]) -> About {
        About { parts, choice: "", words: &[], sure: false, beside: &[], told_by: &[] }
    }
    /// The part may be present only with these words of a choice.
    pub const fn only_with(self, choice: &'static str, words: &'static [&'static str]) -> About {
        About { choice, words, ..self }
    }
    /// Beside these lines or tables the part must be written or be `none`.
    pub const fn told_beside(self, beside: &'static [&'static str]) -> About {
        About { beside, ..self }
    }
    /// These lines say that the part is present where they are above zero.
    pub const fn told_by(self, lines: &'static [&'static str]) -> About {
        About { told_by: lines, ..self }
    }
    /// These words of the choice say that the part is present.
    pub const fn surely(self) -> About {
        About { sure: true, ..self }
    }
}

/// Margin of a finding. The paths name lines.
#[derive(Debug, Clone, Copy)]
pub enum Margin {
    /// Capacity over demand; short below 1.
    Ratio {
        /// Line of the capacity.
        capacity: &'static str,
        /// Line of the demand.
        demand: &'static str,
    },
    /// Remaining amount; short below zero.
    Remaining {
        /// Line of the remaining amount.
        value: &'static str,
    },
    /// Excess of a value over its minimum; short below zero.
    AtLeast {
        /// Line of the value.
        value: &'static str,
        /// Line of the minimum.
        least: &'static str,
    },
    /// Distance of a value below its maximum; short below zero.
    AtMost {
        /// Line of the value.
        value: &'static str,
        /// Line of the maximum.
        most: &'static str,
    },
    /// Distance of a value from the nearer edge of a band, its edges included.
    Band {
        /// Line of the value.
        value: &'static str,
        /// Line of the lower edge.
        low: &'static str,
        /// Line of the upper edge.
        high: &'static str,
    },
}

const ANY: Range = Range { lower: f64::MIN, upper: f64::MAX, lower_open: false, source: "any finite number" };

/// A line or table under another name than before, its words unchanged.
pub const fn renamed(old: &'static str, new: &'static str) -> Renamed {
    Renamed { old, new, words: &[] }
}

/// A line with a quantity.
pub const fn line(path: &'static str, kind: &'static Kind, meaning: &'static str) -> Line {
    Line {
        path,
        content: Content::Quantity(kind),
        meaning,
        written: true,
        class: Some(usual_class(path)),
        left_out_is_none: false,
        first_hand: false,
        range: ANY,
        steps: &[],
        assumed: None,
        absent: None,
        places: 1,
        how: "",
        shop_units: None,
    }
}

/// A line that is never written: it follows from others.
pub const fn derived(path: &'static str, kind: &'static Kind, meaning: &'static str) -> Line {
    Line { written: false, class: None, ..line(path, kind, meaning) }
}

/// A line with one of a few words.
pub const fn choice(path: &'static str, words: &'static [&'static str], meaning: &'static str) -> Line {
    Line { content: Content::Choice(words), class: Some(Class::Choice), ..line(path, RATIO, meaning) }
}

/// A line with a marking.
pub const fn marking(path: &'static str, marking: &'static Marking, meaning: &'static str) -> Line {
    Line { content: Content::Marking(marking), ..line(path, RATIO, meaning) }
}

/// Class of a line by its path, unless a modifier sets another. Lines under `wanted` and `use` are wishes, coordinates of a point are
/// measured on the vehicle, and the other lines are makers' ratings.
const fn usual_class(path: &str) -> Class {
    let wishes = ["wanted.", "use.", "axle.wanted."];
    let mut place = 0;
    while place < wishes.len() {
        if begins(path, wishes[place]) {
            return Class::Wish;
        }
        place += 1;
    }
    match path.as_bytes() {
        [.., b'.', b'x' | b'y' | b'z'] => Class::Measurement(&[]),
        _ => Class::Rating,
    }
}

/// True if a path begins with a text.
const fn begins(path: &str, with: &str) -> bool {
    let (path, with) = (path.as_bytes(), with.as_bytes());
    if path.len() < with.len() {
        return false;
    }
    let mut place = 0;
    while place < with.len() {
        if path[place] != with[place] {
            return false;
        }
        place += 1;
    }
    true
}

const RATIO: &Kind = <super::units::Ratio as super::units::Quantity>::KIND;

impl Line {
    /// Allows from `lower`, excluded, to `upper`.
    pub const fn above(self, lower: f64, upper: f64, source: &'static str) -> Line {
        Line { range: Range { lower, upper, lower_open: true, source }, ..self }
    }
    /// Allows from `lower` to `upper`.
    pub const fn within(self, lower: f64, upper: f64, source: &'static str) -> Line {
        Line { range: Range { lower, upper, lower_open: false, source }, ..self }
    }
    /// Is a wanted margin of at most `upper`.
    pub const fn margin(self, upper: f64) -> Line {
        self.within(0.0, upper, "definition: a margin is not negative")
    }
    /// Follows from other lines by the first of these steps whose inputs are known.
    pub const fn by(self, steps: &'static [Step]) -> Line {
        Line { steps, ..self }
    }
    /// Is asked for itself, rather than its inputs.
    pub const fn first_hand(self) -> Line {
        Line { first_hand: true, ..self }
    }
    /// Is a maker's rating.
    pub const fn rating(self) -> Line {
        Line { class: Some(Class::Rating), ..self }
    }
    /// Is measured on these parts, each a line or a table; on the vehicle as a whole if there are none.
    pub const fn measured_on(self, parts: &'static [&'static str]) -> Line {
        Line { class: Some(Class::Measurement(parts)), ..self }
    }
    /// Is a wish of the builder.
    pub const fn wish(self) -> Line {
        Line { class: Some(Class::Wish), ..self }
    }
    /// Says that there is no such part if it is left out.
    pub const fn left_out_is_none(self) -> Line {
        Line { left_out_is_none: true, ..self }
    }
    /// Is assumed if it is neither written nor derived.
    pub const fn or(self, si: f64, ground: &'static str) -> Line {
        Line { assumed: Some((si, ground)), ..self }
    }
    /// Has this value if the sheet says that there is no such part.
    pub const fn if_none(self, si: f64) -> Line {
        Line { absent: Some(si), ..self }
    }
    /// Is measured in this way.
    pub const fn how(self, how: &'static str) -> Line {
        Line { how, ..self }
    }
    /// Is said in these units: the name of a metric one and of a US one.
    pub const fn in_units(self, metric: &'static str, us: &'static str) -> Line {
        Line { shop_units: Some((metric, us)), ..self }
    }
    /// Is a list with this many places at the most.
    pub const fn list(self, places: usize) -> Line {
        Line { places, ..self }
    }
}

/// Groups of lines or of paths in a row, so that a section can be read screen by screen.
pub const fn joined<T: Copy, const N: usize>(groups: &[&[T]]) -> [T; N] {
    let mut all = [groups[0][0]; N];
    let (mut group, mut at) = (0, 0);
    while group < groups.len() {
        let mut place = 0;
        while place < groups[group].len() {
            all[at] = groups[group][place];
            (place, at) = (place + 1, at + 1);
        }
        group += 1;
    }
    assert!(at == N, "as many as the groups have together");
    all
}

/// Lines of which some are measured: a path of a line, or of a table around lines, and the parts on which they are measured.
pub const fn measured<const N: usize>(
    lines: [Line; N],
    readings: &[(&str, &'static [&'static str])],
) -> [Line; N] {
    let mut lines = lines;
    let mut reading = 0;
    while reading < readings.len() {
        let (path, parts) = readings[reading];
        let (mut place, mut found) = (0, false);
        while place < N {
            let inside = lines[place].path.as_bytes();
            let whole =
                begins(lines[place].path, path) && (inside.len() == path.len() || inside[path.len()] == b'.');
            if whole && lines[place].written && !matches!(lines[place].content, Content::Choice(_)) {
                lines[place] = lines[place].measured_on(parts);
                found = true;
            }
            place += 1;
        }
        assert!(found, "a reading has a line that is written");
        reading += 1;
    }
    lines
}

/// Lines of which some say how they are measured, by path; a written coordinate that does not say it is measured like every `point`.
pub const fn told<const N: usize>(
    lines: [Line; N],
    ways: &[(&str, &'static str)],
    point: &'static str,
) -> [Line; N] {
    let mut lines = lines;
    let mut way = 0;
    while way < ways.len() {
        let (path, how) = ways[way];
        let (mut place, mut found) = (0, false);
        while place < N {
            if begins(lines[place].path, path) && lines[place].path.len() == path.len() {
                lines[place] = lines[place].how(how);
                found = true;
            }
            place += 1;
        }
        assert!(found, "the path is a line");
        way += 1;
    }
    let mut place = 0;
    while place < N {
        let path = lines[place].path.as_bytes();
        let is_point = path.len() > 2
            && path[path.len() - 2] == b'.'
            && matches!(path[path.len() - 1], b'x' | b'y' | b'z');
        if is_point && lines[place].written && lines[place].how.is_empty() {
            lines[place] = lines[place].how(point);
        }
        place += 1;
    }
    lines
}

/// The only result of a function of the catalogue.
pub const fn step(function: &'static str, inputs: &'static [&'static str]) -> Step {
    Step {
        call: Call::Function(function, 0),
        inputs,
        leeway: 0.0,
        assumed_too: false,
        lacking: "",
        holds: Holds::Equal,
    }
}

/// One of several results of a function of the catalogue, by its place.
pub const fn result(place: usize, function: &'static str, inputs: &'static [&'static str]) -> Step {
    Step {
        call: Call::Function(function, place),
        inputs,
        leeway: 0.0,
        assumed_too: false,
        lacking: "",
        holds: Holds::Equal,
    }
}

/// A number of the marking on a line, by its name.
pub const fn part(number: &str, marking: &Marking, line: &'static [&'static str; 1]) -> Step {
    Step {
        call: Call::Part(rule::place_of(marking.numbers, number)),
        inputs: line,
        leeway: 0.0,
        assumed_too: false,
        lacking: "",
        holds: Holds::Equal,
    }
}

/// The line to which a choice points: first the choice, then a line for each of its words. Only that one is asked for.
pub const fn pick(choice_and_lines: &'static [&'static str]) -> Step {
    Step {
        call: Call::Pick,
        inputs: choice_and_lines,
        leeway: 0.0,
        assumed_too: false,
        lacking: "",
        holds: Holds::Equal,
    }
}

const fn combined(how: How, inputs: &'static [&'static str], source: &'static str) -> Step {
    Step {
        call: Call::Combine(Combine { how, source }),
        inputs,
        leeway: 0.0,
        assumed_too: false,
        lacking: "",
        holds: Holds::Equal,
    }
}

/// The line itself, under another path.
pub const fn same(line: &'static [&'static str; 1], source: &'static str) -> Step {
    combined(How::Same, line, source)
}
/// All of these lines together.
pub const fn sum_of(lines: &'static [&'static str], source: &'static str) -> Step {
    combined(How::Sum, lines, source)
}
/// The first line less the second.
pub const fn difference_of(lines: &'static [&'static str; 2], source: &'static str) -> Step {
    combined(How::Difference, lines, source)
}
/// These lines multiplied.
pub const fn product_of(lines: &'static [&'static str], source: &'static str) -> Step {
    combined(How::Product, lines, source)
}
/// The first line over the second.
pub const fn quotient_of(lines: &'static [&'static str; 2], source: &'static str) -> Step {
    combined(How::Quotient, lines, source)
}
/// The least of these lines; `?` stands before one that may be missing.
pub const fn least_of(lines: &'static [&'static str], source: &'static str) -> Step {
    combined(How::Least, lines, source)
}
/// The greatest of these lines; `?` stands before one that may be missing.
pub const fn greatest_of(lines: &'static [&'static str], source: &'static str) -> Step {
    combined(How::Greatest, lines, source)
}

/// The middle between two lines.
pub const fn mean_of(lines: &'static [&'static str; 2], source: &'static str) -> Step {
    combined(How::Mean, lines, source)
}
/// The line with its sign reversed.
pub const fn negative_of(line: &'static [&'static str; 1], source: &'static str) -> Step {
    combined(How::Negative, line, source)
}

/// The only result of a rule.
pub const fn by(rule: &'static Rule) -> Step {
    Step {
        call: Call::Rule(rule, 0),
        inputs: &[],
        leeway: 0.0,
        assumed_too: false,
        lacking: rule.lacking,
        holds: Holds::Equal,
    }
}

/// A result of a rule by its name.
pub const fn gives(rule: &'static Rule, result: &'static str) -> Step {
    let place = rule::place_of(rule.results, result);
    Step {
        call: Call::Rule(rule, place),
        inputs: &[],
        leeway: 0.0,
        assumed_too: false,
        lacking: rule.lacking,
        holds: Holds::Equal,
    }
}

impl Step {
    /// Is the trade's usual value, not a necessary one: a written line may differ.
    pub const fn usual(self) -> Step {
        self.about(f64::INFINITY)
    }
    /// Is right within this difference, in coherent SI.
    pub const fn about(self, leeway: f64) -> Step {
        Step { leeway, ..self }
    }
    /// Gives the line no value: a written one contradicts it if it differs by more than this share of the result.
    pub const fn near(self, share: f64) -> Step {
        Step { holds: Holds::Near(share), assumed_too: true, ..self }
    }
    /// Is held against a written line although an input that may be missing is assumed.
    pub const fn assumed_too(self) -> Step {
        Step { assumed_too: true, ..self }
    }
    /// Bounds a written line from above by so many times the result, and gives no value to one that is not written.
    pub const fn at_most(self, times: f64) -> Step {
        Step { holds: Holds::AtMost(times), ..self }
    }
    /// Bounds a written line from below by so many times the result, and gives no value to one that is not written.
    pub const fn at_least(self, times: f64) -> Step {
        Step { holds: Holds::AtLeast(times), ..self }
    }
    /// Message if the result is not a number although the inputs are known.
    pub const fn lacking(self, lacking: &'static str) -> Step {
        Step { lacking, ..self }
    }
}

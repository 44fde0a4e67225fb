//! Numbers for a person: in the unit that the sheet uses for such a line, otherwise in the trade's unit, rounded to what a shop measures.

use super::graph::{Graph, Slot};
use super::margin::value_kind;
use super::{Answer, Assessment, Sheet};
use crate::base::section::{Content, Line};
use crate::base::text::{self, System};
use crate::units::{Kind, Unit};
use std::collections::BTreeMap;

/// Group of lines that share a unit: a kind, and the units that the trade keeps for some of its lines.
type Group = (&'static str, (&'static str, &'static str));

/// The group of a kind on a line: the trade may keep other units for a line than for its kind.
fn group(kind: &'static Kind, line: Option<&Line>) -> Group {
    let own = line.and_then(|line| line.shop_units).filter(|(metric, _)| kind.unit(metric).is_some());
    (kind.name, own.unwrap_or((kind.metric, kind.us)))
}

/// Units of a report.
pub(super) struct Shop {
    system: System,
    /// Units in which most lines of a group are written.
    written: BTreeMap<Group, &'static Unit>,
}

/// Units in which a report says the numbers of an assessment.
pub struct Units<'a> {
    assessment: &'a Assessment,
    shop: Shop,
}

impl Assessment {
    /// The units of a system, or without one those in which the sheet writes such lines: the units of [`Assessment::report`].
    pub fn units(&self, system: Option<System>) -> Units<'_> {
        Units { assessment: self, shop: Shop::for_sheet(&self.sheet, system) }
    }
}

impl Units<'_> {
    /// The unit of a kind on a line, by its path; none where the kind lacks the trade's unit of that line.
    pub fn of_line(&self, path: &str, kind: &'static Kind) -> Option<&'static Unit> {
        let graph = Graph::get();
        self.shop.unit(kind, graph.slot(path).map(|slot| graph.info(slot).line))
    }

    /// The unit of the value of an answer, of its limits, or, with the kind of its margin, of that margin.
    pub fn of_answer(&self, answer: &Answer, kind: &'static Kind) -> Option<&'static Unit> {
        self.shop.unit(kind, self.assessment.value_line(answer).map(|(_, line)| line))
    }
}

/// A quantity below this, in the unit in which it is said, is the rounding of a computer.
const NOISE: f64 = 1e-9;

/// Quantities that a sheet writes, each with its line, kind and unit.
fn units(sheet: &Sheet) -> impl Iterator<Item = (&'static Line, &'static Kind, &'static Unit)> {
    sheet.values.iter().filter_map(|(slot, written)| {
        let info = Graph::get().info(*slot);
        let kind = info.kind()?;
        let reading = text::read_as(&written.text.to_string(), kind).ok()?;
        Some((info.line, kind, reading.unit))
    })
}

/// The shop's system whose units are used on more written lines.
pub(super) fn system(sheet: &Sheet) -> System {
    let of = |name: fn(&Kind) -> &'static str| {
        units(sheet).filter(|(_, kind, unit)| kind.us != kind.metric && unit.name == name(kind)).count()
    };
    if of(|kind| kind.us) > of(|kind| kind.metric) { System::Us } else { System::Metric }
}

impl Shop {
    /// The units of a system.
    pub fn of(system: System) -> Shop {
        Shop { system, written: BTreeMap::new() }
    }

    /// The units of a system, or without one those in which the sheet is written.
    pub fn for_sheet(sheet: &Sheet, wanted: Option<System>) -> Shop {
        if let Some(system) = wanted {
            return Shop::of(system);
        }
        let mut counts = BTreeMap::<Group, Vec<(&'static Unit, usize)>>::new();
        for (line, kind, unit) in units(sheet) {
            let of = counts.entry(group(kind, Some(line))).or_default();
            match of.iter_mut().find(|(known, _)| known.name == unit.name) {
                Some((_, count)) => *count += 1,
                None => of.push((unit, 1)),
            }
        }
        let most = |of: Vec<(&'static Unit, usize)>| {
            // The first of the most frequent ones.
            of.into_iter().rev().max_by_key(|(_, count)| *count).map(|(unit, _)| unit)
        };
        let written = counts.into_iter().filter(|((kind, _), _)| *kind != "Ratio");
        let written = written.filter_map(|(group, of)| Some((group, most(of)?))).collect();
        Shop { system: system(sheet), written }
    }

    /// The unit of a kind on a line.
    pub fn unit(&self, kind: &'static Kind, line: Option<&Line>) -> Option<&'static Unit> {
        let like = |of: &str| {
            let usual = Kind::named(of).map(|kind| group(kind, None))?;
            self.written.get(&usual).map(|unit| unit.name)
        };
        // A difference follows the unit of what it is a difference of.
        let follows = match kind.name {
            "TemperatureDifference" => {
                like("Temperature").map(|unit| if unit == "degF" { "delta_degF" } else { "delta_K" })
            }
            "Stress" if kind.metric == "kPa" => like("GaugePressure")
                .and_then(|unit| unit.strip_suffix("_gauge"))
                .filter(|unit| kind.unit(unit).is_some()),
            _ => None,
        };
        if let Some(unit) = follows.and_then(|name| kind.unit(name)) {
            return Some(unit);
        }
        let of = group(kind, line);
        if let Some(unit) = self.written.get(&of) {
            return Some(unit);
        }
        let (_, (metric, us)) = of;
        kind.unit(match self.system {
            System::Metric => metric,
            System::Us => us,
        })
    }

    /// Symbol of the unit of a line.
    pub fn symbol(&self, kind: &'static Kind, line: Option<&Line>) -> &'static str {
        self.unit(kind, line).map_or(kind.si, |unit| unit.symbol)
    }

    /// A quantity of a line to the digits of a shop.
    pub fn say(&self, si: f64, kind: &'static Kind, line: Option<&Line>) -> String {
        self.say_to(si, kind, line, 3)
    }

    /// That text, to at least this many significant digits.
    pub fn say_to(&self, si: f64, kind: &'static Kind, line: Option<&Line>, digits: usize) -> String {
        if si.is_nan() {
            return "not known".to_owned();
        }
        if si.is_infinite() {
            return "no limit".to_owned();
        }
        let (value, symbol) = match self.unit(kind, line) {
            Some(unit) => (unit.from_si(si), unit.symbol),
            None => (si, kind.si),
        };
        let whole =
            matches!(kind.name, "Length" | "Mass" | "AngularVelocity") && (1e3..1e5).contains(&value.abs());
        let digits = match kind.name {
            // To a tenth of a degree.
            "Temperature" if value.abs() >= 1.0 => digits.max(value.abs().log10() as usize + 2),
            _ if whole => digits.max(if value.abs() < 1e4 { 4 } else { 5 }),
            _ => digits,
        };
        let rounded: f64 = format!("{value:.*e}", digits.saturating_sub(1)).parse().unwrap_or(value);
        let number = if rounded.abs() < NOISE { 0.0 } else { rounded };
        let symbol = symbol.strip_prefix("delta ").unwrap_or(symbol);
        let symbol = match symbol {
            "deg/g0" => "deg/g",
            "g0" => "g",
            symbol => symbol,
        };
        let ordinary = number == 0.0 || (1e-4..1e7).contains(&number.abs());
        let text = if ordinary { format!("{number}") } else { format!("{number:e}") };
        if symbol.is_empty() { text } else { format!("{text} {symbol}") }
    }

    /// The value of a line: a word of a choice, a quantity.
    pub fn line(&self, slot: Slot, si: f64) -> String {
        let line = Graph::get().info(slot).line;
        match line.content {
            Content::Choice(words) => words.get(si as usize).map_or(String::new(), |word| (*word).to_owned()),
            Content::Marking(_) => "marking".to_owned(),
            Content::Quantity(_) => self.say(si, value_kind(slot), Some(line)),
        }
    }

    /// The unit of a line, for a person who has to write it.
    pub fn unit_words(&self, kind: &'static Kind, line: Option<&Line>) -> String {
        match self.symbol(kind, line) {
            "" => "a number".to_owned(),
            symbol => format!("{} in {symbol} or another unit of it", kind.words),
        }
    }

    /// The range of a line: `, above 0 to 100 m`.
    pub fn range_words(&self, line: &Line, kind: &'static Kind) -> String {
        let said = |si: f64| self.say(si, kind, Some(line));
        let range = line.range;
        let low = (range.lower > f64::MIN).then(|| {
            format!("{} {}", if range.lower_open { "above" } else { "at least" }, said(range.lower))
        });
        let high = (range.upper < f64::MAX).then(|| format!("at most {}", said(range.upper)));
        match (low, high) {
            (None, None) => String::new(),
            (Some(one), None) | (None, Some(one)) => format!("; {one}"),
            (Some(low), Some(high)) => format!("; {low}, {high}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::GaugePressure;
    use crate::units::Quantity;

    #[test]
    fn the_units_of_a_report_are_those_of_the_sheet() {
        let sheet = Sheet::from_text(
            "[engine]\nstroke = \"95 mm\"\nbore = \"92 mm\"\n[cap]\nrating = \"15 psi gauge\"\nholding_pressure = \"14 psi gauge\"\n\
             rating_tolerance = \"1 psi\"\ngauge_error = \"0.5 psi\"\n[front]\ntrack = \"1500 mm\"\n[rear]\ntrack = \"1500 mm\"\n\
             [vehicle]\nwheelbase = \"3 m\"\n[use]\naltitude = \"300 m\"\n",
        )
        .unwrap();
        let assessment = sheet.assess();
        let holds = assessment.answer("cap.holds").unwrap();
        let symbol = |system, kind| assessment.units(system).of_answer(holds, kind).map(|unit| unit.symbol);
        assert_eq!(symbol(None, holds.kind), Some("psi gauge"));
        assert_eq!(symbol(None, holds.margin_kind), Some("psi"));
        assert_eq!(symbol(Some(System::Metric), holds.margin_kind), Some("kPa"));
        let line = assessment.units(None).of_line("cap.rating", GaugePressure::KIND);
        assert_eq!(line.map(|unit| unit.symbol), Some("psi gauge"));
        // As the rows of the report say them.
        let report = crate::sheet::Report::default();
        let row = assessment.rows(&report).into_iter().find(|row| row[0] == "cap.holds").unwrap();
        assert!(row[2].ends_with(" psi gauge") && row[4].ends_with(" psi"), "{row:?}");
    }
}

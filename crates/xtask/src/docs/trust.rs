//! Measured errors of each function and model, from the rows in `target/tmp/rows-measured.json`, as tables.

use super::link::subjects;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use surface::{Api, Content, Field, Function, Kind, Shape, one_line};

/// Provenances that are counted together, the strongest first: the head of the column, and its provenances.
const GROUPS: [(&str, &[&str]); 4] = [
    ("published", &["published"]),
    ("library", &["library"]),
    ("own route", &["independent script", "own equations", "definition"]),
    ("memory, practice", &["memory", "common practice"]),
];

const NONE: &str = "**No reference row: checked by our own tests only.**";

/// The rows as the tests measured them.
pub struct Rows(Vec<Value>);

/// Rows of one group: their number, and the largest errors: relative, and in kelvin if the result is a temperature.
#[derive(Default)]
struct Tally {
    rows: usize,
    relative: Option<f64>,
    kelvin: Option<f64>,
    /// Largest error of rows that expect zero.
    at_zero: Option<f64>,
}

impl Tally {
    fn add(&mut self, api: &Api, row: &Value) {
        self.rows += 1;
        let keep = |worst: &mut Option<f64>, error: f64| {
            *worst = Some(worst.map_or(error, |so_far| so_far.max(error)))
        };
        for number in row["numbers"].as_array().into_iter().flatten() {
            let error = number["error"].as_f64().unwrap_or(f64::NAN);
            if result_kind(api, row, number).is_some_and(|kind| kind.name == "Temperature") {
                keep(&mut self.kelvin, error);
            } else if let Some(relative) = number["relative"].as_f64() {
                keep(&mut self.relative, relative);
            } else {
                keep(&mut self.at_zero, error);
            }
        }
    }
    fn worst(&self) -> String {
        let shown = |error: Option<f64>, unit: &str| Some(format!("{}{unit}", short(error?)));
        let all = [shown(self.relative, ""), shown(self.kelvin, " K"), shown(self.at_zero, " at zero")];
        let all: Vec<String> = all.into_iter().flatten().collect();
        if all.is_empty() { "—".into() } else { all.join(", ") }
    }
    fn cell(&self) -> String {
        if self.rows == 0 { String::new() } else { format!("{}: {}", self.rows, self.worst()) }
    }
}

/// An error with two digits; an exact zero is a plain 0.
fn short(error: f64) -> String {
    match error {
        0.0 => "0".into(),
        _ if (0.001..1000.0).contains(&error) => {
            format!("{}", format!("{error:.1e}").parse().unwrap_or(error))
        }
        _ => format!("{error:.1e}"),
    }
}

fn word<'a>(row: &'a Value, key: &str) -> &'a str {
    row[key].as_str().unwrap_or_default()
}

fn is_low(row: &Value) -> bool {
    word(row, "confidence") == "low"
}

/// Functions that a row can call: the function itself, or the methods of the model.
fn asked<'a>(api: &'a Api, name: &str) -> Vec<&'a Function> {
    let model = api.models.iter().find(|model| format!("{}.{}", model.system, model.name) == name);
    model.map_or_else(
        || api.functions.iter().filter(|function| function.path() == name).collect(),
        |model| model.methods.iter().collect(),
    )
}

fn result_kind<'a>(api: &'a Api, row: &Value, number: &Value) -> Option<&'a Kind> {
    let method = row["method"].as_str();
    let functions = asked(api, word(row, "of"));
    let function = functions.iter().find(|function| method.is_none_or(|method| function.name == method))?;
    let name = word(number, "result");
    let found = function.results.iter().find(|result| result.name == name);
    match &found.or(function.results.first())?.content {
        Content::Quantity(kind) => Some(kind),
        _ => None,
    }
}

/// Kind of the input with this name.
fn input_kind<'a>(api: &'a Api, of: &str, name: &str) -> Option<&'a Kind> {
    fn among<'a>(fields: &'a [Field], name: &str) -> Option<&'a Kind> {
        let (first, rest) = name.split_once('.').unwrap_or((name, ""));
        match &fields.iter().find(|field| field.name == first)?.shape {
            Shape::Quantity(kind) => Some(kind),
            Shape::List(below) | Shape::Fields(below) => among(&below.fields, rest),
            Shape::Choice(_) | Shape::Text => None,
        }
    }
    let model = api.models.iter().find(|model| format!("{}.{}", model.system, model.name) == of);
    let fields = model.and_then(|model| among(&model.fields, name));
    let parameter = || asked(api, of).into_iter().flat_map(|f| &f.parameters).find(|p| p.name == name);
    fields.or_else(|| parameter().map(|parameter| &*parameter.kind))
}

impl Rows {
    pub fn read(path: &Path) -> Result<Rows, String> {
        let text = surface::read(path)?;
        serde_json::from_str(&text).map(Rows).map_err(|error| format!("{}: {error}", path.display()))
    }

    fn about<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a Value> {
        self.0.iter().filter(move |row| word(row, "of") == name)
    }

    /// Lowest and highest value of each input over the rows with an answer.
    fn range(&self, api: &Api, name: &str) -> Vec<String> {
        let mut ranges: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
        for row in self.about(name).filter(|row| !is_low(row)) {
            for (input, value) in row["given"].as_object().into_iter().flatten() {
                let Some(value) = value.as_f64() else { continue };
                let range = ranges.entry(input).or_insert((value, value));
                *range = (range.0.min(value), range.1.max(value));
            }
        }
        let line = |(input, (low, high)): (&&str, &(f64, f64))| {
            let si = input_kind(api, name, input).map_or("", |kind| &kind.si);
            let unit = if si == "1" || si.is_empty() { String::new() } else { format!(" {si}") };
            let number = |x: f64| if x == 0.0 { "0".to_owned() } else { digits(x) };
            let values =
                if low == high { number(*low) } else { format!("{} … {}", number(*low), number(*high)) };
            // A part of a part is no name of the catalogue.
            format!("`{}` {values}{unit}", input.replace('.', "`.`"))
        };
        ranges.iter().map(line).collect()
    }

    fn tallies(&self, api: &Api, name: &str) -> Vec<Tally> {
        let tally = |(_, holds): &(&str, &[&str])| {
            let mut tally = Tally::default();
            let in_group = |row: &&Value| holds.contains(&word(row, "provenance"));
            let answered = self.about(name).filter(|row| !is_low(row) && row["refused"] != Value::Bool(true));
            answered.filter(in_group).for_each(|row| tally.add(api, row));
            tally
        };
        GROUPS.iter().map(tally).collect()
    }

    /// Summary of a page's own rows.
    pub fn of(&self, api: &Api, name: &str) -> String {
        let mut page = String::from(
            "\n## Checked against\n\n| provenance | rows | worst error | sources |\n|---|---:|---|---|\n",
        );
        let mut by: BTreeMap<String, (Tally, BTreeSet<String>)> = BTreeMap::new();
        for row in self.about(name) {
            let low = if is_low(row) { ", for comparison only" } else { "" };
            let refused = row["refused"] == Value::Bool(true);
            let key =
                if refused { "must be refused".into() } else { format!("{}{low}", word(row, "provenance")) };
            let (tally, sources) = by.entry(key).or_default();
            tally.add(api, row);
            sources.insert(one_line(word(row, "source")).replace('|', "\\|"));
        }
        if by.is_empty() {
            return format!("\n## Checked against\n\n{NONE}\n");
        }
        for (key, (tally, sources)) in by {
            let sources: Vec<String> = sources.into_iter().collect();
            let worst = tally.worst();
            page.push_str(&format!("| {key} | {} | {worst} | {} |\n", tally.rows, sources.join("; ")));
        }
        let range = self.range(api, name);
        if !range.is_empty() {
            page.push_str(&format!("\nRange that the answered rows cover: {}.\n", range.join(", ")));
        }
        page + "\nWhat the words mean: [How far to trust it](/trust.md).\n"
    }

    /// Table of all functions and models.
    pub fn page(&self, api: &Api) -> String {
        let answered = self.0.iter().filter(|row| row["refused"] != Value::Bool(true) && !is_low(row));
        let answered: Vec<&Value> = answered.collect();
        let of =
            |holds: &[&str]| answered.iter().filter(|row| holds.contains(&word(row, "provenance"))).count();
        let counts: Vec<String> =
            GROUPS.iter().map(|(head, holds)| format!("{} {head}", of(holds))).collect();
        let mut page = format!(
            "---\nhide-toc: true\n---\n\n# How far to trust it\n\nNobody wrote these numbers by hand: they come from the run of the reference rows (`tests/rows`) before \
             this build. There are {} rows: {} have an answer and decide ({}), {} must be refused, and {} are for comparison only. The last have low confidence; they \
             decide nothing and have their own column.\n\n\
             A cell gives the number of rows, then their **worst error**: relative, or in kelvin if the result is a temperature. \"At zero\" is the error in SI of rows that expect zero, within their \
             tolerance. \"Published\" are tables and worked examples of standards and handbooks; \"library\" is a general-purpose open library that gives the number itself; \"own route\" are our own derivations: another way to the number (quadrature, exact \
             fractions), our own equations written again in a script and solved by a library, and definitions. They find slips, not wrong physics. \"Memory, practice\" are digits from memory and facts of the trade. \
             No row was measured on a vehicle. A row whose tolerance is wider than a tenth of its number is for comparison only. \
             A rounded table cannot give an error near 1e-16: a row with such an error uses the same formula or constants, and only checks that they were typed correctly. \
             The page of each function has its sources; [Sources](/sources.md) explains the provenances.\n",
            self.0.len(),
            answered.len(),
            counts.join(", "),
            self.0.iter().filter(|row| row["refused"] == Value::Bool(true)).count(),
            self.0.iter().filter(|row| row["refused"] != Value::Bool(true) && is_low(row)).count(),
        );
        let heads: Vec<&str> = GROUPS.iter().map(|(head, _)| *head).collect();
        let table = format!(
            "| | {} | refused | compared only | range covered (SI) |\n|---|{}---:|---|---|\n",
            heads.join(" | "),
            "---|".repeat(GROUPS.len())
        );
        let subjects = subjects(api);
        for system in &api.systems {
            page.push_str(&format!("\n## {}\n\n:::{{container}} trust\n{table}", system.name));
            let prefix = format!("{}.", system.name);
            for name in subjects.iter().filter(|name| name.starts_with(&prefix)) {
                page.push_str(&self.line(api, name, &format!("`{name}`")));
            }
            page.push_str(":::\n");
        }
        page.push_str(&format!(
            "\n## Reading of units\n\n:::{{container}} trust\n{table}{}:::\n",
            self.line(api, "units", "units")
        ));
        page
    }

    fn line(&self, api: &Api, name: &str, shown: &str) -> String {
        let cells: Vec<String> = self.tallies(api, name).iter().map(Tally::cell).collect();
        let refused = self.about(name).filter(|row| row["refused"] == Value::Bool(true)).count();
        let mut low = Tally::default();
        let compared = self.about(name).filter(|row| is_low(row) && row["refused"] != Value::Bool(true));
        compared.for_each(|row| low.add(api, row));
        let range = match self.about(name).next() {
            Some(_) => self.range(api, name).join("<br>"),
            None => NONE.into(),
        };
        format!("| {shown} | {} | {refused} | {} | {range} |\n", cells.join(" | "), low.cell())
    }
}

/// Four significant digits, as short as they go.
fn digits(x: f64) -> String {
    let rounded: f64 = format!("{x:.3e}").parse().unwrap_or(x);
    if (1e-3..1e6).contains(&x.abs()) { format!("{rounded}") } else { format!("{rounded:e}") }
}

//! A price list: parts that can be bought, what each of them writes on the sheet, and what it costs and weighs.

use super::document::{Spot, Tree, read, refusal};
use crate::base::text;
use crate::units::Mass;
use crate::{Error, Result};

/// One part of a price list.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Its name or number.
    pub part: String,
    /// Its kind; one part of each kind is chosen.
    pub kind: String,
    /// What it costs, in the money of the list.
    pub cost: f64,
    /// What it weighs.
    pub mass: Mass,
    /// Lines of the sheet that it writes, and how.
    pub lines: Vec<(String, String)>,
}

/// Parts that can be bought.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PriceList {
    /// The parts, in the order of the list.
    pub parts: Vec<Candidate>,
}

impl PriceList {
    /// Reads a table with commas: a first row with `part`, `kind`, `cost`, `mass` and paths of the sheet, then a part a row. An empty
    /// cell writes nothing.
    pub fn from_csv(text: &str) -> Result<PriceList> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(text.as_bytes());
        let wrong = |error: csv::Error| {
            let line = error.position().map_or(0, |at| at.line() as usize);
            refusal(line, "", format!("this is no row of the table: {error}"))
        };
        let heads: Vec<String> = reader.headers().map_err(wrong)?.iter().map(str::to_owned).collect();
        for wanted in ["part", "kind", "cost"] {
            if !heads.iter().any(|head| head == wanted) {
                return Err(refusal(1, wanted, "the first row of a price list names this column".to_owned()));
            }
        }
        let mut parts = Vec::new();
        for record in reader.records() {
            let record = record.map_err(wrong)?;
            let line = record.position().map_or(0, |at| at.line() as usize);
            let cells =
                heads.iter().map(String::as_str).zip(record.iter()).filter(|(_, cell)| !cell.is_empty());
            parts.push(candidate(
                line,
                cells.map(|(head, cell)| (head.to_owned(), cell.to_owned())).collect(),
            )?);
        }
        Ok(PriceList { parts })
    }

    /// Reads JSON or TOML: a list `parts` of tables with `part`, `kind`, `cost`, `mass`, and lines of the sheet as paths or nested tables.
    pub fn from_text(text: &str) -> Result<PriceList> {
        let tree = read(text)?;
        let Tree::Table(entries) = tree.value else {
            return Err(refusal(1, "", "expected a table with a list `parts`".to_owned()));
        };
        let mut parts = Vec::new();
        for (key, spot) in entries {
            let (Tree::List(items), "parts") = (&spot.value, key.as_str()) else {
                return Err(refusal(spot.line, &key, "a price list has one list, `parts`".to_owned()));
            };
            for item in items {
                let mut cells = Vec::new();
                flatten("", item, &mut cells)?;
                parts.push(candidate(item.line, cells)?);
            }
        }
        Ok(PriceList { parts })
    }
}

/// The leaves of a table, by their paths.
fn flatten(path: &str, spot: &Spot, cells: &mut Vec<(String, String)>) -> Result<()> {
    let text = match &spot.value {
        Tree::Text(text) => text.clone(),
        Tree::Number(number) => number.to_string(),
        Tree::Table(entries) => {
            return entries.iter().try_for_each(|(key, inner)| {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                flatten(&path, inner, cells)
            });
        }
        Tree::List(items) => {
            return items
                .iter()
                .enumerate()
                .try_for_each(|(at, item)| flatten(&format!("{path}[{at}]"), item, cells));
        }
        Tree::Other(what) => {
            return Err(refusal(spot.line, path, format!("expected text or a number, not {what}")));
        }
    };
    cells.push((path.to_owned(), text));
    Ok(())
}

fn candidate(line: usize, cells: Vec<(String, String)>) -> Result<Candidate> {
    let (mut part, mut kind, mut cost, mut mass, mut lines) = (None, None, None, Mass::from_si(0.0), vec![]);
    let at = |key: &str, error: Error| refusal(line, key, error.to_string());
    for (key, cell) in cells {
        match key.as_str() {
            "part" => part = Some(cell),
            "kind" => kind = Some(cell),
            "cost" => {
                let number =
                    cell.replace(',', "").parse::<f64>().ok().filter(|cost| cost.is_finite() && *cost >= 0.0);
                let wrong =
                    || refusal(line, "cost", format!("`{cell}` is no cost: a number of money, not negative"));
                cost = Some(number.ok_or_else(wrong)?);
            }
            "mass" => {
                mass = text::parse(&cell).map_err(|error| at("mass", error))?;
                if !(0.0..=1e6).contains(&mass.si()) {
                    return Err(refusal(
                        line,
                        "mass",
                        format!("{cell} is outside its range; valid: 0 to 1000 t"),
                    ));
                }
            }
            _ => {
                let slot = super::writable(&key).map_err(|error| match error {
                    Error::Document { key, message, .. } => refusal(line, &key, message),
                    other => other,
                })?;
                super::written(slot, &super::spot_of(line, slot, &cell))?;
                lines.push((key, cell));
            }
        }
    }
    let missing = |key: &str| refusal(line, key, "every part of a price list has this".to_owned());
    Ok(Candidate {
        part: part.ok_or_else(|| missing("part"))?,
        kind: kind.ok_or_else(|| missing("kind"))?,
        cost: cost.ok_or_else(|| missing("cost"))?,
        mass,
        lines,
    })
}

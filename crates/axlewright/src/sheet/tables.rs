//! Lists of answers as tables and JSON, and the fitting of a choice.
#![expect(clippy::indexing_slicing, reason = "as many shares as verdicts")]

use super::assess::{Answer, Assessment};
use super::{Choice, Chosen, PriceList, Sheet};
use crate::Result;
use crate::base::table::{Column, Table, Values};
use crate::units::{Kind, Mass, Quantity, Ratio};
use serde_json::{Value, json};
use std::borrow::Cow;
use std::collections::HashMap;

/// A column of numbers; without a kind where each row has its own, or it is money.
fn numbers(name: &'static str, kind: Option<&'static Kind>, rows: impl IntoIterator<Item = f64>) -> Column {
    Column { name: Cow::Borrowed(name), kind, values: Values::F64(rows.into_iter().collect()) }
}

/// A column of words; equal words share a label.
fn words<'a>(name: &'static str, rows: impl IntoIterator<Item = &'a str>) -> Column {
    let mut labels = Vec::new();
    let mut places = HashMap::new();
    let codes = rows.into_iter().map(|word| {
        *places.entry(word).or_insert_with(|| {
            labels.push(word.to_owned());
            labels.len() as i32 - 1
        })
    });
    let codes = codes.collect();
    Column { name: Cow::Borrowed(name), kind: None, values: Values::Category { codes, labels } }
}

impl Assessment {
    /// [`Assessment::sensitivity`] as a table: the `finding`, the `line`, its `tolerance` in the `unit` of the row, the `margin_change` of the
    /// finding per one tolerance, and the `share` of the variance of that margin.
    pub fn sensitivity_table(&self, answer: &Answer) -> Table {
        let found = self.sensitivity(answer);
        let ratio = Some(Ratio::KIND);
        let columns = vec![
            words("finding", found.iter().map(|_| answer.path)),
            words("line", found.iter().map(|one| one.path)),
            numbers("tolerance", None, found.iter().map(|one| one.tolerance)),
            words("unit", found.iter().map(|one| one.kind.si)),
            numbers("margin_change", Some(answer.margin_kind), found.iter().map(|one| one.margin_change)),
            numbers("share", ratio, found.iter().map(|one| one.share)),
        ];
        Table::of(columns, found.len(), vec![])
    }

    /// [`Assessment::chances`] as a table, a finding a row: `finding`, `verdict`, the share of samples that `turns`, the share of each
    /// verdict, `mean` and `deviation` of the margin in the `unit` of the row.
    pub fn chances_table(&self, samples: usize, seed: u64) -> Result<Table> {
        let found = self.chances(samples, seed)?;
        let ratio = Some(Ratio::KIND);
        let share = |name, place: usize| numbers(name, ratio, found.iter().map(move |one| one.shares[place]));
        let columns = vec![
            words("finding", found.iter().map(|one| one.path)),
            words("verdict", found.iter().map(|one| one.verdict.word())),
            numbers("turns", ratio, found.iter().map(|one| one.turns)),
            share("meets", 0),
            share("tight", 1),
            share("short", 2),
            share("not_known", 3),
            share("does_not_apply", 4),
            numbers("mean", None, found.iter().map(|one| one.mean)),
            numbers("deviation", None, found.iter().map(|one| one.deviation)),
            words("unit", self.answers().iter().map(|answer| answer.margin_kind.si)),
        ];
        Ok(Table::of(columns, found.len(), vec![]))
    }
}

impl Chosen {
    /// Choices as a table: `cost` in the money of the list, `mass`, and a column of parts for each kind, by its name; a kind that is
    /// itself called `cost` or `mass` has `part.` before it. The price list is the one that was chosen from.
    pub fn table(&self, choices: &[Choice], list: &PriceList) -> Table {
        let mut columns = vec![
            numbers("cost", None, choices.iter().map(|choice| choice.cost)),
            numbers("mass", Some(Mass::KIND), choices.iter().map(|choice| choice.mass.si())),
        ];
        for (place, kind) in self.kinds.iter().enumerate() {
            let taken = ["cost", "mass"].contains(&kind.as_str());
            let name = if taken { format!("part.{kind}") } else { kind.clone() };
            let part = |choice: &'_ Choice| choice.parts.get(place).and_then(|part| list.parts.get(*part));
            let parts = choices.iter().map(|choice| part(choice).map_or("", |part| part.part.as_str()));
            columns.push(Column { name: Cow::Owned(name), ..words("", parts) });
        }
        Table::of(columns, choices.len(), vec![])
    }

    /// The parts that stand in no combination as a table: `part`, `kind`, `why`.
    pub fn rejected_table(&self, list: &PriceList) -> Table {
        let part = |place: &usize| list.parts.get(*place);
        let names = self.rejected.iter().map(|(at, _)| part(at).map_or("", |part| part.part.as_str()));
        let kinds = self.rejected.iter().map(|(at, _)| part(at).map_or("", |part| part.kind.as_str()));
        let columns = vec![
            words("part", names),
            words("kind", kinds),
            words("why", self.rejected.iter().map(|(_, why)| why.as_str())),
        ];
        Table::of(columns, self.rejected.len(), vec![])
    }

    /// Fits the parts of a choice on a sheet, all of them or, where one is refused, none: writes their lines and drops what was measured on
    /// the parts that they replace.
    pub fn fit(&self, choice: &Choice, list: &PriceList, sheet: &mut Sheet) -> Result<()> {
        let parts = choice.parts.iter().filter_map(|place| list.parts.get(*place));
        let lines = parts.flat_map(|part| &part.lines).map(|(path, text)| (path.as_str(), text.as_str()));
        sheet.fit(&lines.collect::<Vec<_>>()).map(drop)
    }

    /// All of it as JSON; masses in kilograms. The price list is the one that was chosen from.
    pub fn to_json(&self, list: &PriceList) -> String {
        let choice = |choice: &Choice| {
            let parts = self.kinds.iter().zip(&choice.parts).map(|(kind, place)| {
                (
                    kind.clone(),
                    list.parts.get(*place).map_or(Value::Null, |part| Value::from(part.part.as_str())),
                )
            });
            let parts = parts.collect::<serde_json::Map<String, Value>>();
            let worse = choice
                .worse
                .iter()
                .map(|one| json!({"finding": one.finding, "now": one.now.word(), "then": one.then.word()}));
            let worse = worse.collect::<Vec<Value>>();
            json!({"parts": parts, "cost": choice.cost, "mass": choice.mass.si(), "worse": worse})
        };
        let all = |choices: &[Choice]| choices.iter().map(choice).collect::<Vec<Value>>();
        let rejected = self.rejected.iter().filter_map(|(place, why)| {
            let part = list.parts.get(*place)?;
            Some(json!({"part": part.part, "kind": part.kind, "why": why}))
        });
        json!({
            "kinds": self.kinds, "cheapest": self.cheapest.as_ref().map(choice),
            "lightest": self.lightest.as_ref().map(choice), "front": all(&self.front),
            "feasible": all(&self.feasible), "more": self.more, "rejected": rejected.collect::<Vec<Value>>(),
            "not_known": self.not_known, "dropped": self.dropped, "evaluated": self.evaluated,
        })
        .to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::choose;

    fn chosen(text: &str) -> (Chosen, PriceList) {
        let list = PriceList::from_text(text).unwrap();
        let chosen = choose(&Sheet::default(), &list, &[], 10, &mut |_| true).unwrap();
        (chosen, list)
    }

    #[test]
    fn a_kind_named_as_a_column_keeps_its_own() {
        let parts = r#"{"parts": [{"part": "a", "kind": "mass", "cost": 1, "mass": "0 kg"}, {"part": "b", "kind": "ballast", "cost": 2, "mass": "3 kg"}]}"#;
        let (chosen, list) = chosen(parts);
        let table = chosen.table(&chosen.front, &list);
        let names: Vec<&str> = table.columns().iter().map(|column| &*column.name).collect();
        assert_eq!(names, ["cost", "mass", "part.mass", "ballast"]);
        assert_eq!(table.numbers("mass"), Some(&[3.0][..]));
        assert_eq!(table.word("part.mass", 0), Some("a"));
    }

    #[test]
    fn a_list_is_fitted_in_order_whatever_order_it_was_written_in() {
        let parts = r#"{"parts": [{"part": "a", "kind": "gearbox", "cost": 1, "gearbox.ratios[1]": "2.5", "gearbox.ratios[0]": "4.7"}]}"#;
        let (chosen, list) = chosen(parts);
        let mut sheet = Sheet::default();
        chosen.fit(&chosen.front[0], &list, &mut sheet).unwrap();
        assert_eq!(sheet.paths().collect::<Vec<_>>(), ["gearbox.ratios[0]", "gearbox.ratios[1]"]);
    }

    #[test]
    fn what_cannot_be_fitted_leaves_the_sheet_as_it_was() {
        let parts = r#"{"parts": [{"part": "a", "kind": "gearbox", "cost": 1, "final_drive.ratio": "4.1", "gearbox.ratios[1]": "2.5"}]}"#;
        let list = PriceList::from_text(parts).unwrap();
        // A part that cannot be written on the sheet is not chosen for it, either: the first gear of another gearbox goes with it.
        let mut other = Sheet::default();
        assert!(choose(&other, &list, &[], 10, &mut |_| true).is_err());
        other.set("gearbox.ratios[0]", "4").unwrap();
        assert!(choose(&other, &list, &[], 10, &mut |_| true).is_err());
        let parts = r#"{"parts": [{"part": "a", "kind": "both", "cost": 1, "final_drive.ratio": "4.1", "cap.rating": "15 psi gauge"}]}"#;
        let list = PriceList::from_text(parts).unwrap();
        let chosen = choose(&other, &list, &[], 10, &mut |_| true).unwrap();
        let mut sheet = Sheet::default();
        sheet.set("cap", "none").unwrap();
        let before = sheet.clone();
        assert!(chosen.fit(&chosen.front[0], &list, &mut sheet).is_err());
        assert_eq!(sheet, before);
    }

    #[test]
    fn equal_words_share_a_label() {
        let column = words("x", ["a", "b", "a"]);
        let labels = vec!["a".to_owned(), "b".to_owned()];
        assert_eq!(column.values, Values::Category { codes: vec![0, 1, 0], labels });
    }

    #[test]
    fn the_tolerance_of_a_gauge_pressure_is_a_difference_of_pressures() -> Result<()> {
        let mut sheet = Sheet::new("");
        sheet.set("cap.rating", "15 psi gauge")?;
        sheet.set("cap.rating_tolerance", "1 psi")?;
        sheet.set("cap.gauge_error", "0.5 psi")?;
        sheet.set("cap.opening_pressure", "15.2 psi gauge +/- 0.5 psi")?;
        let assessment = sheet.assess();
        let table = assessment.answer("cap.opens").map(|answer| assessment.sensitivity_table(answer));
        let row = table.as_ref().map(|table| (table.word("line", 0), table.word("unit", 0)));
        assert_eq!(row, Some((Some("cap.opening_pressure"), Some("Pa"))));
        Ok(())
    }
}

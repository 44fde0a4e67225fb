//! Drawings of linkages with slips: points copied, mirrored, coincident, moved. A linkage is a model with a table of its points.

use super::models::{Seen, argument, documents_of, fair, seen};
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::rows::rows;
use crate::{Found, MODELS, Modelled, Tabled};
use axlewright::Table;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Beginnings of the names of parts that change their length.
const SPRUNG: [&str; 5] = ["coil", "leg", "damper", "spring", "torsion"];
/// A little more travel, in metres.
const STEP: f64 = 1e-6;
/// Largest way of a wheel's centre over that travel, in metres: as an arm passes its last position, the way goes with the square root.
const WAY: f64 = 5e-3;
/// Largest change of a rigid length, as a share of it.
const RIGID: f64 = 1e-9;

pub fn attack(of: &Attack, drawings: u64) -> Tally {
    let rows = rows();
    let seen = seen(&rows);
    let points =
        |model: &'static Modelled| Some((model, model.tables.iter().find(|of| of.name == "points")?));
    let linkages: Vec<(&Modelled, &Tabled, Vec<Value>)> = MODELS
        .iter()
        .filter_map(points)
        .map(|(model, points)| (model, points, documents_of(model.name, &rows)))
        .collect();
    of.run("drawings", drawings * linkages.len() as u64, |number, random| {
        let (model, points, documents) = &linkages[number as usize % linkages.len()];
        let mut document = random.of_these(documents).clone();
        (0..*random.of_these(&[0, 1, 1, 2, 3])).for_each(|_| slip(&mut document, random));
        let text = document.to_string();
        drawn(model, points, &text, &seen, random)
            .map_err(|why| format!("{}: {why}; document {text}", model.name))
    })
}

/// Paths of the points of a drawing.
fn points(of: &Value, path: &str, found: &mut Vec<String>) {
    match of {
        Value::Object(table) if ["x", "y", "z"].iter().all(|axis| table.contains_key(*axis)) => {
            found.push(path.to_owned());
        }
        Value::Object(table) => {
            table.iter().for_each(|(key, value)| points(value, &format!("{path}/{key}"), found))
        }
        Value::Array(list) => {
            list.iter().enumerate().for_each(|(at, value)| points(value, &format!("{path}/{at}"), found));
        }
        _ => {}
    }
}

/// Draws one point wrongly.
fn slip(document: &mut Value, random: &mut Random) {
    let mut found = Vec::new();
    points(document, "", &mut found);
    if found.is_empty() {
        return;
    }
    let other = document.pointer(random.of_these::<String>(&found)).cloned().unwrap_or_default();
    let Some(point) = document.pointer_mut(random.of_these::<String>(&found)) else { return };
    let axis = *random.of_these(&["x", "y", "z"]);
    let number =
        |of: &Value| of.as_str().and_then(|text| text.split(' ').next()?.parse::<f64>().ok()).unwrap_or(0.0);
    let here = number(&point[axis]);
    match random.below(8) {
        0 => *point = other,
        1 => point[axis] = other[axis].clone(),
        2 => point[axis] = json!(format!("{} mm", -here)),
        3 => {
            let next = *random.of_these(&["x", "y", "z"]);
            let kept = point[axis].clone();
            point[axis] = point[next].clone();
            point[next] = kept;
        }
        4 => point[axis] = json!(format!("{} mm", here * *random.of_these(&[10.0, 0.1, 25.4, 0.0]))),
        5 => point[axis] = json!(format!("{} mm", number(&other[axis]) + 1e-9 * random.of_magnitude(3.0))),
        _ => point[axis] = json!(format!("{} mm", here + random.of_magnitude(2.5))),
    }
}

/// The points of each part in one state, in the order in which a line joins them.
type Parts = BTreeMap<String, Vec<[f64; 3]>>;

/// The states of a table of points: those with the same inputs.
fn states(table: &Table) -> Result<Vec<([f64; 2], Parts)>, String> {
    let mut states: Vec<([f64; 2], Parts)> = Vec::new();
    let column = |at: usize| match &table.columns()[at].values {
        axlewright::base::table::Values::F64(values) => Ok(values),
        _ => Err("the first columns are no numbers".to_owned()),
    };
    let inputs = [column(0)?, column(1)?];
    for row in (0..table.rows()).filter(|row| table.reason(*row).is_none()) {
        let at = ["x", "y", "z"].map(|axis| table.numbers(axis).map_or(f64::NAN, |column| column[row]));
        let part = table.word("part", row).ok_or("a point without a part")?;
        if at.iter().any(|x| !x.is_finite()) {
            return Err(format!("{part} stands at {at:?}"));
        }
        let input = inputs.map(|column| column[row]);
        if states.last().is_none_or(|(last, _)| *last != input) {
            states.push((input, Parts::new()));
        }
        states.last_mut().unwrap().1.entry(part.to_owned()).or_default().push(at);
    }
    Ok(states)
}

fn apart(a: [f64; 3], b: [f64; 3]) -> f64 {
    (0..3).map(|axis| (a[axis] - b[axis]).powi(2)).sum::<f64>().sqrt()
}

/// True if links hold each other: bushes then give, and lengths change.
fn is_redundant(model: &Modelled, text: &str) -> bool {
    let at = model.methods.iter().find(|method| method.name == "at");
    let found = at.and_then(|at| (at.call)(text, &vec![0.0; at.parameters.len()]).ok()).unwrap_or_default();
    found
        .iter()
        .any(|(name, found)| *name == "redundant" && matches!(found, Found::Number(count) if *count > 0.0))
}

fn drawn(model: &Modelled, of: &Tabled, text: &str, seen: &Seen, random: &mut Random) -> Case {
    let [(first, _), (second, _)] = of.parameters else { return Err("not two lists".to_owned()) };
    // Other than zero, so that all states differ.
    let mut value =
        |name: &str| Some(argument(name, seen, random)).filter(|x| x.abs() > 1e-4 && x.abs() < 1.0);
    let (travel, other) = (value(first).unwrap_or(0.05), value(second).unwrap_or(0.02));
    let mut calls = Calls::default();
    let asked = [vec![0.0, travel, travel + STEP], vec![0.0, other]];
    let Some(table) = calls.count((of.call)(text, &asked))? else { return Ok(calls) };
    fair(&table, &[], false)?;
    let states = states(&table)?;
    let Some((_, reference)) = states.first() else { return Ok(calls) };
    let redundant = is_redundant(model, text);
    for (inputs, parts) in states.iter().filter(|_| !redundant) {
        for (name, points) in parts.iter().filter(|(name, _)| !SPRUNG.iter().any(|of| name.starts_with(of))) {
            let Some(drawn) = reference.get(name).filter(|drawn| drawn.len() == points.len()) else {
                return Err(format!("{name} has other points at {inputs:?}"));
            };
            for (now, rest) in points.windows(2).zip(drawn.windows(2)) {
                let (now, rest) = (apart(now[0], now[1]), apart(rest[0], rest[1]));
                if (now - rest).abs() > RIGID * rest.max(1e-3) {
                    return Err(format!("{name} is {now} m long at {inputs:?}, else {rest} m"));
                }
            }
        }
    }
    for (inputs, parts) in &states {
        let near = states.iter().find(|(other, _)| other[0] == inputs[0] + STEP && other[1] == inputs[1]);
        let Some((_, beside)) = near else { continue };
        for (name, points) in parts.iter().filter(|(name, _)| name.starts_with("wheel")) {
            let way = beside.get(name).map_or(f64::INFINITY, |other| apart(points[0], other[0]));
            if way > WAY {
                return Err(format!("{name} moves {way} m from {inputs:?} over {STEP} m"));
            }
        }
    }
    Ok(calls)
}

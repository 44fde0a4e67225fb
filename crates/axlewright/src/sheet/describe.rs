//! Lines and questions as JSON, for programs with forms.

use super::{QUESTIONS, lines};
use crate::Result;
use crate::base::section::{Class, Content};
use crate::base::text::{did_you_mean, refusal};
use crate::catalogue::describe::{quantity, told};
use serde_json::{Value, json};

/// The description of a line as JSON: meaning, content, range in coherent SI, and what is assumed for it. Its path is one of [`lines`].
///
/// ```
/// let rate = axlewright::sheet::describe("front.spring.rate")?;
/// assert!(rate.contains(r#""kind":"LinearStiffness""#));
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn describe(path: &str) -> Result<String> {
    let found = lines().find(|(_, known, _)| known == path);
    let (system, path, line) = found.ok_or_else(|| {
        let all: Vec<String> = lines().map(|(_, path, _)| path).collect();
        let near = did_you_mean(path, all.iter().map(String::as_str));
        refusal(path, format!("the sheet has no such line{near}"))
    })?;
    let (kind, of, words) = match &line.content {
        Content::Quantity(kind) => ("quantity", Some(quantity(kind)), None),
        Content::Choice(words) => ("choice", None, Some(*words)),
        Content::Marking(_) => ("marking", None, None),
    };
    let finite = |end: f64| (end.abs() < f64::MAX).then_some(end);
    let range = told(json!({
        "lower": finite(line.range.lower), "lower_open": line.range.lower_open, "upper": finite(line.range.upper),
        "source": line.range.source,
    }));
    let class = line.class.map(|class| match class {
        Class::Rating => "rating",
        Class::Measurement(_) => "measurement",
        Class::Wish => "wish",
        Class::Choice => "choice",
    });
    let assumed = line.assumed.map(|(si, ground)| json!({ "si": si, "ground": ground }));
    let range = if of.is_some() { range } else { Value::Null };
    Ok(told(json!({
        "path": path, "system": system, "meaning": line.meaning, "type": kind, "quantity": of, "words": words, "range": range,
        "written": line.written, "class": class, "assumed": assumed, "places": line.places,
    }))
    .to_string())
}

/// The questions of a new sheet as JSON, with the answers that [`starter`](super::starter) takes.
///
/// ```
/// assert!(axlewright::sheet::questions().starts_with(r#"[{"asks":"Front suspension?""#));
/// ```
pub fn questions() -> String {
    let all = QUESTIONS.iter().map(|question| {
        let choices = question.choices.iter().map(|(word, says)| json!({ "word": word, "says": says }));
        json!({ "key": question.key, "asks": question.asks, "choices": choices.collect::<Vec<_>>() })
    });
    Value::Array(all.collect()).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_is_told_as_json() {
        for (system, path, line) in lines() {
            let told: Value = serde_json::from_str(&describe(&path).unwrap()).unwrap();
            assert_eq!((&told["path"], &told["system"]), (&path.as_str().into(), &system.into()));
            assert_eq!(told["meaning"], line.meaning);
        }
    }

    #[test]
    fn an_unknown_line_is_refused_with_the_nearest() {
        let refused = describe("front.spring.rat").unwrap_err().to_string();
        assert!(refused.contains("front.spring.rate"), "{refused}");
    }
}

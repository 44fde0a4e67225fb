//! Outputs of a what-if: a line, or the value, margin or verdict of a finding.

use super::super::graph::{FindingInfo, Graph, MarginSlots, Slot};
use super::super::margin::{margin_kind, value_kind};
use crate::base::text;
use crate::units::Kind;
use crate::{Error, Result};
use std::borrow::Cow;

/// One output of a what-if.
pub(super) enum Output {
    Line { name: &'static str, slot: Slot },
    Value { name: String, finding: &'static FindingInfo },
    Margin { name: String, finding: &'static FindingInfo },
    Verdict { name: String, finding: &'static FindingInfo },
}

impl Output {
    pub(super) fn margin(finding: &'static FindingInfo) -> Output {
        Output::Margin { name: format!("{}.margin", finding.path), finding }
    }

    pub(super) fn verdict(finding: &'static FindingInfo) -> Output {
        Output::Verdict { name: format!("{}.verdict", finding.path), finding }
    }

    pub(super) fn read(path: &str) -> Result<Output> {
        let graph = Graph::get();
        if let Some(slot) = graph.slot(path) {
            let info = graph.info(slot);
            if info.kind().is_none() {
                return Err(Error::document(
                    path,
                    "this line is no quantity: it cannot be an output".to_owned(),
                ));
            }
            return Ok(Output::Line { name: info.path, slot });
        }
        if let Some((name, what)) = path.rsplit_once('.')
            && let Some(finding) = graph.finding(name).map(|at| &graph.findings[at])
        {
            match what {
                "value" => return Ok(Output::Value { name: path.to_owned(), finding }),
                "margin" => return Ok(Output::margin(finding)),
                "verdict" => return Ok(Output::verdict(finding)),
                _ => {}
            }
        }
        // The name of a finding alone: its verdict.
        if let Some(finding) = graph.finding(path).map(|at| &graph.findings[at]) {
            return Ok(Output::verdict(finding));
        }
        let findings: Vec<String> = graph
            .findings
            .iter()
            .flat_map(|finding| ["value", "margin", "verdict"].map(|what| format!("{}.{what}", finding.path)))
            .collect();
        let known = graph.slots.iter().map(|slot| slot.path).chain(findings.iter().map(String::as_str));
        let near = text::did_you_mean(path, known);
        let message = format!("neither a line nor a finding with `.value`, `.margin` or `.verdict`{near}");
        Err(Error::document(text::shortened(path), message))
    }

    pub(super) fn slots(&self) -> Vec<Slot> {
        match self {
            Output::Line { slot, .. } => vec![*slot],
            Output::Value { finding, .. } => vec![held(finding)],
            Output::Margin { finding, .. } => finding.slots().collect(),
            Output::Verdict { finding, .. } => finding.slots().chain([finding.wanted]).collect(),
        }
    }

    /// The finding of which it is a part.
    pub(super) fn finding(&self) -> Option<&'static FindingInfo> {
        match self {
            Output::Line { .. } => None,
            Output::Value { finding, .. }
            | Output::Margin { finding, .. }
            | Output::Verdict { finding, .. } => Some(finding),
        }
    }

    /// The choices that decide whether that is asked.
    pub(super) fn choices(&self) -> impl Iterator<Item = Slot> {
        self.finding().into_iter().flat_map(FindingInfo::choices)
    }

    pub(super) fn is_number(&self) -> bool {
        !matches!(self, Output::Verdict { .. })
    }

    pub(super) fn name(&self) -> Cow<'static, str> {
        match self {
            Output::Line { name, .. } => Cow::Borrowed(name),
            Output::Value { name, .. } | Output::Margin { name, .. } | Output::Verdict { name, .. } => {
                Cow::Owned(name.clone())
            }
        }
    }

    pub(super) fn kind(&self) -> Option<&'static Kind> {
        match self {
            Output::Line { slot, .. } => Some(value_kind(*slot)),
            Output::Value { finding, .. } => Some(value_kind(held(finding))),
            Output::Margin { finding, .. } => Some(margin_kind(finding)),
            Output::Verdict { .. } => None,
        }
    }
}

/// The line that a finding holds against its limit.
pub(in crate::sheet) fn held(finding: &FindingInfo) -> Slot {
    match finding.margin {
        MarginSlots::Ratio { demand, .. } => demand,
        MarginSlots::Remaining { value }
        | MarginSlots::AtLeast { value, .. }
        | MarginSlots::AtMost { value, .. }
        | MarginSlots::Band { value, .. } => value,
    }
}

/// The lines on which an output rests directly, and its finding if it is of one.
pub(in crate::sheet) fn slots_of(output: &str) -> Result<(Vec<Slot>, Option<&'static FindingInfo>)> {
    let read = Output::read(output)?;
    Ok((read.slots(), read.finding()))
}

/// The kind of an output that is a number.
pub(in crate::sheet) fn kind_of(output: &str) -> Result<&'static Kind> {
    let read = Output::read(output)?;
    read.kind().ok_or_else(|| {
        let finding = output.strip_suffix(".verdict").unwrap_or(output);
        Error::document(
            output,
            format!("a verdict is a word: write `{finding}.verdict = meets` or `= tight`"),
        )
    })
}

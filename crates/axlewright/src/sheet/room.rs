//! Room that one call needs: the longest step of all systems, found when the library is compiled.

use super::generated::SECTIONS;
use crate::base::section::{Call, Section};
use crate::base::work::Entry;
use crate::catalogue::ENTRIES;

/// Most inputs of one step.
pub(super) const MOST_INPUTS: usize = most_inputs(SECTIONS);

/// Most results of one call.
pub(super) const MOST_RESULTS: usize = most_results(SECTIONS, ENTRIES);

/// Inputs of the longest step. An input that stands for a list counts as the longest list of all.
const fn most_inputs(sections: &[(&str, &Section)]) -> usize {
    let longest_list = longest_list(sections);
    let (mut most, mut section) = (0, 0);
    while section < sections.len() {
        let lines = sections[section].1.lines;
        let mut line = 0;
        while line < lines.len() {
            let steps = lines[line].steps;
            let mut step = 0;
            while step < steps.len() {
                let inputs = steps[step].inputs;
                let (mut count, mut input) = (0, 0);
                while input < inputs.len() {
                    count += if stands_for_a_list(inputs[input]) { longest_list } else { 1 };
                    input += 1;
                }
                if count > most {
                    most = count;
                }
                step += 1;
            }
            line += 1;
        }
        section += 1;
    }
    most
}

/// Results of the function with the most of them, or of the glue whose last result a line takes.
const fn most_results(sections: &[(&str, &Section)], entries: &[Entry]) -> usize {
    let (mut most, mut entry) = (1, 0);
    while entry < entries.len() {
        if entries[entry].outputs.len() > most {
            most = entries[entry].outputs.len();
        }
        entry += 1;
    }
    let mut section = 0;
    while section < sections.len() {
        let lines = sections[section].1.lines;
        let mut line = 0;
        while line < lines.len() {
            let steps = lines[line].steps;
            let mut step = 0;
            while step < steps.len() {
                if let Call::Several(place, _) = steps[step].call
                    && place + 1 > most
                {
                    most = place + 1;
                }
                step += 1;
            }
            line += 1;
        }
        section += 1;
    }
    most
}

const fn longest_list(sections: &[(&str, &Section)]) -> usize {
    let (mut longest, mut section) = (1, 0);
    while section < sections.len() {
        let lines = sections[section].1.lines;
        let mut line = 0;
        while line < lines.len() {
            if lines[line].places > longest {
                longest = lines[line].places;
            }
            line += 1;
        }
        section += 1;
    }
    longest
}

/// Whether `[*]` stands in a path.
const fn stands_for_a_list(path: &str) -> bool {
    let path = path.as_bytes();
    let mut at = 0;
    while at < path.len() {
        if path[at] == b'*' {
            return true;
        }
        at += 1;
    }
    false
}

#[cfg(test)]
mod tests {
    use super::super::graph::{Calls, Graph};
    use super::*;
    use crate::base::section::{Line, Several, derived, line, one_of, own, sum};
    use crate::units::{Quantity, Ratio};

    const SEVERAL: Several = Several { formula: "", source: "", call: |_, _| Ok(()) };
    const LINES: &[Line] = &[
        line("list[]", Ratio::KIND, "a list").list(50),
        derived("sum", Ratio::KIND, "a sum").by(&[own("", "", sum, &["?list[*]", "?list[*]", "sum"])]),
        derived("last", Ratio::KIND, "the last of many").by(&[one_of(11, SEVERAL, &["sum"])]),
    ];
    static LONGER: &[(&str, &Section)] = &[("longer", &Section { lines: LINES, findings: &[] })];

    /// Twice a list of 50 and one more; the result of the place 11 is the twelfth.
    #[test]
    fn a_longer_step_gets_room_when_it_is_compiled() {
        const INPUTS: usize = most_inputs(LONGER);
        const RESULTS: usize = most_results(LONGER, &[]);
        assert_eq!((INPUTS, RESULTS), (101, 12));
    }

    #[test]
    fn every_step_has_room() {
        let steps = || Graph::get().slots.iter().flat_map(|slot| &slot.steps);
        assert!(steps().all(|step| step.inputs.len() <= MOST_INPUTS));
        assert!(steps().all(|step| match step.call {
            Calls::Function(entry, _) => entry.outputs.len() <= MOST_RESULTS,
            Calls::Several(place, _) => place < MOST_RESULTS,
            _ => true,
        }));
        // No more room than the longest one takes.
        assert_eq!(steps().map(|step| step.inputs.len()).max(), Some(MOST_INPUTS));
    }
}

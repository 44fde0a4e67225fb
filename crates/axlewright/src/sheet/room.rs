//! Room for the results of one call: the most of all systems, found when the library is compiled.
#![expect(clippy::indexing_slicing, reason = "constant lists, walked while compiling")]

use super::generated::SECTIONS;
use crate::base::section::{Call, Section};
use crate::base::work::Entry;
use crate::catalogue::ENTRIES;

/// Most results of one call.
pub(super) const MOST_RESULTS: usize = most_results(SECTIONS, ENTRIES);

/// Results of the function or rule with the most of them.
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
        let (lines, also) = (sections[section].1.lines, sections[section].1.also);
        let mut at = 0;
        while at < lines.len() + also.len() {
            let steps = if at < lines.len() { lines[at].steps } else { also[at - lines.len()].steps };
            let mut step = 0;
            while step < steps.len() {
                if let Call::Rule(rule, _) = &steps[step].call
                    && rule.results.len() > most
                {
                    most = rule.results.len();
                }
                step += 1;
            }
            at += 1;
        }
        section += 1;
    }
    most
}

#[cfg(test)]
mod tests {
    use super::super::graph::{Calls, Graph};
    use super::*;
    use crate::base::section::{Also, Line, Rule, also, by, derived};
    use crate::units::{Quantity, Ratio};

    const MANY: Rule = Rule {
        formula: "",
        source: "",
        inputs: &[],
        results: &["a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l"],
        shape: |_| (),
        call: |_, _| Ok(()),
        lacking: "",
    };
    const LINES: &[Line] = &[derived("last", Ratio::KIND, "the last of many").by(&[by(&MANY)])];
    const ALSO: &[Also] = &[also("last").by(&[by(&MANY)])];
    static LONGER: &[(&str, &Section)] = &[("longer", &Section { lines: LINES, ..Section::EMPTY })];
    static ADDING: &[(&str, &Section)] = &[("adding", &Section { also: ALSO, ..Section::EMPTY })];

    #[test]
    fn a_rule_with_more_results_gets_room_when_it_is_compiled() {
        const RESULTS: usize = most_results(LONGER, &[]);
        assert_eq!(RESULTS, 12);
        const ADDED: usize = most_results(ADDING, &[]);
        assert_eq!(ADDED, 12);
    }

    #[test]
    fn every_step_has_room() {
        let steps = || Graph::get().slots.iter().flat_map(|slot| &slot.steps);
        assert!(steps().all(|step| match step.call {
            Calls::Function(entry, _) => entry.outputs.len() <= MOST_RESULTS,
            Calls::Rule(rule, _) => rule.results.len() <= MOST_RESULTS,
            _ => true,
        }));
    }
}

//! The sections of the systems fit together.

use super::*;
use crate::base::section::Class;
use crate::base::section::How;
use crate::base::section::rule::Fits;
use crate::base::section::rule::Shape;

#[test]
fn the_systems_agree_on_their_lines() {
    assert_eq!(Graph::get().faults, Vec::<String>::new());
}

#[test]
fn every_step_takes_and_gives_the_kinds_of_its_function() {
    let graph = Graph::get();
    for slot in &graph.slots {
        for step in &slot.steps {
            let Calls::Function(entry, place) = step.call else { continue };
            let names = (slot.path, entry.path);
            assert_eq!(entry.outputs[place].kind.name, slot.kind().map_or("", |kind| kind.name), "{names:?}");
            assert_eq!(entry.inputs.len(), step.inputs.len(), "{names:?}");
            for (input, taken) in step.inputs.iter().zip(entry.inputs) {
                let given = graph.info(*input);
                let kind = given.kind().map_or("", |kind| kind.name);
                assert_eq!(kind, taken.kind.name, "{names:?}: {}", given.path);
            }
        }
    }
}

#[test]
fn every_rule_takes_and_gives_what_its_lines_hold() {
    let graph = Graph::get();
    let fits = |slot: Slot| match graph.info(slot).line.content {
        Content::Quantity(kind) => Fits::Quantity(kind),
        Content::Choice(words) => Fits::Choice(words),
        Content::Marking(_) => Fits::Marking,
    };
    for slot in &graph.slots {
        for step in &slot.steps {
            let Calls::Rule(rule, place) = step.call else { continue };
            let mut shape = Shape::default();
            (rule.shape)(&mut shape);
            assert_eq!((shape.inputs.len(), shape.results.len()), (rule.inputs.len(), rule.results.len()));
            assert_eq!(shape.results[place], fits(graph.slot(slot.path).unwrap()), "{}", slot.path);
            let mut given = step.inputs.iter();
            for ((taken, leaves), count) in rule.inputs.iter().zip(&shape.inputs).zip(&step.counts) {
                for leaf in leaves.iter().cycle().take(usize::from(*count)) {
                    let line = *given.next().unwrap();
                    let names = (slot.path, taken.name, graph.info(line).path);
                    assert_eq!(leaf.fits, fits(line), "{names:?}");
                }
            }
            assert_eq!(given.next(), None, "{}", slot.path);
        }
    }
}

/// A sum or a least is of one kind; a pressure or a temperature may have a difference added.
#[test]
fn every_combination_is_of_kinds_that_go_together() {
    let graph = Graph::get();
    let kind = |slot: Slot| graph.info(slot).kind().map_or("", |kind| kind.name);
    for slot in &graph.slots {
        for step in &slot.steps {
            let Calls::Combine(combine) = step.call else { continue };
            let of: Vec<&str> = step.inputs.iter().map(|input| kind(*input)).collect();
            let result = slot.kind().map_or("", |kind| kind.name);
            let offset = match result {
                "Temperature" => "TemperatureDifference",
                "GaugePressure" | "AbsolutePressure" => "Stress",
                other => other,
            };
            let fits = match combine.how {
                How::Same | How::Least | How::Greatest | How::Mean | How::Negative => {
                    of.iter().all(|of| *of == result)
                }
                How::Sum | How::Difference => of[0] == result && of[1..].iter().all(|of| *of == offset),
                How::Product => {
                    of.iter().filter(|of| **of == result).count() >= 1
                        && of.iter().all(|of| *of == result || *of == "Ratio")
                }
                How::Quotient => of[1] == "Ratio" && of[0] == result || of[0] == of[1] && result == "Ratio",
            };
            assert!(fits, "{}: {:?} of {of:?} is no {result}", slot.path, combine.how);
        }
    }
}

#[test]
fn a_pick_has_a_line_of_its_kind_for_every_word() {
    let graph = Graph::get();
    for slot in &graph.slots {
        for step in slot.steps.iter().filter(|step| matches!(step.call, Calls::Pick)) {
            let Content::Choice(words) = graph.info(step.inputs[0]).line.content else {
                panic!("{} picks by no choice", slot.path)
            };
            assert_eq!(step.inputs.len(), words.len() + 1, "{}", slot.path);
            for line in &step.inputs[1..] {
                assert_eq!(graph.info(*line).kind(), slot.kind(), "{}", slot.path);
            }
        }
    }
}

#[test]
fn no_line_follows_from_itself() {
    fn visit(graph: &Graph, slot: Slot, path: &mut Vec<Slot>, done: &mut BTreeSet<Slot>) {
        assert!(!path.contains(&slot), "{} follows from itself", graph.info(slot).path);
        if done.contains(&slot) {
            return;
        }
        path.push(slot);
        let ways = graph.info(slot).steps.iter().filter(|step| step.fills());
        for input in ways.flat_map(|step| &step.inputs) {
            visit(graph, *input, path, done);
        }
        path.pop();
        done.insert(slot);
    }
    let (graph, mut done) = (Graph::get(), BTreeSet::new());
    for slot in 0..graph.slots.len() {
        visit(graph, slot as Slot, &mut vec![], &mut done);
    }
}

/// A wish under another table is one of these.
const WISHES_ELSEWHERE: &[&str] = &["leak_test.allowed_loss"];

#[test]
fn every_line_that_is_written_has_a_class_that_suits_it() {
    let mut wishes_elsewhere = vec![];
    for slot in &Graph::get().slots {
        let (line, path) = (slot.line, slot.path);
        assert_eq!(line.class.is_some(), line.written, "{path}");
        assert!(line.written || !line.left_out_is_none, "{path}");
        assert_eq!(line.class == Some(Class::Choice), matches!(line.content, Content::Choice(_)), "{path}");
        let wanted = path.split('.').any(|key| key == "wanted");
        match line.class {
            Some(Class::Wish) if !wanted && !path.starts_with("use.") => wishes_elsewhere.push(path),
            Some(Class::Wish) => {}
            _ => assert!(!wanted || line.class.is_none(), "{path} is wanted, and no wish"),
        }
        // A reading of one part has no usual value that could replace it on another part.
        let void = line.left_out_is_none && line.assumed.is_some();
        assert!(!void, "{path}");
        // A reading is not itself a marking: a marking names its part.
        let reading = matches!(line.class, Some(Class::Measurement(_)));
        assert!(!(reading && matches!(line.content, Content::Marking(_))), "{path}");
    }
    assert_eq!(wishes_elsewhere, WISHES_ELSEWHERE);
}

#[test]
fn a_line_that_is_never_written_follows_from_others() {
    for slot in &Graph::get().slots {
        assert!(slot.line.written || !slot.steps.is_empty(), "{}", slot.path);
        let meaning = slot.line.meaning;
        assert!(!meaning.is_empty() && !meaning.ends_with('.'), "{}", slot.path);
    }
}

#[test]
fn only_a_line_that_may_be_written_is_bounded() {
    for slot in &Graph::get().slots {
        let bounds = || slot.steps.iter().filter(|step| !step.fills());
        assert!(slot.line.written || bounds().count() == 0, "{}", slot.path);
        // A bound that the trade would merely assume bounds nothing.
        assert!(bounds().all(|step| step.leeway.is_finite()), "{}", slot.path);
    }
}

#[test]
fn a_margin_compares_one_kind() {
    let graph = Graph::get();
    for finding in &graph.findings {
        let kinds: BTreeSet<&str> =
            finding.margin.slots().filter_map(|slot| Some(graph.info(slot).kind()?.name)).collect();
        assert_eq!(kinds.len(), 1, "{}: {kinds:?}", finding.path);
        let offset = ["Temperature", "GaugePressure"].iter().any(|kind| kinds.contains(kind));
        assert!(!offset || !matches!(finding.margin, MarginSlots::Ratio { .. }), "{}", finding.path);
        assert!(finding.finding.question.ends_with('?'), "{}", finding.path);
    }
}

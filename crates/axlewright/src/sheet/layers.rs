//! Layers of the build sheet: a section names only lines of its own layer and of those below.
//!
//! The paths are read from the constants of the systems as they are compiled, so that none hides in a macro.

use crate::base::section::rule::{Shape, Taken, below};
use crate::base::section::{About, Call, Class, Margin, Section, Step};

type Sections = [(&'static str, &'static Section)];

/// Paths that a section names: lines, `[*]` and `?` left out, and tables around lines.
fn named(section: &'static Section) -> Vec<String> {
    let mut paths: Vec<String> = Vec::new();
    let mut add = |path: &str| paths.push(path.trim_start_matches('?').replace("[*]", "[0]"));
    for line in section.lines {
        line.steps.iter().for_each(|step| of_step(step, &mut add));
        if let Some(Class::Measurement(parts)) = line.class {
            parts.iter().for_each(|path| add(path));
        }
    }
    for also in section.also {
        add(also.path);
        also.steps.iter().for_each(|step| of_step(step, &mut add));
        also.measured_on.iter().for_each(|path| add(path));
        also.about.iter().for_each(|about| of_about(about, &mut add));
    }
    for finding in section.findings {
        match finding.margin {
            Margin::Ratio { capacity, demand } => [capacity, demand].iter().for_each(|path| add(path)),
            Margin::Remaining { value } => add(value),
            Margin::AtLeast { value, least } => [value, least].iter().for_each(|path| add(path)),
            Margin::AtMost { value, most } => [value, most].iter().for_each(|path| add(path)),
            Margin::Band { value, low, high } => [value, low, high].iter().for_each(|path| add(path)),
        }
        add(finding.wanted);
        finding.rests_on.iter().for_each(|path| add(path));
        finding.about.iter().for_each(|about| of_about(about, &mut add));
    }
    for model in section.models {
        of_inputs(model.inputs, model.shape, &mut add);
    }
    section.parts.iter().copied().flatten().for_each(|path| add(path));
    section.renamed.iter().for_each(|renamed| add(renamed.new));
    paths
}

fn of_step(step: &Step, add: &mut impl FnMut(&str)) {
    step.inputs.iter().for_each(|path| add(path));
    if let Call::Rule(rule, _) = step.call {
        of_inputs(rule.inputs, rule.shape, add);
    }
}

fn of_inputs(inputs: &[Taken], shape: fn(&mut Shape), add: &mut impl FnMut(&str)) {
    let mut leaves = Shape::default();
    shape(&mut leaves);
    for (taken, leaves) in inputs.iter().zip(&leaves.inputs) {
        leaves.iter().for_each(|leaf| add(&below(taken.path, &leaf.key)));
    }
}

fn of_about(about: &About, add: &mut impl FnMut(&str)) {
    about.parts.iter().chain(about.beside).for_each(|path| add(path));
    if !about.choice.is_empty() {
        add(about.choice);
    }
}

/// Whether a path is that of a line or finding as it is declared, or of a table around it; `front` and `rear` are places of `axle`, and
/// `[1]` is one of `[]`.
fn is_or_holds(path: &str, declared: &str) -> bool {
    let words = |path: &str| -> Vec<String> {
        let plain =
            |word: &str| word.split_once('[').map_or(word.to_owned(), |(list, _)| format!("{list}[]"));
        path.split('.').map(plain).collect()
    };
    let (path, declared) = (words(path), words(declared));
    let either = |one: &str, other: &str| {
        one == other
            || ["front", "rear"].contains(&one) && other == "axle"
            || one == "axle" && ["front", "rear"].contains(&other)
    };
    path.len() <= declared.len()
        && path.iter().zip(&declared).all(|(one, other)| either(one, other) || format!("{one}[]") == *other)
}

/// Paths that a section names although no section of its layer or of one below declares them, and additions to lines of its own.
fn crossings(sections: &'static Sections, layers: &[&[&str]]) -> Vec<String> {
    let layer = |name: &str| layers.iter().position(|layer| layer.contains(&name));
    let declares = |section: &Section, path: &str| {
        section.lines.iter().any(|line| is_or_holds(path, line.path))
            || section.findings.iter().any(|finding| finding.path == path)
    };
    let mut found = Vec::new();
    for (system, section) in sections {
        let own = layer(system);
        for path in named(section) {
            let owners = sections.iter().filter(|(_, other)| declares(other, &path));
            let owners: Vec<&str> = owners.map(|(name, _)| *name).collect();
            if !owners.iter().any(|owner| layer(owner) <= own) {
                found.push(format!("{system} names {path} of {}, which stands above it", owners.join(", ")));
            }
        }
        for also in section.also {
            let below = |(name, other): &&(&str, &Section)| layer(name) < own && declares(other, also.path);
            if !sections.iter().any(|section| below(&section)) {
                found
                    .push(format!("{system} adds to {}, which is declared by no system below it", also.path));
            }
        }
    }
    found
}

mod tests {
    use super::super::generated::{LAYERS, SECTIONS};
    use super::*;
    use crate::Result;
    use crate::base::section::{Finding, Line, Rule, also, by, choice, fields, line, model, rule, same};
    use crate::units::{Length, Quantity};

    #[test]
    fn no_section_names_a_line_of_a_layer_above() {
        assert_eq!(crossings(SECTIONS, LAYERS), Vec::<String>::new());
    }

    struct Eye {
        eye: Length,
    }
    fields!(Eye { eye });

    impl Eye {
        fn length(&self) -> Result<Length> {
            Ok(self.eye)
        }
    }

    const DRAWN: Rule = rule! { "axle.arm" Eye::length, Eye takes { eye } says "", "" };

    const fn length(path: &'static str) -> Line {
        line(path, Length::KIND, "")
    }

    const ABOVE: &Section = &Section {
        lines: &[length("axle.arm.eye"), choice("axle.form", &["arm", "leaf"], ""), length("wanted.arm")],
        also: &[also("axle.coil.length").by(&[by(&DRAWN)]).measured_on(&["axle.arm"])],
        ..Section::EMPTY
    };

    const ASKED: Finding = Finding {
        path: "axle.coil_question",
        question: "",
        margin: Margin::Remaining { value: "axle.coil.length" },
        wanted: "wanted.coil",
        rests_on: &[],
        about: &[],
        caution: "",
    };

    const OWN: [Line; 3] = [length("axle.coil.length"), length("axle.coil.block"), length("wanted.coil")];

    /// A system below that says this of itself, in turn.
    static BELOW: &[(&str, &Section)] = &[
        ("", &Section { lines: &OWN, findings: &[ASKED], ..Section::EMPTY }),
        ("axle.arm.eye", &Section { lines: &[OWN[0].by(&[by(&DRAWN)]), OWN[2]], ..Section::EMPTY }),
        (
            "front.arm.eye",
            &Section { lines: &[OWN[0].by(&[same(&["front.arm.eye"], "")]), OWN[2]], ..Section::EMPTY },
        ),
        ("axle.arm", &Section { lines: &[OWN[0].measured_on(&["axle.arm"]), OWN[2]], ..Section::EMPTY }),
        (
            "wanted.arm",
            &Section {
                lines: &OWN,
                findings: &[Finding { wanted: "wanted.arm", ..ASKED }],
                ..Section::EMPTY
            },
        ),
        (
            "axle.arm.eye",
            &Section {
                lines: &OWN,
                findings: &[Finding { margin: Margin::Remaining { value: "axle.arm.eye" }, ..ASKED }],
                ..Section::EMPTY
            },
        ),
        (
            "axle.form",
            &Section {
                lines: &OWN,
                findings: &[Finding {
                    about: &[About::parts(&["axle.coil"]).only_with("axle.form", &["arm"])],
                    ..ASKED
                }],
                ..Section::EMPTY
            },
        ),
        (
            "axle.arm.eye",
            &Section {
                lines: &OWN,
                models: &[model! { "axle.arm" "above.Eye" Eye in "axle.arm" takes { eye } }],
                ..Section::EMPTY
            },
        ),
    ];

    /// A section for each way to name a line of the layer above; the one that names none passes.
    #[test]
    fn a_line_of_a_layer_above_is_found_wherever_it_is_named() {
        for (names, section) in BELOW {
            let sections: &'static Sections = vec![("below", *section), ("above", ABOVE)].leak();
            let wanted: Vec<String> = match *names {
                "" => vec![],
                path => vec![format!("below names {path} of above, which stands above it")],
            };
            assert_eq!(crossings(sections, &[&["below"], &["above"]]), wanted);
            // Systems of one layer may name each other's lines.
            let peers: Vec<String> = crossings(sections, &[&["below", "above"]]);
            assert!(peers.iter().all(|fault| fault.starts_with("above adds to ")), "{peers:?}");
        }
    }

    #[test]
    fn an_addition_is_to_a_line_below() {
        let peers: &'static Sections = vec![("below", BELOW[0].1), ("above", ABOVE)].leak();
        let fault = "above adds to axle.coil.length, which is declared by no system below it";
        assert_eq!(crossings(peers, &[&["below", "above"]]), [fault]);
    }
}

//! A new sheet to fill in: the tables that fit a vehicle, each line with its meaning, its unit and how it is measured.

mod offers;

use super::glossary::TABLES;
use super::graph::Graph;
use super::shop::Shop;
use super::{VERSION, quoted};
use crate::base::section::{Content, Line};
use crate::base::text::wrapped;
use crate::base::text::{System, did_you_mean, shortened};
use crate::{Error, Result};
use offers::OFFERS;

/// A question about the vehicle, in trade words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Question {
    /// Its name: `front`.
    pub key: &'static str,
    /// The question itself.
    pub asks: &'static str,
    /// Answers, each a word and what it says; the first one stands where nobody answers.
    pub choices: &'static [(&'static str, &'static str)],
}

const KINDS: [(&str, &str); 5] = [
    ("double_wishbone", "double wishbone (A-arms)"),
    ("strut", "strut"),
    ("links", "live (solid) axle on links, with coil springs"),
    ("leaf", "live (solid) axle on leaf springs"),
    ("other", "another kind"),
];

/// The questions, in the order in which they are asked.
pub const QUESTIONS: &[Question] = &[
    Question { key: "front", asks: "Front suspension?", choices: &KINDS },
    Question {
        key: "rear",
        asks: "Rear suspension?",
        choices: &[KINDS[3], KINDS[2], KINDS[0], KINDS[1], KINDS[4]],
    },
    Question {
        key: "points",
        asks: "Will you measure the joints of the suspension, x, y and z of each?",
        choices: &[
            ("no", "no: motion ratio and roll centre height as measured"),
            ("yes", "yes: every joint from one datum"),
        ],
    },
    Question {
        key: "drive",
        asks: "Which wheels drive?",
        choices: &[
            ("rear", "rear wheels"),
            ("front", "front wheels"),
            ("four", "all four, with a transfer case"),
        ],
    },
    Question {
        key: "gearbox",
        asks: "Which gearbox?",
        choices: &[("manual", "manual, with a clutch"), ("automatic", "automatic, with a torque converter")],
    },
    Question {
        key: "cooling",
        asks: "Coolant?",
        choices: &[
            ("ethylene_glycol", "water with ethylene glycol (the usual antifreeze)"),
            ("propylene_glycol", "water with propylene glycol"),
            ("water", "water alone"),
            ("none", "none: air-cooled"),
        ],
    },
    Question {
        key: "towing",
        asks: "Will it tow?",
        choices: &[("no", "no"), ("yes", "yes: weigh it with the trailer hitched")],
    },
    Question {
        key: "units",
        asks: "Units of the shop?",
        choices: &[("metric", "metric"), ("us", "US: inches, pounds, °F, psi")],
    },
];

/// The vehicle of a new sheet: a word for each question.
pub(super) struct Build {
    words: Vec<&'static str>,
}

impl Build {
    fn new(answers: &[(&str, &str)]) -> Result<Build> {
        let mut words: Vec<&'static str> =
            QUESTIONS.iter().map(|question| question.choices.first().map_or("", |(word, _)| *word)).collect();
        for (key, answer) in answers {
            let place = QUESTIONS.iter().position(|question| question.key == *key).ok_or_else(|| {
                let known = QUESTIONS.iter().map(|question| question.key);
                let all: Vec<&str> = known.clone().collect();
                let near = did_you_mean(key, known);
                Error::document(
                    shortened(key),
                    format!("there is no such question{near}; questions: {}", all.join(", ")),
                )
            })?;
            let choices = QUESTIONS.get(place).map_or([].as_slice(), |question| question.choices);
            let word = choices.iter().find(|(word, _)| word == answer).ok_or_else(|| {
                let all: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
                Error::document(
                    *key,
                    format!("`{}` is not an answer; answers: {}", shortened(answer), all.join(", ")),
                )
            })?;
            if let Some(kept) = words.get_mut(place) {
                *kept = word.0;
            }
        }
        Ok(Build { words })
    }

    /// The word of a question.
    pub fn word(&self, key: &str) -> &'static str {
        let place = QUESTIONS.iter().position(|question| question.key == key);
        place.and_then(|place| self.words.get(place)).copied().unwrap_or("")
    }

    pub fn is_drawn(&self) -> bool {
        self.word("points") == "yes"
    }

    fn system(&self) -> System {
        if self.word("units") == "us" { System::Us } else { System::Metric }
    }

    /// Lines that the answers write, in a table; the empty table stands before all others.
    fn written(&self, table: &str) -> Vec<(&'static str, &'static str)> {
        let of = |kind: &'static str| match kind {
            "links" => vec![("wheels", "live_axle"), ("suspension", "live_axle_on_links")],
            "leaf" => vec![("wheels", "live_axle"), ("suspension", "live_axle_on_leaf_springs")],
            "other" => vec![("wheels", "independent")],
            kind => vec![("wheels", "independent"), ("suspension", kind)],
        };
        match table {
            "" => [
                (self.word("cooling") == "none", ("coolant", "none")),
                (self.word("gearbox") == "automatic", ("clutch", "none")),
                (self.word("drive") == "front", ("propeller_shaft", "none")),
            ]
            .into_iter()
            .filter_map(|(is, line)| is.then_some(line))
            .collect(),
            "front" | "rear" => of(self.word(table)),
            "driveline" => vec![("driven", if self.word("drive") == "front" { "front" } else { "rear" })],
            "coolant" if self.word("cooling") != "none" => vec![("liquid", self.word("cooling"))],
            _ => vec![],
        }
    }
}

/// A line that a new sheet offers.
pub(super) struct Offer {
    /// Table and key; a table that begins with `axle` stands for both ends.
    pub table: &'static str,
    pub key: &'static str,
    /// Whether a vehicle has it: the build, and the kind of suspension of that end.
    pub when: fn(&Build, &str) -> bool,
}

/// A new sheet in TOML with the lines that fit the answers. Each line stands behind a `#` with a blank for its number, so that nothing is taken for a
/// value; the sheet is read and assessed as it is. Questions without an answer take their first choice.
///
/// ```
/// use axlewright::sheet::{Sheet, starter};
/// let text = starter("Lark", &[("front", "strut"), ("units", "us")])?;
/// assert!(text.contains("#rate = \"___ lbf/in\""));
/// assert_eq!(Sheet::from_text(&text)?.get("front.suspension")?.as_deref(), Some("strut"));
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn starter(name: &str, answers: &[(&str, &str)]) -> Result<String> {
    const WIDE: usize = 100;
    let build = Build::new(answers)?;
    let shop = Shop::of(build.system());
    let note = |text: &str| -> String {
        wrapped("", 0, text, WIDE - 2).lines().map(|line| format!("# {line}\n")).collect()
    };
    let mut out = note(
        "A build sheet to fill in. A line that begins with # and a key waits for its value: take the # away and put your number in the place of ___. A line may \
         stay as it is; nothing is guessed. A number has its unit, any usual one, and may have a tolerance: \"612 kg +/- 2 kg\". Write \"none\" for a part that is not \
         there. `axlewright keys WORD` finds further lines, `axlewright assess FILE` tells what follows.",
    );
    if build.word("towing") == "yes" {
        out.push_str(&note("Towing: weigh the vehicle with the trailer hitched. The pull and stability of a trailer are not covered yet."));
    }
    out.push_str(&format!(
        "version = {VERSION}\nname = {}\n",
        quoted(if name.is_empty() { "unnamed" } else { name })
    ));
    for (key, word) in build.written("") {
        out.push_str(&format!("{key} = {}\n", quoted(word)));
    }
    for table in TABLES {
        let ends: &[&str] = if table.path.starts_with("axle") { &["front", "rear"] } else { &[""] };
        for end in ends {
            let path =
                if end.is_empty() { table.path.to_owned() } else { table.path.replacen("axle", end, 1) };
            let kind = build.word(end);
            let offered =
                OFFERS.iter().filter(|offer| offer.table == table.path && (offer.when)(&build, kind));
            let lines: String = offered.map(|offer| offered_line(&path, offer, &shop, WIDE, &note)).collect();
            let written = build.written(&path);
            if lines.is_empty() && written.is_empty() {
                continue;
            }
            out.push_str(&format!("\n[{path}]\n{}", note(table.holds)));
            for (key, word) in written {
                out.push_str(&format!("{key} = {}\n", quoted(word)));
            }
            out.push_str(&lines);
        }
    }
    Ok(out)
}

/// A line to fill in, below its meaning.
fn offered_line(
    table: &str,
    offer: &Offer,
    shop: &Shop,
    wide: usize,
    note: &dyn Fn(&str) -> String,
) -> String {
    let graph = Graph::get();
    let key = offer.key;
    let path = format!("{table}.{key}");
    let slot =
        [path.clone(), format!("{path}.x"), format!("{path}[0]")].iter().find_map(|path| graph.slot(path));
    let Some(line) = slot.map(|slot| graph.info(slot).line) else { return String::new() };
    let blank = |line: &Line| match line.content {
        Content::Quantity(kind) => match shop.symbol(kind, Some(line)) {
            "" => "\"___\"".to_owned(),
            symbol => quoted(&format!("___ {symbol}")),
        },
        _ => "\"___\"".to_owned(),
    };
    let (meaning, value) = if graph.slot(&path).is_some() {
        (line.meaning, blank(line))
    } else if graph.slot(&format!("{path}.x")).is_some() {
        let point = line.meaning.rsplit_once(": ").map_or(line.meaning, |(point, _)| point);
        (point, format!("{{ x = {0}, y = {0}, z = {0} }}", blank(line)))
    } else {
        (line.meaning, "[\"___\", \"___\"]".to_owned())
    };
    let mut said = meaning.to_owned();
    if let Content::Choice(words) = line.content {
        said.push_str(&format!(": one of {}", words.join(", ")));
    }
    if !line.how.is_empty() {
        said.push_str(&format!(". How: {}", line.how));
    }
    let line = format!("#{key} = {value}");
    let short = format!("{line:<34} # {said}");
    if short.chars().count() <= wide { format!("{short}\n") } else { format!("{}{line}\n", note(&said)) }
}

/// The demo sheets of this library, whole and with invented figures: name, and text in TOML.
pub const DEMOS: &[(&str, &str)] = &[
    ("dunlin", include_str!("generated.dunlin.toml")),
    ("wagtail", include_str!("generated.wagtail.toml")),
    ("dray", include_str!("generated.dray.toml")),
];

/// Paths that a new sheet may offer, with the axles written out: lines, points of three lines, and lists.
pub fn offered() -> impl Iterator<Item = String> {
    let ends = |table: &'static str| -> &'static [&'static str] {
        if table.starts_with("axle") { &["front", "rear"] } else { &[""] }
    };
    OFFERS.iter().flat_map(move |offer| {
        ends(offer.table).iter().map(move |end| {
            let table =
                if end.is_empty() { offer.table.to_owned() } else { offer.table.replacen("axle", end, 1) };
            format!("{table}.{}", offer.key)
        })
    })
}

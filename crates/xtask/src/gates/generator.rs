//! The generator reads a made-up core, and refuses its faults.

use super::root;
use surface::Api;

/// A made-up core with one file, read by the generator.
fn read_made_up(name: &str, source: &str) -> Result<Api, String> {
    read_made_up_at(name, "rate.rs", source)
}

fn read_made_up_at(name: &str, place: &str, source: &str) -> Result<Api, String> {
    let folder = std::env::temp_dir().join(format!("axlewright-gate-{name}-{}", std::process::id()));
    let core = folder.join("crates/axlewright/src");
    std::fs::create_dir_all(core.join("spring")).unwrap();
    std::fs::create_dir_all(core.join("base")).unwrap();
    std::fs::copy(root().join("crates/axlewright/src/base/verdict.rs"), core.join("base/verdict.rs"))
        .unwrap();
    std::fs::write(core.join("base/units.rs"), UNITS).unwrap();
    std::fs::write(
        core.join("spring/mod.rs"),
        "//! Springs.\nmod rate;\npub use rate::{rate, rate_value};\n",
    )
    .unwrap();
    let file = core.join("spring").join(place);
    std::fs::create_dir_all(file.parent().unwrap()).unwrap();
    std::fs::write(file, source).unwrap();
    let api = Api::read(&core);
    std::fs::remove_dir_all(&folder).unwrap();
    api
}

const UNITS: &str = r#"quantities! {
    Force "force" [Plain] "N" metric N us N { N "N" [] (1.0) / (1.0); }
    Length "length" [Plain] "m" metric m us m { m "m" [] (1.0) / (1.0); }
    LinearStiffness "linear stiffness" [Plain] "N/m" metric N_per_m us N_per_m { N_per_m "N/m" [] (1.0) / (1.0); }
}"#;

const RATE: &str = "/// Rate.\n///\n/// # Formula\n/// `k`\n///\n/// # Parameters\n/// - `load` — `F`\n/// - `travel` — `x`\n///\n/// # Returns\n/// The rate.\n///\n\
    /// # Valid for\n/// - `0 < load <= 3`\n/// - `travel finite`\n///\n/// # Source\n/// Definition\n///\n/// # Example\n/// text\n\
    pub fn rate(load: Force, travel: Length) -> Result<LinearStiffness> {\n    valid! {\n        load: 0 < .. <= 3 ; \"why\";\n        travel: .. ; \"why\";\n    }\n    Ok(load / travel)\n}\n";

#[test]
fn the_generator_reads_a_function() {
    let api = read_made_up("good", RATE).unwrap();
    assert_eq!(api.functions.len(), 1);
    assert_eq!(api.functions[0].parameters[0].limit.as_deref(), Some("0 < load <= 3"));
}

/// A hyphen, a short dash or a colon after a name becomes the dash of every surface, and an indented line goes on with the meaning.
#[test]
fn the_generator_reads_lists_as_people_write_them() {
    for mark in [" - ", " – ", ": "] {
        let source = RATE.replace("`load` — `F`", &format!("`load`{mark}`F`, load\n///   on the spring"));
        let api = read_made_up("list", &source).unwrap();
        assert_eq!(api.functions[0].parameters[0].meaning, "`F`, load on the spring");
    }
}

/// The limits in the docs follow from those in the code: a wrong list is replaced, a missing one is added, and prose stays.
#[test]
fn the_generator_writes_the_limits() {
    assert_eq!(surface::with_limits(RATE).unwrap(), RATE);
    let rounded = RATE.replace("- `0 < load <= 3`", "- `0 < load <= 3e0`");
    let none = RATE.replace("/// # Valid for\n/// - `0 < load <= 3`\n/// - `travel finite`\n///\n", "");
    for source in [rounded, none] {
        assert_ne!(source, RATE);
        assert_eq!(surface::with_limits(&source).unwrap(), RATE);
    }
    let prose = RATE.replace("/// - `0 < load <= 3`\n/// - `travel finite`\n", "/// Springs of steel.\n");
    let written = surface::with_limits(&prose).unwrap();
    assert_eq!(written, RATE.replace("`travel finite`\n", "`travel finite`\n///\n/// Springs of steel.\n"));
}

/// Every file with a fault is named in one run.
#[test]
fn the_generator_names_all_faults_at_once() {
    let other = RATE.replace("fn rate(", "fn other_rate(");
    let refusal =
        read_made_up("all", &format!("{}{other}", RATE.replace("# Source", "# Sources"))).unwrap_err();
    assert!(refusal.contains("# Sources") && refusal.contains("other_rate is not public"), "{refusal}");
}

/// A file in a subfolder belongs to its system: the public path stays flat.
#[test]
fn the_generator_reads_subfolders() {
    let api = read_made_up_at("subfolder", "wheel/tyre/rate.rs", RATE).unwrap();
    assert_eq!(api.functions.iter().map(surface::Function::path).collect::<Vec<_>>(), ["spring.rate"]);
}

/// Each fault, and a word of the refusal.
#[test]
fn the_generator_refuses_by_name() {
    let faults = [
        ("heading", RATE.replace("# Source", "# Sources"), "# Sources"),
        ("source", RATE.replace("/// # Source\n/// Definition\n///\n", ""), "# Source"),
        ("formula", RATE.replace("/// # Formula\n/// `k`\n///\n", ""), "# Formula"),
        ("example", RATE.replace("/// # Example\n/// text\n", ""), "# Example"),
        ("parameter", RATE.replace("/// - `travel` — `x`\n", ""), "travel"),
        ("limit", RATE.replace("- `0 < load <= 3`", "- `0 < load <= 2`"), "0 < load <= 3"),
        ("enforced", RATE.replace("load: 0 < .. <= 3", "load: 0 < .. <= 4"), "0 < load <= 4"),
        (
            "unlimited",
            RATE.replace("/// - `travel finite`\n", "").replace("        travel: .. ; \"why\";\n", ""),
            "no range of its own",
        ),
        ("type", RATE.replace("travel: Length", "travel: f64"), "f64"),
        ("result", RATE.replace("Result<LinearStiffness>", "Option<LinearStiffness>"), "Result"),
        ("ending", RATE.replace("fn rate(", "fn rate_value("), "reserves"),
        ("double", format!("{RATE}{RATE}"), "twice"),
        (
            "double choice",
            format!("{RATE}pub enum Side {{ Left }}\npub enum Side {{ Right }}\n"),
            "AXW_SIDE_",
        ),
        ("argument", RATE.replace("/// # Returns", "/// - `speed` — `v`\n///\n/// # Returns"), "`speed`"),
        ("layer", format!("use crate::cooling::Coolant;\n{RATE}"), "does not stand below"),
        (
            "wrapped layer",
            format!("use crate::{{\n    Error,\n    cooling,\n}};\n{RATE}"),
            "does not stand below",
        ),
        ("bare layer", format!("use crate::cooling;\n{RATE}"), "does not stand below"),
        ("peer", format!("use crate::mass;\n{RATE}"), "does not stand below"),
        (
            "path in code",
            RATE.replace("Ok(load / travel)", "crate::cooling::rate(load / travel)"),
            "does not stand below",
        ),
        ("catalogue", format!("use crate::catalogue::entry;\n{RATE}"), "imports catalogue"),
        ("public", RATE.replace("fn rate(", "fn other_rate("), "lacks its `pub use`"),
        ("summary", RATE.replace("/// Rate.\n", "/// Rate\n"), "full stop"),
    ];
    for (name, source, word) in faults {
        assert_ne!(source, RATE, "{name} is no fault");
        let refusal = read_made_up(name, &source).err().unwrap_or_else(|| panic!("{name} was not refused"));
        assert!(refusal.contains(word), "{name}: {refusal}");
    }
}

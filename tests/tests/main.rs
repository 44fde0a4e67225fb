//! All tests of this package in one program: it is linked once, and its tests run side by side.

mod arguments;
mod attack;
mod claims;
mod demo_sheets;
mod long_texts;
mod messages;
mod renamed;
mod ride;
mod rows;
mod safe_choose;
mod safe_cooling;
mod safe_driveline;
mod safe_dunlin;
mod safe_ends;
mod safe_ride;
mod safe_spring;
mod safe_suspension;
mod safe_tyre;
mod sections;
mod sheet_applies;
mod sheet_by_hand;
mod sheet_choose;
mod sheet_classes;
mod sheet_findings;
mod sheet_leaf;
mod sheet_million;
mod sheet_models;
mod sheet_mutations;
mod sheet_round_trip;
mod sheet_suspension;
mod sheet_told;
mod sheet_tolerance;
mod sheet_what_if;
mod table_memory;
mod unit_invariance;

/// Every file and folder beside this one is a module of it, so that no test is forgotten.
#[test]
fn every_test_file_is_run() {
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/tests");
    let source = include_str!("main.rs");
    for entry in std::fs::read_dir(here).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap();
        let is_module = path.is_dir() || path.extension().is_some_and(|of| of == "rs");
        let listed = name == "main" || source.contains(&format!("mod {name};\n"));
        assert!(!is_module || listed, "tests/tests/main.rs lacks `mod {name};`");
    }
}

//! The three demo sheets answer as they did: every finding with its verdict. What changes here changes what a builder is told.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::sheet::Sheet;

#[test]
fn print_them() {
    for name in ["dunlin", "wagtail", "dray"] {
        let text = std::fs::read_to_string(format!("../examples/sheets/{name}.toml")).unwrap();
        let a = Sheet::from_text(&text).unwrap_or_else(|e| panic!("{name}: {e}")).assess();
        println!("{}", a.to_text(axlewright::base::text::System::Metric, false));
    }
}

//! A build sheet from text: each finding with its margin, what is missing, and what another spring would change.
//!
//!     cargo run --features sheet --example judge_a_sheet
//!
//! The figures are invented.

use axlewright::sheet::Sheet;
use axlewright::{Result, Verdict};

const VAN: &str = r#"
version = 1
name = "van, front end"
[front]
sprung_mass = "545 kg"
[front.spring]
rate = "450 lbf/in +/- 3 %"
motion_ratio = 0.6
[front.wanted]
frequency_low = "1.2 Hz"
frequency_high = "1.5 Hz"
"#;

fn main() -> Result<()> {
    let mut van = Sheet::from_text(VAN)?;
    for rate in ["450 lbf/in +/- 3 %", "550 lbf/in +/- 3 %"] {
        van.set("front.spring.rate", rate)?;
        let assessment = van.assess();
        for answer in assessment.answers().iter().filter(|answer| answer.path == "front.frequency") {
            println!("{rate}: {:.2} {}, {}", answer.value, answer.kind.si, answer.verdict.word());
        }
        let open = assessment.answers().iter().filter(|answer| answer.verdict == Verdict::NotKnown);
        println!("  {} findings wait for more lines", open.count());
    }
    // As JSON, for another program.
    let told = serde_json::to_string(&van.assess()).unwrap_or_default();
    assert!(told.starts_with('{'));
    Ok(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_runs() {
        super::main().unwrap();
    }
}

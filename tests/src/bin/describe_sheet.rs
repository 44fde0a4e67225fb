//! Prints what the core says of the build sheet: `schema`, its JSON Schema; `lines` and `glossary`, pages of the book.

use axlewright::base::section::{About, Content};
use axlewright::sheet;
use std::process::ExitCode;

fn main() -> ExitCode {
    match std::env::args().nth(1).as_deref() {
        Some("schema") => print!("{}", sheet::schema()),
        Some("lines") => print!("{}", lines()),
        Some("glossary") => print!("{}", sheet::glossary()),
        other => {
            eprintln!("describe_sheet {}: write `schema`, `lines` or `glossary`", other.unwrap_or_default());
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// Every line and finding of the build sheet, a section a system.
fn lines() -> String {
    let mut page = String::from(
        "# Lines and findings\n\nEvery line that a build sheet may hold and every question that is asked of it, as the systems declare them. A line that is only \
         computed is never written. `[]` stands for the places of a list.\n",
    );
    let mut systems: Vec<&str> = sheet::lines().map(|(system, ..)| system).collect();
    systems.dedup();
    for system in systems {
        page.push_str(&format!("\n## {system}\n\n| line | what | meaning |\n|---|---|---|\n"));
        for (_, path, line) in sheet::lines().filter(|(of, ..)| *of == system) {
            let what = match line.content {
                Content::Quantity(kind) => kind.words.to_owned(),
                Content::Choice(words) => words.join(", "),
                Content::Marking(_) => "marking".to_owned(),
            };
            let what = if line.written { what } else { format!("{what}; computed") };
            let assumed =
                line.assumed.map_or(String::new(), |(_, ground)| format!("; else assumed: {ground}"));
            page.push_str(&format!("| `{path}` | {what} | {}{assumed} |\n", line.meaning));
        }
        let findings: Vec<_> = sheet::findings().filter(|(of, ..)| *of == system).collect();
        if !findings.is_empty() {
            page.push_str(
                "\n| finding | question | margin that is wanted | does not apply with |\n|---|---|---|---|\n",
            );
        }
        for (_, path, finding) in findings {
            let about: Vec<String> =
                finding.about.iter().filter(|part| part.beside.is_empty()).map(told).collect();
            let (question, wanted) = (finding.question, finding.wanted);
            page.push_str(&format!("| `{path}` | {question} | `{wanted}` | {} |\n", about.join("; ")));
        }
    }
    page
}

/// How a sheet says that there is no such part.
fn told(part: &About) -> String {
    let none = format!("`none` of `{}`", part.parts.join("`, `"));
    match part.choice {
        "" => none,
        choice => format!("{none}, or a `{choice}` other than `{}`", part.words.join("`, `")),
    }
}

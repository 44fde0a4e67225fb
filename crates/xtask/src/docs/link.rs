//! Names of pages, and links between them.

use std::collections::BTreeSet;
use std::path::Path;
use surface::{Api, read};

/// The committed page of a system, below `docs`.
pub fn page_of(system: &str) -> String {
    format!("systems/{system}.md")
}

/// `spring.wheel_rate`, `spring.Corner`: subjects with a page in the reference, in the order of the catalogue.
pub fn subjects(api: &Api) -> Vec<String> {
    let models = api.models.iter().map(|model| format!("{}.{}", model.system, model.name));
    api.functions.iter().map(|function| function.path()).chain(models).collect()
}

/// Files of the repository outside `docs` to which its pages link.
pub fn outside(root: &Path) -> Result<BTreeSet<String>, String> {
    let mut found = BTreeSet::new();
    for name in ["README", "units", "sheet", "sources", "c", "changelog"] {
        let text = read(&root.join(format!("docs/{name}.md")))?;
        found.extend(text.split("](../").skip(1).filter_map(|rest| Some(rest.split_once(')')?.0.to_owned())));
    }
    Ok(found)
}

/// Text with links: a name of the catalogue in code leads to its page, a file outside `docs` to its copy, a page of the book
/// to its place. A name of a system that is not in the catalogue is an error.
pub fn link(root: &Path, api: &Api, text: &str) -> Result<String, String> {
    let names: BTreeSet<String> = subjects(api).into_iter().collect();
    let mut out = String::new();
    let mut fenced = false;
    for line in text.lines() {
        let fence = line.trim_start().starts_with("```");
        fenced ^= fence;
        if fenced || fence || line.starts_with("# ") {
            out.push_str(line);
        } else {
            // Odd pieces are code.
            for (place, piece) in line.split('`').enumerate() {
                let called = piece.replace("::", ".");
                let inside = place % 2 == 1;
                let linked = out.ends_with('[');
                if inside && !linked && names.contains(&called) {
                    out.push_str(&format!("[`{called}`](/reference/{called}.md)"));
                } else if inside {
                    refuse_stale(api, &names, &called)?;
                    out.push_str(&format!("`{piece}`"));
                } else {
                    out.push_str(&piece.replace("](../", "](/repository/"));
                }
            }
        }
        out.push('\n');
    }
    for place in out.split("](/repository/").skip(1) {
        let path = place.split_once(')').map_or(place, |(path, _)| path);
        if !root.join(path).is_file() {
            return Err(format!("a page links to {path}, which is not there"));
        }
    }
    Ok(out)
}

fn refuse_stale(api: &Api, names: &BTreeSet<String>, called: &str) -> Result<(), String> {
    let plain = |name: &str| name.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '_');
    let Some((system, name)) = called.split_once('.') else { return Ok(()) };
    let of_system = api.systems.iter().any(|known| known.name == system);
    // The changelog names what was renamed.
    let is_renamed = surface::renamed::items(system).any(|(old, new)| name == old || name == new);
    if of_system && plain(name) && !names.contains(called) && !is_renamed {
        return Err(format!("a page names `{called}`, which is not in the catalogue"));
    }
    Ok(())
}

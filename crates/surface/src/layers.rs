//! Layers of the core: systems import downward only.

use crate::Fallible;
use crate::sources::{Sources, read};

/// Systems by layer; each imports downward only.
pub const LAYERS: &[&[&str]] = &[
    &["air", "fluid", "material"],
    &["tyre", "spring", "engine", "mass", "fastener"],
    &["suspension", "driveline"],
    &["steering", "brake", "frame", "cooling"],
    &["ride", "performance"],
    &["loads", "handling", "heat"],
    &["catalogue"], // generated: every function as data
    &["sheet"],
];

/// Refuses an import that does not lead downward.
pub(crate) fn check(sources: &Sources) -> Fallible<()> {
    let layer = |name: &str| LAYERS.iter().position(|layer| layer.contains(&name));
    let own = layer(&sources.name).ok_or_else(|| format!("{} stands on no layer", sources.name))?;
    for (path, _) in &sources.files {
        let text = read(path)?;
        let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
        // An import may be wrapped: what stands before a semicolon is one line.
        let code: String = code.map(str::trim).collect::<Vec<_>>().join(" ");
        for line in code.split(';') {
            for other in LAYERS.iter().flat_map(|layer| layer.iter()) {
                let imports = line.contains(&format!("crate::{other}::"))
                    || line.contains(&format!("use crate::{other} as"))
                    || line.find("use crate::{").is_some_and(|at| {
                        line[at..].split(['{', ',', '}', ' ', ':']).any(|word| word == *other)
                    });
                if imports && *other != sources.name && layer(other) >= Some(own) {
                    return Err(format!(
                        "{}: {} imports {other}, which does not stand below it",
                        path.display(),
                        sources.name
                    ));
                }
            }
        }
    }
    Ok(())
}

//! Layers of the core: systems import downward only.

use crate::Fallible;
use crate::sources::{Sources, read};

/// Systems by layer; each imports downward only.
pub const LAYERS: &[&[&str]] = &[
    &["air", "fluid", "material"],
    &["tyre", "spring", "engine", "mass", "fastener"],
    &["suspension", "driveline", "brake", "steering", "cooling", "frame"],
    &["ride", "performance"],
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
        for line in code {
            for other in LAYERS.iter().flat_map(|layer| layer.iter()) {
                let imports = line.contains(&format!("crate::{other}::"))
                    || line.trim_start().starts_with("use crate::{")
                        && line.split(['{', ',', '}', ' ']).any(|word| word == *other);
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

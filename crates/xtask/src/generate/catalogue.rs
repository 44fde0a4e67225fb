//! The catalogue: everything that is public, with its docs, as JSON.

use crate::api::Api;
use axlewright::units::KINDS;
use serde_json::json;

pub fn json(api: &Api) -> Result<String, String> {
    let kinds: Vec<_> = KINDS
        .iter()
        .map(|kind| {
            let units: Vec<_> = kind
                .units
                .iter()
                .map(|unit| {
                    json!({
                        "name": unit.name, "symbol": unit.symbol, "spellings": unit.spellings,
                        "numerator": unit.numerator, "denominator": unit.denominator, "offset": unit.offset,
                    })
                })
                .collect();
            json!({
                "name": kind.name, "words": kind.words, "si": kind.si, "metric": kind.metric, "us": kind.us, "units": units,
            })
        })
        .collect();
    let catalogue = json!({
        "library": "axlewright",
        "version": env!("CARGO_PKG_VERSION"),
        "kinds": kinds,
        "systems": api.systems,
        "functions": api.functions,
        "models": api.models,
        "choices": api.choices,
    });
    serde_json::to_string_pretty(&catalogue).map(|text| text + "\n").map_err(|error| error.to_string())
}

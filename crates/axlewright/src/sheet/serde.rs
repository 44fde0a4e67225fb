//! Assessments as JSON, or as another format of `serde`.

use super::{Answer, Assessment, Assumption, Missing};
use serde::ser::{Serialize, SerializeMap, Serializer};

/// A number; null where it is not finite.
fn number(si: f64) -> Option<f64> {
    si.is_finite().then_some(si)
}

/// The form of [`Assessment::to_json`].
impl Serialize for Assessment {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let told: serde_json::Value =
            serde_json::from_str(&self.to_json()).map_err(serde::ser::Error::custom)?;
        told.serialize(serializer)
    }
}

/// The keys and numbers of a finding in [`Assessment::to_json`], without what only the whole assessment knows.
impl Serialize for Answer {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("finding", self.path)?;
        map.serialize_entry("system", self.system)?;
        map.serialize_entry("question", self.question)?;
        map.serialize_entry("verdict", self.verdict.word())?;
        for (key, si) in [("value", self.value), ("low", self.low), ("high", self.high)] {
            map.serialize_entry(key, &number(si))?;
        }
        map.serialize_entry("kind", self.kind.name)?;
        map.serialize_entry("unit", self.kind.si)?;
        map.serialize_entry("form", self.form)?;
        map.serialize_entry("margin", &number(self.margin))?;
        map.serialize_entry("wanted", &number(self.wanted))?;
        map.serialize_entry("margin_kind", self.margin_kind.name)?;
        map.serialize_entry("margin_unit", self.margin_kind.si)?;
        map.serialize_entry("uncertainty", &number(self.uncertainty))?;
        map.serialize_entry("worst", &number(self.worst))?;
        map.serialize_entry("safety", &self.is_safety())?;
        map.serialize_entry("caution", self.caution)?;
        map.end()
    }
}

impl Serialize for Assumption {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("line", self.path)?;
        map.serialize_entry("value", &number(self.si))?;
        map.serialize_entry("kind", self.kind.name)?;
        map.serialize_entry("unit", self.kind.si)?;
        map.serialize_entry("ground", self.ground)?;
        map.end()
    }
}

impl Serialize for Missing {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("needs", &self.needs)?;
        map.serialize_entry("refused", &self.refused)?;
        map.end()
    }
}

#[cfg(test)]
mod tests {
    use crate::sheet::Sheet;
    use serde_json::{Value, json};

    #[test]
    fn an_answer_has_the_keys_and_numbers_of_the_whole_assessment() {
        let text = "version = 1\n[front]\nsprung_mass = \"545 kg\"\n[front.spring]\nrate = \"550 lbf/in\"\nmotion_ratio = 0.6\n";
        let assessment = Sheet::from_text(text).unwrap().assess();
        let whole = serde_json::to_value(&assessment).unwrap();
        assert_eq!(whole, serde_json::from_str::<Value>(&assessment.to_json()).unwrap());
        for (answer, finding) in assessment.answers().iter().zip(whole["findings"].as_array().unwrap()) {
            let Value::Object(told) = json!(answer) else { panic!("no map") };
            assert!(told.len() > 15);
            for (key, value) in &told {
                assert_eq!(value, &finding[key], "{}: {key}", answer.path);
            }
        }
        let assumed = json!(assessment.assumed());
        assert_eq!(assumed, whole["assumed"]);
        let first = &assessment.answers()[0];
        assert!(json!(assessment.missing(first)).get("needs").is_some());
    }
}

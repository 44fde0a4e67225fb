//! A table as JSON, or as another format of `serde`.

use super::{Column, Table, Values};
use serde::ser::{Serialize, SerializeStruct, Serializer};

impl Serialize for Table {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut table = serializer.serialize_struct("Table", 2)?;
        table.serialize_field("columns", &self.columns)?;
        let refused: Vec<Refused> = self
            .refused
            .iter()
            .map(|(row, reason)| Refused { row: *row, reason: reason.to_string() })
            .collect();
        table.serialize_field("refused", &refused)?;
        table.end()
    }
}

/// A row without results.
#[derive(serde::Serialize)]
struct Refused {
    row: usize,
    reason: String,
}

impl Serialize for Column {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut column = serializer.serialize_struct("Column", 3)?;
        column.serialize_field("name", &self.name)?;
        match self.kind {
            Some(kind) => column.serialize_field("unit", kind.si)?,
            None => column.skip_field("unit")?,
        }
        column.serialize_field("values", &self.values)?;
        column.end()
    }
}

impl Serialize for Values {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Values::F64(values) => {
                serializer.collect_seq(values.iter().map(|value| value.is_finite().then_some(*value)))
            }
            Values::I64(values) => serializer.collect_seq(values),
            Values::Category { codes, labels } => serializer.collect_seq(
                codes.iter().map(|code| usize::try_from(*code).ok().and_then(|code| labels.get(code))),
            ),
        }
    }
}

//! Classes of ISO 898-1 and grades of SAE J429: proof stress, yield and tensile strength.

use super::geometry::{Geometry, Series};
use crate::units::{Length, MPa, Stress, inch, ksi, mm};

/// Strength of a class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::fastener) struct Strength {
    /// Name of the class or grade.
    pub(in crate::fastener) name: &'static str,
    pub(in crate::fastener) proof: Stress,
    pub(in crate::fastener) yielding: Stress,
    pub(in crate::fastener) tensile: Stress,
    /// Shear strength over tensile strength, if the plane cuts the thread. EN 1993-1-8 table 3.4, from memory; lower for
    /// classes of low ductility, and for those that the table leaves out.
    pub(in crate::fastener) thread_shear: f64,
}

/// A class up to a diameter (mm): name, largest diameter, proof, yield and tensile (MPa), shear through the thread.
type Row = (&'static str, f64, [f64; 3], f64);

/// ISO 898-1:2013, table 3, from memory: least tensile strength, least yield (or 0.2 % proof) strength, stress under proof load.
const CLASSES: [Row; 10] = [
    ("4.6", 39.0, [225.0, 240.0, 400.0], 0.6),
    ("4.8", 39.0, [310.0, 340.0, 420.0], 0.5),
    ("5.6", 39.0, [280.0, 300.0, 500.0], 0.6),
    ("5.8", 39.0, [380.0, 420.0, 520.0], 0.5),
    ("6.8", 39.0, [440.0, 480.0, 600.0], 0.5),
    ("8.8", 16.0, [580.0, 640.0, 800.0], 0.6),
    ("8.8", 39.0, [600.0, 660.0, 830.0], 0.6),
    ("9.8", 16.0, [650.0, 720.0, 900.0], 0.5),
    ("10.9", 39.0, [830.0, 940.0, 1040.0], 0.5),
    ("12.9", 39.0, [970.0, 1100.0, 1220.0], 0.5),
];

/// SAE J429, from memory: the same in inches and ksi.
const GRADES: [Row; 6] = [
    ("1", 1.5, [33.0, 36.0, 60.0], 0.5),
    ("2", 0.75, [55.0, 57.0, 74.0], 0.5),
    ("2", 1.5, [33.0, 36.0, 60.0], 0.5),
    ("5", 1.0, [85.0, 92.0, 120.0], 0.5),
    ("5", 1.5, [74.0, 81.0, 105.0], 0.5),
    ("8", 1.5, [120.0, 130.0, 150.0], 0.5),
];

const NAMES: &str = "4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9 and 12.9";

/// Strength of a bolt of this grade and thread, or what is wrong.
pub(super) fn read(grade: &str, thread: &Geometry) -> Result<Strength, String> {
    let upper = grade.trim().to_ascii_uppercase();
    let words: Vec<&str> = upper.split_whitespace().filter(|word| !is_title(word)).collect();
    let name = words.concat();
    let metric = thread.series == Series::Metric;
    let class = CLASSES.iter().any(|row| row.0 == name);
    let sae = GRADES.iter().any(|row| row.0 == name);
    match (metric, class, sae) {
        (true, true, _) => {
            let diameter = thread.diameter.in_::<mm>();
            row(&CLASSES, &name, diameter).map(|found| of(found, Stress::of::<MPa>)).ok_or_else(|| {
                format!("class {name} of ISO 898-1 ends at M16; write another class, such as 10.9")
            })
        }
        (false, _, true) => {
            let diameter = thread.diameter.in_::<inch>();
            if thread.diameter < Length::of::<inch>(0.249) {
                return Err("SAE J429 begins at 1/4 in: a smaller screw has no grade there".to_owned());
            }
            row(&GRADES, &name, diameter)
                .map(|found| of(found, Stress::of::<ksi>))
                .ok_or_else(|| format!("grade {name} of SAE J429 ends at 1-1/2 in"))
        }
        (true, false, true) => Err(format!(
            "{name} is a grade of SAE J429 for inch threads, or a nut's class; the bolt of a metric thread has a class of ISO 898-1 on its head: {NAMES}"
        )),
        (false, true, _) => Err(format!(
            "{name} is a class of ISO 898-1 for metric threads; an inch thread has grade 1, 2, 5 or 8 of SAE J429, three strokes on the head for 5, six for 8"
        )),
        (true, false, false) => {
            Err(format!("there is no class of this name in ISO 898-1; there are {NAMES}: read the head of the bolt"))
        }
        (false, false, false) => Err(
            "there is no grade of this name in SAE J429; there are 1, 2, 5 and 8: count the strokes on the head, three for 5, six for 8"
                .to_owned(),
        ),
    }
}

fn is_title(word: &str) -> bool {
    ["CLASS", "GRADE", "SAE", "ISO", "J429", "898-1"].contains(&word)
}

/// The row of a class whose diameters reach that far.
fn row(rows: &'static [Row], name: &str, diameter: f64) -> Option<&'static Row> {
    rows.iter().find(|row| row.0 == name && diameter <= row.1 * (1.0 + 1e-9))
}

fn of(row: &'static Row, stress: fn(f64) -> Stress) -> Strength {
    let (name, _, [proof, yielding, tensile], thread_shear) = *row;
    Strength {
        name,
        proof: stress(proof),
        yielding: stress(yielding),
        tensile: stress(tensile),
        thread_shear,
    }
}

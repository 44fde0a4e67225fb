//! Parts to choose from, for the tests and the bench of choosing.

use crate::catalogue::Random;
use crate::sheets::DUNLIN;
use axlewright::Result;
use axlewright::sheet::{Candidate, PriceList, Requirement, Sheet};
use axlewright::units::{Mass, kg};

/// Kind of part, the line that it writes, the value of the first part, the step to the next, and the unit.
const KINDS: [(&str, &str, f64, f64, &str); 10] = [
    ("front spring", "front.spring.rate", 400.0, 50.0, " lbf/in"),
    ("front damper", "front.damper.rate", 4.0, 1.0, " N·s/mm"),
    ("rear spring", "rear.spring.rate", 200.0, 30.0, " lbf/in"),
    ("rear damper", "rear.damper.rate", 2.0, 0.5, " N·s/mm"),
    ("tyre", "rear.tyre.effective_radius", 320.0, 8.0, " mm"),
    ("axle", "final_drive.ratio", 3.3, 0.2, ""),
    ("gearbox", "gearbox.top_ratio", 0.6, 0.05, ""),
    ("clutch", "clutch.capacity", 350.0, 40.0, " N·m"),
    ("cap", "cap.rating", 8.0, 1.5, " psi gauge"),
    ("half shaft", "half_shaft.torque_rating", 3000.0, 700.0, " N·m"),
];

const REQUIREMENTS: [&str; 9] = [
    "1.2 Hz <= front.natural_frequency <= 1.4 Hz",
    "1 <= vehicle.frequency_ratio <= 1.3",
    "0.2 <= front.damping_ratio <= 0.45",
    "0.2 <= rear.damping_ratio <= 0.45",
    "driveline.cruise_engine_speed <= 2500 rpm",
    "clutch.holds.margin >= 1.2",
    "coolant.boiling.margin >= 5 K",
    "cost <= 3500",
    "mass <= 180 kg",
];

/// The demo van without its tolerances.
pub fn exact_dunlin() -> Result<Sheet> {
    let mut sheet = Sheet::from_text(DUNLIN)?;
    for path in sheet.paths().collect::<Vec<_>>() {
        let text = sheet.get(path)?.unwrap_or_default();
        sheet.set(path, text.split(" +/- ").next().unwrap_or_default())?;
    }
    Ok(sheet)
}

/// Ten kinds of eight parts, 8¹⁰ = 1 073 741 824 combinations, and requirements that bind three kinds at most.
pub fn ten_kinds_of_eight_parts() -> Result<(PriceList, Vec<Requirement>)> {
    let mut random = Random::of("ten kinds");
    let mut list = PriceList::default();
    for (kind, path, first, step, unit) in KINDS {
        for at in 0..8 {
            list.parts.push(Candidate {
                part: format!("{kind} {at}"),
                kind: kind.to_owned(),
                cost: (50 + random.below(900)) as f64,
                mass: Mass::of::<kg>((1 + random.below(40)) as f64),
                lines: vec![(path.to_owned(), format!("{}{unit}", first + step * f64::from(at)))],
            });
        }
    }
    Ok((list, REQUIREMENTS.iter().map(|text| Requirement::parse(text)).collect::<Result<_>>()?))
}

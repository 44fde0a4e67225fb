#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::units::{Length, Mass, MomentOfInertia, Ratio};
use crate::{Error, Result, cannot, valid};
use std::collections::{HashMap, HashSet};

/// A vehicle as a list of parts: its mass, its centre of gravity, its moments of inertia, and the effect of another part.
///
/// # Formula
/// `m = sum m_i`, `x = sum m_i x_i / m` and so on; about the centre of gravity, roll `I_x = sum (J_xi + m_i ((y_i - y)^2 + (z_i - z)^2))`, pitch
/// `I_y = sum (J_yi + m_i ((z_i - z)^2 + (x_i - x)^2))`, yaw `I_z = sum (J_zi + m_i ((x_i - x)^2 + (y_i - y)^2))`
///
/// # Fields
/// - `parts` — the parts of the vehicle, each with `name`, `mass` and the place `x`, `y`, `z` of its own centre of gravity; if known, its own inertias about axes through that point: `roll_inertia`, `pitch_inertia`, `yaw_inertia`
/// - `instead` — parts that replace those of the same name; a part without mass removes one, a name that is not in the list adds one
///
/// # Valid for
/// Axes as ISO 8855 for all parts, from one origin: x forward, y left, z up. A part without inertias of its own counts as a point. Its inertia is then too low by its own
/// share, which for a body shell is most of it. Products of inertia are left out, so the axes are those of the vehicle, not its principal axes.
///
/// # Source
/// Definition of centre of gravity and moment of inertia, parallel axis theorem; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PartsList {
    /// Parts of the vehicle.
    pub parts: Vec<MassPart>,
    /// Parts that replace those of the same name.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub instead: Option<Vec<MassPart>>,
}

/// A part, with its mass and place.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `name`, `mass`, `x`, `y`, `z` and, if known, inertias")
)]
pub struct MassPart {
    /// Name of the part.
    pub name: String,
    /// Mass of the part.
    pub mass: Value<Mass>,
    /// Centre of gravity, forward of the origin.
    pub x: Value<Length>,
    /// Centre of gravity, left of the origin.
    pub y: Value<Length>,
    /// Centre of gravity, above the origin.
    pub z: Value<Length>,
    /// Own inertia about the longitudinal axis.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub roll_inertia: Option<Value<MomentOfInertia>>,
    /// Own inertia about the lateral axis.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pitch_inertia: Option<Value<MomentOfInertia>>,
    /// Own inertia about the vertical axis.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub yaw_inertia: Option<Value<MomentOfInertia>>,
}

record! {
    /// All parts together, or the change of them by a swap.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct MassTotal {
        /// Mass of all parts.
        pub mass: Mass,
        /// Centre of gravity, forward.
        pub x: Length,
        /// Centre of gravity, left.
        pub y: Length,
        /// Centre of gravity, up.
        pub z: Length,
        /// Inertia about the longitudinal axis through the centre of gravity.
        pub roll_inertia: MomentOfInertia,
        /// Inertia about the lateral axis through the centre of gravity.
        pub pitch_inertia: MomentOfInertia,
        /// Inertia about the vertical axis through the centre of gravity.
        pub yaw_inertia: MomentOfInertia,
    }
}

impl crate::base::Sealed for PartsList {}
impl Model for PartsList {
    fn check(&self) -> Result<()> {
        let mut known = HashMap::<&str, usize>::new();
        for part in &self.parts {
            *known.entry(&part.name).or_default() += 1;
        }
        for (place, part) in self.parts.iter().enumerate() {
            part.check().map_err(|error| error.within(&format!("parts[{place}]")))?;
        }
        let mut before = HashSet::new();
        for (place, part) in self.swaps().iter().enumerate() {
            let refused = |message| Error::document(format!("instead[{place}]"), message);
            part.check().map_err(|error| error.within(&format!("instead[{place}]")))?;
            if !before.insert(&part.name) {
                return Err(refused(format!(
                    "name: {} stands twice in instead; name each part once",
                    part.name
                )));
            }
            let meant = known.get(part.name.as_str()).copied().unwrap_or(0);
            if meant > 1 {
                return Err(refused(format!(
                    "name: {} stands {meant} times in parts, so it is not clear which one is meant; give each its own name",
                    part.name
                )));
            }
        }
        total(&self.parts.iter().collect::<Vec<_>>(), "parts").map(drop)
    }
}

impl MassPart {
    fn check(&self) -> Result<()> {
        let (mass, x, y, z) = (self.mass.quantity, self.x.quantity, self.y.quantity, self.z.quantity);
        let own = |inertia: &Option<Value<MomentOfInertia>>| {
            inertia.as_ref().map_or(MomentOfInertia::from_si(0.0), |inertia| inertia.quantity)
        };
        let (roll_inertia, pitch_inertia, yaw_inertia) =
            (own(&self.roll_inertia), own(&self.pitch_inertia), own(&self.yaw_inertia));
        valid! {
            mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; plausibility limit: no part weighs 1000 t";
            x: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle is 1 km long";
            y: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle is 1 km wide";
            z: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle is 1 km high";
            roll_inertia: 0 <= .. <= 1e12 ; "definition: an inertia is not negative";
            pitch_inertia: 0 <= .. <= 1e12 ; "definition: an inertia is not negative";
            yaw_inertia: 0 <= .. <= 1e12 ; "definition: an inertia is not negative";
        }
        Ok(())
    }

    /// Mass, place and own inertias, in coherent SI.
    fn in_numbers(&self) -> (f64, [f64; 3], [f64; 3]) {
        let own = |inertia: &Option<Value<MomentOfInertia>>| {
            inertia.as_ref().map_or(0.0, |inertia| inertia.quantity.si())
        };
        (
            self.mass.quantity.si(),
            [&self.x, &self.y, &self.z].map(|place| place.quantity.si()),
            [&self.roll_inertia, &self.pitch_inertia, &self.yaw_inertia].map(own),
        )
    }
}

record! {
    /// A part as a share of the whole.
    struct Share {
        mass: Mass,
        share: Ratio,
        x: Length,
        y: Length,
        z: Length,
        roll_inertia: MomentOfInertia,
        pitch_inertia: MomentOfInertia,
        yaw_inertia: MomentOfInertia,
    }
}

impl PartsList {
    /// All parts together, as the list stands.
    ///
    /// # Returns
    /// - `mass` — total mass of all parts
    /// - `x` — centre of gravity, forward of the origin
    /// - `y` — centre of gravity, left of the origin
    /// - `z` — centre of gravity, above the origin
    /// - `roll_inertia` — about the longitudinal axis through the centre of gravity
    /// - `pitch_inertia` — about the lateral axis
    /// - `yaw_inertia` — about the vertical axis
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, mass::PartsList, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let roadster = PartsList::from_text(r#"
    ///     parts = [
    ///         { name = "engine", mass = "120 kg", x = "-0.6 m", y = "0 m", z = "0.45 m" },
    ///         { name = "body", mass = "480 kg", x = "-1.2 m", y = "0 m", z = "0.5 m" },
    ///     ]
    ///     instead = [{ name = "engine", mass = "150 kg", x = "-0.6 m", y = "0 m", z = "0.47 m" }]
    /// "#)?;
    /// assert_eq!(format!("{:.0} mm", roadster.total()?.x.in_::<mm>()), "-1080 mm");
    /// assert_eq!(format!("{:.0} mm", roadster.change()?.x.in_::<mm>()), "23 mm");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn total(&self) -> Result<MassTotal> {
        self.check()?;
        total(&self.parts.iter().collect::<Vec<_>>(), "parts")
    }

    /// All parts together after every swap.
    ///
    /// # Returns
    /// - `mass` — total mass of all parts
    /// - `x` — centre of gravity, forward of the origin
    /// - `y` — centre of gravity, left of the origin
    /// - `z` — centre of gravity, above the origin
    /// - `roll_inertia` — about the longitudinal axis through the new centre of gravity
    /// - `pitch_inertia` — about the lateral axis
    /// - `yaw_inertia` — about the vertical axis
    pub fn swapped(&self) -> Result<MassTotal> {
        self.check()?;
        self.with(self.swaps())
    }

    /// Change of the whole by all swaps together.
    ///
    /// # Returns
    /// - `mass` — gained
    /// - `x` — movement of the centre of gravity forward
    /// - `y` — movement to the left
    /// - `z` — movement up
    /// - `roll_inertia` — gained
    /// - `pitch_inertia` — gained
    /// - `yaw_inertia` — gained
    pub fn change(&self) -> Result<MassTotal> {
        Ok(self.swapped()?.less(&self.total()?))
    }

    /// Each part and its share of the whole.
    ///
    /// # Returns
    /// One row for each part: `part`, `mass`, `share` of the mass, `x`, `y`, `z`, and its share of `roll_inertia`, `pitch_inertia`, `yaw_inertia` about the centre of gravity of the whole.
    pub fn part_table(&self) -> Result<Table> {
        let whole = self.total()?;
        let centre = [whole.x.si(), whole.y.si(), whole.z.si()];
        let mut rows = Filling::over(["part"], &[self.parts.len()])?;
        for part in &self.parts {
            let (mass, [x, y, z], _) = part.in_numbers();
            let [roll, pitch, yaw] = inertia_about(part, centre);
            let (length, inertia) = (Length::from_si, MomentOfInertia::from_si);
            let on = Share {
                mass: Mass::from_si(mass),
                share: Ratio::from_si(mass / whole.mass.si()),
                x: length(x),
                y: length(y),
                z: length(z),
                roll_inertia: inertia(roll),
                pitch_inertia: inertia(pitch),
                yaw_inertia: inertia(yaw),
            };
            rows.push((part.name.as_str(),), Ok(on))?;
        }
        rows.finish()
    }

    /// Change of the whole by each swap alone.
    ///
    /// # Returns
    /// One row for each part of `instead`: `part`, the gain of `mass`, the movement of the centre of gravity `x`, `y`, `z`, and the gain of `roll_inertia`, `pitch_inertia`, `yaw_inertia`.
    pub fn swap_table(&self) -> Result<Table> {
        let before = self.total()?;
        let mut rows = Filling::over(["part"], &[self.swaps().len()])?;
        for part in self.swaps() {
            let on = self.with(core::slice::from_ref(part)).map(|after| after.less(&before));
            rows.push((part.name.as_str(),), on)?;
        }
        rows.finish()
    }

    fn swaps(&self) -> &[MassPart] {
        self.instead.as_deref().unwrap_or_default()
    }

    /// The whole with these parts in place of those of the same name.
    fn with(&self, instead: &[MassPart]) -> Result<MassTotal> {
        let kept = self.parts.iter().filter(|part| !instead.iter().any(|other| other.name == part.name));
        total(&kept.chain(instead).collect::<Vec<_>>(), "instead")
    }
}

impl MassTotal {
    fn less(&self, other: &MassTotal) -> MassTotal {
        MassTotal {
            mass: self.mass - other.mass,
            x: self.x - other.x,
            y: self.y - other.y,
            z: self.z - other.z,
            roll_inertia: self.roll_inertia - other.roll_inertia,
            pitch_inertia: self.pitch_inertia - other.pitch_inertia,
            yaw_inertia: self.yaw_inertia - other.yaw_inertia,
        }
    }
}

/// Share of a part in the inertias about axes through a centre.
fn inertia_about(part: &MassPart, centre: [f64; 3]) -> [f64; 3] {
    let (mass, place, own) = part.in_numbers();
    let [x, y, z] = [0, 1, 2].map(|axis| (place[axis] - centre[axis]) * (place[axis] - centre[axis]));
    [own[0] + mass * (y + z), own[1] + mass * (z + x), own[2] + mass * (x + y)]
}

fn total(parts: &[&MassPart], list: &str) -> Result<MassTotal> {
    let (mut mass, mut moments) = (0.0, [0.0; 3]);
    for part in parts {
        let (of_part, place, _) = part.in_numbers();
        mass += of_part;
        moments = [0, 1, 2].map(|axis| moments[axis] + of_part * place[axis]);
    }
    if mass < 1e-6 {
        let mass = said(Mass::from_si(mass));
        return Err(cannot!(
            "{list}: the parts weigh {mass} together; a list without mass has no centre of gravity"
        ));
    }
    let centre = moments.map(|moment| moment / mass);
    let inertias = parts.iter().map(|part| inertia_about(part, centre));
    let [roll, pitch, yaw] = inertias.fold([0.0; 3], |sum, on| [0, 1, 2].map(|axis| sum[axis] + on[axis]));
    let [x, y, z] = centre.map(Length::from_si);
    Ok(MassTotal {
        mass: Mass::from_si(mass),
        x,
        y,
        z,
        roll_inertia: MomentOfInertia::from_si(roll),
        pitch_inertia: MomentOfInertia::from_si(pitch),
        yaw_inertia: MomentOfInertia::from_si(yaw),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn part(name: &str, mass: f64, place: [f64; 3]) -> MassPart {
        let [x, y, z] = place.map(|place| Value::new(Length::from_si(place)));
        MassPart {
            name: name.to_owned(),
            mass: Value::new(Mass::from_si(mass)),
            x,
            y,
            z,
            roll_inertia: None,
            pitch_inertia: None,
            yaw_inertia: None,
        }
    }

    #[test]
    fn two_equal_points_turn_about_their_middle() {
        let list = PartsList {
            parts: vec![part("a", 50.0, [1.0, 0.0, 0.0]), part("b", 50.0, [-1.0, 0.0, 0.4])],
            instead: None,
        };
        let on = list.total().unwrap();
        assert_relative_eq!(on.z.si(), 0.2, max_relative = 1e-12);
        for (found, by_hand) in [(on.roll_inertia, 4.0), (on.pitch_inertia, 104.0), (on.yaw_inertia, 100.0)] {
            assert_relative_eq!(found.si(), by_hand, max_relative = 1e-12);
        }
    }

    #[test]
    fn a_swap_takes_away_puts_in_and_adds() {
        let parts = vec![part("engine", 100.0, [0.0; 3]), part("rest", 300.0, [-1.0, 0.0, 0.0])];
        let swap = |instead: MassPart| {
            PartsList { parts: parts.clone(), instead: Some(vec![instead]) }.change().unwrap()
        };
        let away = swap(part("engine", 0.0, [0.0; 3]));
        assert_eq!((away.mass.si(), away.x.si()), (-100.0, -0.25));
        let added = swap(part("ballast", 400.0, [-1.75, 0.0, 0.0]));
        assert_eq!((added.mass.si(), added.x.si()), (400.0, -0.5));
        let same = swap(parts[0].clone());
        assert_eq!((same.mass.si(), same.x.si(), same.yaw_inertia.si()), (0.0, 0.0, 0.0));
    }

    #[test]
    fn what_cannot_be_is_named() {
        let refused = |parts: Vec<MassPart>, instead: Vec<MassPart>| {
            PartsList { parts, instead: Some(instead) }.check().unwrap_err().to_string()
        };
        let one = || part("a", 1.0, [0.0; 3]);
        assert!(refused(vec![], vec![]).starts_with("parts: the parts weigh 0 kg"));
        assert!(refused(vec![one(), part("b", -1.0, [0.0; 3])], vec![]).starts_with("parts[1]: mass = -1"));
        assert!(refused(vec![one()], vec![one(), one()]).starts_with("instead[1]: name: a stands twice"));
        assert!(refused(vec![one(), one()], vec![one()]).starts_with("instead[0]: name: a stands 2 times"));
        let nothing = PartsList { parts: vec![one()], instead: Some(vec![part("a", 0.0, [0.0; 3])]) };
        assert!(nothing.change().unwrap_err().to_string().starts_with("instead: the parts weigh 0 kg"));
        assert_eq!(nothing.swap_table().unwrap().refused().len(), 1);
    }

    #[test]
    fn the_parts_of_a_table_add_up() {
        let parts = vec![
            part("a", 70.0, [0.2, 0.1, 0.3]),
            part("b", 30.0, [-1.2, -0.4, 0.6]),
            part("c", 20.0, [-2.0, 0.3, 0.1]),
        ];
        let list = PartsList { parts, instead: None };
        let (on, table) = (list.total().unwrap(), list.part_table().unwrap());
        for (name, whole) in [
            ("share", 1.0),
            ("mass", on.mass.si()),
            ("roll_inertia", on.roll_inertia.si()),
            ("yaw_inertia", on.yaw_inertia.si()),
        ] {
            assert_relative_eq!(
                table.numbers(name).unwrap().iter().sum::<f64>(),
                whole,
                max_relative = 1e-12
            );
        }
    }

    proptest! {
        #[test]
        fn a_moved_origin_moves_the_centre_and_no_inertia(dx in -5.0f64..5.0, dz in -5.0f64..5.0) {
            let at = |dx: f64, dz: f64| {
                let parts = vec![part("a", 70.0, [0.2 + dx, 0.1, 0.3 + dz]), part("b", 30.0, [-1.2 + dx, -0.4, 0.6 + dz])];
                PartsList { parts, instead: None }.total().unwrap()
            };
            let (here, there) = (at(0.0, 0.0), at(dx, dz));
            prop_assert!((there.x.si() - here.x.si() - dx).abs() < 1e-12);
            prop_assert!((there.pitch_inertia.si() - here.pitch_inertia.si()).abs() < 1e-10);
        }
    }
}

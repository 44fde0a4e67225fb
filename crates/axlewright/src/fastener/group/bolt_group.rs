use super::sharing::{Load, Pattern, Share};
use crate::base::document::{Model, Value};
use crate::base::numeric::hypot;
use crate::base::table::{Filling, Table, record};
use crate::units::{Force, Length, Torque};
use crate::{Error, Result, cannot, valid};

/// Equal bolts in a plane that hold a stiff plate: shear and tension of each under a force and a moment.
///
/// # Formula
/// across: `V_i = F / n + M_z x r_i / sum r^2` about the centroid; along: `T_i = F_z / n + a x_i + b y_i` about the centroid, with `sum T y = M_x` and `sum T x = -M_y`;
/// with an edge, the plate tips about it: `T_i = M_e h_i / sum h^2 + M_a s_i / sum s^2`
///
/// # Fields
/// - `bolts` — equal bolts, each with `name` and its place `x`, `y` in the plane of the faces
/// - `force_x` — force on the plate, along x
/// - `force_y` — force on the plate, along y
/// - `force_z` — force on the plate, along z: positive if it pulls the plate off
/// - `at_x` — place where the force acts, along x
/// - `at_y` — place where the force acts, along y
/// - `at_z` — height over the faces where the force acts
/// - `moment_x` — couple on the plate about x, beside that of the force; none if it is left out
/// - `moment_y` — couple on the plate about y; none if it is left out
/// - `moment_z` — couple on the plate about z; none if it is left out
/// - `edge` — line about which the plate tips, through two points `x_1`, `y_1` and `x_2`, `y_2`: the edge on which it presses, with all bolts on one side `h` of it; if it is left out, the plate turns about the centroid
///
/// # Valid for
/// A stiff plate on equal bolts, elastic. Axes are those of a right hand, z out of the faces on the side of the plate. About the centroid, bolts on the pressed side have a negative tension, as if no face pressed there: the pull of the others
/// is then on the safe side where the plate presses beyond the bolts, and on the unsafe side where it presses nearer. The edge takes the pressure at its place: write it where the plate surely presses, not beyond.
/// A moment that presses the plate on gives no tension about an edge. Prying by a soft plate, friction and preload are not counted: a preloaded bolt feels a tension by its load factor only.
/// A moment that bolts in one row, or a single bolt, cannot hold is refused.
///
/// # Source
/// Shigley's Mechanical Engineering Design, bolt groups in eccentric shear, and statics of equal springs (from memory)
///
/// # Caution
/// The bolt that fails first leaves its load to the next one. Judge the worst bolt with the model of a joint. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BoltGroup {
    /// Equal bolts.
    pub bolts: Vec<PlacedBolt>,
    /// Force on the plate along x.
    pub force_x: Value<Force>,
    /// Force on the plate along y.
    pub force_y: Value<Force>,
    /// Force that pulls the plate off.
    pub force_z: Value<Force>,
    /// Place of the force along x.
    pub at_x: Value<Length>,
    /// Place of the force along y.
    pub at_y: Value<Length>,
    /// Height of the force over the faces.
    pub at_z: Value<Length>,
    /// Couple about x.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub moment_x: Option<Value<Torque>>,
    /// Couple about y.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub moment_y: Option<Value<Torque>>,
    /// Couple about z.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub moment_z: Option<Value<Torque>>,
    /// Line about which the plate tips.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub edge: Option<TippingEdge>,
}

/// A bolt with its place.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `name`, `x` and `y`"))]
pub struct PlacedBolt {
    /// Name of the bolt.
    pub name: String,
    /// Place along x.
    pub x: Value<Length>,
    /// Place along y.
    pub y: Value<Length>,
}

/// Line on which a tipping plate presses, through two points.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `x_1`, `y_1`, `x_2` and `y_2`"))]
pub struct TippingEdge {
    /// First point along x.
    pub x_1: Value<Length>,
    /// First point along y.
    pub y_1: Value<Length>,
    /// Second point along x.
    pub x_2: Value<Length>,
    /// Second point along y.
    pub y_2: Value<Length>,
}

record! {
    /// The most loaded bolts of a group.
    #[derive(Debug, Clone, PartialEq)]
    pub struct WorstBolts {
        /// Bolt with the peak shear; the first of equal ones.
        pub shear_bolt: String,
        /// Its shear.
        pub peak_shear: Force,
        /// Bolt with the peak tension; the first of equal ones.
        pub tension_bolt: String,
        /// Its tension; negative if all bolts are pressed.
        pub peak_tension: Force,
        /// Line about which the tension was taken: `centroid` or `edge`.
        pub about: String,
    }
}

record! {
    /// Forces on a bolt.
    struct OnBolt {
        shear_x: Force,
        shear_y: Force,
        shear: Force,
        tension: Force,
    }
}

type Point = (f64, f64);

/// Rounding by which a bolt may seem to lie beyond the edge (m).
const ON_EDGE: f64 = 1e-9;

impl crate::base::Sealed for BoltGroup {}
impl Model for BoltGroup {
    fn check(&self) -> Result<()> {
        if !(1..=200).contains(&self.bolts.len()) {
            return Err(Error::Length {
                argument: "bolts",
                length: self.bolts.len(),
                wanted: "from one to two hundred bolts are wanted",
            });
        }
        for (place, bolt) in self.bolts.iter().enumerate() {
            bolt.check().map_err(|error| error.within(&format!("bolts[{place}] ({})", bolt.name)))?;
        }
        let none = Torque::from_si(0.0);
        let couple = |of: &Option<Value<Torque>>| of.as_ref().map_or(none, |on| on.quantity);
        let (force_x, force_y, force_z) =
            (self.force_x.quantity, self.force_y.quantity, self.force_z.quantity);
        let (at_x, at_y, at_z) = (self.at_x.quantity, self.at_y.quantity, self.at_z.quantity);
        let (moment_x, moment_y, moment_z) =
            (couple(&self.moment_x), couple(&self.moment_y), couple(&self.moment_z));
        valid! {
            force_x: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN";
            force_y: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN";
            force_z: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN";
            at_x: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            at_y: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            at_z: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            moment_x: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN·m";
            moment_y: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN·m";
            moment_z: (-1e9) <= .. <= 1e9 ; "plausibility limit: at most 1 GN·m";
        }
        if let Some(edge) = &self.edge {
            edge.check().map_err(|error| error.within("edge"))?;
        }
        self.shares().map(drop)
    }
}

impl PlacedBolt {
    fn check(&self) -> Result<()> {
        let (x, y) = (self.x.quantity, self.y.quantity);
        valid! {
            x: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            y: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
        }
        Ok(())
    }
}

impl TippingEdge {
    fn check(&self) -> Result<()> {
        let (x_1, y_1, x_2, y_2) =
            (self.x_1.quantity, self.y_1.quantity, self.x_2.quantity, self.y_2.quantity);
        valid! {
            x_1: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            y_1: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            x_2: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
            y_2: (-100) <= .. <= 100 ; "plausibility limit: within 100 m";
        }
        if hypot((x_2 - x_1).si(), (y_2 - y_1).si()) < 1e-6 {
            return Err(cannot!(x_2; "is the place of the first point: an edge goes through two points"));
        }
        Ok(())
    }

    /// First point, and the direction to the second one.
    fn line(&self) -> (Point, Point) {
        let first = (self.x_1.quantity.si(), self.y_1.quantity.si());
        let (x, y) = (self.x_2.quantity.si() - first.0, self.y_2.quantity.si() - first.1);
        let length = hypot(x, y);
        (first, (x / length, y / length))
    }
}

const NO_SHEAR: &str = "a single bolt cannot hold the moment about z: add bolts";
const NO_TENSION: &str = "bolts in a row cannot hold the moment about their row: add bolts beside it, or write the edge on which the plate presses";
const NO_TILT: &str =
    "bolts in a row across the edge cannot hold the moment across it: add bolts beside the row";
const THROUGH: &str = "bolts lie on both sides of it: write the edge on which the plate presses";

impl BoltGroup {
    /// The most loaded bolts.
    ///
    /// # Returns
    /// See the fields of [`WorstBolts`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, fastener::*, units::*};
    /// let bolt = |name: &str, x: &str, y: &str| -> axlewright::Result<PlacedBolt> {
    ///     Ok(PlacedBolt { name: name.to_owned(), x: Value::parse(x)?, y: Value::parse(y)? })
    /// };
    /// let group = BoltGroup {
    ///     bolts: vec![bolt("low left", "-40 mm", "0 mm")?, bolt("low right", "40 mm", "0 mm")?, bolt("high left", "-40 mm", "60 mm")?, bolt("high right", "40 mm", "60 mm")?],
    ///     force_x: Value::parse("0 N")?, force_y: Value::parse("-8 kN")?, force_z: Value::parse("0 N")?,
    ///     at_x: Value::parse("0 mm")?, at_y: Value::parse("30 mm")?, at_z: Value::parse("120 mm")?,
    ///     moment_x: None, moment_y: None, moment_z: None, edge: None,
    /// }.checked()?;
    /// let on = group.worst()?;
    /// assert_eq!(format!("{:.1} kN, {:.1} kN, {}", on.peak_shear.in_::<kN>(), on.peak_tension.in_::<kN>(), on.tension_bolt), "2.0 kN, 8.0 kN, high left");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn worst(&self) -> Result<WorstBolts> {
        self.check()?;
        let shares = self.shares()?;
        let mut worst = WorstBolts {
            shear_bolt: String::new(),
            peak_shear: Force::from_si(f64::NEG_INFINITY),
            tension_bolt: String::new(),
            peak_tension: Force::from_si(f64::NEG_INFINITY),
            about: if self.edge.is_some() { "edge" } else { "centroid" }.to_owned(),
        };
        // A later bolt counts only if it has more than rounding gives it.
        let more = |found: f64, known: f64, most: f64| found - known > ROUNDING * most;
        let most =
            |of: fn(&Share) -> f64| shares.iter().fold(0.0_f64, |most, share| most.max(of(share).abs()));
        let (shears, tensions) = (most(Share::shear), most(|share| share.tension));
        for (bolt, share) in self.bolts.iter().zip(&shares) {
            if more(share.shear(), worst.peak_shear.si(), shears) || worst.shear_bolt.is_empty() {
                worst.shear_bolt.clone_from(&bolt.name);
                worst.peak_shear = Force::from_si(share.shear());
            }
            if more(share.tension, worst.peak_tension.si(), tensions) || worst.tension_bolt.is_empty() {
                worst.tension_bolt.clone_from(&bolt.name);
                worst.peak_tension = Force::from_si(share.tension);
            }
        }
        Ok(worst)
    }

    /// Shear and tension of every bolt.
    ///
    /// # Returns
    /// One row for each bolt, in order: `bolt`, `shear_x`, `shear_y`, `shear`, and `tension`, which is negative if the bolt is pressed.
    pub fn bolts_table(&self) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["bolt"], &[self.bolts.len()])?;
        for (bolt, share) in self.bolts.iter().zip(self.shares()?) {
            let force = Force::from_si;
            let on = OnBolt {
                shear_x: force(share.x),
                shear_y: force(share.y),
                shear: force(share.shear()),
                tension: force(share.tension),
            };
            rows.push((bolt.name.as_str(),), Ok(on))?;
        }
        rows.finish()
    }

    /// Load about the centroid of the bolts.
    fn load(&self, centroid: Point) -> Load {
        let force = [&self.force_x, &self.force_y, &self.force_z].map(|on| on.quantity.si());
        let [m, n, o] = [&self.moment_x, &self.moment_y, &self.moment_z]
            .map(|on| on.as_ref().map_or(0.0, |on| on.quantity.si()));
        let (height, place) = (self.at_z.quantity.si(), (self.at_x.quantity.si(), self.at_y.quantity.si()));
        let [f, g, _] = force;
        Load { force, moment: [m - height * g, n + height * f, o] }.about(place, centroid)
    }

    /// Force of every bolt.
    fn shares(&self) -> Result<Vec<Share>> {
        let places: Vec<Point> =
            self.bolts.iter().map(|bolt| (bolt.x.quantity.si(), bolt.y.quantity.si())).collect();
        let pattern = Pattern(&places);
        let centroid = pattern.centroid();
        let load = self.load(centroid);
        let shears = pattern.shears(&load).ok_or_else(|| Error::document("bolts", NO_SHEAR))?;
        let tensions = match &self.edge {
            None => pattern.tensions(&load).ok_or_else(|| Error::document("bolts", NO_TENSION))?,
            Some(edge) => {
                let (first, along) = edge.line();
                let left = (-along.1, along.0);
                let from = |place: &Point| (place.0 - first.0, place.1 - first.1);
                let height = |place: &Point| from(place).0 * left.0 + from(place).1 * left.1;
                let side = if height(&centroid) < 0.0 { -1.0 } else { 1.0 };
                if places.iter().any(|place| side * height(place) < -ON_EDGE) {
                    return Err(Error::document("edge", THROUGH));
                }
                let forward = from(&centroid).0 * along.0 + from(&centroid).1 * along.1;
                let foot = (first.0 + forward * along.0, first.1 + forward * along.1);
                let away = (side * left.0, side * left.1);
                pattern
                    .tipping(&load.about(centroid, foot), foot, along, away)
                    .ok_or_else(|| Error::document("edge", NO_TILT))?
            }
        };
        Ok(shears.into_iter().zip(tensions).map(|((x, y), tension)| Share { x, y, tension }).collect())
    }
}

/// Rounding over the largest force, by which equal bolts may seem to differ.
const ROUNDING: f64 = 1e-12;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{N, Nm, mm};
    use proptest::prelude::*;

    fn length(value: f64) -> Value<Length> {
        Value::new(Length::of::<mm>(value))
    }

    fn group(places: &[(f64, f64)], force: [f64; 3], at: [f64; 3]) -> BoltGroup {
        let [force_x, force_y, force_z] = force.map(|value| Value::new(Force::of::<N>(value)));
        let [at_x, at_y, at_z] = at.map(length);
        let named = |(place, (x, y)): (usize, &(f64, f64))| PlacedBolt {
            name: place.to_string(),
            x: length(*x),
            y: length(*y),
        };
        let bolts = places.iter().enumerate().map(named).collect();
        let (moment_x, moment_y, moment_z, edge) = (None, None, None, None);
        BoltGroup { bolts, force_x, force_y, force_z, at_x, at_y, at_z, moment_x, moment_y, moment_z, edge }
    }

    fn edge(x_1: f64, y_1: f64, x_2: f64, y_2: f64) -> Option<TippingEdge> {
        Some(TippingEdge { x_1: length(x_1), y_1: length(y_1), x_2: length(x_2), y_2: length(y_2) })
    }

    const SQUARE: [(f64, f64); 4] = [(-50.0, -50.0), (50.0, -50.0), (50.0, 50.0), (-50.0, 50.0)];

    #[test]
    fn bolts_that_cannot_hold_a_moment_are_refused() {
        let row = [(-50.0, 0.0), (0.0, 0.0), (50.0, 0.0)];
        for (says, one) in [
            ("single bolt", group(&[(0.0, 0.0)], [0.0, 100.0, 0.0], [10.0, 0.0, 0.0])),
            ("in a row", group(&row, [0.0, 100.0, 0.0], [0.0, 0.0, 10.0])),
            (
                "both sides",
                BoltGroup { edge: edge(-60.0, 0.0, 60.0, 0.0), ..group(&SQUARE, [0.0; 3], [0.0; 3]) },
            ),
            (
                "first point",
                BoltGroup { edge: edge(1.0, 0.0, 1.0, 0.0), ..group(&SQUARE, [0.0; 3], [0.0; 3]) },
            ),
            ("from one to two hundred", group(&[], [0.0; 3], [0.0; 3])),
        ] {
            let message = one.check().unwrap_err().to_string();
            assert!(message.contains(says), "{says}: {message}");
        }
        // A row holds a moment across it, and with an edge beside it any moment that opens.
        assert!(group(&row, [100.0, 0.0, 50.0], [0.0, 0.0, 10.0]).check().is_ok());
        let beside = BoltGroup {
            edge: edge(-60.0, -20.0, 60.0, -20.0),
            ..group(&row, [0.0, -100.0, 0.0], [0.0, 0.0, 10.0])
        };
        let on = beside.worst().unwrap();
        assert!((on.peak_tension.in_::<N>() - 100.0 * 10.0 / 60.0).abs() < 1e-9, "{on:?}");
        // The other way, the plate is pressed on.
        let pressed = BoltGroup { force_y: Value::new(Force::of::<N>(100.0)), ..beside };
        assert_eq!(pressed.worst().unwrap().peak_tension.si(), 0.0);
    }

    #[test]
    fn a_turned_edge_gives_the_same() {
        let one = group(&SQUARE, [300.0, -200.0, 500.0], [20.0, 10.0, 80.0]);
        let along = BoltGroup { edge: edge(-60.0, -60.0, 60.0, -60.0), ..one.clone() };
        let back = BoltGroup { edge: edge(60.0, -60.0, -60.0, -60.0), ..one };
        let tensions = |of: &BoltGroup| of.bolts_table().unwrap().numbers("tension").unwrap().to_vec();
        for (a, b) in tensions(&along).iter().zip(tensions(&back)) {
            assert!((a - b).abs() < 1e-9, "{a} {b}");
        }
    }

    proptest! {
        #[test]
        fn the_bolts_balance_the_load(
            places in prop::collection::vec((-200.0..200.0, -200.0..200.0), 3..9),
            force in prop::array::uniform3(-1e4..1e4), at in prop::array::uniform3(-300.0..300.0),
            couple in prop::array::uniform3(-500.0..500.0),
        ) {
            let [moment_x, moment_y, moment_z] = couple.map(|value| Some(Value::new(Torque::of::<Nm>(value))));
            let one = BoltGroup { moment_x, moment_y, moment_z, ..group(&places, force, at) };
            prop_assume!(one.check().is_ok());
            let shares = one.shares().unwrap();
            let mut left = [force[0], force[1], force[2], couple[0], couple[1], couple[2]];
            let mut add = |sign: f64, f: [f64; 3], r: [f64; 3]| {
                for (place, of) in f.iter().enumerate() {
                    if sign < 0.0 { left[place] -= of }
                }
                left[3] += sign * (r[1] * f[2] - r[2] * f[1]);
                left[4] += sign * (r[2] * f[0] - r[0] * f[2]);
                left[5] += sign * (r[0] * f[1] - r[1] * f[0]);
            };
            add(1.0, force, at.map(|value| value / 1000.0));
            for (share, (x, y)) in shares.iter().zip(&places) {
                add(-1.0, [share.x, share.y, share.tension], [x / 1000.0, y / 1000.0, 0.0]);
            }
            prop_assert!(left.iter().all(|of| of.abs() < 1e-5), "{left:?}");
        }
    }
}

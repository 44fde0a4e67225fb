use super::fillet_throat;
use crate::base::document::{Model, Value};
use crate::base::table::record;
use crate::units::{Angle, Area, Force, Length, Ratio, Stress};
use crate::{Error, Result, cannot, valid};

/// A group of fillet welds in one plane under a force at any point: the peak stress on the throat and in the parent metal.
///
/// # Formula
/// `A = sum a L`; about the centroid `J = I_x + I_y`; at `(x, y)` `s_x = F_x / A - T y / J`, `s_y = F_y / A + T x / J`, `s_z = F_z / A + p y + q x`, where `p` and `q` balance the moments
/// out of the plane; peak `s = sqrt(s_x^2 + s_y^2 + s_z^2)`; margins `0.6 R_m / s`
///
/// # Fields
/// - `runs` — runs of weld, each straight: `start` and `end`, each with `x` and `y` in the plane; its `leg`; the `face_angle` between the faces, 90 deg if it is left out; the `welded_share` of its length, if it is intermittent
/// - `force_x` — `F_x`, force on the welded part along x
/// - `force_y` — `F_y`, force on the welded part along y
/// - `force_z` — `F_z`, force on the welded part out of the plane; pulling is positive
/// - `at_x` — place at which the force acts, along x
/// - `at_y` — place at which the force acts, along y
/// - `at_z` — height above the plane at which the force acts
/// - `filler_ultimate` — `R_m` of the weld metal, least value of its class: 480 MPa for ER70S-6 and E70 (from memory)
/// - `parent_ultimate` — `R_m` of the weaker parent metal beside the weld, as it is after welding
/// - `plate_thickness` — thickness of the thinner part at the toe of the weld
/// - `welded_from` — `one_side` or `both_sides` of that part; if it is left out, both sides count, so that it carries the load of two runs
///
/// # Valid for
/// Rigid parts on welds that deflect alike per length. The part does not lean on the other one: all compression goes through the weld. The stress on the throat is its
/// resultant, taken as shear, whatever its direction: transverse fillets hold up to half as much again.
///
/// # Source
/// Weld treated as a line with elastic (vector) sum of stresses: O. W. Blodgett, *Design of Welded Structures* (1966), section 7.4, and J. E. Shigley, *Mechanical Engineering Design*, welded joints in torsion and bending (from memory);
/// 0.60 of the ultimate strength in shear: AISC 360-16, J2.4 and J4.2 (from memory)
///
/// # Caution
/// A frame, steering or suspension part that breaks at a weld can kill. The margins hold for sound welds of full size. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FilletGroup {
    /// Runs of weld.
    pub runs: Vec<Run>,
    /// Force on the welded part along x.
    pub force_x: Value<Force>,
    /// Force on the welded part along y.
    pub force_y: Value<Force>,
    /// Force on the welded part out of the plane.
    pub force_z: Value<Force>,
    /// Place of the force along x.
    pub at_x: Value<Length>,
    /// Place of the force along y.
    pub at_y: Value<Length>,
    /// Height of the force above the plane.
    pub at_z: Value<Length>,
    /// Ultimate strength of the weld metal.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub filler_ultimate: Option<Value<Stress>>,
    /// Ultimate strength of the weaker parent metal beside the weld.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub parent_ultimate: Option<Value<Stress>>,
    /// Thickness of the thinner part at the toe.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub plate_thickness: Option<Value<Length>>,
    /// Sides from which the thinner part is welded; both if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub welded_from: Option<Sides>,
}

/// Sides from which a part is welded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Sides {
    /// One run along it.
    OneSide,
    /// A run on each side, opposite to each other.
    BothSides,
}

/// A point in the plane of the weld.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `x` and `y`"))]
pub struct Spot {
    /// Place along x.
    pub x: Value<Length>,
    /// Place along y.
    pub y: Value<Length>,
}

/// A straight run of fillet weld.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `start`, `end`, `leg` and, if they differ, `face_angle` and `welded_share`"
    )
)]
pub struct Run {
    /// Beginning of the run.
    pub start: Spot,
    /// End of the run.
    pub end: Spot,
    /// Leg of the fillet, the smaller one.
    pub leg: Value<Length>,
    /// Angle between the faces; 90 deg if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub face_angle: Option<Value<Angle>>,
    /// Welded share of the run's length; all of it if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub welded_share: Option<Value<Ratio>>,
}

record! {
    /// Stresses in a group of fillet welds; a result that is not known is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct GroupStress {
        /// Area of all throats.
        pub throat_area: Area,
        /// Peak stress on a throat, taken as shear.
        pub throat_stress: Stress,
        /// Place of that peak along x.
        pub peak_x: Length,
        /// Place of that peak along y.
        pub peak_y: Length,
        /// Run with that peak, counted from 1.
        pub peak_run: i64,
        /// Peak shear stress of the parent metal along a leg.
        pub leg_stress: Stress,
        /// Peak shear stress of the thinner part beside a toe.
        pub toe_stress: Stress,
        /// Shear strength of the weld metal over `throat_stress`.
        pub throat_margin: Ratio,
        /// Shear strength of the parent metal over the greater of `leg_stress` and `toe_stress`.
        pub parent_margin: Ratio,
        /// Missing fields without which a margin is not known; empty if none is missing.
        pub open: String,
    }
}

/// Share of the ultimate strength that a weld and its parent metal bear in shear.
const SHEAR: f64 = 0.6;
/// Below this share of the greatest second moment, a group is one straight line.
const LINE: f64 = 1e-12;

/// A run in numbers.
struct Line {
    ends: [[f64; 2]; 2],
    /// Throat, and the share of its length that is welded.
    throat: f64,
    share: f64,
    leg: f64,
}

impl Line {
    fn length(&self) -> f64 {
        let [[x, y], [u, w]] = self.ends;
        crate::base::numeric::hypot(u - x, w - y)
    }
    fn area(&self) -> f64 {
        self.throat * self.share * self.length()
    }
    fn middle(&self) -> [f64; 2] {
        let [[x, y], [u, w]] = self.ends;
        [0.5 * (x + u), 0.5 * (y + w)]
    }
}

impl Run {
    fn check(&self) -> Result<()> {
        let (start_x, start_y) = (self.start.x.quantity, self.start.y.quantity);
        let (end_x, end_y) = (self.end.x.quantity, self.end.y.quantity);
        let (leg, face_angle) = (self.leg.quantity, self.face());
        let welded_share = self.share();
        valid! {
            start_x: (-100) <= .. <= 100 ; "plausibility limit: no weld is 100 m long";
            start_y: (-100) <= .. <= 100 ; "plausibility limit: no weld is 100 m long";
            end_x: (-100) <= .. <= 100 ; "plausibility limit: no weld is 100 m long";
            end_y: (-100) <= .. <= 100 ; "plausibility limit: no weld is 100 m long";
            welded_share: 0.01 <= .. <= 1 ; "definition: a share of the run's length";
        }
        if self.line()?.length() < 0.001 {
            return Err(Error::document("end", "the run is shorter than 1 mm: check its ends"));
        }
        if fillet_throat(leg, face_angle)?.si() == 0.0 {
            return Err(Error::document(
                "face_angle",
                "the weld does not reach into so sharp a corner: no throat is left",
            ));
        }
        Ok(())
    }

    fn face(&self) -> Angle {
        self.face_angle.as_ref().map_or(Angle::from_si(core::f64::consts::FRAC_PI_2), |on| on.quantity)
    }

    fn share(&self) -> Ratio {
        self.welded_share.as_ref().map_or(Ratio::from_si(1.0), |on| on.quantity)
    }

    fn line(&self) -> Result<Line> {
        let at = |spot: &Spot| [spot.x.quantity.si(), spot.y.quantity.si()];
        Ok(Line {
            ends: [at(&self.start), at(&self.end)],
            throat: fillet_throat(self.leg.quantity, self.face())?.si(),
            share: self.share().si(),
            leg: self.leg.quantity.si(),
        })
    }
}

impl crate::base::Sealed for FilletGroup {}
impl Model for FilletGroup {
    fn check(&self) -> Result<()> {
        if self.runs.is_empty() {
            return Err(Error::document("runs", "there is no run: write each with `start`, `end` and `leg`"));
        }
        for (place, run) in self.runs.iter().enumerate() {
            run.check().map_err(|error| error.within(&format!("runs[{place}]")))?;
        }
        let (force_x, force_y, force_z) =
            (self.force_x.quantity, self.force_y.quantity, self.force_z.quantity);
        let (at_x, at_y, at_z) = (self.at_x.quantity, self.at_y.quantity, self.at_z.quantity);
        let strength =
            |on: &Option<Value<Stress>>| on.as_ref().map_or(Stress::from_si(1e8), |on| on.quantity);
        let (filler_ultimate, parent_ultimate) =
            (strength(&self.filler_ultimate), strength(&self.parent_ultimate));
        let plate_thickness = self.plate_thickness.as_ref().map_or(Length::from_si(0.001), |on| on.quantity);
        valid! {
            force_x: (-1e8) <= .. <= 1e8 ; "plausibility limit: no weld bears 100 MN";
            force_y: (-1e8) <= .. <= 1e8 ; "plausibility limit: no weld bears 100 MN";
            force_z: (-1e8) <= .. <= 1e8 ; "plausibility limit: no weld bears 100 MN";
            at_x: (-100) <= .. <= 100 ; "plausibility limit: no bracket is 100 m long";
            at_y: (-100) <= .. <= 100 ; "plausibility limit: no bracket is 100 m long";
            at_z: (-100) <= .. <= 100 ; "plausibility limit: no bracket is 100 m high";
            filler_ultimate: 1e7 <= .. <= 3e9 ; "plausibility limit: between 10 MPa and 3 GPa";
            parent_ultimate: 1e7 <= .. <= 3e9 ; "plausibility limit: between 10 MPa and 3 GPa";
            plate_thickness: 0.0003 <= .. <= 0.2 ; "plausibility limit: between 0.3 mm and 200 mm";
        }
        Ok(())
    }
}

impl FilletGroup {
    /// Peak stresses of the group, and its margins.
    ///
    /// # Returns
    /// See the fields of [`GroupStress`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Verdict, units::*, weld::FilletGroup};
    /// # #[cfg(feature = "serde")] {
    /// let tab = FilletGroup::from_text(r#"
    ///     force_x = "0 N"
    ///     force_y = "0 N"
    ///     force_z = "6 kN"
    ///     at_x = "0 mm"
    ///     at_y = "20 mm"
    ///     at_z = "40 mm"
    ///     filler_ultimate = "480 MPa"
    ///     parent_ultimate = "400 MPa"
    ///     plate_thickness = "5 mm"
    ///     runs = [
    ///         { start = { x = "0 mm", y = "0 mm" }, end = { x = "0 mm", y = "60 mm" }, leg = "5 mm" },
    ///         { start = { x = "5 mm", y = "0 mm" }, end = { x = "5 mm", y = "60 mm" }, leg = "5 mm" },
    ///     ]
    /// "#)?;
    /// let on = tab.stress()?;
    /// assert_eq!(format!("{:.1} MPa on run {}", on.throat_stress.in_::<MPa>(), on.peak_run), "42.4 MPa on run 1");
    /// assert_eq!(Verdict::of_ratio(on.throat_margin, Ratio::of::<one>(2.0)), Verdict::Meets);
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn stress(&self) -> Result<GroupStress> {
        self.check()?;
        let lines = self.runs.iter().map(Run::line).collect::<Result<Vec<Line>>>()?;
        let area: f64 = lines.iter().map(Line::area).sum();
        let first = |axis: usize| {
            lines
                .iter()
                .map(|line| line.area() * line.middle().get(axis).copied().unwrap_or(0.0))
                .sum::<f64>()
                / area
        };
        let [centre_x, centre_y] = [first(0), first(1)];
        let (mut second_xx, mut second_yy, mut second_xy) = (0.0, 0.0, 0.0);
        for line in &lines {
            let ([x, y], [[x_0, y_0], [x_1, y_1]]) = (line.middle(), line.ends);
            let (x, y, along_x, along_y) = (x - centre_x, y - centre_y, x_1 - x_0, y_1 - y_0);
            second_xx += line.area() * (y * y + along_y * along_y / 12.0);
            second_yy += line.area() * (x * x + along_x * along_x / 12.0);
            second_xy += line.area() * (x * y + along_x * along_y / 12.0);
        }
        let polar = second_xx + second_yy;
        let [force_x, force_y, force_z] =
            [&self.force_x, &self.force_y, &self.force_z].map(|on| on.quantity.si());
        let (arm_x, arm_y, arm_z) =
            (self.at_x.quantity.si() - centre_x, self.at_y.quantity.si() - centre_y, self.at_z.quantity.si());
        let (about_x, about_y, about_z) = (
            arm_y * force_z - arm_z * force_y,
            arm_z * force_x - arm_x * force_z,
            arm_x * force_y - arm_y * force_x,
        );
        // `s_z = F_z / A + p y + q x` with the moments about both axes.
        let determinant = second_xx * second_yy - second_xy * second_xy;
        let (p, q) = if determinant > LINE * polar * polar {
            (
                (second_yy * about_x + second_xy * about_y) / determinant,
                -(second_xx * about_y + second_xy * about_x) / determinant,
            )
        } else {
            // One straight line: it bends along itself, and has no width to resist a moment about itself.
            let (along, across) = if second_xx >= second_yy {
                ([second_xy / second_xx, 1.0], second_xx)
            } else {
                ([1.0, second_xy / second_yy], second_yy)
            };
            let about_line = about_x * along[0] + about_y * along[1];
            let size = (about_x * about_x + about_y * about_y).sqrt();
            if about_line.abs() > 1e-9 * size {
                let runs = self.runs.len();
                return Err(cannot!(
                    "the {runs} run(s) lie on one straight line, which holds no moment about itself: weld the other side, too"
                ));
            }
            if second_xx >= second_yy { (about_x / across, 0.0) } else { (0.0, -about_y / across) }
        };
        let stress = |[x, y]: [f64; 2]| {
            let (x, y) = (x - centre_x, y - centre_y);
            let s_x = force_x / area - about_z * y / polar;
            let s_y = force_y / area + about_z * x / polar;
            let s_z = force_z / area + p * y + q * x;
            (s_x * s_x + s_y * s_y + s_z * s_z).sqrt()
        };
        // The square is convex along a run: its peak is at an end.
        let (mut throat_stress, mut peak, mut peak_run, mut leg_stress, mut line_load) =
            (-1.0, [0.0; 2], 0, 0.0, 0.0);
        for (place, line) in lines.iter().enumerate() {
            for end in line.ends {
                let here = stress(end);
                if here > throat_stress {
                    (throat_stress, peak, peak_run) = (here, end, place + 1);
                }
                leg_stress = f64::max(leg_stress, here * line.throat / line.leg);
                line_load = f64::max(line_load, here * line.throat);
            }
        }
        let runs = if self.welded_from == Some(Sides::OneSide) { 1.0 } else { 2.0 };
        let toe_stress =
            self.plate_thickness.as_ref().map_or(f64::NAN, |on| runs * line_load / on.quantity.si());
        let bears = |on: &Option<Value<Stress>>| on.as_ref().map_or(f64::NAN, |on| SHEAR * on.quantity.si());
        // Without a thickness the toe is not known, and with it the margin of the parent metal.
        let parent = if toe_stress >= leg_stress || toe_stress.is_nan() { toe_stress } else { leg_stress };
        let missing = [
            ("filler_ultimate", self.filler_ultimate.is_none()),
            ("parent_ultimate", self.parent_ultimate.is_none()),
            ("plate_thickness", self.plate_thickness.is_none()),
        ];
        let missing: Vec<&str> = missing.into_iter().filter(|(_, is)| *is).map(|(name, _)| name).collect();
        Ok(GroupStress {
            throat_area: Area::from_si(area),
            throat_stress: Stress::from_si(throat_stress),
            peak_x: Length::from_si(peak[0]),
            peak_y: Length::from_si(peak[1]),
            peak_run: i64::try_from(peak_run).unwrap_or(i64::MAX),
            leg_stress: Stress::from_si(leg_stress),
            toe_stress: Stress::from_si(toe_stress),
            throat_margin: Ratio::from_si(bears(&self.filler_ultimate) / throat_stress),
            parent_margin: Ratio::from_si(bears(&self.parent_ultimate) / parent),
            open: if missing.is_empty() { String::new() } else { format!("write {}", missing.join(", ")) },
        })
    }
}

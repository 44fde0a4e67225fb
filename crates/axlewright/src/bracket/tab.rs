use crate::base::document::{Model, Value};
use crate::base::table::record;
use crate::base::valid::whole;
use crate::units::{Angle, Force, Length, Ratio, Stress};
use crate::{Error, Result, valid};

/// A tab, or a pair of tabs, that holds a bolt: bearing, tear-out, net section and bending at the weld.
///
/// # Formula
/// each of `n` tabs bears `F / n`; bearing `1.8 R_e d t`; tear-out `1.2 R_m t (e - d_h / 2)`; net section `2 R_m t b`, with `b` the least of `(w - d_h) / 2` and `2 t + 16 mm`;
/// at the weld `F cos(a) / (n w_b t) + 6 F h sin(a) / (n t w_b^2) + 6 (F c + F_s h) / (n w_b t^2)` against `R_e`
///
/// # Fields
/// - `tabs` — `n`, whole: 1 in single shear, 2 in double shear, with the joint between them
/// - `thickness` — `t`, thickness of each tab
/// - `width` — `w`, width of the tab at the hole, square to the force
/// - `base_width` — `w_b`, width of the tab at the weld
/// - `bolt_diameter` — `d`, diameter of the bolt or pin
/// - `hole_diameter` — `d_h`, diameter of the hole
/// - `edge_distance` — `e`, from the hole's centre to the edge toward which the bolt pulls
/// - `height` — `h`, from the weld to the hole's centre
/// - `force` — `F`, force of the bolt on the bracket, in the plane of the tabs
/// - `force_angle` — `a`, angle between that force and the line from the weld to the hole: zero pulls straight away from the weld
/// - `side_force` — `F_s`, force of the bolt along its own axis
/// - `offset` — `c`, in single shear: distance from the middle of the tab to the middle of the joint; it counts for one tab only
/// - `yield_strength` — `R_e` of the tab beside the weld
/// - `ultimate_strength` — `R_m` of the tab beside the weld
///
/// # Valid for
/// Flat tabs with a drilled hole, welded along their base, that do not buckle. Both tabs of a pair share the force in halves: a spacer or the joint fills the gap between them. Strengths near a weld are those after welding.
///
/// # Source
/// Pin-connected members and bolts at holes: AISC 360-16, D5.1, J3.10 and J7 (from memory); bending of a cantilever
///
/// # Caution
/// A bracket that breaks can let a wheel go, and kill. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tab {
    /// Number of tabs that hold the bolt.
    pub tabs: Value<Ratio>,
    /// Thickness of each tab.
    pub thickness: Value<Length>,
    /// Width of the tab at the hole.
    pub width: Value<Length>,
    /// Width of the tab at the weld.
    pub base_width: Value<Length>,
    /// Diameter of the bolt.
    pub bolt_diameter: Value<Length>,
    /// Diameter of the hole.
    pub hole_diameter: Value<Length>,
    /// Distance from the hole's centre to the edge toward which the bolt pulls.
    pub edge_distance: Value<Length>,
    /// Height of the hole above the weld.
    pub height: Value<Length>,
    /// Force of the bolt in the plane of the tabs.
    pub force: Value<Force>,
    /// Angle of that force to the line from the weld to the hole.
    pub force_angle: Value<Angle>,
    /// Force of the bolt along its own axis.
    pub side_force: Value<Force>,
    /// Distance from the middle of a single tab to the middle of the joint.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub offset: Option<Value<Length>>,
    /// Yield strength of the tab beside the weld.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub yield_strength: Option<Value<Stress>>,
    /// Ultimate strength of the tab beside the weld.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ultimate_strength: Option<Value<Stress>>,
}

record! {
    /// Strength of the tabs under their force; a result that is not known is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct TabStrength {
        /// Force on each tab, in its plane.
        pub tab_force: Force,
        /// Force at which the hole yields under the bolt, over the force.
        pub bearing_margin: Ratio,
        /// Force at which the bolt tears out of the edge, over the force.
        pub tear_out_margin: Ratio,
        /// Force at which the tab breaks beside the hole, over the force.
        pub net_section_margin: Ratio,
        /// Peak stress of the tab at the weld.
        pub base_stress: Stress,
        /// Yield strength over that stress.
        pub base_margin: Ratio,
        /// Missing fields without which a margin is not known; empty if none is missing.
        pub open: String,
    }
}

impl crate::base::Sealed for Tab {}
impl Model for Tab {
    fn check(&self) -> Result<()> {
        let (tabs, thickness, width, base_width) =
            (self.tabs.quantity, self.thickness.quantity, self.width.quantity, self.base_width.quantity);
        let (bolt_diameter, hole_diameter) = (self.bolt_diameter.quantity, self.hole_diameter.quantity);
        let (edge_distance, height) = (self.edge_distance.quantity, self.height.quantity);
        let (force, force_angle, side_force) =
            (self.force.quantity, self.force_angle.quantity, self.side_force.quantity);
        let offset = self.offset.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        let strength =
            |on: &Option<Value<Stress>>| on.as_ref().map_or(Stress::from_si(1e8), |on| on.quantity);
        let (yield_strength, ultimate_strength) =
            (strength(&self.yield_strength), strength(&self.ultimate_strength));
        valid! {
            tabs: 1 <= .. <= 2 ; "definition: one tab, or one on each side of the joint";
            thickness: 0.0005 <= .. <= 0.1 ; "plausibility limit: tabs are between 0.5 mm and 100 mm thick";
            width: 0.002 <= .. <= 1 ; "plausibility limit: tabs are between 2 mm and 1 m wide";
            base_width: 0.002 <= .. <= 1 ; "plausibility limit: tabs are between 2 mm and 1 m wide";
            bolt_diameter: 0.001 <= .. <= 0.1 ; "plausibility limit: bolts are between 1 mm and 100 mm thick";
            hole_diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: holes are between 1 mm and 200 mm wide";
            width > hole_diameter ; "definition: the hole lies in the tab";
            edge_distance: 0.0005 <= .. <= 1 ; "plausibility limit: edges are between 0.5 mm and 1 m away";
            height: 0 <= .. <= 1 ; "plausibility limit: holes are at most 1 m above the weld";
            force: 0 <= .. <= 1e8 ; "definition: a size; its direction is the angle";
            force_angle: (-3.2) <= .. <= 3.2 ; "definition: within half a turn to either side";
            side_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no bracket bears 100 MN";
            offset: 0 <= .. <= 1 ; "plausibility limit: at most 1 m";
            yield_strength: 1e6 <= .. <= 2e9 ; "plausibility limit: metals yield between 1 MPa and 2 GPa";
            ultimate_strength: 1e6 <= .. <= 3e9 ; "plausibility limit: metals break between 1 MPa and 3 GPa";
        }
        whole("tabs", tabs)?;
        if bolt_diameter.si() > hole_diameter.si() {
            return Err(Error::document("bolt_diameter", "the bolt is thicker than hole_diameter"));
        }
        if edge_distance.si() <= 0.5 * hole_diameter.si() {
            return Err(Error::document(
                "edge_distance",
                "it is measured from the hole's centre, and exceeds half of hole_diameter",
            ));
        }
        Ok(())
    }
}

/// Width beside a hole that holds a pin, beyond twice the thickness: AISC 360, D5.1.
const BESIDE: f64 = 0.016;

impl Tab {
    /// Margins of the tabs under their force.
    ///
    /// # Returns
    /// See the fields of [`TabStrength`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, bracket::Tab, units::*};
    /// let length = |value: f64| Value::new(Length::of::<mm>(value));
    /// let tab = Tab {
    ///     tabs: Value::new(Ratio::of::<one>(2.0)), thickness: length(4.0), width: length(32.0), base_width: length(50.0),
    ///     bolt_diameter: length(12.0), hole_diameter: length(12.2), edge_distance: length(16.0), height: length(30.0),
    ///     force: Value::new(Force::of::<kN>(9.0)), force_angle: Value::new(Angle::of::<deg>(60.0)), side_force: Value::new(Force::of::<N>(0.0)),
    ///     offset: None, yield_strength: Some(Value::new(Stress::of::<MPa>(235.0))), ultimate_strength: Some(Value::new(Stress::of::<MPa>(360.0))),
    /// }.checked()?;
    /// let on = tab.strength()?;
    /// assert_eq!(format!("{:.2} in tear-out, {:.2} at the weld", on.tear_out_margin.si(), on.base_margin.si()), "3.80 in tear-out, 2.89 at the weld");
    /// assert_eq!(Verdict::of_ratio(on.tear_out_margin, Ratio::of::<one>(2.0)), Verdict::Meets);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn strength(&self) -> Result<TabStrength> {
        self.check()?;
        let count = self.tabs.quantity.si();
        let [thickness, width, base] =
            [&self.thickness, &self.width, &self.base_width].map(|on| on.quantity.si());
        let [bolt, hole, edge, height] =
            [&self.bolt_diameter, &self.hole_diameter, &self.edge_distance, &self.height]
                .map(|on| on.quantity.si());
        let si = |on: &Option<Value<Stress>>| on.as_ref().map_or(f64::NAN, |on| on.quantity.si());
        let (yields, breaks) = (si(&self.yield_strength), si(&self.ultimate_strength));
        let single = count < 2.0;
        // A single tab whose offset is not written is not known to be free of it.
        let offset = match &self.offset {
            Some(on) if single => on.quantity.si(),
            None if single => f64::NAN,
            _ => 0.0,
        };
        let on_tab = self.force.quantity.si() / count;
        let (sine, cosine) = self.force_angle.quantity.si().sin_cos();
        let beside = (0.5 * (width - hole)).min(2.0 * thickness + BESIDE);
        let in_plane = on_tab
            * (cosine.abs() / (base * thickness) + 6.0 * height * sine.abs() / (thickness * base * base));
        let out_of_plane = on_tab * offset + self.side_force.quantity.si().abs() * height / count;
        let base_stress = in_plane + 6.0 * out_of_plane / (base * thickness * thickness);
        let missing = [
            ("offset", single && self.offset.is_none()),
            ("yield_strength", self.yield_strength.is_none()),
            ("ultimate_strength", self.ultimate_strength.is_none()),
        ];
        let missing: Vec<&str> = missing.into_iter().filter(|(_, is)| *is).map(|(name, _)| name).collect();
        Ok(TabStrength {
            tab_force: Force::from_si(on_tab),
            bearing_margin: Ratio::from_si(1.8 * yields * bolt * thickness / on_tab),
            tear_out_margin: Ratio::from_si(1.2 * breaks * thickness * (edge - 0.5 * hole) / on_tab),
            net_section_margin: Ratio::from_si(2.0 * breaks * thickness * beside / on_tab),
            base_stress: Stress::from_si(base_stress),
            base_margin: Ratio::from_si(yields / base_stress),
            open: if missing.is_empty() { String::new() } else { format!("write {}", missing.join(", ")) },
        })
    }
}

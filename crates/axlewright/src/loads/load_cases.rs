#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::cases::{CaseFactor, LoadCase};
use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::units::{Force, Length, Mass, Ratio, STANDARD_GRAVITY};
use crate::{Error, Result, valid};

/// Load cases of a vehicle on four wheels: the force of the ground on each tyre, and the height at which it acts.
///
/// # Formula
/// braking and launch: `N_f = m_f g - m a h / l`, `a = mu sum N / m` over the wheels that pull, the one depending on the other; cornering: `m a h = dN_f t_f + dN_r t_r`, shared by the roll couple; no wheel pulls the
/// ground up: the load that is left over goes to the others; each force times the factor `f` of its case
///
/// # Fields
/// - `front_mass` — mass on both front wheels, loaded as it will be
/// - `rear_mass` — mass on both rear wheels
/// - `centre_of_gravity_height` — `h` above the ground
/// - `wheelbase` — `l`
/// - `front_track` — `t_f` between the contact points
/// - `rear_track` — `t_r`
/// - `front_radius` — loaded radius of the front wheels
/// - `rear_radius` — loaded radius of the rear wheels
/// - `grip` — `mu`, highest friction of the tyres on the road: take it high, 1.0 or more on a good road
/// - `driven` — driven wheels: `front`, `rear` or `all`
/// - `front_mount` — wheels on a `live_axle`, whose housing takes the torque of the drive, or `independent`, driven by half shafts
/// - `rear_mount` — the same at the rear
/// - `inboard_brakes` — axle whose brakes are on the body: `front`, `rear` or `all`; outboard everywhere if it is left out
/// - `roll_couple_share` — share of the roll couple at the front axle; if it is left out, each wheel takes the worse of none and all
/// - `kerb_height` — height of the kerb's edge
/// - `factors` — factors in place of the usual ones, each with `case` and `factor`
///
/// # Valid for
/// Steady manoeuvres on level ground, left and right wheels loaded alike at rest. A turn is one to the right, so that the left wheel, for which a linkage is drawn, is the outer one; a left turn is its mirror image. The vertical force is at the ground: the weight of wheel and upright is part of it. In a turn and braking together, the grip
/// is shared in equal parts of its square.
///
/// # Source
/// Balance of forces and moments; friction circle. Factors: common practice, no source
///
/// # Caution
/// A suspension part that breaks can kill. These cases are those of a road vehicle in ordinary use: a vehicle that jumps, races or carries people off the road needs its own. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LoadCases {
    /// Mass on both front wheels.
    pub front_mass: Value<Mass>,
    /// Mass on both rear wheels.
    pub rear_mass: Value<Mass>,
    /// Height of the centre of gravity above the ground.
    pub centre_of_gravity_height: Value<Length>,
    /// Wheelbase.
    pub wheelbase: Value<Length>,
    /// Track at the front.
    pub front_track: Value<Length>,
    /// Track at the rear.
    pub rear_track: Value<Length>,
    /// Loaded radius of the front wheels.
    pub front_radius: Value<Length>,
    /// Loaded radius of the rear wheels.
    pub rear_radius: Value<Length>,
    /// Highest friction of the tyres on the road.
    pub grip: Value<Ratio>,
    /// Driven wheels.
    pub driven: DrivenWheels,
    /// Mount of the front wheels.
    pub front_mount: WheelMount,
    /// Mount of the rear wheels.
    pub rear_mount: WheelMount,
    /// Axle whose brakes are on the body.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub inboard_brakes: Option<DrivenWheels>,
    /// Share of the roll couple at the front axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub roll_couple_share: Option<Value<Ratio>>,
    /// Height of the kerb's edge above the road.
    pub kerb_height: Value<Length>,
    /// Factors in place of the usual ones.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub factors: Vec<CaseFactor>,
}

/// Axles that are driven, or that have a kind of brake.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum DrivenWheels {
    /// The front ones.
    Front,
    /// The rear ones.
    Rear,
    /// All of them.
    All,
}

/// Carrier of an axle's wheels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum WheelMount {
    /// A live axle.
    LiveAxle,
    /// Each wheel on its own linkage.
    Independent,
}

record! {
    /// Force of the ground on a tyre.
    struct OnWheel<'a> {
        wheel: &'a str,
        longitudinal_force: Force,
        longitudinal_height: Length,
        lateral_force: Force,
        lateral_height: Length,
        vertical_force: Force,
        factor: Ratio,
    }
}

const WHEELS: [&str; 4] = ["left_front", "right_front", "left_rear", "right_rear"];

impl DrivenWheels {
    fn has(self, rear: bool) -> bool {
        self == DrivenWheels::All || (self == DrivenWheels::Rear) == rear
    }
}

impl crate::base::Sealed for LoadCases {}
impl Model for LoadCases {
    fn check(&self) -> Result<()> {
        let (front_mass, rear_mass) = (self.front_mass.quantity, self.rear_mass.quantity);
        let (centre_of_gravity_height, wheelbase) =
            (self.centre_of_gravity_height.quantity, self.wheelbase.quantity);
        let (front_track, rear_track) = (self.front_track.quantity, self.rear_track.quantity);
        let (front_radius, rear_radius) = (self.front_radius.quantity, self.rear_radius.quantity);
        let (grip, kerb_height) = (self.grip.quantity, self.kerb_height.quantity);
        let roll_couple_share = self.roll_couple_share.as_ref().map_or(Ratio::from_si(0.5), |on| on.quantity);
        valid! {
            front_mass: 1 <= .. <= 100000 ; "plausibility limit: axles carry between 1 kg and 100 t";
            rear_mass: 1 <= .. <= 100000 ; "plausibility limit: axles carry between 1 kg and 100 t";
            centre_of_gravity_height: 0.01 <= .. <= 10 ; "plausibility limit: between 10 mm and 10 m above the ground";
            wheelbase: 0.1 <= .. <= 50 ; "plausibility limit: between 0.1 m and 50 m";
            front_track: 0.1 <= .. <= 10 ; "plausibility limit: between 0.1 m and 10 m";
            rear_track: 0.1 <= .. <= 10 ; "plausibility limit: between 0.1 m and 10 m";
            front_radius: 0.05 <= .. <= 3 ; "plausibility limit: between 50 mm and 3 m";
            rear_radius: 0.05 <= .. <= 3 ; "plausibility limit: between 50 mm and 3 m";
            grip: 0.1 <= .. <= 3 ; "plausibility limit: tyres hold between a tenth and three times their load";
            roll_couple_share: 0 <= .. <= 1 ; "definition: a share of the whole roll couple";
            kerb_height: 0 <= .. <= 1 ; "plausibility limit: kerbs are at most 1 m high";
        }
        for (place, on) in self.factors.iter().enumerate() {
            let factor = on.factor.quantity;
            let refused = |error: Error| error.within(&format!("factors[{place}]"));
            let check = || {
                valid! { factor: 0.1 <= .. <= 20 ; "plausibility limit: factors lie between 0.1 and 20"; }
                Ok(())
            };
            check().map_err(refused)?;
            if self.factors.iter().take(place).any(|before| before.case == on.case) {
                let message = format!("case: {} stands twice", on.case.word());
                return Err(Error::document(format!("factors[{place}]"), message));
            }
        }
        Ok(())
    }
}

/// Vertical forces, and accelerations forward and to the left over that of gravity.
struct Steady {
    vertical: [f64; 4],
    forward: f64,
    left: f64,
}

impl LoadCases {
    /// All cases, four wheels each.
    ///
    /// # Returns
    /// One row for each case and wheel: `case` (`standing`, `bump`, `braking`, `braking_in_reverse`, `cornering`, `cornering_and_braking`, `launch`, `reverse_launch`, `pothole`, `kerb`), `wheel` (`left_front`, `right_front`, `left_rear`, `right_rear`),
    /// `longitudinal_force` (positive forward), `longitudinal_height` at which it acts above the ground, `lateral_force` (positive to the left), `lateral_height`, `vertical_force` and `factor`, which is in the forces.
    ///
    /// Bump loads all wheels, pothole and kerb hit each wheel by itself, the others stand. A kerb pushes inward.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, loads::*, units::*};
    /// let length = |value: f64| Value::new(Length::of::<mm>(value));
    /// let dunlin = LoadCases {
    ///     front_mass: Value::new(Mass::of::<kg>(1210.0)), rear_mass: Value::new(Mass::of::<kg>(922.0)), centre_of_gravity_height: length(620.0), wheelbase: length(2650.0),
    ///     front_track: length(1540.0), rear_track: length(1520.0), front_radius: length(335.0), rear_radius: length(335.0), grip: Value::new(Ratio::of::<one>(1.0)),
    ///     driven: DrivenWheels::Rear, front_mount: WheelMount::Independent, rear_mount: WheelMount::LiveAxle, inboard_brakes: None, roll_couple_share: None,
    ///     kerb_height: length(120.0), factors: vec![],
    /// }.checked()?;
    /// let cases = dunlin.table()?;
    /// let vertical = cases.numbers("vertical_force").unwrap_or_default(); // four wheels a case; braking is the third
    /// assert_eq!(format!("{:.1} kN on the left front wheel", Force::from_si(vertical[8]).in_::<kN>()), "12.6 kN on the left front wheel");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn table(&self) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["case"], &[LoadCase::ALL.len(), WHEELS.len()])?;
        for case in LoadCase::ALL {
            for on in self.on_wheels(case) {
                rows.push((case.word(),), Ok(on))?;
            }
        }
        rows.finish()
    }

    /// Weights on both axles.
    fn weights(&self) -> [f64; 2] {
        [&self.front_mass, &self.rear_mass].map(|on| on.quantity.si() * STANDARD_GRAVITY)
    }

    /// All wheels, or those of the driven axle, pull forward with this friction; rearward if it is negative.
    fn pulled(&self, friction: f64, by: Option<DrivenWheels>) -> Steady {
        let [front, rear] = self.weights();
        let lever = self.centre_of_gravity_height.quantity.si() / self.wheelbase.quantity.si();
        let moved = match by.unwrap_or(DrivenWheels::All) {
            DrivenWheels::All => friction * lever * (front + rear),
            DrivenWheels::Rear => friction * lever * rear / (1.0 - friction * lever),
            DrivenWheels::Front => friction * lever * front / (1.0 + friction * lever),
        };
        // An axle that lifts ends the pull: the load on the other one, and the moment about it, are then the whole weight's.
        let pulls = |axle: f64, moved: f64| if axle > 0.0 { moved / (lever * axle) } else { 0.0 };
        let on_axles = if friction > 0.0 && !(0.0..front).contains(&moved) {
            [0.0, front + rear]
        } else if friction < 0.0 && !(0.0..rear).contains(&-moved) {
            [front + rear, 0.0]
        } else {
            [front - moved, rear + moved]
        };
        let moved = on_axles[1] - rear;
        let pulling = match by.unwrap_or(DrivenWheels::All) {
            DrivenWheels::All => front + rear,
            DrivenWheels::Rear => on_axles[1],
            DrivenWheels::Front => on_axles[0],
        };
        let [front, rear] = on_axles.map(|on| 0.5 * on);
        Steady { vertical: [front, front, rear, rear], forward: pulls(pulling, moved), left: 0.0 }
    }

    /// A right turn with this friction on the axle loads of `base`.
    fn turned(&self, friction: f64, base: &Steady) -> Steady {
        let axles = [2.0 * base.vertical[0], 2.0 * base.vertical[2]];
        let tracks = [&self.front_track, &self.rear_track].map(|on| on.quantity.si());
        let height = self.centre_of_gravity_height.quantity.si();
        let weight: f64 = axles.iter().sum();
        // Moment at which all inner wheels lift.
        let most = 0.5 * (axles[0] * tracks[0] + axles[1] * tracks[1]);
        let moment = (friction * weight * height).min(most);
        let with = |share: f64| {
            let [front, rear] = [share, 1.0 - share].map(|share| share * moment);
            let limit = [0, 1].map(|axle| 0.5 * axles[axle] * tracks[axle]);
            // Left over by an axle whose inner wheel has lifted, for the other one.
            let over = [(front - limit[0]).max(0.0), (rear - limit[1]).max(0.0)];
            let moved =
                [(front + over[1]).min(limit[0]) / tracks[0], (rear + over[0]).min(limit[1]) / tracks[1]];
            [0, 1, 2, 3].map(|place| {
                let axle = place / 2;
                let to_wheel = if place % 2 == 0 { moved[axle] } else { -moved[axle] };
                base.vertical[place] + to_wheel
            })
        };
        let vertical = match &self.roll_couple_share {
            Some(share) => with(share.quantity.si()),
            None => {
                let (none, all) = (with(0.0), with(1.0));
                [0, 1, 2, 3].map(|place| f64::max(none[place], all[place]))
            }
        };
        Steady { vertical, forward: base.forward, left: -moment / (weight * height) }
    }

    fn factor(&self, case: LoadCase) -> f64 {
        let written = self.factors.iter().find(|on| on.case == case);
        written.map_or(case.usual_factor(), |on| on.factor.quantity.si())
    }

    /// Height at which a force along the vehicle acts on a wheel.
    fn height(&self, rear: bool, drive: bool) -> f64 {
        let (radius, mount) =
            if rear { (&self.rear_radius, self.rear_mount) } else { (&self.front_radius, self.front_mount) };
        let on_body = if drive {
            mount == WheelMount::Independent
        } else {
            self.inboard_brakes.is_some_and(|on| on.has(rear))
        };
        if on_body { radius.quantity.si() } else { 0.0 }
    }

    fn on_wheels(&self, case: LoadCase) -> [OnWheel<'static>; 4] {
        let grip = self.grip.quantity.si();
        let steady = match case {
            LoadCase::Standing | LoadCase::Bump | LoadCase::Pothole | LoadCase::Kerb => {
                self.pulled(0.0, None)
            }
            LoadCase::Braking => self.pulled(-grip, None),
            LoadCase::BrakingInReverse => self.pulled(grip, None),
            LoadCase::Launch => self.pulled(grip, Some(self.driven)),
            LoadCase::ReverseLaunch => self.pulled(-grip, Some(self.driven)),
            LoadCase::Cornering => self.turned(grip, &self.pulled(0.0, None)),
            LoadCase::CorneringAndBraking => {
                let each = grip * core::f64::consts::FRAC_1_SQRT_2;
                self.turned(each, &self.pulled(-each, None))
            }
        };
        let factor = self.factor(case);
        let drives = matches!(case, LoadCase::Launch | LoadCase::ReverseLaunch);
        [0, 1, 2, 3].map(|place| {
            let (rear, left) = (place > 1, place % 2 == 0);
            let stands = steady.vertical[place];
            let pulls = if drives && !self.driven.has(rear) { 0.0 } else { steady.forward };
            let mut on = OnWheel {
                wheel: WHEELS[place],
                longitudinal_force: Force::from_si(factor * pulls * stands),
                longitudinal_height: Length::from_si(self.height(rear, drives)),
                lateral_force: Force::from_si(factor * steady.left * stands),
                lateral_height: Length::from_si(0.0),
                vertical_force: Force::from_si(factor * stands),
                factor: Ratio::from_si(factor),
            };
            match case {
                LoadCase::Pothole => {
                    // Up, and two thirds of it to the rear, at the wheel's centre: the wheel rolls.
                    let radius = if rear { &self.rear_radius } else { &self.front_radius };
                    on.longitudinal_force = Force::from_si(-factor * 2.0 / 3.0 * stands);
                    on.longitudinal_height = radius.quantity;
                }
                LoadCase::Kerb => {
                    let inward = if left { -1.0 } else { 1.0 };
                    on.lateral_force = Force::from_si(inward * factor * stands);
                    on.lateral_height = self.kerb_height.quantity;
                    on.vertical_force = Force::from_si(stands);
                }
                _ => {}
            }
            on
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn metres(value: f64) -> Value<Length> {
        Value::new(Length::from_si(value))
    }

    fn vehicle() -> LoadCases {
        LoadCases {
            front_mass: Value::new(Mass::from_si(1210.0)),
            rear_mass: Value::new(Mass::from_si(922.0)),
            centre_of_gravity_height: metres(0.62),
            wheelbase: metres(2.65),
            front_track: metres(1.54),
            rear_track: metres(1.52),
            front_radius: metres(0.335),
            rear_radius: metres(0.34),
            grip: Value::new(Ratio::from_si(1.0)),
            driven: DrivenWheels::Rear,
            front_mount: WheelMount::Independent,
            rear_mount: WheelMount::LiveAxle,
            inboard_brakes: None,
            roll_couple_share: Some(Value::new(Ratio::from_si(0.6))),
            kerb_height: metres(0.12),
            factors: LoadCase::ALL
                .map(|case| CaseFactor { case, factor: Value::new(Ratio::from_si(1.0)) })
                .to_vec(),
        }
    }

    /// Sums of a case: forces forward, to the left and up, and moments of all about the centre of gravity, each over the greatest force.
    fn misfit(of: &LoadCases, case: LoadCase) -> [f64; 5] {
        let on = of.on_wheels(case);
        let si = |value: &Value<Length>| value.quantity.si();
        let [front, rear] = of.weights();
        let behind = rear / (front + rear) * si(&of.wheelbase);
        let height = si(&of.centre_of_gravity_height);
        let mut sums = [0.0; 5];
        for (place, on) in on.iter().enumerate() {
            let is_rear = place > 1;
            let x = behind - if is_rear { si(&of.wheelbase) } else { 0.0 };
            let y = if is_rear { si(&of.rear_track) } else { si(&of.front_track) }
                * if place % 2 == 0 { 0.5 } else { -0.5 };
            let (force_x, force_y, force_z) =
                (on.longitudinal_force.si(), on.lateral_force.si(), on.vertical_force.si());
            sums[0] += force_x;
            sums[1] += force_y;
            sums[2] += force_z;
            // The tyre's force meets the ground, wherever the part that takes its torque stands.
            sums[3] += y * force_z + height * force_y;
            sums[4] += -height * force_x - x * force_z;
        }
        sums[2] -= front + rear;
        let greatest = on.iter().map(|on| on.vertical_force.si()).fold(1.0, f64::max);
        sums.map(|sum| sum / greatest)
    }

    #[test]
    fn braking_moves_the_load_by_its_own_moment() {
        let on = vehicle().on_wheels(LoadCase::Braking);
        let moved = 2132.0 * STANDARD_GRAVITY * 0.62 / 2.65;
        assert_relative_eq!(
            on[0].vertical_force.si(),
            0.5 * (1210.0 * STANDARD_GRAVITY + moved),
            max_relative = 1e-12
        );
        assert_relative_eq!(on[0].longitudinal_force.si(), -on[0].vertical_force.si(), max_relative = 1e-12);
        assert_eq!(on[0].longitudinal_height.si(), 0.0);
        let inboard = LoadCases { inboard_brakes: Some(DrivenWheels::Rear), ..vehicle() };
        assert_eq!(inboard.on_wheels(LoadCase::Braking)[2].longitudinal_height.si(), 0.34);
    }

    #[test]
    fn a_launch_pulls_with_the_load_that_it_moves() {
        let on = vehicle().on_wheels(LoadCase::Launch);
        let rear = 922.0 * STANDARD_GRAVITY / (1.0 - 0.62 / 2.65);
        assert_relative_eq!(on[2].vertical_force.si(), 0.5 * rear, max_relative = 1e-12);
        assert_eq!((on[0].longitudinal_force.si(), on[2].longitudinal_height.si()), (0.0, 0.0));
        let independent = LoadCases { rear_mount: WheelMount::Independent, ..vehicle() };
        assert_eq!(independent.on_wheels(LoadCase::Launch)[2].longitudinal_height.si(), 0.34);
    }

    #[test]
    fn a_kerb_pushes_inward_at_its_edge_and_a_pothole_to_the_rear_at_the_hub() {
        let usual = LoadCases { factors: vec![], ..vehicle() };
        let (kerb, hole) = (usual.on_wheels(LoadCase::Kerb), usual.on_wheels(LoadCase::Pothole));
        assert!(kerb[0].lateral_force.si() < 0.0 && kerb[1].lateral_force.si() > 0.0);
        assert_relative_eq!(kerb[0].lateral_force.si(), -1210.0 * STANDARD_GRAVITY, max_relative = 1e-12);
        assert_eq!(kerb[0].lateral_height.si(), 0.12);
        assert_relative_eq!(
            hole[2].vertical_force.si(),
            1.5 * 922.0 * STANDARD_GRAVITY,
            max_relative = 1e-12
        );
        assert_relative_eq!(hole[2].longitudinal_force.si(), -922.0 * STANDARD_GRAVITY, max_relative = 1e-12);
    }

    #[test]
    fn the_left_wheel_is_the_outer_one() {
        let on = vehicle().on_wheels(LoadCase::Cornering);
        for (left, right) in [(&on[0], &on[1]), (&on[2], &on[3])] {
            assert!(left.vertical_force > right.vertical_force);
            assert_relative_eq!(left.lateral_force.si(), -left.vertical_force.si(), max_relative = 1e-12);
        }
    }

    #[test]
    fn an_unknown_roll_couple_loads_each_wheel_with_the_worse() {
        let unknown = LoadCases { roll_couple_share: None, ..vehicle() };
        let worst = unknown.on_wheels(LoadCase::Cornering);
        for share in [0.0, 0.3, 0.6, 1.0] {
            let known = LoadCases { roll_couple_share: Some(Value::new(Ratio::from_si(share))), ..vehicle() };
            for (worst, on) in worst.iter().zip(known.on_wheels(LoadCase::Cornering)) {
                assert!(worst.vertical_force.si() >= on.vertical_force.si() - 1e-9, "{share}");
            }
        }
    }

    proptest! {
        #[test]
        fn every_manoeuvre_balances(
            front in 200.0..3000.0_f64, rear in 200.0..3000.0_f64, height in 0.2..1.8_f64, wheelbase in 1.6..5.0_f64, track in 1.0..2.2_f64, grip in 0.3..1.8_f64,
            share in 0.0..1.0_f64, driven in 0..3_usize,
        ) {
            let of = LoadCases {
                front_mass: Value::new(Mass::from_si(front)),
                rear_mass: Value::new(Mass::from_si(rear)),
                centre_of_gravity_height: metres(height),
                wheelbase: metres(wheelbase),
                front_track: metres(track),
                grip: Value::new(Ratio::from_si(grip)),
                roll_couple_share: Some(Value::new(Ratio::from_si(share))),
                driven: [DrivenWheels::Front, DrivenWheels::Rear, DrivenWheels::All][driven],
                ..vehicle()
            };
            for case in [
                LoadCase::Standing, LoadCase::Braking, LoadCase::BrakingInReverse, LoadCase::Cornering, LoadCase::CorneringAndBraking, LoadCase::Launch,
                LoadCase::ReverseLaunch,
            ] {
                let [_, _, up, about_x, about_y] = misfit(&of, case);
                prop_assert!(up.abs() < 1e-9 && about_x.abs() < 1e-9 && about_y.abs() < 1e-9, "{case:?}: {up} {about_x} {about_y}");
                for on in of.on_wheels(case) {
                    let pull = on.longitudinal_force.si().hypot(on.lateral_force.si());
                    prop_assert!(on.vertical_force.si() >= -1e-9 && pull <= grip * on.vertical_force.si() + 1e-6, "{case:?}");
                }
            }
        }
    }
}

use crate::base::document::{Model, Stated, Value};
use crate::base::error::NoSolution;
use crate::base::table::{Filling, Table, record};
use crate::suspension::{
    bar_rate_for_roll_stiffness, bar_roll_stiffness, front_transfer_share, live_axle_roll_stiffness,
    roll_arm, tyre_roll_stiffness,
};
use crate::units::{
    Acceleration, Angle, Force, Length, LinearStiffness, Mass, Ratio, RollGradient, RotationalStiffness,
    STANDARD_GRAVITY,
};
use crate::{Error, Result, cannot, valid};

/// Both axles in a steady turn: lean of the body, and share of each axle in the load that moves to the outer wheels.
///
/// # Formula
/// With `m_1` and `m_2` the sprung mass over each axle, `c = m_i z + m_u z_u` and `k_t = K_t - g c` of each: the axle leans on its tyres by
/// `phi_u = (K phi + a_y c) / (K + k_t)`, the body by the `phi` for which `K_1 (phi - phi_u1) + K_2 (phi - phi_u2) = m_s h_1 (a_y + g phi)`; of an axle
/// `F_u = m_u z_u (a_y + g phi_u) / t`, `F_g = m_i z (a_y + g phi_u) / t`, `F_e = K (phi - phi_u) / t`
///
/// # Fields
/// - `sprung_mass` — `m_s`, sprung mass of the whole vehicle
/// - `sprung_height` — `h_s`, height of its centre of gravity above the ground
/// - `behind_front_axle` — `a`, distance of its centre of gravity behind the front axle
/// - `wheelbase` — `l`, distance from front to rear axle
/// - `front` — the front axle
/// - `rear` — the rear axle
///
/// # Valid for
/// A steady turn on a level road, small angles, a stiff frame, linear springs and tyres, all wheels on the ground; tracks and roll centres as they are at ride
/// height. It holds each axle's roll on its tyres under everything the axle carries; with stiff tyres it is the textbook form of
/// `suspension::roll_gradient` and `suspension::axle_load_transfer`. The sprung mass lies between the axles.
///
/// # Source
/// Equilibrium of body and axles; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 and 18, and Dixon, Tires, Suspension and Handling (1996), ch. 5
/// (from memory), extended by the roll of the axles on their tyres
///
/// # Caution
/// A lifted wheel is the last step before a rollover, and a bar that changes the balance can make a safe vehicle spin. Test a change where there is room. Local codes and
/// licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RollBalance {
    /// Sprung mass of the whole vehicle.
    pub sprung_mass: Value<Mass>,
    /// Height of its centre of gravity above the ground.
    pub sprung_height: Value<Length>,
    /// Distance of its centre of gravity behind the front axle.
    pub behind_front_axle: Value<Length>,
    /// Front to rear axle.
    pub wheelbase: Value<Length>,
    /// The front axle.
    pub front: RollAxle,
    /// The rear axle.
    pub rear: RollAxle,
}

/// Properties of an axle in roll.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with the axle's track, masses, heights, springs, tyres and bar")
)]
pub struct RollAxle {
    /// Track, between the tyre centres.
    pub track: Value<Length>,
    /// Height of the roll centre above the ground; negative below it.
    pub roll_centre_height: Value<Length>,
    /// Unsprung mass of the axle, both wheels together.
    pub unsprung_mass: Value<Mass>,
    /// Height of the unsprung mass above the ground: the loaded radius, nearly.
    pub unsprung_height: Value<Length>,
    /// Wheel rate of one wheel; of a live axle the vertical rate of one spring at its seat.
    pub spring_rate: Value<LinearStiffness>,
    /// Base between the springs of a live axle; if it is missing, the track, as for wheel rates.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring_base: Option<Value<Length>>,
    /// Vertical rate of the tyre or twin tyres of one side.
    pub tyre_rate: Value<LinearStiffness>,
    /// Force at each end of the anti-roll bar over travel of that end, while the other end moves as far the opposite way; left out if there is no bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub bar_rate: Stated<Value<LinearStiffness>>,
    /// Travel of the bar's end over travel of the wheel, in roll; needed if there is a bar, or if `bars_for` looks for one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bar_motion_ratio: Option<Value<Ratio>>,
}

record! {
    /// Values that do not depend on the lateral acceleration.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Balance {
        /// Roll angle of the body over lateral acceleration, body to ground.
        pub roll_gradient: RollGradient,
        /// Springs and bar of the front axle, without its tyres.
        pub front_suspension_stiffness: RotationalStiffness,
        /// Springs and bar of the rear axle, without its tyres.
        pub rear_suspension_stiffness: RotationalStiffness,
        /// Share of the front axle in the load that moves to the outer wheels.
        pub front_share: Ratio,
        /// Share of the front axle in the weight, unsprung masses included.
        pub front_weight_share: Ratio,
        /// Front share of the transfer minus front share of the weight: with equal tyres, a positive value tends to understeer at the limit, a negative one to oversteer.
        pub share_over_weight: Ratio,
    }
}

record! {
    /// Both axles in one turn.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct InTurn {
        /// Roll angle of the body to the ground, out of the turn.
        pub roll_angle: Angle,
        /// Load that the outer front wheel gains by the unsprung mass.
        pub front_unsprung_transfer: Force,
        /// Load that the outer front wheel gains through the roll centre.
        pub front_geometric_transfer: Force,
        /// Load that the outer front wheel gains by springs and bar.
        pub front_elastic_transfer: Force,
        /// All that it gains.
        pub front_load_transfer: Force,
        /// Load that the outer rear wheel gains by the unsprung mass.
        pub rear_unsprung_transfer: Force,
        /// Load that the outer rear wheel gains through the roll centre.
        pub rear_geometric_transfer: Force,
        /// Load that the outer rear wheel gains by springs and bar.
        pub rear_elastic_transfer: Force,
        /// All that it gains.
        pub rear_load_transfer: Force,
        /// Share of the front axle in the load transfer.
        pub front_share: Ratio,
        /// Load left on the inner front wheel.
        pub front_inner_load: Force,
        /// Load left on the inner rear wheel.
        pub rear_inner_load: Force,
    }
}

record! {
    /// Bars to fit.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Bars {
        /// Rate of the front bar at its ends, which move in opposite directions.
        pub front_bar_rate: LinearStiffness,
        /// Rate of the rear bar at its ends.
        pub rear_bar_rate: LinearStiffness,
        /// Roll stiffness that the front bar gives its axle.
        pub front_bar_stiffness: RotationalStiffness,
        /// Roll stiffness that the rear bar gives its axle.
        pub rear_bar_stiffness: RotationalStiffness,
    }
}

/// An axle in numbers, coherent SI.
/// Lateral accelerations beyond which a vehicle no longer stands on four wheels between its stops.
#[cfg(feature = "sheet")]
pub(super) struct Limits {
    /// The first axle comes into its stops.
    pub(super) stop: Acceleration,
    /// One wheel lifts, stops counted.
    pub(super) lift: Acceleration,
    /// Both wheels of a side lift.
    pub(super) tip: Acceleration,
}

#[derive(Debug, Clone, Copy)]
struct Axle {
    name: &'static str,
    track: f64,
    /// First moments over the ground of what hangs on the axle: unsprung, and sprung through the roll centre.
    unsprung_moment: f64,
    sprung_moment: f64,
    weight: f64,
    springs: f64,
    bar: f64,
    tyres: f64,
}

impl Axle {
    /// `K`, of springs and bar.
    fn suspension(&self) -> f64 {
        self.springs + self.bar
    }
    /// `c`.
    fn moment(&self) -> f64 {
        self.unsprung_moment + self.sprung_moment
    }
    /// `k_t`: the tyres, less what the axle's own lean takes.
    fn upright(&self) -> f64 {
        self.tyres - STANDARD_GRAVITY * self.moment()
    }
    /// Load transfer for a moment on the axle's tyres, of which `upright` is left after the lean.
    fn transfer_of(&self, moment: f64) -> f64 {
        moment * self.tyres / (self.upright() * self.track)
    }
    /// Coefficients `x` and `y` of the elastic moment `x phi - y`, at one unit of acceleration.
    fn elastic(&self) -> (f64, f64) {
        let over = self.suspension() / (self.suspension() + self.upright());
        (over * self.upright(), over * self.moment())
    }
    /// The bar that makes the axle carry this elastic moment at this lean of the body, one unit of acceleration.
    fn bar_for(&self, elastic: f64, phi: f64, wanted: NoSolution) -> Result<f64> {
        let left = phi - (elastic + self.moment()) / self.upright();
        let bar = elastic / left - self.springs;
        if left > 0.0 && bar >= -1e-9 * self.springs {
            return Ok(bar.max(0.0));
        }
        let why = if left > 0.0 {
            "the springs are stiffer even without one"
        } else {
            "the tyres lean further even on rigid springs"
        };
        Err(no_bar(self, why, wanted))
    }
}

/// No bar of this axle gives what is wanted.
fn no_bar(axle: &Axle, why: &str, wanted: NoSolution) -> Error {
    Error::no_solution(NoSolution {
        reason: format!("cannot be reached with a {} bar: {why}", axle.name),
        ..wanted
    })
}

impl crate::base::Sealed for RollBalance {}
impl Model for RollBalance {
    fn check(&self) -> Result<()> {
        let (sprung_mass, sprung_height) = (self.sprung_mass.quantity, self.sprung_height.quantity);
        let (behind_front_axle, wheelbase) = (self.behind_front_axle.quantity, self.wheelbase.quantity);
        valid! {
            sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: no vehicle weighs 1000 t";
            sprung_height: 0 < .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
            behind_front_axle: 0 <= .. <= 100 ; "definition: between the axles";
            wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
            wheelbase > behind_front_axle ; "definition: between the axles";
        }
        for (name, axle) in [("front", &self.front), ("rear", &self.rear)] {
            axle.check().map_err(|error| error.within(name))?;
        }
        self.lean(&self.axles()?).map(drop)
    }
}

impl RollAxle {
    fn check(&self) -> Result<()> {
        let (track, roll_centre_height) = (self.track.quantity, self.roll_centre_height.quantity);
        let (unsprung_mass, unsprung_height) = (self.unsprung_mass.quantity, self.unsprung_height.quantity);
        let (spring_rate, tyre_rate) = (self.spring_rate.quantity, self.tyre_rate.quantity);
        let spring_base = self.spring_base.as_ref().map_or(track, |base| base.quantity);
        let bar_rate = self.bar_rate.as_ref().map_or(LinearStiffness::from_si(0.0), |rate| rate.quantity);
        let bar_motion_ratio =
            self.bar_motion_ratio.as_ref().map_or(Ratio::from_si(1.0), |ratio| ratio.quantity);
        valid! {
            track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
            roll_centre_height: (-10) <= .. <= 10 ; "plausibility limit: roll centres that matter lie within 10 m of the ground";
            unsprung_mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; no axle weighs 1000 t";
            unsprung_height: 0 <= .. <= 100 ; "definition: above the ground";
            spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
            spring_base: 0.01 <= .. <= 100 ; "definition: a distance between springs, of a road vehicle";
            tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: tyres lie between 1 N/m and 1 GN/m";
            bar_rate: 0 <= .. <= 1e9 ; "definition: a rate is not negative";
            bar_motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: below it no bar works, above 1.5 it is a percentage or an inverted ratio";
        }
        if self.bar_rate.is_given() && self.bar_motion_ratio.is_none() {
            return Err(cannot!("bar_motion_ratio is missing: the rate of a bar counts with its square"));
        }
        Ok(())
    }

    fn in_numbers(&self, name: &'static str, sprung: f64) -> Result<Axle> {
        let track = self.track.quantity;
        let base = self.spring_base.as_ref().map_or(track, |base| base.quantity);
        let bar = match (self.bar_rate.as_ref(), &self.bar_motion_ratio) {
            (Some(rate), Some(ratio)) => bar_roll_stiffness(rate.quantity, ratio.quantity, track)?.si(),
            _ => 0.0,
        };
        Ok(Axle {
            name,
            track: track.si(),
            unsprung_moment: self.unsprung_mass.quantity.si() * self.unsprung_height.quantity.si(),
            sprung_moment: sprung * self.roll_centre_height.quantity.si(),
            weight: (sprung + self.unsprung_mass.quantity.si()) * STANDARD_GRAVITY,
            springs: live_axle_roll_stiffness(self.spring_rate.quantity, base)?.si(),
            bar,
            tyres: tyre_roll_stiffness(self.tyre_rate.quantity, track)?.si(),
        })
    }

    fn rate_of(&self, name: &str, bar: f64) -> Result<LinearStiffness> {
        let Some(ratio) = &self.bar_motion_ratio else {
            return Err(of_axle(name, "bar_motion_ratio", "missing: a bar's rate counts with its square"));
        };
        bar_rate_for_roll_stiffness(RotationalStiffness::from_si(bar), ratio.quantity, self.track.quantity)
    }
}

record! {
    /// Roll and balance with a pair of bars in a turn.
    struct WithBars {
        roll_gradient: RollGradient,
        roll_angle: Angle,
        front_load_transfer: Force,
        rear_load_transfer: Force,
        front_share: Ratio,
        share_over_weight: Ratio,
        front_inner_load: Force,
        rear_inner_load: Force,
    }
}

impl RollBalance {
    /// Roll gradient and balance, which do not depend on how hard the turn is.
    ///
    /// # Returns
    /// See the fields of [`Balance`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, suspension::RollBalance, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let van = RollBalance::from_text(r#"
    ///     sprung_mass = "2070 kg"
    ///     sprung_height = "780 mm"
    ///     behind_front_axle = "1256 mm"
    ///     wheelbase = "2650 mm"
    ///     [front]
    ///     track = "1540 mm"
    ///     roll_centre_height = "60 mm"
    ///     unsprung_mass = "134 kg"
    ///     unsprung_height = "340 mm"
    ///     spring_rate = "28.4 N/mm"
    ///     tyre_rate = "280 N/mm"
    ///     bar_rate = "150 N/mm"
    ///     bar_motion_ratio = 0.6
    ///     [rear]
    ///     track = "1520 mm"
    ///     roll_centre_height = "380 mm"
    ///     unsprung_mass = "196 kg"
    ///     unsprung_height = "345 mm"
    ///     spring_rate = "38 N/mm"
    ///     spring_base = "1010 mm"
    ///     tyre_rate = "280 N/mm"
    ///     bar_rate = "60 N/mm"
    ///     bar_motion_ratio = 0.6
    /// "#)?;
    /// let on = van.balance()?;
    /// assert_eq!(format!("{:.1} deg/g", on.roll_gradient.in_::<deg_gn>()), "6.9 deg/g");
    /// assert_eq!(format!("{:.1} % of the transfer in front", on.front_share.in_::<percent>()), "53.3 % of the transfer in front");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn balance(&self) -> Result<Balance> {
        self.check()?;
        let axles = self.axles()?;
        let phi = self.lean(&axles)?;
        let [front, rear] = axles.map(|axle| Turned::of(&axle, phi, 1.0).transfer());
        let front_share = share(front, rear)?;
        let [front_weight, rear_weight] = axles.map(|axle| axle.weight);
        let front_weight_share = Ratio::from_si(front_weight / (front_weight + rear_weight));
        Ok(Balance {
            roll_gradient: RollGradient::from_si(phi),
            front_suspension_stiffness: RotationalStiffness::from_si(axles[0].suspension()),
            rear_suspension_stiffness: RotationalStiffness::from_si(axles[1].suspension()),
            front_share,
            front_weight_share,
            share_over_weight: front_share - front_weight_share,
        })
    }

    /// Roll angle and load transfer of both axles in one turn.
    ///
    /// # Parameters
    /// - `lateral_acceleration` — towards the inside of the turn
    ///
    /// # Returns
    /// See the fields of [`InTurn`].
    ///
    /// # Valid for
    /// - `0 < lateral_acceleration <= 100`
    ///
    /// Up to where an inner wheel lifts: beyond it the answer is refused.
    pub fn in_turn(&self, lateral_acceleration: Acceleration) -> Result<InTurn> {
        valid! { lateral_acceleration: 0 < .. <= 100 ; "plausibility limit: no road vehicle turns with 10 g0"; }
        self.check()?;
        let axles = self.axles()?;
        let (a, phi) = (lateral_acceleration.si(), self.lean(&axles)? * lateral_acceleration.si());
        let [front, rear] = axles.map(|axle| Turned::of(&axle, phi, a));
        let [front_inner, rear_inner] = [(&axles[0], front), (&axles[1], rear)]
            .map(|(axle, turned)| axle.weight / 2.0 - turned.transfer());
        for (axle, load) in [(&axles[0], front_inner), (&axles[1], rear_inner)] {
            if load < 0.0 {
                let still = axle.weight / 2.0;
                let most = lateral_acceleration * (still / (still - load));
                return Err(cannot!(lateral_acceleration <= most; "lifts the inner {} wheel", axle.name));
            }
        }
        Ok(InTurn {
            roll_angle: Angle::from_si(phi),
            front_unsprung_transfer: Force::from_si(front.unsprung),
            front_geometric_transfer: Force::from_si(front.geometric),
            front_elastic_transfer: Force::from_si(front.elastic),
            front_load_transfer: Force::from_si(front.transfer()),
            rear_unsprung_transfer: Force::from_si(rear.unsprung),
            rear_geometric_transfer: Force::from_si(rear.geometric),
            rear_elastic_transfer: Force::from_si(rear.elastic),
            rear_load_transfer: Force::from_si(rear.transfer()),
            front_share: share(front.transfer(), rear.transfer())?,
            front_inner_load: Force::from_si(front_inner),
            rear_inner_load: Force::from_si(rear_inner),
        })
    }

    /// Both bars that give the wanted roll gradient and the wanted balance, in place of those that are fitted.
    ///
    /// # Parameters
    /// - `roll_gradient` — wanted roll angle over lateral acceleration, body to ground
    /// - `front_share` — wanted share of the front axle in the load transfer
    ///
    /// # Returns
    /// See the fields of [`Bars`].
    ///
    /// # Valid for
    /// - `0.000001 <= roll_gradient <= 1`
    /// - `0.001 <= front_share <= 0.999`
    ///
    /// The answer is refused if an axle would need a bar of negative rate.
    pub fn bars_for(&self, roll_gradient: RollGradient, front_share: Ratio) -> Result<Bars> {
        valid! {
            roll_gradient: 0.000001 <= .. <= 1 ; "plausibility limit: between 0.0006 deg/g and 560 deg/g";
            front_share: 0.001 <= .. <= 0.999 ; "definition: a share; an axle that takes all of it stands alone";
        }
        self.check()?;
        let [front, rear] = self.axles()?;
        let phi = roll_gradient.si();
        let moment = self.overturning()? * (1.0 + STANDARD_GRAVITY * phi);
        let split =
            front_share.si() / (1.0 - front_share.si()) * rear.transfer_of(1.0) / front.transfer_of(1.0);
        // moment = front + rear, front + c_1 = split (rear + c_2)
        let rear_elastic = (moment + front.moment() - split * rear.moment()) / (1.0 + split);
        let front_elastic = moment - rear_elastic;
        let wanted = NoSolution::new("").of("roll_gradient", roll_gradient).of("front_share", front_share);
        let front_bar = front.bar_for(front_elastic, phi, wanted.clone())?;
        let rear_bar = rear.bar_for(rear_elastic, phi, wanted)?;
        Ok(Bars {
            front_bar_rate: self.front.rate_of("front", front_bar)?,
            rear_bar_rate: self.rear.rate_of("rear", rear_bar)?,
            front_bar_stiffness: RotationalStiffness::from_si(front_bar),
            rear_bar_stiffness: RotationalStiffness::from_si(rear_bar),
        })
    }

    /// The front bar that gives the wanted roll gradient, the rear axle left as it is.
    ///
    /// # Parameters
    /// - `roll_gradient` — wanted roll angle over lateral acceleration, body to ground
    ///
    /// # Returns
    /// Rate of the front bar at its ends, in place of the one that is fitted.
    ///
    /// # Valid for
    /// - `0.000001 <= roll_gradient <= 1`
    ///
    /// The answer is refused if the axle would need a bar of negative rate.
    pub fn front_bar_for_gradient(&self, roll_gradient: RollGradient) -> Result<LinearStiffness> {
        valid! { roll_gradient: 0.000001 <= .. <= 1 ; "plausibility limit: between 0.0006 deg/g and 560 deg/g"; }
        self.check()?;
        let [front, rear] = self.axles()?;
        self.front.rate_of("front", self.bar_for_gradient(&front, &rear, roll_gradient.si())?)
    }

    /// The rear bar that gives the wanted roll gradient, the front axle left as it is.
    ///
    /// # Parameters
    /// - `roll_gradient` — wanted roll angle over lateral acceleration, body to ground
    ///
    /// # Returns
    /// Rate of the rear bar at its ends, in place of the one that is fitted.
    ///
    /// # Valid for
    /// - `0.000001 <= roll_gradient <= 1`
    ///
    /// The answer is refused if the axle would need a bar of negative rate.
    pub fn rear_bar_for_gradient(&self, roll_gradient: RollGradient) -> Result<LinearStiffness> {
        valid! { roll_gradient: 0.000001 <= .. <= 1 ; "plausibility limit: between 0.0006 deg/g and 560 deg/g"; }
        self.check()?;
        let [front, rear] = self.axles()?;
        self.rear.rate_of("rear", self.bar_for_gradient(&rear, &front, roll_gradient.si())?)
    }

    /// The front bar that gives the wanted balance, the rear axle left as it is.
    ///
    /// # Parameters
    /// - `front_share` — wanted share of the front axle in the load transfer
    ///
    /// # Returns
    /// Rate of the front bar at its ends, in place of the one that is fitted.
    ///
    /// # Valid for
    /// - `0.001 <= front_share <= 0.999`
    ///
    /// The answer is refused if the axle would need a bar of negative rate.
    pub fn front_bar_for_share(&self, front_share: Ratio) -> Result<LinearStiffness> {
        valid! { front_share: 0.001 <= .. <= 0.999 ; "definition: a share; an axle that takes all of it stands alone"; }
        self.check()?;
        let [front, rear] = self.axles()?;
        let wanted = NoSolution::new("").of("front_share", front_share);
        self.front.rate_of("front", self.bar_for_share(&front, &rear, front_share.si(), wanted)?)
    }

    /// The rear bar that gives the wanted balance, the front axle left as it is.
    ///
    /// # Parameters
    /// - `front_share` — wanted share of the front axle in the load transfer
    ///
    /// # Returns
    /// Rate of the rear bar at its ends, in place of the one that is fitted.
    ///
    /// # Valid for
    /// - `0.001 <= front_share <= 0.999`
    ///
    /// The answer is refused if the axle would need a bar of negative rate.
    pub fn rear_bar_for_share(&self, front_share: Ratio) -> Result<LinearStiffness> {
        valid! { front_share: 0.001 <= .. <= 0.999 ; "definition: a share; an axle that takes all of it stands alone"; }
        self.check()?;
        let [front, rear] = self.axles()?;
        let wanted = NoSolution::new("").of("front_share", front_share);
        self.rear.rate_of("rear", self.bar_for_share(&rear, &front, 1.0 - front_share.si(), wanted)?)
    }

    /// Roll and balance over bars and turns, everything else as it is.
    ///
    /// # Parameters
    /// - `front_bar_rate` — rates of the front bar at its ends; nothing for no bar
    /// - `rear_bar_rate` — rates of the rear bar at its ends
    /// - `lateral_acceleration` — towards the inside of the turn
    ///
    /// # Returns
    /// One row for each pair of bars and a turn: `front_bar_rate`, `rear_bar_rate`, `lateral_acceleration`, `roll_gradient`, `roll_angle`, `front_load_transfer`,
    /// `rear_load_transfer`, `front_share`, `share_over_weight`, `front_inner_load`, `rear_inner_load`.
    pub fn table(
        &self,
        front_bar_rate: &[LinearStiffness],
        rear_bar_rate: &[LinearStiffness],
        lateral_acceleration: &[Acceleration],
    ) -> Result<Table> {
        let names = ["front_bar_rate", "rear_bar_rate", "lateral_acceleration"];
        let lists = [front_bar_rate.len(), rear_bar_rate.len(), lateral_acceleration.len()];
        let mut rows = Filling::over(names, &lists)?;
        for front_bar in front_bar_rate {
            for rear_bar in rear_bar_rate {
                let mut changed = self.clone();
                changed.front.bar_rate = Stated::Given(Value::new(*front_bar));
                changed.rear.bar_rate = Stated::Given(Value::new(*rear_bar));
                let balance = changed.balance();
                for turn in lateral_acceleration {
                    let on = balance.clone().and_then(|balance| {
                        let on = changed.in_turn(*turn)?;
                        Ok(WithBars {
                            roll_gradient: balance.roll_gradient,
                            roll_angle: on.roll_angle,
                            front_load_transfer: on.front_load_transfer,
                            rear_load_transfer: on.rear_load_transfer,
                            front_share: on.front_share,
                            share_over_weight: balance.share_over_weight,
                            front_inner_load: on.front_inner_load,
                            rear_inner_load: on.rear_inner_load,
                        })
                    });
                    rows.push((*front_bar, *rear_bar, *turn), on)?;
                }
            }
        }
        rows.finish()
    }

    fn axles(&self) -> Result<[Axle; 2]> {
        let rear = self.behind_front_axle.quantity.si() / self.wheelbase.quantity.si();
        let sprung = self.sprung_mass.quantity.si();
        Ok([
            self.front.in_numbers("front", sprung * (1.0 - rear))?,
            self.rear.in_numbers("rear", sprung * rear)?,
        ])
    }

    /// Lateral accelerations at which the body comes into its stops, a wheel lifts, and the vehicle tips, turned to the worse side. `stops` is
    /// the travel of the wheels of each axle until a stop, joint, hose or damper ends it, the lesser of bump and droop. `inner` is the share
    /// of each axle's weight on its inner wheel, once with the left wheels inside and once with the right ones.
    #[cfg(feature = "sheet")]
    pub(super) fn limits(&self, stops: [f64; 2], inner: [[f64; 2]; 2]) -> Result<Limits> {
        let [left, right] = [self.limits_of(stops, inner[0])?, self.limits_of(stops, inner[1])?];
        let least =
            |of: fn(&Limits) -> Acceleration| Acceleration::from_si(of(&left).si().min(of(&right).si()));
        Ok(Limits { stop: least(|on| on.stop), lift: least(|on| on.lift), tip: least(|on| on.tip) })
    }

    #[cfg(feature = "sheet")]
    fn limits_of(&self, stops: [f64; 2], inner: [f64; 2]) -> Result<Limits> {
        self.check()?;
        let axles = self.axles()?;
        let phi = self.lean(&axles)?;
        let transfers = axles.map(|axle| Turned::of(&axle, phi, 1.0).transfer());
        let both = || axles.iter().zip(inner).map(|(axle, share)| (axle, axle.weight * share)).zip(transfers);
        // Moment of both axles on the ground, and what it is when the whole weight stands on the outer wheels.
        let moment: f64 = both().map(|((axle, _), transfer)| transfer * axle.track).sum();
        let most: f64 = both().map(|((axle, inner), _)| inner * axle.track).sum();
        let (mut stop, mut lift) = (f64::INFINITY, f64::INFINITY);
        for (((axle, inner), transfer), travel) in both().zip(stops) {
            let lean = (axle.suspension() * phi + axle.moment()) / (axle.suspension() + axle.upright());
            let there = travel.max(0.0) / ((phi - lean).abs() * axle.track / 2.0);
            let free = if transfer > 0.0 { inner / transfer } else { f64::INFINITY };
            // On its stop an axle takes, at most, all of the moment that comes on top.
            let stopped = there + (inner - transfer * there).max(0.0) * axle.track / moment;
            lift = lift.min(if there < free { stopped.min(free) } else { free });
            stop = stop.min(there);
        }
        // Then the body leans on the other axle alone, and by more: the softer one counts.
        let overturning = self.overturning()?;
        let further = axles.iter().map(|axle| {
            let (per_angle, less) = axle.elastic();
            let righting = per_angle - overturning * STANDARD_GRAVITY;
            if righting > 0.0 { (overturning + less) / righting } else { f64::INFINITY }
        });
        let further = further.fold(phi, f64::max);
        let whole = overturning + axles.iter().map(Axle::moment).sum::<f64>();
        let tip = lift + (most - moment * lift).max(0.0) / (whole * (1.0 + STANDARD_GRAVITY * further));
        Ok(Limits {
            stop: Acceleration::from_si(stop),
            lift: Acceleration::from_si(lift),
            tip: Acceleration::from_si(tip),
        })
    }

    /// `m_s h_1`.
    fn overturning(&self) -> Result<f64> {
        let arm = roll_arm(
            self.sprung_height.quantity,
            self.behind_front_axle.quantity,
            self.wheelbase.quantity,
            self.front.roll_centre_height.quantity,
            self.rear.roll_centre_height.quantity,
        )?;
        Ok(self.sprung_mass.quantity.si() * arm.si())
    }

    /// `phi` at one unit of acceleration; refused where something falls over by its own weight.
    fn lean(&self, axles: &[Axle; 2]) -> Result<f64> {
        let overturning = self.overturning()?;
        let fallen = |what: &str| cannot!("{what} cannot stand upright by its own weight");
        for axle in axles {
            if axle.upright() <= 1e-6 * axle.tyres {
                return Err(fallen(&format!("tyre_rate of the {} axle is too low: it", axle.name)));
            }
        }
        let [(front, front_less), (rear, rear_less)] = axles.map(|axle| axle.elastic());
        let righting = front + rear - overturning * STANDARD_GRAVITY;
        if righting <= 1e-6 * (front + rear) {
            return Err(fallen("the springs and bars are too soft: the body"));
        }
        Ok((overturning + front_less + rear_less) / righting)
    }

    /// Bar of `this` axle for a lean at one unit of acceleration, the `other` as it is.
    fn bar_for_gradient(&self, this: &Axle, other: &Axle, phi: f64) -> Result<f64> {
        let (per_angle, less) = other.elastic();
        let elastic = self.overturning()? * (1.0 + STANDARD_GRAVITY * phi) - (per_angle * phi - less);
        let wanted = NoSolution::new("").of("roll_gradient", RollGradient::from_si(phi));
        this.bar_for(elastic, phi, wanted)
    }

    /// Bar of `this` axle for its share of the load transfer, the `other` as it is.
    fn bar_for_share(&self, this: &Axle, other: &Axle, share: f64, wanted: NoSolution) -> Result<f64> {
        let (per_angle, less) = other.elastic();
        let split = share / (1.0 - share) * other.transfer_of(1.0) / this.transfer_of(1.0);
        // this + c = split (other + c), other = per_angle phi - less, this + other = m_s h_1 (1 + g phi)
        let overturning = self.overturning()?;
        let righting = per_angle * (1.0 + split) - overturning * STANDARD_GRAVITY;
        let phi = (overturning + this.moment() + less - split * (other.moment() - less)) / righting;
        if righting <= 0.0 || phi <= 0.0 {
            return Err(no_bar(this, "the body would not stand upright", wanted));
        }
        let elastic = split * (per_angle * phi - less + other.moment()) - this.moment();
        this.bar_for(elastic, phi, wanted)
    }
}

/// Load that the outer wheel of an axle gains.
#[derive(Debug, Clone, Copy)]
struct Turned {
    unsprung: f64,
    geometric: f64,
    elastic: f64,
}

impl Turned {
    fn of(axle: &Axle, phi: f64, a: f64) -> Self {
        let lean = (axle.suspension() * phi + a * axle.moment()) / (axle.suspension() + axle.upright());
        let pull = (a + STANDARD_GRAVITY * lean) / axle.track;
        Self {
            unsprung: axle.unsprung_moment * pull,
            geometric: axle.sprung_moment * pull,
            elastic: axle.suspension() * (phi - lean) / axle.track,
        }
    }
    fn transfer(&self) -> f64 {
        self.unsprung + self.geometric + self.elastic
    }
}

fn share(front: f64, rear: f64) -> Result<Ratio> {
    front_transfer_share(Force::from_si(front), Force::from_si(rear))
}

fn of_axle(name: &str, field: &str, message: &str) -> Error {
    let key = if field.is_empty() { name.to_owned() } else { format!("{name}.{field}") };
    Error::document(key, message)
}

#[cfg(test)]
mod tests;

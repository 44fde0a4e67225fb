use crate::base::document::{Model, Value};
use crate::base::numeric::hypot;
use crate::base::table::record;
use crate::base::valid::whole;
use crate::units::{Force, Length, Ratio};
use crate::{Result, valid};

/// Studs that clamp a wheel to its hub: slip of the face and clamp under the tyre's grip.
///
/// # Formula
/// at each stud: clamp `C = F_least - F_z`; slip `m_f (C - m N / n) / (m N r / (n R_f) + N sqrt(1 + m^2) / n)`; clamp kept if `C / (m N / n + 2 (m r + o) N / (n R))` is above 1, with the radii `R_f` of the face and `R` of the studs
///
/// # Fields
/// - `studs` — `n`, whole number of studs or wheel bolts
/// - `bolt_circle` — `2 R`, diameter of the circle through the studs
/// - `face_diameter` — `2 R_f`, mean diameter of the face on which the wheel presses; if it is left out, that of the bolt circle counts, and `open` says so
/// - `least_preload` — `F_least`, preload of the loosest stud (see `fastener.Tightening`); without it nothing is known
/// - `embedding_loss` — `F_z`, preload that is lost as wheel and seats settle; if it is left out, none is counted, and `open` says so
/// - `face_friction` — `m_f`, low bound of the friction between wheel and hub; common practice, no source: 0.1 painted, 0.15 clean; without it slip is not known
/// - `wheel_load` — `N`, peak load on the ground under the wheel, with load transfer and its load case
/// - `grip` — `m`, high bound of the tyre's grip
/// - `loaded_radius` — `r`, wheel centre to ground under load
/// - `face_offset` — `o`, size of the distance between the wheel's middle plane and its mounting face, with a spacer; if it is left out, none is counted, and `open` says so
///
/// # Valid for
/// Equal studs at equal angles, a stiff wheel on a flat face, friction alone: what the seats carry sideways is not counted. Braking torque and side force are both counted at full grip at once, which is on the safe side.
/// If something is missing that could still take from a margin, `open` names it: the margin is then an upper bound, no better than `tight`.
///
/// # Source
/// Coulomb friction on a ring of equal clamps and statics of equal springs about the centroid; own combination of both, common practice, no source
///
/// # Caution
/// A wheel that moves on its face works its nuts loose and comes off. Use nuts of the wheel's seat and the maker's torque, without grease unless he says so, and check them after 50 km. Paint and spacers under the face lose clamp. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WheelStuds {
    /// Number of studs.
    pub studs: Value<Ratio>,
    /// Diameter of the circle through the studs.
    pub bolt_circle: Value<Length>,
    /// Mean diameter of the face on which the wheel presses.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub face_diameter: Option<Value<Length>>,
    /// Preload of the loosest stud.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_preload: Option<Value<Force>>,
    /// Preload that is lost as wheel and seats settle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub embedding_loss: Option<Value<Force>>,
    /// Low bound of the friction between wheel and hub.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub face_friction: Option<Value<Ratio>>,
    /// Peak load on the ground under the wheel.
    pub wheel_load: Value<Force>,
    /// High bound of the tyre's grip.
    pub grip: Value<Ratio>,
    /// Wheel centre to ground under load.
    pub loaded_radius: Value<Length>,
    /// Distance between the wheel's middle plane and its mounting face.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub face_offset: Option<Value<Length>>,
}

record! {
    /// Slip of a wheel on its face.
    #[derive(Debug, Clone, PartialEq)]
    pub struct StudSlip {
        /// Friction force under each stud.
        pub capacity: Force,
        /// Force that each stud's place must hold: torque and load of the wheel.
        pub demand: Force,
        /// Capacity over demand.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin; empty if none is missing.
        pub open: String,
    }
}

record! {
    /// Clamp of a wheel under a side force.
    #[derive(Debug, Clone, PartialEq)]
    pub struct StudClamp {
        /// Clamp of each stud.
        pub capacity: Force,
        /// Clamp that the side force takes from the most unloaded stud.
        pub demand: Force,
        /// Capacity over demand.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin; empty if none is missing.
        pub open: String,
    }
}

fn of<Q: Copy>(value: &Option<Value<Q>>, other: Q) -> Q {
    value.as_ref().map_or(other, |value| value.quantity)
}

impl crate::base::Sealed for WheelStuds {}
impl Model for WheelStuds {
    fn check(&self) -> Result<()> {
        let (studs, bolt_circle) = (self.studs.quantity, self.bolt_circle.quantity);
        let face_diameter = of(&self.face_diameter, bolt_circle);
        let none = Force::from_si(0.0);
        let (least_preload, embedding_loss) = (of(&self.least_preload, none), of(&self.embedding_loss, none));
        let face_friction = of(&self.face_friction, Ratio::from_si(0.1));
        let (wheel_load, grip, loaded_radius) =
            (self.wheel_load.quantity, self.grip.quantity, self.loaded_radius.quantity);
        let face_offset = of(&self.face_offset, Length::from_si(0.0));
        valid! {
            studs: 3 <= .. <= 20 ; "plausibility limit: wheels are held by 3 to 20 studs";
            bolt_circle: 0.02 <= .. <= 1 ; "plausibility limit: bolt circles are between 20 mm and 1 m wide";
            face_diameter: 0.01 <= .. <= 1 ; "plausibility limit: hub faces are between 10 mm and 1 m wide";
            least_preload: 0 <= .. <= 1e8 ; "definition: a stud is in tension; plausibility limit: at most 100 MN";
            embedding_loss: 0 <= .. <= 1e8 ; "definition: a loss; plausibility limit: at most 100 MN";
            face_friction: 0 < .. <= 1 ; "plausibility limit: clamped faces rub with less than 1";
            wheel_load: 1 <= .. <= 1e7 ; "plausibility limit: wheels carry between 1 N and 10 MN";
            grip: 0.01 <= .. <= 3 ; "plausibility limit: tyres grip with 0.01 to 3 of their load";
            loaded_radius: 0.05 <= .. <= 3 ; "plausibility limit: wheels are between 50 mm and 3 m in radius";
            face_offset: 0 <= .. <= 1 ; "definition: the size of a distance; plausibility limit: at most 1 m";
        }
        whole("studs", studs)
    }
}

impl WheelStuds {
    /// Clamp that each stud surely keeps; not a number if it is not known.
    fn kept(&self) -> Force {
        let left =
            of(&self.least_preload, Force::from_si(f64::NAN)) - of(&self.embedding_loss, Force::from_si(0.0));
        if left.si() < 0.0 { Force::from_si(0.0) } else { left }
    }

    /// Missing facts that both answers share, and those of this one.
    fn open(&self, more: &[(bool, &str)]) -> String {
        let shared = [
            (self.least_preload.is_none(), "write least_preload"),
            (self.embedding_loss.is_none(), "write embedding_loss, 0 N if there is none"),
        ];
        let open: Vec<&str> =
            shared.iter().chain(more).filter_map(|(open, text)| open.then_some(*text)).collect();
        open.join("; ")
    }

    /// Slip of the wheel on its face under braking torque, load and side force at full grip.
    ///
    /// # Returns
    /// See the fields of [`StudSlip`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, fastener::WheelStuds, units::*};
    /// let wheel = WheelStuds {
    ///     studs: Value::parse("5")?, bolt_circle: Value::parse("114.3 mm")?, face_diameter: Some(Value::parse("120 mm")?),
    ///     least_preload: Some(Value::parse("30 kN")?), embedding_loss: Some(Value::parse("3 kN")?), face_friction: Some(Value::parse("0.15")?),
    ///     wheel_load: Value::parse("6 kN")?, grip: Value::parse("1.1")?, loaded_radius: Value::parse("330 mm")?, face_offset: Some(Value::parse("20 mm")?),
    /// }.checked()?;
    /// let (slip, clamp) = (wheel.slip()?, wheel.clamp()?);
    /// assert_eq!(format!("{:.2} {:.2}", slip.margin.in_::<one>(), clamp.margin.in_::<one>()), "0.43 1.55");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn slip(&self) -> Result<StudSlip> {
        self.check()?;
        let (count, load, grip) = (self.studs.quantity.si(), self.wheel_load.quantity, self.grip.quantity);
        let side = load * grip * (1.0 / count);
        let left = self.kept() - side;
        let clamp = if left.si() < 0.0 { Force::from_si(0.0) } else { left };
        let capacity = clamp * of(&self.face_friction, Ratio::from_si(f64::NAN));
        let radius = of(&self.face_diameter, self.bolt_circle.quantity) * 0.5;
        let demand = side * (self.loaded_radius.quantity / radius) + load * (hypot(1.0, grip.si()) / count);
        let open = self.open(&[
            (self.face_friction.is_none(), "write face_friction"),
            (self.face_diameter.is_none(), "write face_diameter"),
        ]);
        Ok(StudSlip { capacity, demand, margin: capacity / demand, open })
    }

    /// Clamp of the most unloaded stud under a side force at full grip.
    ///
    /// # Returns
    /// See the fields of [`StudClamp`].
    pub fn clamp(&self) -> Result<StudClamp> {
        self.check()?;
        let (count, load, grip) = (self.studs.quantity.si(), self.wheel_load.quantity, self.grip.quantity);
        let radius = self.bolt_circle.quantity * 0.5;
        let lever = self.loaded_radius.quantity * grip + of(&self.face_offset, Length::from_si(0.0));
        let capacity = self.kept();
        let demand = load * (grip * (1.0 / count)) + load * (lever / radius * (2.0 / count));
        let open = self.open(&[(self.face_offset.is_none(), "write face_offset")]);
        Ok(StudClamp { capacity, demand, margin: capacity / demand, open })
    }
}

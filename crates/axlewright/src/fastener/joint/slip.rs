use super::joints::{GripKind, Joint, joined, margin, of};
use crate::Result;
use crate::base::document::Model;
use crate::base::table::record;
use crate::units::{Force, Ratio};

record! {
    /// Slip of a joint at the least preload.
    #[derive(Debug, Clone, PartialEq)]
    pub struct JointSlip {
        /// Force that still presses the faces together.
        pub least_clamp: Force,
        /// Shear that the faces hold by friction.
        pub capacity: Force,
        /// Shear on the joint.
        pub demand: Force,
        /// Capacity over demand; not known without a shear.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin, or why there is none; empty if none is missing.
        pub open: String,
    }
}

record! {
    /// Separation of a joint at the least preload.
    #[derive(Debug, Clone, PartialEq)]
    pub struct JointSeparation {
        /// Pull at which the faces part.
        pub capacity: Force,
        /// Pull on the joint.
        pub demand: Force,
        /// Capacity over demand; not known without a pull.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin, or why there is none; empty if none is missing.
        pub open: String,
    }
}

const HOLLOW: &str =
    "a hollow section without a crush sleeve gives way: its clamp is not known; fit a sleeve";
const NO_GRIP: &str = "write grip: solid, sleeve or hollow";
const NO_PRELOAD: &str = "write least_preload";
const NO_LOSS: &str = "write embedding_loss, 0 N if there is none";

impl Joint {
    /// Preload that surely stays after the faces have embedded; not a number if it is not known.
    fn kept(&self) -> Force {
        let unknown = Force::from_si(f64::NAN);
        if self.grip == Some(GripKind::Hollow) {
            return unknown;
        }
        let none = Force::from_si(0.0);
        let left = of(&self.least_preload, unknown) - of(&self.embedding_loss, none);
        if left < none { none } else { left }
    }

    /// Share of the pull that unloads the faces.
    fn unloading(&self) -> f64 {
        1.0 - of(&self.load_factor, Ratio::from_si(0.0)).si()
    }

    /// Slip of the faces under the shear, at the least preload.
    ///
    /// # Returns
    /// See the fields of [`JointSlip`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, fastener::*, units::*};
    /// let joint = Joint {
    ///     bolt: Bolt::new("M10", "8.8")?,
    ///     external_tension: Value::parse("2 kN")?, external_shear: Value::parse("1.5 kN")?,
    ///     least_preload: Some(Value::parse("18 kN")?), peak_preload: Some(Value::parse("32 kN")?),
    ///     embedding_loss: Some(Value::parse("2 kN")?), grip: Some(GripKind::Solid), load_factor: None,
    ///     face_friction: Some(Value::parse("0.15")?), peak_thread_friction: Some(Value::parse("0.12")?),
    ///     shear_planes: None, shear_plane: None, parts: vec![],
    /// }.checked()?;
    /// let on = joint.slip()?;
    /// assert_eq!(format!("{:.2}", on.margin.in_::<one>()), "1.40");
    /// assert_eq!(Verdict::of_ratio(on.margin, Ratio::of::<one>(1.25)), Verdict::Meets);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn slip(&self) -> Result<JointSlip> {
        self.check()?;
        let kept = self.kept();
        let left = kept - self.external_tension.quantity * self.unloading();
        let least_clamp = if left.si() < 0.0 { Force::from_si(0.0) } else { left };
        let friction = of(&self.face_friction, Ratio::from_si(f64::NAN));
        let capacity = least_clamp * friction * self.planes();
        let demand = self.external_shear.quantity;
        let open = joined([
            (self.grip == Some(GripKind::Hollow), HOLLOW),
            (self.grip.is_none(), NO_GRIP),
            (self.least_preload.is_none(), NO_PRELOAD),
            (self.embedding_loss.is_none(), NO_LOSS),
            (self.face_friction.is_none(), "write face_friction"),
            (demand.si() == 0.0, "no shear acts"),
        ]);
        Ok(JointSlip { least_clamp, capacity, demand, margin: margin(capacity, demand), open })
    }

    /// Separation of the faces under the pull, at the least preload.
    ///
    /// # Returns
    /// See the fields of [`JointSeparation`].
    pub fn separation(&self) -> Result<JointSeparation> {
        self.check()?;
        let capacity = self.kept() / self.unloading();
        let demand = self.external_tension.quantity;
        let open = joined([
            (self.grip == Some(GripKind::Hollow), HOLLOW),
            (self.grip.is_none(), NO_GRIP),
            (self.least_preload.is_none(), NO_PRELOAD),
            (self.embedding_loss.is_none(), NO_LOSS),
            (demand.si() == 0.0, "no pull acts"),
        ]);
        Ok(JointSeparation { capacity, demand, margin: margin(capacity, demand), open })
    }
}

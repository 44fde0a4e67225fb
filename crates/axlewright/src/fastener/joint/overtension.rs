use super::joint_forces::bolt_force;
use super::joints::{Joint, joined, of};
use crate::Result;
use crate::base::document::Model;
use crate::base::table::record;
use crate::fastener::tightening::{equivalent, stresses, thread_lever};
use crate::units::{Force, Length, Ratio, Stress, torque};

record! {
    /// Bolt at the peak preload, under the pull and the twist of tightening.
    #[derive(Debug, Clone, PartialEq)]
    pub struct Overtension {
        /// Tension in the bolt.
        pub bolt_force: Force,
        /// Tensile stress in the thread.
        pub tensile_stress: Stress,
        /// Shear stress of the twist.
        pub torsion_stress: Stress,
        /// Equivalent stress of both (von Mises).
        pub equivalent_stress: Stress,
        /// Yield strength over the equivalent stress.
        pub yield_margin: Ratio,
        /// Proof stress over the tensile stress.
        pub proof_margin: Ratio,
        /// Lesser of both margins.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin; empty if none is missing.
        pub open: String,
    }
}

impl Joint {
    /// Over-tension of the bolt at the peak preload, with the pull and the whole twist of tightening.
    ///
    /// # Returns
    /// See the fields of [`Overtension`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, fastener::*, units::*};
    /// let joint = Joint {
    ///     bolt: Bolt::new("M10", "8.8")?,
    ///     external_tension: Value::parse("2 kN")?, external_shear: Value::parse("1.5 kN")?,
    ///     least_preload: Some(Value::parse("15 kN")?), peak_preload: Some(Value::parse("28 kN")?),
    ///     embedding_loss: Some(Value::parse("2 kN")?), grip: Some(GripKind::Solid), load_factor: Some(Value::parse("0.2")?),
    ///     face_friction: Some(Value::parse("0.15")?), peak_thread_friction: Some(Value::parse("0.12")?),
    ///     shear_planes: None, shear_plane: None, parts: vec![],
    /// }.checked()?;
    /// let on = joint.overtension()?;
    /// assert_eq!(format!("{:.0} MPa, {:.2}", on.equivalent_stress.in_::<MPa>(), on.margin.in_::<one>()), "594 MPa, 1.08");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn overtension(&self) -> Result<Overtension> {
        self.check()?;
        let (thread, strength) = self.bolt.read()?;
        let preload = of(&self.peak_preload, Force::from_si(f64::NAN));
        let load_factor = of(&self.load_factor, Ratio::from_si(1.0));
        let force = match preload.si().is_nan() {
            true => preload,
            false => bolt_force(preload, self.external_tension.quantity, load_factor),
        };
        // Without the friction of the thread, no twist is counted.
        let lever = match &self.peak_thread_friction {
            Some(friction) => thread_lever(thread.diameter, thread.pitch, friction.quantity),
            None => Length::from_si(0.0),
        };
        let (tensile_stress, torsion_stress) = stresses(force, thread.stress_area(), torque(preload, lever));
        let equivalent_stress = equivalent(tensile_stress, torsion_stress);
        let (yield_margin, proof_margin) =
            (strength.yielding / equivalent_stress, strength.proof / tensile_stress);
        let loaded = force.si() > 0.0;
        let known = |margin: Ratio| if loaded { margin } else { Ratio::from_si(f64::NAN) };
        let open = joined([
            (self.peak_preload.is_none(), "write peak_preload"),
            (self.peak_thread_friction.is_none(), "write peak_thread_friction: the twist is not counted"),
            (!loaded && self.peak_preload.is_some(), "no force acts"),
        ]);
        Ok(Overtension {
            bolt_force: force,
            tensile_stress,
            torsion_stress,
            equivalent_stress,
            yield_margin: known(yield_margin),
            proof_margin: known(proof_margin),
            margin: known(if proof_margin < yield_margin { proof_margin } else { yield_margin }),
            open,
        })
    }
}

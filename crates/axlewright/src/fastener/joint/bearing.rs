use super::joints::{Joint, margin, of};
use crate::Result;
use crate::base::document::Model;
use crate::base::table::record;
use crate::units::{Force, Ratio};

record! {
    /// Bearing of the bolt on the weakest hole, after the faces have slipped.
    #[derive(Debug, Clone, PartialEq)]
    pub struct JointBearing {
        /// Part with the least known margin; empty if none is known.
        pub part: String,
        /// Force that its hole bears.
        pub capacity: Force,
        /// Share of the shear that it takes.
        pub demand: Force,
        /// Capacity over demand; not known without a shear.
        pub margin: Ratio,
        /// Missing facts that could still take from the margin, or why there is none; empty if none is missing.
        pub open: String,
    }
}

impl Joint {
    /// Bearing of the bolt on the holes of the clamped parts, after the faces have slipped: the part with the least margin.
    ///
    /// # Returns
    /// See the fields of [`JointBearing`].
    pub fn bearing(&self) -> Result<JointBearing> {
        self.check()?;
        let (thread, _) = self.bolt.read()?;
        let shear = self.external_shear.quantity;
        let unknown = Force::from_si(f64::NAN);
        let mut weakest = JointBearing {
            part: String::new(),
            capacity: unknown,
            demand: unknown,
            margin: Ratio::from_si(f64::NAN),
            open: String::new(),
        };
        let mut open = Vec::new();
        for part in &self.parts {
            let (Some(thickness), Some(strength)) = (&part.thickness, &part.bearing_strength) else {
                open.push(format!("write thickness and bearing_strength of {}", part.name));
                continue;
            };
            let capacity = strength.quantity * (thickness.quantity * thread.diameter);
            let demand = shear * of(&part.shear_share, Ratio::from_si(1.0));
            let margin = margin(capacity, demand);
            // The first part counts until a weaker one comes.
            if weakest.part.is_empty() || margin < weakest.margin {
                weakest = JointBearing { part: part.name.clone(), capacity, demand, margin, ..weakest };
            }
        }
        if self.parts.is_empty() {
            open.push("write the clamped parts".to_owned());
        }
        if shear.si() == 0.0 {
            open.push("no shear acts".to_owned());
        }
        Ok(JointBearing { open: open.join("; "), ..weakest })
    }
}

use super::geometry::Geometry;
use super::grade::{self, Strength};
use super::threads;
use crate::base::document::Model;
use crate::base::table::record;
use crate::base::text::refusal;
use crate::units::{Area, Force, Ratio, Stress};
use crate::{Error, Result, cannot, valid};

/// A bolt by its thread and its grade: strength and the loads that follow.
///
/// # Formula
/// proof load `S_p A_s`, yield load `S_y A_s`, tensile load `S_u A_s`
///
/// # Fields
/// - `thread` — the thread as drawings write it: `M10`, `M10x1.25`, `3/8-16 UNC`
/// - `grade` — the class of ISO 898-1 for a metric thread (`8.8`), the grade of SAE J429 for an inch thread (`5`), as the head shows it; without it nothing is known of the bolt
///
/// # Valid for
/// Steel bolts, screws and studs from M1.6 to M39 and from 1/4 in to 1-1/2 in, at room temperature. Classes: 4.6, 4.8, 5.6, 5.8, 6.8, 8.8 (by diameter), 9.8 (to M16), 10.9,
/// 12.9; grades: 1, 2 and 5 (by diameter), 8. Yield is the least yield strength, or the 0.2 % proof strength. Stainless bolts have other classes and are refused.
///
/// # Source
/// ISO 898-1:2013, table 3, and SAE J429, mechanical requirements, both from memory
///
/// # Caution
/// A head without a mark says nothing: do not use such a bolt in brakes, steering, suspension or seat belts. Hard bolts (10.9, 12.9, grade 8) crack after acid pickling or plating. The maker's data, local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `thread` and `grade`"))]
pub struct Bolt {
    /// Thread as drawings write it.
    pub thread: String,
    /// Class or grade as the head shows it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grade: Option<String>,
}

record! {
    /// Strength of a bolt's steel.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct BoltStrength {
        /// Stress under the proof load, which leaves the bolt straight.
        pub proof_stress: Stress,
        /// Least yield strength, or 0.2 % proof strength.
        pub yield_strength: Stress,
        /// Least tensile strength.
        pub tensile_strength: Stress,
    }
}

record! {
    /// Loads of a bolt along its axis.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct BoltLoads {
        /// Stress area of the thread.
        pub stress_area: Area,
        /// Load that leaves the bolt straight.
        pub proof_load: Force,
        /// Load at which the weakest bolt of this grade yields.
        pub yield_load: Force,
        /// Load at which the weakest bolt of this grade breaks.
        pub tensile_load: Force,
    }
}

const NO_GRADE: &str = "without its grade nothing is known of the bolt: write the class on its head, such as 8.8, or the SAE grade, such as 5";

impl crate::base::Sealed for Bolt {}
impl Model for Bolt {
    fn check(&self) -> Result<()> {
        self.read().map(drop)
    }
}

impl Bolt {
    /// A bolt from its markings.
    pub fn new(thread: &str, grade: &str) -> Result<Self> {
        Self { thread: thread.to_owned(), grade: Some(grade.to_owned()) }.checked()
    }

    /// Thread and strength.
    pub(in crate::fastener) fn read(&self) -> Result<(Geometry, Strength)> {
        let thread = threads::read(&self.thread)?;
        let Some(written) = &self.grade else {
            return Err(Error::Missing { argument: "grade", why: NO_GRADE });
        };
        let strength = grade::read(written, &thread).map_err(|message| refusal(written, message))?;
        Ok((thread, strength))
    }

    /// Strength of the bolt's steel.
    ///
    /// # Returns
    /// See the fields of [`BoltStrength`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{fastener::Bolt, units::*};
    /// let on = Bolt::new("M20", "8.8")?.strength()?;
    /// assert_eq!(format!("{:.0} MPa", on.proof_stress.in_::<MPa>()), "600 MPa");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn strength(&self) -> Result<BoltStrength> {
        let (_, strength) = self.read()?;
        Ok(BoltStrength {
            proof_stress: strength.proof,
            yield_strength: strength.yielding,
            tensile_strength: strength.tensile,
        })
    }

    /// Loads of the bolt along its axis, without torsion.
    ///
    /// # Returns
    /// See the fields of [`BoltLoads`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{fastener::Bolt, units::*};
    /// let on = Bolt::new("3/8-16 UNC", "5")?.loads()?;
    /// assert_eq!(format!("{:.0} lbf", on.proof_load.in_::<lbf>()), "6587 lbf");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn loads(&self) -> Result<BoltLoads> {
        let (thread, strength) = self.read()?;
        let stress_area = thread.stress_area();
        Ok(BoltLoads {
            stress_area,
            proof_load: strength.proof * stress_area,
            yield_load: strength.yielding * stress_area,
            tensile_load: strength.tensile * stress_area,
        })
    }

    /// Preload over proof load; a preload above the proof load is refused.
    ///
    /// # Parameters
    /// - `preload` — tension in the bolt after tightening
    ///
    /// # Returns
    /// The share of the proof load. Common practice, from Shigley's Mechanical Engineering Design (from memory): 0.75 for a joint that is opened again, 0.90 for one that stays closed.
    pub fn proof_share(&self, preload: Force) -> Result<Ratio> {
        valid! { preload: 0 <= .. <= 1e9 ; "definition: a bolt is in tension; plausibility limit: at most 1 GN"; }
        let proof_load = self.loads()?.proof_load;
        if preload > proof_load {
            return Err(
                cannot!(preload <= proof_load; "is above the proof load of the bolt: it stays stretched"),
            );
        }
        Ok(preload / proof_load)
    }
}

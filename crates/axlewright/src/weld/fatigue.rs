use crate::base::document::{Model, Value};
use crate::base::table::record;
use crate::units::{Ratio, Stress};
use crate::{Error, Result, valid};

/// Fatigue of a detail under a spectrum of stress ranges: damage after Miner, with the slopes and the cut-off of EN 1993-1-9.
///
/// # Formula
/// `dsigma_D = 0.737 dsigma_C` at 5e6 cycles, `dsigma_L = 0.549 dsigma_D` at 1e8; `N = 5e6 (dsigma_D / dsigma)^3` above `dsigma_D`, `5e6 (dsigma_D / dsigma)^5` down to `dsigma_L`, no limit below;
/// damage `D = sum n / N`, each range times `gamma` first
///
/// # Fields
/// - `detail_class` — `dsigma_C`, stress range that the detail bears for 2 million cycles, from the standard's table of details
/// - `partial_factor` — `gamma`, factor on each stress range: 1.35 for a detail whose failure can hurt someone and gives no warning (EN 1993-1-9, safe life, high consequence, from memory)
/// - `spectrum` — blocks of equal stress ranges, each with `stress_range` and its number of `cycles` over the whole life
///
/// # Valid for
/// Nominal stress ranges in steel, at the detail as its class defines it, without corrosion; at most 1.5 times the yield strength. Peak loads of abuse are no fatigue load: write what is driven. If a range exceeds `dsigma_D`, the smaller
/// ranges do damage down to the cut-off. If none does, none does damage.
///
/// # Source
/// EN 1993-1-9:2005, 7.1 and figure 7.1, annex A (from memory); M. A. Miner, *Cumulative Damage in Fatigue*, J. Appl. Mech. 12 (1945)
///
/// # Caution
/// A detail class holds for sound welds only, and a visible crack ends the life of the part at once. A frame, steering or suspension part that cracks can kill. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Fatigue {
    /// Stress range that the detail bears for 2 million cycles.
    pub detail_class: Value<Stress>,
    /// Factor on each stress range.
    pub partial_factor: Value<Ratio>,
    /// Blocks of equal stress ranges.
    pub spectrum: Vec<StressBlock>,
}

/// Cycles of one stress range.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `stress_range` and `cycles`"))]
pub struct StressBlock {
    /// Stress range: highest less lowest stress of a cycle.
    pub stress_range: Value<Stress>,
    /// Number of cycles over the whole life.
    pub cycles: Value<Ratio>,
}

record! {
    /// Fatigue of a detail.
    #[derive(Debug, Clone, PartialEq)]
    pub struct Damage {
        /// Damage of the whole spectrum; at 1, the detail is used up.
        pub damage: Ratio,
        /// Lives of the spectrum until the damage is 1; infinite if no range does damage.
        pub lives: Ratio,
        /// Block that does most damage, counted from 1; zero if none does.
        pub worst_block: i64,
        /// Damage of that block.
        pub worst_damage: Ratio,
        /// Stress range at 5 million cycles, where the slope changes.
        pub knee: Stress,
        /// Stress range below which no cycle does damage.
        pub cut_off: Stress,
    }
}

impl crate::base::Sealed for Fatigue {}
impl Model for Fatigue {
    fn check(&self) -> Result<()> {
        let (detail_class, partial_factor) = (self.detail_class.quantity, self.partial_factor.quantity);
        valid! {
            detail_class: 10000000 <= .. <= 200000000 ; "EN 1993-1-9: classes are 36 MPa to 160 MPa (from memory); plausibility limit: 10 MPa to 200 MPa";
            partial_factor: 1 <= .. <= 5 ; "definition: a factor against the detail";
        }
        if self.spectrum.is_empty() {
            let message = "there is no block: write each with `stress_range` and `cycles`";
            return Err(Error::document("spectrum", message));
        }
        for (place, block) in self.spectrum.iter().enumerate() {
            block.check().map_err(|error| error.within(&format!("spectrum[{place}]")))?;
        }
        Ok(())
    }
}

impl StressBlock {
    fn check(&self) -> Result<()> {
        let (stress_range, cycles) = (self.stress_range.quantity, self.cycles.quantity);
        valid! {
            stress_range: 0 <= .. <= 3e9 ; "definition: a range is not negative; plausibility limit: at most 3 GPa";
            cycles: 0 <= .. <= 1e12 ; "definition: a count; plausibility limit: at most 1e12";
        }
        Ok(())
    }
}

/// Cycles at which the slope changes.
const KNEE: f64 = 5e6;
/// Stress ranges at the knee over the class, and at the cut-off over the knee.
const KNEE_OVER_CLASS: f64 = 0.736_806_299_728_077; // (2 / 5)^(1/3)
const CUT_OFF_OVER_KNEE: f64 = 0.549_280_271_653_059; // (5 / 100)^(1/5)

impl Fatigue {
    /// Damage of the spectrum.
    ///
    /// # Returns
    /// See the fields of [`Damage`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, units::*, weld::Fatigue};
    /// # #[cfg(feature = "serde")] {
    /// let tab = Fatigue::from_text(r#"
    ///     detail_class = "63 MPa"
    ///     partial_factor = 1.35
    ///     spectrum = [
    ///         { stress_range = "80 MPa", cycles = 20000 },
    ///         { stress_range = "30 MPa", cycles = 2e6 },
    ///     ]
    /// "#)?;
    /// let on = tab.damage()?;
    /// assert_eq!(format!("{:.2} of a life, most of it by block {}", on.damage.si(), on.worst_block), "0.25 of a life, most of it by block 2");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn damage(&self) -> Result<Damage> {
        self.check()?;
        let knee = self.detail_class.quantity.si() * KNEE_OVER_CLASS;
        let cut_off = knee * CUT_OFF_OVER_KNEE;
        let ranges: Vec<f64> = self
            .spectrum
            .iter()
            .map(|block| block.stress_range.quantity.si() * self.partial_factor.quantity.si())
            .collect();
        // Ranges that are all below the knee open no crack; beside a greater one they make it grow.
        let grows = self
            .spectrum
            .iter()
            .zip(&ranges)
            .any(|(block, range)| *range > knee && block.cycles.quantity.si() > 0.0);
        let (mut damage, mut worst_block, mut worst_damage) = (0.0, 0, 0.0);
        for (place, (block, range)) in self.spectrum.iter().zip(&ranges).enumerate() {
            let over = range / knee;
            let slope = if over > 1.0 { 3 } else { 5 };
            let does = if grows && *range > cut_off {
                block.cycles.quantity.si() * over.powi(slope) / KNEE
            } else {
                0.0
            };
            damage += does;
            if does > worst_damage {
                (worst_block, worst_damage) = (place + 1, does);
            }
        }
        Ok(Damage {
            damage: Ratio::from_si(damage),
            lives: Ratio::from_si(1.0 / damage),
            worst_block: i64::try_from(worst_block).unwrap_or(i64::MAX),
            worst_damage: Ratio::from_si(worst_damage),
            knee: Stress::from_si(knee),
            cut_off: Stress::from_si(cut_off),
        })
    }
}

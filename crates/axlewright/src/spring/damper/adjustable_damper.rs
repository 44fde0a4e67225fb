use super::damper_curve::{DamperPoint, ROD_SPEED, measured, of_damper, through_rest};
use crate::base::document::{Model, Value};
use crate::base::error::NoSolution;
use crate::base::numeric::MonotoneCubic;
use crate::base::table::{Filling, Table, record};
use crate::spring::{damper_rate_for_ratio, damping_ratio, wheel_damping};
use crate::units::{Damping, Force, LinearStiffness, Mass, Ratio, Velocity};
use crate::{Error, Result, cannot, valid};

/// A damper with an adjuster for bump and another for rebound, each measured at its settings.
///
/// # Formula
/// Wanted secants `c_b = 2 c (1 - s)` and `c_r = 2 c s` with `c = zeta 2 sqrt(k m) / r^2`; of each adjuster the setting whose secant
/// `F(v) / v` is nearest, the first one where two are as near
///
/// # Fields
/// - `gas_force` — force that pushes the rod out at rest; the forces of all points include it
/// - `bump` — settings of the bump adjuster, each with its name (`setting`) and its points, with positive velocities
/// - `rebound` — settings of the rebound adjuster, each with its name and its points, with negative velocities
///
/// # Valid for
/// Adjusters that do not affect each other: measure bump at the middle setting of rebound, and rebound at the middle setting of bump. A setting counts up to the velocity of
/// its last point. Otherwise as `spring::DamperCurve`.
///
/// # Source
/// Secant at a velocity, gas force removed; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 22 (from memory)
///
/// # Caution
/// Settings that suit a figure may not suit the road: change little at a time, both sides of an axle alike. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct AdjustableDamper {
    /// Force that pushes the rod out at rest; the forces of all points include it.
    pub gas_force: Value<Force>,
    /// Settings of the bump adjuster.
    pub bump: Vec<DamperSetting>,
    /// Settings of the rebound adjuster.
    pub rebound: Vec<DamperSetting>,
}

/// One setting of one adjuster.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `setting` and `points`"))]
pub struct DamperSetting {
    /// Name of the setting, such as the clicks from closed.
    pub setting: String,
    /// Points in order of velocity, at least one.
    pub points: Vec<DamperPoint>,
}

record! {
    /// The settings to choose.
    #[derive(Debug, Clone, PartialEq)]
    pub struct SettingChoice {
        /// Setting of the bump adjuster.
        pub bump_setting: String,
        /// Setting of the rebound adjuster.
        pub rebound_setting: String,
        /// Secant in bump at that setting, gas force taken off.
        pub bump_damping: Damping,
        /// Secant in rebound at that setting.
        pub rebound_damping: Damping,
        /// Damping ratio with both settings.
        pub achieved_ratio: Ratio,
        /// Share of rebound in the damping with both settings.
        pub achieved_rebound_share: Ratio,
        /// Damping ratio with both settings minus the wanted one; it remains if the adjusters end or their steps are coarse.
        pub ratio_error: Ratio,
    }
}

/// A setting in numbers: its curve, and the sign of its velocities.
struct Measured<'a> {
    setting: &'a str,
    curve: MonotoneCubic,
    sign: f64,
}

impl Measured<'_> {
    fn damping(&self, velocity: f64) -> Result<f64> {
        of_damper(&self.curve, self.sign * velocity).map(|force| force / (self.sign * velocity))
    }
}

impl crate::base::Sealed for AdjustableDamper {}
impl Model for AdjustableDamper {
    fn check(&self) -> Result<()> {
        self.measured("bump", &self.bump, 1.0)?;
        self.measured("rebound", &self.rebound, -1.0).map(drop)
    }
}

impl AdjustableDamper {
    /// The setting of each adjuster that comes nearest to a wanted damping ratio and split.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, without sign: that of the wheel times the motion ratio
    /// - `wanted_ratio` — damping ratio, mean of bump and rebound
    /// - `rebound_share` — wanted rebound over both; two thirds are common practice on the road, no source
    /// - `damper_motion_ratio` — shortening of the damper over travel of the wheel
    /// - `tangent_rate` — wheel rate, or ride rate with the tyre in series (say which one it was)
    /// - `sprung_mass` — the scale reading of the wheel less its unsprung mass
    ///
    /// # Returns
    /// See the fields of [`SettingChoice`].
    ///
    /// # Valid for
    /// - `0 < velocity <= 100`
    /// - `0 < wanted_ratio <= 10`
    /// - `0 < rebound_share < 1`
    /// - `0.05 <= damper_motion_ratio <= 1.5`
    /// - `1 <= tangent_rate <= 1000000000`
    /// - `0.001 <= sprung_mass <= 1000000`
    ///
    /// Each adjuster is set by itself: the sum of squares of both misses is the least there is.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, spring::AdjustableDamper, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let damper = AdjustableDamper::from_text(r#"
    ///     gas_force = "150 N"
    ///     bump = [
    ///         { setting = "4 clicks", points = [{ velocity = "0.13 m/s", force = "650 N" }] },
    ///         { setting = "8 clicks", points = [{ velocity = "0.13 m/s", force = "500 N" }] },
    ///     ]
    ///     rebound = [
    ///         { setting = "3 clicks", points = [{ velocity = "-0.13 m/s", force = "-1000 N" }] },
    ///         { setting = "6 clicks", points = [{ velocity = "-0.13 m/s", force = "-700 N" }] },
    ///     ]
    /// "#)?;
    /// let on = damper.choice(
    ///     Velocity::of::<m_s>(0.13), Ratio::of::<one>(0.3), Ratio::of::<percent>(65.0), Ratio::of::<one>(0.7), LinearStiffness::of::<N_mm>(30.0), Mass::of::<kg>(350.0),
    /// )?;
    /// assert_eq!(format!("{} and {}: {:.2}", on.bump_setting, on.rebound_setting, on.achieved_ratio.in_::<one>()), "8 clicks and 6 clicks: 0.35");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn choice(
        &self,
        velocity: Velocity,
        wanted_ratio: Ratio,
        rebound_share: Ratio,
        damper_motion_ratio: Ratio,
        tangent_rate: LinearStiffness,
        sprung_mass: Mass,
    ) -> Result<SettingChoice> {
        valid! {
            velocity: 0 < .. <= 100 ; "definition: a secant from rest; plausibility limit: no damper moves at 100 m/s";
            wanted_ratio: 0 < .. <= 10 ; "plausibility limit: above 10 it is a percentage";
            rebound_share: 0 < .. < 1 ; "definition: a share of both";
            damper_motion_ratio: 0.05 <= .. <= 1.5 ; "plausibility limit: below 0.05 no damper works, above 1.5 it is a percentage or an inverted ratio";
            tangent_rate: 1 <= .. <= 1e9 ; "definition: only a positive rate brings the mass back; springs lie between 1 N/m and 1 GN/m";
            sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: a wheel carries between 1 g and 1000 t";
        }
        let wanted =
            2.0 * damper_rate_for_ratio(wanted_ratio, tangent_rate, sprung_mass, damper_motion_ratio)?.si();
        let share = rebound_share.si();
        let bump = self.measured("bump", &self.bump, 1.0)?;
        let rebound = self.measured("rebound", &self.rebound, -1.0)?;
        let (bump_setting, bump_damping) = nearest("bump", &bump, velocity.si(), wanted * (1.0 - share))?;
        let (rebound_setting, rebound_damping) = nearest("rebound", &rebound, velocity.si(), wanted * share)?;
        let sum = bump_damping + rebound_damping;
        if sum <= 0.0 {
            let refusal = NoSolution::new("meets no force in the nearest settings");
            return Err(Error::no_solution(refusal.of("velocity", velocity).in_units(&ROD_SPEED)));
        }
        let at_wheel = wheel_damping(Damping::from_si(sum / 2.0), damper_motion_ratio)?;
        let achieved_ratio = damping_ratio(at_wheel, tangent_rate, sprung_mass)?;
        Ok(SettingChoice {
            bump_setting,
            rebound_setting,
            bump_damping: Damping::from_si(bump_damping),
            rebound_damping: Damping::from_si(rebound_damping),
            achieved_ratio,
            achieved_rebound_share: Ratio::from_si(rebound_damping / sum),
            ratio_error: achieved_ratio - wanted_ratio,
        })
    }

    /// Every pair of settings over velocities.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, without sign
    ///
    /// # Returns
    /// One row for each velocity and pair: `velocity`, `bump_setting`, `rebound_setting`, `bump_damping`, `rebound_damping`, `mean_damping`, `rebound_share`; a velocity
    /// beyond the points of a setting is a refused row.
    pub fn table(&self, velocity: &[Velocity]) -> Result<Table> {
        let bump = self.measured("bump", &self.bump, 1.0)?;
        let rebound = self.measured("rebound", &self.rebound, -1.0)?;
        let names = ["velocity", "bump_setting", "rebound_setting"];
        let mut rows = Filling::over(names, &[velocity.len(), bump.len(), rebound.len()])?;
        for velocity in velocity {
            for bump in &bump {
                for rebound in &rebound {
                    let on = secants(bump, rebound, *velocity);
                    rows.push((*velocity, bump.setting, rebound.setting), on)?;
                }
            }
        }
        rows.finish()
    }

    fn measured<'a>(
        &self,
        list: &'static str,
        settings: &'a [DamperSetting],
        sign: f64,
    ) -> Result<Vec<Measured<'a>>> {
        let refused = |place: usize, message: &str| Error::document(format!("{list}[{place}]"), message);
        if settings.is_empty() {
            return Err(cannot!("{list}: give at least one setting"));
        }
        let mut curves: Vec<Measured<'a>> = Vec::with_capacity(settings.len());
        for (place, on) in settings.iter().enumerate() {
            let points = measured(&format!("{list}[{place}].points"), &on.points, self.gas_force.quantity)?;
            if points.is_empty() {
                return Err(refused(place, "points: give at least one"));
            }
            if points.iter().any(|(velocity, _)| velocity * sign < 0.0) {
                return Err(refused(
                    place,
                    "points: write velocities as positive in bump and negative in rebound",
                ));
            }
            if curves.iter().any(|before| before.setting == on.setting) {
                return Err(refused(place, "setting: this name stands twice; name each setting once"));
            }
            curves.push(Measured { setting: &on.setting, curve: through_rest(points.into_iter())?, sign });
        }
        Ok(curves)
    }
}

record! {
    /// Damping of a pair of settings.
    struct Secants {
        bump_damping: Damping,
        rebound_damping: Damping,
        mean_damping: Damping,
        rebound_share: Ratio,
    }
}

fn secants(bump: &Measured<'_>, rebound: &Measured<'_>, velocity: Velocity) -> Result<Secants> {
    valid! { velocity: 0 < .. <= 100 ; "definition: a secant from rest; plausibility limit: no damper moves at 100 m/s"; }
    let (of_bump, of_rebound) = (bump.damping(velocity.si())?, rebound.damping(velocity.si())?);
    let sum = of_bump + of_rebound;
    Ok(Secants {
        bump_damping: Damping::from_si(of_bump),
        rebound_damping: Damping::from_si(of_rebound),
        mean_damping: Damping::from_si(sum / 2.0),
        rebound_share: Ratio::from_si(of_rebound / sum),
    })
}

/// Name and secant of the setting whose secant is nearest; settings that were not measured so fast are left out.
fn nearest(list: &str, settings: &[Measured<'_>], velocity: f64, wanted: f64) -> Result<(String, f64)> {
    let mut best: Option<(&str, f64)> = None;
    for on in settings {
        if let Ok(damping) = on.damping(velocity)
            && best.is_none_or(|(_, so_far)| (damping - wanted).abs() < (so_far - wanted).abs())
        {
            best = Some((on.setting, damping));
        }
    }
    match best {
        Some((setting, damping)) => Ok((setting.to_owned(), damping)),
        None => {
            let velocity = Velocity::from_si(velocity);
            let refusal = NoSolution::new(format!("is beyond the points of every {list} setting"));
            Err(Error::no_solution(refusal.of("velocity", velocity).in_units(&ROD_SPEED)))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn setting(name: &str, sign: f64, damping: f64) -> DamperSetting {
        let point = |velocity: f64| DamperPoint {
            velocity: Value::new(Velocity::from_si(sign * velocity)),
            force: Value::new(Force::from_si(sign * velocity * damping + 100.0)),
        };
        let mut points = vec![point(0.1), point(0.3)];
        if sign < 0.0 {
            points.reverse();
        }
        DamperSetting { setting: name.to_owned(), points }
    }

    fn damper() -> AdjustableDamper {
        AdjustableDamper {
            gas_force: Value::new(Force::from_si(100.0)),
            bump: (0..5).map(|n| setting(&n.to_string(), 1.0, 1000.0 + 250.0 * f64::from(n))).collect(),
            rebound: (0..5).map(|n| setting(&n.to_string(), -1.0, 2000.0 + 500.0 * f64::from(n))).collect(),
        }
    }

    fn choice(of: &AdjustableDamper, velocity: f64, wanted: f64) -> Result<SettingChoice> {
        // k = 40 kN/m, m = 400 kg: critical 8000 N·s/m at the wheel; at half the motion four times as much at the damper.
        of.choice(
            Velocity::from_si(velocity),
            Ratio::from_si(wanted),
            Ratio::from_si(2.0 / 3.0),
            Ratio::from_si(1.0),
            LinearStiffness::from_si(40e3),
            Mass::from_si(400.0),
        )
    }

    #[test]
    fn the_nearest_settings_are_chosen() {
        // By hand: mean 0.3 * 8000 = 2400, bump 1600, rebound 3200: nearest 1500 and 3000, mean 2250.
        let on = choice(&damper(), 0.2, 0.3).unwrap();
        assert_eq!((on.bump_setting.as_str(), on.rebound_setting.as_str()), ("2", "2"));
        assert_relative_eq!(on.achieved_ratio.si(), 2250.0 / 8000.0, max_relative = 1e-12);
        assert_relative_eq!(on.achieved_rebound_share.si(), 2.0 / 3.0, max_relative = 1e-12);
        assert_relative_eq!(on.ratio_error.si(), 2250.0 / 8000.0 - 0.3, max_relative = 1e-9);
        let end = choice(&damper(), 0.2, 2.0).unwrap();
        assert_eq!((end.bump_setting.as_str(), end.rebound_setting.as_str()), ("4", "4"));
    }

    #[test]
    fn no_pair_of_settings_is_nearer() {
        let damper = damper();
        let table = damper.table(&[Velocity::from_si(0.17)]).unwrap();
        assert_eq!(table.rows(), 25);
        for wanted in [0.1, 0.27, 0.33, 0.41, 0.9] {
            let on = choice(&damper, 0.17, wanted).unwrap();
            let (bump, rebound) = (wanted * 16000.0 / 3.0, wanted * 32000.0 / 3.0);
            let miss = |b: f64, r: f64| (b - bump).powi(2) + (r - rebound).powi(2);
            let chosen = miss(on.bump_damping.si(), on.rebound_damping.si());
            let (of_bump, of_rebound) =
                (table.numbers("bump_damping").unwrap(), table.numbers("rebound_damping").unwrap());
            assert!(of_bump.iter().zip(of_rebound).all(|(b, r)| miss(*b, *r) >= chosen * (1.0 - 1e-12)));
        }
    }

    #[test]
    fn what_cannot_be_is_named() {
        let full = damper();
        let refused = |changed: AdjustableDamper| changed.check().unwrap_err().to_string();
        assert!(
            refused(AdjustableDamper { bump: vec![], ..full.clone() }).starts_with("bump: give at least one")
        );
        let twice = vec![setting("a", 1.0, 1000.0), setting("a", 1.0, 2000.0)];
        assert!(refused(AdjustableDamper { bump: twice, ..full.clone() }).starts_with("bump[1]: setting"));
        let turned = vec![setting("a", 1.0, 1000.0)];
        assert!(
            refused(AdjustableDamper { rebound: turned, ..full.clone() }).starts_with("rebound[0]: points")
        );
        assert!(choice(&full, 0.5, 0.3).unwrap_err().to_string().starts_with("velocity = 0.5"));
        assert!(choice(&full, 0.2, 30.0).unwrap_err().to_string().starts_with("wanted_ratio"));
    }
}

use crate::base::document::{Model, Value};
use crate::base::error::NoSolution;
use crate::base::numeric::{MonotoneCubic, sine_cosine};
use crate::base::table::{Filling, Table, record};
use crate::base::text::{DIGITS, said, said_in};
use crate::spring::{damping_ratio, wheel_damping};
use crate::units::{Damping, Force, LinearStiffness, Mass, Ratio, Unit, UnitOf, Velocity, in_s, m_s};
use crate::{Error, Result, cannot, valid};
use core::f64::consts::{FRAC_PI_2, PI};

/// A damper's force over velocity through points, as a damper dynamometer gives them.
///
/// # Formula
/// Monotone cubic `F(v)` through the points less the gas force `F_0`, and through nothing at rest; secants `c_b = F(v) / v` and `c_r = F(-v) / (-v)`,
/// mean `c = (c_b + c_r) / 2`, split `c_r / (c_b + c_r)`; over a cycle of peak velocity `v` the linear damper that takes the same energy
/// `c_e = 1 / (pi v) * integral of F(v cos(u)) cos(u) over a turn`
///
/// # Fields
/// - `gas_force` — `F_0`, that pushes the rod out at rest and is in every force of the points; 0 N for a damper without gas, or where the dynamometer took it off
/// - `points` — points in order of velocity, at least one in rebound and one in bump, each with `velocity` (positive in bump) and `force` (positive where it pushes the eyes apart); none at rest
///
/// # Valid for
/// Velocities of the damper from the first to the last point: beyond them nothing is known and nothing is guessed. One force a velocity: position, temperature,
/// cavitation and hysteresis are left aside, and so is friction, which is not damping. In bump the force resists and in rebound too, the gas force taken off.
///
/// # Source
/// Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; equivalent viscous damping by energy: Den Hartog, Mechanical Vibrations, and Dixon, The Shock
/// Absorber Handbook (both from memory)
///
/// # Caution
/// A gas damper is under pressure even at rest and must not be opened or heated. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DamperCurve {
    /// Force that pushes the rod out at rest, and is in every force of the points.
    pub gas_force: Value<Force>,
    /// In order of velocity, at least one in rebound and one in bump.
    pub points: Vec<DamperPoint>,
}

/// One point of a damper's curve.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `velocity` and `force`"))]
pub struct DamperPoint {
    /// Velocity of the damper, positive in bump.
    pub velocity: Value<Velocity>,
    /// At that velocity, gas force included; positive where it pushes the eyes apart.
    pub force: Value<Force>,
}

record! {
    /// A damper at one velocity in bump and the same in rebound.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct DampingAt {
        /// Secant in bump, gas force taken off.
        pub bump_damping: Damping,
        /// Secant in rebound, gas force taken off.
        pub rebound_damping: Damping,
        /// Mean of the two: half of each cycle takes its energy by one of them, so that this is their mean by energy.
        pub mean_damping: Damping,
        /// Rebound over both.
        pub rebound_share: Ratio,
        /// Damping of the linear damper that takes the same energy over a cycle of that peak velocity; above the mean if the curve flattens.
        pub cycle_damping: Damping,
    }
}

impl crate::base::Sealed for DamperCurve {}
impl Model for DamperCurve {
    fn check(&self) -> Result<()> {
        self.curve().map(drop)
    }
}

record! {
    /// Forces as the dynamometer reads them.
    struct Forces {
        bump_force: Force,
        rebound_force: Force,
    }
}

impl DamperCurve {
    /// Force at a velocity, as the dynamometer reads it.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, positive in bump; between the first and the last point
    ///
    /// # Returns
    /// Force that pushes the eyes apart, gas force included.
    pub fn force(&self, velocity: Velocity) -> Result<Force> {
        let curve = self.curve()?;
        Ok(Force::from_si(of_damper(&curve, velocity.si())? + self.gas_force.quantity.si()))
    }

    /// Damping at a velocity in bump and the same in rebound: secants, their mean by energy, the split.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, without sign; both ways between the points
    ///
    /// # Returns
    /// See the fields of [`DampingAt`].
    ///
    /// # Valid for
    /// - `0 < velocity <= 100`
    ///
    /// Between the points in both directions.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Value, spring::*, units::*};
    /// let at = |velocity, force| DamperPoint { velocity: Value::new(Velocity::of::<mm_s>(velocity)), force: Value::new(Force::of::<N>(force)) };
    /// let damper = DamperCurve {
    ///     gas_force: Value::parse("150 N")?,
    ///     points: vec![at(-500.0, -1650.0), at(-130.0, -850.0), at(130.0, 550.0), at(500.0, 950.0)],
    /// };
    /// let on = damper.damping(Velocity::of::<mm_s>(130.0))?;
    /// assert_eq!(format!("{:.0} and {:.0} N·s/m", on.bump_damping.in_::<Ns_m>(), on.rebound_damping.in_::<Ns_m>()), "3077 and 7692 N·s/m");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn damping(&self, velocity: Velocity) -> Result<DampingAt> {
        valid! { velocity: 0 < .. <= 100 ; "definition: a secant from rest; plausibility limit: no damper moves at 100 m/s"; }
        damping_at(&self.curve()?, velocity.si())
    }

    /// Damping ratio of a wheel at a velocity of its damper: mean of bump and rebound by energy, secants, gas force taken off.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, without sign: that of the wheel times the motion ratio
    /// - `damper_motion_ratio` — shortening of the damper over travel of the wheel
    /// - `tangent_rate` — wheel rate, or ride rate with the tyre in series (say which one it was)
    /// - `sprung_mass` — the scale reading of the wheel less its unsprung mass
    ///
    /// # Returns
    /// The damping ratio. One damper for an axle: halve it.
    pub fn ratio(
        &self,
        velocity: Velocity,
        damper_motion_ratio: Ratio,
        tangent_rate: LinearStiffness,
        sprung_mass: Mass,
    ) -> Result<Ratio> {
        let mean = self.damping(velocity)?.mean_damping;
        damping_ratio(wheel_damping(mean, damper_motion_ratio)?, tangent_rate, sprung_mass)
    }

    /// Forces and damping over velocities.
    ///
    /// # Parameters
    /// - `velocity` — velocity of the damper, without sign
    ///
    /// # Returns
    /// One row for each velocity: `velocity`, `bump_force` and `rebound_force` as the dynamometer reads them, and the results of
    /// `damping`: `...`.
    pub fn table(&self, velocity: &[Velocity]) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["velocity"], &[velocity.len()])?;
        for velocity in velocity {
            let on = self.damping(*velocity).and_then(|on| {
                let bump_force = self.force(*velocity)?;
                let rebound_force = self.force(Velocity::from_si(-velocity.si()))?;
                Ok((Forces { bump_force, rebound_force }, on))
            });
            rows.push((*velocity,), on)?;
        }
        rows.finish()
    }

    pub(crate) fn curve(&self) -> Result<MonotoneCubic> {
        let points = measured("points", &self.points, self.gas_force.quantity)?;
        let (rebound, bump): (Vec<_>, Vec<_>) = points.into_iter().partition(|(velocity, _)| *velocity < 0.0);
        if rebound.is_empty() || bump.is_empty() {
            return Err(cannot!(
                "points: give at least one in rebound (negative velocity) and one in bump (positive velocity)"
            ));
        }
        through_rest(rebound.into_iter().chain(bump))
    }
}

/// Units in which a shop measures the speed of a damper.
pub(crate) const ROD_SPEED: [&Unit; 2] = [<m_s as UnitOf<Velocity>>::UNIT, <in_s as UnitOf<Velocity>>::UNIT];

/// Pairs of velocity and force without the gas, checked one by one.
pub(super) fn measured(list: &str, points: &[DamperPoint], gas_force: Force) -> Result<Vec<(f64, f64)>> {
    valid! { gas_force: 0 <= .. <= 1e6 ; "definition: gas pushes the rod out; plausibility limit: with less than 1 MN"; }
    let mut pairs: Vec<(f64, f64)> = Vec::with_capacity(points.len());
    for (place, point) in points.iter().enumerate() {
        let refused = |message: String| Error::document(format!("{list}[{place}]"), message);
        point.check().map_err(|error| error.within(&format!("{list}[{place}]")))?;
        let (velocity, force) = (point.velocity.quantity.si(), point.force.quantity.si() - gas_force.si());
        if velocity == 0.0 {
            return Err(refused(
                "velocity = 0: leave this point out; at rest there is only gas force and friction".to_owned(),
            ));
        }
        if velocity * force < 0.0 {
            let (force, velocity) = (said(Force::from_si(force)), said_in([velocity], &ROD_SPEED, DIGITS));
            return Err(refused(format!(
                "force less gas_force = {force} drives the damper at {velocity}: write bump forces as positive and rebound forces as negative"
            )));
        }
        if pairs.last().is_some_and(|(before, _)| *before >= velocity) {
            return Err(refused("velocity: list the points in order of velocity, each once".to_owned()));
        }
        pairs.push((velocity, force));
    }
    Ok(pairs)
}

impl DamperPoint {
    fn check(&self) -> Result<()> {
        let (velocity, force) = (self.velocity.quantity, self.force.quantity);
        valid! {
            velocity: (-100) <= .. <= 100 ; "plausibility limit: no damper moves at 100 m/s";
            force: (-1e7) <= .. <= 1e7 ; "plausibility limit: no damper of a road vehicle gives 10 MN";
        }
        Ok(())
    }
}

/// The curve through points in order and through nothing at rest.
pub(super) fn through_rest(points: impl Iterator<Item = (f64, f64)>) -> Result<MonotoneCubic> {
    let mut all: Vec<(f64, f64)> = points.collect();
    all.insert(all.partition_point(|(velocity, _)| *velocity < 0.0), (0.0, 0.0));
    MonotoneCubic::new("points", &all)
}

/// Force without the gas.
pub(super) fn of_damper(curve: &MonotoneCubic, velocity: f64) -> Result<f64> {
    let force = curve.at(velocity);
    if force.is_nan() {
        let (first, last) = curve.range();
        let [velocity, first, last] = [velocity, first, last].map(Velocity::from_si);
        let refusal = NoSolution::new("is outside the points of the curve").of("velocity", velocity);
        return Err(Error::no_solution(refusal.in_units(&ROD_SPEED).at_least(first).at_most(last)));
    }
    Ok(force)
}

fn damping_at(curve: &MonotoneCubic, velocity: f64) -> Result<DampingAt> {
    let bump = of_damper(curve, velocity)? / velocity;
    let rebound = of_damper(curve, -velocity)? / -velocity;
    if bump + rebound <= 0.0 {
        let velocity = Velocity::from_si(velocity);
        let refusal = NoSolution::new("meets no force of the damper in either direction");
        return Err(Error::no_solution(refusal.of("velocity", velocity).in_units(&ROD_SPEED)));
    }
    Ok(DampingAt {
        bump_damping: Damping::from_si(bump),
        rebound_damping: Damping::from_si(rebound),
        mean_damping: Damping::from_si((bump + rebound) / 2.0),
        rebound_share: Ratio::from_si(rebound / (bump + rebound)),
        cycle_damping: Damping::from_si(over_cycle(curve, velocity)),
    })
}

/// `c_e` by Simpson's rule over a quarter turn, which is all: both directions are taken together.
fn over_cycle(curve: &MonotoneCubic, velocity: f64) -> f64 {
    const PARTS: u32 = 2000;
    let step = FRAC_PI_2 / f64::from(PARTS);
    let at = |part: u32| {
        let (_, cosine) = sine_cosine(step * f64::from(part));
        let speed = (velocity * cosine).max(0.0);
        (curve.at(speed) - curve.at(-speed)) * cosine
    };
    let sum: f64 = (0..PARTS / 2).map(|pair| at(2 * pair) + 4.0 * at(2 * pair + 1) + at(2 * pair + 2)).sum();
    2.0 / (PI * velocity) * sum * step / 3.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn damper(gas: f64, points: &[(f64, f64)]) -> DamperCurve {
        let point = |(velocity, force): &(f64, f64)| DamperPoint {
            velocity: Value::new(Velocity::from_si(*velocity)),
            force: Value::new(Force::from_si(*force)),
        };
        DamperCurve { gas_force: Value::new(Force::from_si(gas)), points: points.iter().map(point).collect() }
    }

    #[test]
    fn the_gas_counts_for_nothing_and_two_lines_take_their_mean_over_a_cycle() {
        // 3000 N·s/m in rebound, 1500 N·s/m in bump, dense at rest so that the curve is two lines nearly.
        for gas in [0.0, 180.0] {
            let lines = [-0.6, -0.3, -0.001, 0.001, 0.3, 0.6]
                .map(|v| (v, gas + v * if v < 0.0 { 3000.0 } else { 1500.0 }));
            let on = damper(gas, &lines).damping(Velocity::from_si(0.6)).unwrap();
            assert_relative_eq!(on.bump_damping.si(), 1500.0, max_relative = 1e-9);
            assert_relative_eq!(on.rebound_damping.si(), 3000.0, max_relative = 1e-9);
            assert_relative_eq!(on.rebound_share.si(), 2.0 / 3.0, max_relative = 1e-9);
            assert_relative_eq!(on.cycle_damping.si(), on.mean_damping.si(), max_relative = 1e-2);
        }
        let linear =
            damper(50.0, &[(-0.6, 50.0 - 1200.0), (-0.2, 50.0 - 400.0), (0.2, 450.0), (0.6, 1250.0)]);
        let on = linear.damping(Velocity::from_si(0.41)).unwrap();
        for found in [on.bump_damping, on.rebound_damping, on.mean_damping, on.cycle_damping] {
            assert_relative_eq!(found.si(), 2000.0, max_relative = 1e-9);
        }
    }

    #[test]
    fn what_is_no_curve_is_named() {
        let refused = |gas: f64, points: &[(f64, f64)]| damper(gas, points).check().unwrap_err().to_string();
        assert!(refused(0.0, &[(0.1, 100.0)]).starts_with("points: give at least one in rebound"));
        assert!(refused(0.0, &[(-0.1, -1.0), (0.0, 0.0), (0.1, 1.0)]).starts_with("points[1]: velocity = 0"));
        assert!(
            refused(200.0, &[(-0.1, -100.0), (0.1, 100.0)])
                .starts_with("points[1]: force less gas_force = -100")
        );
        assert!(refused(0.0, &[(-0.1, -1.0), (0.2, 2.0), (0.1, 1.0)]).starts_with("points[2]: velocity"));
        assert!(refused(0.0, &[(-0.1, f64::NAN), (0.1, 1.0)]).starts_with("points[0]: force"));
        assert!(refused(-1.0, &[(-0.1, -1.0), (0.1, 1.0)]).starts_with("gas_force"));
        let outside = damper(0.0, &[(-0.1, -1.0), (0.2, 1.0)]).damping(Velocity::from_si(0.15)).unwrap_err();
        assert!(outside.to_string().starts_with("velocity = -0.15"), "{outside}");
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let table =
            damper(0.0, &[(-0.2, -4.0), (0.2, 2.0)]).table(&[0.1, 0.2, 0.3].map(Velocity::from_si)).unwrap();
        assert_eq!(table.numbers("rebound_force").map(|force| force[1]), Some(-4.0));
        assert!(table.reason(2).is_some_and(|error| error.to_string().contains("outside the points")));
    }
}

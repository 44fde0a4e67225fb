use crate::base::document::{Model, Value};
use crate::base::error::NoSolution;
use crate::base::numeric::root;
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::units::{Angle, Length, LinearStiffness, Mass, STANDARD_GRAVITY};
use crate::{Error, Result, cannot, valid};

/// Height of the centre of gravity from raising one axle, with its uncertainty.
///
/// # Formula
/// With `e = r_2 - r_1 - d_1 - d_2`, the angle follows from `l sin(b) + e cos(b) = H + r_2' - r_1'`. Moments about the lower wheel centre, with `(l cos(b) - e sin(b)) (1 - m_2 / m)` on
/// the far side; `d` spring deflections and `r'` loaded radii while raised. With equal radii, locked springs and the lift at the wheel centres: `h = r + l (m_2 - m_1) / (m tan(b))`.
///
/// # Fields
/// - `lower_axle_mass` — `m_1`, scale reading of the axle that stays down, vehicle level, both wheels together
/// - `raised_axle_mass` — scale reading of the axle that will be raised, vehicle level, both wheels together
/// - `lower_axle_reading` — `m_2`, scale reading of the axle that stays down, with the other one raised
/// - `lift` — `H`, rise of the raised axle against the other, from level, measured at the place that `lift_at` names
/// - `lift_at` — `wheel_centre`: includes the tyre deflection; `ground`: under the tyres, which requires the tyre rates
/// - `wheelbase` — `l`, along the vehicle
/// - `lower_loaded_radius` — `r_1`, height of the wheel centres that stay down above the ground, vehicle level
/// - `raised_loaded_radius` — `r_2`, height of the other wheel centres, vehicle level
/// - `suspension` — `locked`: blocks or solid links in place of springs; `free`: spring deflection is taken off, which requires the wheel rates
/// - `lower_tyre_rate` — tyre rate of one wheel of the axle that stays down, twin tyres together
/// - `raised_tyre_rate` — tyre rate of one wheel of the raised axle, twin tyres together
/// - `lower_wheel_rate` — wheel rate of one wheel of the axle that stays down, springs alone
/// - `raised_wheel_rate` — wheel rate of one wheel of the raised axle
/// - `lower_unsprung_mass` — unsprung mass of the axle that stays down, both wheels together
/// - `raised_unsprung_mass` — unsprung mass of the raised axle
/// - `reading_error` — largest error of an axle's reading
/// - `lift_error` — largest error of the lift
///
/// # Valid for
/// A reading of the lower axle that falls by more than the errors of both readings is refused: it is that of the raised axle, or the centre of gravity
/// lies below the wheel centres, where this weighing says little. Wheels roll freely and scales are level. Free springs are linear and deflect square to the body. Links that lift or hold the body (anti-dive) and liquids that run forward are neglected:
/// lock the suspension if you can. Errors are independent bounds with an even distribution: a standard uncertainty is the bound over the root of three.
///
/// # Source
/// Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory); uncertainty:
/// JCGM 100:2008 (GUM), 4.3.7 and 5.1 (from memory)
///
/// # Caution
/// A raised vehicle can roll off its stands and kill. Chock the wheels of the axle that stays down, strap the vehicle, use stands rated for the load, and keep out
/// from under it. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RaisedAxle {
    /// Scale reading of the axle that stays down, vehicle level.
    pub lower_axle_mass: Value<Mass>,
    /// Scale reading of the other axle, vehicle level.
    pub raised_axle_mass: Value<Mass>,
    /// Scale reading of the axle that stays down, with the other one raised.
    pub lower_axle_reading: Value<Mass>,
    /// Rise of the raised axle against the other.
    pub lift: Value<Length>,
    /// Place at which the lift was measured.
    pub lift_at: LiftAt,
    /// Wheelbase, along the vehicle.
    pub wheelbase: Value<Length>,
    /// Height of the wheel centres that stay down, vehicle level.
    pub lower_loaded_radius: Value<Length>,
    /// Height of the other wheel centres, vehicle level.
    pub raised_loaded_radius: Value<Length>,
    /// State of the suspension: free or locked.
    pub suspension: Suspension,
    /// Vertical tyre rate of one wheel of the axle that stays down, twin tyres together; needed if the lift was measured on the ground.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_tyre_rate: Option<Value<LinearStiffness>>,
    /// Vertical tyre rate of one wheel of the raised axle, twin tyres together.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub raised_tyre_rate: Option<Value<LinearStiffness>>,
    /// Wheel rate of one wheel of the axle that stays down; needed if the suspension is free.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_wheel_rate: Option<Value<LinearStiffness>>,
    /// Wheel rate of one wheel of the raised axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub raised_wheel_rate: Option<Value<LinearStiffness>>,
    /// Unsprung mass of the axle that stays down; needed if the suspension is free.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_unsprung_mass: Option<Value<Mass>>,
    /// Unsprung mass of the raised axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub raised_unsprung_mass: Option<Value<Mass>>,
    /// Largest error of an axle's reading.
    pub reading_error: Value<Mass>,
    /// Largest error of the lift.
    pub lift_error: Value<Length>,
}

/// Place at which a lift was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum LiftAt {
    /// At the wheel centres.
    WheelCentre,
    /// Under the tyres.
    Ground,
}

/// State of the suspension while a vehicle is weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Suspension {
    /// Blocks or solid links in place of springs.
    Locked,
    /// Springs free to deflect.
    Free,
}

record! {
    /// Height of the centre of gravity, with its uncertainty.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CentreHeight {
        /// Height of the centre of gravity above the ground, vehicle level.
        pub height: Length,
        /// Standard uncertainty of the height, from the three readings and the lift; twice this value covers the height in 19 of 20 cases.
        pub standard_uncertainty: Length,
        /// Error of the height with every error at its bound at once.
        pub largest_error: Length,
        /// Angle by which the body leans.
        pub angle: Angle,
        /// Error of the angle from the error of the lift.
        pub angle_error: Angle,
    }
}

/// The weighing, in coherent SI.
#[derive(Debug, Clone, Copy)]
struct Weighing {
    lower: f64,
    raised: f64,
    reading: f64,
    lift: f64,
    wheelbase: f64,
    radii: [f64; 2],
    /// Softness of both tyres of an axle (m/kg); zero if the lift includes it.
    tyres: [f64; 2],
    /// Softness of both springs of an axle (m/kg); zero if locked.
    springs: [f64; 2],
    unsprung: [f64; 2],
}

/// The raised body: angle, deflection of the lower springs, and height of the raised wheel centre over the lower one, square to the body.
#[derive(Debug, Clone, Copy)]
struct Raised {
    angle: f64,
    given: f64,
    offset: f64,
}

impl Weighing {
    fn total(&self) -> f64 {
        self.lower + self.raised
    }

    /// The posture at which the scale shows this reading.
    fn posture(&self) -> Result<Raised> {
        let at = |angle: f64| {
            let cosine = angle.cos();
            let more = (self.reading - self.unsprung[0]) * cosine - (self.lower - self.unsprung[0]);
            let less =
                (self.raised - self.unsprung[1]) - (self.total() - self.reading - self.unsprung[1]) * cosine;
            let (given, risen) = (more * self.springs[0], less * self.springs[1]);
            Raised { angle, given, offset: self.radii[1] - self.radii[0] - given - risen }
        };
        let tyres = (self.reading - self.lower) * (self.tyres[0] + self.tyres[1]);
        let wanted = self.lift + self.radii[1] - self.radii[0] + tyres;
        let gap = |angle: f64| {
            let on = at(angle);
            self.wheelbase * angle.sin() + on.offset * angle.cos() - wanted
        };
        root("angle of the raised vehicle", gap, 0.0, 1.4, 0.0).map(at).map_err(|_| {
            let (lift, wheelbase) = (Length::from_si(self.lift), Length::from_si(self.wheelbase));
            cannot!(lift, wheelbase; "cannot be reached: no angle up to 80 deg gives it with these readings and rates")
        })
    }

    fn height(&self) -> Result<f64> {
        let on = self.posture()?;
        let (sine, cosine) = on.angle.sin_cos();
        let far = self.wheelbase * cosine - on.offset * sine;
        let rear = self.raised / self.total();
        let [lower_unsprung, raised_unsprung] = self.unsprung;
        let sprung = self.total() - lower_unsprung - raised_unsprung;
        // Centre of the sprung mass from the lower wheel centre: along the level body, and square to it less the spring deflection.
        let along = (self.total() * rear - raised_unsprung) * self.wheelbase / sprung;
        let horizontal = (self.total() - self.reading - raised_unsprung) * far / sprung;
        let over = (along * cosine - horizontal) / sine + on.given;
        let high = sprung * (over + self.radii[0])
            + lower_unsprung * self.radii[0]
            + raised_unsprung * self.radii[1];
        let height = high / self.total();
        if height < 0.0 || height.is_nan() {
            let (lower_axle_reading, below) = (Mass::from_si(self.reading), said(Length::from_si(-height)));
            return Err(match height.is_nan() {
                true => cannot!(lower_axle_reading; "gives no height: check the readings and the lift"),
                false => cannot!(
                    lower_axle_reading;
                    "puts the centre of gravity {below} below the ground: check the readings and the lift"
                ),
            });
        }
        Ok(height)
    }

    /// Reading of the lower axle for this height.
    fn reading_for(&self, height: f64) -> Result<f64> {
        let at =
            |reading: f64| Weighing { reading, ..*self }.height().map_or(f64::NAN, |found| found - height);
        let (low, high) = (self.lower, self.lower + 0.999_999 * (self.raised - self.unsprung[1]));
        root("reading of the lower axle", at, low, high, 0.0).map_err(|_| {
            let height = Length::from_si(height);
            cannot!(height; "cannot be weighed: no reading of the lower axle gives it")
        })
    }
}

impl crate::base::Sealed for RaisedAxle {}
impl Model for RaisedAxle {
    fn check(&self) -> Result<()> {
        self.weighing()?.height().map(drop)
    }
}

record! {
    /// Reading and uncertainty at a lift.
    struct AtLift {
        angle: Angle,
        lower_axle_reading: Mass,
        standard_uncertainty: Length,
        largest_error: Length,
    }
}

impl RaisedAxle {
    /// Height of the centre of gravity, with its uncertainty.
    ///
    /// # Returns
    /// See the fields of [`CentreHeight`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, mass::RaisedAxle, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let weighing = RaisedAxle::from_text(r#"
    ///     lower_axle_mass = "1223 kg"
    ///     raised_axle_mass = "1177 kg"
    ///     lower_axle_reading = "1316 kg"
    ///     lift = "600 mm"
    ///     lift_at = "wheel_centre"
    ///     wheelbase = "2650 mm"
    ///     lower_loaded_radius = "340 mm"
    ///     raised_loaded_radius = "345 mm"
    ///     suspension = "locked"
    ///     reading_error = "1 kg"
    ///     lift_error = "5 mm"
    /// "#)?;
    /// let on = weighing.centre()?;
    /// assert_eq!(format!("{:.0} mm, give or take {:.0} mm", on.height.in_::<mm>(), 2.0 * on.standard_uncertainty.in_::<mm>()), "784 mm, give or take 9 mm");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn centre(&self) -> Result<CentreHeight> {
        self.sure(&self.weighing()?)
    }

    /// Reading and uncertainty over lifts, for the height that was found.
    ///
    /// # Parameters
    /// - `lift` — lifts, in any order
    ///
    /// # Returns
    /// One row a lift: `lift`, `angle`, expected `lower_axle_reading`, `standard_uncertainty` and `largest_error` of the height. A lift that the vehicle cannot reach is a refused row.
    pub fn table(&self, lift: &[Length]) -> Result<Table> {
        let weighing = self.weighing()?;
        let height = weighing.height()?;
        let mut rows = Filling::over(["lift"], &[lift.len()])?;
        for lift in lift {
            let changed = Weighing { lift: lift.si(), ..weighing };
            let on = lift_in_range(*lift).and_then(|()| {
                let reading = changed.reading_for(height)?;
                let on = self.sure(&Weighing { reading, ..changed })?;
                Ok(AtLift {
                    angle: on.angle,
                    lower_axle_reading: Mass::from_si(reading),
                    standard_uncertainty: on.standard_uncertainty,
                    largest_error: on.largest_error,
                })
            });
            rows.push((*lift,), on)?;
        }
        rows.finish()
    }

    fn sure(&self, weighing: &Weighing) -> Result<CentreHeight> {
        let (height, angle) = (weighing.height()?, weighing.posture()?.angle);
        let (reading, lift) = (self.reading_error.quantity.si(), self.lift_error.quantity.si());
        let moved = |sign: f64, which: usize| {
            let by = |of: usize, error: f64| if of == which { sign * error } else { 0.0 };
            Weighing {
                lower: weighing.lower + by(0, reading),
                raised: weighing.raised + by(1, reading),
                reading: weighing.reading + by(2, reading),
                lift: weighing.lift + by(3, lift),
                ..*weighing
            }
        };
        let (mut squares, mut sum) = (0.0, 0.0);
        for which in 0..4 {
            // Half the difference of the two bounds: the slope over the whole error.
            let half = (moved(1.0, which).height()? - moved(-1.0, which).height()?).abs() / 2.0;
            squares += half * half / 3.0;
            sum += half;
        }
        let leans = [1.0, -1.0].map(|sign| moved(sign, 3).posture().map(|on| on.angle));
        let [more, less] = leans;
        Ok(CentreHeight {
            height: Length::from_si(height),
            standard_uncertainty: Length::from_si(squares.sqrt()),
            largest_error: Length::from_si(sum),
            angle: Angle::from_si(angle),
            angle_error: Angle::from_si((more? - less?) / 2.0),
        })
    }

    fn weighing(&self) -> Result<Weighing> {
        let (lower_axle_mass, raised_axle_mass, lower_axle_reading) =
            (self.lower_axle_mass.quantity, self.raised_axle_mass.quantity, self.lower_axle_reading.quantity);
        let (lift, wheelbase, lift_error) =
            (self.lift.quantity, self.wheelbase.quantity, self.lift_error.quantity);
        let (lower_loaded_radius, raised_loaded_radius) =
            (self.lower_loaded_radius.quantity, self.raised_loaded_radius.quantity);
        let (reading_error, total_mass) = (self.reading_error.quantity, lower_axle_mass + raised_axle_mass);
        valid! {
            lower_axle_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: no axle carries 1000 t";
            raised_axle_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: no axle carries 1000 t";
            lower_axle_reading: 0.001 <= .. <= 1e6 ; "plausibility limit: no axle carries 1000 t";
            total_mass > lower_axle_reading ; "definition: the raised axle carries something";
            wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
            lower_loaded_radius: 0.001 <= .. <= 10 ; "plausibility limit: no road tyre is 20 m high";
            raised_loaded_radius: 0.001 <= .. <= 10 ; "plausibility limit: no road tyre is 20 m high";
            reading_error: 0 <= .. <= 1e6 ; "definition: a bound is not negative";
            lift_error: 0 <= .. <= 10 ; "definition: a bound is not negative";
            lift > lift_error ; "a lift within its own error gives no height";
        }
        lift_in_range(lift)?;
        // Both readings may be off by the error.
        if lower_axle_reading + reading_error * 2.0 < lower_axle_mass {
            return Err(cannot!(
                lower_axle_reading, lower_axle_mass;
                "has fallen by more than the errors of both readings, but the axle that stays down carries more once the other is raised, unless the centre of gravity lies below the wheel centres: read the scales under the axle that stays down"
            ));
        }
        let ground = self.lift_at == LiftAt::Ground;
        let free = self.suspension == Suspension::Free;
        let tyres = [
            softness(ground, "lift_at = ground", "lower_tyre_rate", &self.lower_tyre_rate)?,
            softness(ground, "lift_at = ground", "raised_tyre_rate", &self.raised_tyre_rate)?,
        ];
        let springs = [
            softness(free, "suspension = free", "lower_wheel_rate", &self.lower_wheel_rate)?,
            softness(free, "suspension = free", "raised_wheel_rate", &self.raised_wheel_rate)?,
        ];
        let unsprung = [
            unsprung(free, "lower_unsprung_mass", &self.lower_unsprung_mass, lower_axle_mass)?,
            unsprung(free, "raised_unsprung_mass", &self.raised_unsprung_mass, raised_axle_mass)?,
        ];
        Ok(Weighing {
            lower: lower_axle_mass.si(),
            raised: raised_axle_mass.si(),
            reading: lower_axle_reading.si(),
            lift: lift.si(),
            wheelbase: wheelbase.si(),
            radii: [lower_loaded_radius.si(), raised_loaded_radius.si()],
            tyres,
            springs,
            unsprung,
        })
    }
}

fn lift_in_range(lift: Length) -> Result<()> {
    valid! { lift: 0.001 <= .. <= 100 ; "definition: a level vehicle gives no height"; }
    Ok(())
}

fn missing(field: &str, why: &str) -> Error {
    cannot!("{field} is missing: it is needed with {why}")
}

/// Deflection of an axle for a kilogram, two sides together; zero if it is not needed.
fn softness(asked: bool, why: &str, field: &str, rate: &Option<Value<LinearStiffness>>) -> Result<f64> {
    if !asked {
        return Ok(0.0);
    }
    let rate = rate.as_ref().ok_or_else(|| missing(field, why))?.quantity;
    valid! { rate: 1 <= .. <= 1e9 ; "plausibility limit: springs and tyres lie between 1 N/m and 1 GN/m"; }
    Ok(STANDARD_GRAVITY / (2.0 * rate.si()))
}

fn unsprung(asked: bool, field: &str, mass: &Option<Value<Mass>>, axle: Mass) -> Result<f64> {
    if !asked {
        return Ok(0.0);
    }
    let mass = mass.as_ref().ok_or_else(|| missing(field, "suspension = free"))?.quantity;
    if mass.si() >= 0.0 && mass.si() < axle.si() {
        return Ok(mass.si());
    }
    let refusal = NoSolution::new("is not between nothing and the mass on its axle");
    Err(Error::no_solution(refusal.of(field.to_owned(), mass).at_least(Mass::from_si(0.0)).less_than(axle)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mass::{centre_of_gravity_height_by_tilt, centre_of_gravity_height_by_tilt_over_tyres};
    use approx::assert_relative_eq;

    fn length(value: f64) -> Value<Length> {
        Value::new(Length::from_si(value))
    }
    fn mass(value: f64) -> Value<Mass> {
        Value::new(Mass::from_si(value))
    }
    fn rate(value: f64) -> Option<Value<LinearStiffness>> {
        Some(Value::new(LinearStiffness::from_si(value)))
    }

    fn locked() -> RaisedAxle {
        RaisedAxle {
            lower_axle_mass: mass(1223.0),
            raised_axle_mass: mass(1177.0),
            lower_axle_reading: mass(1316.0),
            lift: length(0.6),
            lift_at: LiftAt::WheelCentre,
            wheelbase: length(2.65),
            lower_loaded_radius: length(0.342),
            raised_loaded_radius: length(0.342),
            suspension: Suspension::Locked,
            lower_tyre_rate: None,
            raised_tyre_rate: None,
            lower_wheel_rate: None,
            raised_wheel_rate: None,
            lower_unsprung_mass: None,
            raised_unsprung_mass: None,
            reading_error: mass(1.0),
            lift_error: length(0.005),
        }
    }

    fn free(stiff: f64) -> RaisedAxle {
        RaisedAxle {
            suspension: Suspension::Free,
            lower_wheel_rate: rate(28e3 * stiff),
            raised_wheel_rate: rate(38e3 * stiff),
            lower_unsprung_mass: Some(mass(134.0)),
            raised_unsprung_mass: Some(mass(196.0)),
            ..locked()
        }
    }

    #[test]
    fn with_equal_radii_and_locked_springs_it_is_the_function() {
        let [level, raised, total] = [1223.0, 1316.0, 2400.0].map(Mass::from_si);
        let [l, lift, r] = [2.65, 0.6, 0.342].map(Length::from_si);
        let function = centre_of_gravity_height_by_tilt(level, raised, total, l, lift, r).unwrap();
        assert_relative_eq!(locked().centre().unwrap().height.si(), function.si(), max_relative = 1e-10);
        let ground = RaisedAxle {
            lift_at: LiftAt::Ground,
            lower_tyre_rate: rate(280e3),
            raised_tyre_rate: rate(240e3),
            ..locked()
        };
        let [k1, k2] = [560e3, 480e3].map(LinearStiffness::from_si);
        let function =
            centre_of_gravity_height_by_tilt_over_tyres(level, raised, total, l, lift, r, k1, k2).unwrap();
        assert_relative_eq!(ground.centre().unwrap().height.si(), function.si(), max_relative = 1e-10);
    }

    #[test]
    fn stiff_springs_are_locked_ones_and_soft_ones_lower_the_answer() {
        let fixed = locked().centre().unwrap().height.si();
        assert_relative_eq!(free(1e4).centre().unwrap().height.si(), fixed, max_relative = 1e-4);
        let soft = free(1.0).centre().unwrap();
        assert!(soft.height.si() < fixed - 0.01, "{soft:?}");
        assert!(soft.angle.si() > locked().centre().unwrap().angle.si());
    }

    #[test]
    fn the_uncertainty_is_that_of_the_short_formula() {
        // h - r = l (m_2 - m_1) / ((m_1 + m_3) tan b), differentiated by hand for all three readings and the lift.
        let (m, moved, l, lift) = (2400.0_f64, 93.0, 2.65_f64, 0.6_f64);
        let along = (l * l - lift * lift).sqrt();
        let over = l * moved * along / (m * lift);
        let of_reading = over / moved;
        let of_level = -over / moved - over / m;
        let of_raised = -over / m;
        let of_lift = -over * (1.0 / lift + lift / (along * along)) * 0.005;
        let parts = [of_reading, of_level, of_raised, of_lift];
        let on = locked().centre().unwrap();
        let standard = (parts.iter().map(|part| part * part).sum::<f64>() / 3.0).sqrt();
        assert_relative_eq!(on.standard_uncertainty.si(), standard, max_relative = 1e-3);
        assert_relative_eq!(
            on.largest_error.si(),
            parts.iter().map(|part| part.abs()).sum::<f64>(),
            max_relative = 1e-3
        );
        assert_relative_eq!(on.angle_error.si(), 0.005 / along, max_relative = 1e-3);
    }

    #[test]
    fn a_greater_lift_is_surer_and_its_row_gives_the_height_back() {
        let weighing = free(1.0);
        let lifts = [0.2, 0.4, 0.6, 0.9, 3.0].map(Length::from_si);
        let table = weighing.table(&lifts).unwrap();
        let (sure, readings) =
            (table.numbers("standard_uncertainty").unwrap(), table.numbers("lower_axle_reading").unwrap());
        assert!(sure[0] > sure[1] && sure[1] > sure[2] && sure[2] > sure[3]);
        assert!(table.reason(4).is_some() && table.reason(3).is_none());
        assert_relative_eq!(readings[2], 1316.0, max_relative = 1e-9);
        let again =
            RaisedAxle { lift: length(0.9), lower_axle_reading: mass(readings[3]), ..weighing.clone() };
        assert_relative_eq!(
            again.centre().unwrap().height.si(),
            weighing.centre().unwrap().height.si(),
            max_relative = 1e-9
        );
    }

    #[test]
    fn what_is_missing_or_cannot_be_is_named() {
        let refused = |changed: RaisedAxle| changed.check().unwrap_err().to_string();
        assert!(
            refused(RaisedAxle { suspension: Suspension::Free, ..locked() })
                .starts_with("lower_wheel_rate is missing: it is needed with suspension = free")
        );
        assert!(
            refused(RaisedAxle { lift_at: LiftAt::Ground, ..locked() })
                .starts_with("lower_tyre_rate is missing")
        );
        assert!(
            refused(RaisedAxle { raised_unsprung_mass: Some(mass(2000.0)), ..free(1.0) })
                .starts_with("raised_unsprung_mass = 2000")
        );
        assert!(
            refused(RaisedAxle { lower_axle_reading: mass(2400.0), ..locked() }).starts_with("total_mass")
        );
        assert!(
            refused(RaisedAxle { lower_axle_reading: mass(900.0), ..locked() })
                .starts_with("lower_axle_reading = 900")
        );
        assert!(refused(RaisedAxle { lift: length(0.005), ..locked() }).starts_with("lift"));
        assert!(refused(RaisedAxle { lift: length(f64::NAN), ..locked() }).starts_with("lift"));
    }
}

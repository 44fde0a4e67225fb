use crate::base::document::{Model, Value};
use crate::base::error::known;
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::base::verdict::less;
use crate::cooling::liquid::ambient;
use crate::units::{
    AbsolutePressure, GaugePressure, Length, Quantity, Stress, Temperature, TemperatureDifference, absolute,
    temperature_difference,
};
use crate::{Error, Result, fluid, valid};

/// A cap on a pressure tester: its opening pressure, its holding pressure, and the opening of its vacuum valve.
///
/// # Formula
/// holding `p_h - e - (p_r - t)`; opening `p_r + t - (p_o + e)`; weakest component `p_w - max(p_o + e, p_r)`; vacuum `p_v - e - p_l`
///
/// # Fields
/// - `rating` — `p_r`, opening pressure that stands on the cap, a gauge pressure
/// - `opening_pressure` — `p_o`, reading at which it opens; none where the test stopped below it
/// - `holding_pressure` — `p_h`, reading that it keeps after the time that the tester's instructions state; a cap holds no more than it opens at
/// - `gauge_error` — `e`, half width of the gauge's error; the whole of it counts against the cap, in every reading
/// - `rating_tolerance` — `t`, how far below its rating a cap may hold and above it may open (common practice, no source: 1 psi)
/// - `weakest_component` — `p_w`, what the weakest component of the system may bear: radiator, heater core, hose or tank
/// - `vacuum_opening` — `p_v`, reading at which the vacuum valve opens, a negative gauge pressure
/// - `vacuum_limit` — `p_l`, deepest vacuum that the hoses and tanks may see, a negative gauge pressure
///
/// # Valid for
/// A cap on the bench, cold and wet at its seal, on a gauge whose error is a bound. What is missing makes a margin that is
/// not a number, never guessed; but a reading that condemns the cap by itself does so: one that opens too low holds too little, and its
/// margin is negative there. A filler neck that does not seal is not seen here.
///
/// # Source
/// Differences of gauge pressures by definition; boiling: see `fluid`; air: US Standard Atmosphere 1976
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, test the cap cold and on the bench, never pump a system above its weakest component; local codes and the maker's instructions come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CapTest {
    /// Opening pressure that stands on the cap.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rating: Option<Value<GaugePressure>>,
    /// Reading at which it opens.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub opening_pressure: Option<Value<GaugePressure>>,
    /// Reading that it keeps.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub holding_pressure: Option<Value<GaugePressure>>,
    /// Half width of the gauge's error.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge_error: Option<Value<Stress>>,
    /// Tolerance of the rating: a cap may hold this much less and open this much later.
    #[cfg_attr(
        feature = "serde",
        serde(default, alias = "tolerance", skip_serializing_if = "Option::is_none")
    )]
    pub rating_tolerance: Option<Value<Stress>>,
    /// Pressure that the weakest component of the system may bear.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub weakest_component: Option<Value<GaugePressure>>,
    /// Reading at which the vacuum valve opens.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub vacuum_opening: Option<Value<GaugePressure>>,
    /// Deepest vacuum that the hoses and tanks may see.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub vacuum_limit: Option<Value<GaugePressure>>,
}

record! {
    /// Pressures and margins from the readings, each on its own; an unknown value is not a number.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CapFindings {
        /// Pressure that the cap surely holds; an upper bound if only the opening is known and is too low.
        pub holds_at_least: GaugePressure,
        /// Least pressure that it has to hold: its rating less the tolerance.
        pub least_holding: GaugePressure,
        /// Margin of the held pressure above that.
        pub holding_margin: Stress,
        /// Pressure at which it surely opens; a lower bound if only the holding is known and is too high.
        pub opens_at_most: GaugePressure,
        /// Highest pressure at which it has to open: its rating and the tolerance.
        pub largest_opening: GaugePressure,
        /// Margin of the opening below that.
        pub opening_margin: Stress,
        /// Highest pressure under the cap: its rating or its sure opening, the higher of the two.
        pub peak_pressure: GaugePressure,
        /// Margin of that below the pressure that the weakest component may bear.
        pub component_margin: Stress,
        /// Pressure at which the vacuum valve surely opens.
        pub vacuum_opens_at_least: GaugePressure,
        /// Margin of that above the deepest vacuum.
        pub vacuum_margin: Stress,
    }
}

record! {
    /// Boiling under the cap at an altitude.
    struct AtAltitude {
        station_pressure: AbsolutePressure,
        boiling_temperature: Temperature,
        boiling_loss: TemperatureDifference,
        holding_margin: Stress,
    }
}

#[cfg(feature = "sheet")]
crate::base::section::fields!(CapTest {
    rating,
    opening_pressure,
    holding_pressure,
    gauge_error,
    rating_tolerance,
    weakest_component,
    vacuum_opening,
    vacuum_limit,
});

impl crate::base::Sealed for CapTest {}
impl Model for CapTest {
    const WISHES: &'static [[&'static str; 3]] = &[["tight_below", "wanted.cap", "of_difference"]];

    fn check(&self) -> Result<()> {
        if let Some(rating) = of(&self.rating) {
            valid! { rating: 0 < .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar"; }
        }
        if let Some(gauge_error) = of(&self.gauge_error) {
            valid! { gauge_error: 0 <= .. <= 350000 ; "definition: half a width is not negative, and less than the largest rating"; }
        }
        if let Some(rating_tolerance) = of(&self.rating_tolerance) {
            valid! { rating_tolerance: 0 <= .. <= 350000 ; "definition: a tolerance is not negative, and less than the largest rating"; }
            if let Some(rating) = of(&self.rating)
                && rating_tolerance.si() >= rating.si()
            {
                let message =
                    format!("{} is not less than the rating, {}", said(rating_tolerance), said(rating));
                return Err(Error::document("rating_tolerance", message));
            }
        }
        if let Some(opening_pressure) = of(&self.opening_pressure) {
            valid! { opening_pressure: 0 <= .. <= 700000 ; "plausibility limit: no cap is pumped to twice the largest rating"; }
        }
        if let Some(holding_pressure) = of(&self.holding_pressure) {
            valid! { holding_pressure: 0 <= .. <= 700000 ; "plausibility limit: no cap is pumped to twice the largest rating"; }
        }
        self.order_of_readings()?;
        if let Some(weakest_component) = of(&self.weakest_component) {
            valid! { weakest_component: 0 < .. <= 10000000 ; "plausibility limit: no component of a cooling system is rated above 100 bar"; }
        }
        if let Some(vacuum_opening) = of(&self.vacuum_opening) {
            valid! { vacuum_opening: (-110000) <= .. <= 0 ; "definition: a vacuum is below the pressure of the air around, not below zero absolute"; }
        }
        if let Some(vacuum_limit) = of(&self.vacuum_limit) {
            valid! { vacuum_limit: (-110000) <= .. < 0 ; "definition: a vacuum is below the pressure of the air around, not below zero absolute"; }
        }
        Ok(())
    }
}

impl CapTest {
    /// Pressures of the cap, its limits and its margins: holding, opening, weakest component and vacuum valve, each on its own.
    ///
    /// # Returns
    /// See the fields of [`CapFindings`]. A margin below zero does not hold; `Verdict::of_difference` grades it against the wanted one.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, cooling::*, units::*};
    /// let cap = CapTest {
    ///     rating: Some(Value::parse("15 psi gauge")?),
    ///     opening_pressure: Some(Value::parse("15 psi gauge")?), holding_pressure: Some(Value::parse("13 psi gauge")?),
    ///     gauge_error: Some(Value::parse("0.5 psi")?), rating_tolerance: Some(Value::parse("1 psi")?),
    ///     weakest_component: None, vacuum_opening: None, vacuum_limit: None,
    /// }.checked()?;
    /// let on = cap.findings()?;
    /// assert_eq!(format!("{:.1} psi", on.holding_margin.in_::<psi>()), "-1.5 psi");
    /// let verdict = |margin| Verdict::of_difference(margin, Stress::of::<psi>(0.4));
    /// assert_eq!((verdict(on.holding_margin), verdict(on.opening_margin)), (Verdict::Short, Verdict::Meets));
    /// assert_eq!(verdict(on.vacuum_margin), Verdict::NotKnown); // the vacuum valve was not tested
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn findings(&self) -> Result<CapFindings> {
        self.check()?;
        let (least_holding, largest_opening) = (known(self.least_holding())?, known(self.largest_opening())?);
        let (holds_at_least, opens_at_most) = (known(self.holds_at_least())?, known(self.opens_at_most())?);
        let peak_pressure = known(self.peak_pressure())?;
        let vacuum_opens_at_least = known(self.vacuum_opens_at_least())?;
        let bears = of(&self.weakest_component).unwrap_or(UNKNOWN);
        let deepest = of(&self.vacuum_limit).unwrap_or(UNKNOWN);
        Ok(CapFindings {
            holds_at_least,
            least_holding,
            holding_margin: exceeds(holds_at_least, least_holding),
            opens_at_most,
            largest_opening,
            opening_margin: exceeds(largest_opening, opens_at_most),
            peak_pressure,
            component_margin: exceeds(bears, peak_pressure),
            vacuum_opens_at_least,
            vacuum_margin: exceeds(vacuum_opens_at_least, deepest),
        })
    }

    /// Least pressure that the cap has to hold: its rating less the tolerance.
    pub(in crate::cooling) fn least_holding(&self) -> Result<GaugePressure> {
        Ok(minus(self.rated()?, self.spread()?))
    }

    /// Highest pressure at which the cap has to open: its rating and the tolerance.
    pub(in crate::cooling) fn largest_opening(&self) -> Result<GaugePressure> {
        Ok(plus(self.rated()?, self.spread()?))
    }

    /// Pressure that the cap surely holds: the reading less the gauge's whole error. A cap opens no lower than it holds, so that an opening
    /// that is too low condemns it, and so does a reading without the gauge's error.
    pub(in crate::cooling) fn holds_at_least(&self) -> Result<GaugePressure> {
        let (holding, opening) = (of(&self.holding_pressure), of(&self.opening_pressure));
        self.order_of_readings()?;
        match (holding, opening, self.error()) {
            (Some(holding), _, Ok(error)) => Ok(minus(holding, error)),
            (Some(at_most), _, Err(lacking)) => self.condemns(at_most).ok_or(lacking),
            (None, Some(opening), error) => {
                let at_most = minus(opening, error.unwrap_or(NOTHING));
                self.condemns(at_most)
                    .ok_or(missing("holding_pressure", "a cap that opens in time may still leak"))
            }
            (None, None, _) => Err(missing("holding_pressure", "the cap was not tested for what it holds")),
        }
    }

    /// A pressure that is too low to hold already.
    fn condemns(&self, at_most: GaugePressure) -> Option<GaugePressure> {
        let least = self.least_holding().ok()?;
        (exceeds(at_most, least).si() < 0.0).then_some(at_most)
    }

    /// Pressure at which the cap surely opens: the reading and the gauge's whole error. A cap that holds too much opens too late. Readings
    /// that contradict each other clear nothing.
    pub(in crate::cooling) fn opens_at_most(&self) -> Result<GaugePressure> {
        let (holding, opening) = (of(&self.holding_pressure), of(&self.opening_pressure));
        let error = self.error();
        let by_holding = holding.map(|holding| plus(holding, error.clone().unwrap_or(NOTHING)));
        let too_late = |at_least: GaugePressure| {
            let most = self.largest_opening().ok()?;
            (exceeds(most, at_least).si() < 0.0).then_some(at_least)
        };
        if let Err(contradiction) = self.order_of_readings() {
            return by_holding.and_then(too_late).ok_or(contradiction);
        }
        match (opening, by_holding, error) {
            (Some(opening), _, Ok(error)) => Ok(plus(opening, error)),
            (Some(at_least), _, Err(lacking)) => too_late(at_least).ok_or(lacking),
            (None, Some(at_least), _) => {
                too_late(at_least).ok_or(missing("opening_pressure", "a cap that holds may still stick"))
            }
            (None, None, _) => Err(missing("opening_pressure", "the cap was not tested for where it opens")),
        }
    }

    /// Pressure that the cap lets come: where it opens, the gauge's whole error counted, and at least its rating. Without the opening, or
    /// where the readings contradict each other, only a pressure is told that the weakest component does not bear.
    pub(in crate::cooling) fn peak_pressure(&self) -> Result<GaugePressure> {
        let rating = self.rated()?;
        let (opening, holding) = (of(&self.opening_pressure), of(&self.holding_pressure));
        let ordered = self.order_of_readings();
        if let (Some(opening), Ok(error), Ok(())) = (opening, self.error(), &ordered) {
            return Ok(GaugePressure::from_si(rating.si().max(plus(opening, error).si())));
        }
        let error = self.error().unwrap_or(NOTHING);
        let readings = [opening, holding].into_iter().flatten().map(|reading| plus(reading, error).si());
        let comes = GaugePressure::from_si(readings.fold(rating.si(), f64::max));
        match of(&self.weakest_component) {
            Some(weakest) if exceeds(weakest, comes).si() < 0.0 => Ok(comes),
            _ => Err(match ordered {
                Err(contradiction) => contradiction,
                Ok(()) if opening.is_some() => missing("gauge_error", ERROR),
                Ok(()) => missing("opening_pressure", "a cap may open above its rating"),
            }),
        }
    }

    /// Pressure at which the vacuum valve surely opens.
    pub(in crate::cooling) fn vacuum_opens_at_least(&self) -> Result<GaugePressure> {
        let opens =
            of(&self.vacuum_opening).ok_or(missing("vacuum_opening", "the vacuum valve was not tested"))?;
        Ok(minus(opens, self.error()?))
    }

    /// Gauge pressure under the cap once the system has built it: the reading that it keeps, the gauge's error off, and no more than its rating.
    /// An untested cap keeps its rating less its tolerance at most, and no more than it opens at.
    pub(in crate::cooling) fn header_pressure(&self) -> Result<GaugePressure> {
        let rating = self.rated()?;
        self.order_of_readings()?;
        let error = self.error().unwrap_or(NOTHING);
        let untested = minus(rating, self.spread().unwrap_or(NOTHING));
        let kept = match (of(&self.holding_pressure), of(&self.opening_pressure)) {
            (Some(holding), _) => minus(holding, error),
            (None, Some(opening)) if exceeds(minus(opening, error), untested).si() < 0.0 => {
                minus(opening, error)
            }
            (None, _) => untested,
        };
        Ok(GaugePressure::from_si(rating.si().min(kept.si()).max(0.0)))
    }

    /// Highest gauge pressure that may stand under the cap by its test: what it was seen to keep, and no more than it opens at, the gauge's error counted.
    #[cfg(feature = "sheet")]
    pub(in crate::cooling) fn keeps_at_most(&self) -> Result<GaugePressure> {
        let error = self.error().unwrap_or(NOTHING);
        let opening = of(&self.opening_pressure).map(|opening| plus(opening, error).si());
        let readings = [of(&self.holding_pressure).map(GaugePressure::si), opening];
        let least = readings.into_iter().flatten().fold(f64::NAN, f64::min);
        match least.is_nan() {
            true => Err(missing("holding_pressure", "the cap was not tested for what it holds")),
            false => Ok(GaugePressure::from_si(least)),
        }
    }

    fn rated(&self) -> Result<GaugePressure> {
        of(&self.rating).ok_or(missing("rating", "what the cap is made for bounds what it has to do"))
    }

    fn spread(&self) -> Result<Stress> {
        self.rating_tolerance.as_ref().map(|value| value.quantity).ok_or(missing(
            "rating_tolerance",
            "a cap may hold less than its rating and open above it by so much",
        ))
    }

    fn error(&self) -> Result<Stress> {
        self.gauge_error.as_ref().map(|value| value.quantity).ok_or(missing("gauge_error", ERROR))
    }

    /// A cap holds no more than it opens at; two readings of one gauge differ by twice its error at most.
    fn order_of_readings(&self) -> Result<()> {
        if let (Some(opening), Some(holding), Ok(error)) =
            (of(&self.opening_pressure), of(&self.holding_pressure), self.error())
        {
            let most = plus(plus(opening, error), error);
            if holding.si() > most.si() {
                return Err(Error::document(
                    "holding_pressure",
                    format!(
                        "{} is more than {}: a cap that opens at {} holds no more, even with the error of both readings",
                        said(holding),
                        said(most),
                        said(opening)
                    ),
                ));
            }
        }
        Ok(())
    }

    /// Temperature at which water boils under what the cap surely holds, once the system has built that pressure.
    ///
    /// # Parameters
    /// - `station_pressure` — absolute pressure of the air as measured there, not reduced to sea level
    ///
    /// # Returns
    /// Boiling temperature of water at the holding pressure less the gauge's error, at most the rating and at least nothing: an upper
    /// bound, hot metal boils earlier and the pump inlet governs.
    pub fn boiling_temperature(&self, station_pressure: AbsolutePressure) -> Result<Temperature> {
        let station_pressure = ambient::as_measured(station_pressure)?;
        self.check()?;
        if self.holding_pressure.is_none() {
            let message = "give the reading that the cap keeps: boiling depends on it".to_owned();
            return Err(Error::document("holding_pressure", message));
        }
        self.holds_at_least()?;
        fluid::water_boiling_temperature(absolute(self.header_pressure()?, station_pressure))
    }

    /// Loss of boiling temperature of water: the cap's rating against the pressure that it surely holds.
    ///
    /// # Parameters
    /// - `station_pressure` — absolute pressure of the air as measured there, not reduced to sea level
    ///
    /// # Returns
    /// Boiling temperature lost, an upper bound: the gauge's whole error counts against the cap. A cap that holds more than its rating gains nothing.
    pub fn boiling_loss(&self, station_pressure: AbsolutePressure) -> Result<TemperatureDifference> {
        let boils = self.boiling_temperature(station_pressure)?;
        let rated = fluid::water_boiling_temperature(absolute(self.rated()?, station_pressure))?;
        Ok(temperature_difference(rated, boils))
    }

    /// Boiling of water over what the cap holds and altitudes.
    ///
    /// # Parameters
    /// - `holding_pressure` — readings that the cap keeps
    /// - `altitude` — heights above sea level, for the pressure of the standard atmosphere
    ///
    /// # Returns
    /// One row for each reading and altitude: `holding_pressure`, `altitude`, `station_pressure`, `boiling_temperature`, `boiling_loss` against
    /// the rating, `holding_margin`.
    pub fn boiling_table(&self, holding_pressure: &[GaugePressure], altitude: &[Length]) -> Result<Table> {
        let lists = [holding_pressure.len(), altitude.len()];
        let mut rows = Filling::over(["holding_pressure", "altitude"], &lists)?;
        for holding in holding_pressure {
            let changed = CapTest { holding_pressure: Some(Value::new(*holding)), ..self.clone() };
            for altitude in altitude {
                let on = ambient::at_altitude(*altitude).and_then(|station_pressure| {
                    let on = changed.findings()?;
                    Ok(AtAltitude {
                        station_pressure,
                        boiling_temperature: changed.boiling_temperature(station_pressure)?,
                        boiling_loss: changed.boiling_loss(station_pressure)?,
                        holding_margin: on.holding_margin,
                    })
                });
                rows.push((*holding, *altitude), on)?;
            }
        }
        rows.finish()
    }
}

fn of<Q: Quantity>(value: &Option<Value<Q>>) -> Option<Q> {
    value.as_ref().map(|value| value.quantity)
}

const UNKNOWN: GaugePressure = GaugePressure::from_si(f64::NAN);
const NOTHING: Stress = Stress::from_si(0.0);
const ERROR: &str = "the gauge's whole error counts against the cap";

/// Excess of the first gauge pressure over the second, at the same ambient pressure.
fn exceeds(pressure: GaugePressure, from: GaugePressure) -> Stress {
    Stress::from_si(less(pressure.si(), from.si()))
}

fn plus(pressure: GaugePressure, more: Stress) -> GaugePressure {
    GaugePressure::from_si(pressure.si() + more.si())
}

fn minus(pressure: GaugePressure, less: Stress) -> GaugePressure {
    GaugePressure::from_si(pressure.si() - less.si())
}

fn missing(argument: &'static str, why: &'static str) -> Error {
    Error::Missing { argument, why }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;
    use approx::assert_abs_diff_eq;

    fn gauge(pascals: f64) -> Value<GaugePressure> {
        Value::new(GaugePressure::from_si(pascals))
    }

    fn stress(pascals: f64) -> Value<Stress> {
        Value::new(Stress::from_si(pascals))
    }

    /// Against the 3 kPa that the tests want.
    fn graded(margin: Stress) -> Verdict {
        Verdict::of_difference(margin, Stress::from_si(3e3))
    }

    /// A cap of 100 kPa on a gauge good to 2 kPa: it may hold 95 kPa by the gauge, and open at 105 kPa.
    fn cap(opening: Option<f64>, holding: Option<f64>) -> CapTest {
        CapTest {
            rating: Some(gauge(100e3)),
            opening_pressure: opening.map(gauge),
            holding_pressure: holding.map(gauge),
            gauge_error: Some(stress(2e3)),
            rating_tolerance: Some(stress(7e3)),
            weakest_component: None,
            vacuum_opening: None,
            vacuum_limit: None,
        }
    }

    #[test]
    fn holding_low_or_opening_high_is_short() {
        use Verdict::{Meets, Short, Tight};
        // By hand: holding - 95 kPa; 105 kPa - opening; short below nothing, tight below 3 kPa.
        for (opening, holding, low, holds, high, opens) in [
            (101e3, 99e3, 4e3, Meets, 4e3, Meets),
            (102e3, 98e3, 3e3, Meets, 3e3, Meets),
            (104e3, 96e3, 1e3, Tight, 1e3, Tight),
            (105e3, 95e3, 0.0, Tight, 0.0, Tight),
            (100e3, 94e3, -1e3, Short, 5e3, Meets),
            (106e3, 100e3, 5e3, Meets, -1e3, Short),
        ] {
            let on = cap(Some(opening), Some(holding)).findings().unwrap();
            assert_eq!((on.holding_margin.si(), graded(on.holding_margin)), (low, holds), "holds {holding}");
            assert_eq!((on.opening_margin.si(), graded(on.opening_margin)), (high, opens), "opens {opening}");
            // By hand: the reading and the gauge's 2 kPa; 100 kPa and the tolerance of 7 kPa.
            assert_eq!((on.holds_at_least.si(), on.least_holding.si()), (holding - 2e3, 93e3));
            assert_eq!((on.opens_at_most.si(), on.largest_opening.si()), (opening + 2e3, 107e3));
            assert_eq!(on.peak_pressure.si(), (opening + 2e3).max(100e3));
        }
    }

    #[test]
    fn the_limit_itself_holds_in_psi() {
        // Unrounded this is -7.3e-12 Pa.
        let limit = CapTest {
            rating: Some(Value::parse("15 psi gauge").unwrap()),
            gauge_error: Some(stress(0.0)),
            rating_tolerance: Some(Value::parse("1 psi").unwrap()),
            ..cap(None, None)
        };
        let holds = |text| {
            let cap = CapTest { holding_pressure: Some(Value::parse(text).unwrap()), ..limit.clone() };
            graded(cap.findings().unwrap().holding_margin)
        };
        assert_eq!((holds("14 psi gauge"), holds("13.99 psi gauge")), (Verdict::Tight, Verdict::Short));
    }

    #[test]
    fn one_reading_condemns_but_never_acquits_the_other() {
        use Verdict::{Meets, NotKnown, Short};
        for (opening, holding, holds, opens) in [
            (None, None, NotKnown, NotKnown),
            (Some(100e3), None, NotKnown, Meets),
            (Some(94e3), None, Short, Meets),
            (None, Some(100e3), Meets, NotKnown),
            (None, Some(106e3), Meets, Short),
        ] {
            let on = cap(opening, holding).findings().unwrap();
            let verdicts = (graded(on.holding_margin), graded(on.opening_margin));
            assert_eq!(verdicts, (holds, opens), "{opening:?} {holding:?}");
            assert_eq!(on.holding_margin.si().is_nan(), holds == NotKnown);
            assert_eq!(on.opening_margin.si().is_nan(), opens == NotKnown);
        }
    }

    #[test]
    fn the_weakest_component_bears_the_rating_and_the_opening() {
        use Verdict::{Meets, NotKnown, Short, Tight};
        // By hand: weakest - max(opening + 2 kPa, 100 kPa).
        for (weakest, opening, holding, margin, verdict) in [
            (120e3, Some(103e3), None, 15e3, Meets),
            (106e3, Some(103e3), None, 1e3, Tight),
            (104e3, Some(103e3), None, -1e3, Short),
            (99e3, Some(90e3), None, -1e3, Short), // a cap that is due for another one of the same rating
            (99e3, None, None, -1e3, Short),
            (120e3, None, None, f64::NAN, NotKnown),
            (104e3, None, Some(103e3), -1e3, Short),
            (120e3, None, Some(103e3), f64::NAN, NotKnown),
        ] {
            let one = CapTest { weakest_component: Some(gauge(weakest)), ..cap(opening, holding) };
            let on = one.findings().unwrap();
            assert_eq!(graded(on.component_margin), verdict, "{weakest} {opening:?} {holding:?}");
            assert!(
                on.component_margin.si() == margin || on.component_margin.si().is_nan() && margin.is_nan()
            );
        }
        let without = cap(Some(100e3), Some(99e3)).findings().unwrap();
        assert_eq!(graded(without.component_margin), NotKnown);
        assert_eq!(without.peak_pressure.si(), 102e3);
    }

    #[test]
    fn readings_that_contradict_each_other_clear_nothing() {
        // A cap cannot hold 130 kPa that opens at 100 kPa; without the gauge's error it may.
        let bears = |weakest, one: CapTest| CapTest { weakest_component: Some(gauge(weakest)), ..one };
        let swapped = bears(150e3, cap(Some(100e3), Some(130e3)));
        assert!(swapped.findings().is_err());
        assert!(matches!(swapped.holds_at_least(), Err(Error::Document { .. })));
        assert_eq!(swapped.opens_at_most().unwrap().si(), 132e3);
        assert!(matches!(swapped.peak_pressure(), Err(Error::Document { .. })));
        assert_eq!(bears(131e3, swapped.clone()).peak_pressure().unwrap().si(), 132e3);
        let low = cap(Some(90e3), Some(102e3));
        assert!(matches!(low.holds_at_least(), Err(Error::Document { .. })));
        assert!(matches!(low.opens_at_most(), Err(Error::Document { .. })));
        let unsure = CapTest { gauge_error: None, ..bears(129e3, swapped) };
        assert_eq!(unsure.peak_pressure().unwrap().si(), 130e3);
    }

    #[test]
    fn no_reading_lets_the_system_build_more_than_it_says() {
        let built = |one: CapTest| one.header_pressure().unwrap().si();
        // By hand: the reading less 2 kPa, at most 100 kPa and at least nothing; untested 100 kPa less 7 kPa.
        for (opening, holding, pressure) in [
            (None, None, 93e3),
            (Some(110e3), None, 93e3),
            (None, Some(110e3), 100e3),
            (Some(60e3), None, 58e3),
            (Some(101e3), Some(99e3), 97e3),
            (Some(99e3), Some(100e3), 98e3),
            (None, Some(1e3), 0.0),
        ] {
            assert_eq!(built(cap(opening, holding)), pressure, "{opening:?} {holding:?}");
        }
        let bare =
            |opening, holding| CapTest { gauge_error: None, rating_tolerance: None, ..cap(opening, holding) };
        assert_eq!(built(bare(None, Some(60e3))), 60e3);
        assert_eq!(built(bare(Some(60e3), None)), 60e3);
        assert!(cap(Some(60e3), Some(90e3)).header_pressure().is_err()); // they contradict each other
    }

    #[test]
    fn the_vacuum_valve_counts() {
        use Verdict::{Meets, NotKnown, Short, Tight};
        // By hand: opening - 2 kPa + 10 kPa.
        for (opens, margin, verdict) in [
            (Some(-4e3), 4e3, Meets),
            (Some(-7e3), 1e3, Tight),
            (Some(-9e3), -1e3, Short),
            (None, f64::NAN, NotKnown),
        ] {
            let one = CapTest {
                vacuum_opening: opens.map(gauge),
                vacuum_limit: Some(gauge(-10e3)),
                ..cap(Some(101e3), Some(99e3))
            };
            let on = one.findings().unwrap();
            assert_eq!(graded(on.vacuum_margin), verdict);
            assert!(on.vacuum_margin.si() == margin || on.vacuum_margin.si().is_nan() && margin.is_nan());
            let without = CapTest { vacuum_limit: None, ..one }.findings().unwrap();
            assert_eq!(graded(without.vacuum_margin), NotKnown);
        }
    }

    #[test]
    fn what_it_cannot_be_is_named() {
        let full = CapTest {
            weakest_component: Some(gauge(150e3)),
            vacuum_opening: Some(gauge(-4e3)),
            vacuum_limit: Some(gauge(-10e3)),
            ..cap(Some(101e3), Some(99e3))
        };
        assert!(full.check().is_ok());
        for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300] {
            let (pressure, error) = (gauge(wrong), stress(wrong));
            let some = Some(pressure.clone());
            for (name, changed) in [
                ("rating", CapTest { rating: Some(pressure), ..full.clone() }),
                ("opening_pressure", CapTest { opening_pressure: some.clone(), ..full.clone() }),
                ("holding_pressure", CapTest { holding_pressure: some.clone(), ..full.clone() }),
                ("gauge_error", CapTest { gauge_error: Some(error.clone()), ..full.clone() }),
                ("rating_tolerance", CapTest { rating_tolerance: Some(error), ..full.clone() }),
                ("weakest_component", CapTest { weakest_component: some.clone(), ..full.clone() }),
                ("vacuum_opening", CapTest { vacuum_opening: some.clone(), ..full.clone() }),
                ("vacuum_limit", CapTest { vacuum_limit: some, ..full.clone() }),
            ] {
                let sentence = changed.findings().unwrap_err().to_string();
                assert!(sentence.starts_with(name), "{sentence}");
            }
        }
        let positive = CapTest { vacuum_opening: Some(gauge(1.0)), ..full.clone() };
        assert!(positive.check().unwrap_err().to_string().starts_with("vacuum_opening"));
        let wide = CapTest { rating_tolerance: Some(stress(100e3)), ..full.clone() };
        assert!(wide.check().unwrap_err().to_string().starts_with("rating_tolerance"));
        // Two readings of one gauge differ by twice its error at most.
        assert!(cap(Some(100e3), Some(104e3)).check().is_ok());
        let swapped = cap(Some(100e3), Some(104.1e3)).check().unwrap_err().to_string();
        assert!(
            swapped.starts_with("holding_pressure") && swapped.contains("than 104 kPa gauge"),
            "{swapped}"
        );
    }

    #[test]
    fn boiling_gains_nothing_above_the_rating_and_loses_no_more_than_the_whole_cap() {
        let sea = AbsolutePressure::from_si(101_325.0);
        let loss = |holding| cap(None, Some(holding)).boiling_loss(sea).map(|loss| loss.si());
        assert_eq!((loss(102e3).unwrap(), loss(110e3).unwrap()), (0.0, 0.0));
        assert!(loss(101e3).unwrap() > 0.0);
        assert_eq!(loss(0.0).unwrap(), loss(2e3).unwrap());
        // Steam tables (handbook values, from memory): 2.01325 bar boils at 120.4 °C, 1.01325 bar at 99.97 °C.
        assert_abs_diff_eq!(loss(0.0).unwrap(), 20.4, epsilon = 0.1);
        assert!(
            cap(Some(100e3), None).boiling_loss(sea).unwrap_err().to_string().starts_with("holding_pressure")
        );
        let reduced = cap(None, Some(99e3)).boiling_loss(AbsolutePressure::from_si(1e6)).unwrap_err();
        assert!(reduced.to_string().starts_with("station_pressure"));
    }

    #[cfg(feature = "serde")]
    #[test]
    fn the_sheet_of_the_dunlin() {
        use crate::units::psi;
        use Verdict::{Meets, Short};
        let text = include_str!("generated.dunlin_cap_test.toml");
        let on = CapTest::from_text(text).unwrap().findings().unwrap();
        // By hand, psi: 13 - 0.5 - 14; 16 - 15.2 - 0.5; 20 - 15.2 - 0.5; -0.8 - 0.5 + 2.
        for (margin, by_hand, verdict) in [
            (on.holding_margin, -1.5, Short),
            (on.opening_margin, 0.3, Meets),
            (on.component_margin, 4.3, Meets),
            (on.vacuum_margin, 0.7, Meets),
        ] {
            assert_abs_diff_eq!(margin.in_::<psi>(), by_hand, epsilon = 1e-8);
            assert_eq!(Verdict::of_difference(margin, Stress::of::<psi>(0.25)), verdict);
        }
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let table = cap(Some(100e3), None)
            .boiling_table(
                &[70e3, 98e3, 120e3].map(GaugePressure::from_si),
                &[0.0, 2e3, 9e3].map(Length::from_si),
            )
            .unwrap();
        assert_eq!(table.rows(), 9);
        let boils = table.numbers("boiling_temperature").unwrap();
        let loss = table.numbers("boiling_loss").unwrap();
        assert!(boils[3] > boils[0] && boils[0] > boils[1] && loss[1] > loss[0] && loss[0] > loss[3]);
        let margin = table.numbers("holding_margin").unwrap();
        assert_eq!((margin[0], margin[3]), (-25e3, 3e3));
        for (row, reason) in [(2, "altitude = 9000 m"), (6, "holding_pressure")] {
            assert!(boils[row].is_nan());
            assert!(table.reason(row).is_some_and(|error| error.to_string().contains(reason)), "{row}");
        }
    }
}

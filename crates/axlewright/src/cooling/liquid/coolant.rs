use super::ambient;
use super::bounds::Strength;
use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::units::{
    AbsolutePressure, GaugePressure, Length, Ratio, Temperature, TemperatureDifference, absolute,
    temperature_difference,
};
use crate::{Error, Result, fluid, valid};

/// A coolant under a cap at an altitude, and its highest temperature.
///
/// # Formula
/// `p = p_cap + p_air`; `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w` for a mix by volume;
/// margin = boiling temperature of the mix at `p`, less the hottest coolant
///
/// # Fields
/// - `liquid` — `water`, `ethylene_glycol` or `propylene_glycol`
/// - `volume_share` — `f`, share of concentrate by volume of the parts before they are mixed; none for water
/// - `concentrate` — `s`, glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol; needed with `volume_share`
/// - `mass_fraction` — `w`, glycol by mass of the mix; in place of `volume_share`, or within 1 % of what follows from it
/// - `cap` — opening pressure of the cap, a gauge pressure
/// - `cap_holds` — pressure that the cap surely holds by its test, as `holds_at_least` of `cooling.CapTest`; no more than it counts. Without it the rating counts, the margin is an upper bound, and `margin_open` says so
/// - `altitude` — height above sea level, for the pressure of the standard atmosphere; or else `station_pressure`
/// - `station_pressure` — absolute pressure of the air as measured there, not reduced to sea level
/// - `hottest` — temperature that the coolant reaches
///
/// # Valid for
/// An upper bound: the system must first build its pressure, a cap that holds less than its rating counts with what it holds, hot
/// metal boils coolant earlier than its mean temperature says, and the pump inlet governs. Limits of the mixture models as in `fluid`.
///
/// # Source
/// Boiling and the mass fraction of a mix by volume: see `fluid`; air: US Standard Atmosphere 1976
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; local codes and the maker's instructions come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Coolant {
    /// Kind of coolant.
    pub liquid: Liquid,
    /// Share of concentrate by volume of the parts before they are mixed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub volume_share: Option<Value<Ratio>>,
    /// Glycol in the concentrate by mass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub concentrate: Option<Value<Ratio>>,
    /// Glycol by mass of the mix.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub mass_fraction: Option<Value<Ratio>>,
    /// Opening pressure of the cap.
    pub cap: Value<GaugePressure>,
    /// Pressure that the cap surely holds by its test.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cap_holds: Option<Value<GaugePressure>>,
    /// Height above sea level.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub altitude: Option<Value<Length>>,
    /// Absolute pressure of the air as measured there.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub station_pressure: Option<Value<AbsolutePressure>>,
    /// Temperature that the coolant reaches.
    #[cfg_attr(feature = "serde", serde(alias = "hottest_coolant"))]
    pub hottest: Value<Temperature>,
}

/// Kind of coolant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Liquid {
    /// Water alone.
    Water,
    /// Water and ethylene glycol.
    EthyleneGlycol,
    /// Water and propylene glycol.
    PropyleneGlycol,
}

record! {
    /// Boiling margin of a coolant.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct BoilingMargin {
        /// Absolute pressure under the cap at its rating, or at what it holds if that is less.
        pub absolute_pressure: AbsolutePressure,
        /// Glycol by mass of the mix.
        pub mass_fraction: Ratio,
        /// Temperature at which the mix begins to boil.
        pub boiling_temperature: Temperature,
        /// Excess of the boiling temperature over the hottest coolant.
        pub margin: TemperatureDifference,
    }
}

record! {
    /// Mark of a boiling margin.
    #[derive(Debug, Clone, PartialEq)]
    pub struct MarginOpen {
        /// Missing facts of the cap that could still take from the margin; empty where there are none.
        pub cap_open: String,
    }
}

#[cfg(feature = "sheet")]
crate::base::section::words!(Liquid {
    Water = "water",
    EthyleneGlycol = "ethylene_glycol",
    PropyleneGlycol = "propylene_glycol",
});

#[cfg(feature = "sheet")]
crate::base::section::fields!(Coolant {
    liquid, volume_share, concentrate, mass_fraction, cap, cap_holds, station_pressure, hottest; altitude
});

impl crate::base::Sealed for Coolant {}
impl Model for Coolant {
    const FORMER: &'static [[&'static str; 2]] = &[
        ["strength", "`volume_share` with `concentrate`, or `mass_fraction`"],
        ["strength_by", "`volume_share` with `concentrate`, or `mass_fraction`"],
    ];
    const WISHES: &'static [[&'static str; 3]] = &[["tight_below", "wanted.boiling", "of_difference"]];

    fn check(&self) -> Result<()> {
        self.margin().map(drop)
    }
}

const UNTESTED: &str = "the cap was not tested for what it holds";

impl Coolant {
    /// Boiling margin of the coolant.
    ///
    /// # Returns
    /// - `absolute_pressure` — absolute pressure under the cap at its rating, or at what it holds if that is less
    /// - `mass_fraction` — glycol by mass of the mix
    /// - `boiling_temperature` — temperature at which the mix begins to boil
    /// - `margin` — excess of the boiling temperature over the hottest coolant, less the bound of the mixture model: 0.8 K with ethylene glycol up to 60 %, 6.1 K with
    ///   propylene glycol at 50 %; `margin_open` says what could still take from it
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, Verdict, cooling::*, units::*};
    /// let coolant = Coolant {
    ///     liquid: Liquid::EthyleneGlycol,
    ///     volume_share: Some(Value::parse("50 %")?), concentrate: Some(Value::parse("95 %")?), mass_fraction: None,
    ///     cap: Value::parse("15 psi gauge")?, cap_holds: Some(Value::parse("14.5 psi gauge")?),
    ///     altitude: Some(Value::parse("5000 ft")?), station_pressure: None,
    ///     hottest: Value::parse("230 °F")?,
    /// }.checked()?;
    /// let on = coolant.margin()?;
    /// assert_eq!(format!("{:.0} °F", on.boiling_temperature.in_::<degF>()), "258 °F");
    /// assert_eq!(Verdict::of_difference(on.margin, TemperatureDifference::of::<delta_degF>(20.0)), Verdict::Meets);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn margin(&self) -> Result<BoilingMargin> {
        let hottest = self.hottest.quantity;
        valid! {
            hottest: 233.15 <= .. <= 523.15 ; "plausibility limit: coolant is used between -40 °C and 250 °C";
        }
        let mass_fraction = self.mass_fraction()?;
        let absolute_pressure = absolute(self.kept()?, self.air()?);
        let boiling_temperature = match self.liquid {
            Liquid::Water => fluid::water_boiling_temperature(absolute_pressure),
            Liquid::EthyleneGlycol => {
                fluid::ethylene_glycol_boiling_temperature(absolute_pressure, mass_fraction)
            }
            Liquid::PropyleneGlycol => {
                fluid::propylene_glycol_boiling_temperature(absolute_pressure, mass_fraction)
            }
        }?;
        let boils_at_least = boiling_temperature - self.strength(mass_fraction).boiling()?;
        let margin = temperature_difference(boils_at_least, hottest);
        Ok(BoilingMargin { absolute_pressure, mass_fraction, boiling_temperature, margin })
    }

    /// Mark of the boiling margin: without it the margin of an untested cap reads as one that is known.
    ///
    /// # Returns
    /// - `cap_open` — what is missing of the cap that could still take from the margin: its verdict is then no better than `tight`; empty where nothing is
    pub fn margin_open(&self) -> Result<MarginOpen> {
        let _ = self.kept()?;
        // Nothing is missing where there is no cap, or where it was tested.
        let known = self.cap_holds.is_some() || self.cap.quantity.si() == 0.0;
        Ok(MarginOpen { cap_open: if known { "" } else { UNTESTED }.to_owned() })
    }

    /// Temperature at which the coolant begins to freeze.
    ///
    /// # Returns
    /// The start of freezing: the first ice. The mix may freeze warmer, with ethylene glycol by 0.6 K, 1.7 K, 2.6 K and 3.3 K at 30, 40, 50 and 60 %, with propylene
    /// glycol by 1.81 K.
    pub fn freezing_temperature(&self) -> Result<Temperature> {
        let mass_fraction = self.mass_fraction()?;
        match self.liquid {
            Liquid::Water => Ok(Temperature::from_si(273.15)),
            Liquid::EthyleneGlycol => fluid::ethylene_glycol_freezing_temperature(mass_fraction),
            Liquid::PropyleneGlycol => fluid::propylene_glycol_freezing_temperature(mass_fraction),
        }
    }

    fn strength(&self, mass_fraction: Ratio) -> Strength {
        Strength { liquid: self.liquid, mass_fraction }
    }

    /// Boiling margin over caps, altitudes and strengths.
    ///
    /// # Parameters
    /// - `cap` — opening pressures, of caps that are not tested
    /// - `altitude` — heights above sea level
    /// - `strength` — shares of concentrate by volume if the coolant has a `concentrate`, glycol by mass if not; zero alone for water
    ///
    /// # Returns
    /// One row for each cap, altitude and strength: `cap`, `altitude`, `strength`, `absolute_pressure`, `mass_fraction`, `boiling_temperature`,
    /// `margin`, `cap_open`.
    pub fn margin_table(
        &self,
        cap: &[GaugePressure],
        altitude: &[Length],
        strength: &[Ratio],
    ) -> Result<Table> {
        let lists = [cap.len(), altitude.len(), strength.len()];
        let mut rows = Filling::over(["cap", "altitude", "strength"], &lists)?;
        for cap in cap {
            for altitude in altitude {
                for strength in strength {
                    let share = Some(Value::new(*strength));
                    let (volume_share, mass_fraction) =
                        if self.concentrate.is_some() { (share, None) } else { (None, share) };
                    let changed = Coolant {
                        cap: Value::new(*cap),
                        cap_holds: None,
                        altitude: Some(Value::new(*altitude)),
                        station_pressure: None,
                        volume_share,
                        mass_fraction,
                        ..self.clone()
                    };
                    rows.push(
                        (*cap, *altitude, *strength),
                        changed.margin().and_then(|on| Ok((on, changed.margin_open()?))),
                    )?;
                }
            }
        }
        rows.finish()
    }

    /// Pressure that counts under the cap: its rating, or what it surely holds if that is less.
    fn kept(&self) -> Result<GaugePressure> {
        let cap = self.cap.quantity;
        valid! { cap: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar"; }
        let Some(cap_holds) = self.cap_holds.as_ref().map(|holds| holds.quantity) else { return Ok(cap) };
        valid! { cap_holds: 0 <= .. <= 700000 ; "plausibility limit: no cap is pumped to twice the largest rating"; }
        Ok(if cap_holds < cap { cap_holds } else { cap })
    }

    fn air(&self) -> Result<AbsolutePressure> {
        match (&self.altitude, &self.station_pressure) {
            (Some(altitude), None) => ambient::at_altitude(altitude.quantity),
            (None, Some(pressure)) => ambient::as_measured(pressure.quantity),
            (None, None) => {
                Err(Error::document("altitude", "give altitude, or station_pressure as measured there"))
            }
            (Some(_), Some(_)) => {
                Err(Error::document("station_pressure", "give altitude or station_pressure, not both"))
            }
        }
    }

    /// Glycol by mass of the mix.
    fn mass_fraction(&self) -> Result<Ratio> {
        for (key, value) in [
            ("volume_share", &self.volume_share),
            ("concentrate", &self.concentrate),
            ("mass_fraction", &self.mass_fraction),
        ] {
            value.as_ref().map_or(Ok(()), |value| value.share(key))?;
        }
        let share = |value: &Option<Value<Ratio>>| value.as_ref().map(|value| value.quantity);
        let (volume_share, concentrate) = (share(&self.volume_share), share(&self.concentrate));
        let mass_fraction = share(&self.mass_fraction);
        if let Some(volume_share) = volume_share {
            valid! { volume_share: 0 <= .. <= 1 ; "definition: a share of the whole"; }
        }
        if let Some(mass_fraction) = mass_fraction {
            valid! { mass_fraction: 0 <= .. <= 1 ; "definition: a share of the whole"; }
        }
        if let Some(concentrate) = concentrate {
            valid! { concentrate: 0 < .. <= 1 ; "definition: a share of the whole"; }
        }
        let by_volume = match self.liquid {
            Liquid::Water => {
                for (key, share) in [("volume_share", volume_share), ("mass_fraction", mass_fraction)] {
                    if share.is_some_and(|share| share.si() != 0.0) {
                        return Err(Error::document(
                            key,
                            "water alone has no glycol; name the glycol in liquid",
                        ));
                    }
                }
                return Ok(Ratio::from_si(0.0));
            }
            Liquid::EthyleneGlycol => fluid::ethylene_glycol_mass_fraction,
            Liquid::PropyleneGlycol => fluid::propylene_glycol_mass_fraction,
        };
        match (volume_share, concentrate, mass_fraction) {
            (Some(volume_share), Some(concentrate), Some(mass_fraction)) => {
                let follows = by_volume(volume_share, concentrate)?;
                let apart = (mass_fraction.si() - follows.si()).abs();
                // A line without a tolerance is known to 1 %, as on the build sheet.
                if apart > 0.01 * follows.si().max(mass_fraction.si()) {
                    let message = format!(
                        "it is {}, but {} follows from volume_share and concentrate: leave one of them out",
                        said(mass_fraction),
                        said(follows)
                    );
                    return Err(Error::document("mass_fraction", message));
                }
                Ok(mass_fraction)
            }
            (_, _, Some(mass_fraction)) => Ok(mass_fraction),
            (Some(volume_share), Some(concentrate), None) => by_volume(volume_share, concentrate),
            (Some(_), None, None) => Err(Error::document(
                "concentrate",
                "give the glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol",
            )),
            (None, _, None) => Err(Error::document(
                "volume_share",
                "give the share of concentrate by volume, or mass_fraction, the glycol by mass",
            )),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{degC, one, percent, psi_gauge};
    use approx::assert_relative_eq;

    fn mix(liquid: Liquid, volume_share: f64) -> Coolant {
        Coolant {
            liquid,
            volume_share: Some(Value::new(Ratio::of::<percent>(volume_share))),
            concentrate: Some(Value::new(Ratio::of::<one>(1.0))),
            mass_fraction: None,
            cap: Value::new(GaugePressure::of::<psi_gauge>(15.0)),
            cap_holds: None,
            altitude: Some(Value::new(Length::from_si(0.0))),
            station_pressure: None,
            hottest: Value::new(Temperature::of::<degC>(105.0)),
        }
    }

    #[test]
    fn fifty_percent_by_volume_is_more_by_mass() {
        // Independent arithmetic on the densities: 1113.5 / (1113.5 + 998.207) and 1036.1 / (1036.1 + 998.207).
        for (liquid, mass) in [(Liquid::EthyleneGlycol, 0.527_298_7), (Liquid::PropyleneGlycol, 0.509_313_7)]
        {
            let on = mix(liquid, 50.0).margin().unwrap();
            assert_relative_eq!(on.mass_fraction.si(), mass, max_relative = 1e-6);
        }
    }

    #[test]
    fn what_is_missing_is_named() {
        let full = mix(Liquid::EthyleneGlycol, 50.0);
        let share = |share| Some(Value::new(Ratio::from_si(share)));
        let without: [(&str, Coolant); 7] = [
            ("volume_share:", Coolant { volume_share: None, ..full.clone() }),
            ("mass_fraction: it is 0.5, but 0.527", Coolant { mass_fraction: share(0.5), ..full.clone() }),
            ("mass_fraction = 1.5", Coolant { mass_fraction: share(1.5), ..full.clone() }),
            ("concentrate:", Coolant { concentrate: None, ..full.clone() }),
            ("altitude:", Coolant { altitude: None, ..full.clone() }),
            (
                "station_pressure:",
                Coolant {
                    station_pressure: Some(Value::new(AbsolutePressure::from_si(1e5))),
                    ..full.clone()
                },
            ),
            ("volume_share:", Coolant { liquid: Liquid::Water, ..full.clone() }),
        ];
        for (key, coolant) in without {
            let message = coolant.check().unwrap_err().to_string();
            assert!(message.starts_with(key), "{message}");
        }
        assert!(full.check().is_ok());
        // A share by mass stands alone, or beside the volumes from which it follows.
        let by_mass =
            Coolant { volume_share: None, concentrate: None, mass_fraction: share(0.5), ..full.clone() };
        assert_eq!(by_mass.margin().unwrap().mass_fraction.si(), 0.5);
        let both = Coolant { mass_fraction: share(0.53), ..full };
        assert_eq!(both.margin().unwrap().mass_fraction.si(), 0.53);
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let by_mass = Coolant { concentrate: None, ..mix(Liquid::PropyleneGlycol, 50.0) };
        let table = by_mass
            .margin_table(
                &[7.0, 15.0].map(GaugePressure::of::<psi_gauge>),
                &[Length::from_si(0.0), Length::from_si(30_000.0)],
                &[Ratio::from_si(0.5)],
            )
            .unwrap();
        assert_eq!(table.rows(), 4);
        assert!(table.reason(1).is_some_and(|error| error.to_string().contains("altitude = 30000 m")));
        assert_eq!(table.numbers("mass_fraction").unwrap()[0], 0.5);
        let boiling = table.numbers("boiling_temperature").unwrap();
        assert!(boiling[2] > boiling[0] && boiling[1].is_nan());
    }
}

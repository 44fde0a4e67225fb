use super::bounds::Strength;
use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::cooling::{
    Coolant, Liquid, MarginOpen, ethylene_glycol_expansion_volume, propylene_glycol_expansion_volume,
};
use crate::units::{
    AbsolutePressure, GaugePressure, Length, Ratio, Temperature, TemperatureDifference, Volume,
};
use crate::{Error, Result, fluid, valid};

/// Steps to the strength for a freezing point; each makes the error less than a fifth with ethylene glycol, and less than three quarters with
/// propylene glycol.
const MOST_STEPS: usize = 100;

/// A fill of glycol and water: volumes to pour, volumes to drain from a present fill, and the limits of the mix.
///
/// # Formula
/// fresh: concentrate `V f`, water `V (1 - f)`, `f` of the wanted mass fraction `w` as in `fluid`; a fill of `f_0` that is there: drain and replace `V (f - f_0) / (1 - f_0)` by concentrate, or
/// `V (f_0 - f) / f_0` by water where it is too strong
///
/// # Fields
/// - `liquid` — `ethylene_glycol` or `propylene_glycol`
/// - `system_volume` — `V`, volume of the whole system: radiator, block, heater, hoses, header tank up to its mark
/// - `concentrate` — glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol
/// - `freezing_temperature` — temperature at which the first ice may form, the bound of the freezing curve counted against the mix; or else `strength`
/// - `strength` — wanted share, by mass or by volume as `strength_by` says
/// - `strength_by` — meaning of `strength` and `present_strength`: glycol by `mass` of the mix, or concentrate by `volume` of the parts before they are mixed
/// - `present_strength` — `f_0` or its mass fraction, strength of the present fill; leave it out if the system is empty, 0 for water
/// - `cap` — opening pressure of the cap, a gauge pressure
/// - `cap_holds` — pressure that the cap surely holds by its test, as `holds_at_least` of `cooling.CapTest`; no more than it counts. Without it the rating counts, the margin is an upper bound, and `margin_open` says so
/// - `altitude` — height above sea level, for the pressure of the standard atmosphere; or else `station_pressure`
/// - `station_pressure` — absolute pressure of the air as measured there, not reduced to sea level
/// - `fill_temperature` — temperature of the coolant when it is filled to the mark
/// - `mean_temperature` — mean temperature of the hot coolant over the system, at most 100 °C; the growth of the fill is counted up to it
/// - `hottest` — temperature that the coolant reaches
///
/// # Valid for
/// Mixes up to 60 % by mass. Volumes of the parts at 20 °C: the mix itself is smaller, by about 1 % with ethylene glycol and 2 % with propylene glycol
/// at half and half, so top up in the same share. A present fill also counts by its parts; it has the same glycol, and is fully mixed before it is drained. The part of the concentrate that is not glycol counts as water;
/// inhibitors have limits of their own, which its maker states. Limits of the mixture models as in `fluid`, of boiling as in `cooling::Coolant`: an upper bound.
///
/// # Source
/// Mass balance; freezing, density and boiling: see `fluid`; air: US Standard Atmosphere 1976; draining and replacing: balance of the parts
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system. Glycol is poisonous, and ethylene glycol tastes sweet to children and animals: catch what is drained and hand it in as local codes say. Never mix coolants whose makers do not allow it.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Mix {
    /// Kind of glycol.
    pub liquid: Liquid,
    /// Volume of the whole system.
    pub system_volume: Value<Volume>,
    /// Glycol in the concentrate by mass.
    pub concentrate: Value<Ratio>,
    /// Temperature at which the first ice may form.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub freezing_temperature: Option<Value<Temperature>>,
    /// Wanted share.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub strength: Option<Value<Ratio>>,
    /// Unit of the strengths.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub strength_by: Option<StrengthBy>,
    /// Strength of the present fill.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub present_strength: Option<Value<Ratio>>,
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
    /// Temperature of the coolant at filling.
    pub fill_temperature: Value<Temperature>,
    /// Mean temperature of the hot coolant over the system.
    pub mean_temperature: Value<Temperature>,
    /// Temperature that the coolant reaches.
    #[cfg_attr(feature = "serde", serde(alias = "hottest_coolant"))]
    pub hottest: Value<Temperature>,
}

/// Unit of a strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum StrengthBy {
    /// Glycol by mass of the mix.
    Mass,
    /// Concentrate by volume of the parts before they are mixed.
    Volume,
}

record! {
    /// A fresh fill and its limits.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct FreshFill {
        /// Glycol by mass of the mix.
        pub mass_fraction: Ratio,
        /// Share of concentrate in the poured volume.
        pub concentrate_share: Ratio,
        /// Concentrate to pour.
        pub concentrate_volume: Volume,
        /// Water to pour.
        pub water_volume: Volume,
        /// Temperature at which the mix begins to freeze.
        pub freezing_temperature: Temperature,
        /// Temperature at which the mix begins to boil under the cap.
        pub boiling_temperature: Temperature,
        /// Excess of the boiling temperature over the hottest coolant.
        pub margin: TemperatureDifference,
        /// Volume by which the fill grows until it is hot.
        pub growth: Volume,
    }
}

record! {
    /// Change of the strength of a present fill.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Exchange {
        /// Glycol by mass of the present fill.
        pub present_mass_fraction: Ratio,
        /// Glycol by mass of the wanted mix.
        pub mass_fraction: Ratio,
        /// Volume to drain.
        pub drained_volume: Volume,
        /// Concentrate to pour in its place.
        pub concentrate_volume: Volume,
        /// Water to pour in its place.
        pub water_volume: Volume,
    }
}

record! {
    /// Volume to drain from a present fill.
    struct Drained {
        drained_volume: Volume,
    }
}

impl crate::base::Sealed for Mix {}
impl Model for Mix {
    const WISHES: &'static [[&'static str; 3]] = &[["tight_below", "wanted.boiling", "of_difference"]];

    fn check(&self) -> Result<()> {
        let _ = self.fresh_fill()?;
        match self.present_strength {
            Some(_) => self.exchange().map(drop),
            None => Ok(()),
        }
    }
}

impl Mix {
    /// Volumes to pour into the empty system, and the limits of that mix.
    ///
    /// # Returns
    /// - `mass_fraction` — glycol by mass of the mix
    /// - `concentrate_share` — concentrate over all that is poured, by volume
    /// - `concentrate_volume` — concentrate to pour
    /// - `water_volume` — water to pour
    /// - `freezing_temperature` — temperature at which the mix begins to freeze by its curve: the first ice; it may freeze warmer, see `cooling::Coolant`
    /// - `boiling_temperature` — temperature at which the mix begins to boil under the cap at its rating
    /// - `margin` — excess of the boiling temperature over the hottest coolant, less the bound of the mixture model as in `cooling::Coolant`
    /// - `growth` — volume by which the fill grows from the fill to the mean temperature: what header tank or bottle must take up
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, cooling::*, units::*};
    /// let mix = Mix {
    ///     liquid: Liquid::EthyleneGlycol, system_volume: Value::parse("12 L")?, concentrate: Value::parse("95 %")?,
    ///     freezing_temperature: Some(Value::parse("-30 °C")?), strength: None, strength_by: Some(StrengthBy::Volume), present_strength: Some(Value::parse("30 %")?),
    ///     cap: Value::parse("15 psi gauge")?, cap_holds: None, altitude: Some(Value::parse("5000 ft")?), station_pressure: None,
    ///     fill_temperature: Value::parse("20 °C")?, mean_temperature: Value::parse("95 °C")?,
    ///     hottest: Value::parse("110 °C")?,
    /// }.checked()?;
    /// let fill = mix.fresh_fill()?;
    /// assert_eq!(format!("{:.1} L and {:.1} L", fill.concentrate_volume.in_::<L>(), fill.water_volume.in_::<L>()), "5.7 L and 6.3 L");
    /// assert_eq!(format!("drain {:.1} L", mix.exchange()?.drained_volume.in_::<L>()), "drain 2.9 L");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn fresh_fill(&self) -> Result<FreshFill> {
        self.check_fields()?;
        let mass_fraction = self.wanted()?;
        let coolant = self.coolant(mass_fraction);
        let (boiling, freezing_temperature) = (coolant.margin()?, coolant.freezing_temperature()?);
        let concentrate_share = self.by_volume(mass_fraction)?;
        let system_volume = self.system_volume.quantity;
        let expansion = match self.liquid {
            Liquid::PropyleneGlycol => propylene_glycol_expansion_volume,
            _ => ethylene_glycol_expansion_volume,
        };
        Ok(FreshFill {
            mass_fraction,
            concentrate_share,
            concentrate_volume: system_volume * concentrate_share,
            water_volume: system_volume * (Ratio::from_si(1.0) - concentrate_share),
            freezing_temperature,
            boiling_temperature: boiling.boiling_temperature,
            margin: boiling.margin,
            growth: expansion(
                system_volume,
                mass_fraction,
                self.fill_temperature.quantity,
                self.mean_temperature.quantity,
            )?,
        })
    }

    /// Mark of the boiling margin.
    ///
    /// # Returns
    /// - `cap_open` — what is missing of the cap that could still take from the margin: its verdict is then no better than `tight`; empty where nothing is
    pub fn margin_open(&self) -> Result<MarginOpen> {
        self.check_fields()?;
        self.coolant(self.wanted()?).margin_open()
    }

    /// Volume to drain from the present fill, and volumes to pour in its place.
    ///
    /// # Returns
    /// - `present_mass_fraction` — glycol by mass of the fill that is there
    /// - `mass_fraction` — glycol by mass of the mix that is wanted
    /// - `drained_volume` — volume to drain, of the fill mixed through
    /// - `concentrate_volume` — concentrate to pour in its place; nothing where the fill is too strong
    /// - `water_volume` — water to pour in its place; nothing where the fill is too weak
    pub fn exchange(&self) -> Result<Exchange> {
        self.check_fields()?;
        let Some(present_strength) = &self.present_strength else {
            return Err(Error::document("present_strength", "give the strength of the fill that is there"));
        };
        let present_strength = present_strength.quantity;
        valid! { present_strength: 0 <= .. <= 1 ; "definition: a share of the whole"; }
        let (present_mass_fraction, mass_fraction) = (self.by_mass(present_strength)?, self.wanted()?);
        let (present, wanted) = (self.by_volume(present_mass_fraction)?, self.by_volume(mass_fraction)?);
        let none = Volume::from_si(0.0);
        let (concentrate_volume, water_volume) = if wanted >= present {
            let left = Ratio::from_si(1.0) - present;
            (self.system_volume.quantity * ((wanted - present) / left), none)
        } else {
            (none, self.system_volume.quantity * ((present - wanted) / present))
        };
        Ok(Exchange {
            present_mass_fraction,
            mass_fraction,
            drained_volume: concentrate_volume + water_volume,
            concentrate_volume,
            water_volume,
        })
    }

    /// Fresh fills over strengths, everything else as it is.
    ///
    /// # Parameters
    /// - `strength` — wanted shares, counted as `strength_by` says
    ///
    /// # Returns
    /// One row for each strength: `strength`, `mass_fraction`, `concentrate_share`, `concentrate_volume`, `water_volume`, `freezing_temperature`, `boiling_temperature`, `margin`, `growth`, `cap_open`, and
    /// `drained_volume` from the fill that is there, not a number where none is.
    pub fn table(&self, strength: &[Ratio]) -> Result<Table> {
        let mut rows = Filling::over(["strength"], &[strength.len()])?;
        for strength in strength {
            let changed =
                Mix { strength: Some(Value::new(*strength)), freezing_temperature: None, ..self.clone() };
            let on = changed.fresh_fill().and_then(|on| {
                let drained_volume = match changed.present_strength {
                    Some(_) => changed.exchange()?.drained_volume,
                    None => Volume::from_si(f64::NAN),
                };
                Ok((on, (changed.margin_open()?, Drained { drained_volume })))
            });
            rows.push((*strength,), on)?;
        }
        rows.finish()
    }

    fn check_fields(&self) -> Result<()> {
        if self.liquid == Liquid::Water {
            return Err(Error::document("liquid", "water alone is no mix; name the glycol"));
        }
        self.concentrate.share("concentrate")?;
        for (key, value) in [("strength", &self.strength), ("present_strength", &self.present_strength)] {
            value.as_ref().map_or(Ok(()), |value| value.share(key))?;
        }
        let (system_volume, concentrate) = (self.system_volume.quantity, self.concentrate.quantity);
        let (fill_temperature, mean_temperature) =
            (self.fill_temperature.quantity, self.mean_temperature.quantity);
        valid! {
            fill_temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
            mean_temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
            system_volume: 0.000001 <= .. <= 1000 ; "plausibility limit: systems hold between 1 mL and 1000 m³";
            concentrate: 0 < .. <= 1 ; "definition: a share of the whole";
        }
        Ok(())
    }

    /// Glycol by mass of the mix that is wanted.
    fn wanted(&self) -> Result<Ratio> {
        match (&self.freezing_temperature, &self.strength) {
            (Some(freezing_temperature), None) => {
                let for_freezing = match self.liquid {
                    Liquid::PropyleneGlycol => fluid::propylene_glycol_mass_fraction_for_freezing,
                    _ => fluid::ethylene_glycol_mass_fraction_for_freezing,
                };
                // The curve less its own bound: the bound rises with the strength more slowly than the curve falls.
                let freezes_at_most = freezing_temperature.quantity;
                let mut mass_fraction = for_freezing(freezes_at_most)?;
                for _ in 0..MOST_STEPS {
                    let bound = Strength { liquid: self.liquid, mass_fraction }.freezing()?;
                    let next = for_freezing(freezes_at_most - bound)?;
                    if next == mass_fraction {
                        break;
                    }
                    mass_fraction = next;
                }
                Ok(mass_fraction)
            }
            (None, Some(strength)) => {
                let strength = strength.quantity;
                valid! { strength: 0 <= .. <= 1 ; "definition: a share of the whole"; }
                self.by_mass(strength)
            }
            (None, None) => {
                Err(Error::document("strength", "give the strength that is wanted, or freezing_temperature"))
            }
            (Some(_), Some(_)) => Err(Error::document(
                "freezing_temperature",
                "give freezing_temperature or strength, not both",
            )),
        }
    }

    /// Glycol by mass of a strength that is counted as `strength_by` says.
    fn by_mass(&self, strength: Ratio) -> Result<Ratio> {
        match self.strength_by {
            Some(StrengthBy::Mass) => Ok(strength),
            Some(StrengthBy::Volume) => {
                let by_volume = match self.liquid {
                    Liquid::PropyleneGlycol => fluid::propylene_glycol_mass_fraction,
                    _ => fluid::ethylene_glycol_mass_fraction,
                };
                by_volume(strength, self.concentrate.quantity)
            }
            None => Err(Error::document("strength_by", "say whether strengths are by mass or by volume")),
        }
    }

    /// Concentrate by volume of the parts of a mix.
    fn by_volume(&self, mass_fraction: Ratio) -> Result<Ratio> {
        let glycol_mass_share = self.concentrate.quantity;
        let share = match self.liquid {
            Liquid::PropyleneGlycol => fluid::propylene_glycol_concentrate_share,
            _ => fluid::ethylene_glycol_concentrate_share,
        };
        if mass_fraction >= glycol_mass_share {
            return Err(Error::document(
                "concentrate",
                format!(
                    "{} glycol by mass is not more than the {} of the mix: a mix with water is weaker than its concentrate",
                    said(glycol_mass_share),
                    said(mass_fraction)
                ),
            ));
        }
        share(mass_fraction, glycol_mass_share)
    }

    /// The mix under its cap.
    fn coolant(&self, mass_fraction: Ratio) -> Coolant {
        Coolant {
            liquid: self.liquid,
            volume_share: None,
            concentrate: None,
            mass_fraction: Some(Value::new(mass_fraction)),
            cap: self.cap.clone(),
            cap_holds: self.cap_holds.clone(),
            altitude: self.altitude.clone(),
            station_pressure: self.station_pressure.clone(),
            hottest: self.hottest.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{degC, percent, psi_gauge};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn percents(value: f64) -> Value<Ratio> {
        Value::new(Ratio::of::<percent>(value))
    }

    fn temperature(value: f64) -> Value<Temperature> {
        Value::new(Temperature::of::<degC>(value))
    }

    /// 10 L to half and half by volume of a concentrate of 95 %.
    fn mix(liquid: Liquid, present: Option<f64>) -> Mix {
        Mix {
            liquid,
            system_volume: Value::new(Volume::from_si(0.01)),
            concentrate: percents(95.0),
            freezing_temperature: None,
            strength: Some(percents(50.0)),
            strength_by: Some(StrengthBy::Volume),
            present_strength: present.map(percents),
            cap: Value::new(GaugePressure::of::<psi_gauge>(15.0)),
            cap_holds: None,
            altitude: Some(Value::new(Length::from_si(0.0))),
            station_pressure: None,
            fill_temperature: temperature(20.0),
            mean_temperature: temperature(95.0),
            hottest: temperature(110.0),
        }
    }

    #[test]
    fn an_exchange_worked_by_hand() {
        // 10 L: from 20 % to 50 % replace 10 * 0.3 / 0.8 = 3.75 L by concentrate; from 80 % replace 10 * 0.3 / 0.8 L by water; from water 5 L.
        for (present, concentrate, water) in
            [(20.0, 3.75e-3, 0.0), (80.0, 0.0, 3.75e-3), (0.0, 5e-3, 0.0), (50.0, 0.0, 0.0)]
        {
            for liquid in [Liquid::EthyleneGlycol, Liquid::PropyleneGlycol] {
                let on = mix(liquid, Some(present)).exchange().unwrap();
                assert_relative_eq!(
                    on.concentrate_volume.si(),
                    concentrate,
                    max_relative = 1e-12,
                    epsilon = 1e-17
                );
                assert_relative_eq!(on.water_volume.si(), water, max_relative = 1e-12, epsilon = 1e-17);
                assert_relative_eq!(
                    on.drained_volume.si(),
                    concentrate + water,
                    max_relative = 1e-12,
                    epsilon = 1e-17
                );
            }
        }
    }

    #[test]
    fn a_fresh_fill_is_the_free_functions() {
        let on = mix(Liquid::PropyleneGlycol, None).fresh_fill().unwrap();
        let half = Ratio::from_si(0.5);
        let w = fluid::propylene_glycol_mass_fraction(half, Ratio::from_si(0.95)).unwrap();
        assert_eq!(on.mass_fraction, w);
        assert_relative_eq!(on.concentrate_volume.si(), 5e-3, max_relative = 1e-12);
        assert_relative_eq!(on.water_volume.si(), 5e-3, max_relative = 1e-12);
        assert_eq!(on.freezing_temperature, fluid::propylene_glycol_freezing_temperature(w).unwrap());
        let pressure = AbsolutePressure::from_si(101_325.0 + 15.0 * 6_894.757_293_168);
        let boils = fluid::propylene_glycol_boiling_temperature(pressure, w).unwrap();
        assert_relative_eq!(on.boiling_temperature.si(), boils.si(), max_relative = 1e-10);
        // The bound of propylene glycol: 6.1 K at 50 %, in proportion below.
        assert_relative_eq!(on.margin.si(), boils.si() - 6.1 * w.si() / 0.5 - 383.15, max_relative = 1e-7);
        let (from, to) = (Temperature::of::<degC>(20.0), Temperature::of::<degC>(95.0));
        let growth = propylene_glycol_expansion_volume(Volume::from_si(0.01), w, from, to).unwrap();
        assert_eq!(on.growth, growth);
    }

    #[test]
    fn a_freezing_point_is_met() {
        for liquid in [Liquid::EthyleneGlycol, Liquid::PropyleneGlycol] {
            let wanted =
                Mix { strength: None, freezing_temperature: Some(temperature(-30.0)), ..mix(liquid, None) };
            let on = wanted.fresh_fill().unwrap();
            let bound = Strength { liquid, mass_fraction: on.mass_fraction }.freezing().unwrap();
            assert_relative_eq!(on.freezing_temperature.si() + bound.si(), 243.15, max_relative = 1e-10);
            let poured = Mix {
                strength: Some(Value::new(on.concentrate_volume / (on.concentrate_volume + on.water_volume))),
                ..mix(liquid, None)
            };
            assert_relative_eq!(
                poured.fresh_fill().unwrap().mass_fraction.si(),
                on.mass_fraction.si(),
                max_relative = 1e-12
            );
        }
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let strengths = [0.3, 0.5, 0.9, 1.5].map(Ratio::from_si);
        let table = mix(Liquid::EthyleneGlycol, Some(30.0)).table(&strengths).unwrap();
        let drained = table.numbers("drained_volume").unwrap();
        assert!(drained[0].abs() < 1e-15);
        assert_relative_eq!(drained[1], 0.01 * 0.2 / 0.7, max_relative = 1e-12);
        assert!(table.reason(2).is_some_and(|error| error.to_string().contains("mass_fraction = 0.8")));
        assert!(table.reason(3).is_some_and(|error| error.to_string().starts_with("strength = 1.5")));
        let none = mix(Liquid::EthyleneGlycol, None).table(&strengths[..1]).unwrap();
        assert!(none.numbers("drained_volume").unwrap()[0].is_nan() && none.reason(0).is_none());
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let full = mix(Liquid::EthyleneGlycol, Some(30.0));
        assert!(full.check().is_ok());
        for (name, wrong) in [
            ("liquid", Mix { liquid: Liquid::Water, ..full.clone() }),
            ("system_volume", Mix { system_volume: Value::new(Volume::from_si(f64::NAN)), ..full.clone() }),
            ("concentrate", Mix { concentrate: percents(120.0), ..full.clone() }),
            (
                "concentrate: 0.4",
                Mix { concentrate: percents(40.0), strength: Some(percents(100.0)), ..full.clone() },
            ),
            ("strength", Mix { strength: None, ..full.clone() }),
            ("strength = ", Mix { strength: Some(percents(f64::INFINITY)), ..full.clone() }),
            ("strength_by", Mix { strength_by: None, ..full.clone() }),
            ("present_strength", Mix { present_strength: Some(percents(-1.0)), ..full.clone() }),
            ("freezing_temperature", Mix { freezing_temperature: Some(temperature(-30.0)), ..full.clone() }),
            (
                "freezing_temperature = ",
                Mix { strength: None, freezing_temperature: Some(temperature(-60.0)), ..full.clone() },
            ),
            ("cap", Mix { cap: Value::new(GaugePressure::from_si(1e6)), ..full.clone() }),
            ("altitude", Mix { altitude: None, ..full.clone() }),
            ("fill_temperature", Mix { fill_temperature: temperature(-70.0), ..full.clone() }),
            ("mean_temperature", Mix { mean_temperature: temperature(130.0), ..full.clone() }),
            ("hottest", Mix { hottest: temperature(300.0), ..full.clone() }),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(name), "{name}: {message}");
        }
        let empty = mix(Liquid::EthyleneGlycol, None);
        assert!(empty.check().is_ok());
        assert!(empty.exchange().unwrap_err().to_string().starts_with("present_strength"));
    }

    proptest! {
        /// Parts before and after, counted apart.
        #[test]
        fn nothing_is_lost_in_an_exchange(present in 0.0f64..0.6, wanted in 0.0f64..0.6) {
            let of = Mix {
                strength: Some(Value::new(Ratio::from_si(wanted))), concentrate: percents(100.0),
                ..mix(Liquid::EthyleneGlycol, Some(100.0 * present))
            };
            prop_assume!(of.fresh_fill().is_ok());
            let on = of.exchange().unwrap();
            let glycol = (0.01 - on.drained_volume.si()) * present + on.concentrate_volume.si();
            prop_assert!((glycol / 0.01 - wanted).abs() < 1e-12);
            prop_assert!(on.drained_volume.si() >= 0.0 && on.drained_volume.si() <= 0.01 * (1.0 + 1e-12));
        }
    }
}

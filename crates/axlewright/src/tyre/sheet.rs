use super::{Tyre, rolling_turns};
use crate::Result;
use crate::base::section::rule::Marked;
use crate::base::section::{
    About, Finding, Line, Margin, Marking, Rule, Section, by, choice, derived, fields, joined, line, marking,
    part, pick, product_of, renamed, rule, same, step, words,
};
use crate::units::{
    Force, GaugePressure, Length, LinearStiffness, Mass, Quantity, Ratio, STANDARD_GRAVITY, TurnsPerDistance,
    Velocity, km_h,
};

/// The part on which a tyre is measured.
const A_TYRE: &[&str] = &["axle.tyre"];

/// Numbers of a tyre's marking.
const TYRE: Marking = Marking {
    numbers: &["free_diameter", "section_width", "radial_radius", "load_index", "speed"],
    decode: |text| {
        let marked = Tyre::new(text)?.marked()?;
        Ok(vec![
            marked.free_diameter.si(),
            marked.section_width.si(),
            marked.radial_radius.si(),
            marked.load_index.si(),
            marked.speed.si(),
        ])
    },
};

/// A tyre, inflated and not loaded.
struct Free {
    free_diameter: Length,
}

/// A wheel that rolls on this radius.
struct Rolls {
    radius: Length,
}

/// Mass on both wheels of an axle.
struct OnAxle {
    axle_mass: Mass,
}

/// Rolling radii of a marked tyre.
struct RollingRadii {
    #[allow(dead_code, reason = "a marking must be there; its numbers are lines of their own")]
    size: Marked,
    radial_radius: Option<Length>,
    diagonal_radius: Option<Length>,
}

/// Use of a tyre.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Service {
    AsMade,
    PassengerTyreOnTruckOrTrailer,
}

/// A tyre as it is used. What is not known is counted as if it took nothing from the load; the reserves keep that from being enough.
struct InUse {
    load_capacity: Mass,
    pressure: Option<GaugePressure>,
    rated_pressure: Option<GaugePressure>,
    rated_speed: Option<Velocity>,
    peak_speed: Option<Velocity>,
    service: Option<Service>,
}

/// Inflation pressure of a tyre, and the one at which its load index counts.
struct Inflated {
    pressure: GaugePressure,
    rated_pressure: GaugePressure,
}

/// Top speed of a tyre, and the speed of its symbol.
struct Driven {
    peak_speed: Velocity,
    rated_speed: Option<Velocity>,
}

/// A service that is written.
struct Served {
    service: Service,
}

words!(Service { AsMade = "as_made", PassengerTyreOnTruckOrTrailer = "passenger_tyre_on_truck_or_trailer" });
fields!(InUse { load_capacity, pressure, rated_pressure, rated_speed, peak_speed, service });
fields!(Inflated { pressure, rated_pressure });
fields!(Driven { peak_speed, rated_speed });
fields!(Served { service });
fields!(Free { free_diameter });
fields!(Rolls { radius });
fields!(OnAxle { axle_mass });
fields!(RollingRadii { size, radial_radius, diagonal_radius });

impl Free {
    fn radius(&self) -> Result<Length> {
        Ok(self.free_diameter / 2.0)
    }
}

/// Share of its load that a tyre carries at speed: symbols from V up lose some before the speed of the symbol. Pairs of speed (km/h) and share, by
/// the speed of the symbol; between them straight. ETRTO Standards Manual, from memory.
const AT_SPEED: [(f64, f64, f64); 3] = [(240.0, 210.0, 0.91), (270.0, 240.0, 0.85), (300.0, 270.0, 0.85)];
/// Up to here every tyre carries its whole load (km/h).
const WHOLE_LOAD: f64 = 210.0;
/// A passenger tyre on a truck or trailer: its load is divided by this (United States, from memory).
const ON_TRAILER: f64 = 1.10;

impl Driven {
    /// Share of its load that the tyre carries at its top speed; not a number where the symbol is not known.
    fn share(&self) -> f64 {
        let peak = self.peak_speed.in_::<km_h>();
        if peak <= WHOLE_LOAD {
            return 1.0;
        }
        let Some(rated) = self.rated_speed.map(Velocity::in_::<km_h>) else { return f64::NAN };
        // A speed between two symbols may stand for either: the lesser share counts. Symbols below V carry all of it up to their speed;
        // beyond it the question of the top speed is short.
        let Some(above) = AT_SPEED.iter().position(|(symbol, ..)| rated < symbol + 0.5) else {
            return f64::NAN;
        };
        let is_a_symbol = AT_SPEED.get(above).is_some_and(|(symbol, ..)| rated > symbol - 0.5);
        if above == 0 && rated < WHOLE_LOAD + 0.5 {
            return 1.0;
        }
        let least = if is_a_symbol { above } else { above.saturating_sub(1) };
        let shares = AT_SPEED.iter().take(above + 1).skip(least).map(|(symbol, from, least)| {
            1.0 - (1.0 - least) * ((peak - from) / (symbol - from)).clamp(0.0, 1.0)
        });
        shares.fold(1.0, f64::min)
    }

    fn reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.share().is_nan() { f64::INFINITY } else { 1.0 }))
    }
}

impl Inflated {
    /// Share of its load that the tyre carries at its pressure: in proportion, which errs to less, and never more than all.
    fn share(&self) -> f64 {
        (self.pressure.si() / self.rated_pressure.si()).clamp(0.0, 1.0)
    }

    fn reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.share().is_nan() { f64::INFINITY } else { 1.0 }))
    }
}

impl Served {
    fn share(&self) -> f64 {
        match self.service {
            Service::AsMade => 1.0,
            Service::PassengerTyreOnTruckOrTrailer => 1.0 / ON_TRAILER,
        }
    }

    fn reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.share().is_nan() { f64::INFINITY } else { 1.0 }))
    }
}

impl InUse {
    /// Load that the tyre carries at its pressure, at the top speed and in its service.
    fn carries(&self) -> Result<Mass> {
        let inflated = self.pressure.zip(self.rated_pressure);
        let by_pressure =
            inflated.map_or(1.0, |(pressure, rated_pressure)| Inflated { pressure, rated_pressure }.share());
        let by_speed = self.peak_speed.map_or(1.0, |peak_speed| {
            let share = Driven { peak_speed, rated_speed: self.rated_speed }.share();
            if share.is_nan() { 1.0 } else { share }
        });
        let by_service = self.service.map_or(1.0, |service| Served { service }.share());
        Ok(self.load_capacity * (by_pressure * by_speed * by_service))
    }
}

impl Rolls {
    fn turns(&self) -> Result<TurnsPerDistance> {
        rolling_turns(self.radius)
    }
}

impl OnAxle {
    /// Load of one wheel.
    fn load(&self) -> Result<Force> {
        Ok(Force::from_si(self.axle_mass.si() * STANDARD_GRAVITY / 2.0))
    }
}

impl RollingRadii {
    /// The radial rule if the marking is that of a radial tyre, otherwise the rule of the loaded radius.
    fn radius(&self) -> Result<Length> {
        Ok(self.radial_radius.or(self.diagonal_radius).unwrap_or(Length::from_si(f64::NAN)))
    }
}

const FREE_RADIUS: Rule = rule! {
    "axle.tyre" Free::radius, Free
    takes { free_diameter }
    says "r_0 = D / 2", "definition: half the diameter"
};
const FREE_TURNS: Rule = rule! {
    "axle.tyre" Rolls::turns, Rolls
    takes { radius = "axle.tyre.free_radius" }
    says "1 / (2 pi r_0)", ROLLS
};
const LOADED_TURNS: Rule = rule! {
    "axle.tyre" Rolls::turns, Rolls
    takes { radius = "axle.tyre.loaded_radius" }
    says "1 / (2 pi r_l)", ROLLS
};
const ROLLS: &str = "definition: a tyre rolls on a radius between its loaded and its free one";
const LOAD: Rule = rule! {
    "axle" OnAxle::load, OnAxle
    takes { axle_mass }
    says "F = m g / 2", "definition: both wheels of the axle alike; standard gravity: 3rd CGPM"
};
const CARRIES: Rule = rule! {
    "axle.tyre" InUse::carries, InUse
    takes { load_capacity, pressure, rated_pressure, rated_speed, peak_speed = "use.peak_speed", service }
    says "Q min(1, p / p_r) k_v k_s; k_v falls from 1 at 210 km/h to 0.91 at 240 km/h for V, from 1 at 240 to 0.85 at 270 for W, from 1 at 270 to 0.85 at 300 for Y, and of a rated speed between two symbols to the lesser of both; k_s = 1 / 1.10 for a passenger tyre on a truck or trailer",
        "ETRTO Standards Manual and rules of the United States, from memory; in proportion to the pressure: errs to less"
};
const WRITTEN: &str = "definition: a margin is enough only if nothing that lowers the load is missing";
const PRESSURE_TOLD: Rule = rule! {
    "axle.tyre" Inflated::reserve, Inflated
    takes { pressure, rated_pressure }
    says "1", WRITTEN
};
const SPEED_TOLD: Rule = rule! {
    "axle.tyre" Driven::reserve, Driven
    takes { peak_speed = "use.peak_speed", rated_speed }
    says "1", WRITTEN
};
const SERVICE_TOLD: Rule = rule! {
    "axle.tyre" Served::reserve, Served
    takes { service }
    says "1", WRITTEN
};
const ROLLING: Rule = rule! {
    "axle.tyre" RollingRadii::radius, RollingRadii
    takes { size, radial_radius, diagonal_radius }
    says "the radial rule if the marking is that of a radial tyre, otherwise the rule of the loaded radius",
        "ETRTO Standards Manual and UN Regulation 30, from memory; Jazar, Vehicle Dynamics (2008), sec. 3.1, from memory";
    lacking "a diagonal tyre needs tyre.loaded_radius, or tyre.rate and the axle's mass, or tyre.rolling_turns"
};

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 10.0, "plausibility limit: tyres are smaller than 10 m")
}

const MARKING: &str = "the marking on the tyre's wall";
/// Largest share by which a tyre's diameter differs from its marking: wear takes 16 mm of 700 mm, makers differ by 2 % (from memory).
const APART: f64 = 0.06;
/// Least share of the free radius on which a tyre stands. At 0.85 a third of the height of its section is gone (235/70R16: 55 mm of 165 mm): it is flat. Common
/// practice, no source: at their load tyres stand on 0.92 to 0.98.
pub(crate) const STANDS: f64 = 0.85;

const SIZE: &[Line] =
    &[
        marking("axle.tyre.size", &TYRE, "marking on the tyre's wall, such as 235/70R16 106T")
            .how("copy it from the wall, load index and speed symbol included"),
        length("axle.tyre.free_diameter", "diameter of the tyre, inflated and not loaded")
            .measured_on(A_TYRE)
            .by(&[
                part("free_diameter", &TYRE, &["axle.tyre.size"]).usual(),
                part("free_diameter", &TYRE, &["axle.tyre.size"]).at_least(1.0 - APART),
                part("free_diameter", &TYRE, &["axle.tyre.size"]).at_most(1.0 + APART),
            ]),
        length("axle.tyre.section_width", "nominal width of the tyre's section")
            .measured_on(A_TYRE)
            .by(&[part("section_width", &TYRE, &["axle.tyre.size"]).usual()]),
        length("axle.tyre.free_radius", "radius of the tyre, inflated and not loaded")
            .measured_on(A_TYRE)
            .by(&[by(&FREE_RADIUS)]),
    ];

const RADII: &[Line] = &[
    line("axle.tyre.rate", LinearStiffness::KIND, "vertical rate of the tyre at its pressure and load").how("load the tyre at its pressure by two known amounts and measure how far the rim drops; difference of load over difference of height")
        .within(1.0, 1e9, "plausibility limit: rates lie between 1 N/m and 1 GN/m"),
    derived("axle.tyre.load", Force::KIND, "load of one tyre on the ground, the two of its axle alike")
        .by(&[by(&LOAD)]),
    length("axle.tyre.loaded_radius", "wheel centre to ground under load: the lever arm of forces")
        .measured_on(A_TYRE)
        .by(&[
            step("tyre.loaded_radius", &["axle.tyre.free_diameter", "axle.tyre.load", "axle.tyre.rate"])
                .usual(),
            same(&["axle.tyre.free_radius"], FREE).at_least(STANDS),
            same(&["axle.tyre.free_radius"], FREE).at_most(1.0),
        ]),
    line(
        "axle.tyre.rolling_turns",
        TurnsPerDistance::KIND,
        "turns along a distance, counted or from the maker",
    )
    .above(0.0, 1000.0, "plausibility limit: a tyre turns less than a thousand times a metre")
    .measured_on(A_TYRE)
    .by(&[by(&FREE_TURNS).at_least(1.0), by(&LOADED_TURNS).at_most(1.0)]),
    derived(
        "axle.tyre.radial_radius",
        Length::KIND,
        "rolling radius of a new radial tyre, from its marking: C = 3.05 D, see tyre.Tyre",
    )
    .by(&[part("radial_radius", &TYRE, &["axle.tyre.size"])]),
    derived("axle.tyre.diagonal_radius", Length::KIND, "rolling radius of a diagonal tyre")
        .by(&[step("tyre.rolling_radius", &["axle.tyre.free_diameter", "axle.tyre.loaded_radius"])]),
    length("axle.tyre.effective_radius", "distance per turn over 2 pi: the radius for speed").how("roll ten turns in a straight line, laden; tape along the floor over 20 pi")
        .measured_on(A_TYRE)
        .by(&[
            step("tyre.rolling_radius_from_turns", &["axle.tyre.rolling_turns"]),
            by(&ROLLING).usual(),
            same(&["axle.tyre.free_radius"], FREE).at_most(1.0),
            same(&["axle.tyre.loaded_radius"], ROLLS).at_least(1.0),
        ]),
];

const FREE: &str = "definition: a load does not raise the centre of a wheel; plausibility limit: below 0.85 of its free radius a tyre is flat";

const SERVICE: &[Line] = &[
    derived("axle.tyre.marked_index", Ratio::KIND, "load index in the marking, for a single tyre")
        .by(&[part("load_index", &TYRE, &["axle.tyre.size"])
            .lacking("no load index stands after the size, as in 235/70R16 106T")]),
    line("axle.tyre.load_index", Ratio::KIND, "load index for a single tyre")
        .within(0.0, 279.0, "ISO 4000-1, from memory: load indices run from 0 to 279")
        // An index is a whole number.
        .by(&[same(&["axle.tyre.marked_index"], MARKING).about(0.4)]),
    line(
        "axle.tyre.load_capacity",
        Mass::KIND,
        "load capacity of one tyre at its pressure, from its load index or its maker",
    )
    .above(0.0, 1e6, "plausibility limit: no tyre carries 1000 t")
    .by(&[
        step("tyre.load_capacity", &["axle.tyre.load_index"]).usual(),
        // Within what a conversion of pounds rounds.
        step("tyre.load_capacity", &["axle.tyre.load_index"]).at_most(1.0).about(1.0),
    ]),
    line("axle.tyre.pressure", GaugePressure::KIND, "inflation pressure, cold, as it is driven: the lowest that is allowed").how("gauge on the cold tyre")
        .within(0.0, 2e6, "plausibility limit: no tyre is inflated above 20 bar")
        .measured_on(A_TYRE),
    line("axle.tyre.rated_pressure", GaugePressure::KIND, "inflation pressure, cold, at which the tyre carries its load, from its wall or its maker").how("the maker's load table, or the pressure beside the load on the wall")
        .above(0.0, 2e6, "plausibility limit: no tyre is inflated above 20 bar"),
    choice("axle.tyre.service", Service::WORDS, "service of the tyre: as it is made for, or a passenger tyre on a truck or trailer, which carries less"),
    derived("axle.tyre.usable_capacity", Mass::KIND, "load that one tyre carries at its pressure, at the top speed and in its service")
        .by(&[by(&CARRIES)]),
    derived("axle.tyre.pressure_reserve", Ratio::KIND, "factor on the margin of load that is wanted: 1 where the pressures are known")
        .by(&[by(&PRESSURE_TOLD)])
        .or(f64::INFINITY, "write tyre.pressure and tyre.rated_pressure of this axle: a softer tyre carries less, so until then its load is no better than tight"),
    derived("axle.tyre.speed_reserve", Ratio::KIND, "factor on the margin of load that is wanted: 1 where the top speed is known")
        .by(&[by(&SPEED_TOLD)])
        .or(f64::INFINITY, "write use.peak_speed: a tyre may carry less at speed, and until then its load is no better than tight"),
    derived("axle.tyre.service_reserve", Ratio::KIND, "factor on the margin of load that is wanted: 1 where the service is known")
        .by(&[by(&SERVICE_TOLD)])
        .or(f64::INFINITY, "write tyre.service of this axle: a passenger tyre on a truck or trailer carries less, so until then its load is no better than tight"),
    derived("axle.tyre.wanted_load", Ratio::KIND, "factor between load capacity and load that is wanted; without limit while something is missing that could lower the capacity")
        .by(&[product_of(
            &["wanted.load", "axle.tyre.pressure_reserve", "axle.tyre.speed_reserve", "axle.tyre.service_reserve"],
            "definition",
        )]),
    derived("axle.tyre.marked_speed", Velocity::KIND, "speed of the symbol of the marking").by(&[part(
        "speed",
        &TYRE,
        &["axle.tyre.size"],
    )
    .lacking("no speed symbol stands after the size, as in 235/70R16 106T")]),
    line(
        "axle.tyre.rated_speed",
        Velocity::KIND,
        "speed up to which the tyre carries its load, from its speed symbol or its maker",
    )
    .above(0.0, 200.0, "plausibility limit: no road vehicle is faster than 200 m/s")
    .by(&[
        same(&["axle.tyre.marked_speed"], "ISO 4000-1, from memory").usual(),
        // Within what a conversion to whole miles an hour rounds.
        same(&["axle.tyre.marked_speed"], "ISO 4000-1, from memory").at_most(1.0).about(0.3),
    ]),
    line("use.peak_speed", Velocity::KIND, "road speed that is never exceeded").above(
        0.0,
        200.0,
        "plausibility limit: no road vehicle is faster than 200 m/s",
    ),
    line(
        "wanted.tyre_speed",
        Ratio::KIND,
        "wanted factor between the speed of the tyre's symbol and the top speed",
    )
    .within(1.0, 10.0, "definition: below 1 the tyre is too slow, not tight")
    .or(1.0, "no margin beyond the symbol itself"),
];

/// Reading of the speedometer after a change of tyre, or of tyre and axle.
const SPEEDOMETER: &[Line] = &[
    marking("speedometer.tyre_size", &TYRE, "marking of the tyre with which the speedometer was right")
        .how("the size that the vehicle had when the speedometer was right"),
    derived("speedometer.radial_radius", Length::KIND, "rolling radius of that tyre, if it is a radial one")
        .by(&[part("radial_radius", &TYRE, &["speedometer.tyre_size"])
            .lacking("a diagonal tyre needs speedometer.effective_radius")]),
    length("speedometer.effective_radius", "rolling radius with which the speedometer was right")
        .measured_on(&["speedometer.tyre_size"])
        .by(&[same(
            &["speedometer.radial_radius"],
            "ETRTO Standards Manual and UN Regulation 30, from memory",
        )
        .usual()]),
    choice(
        "speedometer.counts",
        &["wheel", "shaft"],
        "whether the speedometer counts turns of a driven wheel, or of the shaft before the axle",
    ),
    line(
        "speedometer.final_drive",
        Ratio::KIND,
        "ratio of the axle with which a speedometer that counts turns of the shaft was right",
    )
    .within(
        0.1,
        30.0,
        "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point",
    ),
    // The driveline says which wheels it counts, and over which axle.
    derived("speedometer.error_at_wheel", Ratio::KIND, "error of a speedometer that counts turns of a wheel")
        .in_units("percent", "percent"),
    derived(
        "speedometer.error_at_shaft",
        Ratio::KIND,
        "error of a speedometer that counts turns of the shaft",
    )
    .in_units("percent", "percent"),
    derived(
        "speedometer.error",
        Ratio::KIND,
        "reading over true speed, less 1; add the error that it had when new",
    )
    .in_units("percent", "percent")
    .by(&[pick(&["speedometer.counts", "speedometer.error_at_wheel", "speedometer.error_at_shaft"])]),
    line("wanted.speedometer", Ratio::KIND, "share by which the speedometer should read too much")
        .in_units("percent", "percent")
        .margin(1.0)
        .or(0.0, "no margin beyond never too little"),
];

/// A tyre.
const TYRE_PART: &[&str] = &[
    "axle.tyre.size",
    "axle.tyre.free_diameter",
    "axle.tyre.section_width",
    "axle.tyre.free_radius",
    "axle.tyre.rate",
    "axle.tyre.loaded_radius",
    "axle.tyre.rolling_turns",
    "axle.tyre.effective_radius",
    "axle.tyre.load_index",
    "axle.tyre.load_capacity",
    "axle.tyre.rated_pressure",
    "axle.tyre.service",
    "axle.tyre.rated_speed",
];

/// Lines and findings of the sheet on tyres, wheels and the speedometer.
pub const SHEET: Section = Section {
    lines: &joined::<_, { SIZE.len() + RADII.len() + SERVICE.len() + SPEEDOMETER.len() }>(&[
        SIZE,
        RADII,
        SERVICE,
        SPEEDOMETER,
    ]),
    findings: &[
        Finding {
            path: "axle.tyre_load",
            question: "Does the tyre carry the heavier wheel of its axle?",
            margin: Margin::Ratio { capacity: "axle.tyre.usable_capacity", demand: "axle.heavier_wheel" },
            wanted: "axle.tyre.wanted_load",
            rests_on: &[],
            about: &[],
            caution: "An overloaded tyre overheats and bursts; its maker's load and pressure tables and local codes come first.",
        },
        Finding {
            path: "axle.tyre_speed",
            question: "Is the tyre made for the top speed?",
            margin: Margin::Ratio { capacity: "axle.tyre.rated_speed", demand: "use.peak_speed" },
            wanted: "wanted.tyre_speed",
            rests_on: &[],
            about: &[],
            caution: "A tyre driven beyond its speed symbol overheats and bursts; its maker and local codes come first.",
        },
        Finding {
            path: "speedometer.reading",
            question: "Does the speedometer never read too little?",
            margin: Margin::Remaining { value: "speedometer.error" },
            wanted: "wanted.speedometer",
            rests_on: &[],
            about: &[About::parts(&["speedometer"])],
            caution: "A speedometer that reads too little is forbidden in many places (UN Regulation 39, from memory: never below the \
                      true speed); have it set and checked before the road.",
        },
    ],
    renamed: &[renamed("use.greatest_speed", "use.peak_speed")],
    parts: &[TYRE_PART, &["speedometer.tyre_size", "speedometer.counts", "speedometer.final_drive"]],
    ..Section::EMPTY
};

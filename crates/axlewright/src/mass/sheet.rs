use crate::Result;
use crate::base::section::{
    Finding, Line, Margin, Rule, Section, Step, by, derived, fields, greatest_of, line, result, rule, same,
    sum_of,
};
use crate::units::{Length, Mass, Quantity, Ratio};

const SCALES: &[&str] = &[
    "scales.left_front",
    "scales.right_front",
    "scales.left_rear",
    "scales.right_rear",
    "vehicle.wheelbase",
    "front.track",
    "rear.track",
];

const fn scale(path: &'static str, meaning: &'static str) -> Line {
    line(path, Mass::KIND, meaning)
        .above(0.0, 1e6, "plausibility limit: no wheel carries 1000 t")
        .measured_on(&[])
}

const fn mass(path: &'static str, meaning: &'static str) -> Line {
    line(path, Mass::KIND, meaning).above(0.0, 4e6, "plausibility limit: no vehicle weighs 4000 t")
}

const fn measure(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 100.0, "plausibility limit: no vehicle is 100 m long")
}

const fn height(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(0.0, 100.0, "definition: above the ground")
}

const fn sprung_centre(place: usize) -> Step {
    result(
        place,
        "mass.sprung_centre",
        &[
            "vehicle.mass",
            "vehicle.behind_front_axle",
            "vehicle.centre_of_gravity_height",
            "vehicle.wheelbase",
            "front.unsprung_mass",
            "rear.unsprung_mass",
            "front.unsprung_height",
            "rear.unsprung_height",
        ],
    )
}

const fn of_scales(place: usize) -> Step {
    result(place, "mass.weight_distribution", SCALES)
}

/// Masses of an axle.
struct Axle {
    axle_mass: Mass,
    unsprung_mass: Mass,
}

fields!(Axle { axle_mass, unsprung_mass });

impl Axle {
    /// Mass that one wheel carries.
    fn sprung_mass(&self) -> Result<Mass> {
        Ok((self.axle_mass - self.unsprung_mass) / 2.0)
    }
}

/// Mass that moves with both wheels of an axle.
struct Unsprung {
    unsprung_mass: Mass,
}

fields!(Unsprung { unsprung_mass });

impl Unsprung {
    /// Mass that moves with one wheel.
    fn of_wheel(&self) -> Result<Mass> {
        Ok(self.unsprung_mass / 2.0)
    }
}

const UNSPRUNG: Rule = rule! {
    "axle" Unsprung::of_wheel, Unsprung
    takes { unsprung_mass }
    says "m_unsprung / 2", "definition: both wheels of the axle alike"
};

const SPRUNG: Rule = rule! {
    "axle" Axle::sprung_mass, Axle
    takes { axle_mass, unsprung_mass }
    says "(m_axle - m_unsprung) / 2", "definition: sprung is what is not unsprung; both wheels of the axle alike"
};

const SUM: &str = "definition: masses add up";
const HEAVIER: &str =
    "definition: the heavier wheel carries at least half of its axle, and no more than all of it";

/// The heavier wheel of an axle, which its scales or the axle's mass bound.
macro_rules! heavier_wheel {
    ($axle:literal, $meaning:literal) => {
        scale(concat!($axle, ".heavier_wheel"), $meaning).measured_on(&["scales"]).by(&[
            greatest_of(&[concat!("scales.left_", $axle), concat!("scales.right_", $axle)], "definition"),
            same(&[concat!("scales.left_", $axle)], HEAVIER).at_least(1.0),
            same(&[concat!("scales.right_", $axle)], HEAVIER).at_least(1.0),
            same(&[concat!($axle, ".axle_mass")], HEAVIER).at_least(0.5),
            same(&[concat!($axle, ".axle_mass")], HEAVIER).at_most(1.0),
        ])
    };
}

/// Lines and findings of the sheet on masses and their places.
pub const SHEET: Section = Section {
    lines: &[
        scale("scales.left_front", "scale reading of the left front wheel, loaded as it will be").how("four scales on a level floor, driver and load aboard, tyres at pressure, brakes off; note what the scales are good for as +/-"),
        scale("scales.right_front", "scale reading of the right front wheel"),
        scale("scales.left_rear", "scale reading of the left rear wheel"),
        scale("scales.right_rear", "scale reading of the right rear wheel"),
        measure("vehicle.wheelbase", "distance from front to rear axle").how("plumb line from both wheel centres to the floor, tape between the marks, wheels straight; mean of both sides").measured_on(&[]),
        measure("axle.track", "distance between the tyre centres of the axle").how("tape at the floor between the middles of the treads, wheels straight ahead").measured_on(&[]),
        mass("front.axle_mass", "scale readings of the front axle together")
            .measured_on(&["scales"])
            .by(&[of_scales(1), sum_of(&["scales.left_front", "scales.right_front"], SUM)]),
        mass("rear.axle_mass", "scale readings of the rear axle together")
            .measured_on(&["scales"])
            .by(&[of_scales(2), sum_of(&["scales.left_rear", "scales.right_rear"], SUM)]),
        mass("vehicle.mass", "mass of the whole vehicle, loaded as it will be")
            .measured_on(&["scales", "front.axle_mass", "rear.axle_mass"])
            .by(&[of_scales(0), sum_of(&["front.axle_mass", "rear.axle_mass"], SUM)]),
        heavier_wheel!("front", "scale reading of the heavier front wheel"),
        heavier_wheel!("rear", "scale reading of the heavier rear wheel"),
        derived("vehicle.front_share", Ratio::KIND, "front readings over all").in_units("percent", "percent").by(&[of_scales(3)]),
        derived("vehicle.left_share", Ratio::KIND, "left readings over all").in_units("percent", "percent").by(&[of_scales(4)]),
        derived("vehicle.diagonal_share", Ratio::KIND, "right front plus left rear over all").in_units("percent", "percent")
            .by(&[of_scales(5)]),
        derived(
            "vehicle.behind_front_axle",
            Length::KIND,
            "distance of the centre of gravity behind the front axle",
        )
        .by(&[of_scales(6)]),
        derived(
            "vehicle.left_of_centreline",
            Length::KIND,
            "distance of the centre of gravity left of the centreline",
        )
        .by(&[of_scales(7)]),
        line("axle.unsprung_mass", Mass::KIND, "unsprung mass of the axle, both wheels together").how("weigh wheels, brakes and hubs of both sides, with half of each arm, spring, damper and shaft; a live axle counts whole")
            .within(0.0, 1e6, "definition: a mass is not negative")
            .measured_on(&[]),
        derived("axle.wheel_unsprung_mass", Mass::KIND, "unsprung mass of one wheel of the axle")
            .by(&[by(&UNSPRUNG)]),
        mass("axle.sprung_mass", "sprung mass on one wheel: scale reading less unsprung mass")
            .measured_on(&["scales", "axle.axle_mass", "axle.unsprung_mass"])
            .by(&[by(&SPRUNG)]),
        line(
            "vehicle.centre_of_gravity_height",
            Length::KIND,
            "height of the centre of gravity above the ground, loaded as it will be; weighed with one axle raised",
        ).how("weigh the front again with the rear axle raised by a measured height, suspension locked; `mass.centre_of_gravity_height_by_tilt` gives the height")
        .above(0.0, 100.0, "definition: above the ground")
        .measured_on(&[]),
        height("axle.unsprung_height", "height of the unsprung mass's centre above the ground")
            .measured_on(&["axle.tyre"])
            .by(&[same(
                &["axle.tyre.loaded_radius"],
                "plausibility limit: hub, brake and wheel lie about the wheel's centre",
            )
            .usual()]),
        height("vehicle.sprung_height", "height of the sprung mass's centre of gravity above the ground")
            .measured_on(&[
                "vehicle.centre_of_gravity_height",
                "front.unsprung_height",
                "rear.unsprung_height",
                "front.unsprung_mass",
                "rear.unsprung_mass",
            ])
            .by(&[sprung_centre(2)]),
        derived("vehicle.sprung_mass", Mass::KIND, "mass that the springs carry").by(&[sprung_centre(0)]),
        derived(
            "vehicle.sprung_behind_front_axle",
            Length::KIND,
            "distance of its centre of gravity behind the front axle",
        )
        .by(&[sprung_centre(1)]),
        mass("axle.mass_rating", "highest load of the axle that its maker allows").how("the axle maker's plate or data sheet"),
        mass("vehicle.mass_rating", "highest mass of the vehicle that its maker or registration allows").how("the maker's plate or the registration"),
        line("wanted.load", Ratio::KIND, "wanted factor between a load rating and the load")
            .within(1.0, 10.0, "definition: below 1 the part is overloaded, not tight")
            .or(1.05, "plausibility limit: 5 % for luggage"),
        line("wanted.diagonal_low", Ratio::KIND, "least diagonal share").in_units("percent", "percent")
            .within(0.0, 1.0, "definition: a share")
            .or(0.49, "common practice, no source: within one percent of half"),
        line("wanted.diagonal_high", Ratio::KIND, "largest diagonal share").in_units("percent", "percent")
            .within(0.0, 1.0, "definition: a share")
            .or(0.51, "common practice, no source: within one percent of half"),
        line("wanted.diagonal_margin", Ratio::KIND, "wanted margin of the diagonal share inside its band").in_units("percent", "percent")
            .margin(1.0)
            .or(0.0, "no margin beyond the band itself"),
    ],
    findings: &[
        Finding {
            path: "axle.load",
            question: "Does the axle carry what the scales read?",
            margin: Margin::Ratio { capacity: "axle.mass_rating", demand: "axle.axle_mass" },
            wanted: "wanted.load",
            rests_on: &[],
            about: &[],
            caution: "An overloaded axle can break or lose a wheel; the maker's rating and the registration come first.",
        },
        Finding {
            path: "vehicle.load",
            question: "Is the vehicle within its highest allowed mass?",
            margin: Margin::Ratio { capacity: "vehicle.mass_rating", demand: "vehicle.mass" },
            wanted: "wanted.load",
            rests_on: &[],
            about: &[],
            caution: "An overloaded vehicle may fail to stop or steer; the registration and local codes come first.",
        },
        Finding {
            path: "vehicle.diagonal",
            question: "Does it stand evenly on its diagonals?",
            margin: Margin::Band {
                value: "vehicle.diagonal_share",
                low: "wanted.diagonal_low",
                high: "wanted.diagonal_high",
            },
            wanted: "wanted.diagonal_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
    ],
    ..Section::EMPTY
};

/// Grade of the stock, as it is ordered or as it was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Grade {
    /// Structural tube ASTM A500 grade B, round.
    A500BRound,
    /// Structural tube ASTM A500 grade B, square or rectangular.
    A500BShaped,
    /// Structural tube ASTM A500 grade C, round.
    A500CRound,
    /// Structural tube ASTM A500 grade C, square or rectangular.
    A500CShaped,
    /// Mechanical tube ASTM A513, 1020, hot-rolled, as welded.
    A513Grade1020HotRolled,
    /// Mechanical tube ASTM A513, 1020, drawn over a mandrel.
    A513Grade1020Drawn,
    /// Mechanical tube ASTM A519, 4130, normalised.
    A519Grade4130Normalised,
    /// Plate and bar ASTM A36.
    A36,
    /// Plate and bar EN 10025-2 S235.
    S235,
    /// Plate and bar EN 10025-2 S275.
    S275,
    /// Plate and bar EN 10025-2 S355.
    S355,
    /// Cold-rolled sheet of commercial steel, 1008.
    Sheet1008,
    /// Cold-rolled sheet EN 10130 DC01.
    Dc01,
    /// Precision tube EN 10305-1 E235, cold-drawn (+C).
    E235C,
    /// Precision tube EN 10305-1 E235, normalised (+N).
    E235N,
    /// Precision tube EN 10305-1 E355, cold-drawn (+C).
    E355C,
    /// Precision tube EN 10305-1 E355, normalised (+N).
    E355N,
    /// Aluminium 6061-T6.
    Aluminium6061T6,
    /// Aluminium 6082-T6.
    Aluminium6082T6,
    /// Steel that was quenched, with or without tempering.
    Quenched,
    /// Steel that was case-hardened.
    CaseHardened,
    /// A casting.
    Cast,
    /// Nobody knows.
    Unknown,
}

/// Strength near a weld.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum NearWeld {
    /// Heat leaves it as it was: hot-rolled or normalised carbon steel.
    Unchanged,
    /// Yield and ultimate strength fall to these (MPa), for this reason.
    Falls(f64, f64, &'static str),
    /// Nobody can say.
    NotKnown,
}

/// Figures of a grade, of which NaN is not known.
#[derive(Debug, Clone, Copy)]
pub(super) struct Minimum {
    /// Minimum yield strength (MPa).
    pub(super) yields: f64,
    /// Minimum ultimate strength (MPa).
    pub(super) ultimate: f64,
    pub(super) near_weld: NearWeld,
    /// Elastic modulus (GPa).
    pub(super) elastic: f64,
    pub(super) poisson: f64,
    /// Density (kg/m³).
    pub(super) density: f64,
    /// Minimum elongation at break (%).
    pub(super) elongation: f64,
    pub(super) source: &'static str,
}

/// One kip a square inch (MPa).
const KSI: f64 = 6.894_757_293_168_361;

impl Grade {
    pub(super) fn minimum(self) -> Minimum {
        use NearWeld::{Falls, NotKnown, Unchanged};
        const HOT_ROLLED: (f64, f64) = (38.0 * KSI, 52.0 * KSI);
        let known = |yields, ultimate, near_weld, elongation, source| Minimum {
            yields,
            ultimate,
            near_weld,
            elastic: 200.0,
            poisson: 0.3,
            density: 7850.0,
            elongation,
            source,
        };
        let european = |yields, ultimate, near_weld, elongation, source| Minimum {
            elastic: 210.0,
            ..known(yields, ultimate, near_weld, elongation, source)
        };
        let drawn =
            |(yields, ultimate)| Falls(yields, ultimate, "cold-drawn tube falls to its hot-rolled strength");
        let hardened = |(yields, ultimate)| {
            Falls(yields, ultimate, "the heat overages precipitation-hardened aluminium")
        };
        let nothing =
            known(f64::NAN, f64::NAN, NotKnown, f64::NAN, "none: its strength depends on its treatment");
        const A500: &str = "ASTM A500 (from memory)";
        const A513: &str = "ASTM A513, typical minimum of its table (from memory)";
        const EN_10025: &str = "EN 10025-2, up to 16 mm thick (from memory)";
        const EN_10305: &str = "EN 10305-1 (from memory)";
        match self {
            Grade::A500BRound => known(290.0, 400.0, Unchanged, 23.0, A500),
            Grade::A500BShaped => known(315.0, 400.0, Unchanged, 23.0, A500),
            Grade::A500CRound => known(315.0, 425.0, Unchanged, 21.0, A500),
            Grade::A500CShaped => known(345.0, 425.0, Unchanged, 21.0, A500),
            Grade::A513Grade1020HotRolled => known(HOT_ROLLED.0, HOT_ROLLED.1, Unchanged, 12.0, A513),
            Grade::A513Grade1020Drawn => known(60.0 * KSI, 70.0 * KSI, drawn(HOT_ROLLED), 5.0, A513),
            Grade::A519Grade4130Normalised => {
                let annealed =
                    Falls(52.0 * KSI, 75.0 * KSI, "normalised 4130 falls to its annealed strength");
                known(60.0 * KSI, 90.0 * KSI, annealed, 20.0, "ASTM A519 (from memory)")
            }
            Grade::A36 => known(250.0, 400.0, Unchanged, 20.0, "ASTM A36 (from memory)"),
            Grade::S235 => european(235.0, 360.0, Unchanged, 26.0, EN_10025),
            Grade::S275 => european(275.0, 410.0, Unchanged, 23.0, EN_10025),
            Grade::S355 => european(355.0, 470.0, Unchanged, 22.0, EN_10025),
            Grade::Sheet1008 => {
                let source = "ASTM A1008 guarantees no strength of commercial steel; low end of its typical yield (from memory)";
                known(140.0, f64::NAN, Unchanged, f64::NAN, source)
            }
            Grade::Dc01 => european(140.0, 270.0, Unchanged, 28.0, "EN 10130 (from memory)"),
            Grade::E235C => european(0.8 * 480.0, 480.0, drawn((235.0, 340.0)), 6.0, EN_10305),
            Grade::E235N => european(235.0, 340.0, Unchanged, 25.0, EN_10305),
            Grade::E355C => european(0.8 * 640.0, 640.0, drawn((355.0, 490.0)), 4.0, EN_10305),
            Grade::E355N => european(355.0, 490.0, Unchanged, 22.0, EN_10305),
            Grade::Aluminium6061T6 => Minimum {
                elastic: 69.6,
                poisson: 0.33,
                density: 2700.0,
                ..known(
                    240.0,
                    260.0,
                    hardened((105.0, 165.0)),
                    8.0,
                    "ASTM B221, welded: Aluminum Design Manual (from memory)",
                )
            },
            Grade::Aluminium6082T6 => Minimum {
                elastic: 70.0,
                density: 2700.0,
                ..known(
                    250.0,
                    290.0,
                    hardened((125.0, 185.0)),
                    8.0,
                    "EN 1999-1-1, extruded, up to 5 mm thick (from memory)",
                )
            },
            Grade::Quenched | Grade::CaseHardened => nothing,
            Grade::Cast | Grade::Unknown => {
                Minimum { elastic: f64::NAN, poisson: f64::NAN, density: f64::NAN, ..nothing }
            }
        }
    }
}

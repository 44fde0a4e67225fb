//! Sizes of a thread at the worst ends of its tolerances: 6g bolt in a 6H hole. ISO 965-1 (formulas of the tolerances, in µm and mm), from memory.
//!
//! From M6 to M20 they lie within 0.015 mm of the rounded limits in the tables. An inch thread of classes 2A and 2B takes the same formulas, which are wider than its own, but for its hole: `0.25 P - 0.4 P^2` in inches (ASME B1.1, from memory).

use crate::fastener::thread::{Geometry, Series};
use crate::units::{Length, inch, mm};

/// Worst sizes of bolt and hole.
pub(super) struct Worst {
    /// Least outside diameter of the bolt.
    pub(super) external: Length,
    /// Least pitch diameter of the bolt.
    pub(super) external_pitch: Length,
    /// Largest pitch diameter of the hole.
    pub(super) internal_pitch: Length,
    /// Largest minor diameter of the hole.
    pub(super) internal_minor: Length,
}

impl Worst {
    pub(super) fn of(thread: &Geometry) -> Worst {
        let (d, p) = (thread.diameter.in_::<mm>(), thread.pitch.in_::<mm>());
        let micron = |size: f64| Length::of::<mm>(size / 1000.0);
        let below = 15.0 + 11.0 * p;
        let outside = 180.0 * p.powf(2.0 / 3.0) - 3.15 / p.sqrt();
        let at_pitch = 90.0 * p.powf(0.4) * d.powf(0.1);
        let hole = match thread.series {
            Series::Metric if p < 1.0 => micron(433.0 * p - 190.0 * p.powf(1.22)),
            Series::Metric => micron(230.0 * p.powf(0.7)),
            Series::Unified => {
                let p = thread.pitch.in_::<inch>();
                Length::of::<inch>(0.25 * p - 0.4 * p * p)
            }
        };
        Worst {
            external: thread.diameter - micron(below + outside),
            external_pitch: thread.pitch_diameter() - micron(below + at_pitch),
            internal_pitch: thread.pitch_diameter() + micron(1.32 * at_pitch),
            internal_minor: thread.minor_diameter() + hole,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fastener::Bolt;

    /// Limits of ISO 965-2 for 6g and 6H (mm), from memory.
    #[test]
    fn the_limits_are_those_of_the_table() {
        for (marking, external, external_pitch, internal_pitch, internal_minor) in [
            ("M6", 5.794, 5.212, 5.500, 5.153),
            ("M10", 9.732, 8.862, 9.206, 8.676),
            ("M12", 11.701, 10.679, 11.063, 10.441),
            ("M20", 19.623, 18.164, 18.600, 17.744),
        ] {
            let (thread, _) = Bolt::new(marking, "8.8").unwrap().read().unwrap();
            let worst = Worst::of(&thread);
            for (found, wanted) in [
                (worst.external, external),
                (worst.external_pitch, external_pitch),
                (worst.internal_pitch, internal_pitch),
                (worst.internal_minor, internal_minor),
            ] {
                let found = found.in_::<mm>();
                assert!((found - wanted).abs() < 0.015, "{marking}: {found} {wanted}");
            }
        }
    }
}

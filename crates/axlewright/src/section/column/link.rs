use super::{bowed_column_load, euler_load, straight_column_load};
use crate::base::document::{Model, Value};
use crate::base::numeric::root;
use crate::base::table::record;
use crate::units::{Area, Force, Length, SecondMoment, SectionModulus, Stress};
use crate::{Error, Result, cannot, valid};
use core::f64::consts::PI;

/// A link between two joints: what it carries in tension and in compression, and its peak stress.
///
/// # Formula
/// Tension: `A_n s_y`. Compression: the least of Euler's load, Johnson's parabola and the load at first yield, with the moment
/// `M(x) = P e cos(k (x - L / 2)) / cos(k L / 2) + P e_0 sin(pi x / L) / (1 - P / P_e) + F sin(k b) sin(k x) / (k sin(k L))`, `k = sqrt(P / (E I))`, and `s = P / A + M / W`
///
/// # Fields
/// - `area` — `A`, area of the section
/// - `net_area` — `A_n`, least area along the link, net of holes and at the root of threads
/// - `second_moment` — `I`, least second moment of the section
/// - `section_modulus` — `W`, least elastic section modulus
/// - `length` — `L`, length between the centres of the joints
/// - `elastic_modulus` — `E`, elastic modulus
/// - `yield_strength` — `s_y`, minimum yield strength, near a weld that of the weld
/// - `bow` — `e_0`, measured distance of the middle from the straight line; without it `L / 500` counts, and `open` says so
/// - `eccentricity` — `e`, distance of the line between the joints from the centroid, by an offset or a drawn bend; 0 if the link is straight and on its axis
/// - `lateral_load` — `F`, load across the link between its joints, in the plane in which it bends; none if left out
/// - `lateral_place` — `b`, distance of that load from one of the joints; needed with it
///
/// # Valid for
/// Both joints are free to turn, so that the link carries no moment from them: a bush that holds the end, or a rod end at its stop, is not covered. One section all along. Elastic until first yield.
/// All moments are taken to act in one plane and to one side, with the least second moment. In tension, the straightening is not counted. The shank of a rod end carries no bending. Local buckling of a thin wall, the joints and the welds are not covered.
///
/// # Source
/// Euler; Johnson; Ayrton and Perry; secant formula and beam-column: Timoshenko and Gere, Theory of Elastic Stability, ch. 1 (from memory); `L / 500`: common practice, no source
///
/// # Caution
/// A link that buckles or breaks lets go of its axle or wheel. Keep a margin of 2 and more, and have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Link {
    /// Area of the section.
    pub area: Value<Area>,
    /// Least area along the link, net of holes and at the root of threads.
    pub net_area: Value<Area>,
    /// Least second moment of the section.
    pub second_moment: Value<SecondMoment>,
    /// Least elastic section modulus.
    pub section_modulus: Value<SectionModulus>,
    /// Length between the centres of the joints.
    pub length: Value<Length>,
    /// Elastic modulus.
    pub elastic_modulus: Value<Stress>,
    /// Minimum yield strength.
    pub yield_strength: Value<Stress>,
    /// Measured bow of the middle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bow: Option<Value<Length>>,
    /// Distance of the line between the joints from the centroid.
    pub eccentricity: Value<Length>,
    /// Load across the link between its joints.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lateral_load: Option<Value<Force>>,
    /// Distance of that load from one of the joints.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lateral_place: Option<Value<Length>>,
}

record! {
    /// Forces that a link carries.
    #[derive(Debug, Clone, PartialEq)]
    pub struct LinkCapacity {
        /// Load in tension at which the least area yields, without bending.
        pub tension_load: Force,
        /// Load in compression at which an ideal slender link buckles.
        pub euler_load: Force,
        /// Load in compression of the straight link: Johnson's parabola, or Euler's load if it is slender.
        pub straight_load: Force,
        /// Load in compression at first yield with the bow alone.
        pub bowed_load: Force,
        /// Least load in compression, with eccentricity and lateral load; zero if the lateral load alone makes it yield.
        pub critical_load: Force,
        /// Bow that counts.
        pub bow: Length,
        /// Rule that sets the critical load, `euler` or `johnson`, or the input that bends the link most at that load: `bow`, `eccentricity` or `lateral_load`.
        pub governs: String,
        /// Inputs that are not known and were taken against the link; empty if nothing is open.
        pub open: String,
    }
}

impl crate::base::Sealed for Link {}
impl Model for Link {
    fn check(&self) -> Result<()> {
        self.capacity().map(drop)
    }
}

/// Bow that counts if none was measured, as a share of the length.
const BOW: f64 = 1.0 / 500.0;

impl Link {
    /// Strength of the link in tension and in compression, and the rule that governs.
    ///
    /// # Returns
    /// See the fields of [`LinkCapacity`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let link = Link {
    ///     area: Value::parse("274.8 mm²")?, net_area: Value::parse("274.8 mm²")?, second_moment: Value::parse("28620 mm⁴")?,
    ///     section_modulus: Value::parse("1803 mm³ modulus")?, length: Value::parse("600 mm")?, elastic_modulus: Value::parse("200 GPa")?,
    ///     yield_strength: Value::parse("262 MPa")?, bow: None, eccentricity: Value::parse("0 mm")?, lateral_load: None, lateral_place: None,
    /// }.checked()?;
    /// let on = link.capacity()?;
    /// assert_eq!(format!("{:.1} kN by {}", on.critical_load.in_::<kN>(), on.governs), "56.1 kN by bow");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn capacity(&self) -> Result<LinkCapacity> {
        let bent = self.bent()?;
        let (elastic, yields, area, second) = (
            self.elastic_modulus.quantity,
            self.yield_strength.quantity,
            self.area.quantity,
            self.second_moment.quantity,
        );
        let length = self.length.quantity;
        let euler_load = euler_load(elastic, second, length)?;
        let straight_load = straight_column_load(elastic, yields, area, second, length)?;
        let bow = Length::from_si(bent.bow);
        let bowed_load =
            bowed_column_load(elastic, yields, area, second, self.section_modulus.quantity, length, bow)?;
        let (mut critical, mut governs) = (bowed_load, "bow");
        if straight_load <= critical * (1.0 + ROUNDING) {
            critical = straight_load;
            governs = if straight_load < euler_load { "johnson" } else { "euler" };
        }
        if bent.eccentricity > 0.0 || bent.lateral > 0.0 {
            let first_yield = bent.first_yield(yields.si(), bowed_load.si())?;
            if first_yield < critical.si() {
                critical = Force::from_si(first_yield);
                governs = bent.bends_most(first_yield);
            }
        }
        let open = if self.bow.is_none() { "the bow was not measured: length / 500 counts" } else { "" };
        Ok(LinkCapacity {
            tension_load: yields * self.net_area.quantity,
            euler_load,
            straight_load,
            bowed_load,
            critical_load: critical,
            bow,
            governs: governs.to_owned(),
            open: open.to_owned(),
        })
    }

    /// Peak stress under a force along the link.
    ///
    /// # Parameters
    /// - `force` — `P`, force along the link, tension positive
    ///
    /// # Returns
    /// The peak stress, positive in tension and in compression: on the net area in tension, on the area in compression; with all bending.
    ///
    /// # Valid for
    /// - `-1000000000000 <= force <= 1000000000000`
    ///
    /// Compression below the Euler load, elastic.
    pub fn peak_stress(&self, force: Force) -> Result<Stress> {
        valid! { force: (-1e12) <= .. <= 1e12 ; "plausibility limit: no link bears 1000 GN"; }
        let bent = self.bent()?;
        let stress = if force.si() < 0.0 {
            let buckles = -Force::from_si(bent.euler);
            if force <= buckles {
                let length = self.length.quantity;
                return Err(
                    cannot!(force > buckles, length; "is not below the Euler load: the link buckles"),
                );
            }
            bent.stress(-force.si())
        } else {
            let Bent { length, place, lateral, .. } = bent;
            let moment =
                force.si() * (bent.eccentricity + bent.bow) + lateral * place * (length - place) / length;
            force.si() / self.net_area.quantity.si() + moment / bent.modulus
        };
        Ok(Stress::from_si(stress))
    }

    /// The link as a beam-column, in coherent SI.
    fn bent(&self) -> Result<Bent> {
        let (area, net_area, second_moment, section_modulus) = (
            self.area.quantity,
            self.net_area.quantity,
            self.second_moment.quantity,
            self.section_modulus.quantity,
        );
        let (length, elastic_modulus, yield_strength, eccentricity) = (
            self.length.quantity,
            self.elastic_modulus.quantity,
            self.yield_strength.quantity,
            self.eccentricity.quantity,
        );
        valid! {
            area: 1e-8 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
            net_area: 1e-8 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
            second_moment: 1e-16 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
            section_modulus: 1e-12 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
            length: 1e-3 <= .. <= 100 ; "plausibility limit: no link is shorter than 1 mm or longer than 100 m";
            elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa";
            yield_strength: 1e6 <= .. <= 3e9 ; "plausibility limit: no structural metal yields below 1 MPa or above 3 GPa";
            eccentricity: 0 <= .. <= 10 ; "definition: a distance is not negative";
        }
        if net_area > area {
            return Err(cannot!(net_area <= area; "is more than the whole area"));
        }
        let bow = match &self.bow {
            Some(bow) => {
                let bow = bow.quantity;
                valid! { bow: 0 <= .. <= 10 ; "definition: a distance is not negative"; }
                bow.si()
            }
            None => BOW * length.si(),
        };
        let (lateral, place) = match (&self.lateral_load, &self.lateral_place) {
            (Some(load), Some(place)) => {
                let (lateral_load, lateral_place) = (load.quantity, place.quantity);
                valid! {
                    lateral_load: (-1e12) <= .. <= 1e12 ; "plausibility limit: no link bears 1000 GN";
                    lateral_place: 0 < .. <= 100 ; "definition: the load acts between the joints";
                }
                if lateral_place >= length {
                    return Err(cannot!(lateral_place < length; "is not between the joints"));
                }
                (lateral_load.si().abs(), lateral_place.si())
            }
            (None, None) => (0.0, length.si() / 2.0),
            (Some(_), None) => {
                return Err(Error::document(
                    "lateral_place",
                    "give the distance of lateral_load from a joint",
                ));
            }
            (None, Some(_)) => {
                return Err(Error::document("lateral_load", "give the load that acts at lateral_place"));
            }
        };
        let stiffness = elastic_modulus.si() * second_moment.si();
        Ok(Bent {
            area: area.si(),
            modulus: section_modulus.si(),
            stiffness,
            euler: euler_load(elastic_modulus, second_moment, length)?.si(),
            length: length.si(),
            bow,
            eccentricity: eccentricity.si(),
            lateral,
            place,
        })
    }
}

/// A link as a beam-column, in coherent SI.
#[derive(Debug, Clone, Copy)]
struct Bent {
    area: f64,
    modulus: f64,
    stiffness: f64,
    euler: f64,
    length: f64,
    bow: f64,
    eccentricity: f64,
    lateral: f64,
    place: f64,
}

/// Share by which two loads differ by rounding alone.
const ROUNDING: f64 = 1e-12;
/// Thirds that are cut from the interval in which the peak moment lies.
const STEPS: u32 = 80;

impl Bent {
    /// Moment at a place, under a compression below the Euler load.
    fn moment_at(&self, compression: f64, x: f64) -> f64 {
        let Bent { length, place, .. } = *self;
        let k = (compression / self.stiffness).sqrt();
        let by_offset =
            compression * self.eccentricity * (k * (x - length / 2.0)).cos() / (k * length / 2.0).cos();
        let by_bow = compression * self.bow * (PI * x / length).sin() / (1.0 - compression / self.euler);
        // From the joint on the side of x.
        let (near, far) = if x <= place { (x, length - place) } else { (length - x, place) };
        let by_load = if k * length > 1e-6 {
            self.lateral * (k * far).sin() * (k * near).sin() / (k * (k * length).sin())
        } else {
            self.lateral * far * near / length
        };
        by_offset + by_bow + by_load
    }

    /// Peak moment: the moment is concave on both sides of the load.
    fn moment(&self, compression: f64) -> f64 {
        let side = |mut from: f64, mut to: f64| {
            for _ in 0..STEPS {
                let (third, other) = (from + (to - from) / 3.0, to - (to - from) / 3.0);
                if self.moment_at(compression, third) < self.moment_at(compression, other) {
                    from = third;
                } else {
                    to = other;
                }
            }
            self.moment_at(compression, (from + to) / 2.0)
        };
        side(0.0, self.place).max(side(self.place, self.length))
    }

    fn stress(&self, compression: f64) -> f64 {
        compression / self.area + self.moment(compression) / self.modulus
    }

    /// Input that bends the link most at a load, each by itself.
    fn bends_most(&self, compression: f64) -> &'static str {
        let alone = Bent { bow: 0.0, eccentricity: 0.0, lateral: 0.0, ..*self };
        let causes = [
            ("bow", Bent { bow: self.bow, ..alone }),
            ("eccentricity", Bent { eccentricity: self.eccentricity, ..alone }),
            ("lateral_load", Bent { lateral: self.lateral, ..alone }),
        ];
        let most = causes
            .map(|(name, bent)| (name, bent.moment(compression)))
            .into_iter()
            .max_by(|one, other| one.1.total_cmp(&other.1));
        most.map_or("bow", |(name, _)| name)
    }

    /// Compression at which the peak stress reaches yield: at most that of the bow alone.
    fn first_yield(&self, yields: f64, bowed: f64) -> Result<f64> {
        if self.stress(0.0) >= yields {
            return Ok(0.0);
        }
        // A straight slender link has no finite stress at its Euler load itself.
        let below = bowed * (1.0 - ROUNDING);
        if self.stress(below) <= yields {
            return Ok(bowed);
        }
        root("compression", |compression| self.stress(compression) - yields, 0.0, below, 0.0)
    }
}

#![expect(clippy::indexing_slicing, reason = "a stack without springs is refused before")]

use super::series_rate;
use crate::base::document::{Model, Stated, Value};
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::units::{Force, Length, LinearStiffness};
use crate::{Error, Result, cannot, valid};

/// Springs end to end on one axis; each works until its coils close.
///
/// # Formula
/// under a load `F` each is shortened by `x_i = min(F / k_i, L_0i - L_ci)`; length `L = sum of (L_0i - x_i)`; rate `1 / k = sum of 1 / k_i` over those that are open; one closes at
/// `F_i = k_i (L_0i - L_ci)`
///
/// # Fields
/// - `springs` — springs in any order, each with `name`, `rate` `k_i` along its own axis, `free_length` `L_0i` and `solid_length` `L_ci`: every coil touching, or the length at which a stop takes over
/// - `spacers` — total length of sliders between the springs and of spacers; zero if missing
///
/// # Valid for
/// At least two linear springs, each closing at one load, without friction of the slider between them, on parallel seats. The coils of a real spring close
/// one by one, so the rate of a real stack changes gradually. At the load at which a spring closes, the rate is that below this load. A load above which all springs are closed is refused.
///
/// # Source
/// Springs in series: equal force, deflections add (Hooke's law)
///
/// # Caution
/// A stack of springs stores energy like one and can kill: compress it with a tool made for it, and keep it captive on its slider at full droop, where the softer one may go slack. Coils that close at every bump break; local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Stack {
    /// Springs of the stack, in any order.
    pub springs: Vec<StackedSpring>,
    /// Total length of sliders and spacers.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub spacers: Stated<Value<Length>>,
}

/// One spring of a stack.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `name`, `rate`, `free_length` and `solid_length`")
)]
pub struct StackedSpring {
    /// Name of the spring.
    pub name: String,
    /// Rate of the spring along its own axis.
    pub rate: Value<LinearStiffness>,
    /// Length of the unloaded spring.
    pub free_length: Value<Length>,
    /// Length with every coil touching.
    pub solid_length: Value<Length>,
}

/// Rounding of a load, over the load: a few last places.
const ROUNDING: f64 = 16.0 * f64::EPSILON;

record! {
    /// A stack under a load.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct LoadedStack {
        /// Length of the whole stack, spacers included.
        pub length: Length,
        /// Shortening from the free length under that load.
        pub deflection: Length,
        /// Rate of the open springs; at the highest load, of those that close last.
        pub rate: LinearStiffness,
        /// Number of closed springs.
        pub closed: i64,
    }
}

record! {
    /// A stack held at a length.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct HeldStack {
        /// Compressive force that holds it there, the same in every spring.
        pub load: Force,
        /// Shortening from the free length.
        pub deflection: Length,
        /// Rate of the open springs; at the least length, of those that close last.
        pub rate: LinearStiffness,
        /// Number of closed springs.
        pub closed: i64,
    }
}

record! {
    /// The first spring of a stack to close.
    #[derive(Debug, Clone, PartialEq)]
    pub struct FirstClosed {
        /// Its name; the first in the list of those that close together.
        pub spring: String,
        /// Load at which it closes.
        pub load: Force,
        /// Shortening of the stack from its free length at that load.
        pub deflection: Length,
        /// Length of the stack at that load.
        pub length: Length,
        /// Rate of the stack up to there.
        pub rate_below: LinearStiffness,
        /// Rate from there on: of the springs that still work; refused where all close together.
        pub rate_above: LinearStiffness,
    }
}

impl crate::base::Sealed for Stack {}
impl Model for Stack {
    fn check(&self) -> Result<()> {
        if !(2..=20).contains(&self.springs.len()) {
            return Err(Error::Length {
                argument: "springs",
                length: self.springs.len(),
                wanted: "from two to twenty springs are wanted",
            });
        }
        for (place, spring) in self.springs.iter().enumerate() {
            spring.check().map_err(|error| error.within(&format!("springs[{place}] ({})", spring.name)))?;
        }
        let spacers = self.spacers();
        valid! { spacers: 0 <= .. <= 100 ; "definition: a length; plausibility limit: at most 100 m"; }
        Ok(())
    }
}

record! {
    /// Names of the springs that are closed.
    struct Closed {
        closed_springs: String,
    }
}

impl Stack {
    /// The stack under a load.
    ///
    /// # Parameters
    /// - `load` — compressive force, from nothing to the load at which all are closed
    ///
    /// # Returns
    /// See the fields of [`LoadedStack`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, spring::*, units::*};
    /// let spring = |name: &str, rate: &str, free: &str, solid: &str| -> axlewright::Result<StackedSpring> {
    ///     Ok(StackedSpring {
    ///         name: name.to_owned(), rate: Value::parse(rate)?, free_length: Value::parse(free)?, solid_length: Value::parse(solid)?,
    ///     })
    /// };
    /// let stack = Stack {
    ///     springs: vec![spring("tender", "30 N/mm", "100 mm", "40 mm")?, spring("main", "60 N/mm", "250 mm", "130 mm")?],
    ///     spacers: Stated::Unknown,
    /// }.checked()?;
    /// let on = stack.under_load(Force::of::<N>(3000.0))?;
    /// assert_eq!(format!("{:.0} mm, {:.0} N/mm", on.deflection.in_::<mm>(), on.rate.in_::<N_mm>()), "110 mm, 60 N/mm");
    /// assert_eq!(stack.closes_first()?.spring, "tender");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn under_load(&self, load: Force) -> Result<LoadedStack> {
        valid! { load: 0 <= .. <= 1e11 ; "definition: it is compressed; plausibility limit: at most 100 GN"; }
        self.check()?;
        let largest = self.largest_load();
        if !self.springs.iter().any(|spring| spring.works_up_to(load)) {
            return Err(
                cannot!(load <= largest; "is more than the load that closes every spring in springs"),
            );
        }
        let deflection = self.deflection(load);
        let closed = self.springs.iter().filter(|spring| spring.is_closed(load)).count() as i64;
        Ok(LoadedStack {
            length: self.free_length() - deflection,
            deflection,
            rate: self.rate(|spring| spring.works_up_to(load))?,
            closed,
        })
    }

    /// The stack held at a length.
    ///
    /// # Parameters
    /// - `length` — length of the whole stack, spacers included, from every spring closed to every one free
    ///
    /// # Returns
    /// See the fields of [`HeldStack`].
    pub fn at_length(&self, length: Length) -> Result<HeldStack> {
        valid! { length: 0 <= .. <= 2100 ; "definition: a length; plausibility limit: at most 2.1 km"; }
        self.check()?;
        let deflection = self.free_length() - length;
        let mut springs: Vec<&StackedSpring> = self.springs.iter().collect();
        springs.sort_by(|a, b| a.closing_load().si().total_cmp(&b.closing_load().si()));
        let (least, free) = (self.free_length() - self.deflection(self.largest_load()), self.free_length());
        if length < least || length > free {
            return Err(cannot!(
                least <= length <= free; "is outside the range of springs, from all closed to all free"
            ));
        }
        // Along the straight pieces from corner to corner.
        let (mut load, mut reached) = (Force::from_si(0.0), Length::from_si(0.0));
        for spring in springs {
            let corner = spring.closing_load();
            let at_corner = self.deflection(corner);
            if at_corner >= deflection {
                let rate = self.rate(|other| other.closing_load() >= corner)?;
                load += rate * (deflection - reached);
                break;
            }
            (load, reached) = (corner, at_corner);
        }
        // Rounding does not go beyond the end.
        let load = if load > self.largest_load() { self.largest_load() } else { load };
        let LoadedStack { rate, closed, .. } = self.under_load(load)?;
        Ok(HeldStack { load, deflection, rate, closed })
    }

    /// The first spring to close, and what the rate does there.
    ///
    /// # Returns
    /// See the fields of [`FirstClosed`].
    pub fn closes_first(&self) -> Result<FirstClosed> {
        self.check()?;
        let mut first = &self.springs[0];
        for spring in &self.springs {
            if spring.closing_load() < first.closing_load() && !together(spring, first) {
                first = spring;
            }
        }
        if self.springs.iter().all(|spring| together(spring, first)) {
            let load = said(first.closing_load());
            return Err(cannot!("no crossover: all springs close at the same load, {load}"));
        }
        let load = first.closing_load();
        let deflection = self.deflection(load);
        Ok(FirstClosed {
            spring: first.name.clone(),
            load,
            deflection,
            length: self.free_length() - deflection,
            rate_below: self.rate(|_| true)?,
            rate_above: self.rate(|spring| !together(spring, first))?,
        })
    }

    /// Lengths and rates over loads.
    ///
    /// # Parameters
    /// - `load` — compressive forces
    ///
    /// # Returns
    /// One row for each load: `load`, the results of `under_load`: `...`, and `closed_springs`, the names of the springs that are closed.
    pub fn table(&self, load: &[Force]) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["load"], &[load.len()])?;
        for load in load {
            let closed = self.springs.iter().filter(|spring| spring.is_closed(*load));
            let names = closed.map(|spring| spring.name.as_str()).collect::<Vec<_>>().join(", ");
            let on = self.under_load(*load).map(|on| (on, Closed { closed_springs: names }));
            rows.push((*load,), on)?;
        }
        rows.finish()
    }

    fn spacers(&self) -> Length {
        self.spacers.as_ref().map_or(Length::from_si(0.0), |spacers| spacers.quantity)
    }

    fn free_length(&self) -> Length {
        self.springs.iter().fold(self.spacers(), |sum, spring| sum + spring.free_length.quantity)
    }

    fn largest_load(&self) -> Force {
        let loads = self.springs.iter().map(StackedSpring::closing_load);
        loads.fold(Force::from_si(0.0), |a, b| if b > a { b } else { a })
    }

    fn deflection(&self, load: Force) -> Length {
        self.springs.iter().fold(Length::from_si(0.0), |sum, spring| sum + spring.shortening(load))
    }

    /// Rate of those that are open.
    fn rate(&self, open: impl Fn(&StackedSpring) -> bool) -> Result<LinearStiffness> {
        let mut rates = self.springs.iter().filter(|spring| open(spring)).map(|spring| spring.rate.quantity);
        let first = rates.next();
        let sum = rates.try_fold(first, |sum, rate| sum.map(|sum| series_rate(sum, rate)).transpose())?;
        sum.ok_or_else(|| cannot!("no rate: all springs are closed"))
    }
}

impl StackedSpring {
    fn check(&self) -> Result<()> {
        let (rate, free_length, solid_length) =
            (self.rate.quantity, self.free_length.quantity, self.solid_length.quantity);
        valid! {
            rate: 100 <= .. <= 1e9 ; "plausibility limit: springs of a vehicle lie between 100 N/m and 1 GN/m";
            free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
            solid_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
            free_length > solid_length ; "definition: a compression spring can be compressed";
        }
        let travel_to_solid = self.travel();
        valid! { travel_to_solid: 0.000001 <= .. <= 100 ; "plausibility limit: springs travel between 1 µm and 100 m"; }
        Ok(())
    }

    fn travel(&self) -> Length {
        self.free_length.quantity - self.solid_length.quantity
    }

    fn closing_load(&self) -> Force {
        self.rate.quantity * self.travel()
    }

    /// True if it closes at that load or below, rounding aside.
    fn is_closed(&self, load: Force) -> bool {
        self.closing_load() <= load * (1.0 + ROUNDING)
    }

    /// True if it closes at that load or above, rounding aside.
    fn works_up_to(&self, load: Force) -> bool {
        self.closing_load() >= load * (1.0 - ROUNDING)
    }

    fn shortening(&self, load: Force) -> Length {
        if load >= self.closing_load() { self.travel() } else { load / self.rate.quantity }
    }
}

/// True if two springs close at the same load, rounding aside.
fn together(a: &StackedSpring, b: &StackedSpring) -> bool {
    a.works_up_to(b.closing_load()) && a.is_closed(b.closing_load())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring::series_crossover;
    use crate::units::{N_mm, mm};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn spring(name: &str, rate: f64, free: f64, solid: f64) -> StackedSpring {
        StackedSpring {
            name: name.to_owned(),
            rate: Value::new(LinearStiffness::of::<N_mm>(rate)),
            free_length: Value::new(Length::of::<mm>(free)),
            solid_length: Value::new(Length::of::<mm>(solid)),
        }
    }

    /// Closes at 500, 1800 and 7200 N.
    fn three() -> Stack {
        Stack {
            springs: vec![
                spring("main", 60.0, 250.0, 130.0),
                spring("helper", 5.0, 120.0, 20.0),
                spring("tender", 30.0, 100.0, 40.0),
            ],
            spacers: Stated::Given(Value::new(Length::of::<mm>(12.0))),
        }
    }

    #[test]
    fn a_stack_worked_by_hand() {
        // Free 482 mm. 300 N: 5 + 60 + 10 mm; 1500 N: 25 + 100 + 50; 3000 N: 50 + 100 + 60. Rates 1 / (1/60 + 1/5 + 1/30) = 4, 1 / (1/60 + 1/30) = 20, 60.
        for (load, deflection, rate, closed) in [
            (0.0, 0.0, 4.0, 0),
            (300.0, 75.0, 4.0, 0),
            (500.0, 125.0, 4.0, 1),
            (1500.0, 175.0, 20.0, 1),
            (3000.0, 210.0, 60.0, 2),
            (7200.0, 280.0, 60.0, 3),
        ] {
            let on = three().under_load(Force::from_si(load)).unwrap();
            assert_relative_eq!(on.deflection.in_::<mm>(), deflection, max_relative = 1e-12);
            assert_relative_eq!(on.length.in_::<mm>(), 482.0 - deflection, max_relative = 1e-12);
            assert_relative_eq!(on.rate.in_::<N_mm>(), rate, max_relative = 1e-12);
            assert_eq!(on.closed, closed, "{load}");
        }
        let first = three().closes_first().unwrap();
        assert_eq!(first.spring, "helper");
        assert_relative_eq!(first.rate_above.in_::<N_mm>(), 20.0, max_relative = 1e-12);
        assert_relative_eq!(first.length.in_::<mm>(), 357.0, max_relative = 1e-12);
    }

    #[test]
    fn beyond_its_ends_there_is_no_answer() {
        let stack = three();
        let over = stack.under_load(Force::from_si(7200.1)).unwrap_err().to_string();
        assert_eq!(
            over,
            "load = 7200.1 N (1618.65 lbf) is more than the load that closes every spring in springs; allowed: at most 7200 N (1618.62 lbf)"
        );
        for (length, says) in [(201.9, "length = 201.9 mm"), (482.1, "length = 482.1 mm")] {
            let beyond = stack.at_length(Length::of::<mm>(length)).unwrap_err().to_string();
            assert!(beyond.starts_with(says), "{beyond}");
        }
        let table = stack.table(&[600.0, 8000.0].map(Force::from_si)).unwrap();
        assert_eq!(table.word("closed_springs", 0), Some("helper"));
        assert!(table.reason(1).is_some_and(|error| error.to_string().contains("load = 8000 N")));
    }

    #[test]
    fn what_closes_together_is_no_crossover() {
        let alike = Stack {
            springs: vec![spring("a", 7.0, 43.0, 10.0), spring("b", 21.0, 21.0, 10.0)],
            spacers: Stated::Unknown,
        };
        assert!(alike.closes_first().unwrap_err().to_string().contains("same load"));
        let mut third = alike.clone();
        third.springs.push(spring("c", 50.0, 110.0, 10.0));
        let first = third.closes_first().unwrap();
        assert_eq!(first.spring, "a");
        assert_relative_eq!(first.rate_above.in_::<N_mm>(), 50.0, max_relative = 1e-12);
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let with = |changed: StackedSpring| Stack {
            springs: vec![spring("main", 60.0, 250.0, 130.0), changed],
            spacers: Stated::Unknown,
        };
        for (name, wrong) in [
            (
                "springs",
                Stack { springs: vec![spring("alone", 60.0, 250.0, 130.0)], spacers: Stated::Unknown },
            ),
            ("springs[1] (soft): rate", with(spring("soft", 0.0, 100.0, 40.0))),
            ("springs[1] (long): free_length", with(spring("long", 9.0, 1e300, 40.0))),
            ("springs[1] (flat): free_length", with(spring("flat", 9.0, 40.0, 40.0))),
            ("springs[1] (none): solid_length", with(spring("none", 9.0, 40.0, f64::NAN))),
            ("spacers", Stack { spacers: Stated::Given(Value::new(Length::from_si(-1.0))), ..three() }),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(name), "{message}");
            assert!(wrong.closes_first().is_err() && wrong.under_load(Force::from_si(1.0)).is_err());
        }
        assert!(three().check().is_ok());
    }

    proptest! {
        #[test]
        fn of_two_springs_it_is_the_crossover(a in 1.0f64..500.0, s in 1.0f64..300.0, b in 1.0f64..500.0, t in 1.0f64..300.0) {
            prop_assume!((a * s / (b * t) - 1.0).abs() > 1e-9);
            let stack = Stack { springs: vec![spring("a", a, s + 50.0, 50.0), spring("b", b, t + 50.0, 50.0)], spacers: Stated::Unknown };
            let [rate_a, rate_b] = [a, b].map(LinearStiffness::of::<N_mm>);
            let [travel_a, travel_b] = [s, t].map(Length::of::<mm>);
            let (first, on) = (stack.closes_first().unwrap(), series_crossover(rate_a, travel_a, rate_b, travel_b).unwrap());
            prop_assert_eq!(first.spring.as_str(), if a * s < b * t { "a" } else { "b" });
            assert_relative_eq!(first.load.si(), on.crossover_load.si(), max_relative = 1e-12);
            assert_relative_eq!(first.deflection.si(), on.crossover_deflection.si(), max_relative = 1e-12);
            assert_relative_eq!(first.rate_below.si(), on.rate_below.si(), max_relative = 1e-12);
            assert_relative_eq!(first.rate_above.si(), on.rate_above.si(), max_relative = 1e-12);
            assert_relative_eq!(stack.largest_load().si(), on.solid_load.si(), max_relative = 1e-12);
            assert_relative_eq!(stack.deflection(stack.largest_load()).si(), on.solid_deflection.si(), max_relative = 1e-12);
        }

        #[test]
        fn length_and_load_are_inverse(share in 0.0f64..=1.0) {
            let stack = three();
            let load = stack.largest_load() * share;
            let back = stack.at_length(stack.under_load(load).unwrap().length).unwrap();
            assert_relative_eq!(back.load.si(), load.si(), max_relative = 1e-9, epsilon = 1e-9);
        }
    }
}

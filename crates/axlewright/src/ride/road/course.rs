//! The road under the wheels: its height over time, in pieces, and the output rows.
#![expect(
    clippy::indexing_slicing,
    reason = "distances and heights are checked to be of one length, and a course has a piece at least"
)]

use crate::base::stop::go_on;
use crate::units::{Length, Time, Velocity};
use crate::{Error, Result, cannot, valid};
use core::array::from_fn;
use core::f64::consts::PI;

/// More rows mean a typing error in the time step.
const MOST_ROWS: usize = 1_000_000;

/// A piece of road: from `start` on `u'' = -stiffness u`, a line if `stiffness` is zero and a sine otherwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::ride) struct Piece {
    pub(super) start: f64,
    pub(super) height: f64,
    pub(super) slope: f64,
    pub(in crate::ride) stiffness: f64,
}

impl Piece {
    /// Height and its rate of change at a time.
    pub(in crate::ride) fn at(&self, time: f64) -> (f64, f64) {
        let t = time - self.start;
        if self.stiffness == 0.0 {
            return (self.height + self.slope * t, self.slope);
        }
        let w = self.stiffness.sqrt();
        let (sin, cos) = (w * t).sin_cos();
        (self.height * cos + self.slope / w * sin, self.slope * cos - self.height * w * sin)
    }
}

/// A part of the course without a break: one piece of road under each wheel from one time to another, the row at its end, and the whole steps after it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::ride) struct Leg<const W: usize> {
    pub(in crate::ride) pieces: [Piece; W],
    pub(in crate::ride) from: f64,
    pub(super) to: f64,
    /// `to` less `from`; the same number for every whole time step.
    pub(in crate::ride) duration: f64,
    /// True if the duration is the time step.
    pub(in crate::ride) whole: bool,
    pub(in crate::ride) row: bool,
    /// Number of whole steps that follow on the same pieces, each with a row, and the row of the first step.
    more: usize,
    first: usize,
}

impl<const W: usize> Leg<W> {
    /// Begin and end of each step.
    #[inline]
    pub(in crate::ride) fn steps(&self) -> impl Iterator<Item = (f64, f64)> {
        let mut from = self.from;
        (0..=self.more).map(move |step| {
            let to = if step == 0 { self.to } else { (self.first + step) as f64 * self.duration };
            (core::mem::replace(&mut from, to), to)
        })
    }
}

/// Road under one wheel, in the order of time: at least one piece. The first starts at time 0, at the height on which the wheel rests.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::ride) struct Road(Vec<Piece>);

/// The road under each wheel over time, and a row every time step.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::ride) struct Course<const W: usize> {
    roads: [Road; W],
    time_step: f64,
    rows: usize,
}

fn line(start: f64, height: f64, slope: f64) -> Piece {
    Piece { start, height, slope, stiffness: 0.0 }
}

/// Time to cross an obstacle.
fn crossing(height: Length, length: Length, speed: Velocity) -> Result<f64> {
    valid! {
        height: (-10) <= .. <= 10 ; "plausibility limit: nobody drives over 10 m";
        length: 0.001 <= .. <= 10000 ; "plausibility limit: from 1 mm to 10 km";
        speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s";
    }
    Ok(length.si() / speed.si())
}

/// Time to cover a distance.
pub(in crate::ride) fn delay(distance: f64, speed: Velocity) -> Result<f64> {
    valid! { speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s"; }
    Ok(distance / speed.si())
}

impl Road {
    /// A sudden step.
    pub(in crate::ride) fn step(height: Length) -> Result<Self> {
        valid! { height: (-10) <= .. <= 10 ; "plausibility limit: nobody drives over 10 m"; }
        Ok(Self(vec![line(0.0, height.si(), 0.0)]))
    }

    pub(in crate::ride) fn ramp(height: Length, length: Length, speed: Velocity) -> Result<Self> {
        let end = crossing(height, length, speed)?;
        Ok(Self(vec![line(0.0, 0.0, height.si() / end), line(end, height.si(), 0.0)]))
    }

    pub(in crate::ride) fn half_sine(height: Length, length: Length, speed: Velocity) -> Result<Self> {
        let end = crossing(height, length, speed)?;
        let w = PI / end;
        let sine = Piece { start: 0.0, height: 0.0, slope: height.si() * w, stiffness: w * w };
        Ok(Self(vec![sine, line(end, 0.0, 0.0)]))
    }

    /// Straight lines from point to point, and the time that they take.
    pub(in crate::ride) fn profile(
        speed: Velocity,
        distance: &[Length],
        height: &[Length],
    ) -> Result<(Self, Time)> {
        valid! { speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s"; }
        let in_order = distance.windows(2).all(|pair| pair[0] < pair[1]);
        if distance.len() < 2 || !in_order || distance.iter().any(|x| !x.si().is_finite()) {
            let wanted = "at least two finite distances are wanted, in increasing order and none twice";
            return Err(Error::Length { argument: "distance", length: distance.len(), wanted });
        }
        if height.len() != distance.len() {
            let wanted = "as many as distances are wanted";
            return Err(Error::Length { argument: "height", length: height.len(), wanted });
        }
        for height in height.iter().copied() {
            valid! { height: (-1000) <= .. <= 1000 ; "plausibility limit: a profile is measured from a height near its own"; }
        }
        let start = |i: usize| (distance[i] - distance[0]).si() / speed.si();
        let mut pieces: Vec<Piece> = (0..distance.len() - 1)
            .map(|i| {
                line(start(i), height[i].si(), (height[i + 1] - height[i]).si() / (start(i + 1) - start(i)))
            })
            .collect();
        let last = distance.len() - 1;
        pieces.push(line(start(last), height[last].si(), 0.0));
        Ok((Self(pieces), Time::from_si(start(last))))
    }

    /// This road, reached later by a wheel that rests in front of it until then.
    pub(in crate::ride) fn later(&self, delay: f64) -> Self {
        let ahead = line(0.0, self.rest(), 0.0);
        let moved = self.0.iter().map(|piece| Piece { start: piece.start + delay, ..*piece });
        Self(core::iter::once(ahead).chain(moved).collect())
    }

    /// Height on which a wheel rests at first. For a step, this is the road in front of it.
    fn rest(&self) -> f64 {
        match self.0[..] {
            [_] => 0.0,
            _ => self.0[0].height,
        }
    }
}

impl<const W: usize> Course<W> {
    pub(in crate::ride) fn new(roads: [Road; W], duration: Time, time_step: Time) -> Result<Self> {
        valid! {
            duration: 0 < .. <= 100000 ; "plausibility limit: longer than a day is a typing error";
            time_step: 0.000001 <= .. <= 100 ; "plausibility limit: from 1 µs to 100 s";
        }
        // A duration that is a whole number of steps except for its last digit counts as that number.
        let steps = (duration.si() / time_step.si() * (1.0 + 1e-12)).floor() as usize;
        if steps >= MOST_ROWS {
            let most = time_step * (MOST_ROWS as f64 - 1.0);
            return Err(cannot!(
                duration <= most, time_step;
                "takes {} rows of the {MOST_ROWS} that there may be: shorten it, or lengthen time_step", steps + 1
            ));
        }
        Ok(Self { roads, time_step: time_step.si(), rows: steps + 1 })
    }

    pub(in crate::ride) fn rows(&self) -> usize {
        self.rows
    }

    /// Height on which each wheel rests at first.
    pub(in crate::ride) fn rest(&self) -> [f64; W] {
        from_fn(|wheel| self.roads[wheel].rest())
    }

    /// Leg after leg from time 0. Each is within one piece of every road, and none of its steps passes a row.
    #[inline]
    pub(in crate::ride) fn walk(&self, mut visit: impl FnMut(&Leg<W>) -> Result<()>) -> Result<()> {
        let near = 1e-9 * self.time_step;
        let mut places = [0; W];
        let mut pieces: [Piece; W] = from_fn(|wheel| self.roads[wheel].0[0]);
        // Begin of the next piece of any road.
        let next = |places: &[usize; W]| {
            let starts = self.roads.iter().zip(places).filter_map(|(road, place)| road.0.get(place + 1));
            starts.map(|piece| piece.start).fold(f64::INFINITY, f64::min)
        };
        let pass = |until: f64, places: &mut [usize; W], pieces: &mut [Piece; W]| {
            for (wheel, road) in self.roads.iter().enumerate() {
                while let Some(piece) = road.0.get(places[wheel] + 1).filter(|piece| piece.start <= until) {
                    places[wheel] += 1;
                    pieces[wheel] = *piece;
                }
            }
        };
        pass(near, &mut places, &mut pieces);
        let leg =
            Leg { pieces, from: 0.0, to: 0.0, duration: 0.0, whole: false, row: true, more: 0, first: 0 };
        visit(&leg)?;
        let (mut now, mut begins) = (0.0, next(&places));
        let mut row = 1;
        while row < self.rows {
            go_on()?;
            let end = row as f64 * self.time_step;
            let mut whole = true;
            while begins < end - near {
                let duration = begins - now;
                visit(&Leg {
                    pieces,
                    from: now,
                    to: begins,
                    duration,
                    whole: false,
                    row: false,
                    more: 0,
                    first: row,
                })?;
                (now, whole) = (begins, false);
                pass(begins, &mut places, &mut pieces);
                begins = next(&places);
            }
            let duration = if whole { self.time_step } else { end - now };
            // A piece that begins at the row itself is shown in that row.
            let shown = begins > end + near;
            let mut more = 0;
            while whole && shown && row + more + 1 < self.rows {
                if begins <= (row + more + 1) as f64 * self.time_step + near {
                    break;
                }
                more += 1;
            }
            visit(&Leg { pieces, from: now, to: end, duration, whole, row: shown, more, first: row })?;
            row += more;
            now = row as f64 * self.time_step;
            if !shown {
                pass(end + near, &mut places, &mut pieces);
                begins = next(&places);
                visit(&Leg {
                    pieces,
                    from: end,
                    to: end,
                    duration: 0.0,
                    whole: false,
                    row: true,
                    more: 0,
                    first: row,
                })?;
            }
            row += 1;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{km_h, m, mm, s};

    #[test]
    fn legs_join_and_meet_every_row_whatever_the_road() {
        let (height, length) = (Length::of::<mm>(80.0), Length::of::<m>(1.0));
        let (speed, end, step) = (Velocity::of::<km_h>(36.0), Time::of::<s>(0.5), Time::of::<s>(0.03));
        let heights = [0.0, 0.02, -0.03, 0.0].map(Length::from_si);
        let distances = [2.0, 2.1, 4.7, 7.0].map(Length::from_si);
        for road in [
            Road::step(height).unwrap(),
            Road::ramp(height, length, speed).unwrap(),
            Road::half_sine(height, length, speed).unwrap(),
            Road::profile(speed, &distances, &heights).unwrap().0,
        ] {
            let late = 0.29;
            let course = Course::new([road.clone(), road.later(late)], end, step).unwrap();
            let (mut now, mut rows) = (0.0, 0);
            let mut before = None::<Leg<2>>;
            course
                .walk(|leg| {
                    if let Some(left) = before.filter(|_| road.0.len() > 1) {
                        for (left, right) in left.pieces.iter().zip(&leg.pieces) {
                            assert!((left.at(leg.from).0 - right.at(leg.from).0).abs() < 1e-9);
                        }
                    }
                    before = Some(*leg);
                    for (from, to) in leg.steps() {
                        assert!((from - now).abs() < 1e-15 && (to - from - leg.duration).abs() < 1e-15);
                        // The second wheel meets what the first one met.
                        if to > late && to < late + 0.2 {
                            let first = road.0.iter().rev().find(|piece| piece.start <= to - late - 1e-10);
                            let wanted = first.unwrap_or(&road.0[0]).at(to - late).0;
                            assert!((leg.pieces[1].at(to).0 - wanted).abs() < 1e-9);
                        }
                        now = to;
                        if leg.row {
                            assert!((to - f64::from(rows) * 0.03).abs() < 1e-12);
                            rows += 1;
                        }
                    }
                    Ok(())
                })
                .unwrap();
            assert_eq!(rows, 17);
        }
    }

    #[test]
    fn what_is_no_road_is_refused_by_name() {
        let (length, speed) = (Length::of::<m>(1.0), Velocity::of::<km_h>(36.0));
        let refused = |said: Option<Error>, name: &str| {
            let said = said.unwrap().to_string();
            assert!(said.starts_with(name), "{said}");
        };
        let timed = |duration: f64, time_step: f64| {
            let road = Road::step(length).unwrap();
            Course::new([road], Time::from_si(duration), Time::from_si(time_step)).err()
        };
        refused(Road::step(Length::from_si(11.0)).err(), "height");
        refused(timed(0.0, 0.005), "duration");
        refused(timed(1e4, 1e-6), "duration");
        refused(timed(2.0, f64::NAN), "time_step");
        refused(Road::ramp(length, Length::from_si(0.0), speed).err(), "length");
        refused(Road::half_sine(length, length, Velocity::from_si(0.0)).err(), "speed");
        refused(Road::profile(speed, &[length], &[length]).err(), "distance");
        refused(Road::profile(speed, &[length, length], &[length, length]).err(), "distance");
        refused(Road::profile(speed, &[Length::from_si(0.0), length], &[length]).err(), "height");
    }
}

//! A road as the wheel meets it: its height over time, in pieces, and the rows at which it is looked at.

use crate::units::{Length, Quantity, Time, Velocity};
use crate::{Error, Result, valid};
use core::f64::consts::PI;

/// More rows are a slip of the time step.
const MOST_ROWS: usize = 1_000_000;

/// A piece of road: from `start` on `u'' = -stiffness u`, which is a line where `stiffness` is nothing and else a sine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    pub(super) start: f64,
    pub(super) height: f64,
    pub(super) slope: f64,
    pub(super) stiffness: f64,
}

impl Piece {
    /// Height and its rate at a time.
    pub(super) fn at(&self, time: f64) -> (f64, f64) {
        let t = time - self.start;
        if self.stiffness == 0.0 {
            return (self.height + self.slope * t, self.slope);
        }
        let w = self.stiffness.sqrt();
        let (sin, cos) = (w * t).sin_cos();
        (self.height * cos + self.slope / w * sin, self.slope * cos - self.height * w * sin)
    }
}

/// What is gone through without a break: a piece of the road from one time to another, and the row that stands at its end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Leg {
    pub(super) piece: Piece,
    pub(super) from: f64,
    pub(super) to: f64,
    /// `to` less `from`, the same number for every whole time step.
    pub(super) duration: f64,
    pub(super) row: bool,
}

/// The road over time, and a row every time step.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Course {
    /// Height at which everything rests before.
    pub(super) rest: f64,
    pieces: Vec<Piece>,
    time_step: f64,
    rows: usize,
}

fn line(start: f64, height: f64, slope: f64) -> Piece {
    Piece { start, height, slope, stiffness: 0.0 }
}

/// Time that an obstacle takes.
fn crossing(height: Length, length: Length, speed: Velocity) -> Result<f64> {
    valid! {
        height: (-10) <= .. <= 10 ; "common practice, no source: nobody drives over 10 m";
        length: 0.001 <= .. <= 10000 ; "common practice, no source: from 1 mm to 10 km";
        speed: 0.01 <= .. <= 200 ; "common practice, no source: vehicles drive between 10 mm/s and 200 m/s";
    }
    Ok(length.si() / speed.si())
}

impl Course {
    fn new(rest: f64, pieces: Vec<Piece>, duration: Time, time_step: Time) -> Result<Self> {
        valid! {
            duration: 0 < .. <= 100000 ; "common practice, no source: longer than a day is a slip";
            time_step: 0.000001 <= .. <= 100 ; "common practice, no source: from 1 µs to 100 s";
        }
        // A duration that is a whole number of steps but for its last digit has that number.
        let steps = (duration.si() / time_step.si() * (1.0 + 1e-12)).floor() as usize;
        if steps >= MOST_ROWS {
            let message = format!(
                "duration = {} s in steps of time_step = {} s is {} rows, more than {MOST_ROWS}",
                duration.si(),
                time_step.si(),
                steps + 1
            );
            return Err(Error::NoSolution { message });
        }
        Ok(Self { rest, pieces, time_step: time_step.si(), rows: steps + 1 })
    }

    pub(super) fn step(height: Length, duration: Time, time_step: Time) -> Result<Self> {
        valid! { height: (-10) <= .. <= 10 ; "common practice, no source: nobody drives over 10 m"; }
        Self::new(0.0, vec![line(0.0, height.si(), 0.0)], duration, time_step)
    }

    pub(super) fn ramp(
        height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Self> {
        let end = crossing(height, length, speed)?;
        let pieces = vec![line(0.0, 0.0, height.si() / end), line(end, height.si(), 0.0)];
        Self::new(0.0, pieces, duration, time_step)
    }

    pub(super) fn half_sine(
        height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Self> {
        let end = crossing(height, length, speed)?;
        let w = PI / end;
        let sine = Piece { start: 0.0, height: 0.0, slope: height.si() * w, stiffness: w * w };
        Self::new(0.0, vec![sine, line(end, 0.0, 0.0)], duration, time_step)
    }

    pub(super) fn profile(
        speed: Velocity,
        time_step: Time,
        distance: &[Length],
        height: &[Length],
    ) -> Result<Self> {
        valid! { speed: 0.01 <= .. <= 200 ; "common practice, no source: vehicles drive between 10 mm/s and 200 m/s"; }
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
            valid! { height: (-1000) <= .. <= 1000 ; "common practice, no source: a profile is measured from a height near its own"; }
        }
        let start = |i: usize| (distance[i] - distance[0]).si() / speed.si();
        let mut pieces: Vec<Piece> = (0..distance.len() - 1)
            .map(|i| {
                line(start(i), height[i].si(), (height[i + 1] - height[i]).si() / (start(i + 1) - start(i)))
            })
            .collect();
        let last = distance.len() - 1;
        pieces.push(line(start(last), height[last].si(), 0.0));
        Self::new(height[0].si(), pieces, Time::from_si(start(last)), time_step)
    }

    pub(super) fn rows(&self) -> usize {
        self.rows
    }

    /// Leg after leg from time 0, each within one piece and none beyond a row.
    #[inline]
    pub(super) fn walk(&self, mut visit: impl FnMut(Leg) -> Result<()>) -> Result<()> {
        let mut place = 0;
        let mut now = 0.0;
        visit(Leg { piece: self.pieces[0], from: 0.0, to: 0.0, duration: 0.0, row: true })?;
        for row in 1..self.rows {
            let end = row as f64 * self.time_step;
            let near = 1e-9 * self.time_step;
            let mut whole = true;
            while let Some(next) = self.pieces.get(place + 1).filter(|next| next.start < end - near) {
                let piece = self.pieces[place];
                visit(Leg { piece, from: now, to: next.start, duration: next.start - now, row: false })?;
                (now, whole) = (next.start, false);
                place += 1;
            }
            let piece = self.pieces[place];
            let duration = if whole { self.time_step } else { end - now };
            // What begins at the row itself is what the row shows.
            let begins = self.pieces.get(place + 1).filter(|next| next.start <= end + near).copied();
            visit(Leg { piece, from: now, to: end, duration, row: begins.is_none() })?;
            now = end;
            if let Some(piece) = begins {
                place += 1;
                visit(Leg {
                    piece: Piece { start: end, ..piece },
                    from: end,
                    to: end,
                    duration: 0.0,
                    row: true,
                })?;
            }
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
        for course in [
            Course::step(height, end, step).unwrap(),
            Course::ramp(height, length, speed, end, step).unwrap(),
            Course::half_sine(height, length, speed, end, step).unwrap(),
            Course::profile(speed, step, &distances, &heights).unwrap(),
        ] {
            let (mut now, mut rows) = (0.0, 0);
            let mut before = None::<(Piece, f64)>;
            course
                .walk(|leg| {
                    assert!(
                        (leg.from - now).abs() < 1e-15 && (leg.to - leg.from - leg.duration).abs() < 1e-15
                    );
                    if let Some((piece, at)) = before {
                        let (left, right) = (piece.at(at).0, leg.piece.at(leg.from).0);
                        assert!((left - right).abs() < 1e-12, "{left} {right}");
                    }
                    before = Some((leg.piece, leg.to));
                    now = leg.to;
                    if leg.row {
                        assert!((leg.to - f64::from(rows) * 0.03).abs() < 1e-12);
                        rows += 1;
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
        let (end, step) = (Time::of::<s>(2.0), Time::of::<s>(0.005));
        let refused = |course: Result<Course>, name: &str| {
            let said = course.unwrap_err().to_string();
            assert!(said.starts_with(name), "{said}");
        };
        refused(Course::step(Length::from_si(11.0), end, step), "height");
        refused(Course::step(length, Time::from_si(0.0), step), "duration");
        refused(Course::step(length, Time::from_si(1e4), Time::from_si(1e-6)), "duration");
        refused(Course::step(length, end, Time::from_si(f64::NAN)), "time_step");
        refused(Course::ramp(length, Length::from_si(0.0), speed, end, step), "length");
        refused(Course::half_sine(length, length, Velocity::from_si(0.0), end, step), "speed");
        refused(Course::profile(speed, step, &[length], &[length]), "distance");
        refused(Course::profile(speed, step, &[length, length], &[length, length]), "distance");
        refused(Course::profile(speed, step, &[Length::from_si(0.0), length], &[length]), "height");
    }
}

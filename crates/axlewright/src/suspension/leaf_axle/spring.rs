//! A leaf spring in side view: two clamped halves, an eye on the body, an eye on a shackle.
//!
//! Each half keeps its length and bends in one shape, that of a cantilever under a force at its end: its curvature changes evenly along it
//! where it is of uniform strength, and fades to nothing at the eye where it is of uniform section. Place and slope follow from that curvature
//! exactly, however far it bends. Flat and for small bends the eye then moves on a circle whose radius is 3/4 of the half's length in the first
//! case, 5/6 in the second: the equivalent link of the trade (SAE HS-788, from memory; derived here, since the shortening is the integral of
//! half the slope squared).
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use crate::base::numeric::{hypot, sine_cosine};
use crate::suspension::kinematics::jet::Jet;
use core::array::from_fn;

/// Place and weight of the nodes of Gauss's rule between 0 and 1.
const NODES: [[f64; 2]; 8] = [
    [0.019_855_071_751_231_912, 0.050_614_268_145_188_53],
    [0.101_666_761_293_186_64, 0.111_190_517_226_687_21],
    [0.237_233_795_041_835_5, 0.156_853_322_938_943_44],
    [0.408_282_678_752_175_1, 0.181_341_891_689_180_83],
    [0.591_717_321_247_824_8, 0.181_341_891_689_180_83],
    [0.762_766_204_958_164_5, 0.156_853_322_938_943_44],
    [0.898_333_238_706_813_4, 0.111_190_517_226_687_21],
    [0.980_144_928_248_768_1, 0.050_614_268_145_188_53],
];

/// Pieces of a half in its outline.
const PIECES: u8 = 12;

/// Beyond this slope of its end against the seat a half is bent further than any leaf (80 deg).
const STEEPEST: f64 = 1.4;

/// From the seat to an eye.
#[derive(Debug, Clone, Copy)]
pub(super) struct Half {
    /// 1 where it reaches forward, -1 where it reaches to the rear.
    outward: f64,
    /// Held stiff by the seat.
    clamped: f64,
    /// Free to bend.
    pub(super) length: f64,
    /// Curvature at ride height, upward.
    curvature: f64,
    /// Height of the eye's centre above the leaf.
    eye_offset: f64,
    /// 0 of uniform strength, 1 of uniform section.
    fading: f64,
    /// Bending stiffness, moment over angle.
    pub(super) stiffness: f64,
    /// The bend that it has at ride height from its load.
    pub(super) loaded: f64,
}

/// The eye from the seat in the half's own directions, outward and up, with derivatives by the bend.
struct Eye {
    outward: [f64; 3],
    up: [f64; 3],
}

/// The eye from the seat, forward and up, with derivatives by the bend.
#[derive(Debug, Clone, Copy, Default)]
struct Reach {
    forward: [f64; 3],
    up: [f64; 3],
}

impl Reach {
    /// A bend that is greater by so little that the second derivatives stay.
    fn nudged(self, by: f64) -> Reach {
        let ahead = |[value, slope, bend]: [f64; 3]| [value + by * slope, slope + by * bend, bend];
        Reach { forward: ahead(self.forward), up: ahead(self.up) }
    }
    /// Forward, as a number with derivatives like the bend and the angle of the seat.
    fn forward(&self, bend: Jet, angle: Jet) -> Jet {
        let ([forward, slope, bent], [up, rise, _]) = (self.forward, self.up);
        Jet::of_two([bend, angle], forward, [slope, -up], [bent, -rise, -forward])
    }
    /// Up, in the same way.
    fn up(&self, bend: Jet, angle: Jet) -> Jet {
        let ([forward, slope, _], [up, rise, bent]) = (self.forward, self.up);
        Jet::of_two([bend, angle], up, [rise, forward], [bent, slope, -up])
    }
}

impl Half {
    /// The half whose eye stands here at ride height, outward and up from the seat.
    pub(super) fn new(outward: f64, eye: [f64; 2], clamped: f64, eye_offset: f64, fading: f64) -> Half {
        let [along, up] = [eye[0] - clamped, eye[1]];
        let curvature = 2.0 * (up - eye_offset) / (along * along + up * up - eye_offset * eye_offset);
        let turned = (along * curvature).atan2(1.0 - up * curvature);
        let length = if curvature == 0.0 { along } else { turned / curvature };
        Half { outward, clamped, length, curvature, eye_offset, fading, stiffness: 0.0, loaded: 0.0 }
    }
    /// Slope of its end at ride height against the seat.
    pub(super) fn slope(&self) -> f64 {
        self.curvature * self.length
    }
    /// From the middle of the seat to the end, straightened.
    pub(super) fn lever(&self) -> f64 {
        self.clamped + self.length
    }
    /// Deflection of its end over that end's turn and the length: 1/2 of uniform strength, 2/3 of uniform section.
    pub(super) fn centroid(&self) -> f64 {
        0.5 + self.fading / 6.0
    }
    /// The least and the largest bend.
    pub(super) fn range(&self) -> [f64; 2] {
        [self.slope() - STEEPEST, self.slope() + STEEPEST]
    }
    /// Share of the bend that lies within this share of its length.
    fn within(&self, place: f64) -> f64 {
        place * (1.0 + self.fading * (1.0 - place))
    }
    /// The leaf from its clamp to its end, and the eye: outward and up from the seat, and the share of the lever that lies within.
    fn shape(&self, bend: f64) -> Vec<[f64; 3]> {
        let (mut at, share) = ([self.clamped, 0.0], self.length / self.lever());
        let mut shape = vec![[at[0], at[1], 1.0 - share]];
        for piece in 0..PIECES {
            for [place, weight] in NODES {
                let place = (f64::from(piece) + place) / f64::from(PIECES);
                let (sine, cosine) = (self.slope() * place - bend * self.within(place)).sin_cos();
                let weight = weight * self.length / f64::from(PIECES);
                at = [at[0] + weight * cosine, at[1] + weight * sine];
            }
            let left = f64::from(PIECES - 1 - piece) / f64::from(PIECES);
            shape.push([at[0], at[1], 1.0 - share * left]);
        }
        let (sine, cosine) = (self.slope() - bend).sin_cos();
        shape.push([at[0] - self.eye_offset * sine, at[1] + self.eye_offset * cosine, 1.0]);
        shape
    }
    /// The eye at this bend: turn of the end downward from ride height.
    fn eye(&self, bend: f64) -> Eye {
        let slope = self.slope();
        let (sine, cosine) = sine_cosine(slope - bend);
        let offset = self.eye_offset;
        let mut eye = Eye {
            outward: [self.clamped - offset * sine, offset * cosine, offset * sine],
            up: [offset * cosine, offset * sine, -offset * cosine],
        };
        // The leaf turns nowhere by a right angle.
        let shares = NODES.map(|[place, _]| self.within(place));
        let angles: [f64; 8] = from_fn(|at| slope * NODES[at][0] - bend * shares[at]);
        let (mut sines, mut cosines) = ([0.0; 8], [0.0; 8]);
        for ((angle, sine), cosine) in angles.into_iter().zip(&mut sines).zip(&mut cosines) {
            (*sine, *cosine) = sine_cosine(angle);
        }
        for (([_, weight], share), (sine, cosine)) in
            NODES.into_iter().zip(shares).zip(sines.into_iter().zip(cosines))
        {
            let weight = weight * self.length;
            eye.outward[0] += weight * cosine;
            eye.outward[1] += weight * share * sine;
            eye.outward[2] -= weight * share * share * cosine;
            eye.up[0] += weight * sine;
            eye.up[1] -= weight * share * cosine;
            eye.up[2] -= weight * share * share * sine;
        }
        eye
    }
    /// The eye from the seat, which stands at this angle with the horizontal.
    fn reach(&self, bend: f64, sine: f64, cosine: f64) -> Reach {
        let eye = self.eye(bend);
        let mut reach = Reach::default();
        let pairs = eye.outward.into_iter().zip(eye.up);
        for ((forward, up), (outward, above)) in reach.forward.iter_mut().zip(&mut reach.up).zip(pairs) {
            *forward = self.outward * outward * cosine - above * sine;
            *up = self.outward * outward * sine + above * cosine;
        }
        reach
    }
    /// The leaf from clamp to eye, forward and up from the seat at this angle, and the share of the lever that lies within.
    pub(super) fn outline(&self, bend: f64, angle: f64) -> Vec<[f64; 3]> {
        let (sine, cosine) = angle.sin_cos();
        let turned = |[outward, up, share]: [f64; 3]| {
            [self.outward * outward * cosine - up * sine, self.outward * outward * sine + up * cosine, share]
        };
        self.shape(bend).into_iter().map(turned).collect()
    }
    /// Energy of the bend.
    fn energy(&self, bend: Jet) -> Jet {
        (bend + self.loaded).square() * (0.5 * self.stiffness)
    }
    /// Bending moment at the clamp.
    pub(super) fn clamp_moment(&self, bend: f64) -> f64 {
        self.stiffness * (bend + self.loaded) / self.centroid()
    }
}

/// End of a spring's motion.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    FixedHalf,
    ShackleHalf,
    Shackle,
    Pitch,
    /// None was found.
    GivenUp,
}

impl End {
    pub(super) const fn word(self) -> &'static str {
        match self {
            End::FixedHalf => "half to the fixed eye",
            End::ShackleHalf => "half to the shackle",
            End::Shackle => "shackle",
            End::Pitch => "axle's pitch",
            End::GivenUp => "search",
        }
    }
    /// Sentence about it.
    pub(super) const fn sentence(self) -> &'static str {
        match self {
            End::FixedHalf => "the half to the fixed eye bends no further",
            End::ShackleHalf => "the half to the shackle bends no further",
            End::Shackle => "the shackle lines up with the spring, and would turn over",
            End::Pitch => "the springs no longer hold the axle's pitch",
            End::GivenUp => "the search for the end of travel was given up: check the points of the spring",
        }
    }
}

/// A spring in side view, x forward and z up.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spring {
    pub(super) fixed: Half,
    pub(super) shackle: Half,
    pub(super) fixed_eye: [f64; 2],
    pub(super) pivot: [f64; 2],
    pub(super) shackle_length: f64,
    /// Sign of the change of the distance from the pivot with the bend.
    side: f64,
}

/// A spring with its seat at one height and angle; its energy is asked for apart.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Bent {
    /// Height of the seat.
    pub(super) height: f64,
    /// Seat, forward.
    pub(super) seat: Jet,
    /// Turn of the ends from ride height, downward.
    pub(super) fixed: Jet,
    pub(super) shackle: Jet,
    /// Position of the eye on the shackle.
    pub(super) eye: [Jet; 2],
    pub(super) energy: Jet,
    /// Sine of the angle between the shackle and the way of its eye: nothing where they are in line.
    pub(super) sine: f64,
    /// True if the second derivatives belong to the present bends.
    pub(super) exact: bool,
}

impl Bent {
    /// The spring on the other side of a level axle, whose second variable is its roll.
    pub(super) fn mirrored(self) -> Bent {
        Bent {
            height: self.height,
            seat: self.seat.mirrored(),
            fixed: self.fixed.mirrored(),
            shackle: self.shackle.mirrored(),
            eye: self.eye.map(Jet::mirrored),
            energy: self.energy.mirrored(),
            ..self
        }
    }
    /// Both bends a little further, nearly.
    pub(super) fn ahead(&self, by: [f64; 3]) -> [f64; 2] {
        [self.fixed.ahead(by), self.shackle.ahead(by)]
    }
}

/// A bend that was looked for, and the eye there.
struct Found {
    bend: f64,
    reach: Reach,
    /// True if the second derivatives belong there.
    exact: bool,
}

/// Sine of the least angle between the shackle and the way of its eye at ride height.
const LEAST_SINE: f64 = 0.02;

impl Spring {
    /// The spring at ride height with its seat at this angle; none where its shackle is locked.
    pub(super) fn new(
        [fixed, shackle]: [Half; 2],
        fixed_eye: [f64; 2],
        pivot: [f64; 2],
        eye: [f64; 2],
        angle: f64,
    ) -> Option<Spring> {
        let between = [eye[0] - pivot[0], eye[1] - pivot[1]];
        let (sine, cosine) = angle.sin_cos();
        let Reach { forward, up } = shackle.reach(0.0, sine, cosine);
        let (way, length) = (hypot(forward[1], up[1]), hypot(between[0], between[1]));
        let change = between[0] * forward[1] + between[1] * up[1];
        if change.abs() < LEAST_SINE * way * length {
            return None;
        }
        Some(Spring { fixed, shackle, fixed_eye, pivot, shackle_length: length, side: change.signum() })
    }

    /// The bend of the half to the fixed eye, from one that is near.
    fn fixed_bend(&self, height: f64, near: f64, sine: f64, cosine: f64) -> Result<Found, End> {
        let [low, high] = self.fixed.range();
        let mut bend = near.clamp(low, high);
        let mut reach = self.fixed.reach(bend, sine, cosine);
        for _ in 0..60 {
            let [above, slope, bent] = reach.up;
            let step = halley(height + above - self.fixed_eye[1], slope, bent);
            let to = (bend - step).clamp(low, high);
            if to.is_nan() || (to == bend && step != 0.0 && (to == low || to == high)) {
                return Err(End::FixedHalf);
            }
            let by = to - bend;
            if by.abs() < NUDGE {
                return Ok(Found { bend: to, reach: reach.nudged(by), exact: by.abs() < EXACT });
            }
            (bend, reach) = (to, self.fixed.reach(to, sine, cosine));
        }
        Err(End::FixedHalf)
    }

    /// The bend of the half to the shackle from one that is near, on the side of the shackle on which it stands at ride height.
    fn shackle_bend(&self, seat: [f64; 2], near: f64, sine: f64, cosine: f64) -> Result<Found, End> {
        let [low, high] = self.shackle.range();
        // Excess of the distance squared from the pivot, halved, with its derivatives.
        let excess = |Reach { forward, up }: &Reach| {
            let (x, z) = (seat[0] + forward[0] - self.pivot[0], seat[1] + up[0] - self.pivot[1]);
            let off = 0.5 * (x * x + z * z - self.shackle_length * self.shackle_length);
            let bent = forward[1] * forward[1] + up[1] * up[1] + x * forward[2] + z * up[2];
            [off, x * forward[1] + z * up[1], bent]
        };
        let mut bend = near.clamp(low, high);
        let mut reach = self.shackle.reach(bend, sine, cosine);
        if excess(&reach)[1] * self.side <= 0.0 {
            bend = if self.side > 0.0 { high } else { low };
            reach = self.shackle.reach(bend, sine, cosine);
        }
        for _ in 0..60 {
            let [off, slope, bent] = excess(&reach);
            if slope.is_nan() || slope * self.side <= 0.0 {
                return Err(End::Shackle);
            }
            let step = halley(off, slope, bent);
            let to = (bend - step).clamp(low, high);
            if to == bend && step != 0.0 && (to == low || to == high) {
                return Err(End::ShackleHalf);
            }
            let by = to - bend;
            if by.abs() < NUDGE {
                return Ok(Found { bend: to, reach: reach.nudged(by), exact: by.abs() < EXACT });
            }
            (bend, reach) = (to, self.shackle.reach(to, sine, cosine));
        }
        Err(End::Shackle)
    }

    /// The bend of the half to the fixed eye, and the seat, forward, with the seat at this height and angle.
    fn seat(&self, height: Jet, angle: Jet, near: f64) -> Result<([Jet; 2], bool), End> {
        let (sine, cosine) = angle.value.sin_cos();
        let Found { bend, reach, exact } = self.fixed_bend(height.value, near, sine, cosine)?;
        let over = 1.0 / reach.up[1];
        let turned = reach.forward[0];
        let first = from_fn(|by| -over * (height.first[by] + turned * angle.first[by]));
        // Newton's step carries the second derivatives along.
        let fixed = Jet { first, ..Jet::constant(bend) };
        let fixed = fixed - (height + reach.up(fixed, angle) + -self.fixed_eye[1]) * over;
        Ok(([fixed, -reach.forward(fixed, angle) + self.fixed_eye[0]], exact))
    }

    /// Excess of the distance squared from the pivot to the eye, halved.
    fn excess(&self, eye: [Jet; 2]) -> Jet {
        let [x, z] = [eye[0] + -self.pivot[0], eye[1] + -self.pivot[1]];
        (x.square() + z.square() + -self.shackle_length * self.shackle_length) * 0.5
    }

    /// Sine of the angle between the shackle and the way of its eye, whose distance from the pivot has this slope.
    fn sine(&self, reach: &Reach, slope: f64) -> f64 {
        self.side * slope / (hypot(reach.forward[1], reach.up[1]) * self.shackle_length)
    }

    /// The spring with its seat at this height and angle, but for its energy, from bends of its halves that are near.
    pub(super) fn at(&self, height: Jet, angle: Jet, near: [f64; 2]) -> Result<Bent, End> {
        let ([fixed, seat], sharp) = self.seat(height, angle, near[0])?;
        let (sine, cosine) = angle.value.sin_cos();
        let found = self.shackle_bend([seat.value, height.value], near[1], sine, cosine)?;
        let Found { bend, reach, exact } = found;
        let ([forward, up], [pivot_x, pivot_z]) = ([reach.forward[0], reach.up[0]], self.pivot);
        let (x, z) = (seat.value + forward - pivot_x, height.value + up - pivot_z);
        let slope = x * reach.forward[1] + z * reach.up[1];
        let moved = |by: usize| {
            let turned = angle.first[by];
            x * (seat.first[by] - up * turned) + z * (height.first[by] + forward * turned)
        };
        let eye_of = |bend: Jet| [seat + reach.forward(bend, angle), height + reach.up(bend, angle)];
        let shackle = Jet { first: from_fn(|by| -moved(by) / slope), ..Jet::constant(bend) };
        let shackle = shackle - self.excess(eye_of(shackle)) * (1.0 / slope);
        let eye = eye_of(shackle);
        let sine = self.sine(&reach, slope);
        let (height, energy, exact) = (height.value, Jet::default(), sharp && exact);
        Ok(Bent { height, seat, fixed, shackle, eye, energy, sine, exact })
    }

    /// The spring with its seat at this height and angle and its half to the shackle bent so far, and the excess that is nothing where its shackle holds
    /// it so: where the shackle is in line with the spring, too, all of that is smooth.
    pub(super) fn bent(&self, height: Jet, angle: Jet, shackle: Jet, near: f64) -> Result<(Bent, Jet), End> {
        let ([fixed, seat], exact) = self.seat(height, angle, near)?;
        let (sine, cosine) = angle.value.sin_cos();
        let reach = self.shackle.reach(shackle.value, sine, cosine);
        let eye = [seat + reach.forward(shackle, angle), height + reach.up(shackle, angle)];
        let [x, z] = [eye[0].value - self.pivot[0], eye[1].value - self.pivot[1]];
        let sine = self.sine(&reach, x * reach.forward[1] + z * reach.up[1]);
        let (height, energy) = (height.value, Jet::default());
        Ok((Bent { height, seat, fixed, shackle, eye, energy, sine, exact }, self.excess(eye)))
    }

    /// Energy of its halves.
    pub(super) fn energy(&self, on: &Bent) -> Jet {
        self.fixed.energy(on.fixed) + self.shackle.energy(on.shackle)
    }
}

/// The last step of a bend is not longer than this: its cube is left to go, and what it changes of the second derivatives is left out.
const NUDGE: f64 = 3e-5;
/// After a shorter one they are what they are there.
const EXACT: f64 = 1e-11;

/// Halley's step to the root of a function with this value, slope and second derivative; where it bends much, Newton's, at most twice or half of it.
fn halley(value: f64, slope: f64, bent: f64) -> f64 {
    let step = value / slope;
    step / (1.0 - 0.5 * step * bent / slope).clamp(0.5, 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Flat halves: the eye's way is curved as a circle of 3/4 or 5/6 of the length; the equivalent link.
    #[test]
    fn a_flat_half_moves_as_its_equivalent_link() {
        for (fading, radius) in [(0.0, 0.75), (1.0, 5.0 / 6.0)] {
            let half = Half::new(1.0, [0.68, 0.0], 0.06, 0.0, fading);
            assert_relative_eq!(half.length, 0.62, max_relative = 1e-15);
            let eye = half.eye(0.0);
            assert_relative_eq!(eye.up[1], -half.centroid() * 0.62, max_relative = 1e-14);
            // Curvature of the way, x'' / z'^2.
            assert_relative_eq!(
                -eye.outward[2] / (eye.up[1] * eye.up[1]),
                1.0 / (radius * 0.62),
                max_relative = 1e-13
            );
        }
    }

    #[test]
    fn at_ride_height_the_eye_stands_as_drawn() {
        for eye in [[0.7, 0.09], [0.5, -0.04], [0.6, 0.03], [0.6, 0.0]] {
            for offset in [0.0, 0.03, -0.02] {
                let half = Half::new(-1.0, eye, 0.05, offset, 0.5);
                let found = half.eye(0.0);
                assert_relative_eq!(found.outward[0], eye[0], max_relative = 1e-13);
                assert!((found.up[0] - eye[1]).abs() < 1e-14, "{eye:?} {offset}");
            }
        }
    }

    /// The leaf ends at its eye in any bend; it is a bit longer than its chords.
    #[test]
    fn the_shape_ends_in_the_eye() {
        for fading in [0.0, 1.0] {
            let half = Half::new(-1.0, [0.7, 0.09], 0.05, 0.03, fading);
            for bend in [-0.9, 0.0, 0.6, 1.1] {
                let (shape, eye) = (half.shape(bend), half.eye(bend));
                let [.., end, last] = shape[..] else { panic!("{shape:?}") };
                assert!((last[0] - eye.outward[0]).hypot(last[1] - eye.up[0]) < 1e-10, "{fading} {bend}");
                assert_relative_eq!((last[0] - end[0]).hypot(last[1] - end[1]), 0.03, max_relative = 1e-12);
                let chords: f64 = shape
                    .windows(2)
                    .take(PIECES.into())
                    .map(|on| (on[1][0] - on[0][0]).hypot(on[1][1] - on[0][1]))
                    .sum();
                assert!(chords < half.length * (1.0 + 1e-14) && chords > half.length * 0.999, "{chords}");
            }
        }
    }

    #[test]
    fn derivatives_of_the_eye_are_limits_of_differences() {
        let half = Half::new(1.0, [0.7, 0.09], 0.05, 0.03, 1.0);
        let h = 1e-5;
        for bend in [-0.4, 0.1, 0.5] {
            let (low, on, high) = (half.eye(bend - h), half.eye(bend), half.eye(bend + h));
            for [low, on, high] in [[low.outward, on.outward, high.outward], [low.up, on.up, high.up]] {
                assert!(((high[0] - low[0]) / (2.0 * h) - on[1]).abs() < 1e-9);
                assert!(((high[1] - low[1]) / (2.0 * h) - on[2]).abs() < 1e-9);
            }
        }
    }
}

//! A leaf spring in side view: two clamped halves, an eye on the body, an eye on a shackle.
//!
//! Each half keeps its length and bends in one shape, that of a cantilever under a force at its end: its curvature changes evenly along it
//! where it is of uniform strength, and fades to nothing at the eye where it is of uniform section. Place and slope follow from that curvature
//! exactly, however far it bends. Flat and for small bends the eye then moves on a circle whose radius is 3/4 of the half's length in the first
//! case, 5/6 in the second: the equivalent link of the trade (SAE HS-788, from memory; derived here, since the shortening is the integral of
//! half the slope squared).

use super::jet::Jet;

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
    /// At ride height, upward.
    curvature: f64,
    /// Of the eye's centre above the leaf.
    eye_offset: f64,
    /// 0 of uniform strength, 1 of uniform section.
    fading: f64,
    /// Of the bend, moment over angle.
    pub(super) stiffness: f64,
    /// The bend that it has at ride height from its load.
    pub(super) loaded: f64,
}

/// The eye from the seat in the half's own directions, outward and up, with derivatives by the bend.
struct Eye {
    outward: [f64; 3],
    up: [f64; 3],
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
    /// The least and the greatest bend.
    fn range(&self) -> [f64; 2] {
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
        let end = self.slope() - bend;
        let (sine, cosine) = end.sin_cos();
        let offset = self.eye_offset;
        let mut eye = Eye {
            outward: [self.clamped - offset * sine, offset * cosine, offset * sine],
            up: [offset * cosine, offset * sine, -offset * cosine],
        };
        for [place, weight] in NODES {
            let share = self.within(place);
            let (sine, cosine) = (self.slope() * place - bend * share).sin_cos();
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
    /// Forward and up from the seat, which stands at this angle with the horizontal; with derivatives by the bend.
    fn reach(&self, bend: f64, sine: f64, cosine: f64) -> [[f64; 3]; 2] {
        let eye = self.eye(bend);
        let mut reach = [[0.0; 3]; 2];
        let pairs = eye.outward.into_iter().zip(eye.up);
        let [forward, up] = &mut reach;
        for ((forward, up), (outward, above)) in forward.iter_mut().zip(up).zip(pairs) {
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
    /// The same of numbers with derivatives.
    fn reach_of(&self, bend: Jet, sine: Jet, cosine: Jet) -> [Jet; 2] {
        let eye = self.eye(bend.value);
        let (outward, up) = (bend.chain(eye.outward) * self.outward, bend.chain(eye.up));
        [outward * cosine - up * sine, outward * sine + up * cosine]
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

/// What ends the motion of a spring.
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
    /// What it does there.
    pub(super) const fn sentence(self) -> &'static str {
        match self {
            End::FixedHalf => "the half to the fixed eye bends no further",
            End::ShackleHalf => "the half to the shackle bends no further",
            End::Shackle => "the shackle is in line with the spring: beyond it turns over",
            End::Pitch => "the springs no longer hold the axle upright about its own axis",
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

/// A spring with its seat at one height and angle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bent {
    /// Of the seat, up.
    pub(super) height: f64,
    /// Of the seat, forward.
    pub(super) seat: Jet,
    /// Turn of the ends from ride height, downward.
    pub(super) fixed: Jet,
    pub(super) shackle: Jet,
    /// Of the eye on the shackle.
    pub(super) eye: [Jet; 2],
    pub(super) energy: Jet,
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
        }
    }
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
        let [forward, up] = shackle.reach(0.0, sine, cosine);
        let (way, length) = (forward[1].hypot(up[1]), between[0].hypot(between[1]));
        let change = between[0] * forward[1] + between[1] * up[1];
        if change.abs() < LEAST_SINE * way * length {
            return None;
        }
        Some(Spring { fixed, shackle, fixed_eye, pivot, shackle_length: length, side: change.signum() })
    }

    /// The bend of the half to the fixed eye.
    fn fixed_bend(&self, height: f64, sine: f64, cosine: f64) -> Result<f64, End> {
        let [low, high] = self.fixed.range();
        let mut bend = 0.0_f64;
        for _ in 0..60 {
            let [_, up] = self.fixed.reach(bend, sine, cosine);
            let step = (height + up[0] - self.fixed_eye[1]) / up[1];
            let to = (bend - step).clamp(low, high);
            if to.is_nan() || (to == bend && step != 0.0 && (to == low || to == high)) {
                return Err(End::FixedHalf);
            }
            let stepped = (to - bend).abs();
            bend = to;
            if stepped < 1e-10 {
                return Ok(bend);
            }
        }
        Err(End::FixedHalf)
    }

    /// The bend of the half to the shackle, on the side of the shackle on which it stands at ride height.
    fn shackle_bend(&self, seat: [f64; 2], guess: f64, sine: f64, cosine: f64) -> Result<f64, End> {
        let [low, high] = self.shackle.range();
        // Excess of the distance squared from the pivot, halved, and its slope.
        let excess = |bend: f64| {
            let [forward, up] = self.shackle.reach(bend, sine, cosine);
            let (x, z) = (seat[0] + forward[0] - self.pivot[0], seat[1] + up[0] - self.pivot[1]);
            (0.5 * (x * x + z * z - self.shackle_length * self.shackle_length), x * forward[1] + z * up[1])
        };
        let mut bend = guess.clamp(low, high);
        if excess(bend).1 * self.side <= 0.0 {
            bend = if self.side > 0.0 { high } else { low };
        }
        for _ in 0..60 {
            let (off, slope) = excess(bend);
            if slope.is_nan() || slope * self.side <= 0.0 {
                return Err(End::Shackle);
            }
            let step = off / slope;
            let to = (bend - step).clamp(low, high);
            if to == bend && step != 0.0 && (to == low || to == high) {
                return Err(End::ShackleHalf);
            }
            let stepped = (to - bend).abs();
            bend = to;
            if stepped < 1e-10 {
                return Ok(bend);
            }
        }
        Err(End::Shackle)
    }

    /// The spring with its seat at this height and angle.
    pub(super) fn at(&self, height: Jet, angle: Jet) -> Result<Bent, End> {
        let (sine, cosine) = (angle.sine(), angle.cosine());
        let bend = self.fixed_bend(height.value, sine.value, cosine.value)?;
        // Newton's steps carry the derivatives along: one for the first, one for the second.
        let [_, up] = self.fixed.reach(bend, sine.value, cosine.value);
        let mut fixed = Jet::constant(bend);
        for _ in 0..2 {
            let off = height + self.fixed.reach_of(fixed, sine, cosine)[1] + -self.fixed_eye[1];
            fixed = fixed - off * (1.0 / up[1]);
        }
        let seat = -self.fixed.reach_of(fixed, sine, cosine)[0] + self.fixed_eye[0];

        let at = [seat.value, height.value];
        let guess = bend * self.fixed.length / self.shackle.length;
        let bend = self.shackle_bend(at, guess, sine.value, cosine.value)?;
        let eye_of = |bend: Jet| {
            let [forward, up] = self.shackle.reach_of(bend, sine, cosine);
            [seat + forward, height + up]
        };
        let [forward, up] = self.shackle.reach(bend, sine.value, cosine.value);
        let slope = 2.0
            * ((at[0] + forward[0] - self.pivot[0]) * forward[1] + (at[1] + up[0] - self.pivot[1]) * up[1]);
        let mut shackle = Jet::constant(bend);
        for _ in 0..2 {
            let [x, z] = eye_of(shackle);
            let off = (x + -self.pivot[0]).square()
                + (z + -self.pivot[1]).square()
                + -self.shackle_length * self.shackle_length;
            shackle = shackle - off * (1.0 / slope);
        }
        let energy = self.fixed.energy(fixed) + self.shackle.energy(shackle);
        Ok(Bent { height: height.value, seat, fixed, shackle, eye: eye_of(shackle), energy })
    }
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

    /// Where the leaf is drawn to end there is its eye, whatever it is bent by; it is a bit longer than its chords.
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

use super::shape::Pair;
use core::f64::consts::FRAC_PI_2;

/// The centre line of an open thin wall, as a chain of straight pieces.
#[derive(Debug, Default)]
pub(in super::super) struct CentreLine {
    points: Vec<Pair>,
}

/// Pieces of a bend.
const PIECES: u32 = 24;

/// A number at the beginning and at the end of a piece, and linear between.
type Linear = (f64, f64);

impl CentreLine {
    pub(in super::super) fn to(&mut self, y: f64, z: f64) {
        self.points.push(Pair { y, z });
    }

    /// A quarter of a circle around this centre, from one angle on, against the clock.
    pub(in super::super) fn bend(&mut self, centre: Pair, radius: f64, from: f64) {
        for piece in 0..=PIECES {
            let angle = from + FRAC_PI_2 * f64::from(piece) / f64::from(PIECES);
            self.to(centre.y + radius * angle.cos(), centre.z + radius * angle.sin());
        }
    }

    /// Length of the line.
    pub(in super::super) fn length(&self) -> f64 {
        self.pieces().map(|(from, to)| length(from, to)).sum()
    }

    /// Shear centre, and warping constant about it: the sectorial coordinate of Vlasov.
    pub(in super::super) fn warping(&self, wall: f64) -> (Pair, f64) {
        let whole = self.length();
        let mean = |of: fn(Pair) -> f64| {
            self.pieces().map(|(from, to)| length(from, to) * (of(from) + of(to)) / 2.0).sum::<f64>() / whole
        };
        let centroid = Pair { y: mean(|point| point.y), z: mean(|point| point.z) };
        let about_centroid = self.sectorial(centroid);
        let at = |of: fn(Pair) -> f64, centre: f64| {
            move |(from, to): (Pair, Pair)| (of(from) - centre, of(to) - centre)
        };
        let (y, z) = (at(|point| point.y, centroid.y), at(|point| point.z, centroid.z));
        let sum = |of: &dyn Fn((Pair, Pair), Linear) -> f64| {
            self.pieces()
                .zip(&about_centroid)
                .map(|((from, to), area)| length(from, to) * of((from, to), *area))
                .sum::<f64>()
        };
        let (iy, iz) =
            (sum(&|piece, _| product(z(piece), z(piece))), sum(&|piece, _| product(y(piece), y(piece))));
        let iyz = sum(&|piece, _| product(y(piece), z(piece)));
        let (with_z, with_y) =
            (sum(&|piece, area| product(area, z(piece))), sum(&|piece, area| product(area, y(piece))));
        let both = iy * iz - iyz * iyz;
        let pole = Pair {
            y: centroid.y + (iz * with_z - iyz * with_y) / both,
            z: centroid.z - (iy * with_y - iyz * with_z) / both,
        };
        let about_pole = self.sectorial(pole);
        let pieces = || self.pieces().map(|(from, to)| length(from, to)).zip(&about_pole);
        let mean = pieces().map(|(length, (from, to))| length * (from + to) / 2.0).sum::<f64>() / whole;
        let constant = pieces()
            .map(|(length, (from, to))| {
                let warped = (from - mean, to - mean);
                length * wall * product(warped, warped)
            })
            .sum();
        (pole, constant)
    }

    fn pieces(&self) -> impl Iterator<Item = (Pair, Pair)> {
        self.points.iter().copied().zip(self.points.iter().copied().skip(1))
    }

    /// Twice the area that a ray from the pole sweeps along the line, at both ends of each piece.
    fn sectorial(&self, pole: Pair) -> Vec<Linear> {
        let mut swept = 0.0;
        let piece = |(from, to): (Pair, Pair)| {
            let before = swept;
            swept += (from.y - pole.y) * (to.z - from.z) - (from.z - pole.z) * (to.y - from.y);
            (before, swept)
        };
        self.pieces().map(piece).collect()
    }
}

fn length(from: Pair, to: Pair) -> f64 {
    let (y, z) = (to.y - from.y, to.z - from.z);
    (y * y + z * z).sqrt()
}

/// Mean of the product of two numbers that are linear along a piece.
fn product(one: Linear, other: Linear) -> f64 {
    (2.0 * one.0 * other.0 + one.0 * other.1 + one.1 * other.0 + 2.0 * one.1 * other.1) / 6.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_sharp_channel_has_the_figures_of_the_handbook() {
        let (b, h, t) = (0.0485, 0.097, 0.003);
        let mut line = CentreLine::default();
        for (y, z) in [(b, h / 2.0), (0.0, h / 2.0), (0.0, -h / 2.0), (b, -h / 2.0)] {
            line.to(y, z);
        }
        let (centre, warping) = line.warping(t);
        assert_relative_eq!(centre.y, -3.0 * b * b / (6.0 * b + h), max_relative = 1e-12);
        assert!(centre.z.abs() < 1e-15);
        let handbook = t * b.powi(3) * h * h / 12.0 * (3.0 * b + 2.0 * h) / (6.0 * b + h);
        assert_relative_eq!(warping, handbook, max_relative = 1e-12);
    }
}

//! Sharing of a force and a moment among equal bolts under a stiff plate.

use crate::base::numeric::hypot;

/// Force on one bolt (N): across it, and along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Share {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) tension: f64,
}

impl Share {
    pub(super) fn shear(&self) -> f64 {
        hypot(self.x, self.y)
    }
}

/// Force (N) and moment (N·m) about a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Load {
    pub(super) force: [f64; 3],
    pub(super) moment: [f64; 3],
}

/// Rounding of a moment that should be nothing, over the largest lever times the largest force.
const ROUNDING: f64 = 1e-9;

/// Bolts by their places (m).
pub(super) struct Pattern<'a>(pub(super) &'a [(f64, f64)]);

impl Load {
    /// Load as it is about another point of the plane.
    pub(super) fn about(&self, (from_x, from_y): (f64, f64), (x, y): (f64, f64)) -> Load {
        let ([f, g, h], [m, n, o]) = (self.force, self.moment);
        let (dx, dy) = (from_x - x, from_y - y);
        Load { force: self.force, moment: [m + dy * h, n - dx * h, o + dx * g - dy * f] }
    }

    /// Moment below which rounding alone stands, for places within this distance.
    fn rounding(&self, distance: f64) -> f64 {
        let force = self.force.iter().fold(0.0_f64, |most, of| most.max(of.abs()));
        let moment = self.moment.iter().fold(0.0_f64, |most, of| most.max(of.abs()));
        ROUNDING * (moment + force * distance)
    }
}

impl Pattern<'_> {
    pub(super) fn centroid(&self) -> (f64, f64) {
        let count = self.0.len() as f64;
        let sum = self.0.iter().fold((0.0, 0.0), |sum, place| (sum.0 + place.0, sum.1 + place.1));
        (sum.0 / count, sum.1 / count)
    }

    /// Places from the centroid.
    fn centred(&self) -> Vec<(f64, f64)> {
        let (x, y) = self.centroid();
        self.0.iter().map(|place| (place.0 - x, place.1 - y)).collect()
    }

    /// Largest distance from the centroid.
    fn extent(&self) -> f64 {
        self.centred().iter().fold(0.0, |most, place| f64::max(most, hypot(place.0, place.1)))
    }

    /// Forces across the bolts under a load about the centroid; none if a single place cannot hold the moment.
    pub(super) fn shears(&self, load: &Load) -> Option<Vec<(f64, f64)>> {
        let (count, places) = (self.0.len() as f64, self.centred());
        let ([f, g, _], [_, _, moment]) = (load.force, load.moment);
        let polar: f64 = places.iter().map(|(x, y)| x * x + y * y).sum();
        let turn = match polar > 0.0 {
            true => moment / polar,
            false if moment.abs() <= load.rounding(0.0) => 0.0,
            false => return None,
        };
        Some(places.iter().map(|(x, y)| (f / count - turn * y, g / count + turn * x)).collect())
    }

    /// Forces along the bolts under a load about the centroid, from a plane of stretch through it; none if the bolts stand in a row and the moment turns about that row.
    pub(super) fn tensions(&self, load: &Load) -> Option<Vec<f64>> {
        let (count, places) = (self.0.len() as f64, self.centred());
        let ([_, _, pull], [m, n, _]) = (load.force, load.moment);
        let sum = |of: fn(f64, f64) -> f64| places.iter().map(|(x, y)| of(*x, *y)).sum::<f64>();
        let (xx, yy, xy) = (sum(|x, _| x * x), sum(|_, y| y * y), sum(|x, y| x * y));
        let determinant = xx * yy - xy * xy;
        let (a, b) = if determinant > ROUNDING * (xx + yy) * (xx + yy) {
            // m = a xy + b yy and -n = a xx + b xy.
            ((-n * yy - m * xy) / determinant, (m * xx + n * xy) / determinant)
        } else {
            self.in_a_row(load, &places, xx + yy)?
        };
        Some(places.iter().map(|(x, y)| pull / count + a * x + b * y).collect())
    }

    /// Slopes of the stretch along a row of bolts.
    fn in_a_row(&self, load: &Load, places: &[(f64, f64)], squares: f64) -> Option<(f64, f64)> {
        let [m, n, _] = load.moment;
        let far = places
            .iter()
            .copied()
            .max_by(|a, b| hypot(a.0, a.1).total_cmp(&hypot(b.0, b.1)))
            .unwrap_or((0.0, 0.0));
        let length = hypot(far.0, far.1);
        if length == 0.0 {
            return (hypot(m, n) <= load.rounding(0.0)).then_some((0.0, 0.0));
        }
        let (x, y) = (far.0 / length, far.1 / length);
        let about_row = m * x + n * y;
        if about_row.abs() > load.rounding(self.extent()) {
            return None;
        }
        let slope = (m * y - n * x) / squares;
        Some((slope * x, slope * y))
    }

    /// Forces along the bolts as the plate tips about an edge; none if the moment across the edge has no lever.
    ///
    /// `load` is about the edge's foot under the centroid; `along` and `away` are unit vectors, `away` towards the bolts.
    pub(super) fn tipping(
        &self,
        load: &Load,
        foot: (f64, f64),
        along: (f64, f64),
        away: (f64, f64),
    ) -> Option<Vec<f64>> {
        let [m, n, _] = load.moment;
        // Positive if `away` is to the left of `along`.
        let side = along.0 * away.1 - along.1 * away.0;
        let opening = (side * (m * along.0 + n * along.1)).max(0.0);
        let across = -side * (m * away.0 + n * away.1);
        let places: Vec<(f64, f64)> = self
            .0
            .iter()
            .map(|(x, y)| (x - foot.0, y - foot.1))
            .map(|(x, y)| (x * along.0 + y * along.1, x * away.0 + y * away.1))
            .collect();
        let (wide, high) = places.iter().fold((0.0, 0.0), |sum, (s, h)| (sum.0 + s * s, sum.1 + h * h));
        let rounding = load.rounding(self.extent());
        let slope = |moment: f64, squares: f64| match squares > 0.0 {
            true => Some(moment / squares),
            false if moment.abs() <= rounding => Some(0.0),
            false => None,
        };
        let in_line = wide <= ROUNDING * high;
        let tilt = if in_line && across.abs() <= rounding {
            0.0
        } else {
            slope(across, if in_line { 0.0 } else { wide })?
        };
        let open = slope(opening, high)?;
        Some(places.iter().map(|(s, h)| open * h + tilt * s).collect())
    }
}

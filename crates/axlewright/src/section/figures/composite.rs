use super::shape::{Bending, Pair};

/// A rectangle of metal with sides along y and z, or a rectangle that is removed.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Patch {
    pub(in super::super) left: f64,
    pub(in super::super) right: f64,
    pub(in super::super) low: f64,
    pub(in super::super) high: f64,
    /// 1 for metal, -1 where it is removed.
    pub(in super::super) sign: f64,
}

impl Patch {
    /// Metal between two places along y and two along z.
    pub(in super::super) fn metal(left: f64, right: f64, low: f64, high: f64) -> Patch {
        Patch { left, right, low, high, sign: 1.0 }
    }

    /// Place as it is, but without metal.
    pub(in super::super) fn gone(self) -> Patch {
        Patch { sign: -1.0, ..self }
    }

    pub(in super::super) fn width(&self) -> f64 {
        self.right - self.left
    }

    pub(in super::super) fn height(&self) -> f64 {
        self.high - self.low
    }

    /// Area that two patches share, whatever their signs.
    pub(in super::super) fn shared(&self, other: &Patch) -> f64 {
        let width = self.right.min(other.right) - self.left.max(other.left);
        let height = self.high.min(other.high) - self.low.max(other.low);
        width.max(0.0) * height.max(0.0)
    }

    fn turned(&self) -> Patch {
        Patch { left: self.low, right: self.high, low: self.left, high: self.right, sign: self.sign }
    }
}

/// A section as rectangles that do not overlap, but for those removed.
#[derive(Debug, Clone, Default)]
pub(in super::super) struct Composite {
    pub(in super::super) patches: Vec<Patch>,
}

/// Width of the section between two heights.
struct Strip {
    low: f64,
    high: f64,
    width: f64,
}

/// Share of the widest strip below which a width is rounding.
const NO_WIDTH: f64 = 1e-9;
/// Share of a moment below which a product of inertia is rounding.
const NO_PRODUCT: f64 = 1e-12;
/// Steps in which a rounded corner is cut.
const STEPS: u32 = 32;

impl Composite {
    /// Adds a quarter of a ring: its centre, its radii, and the side on which it lies.
    pub(in super::super) fn quarter_ring(&mut self, centre: Pair, outer: f64, inner: f64, side: Pair) {
        // Equal turns of both circles: the steps are fine where one of them is steep.
        let turn = core::f64::consts::FRAC_PI_2 / f64::from(STEPS);
        let of = |radius: f64| (0..STEPS).map(move |step| radius * (f64::from(step) * turn).sin());
        let mut heights: Vec<f64> = of(outer).chain(of(inner)).collect();
        heights.extend([inner, outer]);
        heights.sort_by(f64::total_cmp);
        heights.dedup_by(|next, height| *next - *height < NO_WIDTH * outer);
        for (low, high) in heights.iter().copied().zip(heights.iter().copied().skip(1)) {
            let from = if inner > 0.0 { mean_chord(inner, low, high) } else { 0.0 };
            let (near, far) = (from, mean_chord(outer, low, high));
            let place = |at: f64, centre: f64, side: f64| centre + side * at;
            let (a, b) = (place(near, centre.y, side.y), place(far, centre.y, side.y));
            let (c, d) = (place(low, centre.z, side.z), place(high, centre.z, side.z));
            self.patches.push(Patch::metal(a.min(b), a.max(b), c.min(d), c.max(d)));
        }
    }

    /// The figures about the centroid, without torsion. The shear areas are those of a section whose product of inertia is 0, otherwise not known.
    pub(in super::super) fn bending(&self) -> Bending {
        let all = &self.patches;
        let sum = |of: fn(&Patch) -> f64| all.iter().map(|patch| patch.sign * of(patch)).sum::<f64>();
        let area = sum(|p| p.width() * p.height());
        let centroid = Pair {
            y: sum(|p| p.width() * p.height() * (p.left + p.right) / 2.0) / area,
            z: sum(|p| p.width() * p.height() * (p.low + p.high) / 2.0) / area,
        };
        let about = |from: f64, to: f64| (to.powi(3) - from.powi(3)) / 3.0;
        let (mut y, mut z, mut product) = (0.0, 0.0, 0.0);
        for p in all {
            let (left, right, low, high) =
                (p.left - centroid.y, p.right - centroid.y, p.low - centroid.z, p.high - centroid.z);
            y += p.sign * p.width() * about(low, high);
            z += p.sign * p.height() * about(left, right);
            product += p.sign * p.width() * p.height() * (left + right) / 2.0 * (low + high) / 2.0;
        }
        if product.abs() <= NO_PRODUCT * (y + z) {
            product = 0.0;
        }
        let second = Pair { y, z };
        let (mut worst_y, mut worst_z) = (0.0_f64, 0.0_f64);
        let both = y * z - product * product;
        for p in all.iter().filter(|p| p.sign > 0.0) {
            for place in [p.left, p.right].map(|at| at - centroid.y) {
                for height in [p.low, p.high].map(|at| at - centroid.z) {
                    worst_y = worst_y.max(((z * height - product * place) / both).abs());
                    worst_z = worst_z.max(((y * place - product * height) / both).abs());
                }
            }
        }
        let turned: Vec<Patch> = all.iter().map(Patch::turned).collect();
        let (upward, sideways) = (strips(all), strips(&turned));
        let shear_area = if product == 0.0 {
            Pair { y: shear_area(&sideways, centroid.y, z), z: shear_area(&upward, centroid.z, y) }
        } else {
            Pair::UNKNOWN
        };
        Bending {
            area,
            centroid,
            second,
            product,
            elastic: Pair { y: 1.0 / worst_y, z: 1.0 / worst_z },
            plastic: Pair { y: plastic(&upward, area), z: plastic(&sideways, area) },
            shear_area,
        }
    }
}

/// Mean half-width of a circle between two heights.
fn mean_chord(radius: f64, low: f64, high: f64) -> f64 {
    let part = |height: f64| {
        let height = height.min(radius);
        let chord = (radius * radius - height * height).max(0.0).sqrt();
        (height * chord + radius * radius * (height / radius).asin()) / 2.0
    };
    (part(high) - part(low)) / (high - low)
}

/// Strips of one width each, from the lowest to the highest.
fn strips(patches: &[Patch]) -> Vec<Strip> {
    let mut ends: Vec<f64> = patches.iter().flat_map(|patch| [patch.low, patch.high]).collect();
    ends.sort_by(f64::total_cmp);
    ends.dedup();
    let between = ends.iter().zip(ends.iter().skip(1)).map(|(low, high)| {
        let middle = (low + high) / 2.0;
        let here = patches.iter().filter(|patch| patch.low < middle && middle < patch.high);
        let width = here.map(|patch| patch.sign * patch.width()).sum::<f64>();
        Strip { low: *low, high: *high, width }
    });
    between.collect()
}

/// First moment of both halves about the line that halves the area.
fn plastic(strips: &[Strip], area: f64) -> f64 {
    let (mut below, mut axis) = (0.0, f64::NAN);
    for strip in strips {
        let part = strip.width * (strip.high - strip.low);
        if below + part >= area / 2.0 {
            axis = if strip.width > 0.0 { strip.low + (area / 2.0 - below) / strip.width } else { strip.low };
            break;
        }
        below += part;
    }
    let moment = |strip: &Strip| {
        let (low, high) = (strip.low - axis, strip.high - axis);
        strip.width * (high * high.abs() - low * low.abs()) / 2.0
    };
    strips.iter().map(moment).sum()
}

/// Force over the peak of `V Q / (I b)` on all cuts across it.
fn shear_area(strips: &[Strip], centroid: f64, second: f64) -> f64 {
    let widest = strips.iter().map(|strip| strip.width).fold(0.0, f64::max);
    let (mut above, mut worst) = (0.0, 0.0_f64);
    for strip in strips.iter().rev() {
        let to = |height: f64| {
            let (high, low) = (strip.high - centroid, height - centroid);
            above + strip.width * (high * high - low * low) / 2.0
        };
        if strip.width > NO_WIDTH * widest {
            let middle = centroid.clamp(strip.low, strip.high);
            for height in [strip.high, middle, strip.low] {
                worst = worst.max(to(height).abs() / strip.width);
            }
        }
        above = to(strip.low);
    }
    second / worst
}

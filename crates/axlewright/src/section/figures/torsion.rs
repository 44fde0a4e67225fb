use core::f64::consts::PI;

/// Resistance to a torque, in coherent SI.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Torsion {
    /// Torque over shear modulus and twist a length.
    pub(in super::super) constant: f64,
    /// Torque over peak shear stress.
    pub(in super::super) modulus: f64,
}

impl Torsion {
    /// Thin walls that are joined in an open section: the sum of `b t^3 / 3`, of length and thickness of each.
    pub(in super::super) fn open(walls: &[(f64, f64)]) -> Torsion {
        let constant: f64 = walls.iter().map(|(length, wall)| length * wall.powi(3) / 3.0).sum();
        let thickest = walls.iter().map(|(_, wall)| *wall).fold(0.0, f64::max);
        Torsion { constant, modulus: constant / thickest }
    }

    /// Solid parts side by side: each takes its share of the torque by its constant.
    pub(in super::super) fn side_by_side(parts: &[Torsion]) -> Torsion {
        let constant: f64 = parts.iter().map(|part| part.constant).sum();
        let modulus =
            parts.iter().map(|part| constant / part.constant * part.modulus).fold(f64::INFINITY, f64::min);
        Torsion { constant, modulus }
    }
}

/// Terms of both series. The next one of the first is below 1e-8 of it, and is nearly left out by the tail that closes it.
const TERMS: u32 = 40;

/// A solid rectangle: series of Saint-Venant.
pub(in super::super) fn solid_rectangle(one: f64, other: f64) -> Torsion {
    let (long, short) = (one.max(other), one.min(other));
    let ratio = long / short;
    let (mut lost, mut at_middle) = (0.0, 0.0);
    for term in 0..TERMS {
        let n = f64::from(2 * term + 1);
        let reach = n * PI * ratio / 2.0;
        // Beyond all doubt 1: the hyperbolic functions are spared their overflow.
        let (tangent, cosine) =
            if reach > 40.0 { (1.0, f64::INFINITY) } else { (reach.tanh(), reach.cosh()) };
        lost += tangent / n.powi(5);
        at_middle += 1.0 / (n * n * cosine);
    }
    let constant = long * short.powi(3) * (1.0 / 3.0 - 64.0 / PI.powi(5) * lost / ratio);
    let peak = short * (1.0 - 8.0 / (PI * PI) * at_middle);
    Torsion { constant, modulus: constant / peak }
}

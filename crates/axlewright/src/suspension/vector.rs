//! Three numbers with the products of space.

use core::ops::{Add, Mul, Neg, Sub};

#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Vector {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) z: f64,
}

pub(super) const fn vector(x: f64, y: f64, z: f64) -> Vector {
    Vector { x, y, z }
}

impl Vector {
    pub(super) fn dot(self, other: Vector) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }
    pub(super) fn cross(self, other: Vector) -> Vector {
        vector(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }
    pub(super) fn square(self) -> f64 {
        self.dot(self)
    }
    pub(super) fn norm(self) -> f64 {
        self.square().sqrt()
    }
    pub(super) fn unit(self) -> Vector {
        self * (1.0 / self.norm())
    }
    /// Angle to another one, well-defined to the last digit near zero.
    pub(super) fn angle(self, other: Vector) -> f64 {
        self.cross(other).norm().atan2(self.dot(other))
    }
}

impl Add for Vector {
    type Output = Vector;
    fn add(self, other: Vector) -> Vector {
        vector(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}
impl Sub for Vector {
    type Output = Vector;
    fn sub(self, other: Vector) -> Vector {
        vector(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}
impl Neg for Vector {
    type Output = Vector;
    fn neg(self) -> Vector {
        self * -1.0
    }
}
impl Mul<f64> for Vector {
    type Output = Vector;
    fn mul(self, by: f64) -> Vector {
        vector(self.x * by, self.y * by, self.z * by)
    }
}

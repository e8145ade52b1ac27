//! Vectors and rotations that know their axes.
//!
//! - [`Earth`]: north-east-down, north being magnetic north.
//! - [`Body`]: the airframe, x forward, y right, z down. The bowl is fixed to it, so its axes
//!   are these.
//! - [`Card`]: x through the card's north mark (the magnets' axis), z along the card's own
//!   axis, down.
//!
//! Adding vectors of different axes does not compile:
//!
//! ```compile_fail
//! use compass::frame::{Body, Card, Vector};
//! let sum = Vector::<Body>::new(1.0, 0.0, 0.0) + Vector::<Card>::new(1.0, 0.0, 0.0);
//! ```

use crate::maths;
use glam::{DQuat, DVec3};
use std::marker::PhantomData;
use std::ops::{Add, Mul, Neg, Sub};

/// North-east-down axes, x toward magnetic north.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Earth {}

/// Airframe and bowl axes: x forward, y right, z down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Body {}

/// Card axes: x through the north mark, z along the card's axis, down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Card {}

/// A vector in the axes `F`; its unit is that of the quantity it holds (SI).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vector<F> {
    /// Components along the axes.
    pub xyz: DVec3,
    axes: PhantomData<F>,
}

impl<F: Copy> Vector<F> {
    /// From components along x, y and z.
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self::from_xyz(DVec3::new(x, y, z))
    }

    /// From components already in these axes.
    pub const fn from_xyz(xyz: DVec3) -> Self {
        Self {
            xyz,
            axes: PhantomData,
        }
    }

    /// The zero vector.
    pub const fn zero() -> Self {
        Self::from_xyz(DVec3::ZERO)
    }

    /// The unit vector along z.
    pub const fn z_axis() -> Self {
        Self::from_xyz(DVec3::Z)
    }

    /// The unit vector along x.
    pub const fn x_axis() -> Self {
        Self::from_xyz(DVec3::X)
    }

    /// Component along x.
    pub fn x(self) -> f64 {
        self.xyz.x
    }

    /// Component along y.
    pub fn y(self) -> f64 {
        self.xyz.y
    }

    /// Component along z.
    pub fn z(self) -> f64 {
        self.xyz.z
    }

    /// Scalar product with a vector of the same axes.
    pub fn dot(self, other: Self) -> f64 {
        self.xyz.dot(other.xyz)
    }

    /// Vector product with a vector of the same axes.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self::from_xyz(self.xyz.cross(other.xyz))
    }

    /// Length, never negative.
    pub fn length(self) -> f64 {
        self.xyz.length()
    }

    /// The angle to another vector of the same axes, in [0, π] radians; zero if either is zero.
    pub fn angle_to(self, other: Self) -> f64 {
        maths::atan2(self.cross(other).length(), self.dot(other))
    }
}

impl<F: Copy> Add for Vector<F> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::from_xyz(self.xyz + other.xyz)
    }
}

impl<F: Copy> Sub for Vector<F> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::from_xyz(self.xyz - other.xyz)
    }
}

impl<F: Copy> Neg for Vector<F> {
    type Output = Self;
    fn neg(self) -> Self {
        Self::from_xyz(-self.xyz)
    }
}

impl<F: Copy> Mul<f64> for Vector<F> {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::from_xyz(self.xyz * factor)
    }
}

/// The rotation that takes a vector's components in the axes `A` to those in the axes `B`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rotation<A, B> {
    /// The unit quaternion of the rotation.
    pub quaternion: DQuat,
    axes: PhantomData<(A, B)>,
}

impl<A: Copy, B: Copy> Rotation<A, B> {
    /// From a unit quaternion.
    pub const fn from_quaternion(quaternion: DQuat) -> Self {
        Self {
            quaternion,
            axes: PhantomData,
        }
    }

    /// The same vector in the axes `B`.
    pub fn apply(self, vector: Vector<A>) -> Vector<B> {
        Vector::from_xyz(self.quaternion.mul_vec3(vector.xyz))
    }

    /// The rotation back, from `B` to `A`.
    #[must_use]
    pub fn inverse(self) -> Rotation<B, A> {
        Rotation::from_quaternion(self.quaternion.conjugate())
    }

    /// This rotation, then the next.
    #[must_use]
    pub fn then<C: Copy>(self, next: Rotation<B, C>) -> Rotation<A, C> {
        Rotation::from_quaternion(next.quaternion.mul_quat(self.quaternion))
    }
}

impl Rotation<Body, Earth> {
    /// The airframe's attitude from heading, pitch and bank in radians, turned in that order.
    pub fn from_attitude(heading: f64, pitch: f64, bank: f64) -> Self {
        let (sh, ch) = maths::sin_cos(heading / 2.0);
        let (sp, cp) = maths::sin_cos(pitch / 2.0);
        let (sb, cb) = maths::sin_cos(bank / 2.0);
        let yaw = DQuat::from_xyzw(0.0, 0.0, sh, ch);
        let nose = DQuat::from_xyzw(0.0, sp, 0.0, cp);
        let roll = DQuat::from_xyzw(sb, 0.0, 0.0, cb);
        Self::from_quaternion(yaw.mul_quat(nose).mul_quat(roll))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn attitude_turns_right_noses_up_and_banks_right() {
        let east = Rotation::from_attitude(FRAC_PI_2, 0.0, 0.0).apply(Vector::x_axis());
        assert!((east.xyz - DVec3::Y).length() < 1e-15);
        let up = Rotation::from_attitude(0.0, FRAC_PI_2, 0.0).apply(Vector::x_axis());
        assert!((up.xyz + DVec3::Z).length() < 1e-15);
        let right_wing = Rotation::from_attitude(0.0, 0.0, 0.3).apply(Vector::new(0.0, 1.0, 0.0));
        assert!(right_wing.z() > 0.0, "the right wing goes down");
    }

    #[test]
    fn there_and_back() {
        let attitude = Rotation::from_attitude(1.0, 0.2, -0.7);
        let v = Vector::new(1.0, -2.0, 3.0);
        let back = attitude.inverse().apply(attitude.apply(v));
        assert!((back - v).length() < 1e-14);
    }
}

//! A round picture: places around its middle, in radii.

use compass::maths;
use kurbo::{Affine, Point};

/// The middle of a round picture and its radius.
pub(crate) struct Round {
    /// The middle.
    pub(crate) middle: Point,
    /// The radius of its ring.
    pub(crate) radius: f64,
}

impl Round {
    /// The point in a direction (radians clockwise from up), a share of the radius out.
    pub(crate) fn at(&self, direction: f64, share: f64) -> Point {
        let (s, c) = maths::sin_cos(direction);
        self.middle + (share * self.radius * s, -share * self.radius * c)
    }

    /// From a plane with x to the right of a direction and y back along it, in radii, origin in
    /// the middle.
    pub(crate) fn along(&self, direction: f64) -> Affine {
        let (s, c) = maths::sin_cos(direction);
        let r = self.radius;
        Affine::new([r * c, r * s, -r * s, r * c, self.middle.x, self.middle.y])
    }

    /// The width of a line. As on the card face: small pictures keep stronger lines. The ring of a
    /// rose 420 wide has a radius of 168.
    pub(crate) fn line(&self, width: f64) -> f64 {
        let unit = self.radius / 168.0;
        width * (0.4 + 0.6 * unit).min(2.0 * unit)
    }
}

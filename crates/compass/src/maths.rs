//! The only door to the transcendental functions.
//!
//! All of them are the software implementations of the `libm` crate, so that the same inputs
//! give the same bits natively and in WebAssembly. Square roots, remainders and roundings are
//! exact by IEEE 754 on every platform and need no door.

/// Sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// Cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Sine and cosine of an angle in radians, in that order.
pub fn sin_cos(x: f64) -> (f64, f64) {
    libm::sincos(x)
}

/// Tangent of an angle in radians.
pub fn tan(x: f64) -> f64 {
    libm::tan(x)
}

/// Arc sine in radians; an argument beyond ±1 is taken as ±1.
pub fn asin(x: f64) -> f64 {
    libm::asin(x.clamp(-1.0, 1.0))
}

/// Arc cosine in radians; an argument beyond ±1 is taken as ±1.
pub fn acos(x: f64) -> f64 {
    libm::acos(x.clamp(-1.0, 1.0))
}

/// Arc tangent in radians, in (−π/2, π/2).
pub fn atan(x: f64) -> f64 {
    libm::atan(x)
}

/// Angle of the point (x, y) in radians, in [−π, π]; zero at the origin.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// e raised to `x`.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Cube root.
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}

/// `x` raised to `y`.
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

//! Angles in radians, folded into one turn.

use std::f64::consts::{PI, TAU};

/// Folds any finite angle into [0, 2π).
pub fn full_turn(angle: f64) -> f64 {
    let folded = angle.rem_euclid(TAU);
    // A tiny negative angle rounds up to 2π itself.
    if folded < TAU { folded } else { 0.0 }
}

/// Folds any finite angle into (−π, π].
pub fn half_turn(angle: f64) -> f64 {
    let folded = full_turn(angle);
    if folded > PI { folded - TAU } else { folded }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn folds_to_the_stated_intervals() {
        assert_eq!(full_turn(-1e-20), 0.0);
        assert_eq!(full_turn(TAU), 0.0);
        assert_eq!(half_turn(-PI), PI);
        assert_eq!(half_turn(1.5 * PI), -0.5 * PI);
    }
}

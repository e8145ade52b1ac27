//! Rough air: gusts shaped as Dryden's, and what they do to a light aircraft.
//!
//! The gust velocities have the Dryden spectra of MIL-F-8785C (low-altitude form) at a height of
//! 1000 ft, where the form gives one scale length of 1000 ft and one strength for all three axes.
//! White numbers come from outside, so that the physics holds no generator: the same numbers
//! give the same air.

use crate::frame::{Body, Vector};
use crate::maths;
use crate::unit::{FOOT, KNOT};

/// How many white numbers one step takes: along, across, up and down, and in roll.
pub const NUMBERS: usize = 4;

/// Where the white numbers come from. `step` counts from the start of the flight; the numbers
/// have mean 0 and variance 1 and must be the same whenever the same step is asked for.
pub trait GustNumbers {
    /// The numbers of one step.
    fn at(&self, step: u64) -> [f64; NUMBERS];
}

/// No gusts at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StillAir;

impl GustNumbers for StillAir {
    fn at(&self, _step: u64) -> [f64; NUMBERS] {
        [0.0; NUMBERS]
    }
}

/// How rough the air is. The strength of the vertical gusts is a tenth of the wind at 20 ft,
/// which is 15, 30 and 45 kt for light, moderate and severe turbulence (MIL-F-8785C, 3.7.3.4).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum RoughAir {
    /// No gusts.
    #[default]
    Still,
    /// Root mean square gust 1.5 kt.
    Light,
    /// Root mean square gust 3 kt.
    Moderate,
    /// Root mean square gust 4.5 kt.
    Severe,
}

impl RoughAir {
    /// Root-mean-square gust velocity on each axis, m/s.
    pub const fn strength(self) -> f64 {
        match self {
            Self::Still => 0.0,
            Self::Light => 1.5 * KNOT,
            Self::Moderate => 3.0 * KNOT,
            Self::Severe => 4.5 * KNOT,
        }
    }
}

/// Scale length of the gusts on all axes, m: MIL-F-8785C, low-altitude form, at 1000 ft.
pub const SCALE_LENGTH: f64 = 1000.0 * FOOT;

/// Wing span, m; chosen: a light four-seater.
const SPAN: f64 = 11.0;

/// Acceleration per gust velocity and airspeed, 1/m, along the body axes. Chosen for a light
/// aircraft (wing loading 700 N/m², air of 1.2 kg/m³): ρ g / (2 W/S) times the slopes of drag
/// (twice a coefficient of 0.06), side force (0.4 per radian) and lift (5 per radian).
const RESPONSE: [f64; 3] = [0.0010, 0.0034, 0.042];

/// What the air does to the aircraft during one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gust {
    /// Acceleration of the airframe, m/s².
    pub acceleration: Vector<Body>,
    /// Rolling velocity of the air, rad/s, right positive.
    pub roll_rate: f64,
}

impl Gust {
    /// No gust.
    pub const NONE: Self = Self {
        acceleration: Vector::zero(),
        roll_rate: 0.0,
    };
}

/// The states of the shaping filters; each has variance 1 once the air has been flown in for a
/// few scale lengths.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct GustState {
    along: f64,
    across: [f64; 2],
    vertical: [f64; 2],
    roll: f64,
}

impl GustState {
    /// Shapes one step's white numbers into the gust that holds during `duration` seconds at
    /// `airspeed` m/s.
    pub fn advance(
        &mut self,
        air: RoughAir,
        airspeed: f64,
        duration: f64,
        numbers: [f64; NUMBERS],
    ) -> Gust {
        if air == RoughAir::Still {
            *self = Self::default();
            return Gust::NONE;
        }
        let keep = maths::exp(-airspeed * duration / SCALE_LENGTH);
        let fresh = (1.0 - keep * keep).sqrt();
        self.along = keep * self.along + fresh * numbers[0];
        let across = shape_across(&mut self.across, keep, fresh, numbers[1]);
        let vertical = shape_across(&mut self.vertical, keep, fresh, numbers[2]);
        // Roll gusts have a scale of 4 b/π instead of L.
        let keep = maths::exp(-airspeed * duration * std::f64::consts::PI / (4.0 * SPAN));
        self.roll = keep * self.roll + (1.0 - keep * keep).sqrt() * numbers[3];

        let strength = air.strength();
        let push = strength * airspeed;
        Gust {
            acceleration: Vector::new(
                RESPONSE[0] * push * self.along,
                RESPONSE[1] * push * across,
                RESPONSE[2] * push * vertical,
            ),
            roll_rate: strength * roll_per_strength() * self.roll,
        }
    }
}

/// The Dryden form across the path, (1 + √3 T s)/(1 + T s)² with T = L/V, as two first-order
/// stages in a row: √3 of the first and (1 − √3) of the second. Their sum has variance 2.
fn shape_across(stages: &mut [f64; 2], keep: f64, fresh: f64, number: f64) -> f64 {
    let root3 = 3.0_f64.sqrt();
    let before = stages[0];
    stages[0] = keep * before + fresh * number;
    stages[1] = keep * stages[1] + (1.0 - keep) * 0.5 * (before + stages[0]);
    (root3 * stages[0] + (1.0 - root3) * stages[1]) / 2.0_f64.sqrt()
}

/// Root-mean-square roll gust (rad/s) per m/s of gust strength: the integral of MIL-F-8785C's
/// roll spectrum, σ² = σ_w² · 0.8 (π L / 4 b)^⅓ · π² / (8 b L).
fn roll_per_strength() -> f64 {
    let pi = std::f64::consts::PI;
    let form = 0.8 * maths::cbrt(pi * SCALE_LENGTH / (4.0 * SPAN));
    (form * pi * pi / (8.0 * SPAN * SCALE_LENGTH)).sqrt()
}

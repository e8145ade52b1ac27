//! The properties of a float that can be set, with their defaults and presets.

use crate::range::{OutOfRange, Range};
use crate::unit::{NANOTESLA, Unit};

/// Undamped yaw period that can be set.
pub const YAW_PERIOD: Range = Range::new("yaw period", Unit::Second, 0.5, 120.0);
/// Damping ratio of yaw or tilt that can be set.
pub const DAMPING_RATIO: Range = Range::new("damping ratio", Unit::Number, 0.0, 10.0);
/// Reference intensities that can be set.
pub const REFERENCE: Range = Range::new("reference intensity", Unit::Nanotesla, 1000.0, 100_000.0);
/// Tilt in the reference vertical intensity that can be set; below the stop.
pub const LEVEL_TILT: Range = Range::new("tilt in level flight", Unit::Degree, 0.1, 15.0);
/// Transverse over polar moment of inertia that can be set: no rigid body has less than half.
pub const INERTIA_RATIO: Range = Range::new("inertia ratio", Unit::Number, 0.5, 10.0);
/// Time in which the liquid takes up the bowl's turning that can be set; 0: at once.
pub const LIQUID_SPIN_UP: Range = Range::new("liquid's spin-up time", Unit::Second, 0.0, 3600.0);
/// Vertical intensity for which the balance weight can be set; 0: no weight.
pub const BALANCE: Range = Range::new(
    "balanced vertical intensity",
    Unit::Nanotesla,
    -100_000.0,
    100_000.0,
);
/// Friction angle that can be set; 0: no friction.
pub const FRICTION_ANGLE: Range = Range::new("friction angle", Unit::Degree, 0.0, 10.0);
/// How much of the friction vibration can take away.
pub const VIBRATION: Range = Range::new("vibration", Unit::Number, 0.0, 1.0);

/// A float as it is described: SI and radians.
///
/// No published figures for an aircraft's float were found, so every default is chosen, save
/// where it says otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FloatSettings {
    /// Undamped yaw period T_y in the reference horizontal intensity, s.
    pub yaw_period: f64,
    /// Damping ratio of yaw in the reference horizontal intensity.
    pub yaw_damping_ratio: f64,
    /// Reference horizontal intensity, T.
    pub reference_horizontal: f64,
    /// Reference vertical intensity, T.
    pub reference_vertical: f64,
    /// Tilt τ that the reference vertical intensity alone gives an unbalanced card, rad.
    pub level_tilt: f64,
    /// Transverse over polar moment of inertia.
    pub inertia_ratio: f64,
    /// Damping ratio of tilt.
    pub tilt_damping_ratio: f64,
    /// Time in which the liquid takes up the bowl's turning about its axis, s; 0: at once.
    pub liquid_spin_up: f64,
    /// Vertical intensity in which the balance weight levels the card, T, down positive;
    /// 0: no weight.
    pub balance_vertical: f64,
    /// The angle off north, in the reference horizontal intensity, at which the pivot's friction
    /// just holds the card, rad; 0: no friction.
    pub friction_angle: f64,
    /// How much of that friction vibration takes away, 0 to 1.
    pub vibration: f64,
}

impl Default for FloatSettings {
    /// The standard float. The tilt agrees with the 2° to 3° of residual dip at temperate
    /// latitudes that training texts give (common practice); the rest is chosen.
    fn default() -> Self {
        Self {
            yaw_period: 6.0,
            yaw_damping_ratio: 0.7,
            reference_horizontal: 20_000.0 * NANOTESLA,
            reference_vertical: 40_000.0 * NANOTESLA,
            level_tilt: 3.0_f64.to_radians(),
            inertia_ratio: 0.6,
            tilt_damping_ratio: 0.7,
            liquid_spin_up: 20.0,
            balance_vertical: 0.0,
            friction_angle: 0.0,
            vibration: 0.0,
        }
    }
}

impl FloatSettings {
    /// A brisk float: a shorter period, well damped. Chosen.
    pub fn brisk() -> Self {
        Self {
            yaw_period: 3.5,
            yaw_damping_ratio: 0.8,
            ..Self::default()
        }
    }

    /// A sluggish float: a long period, heavily damped, in a liquid that is slow to turn. Chosen.
    pub fn sluggish() -> Self {
        Self {
            yaw_period: 10.0,
            yaw_damping_ratio: 1.1,
            liquid_spin_up: 30.0,
            ..Self::default()
        }
    }

    /// A lightly damped float, which swings several times before it rests. Chosen.
    pub fn lightly_damped() -> Self {
        Self {
            yaw_damping_ratio: 0.2,
            tilt_damping_ratio: 0.3,
            ..Self::default()
        }
    }

    /// These settings with a pivot that holds the card within 0.3° of where it rests until
    /// vibration frees it. The angle is chosen, twice ISO 25862's bound for a marine compass
    /// (3/H degrees, H in microtesla: 0.15° in the reference field).
    #[must_use]
    pub fn with_sticky_pivot(self) -> Self {
        Self {
            friction_angle: 0.3_f64.to_radians(),
            ..self
        }
    }

    /// The same settings, each checked against its range.
    ///
    /// # Errors
    /// The first value beyond its range.
    pub fn checked(self) -> Result<Self, OutOfRange> {
        for (range, value) in [
            (YAW_PERIOD, self.yaw_period),
            (DAMPING_RATIO, self.yaw_damping_ratio),
            (REFERENCE, self.reference_horizontal),
            (REFERENCE, self.reference_vertical),
            (LEVEL_TILT, self.level_tilt),
            (INERTIA_RATIO, self.inertia_ratio),
            (DAMPING_RATIO, self.tilt_damping_ratio),
            (LIQUID_SPIN_UP, self.liquid_spin_up),
            (BALANCE, self.balance_vertical),
            (FRICTION_ANGLE, self.friction_angle),
            (VIBRATION, self.vibration),
        ] {
            range.check(value)?;
        }
        Ok(self)
    }
}

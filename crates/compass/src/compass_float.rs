//! The pendulous float: card, magnets and float on a pivot in a bowl of liquid.
//!
//! With all torques divided by the polar moment of inertia, and I = diag(r, r, 1):
//!
//! ```text
//! I ω̇ + ω × I ω = M × B + S × g_app − C (ω − ω_liquid) + stop + friction
//! ```
//!
//! ω in card axes; M the magnets, S the first moment (weight less displaced liquid), C the drag.

use crate::deviation::AircraftIron;
use crate::field::MagneticField;
use crate::float_settings::FloatSettings;
use crate::frame::{Body, Card, Earth, Rotation, Vector};
use crate::maths;
use crate::motion::Motion;
use crate::range::OutOfRange;
use crate::reading::Torques;
use crate::unit::STANDARD_GRAVITY;
use glam::{DQuat, DVec3};
use std::f64::consts::TAU;

/// The greatest tilt between card and bowl, radians: 18° (FAA-H-8083-15B, ch. on the magnetic
/// compass, which gives about 18° of bank as the limit before the card sticks).
pub const TILT_STOP: f64 = 18.0 * std::f64::consts::PI / 180.0;

/// A float with the constants that its settings come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompassFloat {
    settings: FloatSettings,
    /// Magnetic moment over polar inertia, m = (2π/T_y)² / H_ref, rad/s² per tesla.
    magnets: f64,
    /// First moment over polar inertia, S = (−s_b, 0, s_d), 1/m.
    moment: Vector<Card>,
    /// Drag about the transverse axes and the polar axis, 1/s.
    drag: [f64; 2],
    /// The greatest torque of friction, rad/s².
    friction: f64,
}

/// The float's state.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FloatState {
    /// The card's attitude.
    pub attitude: Rotation<Card, Earth>,
    /// The card's angular velocity, rad/s.
    pub rate: Vector<Card>,
    /// The liquid's rate of turn about the bowl's axis, rad/s, clockwise from above positive.
    pub liquid_spin: f64,
    /// The torque that friction exerted over the last step, rad/s².
    pub friction: f64,
    /// Whether the card touches the bowl's stop.
    pub at_stop: bool,
}

/// What acts on the float at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings {
    field: MagneticField,
    iron_field: Vector<Earth>,
    apparent_gravity: Vector<Earth>,
    bowl: Rotation<Body, Earth>,
    bowl_rate: Vector<Body>,
}

impl Surroundings {
    /// The surroundings of a float in an aircraft with `iron`, moving so in a field.
    pub fn of(motion: &Motion, field: &MagneticField, iron: &AircraftIron) -> Self {
        let iron_field = if iron.is_none() {
            Vector::zero()
        } else {
            let earth = field.horizontal_part() + field.vertical_part();
            let felt = motion.attitude.inverse().apply(earth);
            motion.attitude.apply(iron.added_to(felt))
        };
        Self {
            field: *field,
            iron_field,
            apparent_gravity: motion.apparent_gravity(),
            bowl: motion.attitude,
            bowl_rate: motion.angular_velocity,
        }
    }

    fn total_field(&self) -> Vector<Earth> {
        self.field.horizontal_part() + self.field.vertical_part() + self.iron_field
    }

    /// The liquid's angular velocity: the bowl's own, save about the bowl's axis.
    fn liquid_rate(&self, spin: f64) -> Vector<Body> {
        let bowl = self.bowl_rate;
        Vector::new(bowl.x(), bowl.y(), spin)
    }
}

/// Surroundings at the start, the middle and the end of one step.
pub type StepSurroundings = [Surroundings; 3];

type Slope = (DQuat, DVec3);

impl CompassFloat {
    /// A float by its settings.
    ///
    /// # Errors
    /// A setting beyond its range.
    pub fn new(settings: FloatSettings) -> Result<Self, OutOfRange> {
        let s = settings.checked()?;
        let natural = TAU / s.yaw_period;
        let magnets = natural * natural / s.reference_horizontal;
        let pendulous =
            magnets * s.reference_vertical / (STANDARD_GRAVITY * maths::tan(s.level_tilt));
        let balance = magnets * s.balance_vertical / STANDARD_GRAVITY;
        let transverse_drag =
            2.0 * s.tilt_damping_ratio * (pendulous * STANDARD_GRAVITY * s.inertia_ratio).sqrt();
        Ok(Self {
            settings,
            magnets,
            moment: Vector::new(-balance, 0.0, pendulous),
            drag: [transverse_drag, 2.0 * s.yaw_damping_ratio * natural],
            friction: magnets
                * s.reference_horizontal
                * maths::sin(s.friction_angle)
                * (1.0 - s.vibration),
        })
    }

    /// The settings it was made by.
    pub fn settings(&self) -> &FloatSettings {
        &self.settings
    }

    /// The same float on a pivot without friction.
    #[must_use]
    pub fn without_friction(self) -> Self {
        Self {
            friction: 0.0,
            ..self
        }
    }

    /// The fastest rate, 1/s, at which anything about this float changes by itself in a field of
    /// `field` tesla and an apparent gravity of `gravity` m/s².
    pub fn fastest(&self, field: f64, gravity: f64) -> f64 {
        let r = self.settings.inertia_ratio;
        let stiffness = self.moment.length() * gravity + self.magnets * field;
        let [transverse, polar] = self.drag;
        (stiffness / r.min(1.0))
            .sqrt()
            .max(transverse / r)
            .max(polar)
    }

    /// A card at rest in its bowl, level with it, its north mark toward magnetic north.
    pub fn at_rest(motion: &Motion) -> FloatState {
        let north = DQuat::from_rotation_z(-motion.heading.radians());
        let card: Rotation<Card, Body> = Rotation::from_quaternion(north);
        FloatState {
            attitude: card.then(motion.attitude),
            rate: Vector::zero(),
            liquid_spin: motion.angular_velocity.z(),
            friction: 0.0,
            at_stop: false,
        }
    }

    /// One step of `duration` seconds: Runge-Kutta of fourth order on the smooth part, then the
    /// pivot's friction and the stop.
    pub fn advance(&self, state: &mut FloatState, around: &StepSurroundings, duration: f64) {
        let [start, middle, end] = around;
        let half = 0.5 * duration;
        let kept = maths::exp(-half / self.settings.liquid_spin_up);
        let spun = |from: f64, before, after| self.spun_up(from, [before, after], half, kept);
        let first = spun(state.liquid_spin, start, middle);
        let spin = [state.liquid_spin, first, spun(first, middle, end)];

        let q = state.attitude.quaternion;
        let w = state.rate.xyz;
        let rub = state.friction;
        let k1 = self.slope(q, w, start, spin[0], rub);
        let k2 = self.slope(q + k1.0 * half, w + k1.1 * half, middle, spin[1], rub);
        let k3 = self.slope(q + k2.0 * half, w + k2.1 * half, middle, spin[1], rub);
        let k4 = self.slope(q + k3.0 * duration, w + k3.1 * duration, end, spin[2], rub);
        let sixth = duration / 6.0;
        let turned = q + (k1.0 + (k2.0 + k3.0) * 2.0 + k4.0) * sixth;
        state.attitude = Rotation::from_quaternion(turned.normalize());
        state.rate = Vector::from_xyz(w + (k1.1 + (k2.1 + k3.1) * 2.0 + k4.1) * sixth);
        state.liquid_spin = spin[2];

        if self.friction > 0.0 {
            self.rub(state, end, duration);
        }
        hold_at_stop(state, end);
    }

    /// The parts of the torque about the card's axis, now.
    pub fn torques(&self, state: &FloatState, around: &Surroundings) -> Torques {
        let into_card = state.attitude.inverse();
        let pull = |field: Vector<Earth>| self.magnets * into_card.apply(field).y();
        let gravity = into_card.apply(around.apparent_gravity);
        let liquid = self.liquid_in_card(state, around);
        Torques {
            horizontal_field: pull(around.field.horizontal_part()),
            vertical_field: pull(around.field.vertical_part()),
            iron: pull(around.iron_field),
            balance_weight: self.moment.cross(gravity).z(),
            liquid_drag: -self.drag[1] * (state.rate.z() - liquid.z()),
            friction: state.friction,
        }
    }

    /// Energy over polar inertia, rad²/s²: of turning, of the magnets in the field and of the
    /// float in apparent gravity. It cannot grow while the field and the pivot stand still.
    pub fn energy(&self, state: &FloatState, around: &Surroundings) -> f64 {
        let w = state.rate.xyz;
        let r = self.settings.inertia_ratio;
        let into_card = state.attitude.inverse();
        let field = into_card.apply(around.total_field());
        let gravity = into_card.apply(around.apparent_gravity);
        0.5 * (r * (w.x * w.x + w.y * w.y) + w.z * w.z)
            - self.magnets * field.x()
            - self.moment.dot(gravity)
    }

    fn liquid_in_card(&self, state: &FloatState, around: &Surroundings) -> Vector<Card> {
        let liquid = around.liquid_rate(state.liquid_spin);
        state.attitude.inverse().apply(around.bowl.apply(liquid))
    }

    /// Time derivatives of attitude and rate: the equation of motion.
    fn slope(&self, q: DQuat, w: DVec3, around: &Surroundings, spin: f64, rub: f64) -> Slope {
        let back = q.conjugate();
        let field = back.mul_vec3(around.total_field().xyz);
        let gravity = back.mul_vec3(around.apparent_gravity.xyz);
        let liquid = back.mul_vec3(around.bowl.apply(around.liquid_rate(spin)).xyz);
        let [transverse, polar] = self.drag;
        let r = self.settings.inertia_ratio;

        let magnetic = DVec3::new(0.0, -self.magnets * field.z, self.magnets * field.y);
        let pendulous = self.moment.xyz.cross(gravity);
        let slip = w - liquid;
        let drag = DVec3::new(transverse * slip.x, transverse * slip.y, polar * slip.z);
        let gyroscopic = w.cross(DVec3::new(r * w.x, r * w.y, w.z));
        let torque = magnetic + pendulous - drag - gyroscopic;
        (
            q * DQuat::from_xyzw(0.5 * w.x, 0.5 * w.y, 0.5 * w.z, 0.0),
            DVec3::new(torque.x / r, torque.y / r, torque.z + rub),
        )
    }

    /// The liquid's spin after `duration`: σ̇ = (u − σ)/T solved exactly for a bowl rate u that
    /// changes evenly, so that no T is too short for the step. `kept` is e^(−duration/T).
    fn spun_up(
        &self,
        spin: f64,
        [before, after]: [&Surroundings; 2],
        duration: f64,
        kept: f64,
    ) -> f64 {
        let time = self.settings.liquid_spin_up;
        let (from, to) = (before.bowl_rate.z(), after.bowl_rate.z());
        if time == 0.0 {
            return to;
        }
        let behind = (to - from) / duration * time;
        to - behind + (spin - from + behind) * kept
    }

    /// Coulomb friction about the card's axis: over the step it takes away as much of the card's
    /// turning against the pivot as its greatest torque can, and never more.
    fn rub(&self, state: &mut FloatState, around: &Surroundings, duration: f64) {
        let bowl = state
            .attitude
            .inverse()
            .apply(around.bowl.apply(around.bowl_rate));
        let against = state.rate.z() - bowl.z();
        let torque = (state.friction - against / duration).clamp(-self.friction, self.friction);
        let extra = torque - state.friction;
        state.friction = torque;
        state.rate.xyz.z += extra * duration;
        let turned = DQuat::from_rotation_z(0.5 * extra * duration * duration);
        state.attitude =
            Rotation::from_quaternion((state.attitude.quaternion * turned).normalize());
    }
}

/// Keeps the card within the bowl's limit: an inelastic contact, on one side only. It takes the
/// turning that would carry the card further over and gives none back.
fn hold_at_stop(state: &mut FloatState, around: &Surroundings) {
    let into_card = state.attitude.inverse();
    let bowl_axis = into_card.apply(around.bowl.apply(Vector::z_axis()));
    let sine = DVec3::new(-bowl_axis.y(), bowl_axis.x(), 0.0);
    let tilt = maths::atan2(sine.length(), bowl_axis.z());
    state.at_stop = tilt >= TILT_STOP;
    if !state.at_stop {
        return;
    }
    // Turning about this axis brings the card's axis to the bowl's. A card upside down has none
    // of its own: any will do.
    let upright = sine.try_normalize().unwrap_or(DVec3::X);
    let back = DQuat::from_axis_angle(upright, tilt - TILT_STOP);
    let bowl_rate = into_card.apply(around.bowl.apply(around.bowl_rate)).xyz;
    let righting = (state.rate.xyz - bowl_rate).dot(upright);
    state.rate.xyz -= upright * righting.min(0.0);
    state.attitude = Rotation::from_quaternion((state.attitude.quaternion * back).normalize());
}

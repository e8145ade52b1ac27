//! Independent routes: the same results by other means.
//!
//! - The equations of motion, written a second time from their statement with direction cosines
//!   in place of quaternions, and integrated by a general library (Dormand and Prince's method of
//!   eighth order).
//! - The rotation alone, against closed forms of the free top and the pendulum, and against a
//!   general rigid-body engine.
//! - The simulated float, slowed until it is nearly at rest, against the closed forms of steady
//!   flight; and those against their general form.
//! - The shaped gusts against the spectra that they are to have.
#![cfg(not(target_family = "wasm"))]

use checks::{Course, apart, field, fly_on, largest, situation};
use compass::{
    compass_float::{CompassFloat, FloatState, StepSurroundings, Surroundings},
    deviation::AircraftIron,
    field::MagneticField,
    float_settings::FloatSettings,
    frame::{Card, Rotation, Vector},
    gust::{GustNumbers, GustState, RoughAir, SCALE_LENGTH},
    heading::MagneticHeading,
    maths,
    motion::{Kinematics, Motion, coordinated_rate_of_turn},
    simulation::{STEP, Situation},
    steady,
    unit::{NANOTESLA, STANDARD_GRAVITY},
};
use flights::air::SeededAir;
use glam::{DQuat, DVec3};
use std::f64::consts::{PI, TAU};

mod second_writing {
    //! The model's equations once more, from their statement alone: nothing here calls the
    //! project's own float, aircraft or mathematics.
    #![expect(
        clippy::disallowed_methods,
        reason = "independent of the project's own mathematics"
    )]

    use checks::Course;
    use compass::simulation::Situation;
    use ode_solvers::{Dop853, OutputType, SVector, System};
    use std::f64::consts::PI;

    const G: f64 = 9.80665;
    /// Errors of one step that the library may make, relative and in radians, radians a second
    /// and direction cosines; far below what is compared.
    const RELATIVE: f64 = 1e-11;
    const ABSOLUTE: f64 = 1e-11;
    type Triple = [f64; 3];
    /// Rows of the card's direction cosines (card to north-east-down), the card's angular
    /// velocity in its own axes, the liquid's spin, the heading, and the time since the last half
    /// second: the library takes the time of one stage wrongly (its twelfth abscissa is 0 where
    /// the method's is 1), which does no harm when the time is one of the unknowns.
    type State = SVector<f64, 15>;

    /// The numbers of one flight.
    pub(crate) struct Equations {
        field: Triple,
        hard_iron: Triple,
        soft_iron: [Triple; 3],
        magnets: f64,
        first_moment: Triple,
        drag: Triple,
        inertia: Triple,
        liquid_time: f64,
        speed: f64,
        /// Duration, bank and speed at the end.
        legs: Vec<Triple>,
    }

    /// One row: time, heading, reading and tilt, in seconds and degrees.
    pub(crate) type Row = [f64; 4];

    fn cross(a: Triple, b: Triple) -> Triple {
        [
            a[1] * b[2] - a[2] * b[1],
            a[2] * b[0] - a[0] * b[2],
            a[0] * b[1] - a[1] * b[0],
        ]
    }

    fn dot(a: Triple, b: Triple) -> f64 {
        a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
    }

    fn times(m: &[Triple; 3], v: Triple) -> Triple {
        [dot(m[0], v), dot(m[1], v), dot(m[2], v)]
    }

    fn transposed_times(m: &[Triple; 3], v: Triple) -> Triple {
        std::array::from_fn(|i| m[0][i] * v[0] + m[1][i] * v[1] + m[2][i] * v[2])
    }

    /// What the aircraft does at a time on a heading.
    struct Airframe {
        /// Body to north-east-down.
        cosines: [Triple; 3],
        turn: f64,
        rate: Triple,
        gravity: Triple,
    }

    impl Equations {
        pub(crate) fn of(
            situation: &Situation,
            hard_iron: Triple,
            soft_iron: [Triple; 3],
            course: &Course,
        ) -> Self {
            let f = &situation.float;
            let natural = 2.0 * PI / f.yaw_period;
            let m = natural * natural / f.reference_horizontal;
            let s_d = m * f.reference_vertical / (G * f.level_tilt.tan());
            let s_b = m * f.balance_vertical / G;
            let c_z = 2.0 * f.yaw_damping_ratio * natural;
            let c_t = 2.0 * f.tilt_damping_ratio * (s_d * G * f.inertia_ratio).sqrt();
            let (mut bank, mut speed) = (0.0, course.speed * 1852.0 / 3600.0);
            let start_speed = speed;
            let legs = course
                .legs
                .iter()
                .map(|leg| {
                    bank = leg.bank.unwrap_or(bank);
                    speed = leg.airspeed.unwrap_or(speed);
                    [leg.duration, bank, speed]
                })
                .collect();
            Self {
                field: [
                    situation.field.horizontal(),
                    0.0,
                    situation.field.vertical(),
                ],
                hard_iron,
                soft_iron,
                magnets: m,
                first_moment: [-s_b, 0.0, s_d],
                drag: [c_t, c_t, c_z],
                inertia: [f.inertia_ratio, f.inertia_ratio, 1.0],
                liquid_time: f.liquid_spin_up,
                speed: start_speed,
                legs,
            }
        }

        /// Bank, its rate, speed, its rate.
        fn eased(&self, time: f64) -> [f64; 4] {
            let (mut begun, mut bank, mut speed) = (0.0, 0.0, self.speed);
            for [lasts, bank_to, speed_to] in &self.legs {
                if time < begun + lasts {
                    let phase = PI * (time - begun).max(0.0) / lasts;
                    let part = (1.0 - phase.cos()) / 2.0;
                    let slope = PI * phase.sin() / (2.0 * lasts);
                    return [
                        bank + (bank_to - bank) * part,
                        (bank_to - bank) * slope,
                        speed + (speed_to - speed) * part,
                        (speed_to - speed) * slope,
                    ];
                }
                begun += lasts;
                (bank, speed) = (*bank_to, *speed_to);
            }
            [bank, 0.0, speed, 0.0]
        }

        fn airframe(&self, time: f64, heading: f64) -> Airframe {
            let [bank, roll, speed, gain] = self.eased(time);
            let turn = G * bank.tan() / speed;
            let (s, c) = heading.sin_cos();
            let (sb, cb) = bank.sin_cos();
            let (forward, right) = ([c, s, 0.0], [-s, c, 0.0]);
            Airframe {
                // The columns are the body's axes: forward; the right wing, down by the bank;
                // and the floor.
                cosines: [[c, -s * cb, s * sb], [s, c * cb, -c * sb], [0.0, sb, cb]],
                turn,
                rate: [roll, turn * sb, turn * cb],
                gravity: std::array::from_fn(|i| {
                    let down = if i == 2 { G } else { 0.0 };
                    down - gain * forward[i] - speed * turn * right[i]
                }),
            }
        }

        /// From rest in level flight, settled for 300 s, along the legs; a row each half second.
        pub(crate) fn rows(&self, heading: f64) -> Vec<Row> {
            let mut y = State::zeros();
            (y[0], y[4], y[8], y[13]) = (1.0, 1.0, 1.0, heading);
            let mut time = -300.0;
            // Legs begin on half seconds, so no integration runs across a change of leg.
            let total: f64 = self.legs.iter().map(|leg| leg[0]).sum();
            let mut rows = Vec::new();
            loop {
                if time >= 0.0 {
                    rows.push(self.row(time, &y));
                }
                if time >= total {
                    return rows;
                }
                y[14] = 0.0;
                let half_second = HalfSecond {
                    equations: self,
                    from: time,
                };
                let mut solver = Dop853::new(half_second, 0.0, 0.5, 0.5, y, RELATIVE, ABSOLUTE);
                solver.set_output(OutputType::Sparse);
                solver.integrate().expect("the solver reaches the end");
                y = *solver.y_out().last().expect("the solver gives its end");
                time += 0.5;
            }
        }

        fn row(&self, time: f64, y: &State) -> Row {
            let airframe = self.airframe(time, y[13]);
            let forward = airframe.cosines.map(|row| row[0]);
            let floor = airframe.cosines.map(|row| row[2]);
            let [x, e, z] = card_axes(y);
            let reading = dot(forward, e).atan2(dot(forward, x));
            let tilt = {
                let sine = cross(z, floor);
                dot(sine, sine).sqrt().atan2(dot(z, floor))
            };
            [
                time,
                y[13].to_degrees().rem_euclid(360.0),
                reading.to_degrees().rem_euclid(360.0),
                tilt.to_degrees(),
            ]
        }
    }

    /// The card's x, y and z axes in north-east-down.
    fn card_axes(y: &State) -> [Triple; 3] {
        std::array::from_fn(|axis| [y[axis], y[3 + axis], y[6 + axis]])
    }

    /// Time counted from the start of each half second, so that it keeps its precision.
    struct HalfSecond<'a> {
        equations: &'a Equations,
        from: f64,
    }

    impl System<f64, State> for HalfSecond<'_> {
        fn system(&self, _time: f64, y: &State, dy: &mut State) {
            let e = self.equations;
            let airframe = e.airframe(self.from + y[14], y[13]);
            let card: [Triple; 3] = [[y[0], y[1], y[2]], [y[3], y[4], y[5]], [y[6], y[7], y[8]]];
            let w = [y[9], y[10], y[11]];

            let felt = transposed_times(&airframe.cosines, e.field);
            let induced = times(&e.soft_iron, felt);
            let felt: Triple = std::array::from_fn(|i| felt[i] + induced[i] + e.hard_iron[i]);
            let b = transposed_times(&card, times(&airframe.cosines, felt));
            let g = transposed_times(&card, airframe.gravity);

            let spin = if e.liquid_time > 0.0 {
                y[12]
            } else {
                airframe.rate[2]
            };
            let liquid = [airframe.rate[0], airframe.rate[1], spin];
            let liquid = transposed_times(&card, times(&airframe.cosines, liquid));

            let magnetic = cross([e.magnets, 0.0, 0.0], b);
            let pendulous = cross(e.first_moment, g);
            let momentum = std::array::from_fn(|i| e.inertia[i] * w[i]);
            let gyroscopic = cross(w, momentum);
            for i in 0..3 {
                let torque =
                    magnetic[i] + pendulous[i] - e.drag[i] * (w[i] - liquid[i]) - gyroscopic[i];
                dy[9 + i] = torque / e.inertia[i];
                // Ṙ = R [ω]×: each row of R turns by row × ω.
                let turned = cross(card[i], w);
                for j in 0..3 {
                    dy[3 * i + j] = turned[j];
                }
            }
            dy[12] = if e.liquid_time > 0.0 {
                (airframe.rate[2] - y[12]) / e.liquid_time
            } else {
                0.0
            };
            dy[13] = airframe.turn;
            dy[14] = 1.0;
        }
    }
}

/// No iron, as the second writing takes it.
const NO_IRON: ([f64; 3], [[f64; 3]; 3]) = ([0.0; 3], [[0.0; 3]; 3]);

/// Flies a course both ways and gives the largest differences in heading, reading and tilt,
/// degrees, over rows each half second.
fn both_ways(
    mut situation: Situation,
    (hard, soft): ([f64; 3], [[f64; 3]; 3]),
    course: &Course,
) -> [f64; 3] {
    situation.iron = AircraftIron::new(hard, soft).expect("iron within its ranges");
    let rows = second_writing::Equations::of(&situation, hard, soft, course)
        .rows(course.heading.to_radians());
    let mut flight = course.start(situation);
    let mut worst = [0.0; 3];
    for [time, heading, reading, tilt] in rows {
        let wait = time - flight.time();
        fly_on(&mut flight, wait);
        let now = flight.reading();
        assert!(!now.at_stop, "the second writing has no stop");
        let differences = [
            apart(flight.motion().heading.degrees(), heading),
            apart(now.compass.degrees(), reading),
            (now.tilt.to_degrees() - tilt).abs(),
        ];
        worst = std::array::from_fn(|i| largest(worst[i], differences[i]));
    }
    worst
}

/// The demand is 1e-4° between two routes; each is good to better than that by itself (the
/// library to 1e-12 of each quantity, the fixed step as `invariants` shows).
const BETWEEN_ROUTES: f64 = 1e-4;

fn assert_both_ways(
    name: &str,
    situation: Situation,
    iron: ([f64; 3], [[f64; 3]; 3]),
    course: &Course,
) {
    let worst = both_ways(situation, iron, course);
    let [heading, reading, tilt] = worst;
    println!(
        "{name}: largest difference in heading {heading:.1e}°, reading {reading:.1e}°, \
         tilt {tilt:.1e}°"
    );
    assert!(
        worst.iter().all(|w| *w < BETWEEN_ROUTES),
        "{name}: {worst:?}"
    );
}

#[test]
fn second_writing_turn_through_north_and_swirl_after_it() {
    let course = Course::on(290.0, 105.0)
        .hold(2.0)
        .roll(2.5, 18.0)
        .hold(110.0)
        .roll(2.5, 0.0)
        .hold(30.0);
    assert_both_ways(
        "north",
        situation(field(19_500.0, 44_200.0)),
        NO_IRON,
        &course,
    );
}

#[test]
fn second_writing_southern_turn() {
    let course = Course::on(150.0, 90.0)
        .hold(1.0)
        .roll(3.0, -22.0)
        .hold(40.0)
        .roll(4.0, 10.0)
        .hold(20.0);
    let mut at = situation(field(24_000.0, -51_000.0));
    at.float.liquid_spin_up = 8.0;
    assert_both_ways("southern", at, NO_IRON, &course);
}

#[test]
fn second_writing_speed_change() {
    let course = Course::on(80.0, 80.0)
        .hold(1.0)
        .speed_up(20.0, 130.0)
        .hold(10.0)
        .speed_up(15.0, 90.0)
        .hold(20.0);
    let mut at = situation(field(18_500.0, 46_500.0));
    at.float = FloatSettings::brisk();
    assert_both_ways("speed change", at, NO_IRON, &course);
}

#[test]
fn second_writing_balance_weight_liquid_with_the_bowl() {
    let course = Course::on(250.0, 100.0)
        .hold(1.0)
        .leg(6.0, Some(30.0), Some(120.0))
        .hold(35.0)
        .leg(5.0, Some(0.0), Some(100.0))
        .hold(20.0);
    let mut at = situation(field(20_000.0, 45_000.0));
    at.float.balance_vertical = 45_000.0 * NANOTESLA;
    at.float.liquid_spin_up = 0.0;
    at.float.inertia_ratio = 0.9;
    assert_both_ways("balance weight", at, NO_IRON, &course);
}

#[test]
fn second_writing_iron_and_light_damping() {
    let course = Course::on(30.0, 110.0)
        .hold(2.0)
        .roll(3.0, 25.0)
        .hold(60.0)
        .roll(3.0, -15.0)
        .hold(30.0);
    let mut at = situation(field(21_000.0, 43_000.0));
    at.float = FloatSettings::lightly_damped();
    let hard = [1800.0, -900.0, 2500.0].map(|nt| nt * NANOTESLA);
    let soft = [[0.03, -0.01, 0.02], [0.015, -0.02, 0.01], [0.0, 0.02, 0.04]];
    assert_both_ways("iron", at, (hard, soft), &course);
}

/// A float that nothing damps, in no field.
fn undamped() -> CompassFloat {
    let settings = FloatSettings {
        yaw_damping_ratio: 0.0,
        tilt_damping_ratio: 0.0,
        ..FloatSettings::default()
    };
    CompassFloat::new(settings).expect("settings within their ranges")
}

fn no_field() -> MagneticField {
    field(0.0, 0.0)
}

/// The surroundings of a bowl that stands level on north, in a gravity of so many m/s².
fn bench(gravity: f64) -> (FloatState, StepSurroundings) {
    let mut motion = Motion::level(MagneticHeading::from_degrees(0.0), 50.0);
    motion.acceleration = Vector::new(0.0, 0.0, STANDARD_GRAVITY - gravity);
    let around = Surroundings::of(&motion, &no_field(), &AircraftIron::NONE);
    (CompassFloat::at_rest(&motion), [around; 3])
}

/// The angle between two attitudes in radians.
fn between(one: DQuat, other: DQuat) -> f64 {
    let turn = one.conjugate() * other;
    2.0 * maths::atan2(DVec3::new(turn.x, turn.y, turn.z).length(), turn.w.abs())
}

mod engine {
    //! The general rigid-body engine, with the float's inertia and first moment.

    use glam::{DQuat, DVec3};
    use rapier3d_f64::prelude::*;

    /// A body alone in the world.
    pub(crate) struct Body {
        world: PhysicsWorld,
        handle: RigidBodyHandle,
    }

    impl Body {
        /// A free body with principal moments of inertia, turning, in no gravity.
        pub(crate) fn free(inertia: [f64; 3], rate: [f64; 3], step: f64) -> Self {
            let mut world = PhysicsWorld::new();
            world.gravity = Vector::ZERO;
            world.integration_parameters.dt = step;
            let [x, y, z] = inertia;
            let body = RigidBodyBuilder::dynamic()
                .additional_mass_properties(MassProperties::new(
                    Vector::ZERO,
                    1.0,
                    Vector::new(x, y, z),
                ))
                .angvel(Vector::new(rate[0], rate[1], rate[2]))
                .can_sleep(false);
            let handle = world.bodies.insert(body);
            Self { world, handle }
        }

        /// A pendulum on a hinge along y that hangs toward z, let go in a gravity of another
        /// direction. Its moment of inertia about the hinge and its first moment are given. (The
        /// engine lets every hinge start unturned, so gravity leans instead.)
        pub(crate) fn pendulum(inertia: f64, moment: f64, gravity: DVec3, step: f64) -> Self {
            let mut world = PhysicsWorld::new();
            world.gravity = Vector::new(gravity.x, gravity.y, gravity.z);
            world.integration_parameters.dt = step;
            // Any arm and mass with this first moment will do that leave some inertia over.
            let arm = 0.3 * inertia / moment;
            let mass = moment / arm;
            let own = inertia - mass * arm * arm;
            let fixed = world.bodies.insert(RigidBodyBuilder::fixed());
            let body = RigidBodyBuilder::dynamic()
                .additional_mass_properties(MassProperties::new(
                    Vector::new(0.0, 0.0, arm),
                    mass,
                    Vector::new(own, own, own),
                ))
                .can_sleep(false);
            let handle = world.bodies.insert(body);
            let hinge = RevoluteJointBuilder::new(Vector::Y);
            let joint = world
                .multibody_joints
                .insert(fixed, handle, hinge, true)
                .expect("two bodies can be joined");
            // The engine's hinges are damped unless told otherwise.
            let (pendulum, _) = world
                .multibody_joints
                .get_mut(joint)
                .expect("the joint is there");
            pendulum.damping_mut().fill(0.0);
            Self { world, handle }
        }

        pub(crate) fn step(&mut self) {
            self.world.step();
        }

        pub(crate) fn attitude(&self) -> DQuat {
            let q = self.world.bodies[self.handle].rotation();
            DQuat::from_xyzw(q.x, q.y, q.z, q.w)
        }

        pub(crate) fn rate(&self) -> DVec3 {
            let w = self.world.bodies[self.handle].angvel();
            DVec3::new(w.x, w.y, w.z)
        }
    }
}

/// A free top: no field, no weight, no drag.
///
/// Source: the torque-free symmetric top of any mechanics text (Landau and Lifshitz, *Mechanics*,
/// §33 and §36): in the body the transverse rate goes round at Ω = (1 − r)/r ω_z; in space the
/// body turns about its fixed angular momentum at L/r, and about its own axis at −Ω.
#[test]
fn a_free_top_precesses_as_its_closed_form() {
    let compass_float = undamped();
    let r = compass_float.settings().inertia_ratio;
    let (mut float, around) = bench(0.0);
    let rate = DVec3::new(0.3, 0.0, 2.0);
    float.rate = Vector::from_xyz(rate);
    let precession = (1.0 - r) / r * rate.z;
    let momentum = DVec3::new(r * rate.x, r * rate.y, rate.z);
    let steps = 12_000;
    for step in 1..=steps {
        compass_float.advance(&mut float, &around, STEP);
        assert!(!float.at_stop, "the cone is within the stop");
        let time = f64::from(step) * STEP;
        let expected = DQuat::from_rotation_z(precession * time).mul_vec3(rate);
        // One step of fourth order errs by (rate × step)⁵ / 120, some 1e-12; a minute holds
        // twelve thousand.
        assert!((float.rate.xyz - expected).length() < 1e-8);
        let about = DQuat::from_axis_angle(momentum.normalize(), momentum.length() / r * time);
        let expected = about * DQuat::from_rotation_z(-precession * time);
        assert!(between(float.attitude.quaternion, expected) < 1e-8);
    }
}

/// The same top in the engine. The engine's integration is of first order, so its difference from
/// ours must halve with its step, and the value that two of its steps point to must agree far
/// better than either.
#[test]
fn a_free_top_turns_as_in_a_rigid_body_engine() {
    let compass_float = undamped();
    let r = compass_float.settings().inertia_ratio;
    let rate = [0.3, 0.0, 2.0];
    let seconds = 5.0;
    let (mut float, around) = bench(0.0);
    float.rate = Vector::new(rate[0], rate[1], rate[2]);
    for _ in 0..(seconds / STEP) as u32 {
        compass_float.advance(&mut float, &around, STEP);
    }
    let engine_rate = |step: f64| {
        let mut body = engine::Body::free([r, r, 1.0], rate, step);
        for _ in 0..(seconds / step).round() as u32 {
            body.step();
        }
        let apart = between(float.attitude.quaternion, body.attitude());
        (apart, body.attitude().conjugate().mul_vec3(body.rate()))
    };
    let (coarse, coarse_rate) = engine_rate(2e-4);
    let (fine, fine_rate) = engine_rate(1e-4);
    let pointed_to = fine_rate * 2.0 - coarse_rate;
    let off = (pointed_to - float.rate.xyz).length();
    println!(
        "free top: attitude off by {coarse:.2e} rad at 0.2 ms and {fine:.2e} at 0.1 ms; \
         rate pointed to off by {off:.1e} rad/s"
    );
    assert!((fine / coarse - 0.5).abs() < 0.02, "{coarse} {fine}");
    // What is left is the second order: (rate × step)² × time, 2e-7.
    assert!(off < 2e-7, "{off}");
}

/// The half-swings of a pendulum let go at `angle`, by when it passes the lowest point.
fn passages(mut deflection: impl FnMut() -> f64, step: f64, count: usize) -> Vec<f64> {
    let mut found = Vec::new();
    let (mut time, mut before) = (0.0, deflection());
    while found.len() < count {
        time += step;
        let now = deflection();
        if before * now < 0.0 {
            found.push(time - step * now / (now - before));
        }
        before = now;
    }
    found
}

const SWINGS: usize = 10;

fn period(passages: &[f64]) -> f64 {
    (passages[2 * SWINGS] - passages[0]) / SWINGS as f64
}

/// A free pendulum: no field, no drag, let go at 15°, within the stop. Its period is
/// 2π √(r / (s_d g)) / agm(1, cos 7.5°).
///
/// Source: the pendulum's complete elliptic integral by Gauss's arithmetic-geometric mean
/// (Landau and Lifshitz, *Mechanics*, §11). The engine is of second order here: its difference
/// must go down to a quarter when its step is halved, within a tenth.
#[test]
fn a_free_pendulum_swings_as_its_closed_form_and_as_in_a_rigid_body_engine() {
    let compass_float = undamped();
    let settings = *compass_float.settings();
    let natural = TAU / settings.yaw_period;
    let moment = natural * natural / settings.reference_horizontal * settings.reference_vertical
        / (STANDARD_GRAVITY * maths::tan(settings.level_tilt));
    let angle = 15_f64.to_radians();
    let small = TAU * (settings.inertia_ratio / (moment * STANDARD_GRAVITY)).sqrt();
    let (mut mean, mut root) = (1.0, maths::cos(angle / 2.0));
    for _ in 0..6 {
        (mean, root) = ((mean + root) / 2.0, (mean * root).sqrt());
    }
    let expected = small / mean;

    let (mut float, around) = bench(STANDARD_GRAVITY);
    float.attitude = Rotation::from_quaternion(DQuat::from_rotation_y(angle));
    let ours = passages(
        || {
            let lean = float.attitude.apply(Vector::<Card>::z_axis()).x();
            compass_float.advance(&mut float, &around, STEP);
            assert!(!float.at_stop);
            lean
        },
        STEP,
        2 * SWINGS + 1,
    );
    let ours = period(&ours);
    println!("pendulum: {ours} s, closed form {expected} s");
    // A step is 0.04 of a radian of the swing; fourth order leaves (0.04)⁴ / 120 of the period,
    // and passages are found by straight lines to a few parts in ten million.
    assert!((ours / expected - 1.0).abs() < 1e-6, "{ours} {expected}");

    let down = DQuat::from_rotation_y(angle).mul_vec3(DVec3::Z);
    let engine_period = |step: f64| {
        let gravity = down * STANDARD_GRAVITY;
        let mut body = engine::Body::pendulum(settings.inertia_ratio, moment, gravity, step);
        let found = passages(
            || {
                let lean = down.cross(body.attitude().mul_vec3(DVec3::Z)).y;
                body.step();
                lean
            },
            step,
            2 * SWINGS + 1,
        );
        period(&found)
    };
    let (coarse, fine) = (engine_period(1e-3), engine_period(5e-4));
    let pointed_to = (4.0 * fine - coarse) / 3.0;
    println!("engine: {coarse} s at 1 ms, {fine} s at 0.5 ms, pointing to {pointed_to} s");
    let quartered = (fine - expected) / (coarse - expected);
    assert!((0.225..0.275).contains(&quartered), "{quartered}");
    assert!((ours / pointed_to - 1.0).abs() < 1e-6);
}

/// A very slow turn: 15° of bank at 2000 kt, so that a turn takes 40 minutes. As the float is
/// made stiffer (its period and its tilt both halved), what is left between its reading and the
/// closed form must halve too, since it is of first order in each: the drag of the liquid that
/// turns with the bowl holds the card back by 2 ζ (T/2π) ω, and the tilt lets the vertical field
/// turn the card's plane by as much.
#[test]
fn the_float_tends_to_the_closed_form_in_a_slow_turn() {
    for dip in [55.0_f64, -40.0] {
        let north = field(20_000.0, 20_000.0 * maths::tan(dip.to_radians()));
        let worst = |period: f64, tilt: f64| -> f64 {
            let mut at = situation(north);
            at.float.yaw_period = period;
            at.float.level_tilt = tilt.to_radians();
            at.float.liquid_spin_up = 0.0;
            let mut flight = Course::on(330.0, 2000.0)
                .roll(60.0, 15.0)
                .hold(600.0)
                .start(at);
            fly_on(&mut flight, 100.0);
            let mut worst = 0.0;
            while flight.time() < 600.0 {
                fly_on(&mut flight, 5.0);
                let motion = flight.motion();
                let steady = steady::in_turn(motion.heading, motion.bank, north.dip());
                let off = apart(flight.reading().compass.degrees(), steady.degrees());
                worst = largest(worst, off);
            }
            worst
        };
        let found = [(8.0, 4.0), (4.0, 2.0), (2.0, 1.0), (1.0, 0.5), (0.5, 0.25)]
            .map(|(period, tilt)| worst(period, tilt));
        println!("slow turn, dip {dip}°: {found:.4?}");
        for pair in found.windows(2) {
            let ratio = pair[1] / pair[0];
            assert!((0.4..0.6).contains(&ratio), "{found:?}");
        }
        assert!(found[4] < 0.2, "{found:?}");
    }
}

/// Straight flight that gains speed for ten minutes, up to 0.18 g: the same, with eqs. 3 and 4.
#[test]
fn the_float_tends_to_the_closed_form_in_a_slow_speed_change() {
    let north = field(20_000.0, 20_000.0 * maths::tan(55_f64.to_radians()));
    let worst = |period: f64, tilt: f64| -> f64 {
        let mut at = situation(north);
        at.float.yaw_period = period;
        at.float.level_tilt = tilt.to_radians();
        let mut flight = Course::on(60.0, 200.0).speed_up(600.0, 1500.0).start(at);
        let mut worst = 0.0;
        while flight.time() < 600.0 {
            fly_on(&mut flight, 5.0);
            let motion = flight.motion();
            let gain = motion.airspeed_rate / STANDARD_GRAVITY;
            let steady = steady::in_speed_change(motion.heading, gain, north.dip());
            let off = apart(flight.reading().compass.degrees(), steady.degrees());
            worst = largest(worst, off);
        }
        worst
    };
    let found =
        [(8.0, 4.0), (4.0, 2.0), (2.0, 1.0), (1.0, 0.5)].map(|(period, tilt)| worst(period, tilt));
    println!("slow speed change: {found:.4?}");
    for pair in found.windows(2) {
        let ratio = pair[1] / pair[0];
        assert!((0.4..0.6).contains(&ratio), "{found:?}");
    }
    assert!(found[3] < 0.2, "{found:?}");
}

/// The general closed form (the field laid into the plane square to the apparent vertical) against
/// the two special ones of E. Williams, over a grid. All are exact, so only rounding is left,
/// multiplied a hundredfold where little of the field lies in the card's plane.
#[test]
fn the_general_closed_form_is_both_special_ones() {
    let mut worst = 0.0;
    for dip in (-80..=80).step_by(10).map(f64::from) {
        let north = field(15_000.0, 15_000.0 * maths::tan(dip.to_radians()));
        for degrees in (0..360).step_by(15).map(f64::from) {
            let heading = MagneticHeading::from_degrees(degrees);
            let level = Kinematics {
                heading: heading.radians(),
                pitch: 0.0,
                bank: 0.0,
                airspeed: 60.0,
                rate_of_turn: 0.0,
                pitch_rate: 0.0,
                bank_rate: 0.0,
                airspeed_rate: 0.0,
            };
            for step in -7..=7 {
                let bank = f64::from(step) * 8.5_f64.to_radians();
                let turn = Motion::of(&Kinematics {
                    bank,
                    rate_of_turn: coordinated_rate_of_turn(bank, level.airspeed),
                    ..level
                });
                let gain = f64::from(step) * 0.1;
                let change = Motion::of(&Kinematics {
                    airspeed_rate: gain * STANDARD_GRAVITY,
                    ..level
                });
                for (motion, special) in [
                    (turn, steady::in_turn(heading, bank, north.dip())),
                    (change, steady::in_speed_change(heading, gain, north.dip())),
                ] {
                    let general = steady::square_card(&north, &motion)
                        .expect("the field is not along the apparent vertical");
                    worst = largest(worst, apart(general.degrees(), special.degrees()));
                }
            }
        }
    }
    println!("general closed form: off by {worst:.1e}° at most");
    assert!(worst < 1e-11, "{worst}");
}

/// Gusts as they come from the shaping filters, over so many seconds at an airspeed: the velocity
/// along, across and up and down as multiples of the strength, and the rolling velocity in rad/s
/// per m/s of strength.
fn gusts(airspeed: f64, every: f64, count: u64) -> [Vec<f64>; 4] {
    // What an airframe's acceleration is per gust velocity and airspeed, as `compass::gust` says.
    let response = [0.0010, 0.0034, 0.042];
    let air = RoughAir::Moderate;
    let numbers = SeededAir { seed: 8785 };
    let mut state = GustState::default();
    let mut found = [const { Vec::new() }; 4];
    for step in 0..count {
        let gust = state.advance(air, airspeed, every, numbers.at(step));
        let push = gust.acceleration.xyz.to_array();
        for axis in 0..3 {
            found[axis].push(push[axis] / (response[axis] * airspeed * air.strength()));
        }
        found[3].push(gust.roll_rate / air.strength());
    }
    found
}

/// Mean product of the numbers with those `lag` later.
fn correlation(numbers: &[f64], lag: usize) -> f64 {
    let pairs = numbers.iter().zip(&numbers[lag..]);
    pairs.map(|(now, later)| now * later).sum::<f64>() / (numbers.len() - lag) as f64
}

/// Source: MIL-F-8785C, 3.7.1.2, the Dryden spectra, whose autocorrelations with x = τV/L are
/// σ² e⁻ˣ along the path and σ² e⁻ˣ (1 − x/2) across it; and 3.7.5's rolling gusts, whose spectrum
/// integrates to σ² 0.8 (πL/4b)^⅓ π² / (8 b L) and decays as exp(−τ V π / 4b).
///
/// The tolerance is four standard errors of a mean over so many scale lengths: a variance that is
/// estimated from a process correlated as e⁻ˣ has a relative error of √(2 L / (V × duration)), and
/// no autocorrelation has a greater one.
#[test]
fn gusts_have_the_spectra_of_the_standard() {
    let (airspeed, every, count) = (90.0, 0.05, 2_000_000);
    let [along, across, vertical, roll] = gusts(airspeed, every, count);
    let duration = every * count as f64;
    let tolerance = 4.0 * (2.0 * SCALE_LENGTH / (airspeed * duration)).sqrt();
    let mut worst = 0.0;
    for lag in [0, 15, 30, 60, 90, 150, 240] {
        let x = lag as f64 * every * airspeed / SCALE_LENGTH;
        let fades = maths::exp(-x);
        for (numbers, expected) in [
            (&along, fades),
            (&across, fades * (1.0 - x / 2.0)),
            (&vertical, fades * (1.0 - x / 2.0)),
        ] {
            let off = (correlation(numbers, lag) - expected).abs();
            worst = largest(worst, off);
            assert!(off < tolerance, "lag {lag}: {off} of {expected}");
        }
    }
    println!("gusts: correlations off by {worst:.4} of 1, allowed {tolerance:.4}");
    assert!(correlation(&along, 0) > 0.5 && correlation(&along, 240) < 0.1);

    let span = 11.0;
    let variance =
        0.8 * maths::cbrt(PI * SCALE_LENGTH / (4.0 * span)) * PI * PI / (8.0 * span * SCALE_LENGTH);
    let decay = airspeed * PI / (4.0 * span);
    let tolerance = 4.0 * (2.0 / (decay * duration)).sqrt();
    for lag in [0, 1, 2, 4] {
        let expected = maths::exp(-decay * every * lag as f64);
        let off = (correlation(&roll, lag) / variance - expected).abs();
        println!("roll gusts, lag {lag}: off by {off:.4}, allowed {tolerance:.4}");
        assert!(off < tolerance, "lag {lag}: {off} of {expected}");
    }
}

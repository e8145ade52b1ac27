//! Invariants: what must hold whatever is flown, mostly by random flights.
#![cfg(not(target_family = "wasm"))]

use checks::{
    Course, apart, error, eventful, field, fly_on, largest,
    random::{Displaced, cases, course, displace, displaced, iron, iron_of, preset, steady_field},
    situation,
};
use compass::{
    aircraft::Aircraft,
    field::MagneticField,
    float_settings::FloatSettings,
    frame::Rotation,
    free_flight::Controls,
    gust::{GustNumbers, RoughAir, StillAir},
    heading::MagneticHeading,
    simulation::{STEP, STEPS_PER_SECOND, Simulation, Situation},
    unit::{KNOT, NANOTESLA},
};
use flights::air::SeededAir;
use glam::DQuat;
use proptest::prelude::*;

/// Two flights that are to correspond, and the largest difference, in degrees, between the one's
/// reading and what the other's says of it, every half second.
fn correspond(
    (mut one, mut other): (Simulation, Simulation),
    seconds: f64,
    says: impl Fn(f64) -> f64,
) -> f64 {
    let mut worst = 0.0;
    while one.time() < seconds {
        fly_on(&mut one, 0.5);
        fly_on(&mut other, 0.5);
        let (one, other) = (one.reading().compass, other.reading().compass);
        worst = largest(worst, apart(one.degrees(), says(other.degrees())));
    }
    worst
}

/// Both flights do the same arithmetic but for signs and for the heading's last bits (an angle and
/// its mirror image round differently). A card that steers back to where it was forgets such bits;
/// one that passes close to no direction at all multiplies them, by ten million at most here.
const ROUNDING: f64 = 1e-6;

proptest! {
    #![proptest_config(cases(48))]

    /// Left and right exchanged: headings and banks change sign, iron lies mirrored, and so does
    /// the reading. M, S and B all lie in the plane that is mirrored, so the equations do not
    /// change.
    #[test]
    fn a_mirrored_flight_has_a_mirrored_reading(
        field in steady_field(),
        float in preset(),
        (hard, soft) in iron(),
        course in course(50.0, 60.0),
    ) {
        let one = Situation { iron: iron_of((hard, soft)), float, ..situation(field) };
        let [x, y, z] = hard;
        let mirrored = std::array::from_fn(|i| std::array::from_fn(|j| {
            if (i == 1) == (j == 1) { soft[i][j] } else { -soft[i][j] }
        }));
        let other = Situation { iron: iron_of(([x, -y, z], mirrored)), ..one };
        let flights = (course.start(one), course.mirrored().start(other));
        let worst = correspond(flights, course.duration(), |reading| -reading);
        prop_assert!(worst < ROUNDING, "{worst}");
    }

    /// The other hemisphere. The field (H, 0, −Z) is the field (H, 0, Z) turned by 180° about the
    /// vertical and reversed; reversing the field is the same as turning the card's marks by 180°
    /// (which turns the balance weight to the other side). So with Z, the weight and the hard iron
    /// reversed, the same manoeuvre on the opposite heading gives the opposite reading: what a
    /// card does about north in the one hemisphere it does about south in the other.
    #[test]
    fn the_other_hemisphere_does_about_south_what_this_does_about_north(
        field in steady_field(),
        float in preset(),
        (hard, soft) in iron(),
        course in course(50.0, 60.0),
    ) {
        let one = Situation { iron: iron_of((hard, soft)), float, ..situation(field) };
        let other = Situation {
            field: MagneticField::new(field.horizontal(), -field.vertical(), 0.0).unwrap(),
            iron: iron_of((hard.map(|p| -p), soft)),
            float: FloatSettings { balance_vertical: -float.balance_vertical, ..float },
            ..one
        };
        let flights = (course.start(one), course.turned(180.0).start(other));
        let worst = correspond(flights, course.duration(), |reading| reading - 180.0);
        prop_assert!(worst < ROUNDING, "{worst}");
    }

    /// Mirrored again from left to right: turning left off north here is turning right off north
    /// there but that lag becomes lead: the error on heading H, bank φ and −Z is that on 180° − H,
    /// bank −φ and Z, with its sign turned over.
    #[test]
    fn the_other_hemisphere_turns_the_error_over(
        field in steady_field(),
        float in preset(),
        course in course(50.0, 60.0),
    ) {
        let one = Situation { float, ..situation(field) };
        let other = Situation {
            field: MagneticField::new(field.horizontal(), -field.vertical(), 0.0).unwrap(),
            float: FloatSettings { balance_vertical: -float.balance_vertical, ..float },
            ..one
        };
        let (mut one, mut other) =
            (course.start(one), course.mirrored().turned(180.0).start(other));
        let mut worst = 0.0;
        while one.time() < course.duration() {
            fly_on(&mut one, 0.5);
            fly_on(&mut other, 0.5);
            worst = largest(worst, apart(error(&one), -error(&other)));
        }
        prop_assert!(worst < ROUNDING, "{worst}");
    }
}

/// Flies the same flight twice, once with each step divided `times` as finely, and gives the
/// largest difference in reading every half second, degrees. What a contact with the stop does
/// hangs on the instant it begins, so while a card touches it the finer flight follows the other,
/// and they part again from there.
fn apart_between_steps(
    mut shipped: Simulation,
    times: u32,
    seconds: f64,
    controls: impl Fn(f64) -> Controls,
    air: impl GustNumbers,
) -> f64 {
    let mut finer = shipped.clone().refined(times);
    let mut worst = 0.0;
    for step in 1..=(seconds * STEPS_PER_SECOND as f64) as u64 {
        let held = controls(shipped.time());
        for flight in [&mut shipped, &mut finer] {
            flight.step(&held, air.at(step));
        }
        if shipped.state().float.at_stop || finer.state().float.at_stop {
            finer.restore(shipped.state().clone());
        }
        if step % (STEPS_PER_SECOND / 2) == 0 {
            let seen = [&shipped, &finer].map(|flight| flight.reading().compass.degrees());
            worst = largest(worst, apart(seen[0], seen[1]));
        }
    }
    worst
}

/// The demand on readings between the shipped step and a finer one, degrees.
const BETWEEN_STEPS: f64 = 0.01;

/// What a pilot does in free flight: for so many seconds, bank, airspeed (knots), climb angle and
/// rudder.
type Handled = Vec<(f64, [f64; 4])>;

fn handled(bank: f64) -> impl Strategy<Value = Handled> {
    let controls = (-bank..bank, 70.0..200.0_f64, -5.0..5.0_f64, -0.5..0.5_f64);
    let held = (5.0..40.0_f64, controls).prop_map(|(seconds, (bank, knots, pitch, rudder))| {
        (seconds, [bank, knots, pitch, rudder])
    });
    prop::collection::vec(held, 40)
}

fn controls_at(handled: &Handled, time: f64) -> Controls {
    let mut begun = 0.0;
    for (seconds, [bank, knots, pitch, rudder]) in handled {
        begun += seconds;
        if time < begun {
            return Controls::level(knots * KNOT)
                .with_bank(bank.to_radians())
                .with_pitch(pitch.to_radians())
                .with_rudder(*rudder);
        }
    }
    Controls::level(50.0)
}

fn free_flight(situation: Situation, handled: &Handled) -> Simulation {
    let first = Controls::level(controls_at(handled, 0.0).airspeed());
    let aircraft = Aircraft::free(MagneticHeading::from_degrees(10.0), &first);
    Simulation::new(situation, aircraft, first).expect("settings within their ranges")
}

proptest! {
    #![proptest_config(cases(24))]

    /// Halving the step, over five minutes within 60° of bank.
    #[test]
    fn halving_the_step_changes_no_reading(
        field in steady_field(),
        float in preset(),
        iron in iron(),
        course in course(60.0, 300.0),
    ) {
        let at = Situation { iron: iron_of(iron), float, ..situation(field) };
        let flight = course.start(at);
        let controls = flight.state().controls;
        let seconds = course.duration();
        let worst = apart_between_steps(flight, 2, seconds, |_| controls, StillAir);
        prop_assert!(worst > 0.0 && worst < BETWEEN_STEPS, "{worst}");
    }
}

proptest! {
    #![proptest_config(cases(8))]

    /// The accuracy that is claimed: any ten minutes without contact, against an eighth of the
    /// step, which is converged: with fourth order its own error is 4096 times smaller.
    #[test]
    fn ten_prescribed_minutes_are_converged(
        field in steady_field(),
        float in preset(),
        iron in iron(),
        course in course(45.0, 600.0),
    ) {
        let at = Situation { iron: iron_of(iron), float, ..situation(field) };
        let flight = course.start(at);
        let controls = flight.state().controls;
        let worst = apart_between_steps(flight, 8, 600.0, |_| controls, StillAir);
        prop_assert!(worst > 0.0 && worst < BETWEEN_STEPS, "{worst}");
    }

    /// The same in free flight, in light air (a gust holds through a step, however fine).
    #[test]
    fn ten_free_minutes_are_converged(
        field in steady_field(),
        float in preset(),
        handled in handled(40.0),
        seed in any::<u64>(),
    ) {
        let at = Situation { float, air: RoughAir::Light, ..situation(field) };
        let flight = free_flight(at, &handled);
        let controls = |time| controls_at(&handled, time);
        let worst = apart_between_steps(flight, 8, 600.0, controls, SeededAir { seed });
        prop_assert!(worst > 0.0 && worst < BETWEEN_STEPS, "{worst}");
    }
}

/// A float that was put out of place, in a field and on a pivot that stand still.
fn displaced_at_rest(at: Situation, start: Displaced) -> Simulation {
    let mut flight = Course::on(0.0, 100.0).start(at);
    displace(&mut flight, start);
    flight
}

/// How far the float's energy, looked at every `window` seconds of a minute, ever rose above the
/// least that it had had before; how many times the card was seen at the stop; and the energy at
/// the end. A card at rest has 8 to 130 of these
/// units (rad²/s²) less than one without weight and magnets.
fn greatest_growth(mut flight: Simulation, window: f64) -> (f64, u32, f64) {
    let (mut worst, mut contacts) = (f64::MIN, 0);
    let mut now = flight.energy();
    let mut least = now;
    while flight.time() < 60.0 {
        fly_on(&mut flight, window);
        now = flight.energy();
        worst = largest(worst, now - least);
        least = least.min(now);
        contacts += u32::from(flight.state().float.at_stop);
    }
    (worst, contacts, now)
}

/// What one step of a Runge-Kutta method of fourth order may add to or take from a swing of one
/// unit: (rate × step)⁵ / 120 at the 14 rad/s with which the briskest preset's card rocks. It does
/// not add up: on the whole the method damps.
const NO_GROWTH: f64 = 1.6e-8;

proptest! {
    #![proptest_config(cases(64))]

    /// Field, pivot and liquid stand still: a card's energy never grows above what it has been,
    /// whether the card swings freely, is damped, or strikes the stop.
    #[test]
    fn energy_does_not_grow(
        field in steady_field(),
        float in preset(),
        damped in any::<bool>(),
        start in displaced(),
    ) {
        let mut at = Situation { float, ..situation(field) };
        if !damped {
            at.float.yaw_damping_ratio = 0.0;
            at.float.tilt_damping_ratio = 0.0;
        }
        let (growth, _, _) = greatest_growth(displaced_at_rest(at, start), STEP);
        prop_assert!(growth < NO_GROWTH, "{growth}");
    }

    /// The same with friction, over each tenth of a second and over the whole minute. A step is
    /// split between motion and friction, so that in the step in which a card turns back friction
    /// is taken to work one way; a tenth of a second around it loses hundreds of times more.
    /// [`FRICTION_SPLIT`] is what remains.
    #[test]
    fn energy_does_not_grow_with_friction(
        field in steady_field(),
        float in preset(),
        damped in any::<bool>(),
        friction in 0.05..5.0_f64,
        start in displaced(),
    ) {
        let mut at = Situation { float, ..situation(field) };
        at.float.friction_angle = friction.to_radians();
        if !damped {
            at.float.yaw_damping_ratio = 0.0;
            at.float.tilt_damping_ratio = 0.0;
        }
        let flight = displaced_at_rest(at, start);
        let first = flight.energy();
        let (growth, _, last) = greatest_growth(flight, 0.1);
        prop_assert!(growth < FRICTION_SPLIT, "{growth}");
        prop_assert!(last < first + FRICTION_SPLIT, "{first} {last}");
    }
}

/// Half the square of the rate that friction can take in one step: the briskest preset's magnets,
/// (2π/3.5)², times the sine of 5°, times the step.
const FRICTION_SPLIT: f64 = 0.5 * (0.281 * STEP) * (0.281 * STEP);

/// The stop is struck, and again and again, and still no energy comes of it.
#[test]
fn the_stop_gives_no_energy_back() {
    let mut at = situation(field(20_000.0, 40_000.0));
    at.float.yaw_damping_ratio = 0.0;
    at.float.tilt_damping_ratio = 0.0;
    let start = Displaced {
        turned: 2.0,
        tipped: 0.3,
        toward: 1.0,
        rate: [3.0, -2.0, 4.0],
    };
    let (growth, contacts, _) = greatest_growth(displaced_at_rest(at, start), STEP);
    assert!(contacts > 3, "{contacts}");
    assert!(growth < NO_GROWTH, "{growth}");
}

/// At rest, an hour long, in eight places with every preset, iron or a balance weight: the reading
/// stays within a millionth of a degree, which is what may be left of a settling that ends at
/// rates of 1e-13 rad/s (an hour of those is 2e-8°) and of half a million roundings.
#[test]
fn nothing_drifts_in_an_hour_at_rest() {
    let presets = [
        FloatSettings::default(),
        FloatSettings::brisk(),
        FloatSettings::sluggish(),
        FloatSettings::lightly_damped(),
    ];
    let hard = [1500.0, -800.0, 3000.0].map(|nt| nt * NANOTESLA);
    let mut worst = 0.0;
    for (i, (horizontal, vertical)) in [
        (20_000.0, 40_000.0),
        (35_000.0, 0.0),
        (24_000.0, -51_000.0),
        (6_500.0, 55_000.0),
    ]
    .into_iter()
    .enumerate()
    {
        for preset in 0..2 {
            let mut at = situation(field(horizontal, vertical));
            at.float = presets[(i + preset) % 4];
            if preset == 1 {
                at.iron = iron_of((hard, [[0.02, 0.0, 0.01], [0.0; 3], [0.0, 0.03, 0.0]]));
                at.float.balance_vertical = vertical * NANOTESLA;
            }
            let mut flight = Course::on(77.0, 100.0).start(at);
            let first = flight.reading().compass.degrees();
            while flight.time() < 3600.0 {
                fly_on(&mut flight, 60.0);
                worst = largest(worst, apart(flight.reading().compass.degrees(), first));
            }
        }
    }
    println!("an hour at rest: {worst:.1e}°");
    assert!(worst < 1e-6, "{worst}");
}

/// The named torques are divided by the inertia about the card's axis, and a body with two equal
/// moments has no gyroscopic torque about its third axis: their sum is the rate's derivative.
/// The derivative is taken over two steps either way; its own error is step⁴/30 times the rate's
/// fifth derivative, some 1e-7 where the float's rates are near 12 a second. Where a leg begins
/// bank's second derivative jumps, and nothing can be said of those steps.
#[test]
fn the_named_torques_are_what_turns_the_card() {
    let (at, course) = eventful();
    let mut flight = course.start(at);
    let mut ends = Vec::new();
    for leg in &course.legs {
        ends.push(ends.last().unwrap_or(&0.0) + leg.duration);
    }
    let mut seen = vec![];
    while flight.time() < course.duration() {
        seen.push((
            flight.time(),
            flight.state().float.rate.z(),
            flight.torques(),
        ));
        fly_on(&mut flight, STEP);
    }
    let mut worst = 0.0;
    let mut largest_parts = [0.0; 5];
    for around in seen.windows(5) {
        let (time, _, torques) = around[2];
        if ends.iter().any(|end| (time - end).abs() < 3.0 * STEP) {
            continue;
        }
        let rate = |i: usize| around[i].1;
        let slope = (rate(0) - rate(4) + 8.0 * (rate(3) - rate(1))) / (12.0 * STEP);
        worst = largest(worst, (torques.net() - slope).abs());
        let parts = [
            torques.horizontal_field,
            torques.vertical_field,
            torques.iron,
            torques.balance_weight,
            torques.liquid_drag,
        ];
        let sum = parts.iter().sum::<f64>() + torques.friction;
        assert!((torques.net() - sum).abs() < 1e-15);
        largest_parts = std::array::from_fn(|i| largest(largest_parts[i], parts[i].abs()));
    }
    println!("torques: off by {worst:.1e} rad/s² of up to {largest_parts:.3?}");
    assert!(worst < 1e-6, "{worst}");
    // Each of them has its part in this flight, so none is checked in vain.
    assert!(
        largest_parts.iter().all(|part| *part > 0.01),
        "{largest_parts:?}"
    );
}

/// With friction, the rate that a step adds is the friction named times the step and the mean of
/// the other torques, here of those at its two ends. Where the card turns back, friction goes from
/// one limit to the other within the step, and the rate at its end, and the liquid's drag with it,
/// may or may not have the whole of that: the mean is out by half the drag of friction × step,
/// twice. The curve of the torques within a step is far below.
#[test]
fn the_friction_named_is_the_friction_that_acted() {
    let (mut at, course) = eventful();
    at.float.friction_angle = 1_f64.to_radians();
    let drag = 2.0 * at.float.yaw_damping_ratio * std::f64::consts::TAU / at.float.yaw_period;
    let mut flight = course.start(at);
    let (mut worst, mut friction) = (0.0, 0.0);
    while flight.time() < course.duration() {
        let smooth = |flight: &Simulation| {
            let torques = flight.torques();
            torques.net() - torques.friction
        };
        let (rate, before) = (flight.state().float.rate.z(), smooth(&flight));
        fly_on(&mut flight, STEP);
        let gained = (flight.state().float.rate.z() - rate) / STEP;
        let named = flight.torques().friction;
        let mean = 0.5 * (before + smooth(&flight));
        worst = largest(worst, (gained - named - mean).abs());
        friction = largest(friction, named.abs());
    }
    println!("friction: off by {worst:.1e} of {friction:.3} rad/s²");
    assert!(friction > 0.01, "{friction}");
    assert!(worst < 1.01 * drag * STEP * friction, "{worst}");
}

/// A card turned aside by an angle from where it rests and let go, and the angle in degrees by
/// which it stands aside from there so many seconds later.
fn turned_aside(at: Situation, degrees: f64) -> (Simulation, impl Fn(&Simulation) -> f64) {
    let mut flight = Course::on(40.0, 100.0).start(at);
    let rest = flight.reading().compass;
    let mut float = flight.state().float;
    let turn = DQuat::from_rotation_z(-degrees.to_radians());
    float.attitude = Rotation::from_quaternion(turn * float.attitude.quaternion);
    flight.disturb(float);
    (flight, move |flight: &Simulation| {
        flight.reading().compass.right_of(rest).to_degrees()
    })
}

/// Friction of 2° in the reference field holds a card 1.5° aside (there, and twice as far in half
/// that field), within 1e-4° for a minute; it does not hold one 5° aside, which comes to rest on
/// the way; and vibration frees both, which then come to where they rest without friction, within
/// what a minute leaves of 5°.
#[test]
fn friction_holds_the_card_until_vibration_frees_it() {
    for (horizontal, vertical, share) in [
        (20_000.0, 0.0, 1.0),
        (20_000.0, 40_000.0, 1.0),
        (10_000.0, -35_000.0, 2.0),
    ] {
        let mut at = situation(field(horizontal, vertical));
        at.float.friction_angle = 2_f64.to_radians();

        let (mut stuck, aside) = turned_aside(at, 1.5 * share);
        fly_on(&mut stuck, 2.0);
        let first = aside(&stuck);
        assert!((first - 1.5 * share).abs() < 0.1, "{first}");
        let mut creep = 0.0;
        while stuck.time() < 62.0 {
            fly_on(&mut stuck, 1.0);
            creep = largest(creep, (aside(&stuck) - first).abs());
        }
        println!("friction: creeps by {creep:.1e}° in a minute");
        assert!(creep < 1e-4, "{creep}");

        let (mut slides, aside) = turned_aside(at, 5.0 * share);
        fly_on(&mut slides, 60.0);
        let left = aside(&slides);
        assert!(left.abs() < 2.0 * share * 1.01, "{left}");
        assert!(slides.state().float.rate.z().abs() < 1e-9, "at rest");

        at.float.vibration = 1.0;
        for degrees in [1.5, 5.0] {
            let (mut freed, aside) = turned_aside(at, degrees * share);
            fly_on(&mut freed, 60.0);
            assert!(aside(&freed).abs() < 1e-6, "{}", aside(&freed));
        }
    }
}

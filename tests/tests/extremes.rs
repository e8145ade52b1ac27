//! Extremes give sense, not nonsense: whatever is accepted stays finite and within the stop, and
//! the magnetic pole, the magnetic equator, the steepest turns and the other hemisphere do what
//! can be said of them beforehand.
#![cfg(not(target_family = "wasm"))]

use checks::{
    Course, error, eventful, field, fly_on,
    random::{cases, displaced, iron_of, within},
    situation,
};
use compass::{
    aircraft::Aircraft,
    compass_float::{CompassFloat, Surroundings, TILT_STOP},
    deviation::{HARD_IRON, SOFT_IRON},
    field::{HORIZONTAL, MagneticField, VERTICAL, Zone},
    float_settings::{self, FloatSettings},
    frame::{Rotation, Vector},
    free_flight::{AIRSPEED_COMMAND, BANK_COMMAND, Controls, PITCH_COMMAND, RUDDER},
    gust::{GustNumbers, RoughAir},
    heading::MagneticHeading,
    legs::{AIRSPEED, BANK, Leg, Legs},
    maths,
    motion::{Kinematics, Motion},
    reading::Reading,
    simulation::{STEP, STEPS_PER_SECOND, Simulation, Situation},
    steady,
    unit::STANDARD_GRAVITY,
};
use flights::air::SeededAir;
use glam::DVec3;
use proptest::prelude::*;

/// Any settings of the float at all.
fn any_float() -> impl Strategy<Value = FloatSettings> {
    use float_settings::*;
    (
        (
            within(YAW_PERIOD),
            within(DAMPING_RATIO),
            within(REFERENCE),
            within(REFERENCE),
        ),
        (
            within(LEVEL_TILT),
            within(INERTIA_RATIO),
            within(DAMPING_RATIO),
        ),
        (
            within(LIQUID_SPIN_UP),
            within(BALANCE),
            within(FRICTION_ANGLE),
            within(VIBRATION),
        ),
    )
        .prop_map(|(yaw, tilt, rest)| FloatSettings {
            yaw_period: yaw.0,
            yaw_damping_ratio: yaw.1,
            reference_horizontal: yaw.2,
            reference_vertical: yaw.3,
            level_tilt: tilt.0,
            inertia_ratio: tilt.1,
            tilt_damping_ratio: tilt.2,
            liquid_spin_up: rest.0,
            balance_vertical: rest.1,
            friction_angle: rest.2,
            vibration: rest.3,
        })
}

/// Any settings that are accepted, a field and iron of any strength.
fn any_situation() -> impl Strategy<Value = Situation> {
    let hard = prop::array::uniform3(within(HARD_IRON));
    let soft = prop::array::uniform3(prop::array::uniform3(within(SOFT_IRON)));
    let air = prop_oneof![Just(RoughAir::Still), Just(RoughAir::Severe)];
    (
        any_float(),
        within(HORIZONTAL),
        within(VERTICAL),
        hard,
        soft,
        air,
    )
        .prop_map(|(float, h, z, hard, soft, air)| Situation {
            field: MagneticField::new(h, z, 0.0).expect("within the ranges"),
            iron: iron_of((hard, soft)),
            float,
            air,
        })
}

fn assert_sound(flight: &Simulation) {
    let (state, moment) = (flight.state(), flight.moment());
    let reading = moment.reading;
    let torques = moment.torques;
    for number in state
        .float
        .attitude
        .quaternion
        .to_array()
        .into_iter()
        .chain(state.float.rate.xyz.to_array())
        .chain(moment.motion.acceleration.xyz.to_array())
        .chain([
            state.float.liquid_spin,
            reading.compass.degrees(),
            reading.tilt,
            moment.motion.heading.degrees(),
            moment.motion.airspeed,
            torques.net(),
            flight.energy(),
        ])
    {
        assert!(number.is_finite(), "{state:?}");
    }
    assert!((0.0..360.0).contains(&reading.compass.degrees()));
    assert!((state.float.attitude.quaternion.length() - 1.0).abs() < 1e-12);
    assert!(reading.tilt <= STOP_PASSED, "{}", reading.tilt.to_degrees());
}

/// The stop may be passed by 0.1° at most.
const STOP_PASSED: f64 = TILT_STOP + 0.1 * std::f64::consts::PI / 180.0;

/// How many sub-steps a float may need for a whole flight here: the stiffest that are accepted
/// need two thousand and would settle for half a minute. Those fly in
/// [`any_float_stays_finite_and_within_the_stop`] instead, without settling.
const MOST_SUBSTEPS: f64 = 60.0;

fn any_affordable_situation() -> impl Strategy<Value = Situation> {
    any_situation().prop_filter("a float that settles soon", |at| {
        let float = CompassFloat::new(at.float).expect("within the ranges");
        float.fastest(at.field.total(), 10.0 * STANDARD_GRAVITY) * STEP / 0.2 < MOST_SUBSTEPS
    })
}

/// Legs to and at their limits, where no aircraft goes.
fn any_legs() -> impl Strategy<Value = Legs> {
    let bank = prop_oneof![Just(None), within(BANK).prop_map(Some)];
    let airspeed = prop_oneof![Just(None), within(AIRSPEED).prop_map(Some)];
    let duration = prop_oneof![Just(0.001), 0.25..6.0, 17.0..20.0_f64];
    let leg = (duration, bank, airspeed).prop_map(|(duration, bank, airspeed)| Leg {
        duration,
        bank,
        airspeed,
    });
    // Whatever cannot be flown at all is refused leg by leg, so that many legs remain.
    (within(AIRSPEED), prop::collection::vec(leg, 12)).prop_map(|(start, wanted)| {
        let mut legs = Vec::new();
        for leg in wanted {
            legs.push(leg);
            if Legs::new(start, &legs).is_err() {
                legs.pop();
            }
        }
        Legs::new(start, &legs).expect("each leg was accepted")
    })
}

fn any_controls() -> impl Strategy<Value = Controls> {
    (
        within(BANK_COMMAND),
        within(AIRSPEED_COMMAND),
        within(PITCH_COMMAND),
        within(RUDDER),
    )
        .prop_map(|(bank, airspeed, pitch, rudder)| {
            Controls::level(airspeed)
                .with_bank(bank)
                .with_pitch(pitch)
                .with_rudder(rudder)
        })
}

proptest! {
    #![proptest_config(cases(500))]

    /// Any float that is accepted, in any field and any iron, from any place within the stop,
    /// with the steps that a flight would take, in a bowl that tumbles.
    #[test]
    fn any_float_stays_finite_and_within_the_stop(
        at in any_situation(),
        start in displaced(),
        kinematics in prop::array::uniform4(-1.0..1.0_f64),
    ) {
        let compass_float = CompassFloat::new(at.float).expect("within the ranges");
        let fastest = compass_float.fastest(at.field.total(), 2.0 * STANDARD_GRAVITY).max(1.0);
        let step = (0.2 / fastest).min(STEP);
        let [pitch, bank, turn, roll] = kinematics;
        let around = |time: f64| {
            let motion = Motion::of(&Kinematics {
                heading: turn * time,
                pitch: 0.2 * pitch,
                bank: bank + roll * time,
                airspeed: 50.0,
                rate_of_turn: turn,
                pitch_rate: 0.0,
                bank_rate: roll,
                airspeed_rate: 0.0,
            });
            (Surroundings::of(&motion, &at.field, &at.iron), motion)
        };
        let mut float = CompassFloat::at_rest(&around(0.0).1);
        float.rate = Vector::from_xyz(DVec3::from_array(start.rate));
        for count in 0..1000 {
            let time = f64::from(count) * step;
            let [now, half, then] = [time, time + 0.5 * step, time + step].map(around);
            compass_float.advance(&mut float, &[now.0, half.0, then.0], step);
            let card: Rotation<_, _> = float.attitude.then(then.1.attitude.inverse());
            let reading = Reading::of(card, float.at_stop, at.field.zone());
            prop_assert!(reading.tilt <= STOP_PASSED, "{}", reading.tilt.to_degrees());
            prop_assert!(reading.compass.degrees().is_finite() && float.rate.xyz.is_finite());
            prop_assert!(compass_float.torques(&float, &then.0).net().is_finite());
        }
    }
}

proptest! {
    #![proptest_config(cases(24))]

    #[test]
    fn any_prescribed_flight_stays_finite_and_within_the_stop(
        at in any_affordable_situation(),
        heading in 0.0..360.0_f64,
        legs in any_legs(),
        seed in any::<u64>(),
    ) {
        let controls = Controls::level(legs.airspeed_at_start());
        let seconds = legs.duration().min(40.0);
        let aircraft = Aircraft::prescribed(MagneticHeading::from_degrees(heading), legs);
        let mut flight = Simulation::new(at, aircraft, controls).expect("within the ranges");
        let air = SeededAir { seed };
        while flight.time() < seconds {
            flight.step(&controls, air.at(flight.state().step));
            assert_sound(&flight);
        }
    }

    #[test]
    fn any_free_flight_stays_finite_and_within_the_stop(
        at in any_affordable_situation(),
        heading in 0.0..360.0_f64,
        flown in prop::collection::vec(any_controls(), 10),
        seed in any::<u64>(),
    ) {
        let aircraft = Aircraft::free(MagneticHeading::from_degrees(heading), &flown[0]);
        let mut flight = Simulation::new(at, aircraft, flown[0]).expect("within the ranges");
        let air = SeededAir { seed };
        for controls in &flown {
            for _ in 0..4 * STEPS_PER_SECOND {
                flight.step(controls, air.at(flight.state().step));
                assert_sound(&flight);
            }
            let between = flight.moment_after(0.4 * STEP).reading.tilt;
            prop_assert!(between <= STOP_PASSED, "{}", between.to_degrees());
        }
    }
}

/// At the magnetic pole nothing horizontal pulls: the card goes where the liquid takes it and
/// stays there, and the reading says that it is unreliable.
#[test]
fn at_the_magnetic_pole_the_card_wanders_and_says_so() {
    let course = Course::on(0.0, 100.0)
        .roll(3.0, 20.0)
        .hold(30.0)
        .roll(3.0, 0.0)
        .hold(200.0);
    let mut flight = course.start(situation(field(0.0, 55_000.0)));
    while flight.time() < course.duration() {
        fly_on(&mut flight, 0.5);
        assert_sound(&flight);
        assert_eq!(flight.reading().zone, Zone::Unreliable);
        assert_eq!(flight.torques().horizontal_field, 0.0);
    }
    let left = error(&flight);
    assert!(left.abs() > 5.0, "{left}");
    fly_on(&mut flight, 60.0);
    assert!(
        (error(&flight) - left).abs() < 0.1,
        "it found north by itself"
    );
}

/// No field at all: nothing to read, and nothing breaks.
#[test]
fn without_any_field_nothing_breaks() {
    let (at, course) = eventful();
    let mut flight = course.start(Situation {
        field: field(0.0, 0.0),
        ..at
    });
    while flight.time() < course.duration() {
        fly_on(&mut flight, 0.5);
        assert_sound(&flight);
    }
}

/// On the magnetic equator Z = 0. What is exactly true there: the vertical field turns no card;
/// north and south are alike, so a manoeuvre on the opposite heading errs by the same; and a card
/// square to the apparent vertical errs only because its plane leans, tan(reading) = cos φ
/// tan(heading), by no more than asin tan²(φ/2) and not at all on the cardinal points.
#[test]
fn on_the_magnetic_equator_north_and_south_are_alike() {
    let at = situation(field(35_000.0, 0.0));
    let course = Course::on(320.0, 100.0)
        .roll(3.0, 20.0)
        .hold(40.0)
        .roll(3.0, 0.0)
        .hold(20.0);
    let (mut one, mut other) = (course.start(at), course.turned(180.0).start(at));
    while one.time() < course.duration() {
        fly_on(&mut one, 0.5);
        fly_on(&mut other, 0.5);
        assert_eq!(one.torques().vertical_field, 0.0);
        // The same arithmetic but for the rounding of the heading.
        assert!((error(&one) - error(&other)).abs() < 1e-9);
    }
    for bank in [5.0_f64, 15.0, 30.0, 60.0].map(f64::to_radians) {
        let half = maths::tan(bank / 2.0);
        let most = maths::asin(half * half) + 1e-12;
        let errors = (0..=360).map(|degrees| {
            let heading = MagneticHeading::from_degrees(f64::from(degrees));
            (
                degrees,
                steady::in_turn(heading, bank, 0.0)
                    .error_from(heading)
                    .abs(),
            )
        });
        for (degrees, error) in errors {
            assert!(error <= most, "{degrees}: {error}");
            assert!(degrees % 90 != 0 || error < 1e-12, "{degrees}: {error}");
        }
    }
}

/// Zero airspeed turns infinitely fast: it is refused, at the start and in a leg, in a sentence.
#[test]
fn zero_airspeed_is_refused_in_a_sentence() {
    let refused = Legs::new(0.0, &[]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "airspeed must be from 1 kt to 2000 kt, not 0 kt"
    );
    let leg = Leg {
        duration: 30.0,
        bank: None,
        airspeed: Some(0.0),
    };
    let refused = Legs::new(50.0, &[leg]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "leg 1: airspeed must be from 1 kt to 2000 kt, not 0 kt"
    );
    assert!(Controls::level(0.0).airspeed() > 0.0);
}

/// How far a card comes round, degrees, while the aircraft turns a whole circle slowly.
fn comes_round(at: Situation, bank: f64) -> f64 {
    let mut flight = Course::on(90.0, 1500.0)
        .roll(60.0, bank)
        .hold(4000.0)
        .start(at);
    fly_on(&mut flight, 100.0);
    let turn = flight.motion().rate_of_turn;
    let circle = std::f64::consts::TAU / turn.abs();
    let end = flight.time() + circle;
    let mut round = 0.0;
    let mut before = flight.reading().compass;
    while flight.time() < end {
        fly_on(&mut flight, 0.5);
        let now = flight.reading().compass;
        round += now.right_of(before).to_degrees();
        before = now;
        assert_sound(&flight);
    }
    round
}

/// At 60° of bank where the dip is 60°, well past 90° − dip, the simulated card swings to and fro
/// and never comes round, as the closed form says; at 20° it goes round with the aircraft. After
/// a circle it is back where it was but for the half second by which the circle is rounded.
#[test]
fn at_sixty_degrees_of_bank_the_card_never_comes_round() {
    for dip in [60.0_f64, -60.0] {
        let mut at = situation(field(20_000.0, 20_000.0 * maths::tan(dip.to_radians())));
        at.float = FloatSettings::brisk();
        at.float.liquid_spin_up = 0.0;
        let (steep, gentle) = (comes_round(at, 60.0), comes_round(at, 20.0));
        println!("dip {dip}: comes round by {steep:.1}° at 60° of bank, {gentle:.1}° at 20°");
        assert!(steep.abs() < 5.0, "{steep}");
        assert!((gentle - 360.0).abs() < 5.0, "{gentle}");
    }
}

/// Turning right off north, the card lags in the north, and south of the equator it leads.
#[test]
fn an_inverted_dip_turns_lag_into_lead() {
    let after = |dip: f64| {
        let north = field(20_000.0, 20_000.0 * maths::tan(dip.to_radians()));
        let course = Course::on(355.0, 100.0).roll(3.0, 15.0).hold(10.0);
        let mut flight = course.start(situation(north));
        fly_on(&mut flight, 5.0);
        error(&flight)
    };
    let (north, south) = (after(65.0), after(-65.0));
    assert!(north < -5.0 && south > 5.0, "{north} {south}");
}

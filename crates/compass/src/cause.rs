//! Why the card does what it does at one instant: the cause, chosen by the numbers.
//!
//! The torques about the card's axis say what turns the card now; the [`Difference`] says how the
//! reading compares with the heading now. A cause names what dominates and how it bears on that
//! difference, so that a sentence made from it is true by the numbers.
//!
//! # Which cause
//! In this order:
//!
//! 1. the card touches its stop, or the horizontal field is too weak to steady any card;
//! 2. the reading errs mostly because the card's plane leans, not because the card has turned in
//!    it: the forward axis, laid into a leaning plane, points elsewhere than on the level;
//! 3. something *pulls* the card off the horizontal field (the vertical field through a tilt, the
//!    balance weight, iron), and accounts for at least half of what the horizontal field holds
//!    against it;
//! 4. otherwise something *holds* the card off (friction, or the liquid that turns with the
//!    aircraft), or the horizontal field brings it back, or the liquid brakes it;
//! 5. else it is at rest.
//!
//! # Tilt
//! With n the card's axis (down) in level axes (forward, right, down), the card leans right by
//! atan(−n_r/n_d) and forward by atan(−n_f/n_d). The vertical field Z pulls along the card's own
//! east e with Z e_d, and since e is square to n this is exactly the sum of a part through either
//! lean, Z e_r tan(right) + Z e_f tan(forward).

use crate::angle::half_turn;
use crate::compass_float::TILT_STOP;
use crate::field::{MagneticField, Zone};
use crate::frame::{Card, Earth, Vector};
use crate::maths;
use crate::reading::{Difference, TURNING_FROM};
use crate::simulation::Moment;

/// A torque weaker than this does not count, rad/s²; chosen: it would turn a free card by 0.14°
/// in a second, and holds the standard card 0.26° off.
pub const SLIGHT_TORQUE: f64 = 0.005;
/// A bank smaller than this does not count as one, radians: a degree, since banks are told in
/// whole degrees; chosen.
pub const SLIGHT_BANK: f64 = std::f64::consts::PI / 180.0;
/// A change of speed slower than this does not count, m/s²: it tips the apparent vertical by half
/// a degree; chosen.
pub const SLIGHT_SPEED_CHANGE: f64 = 0.0856;

/// Why the card does what it does now, and how the reading compares with the heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Explanation {
    /// The cause.
    pub cause: Cause,
    /// How the reading compares with the heading, as everywhere else.
    pub difference: Difference,
}

/// What dominates about the card now. Angles in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// Nothing to speak of acts about the card's axis.
    Steady,
    /// The card touches its stop: the reading is not to be trusted.
    AtStop {
        /// The angle between card and bowl.
        tilt: f64,
    },
    /// The horizontal field is too weak to steady a card.
    WeakField {
        /// Horizontal intensity, T.
        horizontal: f64,
    },
    /// The reading errs because the card leans: nothing pulls it round by as much.
    LeaningCard {
        /// The angle between the card's plane and the level.
        lean: f64,
        /// How much of the reading less the heading this accounts for, right positive.
        error: f64,
    },
    /// The vertical field pulls the north mark sideways because the aircraft, and the card with
    /// it, is banked.
    VerticalFieldThroughBank {
        /// The aircraft's bank, right positive; on the side to which the card leans.
        bank: f64,
        /// Toward which wing the north mark is pulled.
        toward: Wing,
        /// What that does.
        pull: Pull,
    },
    /// The vertical field pulls the north mark along the aircraft because a change of speed tips
    /// the card.
    VerticalFieldThroughSpeedChange {
        /// Rate of change of airspeed, m/s²; positive tips the card's front down.
        airspeed_rate: f64,
        /// How far the card leans forward (front down positive).
        lean: f64,
        /// Toward which end of the aircraft the north mark is pulled.
        toward: End,
        /// What that does.
        pull: Pull,
    },
    /// The vertical field pulls the north mark because the card leans for some other reason: a
    /// slip, rough air, or its own swing.
    VerticalFieldThroughTilt {
        /// The lean through which it pulls: right or forward positive, by `toward`.
        lean: f64,
        /// Where the north mark is pulled.
        toward: Way,
        /// What that does.
        pull: Pull,
    },
    /// Apparent gravity pulls the balance weight.
    BalanceWeight(Pull),
    /// The aircraft's iron pulls the card.
    Iron(Pull),
    /// The horizontal field brings the card back.
    HorizontalField(Pull),
    /// The liquid carries the card along with the turn.
    LiquidCarries(Pull),
    /// The liquid slows the card against what else turns it.
    LiquidBrakes(Pull),
    /// The pivot's friction holds the card.
    Friction(Pull),
}

/// A torque and what it does now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// The torque about the card's axis, rad/s², clockwise positive; never zero.
    pub torque: f64,
    /// Which way it turns the card.
    pub turns: Turns,
    /// How that bears on the difference.
    pub effect: Effect,
}

/// Which way a card is turned, from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turns {
    /// Clockwise: the reading falls.
    Clockwise,
    /// Anticlockwise: the reading grows.
    Anticlockwise,
}

/// How a pull bears on the difference between reading and heading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// It pulls toward the side to which the reading errs: it makes the error, or adds to it.
    Makes,
    /// It pulls against the error: it lessens it.
    Lessens,
    /// There is no error to speak of, yet or any more.
    NoError,
}

/// A wing of a banked aircraft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wing {
    /// The lower one.
    Low,
    /// The higher one.
    High,
}

/// An end of the aircraft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The front.
    Nose,
    /// The rear.
    Tail,
}

/// A direction from the pilot's seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Toward the left wing.
    Left,
    /// Toward the right wing.
    Right,
    /// Toward the nose.
    Nose,
    /// Toward the tail.
    Tail,
}

/// Why the card does what it does at a moment in a field.
pub fn explain(moment: &Moment, field: &MagneticField) -> Explanation {
    let difference = moment.difference();
    Explanation {
        cause: cause(moment, field, difference),
        difference,
    }
}

/// How the card lies, in level axes: forward, right, down.
struct Lie {
    /// How far it leans forward and right, as tangents; none for a card on its side or beyond.
    leans: Option<[f64; 2]>,
    /// The card's own east.
    east: [f64; 3],
    /// How far the card's axis is from the vertical.
    lean: f64,
    /// The reading less the heading if the card's north lay along the horizontal field's share
    /// of the card's plane.
    by_lean: f64,
}

impl Lie {
    fn of(moment: &Moment) -> Self {
        let motion = &moment.motion;
        let to_earth = moment.reading.card.then(motion.attitude);
        let axis = to_earth.apply(Vector::z_axis());
        let east = to_earth.apply(Vector::<Card>::new(0.0, 1.0, 0.0));
        let (sin, cos) = maths::sin_cos(motion.heading.radians());
        let level =
            |v: Vector<Earth>| [v.x() * cos + v.y() * sin, v.y() * cos - v.x() * sin, v.z()];
        let [axis_forward, axis_right, down] = level(axis);
        let within = |v: Vector<Earth>| v - axis * v.dot(axis);
        let north = within(Vector::x_axis());
        let forward = within(motion.attitude.apply(Vector::x_axis()));
        let reading = maths::atan2(axis.dot(north.cross(forward)), north.dot(forward));
        Self {
            leans: (down > 0.05).then(|| [-axis_forward / down, -axis_right / down]),
            east: level(east),
            lean: axis.angle_to(Vector::z_axis()),
            by_lean: half_turn(reading - motion.heading.radians()),
        }
    }
}

/// The side to which the reading errs, as the difference has it: above zero if it is greater than
/// the heading, zero if it agrees.
fn side_of_error(difference: Difference, rate_of_turn: f64) -> f64 {
    match difference {
        Difference::Agrees => 0.0,
        Difference::ReadsMore(_) => 1.0,
        Difference::ReadsLess(_) => -1.0,
        Difference::Leads(_) => rate_of_turn.signum(),
        Difference::Lags(_) => -rate_of_turn.signum(),
    }
}

fn cause(moment: &Moment, field: &MagneticField, difference: Difference) -> Cause {
    let torques = &moment.torques;
    if moment.reading.at_stop {
        return Cause::AtStop {
            tilt: moment.reading.tilt.max(TILT_STOP),
        };
    }
    if field.zone() == Zone::Unreliable {
        return Cause::WeakField {
            horizontal: field.horizontal(),
        };
    }
    let rate = moment.motion.rate_of_turn;
    let side = side_of_error(difference, rate);
    let pull = |torque: f64| Pull {
        torque,
        turns: if torque > 0.0 {
            Turns::Clockwise
        } else {
            Turns::Anticlockwise
        },
        // A card turned clockwise reads less.
        effect: match torque * side {
            0.0 => Effect::NoError,
            toward_less if toward_less < 0.0 => Effect::Makes,
            _ => Effect::Lessens,
        },
    };
    let lie = Lie::of(moment);
    let error = moment.reading.compass.error_from(moment.motion.heading);
    let by_turning = half_turn(error - lie.by_lean);
    if lie.by_lean * side > 0.0 && lie.by_lean.abs() > by_turning.abs() {
        return Cause::LeaningCard {
            lean: lie.lean,
            error: lie.by_lean,
        };
    }

    let horizontal = torques.horizontal_field;
    let weight = torques.balance_weight;
    let strongest = [torques.vertical_field, weight, torques.iron]
        .into_iter()
        .fold(0.0_f64, |a, b| if b.abs() > a.abs() { b } else { a });
    if strongest.abs() >= SLIGHT_TORQUE && strongest.abs() >= 0.5 * horizontal.abs() {
        return if strongest == torques.vertical_field {
            through_tilt(moment, field, &lie, pull(strongest))
        } else if strongest == weight {
            Cause::BalanceWeight(pull(weight))
        } else {
            Cause::Iron(pull(torques.iron))
        };
    }
    let (drag, friction) = (torques.liquid_drag, torques.friction);
    let holds = |torque: f64| {
        torque * horizontal < 0.0
            && torque.abs() >= SLIGHT_TORQUE
            && torque.abs() >= 0.5 * horizontal.abs()
    };
    if holds(friction) && friction.abs() >= drag.abs() {
        Cause::Friction(pull(friction))
    } else if holds(drag) && rate.abs() >= TURNING_FROM && drag * rate > 0.0 {
        Cause::LiquidCarries(pull(drag))
    } else if horizontal.abs() >= SLIGHT_TORQUE && horizontal.abs() >= drag.abs() {
        Cause::HorizontalField(pull(horizontal))
    } else if drag.abs() >= SLIGHT_TORQUE {
        if rate.abs() >= TURNING_FROM && drag * rate > 0.0 {
            Cause::LiquidCarries(pull(drag))
        } else {
            Cause::LiquidBrakes(pull(drag))
        }
    } else if friction.abs() >= SLIGHT_TORQUE {
        Cause::Friction(pull(friction))
    } else {
        Cause::Steady
    }
}

/// The vertical field's pull by the lean through which most of it acts.
fn through_tilt(moment: &Moment, field: &MagneticField, lie: &Lie, pull: Pull) -> Cause {
    let motion = &moment.motion;
    let down = field.vertical() > 0.0;
    let [east_forward, east_right, _] = lie.east;
    let Some([forward, right]) = lie.leans else {
        // On its side: whither the north mark itself is turned.
        let along = |component: f64| component * pull.torque > 0.0;
        let toward = if east_right.abs() >= east_forward.abs() {
            if along(east_right) {
                Way::Right
            } else {
                Way::Left
            }
        } else if along(east_forward) {
            Way::Nose
        } else {
            Way::Tail
        };
        return Cause::VerticalFieldThroughTilt {
            lean: lie.lean,
            toward,
            pull,
        };
    };
    let [through_forward, through_right] = [east_forward * forward, east_right * right];
    // The torque has the sign of their sum, so the larger of those that have it too is meant.
    let sum = through_forward + through_right;
    let bears = |part: f64| if part * sum > 0.0 { part.abs() } else { 0.0 };
    if bears(through_right) >= bears(through_forward) {
        let lean = maths::atan(right);
        if motion.bank.abs() >= SLIGHT_BANK && motion.bank * lean > 0.0 {
            return Cause::VerticalFieldThroughBank {
                bank: motion.bank,
                toward: if down { Wing::Low } else { Wing::High },
                pull,
            };
        }
        Cause::VerticalFieldThroughTilt {
            lean,
            toward: if (lean > 0.0) == down {
                Way::Right
            } else {
                Way::Left
            },
            pull,
        }
    } else {
        let lean = maths::atan(forward);
        let to_the_nose = (lean > 0.0) == down;
        let rate = motion.airspeed_rate;
        if rate.abs() >= SLIGHT_SPEED_CHANGE && rate * lean > 0.0 {
            return Cause::VerticalFieldThroughSpeedChange {
                airspeed_rate: rate,
                lean,
                toward: if to_the_nose { End::Nose } else { End::Tail },
                pull,
            };
        }
        Cause::VerticalFieldThroughTilt {
            lean,
            toward: if to_the_nose { Way::Nose } else { Way::Tail },
            pull,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::aircraft::Aircraft;
    use crate::deviation::AircraftIron;
    use crate::float_settings::FloatSettings;
    use crate::frame::{Body, Rotation};
    use crate::free_flight::Controls;
    use crate::gust::{GustNumbers, RoughAir, StillAir};
    use crate::heading::MagneticHeading;
    use crate::legs::{Leg, Legs};
    use crate::simulation::{STEPS_PER_SECOND, Simulation, Situation};
    use crate::unit::{KNOT, NANOTESLA};
    use glam::DQuat;

    /// A flight to be explained: figures as people use them.
    #[derive(Clone, Copy, Debug)]
    struct Case {
        dip: f64,
        heading: f64,
        bank: f64,
        airspeed: [f64; 2],
        rudder: f64,
        float: FloatSettings,
    }

    const LEVEL: Case = Case {
        dip: 65.0,
        heading: 0.0,
        bank: 0.0,
        airspeed: [100.0, 100.0],
        rudder: 0.0,
        float: FloatSettings {
            yaw_period: 6.0,
            yaw_damping_ratio: 0.7,
            reference_horizontal: 20_000.0 * NANOTESLA,
            reference_vertical: 40_000.0 * NANOTESLA,
            level_tilt: 3.0 * std::f64::consts::PI / 180.0,
            inertia_ratio: 0.6,
            tilt_damping_ratio: 0.7,
            liquid_spin_up: 20.0,
            balance_vertical: 0.0,
            friction_angle: 0.0,
            vibration: 0.0,
        },
    };

    fn field(dip: f64) -> MagneticField {
        let (sin, cos) = maths::sin_cos(dip.to_radians());
        MagneticField::new(48e-6 * cos, 48e-6 * sin, 0.0).unwrap()
    }

    fn start(case: &Case, iron: AircraftIron) -> (Simulation, Controls) {
        let level = Controls::level(case.airspeed[0] * KNOT);
        let situation = Situation {
            field: field(case.dip),
            iron,
            float: case.float,
            air: RoughAir::Still,
        };
        let aircraft = Aircraft::free(MagneticHeading::from_degrees(case.heading), &level);
        let flight = Simulation::new(situation, aircraft, level).unwrap();
        let controls = level
            .with_bank(case.bank.to_radians())
            .with_airspeed(case.airspeed[1] * KNOT)
            .with_rudder(case.rudder);
        (flight, controls)
    }

    fn fly(flight: &mut Simulation, controls: &Controls, seconds: f64) {
        for step in 0..(seconds * STEPS_PER_SECOND as f64) as u64 {
            flight.step(controls, StillAir.at(step));
        }
    }

    fn explained(case: &Case, seconds: f64) -> (Explanation, Moment) {
        let (mut flight, controls) = start(case, AircraftIron::NONE);
        fly(&mut flight, &controls, seconds);
        let moment = flight.moment();
        (explain(&moment, &field(case.dip)), moment)
    }

    /// The card turned about its own axis by a thousandth of a degree as a torque would.
    fn nudged(moment: &Moment, torque: f64) -> Rotation<Card, Body> {
        let turn = DQuat::from_rotation_z(1e-3_f64.to_radians() * torque.signum());
        Rotation::from_quaternion(moment.reading.card.quaternion * turn)
    }

    /// What a pull says, checked by turning the card a little and reading it again.
    fn check_pull(pull: &Pull, moment: &Moment, difference: Difference) {
        assert_ne!(pull.torque, 0.0);
        assert_eq!(pull.turns == Turns::Clockwise, pull.torque > 0.0);
        let after =
            crate::reading::Reading::of(nudged(moment, pull.torque), false, moment.reading.zone);
        let heading = moment.motion.heading;
        let error = |reading: crate::heading::CompassHeading| reading.error_from(heading).abs();
        let grows = error(after.compass) > error(moment.reading.compass);
        match pull.effect {
            Effect::Makes => assert!(grows),
            Effect::Lessens => assert!(!grows),
            Effect::NoError => assert_eq!(difference, Difference::Agrees),
        }
        if difference == Difference::Agrees {
            assert_eq!(pull.effect, Effect::NoError);
        }
    }

    /// How the north mark moves in body axes if the card gives way to a torque.
    fn north_mark_moves(moment: &Moment, torque: f64) -> Vector<Body> {
        nudged(moment, torque).apply(Vector::x_axis()) - moment.reading.card.apply(Vector::x_axis())
    }

    /// All that an explanation says, against the moment that it explains, by other routes.
    fn check(explanation: &Explanation, moment: &Moment, field: &MagneticField) {
        let Explanation { cause, difference } = *explanation;
        let torques = &moment.torques;
        assert_eq!(difference, moment.difference());
        assert_eq!(
            matches!(cause, Cause::AtStop { .. }),
            moment.reading.at_stop
        );
        let parts = [
            torques.horizontal_field,
            torques.vertical_field,
            torques.iron,
            torques.balance_weight,
            torques.liquid_drag,
            torques.friction,
        ];
        let vertical = |pull: &Pull| {
            check_pull(pull, moment, difference);
            assert_eq!(pull.torque, torques.vertical_field);
            for other in [torques.iron, torques.balance_weight] {
                assert!(other.abs() <= pull.torque.abs());
            }
        };
        match cause {
            Cause::Steady => assert!(parts.iter().all(|part| part.abs() < SLIGHT_TORQUE)),
            Cause::AtStop { tilt } => assert!(tilt >= TILT_STOP),
            Cause::WeakField { horizontal } => {
                assert!(horizontal <= crate::field::UNRELIABLE_BELOW);
            }
            Cause::LeaningCard { lean, error } => {
                // Turned to where no part of the horizontal field pulls it, the card reads the
                // heading plus this error.
                assert!(lean > 0.0 && difference != Difference::Agrees);
                let to_earth = moment.reading.card.then(moment.motion.attitude);
                let pulled = to_earth.inverse().apply(field.horizontal_part());
                let turn = DQuat::from_rotation_z(maths::atan2(pulled.y(), pulled.x()));
                let card = Rotation::from_quaternion(moment.reading.card.quaternion * turn);
                let free = crate::reading::Reading::of(card, false, moment.reading.zone);
                let left = free.compass.error_from(moment.motion.heading);
                assert!((left - error).abs() < 1e-9);
                let whole = moment.reading.compass.error_from(moment.motion.heading);
                assert!(whole * error > 0.0 && error.abs() > 0.5 * whole.abs());
            }
            Cause::VerticalFieldThroughBank { bank, toward, pull } => {
                vertical(&pull);
                assert_eq!(bank, moment.motion.bank);
                let moves = north_mark_moves(moment, pull.torque).y();
                let wing = Vector::<Body>::new(0.0, moves.signum(), 0.0);
                let low = moment.motion.attitude.apply(wing).z() > 0.0;
                assert_eq!(toward == Wing::Low, low);
                assert_eq!(low, field.vertical() > 0.0);
            }
            Cause::VerticalFieldThroughSpeedChange {
                airspeed_rate,
                lean,
                toward,
                pull,
            } => {
                vertical(&pull);
                assert_eq!(airspeed_rate, moment.motion.airspeed_rate);
                assert!(airspeed_rate * lean > 0.0);
                let moves = north_mark_moves(moment, pull.torque).x();
                assert_eq!(toward == End::Nose, moves > 0.0);
            }
            Cause::VerticalFieldThroughTilt { toward, pull, .. } => {
                vertical(&pull);
                let moves = north_mark_moves(moment, pull.torque);
                assert!(match toward {
                    Way::Left => moves.y() < 0.0,
                    Way::Right => moves.y() > 0.0,
                    Way::Nose => moves.x() > 0.0,
                    Way::Tail => moves.x() < 0.0,
                });
            }
            Cause::BalanceWeight(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.balance_weight);
            }
            Cause::Iron(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.iron);
            }
            Cause::HorizontalField(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.horizontal_field);
                // It brings the card back to the field's share of the card's plane.
                let to_earth = |card: Rotation<Card, Body>| {
                    let north = card.then(moment.motion.attitude).apply(Vector::x_axis());
                    north.dot(Vector::x_axis())
                };
                assert!(to_earth(nudged(moment, pull.torque)) > to_earth(moment.reading.card));
            }
            Cause::LiquidCarries(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.liquid_drag);
                assert!(pull.torque * moment.motion.rate_of_turn > 0.0);
            }
            Cause::LiquidBrakes(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.liquid_drag);
            }
            Cause::Friction(pull) => {
                check_pull(&pull, moment, difference);
                assert_eq!(pull.torque, torques.friction);
            }
        }
    }

    #[test]
    fn nothing_said_is_untrue_over_a_grid_of_situations() {
        let mut told = 0_u32;
        for dip in [-80.0, -65.0, -30.0, -5.0, 0.0, 5.0, 30.0, 65.0, 80.0] {
            for eighth in 0..8_u32 {
                for bank in [-40.0, -18.0, -7.0, 0.0, 7.0, 18.0, 40.0] {
                    for airspeed in [[100.0, 100.0], [80.0, 160.0], [160.0, 80.0]] {
                        for liquid_spin_up in [0.0, 20.0] {
                            let case = Case {
                                dip,
                                heading: 45.0 * f64::from(eighth),
                                bank,
                                airspeed,
                                rudder: if eighth == 3 { 0.6 } else { 0.0 },
                                float: FloatSettings {
                                    liquid_spin_up,
                                    balance_vertical: if eighth % 2 == 0 { 0.0 } else { 30e-6 },
                                    friction_angle: if eighth == 5 { 0.02 } else { 0.0 },
                                    ..LEVEL.float
                                },
                            };
                            let (mut flight, controls) = start(&case, AircraftIron::NONE);
                            let level = controls.with_bank(0.0).with_rudder(0.0);
                            // Rolling in, turning, rolling out and swinging out.
                            for (controls, seconds) in [
                                (controls, 0.0),
                                (controls, 0.6),
                                (controls, 1.4),
                                (controls, 8.0),
                                (level, 1.5),
                                (level, 4.0),
                            ] {
                                fly(&mut flight, &controls, seconds);
                                let moment = flight.moment();
                                let field = field(dip);
                                check(&explain(&moment, &field), &moment, &field);
                                told += 1;
                            }
                        }
                    }
                }
            }
        }
        assert_eq!(told, 9 * 8 * 7 * 3 * 2 * 6);
    }

    #[test]
    fn a_turn_through_north_lags_and_one_through_south_leads_mirrored_south_of_the_equator() {
        for (dip, wing) in [(65.0, Wing::Low), (-65.0, Wing::High)] {
            for bank in [15.0, -15.0] {
                for (through, lags) in [(0.0, dip > 0.0), (180.0, dip < 0.0)] {
                    let case = Case {
                        dip,
                        heading: through - 2.0 * bank,
                        bank,
                        ..LEVEL
                    };
                    let (Explanation { cause, difference }, _) = explained(&case, 11.0);
                    let Cause::VerticalFieldThroughBank {
                        bank: told,
                        toward,
                        pull,
                    } = cause
                    else {
                        panic!("{case:?}: {cause:?}");
                    };
                    assert!((told.to_degrees() - bank).abs() < 0.5);
                    assert_eq!((toward, pull.effect), (wing, Effect::Makes));
                    assert_eq!(matches!(difference, Difference::Lags(_)), lags);
                    assert_eq!(matches!(difference, Difference::Leads(_)), !lags);
                }
            }
        }
    }

    #[test]
    fn gaining_speed_on_east_reads_less_and_losing_it_more() {
        for (airspeed, less, toward) in [
            ([80.0, 180.0], true, End::Nose),
            ([180.0, 80.0], false, End::Tail),
        ] {
            let case = Case {
                heading: 90.0,
                airspeed,
                ..LEVEL
            };
            let (Explanation { cause, difference }, _) = explained(&case, 6.0);
            assert_eq!(matches!(difference, Difference::ReadsLess(_)), less);
            let Cause::VerticalFieldThroughSpeedChange {
                toward: told, pull, ..
            } = cause
            else {
                panic!("{cause:?}");
            };
            assert_eq!((told, pull.effect), (toward, Effect::Makes));
        }
    }

    #[test]
    fn without_a_vertical_field_it_is_the_liquid_or_the_lean() {
        let turn = Case {
            dip: 0.0,
            heading: 300.0,
            bank: 15.0,
            ..LEVEL
        };
        // Long in the turn, and back on north, where a lean alone does nothing.
        let (mut flight, controls) = start(&turn, AircraftIron::NONE);
        fly(&mut flight, &controls, 30.0);
        while flight.motion().heading.degrees() > 1.0 {
            fly(&mut flight, &controls, 0.05);
        }
        let moment = flight.moment();
        let Explanation { cause, difference } = explain(&moment, &field(0.0));
        assert!(matches!(difference, Difference::Lags(_)), "{difference:?}");
        assert!(
            matches!(cause, Cause::LiquidCarries(Pull { effect, .. }) if effect == Effect::Makes),
            "{cause:?}"
        );

        let steep = Case {
            bank: 45.0,
            heading: 45.0,
            float: FloatSettings {
                liquid_spin_up: 3600.0,
                ..LEVEL.float
            },
            ..turn
        };
        let (mut flight, controls) = start(&steep, AircraftIron::NONE);
        fly(&mut flight, &controls, 8.0);
        while (flight.motion().heading.degrees() - 45.0).abs() > 1.0 {
            fly(&mut flight, &controls, 0.05);
        }
        let moment = flight.moment();
        let told = explain(&moment, &field(0.0));
        check(&told, &moment, &field(0.0));
        assert!(
            matches!(told.cause, Cause::LeaningCard { error, .. } if error < 0.0),
            "{told:?}"
        );
    }

    #[test]
    fn after_the_roll_out_the_horizontal_field_brings_the_card_back() {
        let case = Case {
            heading: 340.0,
            bank: 18.0,
            float: FloatSettings {
                yaw_damping_ratio: 0.2,
                ..LEVEL.float
            },
            ..LEVEL
        };
        let (mut flight, controls) = start(&case, AircraftIron::NONE);
        fly(&mut flight, &controls, 8.0);
        fly(&mut flight, &controls.with_bank(0.0), 1.7);
        let moment = flight.moment();
        let told = explain(&moment, &field(65.0));
        assert!(
            matches!(told.cause, Cause::HorizontalField(Pull { effect, .. })
                if effect == Effect::Lessens),
            "{told:?} {moment:?}"
        );
    }

    #[test]
    fn iron_weight_weak_field_and_stop_are_named() {
        let iron = AircraftIron::new([0.0, 5e-6, 0.0], [[0.0; 3]; 3]).unwrap();
        let (flight, _) = start(&LEVEL, iron);
        let told = explain(&flight.moment(), &field(65.0));
        assert!(
            matches!(told.cause, Cause::Iron(Pull { effect, .. }) if effect == Effect::Makes),
            "{told:?}"
        );

        let (told, moment) = explained(&LEVEL, 1.0);
        assert_eq!(told.cause, Cause::Steady, "{moment:?}");
        assert_eq!(told.difference, Difference::Agrees);

        // The weight pulls only while the card swings out of square to the apparent vertical.
        let shaken = Moment {
            torques: crate::reading::Torques {
                balance_weight: -0.2,
                liquid_drag: 0.1,
                ..moment.torques
            },
            ..moment
        };
        let told = explain(&shaken, &field(65.0));
        assert!(
            matches!(told.cause, Cause::BalanceWeight(Pull { turns, .. })
                if turns == Turns::Anticlockwise),
            "{told:?}"
        );

        let (told, _) = explained(&Case { dip: 88.5, ..LEVEL }, 1.0);
        assert!(matches!(told.cause, Cause::WeakField { .. }), "{told:?}");

        let leg = Leg {
            duration: 10.0,
            bank: None,
            airspeed: Some(180.0 * KNOT),
        };
        let legs = Legs::new(60.0 * KNOT, &[leg]).unwrap();
        let aircraft = Aircraft::prescribed(MagneticHeading::from_degrees(60.0), legs);
        let situation = Situation {
            field: field(65.0),
            iron: AircraftIron::NONE,
            float: LEVEL.float,
            air: RoughAir::Still,
        };
        let controls = Controls::level(60.0 * KNOT);
        let mut flight = Simulation::new(situation, aircraft, controls).unwrap();
        fly(&mut flight, &controls, 5.0);
        let moment = flight.moment();
        let told = explain(&moment, &field(65.0));
        check(&told, &moment, &field(65.0));
        assert!(matches!(told.cause, Cause::AtStop { .. }), "{told:?}");
    }
}

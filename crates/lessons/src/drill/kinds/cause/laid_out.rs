//! Stretches of flight laid out so that they may show a cause.

use super::super::super::course::Course;
use super::super::super::dice::Dice;
use super::super::super::identity::{DrillError, TaskId};
use super::super::super::turning::latitude;
use super::Named;
use compass::deviation::AircraftIron;
use compass::gust::RoughAir;
use compass::unit::{NANOTESLA, Unit};
use earth::{Date, FieldSource, Place};

/// The day of the places with variation; chosen, within the model's life.
const DAY: &str = "2027-07-01";
/// How long a stretch is, s; chosen: two of the standard float's periods.
const STRETCH_S: f64 = 10.0;
/// How long before a stretch a turn ends when it shows swirl, s; chosen: what the turn itself did
/// to the card has then died away.
const SWIRL_AFTER_S: f64 = 9.0;

/// A turn within a flight.
#[derive(Clone, Copy)]
pub(super) struct Turn {
    /// Right positive.
    pub(super) bank_deg: f64,
    pub(super) from_s: f64,
    pub(super) to_s: f64,
}

/// A flight, cause by cause, so that each can be left out.
#[derive(Clone)]
pub(super) struct LaidOut {
    pub(super) source: FieldSource,
    pub(super) latitude_deg: f64,
    pub(super) heading_deg: f64,
    pub(super) speed_kt: f64,
    pub(super) turn: Option<Turn>,
    /// When the throttle is moved, and to what speed.
    pub(super) speed: Option<(f64, f64)>,
    pub(super) air: RoughAir,
    pub(super) air_seed: u64,
    pub(super) hard_iron_nt: [f64; 3],
    /// Whether the compass is laid beside the true heading.
    pub(super) refers_to_true: bool,
    pub(super) watch_s: [f64; 2],
}

impl LaidOut {
    /// The flight, with a cause left out.
    pub(super) fn course(&self, without: Option<Named>) -> Result<Course, DrillError> {
        let with = |cause: Named| without != Some(cause);
        let mut course = Course::new(self.source, self.heading_deg, self.speed_kt)?;
        if with(Named::RoughAir) {
            course = course.rough(self.air, self.air_seed);
        }
        if with(Named::Iron) && self.hard_iron_nt != [0.0; 3] {
            let hard = self.hard_iron_nt.map(|it| it * NANOTESLA);
            course = course.iron(AircraftIron::new(hard, [[0.0; 3]; 3])?);
        }
        if !with(Named::Swirl) {
            course = course.without_swirl();
        }
        // In the order of time, as controls are moved.
        let turn = self.turn.filter(|_| with(Named::Turn));
        let speed = self.speed.filter(|_| with(Named::SpeedChange));
        let throttle = |course: Course, when: &dyn Fn(f64) -> bool| match speed {
            Some((from_s, to_kt)) if when(from_s) => course.speed(from_s, to_kt),
            _ => course,
        };
        Ok(match turn {
            Some(turn) => {
                course = throttle(course, &|at| at < turn.from_s);
                course = course.bank(turn.from_s, turn.bank_deg);
                course = throttle(course, &|at| (turn.from_s..turn.to_s).contains(&at));
                course = course.bank(turn.to_s, 0.0);
                throttle(course, &|at| at >= turn.to_s)
            }
            None => throttle(course, &|_| true),
        })
    }

    /// Whether the aircraft still turns as the stretch is watched.
    pub(super) fn turn_lasts_into_stretch(&self) -> bool {
        self.turn.is_some_and(|turn| turn.to_s > self.watch_s[0])
    }
}

/// A flight that may show what is meant; whether it does is for [`super::is_so`] to find.
pub(super) fn lay_out(
    id: &TaskId,
    meant: Named,
    dice: &mut Dice,
) -> Result<Option<LaidOut>, DrillError> {
    let latitude_deg = latitude(id, dice);
    let latitude = latitude_deg * Unit::Degree.in_si();
    let speed_kt = f64::from(dice.whole(80, 130));
    let mut laid_out = LaidOut {
        source: FieldSource::Latitude { latitude },
        latitude_deg,
        heading_deg: f64::from(dice.stepped(0, 355, 5)),
        speed_kt,
        turn: None,
        speed: None,
        air: RoughAir::Still,
        air_seed: u64::from(dice.whole(0, i32::MAX - 1) as u32),
        hard_iron_nt: [0.0; 3],
        refers_to_true: false,
        watch_s: [5.0, 5.0 + STRETCH_S],
    };
    let steepest = if id.level < 3 { 20 } else { 35 };
    match meant {
        Named::Turn => {
            let from_s = f64::from(dice.whole(8, 20));
            laid_out.turn = Some(Turn {
                bank_deg: dice.side() * f64::from(dice.whole(12, steepest)),
                from_s: 5.0,
                to_s: from_s + STRETCH_S,
            });
            laid_out.watch_s = [from_s, from_s + STRETCH_S];
        }
        Named::SpeedChange => {
            laid_out.speed = Some((5.0, throttle(speed_kt, dice)));
            laid_out.watch_s = [7.0, 7.0 + STRETCH_S];
        }
        Named::Swirl => {
            let to_s = 5.0 + f64::from(dice.whole(40, 90));
            laid_out.turn = Some(Turn {
                bank_deg: dice.side() * f64::from(dice.whole(20, 40)),
                from_s: 5.0,
                to_s,
            });
            laid_out.watch_s = [to_s + SWIRL_AFTER_S, to_s + SWIRL_AFTER_S + STRETCH_S];
        }
        Named::RoughAir => {
            laid_out.air = dice.one_of(&[RoughAir::Moderate, RoughAir::Severe]);
            let from_s = f64::from(dice.whole(20, 40));
            laid_out.watch_s = [from_s, from_s + STRETCH_S];
        }
        Named::Iron => {
            laid_out.hard_iron_nt = [0, 1, 2].map(|_| f64::from(dice.stepped(-4000, 4000, 100)));
        }
        Named::Variation => {
            let longitude = f64::from(dice.whole(-180, 179)) * Unit::Degree.in_si();
            let (Ok(place), Ok(date)) = (Place::new(latitude, longitude, 0.0), Date::parse(DAY))
            else {
                return Ok(None);
            };
            laid_out.source = FieldSource::Place { place, date };
            laid_out.refers_to_true = true;
        }
        Named::Nothing => nothing(&mut laid_out, dice),
    }
    if id.level > 1 {
        mix(id, meant, &mut laid_out, dice);
    }
    Ok(Some(laid_out))
}

/// A flight whose compass may be trusted although something goes on.
fn nothing(laid_out: &mut LaidOut, dice: &mut Dice) {
    match dice.whole(0, 2) {
        0 => {}
        1 => {
            laid_out.heading_deg = dice.one_of(&[0.0, 180.0]);
            laid_out.speed = Some((5.0, throttle(laid_out.speed_kt, dice)));
        }
        _ => {
            let to_s = 5.0 + f64::from(dice.whole(10, 30));
            laid_out.turn = Some(Turn {
                bank_deg: dice.side() * f64::from(dice.whole(10, 18)),
                from_s: 5.0,
                to_s,
            });
            laid_out.watch_s = [to_s + 40.0, to_s + 40.0 + STRETCH_S];
        }
    }
}

/// Something else besides: little at level 2, more at level 3.
fn mix(id: &TaskId, meant: Named, laid_out: &mut LaidOut, dice: &mut Dice) {
    if dice.whole(0, 1) == 0 {
        return;
    }
    let [from_s, _] = laid_out.watch_s;
    match dice.whole(0, 2) {
        0 if meant != Named::RoughAir && meant != Named::Nothing => {
            laid_out.air = RoughAir::Light;
        }
        1 if laid_out.speed.is_none() && meant != Named::Nothing => {
            let to_kt = throttle(laid_out.speed_kt, dice);
            laid_out.speed = Some((from_s - 2.0, to_kt));
        }
        2 if meant != Named::Iron && meant != Named::Nothing => {
            let most = if id.level < 3 { 800 } else { 1500 };
            laid_out.hard_iron_nt = [0, 1, 2].map(|_| f64::from(dice.stepped(-most, most, 100)));
        }
        _ => {}
    }
}

/// Another speed, well off.
fn throttle(speed_kt: f64, dice: &mut Dice) -> f64 {
    (speed_kt + dice.side() * f64::from(dice.stepped(30, 50, 5))).max(60.0)
}

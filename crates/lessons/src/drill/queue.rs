//! The tasks of a day: what is due, then something new, in an order in which it is well learnt.
//!
//! Nothing is ever overdue and nothing counts days in a row: after a long absence the day is as
//! long as any other.

use super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::generate;
use super::identity::{DrillError, TaskId};
use super::kept::Settings;
use super::kind::Kind;
use super::practice::Practice;
use super::task::Task;

/// The most classes to refresh on a day; chosen: some ten minutes of questions, or half an hour
/// where all of them are flown.
pub const REFRESHED: usize = 15;
/// The most new classes on a day; chosen: each comes back within days, so that a few a day fill
/// the days to come.
pub const NEW: usize = 4;
/// How many tasks are looked at for one of the wanted class; chosen: the class that the generator
/// gives least often is one in forty, and a flown one takes some 50 ms.
pub const LOOKED_AT: u32 = 60;
/// From which stability on, in days, a class is asked at the hardest level where the level grows;
/// chosen: what holds for two weeks is ready for more.
const GROWN: f32 = 14.0;

/// Turns to both sides.
const TURNS: [Manoeuvre; 2] = [Manoeuvre::LeftTurn, Manoeuvre::RightTurn];
/// What is flown with a change of speed too.
const TURNS_AND_SPEEDS: [Manoeuvre; 4] = [
    Manoeuvre::LeftTurn,
    Manoeuvre::RightTurn,
    Manoeuvre::SpeedingUp,
    Manoeuvre::SlowingDown,
];
/// Straight and level.
const LEVEL_FLIGHT: [Manoeuvre; 1] = [Manoeuvre::Level];

/// A class that is wanted on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// The class.
    pub class: Class,
    /// Whether it was never practised.
    pub is_new: bool,
}

/// What a day asks for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Queue {
    /// The classes in their order: what is due, the least remembered first, then what is new.
    pub wanted: Vec<Wanted>,
}

impl Queue {
    /// What is wanted on a day; `new_today` classes were begun on it already, and `put` were put
    /// already, whatever came of them.
    pub fn of(
        practice: &Practice,
        settings: &Settings,
        day: u32,
        new_today: usize,
        put: &[Class],
    ) -> Self {
        let flown_there = |it: &Class| settings.hemisphere.is_none_or(|own| own == it.hemisphere);
        let open = |it: &Class| flown_there(it) && !put.contains(it);
        let due = practice.due(day, usize::MAX).into_iter();
        let due = due.map(|it| &it.class).filter(|it| open(it));
        let due = due.take(REFRESHED).map(|class| Wanted {
            class: class.clone(),
            is_new: false,
        });
        let known = |it: &Class| practice.classes.iter().any(|had| had.class == *it);
        let new = (learning_order(settings).into_iter())
            .filter(|it| open(it) && !known(it))
            .take(NEW.saturating_sub(new_today))
            .map(|class| Wanted {
                class,
                is_new: true,
            });
        Self {
            wanted: due.chain(new).collect(),
        }
    }

    /// How many are to be refreshed.
    pub fn to_refresh(&self) -> usize {
        self.wanted.iter().filter(|it| !it.is_new).count()
    }

    /// How many are new.
    pub fn new_ones(&self) -> usize {
        self.wanted.len() - self.to_refresh()
    }

    /// About how long it takes, seconds: as long as the kinds took before.
    pub fn seconds(&self, practice: &Practice) -> f64 {
        let of = |wanted: &Wanted| usual_seconds(practice, wanted.class.kind);
        self.wanted.iter().map(of).sum()
    }
}

/// How long a task of a kind takes, seconds: the mean of what it took before, or what is guessed.
fn usual_seconds(practice: &Practice, kind: Kind) -> f64 {
    let of_kind = (practice.classes.iter()).filter(|it| it.class.kind == kind);
    let (answered, seconds) = of_kind.fold((0.0, 0.0), |sum, it| {
        (sum.0 + f64::from(it.answered), sum.1 + it.seconds)
    });
    if answered > 0.0 {
        // Chosen: one that was left standing for an hour tells nothing.
        (seconds / answered).clamp(5.0, 600.0)
    } else if kind.is_flown() {
        // Chosen: the length of most flights.
        120.0
    } else {
        // Chosen: to read, to think, to read what is explained.
        45.0
    }
}

/// All classes that can be asked for by name, in the order in which they are best learnt: from
/// north and south, where a turn's error is greatest, to east and west, to what lies between; and
/// from predicting to flying. One step from octants to octants is worth two kinds, so that each
/// new heading is met while the kinds of the last one are still under way. Chosen.
///
/// It leaves out what the generators never or hardly ever give; that comes by itself.
pub fn learning_order(settings: &Settings) -> Vec<Class> {
    use Octant::{E, N, NE, NW, S, SE, SW, W};
    let rings: [&[Octant]; 3] = [&[N, S], &[E, W], &[NE, SE, SW, NW]];
    let hemispheres = match settings.hemisphere {
        Some(one) => vec![one],
        None => vec![Hemisphere::Northern, Hemisphere::Southern],
    };
    // Between the cardinal points there are no tasks of the first level.
    let rings = if settings.level == Some(1) {
        &rings[..2]
    } else {
        &rings[..]
    };
    let mut order = Vec::new();
    for (ring, octants) in rings.iter().enumerate() {
        for (at, kind) in Kind::ALL.into_iter().enumerate() {
            for &octant in *octants {
                for &hemisphere in &hemispheres {
                    for &manoeuvre in manoeuvres(kind, octant) {
                        let class = Class {
                            kind,
                            octant,
                            manoeuvre,
                            hemisphere,
                        };
                        order.push((at + 2 * ring, class));
                    }
                }
            }
        }
    }
    // Stable: within a step the order stays.
    order.sort_by_key(|(step, _)| *step);
    order.into_iter().map(|(_, class)| class).collect()
}

/// What the tasks of a kind about an octant show often enough to be looked for.
fn manoeuvres(kind: Kind, octant: Octant) -> &'static [Manoeuvre] {
    match kind {
        Kind::Predict if is_cardinal(octant) => &TURNS_AND_SPEEDS,
        Kind::Read if !matches!(octant, Octant::N | Octant::S) => &[],
        Kind::Predict | Kind::Read | Kind::RollOut | Kind::TimedTurn => &TURNS,
        // There the air hardly makes the card swing.
        Kind::HoldHeading if matches!(octant, Octant::E | Octant::W) => &[],
        Kind::HoldHeading | Kind::SetGyro | Kind::NameTheCause | Kind::Corrections => &LEVEL_FLIGHT,
    }
}

fn is_cardinal(octant: Octant) -> bool {
    matches!(octant, Octant::N | Octant::E | Octant::S | Octant::W)
}

/// How hard a class is asked, 1 to 3. Of the generators' levels the first and the third have the
/// cardinal points, the second hardly ever.
pub fn level_of(class: &Class, settings: &Settings, practice: &Practice) -> u8 {
    let known = practice.classes.iter().find(|it| it.class == *class);
    let grown = known.is_some_and(|it| it.stability_days >= GROWN);
    match settings.level {
        Some(3) => 3,
        None if grown => 3,
        _ if is_cardinal(class.octant) => 1,
        _ => 2,
    }
}

/// Looks for a task of a class, one number of a seed after another.
#[derive(Clone, Debug)]
pub struct Search {
    class: Class,
    away_deg: Option<f64>,
    next: TaskId,
    looked_at: u32,
    nearest: Option<(u32, Task)>,
}

/// How far a search is.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// It goes on.
    GoesOn,
    /// This is the one: of the class, or the nearest to it where none was found.
    Found(Box<Task>),
}

impl Search {
    /// For a class on a day, which is the seed: who practises on the same day with the same
    /// settings gets the same tasks.
    pub fn new(class: &Class, settings: &Settings, practice: &Practice, day: u32) -> Self {
        let next = TaskId {
            level: level_of(class, settings, practice),
            tolerance_deg: settings.tolerance_deg,
            ..TaskId::new(class.kind, u64::from(day))
        };
        Self {
            class: class.clone(),
            away_deg: settings.away_deg,
            next,
            looked_at: 0,
            nearest: None,
        }
    }

    /// The share of the search that is done, 0 to 1.
    pub fn share(&self) -> f64 {
        f64::from(self.looked_at) / f64::from(LOOKED_AT)
    }

    /// Looks at one task more, which takes up to some tenths of a second; `had` says whether one
    /// was had before.
    ///
    /// # Errors
    /// Settings beyond their ranges, or not one task among all that were looked at.
    pub fn step(&mut self, had: impl Fn(&TaskId) -> bool) -> Result<Step, DrillError> {
        let id = TaskId {
            latitude_deg: Some(self.latitude_deg()),
            ..self.next
        };
        id.check()?;
        self.next.number = id.number.wrapping_add(1);
        self.looked_at += 1;
        let mut none = None;
        if !had(&id) {
            match generate(&id) {
                Ok(task) if task.class == self.class => return Ok(Step::Found(Box::new(task))),
                Ok(task) => self.take_if_nearer(task),
                Err(error) => none = Some(error),
            }
        }
        if self.looked_at < LOOKED_AT {
            return Ok(Step::GoesOn);
        }
        match self.settle() {
            Some(task) => Ok(Step::Found(Box::new(task))),
            None => Err(none.unwrap_or(DrillError::NoneFair {
                kind: id.kind,
                seed: id.seed,
                number: id.number,
            })),
        }
    }

    /// The nearest so far, to end the search with; none yet where there was none.
    pub fn settle(&mut self) -> Option<Task> {
        self.nearest.take().map(|(_, task)| task)
    }

    /// The latitude of the next one. Where the student flies anywhere it goes from 20° to 60° and
    /// begins elsewhere each day; chosen: what most fly in, and what every kind can be asked at.
    fn latitude_deg(&self) -> f64 {
        let any = 20.0 + 5.0 * ((self.next.seed + u64::from(self.next.number)) % 9) as f64;
        let away = self.away_deg.unwrap_or(any);
        match self.class.hemisphere {
            Hemisphere::Northern => away,
            Hemisphere::Southern => -away,
        }
    }

    fn take_if_nearer(&mut self, task: Task) {
        let (is, wanted) = (&task.class, &self.class);
        let near = 4 * u32::from(is.hemisphere == wanted.hemisphere)
            + 2 * u32::from(is.octant == wanted.octant)
            + u32::from(is.manoeuvre == wanted.manoeuvre);
        if self.nearest.as_ref().is_none_or(|(had, _)| near > *had) {
            self.nearest = Some((near, task));
        }
    }
}

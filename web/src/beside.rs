//! Two at once: the same flight flown again through one situation more.
//!
//! The other flight has the same inputs at the same steps, so that whatever differs is the
//! compass's doing.

use crate::flown::Flown;
use crate::setting::{FloatChoice, Setting};
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::LIQUID_SPIN_UP;
use compass::heading::CompassHeading;
use compass::reading::Difference;
use compass::simulation::Moment;
use compass::unit::NANOTESLA;
use earth::FieldSource;
use lessons::demonstration::STRAY_IRON_NT;

/// What is changed for the other flight.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Change {
    /// The same latitude in the other hemisphere.
    #[default]
    OtherHemisphere,
    /// A latitude in whole degrees, north positive.
    Latitude(i8),
    /// The horizontal field alone.
    NoVerticalField,
    /// A liquid that stays behind for so long that it never drags the card round.
    NoSwirl,
    /// Another float.
    Float(FloatChoice),
    /// With iron in the cockpit if there is none, and without if there is.
    OtherIron,
}

impl Change {
    /// The setting so changed; as it is where the changed one would give no field.
    pub(crate) fn applied(self, setting: &Setting) -> Setting {
        let elsewhere = |source| setting.at_source(source).unwrap_or(*setting);
        let mut other = *setting;
        match self {
            Self::OtherHemisphere => other = elsewhere(setting.source.other_hemisphere()),
            Self::Latitude(degrees) => {
                let latitude = f64::from(degrees).to_radians();
                other = elsewhere(FieldSource::Latitude { latitude });
            }
            Self::NoVerticalField => {
                let horizontal = setting.field().horizontal();
                other = elsewhere(FieldSource::ByHand {
                    horizontal,
                    dip: 0.0,
                });
            }
            Self::NoSwirl => other.float.liquid_spin_up = LIQUID_SPIN_UP.most,
            Self::Float(choice) => other.float = choice.settings(),
            Self::OtherIron => {
                other.iron = if setting.iron.is_none() {
                    AircraftIron::new(STRAY_IRON_NT.map(|it| it * NANOTESLA), [[0.0; 3]; 3])
                        .unwrap_or(AircraftIron::NONE)
                } else {
                    AircraftIron::NONE
                };
            }
        }
        other
    }
}

/// What can be read of the other flight at the same instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct BesideReadout {
    /// What was changed.
    pub(crate) change: Change,
    /// The field there.
    pub(crate) field: MagneticField,
    /// The instant there.
    pub(crate) moment: Moment,
    /// How the reading there compares with the heading.
    pub(crate) difference: Difference,
    /// By how many degrees the two compasses differ, as they are shown.
    pub(crate) apart: u16,
}

/// The other flight.
pub(crate) struct Beside {
    change: Change,
    setting: Setting,
    flown: Flown,
}

impl Beside {
    /// Flies a flight that started from `setting` again, changed so; `None` if it cannot be
    /// started so.
    pub(crate) fn of(flown: &Flown, setting: &Setting, change: Change) -> Option<Self> {
        let setting = change.applied(setting);
        let other = flown.flown_in(setting.situation(), setting.indicator().ok()?);
        Some(Self {
            change,
            setting,
            flown: other.ok()?,
        })
    }

    /// What was changed.
    pub(crate) fn change(&self) -> Change {
        self.change
    }

    /// Flies on with the first flight.
    pub(crate) fn follow(&mut self, flown: &Flown, steps: u64) {
        self.flown.set_controls(flown.controls());
        self.flown.fly(steps);
    }

    /// What can be read `carried` seconds after a step, or after the end, while the first compass
    /// reads `compass`.
    pub(crate) fn readout(
        &self,
        step: u64,
        carried: f64,
        compass: CompassHeading,
    ) -> BesideReadout {
        let there = if step < self.flown.steps() {
            &self.flown.at(step)
        } else {
            self.flown.end()
        };
        let moment = if carried > 0.0 {
            there.moment_after(carried)
        } else {
            there.moment()
        };
        BesideReadout {
            change: self.change,
            field: self.setting.field(),
            moment,
            difference: moment.difference(),
            apart: apart(compass, moment.reading.compass),
        }
    }
}

/// The difference of what is shown, in whole degrees from 0 to 180.
fn apart(one: CompassHeading, other: CompassHeading) -> u16 {
    let between = one.whole_degrees().abs_diff(other.whole_degrees());
    between.min(360 - between)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::flown::Origin;
    use compass::simulation::STEPS_PER_SECOND;

    const CHANGES: [Change; 6] = [
        Change::OtherHemisphere,
        Change::Latitude(20),
        Change::NoVerticalField,
        Change::NoSwirl,
        Change::Float(FloatChoice::Sluggish),
        Change::OtherIron,
    ];

    /// A right turn through north after five seconds of straight flight.
    fn turn(setting: &Setting, seconds: u64) -> Flown {
        let (start, controls) = setting.at_start().unwrap();
        let origin = Origin::Level(setting.start());
        let mut flown = Flown::new(origin, start, controls, setting.indicator().unwrap());
        flown.fly(5 * STEPS_PER_SECOND);
        flown.set_controls(controls.with_bank(20_f64.to_radians()));
        flown.fly((seconds - 5) * STEPS_PER_SECOND);
        flown
    }

    fn read(beside: &Beside, step: u64) -> BesideReadout {
        beside.readout(step, 0.0, CompassHeading::from_degrees(0.0))
    }

    fn setting() -> Setting {
        let mut setting = Setting::home().unwrap();
        setting.heading = 330;
        setting
    }

    #[test]
    fn both_flights_have_the_same_inputs_and_differ_only_in_the_compass() {
        let flown = turn(&setting(), 20);
        for change in CHANGES {
            let beside = Beside::of(&flown, &setting(), change).unwrap();
            for step in [1000, 1500, 4000] {
                let (here, other) = (flown.at(step).moment(), read(&beside, step).moment);
                assert_eq!(here.motion, other.motion, "{change:?}");
            }
            let end = read(&beside, flown.steps()).moment;
            assert_ne!(
                end.reading.card,
                flown.end().moment().reading.card,
                "{change:?}"
            );
        }
    }

    #[test]
    fn one_that_follows_is_the_one_that_is_flown_again() {
        let mut flown = turn(&setting(), 10);
        let mut beside = Beside::of(&flown, &setting(), Change::OtherHemisphere).unwrap();
        flown.set_controls(flown.controls().with_bank(-0.3));
        flown.fly(700);
        beside.follow(&flown, 700);
        let again = Beside::of(&flown, &setting(), Change::OtherHemisphere).unwrap();
        for step in [2100, 2700] {
            assert_eq!(read(&beside, step), read(&again, step));
        }
    }

    #[test]
    fn the_other_hemisphere_leads_where_this_one_lags() {
        let flown = turn(&setting(), 12);
        let beside = Beside::of(&flown, &setting(), Change::OtherHemisphere).unwrap();
        assert!(matches!(
            flown.end().moment().difference(),
            Difference::Lags(_)
        ));
        assert!(matches!(
            read(&beside, u64::MAX).difference,
            Difference::Leads(_)
        ));
    }

    #[test]
    fn compasses_on_both_sides_of_north_are_not_far_apart() {
        let [east, west] = [5.0, 350.0].map(CompassHeading::from_degrees);
        assert_eq!((apart(east, west), apart(west, east)), (15, 15));
        assert_eq!(apart(east, CompassHeading::from_degrees(185.0)), 180);
    }

    #[test]
    fn iron_is_put_in_or_taken_out() {
        let with = Change::OtherIron.applied(&setting());
        assert!(!with.iron.is_none());
        assert!(Change::OtherIron.applied(&with).iron.is_none());
    }
}

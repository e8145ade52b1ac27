//! What stands in the fields becomes numbers, or a refusal for each field that is wrong.

use super::asked::{Asked, Part};
use super::key::Key;
use crate::setting::{FloatChoice, Setting};
use crate::situation_form::{
    EAST_WEST, Entry, Fault, NORTH_SOUTH, SituationForm, Way, Wrong, within,
};
use crate::words::Words;
use compass::deviation::AircraftIron;
use compass::free_flight::AIRSPEED_COMMAND;
use compass::gust::RoughAir;
use compass::heading::{CompassHeading, MagneticHeading, TrueHeading};
use compass::motion::coordinated_bank;
use compass::range::Range;
use compass::rule_of_thumb::Turn;
use compass::simulation::Situation;
use compass::unit::{NANOTESLA, Unit};
use earth::FieldSource;
use earth::place::LATITUDE;
use lessons::corrections::{DEVIATION, DeviationCard, Working};
use lessons::roll_out::{BANK, Lead, ROLL_RATE};
use lessons::sheet::Site;
use lessons::swing::{ADJUSTER, Adjusters, Ramp};

/// Rate of turn that can be asked for; chosen: a third of standard rate to three times that of an
/// instrument approach.
const RATE: Range = Range::new("rate of turn", Unit::DegreePerSecond, 1.0, 10.0);
/// A heading as it is typed.
const HEADING: Range = Range::new("heading", Unit::Degree, 0.0, 360.0);
/// Variation as it is typed: all there is, near the magnetic poles too.
const VARIATION: Range = Range::new("variation", Unit::Degree, -180.0, 180.0);
/// A seed as it is typed; chosen: as many digits as can be read out.
const SEED: Range = Range::new("seed", Unit::Number, 0.0, 999_999.0);

/// A field, and what is wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Refusal {
    /// Which.
    pub(crate) key: Key,
    /// What.
    pub(crate) wrong: Wrong,
}

/// What the planner is asked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Plans {
    /// The place, and the second one on the rose.
    pub(crate) sites: Vec<Site>,
    /// The heading to come out on.
    pub(crate) target: MagneticHeading,
    /// Which way round.
    pub(crate) turn: Turn,
}

/// What the ramp is asked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct OnTheRamp {
    /// Where it is.
    pub(crate) setting: Setting,
    /// The aircraft, its adjusters as they stand.
    pub(crate) ramp: Ramp,
    /// Its heading.
    pub(crate) heading: MagneticHeading,
    /// Whose iron it is; none where it is set by hand.
    pub(crate) seed: Option<u64>,
}

/// Reads fields; notes what is wrong.
pub(crate) struct Reader<'a> {
    asked: &'a Asked,
    words: &'static Words,
    /// What was wrong so far, in the order of reading.
    pub(crate) refusals: Vec<Refusal>,
}

impl<'a> Reader<'a> {
    /// A reader of what is asked.
    pub(crate) fn new(asked: &'a Asked, words: &'static Words) -> Self {
        Self {
            asked,
            words,
            refusals: Vec::new(),
        }
    }

    /// Everything that is wrong with the part that is shown.
    pub(crate) fn faults(asked: &Asked, words: &'static Words) -> Vec<Refusal> {
        let mut reader = Reader::new(asked, words);
        match asked.part {
            Part::Planner => drop(reader.plans()),
            Part::HandOuts => {
                drop(reader.sites());
                reader.seed();
            }
            Part::Corrections => {
                reader.variation();
                reader.heading(match reader.choice(Key::From) {
                    "track" => Key::Track,
                    _ => Key::Heading,
                });
                reader.deviations();
                reader.wind();
            }
            Part::Swing => drop(reader.ramp()),
        }
        for key in asked.part.keys() {
            let text = asked.text(*key);
            if !key.choices().is_empty() && !key.choices().contains(&text) {
                reader.refuse(*key, Wrong::NotANumber(text.chars().take(20).collect()));
            }
        }
        // What nobody sees, nobody can mend.
        (reader.refusals).retain(|refusal| asked.shows(asked.part, refusal.key));
        reader.refusals
    }

    /// What the planner is asked.
    pub(crate) fn plans(&mut self) -> Option<Plans> {
        let sites = self.sites();
        let target = self.heading(Key::Target);
        Some(Plans {
            sites: sites?,
            target: MagneticHeading::from_radians(target?),
            turn: match self.asked.choice(Key::Side) {
                "left" => Turn::Left,
                _ => Turn::Right,
            },
        })
    }

    /// The place with all that is flown there, and the second latitude where one is given.
    pub(crate) fn sites(&mut self) -> Option<Vec<Site>> {
        let setting = self.place();
        let airspeed = self.number(Key::Airspeed, AIRSPEED_COMMAND, &[]);
        let bank = self.bank(airspeed);
        let lead = self.lead();
        let beside = self.beside();
        let (setting, airspeed, bank, lead) = (setting?, airspeed?, bank?, lead?);
        let site = |setting: &Setting| Site {
            name: (self.words.place)(setting),
            latitude: setting.source.latitude().unwrap_or(0.0),
            situation: Situation {
                field: setting.field(),
                iron: AircraftIron::NONE,
                float: self.float().settings(),
                air: RoughAir::Still,
            },
            bank,
            airspeed,
            lead,
        };
        Some(
            [Some(setting), beside?]
                .iter()
                .flatten()
                .map(site)
                .collect(),
        )
    }

    /// The second latitude, where there is one; none where it is wrong.
    fn beside(&mut self) -> Option<Option<Setting>> {
        if !self.shows(Key::Beside) || self.asked.text(Key::Beside).trim().is_empty() {
            return Some(None);
        }
        let latitude = self.number(Key::Beside, LATITUDE, NORTH_SOUTH)?;
        let setting = Setting::new(FieldSource::Latitude { latitude });
        Some(Some(setting.ok()?))
    }

    /// The bank, whichever way it is asked; the rate is refused where it takes more bank than can
    /// be planned.
    fn bank(&mut self, airspeed: Option<f64>) -> Option<f64> {
        if !self.shows(Key::Turning) || self.asked.choice(Key::Turning) == "bank" {
            return self.number(Key::Bank, BANK, &[]);
        }
        let rate = self.number(Key::Rate, RATE, &[])?;
        let bank = coordinated_bank(rate, airspeed?);
        if let Err(refused) = BANK.check(bank) {
            self.refuse(
                Key::Rate,
                Wrong::OutOfRange {
                    range: BANK,
                    value: refused.value,
                },
            );
            return None;
        }
        Some(bank)
    }

    fn lead(&mut self) -> Option<Lead> {
        if self.asked.choice(Key::Lead) == "half" {
            return Some(Lead::HalfBank);
        }
        Some(Lead::RollRate(self.number(
            Key::RollRate,
            ROLL_RATE,
            &[],
        )?))
    }

    fn float(&self) -> FloatChoice {
        match self.asked.choice(Key::Float) {
            "brisk" => FloatChoice::Brisk,
            "sluggish" => FloatChoice::Sluggish,
            "lightly-damped" => FloatChoice::LightlyDamped,
            "sticky-pivot" => FloatChoice::StickyPivot,
            _ => FloatChoice::Standard,
        }
    }

    /// The place, by the way that is chosen.
    pub(crate) fn place(&mut self) -> Option<Setting> {
        self.place_by(match self.asked.choice(Key::Way) {
            "place" => Way::Place,
            _ => Way::Latitude,
        })
    }

    fn place_by(&mut self, way: Way) -> Option<Setting> {
        let text = |key| self.asked.text(key).to_owned();
        let form = SituationForm {
            way,
            latitude: text(Key::Latitude),
            longitude: text(Key::Longitude),
            ..SituationForm::new(text(Key::Date))
        };
        match form.setting() {
            Ok(setting) => Some(setting),
            Err(faults) => {
                for Fault { entry, wrong } in faults {
                    let key = match entry {
                        Entry::Longitude => Key::Longitude,
                        Entry::Date => Key::Date,
                        _ => Key::Latitude,
                    };
                    self.refuse(key, wrong);
                }
                None
            }
        }
    }

    /// The seed.
    pub(crate) fn seed(&mut self) -> Option<u64> {
        let value = self.number(Key::Seed, SEED, &[])?;
        if value != value.round() {
            let text = self.asked.text(Key::Seed).to_owned();
            self.refuse(Key::Seed, Wrong::NotANumber(text));
            return (!self.shows(Key::Seed)).then_some(value as u64);
        }
        Some(value as u64)
    }

    /// The field of a swing or of a deviation card's place.
    pub(crate) fn ramp(&mut self) -> Option<OnTheRamp> {
        let setting = self.place();
        let seed = self.seed();
        let heading = self.heading(Key::Ramp);
        let north_south = self.number(Key::NorthSouth, ADJUSTER, &[]);
        let east_west = self.number(Key::EastWest, ADJUSTER, &[]);
        let (setting, seed) = (setting?, seed?);
        let iron = self.iron(Ramp::hidden(setting.field(), seed));
        let adjusters = Adjusters {
            north_south: north_south?,
            east_west: east_west?,
        };
        Some(OnTheRamp {
            setting,
            ramp: iron?
                .with_radios_and_lights(self.asked.choice(Key::Electric) == "on")
                .with_adjusters(adjusters),
            heading: MagneticHeading::from_radians(heading?),
            seed: (self.choice(Key::Iron) == "hidden").then_some(seed),
        })
    }

    /// The variation, rad, and the place that it was taken from.
    pub(crate) fn variation(&mut self) -> Option<(f64, Option<Setting>)> {
        if self.asked.choice(Key::VariationBy) == "typed" {
            let typed = self.number(Key::Variation, VARIATION, EAST_WEST)?;
            return Some((typed, None));
        }
        let setting = self.place_by(Way::Place)?;
        Some((setting.field().variation(), Some(setting)))
    }

    /// What stands on the deviation card, rad.
    pub(crate) fn deviations(&mut self) -> Option<Vec<(CompassHeading, f64)>> {
        let read: Vec<Option<(CompassHeading, f64)>> = (0..8_u8)
            .map(|eighth| {
                let found = self.number(Key::Deviation(eighth), DEVIATION, EAST_WEST)?;
                let heading = CompassHeading::from_degrees(45.0 * f64::from(eighth));
                Some((heading, found))
            })
            .collect();
        read.into_iter().collect()
    }

    /// The correction that is asked for, by a variation and a card.
    pub(crate) fn working(&mut self, variation: f64, card: &DeviationCard) -> Option<Working> {
        let heading = self.heading(Key::Heading)?;
        Some(match self.asked.choice(Key::From) {
            "compass" => {
                Working::from_compass(CompassHeading::from_radians(heading), variation, card)
            }
            "magnetic" => {
                let magnetic = MagneticHeading::from_radians(heading);
                Working::from_true(magnetic.to_true(variation), variation, card)
            }
            _ => Working::from_true(TrueHeading::from_radians(heading), variation, card),
        })
    }

    /// What is chosen in a field of choices.
    pub(super) fn choice(&self, key: Key) -> &'static str {
        self.asked.choice(key)
    }

    fn shows(&self, key: Key) -> bool {
        self.asked.shows(self.asked.part, key)
    }

    /// A heading, rad.
    pub(super) fn heading(&mut self, key: Key) -> Option<f64> {
        self.number(key, HEADING, &[])
    }

    /// A number in SI units, with a letter for its side where it has some.
    pub(super) fn number(
        &mut self,
        key: Key,
        range: Range,
        sides: &'static [(char, f64)],
    ) -> Option<f64> {
        match within(self.asked.text(key), range, sides) {
            Ok(value) => Some(value),
            // Nothing that is shown depends on it.
            Err(_) if !self.shows(key) => within(key.at_first(), range, sides).ok(),
            Err(wrong) => {
                self.refuse(key, wrong);
                None
            }
        }
    }

    fn refuse(&mut self, key: Key, wrong: Wrong) {
        self.refusals.push(Refusal { key, wrong });
    }
}

/// An adjuster as it is typed, in nanotesla.
pub(crate) fn adjuster_text(tesla: f64) -> String {
    crate::situation_form::typed((tesla / NANOTESLA * 10.0).round() / 10.0)
}

//! What is asked of the page: which part of it, what stands in its fields as typed, and what that
//! means. All of it is in the address, so that a link gives the same again.

use super::key::{Key, float_named};
use super::shown::Show;
use crate::situation_form::{Entry, Fault, SituationForm, Way, Wrong, within};
use compass::free_flight::AIRSPEED_COMMAND;
use earth::{Date, FieldSource, Place};
use lessons::roll_out::BANK;
use lessons::rule_map::OntoNorth;

/// The longest text that an address can put into a field: longer than any that means something.
const LONGEST: usize = 40;

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Part {
    /// Maps of the world.
    #[default]
    Maps,
    /// From dip to latitude.
    Dip,
}

impl Part {
    /// Every part once.
    pub(crate) const ALL: [Self; 2] = [Self::Maps, Self::Dip];

    /// What the address calls it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Maps => "maps",
            Self::Dip => "dip",
        }
    }

    /// The fields that it has.
    pub(crate) fn keys(self) -> &'static [Key] {
        match self {
            Self::Maps => &Key::ALL,
            Self::Dip => &[Key::Latitude, Key::Longitude, Key::Date],
        }
    }
}

/// What is asked of the page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Asked {
    /// The part that is shown.
    pub(crate) part: Part,
    today: String,
    texts: Vec<String>,
}

/// What the fields mean; none for what is wrong.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Meant {
    /// The point.
    pub(crate) place: Option<Place>,
    /// The day.
    pub(crate) date: Option<Date>,
    /// How the turn onto north is flown.
    pub(crate) turn: Option<OntoNorth>,
    /// What is wrong, by field.
    pub(crate) faults: Vec<(Key, Wrong)>,
}

impl Asked {
    /// As the page opens without an address; `today` is year-month-day.
    pub(crate) fn new(today: String) -> Self {
        let mut asked = Self {
            part: Part::default(),
            texts: vec![String::new(); Key::ALL.len()],
            today,
        };
        for key in Key::ALL {
            asked.set(key, asked.first(key));
        }
        asked
    }

    /// The same after another address was asked for: its part, and in that part's fields what the
    /// address says (`given`, by name) or what stands there at first.
    pub(crate) fn at(&self, part: &str, given: impl Fn(&str) -> Option<String>) -> Self {
        let named = Part::ALL.into_iter().find(|it| it.name() == part);
        let mut asked = Self {
            part: named.unwrap_or_default(),
            ..self.clone()
        };
        for &key in asked.part.keys() {
            let text = given(key.name()).unwrap_or_else(|| asked.first(key));
            asked.set(key, text.chars().take(LONGEST).collect());
        }
        asked
    }

    /// The fields that an address for `part` must name, and what stands in them. The day is always
    /// among them: the address is opened on other days too.
    pub(crate) fn named(&self, part: Part) -> impl Iterator<Item = (&'static str, &str)> {
        (part.keys().iter())
            .map(|&key| (key, self.text(key)))
            .filter(|&(key, text)| key == Key::Date || self.first(key) != text)
            .map(|(key, text)| (key.name(), text))
    }

    /// What stands in a field.
    pub(crate) fn text(&self, key: Key) -> &str {
        (Key::ALL.iter().zip(&self.texts))
            .find(|(it, _)| **it == key)
            .map_or("", |(_, text)| text)
    }

    /// What was chosen in a field of choices; the usual where its text is none of them.
    pub(crate) fn choice(&self, key: Key) -> &'static str {
        let text = self.text(key);
        let choices = key.choices();
        let chosen = choices.iter().find(|choice| **choice == text);
        chosen.or(choices.first()).copied().unwrap_or("")
    }

    /// Puts a text into a field.
    pub(crate) fn set(&mut self, key: Key, text: String) {
        let place = Key::ALL.iter().position(|it| *it == key);
        if let Some(into) = place.and_then(|index| self.texts.get_mut(index)) {
            *into = text;
        }
    }

    /// Whether a field of the maps stands on the page as it is asked for.
    pub(crate) fn shows(&self, key: Key) -> bool {
        match (key, self.choice(Key::Show)) {
            (Key::Bank, show) => Show::named(show).is_of_rule(),
            (Key::Airspeed | Key::Float, show) => show == "simulated",
            _ => true,
        }
    }

    /// What the fields mean.
    pub(crate) fn meant(&self) -> Meant {
        let mut faults = Vec::new();
        let (place, date) = self.place_and_date(&mut faults);
        let mut number = |key: Key, range| match within(self.text(key), range, &[]) {
            Ok(value) => Some(value),
            // What nobody sees, nobody can mend.
            Err(_) if !self.shows(key) => within(key.at_first(), range, &[]).ok(),
            Err(wrong) => {
                faults.push((key, wrong));
                None
            }
        };
        let bank = number(Key::Bank, BANK);
        let airspeed = number(Key::Airspeed, AIRSPEED_COMMAND);
        let turn = bank.zip(airspeed).map(|(bank, airspeed)| OntoNorth {
            bank,
            airspeed,
            float: float_named(self.text(Key::Float)).settings(),
        });
        for key in Key::ALL {
            let text = self.text(key);
            if !key.choices().is_empty() && !key.choices().contains(&text) && self.shows(key) {
                let text = text.chars().take(20).collect();
                faults.push((key, Wrong::NotANumber(text)));
            }
        }
        Meant {
            place,
            date,
            turn,
            faults,
        }
    }

    /// Each of both that is right; what is wrong is noted.
    fn place_and_date(&self, faults: &mut Vec<(Key, Wrong)>) -> (Option<Place>, Option<Date>) {
        let today = SituationForm::new(self.today.clone());
        let by_place = SituationForm {
            way: Way::Place,
            latitude: self.text(Key::Latitude).to_owned(),
            longitude: self.text(Key::Longitude).to_owned(),
            date: "2025-01-01".to_owned(),
            ..today.clone()
        };
        let by_date = SituationForm {
            way: Way::Place,
            date: self.text(Key::Date).to_owned(),
            ..today
        };
        let mut read = |form: SituationForm| match form.setting().map(|it| it.source) {
            Ok(FieldSource::Place { place, date }) => Some((place, date)),
            Ok(_) => None,
            Err(found) => {
                for Fault { entry, wrong } in found {
                    let key = match entry {
                        Entry::Longitude => Key::Longitude,
                        Entry::Date => Key::Date,
                        _ => Key::Latitude,
                    };
                    faults.push((key, wrong));
                }
                None
            }
        };
        (
            read(by_place).map(|(place, _)| place),
            read(by_date).map(|(_, date)| date),
        )
    }

    /// What is in the middle of the globe, rad; what stands there at first where it is no place.
    pub(crate) fn middle(&self) -> (f64, f64) {
        let number = |key: Key| {
            let typed = self
                .text(key)
                .parse::<f64>()
                .ok()
                .filter(|it| it.is_finite());
            typed.or(key.at_first().parse().ok()).unwrap_or(0.0)
        };
        (
            number(Key::MiddleLatitude).clamp(-90.0, 90.0).to_radians(),
            number(Key::MiddleLongitude)
                .clamp(-360.0, 360.0)
                .to_radians(),
        )
    }

    fn first(&self, key: Key) -> String {
        match key {
            Key::Date => self.today.clone(),
            key => key.at_first().to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked() -> Asked {
        Asked::new("2026-05-01".to_owned())
    }

    #[test]
    fn what_is_asked_comes_back_from_its_address() {
        let mut there = asked();
        there.set(Key::Longitude, "71 W".to_owned());
        there.set(Key::View, "globe".to_owned());
        let named: Vec<(&str, String)> = (there.named(Part::Maps))
            .map(|(name, text)| (name, text.to_owned()))
            .collect();
        assert_eq!(named.len(), 3);
        let find = |name: &str| {
            let found = named.iter().find(|(it, _)| *it == name);
            found.map(|(_, text)| text.clone())
        };
        assert_eq!(asked().at("maps", find), there);
        let later = Asked::new("2027-08-09".to_owned()).at("maps", find);
        assert_eq!(later.text(Key::Date), "2026-05-01");
        assert_eq!(asked().at("elsewhere", |_| None), asked());
    }

    #[test]
    fn what_is_wrong_stands_at_its_field_and_the_rest_is_kept() {
        let mut wrong = asked();
        wrong.set(Key::Latitude, "100".to_owned());
        wrong.set(Key::Bank, "2".to_owned());
        wrong.set(Key::View, "<b>".to_owned());
        wrong.set(Key::Show, "steady".to_owned());
        let meant = wrong.meant();
        let keys: Vec<Key> = meant.faults.iter().map(|fault| fault.0).collect();
        assert_eq!(keys, [Key::Latitude, Key::Bank, Key::View]);
        assert!(meant.place.is_none() && meant.turn.is_none() && meant.date.is_some());
        // A map of the dip has no bank to mend.
        wrong.set(Key::Show, "dip".to_owned());
        let meant = wrong.meant();
        let keys: Vec<Key> = meant.faults.iter().map(|fault| fault.0).collect();
        assert_eq!(keys, [Key::Latitude, Key::View]);
        assert_eq!(meant.turn.map(|turn| turn.bank), Some(15_f64.to_radians()));
        wrong.set(Key::MiddleLatitude, "1e999".to_owned());
        assert_eq!(wrong.middle().0, 30_f64.to_radians());
    }
}

//! What is asked of the page: which part of it, and what stands in its fields, as typed.
//!
//! All of it is in the address, so that a link gives the same again.

use super::key::Key;

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Part {
    /// When to begin to roll out.
    #[default]
    Planner,
    /// Sheets for print.
    HandOuts,
    /// True, magnetic, compass.
    Corrections,
    /// The compass swing.
    Swing,
}

impl Part {
    /// Every part once.
    pub(crate) const ALL: [Self; 4] = [
        Self::Planner,
        Self::HandOuts,
        Self::Corrections,
        Self::Swing,
    ];

    /// What the address calls it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Planner => "planner",
            Self::HandOuts => "hand-outs",
            Self::Corrections => "corrections",
            Self::Swing => "swing",
        }
    }

    /// The fields that it has.
    pub(crate) fn keys(self) -> &'static [Key] {
        match self {
            Self::Planner => &[
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Turning,
                Key::Bank,
                Key::Rate,
                Key::Airspeed,
                Key::Lead,
                Key::RollRate,
                Key::Side,
                Key::Target,
                Key::Float,
                Key::Every,
                Key::Beside,
            ],
            Self::HandOuts => &[
                Key::Sheet,
                Key::Paper,
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Turning,
                Key::Bank,
                Key::Rate,
                Key::Airspeed,
                Key::Lead,
                Key::RollRate,
                Key::Float,
                Key::Beside,
                Key::Seed,
                Key::Lesson,
            ],
            Self::Corrections => &[
                Key::From,
                Key::Heading,
                Key::Track,
                Key::Wind,
                Key::WindFrom,
                Key::WindSpeed,
                Key::Airspeed,
                Key::VariationBy,
                Key::Variation,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Deviation(0),
                Key::Deviation(1),
                Key::Deviation(2),
                Key::Deviation(3),
                Key::Deviation(4),
                Key::Deviation(5),
                Key::Deviation(6),
                Key::Deviation(7),
            ],
            Self::Swing => &[
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Iron,
                Key::Seed,
                Key::Hard(0),
                Key::Hard(1),
                Key::Hard(2),
                Key::Soft(0),
                Key::Soft(1),
                Key::Soft(2),
                Key::Soft(3),
                Key::Soft(4),
                Key::Soft(5),
                Key::Soft(6),
                Key::Soft(7),
                Key::Soft(8),
                Key::Ramp,
                Key::Step,
                Key::NorthSouth,
                Key::EastWest,
                Key::Electric,
                Key::Swing,
                Key::Swung,
                Key::Banked,
                Key::Paper,
            ],
        }
    }
}

/// The longest text that an address can put into a field: longer than any that means something.
const LONGEST: usize = 40;

/// What is asked of the page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Asked {
    /// The part that is shown.
    pub(crate) part: Part,
    today: String,
    texts: Vec<String>,
}

impl Asked {
    /// As the page opens without an address; `today` is year-month-day.
    pub(crate) fn new(today: String) -> Self {
        let first = |key: Key| match key {
            Key::Date => today.clone(),
            key => key.at_first().to_owned(),
        };
        Self {
            part: Part::default(),
            texts: Key::ALL.map(first).to_vec(),
            today,
        }
    }

    /// The same after another address was asked for: its part, and in that part's fields what the
    /// address says (`given`, by name) or what stands there at first.
    pub(crate) fn at(&self, part: &str, given: impl Fn(&str) -> Option<String>) -> Self {
        let named = Part::ALL.into_iter().find(|it| it.name() == part);
        let mut asked = Self {
            part: named.unwrap_or_default(),
            ..self.clone()
        };
        for key in asked.part.keys() {
            let text = given(key.name()).unwrap_or_else(|| asked.first(*key));
            asked.set(*key, text.chars().take(LONGEST).collect());
        }
        asked
    }

    /// The fields that an address for `part` must name, and what stands in them. The day is among
    /// them wherever a figure depends on it: the address is opened on other days too.
    pub(crate) fn named(&self, part: Part) -> impl Iterator<Item = (&'static str, &str)> {
        (part.keys().iter())
            .map(|key| (*key, self.text(*key)))
            .filter(move |(key, text)| {
                self.first(*key) != *text || *key == Key::Date && self.shows(part, *key)
            })
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
    fn every_field_has_its_own_name_and_place() {
        let mut asked = asked();
        for (index, key) in Key::ALL.into_iter().enumerate() {
            asked.set(key, index.to_string());
        }
        let mut names: Vec<&str> = Key::ALL.iter().map(|key| key.name()).collect();
        for (index, key) in Key::ALL.into_iter().enumerate() {
            assert_eq!(asked.text(key), index.to_string());
        }
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Key::ALL.len());
        for part in Part::ALL {
            assert!(part.keys().iter().all(|key| Key::ALL.contains(key)));
        }
    }

    #[test]
    fn what_is_asked_comes_back_from_its_address() {
        let mut there = asked();
        there.part = Part::Swing;
        there.set(Key::NorthSouth, "-1200".to_owned());
        there.set(Key::Step, "2".to_owned());
        let named: Vec<(&str, String)> = (there.named(Part::Swing))
            .map(|(name, text)| (name, text.to_owned()))
            .collect();
        assert_eq!(named.len(), 2);
        let find = |name: &str| {
            let found = named.iter().find(|(it, _)| *it == name);
            found.map(|(_, text)| text.clone())
        };
        assert_eq!(asked().at("swing", find), there);
    }

    #[test]
    fn a_link_by_place_gives_the_same_on_another_day() {
        let mut here = asked();
        assert_eq!(here.named(Part::Planner).count(), 0, "no day by latitude");
        here.set(Key::Way, "place".to_owned());
        let named: Vec<(&str, String)> = (here.named(Part::Planner))
            .map(|(name, text)| (name, text.to_owned()))
            .collect();
        let find = |name: &str| {
            let found = named.iter().find(|(it, _)| *it == name);
            found.map(|(_, text)| text.clone())
        };
        let later = Asked::new("2027-08-09".to_owned()).at("planner", find);
        assert_eq!(later.text(Key::Date), "2026-05-01");
    }

    #[test]
    fn an_address_that_means_nothing_gives_the_page_as_it_opens() {
        assert_eq!(asked().at("elsewhere", |_| None), asked());
        let long = asked().at("planner", |_| Some("9".repeat(5000)));
        assert_eq!(long.text(Key::Bank).len(), LONGEST);
        assert_eq!(long.choice(Key::Side), "right");
    }

    #[test]
    fn what_other_parts_hold_is_kept() {
        let mut here = asked();
        here.set(Key::Variation, "3 E".to_owned());
        let there = here.at("planner", |_| None);
        assert_eq!(there.text(Key::Variation), "3 E");
    }
}

//! What each demonstration of the catalogue comes to at a latitude: measured one after another,
//! one in a frame, so that the page stays at hand meanwhile.

use leptos::prelude::*;
use lessons::demonstration::{Demonstration, Flown};

/// What is said of a demonstration once its flight was flown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Headline {
    /// Its title.
    pub(crate) title: String,
    /// What to look for.
    pub(crate) look_for: String,
    /// The figure that says most; or why it cannot be flown.
    pub(crate) figure: Result<Option<String>, String>,
}

impl Headline {
    /// Flies a demonstration, at a latitude in degrees north or where it was made.
    pub(crate) fn of(demonstration: &Demonstration, latitude: Option<i8>) -> Self {
        let there = match latitude {
            Some(degrees) => demonstration.clone().at_latitude_deg(f64::from(degrees)),
            None => demonstration.clone(),
        };
        match Flown::new(there) {
            Ok(flown) => Self {
                title: flown.said(&demonstration.title),
                look_for: flown.said(&demonstration.look_for),
                figure: Ok(flown.headline()),
            },
            Err(error) => Self {
                title: demonstration.title.clone(),
                look_for: String::new(),
                figure: Err(error.to_string()),
            },
        }
    }
}

/// The headlines, as far as they are measured.
#[derive(Clone, Copy)]
pub(crate) struct Headlines {
    latitude: RwSignal<Option<i8>>,
    measured: RwSignal<Vec<Headline>>,
}

impl Headlines {
    /// None yet.
    pub(crate) fn new() -> Self {
        Self {
            latitude: RwSignal::new(None),
            measured: RwSignal::default(),
        }
    }

    /// The latitude in degrees north; none where each is measured where it was made.
    pub(crate) fn latitude(self) -> Option<i8> {
        self.latitude.get()
    }

    /// Measures at another latitude.
    pub(crate) fn move_to(self, latitude: Option<i8>) {
        if self.latitude.get_untracked() != latitude {
            self.latitude.set(latitude);
            self.measured.set(Vec::new());
        }
    }

    /// How many are measured.
    pub(crate) fn count(self) -> usize {
        self.measured.with(Vec::len)
    }

    /// That of the demonstration at a place of the catalogue, once it is measured.
    pub(crate) fn get(self, index: usize) -> Option<Headline> {
        self.measured.with(|it| it.get(index).cloned())
    }

    /// Measures the next, if any is left.
    pub(crate) fn measure_next(self, catalogue: &[Demonstration]) {
        let done = self.measured.with_untracked(Vec::len);
        if let Some(next) = catalogue.get(done) {
            let headline = Headline::of(next, self.latitude.get_untracked());
            self.measured.update(|it| it.push(headline));
        }
    }
}

/// A latitude as an address or a slider has it: whole degrees.
///
/// # Errors
/// What is no whole number from −90 to 90.
pub(crate) fn latitude_of(text: &str) -> Result<i8, ()> {
    match text.parse() {
        Ok(degrees) if (-90..=90).contains(&degrees) => Ok(degrees),
        _ => Err(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEADY: &str = r#"{
        "demonstration": 1, "name": "turn", "title": "At {where:n}",
        "scenario": {
            "field": {"latitude_deg": 45}, "start": {"heading_deg": 330, "speed_kt": 100},
            "legs": [{"seconds": 2, "bank_deg": 15}, {"seconds": 20}]
        },
        "figures": {"where": "latitude", "on_north": {"lag_on": {"heading_deg": 360}}},
        "headline": "on_north"
    }"#;

    #[test]
    fn a_headline_is_that_of_the_latitude() {
        let made = Demonstration::from_json(STEADY).unwrap();
        let at = |latitude| Headline::of(&made, latitude);
        let words = |latitude| at(latitude).figure.unwrap().unwrap();
        assert_eq!(at(None).title, "At 45° N");
        assert_eq!(at(Some(-30)).title, "At 30° S");
        assert!(words(None).starts_with("lags"), "{}", words(None));
        assert!(
            words(Some(-45)).starts_with("leads"),
            "{}",
            words(Some(-45))
        );
        assert_eq!(words(Some(0)), "agrees");
    }

    #[test]
    fn a_latitude_is_whole_degrees() {
        assert_eq!(latitude_of("-35"), Ok(-35));
        for text in ["", "91", "-90.5", "north", "1e1"] {
            assert_eq!(latitude_of(text), Err(()), "{text}");
        }
    }
}

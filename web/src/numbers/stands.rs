//! Which fields stand on the page, by what is asked of it.

use super::asked::{Asked, Part};
use super::key::Key;

impl Asked {
    /// Whether a field stands on a part of the page as it is asked for. What stands in a field
    /// that nobody sees is neither needed nor refused.
    pub(crate) fn shows(&self, part: Part, key: Key) -> bool {
        let is = |key: Key, choice: &str| self.choice(key) == choice;
        let sheet = match part {
            Part::HandOuts => self.choice(Key::Sheet),
            _ => "",
        };
        let on_sheet = match key {
            Key::Sheet | Key::Paper => return part == Part::HandOuts || is(Key::Swung, "yes"),
            Key::Lesson => return sheet == "plan",
            _ if sheet == "plan" => false,
            Key::Seed => matches!(sheet, "" | "worksheet" | "deviation"),
            Key::Lead | Key::RollRate | Key::Beside => matches!(sheet, "" | "roll-outs"),
            Key::Turning | Key::Bank | Key::Rate => {
                matches!(sheet, "" | "roll-outs" | "worksheet")
            }
            Key::Airspeed | Key::Float => sheet != "deviation",
            _ => true,
        };
        let by_place = match part {
            Part::Corrections => is(Key::VariationBy, "place"),
            _ => is(Key::Way, "place"),
        };
        let blows = is(Key::Wind, "typed") || is(Key::From, "track");
        on_sheet
            && match key {
                Key::Longitude | Key::Date => by_place,
                Key::Latitude => part != Part::Corrections || by_place,
                Key::Bank => is(Key::Turning, "bank"),
                Key::Rate => is(Key::Turning, "rate"),
                Key::RollRate => is(Key::Lead, "roll"),
                Key::Track => is(Key::From, "track"),
                Key::Heading | Key::Wind => !is(Key::From, "track"),
                Key::WindFrom | Key::WindSpeed => blows,
                Key::Airspeed => part != Part::Corrections || blows,
                Key::Variation => is(Key::VariationBy, "typed"),
                Key::Seed => part != Part::Swing || is(Key::Iron, "hidden"),
                Key::Hard(_) | Key::Soft(_) => is(Key::Iron, "set"),
                _ => true,
            }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_stands_where_its_part_needs_it() {
        let mut asked = Asked::new("2026-05-01".to_owned());
        assert!(asked.shows(Part::Planner, Key::Bank));
        assert!(!asked.shows(Part::Planner, Key::Rate));
        asked.set(Key::Sheet, "aids".to_owned());
        assert!(asked.shows(Part::HandOuts, Key::Airspeed));
        for key in [Key::Bank, Key::Lead, Key::Seed, Key::Lesson] {
            assert!(!asked.shows(Part::HandOuts, key), "{key:?}");
        }
        asked.set(Key::Sheet, "plan".to_owned());
        assert!(asked.shows(Part::HandOuts, Key::Lesson));
        assert!(!asked.shows(Part::HandOuts, Key::Latitude));
        assert!(asked.shows(Part::Swing, Key::Seed));
        asked.set(Key::Iron, "set".to_owned());
        assert!(!asked.shows(Part::Swing, Key::Seed));
        assert!(asked.shows(Part::Swing, Key::Soft(8)));
        assert!(!asked.shows(Part::Corrections, Key::Latitude));
    }
}

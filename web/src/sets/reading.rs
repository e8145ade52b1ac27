//! What a draft means: the set, or what is wrong with each field.

use super::draft::{Draft, DraftPart, Fault, Field, MINUTE};
use crate::situation_form::{NORTH_SOUTH, Wrong, within};
use compass::range::Range;
use compass::unit::Unit;
use lessons::drill::set::{MOST_CHARACTERS, Order, Part, PracticeSet, TIME_LIMIT, VERSION};
use lessons::drill::{COUNT, LATITUDE, TOLERANCE};

/// How long a student may take, as it is typed: minutes.
const MINUTES: Range = Range::new("time limit", Unit::Number, 1.0, TIME_LIMIT.most / MINUTE);

impl Draft {
    /// The set that it means.
    ///
    /// # Errors
    /// Everything that is wrong, in the order of the page; at least one fault.
    pub(crate) fn set(&self) -> Result<PracticeSet, Vec<(Field, Fault)>> {
        let mut faults = Vec::new();
        let title = self.title.trim();
        let length = title.chars().count();
        if length > MOST_CHARACTERS {
            faults.push((Field::Title, Fault::TooLong(length)));
        } else if title.chars().any(char::is_control) {
            faults.push((Field::Title, Fault::NotText));
        }
        let minutes = optional(&self.minutes, MINUTES, &mut faults, Field::Minutes);
        let seed = match self.seed.trim() {
            "" => None,
            text => match text.parse() {
                Ok(seed) => Some(seed),
                Err(_) => {
                    faults.push((Field::Seed, Fault::Number(not_whole(text))));
                    None
                }
            },
        };
        let parts: Vec<Part> = self
            .parts
            .iter()
            .map(|part| part.read(&mut faults))
            .collect();
        let all: u32 = parts.iter().map(|part| part.count).sum();
        if parts.is_empty() {
            faults.push((Field::Parts, Fault::NoParts));
        } else if f64::from(all) > COUNT.most {
            faults.push((Field::Parts, Fault::TooMany(all)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(PracticeSet {
            version: VERSION,
            title: title.to_owned(),
            seed,
            order: if self.mixed {
                Order::Mixed
            } else {
                Order::AsGiven
            },
            time_limit_s: minutes.map(|it| it * MINUTE),
            allowed: self.allowed.clone(),
            parts,
        })
    }
}

impl DraftPart {
    /// What it means; what is wrong stands at its least.
    fn read(&self, faults: &mut Vec<(Field, Fault)>) -> Part {
        let count = number(&self.count, COUNT, faults, Field::Count(self.id));
        if count.fract() != 0.0 {
            let wrong = Fault::Number(not_whole(&self.count));
            faults.push((Field::Count(self.id), wrong));
        }
        let at = Field::Latitude(self.id);
        let latitude = optional(&self.latitude, LATITUDE, faults, at);
        let least = self.kind.least_latitude_deg();
        if latitude.is_some_and(|it| it.abs() < least) {
            faults.push((at, Fault::TooNearTheEquator(self.kind, least)));
        }
        let tolerance = if self.kind.is_flown() {
            number(
                &self.tolerance,
                TOLERANCE,
                faults,
                Field::Tolerance(self.id),
            )
        } else {
            // Nothing is flown off by anything: what stands there does not show.
            within(&self.tolerance, TOLERANCE, &[]).map_or(10.0, in_degrees)
        };
        Part {
            kind: self.kind,
            count: count as u32,
            latitude_deg: latitude,
            level: self.level,
            tolerance_deg: tolerance,
        }
    }
}

fn not_whole(text: &str) -> Wrong {
    Wrong::NotANumber(text.trim().chars().take(20).collect())
}

/// Radians as the degrees that were typed.
fn in_degrees(angle: f64) -> f64 {
    flights::six_decimals(angle.to_degrees())
}

/// A number in the range's own unit; its least where it is wrong.
fn number(text: &str, range: Range, faults: &mut Vec<(Field, Fault)>, field: Field) -> f64 {
    let sides = if matches!(field, Field::Latitude(_)) {
        NORTH_SOUTH
    } else {
        &[]
    };
    match within(text, range, sides) {
        Ok(value) if range.unit == Unit::Degree => in_degrees(value),
        Ok(value) => value,
        Err(wrong) => {
            faults.push((field, Fault::Number(wrong)));
            range.least
        }
    }
}

/// The same where nothing need be typed.
fn optional(
    text: &str,
    range: Range,
    faults: &mut Vec<(Field, Fault)>,
    field: Field,
) -> Option<f64> {
    (!text.trim().is_empty()).then(|| number(text, range, faults, field))
}

#[cfg(test)]
mod tests {
    use super::super::draft::tests::full;
    use super::*;
    use lessons::drill::Kind;

    #[test]
    fn a_draft_is_a_set_and_a_set_a_draft() {
        let set = full().set().unwrap();
        assert_eq!(set.check(), Ok(()));
        assert_eq!(set.time_limit_s, Some(750.0));
        assert_eq!(set.parts[1].latitude_deg, Some(-34.0));
        assert_eq!(set.seed, Some(u64::MAX));
        assert_eq!(Draft::of(&set).set(), Ok(set));
        let plain = Draft::default().set().unwrap();
        assert_eq!((plain.seed, plain.parts[0].latitude_deg), (None, None));
    }

    #[test]
    fn every_fault_is_noted_at_its_field() {
        let mut draft = full();
        draft.title = "x".repeat(121);
        draft.minutes = "0".to_owned();
        draft.seed = "-1".to_owned();
        draft.parts[0].count = "2.5".to_owned();
        draft.parts[1].count = "499".to_owned();
        draft.parts[1].latitude = "71".to_owned();
        draft.parts[1].tolerance = String::new();
        draft.parts.push(DraftPart {
            latitude: "5".to_owned(),
            ..DraftPart::new(7, Kind::Read)
        });
        let faults = draft.set().unwrap_err();
        let fields: Vec<Field> = faults.iter().map(|(field, _)| *field).collect();
        let wrong = [
            Field::Title,
            Field::Minutes,
            Field::Seed,
            Field::Count(0),
            Field::Latitude(1),
            Field::Tolerance(1),
            Field::Latitude(7),
            Field::Parts,
        ];
        assert_eq!(fields, wrong);
        assert_eq!(faults[7].1, Fault::TooMany(506));
        // A tolerance counts only where something is flown.
        let mut chosen = full();
        chosen.parts[0].tolerance = "wide".to_owned();
        assert!(chosen.set().is_ok());
        chosen.parts.clear();
        assert_eq!(chosen.set(), Err(vec![(Field::Parts, Fault::NoParts)]));
    }
}

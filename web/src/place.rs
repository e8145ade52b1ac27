//! The form that sets a new flight: what was typed, what it means, and what is wrong with it.

use crate::setting::{FloatChoice, HOME_LATITUDE, Setting};
use compass::field::{DIP, HORIZONTAL};
use compass::gust::RoughAir;
use compass::range::Range;
use compass::unit::{FOOT, NANOTESLA};
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{Date, Error, FieldSource, Place};

/// A way to set the field.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Way {
    /// By latitude alone.
    #[default]
    Latitude,
    /// By latitude, longitude, altitude and date.
    Place,
    /// By dip and horizontal intensity.
    ByHand,
}

impl Way {
    /// Every way once.
    pub(crate) const ALL: [Self; 3] = [Self::Latitude, Self::Place, Self::ByHand];
}

/// A field of the form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Entry {
    /// Latitude in degrees, north positive.
    Latitude,
    /// Longitude in degrees, east positive.
    Longitude,
    /// Altitude in feet.
    Altitude,
    /// Day, year-month-day.
    Date,
    /// Dip in degrees, down positive.
    Dip,
    /// Horizontal intensity in nanotesla.
    Horizontal,
}

/// What is wrong with an entry.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Wrong {
    /// It is empty.
    Empty,
    /// It is no number.
    NotANumber(String),
    /// It is beyond its range, in the entry's own unit.
    OutOfRange {
        /// The least allowed.
        least: f64,
        /// The greatest allowed.
        most: f64,
        /// What was given.
        value: f64,
    },
    /// It is no day of the calendar.
    NotADate,
    /// It is a day outside the model's life.
    OutsideModel(Date),
    /// Dip and intensity together give a vertical intensity that is too strong.
    TooStrong,
    /// The model's own refusal.
    Model(String),
}

/// An entry and what is wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fault {
    /// Where.
    pub(crate) entry: Entry,
    /// What.
    pub(crate) wrong: Wrong,
}

/// What stands in the form.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlaceForm {
    /// The way chosen.
    pub(crate) way: Way,
    /// As typed, for both ways that need it.
    pub(crate) latitude: String,
    /// As typed.
    pub(crate) longitude: String,
    /// As typed.
    pub(crate) altitude: String,
    /// As typed.
    pub(crate) date: String,
    /// As typed.
    pub(crate) dip: String,
    /// As typed.
    pub(crate) horizontal: String,
    /// The heading to start on.
    pub(crate) heading: u16,
    /// The float.
    pub(crate) float: FloatChoice,
    /// The air.
    pub(crate) air: RoughAir,
}

impl PlaceForm {
    /// The form as the page opens; `today` is year-month-day.
    pub(crate) fn new(today: String) -> Self {
        Self {
            way: Way::default(),
            latitude: HOME_LATITUDE.to_string(),
            longitude: "0".to_owned(),
            altitude: "0".to_owned(),
            date: today,
            dip: "65".to_owned(),
            horizontal: "20000".to_owned(),
            heading: 360,
            float: FloatChoice::default(),
            air: RoughAir::default(),
        }
    }

    /// What was typed into an entry.
    pub(crate) fn text(&self, entry: Entry) -> &str {
        match entry {
            Entry::Latitude => &self.latitude,
            Entry::Longitude => &self.longitude,
            Entry::Altitude => &self.altitude,
            Entry::Date => &self.date,
            Entry::Dip => &self.dip,
            Entry::Horizontal => &self.horizontal,
        }
    }

    /// Types into an entry.
    pub(crate) fn set(&mut self, entry: Entry, text: String) {
        *match entry {
            Entry::Latitude => &mut self.latitude,
            Entry::Longitude => &mut self.longitude,
            Entry::Altitude => &mut self.altitude,
            Entry::Date => &mut self.date,
            Entry::Dip => &mut self.dip,
            Entry::Horizontal => &mut self.horizontal,
        } = text;
    }

    /// The setting that the form describes.
    ///
    /// # Errors
    /// Everything that is wrong, in the order of the form; at least one fault.
    pub(crate) fn setting(&self) -> Result<Setting, Vec<Fault>> {
        let mut faults = Vec::new();
        let source = self.source(&mut faults);
        let setting = source.map(Setting::new);
        match setting {
            Some(Ok(mut setting)) if faults.is_empty() => {
                setting.float = self.float.settings();
                setting.air = self.air;
                setting.heading = self.heading;
                Ok(setting)
            }
            Some(Err(error)) => {
                faults.push(self.refused(error));
                Err(faults)
            }
            _ => Err(faults),
        }
    }

    /// Reads the entries of the way chosen; each fault is noted.
    fn source(&self, faults: &mut Vec<Fault>) -> Option<FieldSource> {
        match self.way {
            Way::Latitude => {
                let latitude = self.number(Entry::Latitude, LATITUDE, faults)?;
                Some(FieldSource::Latitude { latitude })
            }
            Way::Place => {
                let latitude = self.number(Entry::Latitude, LATITUDE, faults);
                let longitude = self.number(Entry::Longitude, LONGITUDE, faults);
                let altitude = self.number(Entry::Altitude, ALTITUDE, faults);
                let date = self.date(faults);
                let place = Place::new(latitude?, longitude?, altitude?).ok()?;
                Some(FieldSource::Place { place, date: date? })
            }
            Way::ByHand => {
                let dip = self.number(Entry::Dip, DIP, faults);
                let horizontal = self.number(Entry::Horizontal, HORIZONTAL, faults);
                Some(FieldSource::ByHand {
                    dip: dip?,
                    horizontal: horizontal?,
                })
            }
        }
    }

    fn date(&self, faults: &mut Vec<Fault>) -> Option<Date> {
        let date = Date::parse(self.date.trim());
        if date.is_err() {
            faults.push(Fault {
                entry: Entry::Date,
                wrong: Wrong::NotADate,
            });
        }
        date.ok()
    }

    /// An entry in SI and radians, or a fault noted.
    fn number(&self, entry: Entry, range: Range, faults: &mut Vec<Fault>) -> Option<f64> {
        let text = self.text(entry).trim();
        let wrong = match parse(text, entry) {
            Some(value) => match range.accept(value) {
                Ok(si) => return Some(si),
                Err(refused) => Wrong::OutOfRange {
                    least: range.least,
                    most: range.most,
                    value: refused.value,
                },
            },
            None if text.is_empty() => Wrong::Empty,
            None => Wrong::NotANumber(text.chars().take(20).collect()),
        };
        faults.push(Fault { entry, wrong });
        None
    }

    /// What the field's source refused although each entry alone was fine.
    fn refused(&self, error: Error) -> Fault {
        let (entry, wrong) = match (error, self.way) {
            (Error::OutsideModel { date }, _) => (Entry::Date, Wrong::OutsideModel(date)),
            (Error::NotADate { .. }, _) => (Entry::Date, Wrong::NotADate),
            (_, Way::ByHand) => (Entry::Dip, Wrong::TooStrong),
            (other, _) => (Entry::Latitude, Wrong::Model(other.to_string())),
        };
        Fault { entry, wrong }
    }
}

/// The entries that a way asks for, in order.
pub(crate) fn entries(way: Way) -> &'static [Entry] {
    match way {
        Way::Latitude => &[Entry::Latitude],
        Way::Place => &[
            Entry::Latitude,
            Entry::Longitude,
            Entry::Altitude,
            Entry::Date,
        ],
        Way::ByHand => &[Entry::Dip, Entry::Horizontal],
    }
}

/// A number as people type one: a comma for a point, a true minus, a letter for the side.
fn parse(text: &str, entry: Entry) -> Option<f64> {
    let text = text.replace(',', ".").replace('−', "-");
    let sides: &[(char, f64)] = match entry {
        Entry::Latitude => &[('N', 1.0), ('S', -1.0)],
        Entry::Longitude => &[('E', 1.0), ('W', -1.0)],
        _ => &[],
    };
    let side = text.chars().last().and_then(|last| {
        sides
            .iter()
            .find(|side| side.0 == last.to_ascii_uppercase())
    });
    let (digits, sign) = match side {
        Some((letter, sign)) => (&text[..text.len() - letter.len_utf8()], *sign),
        None => (text.as_str(), 1.0),
    };
    let value: f64 = digits.trim().trim_end_matches('°').trim().parse().ok()?;
    value.is_finite().then_some(value * sign)
}

/// An altitude in metres as whole feet.
pub(crate) fn feet(altitude: f64) -> i64 {
    (altitude / FOOT).round() as i64
}

/// An intensity in tesla as whole nanotesla.
pub(crate) fn nanotesla(intensity: f64) -> i64 {
    (intensity / NANOTESLA).round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn form() -> PlaceForm {
        PlaceForm::new("2026-05-01".to_owned())
    }

    fn faults(form: &PlaceForm) -> Vec<Fault> {
        form.setting().unwrap_err()
    }

    #[test]
    fn the_form_opens_on_the_first_flights_setting() {
        assert_eq!(form().setting().unwrap(), Setting::home().unwrap());
    }

    #[test]
    fn south_may_be_typed_as_a_sign_or_a_letter() {
        let dip = |latitude: &str| {
            let form = PlaceForm {
                latitude: latitude.to_owned(),
                ..form()
            };
            form.setting().unwrap().field().dip()
        };
        assert!(dip("-33,5") < 0.0);
        assert_eq!(dip("-33.5"), dip(" 33.5° s "));
        assert_eq!(dip("−33.5"), dip("33.5S"));
        assert_eq!(dip("52"), dip("52N"));
    }

    #[test]
    fn every_wrong_entry_is_named_and_only_those_of_the_way_chosen() {
        let wrong = PlaceForm {
            way: Way::Place,
            latitude: "91".to_owned(),
            longitude: "west".to_owned(),
            date: "1.5.2026".to_owned(),
            dip: "nonsense".to_owned(),
            ..form()
        };
        let named: Vec<Entry> = faults(&wrong).iter().map(|fault| fault.entry).collect();
        assert_eq!(named, [Entry::Latitude, Entry::Longitude, Entry::Date]);
    }

    #[test]
    fn a_date_outside_the_models_life_is_refused_at_the_date() {
        let late = PlaceForm {
            way: Way::Place,
            date: "2031-01-01".to_owned(),
            ..form()
        };
        let date = Date::parse("2031-01-01").unwrap();
        assert_eq!(
            faults(&late),
            [Fault {
                entry: Entry::Date,
                wrong: Wrong::OutsideModel(date),
            }]
        );
    }

    #[test]
    fn what_no_number_can_be_is_refused() {
        for text in [
            "", "   ", "N", "NaN", "inf", "1e999", "5 2", "°", "٥", "52NN",
        ] {
            let form = PlaceForm {
                latitude: text.to_owned(),
                ..form()
            };
            assert_eq!(faults(&form).len(), 1, "{text:?}");
        }
    }

    #[test]
    fn a_dip_of_ninety_needs_a_field_without_a_horizontal_part() {
        let steep = PlaceForm {
            way: Way::ByHand,
            dip: "90".to_owned(),
            ..form()
        };
        assert_eq!(faults(&steep)[0].wrong, Wrong::TooStrong);
    }

    #[test]
    fn by_hand_takes_dip_and_intensity() {
        let hand = PlaceForm {
            way: Way::ByHand,
            dip: "-60".to_owned(),
            horizontal: "5000".to_owned(),
            ..form()
        };
        let field = hand.setting().unwrap().field();
        assert_eq!(nanotesla(field.horizontal()), 5000);
        assert!((field.dip().to_degrees() + 60.0).abs() < 1e-9);
    }
}

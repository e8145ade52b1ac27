//! The place in the form: three ways to set the field, and what each gives.

use super::entry::{Entry, Fault, Wrong, parse, typed};
use super::{Setting, SituationForm};
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

impl SituationForm {
    /// A setting by the field alone; each fault is noted.
    pub(super) fn place(&self, faults: &mut Vec<Fault>) -> Option<Setting> {
        let setting = Setting::new(self.source(faults)?);
        setting
            .map_err(|error| faults.push(self.refused(error)))
            .ok()
    }

    /// Latitude and longitude as typed, in degrees, where both are numbers.
    pub(crate) fn position(&self) -> Option<(f64, f64)> {
        let value = |entry| parse(self.text(entry), entry);
        Some((value(Entry::Latitude)?, value(Entry::Longitude)?))
    }

    /// Sets latitude and longitude, in degrees: the first stops at the poles, the second goes
    /// round.
    pub(crate) fn set_position(&mut self, (latitude, longitude): (f64, f64)) {
        let round = longitude.rem_euclid(360.0);
        let folded = if round > 180.0 { round - 360.0 } else { round };
        self.latitude = typed(latitude.clamp(-90.0, 90.0));
        self.longitude = typed(folded);
    }

    /// Moves so many degrees north and east; what is no number yet counts as 0.
    pub(crate) fn move_by(&mut self, north: f64, east: f64) {
        let value = |entry| parse(self.text(entry), entry).unwrap_or_default();
        let (latitude, longitude) = (value(Entry::Latitude), value(Entry::Longitude));
        self.set_position((latitude + north, longitude + east));
    }

    /// Whether the latitude as typed is south; none where there is neither.
    pub(crate) fn is_south(&self) -> Option<bool> {
        let latitude = parse(&self.latitude, Entry::Latitude)?;
        (latitude != 0.0).then_some(latitude < 0.0)
    }

    /// Goes to the same latitude in the other hemisphere, or in this one.
    pub(crate) fn set_south(&mut self, south: bool) {
        if self.is_south().is_some_and(|is| is != south)
            && let Some(latitude) = parse(&self.latitude, Entry::Latitude)
        {
            self.latitude = typed(-latitude);
        }
    }

    /// The year that is typed, if it is a year of a day.
    pub(crate) fn year(&self) -> Option<u16> {
        let date = Date::parse(self.date.trim()).ok()?;
        Some(date.decimal_year().floor() as u16)
    }

    /// Reads the entries of the way chosen; each fault is noted.
    fn source(&self, faults: &mut Vec<Fault>) -> Option<FieldSource> {
        match self.way {
            Way::Latitude => {
                let latitude = self.number(Entry::Latitude, faults)?;
                Some(FieldSource::Latitude { latitude })
            }
            Way::Place => {
                let latitude = self.number(Entry::Latitude, faults);
                let longitude = self.number(Entry::Longitude, faults);
                let altitude = self.number(Entry::Altitude, faults);
                let date = self.date(faults);
                let place = Place::new(latitude?, longitude?, altitude?).ok()?;
                Some(FieldSource::Place { place, date: date? })
            }
            Way::ByHand => {
                let dip = self.number(Entry::Dip, faults);
                let horizontal = self.number(Entry::Horizontal, faults);
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

#[cfg(test)]
mod tests {
    use super::super::nanotesla;
    use super::*;

    fn form() -> SituationForm {
        SituationForm::new("2026-05-01".to_owned())
    }

    fn faults(form: &SituationForm) -> Vec<Fault> {
        form.setting().unwrap_err()
    }

    #[test]
    fn the_form_opens_on_the_first_flights_setting() {
        assert_eq!(form().setting().unwrap(), Setting::home().unwrap());
    }

    #[test]
    fn south_may_be_typed_as_a_sign_or_a_letter() {
        let dip = |latitude: &str| {
            let form = SituationForm {
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
        let wrong = SituationForm {
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
        let late = SituationForm {
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
            let form = SituationForm {
                latitude: text.to_owned(),
                ..form()
            };
            assert_eq!(faults(&form).len(), 1, "{text:?}");
        }
    }

    #[test]
    fn a_dip_of_ninety_needs_a_field_without_a_horizontal_part() {
        let steep = SituationForm {
            way: Way::ByHand,
            dip: "90".to_owned(),
            ..form()
        };
        assert_eq!(faults(&steep)[0].wrong, Wrong::TooStrong);
    }

    #[test]
    fn by_hand_takes_dip_and_intensity() {
        let hand = SituationForm {
            way: Way::ByHand,
            dip: "-60".to_owned(),
            horizontal: "5000".to_owned(),
            ..form()
        };
        let field = hand.setting().unwrap().field();
        assert_eq!(nanotesla(field.horizontal()), 5000);
        assert!((field.dip().to_degrees() + 60.0).abs() < 1e-9);
    }

    #[test]
    fn moving_stops_at_the_poles_and_goes_round_the_earth() {
        let mut form = SituationForm {
            latitude: "88".to_owned(),
            longitude: "178.5 E".to_owned(),
            ..form()
        };
        form.move_by(5.0, 5.0);
        assert_eq!(form.position(), Some((90.0, -176.5)));
        form.move_by(-180.5, -5.0);
        assert_eq!(form.position(), Some((-90.0, 178.5)));
        form.set_position((10.0, -180.0));
        assert_eq!(form.longitude, "180");
        form.longitude = "somewhere".to_owned();
        assert_eq!(form.position(), None);
        form.move_by(0.0, -1.0);
        assert_eq!(form.position(), Some((10.0, -1.0)));
    }

    #[test]
    fn the_hemisphere_is_changed_without_the_latitude() {
        let mut form = SituationForm {
            latitude: "33,5 S".to_owned(),
            ..form()
        };
        form.set_south(true);
        assert_eq!(form.latitude, "33,5 S");
        form.set_south(false);
        assert_eq!(
            (form.latitude.as_str(), form.is_south()),
            ("33.5", Some(false))
        );
        form.latitude = "0".to_owned();
        form.set_south(true);
        assert_eq!((form.latitude.as_str(), form.is_south()), ("0", None));
    }
}

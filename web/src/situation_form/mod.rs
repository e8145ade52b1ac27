//! The form that sets a new flight: what was typed, what it means, and what is wrong with it.

mod draft;
mod entry;
mod float;
mod iron;
mod place;

pub(crate) use draft::Draft;
pub(crate) use entry::{EAST_WEST, Entry, Fault, NORTH_SOUTH, Wrong, typed, within};
pub(crate) use float::{FloatEntry, FloatForm, Mark};
pub(crate) use iron::{Axis, IronForm};
pub(crate) use place::{Way, entries};

use crate::setting::{FloatChoice, HOME_AIRSPEED, HOME_LATITUDE, IronChoice, Setting};
use compass::gust::RoughAir;
use compass::unit::{FOOT, NANOTESLA};
use entry::number;

/// How a change of the form joins those before it.
pub(crate) type Step = lessons::making::Step<Entry>;

/// What stands in the form.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SituationForm {
    /// The way to set the field.
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
    /// As typed.
    pub(crate) airspeed: String,
    /// The float.
    pub(crate) float: FloatForm,
    /// The aircraft's iron.
    pub(crate) iron: IronForm,
    /// The air.
    pub(crate) air: RoughAir,
}

impl SituationForm {
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
            airspeed: typed(HOME_AIRSPEED),
            float: FloatChoice::default().into(),
            iron: IronChoice::default().into(),
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
            Entry::Airspeed => &self.airspeed,
            Entry::Float(entry) => self.float.text(entry),
            Entry::Hard(axis) => self.iron.hard(axis),
            Entry::Soft(along, by) => self.iron.soft(along, by),
        }
    }

    /// Types into an entry.
    pub(crate) fn set(&mut self, entry: Entry, text: String) {
        let into = match entry {
            Entry::Latitude => Some(&mut self.latitude),
            Entry::Longitude => Some(&mut self.longitude),
            Entry::Altitude => Some(&mut self.altitude),
            Entry::Date => Some(&mut self.date),
            Entry::Dip => Some(&mut self.dip),
            Entry::Horizontal => Some(&mut self.horizontal),
            Entry::Airspeed => Some(&mut self.airspeed),
            Entry::Float(entry) => self.float.text_mut(entry),
            Entry::Hard(axis) => Some(self.iron.hard_mut(axis)),
            Entry::Soft(along, by) => Some(self.iron.soft_mut(along, by)),
        };
        if let Some(into) = into {
            *into = text;
        }
    }

    /// The setting that the form describes.
    ///
    /// # Errors
    /// Everything that is wrong, in the order of the form; at least one fault.
    pub(crate) fn setting(&self) -> Result<Setting, Vec<Fault>> {
        let mut faults = Vec::new();
        let place = self.place(&mut faults);
        let airspeed = self.number(Entry::Airspeed, &mut faults);
        let float = self.float.settings(&mut faults);
        let iron = self.iron.iron(&mut faults);
        match (place, airspeed, iron) {
            (Some(mut setting), Some(airspeed), Some(iron)) if faults.is_empty() => {
                setting.airspeed = airspeed;
                setting.float = float;
                setting.iron = iron;
                setting.air = self.air;
                setting.heading = self.heading;
                Ok(setting)
            }
            _ => Err(faults),
        }
    }

    /// A setting by the field alone, if that much is right.
    pub(crate) fn field(&self) -> Option<Setting> {
        self.place(&mut Vec::new())
    }

    /// An entry in SI and radians, or a fault noted.
    fn number(&self, entry: Entry, faults: &mut Vec<Fault>) -> Option<f64> {
        number(self.text(entry), entry, faults)
    }
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

    #[test]
    fn faults_come_in_the_order_of_the_form_and_the_field_is_had_without_the_rest() {
        let form = SituationForm {
            airspeed: "20".to_owned(),
            ..SituationForm::new("2026-05-01".to_owned())
        };
        let mut form = form;
        form.set(Entry::Float(FloatEntry::Friction), String::new());
        form.set(Entry::Hard(Axis::Down), "strong".to_owned());
        let faults = form.setting().unwrap_err();
        let named: Vec<Entry> = faults.iter().map(|fault| fault.entry).collect();
        let wrong = [
            Entry::Airspeed,
            Entry::Float(FloatEntry::Friction),
            Entry::Hard(Axis::Down),
        ];
        assert_eq!(named, wrong);
        assert!(form.field().is_some());
    }

    #[test]
    fn what_is_typed_reaches_its_own_entry() {
        let mut form = SituationForm::new("2026-05-01".to_owned());
        let all = [
            Entry::Latitude,
            Entry::Longitude,
            Entry::Altitude,
            Entry::Date,
        ]
        .into_iter()
        .chain([Entry::Dip, Entry::Horizontal, Entry::Airspeed])
        .chain(FloatEntry::ALL.map(Entry::Float))
        .chain(Axis::ALL.map(Entry::Hard))
        .chain(
            Axis::ALL
                .iter()
                .flat_map(|a| Axis::ALL.map(|b| Entry::Soft(*a, b))),
        );
        let all: Vec<Entry> = all.collect();
        for (index, entry) in all.iter().enumerate() {
            form.set(*entry, index.to_string());
        }
        for (index, entry) in all.iter().enumerate() {
            assert_eq!(form.text(*entry), index.to_string());
        }
    }
}

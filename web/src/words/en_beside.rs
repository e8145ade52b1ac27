//! English, for two at once.

use super::{BesideWords, Button};
use crate::beside::Change;
use crate::setting::FloatChoice;

/// The words of the other compass.
pub(super) const BESIDE: BesideWords = BesideWords {
    title: "The same flight in another situation",
    compare: Button {
        label: "Two at once",
        name: "Two at once: the same flight in another situation beside this one",
    },
    other_compass: "Compass there",
    changed: "There",
    change: |change| match change {
        Change::OtherHemisphere => "The other hemisphere",
        Change::Latitude(_) => "Another latitude",
        Change::NoVerticalField => "No vertical field",
        Change::NoSwirl => "No swirl in the liquid",
        Change::Float(FloatChoice::Standard) => "Standard float",
        Change::Float(FloatChoice::Brisk) => "Brisk float",
        Change::Float(FloatChoice::Sluggish) => "Sluggish float",
        Change::Float(FloatChoice::LightlyDamped) => "Lightly damped float",
        Change::Float(FloatChoice::StickyPivot) => "Pivot that sticks",
        Change::OtherIron => "Iron put in or taken out",
    },
    latitude: "Latitude there",
    latitude_value: |degrees| {
        let side = if degrees < 0 { "S" } else { "N" };
        format!("{}° {side}", degrees.unsigned_abs())
    },
    apart: |degrees| match degrees {
        0 => "both compasses alike".to_owned(),
        _ => format!("compasses {degrees}° apart"),
    },
    card_face: |readout| match &readout.beside {
        Some(_) if !readout.cover.shows_both() => {
            "Floating card of the same flight there. One reading is covered.".to_owned()
        }
        Some(other) => format!(
            "Floating card of the same flight there. Magnetic heading {:03}°, compass {:03}°: the compass {}. {}.",
            readout.heading.whole_degrees(),
            other.moment.reading.compass.whole_degrees(),
            (super::en::ENGLISH.difference)(other.difference),
            (BESIDE.apart)(other.apart),
        ),
        None => String::new(),
    },
};

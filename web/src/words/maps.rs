//! The words of the page of maps.

use crate::maps::{Key, Part, Show};
use crate::situation_form::Wrong;
use earth::PlaceField;

/// The words of the page of maps.
pub(crate) struct MapWords {
    pub(crate) parts: &'static str,
    pub(crate) part: fn(Part) -> &'static str,
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    /// What a field is called.
    pub(crate) label: fn(Key) -> &'static str,
    /// What a field's slider is called.
    pub(crate) slider: fn(Key) -> &'static str,
    /// Its unit, and what else is to be known before typing.
    pub(crate) hint: fn(Key) -> &'static str,
    /// One of a field's choices.
    pub(crate) choice: fn(Key, &'static str) -> &'static str,
    pub(crate) refusal: fn(Key, &Wrong) -> String,
    pub(crate) title: fn(Show) -> &'static str,
    pub(crate) about: fn(Show) -> &'static str,
    pub(crate) map: &'static str,
    /// Takes what is shown, and whether it is a globe.
    pub(crate) map_hint: fn(Show, bool) -> String,
    pub(crate) turn_globe: &'static str,
    pub(crate) turn_west: &'static str,
    pub(crate) turn_north: &'static str,
    pub(crate) turn_south: &'static str,
    pub(crate) turn_east: &'static str,
    /// Takes whether turns are flown.
    pub(crate) progress: fn(bool) -> &'static str,
    pub(crate) cancel: &'static str,
    pub(crate) go_on: &'static str,
    pub(crate) failed: &'static str,
    /// Takes the seconds of the survey; the turns flown, and the seconds they took.
    pub(crate) took: fn(Option<f64>, Option<(usize, f64)>) -> String,

    // On the map.
    pub(crate) dip_equator: &'static str,
    pub(crate) north_pole: &'static str,
    pub(crate) south_pole: &'static str,
    pub(crate) caution: &'static str,
    pub(crate) unreliable: &'static str,
    pub(crate) over_leads: &'static str,
    pub(crate) under_leads: &'static str,
    pub(crate) good: &'static str,
    /// These take degrees, degrees with a sign, degrees to the east, whole nanotesla.
    pub(crate) degrees: fn(f64) -> String,
    pub(crate) signed: fn(f64) -> String,
    pub(crate) variation: fn(f64) -> String,
    pub(crate) nanotesla: fn(i32) -> String,

    // In figures.
    pub(crate) in_figures: &'static str,
    pub(crate) latitude: &'static str,
    /// These take degrees.
    pub(crate) longitude: fn(f64) -> String,
    pub(crate) on_latitude: fn(f64) -> String,
    /// A value of the map, in SI and radians.
    pub(crate) figure: fn(Show, f64) -> String,
    pub(crate) take_home: &'static str,
    pub(crate) copy_text: &'static str,
    pub(crate) copy_csv: &'static str,
    pub(crate) copy_image: &'static str,
    pub(crate) copy_link: &'static str,
    pub(crate) save_csv: &'static str,
    pub(crate) save_svg: &'static str,
    pub(crate) save_png: &'static str,
    pub(crate) copied: &'static str,
    pub(crate) not_copied: &'static str,

    // At the point.
    pub(crate) point: &'static str,
    pub(crate) dip: &'static str,
    pub(crate) dip_of: fn(&PlaceField) -> String,
    pub(crate) variation_name: &'static str,
    pub(crate) variation_of: fn(&PlaceField) -> String,
    pub(crate) horizontal: &'static str,
    pub(crate) horizontal_of: fn(&PlaceField) -> String,
    pub(crate) zone: &'static str,
    pub(crate) zone_of: fn(&PlaceField) -> String,
    /// Takes the bank, rad; none where it is wrong.
    pub(crate) lags: fn(Option<f64>) -> String,
    pub(crate) by_rule: &'static str,
    pub(crate) by_steady: &'static str,
    pub(crate) by_simulated: &'static str,
    /// A lag, rad.
    pub(crate) lag: fn(f64) -> String,
    /// A lag less the rule, rad.
    pub(crate) off: fn(f64) -> String,
    /// The point in a sentence: its field, rule and closed form.
    pub(crate) said: fn(&PlaceField, Option<f64>, Option<f64>) -> String,

    pub(crate) dip_part: DipWords,
}

/// The words of the part about dip and latitude.
pub(crate) struct DipWords {
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    pub(crate) title: &'static str,
    pub(crate) about: &'static str,
    pub(crate) here: &'static str,
    pub(crate) in_figures: &'static str,
    pub(crate) rule_curve: &'static str,
    pub(crate) dipole_curve: &'static str,
    pub(crate) model_curve: &'static str,
    pub(crate) field: &'static str,
    pub(crate) horizontal: &'static str,
    pub(crate) vertical: &'static str,
    pub(crate) latitude_axis: &'static str,
    pub(crate) dip_axis: &'static str,
    pub(crate) by_rule: &'static str,
    pub(crate) by_dipole: &'static str,
    pub(crate) by_model: &'static str,
    pub(crate) tilt: &'static str,
    pub(crate) tilt_note: &'static str,
    pub(crate) back_rule: &'static str,
    pub(crate) back_dipole: &'static str,
}

impl MapWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_maps::MAPS
    }
}

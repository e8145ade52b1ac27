//! The shape of a scenario file, and reading one.

use crate::scenario::ScenarioError;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use strsim::damerau_levenshtein;

/// A scenario file as it is written; degrees, knots, feet, nanotesla and seconds. Only what
/// [`Scenario`](crate::Scenario) makes of it is known to be a flight.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioFile {
    pub(crate) field: Field,
    #[serde(default)]
    pub(crate) float: Float,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) iron: Option<Iron>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) rough_air: Option<RoughAir>,
    pub(crate) start: Start,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) legs: Option<Vec<Leg>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) controls: Option<Vec<Control>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) duration_s: Option<f64>,
}

/// One of: horizontal_nt with vertical_nt or dip_deg; latitude_deg, longitude_deg and date, with
/// altitude_ft or without; a latitude alone.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Field {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) horizontal_nt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) vertical_nt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) dip_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) latitude_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) longitude_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) date: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) altitude_ft: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) dipole_latitude_deg: Option<f64>,
}

/// What is left out is as in the standard float.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Float {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) yaw_period_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) yaw_damping_ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) reference_horizontal_nt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) reference_vertical_nt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) level_tilt_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) inertia_ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) tilt_damping_ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) liquid_spin_up_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) balance_vertical_nt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) friction_angle_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) vibration: Option<f64>,
}

#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Iron {
    #[serde(default)]
    pub(crate) hard_nt: [f64; 3],
    #[serde(default)]
    pub(crate) soft: [[f64; 3]; 3],
}

#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RoughAir {
    pub(crate) intensity: Intensity,
    #[serde(default)]
    pub(crate) seed: u64,
}

#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Intensity {
    Still,
    Light,
    Moderate,
    Severe,
}

#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Start {
    pub(crate) heading_deg: f64,
    pub(crate) speed_kt: f64,
}

#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Leg {
    pub(crate) seconds: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) bank_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) speed_kt: Option<f64>,
}

/// From a time on, where the pilot holds the controls; what is left out stays as it was.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Control {
    pub(crate) time_s: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) bank_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) airspeed_kt: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) pitch_deg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) rudder: Option<f64>,
}

impl ScenarioFile {
    /// The file's text.
    pub fn to_json(&self) -> String {
        // Numbers and names alone: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// The latitude of its field in degrees north, where the field is given by one.
    pub fn latitude_deg(&self) -> Option<f64> {
        self.field.latitude_deg.or(self.field.dipole_latitude_deg)
    }

    /// The same flight where the field is that of a latitude alone, in degrees north.
    #[must_use]
    pub fn at_latitude_deg(mut self, latitude_deg: f64) -> Self {
        self.field = Field {
            latitude_deg: Some(latitude_deg),
            ..Field::default()
        };
        self
    }
}

/// Reads JSON text of a known shape.
///
/// # Errors
/// What is not of that shape, in a sentence that names the place.
pub fn read_json<T: DeserializeOwned>(json: &str) -> Result<T, ScenarioError> {
    let mut reader = serde_json::Deserializer::from_str(json);
    let file: T = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string();
        let said = error.inner().to_string();
        ScenarioError::at(if path == "." { "" } else { &path }, in_words(&said))
    })?;
    reader
        .end()
        .map_err(|error| ScenarioError::at("", in_words(&error.to_string())))?;
    Ok(file)
}

/// Puts the reader's own words into plainer ones: "unknown field `x`, expected one of `a`, `b`"
/// names the nearest of those it knows.
fn in_words(said: &str) -> String {
    let names: Vec<&str> = said.split('`').skip(1).step_by(2).collect();
    let place = said
        .rfind(" at line ")
        .map_or(String::new(), |at| format!(" (at {})", &said[at + 4..]));
    match names.as_slice() {
        [unknown, known @ ..] if said.starts_with("unknown ") && !known.is_empty() => {
            let kind = if said.starts_with("unknown variant") {
                "value"
            } else {
                "field"
            };
            let nearest = known
                .iter()
                .min_by_key(|name| damerau_levenshtein(name, unknown))
                .unwrap_or(&known[0]);
            let all = known.join(", ");
            format!(
                "{unknown:?} is no known {kind}; the nearest is {nearest:?} (known: {all}){place}"
            )
        }
        [missing] if said.starts_with("missing field") => {
            format!("the field {missing:?} is missing{place}")
        }
        _ => said.to_string(),
    }
}

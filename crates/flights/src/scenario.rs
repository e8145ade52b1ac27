//! A scripted flight: where, with which float, and along which legs.

use crate::air::SeededAir;
use crate::file::{self, File};
use compass::aircraft::Aircraft;
use compass::deviation::{AircraftIron, HARD_IRON, SOFT_IRON};
use compass::field::{DIP, HORIZONTAL, MagneticField, VERTICAL};
use compass::float_settings::{self, FloatSettings};
use compass::free_flight::Controls;
use compass::gust::RoughAir;
use compass::heading::MagneticHeading;
use compass::legs::{AIRSPEED, BANK, LEG_DURATION, Leg, Legs};
use compass::range::Range;
use compass::simulation::{Simulation, Situation};
use compass::unit::Unit;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{Date, FieldSource, Place};
use thiserror::Error;

/// Heading at the start that a file can name.
pub const HEADING: Range = Range::new("heading", Unit::Degree, -360.0, 360.0);

/// What is wrong with a scenario: where in the file, and a sentence.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{}{reason}", if path.is_empty() { String::new() } else { format!("{path}: ") })]
pub struct ScenarioError {
    /// The field, such as `legs[1].bank_deg`; empty for the file as a whole.
    pub path: String,
    /// What is wrong with it, with the value and what it may be.
    pub reason: String,
}

impl ScenarioError {
    pub(crate) fn at(path: &str, reason: impl ToString) -> Self {
        Self {
            path: path.to_string(),
            reason: reason.to_string(),
        }
    }
}

/// A scripted flight, checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    situation: Situation,
    air: SeededAir,
    heading: MagneticHeading,
    legs: Legs,
}

impl Scenario {
    /// Reads a scenario from JSON text.
    ///
    /// # Errors
    /// Text that is not JSON, a field that is unknown, missing or beyond its range: each in one
    /// sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, ScenarioError> {
        let file = file::read(json)?;
        let situation = Situation {
            field: field(&file.field)?,
            iron: iron(file.iron.as_ref())?,
            float: float(&file.float)?,
            air: file.rough_air.as_ref().map_or(RoughAir::Still, air),
        };
        let seed = file.rough_air.as_ref().map_or(0, |air| air.seed);
        let heading = accept(HEADING, "start.heading_deg", file.start.heading_deg)?;
        Ok(Self {
            situation,
            air: SeededAir { seed },
            heading: MagneticHeading::from_radians(heading),
            legs: legs(&file)?,
        })
    }

    /// What the flight takes place in.
    pub fn situation(&self) -> &Situation {
        &self.situation
    }

    /// The air's white numbers.
    pub fn air(&self) -> SeededAir {
        self.air
    }

    /// Seconds from the first leg's start to the last one's end.
    pub fn duration(&self) -> f64 {
        self.legs.duration()
    }

    /// The controls that go with the flight: prescribed legs do not ask for any.
    pub fn controls(&self) -> Controls {
        Controls::level(self.legs.airspeed_at_start())
    }

    /// The flight at its start, the float settled.
    ///
    /// # Errors
    /// None that a checked scenario can meet: its float has been checked.
    pub fn simulation(&self) -> Result<Simulation, ScenarioError> {
        let aircraft = Aircraft::prescribed(self.heading, self.legs.clone());
        Simulation::new(self.situation, aircraft, self.controls())
            .map_err(|error| ScenarioError::at("float", error))
    }
}

fn accept(range: Range, path: &str, value: f64) -> Result<f64, ScenarioError> {
    range
        .accept(value)
        .map_err(|error| ScenarioError::at(path, error))
}

fn field(file: &file::Field) -> Result<MagneticField, ScenarioError> {
    let number = |name: &str, range: Range, value: Option<f64>| {
        let path = format!("field.{name}");
        match value {
            Some(value) => accept(range, &path, value),
            None => Err(ScenarioError::at(
                "field",
                format!("the field {name:?} is missing"),
            )),
        }
    };
    let by_hand = [file.horizontal_nt, file.vertical_nt, file.dip_deg];
    let by_place = [file.latitude_deg, file.longitude_deg, file.altitude_ft];
    let ways = [
        by_hand.iter().any(Option::is_some),
        by_place.iter().any(Option::is_some) || file.date.is_some(),
        file.dipole_latitude_deg.is_some(),
    ];
    if ways.iter().filter(|given| **given).count() != 1 {
        return Err(ScenarioError::at(
            "field",
            "give exactly one of: horizontal_nt with vertical_nt or dip_deg; latitude_deg, \
             longitude_deg and date, with or without altitude_ft; latitude_deg alone or \
             dipole_latitude_deg",
        ));
    }
    let said = |error: earth::Error| ScenarioError::at("field", error);

    if let Some(latitude) = file.dipole_latitude_deg {
        let latitude = accept(LATITUDE, "field.dipole_latitude_deg", latitude)?;
        return FieldSource::Latitude { latitude }.field().map_err(said);
    }
    if ways[0] {
        let horizontal = number("horizontal_nt", HORIZONTAL, file.horizontal_nt)?;
        return match (file.vertical_nt, file.dip_deg) {
            (Some(_), Some(_)) => Err(ScenarioError::at(
                "field",
                "give vertical_nt or dip_deg, not both",
            )),
            (None, Some(dip)) => {
                let dip = accept(DIP, "field.dip_deg", dip)?;
                FieldSource::ByHand { horizontal, dip }
                    .field()
                    .map_err(said)
            }
            (vertical, None) => {
                let vertical = number("vertical_nt", VERTICAL, vertical)?;
                MagneticField::new(horizontal, vertical, 0.0)
                    .map_err(|error| ScenarioError::at("field", error))
            }
        };
    }
    let latitude = number("latitude_deg", LATITUDE, file.latitude_deg)?;
    let source = match (file.longitude_deg, &file.date, file.altitude_ft) {
        (None, None, None) => FieldSource::Latitude { latitude },
        (longitude, date, altitude) => {
            let longitude = number("longitude_deg", LONGITUDE, longitude)?;
            let altitude = number("altitude_ft", ALTITUDE, Some(altitude.unwrap_or(0.0)))?;
            let date = date
                .as_deref()
                .ok_or_else(|| ScenarioError::at("field", "the field \"date\" is missing"))?;
            FieldSource::Place {
                place: Place::new(latitude, longitude, altitude)
                    .map_err(|error| ScenarioError::at("field", error))?,
                date: Date::parse(date).map_err(|error| ScenarioError::at("field.date", error))?,
            }
        }
    };
    source.field().map_err(said)
}

fn iron(file: Option<&file::Iron>) -> Result<AircraftIron, ScenarioError> {
    let Some(file) = file else {
        return Ok(AircraftIron::NONE);
    };
    let mut hard = [0.0; 3];
    for (i, value) in file.hard_nt.into_iter().enumerate() {
        hard[i] = accept(HARD_IRON, &format!("iron.hard_nt[{i}]"), value)?;
    }
    for (row, values) in file.soft.iter().enumerate() {
        for (column, value) in values.iter().enumerate() {
            let path = format!("iron.soft[{row}][{column}]");
            accept(SOFT_IRON, &path, *value)?;
        }
    }
    AircraftIron::new(hard, file.soft).map_err(|error| ScenarioError::at("iron", error))
}

fn float(file: &file::Float) -> Result<FloatSettings, ScenarioError> {
    use float_settings::*;
    let mut settings = FloatSettings::default();
    let mut set =
        |name: &str, range: Range, value: Option<f64>, into: fn(&mut FloatSettings) -> &mut f64| {
            if let Some(value) = value {
                *into(&mut settings) = accept(range, &format!("float.{name}"), value)?;
            }
            Ok(())
        };
    set("yaw_period_s", YAW_PERIOD, file.yaw_period_s, |s| {
        &mut s.yaw_period
    })?;
    set(
        "yaw_damping_ratio",
        DAMPING_RATIO,
        file.yaw_damping_ratio,
        |s| &mut s.yaw_damping_ratio,
    )?;
    set(
        "reference_horizontal_nt",
        REFERENCE,
        file.reference_horizontal_nt,
        |s| &mut s.reference_horizontal,
    )?;
    set(
        "reference_vertical_nt",
        REFERENCE,
        file.reference_vertical_nt,
        |s| &mut s.reference_vertical,
    )?;
    set("level_tilt_deg", LEVEL_TILT, file.level_tilt_deg, |s| {
        &mut s.level_tilt
    })?;
    set("inertia_ratio", INERTIA_RATIO, file.inertia_ratio, |s| {
        &mut s.inertia_ratio
    })?;
    set(
        "tilt_damping_ratio",
        DAMPING_RATIO,
        file.tilt_damping_ratio,
        |s| &mut s.tilt_damping_ratio,
    )?;
    set(
        "liquid_spin_up_s",
        LIQUID_SPIN_UP,
        file.liquid_spin_up_s,
        |s| &mut s.liquid_spin_up,
    )?;
    set(
        "balance_vertical_nt",
        BALANCE,
        file.balance_vertical_nt,
        |s| &mut s.balance_vertical,
    )?;
    set(
        "friction_angle_deg",
        FRICTION_ANGLE,
        file.friction_angle_deg,
        |s| &mut s.friction_angle,
    )?;
    set("vibration", VIBRATION, file.vibration, |s| &mut s.vibration)?;
    Ok(settings)
}

fn air(file: &file::RoughAir) -> RoughAir {
    match file.intensity {
        file::Intensity::Still => RoughAir::Still,
        file::Intensity::Light => RoughAir::Light,
        file::Intensity::Moderate => RoughAir::Moderate,
        file::Intensity::Severe => RoughAir::Severe,
    }
}

fn legs(file: &File) -> Result<Legs, ScenarioError> {
    let airspeed = accept(AIRSPEED, "start.speed_kt", file.start.speed_kt)?;
    let legs: Vec<Leg> = file
        .legs
        .iter()
        .enumerate()
        .map(|(index, leg)| {
            let within = |name: &str, range: Range, value: f64| {
                accept(range, &format!("legs[{index}].{name}"), value)
            };
            Ok(Leg {
                duration: within("seconds", LEG_DURATION, leg.seconds)?,
                bank: leg
                    .bank_deg
                    .map(|bank| within("bank_deg", BANK, bank))
                    .transpose()?,
                airspeed: leg
                    .speed_kt
                    .map(|speed| within("speed_kt", AIRSPEED, speed))
                    .transpose()?,
            })
        })
        .collect::<Result<_, ScenarioError>>()?;
    Legs::new(airspeed, &legs).map_err(|error| ScenarioError::at("legs", error))
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLAIN: &str = r#"{"field": {"horizontal_nt": 20000, "vertical_nt": 40000},
        "start": {"heading_deg": 90, "speed_kt": 100}, "legs": [{"seconds": 2}]}"#;

    fn refused(from: &str, to: &str) -> String {
        assert!(PLAIN.contains(from));
        Scenario::from_json(&PLAIN.replace(from, to))
            .unwrap_err()
            .to_string()
    }

    #[test]
    fn what_is_left_out_is_the_standard_float_without_iron_in_still_air() {
        let scenario = Scenario::from_json(PLAIN).unwrap();
        assert_eq!(scenario.situation().float, FloatSettings::default());
        assert!(scenario.situation().iron.is_none());
        assert_eq!(scenario.situation().air, RoughAir::Still);
        assert_eq!(scenario.duration(), 2.0);
    }

    #[test]
    fn an_unknown_field_is_met_with_the_nearest_known_name() {
        let said = refused("\"seconds\": 2", "\"seconds\": 2, \"bnk_deg\": 3");
        assert!(
            said.starts_with("legs[0].bnk_deg: \"bnk_deg\" is no known field"),
            "{said}"
        );
        assert!(said.contains("the nearest is \"bank_deg\""), "{said}");
    }

    #[test]
    fn every_refusal_names_field_value_and_range() {
        let seconds = "\"seconds\": 2";
        for (from, to, sentence) in [
            (
                seconds,
                "\"seconds\": 2, \"bank_deg\": 95",
                "legs[0].bank_deg: bank must be from -80° to 80°, not 95°",
            ),
            (
                "100",
                "0",
                "start.speed_kt: airspeed must be from 1 kt to 2000 kt, not 0 kt",
            ),
            (
                "\"vertical_nt\": 40000",
                "\"dip_deg\": 91",
                "field.dip_deg: dip must be from -90° to 90°, not 91°",
            ),
        ] {
            assert_eq!(refused(from, to), sentence);
        }
        assert!(refused(seconds, "\"bank_deg\": 2").contains("\"seconds\" is missing"));
        assert!(
            refused(seconds, "\"seconds\": 1e999")
                .starts_with("legs[0].seconds: number out of range")
        );
        assert!(refused("90,", "\"east\",").starts_with("start.heading_deg: invalid type"));
        assert!(refused(", \"vertical_nt\": 40000", "").contains("\"vertical_nt\" is missing"));
        assert!(refused("\"vertical_nt\"", "\"latitude_deg\"").contains("exactly one of"));
        assert!(refused("}]}", "}]} {").contains("trailing characters"));
    }

    #[test]
    fn a_place_a_latitude_and_a_dip_set_the_field() {
        let by_hand = "\"horizontal_nt\": 20000, \"vertical_nt\": 40000";
        for field in [
            r#""latitude_deg": 52, "longitude_deg": 0, "date": "2026-05-01", "altitude_ft": 2000"#,
            r#""latitude_deg": 52, "longitude_deg": 0, "date": "2026-05-01""#,
            r#""latitude_deg": 52"#,
            r#""dipole_latitude_deg": 52"#,
            r#""horizontal_nt": 19500, "dip_deg": 66"#,
        ] {
            let scenario = Scenario::from_json(&PLAIN.replace(by_hand, field)).unwrap();
            let dip = scenario.situation().field.dip().to_degrees();
            assert!((64.0..70.0).contains(&dip), "{field}: {dip}");
        }
        let outside = r#""latitude_deg": 52, "longitude_deg": 0, "date": "2031-05-01""#;
        assert!(refused(by_hand, outside).contains("2025"));
    }
}

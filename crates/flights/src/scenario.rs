//! A scripted flight: where, with which float, and how it is flown.
//!
//! It is flown in one of two ways. Along `legs`, bank and airspeed are functions of time:
//!
//! ```
//! # use flights::Scenario;
//! # let json =
//! r#"{"field": {"latitude_deg": 52}, "start": {"heading_deg": 350, "speed_kt": 100},
//!     "legs": [{"seconds": 3, "bank_deg": 15}, {"seconds": 20}]}"#
//! # ; Scenario::from_json(json).unwrap();
//! ```
//!
//! By `controls`, a pilot flies a light aircraft for `duration_s` seconds: each entry says where
//! the controls are from `time_s` on, which is taken to the nearest step of 1/200 s. What an entry
//! leaves out stays as it was; before the first the flight is straight and level. Rough air moves
//! an aircraft that is flown so, and rudder skids it. A flight [recorded](Recorded) on the page is
//! such a file.
//!
//! ```
//! # use flights::Scenario;
//! # let json =
//! r#"{"field": {"latitude_deg": 52}, "start": {"heading_deg": 350, "speed_kt": 100},
//!     "controls": [{"time_s": 3, "bank_deg": 15}, {"time_s": 20, "bank_deg": 0, "rudder": 0.25},
//!                  {"time_s": 25, "airspeed_kt": 90, "pitch_deg": 3, "rudder": 0}],
//!     "duration_s": 60}"#
//! # ; Scenario::from_json(json).unwrap();
//! ```

use crate::air::SeededAir;
use crate::file::{self, ScenarioFile};
use compass::aircraft::Aircraft;
use compass::deviation::{AircraftIron, HARD_IRON, SOFT_IRON};
use compass::field::{DIP, HORIZONTAL, MagneticField, VERTICAL};
use compass::float_settings::{self, FloatSettings};
use compass::free_flight::{AIRSPEED_COMMAND, BANK_COMMAND, Controls, PITCH_COMMAND, RUDDER};
use compass::gust::RoughAir;
use compass::heading::MagneticHeading;
use compass::legs::{AIRSPEED, BANK, FLIGHT_DURATION, LEG_DURATION, Leg, Legs};
use compass::range::Range;
use compass::record::Record;
use compass::simulation::{STEP, STEPS_PER_SECOND, Simulation, Situation};
use compass::unit::Unit;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{Date, FieldSource, Place};
use thiserror::Error;

/// Heading at the start that a file can name.
pub const HEADING: Range = Range::new("heading", Unit::Degree, -360.0, 360.0);

/// When the controls can change.
pub const CONTROL_TIME: Range = Range::new("time of a control", Unit::Second, 0.0, 86_400.0);
/// How many times the controls can change in one flight; chosen, to bound the memory that a file
/// can ask for: as often as a key held down repeats, for an hour.
pub const MOST_CONTROLS: usize = 100_000;

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
    /// What is wrong at a place of a file.
    pub fn at(path: &str, reason: impl ToString) -> Self {
        Self {
            path: path.to_string(),
            reason: reason.to_string(),
        }
    }
}

/// A scripted flight, checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    source: FieldSource,
    situation: Situation,
    air: SeededAir,
    heading: MagneticHeading,
    course: Course,
}

/// How a scenario is flown.
#[derive(Clone, Debug, PartialEq)]
enum Course {
    Legs(Legs),
    Controls {
        /// Before the first change.
        start: Controls,
        /// From a step on, in order.
        inputs: Vec<(u64, Controls)>,
        /// Seconds.
        duration: f64,
    },
}

impl Scenario {
    /// Reads a scenario from JSON text.
    ///
    /// # Errors
    /// Text that is not JSON, a field that is unknown, missing or beyond its range: each in one
    /// sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, ScenarioError> {
        Self::from_file(&file::read_json(json)?)
    }

    /// Takes a scenario from a file that is read.
    ///
    /// # Errors
    /// A field that is missing or beyond its range, in one sentence that names it.
    pub fn from_file(file: &ScenarioFile) -> Result<Self, ScenarioError> {
        let (source, field) = field(&file.field)?;
        let situation = Situation {
            field,
            iron: iron(file.iron.as_ref())?,
            float: float(&file.float)?,
            air: file.rough_air.as_ref().map_or(RoughAir::Still, air),
        };
        let seed = file.rough_air.as_ref().map_or(0, |air| air.seed);
        let heading = accept(HEADING, "start.heading_deg", file.start.heading_deg)?;
        Ok(Self {
            source,
            situation,
            air: SeededAir { seed },
            heading: MagneticHeading::from_radians(heading),
            course: course(file)?,
        })
    }

    /// What sets the field; of one given by its vertical part, the dip of that.
    pub fn source(&self) -> FieldSource {
        self.source
    }

    /// The magnetic heading at the start.
    pub fn heading(&self) -> MagneticHeading {
        self.heading
    }

    /// Whether bank and airspeed are prescribed by legs, so that no pilot flies.
    pub fn is_prescribed(&self) -> bool {
        matches!(self.course, Course::Legs(_))
    }

    /// What the flight takes place in.
    pub fn situation(&self) -> &Situation {
        &self.situation
    }

    /// The same flight in another situation, whose field is set by `source`.
    #[must_use]
    pub fn in_situation(self, source: FieldSource, situation: Situation) -> Self {
        Self {
            source,
            situation,
            ..self
        }
    }

    /// The air's white numbers.
    pub fn air(&self) -> SeededAir {
        self.air
    }

    /// Seconds from the start to the end.
    pub fn duration(&self) -> f64 {
        match &self.course {
            Course::Legs(legs) => legs.duration(),
            Course::Controls { duration, .. } => *duration,
        }
    }

    /// The controls at the start: those of level flight.
    pub fn controls(&self) -> Controls {
        match &self.course {
            Course::Legs(legs) => Controls::level(legs.airspeed_at_start()),
            Course::Controls { start, .. } => *start,
        }
    }

    /// The controls that fly the step after this one: prescribed legs do not ask for any.
    pub fn controls_at(&self, step: u64) -> Controls {
        let Course::Controls { start, inputs, .. } = &self.course else {
            return self.controls();
        };
        let after = inputs.partition_point(|(from, _)| *from <= step);
        match after.checked_sub(1) {
            Some(last) => inputs[last].1,
            None => *start,
        }
    }

    /// The flight at its start, the float settled.
    ///
    /// # Errors
    /// A float that is too fast together with the flight
    /// ([`FASTEST`](compass::simulation::FASTEST)).
    pub fn simulation(&self) -> Result<Simulation, ScenarioError> {
        let aircraft = match &self.course {
            Course::Legs(legs) => Aircraft::prescribed(self.heading, legs.clone()),
            Course::Controls { start, .. } => Aircraft::free(self.heading, start),
        };
        Simulation::new(self.situation, aircraft, self.controls())
            .map_err(|error| ScenarioError::at("float", error))
    }

    /// The whole flight, flown and recorded to its last whole step.
    ///
    /// # Errors
    /// As of [`simulation`](Self::simulation).
    pub fn record(&self) -> Result<Record<SeededAir>, ScenarioError> {
        let mut flight = self.simulation()?;
        let mut record = Record::new(flight.clone(), self.air);
        while (record.steps() + 1) as f64 * STEP <= self.duration() + 1e-9 {
            record.fly(&mut flight, &self.controls_at(record.steps()));
        }
        Ok(record)
    }
}

fn accept(range: Range, path: &str, value: f64) -> Result<f64, ScenarioError> {
    range
        .accept(value)
        .map_err(|error| ScenarioError::at(path, error))
}

fn field(file: &file::Field) -> Result<(FieldSource, MagneticField), ScenarioError> {
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
    let of = |source: FieldSource| match source.field() {
        Ok(field) => Ok((source, field)),
        Err(error) => Err(ScenarioError::at("field", error)),
    };

    if let Some(latitude) = file.dipole_latitude_deg {
        let latitude = accept(LATITUDE, "field.dipole_latitude_deg", latitude)?;
        return of(FieldSource::Latitude { latitude });
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
                of(FieldSource::ByHand { horizontal, dip })
            }
            (vertical, None) => {
                let vertical = number("vertical_nt", VERTICAL, vertical)?;
                let field = MagneticField::new(horizontal, vertical, 0.0)
                    .map_err(|error| ScenarioError::at("field", error))?;
                let dip = field.dip();
                Ok((FieldSource::ByHand { horizontal, dip }, field))
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
    of(source)
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

fn course(file: &ScenarioFile) -> Result<Course, ScenarioError> {
    match (&file.legs, &file.controls, file.duration_s) {
        (Some(of), None, None) => legs(file, of).map(Course::Legs),
        (None, Some(of), Some(duration)) => controls(file, of, duration),
        _ => Err(ScenarioError::at(
            "",
            "give exactly one of: legs; controls with duration_s",
        )),
    }
}

fn legs(file: &ScenarioFile, legs: &[file::Leg]) -> Result<Legs, ScenarioError> {
    let airspeed = accept(AIRSPEED, "start.speed_kt", file.start.speed_kt)?;
    let legs: Vec<Leg> = legs
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

fn controls(
    file: &ScenarioFile,
    controls: &[file::Control],
    duration: f64,
) -> Result<Course, ScenarioError> {
    let airspeed = accept(AIRSPEED_COMMAND, "start.speed_kt", file.start.speed_kt)?;
    let duration = accept(FLIGHT_DURATION, "duration_s", duration)?;
    if controls.len() > MOST_CONTROLS {
        let count = controls.len();
        return Err(ScenarioError::at(
            "controls",
            format!("the controls can change at most {MOST_CONTROLS} times, not {count}"),
        ));
    }
    let start = Controls::level(airspeed);
    let mut now = start;
    let mut inputs: Vec<(u64, Controls)> = Vec::with_capacity(controls.len());
    for (index, entry) in controls.iter().enumerate() {
        let path = |name: &str| format!("controls[{index}].{name}");
        let within = |name: &str, range: Range, value: Option<f64>| {
            value
                .map(|value| accept(range, &path(name), value))
                .transpose()
        };
        let time = accept(CONTROL_TIME, &path("time_s"), entry.time_s)?;
        let step = (time * STEPS_PER_SECOND as f64).round() as u64;
        if let Some((last, _)) = inputs.last()
            && *last >= step
        {
            let last = *last as f64 * STEP;
            return Err(ScenarioError::at(
                &path("time_s"),
                format!(
                    "each time must be at least {STEP} s after the one before, \
                     which is {last} s, not {time} s"
                ),
            ));
        }
        if let Some(bank) = within("bank_deg", BANK_COMMAND, entry.bank_deg)? {
            now = now.with_bank(bank);
        }
        if let Some(speed) = within("airspeed_kt", AIRSPEED_COMMAND, entry.airspeed_kt)? {
            now = now.with_airspeed(speed);
        }
        if let Some(pitch) = within("pitch_deg", PITCH_COMMAND, entry.pitch_deg)? {
            now = now.with_pitch(pitch);
        }
        if let Some(rudder) = within("rudder", RUDDER, entry.rudder)? {
            now = now.with_rudder(rudder);
        }
        inputs.push((step, now));
    }
    Ok(Course::Controls {
        start,
        inputs,
        duration,
    })
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
    fn controls_are_held_from_their_step_on_and_what_is_left_out_stays() {
        let controls = r#""controls": [{"time_s": 0.5, "bank_deg": 15},
            {"time_s": 1.0049, "rudder": -0.5}], "duration_s": 3"#;
        let json = PLAIN.replace("\"legs\": [{\"seconds\": 2}]", controls);
        let scenario = Scenario::from_json(&json).unwrap();
        let level = scenario.controls();
        assert_eq!(scenario.controls_at(99), level);
        let banked = level.with_bank(15_f64.to_radians());
        assert_eq!(scenario.controls_at(100), banked);
        assert_eq!(scenario.controls_at(200), banked);
        assert_eq!(scenario.controls_at(201), banked.with_rudder(-0.5));
        assert_eq!(scenario.duration(), 3.0);
        let record = scenario.record().unwrap();
        assert_eq!(record.steps(), 600);
        assert!(record.at(600).motion().bank > 0.2);

        let refused = |from: &str, to: &str| {
            assert!(json.contains(from));
            Scenario::from_json(&json.replace(from, to))
                .unwrap_err()
                .to_string()
        };
        for (from, to, sentence) in [
            (
                "15}",
                "75}",
                "controls[0].bank_deg: bank must be from -60° to 60°, not 75°",
            ),
            (
                "1.0049",
                "0.502",
                "controls[1].time_s: each time must be at least 0.005 s after the one before, \
                 which is 0.5 s, not 0.502 s",
            ),
            (
                "0.5,",
                "-1,",
                "controls[0].time_s: time of a control must be from 0 s to 86400 s, not -1 s",
            ),
            (
                "100}",
                "30}",
                "start.speed_kt: airspeed must be from 60 kt to 250 kt, not 30 kt",
            ),
            (
                ", \"duration_s\": 3",
                "",
                "give exactly one of: legs; controls with duration_s",
            ),
            (
                "\"duration_s\": 3",
                "\"duration_s\": 3, \"legs\": []",
                "give exactly one of: legs; controls with duration_s",
            ),
        ] {
            assert_eq!(refused(from, to), sentence);
        }
        let said = refused("\"rudder\"", "\"ruder\"");
        assert!(
            said.starts_with(
                "controls[1].ruder: \"ruder\" is no known field; the nearest is \"rudder\""
            ),
            "{said}"
        );
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

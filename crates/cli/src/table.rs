//! `dipwise table`: when to begin to roll out, for targets all round.

use crate::failure::Failure;
use crate::options::{accept, date};
use crate::output;
use clap::{Args, ValueEnum};
use compass::deviation::AircraftIron;
use compass::float_settings::FloatSettings;
use compass::free_flight::AIRSPEED_COMMAND;
use compass::gust::RoughAir;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::range::Range;
use compass::rule_of_thumb::Turn;
use compass::simulation::Situation;
use compass::unit::Unit;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{FieldSource, Place};
use flights::heading_to_six_decimals;
use lessons::roll_out::{BANK, Planner};
use serde::Serialize;
use std::io::Write;

/// Interval between two targets that can be asked for; the least is chosen.
const EVERY: Range = Range::new("interval between targets", Unit::Degree, 1.0, 360.0);

/// Print when to begin to roll out of a turn flown by the compass, for targets all round.
///
/// Each figure is the compass reading at which to begin: by the rule of thumb (latitude, in
/// proportion), by 15° and half the latitude, by the closed form, and by the simulated float after
/// a quarter turn. Each begins half the bank before the target.
#[derive(Args)]
pub(crate) struct Table {
    /// Latitude in degrees, north positive.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    lat: f64,
    /// Longitude in degrees, east positive; without it the latitude alone sets the field.
    #[arg(
        long,
        value_name = "DEGREES",
        allow_negative_numbers = true,
        requires = "date"
    )]
    lon: Option<f64>,
    /// Year-month-day such as 2026-05-01, or a decimal year such as 2027.5.
    #[arg(long, value_name = "DATE", requires = "lon")]
    date: Option<String>,
    /// Altitude above the WGS 84 ellipsoid in feet.
    #[arg(
        long,
        value_name = "FEET",
        default_value_t = 0.0,
        allow_negative_numbers = true
    )]
    altitude_ft: f64,
    /// Bank of the turn in degrees.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 15.0,
        allow_negative_numbers = true
    )]
    bank: f64,
    /// Airspeed in knots.
    #[arg(
        long,
        value_name = "KNOTS",
        default_value_t = 100.0,
        allow_negative_numbers = true
    )]
    airspeed_kt: f64,
    /// Targets all round, so many degrees apart.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 30.0,
        allow_negative_numbers = true
    )]
    every: f64,
    /// The float of the simulation.
    #[arg(long, value_enum, default_value = "standard")]
    float: Float,
    /// How the table is written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

/// A float by its name.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Float {
    /// The standard float.
    Standard,
    /// Quick and well damped.
    Brisk,
    /// Slow and heavily damped.
    Sluggish,
    /// Swings several times before it rests.
    LightlyDamped,
}

impl Float {
    fn settings(self) -> FloatSettings {
        match self {
            Self::Standard => FloatSettings::default(),
            Self::Brisk => FloatSettings::brisk(),
            Self::Sluggish => FloatSettings::sluggish(),
            Self::LightlyDamped => FloatSettings::lightly_damped(),
        }
    }
}

/// How a table is written.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Format {
    /// For reading.
    Text,
    /// For spreadsheets.
    Csv,
    /// For programs.
    Json,
}

#[derive(Serialize)]
struct Row {
    target_deg: f64,
    turn: &'static str,
    rule_deg: f64,
    half_rule_deg: f64,
    steady_deg: f64,
    float_deg: f64,
}

impl Table {
    /// Computes and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let rows = self.rows()?;
        match self.format {
            Format::Json => output::json(&rows),
            Format::Csv => csv(&rows),
            Format::Text => text(&rows),
        }
    }

    fn rows(&self) -> Result<Vec<Row>, Failure> {
        let latitude = accept("--lat", LATITUDE, self.lat)?;
        let altitude = accept("--altitude-ft", ALTITUDE, self.altitude_ft)?;
        let bank = accept("--bank", BANK, self.bank)?;
        let airspeed = accept("--airspeed-kt", AIRSPEED_COMMAND, self.airspeed_kt)?;
        accept("--every", EVERY, self.every)?;
        let source = match (self.lon, &self.date) {
            (Some(longitude), Some(day)) => FieldSource::Place {
                place: Place::new(latitude, accept("--lon", LONGITUDE, longitude)?, altitude)
                    .map_err(|error| Failure::Input(error.to_string()))?,
                date: date(day)?,
            },
            _ => FieldSource::Latitude { latitude },
        };
        let situation = Situation {
            field: source
                .field()
                .map_err(|error| Failure::at("--date", error))?,
            iron: AircraftIron::NONE,
            float: self.float.settings(),
            air: RoughAir::Still,
        };
        let refused = |error| Failure::at("--bank", error);
        let planner = Planner::new(situation, latitude, bank, airspeed).map_err(refused)?;

        let targets = (0..)
            .map(|i| f64::from(i) * self.every)
            .take_while(|target| *target < 360.0 - 1e-9);
        let mut rows = Vec::new();
        for target in targets.map(MagneticHeading::from_degrees) {
            for (turn, name) in [(Turn::Left, "left"), (Turn::Right, "right")] {
                let plan = planner.plan(target, turn).map_err(refused)?;
                let degrees = |it: CompassHeading| heading_to_six_decimals(it.degrees());
                rows.push(Row {
                    target_deg: heading_to_six_decimals(target.degrees()),
                    turn: name,
                    rule_deg: degrees(plan.rule),
                    half_rule_deg: degrees(plan.half_rule),
                    steady_deg: degrees(plan.steady),
                    float_deg: degrees(plan.float),
                });
            }
        }
        Ok(rows)
    }
}

fn csv(rows: &[Row]) -> Result<(), Failure> {
    let mut out = output::standard();
    writeln!(
        out,
        "target_deg,turn,rule_deg,half_rule_deg,steady_deg,float_deg"
    )?;
    for row in rows {
        writeln!(
            out,
            "{:.6},{},{:.6},{:.6},{:.6},{:.6}",
            row.target_deg,
            row.turn,
            row.rule_deg,
            row.half_rule_deg,
            row.steady_deg,
            row.float_deg
        )?;
    }
    Ok(out.flush()?)
}

fn text(rows: &[Row]) -> Result<(), Failure> {
    let mut out = output::standard();
    writeln!(
        out,
        "Begin to roll out when the compass reads:\n\n\
         target  turn   latitude  15° + half  closed form  float"
    )?;
    for row in rows {
        let figure = |degrees: f64| CompassHeading::from_degrees(degrees).whole_degrees();
        writeln!(
            out,
            "{:>5}°  {:<5}  {:>7}°  {:>9}°  {:>10}°  {:>4}°",
            format!("{:03}", figure(row.target_deg)),
            row.turn,
            format!("{:03}", figure(row.rule_deg)),
            format!("{:03}", figure(row.half_rule_deg)),
            format!("{:03}", figure(row.steady_deg)),
            format!("{:03}", figure(row.float_deg)),
        )?;
    }
    writeln!(out, "\nFor training, not for navigation.")?;
    Ok(out.flush()?)
}

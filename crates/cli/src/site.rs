//! Where, and with which compass: the options that tables and sheets share.

use crate::failure::Failure;
use crate::options::{accept, date};
use clap::{Args, ValueEnum};
use compass::deviation::AircraftIron;
use compass::float_settings::FloatSettings;
use compass::free_flight::AIRSPEED_COMMAND;
use compass::gust::RoughAir;
use compass::simulation::Situation;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{FieldSource, Place};
use lessons::roll_out::{BANK, Lead, ROLL_RATE};

/// A place and a date, or a latitude alone.
#[derive(Args)]
pub(crate) struct Where {
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
}

/// How a turn is flown and stopped.
#[derive(Args)]
pub(crate) struct Turned {
    /// Bank of the turn in degrees.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 15.0,
        allow_negative_numbers = true
    )]
    bank: f64,
    /// Lead by what the heading gains while the bank comes off at so many degrees a second,
    /// instead of by half the bank.
    #[arg(long, value_name = "DEGREES/S", allow_negative_numbers = true)]
    roll_rate: Option<f64>,
}

impl Turned {
    /// The bank, rad.
    pub(crate) fn bank(&self) -> Result<f64, Failure> {
        accept("--bank", BANK, self.bank)
    }

    /// How the lead is reckoned.
    pub(crate) fn lead(&self) -> Result<Lead, Failure> {
        Ok(match self.roll_rate {
            Some(rate) => Lead::RollRate(accept("--roll-rate", ROLL_RATE, rate)?),
            None => Lead::HalfBank,
        })
    }
}

/// An airspeed and a float.
#[derive(Args)]
pub(crate) struct With {
    /// Airspeed in knots.
    #[arg(
        long,
        value_name = "KNOTS",
        default_value_t = 100.0,
        allow_negative_numbers = true
    )]
    airspeed_kt: f64,
    /// The float of the simulation.
    #[arg(long, value_enum, default_value = "standard")]
    float: Float,
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
    /// The standard float on a pivot that sticks.
    StickyPivot,
}

impl Float {
    fn settings(self) -> FloatSettings {
        match self {
            Self::Standard => FloatSettings::default(),
            Self::Brisk => FloatSettings::brisk(),
            Self::Sluggish => FloatSettings::sluggish(),
            Self::LightlyDamped => FloatSettings::lightly_damped(),
            Self::StickyPivot => FloatSettings::default().with_sticky_pivot(),
        }
    }
}

impl Where {
    /// The latitude, rad.
    pub(crate) fn latitude(&self) -> Result<f64, Failure> {
        accept("--lat", LATITUDE, self.lat)
    }

    /// What sets the field.
    pub(crate) fn source(&self) -> Result<FieldSource, Failure> {
        let latitude = self.latitude()?;
        let altitude = accept("--altitude-ft", ALTITUDE, self.altitude_ft)?;
        Ok(match (self.lon, &self.date) {
            (Some(longitude), Some(day)) => FieldSource::Place {
                place: Place::new(latitude, accept("--lon", LONGITUDE, longitude)?, altitude)
                    .map_err(|error| Failure::Input(error.to_string()))?,
                date: date(day)?,
            },
            _ => FieldSource::Latitude { latitude },
        })
    }

    /// What it is called on paper.
    pub(crate) fn name(&self) -> String {
        let latitude = latitude_words(self.lat);
        match (self.lon, &self.date) {
            (Some(longitude), Some(day)) => {
                let side = if longitude < 0.0 { 'W' } else { 'E' };
                let height = match self.altitude_ft {
                    0.0 => String::new(),
                    feet => format!(", {feet} ft"),
                };
                format!("{latitude} {}° {side}{height}, {day}", longitude.abs())
            }
            _ => format!("Latitude {latitude}"),
        }
    }
}

/// A latitude in degrees as it stands on paper.
pub(crate) fn latitude_words(degrees: f64) -> String {
    let side = if degrees < 0.0 { 'S' } else { 'N' };
    format!("{}° {side}", degrees.abs())
}

impl With {
    /// The airspeed, m/s.
    pub(crate) fn airspeed(&self) -> Result<f64, Failure> {
        accept("--airspeed-kt", AIRSPEED_COMMAND, self.airspeed_kt)
    }

    /// The float in a field, without iron and in still air.
    pub(crate) fn situation(&self, source: FieldSource) -> Result<Situation, Failure> {
        Ok(Situation {
            field: source
                .field()
                .map_err(|error| Failure::at("--date", error))?,
            iron: AircraftIron::NONE,
            float: self.float.settings(),
            air: RoughAir::Still,
        })
    }
}

//! A flight's rows: as they are asked for, and as they are written.

use crate::failure::Failure;
use crate::output;
use clap::{Args, ValueEnum};
use flights::{INTERVAL, Row, Scenario, ScenarioError};
use std::io::Write;

/// How rows are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Format {
    /// A header line, then a line a row.
    Csv,
    /// A list of objects.
    Json,
}

/// The options of every command that writes a flight.
#[derive(Args)]
pub(crate) struct Rows {
    /// Seconds between two rows.
    #[arg(
        long,
        value_name = "SECONDS",
        default_value_t = 0.5,
        allow_negative_numbers = true
    )]
    every: f64,
    /// How the rows are written.
    #[arg(long, value_enum, default_value = "csv")]
    format: Format,
}

impl Rows {
    /// Refuses an interval beyond its range, before anything is read.
    pub(crate) fn check(&self) -> Result<(), Failure> {
        INTERVAL
            .accept(self.every)
            .map(|_| ())
            .map_err(|error| Failure::at("--every", error))
    }

    /// Flies and writes a scenario, which was read from `place`.
    pub(crate) fn write(
        &self,
        place: &str,
        scenario: Result<Scenario, ScenarioError>,
    ) -> Result<(), Failure> {
        let rows = scenario
            .and_then(|scenario| scenario.rows(self.every))
            .map_err(|error| Failure::at(place, error))?;
        match self.format {
            Format::Csv => csv(rows),
            Format::Json => json(rows),
        }
    }
}

fn csv(rows: impl Iterator<Item = Row>) -> Result<(), Failure> {
    let mut out = output::standard();
    writeln!(
        out,
        "time_s,heading_deg,reading_deg,tilt_deg,bank_deg,\
         error_deg,airspeed_kt,rate_of_turn_deg_s,at_stop"
    )?;
    for row in rows {
        writeln!(
            out,
            "{:.6},{:.6},{:.6},{:.6},{:.6},{:.6},{:.6},{:.6},{}",
            row.time_s,
            row.heading_deg,
            row.reading_deg,
            row.tilt_deg,
            row.bank_deg,
            row.error_deg,
            row.airspeed_kt,
            row.rate_of_turn_deg_s,
            row.at_stop,
        )?;
    }
    Ok(out.flush()?)
}

fn json(rows: impl Iterator<Item = Row>) -> Result<(), Failure> {
    let mut out = output::standard();
    let mut opening = "[\n";
    for row in rows {
        write!(out, "{opening}  ")?;
        serde_json::to_writer(&mut out, &row)?;
        opening = ",\n";
    }
    writeln!(out, "\n]")?;
    Ok(out.flush()?)
}

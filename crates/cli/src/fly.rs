//! `dipwise fly`: a scenario file, flown.

use crate::failure::Failure;
use crate::output;
use clap::{Args, ValueEnum};
use flights::{INTERVAL, Row, Scenario};
use std::fs::File;
use std::io::{self, Read, Write};

/// A file longer than this is refused; chosen, ten times what the most legs need.
const LONGEST_FILE: u64 = 16 * 1024 * 1024;

/// How rows are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Format {
    /// A header line, then a line a row.
    Csv,
    /// A list of objects.
    Json,
}

/// Fly a scenario file and print the flight, row by row.
#[derive(Args)]
pub(crate) struct Fly {
    /// The scenario file; - reads standard input.
    #[arg(value_name = "SCENARIO.json")]
    scenario: String,
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

impl Fly {
    /// Flies and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let name = match self.scenario.as_str() {
            "-" => "standard input",
            path => path,
        };
        INTERVAL
            .accept(self.every)
            .map_err(|error| Failure::at("--every", error))?;
        let text = self.text().map_err(|error| Failure::at(name, error))?;
        let rows = Scenario::from_json(&text)
            .and_then(|scenario| scenario.rows(self.every))
            .map_err(|error| Failure::at(name, error))?;
        match self.format {
            Format::Csv => csv(rows),
            Format::Json => json(rows),
        }
    }

    fn text(&self) -> Result<String, String> {
        let reader: Box<dyn Read> = match self.scenario.as_str() {
            "-" => Box::new(io::stdin()),
            path => Box::new(File::open(path).map_err(|error| cannot_read(&error))?),
        };
        let mut text = String::new();
        reader
            .take(LONGEST_FILE + 1)
            .read_to_string(&mut text)
            .map_err(|error| cannot_read(&error))?;
        if text.len() as u64 > LONGEST_FILE {
            return Err(format!("a scenario can have at most {LONGEST_FILE} bytes"));
        }
        Ok(text)
    }
}

fn cannot_read(error: &io::Error) -> String {
    format!("cannot be read: {error}")
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

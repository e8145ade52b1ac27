//! `dipwise fly`: a scenario file, flown.

use crate::failure::Failure;
use crate::{input, output};
use clap::{Args, ValueEnum};
use flights::{INTERVAL, Row, Scenario};
use std::io::Write;

/// How rows are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Format {
    /// A header line, then a line a row.
    Csv,
    /// A list of objects.
    Json,
}
use crate::input;
use crate::rows::Rows;
use clap::Args;
use flights::Scenario;

/// Fly a scenario file and print the flight, row by row.
#[derive(Args)]
pub(crate) struct Fly {
    /// The scenario file; - reads standard input.
    #[arg(value_name = "SCENARIO.json")]
    scenario: String,
    #[command(flatten)]
    rows: Rows,
}

impl Fly {
    /// Flies and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let name = input::name(&self.scenario);
        INTERVAL
            .accept(self.every)
            .map_err(|error| Failure::at("--every", error))?;
        let text = input::text(&self.scenario)?;
        let rows = Scenario::from_json(&text)
            .and_then(|scenario| scenario.rows(self.every))
            .map_err(|error| Failure::at(name, error))?;
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
        self.rows.check()?;
        let place = input::place(&self.scenario);
        self.rows.write(place, Scenario::from_json(&text))

//! `dipwise steady`: the closed forms.

use crate::failure::Failure;
use crate::options::accept;
use crate::output::{self, Format};
use clap::Args;
use compass::field::DIP;
use compass::heading::MagneticHeading;
use compass::legs::BANK;
use compass::range::Range;
use compass::steady::{ACCELERATION, in_speed_change, in_turn};
use compass::unit::Unit;
use flights::scenario::HEADING;
use flights::{heading_to_six_decimals, six_decimals};
use serde::Serialize;
use std::io::Write;

/// Interval between two headings that can be asked for; the least is chosen.
const EVERY: Range = Range::new("interval between headings", Unit::Degree, 0.01, 360.0);

/// Print where a card comes to rest in a steady turn or speed change, by the closed forms.
#[derive(Args)]
pub(crate) struct Steady {
    /// Dip in degrees, down positive.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    dip: f64,
    /// Bank of a coordinated level turn in degrees, right positive.
    #[arg(
        long,
        value_name = "DEGREES",
        allow_negative_numbers = true,
        required_unless_present = "accel_g",
        conflicts_with = "accel_g"
    )]
    bank: Option<f64>,
    /// Straight acceleration in g, gaining speed positive, in place of a bank.
    #[arg(long, value_name = "G", allow_negative_numbers = true)]
    accel_g: Option<f64>,
    /// One magnetic heading in degrees.
    #[arg(
        long,
        value_name = "DEGREES",
        allow_negative_numbers = true,
        conflicts_with = "every"
    )]
    heading: Option<f64>,
    /// Headings all round, so many degrees apart.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 10.0,
        allow_negative_numbers = true
    )]
    every: f64,
    /// How the readings are written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

#[derive(Serialize)]
struct Row {
    heading_deg: f64,
    reading_deg: f64,
    error_deg: f64,
}

impl Steady {
    /// Computes and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let rows = self.rows()?;
        match self.format {
            Format::Json => output::json(&rows),
            Format::Text => text(&rows),
        }
    }

    fn rows(&self) -> Result<Vec<Row>, Failure> {
        let dip = accept("--dip", DIP, self.dip)?;
        let bank = accept("--bank", BANK, self.bank.unwrap_or(0.0))?;
        let acceleration = self.accel_g.unwrap_or(0.0);
        accept("--accel-g", ACCELERATION, acceleration)?;
        accept("--every", EVERY, self.every)?;
        let headings: Vec<f64> = match self.heading {
            Some(heading) => vec![accept("--heading", HEADING, heading)?.to_degrees()],
            None => (0..)
                .map(|i| f64::from(i) * self.every)
                .take_while(|heading| *heading < 360.0 - 1e-9)
                .collect(),
        };
        Ok(headings
            .into_iter()
            .map(|degrees| {
                let heading = MagneticHeading::from_degrees(degrees);
                let reading = match self.bank {
                    Some(_) => in_turn(heading, bank, dip),
                    None => in_speed_change(heading, acceleration, dip),
                };
                Row {
                    heading_deg: heading_to_six_decimals(heading.degrees()),
                    reading_deg: heading_to_six_decimals(reading.degrees()),
                    error_deg: six_decimals(reading.error_from(heading).to_degrees()),
                }
            })
            .collect())
    }
}

fn text(rows: &[Row]) -> Result<(), Failure> {
    let mut out = output::standard();
    writeln!(out, "heading  reading    error")?;
    for row in rows {
        writeln!(
            out,
            "{:>6.1}°  {:>6.1}°  {:>+6.2}°",
            row.heading_deg, row.reading_deg, row.error_deg
        )?;
    }
    Ok(out.flush()?)
}

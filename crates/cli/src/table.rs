//! `dipwise table`: when to begin to roll out, for targets all round.

use crate::failure::Failure;
use crate::options::accept;
use crate::output;
use crate::site::{Turned, Where, With};
use clap::{Args, ValueEnum};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::range::Range;
use compass::rule_of_thumb::Turn;
use compass::unit::Unit;
use flights::heading_to_six_decimals;
use lessons::roll_out::Planner;
use serde::Serialize;
use std::io::Write;

/// Interval between two targets that can be asked for; the least is chosen.
const EVERY: Range = Range::new("interval between targets", Unit::Degree, 1.0, 360.0);

/// Print when to begin to roll out of a turn flown by the compass, for targets all round.
///
/// Each figure is the compass reading at which to begin: by the rule of thumb (latitude, in
/// proportion), by 15° and half the latitude, by the closed form, and by the simulated float after
/// a quarter turn. Each begins half the bank before the target, or by the rate of roll.
#[derive(Args)]
pub(crate) struct Table {
    #[command(flatten)]
    place: Where,
    #[command(flatten)]
    turned: Turned,
    #[command(flatten)]
    with: With,
    /// Targets all round, so many degrees apart.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 30.0,
        allow_negative_numbers = true
    )]
    every: f64,
    /// How the table is written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
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
        let source = self.place.source()?;
        let latitude = self.place.latitude()?;
        let (bank, lead) = (self.turned.bank()?, self.turned.lead()?);
        let airspeed = self.with.airspeed()?;
        accept("--every", EVERY, self.every)?;
        let situation = self.with.situation(source)?;
        let refused = |error| Failure::at("--bank", error);
        let planner = Planner::new(situation, latitude, bank, airspeed)
            .and_then(|planner| planner.with_lead(lead))
            .map_err(refused)?;

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
        // The figures have six decimals: a half is a half here, and goes up.
        let figure = |degrees: f64| match degrees.round() as u16 {
            0 => 360,
            whole => whole,
        };
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

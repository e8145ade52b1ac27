//! `dipwise drill`: tasks from a seed.

use crate::failure::Failure;
use crate::options::{accept, whole};
use crate::output::{self, Format};
use clap::{Args, ValueEnum};
use lessons::drill::{
    COUNT, DrillError, Kind, LATITUDE, LEVEL, TOLERANCE, Task, TaskId, generate_some,
};
use std::io::Write;

/// Print tasks, generated from a seed, with their answers and explanations.
///
/// The same kind, seed and options give the same tasks. Tasks that are flown are marked by
/// `dipwise mark`.
#[derive(Args)]
pub(crate) struct Drill {
    /// Print the kinds of task, name first, one a line.
    #[arg(long, conflicts_with_all = ["kind", "seed", "count", "lat", "level", "tolerance", "format"])]
    kinds: bool,
    /// The kind of task.
    #[arg(
        long,
        value_enum,
        value_name = "KIND",
        required_unless_present = "kinds"
    )]
    kind: Option<KindName>,
    /// The seed.
    #[arg(
        long,
        value_name = "NUMBER",
        default_value_t = 0,
        value_parser = whole,
        allow_negative_numbers = true
    )]
    seed: u64,
    /// How many tasks, no two alike.
    #[arg(
        long,
        value_name = "NUMBER",
        default_value_t = 1,
        value_parser = whole,
        allow_negative_numbers = true
    )]
    count: u64,
    /// Latitude in degrees, north positive; without it the seed draws one, north or south.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    lat: Option<f64>,
    /// How hard: 1 cardinal headings and gentle banks, 2 headings between, 3 steep banks and errors
    /// that mix.
    #[arg(
        long,
        value_name = "LEVEL",
        default_value_t = 2,
        value_parser = whole,
        allow_negative_numbers = true
    )]
    level: u64,
    /// How far off a flown task may end, in degrees.
    #[arg(
        long,
        value_name = "DEGREES",
        default_value_t = 10.0,
        allow_negative_numbers = true
    )]
    tolerance: f64,
    /// The turn of the timed turn of that seed, by the compass in place of the clock; of roll-out
    /// tasks.
    #[arg(long, conflicts_with = "kinds")]
    of_timed_turn: bool,
    /// How the tasks are written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

/// A kind by its name.
#[derive(Clone, Copy, Debug)]
struct KindName(Kind);

impl ValueEnum for KindName {
    fn value_variants<'a>() -> &'a [Self] {
        const ALL: [KindName; 8] = {
            let mut all = [KindName(Kind::Predict); 8];
            let mut at = 0;
            while at < all.len() {
                all[at] = KindName(Kind::ALL[at]);
                at += 1;
            }
            all
        };
        &ALL
    }

    fn to_possible_value(&self) -> Option<clap::builder::PossibleValue> {
        Some(clap::builder::PossibleValue::new(self.0.name()).help(self.0.description()))
    }
}

impl Drill {
    /// Generates and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        match self.kind {
            Some(KindName(kind)) if !self.kinds => {
                let tasks = self.tasks(kind)?;
                match self.format {
                    Format::Json => output::json(&tasks),
                    Format::Text => text(&tasks),
                }
            }
            _ => kinds(),
        }
    }

    fn tasks(&self, kind: Kind) -> Result<Vec<Task>, Failure> {
        accept("--count", COUNT, self.count as f64)?;
        accept("--level", LEVEL, self.level as f64)?;
        accept("--tolerance", TOLERANCE, self.tolerance)?;
        if let Some(latitude) = self.lat {
            accept("--lat", LATITUDE, latitude)?;
        }
        let first = TaskId {
            latitude_deg: self.lat,
            // Just checked to be 1 to 3.
            level: self.level as u8,
            tolerance_deg: self.tolerance,
            of_timed_turn: self.of_timed_turn,
            ..TaskId::new(kind, self.seed)
        };
        // Just checked to be 1 to 500.
        generate_some(&first, self.count as u32).map_err(|error| match error {
            DrillError::TooNearTheEquator {
                kind,
                latitude,
                least,
            } => Failure::Input(format!(
                "--lat: {} tasks need a latitude at least {least}° from the equator, not \
                 {latitude}°",
                kind.name()
            )),
            DrillError::NoTurnByTheCompass(kind) => Failure::Input(format!(
                "--of-timed-turn: only a roll-out task can be that of a timed turn, not a {} task",
                kind.name()
            )),
            DrillError::TooFew { .. } => Failure::at("--count", error),
            other => Failure::Input(other.to_string()),
        })
    }
}

fn kinds() -> Result<(), Failure> {
    let mut out = output::standard();
    for kind in Kind::ALL {
        writeln!(out, "{:<14}  {}", kind.name(), kind.description())?;
    }
    Ok(out.flush()?)
}

fn text(tasks: &[Task]) -> Result<(), Failure> {
    let mut out = output::standard();
    for (task, number) in tasks.iter().zip(1_u32..) {
        writeln!(out, "{number}. {}\n", task.question)?;
        for (choice, letter) in task.choices.iter().zip('a'..) {
            let mark = if choice.right { "  ← right" } else { "" };
            writeln!(out, "   {letter}) {}{mark}", choice.text)?;
        }
        if !task.choices.is_empty() {
            writeln!(out)?;
        }
        let said = &task.explanation;
        for sentence in [&said.happened, &said.why, &said.rule] {
            writeln!(out, "   {sentence}")?;
        }
        writeln!(out)?;
    }
    writeln!(out, "For training, not for navigation.")?;
    Ok(out.flush()?)
}

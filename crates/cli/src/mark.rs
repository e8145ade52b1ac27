//! `dipwise mark`: the mark of a recorded answer.

use crate::failure::Failure;
use crate::input;
use crate::output::{self, Format};
use clap::Args;
use lessons::drill::mark::{Mark, Outcome, mark};
use lessons::drill::record::Record;
use std::io::Write;

/// Mark a recorded answer to a task, by nothing but the record.
///
/// The record names the task (kind, seed, number and options) and holds what was chosen or flown.
#[derive(Args)]
pub(crate) struct MarkFile {
    /// The record; - reads standard input.
    #[arg(value_name = "RECORD.json")]
    record: String,
    /// How the mark is written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

impl MarkFile {
    /// Marks and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let read = input::text(&self.record)?;
        let marked = Record::from_json(&read).and_then(|record| mark(&record));
        let name = input::name(&self.record);
        let marked = marked.map_err(|error| Failure::at(name, error))?;
        match self.format {
            Format::Json => output::json(&marked),
            Format::Text => text(&marked),
        }
    }
}

fn text(mark: &Mark) -> Result<(), Failure> {
    let mut out = output::standard();
    let outcome = match mark.outcome {
        Outcome::Passed => "passed",
        Outcome::Failed => "not passed",
        Outcome::NotMarked => "not marked",
    };
    write!(out, "{}: {outcome}", mark.task.kind.name())?;
    match (&mark.reason, mark.error_deg) {
        (Some(reason), _) => writeln!(out, ": {reason}")?,
        (None, Some(error)) => writeln!(
            out,
            ", {:.1}° off; ±{}° is allowed",
            error.abs(),
            mark.task.tolerance_deg
        )?,
        (None, None) => writeln!(out)?,
    }
    for figure in &mark.figures {
        let space = if figure.unit == "s" { " " } else { "" };
        writeln!(
            out,
            "  {}: {:.1}{space}{}",
            figure.name, figure.value, figure.unit
        )?;
    }
    let said = &mark.explanation;
    for sentence in [&said.happened, &said.why, &said.rule] {
        writeln!(out, "{sentence}")?;
    }
    Ok(out.flush()?)
}

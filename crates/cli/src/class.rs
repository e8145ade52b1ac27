//! `dipwise class`: results of students, marked again and laid together.

use crate::failure::Failure;
use crate::input;
use crate::output;
use clap::{Args, ValueEnum};
use lessons::drill::class_table::{ClassTable, Row};
use lessons::drill::results::Results;
use lessons::drill::xapi;
use std::io::Write;

/// Mark the results of students again and print the table of their class.
///
/// Every answer is marked by its record, whatever mark the file says.
#[derive(Args)]
pub(crate) struct Class {
    /// Results files, as students save them; - reads standard input.
    #[arg(value_name = "RESULTS.json", required = true)]
    results: Vec<String>,
    /// How the table is written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

/// How a class is written.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Format {
    /// For reading.
    Text,
    /// For spreadsheets.
    Csv,
    /// For programs.
    Json,
    /// Statements for a course platform, without names.
    Xapi,
}

impl Class {
    /// Marks and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let read = |argument: &String| -> Result<Results, Failure> {
            let text = input::text(argument)?;
            let results = Results::from_json(&text).and_then(Results::checked);
            let mut results = results.map_err(|error| Failure::at(input::name(argument), error))?;
            // Who typed nothing to be known by is known by the file.
            if results.student.trim().is_empty() {
                results.student = input::name(argument).to_owned();
            }
            Ok(results)
        };
        let results: Vec<Results> = self.results.iter().map(read).collect::<Result<_, _>>()?;
        let table = ClassTable::of(&results);
        match self.format {
            Format::Text => text(&table),
            Format::Csv => plain(&table.to_csv()),
            Format::Json => output::json(&table),
            Format::Xapi => plain(&format!("{}\n", xapi::to_json(&results))),
        }
    }
}

fn plain(text: &str) -> Result<(), Failure> {
    let mut out = output::standard();
    write!(out, "{text}")?;
    Ok(out.flush()?)
}

fn text(table: &ClassTable) -> Result<(), Failure> {
    let mut out = output::standard();
    let names = table.students.iter().map(|it| it.student.chars().count());
    let wide = names.max().unwrap_or(0).max("all".len());
    write!(out, "{:wide$}", "")?;
    for kind in &table.kinds {
        write!(out, "  {}", kind.name())?;
    }
    writeln!(out, "  all  asked")?;
    let all = Row {
        student: "all".to_owned(),
        ..table.all.clone()
    };
    for row in table.students.iter().chain([&all]) {
        write!(out, "{:wide$}", row.student)?;
        for (score, kind) in row.scores.iter().zip(&table.kinds) {
            let cell = format!("{}/{}", score.passed, score.answered);
            write!(out, "  {cell:>0$}", kind.name().len())?;
        }
        writeln!(
            out,
            "  {}/{}  {}",
            row.total.passed, row.total.answered, row.asked
        )?;
    }
    for it in &table.mistakes {
        let (kind, mistake) = (it.kind.name(), &it.mistake);
        match it.times {
            1 => writeln!(out, "{kind}: {mistake}, once")?,
            times => writeln!(out, "{kind}: {mistake}, {times} times by {}", it.students)?,
        }
    }
    Ok(out.flush()?)
}

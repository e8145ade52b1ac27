//! The `dipwise` command: everything that can be checked and scripted without a browser.
//!
//! Exit code 0: done. 1: a claim is not borne out, or the output cannot be written. 2: bad input,
//! said in one sentence on standard error, with nothing on standard output.

mod class;
mod draw;
mod drill;
mod failure;
mod field;
mod fly;
mod font;
mod input;
mod mark;
mod options;
mod output;
mod pdf;
mod picture;
mod rows;
mod sheet;
mod show;
mod site;
mod steady;
mod table;

use clap::{Parser, Subcommand};
use failure::Failure;
use std::process::ExitCode;

/// Shows how an aircraft's floating magnetic compass errs, computed.
///
/// For training, not for navigation: the aircraft's own manual, the local rules and a licensed
/// instructor come first.
#[derive(Parser)]
#[command(name = "dipwise", version)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Fly a scenario file and print the flight, row by row.
    Fly(fly::Fly),
    /// Draw a moment of a scenario file as a frame: SVG or PNG.
    Draw(draw::Draw),
    /// List the demonstrations, fly one, tell one or prove them all.
    Show(show::Show),
    /// Print the Earth's field at a place and a date, by WMM2025.
    Field(field::Field),
    /// Print where a card comes to rest in a steady turn or speed change, by the closed forms.
    Steady(steady::Steady),
    /// Print when to begin to roll out of a turn flown by the compass, for targets all round.
    Table(table::Table),
    /// Write a hand-out for print: SVG, PDF or PNG.
    Sheet(sheet::Sheet),
    /// Print tasks to practise on, generated from a seed.
    Drill(drill::Drill),
    /// Mark a recorded answer to a task.
    Mark(mark::MarkFile),
    /// Mark the results of students again and print the table of their class.
    Class(class::Class),
}

fn main() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) if !error.use_stderr() => {
            // Help and version: what was asked for. A closed pipe is no fault of the input.
            let _ = error.print();
            return ExitCode::SUCCESS;
        }
        Err(error) => return Failure::from(error).exit(),
    };
    let done = match arguments.command {
        Command::Fly(fly) => fly.run(),
        Command::Draw(draw) => draw.run(),
        Command::Show(show) => show.run(),
        Command::Field(field) => field.run(),
        Command::Steady(steady) => steady.run(),
        Command::Table(table) => table.run(),
        Command::Sheet(sheet) => sheet.run(),
        Command::Drill(drill) => drill.run(),
        Command::Mark(mark) => mark.run(),
        Command::Class(class) => class.run(),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.exit(),
    }
}

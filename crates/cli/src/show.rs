//! `dipwise show`: the demonstrations of the catalogue, or of a file.

mod script;

use crate::failure::Failure;
use crate::input;
use crate::options::accept;
use crate::output;
use crate::rows::Rows;
use clap::Args;
use earth::place::LATITUDE;
use lessons::demonstration::{Demonstration, Flown, catalogue};
use std::io::Write;
use std::path::Path;
use strsim::damerau_levenshtein;

/// What stands for the whole catalogue.
const ALL: &str = "all";

/// List the demonstrations, or fly one and print the flight, row by row.
///
/// Without a name: the catalogue, one a line, with the figure that says most.
#[derive(Args)]
pub(crate) struct Show {
    /// A name of the catalogue, a demonstration file, - for standard input; all, with --figures
    /// or --check.
    #[arg(value_name = "NAME|FILE")]
    which: Option<String>,
    /// At this latitude in degrees, north positive, instead of the demonstration's own field.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    latitude: Option<f64>,
    /// Print its texts and figures instead of the flight.
    #[arg(long, conflicts_with = "check")]
    figures: bool,
    /// Prove every claim on the simulation instead, where the claims were made.
    #[arg(long, conflicts_with = "latitude")]
    check: bool,
    #[command(flatten)]
    rows: Rows,
}

impl Show {
    /// Lists, proves, tells or flies.
    pub(crate) fn run(self) -> Result<(), Failure> {
        self.rows.check()?;
        if let Some(degrees) = self.latitude {
            accept("--latitude", LATITUDE, degrees)?;
        }
        let every = matches!(self.which.as_deref(), None | Some(ALL));
        let asked = match self.which.as_deref() {
            Some(which) if !every => vec![self.read(which)?],
            _ => self.catalogue()?,
        };
        if self.check {
            return check(&asked);
        }
        if self.figures {
            let scripts: Vec<String> = asked.iter().map(|(_, it)| script::of(it)).collect();
            return print(&scripts.join("\n"));
        }
        match asked.as_slice() {
            [(place, one)] if !every => self.rows.write(place, Ok(one.scenario().clone())),
            all => print(&list(all)),
        }
    }

    fn catalogue(&self) -> Result<Vec<(String, Flown)>, Failure> {
        let names = catalogue::FILES.iter();
        names.map(|(name, _)| self.read(name)).collect()
    }

    /// What is asked for, flown, and what it is called in a sentence.
    fn read(&self, which: &str) -> Result<(String, Flown), Failure> {
        flown(which, self.latitude)
    }
}

/// A demonstration of the catalogue or of a file, flown, at a latitude in degrees or where it says
/// itself; and what it is called in a sentence.
pub(crate) fn flown(which: &str, latitude: Option<f64>) -> Result<(String, Flown), Failure> {
    let place = input::name(which).to_owned();
    let found = match catalogue::find(which) {
        Some(found) => found,
        None if is_file(which) => Demonstration::from_json(&input::text(which)?),
        None => return Err(unknown(which)),
    };
    let flown = found
        .map(|it| match latitude {
            Some(degrees) => it.at_latitude_deg(degrees),
            None => it,
        })
        .and_then(Flown::new)
        .map_err(|error| Failure::at(&place, error))?;
    Ok((place, flown))
}

/// Whether a name is meant as a file's.
fn is_file(which: &str) -> bool {
    let looks_so = which == "-" || which.contains(['/', '\\', '.']);
    looks_so || Path::new(which).exists()
}

fn unknown(which: &str) -> Failure {
    let names = catalogue::FILES.iter().map(|(name, _)| *name);
    let nearest = names.min_by_key(|name| damerau_levenshtein(name, which));
    let nearest = nearest.unwrap_or_default();
    Failure::Input(format!(
        "{which:?} is no demonstration; the nearest is {nearest:?} (dipwise show lists them all)"
    ))
}

/// A line a demonstration: name, title and headline, each in its column.
fn list(all: &[(String, Flown)]) -> String {
    let rows = all.iter().map(|(_, it)| {
        let demonstration = it.demonstration();
        let title = it.said(&demonstration.title);
        let headline = it.headline().unwrap_or_default();
        [demonstration.name.clone(), title, headline]
    });
    let rows: Vec<[String; 3]> = rows.collect();
    let width = |column: usize| {
        let widths = rows.iter().map(|row| row[column].chars().count());
        widths.max().unwrap_or_default()
    };
    let (names, titles) = (width(0), width(1));
    let lines = rows.iter().map(|[name, title, headline]| {
        let line = format!("{name:<names$}  {title:<titles$}  {headline}");
        format!("{}\n", line.trim_end())
    });
    lines.collect()
}

/// A line a demonstration: how many of its claims were proved. All are looked at before the first
/// that fails is told.
fn check(all: &[(String, Flown)]) -> Result<(), Failure> {
    let mut out = output::standard();
    let names = all.iter().map(|(name, _)| name.chars().count()).max();
    let names = names.unwrap_or_default();
    let mut fails = Vec::new();
    for (name, flown) in all {
        let unproved = flown.check();
        let claims = flown.demonstration().claims.len();
        let proved = claims - unproved.iter().filter(|it| it.is_claim()).count();
        let of = if proved == claims {
            "proved".to_owned()
        } else {
            format!("of {claims} proved")
        };
        writeln!(out, "{name:<names$}  {proved:>3} claims {of}")?;
        fails.extend(unproved.iter().map(|it| format!("{name}: {it}")));
    }
    out.flush()?;
    match fails.as_slice() {
        [] => Ok(()),
        [first] => Err(Failure::Unproved(first.clone())),
        [first, rest @ ..] => {
            let more = rest.len();
            Err(Failure::Unproved(format!(
                "{first}; and {more} more: {}",
                rest.join("; ")
            )))
        }
    }
}

fn print(text: &str) -> Result<(), Failure> {
    let mut out = output::standard();
    out.write_all(text.as_bytes())?;
    Ok(out.flush()?)
}

//! `dipwise sheet`: hand-outs for print.

mod drawn;

use crate::failure::Failure;
use crate::options::accept;
use crate::show::flown;
use crate::site::{Turned, Where, With, latitude_words};
use clap::{Args, Subcommand, ValueEnum};
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use drawing::sheet::Paper;
use earth::FieldSource;
use earth::place::LATITUDE;
use lessons::roll_out::Lead;
use lessons::sheet::deviation::Swing;
use lessons::sheet::plan::{self, LessonPlan};
use lessons::sheet::{Sheet as Content, Site, aids, deviation, roll_outs, worksheet};
use std::fs;
use std::path::{Path, PathBuf};

/// Interval between two headings of a swing; chosen: from what no ramp has time for to what the
/// fewest headings of a card need.
const EVERY: Range = Range::new("interval between headings", Unit::Degree, 5.0, 90.0);

/// Write a hand-out for print: SVG, PDF or PNG.
///
/// The file's ending says which. A hand-out of two pages is one file: in a PDF two pages, in a
/// picture one below the other.
#[derive(Args)]
pub(crate) struct Sheet {
    #[command(subcommand)]
    kind: Kind,
}

#[derive(Subcommand)]
enum Kind {
    /// When to begin to roll out: table and rose for a place.
    Rollout {
        #[command(flatten)]
        site: SiteOptions,
        /// A second latitude on the rose, in degrees, north positive.
        #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
        beside_lat: Option<f64>,
        #[command(flatten)]
        to: To,
    },
    /// The memory aids for the hemisphere, with their limits.
    Aids {
        #[command(flatten)]
        place: Where,
        #[command(flatten)]
        with: With,
        #[command(flatten)]
        to: To,
    },
    /// Tasks from a seed on one page, their key on a second.
    Worksheet {
        #[command(flatten)]
        site: SiteOptions,
        /// The same seed gives the same tasks.
        #[arg(
            long,
            value_name = "NUMBER",
            default_value_t = 1,
            allow_negative_numbers = true
        )]
        seed: u64,
        #[command(flatten)]
        to: To,
    },
    /// The page of a lesson: a demonstration, when to say what, and the question it answers.
    Plan {
        /// A name of the catalogue (dipwise show lists them), a demonstration file, or - for
        /// standard input.
        #[arg(value_name = "NAME|FILE")]
        demonstration: String,
        /// At this latitude in degrees, north positive, instead of the demonstration's own field.
        #[arg(
            long,
            visible_alias = "lat",
            value_name = "DEGREES",
            allow_negative_numbers = true
        )]
        latitude: Option<f64>,
        #[command(flatten)]
        to: To,
    },
    /// A deviation card from the swing of an aircraft with hidden iron.
    Deviation {
        #[command(flatten)]
        place: Where,
        /// The same seed hides the same iron.
        #[arg(
            long,
            value_name = "NUMBER",
            default_value_t = 1,
            allow_negative_numbers = true
        )]
        seed: u64,
        /// Headings of the swing, so many degrees apart.
        #[arg(
            long,
            value_name = "DEGREES",
            default_value_t = 30.0,
            allow_negative_numbers = true
        )]
        every: f64,
        /// As found, before the adjustment.
        #[arg(long)]
        as_found: bool,
        #[command(flatten)]
        to: To,
    },
}

/// Where, with what, and how steeply banked.
#[derive(Args)]
struct SiteOptions {
    #[command(flatten)]
    place: Where,
    #[command(flatten)]
    with: With,
    #[command(flatten)]
    turned: Turned,
}

/// Where the sheet goes.
#[derive(Args)]
struct To {
    /// The size of the paper.
    #[arg(long, value_enum, default_value = "a4")]
    paper: PaperName,
    /// The file to write: its name ends in .svg, .pdf or .png.
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum PaperName {
    /// 210 mm by 297 mm.
    A4,
    /// 8½ in by 11 in.
    Letter,
}

/// What the file's ending asks for.
#[derive(Clone, Copy)]
enum Ending {
    Svg,
    Pdf,
    Png,
}

impl Sheet {
    /// Computes, lays out and writes.
    pub(crate) fn run(self) -> Result<(), Failure> {
        match self.kind {
            Kind::Rollout {
                site,
                beside_lat,
                to,
            } => {
                let ending = to.ending()?;
                let beside = match beside_lat {
                    Some(degrees) => Some(site.at_latitude(degrees)?),
                    None => None,
                };
                let sheet = roll_outs::sheet(&site.site()?, beside.as_ref()).map_err(refused)?;
                to.write(ending, &[sheet])
            }
            Kind::Aids { place, with, to } => {
                let ending = to.ending()?;
                // No figure of this sheet is for one bank alone.
                let site = site(&place, &with, 0.0)?;
                to.write(ending, &[aids::sheet(&site).map_err(refused)?])
            }
            Kind::Worksheet { site, seed, to } => {
                let ending = to.ending()?;
                let sheets = worksheet::sheets(&site.site()?, seed).map_err(refused)?;
                to.write(ending, &sheets)
            }
            Kind::Plan {
                demonstration,
                latitude,
                to,
            } => {
                let ending = to.ending()?;
                if let Some(degrees) = latitude {
                    accept("--latitude", LATITUDE, degrees)?;
                }
                let (_, flown) = flown(&demonstration, latitude)?;
                to.write(ending, &[plan::sheet(&LessonPlan::of(&flown))])
            }
            Kind::Deviation {
                place,
                seed,
                every,
                as_found,
                to,
            } => {
                let ending = to.ending()?;
                accept("--every", EVERY, every)?;
                if every != every.round() || 360.0 % every != 0.0 {
                    let said =
                        format!("must divide 360° into whole degrees, which {every}° does not");
                    return Err(Failure::at("--every", said));
                }
                let field = place.source()?.field();
                let field = field.map_err(|error| Failure::at("--date", error))?;
                let swing = Swing::hidden(&place.name(), field, seed, every as u16, !as_found);
                let sheet =
                    deviation::sheet(&swing).map_err(|error| Failure::at(&place.name(), error))?;
                to.write(ending, &[sheet])
            }
        }
    }
}

fn refused(error: OutOfRange) -> Failure {
    Failure::Input(error.to_string())
}

fn site(place: &Where, with: &With, bank: f64) -> Result<Site, Failure> {
    Ok(Site {
        name: place.name(),
        latitude: place.latitude()?,
        situation: with.situation(place.source()?)?,
        bank,
        airspeed: with.airspeed()?,
        lead: Lead::HalfBank,
    })
}

impl SiteOptions {
    fn site(&self) -> Result<Site, Failure> {
        Ok(Site {
            lead: self.turned.lead()?,
            ..site(&self.place, &self.with, self.turned.bank()?)?
        })
    }

    /// The same at a latitude that alone sets the field.
    fn at_latitude(&self, degrees: f64) -> Result<Site, Failure> {
        let latitude = accept("--beside-lat", LATITUDE, degrees)?;
        let source = FieldSource::Latitude { latitude };
        Ok(Site {
            name: format!("Latitude {}", latitude_words(degrees)),
            latitude,
            situation: self.with.situation(source)?,
            ..self.site()?
        })
    }
}

impl To {
    fn ending(&self) -> Result<Ending, Failure> {
        let ending = self.output.extension().and_then(|it| it.to_str());
        match ending.map(str::to_ascii_lowercase).as_deref() {
            Some("svg") => Ok(Ending::Svg),
            Some("pdf") => Ok(Ending::Pdf),
            Some("png") => Ok(Ending::Png),
            _ => Err(Failure::at(
                "--output",
                format!(
                    "the name must end in .svg, .pdf or .png, which {} does not",
                    self.output.display()
                ),
            )),
        }
    }

    fn write(&self, ending: Ending, sheets: &[Content]) -> Result<(), Failure> {
        let paper = match self.paper {
            PaperName::A4 => Paper::A4,
            PaperName::Letter => Paper::Letter,
        };
        let bytes = match ending {
            Ending::Svg => Ok(handouts::svg(sheets, paper, 1.0).into_bytes()),
            Ending::Pdf => drawn::pdf(sheets, paper),
            Ending::Png => drawn::png(sheets, paper),
        };
        let name = self.output.display().to_string();
        let bytes = bytes.map_err(|error| Failure::at(&name, error))?;
        written(&self.output, &bytes).map_err(|error| Failure::at(&name, error))
    }
}

fn written(path: &Path, bytes: &[u8]) -> Result<(), String> {
    fs::write(path, bytes).map_err(|error| format!("cannot be written: {error}"))
}

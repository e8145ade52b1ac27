//! `dipwise draw`: a moment of a flight or a demonstration, as a frame.

mod words;

use crate::failure::Failure;
use crate::{input, picture};
use clap::{Args, ValueEnum};
use compass::gust::GustNumbers;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use drawing::card_face::{self, CardFaceView};
use drawing::still::{self, Beside, StillView};
use drawing::strip_chart::{Sample, StripChartView};
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::torque_ledger::{LedgerView, SMALLEST_SCALE, steady_scale};
use flights::{Scenario, moment_within_step};
use kurbo::Size;
use lessons::demonstration::{Demonstration, Flown as Played, catalogue};
use std::fs;
use std::path::{Path, PathBuf};

/// Widths and heights that can be asked for, in pixels; chosen, from a thumbnail to what the
/// finest screens show.
const SMALLEST: u32 = 160;
const LARGEST: u32 = 7680;
/// Steps between two samples of the strips: a tenth of a second.
const SAMPLE_EVERY: u64 = STEPS_PER_SECOND / 10;

/// Day or night.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Light {
    /// Dark on light.
    Day,
    /// Light on dark.
    Night,
}

/// How the picture is packed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Packing {
    Svg,
    Png,
}

/// Draw a moment of a flight or a demonstration as a frame: SVG or PNG.
#[derive(Args)]
pub(crate) struct Draw {
    /// A scenario or demonstration file, or a name of the catalogue; - reads standard input.
    #[arg(value_name = "FILE|NAME")]
    which: String,
    /// Seconds from the start of the flight.
    #[arg(long, value_name = "SECONDS", allow_negative_numbers = true)]
    at: f64,
    /// The picture to write: its name ends in .svg or .png.
    #[arg(short, long, value_name = "PICTURE")]
    output: PathBuf,
    /// Width and height in pixels.
    #[arg(long, value_name = "WIDTHxHEIGHT", default_value = "1920x1080")]
    size: String,
    /// The colours.
    #[arg(long, value_enum, default_value = "day")]
    light: Light,
    /// A title over the picture; of a demonstration, its own unless another is given.
    #[arg(long, value_name = "WORDS")]
    title: Option<String>,
    /// A caption under it; of a demonstration, its own unless another is given.
    #[arg(long, value_name = "WORDS")]
    caption: Option<String>,
    /// Draw the torques on the card too.
    #[arg(long)]
    torques: bool,
    /// Draw the flight so far too.
    #[arg(long)]
    strips: bool,
}

impl Draw {
    /// Flies, draws and writes.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let packing = packing(&self.output)?;
        let size = size(&self.size).map_err(|error| Failure::at("--size", error))?;
        let (scenario, told) = self.subject()?;
        let flown = Flown::to(&scenario, self.at)
            .map_err(|error| Failure::at(input::name(&self.which), error))?;
        let svg = self.svg(&flown, &told, size);
        let bytes = match packing {
            Packing::Svg => svg.into_bytes(),
            Packing::Png => picture::png(&svg).map_err(|error| Failure::at("--output", error))?,
        };
        let name = self.output.display().to_string();
        fs::write(&self.output, bytes)
            .map_err(|error| Failure::at(&name, format!("cannot be written: {error}")))
    }

    /// The flight, and what is told at that moment of it.
    fn subject(&self) -> Result<(Scenario, Told), Failure> {
        let wrong = |error: String| Failure::at(input::name(&self.which), error);
        let found = match catalogue::find(&self.which) {
            Some(found) => found,
            None => {
                let text = input::text(&self.which)?;
                if !is_demonstration(&text) {
                    let scenario = Scenario::from_json(&text);
                    let scenario = scenario.map_err(|error| wrong(error.to_string()))?;
                    return Ok((scenario, self.told(Told::default())));
                }
                Demonstration::from_json(&text)
            }
        };
        let played = found
            .and_then(Played::new)
            .map_err(|error| wrong(error.to_string()))?;
        let captions = played.captions();
        let caption = captions
            .iter()
            .find(|it| (it.from..it.to).contains(&self.at));
        let chapters = played.chapters();
        let chapter = chapters.iter().rfind(|it| it.from <= self.at);
        let told = Told {
            title: played.said(&played.demonstration().title),
            caption: caption.map(|it| it.text.clone()).unwrap_or_default(),
            chapter: chapter.map(|it| it.title.clone()).unwrap_or_default(),
        };
        Ok((played.scenario().clone(), self.told(told)))
    }

    /// With the words that were given in the place of others.
    fn told(&self, own: Told) -> Told {
        Told {
            title: self.title.clone().unwrap_or(own.title),
            caption: self.caption.clone().unwrap_or(own.caption),
            ..own
        }
    }

    fn svg(&self, flown: &Flown, told: &Told, size: Size) -> String {
        let moment = &flown.moment;
        let difference = moment.difference();
        let [error, said] = [words::error(difference), words::difference(difference)];
        let figures = words::figures(moment);
        let figures = figures
            .each_ref()
            .map(|(name, figure)| (*name, figure.as_str()));
        let place = words::place(flown.dip);
        let torques = moment.torques;
        let view = StillView {
            card: CardFaceView {
                attitude: moment.reading.card,
                heading: moment.motion.heading,
                reading: moment.reading.compass,
                apparent_vertical: moment.apparent_gravity,
                at_stop: moment.reading.at_stop,
                show_reference: true,
                show_compass: true,
                words: card_face::Words {
                    error: (!error.is_empty()).then_some(error.as_str()),
                    stop: Some(words::AT_STOP),
                    cover: None,
                },
            },
            beside: Beside::Rose,
            ledger: self.torques.then(|| LedgerView {
                torques,
                scale: steady_scale(&torques, SMALLEST_SCALE),
                words: words::LEDGER,
            }),
            strip: self.strips.then(|| StripChartView {
                samples: &flown.samples,
                window: [0.0, flown.duration],
                words: words::STRIPS,
                ..StripChartView::default()
            }),
            captioned: !told.caption.is_empty(),
            words: still::Words {
                title: &told.title,
                chapter: &told.chapter,
                place: &place,
                heading: words::HEADING,
                compass: words::COMPASS,
                difference: &said,
                figures: &figures,
                caption: &told.caption,
                caution: words::CAUTION,
            },
        };
        Picture {
            size,
            shapes: &still::still(&view, size),
            theme: &match self.light {
                Light::Day => Theme::day(),
                Light::Night => Theme::night(),
            },
            id: "frame",
            title: match told.title.as_str() {
                "" => words::TITLE,
                title => title,
            },
            description: &words::sentence(moment),
            ground: true,
        }
        .to_svg()
    }
}

/// What is told of a moment; nothing where empty.
#[derive(Default)]
struct Told {
    title: String,
    chapter: String,
    caption: String,
}

/// Whether a file is meant as a demonstration's, however well it is made.
fn is_demonstration(text: &str) -> bool {
    let read: Result<serde_json::Value, _> = serde_json::from_str(text);
    read.is_ok_and(|it| it.get("demonstration").is_some())
}

/// A flight, flown to a moment.
struct Flown {
    moment: Moment,
    /// From the start on, a tenth of a second apart.
    samples: Vec<Sample>,
    /// Seconds of the whole flight.
    duration: f64,
    /// Dip, in radians.
    dip: f64,
}

impl Flown {
    fn to(scenario: &Scenario, time: f64) -> Result<Self, String> {
        let duration = scenario.duration();
        if !(0.0..=duration).contains(&time) {
            return Err(format!(
                "--at must be from 0 s to {duration} s, the end of this flight, not {time} s"
            ));
        }
        let mut simulation = scenario.simulation().map_err(|error| error.to_string())?;
        let mut samples = Vec::new();
        // A time that is a step's own, but for its last bit, is that step.
        let last = (time * STEPS_PER_SECOND as f64 + 1e-6) as u64;
        loop {
            let now = simulation.state().step;
            if now.is_multiple_of(SAMPLE_EVERY) || now == last {
                samples.push(Sample::from(&simulation.moment()));
            }
            if now == last {
                break;
            }
            simulation.step(&scenario.controls_at(now), scenario.air().at(now));
        }
        Ok(Self {
            moment: moment_within_step(&simulation, time),
            samples,
            duration,
            dip: scenario.situation().field.dip(),
        })
    }
}

fn packing(output: &Path) -> Result<Packing, Failure> {
    let ending = output.extension().and_then(|ending| ending.to_str());
    match ending.map(str::to_ascii_lowercase).as_deref() {
        Some("svg") => Ok(Packing::Svg),
        Some("png") => Ok(Packing::Png),
        _ => Err(Failure::at(
            "--output",
            format!(
                "the name must end in .svg or .png, not {:?}",
                output.display().to_string()
            ),
        )),
    }
}

fn size(text: &str) -> Result<Size, String> {
    let number = |text: &str| {
        let number: u32 = text.parse().ok()?;
        (SMALLEST..=LARGEST)
            .contains(&number)
            .then_some(f64::from(number))
    };
    text.split_once('x')
        .and_then(|(width, height)| Some(Size::new(number(width)?, number(height)?)))
        .ok_or_else(|| {
            format!(
                "width and height must be from {SMALLEST} to {LARGEST} pixels, as in 1920x1080, \
                 not {text:?}"
            )
        })
}

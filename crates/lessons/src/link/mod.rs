//! Links that carry what they open: a demonstration, a flight, a situation or a set of tasks.
//!
//! What is carried is written in a [compact form](compact), compressed by deflate (RFC 1951) and
//! [sealed](Sealed) as text that stands in an address:
//!
//! | bytes | what |
//! |---|---|
//! | 1 | version of the form: [`VERSION`] |
//! | 1 | [`Kind`] |
//! | 4 | checksum of all the other bytes, CRC-32, low byte first |
//! | the rest | the compact form, compressed |
//!
//! all in base64url without padding. Version and checksum stand so in every version to come, so
//! that a link that was damaged is told from one that is newer.
//!
//! [`write`] and [`read`] go between that text and the JSON of a file, and know nothing of what
//! it means; [`Carried`] knows.
//!
//! ```
//! use lessons::link::{Carried, LinkError};
//!
//! let flight = flights::read_json(r#"{"field": {"latitude_deg": 52},
//!     "start": {"heading_deg": 350, "speed_kt": 100}, "legs": [{"seconds": 20}]}"#)?;
//! let link = Carried::Flight(flight).to_link()?;
//! assert!(link.len() < 100);
//! assert!(matches!(Carried::from_link(&link)?, Carried::Flight(_)));
//! assert_eq!(Carried::from_link(&link[1..]), Err(LinkError::Damaged));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod compact;
mod sealed;
mod vocabulary;

pub use sealed::Sealed;

use crate::demonstration::{Demonstration, DemonstrationError};
use crate::drill::set::PracticeSet;
use flights::{Scenario, ScenarioFile, read_json};
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;
use thiserror::Error;

/// The version of the form.
pub const VERSION: u8 = 1;
/// The most characters of a link; chosen: what the programs that pass links on still take whole.
pub const LONGEST: usize = 32_000;
/// The most bytes of the compact form; chosen, so that a small link cannot ask for much memory: a
/// link of [`LONGEST`] characters holds as much at ten to one.
pub const LONGEST_COMPACT: usize = 240_000;
/// How hard it is compressed: the best there is, as links are short.
const LEVEL: u8 = 10;
/// The longest flight in seconds; chosen: one that is opened within a second or two.
pub const LONGEST_FLIGHT: f64 = 3600.0;

/// What a link carries.
#[derive(Clone, Debug, PartialEq)]
pub enum Carried {
    /// A demonstration, to be played.
    Demonstration(Box<Demonstration>),
    /// A flight from its start to its end, to be looked at and flown on from.
    Flight(ScenarioFile),
    /// What a flight starts from; how the scenario goes on does not matter.
    Situation(ScenarioFile),
    /// A set of tasks, to be practised.
    Set(PracticeSet),
}

/// What kind of thing a link carries; the number is the byte that says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A demonstration.
    Demonstration = 1,
    /// A flight.
    Flight = 2,
    /// A situation.
    Situation = 3,
    /// A set of tasks.
    Set = 4,
}

/// Why a link is not opened or made.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum LinkError {
    /// It is not as it was made.
    #[error("this link was cut short or changed on its way; ask for it again")]
    Damaged,
    /// Its form is not known here.
    #[error("this link was made by a newer version of Dipwise; load the page again to get it")]
    Newer,
    /// What it carries cannot be played, flown or practised.
    #[error("this link carries something that cannot be opened here: {0}")]
    Refused(DemonstrationError),
    /// What is to be carried does not fit.
    #[error("this is too long for a link; pass it on as a file")]
    TooLong,
}

impl Kind {
    /// Each of them once.
    pub const ALL: [Self; 4] = [
        Self::Demonstration,
        Self::Flight,
        Self::Situation,
        Self::Set,
    ];
}

impl Carried {
    /// What kind of thing it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Demonstration(_) => Kind::Demonstration,
            Self::Flight(_) => Kind::Flight,
            Self::Situation(_) => Kind::Situation,
            Self::Set(_) => Kind::Set,
        }
    }

    /// The JSON of its file.
    ///
    /// # Errors
    /// [`LinkError::TooLong`] for a flight that lasts longer than [`LONGEST_FLIGHT`].
    pub fn to_json(&self) -> Result<String, LinkError> {
        let (json, scenario) = match self {
            Self::Demonstration(it) => (it.to_json(), &it.scenario),
            Self::Flight(it) | Self::Situation(it) => (it.to_json(), it),
            Self::Set(it) => return Ok(it.to_json()),
        };
        check_duration(scenario).map_err(|_| LinkError::TooLong)?;
        Ok(json)
    }

    /// Reads the JSON of its file and checks that it can be played, flown or practised.
    ///
    /// # Errors
    /// [`LinkError::Refused`] for what cannot be.
    pub fn from_json(kind: Kind, json: &str) -> Result<Self, LinkError> {
        match kind {
            Kind::Demonstration => Demonstration::from_json(json).and_then(|it| {
                check_duration(&it.scenario)?;
                Ok(Self::Demonstration(Box::new(it)))
            }),
            Kind::Flight => scenario(json).map(Self::Flight),
            Kind::Situation => scenario(json).map(Self::Situation),
            Kind::Set => PracticeSet::from_json(json)
                .map(Self::Set)
                .map_err(DemonstrationError::from),
        }
        .map_err(LinkError::Refused)
    }

    /// The text of a link that carries it.
    ///
    /// # Errors
    /// [`LinkError::TooLong`].
    pub fn to_link(&self) -> Result<String, LinkError> {
        write(self.kind(), &self.to_json()?)
    }

    /// What the text of a link carries, ready to be played, flown or practised.
    ///
    /// # Errors
    /// Every [`LinkError`] but [`LinkError::TooLong`]: whatever the text is, one of them.
    pub fn from_link(text: &str) -> Result<Self, LinkError> {
        let (kind, json) = read(text)?;
        Self::from_json(kind, &json)
    }
}

/// The text of a link that carries the JSON of a file.
///
/// # Errors
/// [`LinkError::TooLong`], also for a text that is no JSON.
pub fn write(kind: Kind, json: &str) -> Result<String, LinkError> {
    let compact = compact::write(json).filter(|it| it.len() <= LONGEST_COMPACT);
    let deflated = compress_to_vec(&compact.ok_or(LinkError::TooLong)?, LEVEL);
    Sealed { kind, deflated }.to_text()
}

/// What kind of file the text of a link carries, and its JSON; what that says is not looked at.
///
/// # Errors
/// [`LinkError::Damaged`] or [`LinkError::Newer`].
pub fn read(text: &str) -> Result<(Kind, String), LinkError> {
    let sealed = Sealed::from_text(text)?;
    let compact = decompress_to_vec_with_limit(&sealed.deflated, LONGEST_COMPACT).ok();
    let json = compact.and_then(|it| compact::read(&it));
    Ok((sealed.kind, json.ok_or(LinkError::Damaged)?))
}

fn scenario(json: &str) -> Result<ScenarioFile, DemonstrationError> {
    let file = read_json(json)?;
    check_duration(&file)?;
    Ok(file)
}

fn check_duration(file: &ScenarioFile) -> Result<(), DemonstrationError> {
    let duration = Scenario::from_file(file)?.duration();
    if duration <= LONGEST_FLIGHT {
        return Ok(());
    }
    Err(DemonstrationError {
        path: "duration".to_owned(),
        reason: format!(
            "the flight of a link may last {LONGEST_FLIGHT} s, not {duration} s: ask for the file"
        ),
    })
}

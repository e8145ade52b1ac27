//! Links that carry what they open, and results as statements for a course platform. What makes
//! them stands in a program of its own, `bin/links.rs`, that is fetched when it is asked for.

use crate::later::later;
use crate::screen::call;
use leptos::wasm_bindgen::{JsCast, JsValue};
use lessons::drill::results::Results;
use lessons::drill::set::PracticeSet;
use lessons::link::{Carried, Kind, LinkError};
use web_sys::js_sys::Array;

/// Why there is no link, or nothing is opened.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Fault {
    /// The link itself.
    Link(LinkError),
    /// What reads and writes links could not be fetched.
    Unable,
    /// The flight has no start of its own that a link could carry.
    NoStart,
}

impl From<LinkError> for Fault {
    fn from(error: LinkError) -> Self {
        Self::Link(error)
    }
}

/// A QR code: its side, and the path of its black squares.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Code {
    pub(crate) side: f64,
    pub(crate) black: String,
}

/// The text of a link.
pub(crate) async fn to_link(carried: &Carried) -> Result<String, Fault> {
    sealed(carried.kind(), carried.to_json()?).await
}

/// The text of a link that carries a set.
pub(crate) async fn of_set(set: &PracticeSet) -> Result<String, Fault> {
    sealed(Kind::Set, set.to_json()).await
}

/// The text of a link that carries what was checked already, as the JSON of its file.
pub(crate) async fn sealed(kind: Kind, json: String) -> Result<String, Fault> {
    let kind = f64::from(kind as u8).into();
    let text = ask("seal", &[kind, json.into()]).await?;
    Ok(text.as_string().ok_or(LinkError::TooLong)?)
}

/// What the text of a link carries.
pub(crate) async fn from_link(text: &str) -> Result<Carried, Fault> {
    let (kind, json) = unsealed(text).await?;
    Ok(Carried::from_json(kind, &json)?)
}

/// The set that the text of a link carries; none if it carries something else. (A page that
/// opens nothing else does not hold what reads it.)
pub(crate) async fn set_of(text: &str) -> Result<Option<PracticeSet>, Fault> {
    let (kind, json) = unsealed(text).await?;
    if kind != Kind::Set {
        return Ok(None);
    }
    let set = PracticeSet::from_json(&json);
    Ok(Some(set.map_err(|it| LinkError::Refused(it.into()))?))
}

async fn unsealed(text: &str) -> Result<(Kind, String), Fault> {
    let found = listed(ask("unseal", &[text.into()]).await?);
    let (Some(kind), Some(json)) = (found.get(0).as_f64(), found.get(1).as_string()) else {
        let newer = found.length() == 1;
        return Err(if newer {
            LinkError::Newer
        } else {
            LinkError::Damaged
        }
        .into());
    };
    let kind = Kind::ALL
        .into_iter()
        .find(|it| f64::from(*it as u8) == kind);
    Ok((kind.ok_or(LinkError::Newer)?, json))
}

/// The QR code of a link; none for one that is too long.
pub(crate) async fn code(link: &str) -> Result<Option<Code>, Fault> {
    let found = listed(ask("code", &[link.into()]).await?);
    let side = found.get(0).as_f64();
    Ok(side
        .zip(found.get(1).as_string())
        .map(|(side, black)| Code { side, black }))
}

/// The xAPI statements of a student's results, as JSON.
pub(crate) async fn statements(results: &Results) -> Result<String, Fault> {
    let made = ask("statements", &[results.to_json().into()]).await?;
    made.as_string().ok_or(Fault::Unable)
}

async fn ask(what: &str, of: &[JsValue]) -> Result<JsValue, Fault> {
    let links = later("links").await.ok_or(Fault::Unable)?;
    call(&links, what, of).await.map_err(|_| Fault::Unable)
}

fn listed(found: JsValue) -> Array {
    found.dyn_into().unwrap_or_default()
}

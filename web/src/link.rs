//! Links that carry what they open. The browser compresses: `static/links.js`.

use crate::later::later;
use crate::screen::call;
use leptos::wasm_bindgen::{JsCast, JsValue};
use lessons::link::{Carried, LONGEST_COMPACT, LinkError, Sealed};
use web_sys::js_sys::Uint8Array;

/// Why there is no link, or nothing is opened.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Fault {
    /// The link itself.
    Link(LinkError),
    /// What compresses could not be fetched or run.
    Unable,
    /// The flight has no start of its own that a link could carry.
    NoStart,
}

impl From<LinkError> for Fault {
    fn from(error: LinkError) -> Self {
        Self::Link(error)
    }
}

/// The text of a link.
pub(crate) async fn to_link(carried: &Carried) -> Result<String, Fault> {
    let compact = carried.to_compact()?;
    let links = later("links").await.ok_or(Fault::Unable)?;
    let deflated = through(&links, "deflate", &compact).await;
    let sealed = Sealed {
        kind: carried.kind(),
        deflated: deflated.ok_or(Fault::Unable)?,
    };
    Ok(sealed.to_text()?)
}

/// What the text of a link carries.
pub(crate) async fn from_link(text: &str) -> Result<Carried, Fault> {
    let sealed = Sealed::from_text(text)?;
    let links = later("links").await.ok_or(Fault::Unable)?;
    let compact = through(&links, "inflate", &sealed.deflated).await;
    let compact = compact.ok_or(LinkError::Damaged)?;
    Ok(Carried::from_compact(sealed.kind, &compact)?)
}

async fn through(links: &JsValue, way: &str, bytes: &[u8]) -> Option<Vec<u8>> {
    let most = JsValue::from_f64(LONGEST_COMPACT as f64);
    let bytes = Uint8Array::from(bytes).into();
    let out = call(links, way, &[bytes, most]).await.ok()?;
    Some(out.dyn_into::<Uint8Array>().ok()?.to_vec())
}

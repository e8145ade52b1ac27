//! Text that the user takes home as a file. It is made here and asked of no server.

use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::time::Duration;
use web_sys::js_sys::Array;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// How long the text stays to be fetched, in seconds; chosen: a browser may ask its user first
/// where the file is to go, but has the text by then.
const KEPT: u64 = 60;

/// Hands the browser a file to save.
pub(crate) fn download(name: &str, kind: &str, text: &str) {
    // Refused only by a browser out of memory: then there is no file.
    let _ = offer(name, kind, text);
}

fn offer(name: &str, kind: &str, text: &str) -> Result<(), JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let anchor: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    set_timeout(
        move || {
            let _ = Url::revoke_object_url(&address);
        },
        Duration::from_secs(KEPT),
    );
    Ok(())
}

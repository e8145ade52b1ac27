//! The page in a frame on another page, asked for by `?embed` in its address: only the card, the
//! readings and what plays them, and nothing is kept in the browser.

use leptos::prelude::*;

/// Whether the page is in a frame; `static/start.js` reads it from the address.
pub(crate) fn embedded() -> bool {
    document()
        .document_element()
        .is_some_and(|root| root.has_attribute("data-embed"))
}

//! A part of the page.

use leptos::prelude::*;

/// A part of the page.
#[component]
pub(crate) fn Practise(fields: String) -> impl IntoView {
    let _ = fields;
}

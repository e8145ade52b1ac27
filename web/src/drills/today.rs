//! A part of the page.

use leptos::prelude::*;

/// A part of the page.
#[component]
pub(crate) fn Today() -> impl IntoView {}

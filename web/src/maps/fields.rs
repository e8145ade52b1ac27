//! Fields: typed into, and chosen from.

use super::atlas::use_atlas;
use super::key::Key;
use crate::field;
use leptos::prelude::*;

/// A field that is typed into.
#[component]
pub(crate) fn Typed(
    key: Key,
    /// Its least and greatest value and its step, where a slider stands below it.
    #[prop(optional)]
    slides: Option<[f64; 3]>,
) -> impl IntoView {
    field::typed(use_atlas().field(key), slides)
}

/// A field that is chosen from, all choices side by side.
#[component]
pub(crate) fn Segments(key: Key) -> impl IntoView {
    field::segments(use_atlas().field(key))
}

/// A field that is chosen from, folded together.
#[component]
pub(crate) fn Chosen(key: Key) -> impl IntoView {
    field::folded(use_atlas().field(key))
}

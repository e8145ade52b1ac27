//! A task from its question to its explanation.

use super::put::{Given, Put};
use leptos::prelude::*;

/// Puts a task, takes its answer, marks and explains it. `on_begun` is called when the answer can
/// no longer be had for nothing, `on_given` once with the answer, `on_next` when the student has
/// seen enough of the explanation.
#[component]
pub(crate) fn Play(
    put: Put,
    on_begun: Callback<()>,
    on_given: Callback<Given>,
    on_next: Callback<()>,
) -> impl IntoView {
    let _ = (put, on_begun, on_given, on_next);
}

//! A set is composed: its form at the left, what comes of it at the right.

mod form;
mod hand_out;
mod part;
mod preview;
mod tasks;

use super::app::said;
use super::desk::Desk;
use form::Form;
use hand_out::HandOut;
use leptos::prelude::*;
use preview::Preview;

/// Composing.
#[component]
pub(crate) fn Compose() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = said().own;
    view! {
        <Form/>
        <div class="results">
            // Stands empty until there is something to say, so that screen readers hear it.
            <p class="mend" role="status" hidden=move || !desk.is_wrong()>
                {move || desk.is_wrong().then_some(words.compose.mend)}
            </p>
            <HandOut/>
            <Preview/>
        </div>
    }
}

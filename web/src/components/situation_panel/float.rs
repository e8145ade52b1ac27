//! The float, number by number: each with its unit, its range and where it comes from.

use super::entry::EntryField;
use crate::cockpit::use_cockpit;
use crate::situation_form::{Entry, FloatEntry};
use leptos::prelude::*;

/// The numbers; folded away until wanted.
#[component]
pub(super) fn FloatNumbers() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let row = move |entry: FloatEntry| {
        let mark = cockpit.draft.part(move |form| form.float.mark(entry));
        let hint = Signal::derive(move || (words.float_hint)(entry.range(), mark.get()));
        view! { <EntryField entry=Entry::Float(entry) hint/> }
    };
    view! {
        <details class="numbers" id="float-numbers">
            <summary>{words.float_numbers}</summary>
            <p class="hint">{words.float_note}</p>
            <div class="entries">{FloatEntry::ALL.map(row).collect_view()}</div>
        </details>
    }
}

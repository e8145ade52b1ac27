//! What covers: the buttons that cover a reading, and the word that stands on what is covered.

use super::controls::keep_focus;
use crate::cockpit::use_cockpit;
use crate::cover::Cover;
use crate::intent::{Intent, shortcut};
use leptos::prelude::*;

/// The name of a reading, as the button that covers it.
#[component]
pub(crate) fn CoverButton(
    /// What it covers.
    cover: Cover,
    /// Its whole name.
    name: &'static str,
    /// Mark and name of the reading.
    children: Children,
) -> impl IntoView {
    let cockpit = use_cockpit();
    let covered = move || cockpit.cover() == cover;
    view! {
        <button
            type="button"
            class="quiet cover-button"
            aria-label=name
            title=name
            aria-pressed=move || covered().to_string()
            aria-keyshortcuts=shortcut(Intent::ChangeCover)
            on:mousedown=keep_focus
            on:click=move |_| cockpit.ask(Intent::ToggleCover(cover))
        >
            {children()}
            <svg class="eye" viewBox="0 0 24 24" aria-hidden="true">
                <path d="M2 12C5 6.5 8.5 5 12 5S19 6.5 22 12C19 17.5 15.5 19 12 19S5 17.5 2 12Z"/>
                <circle cx="12" cy="12" r="3.2"/>
                <path class="eye-shut" d="M4 20 20 4"/>
            </svg>
        </button>
    }
}

/// Stands in the place of what would give the covered reading away; its neighbours are hidden by
/// the style sheet meanwhile.
#[component]
pub(crate) fn CoverWord() -> impl IntoView {
    let cockpit = use_cockpit();
    view! {
        <p class="cover-word" hidden=move || cockpit.cover().shows_both()>
            {cockpit.words.presenter().covered}
        </p>
    }
}

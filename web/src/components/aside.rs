//! What stands beside the card: rose, track or heading indicator, and the buttons to choose.

use super::controls::keep_focus;
use super::cover::CoverWord;
use super::indicator::Indicator;
use super::pictures::Rose;
use super::track::Track;
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use crate::preferences::Aside;
use leptos::prelude::*;

/// The place beside the card.
#[component]
pub(crate) fn BesideTheCard() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.views;
    let shown = Memo::new(move |_| cockpit.preferences.aside());
    let covered = Memo::new(move |_| !cockpit.cover().shows_both());
    let button = move |aside: Aside| {
        view! {
            <button
                type="button"
                aria-pressed=move || (shown.get() == aside).to_string()
                on:mousedown=keep_focus
                on:click=move |_| cockpit.put_aside(aside)
            >
                {(words.aside)(aside)}
            </button>
        }
    };
    view! {
        <div class="aside" id="aside" data-shows=move || shown.get().to_string()>
            <div
                class="choice"
                role="group"
                aria-label=words.beside
                aria-keyshortcuts=shortcut(Intent::ChangeAside)
            >
                {Aside::ALL.map(button).collect_view()}
            </div>
            {move || match shown.get() {
                Aside::Rose => view! { <Rose/> }.into_any(),
                // Either would give away what is covered.
                _ if covered.get() => view! { <CoverWord/> }.into_any(),
                Aside::Track => view! { <Track/> }.into_any(),
                Aside::Indicator => view! { <Indicator/> }.into_any(),
            }}
        </div>
    }
}

//! The situation on the left edge: one line until it is unfolded.

use super::controls::keep_focus;
use super::situation_panel::SituationPanel;
use super::stick_panel::StickPanel;
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use crate::setting::{FloatChoice, IronChoice, Setting};
use crate::situation_form::nanotesla;
use crate::words::FlightWords;
use leptos::prelude::*;

/// Where this flight takes place, and the form that starts another.
#[component]
pub(crate) fn Situation() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let setting = cockpit.part(|readout| readout.setting);
    view! {
        <section class="situation" aria-label=words.set_situation>
            <button
                type="button"
                class="situation-line"
                id="situation"
                aria-expanded=move || cockpit.situation_shown().to_string()
                aria-controls="place-panel"
                aria-keyshortcuts=shortcut(Intent::ShowSituation)
                on:mousedown=keep_focus
                on:click=move |_| cockpit.ask(Intent::ShowSituation)
            >
                <span class="situation-place" id="place">
                    {move || (words.place)(&setting.get())}
                </span>
                " "
                <span class="situation-more">
                    {move || field_lines(words, &setting.get())
                        .into_iter()
                        .map(|line| view! { <span>{line}</span>" " })
                        .collect_view()}
                    <span>{move || (words.float_choice)(FloatChoice::of(setting.get().float))}</span>
                    " "
                    <span>{move || (words.air_choice)(setting.get().air)}</span>
                    " "
                    {move || {
                        let iron = setting.get().iron;
                        let said = (words.form().iron_choice)(IronChoice::of(iron));
                        (!iron.is_none()).then(|| view! { <span>{said}</span> })
                    }}
                </span>
            </button>
            <SituationPanel/>
            <StickPanel/>
        </section>
    }
}

/// Dip, variation and horizontal intensity of a setting.
pub(super) fn field_lines(words: &FlightWords, setting: &Setting) -> [String; 3] {
    let field = setting.field();
    let variation = if setting.has_variation() {
        (words.variation_line)(field.variation().to_degrees())
    } else {
        words.no_variation.to_owned()
    };
    [
        (words.dip_line)(field.dip().to_degrees()),
        variation,
        (words.horizontal_line)(nanotesla(field.horizontal())),
    ]
}

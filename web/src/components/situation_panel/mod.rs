//! The form that starts another flight: place, heading, airspeed, float, iron and air.

mod entry;
mod float;
mod iron;
mod map;
mod place;
mod start;

use super::controls::Ask;
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use compass::range::OutOfRange;
use entry::focus;
use float::FloatNumbers;
use iron::IronNumbers;
use leptos::prelude::*;
use place::PlaceEntries;
use start::Choices;

/// The form; folded away until wanted.
#[component]
pub(crate) fn SituationPanel() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let meant = cockpit.draft.meant();
    let refused = RwSignal::new(None::<OutOfRange>);
    // What the last start met says nothing of what stands here now.
    Effect::new(move || {
        meant.track();
        refused.set(None);
    });

    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        match meant.get_untracked() {
            Ok(setting) => refused.set(cockpit.begin(setting).err()),
            Err(faults) => {
                if let Some(fault) = faults.first() {
                    focus(fault.entry);
                }
            }
        }
    };
    view! {
        <form
            class="place-panel"
            id="place-panel"
            novalidate
            hidden=move || !cockpit.situation_shown()
            on:submit=submit
        >
            <PlaceEntries/>
            <Choices/>
            <FloatNumbers/>
            <IronNumbers/>
            <div class="begin">
                <p class="wrong" role="alert">
                    {move || refused.get().map(|it| (words.refused)(&it))}
                </p>
                <Back/>
                <button type="submit" id="begin">{words.begin}</button>
            </div>
        </form>
    }
}

/// Undo, reset, and the way back to the flight before.
#[component]
fn Back() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let has_old = cockpit.part(|readout| readout.has_old);
    // A button that is done with keeps the focus of the keyboard, so it is not disabled outright.
    let spent = move || (!cockpit.draft.can_undo()).to_string();
    view! {
        <div class="back">
            <button
                type="button"
                id="undo"
                aria-label=words.undo.name
                aria-disabled=spent
                aria-keyshortcuts=shortcut(Intent::Undo)
                title=words.undo.name
                on:click=move |_| cockpit.ask(Intent::Undo)
            >
                {words.undo.label}
            </button>
            <button
                type="button"
                id="reset"
                aria-label=words.reset.name
                title=words.reset.name
                on:click=move |_| cockpit.draft.reset()
            >
                {words.reset.label}
            </button>
            <div class="back-flight" hidden=move || !has_old.get()>
                <Ask intent=Intent::ReturnToOld button=words.old_flight/>
            </div>
        </div>
    }
}

//! The list of keys, made from the table that they act by.

use crate::cockpit::use_cockpit;
use crate::intent::{DEMONSTRATION_KEYS, KEYS, Line, PRESENTER_KEYS};
use crate::words::FlightWords;
use leptos::prelude::*;

/// The key list, folded until wanted where there is little room.
#[component]
pub(crate) fn KeyList() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    view! {
        <section class="keys" aria-label=words.keys hidden=move || !cockpit.keys_shown() id="keys">
            <header>
                <h2>{words.keys}</h2>
                <label class="switch">
                    <input
                        type="checkbox"
                        prop:checked=move || cockpit.preferences.keys_fly()
                        on:change=move |event| {
                            cockpit.preferences.set_keys_fly(event_target_checked(&event));
                        }
                    />
                    " "
                    {words.keys_fly}
                </label>
            </header>
            <dl>{lines(KEYS, words)}</dl>
            <details>
                <summary>{words.demonstrations().title}</summary>
                <dl>{lines(&DEMONSTRATION_KEYS, words)}</dl>
            </details>
            <details>
                <summary>{words.presenter().keys}</summary>
                <dl>{lines(&PRESENTER_KEYS, words)}</dl>
            </details>
        </section>
    }
}

/// A line for each of these.
pub(super) fn lines(of: &'static [Line], words: &'static FlightWords) -> impl IntoView {
    let line = |line: &'static Line| {
        view! {
            <div>
                <dt>{caps(line)}</dt>
                <dd>{(line.words)(words)}</dd>
            </div>
        }
    };
    of.iter().map(line).collect_view()
}

/// The keys of a line; with Shift they share one cap, as there is no room for five.
fn caps(line: &'static Line) -> AnyView {
    let caps = || {
        line.bindings
            .iter()
            .map(|binding| binding.cap)
            .filter(|cap| !cap.is_empty())
    };
    if line.with_shift {
        view! { <kbd>"Shift"</kbd><kbd>{caps().collect::<String>()}</kbd> }.into_any()
    } else {
        caps()
            .map(|cap| view! { <kbd>{cap}</kbd> })
            .collect_view()
            .into_any()
    }
}

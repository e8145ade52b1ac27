//! The list of keys, made from the table that they act by.

use crate::cockpit::use_cockpit;
use crate::intent::{KEYS, Line};
use leptos::prelude::*;

/// The key list, folded until wanted where there is little room.
#[component]
pub(crate) fn KeyList() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let lines = KEYS.iter().map(|line| {
        view! {
            <div>
                <dt>{caps(line)}</dt>
                <dd>{(line.words)(words)}</dd>
            </div>
        }
    });
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
            <dl>{lines.collect_view()}</dl>
        </section>
    }
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

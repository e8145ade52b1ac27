//! What only presenter mode shows: its line, its pointer, its curtain and its keys.

use super::controls::{Ask, keep_focus};
use super::key_list::lines;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::intent::{Intent, PRESENTER_KEYS, shortcut};
use crate::screen::{self, Awake};
use leptos::ev::{self, Custom};
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos_use_document_visibility::use_document_visibility;
use leptos_use_event_listener::use_event_listener;
use leptos_use_timeout_fn::{UseTimeoutFnReturn, use_timeout_fn};
use web_sys::{Event, PointerEvent, VisibilityState};

/// Milliseconds after which a pointer at rest is hidden; chosen: it stays as long as one talks
/// about what it points at.
const REST: f64 = 3000.0;

/// The buttons of the top line while presenter mode runs, for those without a keyboard.
#[component]
pub(crate) fn PresenterTools() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let paused = cockpit.part(|readout| readout.pause.is_some());
    let covered = cockpit.part(|readout| !readout.cover.shows_both());
    let second = cockpit.part(|readout| readout.time.floor());
    let next = move || match (covered.get(), paused.get()) {
        (_, true) if cockpit.player.plays() => words.demonstrations().play,
        (_, false) if cockpit.player.plays() => words.demonstrations().next_cue,
        (true, _) => words.presenter().reveal,
        (_, true) => words.fly_on,
        (_, false) => words.pause,
    };
    view! {
        <div class="presenter-tools" hidden=move || !cockpit.presenter.presenting()>
            <p class="presenter-time">{move || (words.presenter().time)(second.get())}</p>
            <button
                type="button"
                id="advance"
                aria-label=move || next().name
                title=move || next().name
                aria-keyshortcuts=shortcut(Intent::Advance)
                on:mousedown=keep_focus
                on:click=move |_| cockpit.ask(Intent::Advance)
            >
                {move || next().label}
            </button>
            <Ask intent=Intent::StopPresenting button=words.presenter().leave/>
        </div>
    }
}

/// What lies over the page while presenter mode runs.
#[component]
pub(crate) fn PresenterLayer() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.presenter();
    let presenter = cockpit.presenter;
    run(cockpit);
    view! {
        <Show when=move || presenter.presenting()>
            <section
                class="presenter-keys keys"
                aria-label=words.keys
                hidden=move || !presenter.keys_shown()
            >
                <h2>{words.keys}</h2>
                <dl>{lines(&PRESENTER_KEYS, cockpit.words)}</dl>
            </section>
            <Show when=move || presenter.curtain()>
                <button
                    type="button"
                    class="curtain"
                    id="curtain"
                    aria-keyshortcuts=shortcut(Intent::Curtain)
                    on:click=move |_| cockpit.ask(Intent::Curtain)
                >
                    {words.curtain}
                </button>
            </Show>
            <Pointer/>
        </Show>
    }
}

/// A ring where the mouse or the finger is, large enough to be seen from the last row.
#[component]
fn Pointer() -> impl IntoView {
    let place = RwSignal::new(None::<(i32, i32)>);
    let rest = use_timeout_fn(move |(): ()| place.set(None), REST);
    let UseTimeoutFnReturn { start, .. } = rest;
    let point = move |event: PointerEvent| {
        place.set(Some((event.client_x(), event.client_y())));
        start(());
    };
    let _ = use_event_listener(window(), ev::pointermove, point.clone());
    let _ = use_event_listener(window(), ev::pointerdown, point);
    let along = move |of: fn((i32, i32)) -> i32| move || format!("{}px", place.get().map_or(0, of));
    view! {
        <div
            class="pointer"
            id="pointer"
            aria-hidden="true"
            hidden=move || place.get().is_none()
            style:left=along(|(x, _)| x)
            style:top=along(|(_, y)| y)
        ></div>
    }
}

/// Connects presenter mode with the screen: full and awake while it runs.
fn run(cockpit: Cockpit) {
    let presenter = cockpit.presenter;
    let root = document().document_element();
    Effect::new(move |before: Option<bool>| {
        let presenting = presenter.presenting();
        if presenting {
            screen::fill();
        } else if before == Some(true) {
            screen::give_back();
        }
        if let Some(root) = &root {
            let _ = root.toggle_attribute_with_force("data-presenting", presenting);
        }
        presenting
    });

    // Escape leaves the full screen without a word to the page.
    let change = Custom::<Event>::new("fullscreenchange");
    let _ = use_event_listener(document(), change, move |_| {
        if !screen::is_filled() && untrack(|| presenter.presenting()) {
            cockpit.ask(Intent::StopPresenting);
        }
    });

    // A browser lets the screen go dark when its page is out of sight, and has to be asked again.
    let visibility = use_document_visibility();
    let lock = StoredValue::new_local(None::<Awake>);
    let refused = StoredValue::new(false);
    Effect::new(move || {
        let wanted = move || presenter.presenting() && visibility.get() == VisibilityState::Visible;
        lock.set_value(None);
        if !wanted() {
            return;
        }
        spawn_local(async move {
            let held = Awake::hold().await;
            if held.is_none() {
                if !refused.try_get_value().unwrap_or(true) {
                    refused.set_value(true);
                    cockpit.tell(cockpit.words.presenter().may_go_dark.to_owned());
                }
            } else if untrack(wanted) {
                lock.set_value(held);
            }
        });
    });
}

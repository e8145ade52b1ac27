//! The bench on which demonstrations are made: what is kept, and the one that is open.

mod bench;
mod cue_editor;
mod entry;
mod lane;
mod shelf;

pub(crate) use lane::CueLane;

use super::controls::keep_focus;
use crate::cockpit::use_cockpit;
use crate::making::{Maker, use_maker};
use crate::route::Route;
use crate::teaching::MakesOfFlight;
use crate::words::Button;
use bench::Bench;
use leptos::prelude::*;
use shelf::Kept;

/// The bench, where the address names it.
#[component]
pub(crate) fn MakingBench() -> impl IntoView {
    let maker = use_maker();
    let words = use_cockpit().words.making();
    view! {
        <Show when=move || maker.shown()>
            <section class="making" id="making" aria-label=words.title>
                <header class="making-head">
                    <h2>{words.title}</h2>
                    {button(words.close, || Route::Fly.go())}
                    <p class="saved" role="status" id="saved">
                        {move || maker.is_open().then(|| (words.saved)(maker.saved()))}
                    </p>
                </header>
                <Kept/>
                <Show when=move || maker.is_open()>
                    <Bench/>
                </Show>
            </section>
        </Show>
    }
}

/// Goes to the bench.
#[component]
pub(crate) fn MakeButton() -> impl IntoView {
    let maker: Option<Maker> = use_context();
    let words = use_cockpit().words.making();
    let there = move || maker.is_some_and(|it| it.shown());
    view! {
        <button
            type="button"
            class="quiet make-button"
            id="make"
            aria-label=words.make.name
            title=words.make.name
            aria-expanded=move || there().to_string()
            on:mousedown=keep_focus
            on:click=move |_| if untrack(there) { Route::Fly.go() } else { Route::Make.go() }
        >
            {words.make.label}
        </button>
    }
}

/// Makes a demonstration of the flight so far.
#[component]
pub(crate) fn MakeOfFlight() -> impl IntoView {
    let makes: Option<MakesOfFlight> = use_context();
    let words = use_cockpit().words.making();
    view! {
        <button
            type="button"
            class="make-of-flight"
            title=words.make_of_flight.name
            aria-label=words.make_of_flight.name
            on:mousedown=keep_focus
            on:click=move |_| {
                Route::Make.go();
                if let Some(MakesOfFlight(begin)) = makes {
                    begin.run(());
                }
            }
        >
            {words.make_of_flight.label}
        </button>
    }
}

/// What a button of the bench says, and how it stands.
struct Look {
    label: Signal<String>,
    /// Its whole name; begins with the label.
    name: Signal<String>,
    class: &'static str,
    /// The key that does the same; stands before the label.
    key: String,
    /// It has nothing to do now.
    idle: Signal<bool>,
    /// It is the one of several that was chosen.
    chosen: Signal<bool>,
}

impl Look {
    fn of(words: Signal<Button>) -> Self {
        Self {
            label: Signal::derive(move || words.get().label.to_owned()),
            name: Signal::derive(move || words.get().name.to_owned()),
            ..Self::named("", String::new())
        }
    }

    fn named(label: &str, name: String) -> Self {
        let never = Signal::stored(false);
        Self {
            label: Signal::stored(label.to_owned()),
            name: Signal::stored(name),
            class: "",
            key: String::new(),
            idle: never,
            chosen: never,
        }
    }
}

/// A button that does something. There is one for all of the bench, as each kind more would be
/// code more to load.
fn press(look: Look, does: impl Fn() + 'static) -> AnyView {
    pressed(look, Box::new(does))
}

fn pressed(look: Look, does: Box<dyn Fn()>) -> AnyView {
    let Look {
        label,
        name,
        class,
        key,
        idle,
        chosen,
    } = look;
    view! {
        <button
            type="button"
            class=class
            data-key=key.clone()
            aria-label=move || name.get()
            title=move || name.get()
            aria-keyshortcuts=key
            aria-disabled=move || idle.get().to_string()
            aria-current=move || chosen.get().to_string()
            on:mousedown=keep_focus
            on:click=move |_| {
                if !idle.get_untracked() {
                    does();
                }
            }
        >
            {move || label.get()}
        </button>
    }
    .into_any()
}

/// A button whose words stay as they are.
fn button(words: Button, does: impl Fn() + 'static) -> AnyView {
    press(Look::of(Signal::stored(words)), does)
}

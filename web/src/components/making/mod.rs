//! The bench on which demonstrations are made: what is kept, and the one that is open.

mod bench;
mod cue_editor;
mod entry;
mod lane;
mod shelf;

pub(crate) use lane::CueLane;

use super::controls::keep_focus;
use crate::cockpit::use_cockpit;
use crate::making::use_maker;
use crate::route::Route;
use crate::words::Button;
use bench::Bench;
use leptos::prelude::*;
use shelf::Shelf;

/// The bench, where the address names it.
#[component]
pub(crate) fn MakingBench() -> impl IntoView {
    let maker = use_maker();
    let words = &use_cockpit().words.making;
    let open = Memo::new(move |_| maker.is_open());
    view! {
        <Show when=move || maker.shown()>
            <section class="making" id="making" aria-label=words.title>
                <header class="making-head">
                    <h2>{words.title}</h2>
                    {button(words.close, || Route::Fly.go())}
                </header>
                <p class="saved" role="status" id="saved" hidden=move || !open.get()>
                    {move || (words.saved)(maker.saved())}
                </p>
                <Shelf/>
                <Show when=move || open.get()>
                    <Bench/>
                </Show>
            </section>
        </Show>
    }
}

/// Goes to the bench.
#[component]
pub(crate) fn MakeButton() -> impl IntoView {
    let maker = use_maker();
    let words = &use_cockpit().words.making;
    view! {
        <button
            type="button"
            class="quiet make-button"
            id="make"
            aria-label=words.make.name
            title=words.make.name
            aria-expanded=move || maker.shown().to_string()
            on:mousedown=keep_focus
            on:click=move |_| {
                let there = untrack(|| maker.shown());
                if there { Route::Fly.go() } else { Route::Make.go() }
            }
        >
            {words.make.label}
        </button>
    }
}

/// Makes a demonstration of the flight so far.
#[component]
pub(crate) fn MakeOfFlight() -> impl IntoView {
    let maker = use_maker();
    let words = &use_cockpit().words.making;
    view! {
        <button
            type="button"
            class="make-of-flight"
            title=words.make_of_flight.name
            aria-label=words.make_of_flight.name
            on:mousedown=keep_focus
            on:click=move |_| {
                Route::Make.go();
                maker.begin_of_flight();
            }
        >
            {words.make_of_flight.label}
        </button>
    }
}

/// A button that does something.
fn button(words: Button, does: impl Fn() + 'static) -> AnyView {
    worded(Signal::stored(words), Signal::stored(false), does)
}

/// A button whose words change, or that has nothing to do at times.
fn worded(words: Signal<Button>, idle: Signal<bool>, does: impl Fn() + 'static) -> AnyView {
    let does: Box<dyn Fn()> = Box::new(does);
    view! {
        <button
            type="button"
            aria-label=move || words.get().name
            title=move || words.get().name
            aria-disabled=move || idle.get().to_string()
            on:mousedown=keep_focus
            on:click=move |_| {
                if !idle.get_untracked() {
                    does();
                }
            }
        >
            {move || words.get().label}
        </button>
    }
    .into_any()
}

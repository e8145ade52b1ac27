//! A task from its question to its explanation.
//!
//! | file | concern |
//! |---|---|
//! | `attempt.rs` | the task and what became of it, without a browser |
//! | `ask.rs` | what a student can ask for, and the keys |
//! | `board.rs` | the attempt as signals |
//! | `verdict.rs` | what a mark comes to |
//! | `question.rs`, `paper.rs` | the question and its answers |
//! | `desk.rs` | the flight that counts |
//! | `turns.rs` | one turn by the clock and by the compass |
//! | `explanation.rs`, `replay.rs` | the mark, what is said, and the flight again |
//! | `views.rs` | the pictures |

mod ask;
mod attempt;
mod board;
mod desk;
mod explanation;
mod paper;
mod question;
mod replay;
#[cfg(test)]
mod tests;
mod turns;
mod verdict;
mod views;

use super::put::{Given, Put};
use crate::pages::browser_words;
use crate::words::DrillWords;
use ask::Ask;
use attempt::Stage;
use board::{Board, Calls};
use desk::Desk;
use explanation::Explained;
use leptos::ev;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos_use_document_visibility::use_document_visibility;
use leptos_use_preferences::use_prefers_reduced_motion;
use leptos_use_raf_fn::{UseRafFnCallbackArgs, use_raf_fn};
use question::Question;
pub(crate) use verdict::Verdict;
use web_sys::{HtmlElement, KeyboardEvent, VisibilityState};

/// Puts a task, takes its answer, marks and explains it. `was_begun` says whether it was begun
/// before, which another tab may have done since it was put. `on_begun` is called when the answer can
/// no longer be had for nothing, `on_given` with the answer, and again with that of another try where
/// it counts, `on_next` when the student has seen enough of the explanation.
#[component]
pub(crate) fn Play(
    put: Put,
    was_begun: Callback<(), bool>,
    on_begun: Callback<()>,
    on_given: Callback<Given>,
    on_next: Callback<()>,
) -> impl IntoView {
    let page = browser_words();
    let words = DrillWords::for_tag(page.tag).play;
    let calls = Calls {
        was_begun,
        begun: on_begun,
        given: on_given,
        next: on_next,
    };
    let less_motion = use_prefers_reduced_motion();
    let moves = Signal::derive(move || !less_motion.get());
    let board = Board::new(calls, moves, words, page);
    provide_context(board);
    let kind = put.task.kind;
    // What is said about it comes to the screen before it is computed.
    request_animation_frame(move || {
        set_timeout(move || board.prepare(put), std::time::Duration::ZERO)
    });
    listen(board);
    let stage = board.stage();
    view! {
        <section class="play" data-kind=kind.name() data-stage=move || name(stage.get())>
            {move || match (stage.get(), board.fault()) {
                (_, Some(reason)) => view! { <p class="wrong" role="alert">{reason}</p> }.into_any(),
                (None, _) => view! { <p role="status">{words.preparing}</p> }.into_any(),
                (Some((Stage::Asked, _)), _) => view! { <Question/> }.into_any(),
                (Some((Stage::Flown, _)), _) => view! { <Desk/> }.into_any(),
                (Some((Stage::Explained, _)), _) => view! { <Explained/> }.into_any(),
            }}
            <p class="unseen" role="status" aria-live="polite">{move || board.told()}</p>
        </section>
    }
}

fn name(stage: Option<(Stage, u32)>) -> &'static str {
    match stage.map(|(stage, _)| stage) {
        None => "preparing",
        Some(Stage::Asked) => "asked",
        Some(Stage::Flown) => "flown",
        Some(Stage::Explained) => "explained",
    }
}

/// Connects the board with the browser: frames, keys, sight.
fn listen(board: Board) {
    let _ = use_raf_fn(move |UseRafFnCallbackArgs { timestamp, .. }| {
        board.frame(timestamp / 1000.0);
    });
    let visibility = use_document_visibility();
    Effect::new(move || {
        if visibility.get() == VisibilityState::Hidden {
            board.sleep();
        }
    });
    let keys = window_event_listener(ev::keydown, move |event| press(board, &event));
    on_cleanup(move || keys.remove());
}

fn press(board: Board, event: &KeyboardEvent) {
    let elsewhere = event.ctrl_key() || event.alt_key() || event.meta_key() || event.is_composing();
    let key = event.key();
    if elsewhere || event.default_prevented() || belongs_to_focus(event, &key) {
        return;
    }
    let Some((ask, repeats)) = ask::key(&key, event.shift_key()) else {
        return;
    };
    event.prevent_default();
    if repeats || !event.repeat() {
        board.ask(ask);
    }
}

/// Whether the element in focus uses this key itself.
fn belongs_to_focus(event: &KeyboardEvent, key: &str) -> bool {
    let element = event
        .target()
        .and_then(|it| it.dyn_into::<HtmlElement>().ok());
    let Some(name) = element.map(|it| it.tag_name()) else {
        return false;
    };
    let typed_into = matches!(name.as_str(), "INPUT" | "SELECT" | "TEXTAREA");
    let pressed = key == " " && matches!(name.as_str(), "BUTTON" | "SUMMARY" | "A");
    typed_into || pressed
}

/// A button that asks for something. A mouse leaves the focus where it is, so that the space bar
/// goes on meaning what it means on the page.
#[component]
fn AskButton(
    ask: Ask,
    #[prop(into)] label: Signal<String>,
    /// The key for it, as `aria-keyshortcuts` names it.
    #[prop(optional)]
    key: &'static str,
    #[prop(optional)] class: &'static str,
) -> impl IntoView {
    let board = board::use_board();
    view! {
        <button
            type="button"
            class=class
            aria-keyshortcuts=(!key.is_empty()).then_some(key)
            on:mousedown=crate::components::controls::keep_focus
            on:click=move |_| board.ask(ask)
        >
            {move || label.get()}
        </button>
    }
}

/// Takes the focus when it comes to the page, so that what is new is read first.
pub(super) fn focus_on_arrival(heading: NodeRef<leptos::html::H2>) {
    Effect::new(move || {
        if let Some(heading) = heading.get() {
            request_animation_frame(move || {
                let _ = heading.focus();
            });
        }
    });
}

//! The question, its picture and its answers.

use super::ask::Ask;
use super::attempt::Still;
use super::board::use_board;
use super::paper::Sheet;
use super::views::{Card, Plan};
use super::{AskButton, focus_on_arrival};
use crate::components::controls::keep_focus;
use leptos::html;
use leptos::prelude::*;
use lessons::drill::record::Help;
use lessons::drill::{Kind, Paper, Task};

/// The question as it is put.
#[component]
pub(super) fn Question() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let heading = NodeRef::<html::H2>::new();
    focus_on_arrival(heading);
    board
        .of(|attempt| {
            (
                attempt.task().clone(),
                attempt.put().clone(),
                attempt.is_watched(),
            )
        })
        .map(|(task, put, is_watched)| {
            let kind = task.id.kind;
            let flown = kind.is_flown();
            let by_compass = task.id.of_timed_turn;
            let title = if by_compass {
                words.turns.title
            } else {
                (words.kind)(kind)
            };
            let may = put.allowed.contains(&Help::Reload);
            let before = move || board.was_begun().then(|| (words.begun_before)(may));
            view! {
                <div class="asked">
                    <h2 tabindex="-1" node_ref=heading>
                        {title} " "
                        <small>{(words.hard)(task.id.level)}</small>
                    </h2>
                    <p class="question" id="question">{task.question.clone()}</p>
                    {by_compass.then(|| view! { <p class="note">{words.turns.counts_not}</p> })}
                    <p class="note" id="begun-before" role="status">{before}</p>
                    <Situation kind paper=task.paper.clone()/>
                    {is_watched.then(|| view! { <Watch/> })}
                    {if flown {
                        view! { <Begin kind/> }.into_any()
                    } else {
                        view! { <Choices task/> }.into_any()
                    }}
                </div>
            }
        })
}

/// The situation as a picture, or the figures of a task on paper.
#[component]
fn Situation(kind: Kind, paper: Option<Paper>) -> impl IntoView {
    if let Some(paper) = paper {
        return view! { <Sheet paper/> }.into_any();
    }
    // The way that is to come gives nothing away that the question does not say.
    let plan = (kind == Kind::Predict).then(|| view! { <Plan/> });
    let card = (kind != Kind::TimedTurn).then(|| view! { <Card/> });
    view! { <div class="pictures">{card} {plan}</div> }.into_any()
}

/// Plays the stretch, and again.
#[component]
fn Watch() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let still = board.part(|it| it.still);
    let label = move || {
        match still.get().flatten() {
            None => words.pause,
            Some(Still::Ready) => words.watch,
            Some(Still::Paused | Still::Asleep) => words.play,
            Some(Still::End) => words.watch_again,
        }
        .to_owned()
    };
    let time = board.part(|it| it.moment.map_or(0.0, |it| it.time.floor()));
    view! {
        <div class="watch">
            <AskButton ask=Ask::GoOn label=Signal::derive(label) key="Space" class="wide"/>
            <span class="clock">
                {words.clock} " " {move || (words.clock_value)(time.get().unwrap_or_default())}
            </span>
        </div>
    }
}

#[component]
fn Begin(kind: Kind) -> impl IntoView {
    let words = use_board().words;
    view! {
        <p>{(words.how)(kind)}</p>
        <p class="hint keys-hint">{(words.keys)(kind)}</p>
        <div class="acts">
            <AskButton ask=Ask::GoOn label=words.begin.to_owned() key="Space" class="strong"/>
        </div>
    }
}

#[component]
fn Choices(task: Task) -> impl IntoView {
    let board = use_board();
    let choice = move |(index, text): (usize, String)| {
        let key = index + 1;
        view! {
            <button
                type="button"
                aria-keyshortcuts=key
                on:mousedown=keep_focus
                on:click=move |_| board.ask(Ask::Choose(index))
            >
                <span class="key" aria-hidden="true">{key}</span>
                <span>{text}</span>
            </button>
        }
    };
    let texts = task.choices.into_iter().map(|it| it.text).enumerate();
    view! {
        <div class="answers" role="group" aria-label=board.words.choices>
            {texts.map(choice).collect_view()}
        </div>
    }
}

//! What a set asks, before it is handed out.

use super::super::app::said;
use super::super::desk::Desk;
use super::tasks::{EXAMPLE_SEED, Making, shown};
use crate::words::SetWords;
use leptos::prelude::*;
use lessons::drill::Task;

/// The preview.
#[component]
pub(super) fn Preview() -> impl IntoView {
    let desk: Desk = expect_context();
    let all = said().own;
    let words = &all.preview;
    let set = desk.set();
    let one = Making::new();
    let every = Making::new();
    // How often one was shown: each time another.
    let turn = StoredValue::new(0_usize);
    Effect::new(move || {
        set.track();
        one.clear();
        every.clear();
    });
    let show_one = move |_| {
        let Some(set) = set.get_untracked() else {
            return;
        };
        let at = turn.get_value();
        turn.set_value(at + 1);
        let count = set.parts.len();
        // Part after part, and each time round another task of it.
        let mut chosen = set.clone();
        chosen.parts = vec![set.parts[at % count]];
        chosen.parts[0].count = 1;
        let seed = set.seed.unwrap_or(EXAMPLE_SEED);
        chosen.seed = Some(seed.wrapping_add((at / count) as u64));
        one.make(shown(&chosen), |_| {});
    };
    let show_every = move |_| {
        if let Some(set) = set.get_untracked() {
            every.make(shown(&set), |_| {});
        }
    };
    let is_fresh = move || set.with(|it| it.as_ref().is_some_and(|it| it.seed.is_none()));
    view! {
        <section class="preview" aria-labelledby="preview-title">
            <h2 id="preview-title">{words.title}</h2>
            <p class="hint" hidden=move || !is_fresh()>{words.hint}</p>
            <div class="take-home">
                <button
                    type="button"
                    aria-disabled=move || set.with(Option::is_none).to_string()
                    on:click=show_one
                >
                    {words.one}
                </button>
                <button
                    type="button"
                    aria-disabled=move || set.with(Option::is_none).to_string()
                    on:click=show_every
                >
                    {words.all}
                </button>
            </div>
            <Progress making=every/>
            <Failed making=one/>
            <div aria-live="polite">
                {move || one.made().with(|it| it.first().map(|task| card(all, task)))}
            </div>
            <ol class="questions" aria-label=words.list>
                <For
                    each=move || every.made().get().into_iter().enumerate()
                    key=|(at, task)| (*at, task.id.to_json())
                    children=move |(_, task)| view! {
                        <li><b>{(all.kind)(task.id.kind)}</b> {format!(" {}", task.question)}</li>
                    }
                />
            </ol>
        </section>
    }
}

/// How far the making is, and a way to end it.
#[component]
pub(super) fn Progress(making: Making) -> impl IntoView {
    let words = &said().own.preview;
    let said = move || (words.progress)(making.made().with(Vec::len), making.whole());
    view! {
        <Failed making/>
        <Show when=move || making.is_at_work()>
            <div class="progress">
                <span aria-hidden="true">{said}</span>
                <progress
                    aria-label=said
                    max=move || making.whole()
                    value=move || making.made().with(Vec::len)
                />
                <button type="button" on:click=move |_| making.stop()>{words.cancel}</button>
            </div>
        </Show>
    }
}

#[component]
fn Failed(making: Making) -> impl IntoView {
    view! { <p class="wrong" role="alert">{move || making.fault()}</p> }
}

/// A task with its answer.
fn card(words: &'static SetWords, task: &Task) -> impl IntoView + use<> {
    let kind = (words.kind)(task.id.kind);
    let words = &words.preview;
    let choices = task.choices.iter().map(|it| {
        let text = it.text.clone();
        if it.right {
            view! { <li class="right"><b>{words.right}</b> {format!(" {text}")}</li> }.into_any()
        } else {
            view! { <li>{text}</li> }.into_any()
        }
    });
    let answer = if task.choices.is_empty() {
        view! { <p>{words.flown}</p> }.into_any()
    } else {
        view! { <ul>{choices.collect_view()}</ul> }.into_any()
    };
    let explanation = &task.explanation;
    let said = [&explanation.happened, &explanation.why, &explanation.rule];
    let said = said.map(|it| view! { <p>{it.clone()}</p> });
    view! {
        <article class="one-task">
            <h3>{kind}</h3>
            <p>{task.question.clone()}</p>
            {answer}
            <details>
                <summary>{words.why}</summary>
                {said.collect_view()}
            </details>
        </article>
    }
}

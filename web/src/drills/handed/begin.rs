//! What a set asks, before it is begun.

use super::words;
use leptos::prelude::*;
use lessons::drill::results::Results;
use lessons::drill::set::{MOST_CHARACTERS, PracticeSet};

/// What it asks, a name to be known by, and the way in.
#[component]
pub(super) fn Begin(
    set: PracticeSet,
    /// What was answered before, where it was begun before.
    #[prop(into)]
    before: Signal<Option<Results>>,
    /// Takes the name.
    on_begin: Callback<String>,
) -> impl IntoView {
    let words = words();
    let name = RwSignal::new(String::new());
    let is_wrong = Memo::new(move |_| name.with(|it| it.trim().chars().count() > MOST_CHARACTERS));
    let asks = set
        .parts
        .iter()
        .map(|part| view! { <li>{(words.asks)(part)}</li> });
    let asks = asks.collect_view();
    let limit = set
        .time_limit_s
        .map(|limit| view! { <p>{(words.limit)(limit)}</p> });
    let allowed = (words.allowed)(&set.allowed);
    let title = if set.title.is_empty() {
        words.title.to_owned()
    } else {
        set.title.clone()
    };
    let count = set.parts.iter().map(|it| it.count as usize).sum::<usize>();
    let go = move |_| {
        if !is_wrong.get_untracked() {
            on_begin.run(name.with_untracked(|it| it.trim().to_owned()));
        }
    };
    view! {
        <h2>{title}</h2>
        <p>{(words.asked)(set.order)}</p>
        <ul>{asks}</ul>
        {limit}
        <p>{allowed}</p>
        {move || match before.get() {
            Some(before) => view! {
                <p role="status">{(words.before)(before.answers.len(), count)}</p>
            }
            .into_any(),
            None => view! {
                <div class="entry">
                    <label for="student">{words.name}</label>
                    <input
                        id="student"
                        type="text"
                        autocomplete="off"
                        aria-describedby="student-hint student-wrong"
                        aria-invalid=move || is_wrong.get().to_string()
                        prop:value=move || name.get()
                        on:input=move |event| name.set(event_target_value(&event))
                    />
                    <span class="hint" id="student-hint">{words.name_hint}</span>
                    <p class="wrong" id="student-wrong" aria-live="polite">
                        {move || is_wrong.get().then(|| (words.name_too_long)(MOST_CHARACTERS))}
                    </p>
                </div>
            }
            .into_any(),
        }}
        <button type="button" class="main" id="begin-set" on:click=go>
            {move || if before.with(Option::is_some) { words.go_on } else { words.begin }}
        </button>
        <p class="hint">{words.private}</p>
    }
}

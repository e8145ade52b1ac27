//! The end of a set: what came of it, and the files that go to the instructor.

use super::words;
use crate::download::download;
use crate::drills::play::focus_on_arrival;
use crate::link;
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::Kind;
use lessons::drill::mark::Outcome;
use lessons::drill::results::Results;

/// The end.
#[component]
pub(super) fn Ending(
    results: Results,
    /// Whether the time was up before all was answered.
    is_over: bool,
) -> impl IntoView {
    let words = words();
    let asked = results.set.tasks(results.seed).len();
    let answered = results.answers.len();
    let passed = |it: &&_| matches!(it, Outcome::Passed);
    let passed = results
        .answers
        .iter()
        .map(|it| &it.outcome)
        .filter(passed)
        .count();
    let kinds = Kind::ALL.map(|kind| {
        let score = results.of_kind(kind);
        (score.answered > 0).then(|| {
            let said = (words.of_kind)(kind, score.passed, score.answered);
            view! { <li>{said}</li> }
        })
    });
    let results = StoredValue::new(results);
    let save = move |name: &'static str, kind: &'static str, text: fn(&Results) -> String| {
        move |_| download(name, kind, &results.with_value(text))
    };
    let json = "application/json";
    let heading = NodeRef::<html::H2>::new();
    focus_on_arrival(heading);
    let refused = RwSignal::new("");
    let save_statements = move |_| {
        refused.set("");
        spawn_local(async move {
            match link::statements(&results.get_value()).await {
                Ok(text) => download("dipwise-xapi.json", json, &text),
                Err(_) => drop(refused.try_set(words.no_xapi)),
            }
        });
    };
    view! {
        <h2 tabindex="-1" node_ref=heading>{if is_over && answered < asked { words.over } else { words.done }}</h2>
        <p id="handed-score">{(words.score)(passed, answered, asked)}</p>
        <ul>{kinds.into_iter().collect_view()}</ul>
        <p>{words.send}</p>
        <div class="take-home">
            <button
                type="button"
                class="main"
                on:click=save("dipwise-results.json", json, Results::to_json)
            >
                {words.save}
            </button>
            <button type="button" on:click=save("dipwise-results.csv", "text/csv", Results::to_csv)>
                {words.csv}
            </button>
            <button type="button" on:click=save_statements>{words.xapi}</button>
        </div>
        <p class="wrong" role="alert">{move || refused.get()}</p>
        <p class="hint">{words.xapi_note}</p>
    }
}

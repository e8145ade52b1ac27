//! The table of a class, its commonest mistakes, and what is taken home of them.

use super::super::app::said;
use super::gather::{Gather, Taken};
use crate::download::download;
use crate::words::sets::ClassWords;
use leptos::prelude::*;
use lessons::drill::class_table::{ClassTable, Row};
use lessons::drill::results::Results;
use lessons::drill::xapi;

/// How many mistakes are shown; chosen: what a debriefing has time for. The file has them all.
const SHOWN: usize = 10;

/// The table.
#[component]
pub(super) fn Table(gather: Gather) -> impl IntoView {
    let all = said().own;
    let words = &all.class;
    let taken = gather.taken();
    let table = Memo::new(move |_| taken.with(|it| ClassTable::of(&named(it))));
    let sets = Memo::new(move |_| taken.with(|it| count_sets(it)));
    let heads = move || {
        let kinds = table.with(|it| it.kinds.clone());
        kinds
            .into_iter()
            .map(|kind| view! { <th scope="col">{(all.kind)(kind)}</th> })
            .collect_view()
    };
    let rows = move || {
        table.with(|it| {
            let students = it
                .students
                .iter()
                .map(|row| line(row, row.student.clone(), words));
            students.collect_view()
        })
    };
    let sum = move || table.with(|it| line(&it.all, words.everyone.to_owned(), words));
    let mistakes = move || {
        table.with(|it| {
            let each = it.mistakes.iter().take(SHOWN).map(|it| {
                let said = (words.mistake)(&it.mistake, it.times, it.students);
                view! { <li><b>{(all.kind)(it.kind)}</b>": "{said}</li> }
            });
            if it.mistakes.is_empty() {
                view! { <p>{words.no_mistakes}</p> }.into_any()
            } else {
                view! { <ol>{each.collect_view()}</ol> }.into_any()
            }
        })
    };
    view! {
        <div class="class-table">
            <h2 id="class-table-title">{words.table}</h2>
            <p role="status">
                {move || (sets.get() > 1).then(|| (words.sets)(sets.get()))}
            </p>
            <div class="table" tabindex="0" role="region" aria-labelledby="class-table-title">
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{words.student}</th>
                            {heads}
                            <th scope="col">{words.total}</th>
                            <th scope="col">{words.unanswered}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                    <tfoot>{sum}</tfoot>
                </table>
            </div>
            <h2>{words.mistakes}</h2>
            <div class="mistakes">{mistakes}</div>
            <div class="take-home">
                <button
                    type="button"
                    on:click=move |_| {
                        let text = table.with_untracked(ClassTable::to_csv);
                        download("dipwise-class.csv", "text/csv", &text);
                    }
                >
                    {words.csv}
                </button>
                <button
                    type="button"
                    on:click=move |_| {
                        let text = table.with_untracked(ClassTable::to_json);
                        download("dipwise-class.json", "application/json", &text);
                    }
                >
                    {words.json}
                </button>
                <button
                    type="button"
                    on:click=move |_| {
                        let text = taken.with_untracked(|it| xapi::to_json(&results(it)));
                        download("dipwise-xapi.json", "application/json", &text);
                    }
                >
                    {words.xapi}
                </button>
                <button type="button" on:click=move |_| gather.clear()>{words.clear}</button>
            </div>
            <p class="hint">{words.xapi_note}</p>
        </div>
    }
}

fn line(row: &Row, name: String, words: &ClassWords) -> impl IntoView + use<> {
    let cells = row.scores.iter().chain([&row.total]).map(|it| {
        view! { <td>{(words.score)(it.passed, it.answered)}</td> }
    });
    let unanswered = row.asked.saturating_sub(row.total.answered);
    view! {
        <tr>
            <th scope="row">{name}</th>
            {cells.collect_view()}
            <td>{unanswered}</td>
        </tr>
    }
}

fn results(taken: &[Taken]) -> Vec<Results> {
    taken.iter().map(|it| it.results.clone()).collect()
}

/// Who typed nothing to be known by is known by the file.
fn named(taken: &[Taken]) -> Vec<Results> {
    let mut all = results(taken);
    for (results, taken) in all.iter_mut().zip(taken) {
        if results.student.trim().is_empty() {
            results.student = taken.file.trim_end_matches(".json").to_owned();
        }
    }
    all
}

fn count_sets(taken: &[Taken]) -> usize {
    let mut sets: Vec<&_> = Vec::new();
    for it in taken {
        if !sets.contains(&&it.results.set) {
            sets.push(&it.results.set);
        }
    }
    sets.len()
}

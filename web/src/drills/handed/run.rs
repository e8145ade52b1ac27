//! A set under way: its tasks in order, its time, and what is kept of it.

use super::begin::Begin;
use super::ending::Ending;
use super::time::Begun;
use super::words;
use crate::drills::keep::use_keep;
use crate::drills::play::Play;
use crate::drills::put::{Given, Put};
use crate::today::local_day;
use leptos::prelude::*;
use lessons::drill::TaskId;
use lessons::drill::kept::joined;
use lessons::drill::record::Help;
use lessons::drill::results::{Results, VERSION};
use lessons::drill::set::PracticeSet;
use std::time::Duration;
use web_sys::js_sys::Math;

/// How often the time that is left is looked at; chosen: it is shown in whole seconds.
const LOOK: Duration = Duration::from_millis(250);
/// Seeds are drawn below this: a browser's chance gives so many.
const SEEDS: f64 = 9_007_199_254_740_992.0;

/// A set from its first sight to its end; `code` is its link's text.
#[component]
pub(super) fn Run(set: PracticeSet, code: String) -> impl IntoView {
    let keep = use_keep();
    let set = StoredValue::new(set);
    // What was answered before: of this set, and of its seed where it has one.
    let before = Memo::new(move |_| {
        let same = |it: &Results| {
            set.with_value(|set| it.set == *set && set.seed.is_none_or(|seed| seed == it.seed))
        };
        keep.handed()
            .with(|all| all.iter().rfind(|it| same(it)).cloned())
    });
    let results = RwSignal::new(None::<Results>);
    let begun = RwSignal::new(None::<Begun>);
    let begin = move |student: String| {
        let set = set.get_value();
        let now = before.get_untracked().unwrap_or_else(|| Results {
            version: VERSION,
            student,
            seed: set.seed.unwrap_or_else(|| (Math::random() * SEEDS) as u64),
            set,
            answers: Vec::new(),
        });
        let taken_s = now.answers.iter().map(|it| it.seconds).sum();
        begun.set(Some(Begun::of(&code, now.seed, taken_s)));
        // So that a reload finds the seed.
        keep.put_handed(now.clone());
        results.set(Some(now));
    };
    let begin = Callback::new(begin);
    let is_under_way = Memo::new(move |_| begun.with(Option::is_some));
    view! {
        <Show
            when=move || is_under_way.get()
            fallback=move || view! { <Begin set=set.get_value() before on_begin=begin/> }
        >
            {move || Some(view! { <UnderWay results begun=begun.get()?/> })}
        </Show>
    }
}

/// The tasks one after another, until all are done or the time is up.
#[component]
fn UnderWay(results: RwSignal<Option<Results>>, begun: Begun) -> impl IntoView {
    let keep = use_keep();
    let words = words();
    let tasks = results.with_untracked(|it| {
        let found = it.as_ref().map(|it| it.set.tasks(it.seed));
        found.unwrap_or_default()
    });
    let count = tasks.len();
    let of_set = move |read: fn(&PracticeSet) -> Option<f64>| {
        results.with_untracked(|it| it.as_ref().and_then(|it| read(&it.set)))
    };
    let limit = of_set(|it| it.time_limit_s);
    let allowed = results.with_untracked(|it| {
        let found = it.as_ref().map(|it| it.set.allowed.clone());
        found.unwrap_or_default()
    });
    let tasks = StoredValue::new(tasks);
    // Another tab may have answered some.
    let with_other_tabs = move || {
        keep.handed().with_untracked(|all| {
            results.update(|it| {
                let Some(own) = it else { return };
                let same = |kept: &&Results| kept.set == own.set && kept.seed == own.seed;
                if let Some(kept) = all.iter().find(same) {
                    *own = joined(kept, own.clone());
                }
            });
        });
    };
    // The first that has no answer.
    let first_left = move || {
        results.with_untracked(|it| {
            let answers = it.as_ref().map_or(&[][..], |it| &it.answers);
            let is_left = |task: &TaskId| answers.iter().all(|it| it.record.task != *task);
            tasks.with_value(|tasks| tasks.iter().position(is_left))
        })
    };
    // The task that is put: the next one once the answer to it is looked at.
    let at = RwSignal::new(first_left());
    let left = RwSignal::new(limit.map(|it| it - begun.ago_s()));
    let is_over = Memo::new(move |_| left.with(|it| it.is_some_and(|it| it <= 0.0)));
    let is_done = Memo::new(move |_| at.get().is_none() || is_over.get());
    if let Some(limit) = limit {
        let look = move || {
            let _ = left.try_set(Some(limit - begun.ago_s()));
        };
        if let Ok(timer) = set_interval_with_handle(look, LOOK) {
            on_cleanup(move || timer.clear());
        }
    }
    let may_again = allowed.contains(&Help::Reload) || allowed.contains(&Help::GoBack);
    let put = move || {
        let at = at.get()?;
        let task = tasks.with_value(|tasks| tasks.get(at).copied())?;
        Some(Put {
            task,
            allowed: allowed.clone(),
            begun_before: untrack(|| keep.was_begun(&task)),
        })
    };
    let put = StoredValue::new(put);
    let given = Callback::new(move |given: Given| {
        // What comes after the end is not of this set.
        if is_done.get_untracked() {
            return;
        }
        with_other_tabs();
        results.update(|it| {
            if let Some(it) = it {
                let task = given.answer.record.task;
                match it.answers.iter_mut().find(|it| it.record.task == task) {
                    // Another try, which the set allows: the last one counts.
                    Some(had) if may_again => *had = given.answer,
                    // Another tab was first.
                    Some(_) => {}
                    None => {
                        // What is learnt in a set is remembered like anything else.
                        keep.answered(&given, local_day());
                        it.answers.push(given.answer);
                    }
                }
                keep.put_handed(it.clone());
            }
        });
    });
    let next = Callback::new(move |()| {
        with_other_tabs();
        at.set(first_left());
    });
    let task = move || {
        let put = put.with_value(|put| put())?;
        let id = put.task;
        Some(view! {
            <Play
                put
                was_begun=Callback::new(move |()| keep.was_begun(&id))
                on_begun=Callback::new(move |()| keep.begin(id))
                on_given=given
                on_next=next
            />
        })
    };
    view! {
        <Show
            when=move || !is_done.get()
            fallback=move || {
                let results = results.get_untracked()?;
                Some(view! { <Ending results is_over=is_over.get_untracked()/> })
            }
        >
            <div class="handed-head">
                <p id="handed-at">{move || at.get().map(|at| (words.at)(at + 1, count))}</p>
                <p id="handed-left" role="timer">
                    {move || left.get().map(|it| (words.left)(it))}
                </p>
                <p role="status">
                    {move || left.get().filter(|it| *it < 60.0).map(|_| words.last_minute)}
                </p>
            </div>
            {task}
        </Show>
    }
}

//! The tasks of a day: what is due, then something new.

use super::keep::{Keep, use_keep};
use super::play::Play;
use super::put::{Given, Put};
use super::settings::Choices;
use crate::today::local_day;
use crate::words::ProgressWords;
use leptos::prelude::*;
use lessons::drill::progress::{new_on, next_due_in};
use lessons::drill::queue::{NEW, Queue, Search, Step, Wanted, level_of};
use lessons::drill::record::Help;
use lessons::drill::{Class, Task};
use web_sys::js_sys::Date;

/// How long one slice looks for a task, in milliseconds; chosen: half a frame. A flown task alone
/// takes longer.
const SLICE: f64 = 8.0;

/// What may help where a student practises alone: the phone may ring, the page may be left.
const ALLOWED: [Help; 2] = [Help::Pause, Help::Reload];

/// What is shown.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    /// What there is to do.
    Overview,
    /// The next task is looked for; the share of the search that is done.
    Looking(f64),
    /// A task.
    Playing(Put),
    /// There is none, and why.
    None(String),
}

/// A day under way; a copy is the same.
#[derive(Clone, Copy)]
struct Day {
    keep: Keep,
    stage: RwSignal<Stage>,
    queue: Memo<Queue>,
    /// Classes that were put already, whatever came of them.
    put: RwSignal<Vec<Class>>,
    /// Whether the last of them was answered.
    answered: StoredValue<bool>,
    /// How many new ones are wanted beyond the usual.
    extra: RwSignal<usize>,
    search: StoredValue<Option<Search>>,
}

impl Day {
    fn new(keep: Keep) -> Self {
        let put = RwSignal::new(Vec::<Class>::new());
        let extra = RwSignal::new(0);
        let settings = keep.settings();
        let queue = move |_: Option<&Queue>| {
            let day = local_day();
            let begun = keep.whole().with(|it| new_on(&it.answers, day));
            let begun = begun.saturating_sub(extra.get());
            keep.practice().with(|practice| {
                put.with(|put| Queue::of(practice, &settings.get(), day, begun, put))
            })
        };
        Self {
            keep,
            stage: RwSignal::new(Stage::Overview),
            queue: Memo::new(queue),
            put,
            answered: StoredValue::new(true),
            extra,
            search: StoredValue::new(None),
        }
    }

    /// Looks for the next task, or ends the day.
    fn next(self) {
        let wanted = self.queue.with_untracked(|it| it.wanted.first().cloned());
        let Some(wanted) = wanted else {
            self.stage.set(Stage::Overview);
            return;
        };
        let settings = self.keep.whole().with_untracked(|it| it.settings);
        let search = (self.keep.practice())
            .with_untracked(|it| Search::new(&wanted.class, &settings, it, local_day()));
        self.search.set_value(Some(search));
        self.put.update(|it| it.push(wanted.class));
        self.answered.set_value(false);
        self.stage.set(Stage::Looking(0.0));
        request_animation_frame(move || self.slice());
    }

    /// Looks on, between two frames.
    fn slice(self) {
        // The part may have been left meanwhile.
        if !matches!(self.stage.try_get_untracked(), Some(Stage::Looking(_))) {
            return;
        }
        let begun = Date::now();
        while Date::now() - begun < SLICE {
            let step = self.search.try_update_value(|search| {
                let search = search.as_mut()?;
                let step = search.step(|task| self.keep.was_had(task));
                Some((step, search.share()))
            });
            match step.flatten() {
                Some((Ok(Step::GoesOn), share)) => self.stage.set(Stage::Looking(share)),
                Some((Ok(Step::Found(task)), _)) => return self.play(&task),
                Some((Err(error), _)) => return self.stage.set(Stage::None(error.to_string())),
                None => return self.stage.set(Stage::Overview),
            }
        }
        request_animation_frame(move || self.slice());
    }

    /// Ends the search with the nearest so far.
    fn settle(self) {
        let nearest = self.search.try_update_value(|it| it.as_mut()?.settle());
        match nearest.flatten() {
            Some(task) => self.play(&task),
            None => self.stop(),
        }
    }

    fn play(self, task: &Task) {
        self.stage.set(Stage::Playing(Put {
            task: task.id,
            allowed: ALLOWED.to_vec(),
            begun_before: false,
        }));
    }

    fn answer(self, given: &Given) {
        self.answered.set_value(true);
        self.keep.answered(given, local_day());
    }

    /// What was put and not answered is still to be done.
    fn stop(self) {
        if !self.answered.get_value() {
            self.put.update(|it| {
                it.pop();
            });
            self.answered.set_value(true);
        }
        self.stage.set(Stage::Overview);
    }
}

/// The part.
#[component]
pub(crate) fn Today() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let day = Day::new(use_keep());
    let words = &words.today;
    let stage = Memo::new(move |_| match day.stage.get() {
        // The share moves within what is shown.
        Stage::Looking(_) => Stage::Looking(0.0),
        other => other,
    });
    let share = move || match day.stage.get() {
        Stage::Looking(share) => share,
        _ => 0.0,
    };
    move || match stage.get() {
        Stage::Overview => view! { <Overview day/> }.into_any(),
        Stage::Looking(_) => view! {
            <section class="looking">
                <p role="status">{words.looking}</p>
                <progress
                    aria-label=words.looking
                    prop:value=share
                    max="1"
                ></progress>
                <button type="button" on:click=move |_| day.settle()>{words.take}</button>
            </section>
        }
        .into_any(),
        Stage::Playing(put) => view! { <Playing day put/> }.into_any(),
        Stage::None(why) => view! {
            <p role="alert">{(words.none)(&why)}</p>
            <Overview day/>
        }
        .into_any(),
    }
}

/// What there is to do, and how.
#[component]
fn Overview(day: Day) -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.today;
    let left = Memo::new(move |_| day.queue.with(|it| it.wanted.len()));
    let told = move || {
        let today = local_day();
        let practised = (day.keep.whole()).with(|it| it.answers.iter().any(|it| it.day == today));
        day.keep.practice().with(|practice| {
            day.queue.with(|queue| {
                if queue.wanted.is_empty() {
                    (own.done)(next_due_in(practice, today), practised)
                } else {
                    (own.next)(queue, queue.seconds(practice))
                }
            })
        })
    };
    let more = move |_| {
        day.extra.update(|it| *it += NEW);
        day.next();
    };
    let settings = day.keep.settings();
    let row = move |it: &Wanted| {
        let level =
            (day.keep.practice()).with(|practice| level_of(&it.class, &settings.get(), practice));
        let kind = if it.is_new {
            own.is_new
        } else {
            own.to_refresh
        };
        view! {
            <li>
                <span class="tag">{kind}" "</span>
                <span>
                    {(words.class)(&it.class)} " " <small>{(words.hard)(level)}</small>
                </span>
            </li>
        }
    };
    view! {
        <div class="two-halves">
            <section aria-labelledby="today-title">
                <h2 id="today-title">{own.title}</h2>
                <p class="what-next" id="what-next">{told}</p>
                {move || if left.get() > 0 {
                    view! {
                        <button type="button" class="go" id="begin" on:click=move |_| day.next()>
                            {own.begin}
                        </button>
                    }
                    .into_any()
                } else {
                    view! { <button type="button" on:click=more>{own.more}</button> }.into_any()
                }}
                <Show when=move || { left.get() > 0 }>
                    <h3>{own.list}</h3>
                    <ol class="what-comes">
                        {move || day.queue.with(|it| it.wanted.iter().map(row).collect_view())}
                    </ol>
                </Show>
            </section>
            <Choices/>
        </div>
    }
}

/// A task, and the way out of it.
#[component]
fn Playing(day: Day, put: Put) -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let words = &words.today;
    let keep = day.keep;
    let task = put.task;
    // Those that are left when this one is shown, and this one.
    let left = day.queue.with_untracked(|it| it.wanted.len()) + 1;
    view! {
        <div class="under-way">
            <p>{(words.left)(left)}</p>
            <button type="button" on:click=move |_| day.stop()>{words.stop}</button>
        </div>
        <Play
            put
            was_begun=Callback::new(move |()| keep.was_begun(&task))
            on_begun=Callback::new(move |()| keep.begin(task))
            on_given=Callback::new(move |given: Given| day.answer(&given))
            on_next=Callback::new(move |()| day.next())
        />
    }
}

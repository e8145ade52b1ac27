//! The page of a demonstration: which, and its sheet once it is fetched and flown.

use super::board::{Board, use_board};
use super::key::Key;
use crate::later::demonstrations;
use leptos::prelude::*;
use lessons::demonstration::{Demonstration, Flown};
use lessons::sheet::Sheet;
use lessons::sheet::plan::{self, LessonPlan};

/// The catalogue, once it is asked for and fetched.
#[derive(Clone, Copy)]
pub(crate) struct Lessons(RwSignal<Option<Vec<Demonstration>>>);

impl Lessons {
    /// Not fetched.
    pub(crate) fn new() -> Self {
        Self(RwSignal::new(None))
    }

    /// Fetches the catalogue, unless it is there.
    pub(crate) fn fetch(self) {
        if self
            .0
            .with_untracked(|all| all.as_ref().is_none_or(Vec::is_empty))
        {
            leptos::task::spawn_local(async move {
                let all = demonstrations().await;
                let _ = self.0.try_set(Some(all));
            });
        }
    }

    /// The sheet that is asked for; none while the catalogue is on its way.
    ///
    /// # Errors
    /// No such demonstration, or no catalogue, in a sentence.
    pub(crate) fn sheet(self, board: Board) -> Result<Option<Sheet>, String> {
        let words = &board.own().hand_outs;
        let name = board.text(Key::Lesson).get();
        self.0.with(|all| match all {
            None => Ok(None),
            Some(all) if all.is_empty() => Err(words.not_fetched.to_owned()),
            Some(all) => {
                let found = all.iter().find(|it| it.name == name);
                let found = found.ok_or_else(|| (words.no_lesson)(&name))?;
                let flown = Flown::new(found.clone()).map_err(|error| format!("{error}."))?;
                Ok(Some(plan::sheet(&LessonPlan::of(&flown))))
            }
        })
    }
}

/// The demonstrations to choose from.
#[component]
pub(crate) fn LessonChoice(lessons: Lessons) -> impl IntoView {
    let board = use_board();
    let words = board.own();
    let chosen = board.text(Key::Lesson);
    let id = Key::Lesson.name();
    view! {
        <div class="entry wide">
            <label for=id>{(words.label)(Key::Lesson)}</label>
            <select id=id on:change=move |event| board.set(Key::Lesson, event_target_value(&event))>
                {move || lessons.0.get().unwrap_or_default().into_iter().map(|it| {
                    let name = it.name.clone();
                    view! {
                        <option value=it.name prop:selected=move || chosen.get() == name>
                            {it.title}
                        </option>
                    }
                }).collect_view()}
            </select>
        </div>
    }
}

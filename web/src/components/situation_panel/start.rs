//! What is chosen from a list: heading, float, iron and air; and the airspeed at the start.

use super::entry::EntryField;
use crate::cockpit::use_cockpit;
use crate::setting::{AIRS, FloatChoice, IronChoice};
use crate::situation_form::{Entry, Step};
use leptos::prelude::*;

/// What stands in a list for a choice that is none of those listed.
const OWN: &str = "own";

/// The lists.
#[component]
pub(super) fn Choices() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let draft = cockpit.draft;
    let heading = draft.part(|form| form.heading);
    view! {
        <div class="choices">
            <label for="start-heading">{words.start_heading}</label>
            <select
                id="start-heading"
                on:change=move |event| {
                    if let Ok(heading) = event_target_value(&event).parse() {
                        draft.change(Step::New, |form| form.heading = heading);
                    }
                }
            >
                {headings()
                    .map(|one| {
                        view! {
                            <option
                                value=one.to_string()
                                prop:selected=move || heading.get() == one
                            >
                                {format!("{one:03}°")}
                            </option>
                        }
                    })
                    .collect_view()}
            </select>
            <Choice
                id="float"
                label=words.float
                all=FloatChoice::ALL.map(|it| (it, (words.float_option)(it))).to_vec()
                now=draft.part(|form| form.float.choice())
                pick=move |float: FloatChoice| {
                    draft.change(Step::New, |form| form.float = float.into());
                }
            />
            <Choice
                id="iron"
                label=words.form().iron
                all=IronChoice::ALL.map(|it| (it, (words.form().iron_option)(it))).to_vec()
                now=draft.part(|form| form.iron.choice())
                pick=move |iron: IronChoice| {
                    draft.change(Step::New, |form| form.iron = iron.into());
                }
            />
            <Choice
                id="air"
                label=words.air
                all=AIRS.map(|it| (it, (words.air_option)(it))).to_vec()
                now=draft.part(|form| Some(form.air))
                pick=move |air| draft.change(Step::New, |form| form.air = air)
            />
        </div>
        <EntryField entry=Entry::Airspeed hint=(words.form().hint)(Entry::Airspeed).to_owned()/>
    }
}

/// A list of choices; one that is none of them is said to be the user's own.
#[component]
fn Choice<T, F>(
    id: &'static str,
    label: &'static str,
    all: Vec<(T, &'static str)>,
    now: Memo<Option<T>>,
    pick: F,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
    F: Fn(T) + 'static,
{
    let words = use_cockpit().words.form();
    let options = all
        .clone()
        .into_iter()
        .enumerate()
        .map(|(index, (it, text))| {
            view! {
                <option value=index.to_string() prop:selected=move || now.get() == Some(it)>
                    {text}
                </option>
            }
        });
    view! {
        <label for=id>{label}</label>
        <select
            id=id
            on:change=move |event| {
                let index: Option<usize> = event_target_value(&event).parse().ok();
                if let Some((it, _)) = index.and_then(|index| all.get(index)) {
                    pick(*it);
                }
            }
        >
            {options.collect_view()}
            <option
                value=OWN
                disabled
                hidden=move || now.get().is_some()
                prop:selected=move || now.get().is_none()
            >
                {words.own}
            </option>
        </select>
    }
}

/// Headings to start on: every 30° from north.
fn headings() -> impl Iterator<Item = u16> {
    std::iter::once(360).chain((30..360).step_by(30))
}

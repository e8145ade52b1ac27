//! The form of a set's part.

use super::super::app::said;
use super::super::desk::Desk;
use super::super::draft::{DraftPart, Field};
use super::form::{Typed, Wrong, focus_next};
use leptos::prelude::*;
use lessons::drill::Kind;
use lessons::making::Step;

/// A part, by its id.
#[component]
pub(super) fn PartForm(id: u32) -> impl IntoView {
    let desk: Desk = expect_context();
    let all = said().own;
    let words = &all.compose;
    let draft = desk.draft();
    let place = Memo::new(move |_| draft.with(|it| it.place(id)).unwrap_or_default());
    let last = Memo::new(move |_| draft.with(|it| it.parts.len()).saturating_sub(1));
    // What is about to be taken away is read once more as it goes.
    let of = move |text: fn(&DraftPart) -> String| {
        Signal::derive(move || {
            draft.with(|it| {
                it.parts
                    .iter()
                    .find(|it| it.id == id)
                    .map(text)
                    .unwrap_or_default()
            })
        })
    };
    let kind = Memo::new(move |_| {
        draft.with(|it| it.parts.iter().find(|it| it.id == id).map(|it| it.kind))
    });
    let level = of(|it| it.level.to_string());
    let is_flown = move || kind.get().is_some_and(Kind::is_flown);
    let choose_kind = move |event| {
        let value = event_target_value(&event);
        if let Some(kind) = Kind::ALL.into_iter().find(|it| it.name() == value) {
            change(desk, id, |it| it.kind = kind);
        }
    };
    let choose_level = move |event| {
        if let Ok(level) = event_target_value(&event).parse() {
            change(desk, id, |it| it.level = level);
        }
    };
    let kinds = Kind::ALL.map(|it| view! {
        <option value=it.name() prop:selected=move || kind.get() == Some(it)>{(all.kind)(it)}</option>
    });
    let levels = [1_u8, 2, 3].map(|it| {
        view! {
            <option value=it.to_string() prop:selected=move || level.get() == it.to_string()>
                {(words.how_hard)(it)}
            </option>
        }
    });
    let shift = move |later: bool| {
        desk.change(Step::New, |it| it.shift(id, later));
        let button = if later { "later" } else { "earlier" };
        focus_next(format!("{button}-{id}"));
    };
    let remove = move |_| {
        desk.change(Step::New, |it| it.parts.retain(|it| it.id != id));
        focus_next("undo".to_owned());
    };
    view! {
        <li>
            <fieldset class="set-part">
                <legend>{move || (words.nth)(place.get())}</legend>
                <div class="entry">
                    <label for=format!("kind-{id}")>{words.kind}</label>
                    <select id=format!("kind-{id}") on:change=choose_kind>{kinds.collect_view()}</select>
                </div>
                <Typed field=Field::Count(id) text=of(|it| it.count.clone())/>
                <Typed field=Field::Latitude(id) text=of(|it| it.latitude.clone())/>
                <div class="entry">
                    <label for=format!("level-{id}")>{words.level}</label>
                    <select id=format!("level-{id}") on:change=choose_level>{levels.collect_view()}</select>
                </div>
                <Show when=is_flown>
                    <Typed field=Field::Tolerance(id) text=of(|it| it.tolerance.clone())/>
                </Show>
                <div class="part-tools">
                    <Tool
                        id=format!("earlier-{id}")
                        sign="↑"
                        name=words.earlier
                        off=Signal::derive(move || place.get() == 0)
                        act=Callback::new(move |()| shift(false))
                    />
                    <Tool
                        id=format!("later-{id}")
                        sign="↓"
                        name=words.later
                        off=Signal::derive(move || place.get() >= last.get())
                        act=Callback::new(move |()| shift(true))
                    />
                    <Tool
                        id=format!("remove-{id}")
                        sign="×"
                        name=words.remove
                        off=false
                        act=Callback::new(remove)
                    />
                </div>
                {[Field::Count(id), Field::Latitude(id), Field::Tolerance(id)]
                    .map(|field| view! { <Wrong field/> })
                    .collect_view()}
            </fieldset>
        </li>
    }
}

#[component]
fn Tool(
    id: String,
    sign: &'static str,
    name: &'static str,
    /// Whether it does nothing now.
    #[prop(into)]
    off: Signal<bool>,
    act: Callback<()>,
) -> impl IntoView {
    view! {
        <button
            type="button"
            id=id
            aria-label=name
            title=name
            aria-disabled=move || off.get().to_string()
            on:click=move |_| if !off.get_untracked() { act.run(()) }
        >
            {sign}
        </button>
    }
}

fn change(desk: Desk, id: u32, change: impl FnOnce(&mut DraftPart)) {
    desk.change(Step::New, |draft| {
        if let Some(part) = draft.part_mut(id) {
            change(part);
        }
    });
}

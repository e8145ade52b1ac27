//! The form of a set.

use super::super::app::said;
use super::super::desk::Desk;
use super::super::draft::{Draft, Field, HELPS};
use super::part::PartForm;
use crate::chosen_file::chosen_text;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::record::Help;
use lessons::drill::set::PracticeSet;
use lessons::making::Step;

/// The form.
#[component]
pub(super) fn Form() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let draft = desk.draft();
    let ids = move || draft.with(|it| it.parts.iter().map(|part| part.id).collect::<Vec<_>>());
    let has_room = Memo::new(move |_| draft.with(Draft::has_room));
    let add = move |_| {
        if has_room.get_untracked() {
            focus_next(format!("kind-{}", desk.add()));
        }
    };
    view! {
        <section class="form" aria-label=words.form>
            <div class="set-fields">
                <Typed field=Field::Title text=Signal::derive(move || draft.with(|it| it.title.clone()))/>
                <Typed
                    field=Field::Minutes
                    text=Signal::derive(move || draft.with(|it| it.minutes.clone()))
                />
                <Typed field=Field::Seed text=Signal::derive(move || draft.with(|it| it.seed.clone()))/>
                {[Field::Title, Field::Minutes, Field::Seed]
                    .map(|field| view! { <Wrong field/> })
                    .collect_view()}
                <Order/>
                <Allowed/>
            </div>
            <h2>{words.tasks}</h2>
            <ol class="set-parts">
                <For each=ids key=|id| *id children=move |id| view! { <PartForm id/> }/>
            </ol>
            <Wrong field=Field::Parts/>
            <div class="take-home">
                <button
                    type="button"
                    id="add-part"
                    aria-disabled=move || (!has_room.get()).to_string()
                    on:click=add
                >
                    {words.add}
                </button>
                <Go back=true name=words.undo/>
                <Go back=false name=words.redo/>
                <Files/>
            </div>
        </section>
    }
}

/// A field that is typed into; what is wrong with it stands below its row, in [`Wrong`].
#[component]
pub(super) fn Typed(
    field: Field,
    /// What stands in it.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let fault = desk.fault(field);
    let id = name(field);
    let hint = (words.hint)(field);
    view! {
        <div class="entry" data-field=id.clone()>
            <label for=id.clone()>{(words.label)(field)}</label>
            <input
                id=id.clone()
                type="text"
                autocomplete="off"
                aria-describedby=format!("{id}-hint {id}-wrong")
                aria-invalid=move || fault.with(Option::is_some).to_string()
                prop:value=move || text.get()
                on:input=move |event| desk.put(field, event_target_value(&event))
            />
            <span class="hint" id=format!("{id}-hint")>{hint}</span>
        </div>
    }
}

/// What is wrong with a field.
#[component]
pub(super) fn Wrong(field: Field) -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let fault = desk.fault(field);
    view! {
        <p class="wrong" id=format!("{}-wrong", name(field)) aria-live="polite">
            {move || fault.get().map(|it| (words.fault)(field, &it))}
        </p>
    }
}

#[component]
fn Order() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let option = move |mixed: bool, name: &'static str| {
        view! {
            <label>
                <input
                    type="radio"
                    name="order"
                    prop:checked=move || desk.draft().with(|it| it.mixed == mixed)
                    on:change=move |_| desk.change(Step::New, |it| it.mixed = mixed)
                />
                <span>{name}</span>
            </label>
        }
    };
    view! {
        <fieldset class="ways" id="order">
            <legend>{words.order}</legend>
            <div class="segments">
                {option(false, words.as_given)}
                {option(true, words.mixed)}
            </div>
        </fieldset>
    }
}

#[component]
fn Allowed() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let option = move |help: Help| {
        let is_allowed = move || desk.draft().with(|it| it.allowed.contains(&help));
        let change = move |event| {
            let allow = event_target_checked(&event);
            desk.change(Step::New, |draft| {
                let had = std::mem::take(&mut draft.allowed);
                let stays = |it: &Help| if *it == help { allow } else { had.contains(it) };
                draft.allowed = HELPS.into_iter().filter(stays).collect();
            });
        };
        view! {
            <label class="switch">
                <input type="checkbox" prop:checked=is_allowed on:change=change/>
                {(words.help)(help)}
            </label>
        }
    };
    view! {
        <fieldset class="allowed">
            <legend>{words.allowed}</legend>
            {HELPS.map(option).collect_view()}
        </fieldset>
    }
}

/// Takes the last change back, or does it again.
#[component]
fn Go(back: bool, name: &'static str) -> impl IntoView {
    let desk: Desk = expect_context();
    view! {
        <button
            type="button"
            id=if back { "undo" } else { "redo" }
            aria-disabled=move || (!desk.can_go(back)).to_string()
            on:click=move |_| desk.go(back)
        >
            {name}
        </button>
    }
}

/// A new set, or one out of a file.
#[component]
fn Files() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.compose;
    let refused = RwSignal::new(String::new());
    let begin = move |draft: Draft| desk.change(Step::New, |it| *it = draft);
    let choose = move |event| {
        spawn_local(async move {
            refused.set(String::new());
            match chosen_text(&event).await {
                Some(Ok(text)) => match PracticeSet::from_json(&text) {
                    Ok(set) => begin(Draft::of(&set)),
                    Err(error) => refused.set((words.refused)(&error.to_string())),
                },
                Some(Err(_)) => refused.set(words.unread.to_owned()),
                None => {}
            }
        });
    };
    view! {
        <label class="file">
            <input type="file" accept=".json,application/json" on:change=choose/>
            <span>{words.open}</span>
        </label>
        <button type="button" on:click=move |_| begin(Draft::default())>{words.new}</button>
        <p class="wrong" role="alert">{move || refused.get()}</p>
    }
}

/// What a field is called within the page.
pub(super) fn name(field: Field) -> String {
    match field {
        Field::Title => "title".to_owned(),
        Field::Minutes => "minutes".to_owned(),
        Field::Seed => "seed".to_owned(),
        Field::Parts => "parts".to_owned(),
        Field::Count(id) => format!("count-{id}"),
        Field::Latitude(id) => format!("latitude-{id}"),
        Field::Tolerance(id) => format!("within-{id}"),
    }
}

/// Hands the keyboard to an element that is about to stand there, or to stand elsewhere.
pub(super) fn focus_next(id: String) {
    request_animation_frame(move || {
        use leptos::wasm_bindgen::JsCast;
        let found = document().get_element_by_id(&id);
        if let Some(element) = found.and_then(|it| it.dyn_into::<web_sys::HtmlElement>().ok()) {
            // Refused only for what cannot have it.
            let _ = element.focus();
        }
    });
}

//! Fields: typed into, and chosen from.

use super::atlas::use_atlas;
use super::key::Key;
use leptos::prelude::*;

/// A field that is typed into.
#[component]
pub(crate) fn Typed(
    key: Key,
    /// Its least and greatest value and its step, where a slider stands below it.
    #[prop(optional)]
    slides: Option<[f64; 3]>,
) -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let id = key.name();
    let wrong = atlas.wrong(key);
    let text = atlas.text(key);
    let is_date = key == Key::Date;
    let slider = slides.map(|[least, most, step]| {
        view! {
            <input
                type="range"
                class="slider"
                min=least
                max=most
                step=step
                aria-label=(words.slider)(key)
                prop:value=move || text.get()
                on:input=move |event| atlas.set(key, event_target_value(&event))
            />
        }
    });
    view! {
        <div class="entry">
            <label for=id>{(words.label)(key)}</label>
            <input
                id=id
                type=if is_date { "date" } else { "text" }
                min=is_date.then_some("2025-01-01")
                max=is_date.then_some("2029-12-31")
                autocomplete="off"
                aria-describedby=format!("{id}-hint {id}-wrong")
                aria-invalid=move || wrong.with(Option::is_some).to_string()
                prop:value=move || text.get()
                on:input=move |event| atlas.set(key, event_target_value(&event))
            />
            <span class="hint" id=format!("{id}-hint")>{(words.hint)(key)}</span>
            {slider}
            <p class="wrong" id=format!("{id}-wrong") aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

/// A field that is chosen from, all choices side by side.
#[component]
pub(crate) fn Segments(key: Key) -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let chosen = atlas.choice(key);
    let wrong = atlas.wrong(key);
    let option = move |choice: &'static str| {
        view! {
            <label>
                <input
                    type="radio"
                    name=key.name()
                    value=choice
                    prop:checked=move || chosen.get() == choice
                    on:change=move |_| atlas.set(key, choice)
                />
                <span>{(words.choice)(key, choice)}</span>
            </label>
        }
    };
    view! {
        <fieldset class="ways" id=key.name()>
            <legend>{(words.label)(key)}</legend>
            <div class="segments">
                {key.choices().iter().copied().map(option).collect_view()}
            </div>
            <p class="wrong" aria-live="polite">{move || wrong.get()}</p>
        </fieldset>
    }
}

/// A field that is chosen from, folded together.
#[component]
pub(crate) fn Chosen(key: Key) -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let chosen = atlas.choice(key);
    let wrong = atlas.wrong(key);
    let option = move |choice: &'static str| {
        view! {
            <option value=choice prop:selected=move || chosen.get() == choice>
                {(words.choice)(key, choice)}
            </option>
        }
    };
    view! {
        <div class="entry">
            <label for=key.name()>{(words.label)(key)}</label>
            <select
                id=key.name()
                prop:value=move || chosen.get()
                on:change=move |event| atlas.set(key, event_target_value(&event))
            >
                {key.choices().iter().copied().map(option).collect_view()}
            </select>
            <p class="wrong" aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

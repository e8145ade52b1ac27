//! Fields: typed into, chosen from, and the groups of them that several parts have.

use super::board::use_board;
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
    let board = use_board();
    let words = board.own();
    let id = key.name();
    let wrong = board.wrong(key);
    let text = board.text(key);
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
                on:input=move |event| board.set(key, event_target_value(&event))
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
                on:input=move |event| board.set(key, event_target_value(&event))
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
    let board = use_board();
    let words = board.own();
    let chosen = board.choice(key);
    let wrong = board.wrong(key);
    let option = move |choice: &'static str| {
        view! {
            <label>
                <input
                    type="radio"
                    name=key.name()
                    value=choice
                    prop:checked=move || chosen.get() == choice
                    on:change=move |_| board.set(key, choice)
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
    let board = use_board();
    let words = board.own();
    let chosen = board.choice(key);
    let wrong = board.wrong(key);
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
                on:change=move |event| board.set(key, event_target_value(&event))
            >
                {key.choices().iter().copied().map(option).collect_view()}
            </select>
            <p class="wrong" aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

/// Where: by latitude, or by place and date; and what the field is there.
#[component]
pub(crate) fn Place() -> impl IntoView {
    let board = use_board();
    let by_place = board.choice(Key::Way);
    let setting = board.meant(|reader| reader.place());
    view! {
        <Segments key=Key::Way/>
        <Typed key=Key::Latitude slides=[-80.0, 80.0, 1.0]/>
        <Show when=move || by_place.get() == "place">
            <Typed key=Key::Longitude/>
            <Typed key=Key::Date/>
        </Show>
        <p class="gives">
            {move || setting.get().map(|setting| (board.own().field)(&setting))}
        </p>
    }
}

/// How the turns are flown: by bank or by rate, how fast, and by which float.
#[component]
pub(crate) fn Flown(
    /// Whether the lead can be chosen too.
    #[prop(optional)]
    leads: bool,
) -> impl IntoView {
    let board = use_board();
    let turning = board.choice(Key::Turning);
    view! {
        <Segments key=Key::Turning/>
        {move || match turning.get() {
            "rate" => view! { <Typed key=Key::Rate/> }.into_any(),
            _ => view! { <Typed key=Key::Bank slides=[3.0, 60.0, 1.0]/> }.into_any(),
        }}
        <Typed key=Key::Airspeed/>
        {leads.then(|| view! { <Lead/> })}
        <Chosen key=Key::Float/>
    }
}

/// How the lead is reckoned.
#[component]
fn Lead() -> impl IntoView {
    let board = use_board();
    let lead = board.choice(Key::Lead);
    view! {
        <Segments key=Key::Lead/>
        <Show when=move || lead.get() == "roll"><Typed key=Key::RollRate/></Show>
    }
}

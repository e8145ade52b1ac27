//! What is asked of the maps; how far the work is.

use super::atlas::use_atlas;
use super::fields::{Chosen, Segments, Typed};
use super::key::Key;
use leptos::prelude::*;

/// What the map shows, for when, and for which turn.
#[component]
pub(crate) fn Form() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let [bank, float] = [Key::Bank, Key::Float].map(|key| atlas.part(move |it| it.shows(key)));
    view! {
        <section class="form" aria-label=words.form>
            <Segments key=Key::Show/>
            <Segments key=Key::View/>
            <Typed key=Key::Date/>
            <Days/>
            <Show when=move || bank.get()>
                <Typed key=Key::Bank slides=[3.0, 60.0, 1.0]/>
            </Show>
            <Show when=move || float.get()>
                <Typed key=Key::Airspeed/>
                <Chosen key=Key::Float/>
            </Show>
        </section>
    }
}

/// Days from the first of the model's life to the last.
const LAST: f64 = 1825.0;
/// Milliseconds in a day.
const DAY: f64 = 86_400_000.0;

/// The date on a slider.
#[component]
pub(crate) fn Days() -> impl IntoView {
    let atlas = use_atlas();
    let text = atlas.text(Key::Date);
    let first = web_sys::js_sys::Date::parse("2025-01-01");
    let value = move || {
        let day = web_sys::js_sys::Date::parse(&text.get());
        ((day - first) / DAY).round().clamp(0.0, LAST).to_string()
    };
    let slide = move |event| {
        if let Ok(days) = event_target_value(&event).parse::<f64>() {
            let day = web_sys::js_sys::Date::new(&(first + days * DAY).into());
            let iso = String::from(day.to_iso_string());
            atlas.set(Key::Date, iso.split('T').next().unwrap_or_default());
        }
    };
    view! {
        <input
            type="range"
            class="slider"
            min="0"
            max=LAST
            step="1"
            aria-label=(atlas.own().slider)(Key::Date)
            aria-valuetext=move || text.get()
            prop:value=value
            on:input=slide
        />
    }
}

/// How far the work is; cancels it, and lets it go on.
#[component]
pub(crate) fn Progressed() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let work = atlas.work;
    let progress = work.progress();
    let bar = move || {
        let now = progress.get();
        if now.failed {
            return view! {
                <p class="wrong">{words.failed}</p>
                <button type="button" on:click=move |_| work.go_on()>{words.go_on}</button>
            }
            .into_any();
        }
        if now.whole == 0 || now.done == now.whole {
            let took = (words.took)(now.surveyed, now.flown);
            return view! { <p class="hint" id="took">{took}</p> }.into_any();
        }
        let button = if now.cancelled {
            view! { <button type="button" on:click=move |_| work.go_on()>{words.go_on}</button> }
                .into_any()
        } else {
            view! { <button type="button" on:click=move |_| work.cancel()>{words.cancel}</button> }
                .into_any()
        };
        view! {
            <progress
                aria-label=(words.progress)(now.flies)
                max=now.whole.to_string()
                value=now.done.to_string()
            ></progress>
            {button}
        }
        .into_any()
    };
    view! { <div class="progress">{bar}</div> }
}

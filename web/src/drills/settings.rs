//! What a student chooses for the tasks of a day.

use super::keep::use_keep;
use crate::words::ProgressWords;
use compass::range::Range;
use leptos::prelude::*;
use lessons::drill::kept::{AWAY, Settings};
use lessons::drill::{Hemisphere, TOLERANCE};

/// The form.
#[component]
pub(super) fn Choices() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let words = &words.today.settings;
    let keep = use_keep();
    let settings = keep.settings();
    let change = move |of: &dyn Fn(&mut Settings)| {
        let mut now = settings.get_untracked();
        of(&mut now);
        keep.set_settings(now);
    };
    let side = move |side: Option<Hemisphere>, name: &'static str| {
        view! {
            <label>
                <input
                    type="radio"
                    name="hemisphere"
                    prop:checked=move || settings.get().hemisphere == side
                    on:change=move |_| change(&|it| it.hemisphere = side)
                />
                <span>{name}</span>
            </label>
        }
    };
    let level = move |level: Option<u8>, name: &'static str| {
        let value = level.unwrap_or(0).to_string();
        view! {
            <option value=value selected=move || settings.get().level == level>
                {name}
            </option>
        }
    };
    let levels = (1_u8..)
        .zip(words.levels)
        .map(|(it, name)| level(Some(it), name));
    view! {
        <section class="choices" aria-labelledby="choices">
            <h3 id="choices">{words.title}</h3>
            <fieldset class="ways">
                <legend>{words.hemisphere}</legend>
                <div class="segments">
                    {side(Some(Hemisphere::Northern), words.northern)}
                    {side(Some(Hemisphere::Southern), words.southern)}
                    {side(None, words.both)}
                </div>
            </fieldset>
            <Degrees
                id="away"
                name=words.away
                hint=words.away_hint
                range=AWAY
                value=Signal::derive(move || settings.get().away_deg)
                may_be_empty=true
                set=Callback::new(move |degrees| change(&|it| it.away_deg = degrees))
            />
            <Degrees
                id="tolerance"
                name=words.tolerance
                hint=words.tolerance_hint
                range=TOLERANCE
                value=Signal::derive(move || Some(settings.get().tolerance_deg))
                may_be_empty=false
                set=Callback::new(move |degrees: Option<f64>| change(&|it| {
                    if let Some(degrees) = degrees {
                        it.tolerance_deg = degrees;
                    }
                }))
            />
            <div class="entry">
                <label for="level">{words.level}</label>
                <select
                    id="level"
                    on:change:target=move |event| {
                        let chosen = event.target().value().parse().ok().filter(|it| *it > 0);
                        change(&|it| it.level = chosen);
                    }
                >
                    {level(None, words.grows)}
                    {levels.collect_view()}
                </select>
            </div>
        </section>
    }
}

/// An entry of degrees. What is typed wrong stands, with a sentence, and changes nothing.
#[component]
fn Degrees(
    id: &'static str,
    name: &'static str,
    hint: &'static str,
    range: Range,
    value: Signal<Option<f64>>,
    may_be_empty: bool,
    set: Callback<Option<f64>>,
) -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let wrong = RwSignal::new(None::<String>);
    let typed = move |text: String| {
        let text = text.trim().trim_end_matches('°').trim().to_owned();
        let degrees = text.parse::<f64>().ok();
        let degrees = degrees.filter(|it| range.accept(*it).is_ok());
        if degrees.is_some() || (may_be_empty && text.is_empty()) {
            wrong.set(None);
            set.run(degrees);
        } else {
            let limits = [range.least, range.most];
            wrong.set(Some((words.today.settings.refused)(&text, limits)));
        }
    };
    let shown = move || value.get().map_or_else(String::new, |it| it.to_string());
    view! {
        <div class="entry">
            <label for=id>{name}</label>
            <span class="hint" id=format!("{id}-hint")>{hint}</span>
            <input
                id=id
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-describedby=format!("{id}-hint {id}-wrong")
                aria-invalid=move || wrong.get().is_some().then_some("true")
                prop:value=shown
                on:change:target=move |event| typed(event.target().value())
            />
            <p class="wrong" id=format!("{id}-wrong") aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

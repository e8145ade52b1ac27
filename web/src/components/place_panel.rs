//! The form that starts another flight: place, heading, float and air.

use super::situation::field_lines;
use crate::cockpit::use_cockpit;
use crate::place::{Entry, Fault, PlaceForm, Way, entries};
use crate::setting::{AIRS, FloatChoice, Setting};
use crate::words::Words;
use leptos::html;
use leptos::prelude::*;
use web_sys::js_sys::Date;

/// The form; folded away until wanted.
#[component]
pub(crate) fn PlacePanel() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let form = RwSignal::new(PlaceForm::new(today()));
    let meant = Memo::new(move |_| form.with(PlaceForm::setting));
    let way = Memo::new(move |_| form.with(|form| form.way));
    let shown = NodeRef::<html::Form>::new();

    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        match meant.get_untracked() {
            Ok(setting) => cockpit.begin(setting),
            Err(faults) => {
                if let Some(fault) = faults.first() {
                    focus(fault.entry);
                }
            }
        }
    };
    view! {
        <form
            class="place-panel"
            id="place-panel"
            novalidate
            node_ref=shown
            hidden=move || !cockpit.situation_shown()
            on:submit=submit
        >
            <fieldset class="ways">
                <legend>{words.way}</legend>
                <div class="segments">
                {Way::ALL
                    .map(|one| {
                        view! {
                            <label>
                                <input
                                    type="radio"
                                    name="way"
                                    value=way_id(one)
                                    prop:checked=move || way.get() == one
                                    on:change=move |_| form.update(|form| form.way = one)
                                />
                                <span>{way_words(words, one)}</span>
                            </label>
                        }
                    })
                    .collect_view()}
                </div>
            </fieldset>
            <div class="entries">
                {move || entries(way.get())
                    .iter()
                    .map(|entry| view! { <EntryField entry=*entry form meant/> })
                    .collect_view()}
            </div>
            <Gives meant/>
            <div class="choices">
                <label for="start-heading">{words.start_heading}</label>
                <select
                    id="start-heading"
                    on:change=move |event| {
                        if let Ok(heading) = event_target_value(&event).parse() {
                            form.update(|form| form.heading = heading);
                        }
                    }
                >
                    {headings()
                        .map(|heading| {
                            view! {
                                <option
                                    value=heading.to_string()
                                    selected=move || form.with(|form| form.heading == heading)
                                >
                                    {format!("{heading:03}°")}
                                </option>
                            }
                        })
                        .collect_view()}
                </select>
                <label for="float">{words.float}</label>
                <select
                    id="float"
                    on:change=move |event| {
                        if let Some(float) = pick(&FloatChoice::ALL, &event_target_value(&event)) {
                            form.update(|form| form.float = float);
                        }
                    }
                >
                    {options(FloatChoice::ALL.map(words.float_option))}
                </select>
                <label for="air">{words.air}</label>
                <select
                    id="air"
                    on:change=move |event| {
                        if let Some(air) = pick(&AIRS, &event_target_value(&event)) {
                            form.update(|form| form.air = air);
                        }
                    }
                >
                    {options(AIRS.map(words.air_option))}
                </select>
            </div>
            <p class="hint">{words.chosen}</p>
            <div class="begin">
                <button type="submit">{words.begin}</button>
            </div>
        </form>
    }
}

/// What the form gives, before it is flown.
#[component]
fn Gives(meant: Memo<Result<Setting, Vec<Fault>>>) -> impl IntoView {
    let words = use_cockpit().words;
    view! {
        <p class="gives" id="gives">
            {move || match meant.get() {
                Ok(setting) => {
                    let lines = field_lines(words, &setting);
                    let lines = lines.map(|line| view! { <span>{line}</span>" " });
                    view! { <strong>{words.gives}</strong>" "{lines.collect_view()} }.into_any()
                }
                Err(_) => view! { <span>{words.gives_nothing}</span> }.into_any(),
            }}
        </p>
    }
}

/// One entry with its label, its hint and what is wrong with it.
#[component]
fn EntryField(
    entry: Entry,
    form: RwSignal<PlaceForm>,
    meant: Memo<Result<Setting, Vec<Fault>>>,
) -> impl IntoView {
    let words = use_cockpit().words;
    let id = entry_id(entry);
    let (label, hint) = entry_words(words, entry);
    let text = move || form.with(|form| form.text(entry).to_owned());
    let wrong = Memo::new(move |_| {
        meant.with(|meant| {
            let faults = meant.as_ref().err()?;
            let fault = faults.iter().find(|fault| fault.entry == entry)?;
            Some((words.fault)(fault))
        })
    });
    let typed = move |event: web_sys::Event| {
        form.update(|form| form.set(entry, event_target_value(&event)));
    };
    let slider = (entry == Entry::Latitude).then(|| {
        view! {
            <input
                type="range"
                class="slider"
                min="-90"
                max="90"
                step="1"
                aria-label=label
                prop:value=text
                on:input=typed
            />
        }
    });
    view! {
        <div class="entry">
            <label for=id>{label}</label>
            <input
                id=id
                type=if entry == Entry::Date { "date" } else { "text" }
                min=(entry == Entry::Date).then_some("2025-01-01")
                max=(entry == Entry::Date).then_some("2029-12-31")
                inputmode=(entry != Entry::Date).then_some("text")
                autocomplete="off"
                aria-describedby=format!("{id}-hint {id}-wrong")
                aria-invalid=move || wrong.with(Option::is_some).to_string()
                prop:value=text
                on:input=typed
            />
            <span class="hint" id=format!("{id}-hint")>{hint}</span>
            {slider}
            <p class="wrong" id=format!("{id}-wrong") aria-live="polite">
                {move || wrong.get()}
            </p>
        </div>
    }
}

/// Options whose values are their places in the list.
fn options<const N: usize>(texts: [&'static str; N]) -> impl IntoView {
    texts
        .into_iter()
        .enumerate()
        .map(|(index, text)| view! { <option value=index.to_string()>{text}</option> })
        .collect_view()
}

/// The one that an option of [`options`] stands for.
fn pick<T: Copy>(all: &[T], value: &str) -> Option<T> {
    let index: usize = value.parse().ok()?;
    all.get(index).copied()
}

/// Headings to start on: every 30° from north.
fn headings() -> impl Iterator<Item = u16> {
    std::iter::once(360).chain((30..360).step_by(30))
}

/// Today as year-month-day, by the browser's clock.
fn today() -> String {
    let iso = String::from(Date::new_0().to_iso_string());
    iso.split('T').next().unwrap_or_default().to_owned()
}

fn focus(entry: Entry) {
    use leptos::wasm_bindgen::JsCast;
    let element = document()
        .get_element_by_id(entry_id(entry))
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(element) = element {
        // Refused only by an element that cannot have the focus.
        let _ = element.focus();
    }
}

fn way_id(way: Way) -> &'static str {
    match way {
        Way::Latitude => "latitude",
        Way::Place => "place",
        Way::ByHand => "by-hand",
    }
}

fn way_words(words: &Words, way: Way) -> &'static str {
    match way {
        Way::Latitude => words.way_latitude,
        Way::Place => words.way_place,
        Way::ByHand => words.way_by_hand,
    }
}

fn entry_id(entry: Entry) -> &'static str {
    match entry {
        Entry::Latitude => "latitude",
        Entry::Longitude => "longitude",
        Entry::Altitude => "altitude",
        Entry::Date => "date",
        Entry::Dip => "dip",
        Entry::Horizontal => "horizontal",
    }
}

fn entry_words(words: &Words, entry: Entry) -> (&'static str, &'static str) {
    match entry {
        Entry::Latitude => (words.latitude, words.latitude_hint),
        Entry::Longitude => (words.longitude, words.longitude_hint),
        Entry::Altitude => (words.altitude, words.altitude_hint),
        Entry::Date => (words.date, words.date_hint),
        Entry::Dip => (words.dip, words.dip_hint),
        Entry::Horizontal => (words.horizontal, words.horizontal_hint),
    }
}

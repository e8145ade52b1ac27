//! Two at once: what the compass of the same flight says in one situation more.

use super::controls::keep_focus;
use super::marks::CompassMark;
use super::pictures::{Picture, face};
use super::readings::Figure;
use crate::beside::Change;
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use crate::session::Readout;
use crate::setting::FloatChoice;
use kurbo::Size;
use leptos::prelude::*;

/// The changes to choose from, in the order of the list; a latitude is set by its slider.
const CHANGES: [Change; 10] = [
    Change::OtherHemisphere,
    Change::Latitude(0),
    Change::NoVerticalField,
    Change::NoSwirl,
    Change::OtherIron,
    Change::Float(FloatChoice::Standard),
    Change::Float(FloatChoice::Brisk),
    Change::Float(FloatChoice::Sluggish),
    Change::Float(FloatChoice::LightlyDamped),
    Change::Float(FloatChoice::StickyPivot),
];

/// The button that shows two at once.
#[component]
pub(crate) fn CompareButton() -> impl IntoView {
    let cockpit = use_cockpit();
    let button = cockpit.words.beside().compare;
    view! {
        <button
            type="button"
            class="quiet compare"
            id="compare"
            aria-label=button.name
            title=button.name
            aria-expanded=move || cockpit.beside_shown().to_string()
            aria-controls="beside"
            aria-keyshortcuts=shortcut(Intent::ShowBeside)
            on:mousedown=keep_focus
            on:click=move |_| cockpit.ask(Intent::ShowBeside)
        >
            <span class="compare-label">{button.label}</span>
        </button>
    }
}

/// The other compass, where two are shown.
#[component]
pub(crate) fn Beside() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.beside();
    view! {
        <Show when=move || cockpit.beside_shown()>
            <section class="beside" id="beside" aria-label=words.title>
                <OtherReading/>
                <OtherCard/>
            </section>
        </Show>
    }
}

/// What the other compass says, and what is changed for it.
#[component]
fn OtherReading() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.beside();
    let figure = cockpit.part(|readout| {
        (readout.beside)
            .filter(|_| readout.cover.shows_compass())
            .map(|it| it.moment.reading.compass.whole_degrees())
    });
    let difference = cockpit.part(|readout| {
        (readout.beside)
            .filter(|_| readout.cover.shows_both())
            .map(|it| it.difference)
    });
    let apart = cockpit.part(|readout| {
        (readout.beside)
            .filter(|_| readout.cover.shows_compass())
            .map(|it| it.apart)
    });
    let dip = cockpit.part(|readout| readout.beside.map(|it| it.field.dip().to_degrees().round()));
    let change = move || cockpit.change();
    let choose = move |event: web_sys::Event| {
        let index = event_target_value(&event).parse::<usize>().ok();
        if let Some(change) = index.and_then(|index| CHANGES.get(index)) {
            cockpit.compare(*change);
        }
    };
    let slide = move |event: web_sys::Event| {
        if let Ok(degrees) = event_target_value(&event).parse() {
            cockpit.compare(Change::Latitude(degrees));
        }
    };
    let latitude = move || match change() {
        Change::Latitude(degrees) => Some(degrees),
        _ => None,
    };
    view! {
        <div class="reading beside-reading">
            <p class="reading-name"><CompassMark/>" "<span>{words.other_compass}</span></p>
            <p class="figure" id="other-compass"><Figure value=figure/></p>
            <p class="reading-note">
                <strong class="difference" id="other-difference">
                    {move || difference.get().map(cockpit.words.difference)}
                </strong>
                " "
                <span class="apart" id="apart">{move || apart.get().map(words.apart)}</span>
            </p>
        </div>
        <div class="beside-choice">
            <label for="change">{words.changed}</label>
            <select id="change" on:change=choose>
                {CHANGES
                    .into_iter()
                    .enumerate()
                    .map(|(index, it)| {
                        view! {
                            <option
                                value=index.to_string()
                                selected=move || same_kind(change(), it)
                            >
                                {(words.change)(it)}
                            </option>
                        }
                    })
                    .collect_view()}
            </select>
            <Show when=move || latitude().is_some()>
                <input
                    type="range"
                    class="slider"
                    id="other-latitude"
                    min="-90"
                    max="90"
                    step="1"
                    aria-label=words.latitude
                    aria-valuetext=move || latitude().map(words.latitude_value)
                    prop:value=move || latitude().unwrap_or(0).to_string()
                    on:input=slide
                />
                <output class="slider-value" for="other-latitude">
                    {move || latitude().map(words.latitude_value)}
                </output>
            </Show>
            <span class="hint" id="other-dip">{move || dip.get().map(cockpit.words.dip_line)}</span>
        </div>
    }
}

#[component]
fn OtherCard() -> impl IntoView {
    let cockpit = use_cockpit();
    let draw = move |readout: &Readout, size: Size| {
        let other = readout.beside;
        other
            .map(|it| {
                face(
                    cockpit.words,
                    &it.moment,
                    it.difference,
                    readout.cover,
                    size,
                )
            })
            .unwrap_or_default()
    };
    view! { <Picture id="other-card" text=cockpit.words.beside().card_face draw/> }
}

/// Whether both are the same line of the list: every latitude is one line.
fn same_kind(one: Change, other: Change) -> bool {
    match (one, other) {
        (Change::Latitude(_), Change::Latitude(_)) => true,
        _ => one == other,
    }
}

//! The place: the way to set the field, its entries, the map, and what they give.

use super::entry::EntryField;
use super::map::Map;
use crate::cockpit::use_cockpit;
use crate::components::situation::field_lines;
use crate::situation_form::{Entry, SituationForm, Step, Way, entries};
use crate::words::FlightWords;
use leptos::prelude::*;

/// Everything that sets the field.
#[component]
pub(super) fn PlaceEntries() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let draft = cockpit.draft;
    let way = draft.way();
    view! {
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
                                on:change=move |_| draft.change(Step::New, |form| form.way = one)
                            />
                            <span>{way_words(words, one)}</span>
                        </label>
                    }
                })
                .collect_view()}
            </div>
        </fieldset>
        <Map/>
        <div class="entries">
            {move || entries(way.get())
                .iter()
                .map(|entry| {
                    let hint = (words.form().hint)(*entry).to_owned();
                    let slides = *entry == Entry::Latitude && way.get() == Way::Latitude;
                    view! {
                        <EntryField entry=*entry hint>
                            {slides.then(|| view! { <Slider/> })}
                        </EntryField>
                    }
                })
                .collect_view()}
        </div>
        <Gives/>
    }
}

/// The latitude by hand, and its hemisphere.
#[component]
fn Slider() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let draft = cockpit.draft;
    let degrees = draft.part(|form| {
        let latitude = form.position().map(|(latitude, _)| latitude);
        latitude.unwrap_or_default().to_string()
    });
    let south = draft.part(SituationForm::is_south);
    let hemisphere = move |side: bool, label: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || (south.get() == Some(side)).to_string()
                on:click=move |_| draft.change(Step::New, |form| form.set_south(side))
            >
                {label}
            </button>
        }
    };
    view! {
        <div class="slides">
            <input
                type="range"
                class="slider"
                min="-90"
                max="90"
                step="1"
                aria-label=(words.label)(Entry::Latitude)
                prop:value=move || degrees.get()
                on:input=move |event| {
                    draft.change(Step::In(Entry::Latitude), |form| {
                        form.set(Entry::Latitude, event_target_value(&event));
                    });
                }
                on:change=move |_| draft.end_step()
            />
            <div class="hemispheres" role="group" aria-label=words.hemisphere>
                {hemisphere(false, words.north)}
                {hemisphere(true, words.south)}
            </div>
        </div>
    }
}

/// What the entries give, before it is flown.
#[component]
fn Gives() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let field = cockpit.draft.part(SituationForm::field);
    view! {
        <p class="gives" id="gives">
            {move || match field.get() {
                Some(setting) => {
                    let lines = field_lines(words, &setting);
                    let lines = lines.map(|line| view! { <span>{line}</span>" " });
                    view! { <strong>{words.gives}</strong>" "{lines.collect_view()} }.into_any()
                }
                None => view! { <span>{words.gives_nothing}</span> }.into_any(),
            }}
        </p>
    }
}

fn way_id(way: Way) -> &'static str {
    match way {
        Way::Latitude => "latitude",
        Way::Place => "place",
        Way::ByHand => "by-hand",
    }
}

fn way_words(words: &FlightWords, way: Way) -> &'static str {
    match way {
        Way::Latitude => words.way_latitude,
        Way::Place => words.way_place,
        Way::ByHand => words.way_by_hand,
    }
}

//! Fields: typed into, chosen from, and the groups of them that several parts have.

use super::board::use_board;
use super::key::Key;
use crate::field;
use leptos::prelude::*;

/// A field that is typed into.
#[component]
pub(crate) fn Typed(
    key: Key,
    /// Its least and greatest value and its step, where a slider stands below it.
    #[prop(optional)]
    slides: Option<[f64; 3]>,
) -> impl IntoView {
    field::typed(use_board().field(key), slides)
}

/// A field that is chosen from, all choices side by side.
#[component]
pub(crate) fn Segments(key: Key) -> impl IntoView {
    field::segments(use_board().field(key))
}

/// A field that is chosen from, folded together.
#[component]
pub(crate) fn Chosen(key: Key) -> impl IntoView {
    field::folded(use_board().field(key))
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

/// How the turns are flown: by bank or by rate, how fast, with which lead, and by which float; as
/// much of it as what is shown depends on.
#[component]
pub(crate) fn Flown() -> impl IntoView {
    let board = use_board();
    let [turning, bank, rate, lead, roll] =
        [Key::Turning, Key::Bank, Key::Rate, Key::Lead, Key::RollRate].map(|key| board.shows(key));
    view! {
        <Show when=move || turning.get()><Segments key=Key::Turning/></Show>
        <Show when=move || bank.get()><Typed key=Key::Bank slides=[3.0, 60.0, 1.0]/></Show>
        <Show when=move || rate.get()><Typed key=Key::Rate/></Show>
        <Typed key=Key::Airspeed/>
        <Show when=move || lead.get()><Segments key=Key::Lead/></Show>
        <Show when=move || roll.get()><Typed key=Key::RollRate/></Show>
        <Chosen key=Key::Float/>
    }
}

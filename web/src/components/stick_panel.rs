//! The stick that is connected, and which of its axes does what.

use super::controls::keep_focus;
use crate::cockpit::use_cockpit;
use crate::hands::{Hands, use_hands};
use crate::stick::{Axis, AxisUse, FULL_BANK, SPEEDS, WIDEST};
use crate::words::FlightWords;
use leptos::prelude::*;

/// The stick; nothing is shown until there is one.
#[component]
pub(crate) fn StickPanel() -> impl IntoView {
    let hands = use_hands();
    let words = use_cockpit().words;
    let name = move || hands.seen().map(|(name, _)| name).unwrap_or_default();
    view! {
        <Show when=move || hands.seen().is_some()>
            <details class="stick" id="stick">
                <summary>
                    {words.stick().stick} ": " <span id="stick-name">{name}</span>
                </summary>
                <Settings hands words/>
            </details>
        </Show>
    }
}

#[component]
fn Settings(hands: Hands, words: &'static FlightWords) -> impl IntoView {
    let preferences = use_cockpit().preferences;
    let map = Memo::new(move |_| preferences.stick());
    let said = words.stick();
    let sought = move || match hands.sought() {
        None => "",
        Some(AxisUse::Bank) => said.move_right,
        Some(AxisUse::Speed) => said.move_fast,
    };
    let set_dead_zone = move |event| {
        if let Ok(per_cent) = event_target_value(&event).parse() {
            hands.set_map(map.get_untracked().with_dead_zone(per_cent));
        }
    };
    view! {
        <div class="stick-settings">
            <AxisRow hands words used=AxisUse::Bank name=said.bank find=said.find_bank/>
            <AxisRow hands words used=AxisUse::Speed name=said.speed find=said.find_speed/>
            <label class="stick-dead-zone">
                <span>{said.dead_zone}</span>
                <input
                    type="range"
                    class="slider"
                    min="0"
                    max=WIDEST
                    prop:value=move || map.get().dead_zone().to_string()
                    aria-valuetext=move || (said.per_cent)(map.get().dead_zone())
                    on:input=set_dead_zone
                />
                <output>{move || (said.per_cent)(map.get().dead_zone())}</output>
            </label>
            <p class="stick-sought" role="status">{sought}</p>
            <p class="hint">{(said.ranges)(FULL_BANK, SPEEDS)}</p>
            <p class="hint">{said.buttons}</p>
        </div>
    }
}

/// A row for one use of an axis: which one, which way round, and a button that finds it.
#[component]
fn AxisRow(
    hands: Hands,
    words: &'static FlightWords,
    used: AxisUse,
    name: &'static str,
    /// The name of the button that finds it.
    find: &'static str,
) -> impl IntoView {
    let said = words.stick();
    let preferences = use_cockpit().preferences;
    let axis = Memo::new(move |_| preferences.stick().axis(used));
    let set = move |axis| {
        let map = untrack(|| preferences.stick());
        hands.set_map(map.with_axis(used, axis));
    };
    let index = Memo::new(move |_| axis.get().map(|axis| axis.index));
    // All that the stick has, and the one that is set though this stick may lack it.
    let count = Memo::new(move |_| {
        let set = index.get().map_or(0, |index| index + 1);
        hands.seen().map_or(0, |(_, axes)| axes).max(set)
    });
    let choose = move |event| {
        let index = event_target_value(&event).parse().ok();
        let reversed = axis.get_untracked().is_some_and(|axis| axis.reversed);
        set(index.map(|index| Axis { index, reversed }));
    };
    let reverse = move |event| {
        let reversed = event_target_checked(&event);
        set(axis.get_untracked().map(|axis| Axis { reversed, ..axis }));
    };
    let options = move || {
        let none = (used == AxisUse::Speed).then(|| {
            view! { <option value="none" selected=move || index.get().is_none()>{said.no_axis}</option> }
        });
        let axes = (0..count.get()).map(|one| {
            view! {
                <option value=one selected=move || index.get() == Some(one)>
                    {(said.axis)(one + 1)}
                </option>
            }
        });
        view! { {none} {axes.collect_view()} }
    };
    view! {
        <fieldset class="stick-row">
            <legend>{name}</legend>
            <select aria-label=name on:change=choose>{options}</select>
            <label class="switch">
                <input
                    type="checkbox"
                    prop:checked=move || axis.get().is_some_and(|axis| axis.reversed)
                    disabled=move || axis.get().is_none()
                    on:change=reverse
                />
                " "
                {said.reversed}
            </label>
            <button
                type="button"
                aria-label=find
                title=find
                aria-pressed=move || (hands.sought() == Some(used)).to_string()
                on:mousedown=keep_focus
                on:click=move |_| hands.seek(used)
            >
                {said.find}
            </button>
        </fieldset>
    }
}

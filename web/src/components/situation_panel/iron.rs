//! The aircraft's iron, number by number, and the deviation that it makes.

use super::entry::{EntryField, Typed, WrongLine};
use crate::cockpit::use_cockpit;
use crate::setting::Setting;
use crate::situation_form::{Axis, Entry};
use leptos::prelude::*;

/// The numbers; folded away until wanted.
#[component]
pub(super) fn IronNumbers() -> impl IntoView {
    let words = use_cockpit().words.form();
    let hard = move |axis| {
        let entry = Entry::Hard(axis);
        view! { <EntryField entry hint=(words.hint)(entry).to_owned()/> }
    };
    let cell = move |along, by| {
        let entry = Entry::Soft(along, by);
        view! { <td><Typed entry name=(words.label)(entry)/></td> }
    };
    let row = move |(along, name): (Axis, &'static str)| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                {Axis::ALL.map(|by| cell(along, by)).collect_view()}
            </tr>
        }
    };
    let faults = Axis::ALL
        .into_iter()
        .flat_map(|along| Axis::ALL.map(|by| Entry::Soft(along, by)))
        .map(|entry| view! { <WrongLine entry/> });
    let named = move || Axis::ALL.into_iter().zip(words.axes);
    view! {
        <details class="numbers" id="iron-numbers">
            <summary>{words.iron_numbers}</summary>
            <p class="hint">{words.iron_note}</p>
            <div class="entries">{Axis::ALL.map(hard).collect_view()}</div>
            <table class="matrix">
                <caption>{words.soft}<span class="hint">{words.soft_hint}</span></caption>
                <thead>
                    <tr>
                        <td></td>
                        {named()
                            .map(|(_, name)| view! { <th scope="col">{name}</th> })
                            .collect_view()}
                    </tr>
                </thead>
                <tbody>{named().map(row).collect_view()}</tbody>
            </table>
            {faults.collect_view()}
            <Deviation/>
        </details>
    }
}

/// The deviation on the four cardinal headings in level flight.
#[component]
fn Deviation() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let meant = cockpit.draft.meant();
    let deviations = Memo::new(move |_| {
        let of = |setting: &Setting| setting.level_deviations();
        meant.with(|meant| meant.as_ref().ok().map(of))
    });
    view! {
        <table class="deviation" id="deviation">
            <caption>{words.deviation}</caption>
            <thead>
                <tr>
                    {words.cardinals.map(|it| view! { <th scope="col">{it}</th> }).collect_view()}
                </tr>
            </thead>
            <tbody>
                <tr>
                    {move || {
                        let degrees = deviations.get().unwrap_or_default();
                        let said = degrees.map(|it| (words.deviation_value)(it));
                        said.map(|it| view! { <td>{it}</td> }).collect_view()
                    }}
                </tr>
            </tbody>
        </table>
    }
}

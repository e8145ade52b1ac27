//! One entry: its label, its hint, what was typed, and what is wrong with it.

use crate::cockpit::use_cockpit;
use crate::situation_form::{Axis, Entry, FloatEntry, Step};
use leptos::prelude::*;

/// An entry as a row.
#[component]
pub(super) fn EntryField(
    entry: Entry,
    /// What stands under the label: unit, range, where the number comes from.
    #[prop(into)]
    hint: Signal<String>,
    /// What stands under both.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let words = use_cockpit().words.form();
    let id = entry_id(entry);
    view! {
        <div class="entry">
            <label for=id.clone()>{(words.label)(entry)}</label>
            <Typed entry/>
            <span class="hint" id=format!("{id}-hint")>{hint}</span>
            {children.map(|children| children())}
            <WrongLine entry/>
        </div>
    }
}

/// What is typed into.
#[component]
pub(super) fn Typed(
    entry: Entry,
    /// Its name, where no label stands beside it.
    #[prop(optional)]
    name: Option<&'static str>,
) -> impl IntoView {
    let draft = use_cockpit().draft;
    let id = entry_id(entry);
    let text = draft.part(move |form| form.text(entry).to_owned());
    let wrong = wrong(entry);
    let is_date = entry == Entry::Date;
    let described = if name.is_some() {
        format!("{id}-wrong")
    } else {
        format!("{id}-hint {id}-wrong")
    };
    view! {
        <input
            id=id
            type=if is_date { "date" } else { "text" }
            min=is_date.then_some("2025-01-01")
            max=is_date.then_some("2029-12-31")
            inputmode=(!is_date).then_some("text")
            autocomplete="off"
            aria-label=name
            aria-describedby=described
            aria-invalid=move || wrong.with(Option::is_some).to_string()
            prop:value=move || text.get()
            on:input=move |event| {
                draft.change(Step::In(entry), |form| form.set(entry, event_target_value(&event)));
            }
            on:change=move |_| draft.end_step()
        />
    }
}

/// What is wrong with an entry, if anything is.
#[component]
pub(super) fn WrongLine(entry: Entry) -> impl IntoView {
    let wrong = wrong(entry);
    view! {
        <p class="wrong" id=format!("{}-wrong", entry_id(entry)) aria-live="polite">
            {move || wrong.get()}
        </p>
    }
}

fn wrong(entry: Entry) -> Memo<Option<String>> {
    let cockpit = use_cockpit();
    let meant = cockpit.draft.meant();
    Memo::new(move |_| {
        meant.with(|meant| {
            let faults = meant.as_ref().err()?;
            let fault = faults.iter().find(|fault| fault.entry == entry)?;
            Some((cockpit.words.form().fault)(fault))
        })
    })
}

/// Brings an entry into sight, whatever it is folded into, and the keyboard to it.
pub(super) fn focus(entry: Entry) {
    use leptos::wasm_bindgen::JsCast;
    let Some(element) = document().get_element_by_id(&entry_id(entry)) else {
        return;
    };
    if let Ok(Some(folded)) = element.closest("details") {
        // A name that can be an attribute is never refused.
        let _ = folded.set_attribute("open", "");
    }
    if let Ok(element) = element.dyn_into::<web_sys::HtmlElement>() {
        // Refused only by an element that cannot have the focus.
        let _ = element.focus();
    }
}

fn entry_id(entry: Entry) -> String {
    let axis = |axis| match axis {
        Axis::Fore => "fore",
        Axis::Right => "right",
        Axis::Down => "down",
    };
    let id = match entry {
        Entry::Latitude => "latitude",
        Entry::Longitude => "longitude",
        Entry::Altitude => "altitude",
        Entry::Date => "date",
        Entry::Dip => "dip",
        Entry::Horizontal => "horizontal",
        Entry::Airspeed => "start-airspeed",
        Entry::Float(FloatEntry::YawPeriod) => "yaw-period",
        Entry::Float(FloatEntry::YawDamping) => "yaw-damping",
        Entry::Float(FloatEntry::LevelTilt) => "level-tilt",
        Entry::Float(FloatEntry::TiltDamping) => "tilt-damping",
        Entry::Float(FloatEntry::InertiaRatio) => "inertia-ratio",
        Entry::Float(FloatEntry::LiquidSpinUp) => "liquid-spin-up",
        Entry::Float(FloatEntry::Balance) => "balance",
        Entry::Float(FloatEntry::Friction) => "friction",
        Entry::Float(FloatEntry::Vibration) => "vibration",
        Entry::Float(FloatEntry::ReferenceHorizontal) => "reference-horizontal",
        Entry::Float(FloatEntry::ReferenceVertical) => "reference-vertical",
        Entry::Hard(along) => return format!("hard-{}", axis(along)),
        Entry::Soft(along, by) => return format!("soft-{}-{}", axis(along), axis(by)),
    };
    id.to_owned()
}

//! The draft that is open: what is done with it, its cues, and everything else that is told.

use super::cue_editor::Cues;
use super::entry::{entry, entry_id};
use super::{Look, button, press};
use crate::cockpit::use_cockpit;
use crate::download::download;
use crate::making::{Maker, use_maker};
use crate::words::MakingWords;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use lessons::demonstration::View;
use lessons::making::{Draft, Entry, Step};
use web_sys::HtmlElement;

const VIEWS: [View; 6] = [
    View::Rose,
    View::Track,
    View::Indicator,
    View::Reasons,
    View::Timeline,
    View::ErrorChart,
];

/// The bench with a draft on it.
#[component]
pub(super) fn Bench() -> impl IntoView {
    let cockpit = use_cockpit();
    let maker = use_maker();
    let words = cockpit.words.making();
    let plays = cockpit.part(|readout| readout.pause.is_none());
    let step = |words, way: usize| Look {
        idle: Signal::derive(move || !maker.ways_back()[way]),
        ..Look::of(Signal::stored(words))
    };
    let play = Look::of(Signal::derive(move || (words.play)(plays.get())));
    let preview = Look::of(Signal::derive(move || (words.preview)(maker.previews())));
    view! {
        <div class="bench-tools" role="group" aria-label=words.title>
            {press(play, move || maker.play())}
            {press(preview, move || maker.preview())}
            {button(words.save_file, move || save_file(maker))}
            {press(step(words.undo, 0), move || maker.undo())}
            {press(step(words.redo, 1), move || maker.redo())}
            {button(words.duplicate, move || {
                if let Some(draft) = maker.with_draft(Draft::demonstration) {
                    maker.begin_like(draft);
                }
            })}
        </div>
        {first_fault(maker, words)}
        {entry(Entry::Title, false)}
        <Cues/>
        <details>
            <summary>{words.trim}</summary>
            {entry(Entry::From, false)}
            {entry(Entry::To, false)}
            <div class="row">
                {button(words.start_here, move || maker.trim(Draft::start_at))}
                {button(words.end_here, move || maker.trim(Draft::end_at))}
            </div>
            {entry(Entry::Latitude, false)}
        </details>
        <details>
            <summary>{words.shown}</summary>
            <div class="views">{VIEWS.map(|view| view_box(maker, words, view)).collect_view()}</div>
        </details>
        <details>
            <summary>{words.told}</summary>
            {entry(Entry::LookFor, true)}
            {entry(Entry::Rule, true)}
            {figures(maker, words)}
            {entry(Entry::Name, false)}
        </details>
        {notes(maker, words)}
    }
}

/// What is to be mended first, with the way there.
fn first_fault(maker: Maker, words: &'static MakingWords) -> AnyView {
    let faults = maker.faults();
    let said = move || faults.with(|it| it.first().map(|first| (words.not_yet)(it.len(), first)));
    let there = move || {
        if let Some(entry) = faults.with_untracked(|it| it.first().and_then(|it| it.entry)) {
            if let Some(cue) = entry.cue() {
                maker.select(cue);
            }
            // The cue's entries are there once it is selected.
            request_animation_frame(move || focus(entry));
        }
    };
    let words = Signal::derive(move || said().unwrap_or_default());
    let look = Look {
        label: words,
        name: words,
        ..Look::named("", String::new())
    };
    view! {
        <div class="not-yet" id="not-yet" hidden=move || faults.with(Vec::is_empty)>
            {press(look, there)}
        </div>
    }
    .into_any()
}

/// Brings an entry into sight, whatever it is folded into, and the keyboard to it.
fn focus(entry: Entry) {
    let Some(element) = document().get_element_by_id(&entry_id(entry)) else {
        return;
    };
    if let Ok(Some(folded)) = element.closest("details") {
        // A name that can be an attribute is never refused.
        let _ = folded.set_attribute("open", "");
    }
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        // Refused only by an element that cannot have the focus.
        let _ = element.focus();
    }
}

fn save_file(maker: Maker) {
    let file = maker.with_draft(|draft| {
        let name = if draft.name().is_empty() {
            "demonstration"
        } else {
            draft.name()
        };
        (format!("{name}.json"), draft.demonstration().to_json())
    });
    if let Some((name, text)) = file {
        download(&name, "application/json", &text);
    }
}

fn view_box(maker: Maker, words: &'static MakingWords, view: View) -> AnyView {
    let shown = maker.part(move |draft| draft.views().contains(&view));
    view! {
        <label>
            <input
                type="checkbox"
                prop:checked=shown
                on:change=move |_| {
                    maker.change(Step::New, |draft| draft.toggle_view(view));
                }
            />
            {(words.view)(view)}
        </label>
    }
    .into_any()
}

/// The figures that texts can tell, and one more.
fn figures(maker: Maker, words: &'static MakingWords) -> AnyView {
    let cockpit = use_cockpit();
    let names = maker.part(|draft| {
        let names = draft.figures().keys().map(|name| format!("{{{name}}}"));
        names.collect::<Vec<_>>().join(", ")
    });
    view! {
        <p class="hint">{move || (words.figures)(&names())}</p>
        <div class="row">
            {button(words.measure, move || {
                let time = cockpit.now().time;
                maker.change(Step::New, |draft| draft.measure_lag_at(time));
            })}
        </div>
    }
    .into_any()
}

fn notes(maker: Maker, words: &'static MakingWords) -> AnyView {
    let count = maker.numbers(|draft| (0..draft.notes().len() as u32).collect());
    let row = move |index: usize| {
        let removes = (words.remove_note)(index + 1);
        view! {
            {entry(Entry::NoteMinutes(index), false)}
            {entry(Entry::NoteSay(index), true)}
            <div class="row">
                {press(Look::named(&removes, removes.clone()), move || {
                    maker.change(Step::New, |draft| draft.remove_note(index));
                })}
            </div>
        }
        .into_any()
    };
    view! {
        <details>
            <summary>{move || (words.notes)(count.get().len())}</summary>
            {move || (0..count.get().len()).map(row).collect_view()}
            <div class="row">
                {button(words.add_note, move || {
                    maker.change(Step::New, Draft::add_note);
                })}
            </div>
        </details>
    }
    .into_any()
}

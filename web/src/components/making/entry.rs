//! One entry: its label, its hint, what was typed, and what is wrong with it.

use crate::cockpit::use_cockpit;
use crate::making::use_maker;
use leptos::prelude::*;
use lessons::making::{Entry, Step};

/// An entry as a row; with `lines`, one of several lines.
pub(super) fn entry(entry: Entry, lines: bool) -> AnyView {
    let maker = use_maker();
    let words = use_cockpit().words.making();
    let id = entry_id(entry);
    let text = maker.part(move |draft| draft.text(entry));
    let faults = maker.faults();
    let wrong = move || {
        faults.with(|faults| {
            let fault = faults.iter().find(|it| it.entry == Some(entry))?;
            Some(sentence(&fault.said))
        })
    };
    let described = format!("{id}-hint {id}-wrong");
    let typed = move |event| {
        let text = event_target_value(&event);
        // Each word that is begun is a step of its own: an undo takes back what was just typed.
        let words = text.split_whitespace().count();
        let begins = text.ends_with(char::is_whitespace) || words == 0;
        maker.change(Step::In(entry), |draft| draft.type_in(entry, &text));
        if begins {
            maker.end_word();
        }
    };
    let invalid = move || wrong().is_some().to_string();
    let field = if lines {
        view! {
            <textarea
                id=id.clone()
                rows="2"
                aria-describedby=described
                aria-invalid=invalid
                prop:value=text
                on:input=typed
                on:change=move |_| maker.end_step()
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                id=id.clone()
                type="text"
                autocomplete="off"
                aria-describedby=described
                aria-invalid=invalid
                prop:value=text
                on:input=typed
                on:change=move |_| maker.end_step()
            />
        }
        .into_any()
    };
    let hint = (words.hint)(entry);
    view! {
        <div class="made-entry" class:lines=lines>
            <label for=id.clone()>{(words.label)(entry)}</label>
            {field}
            <span class="hint" id=format!("{id}-hint") hidden=hint.is_empty()>{hint}</span>
            <p class="wrong" id=format!("{id}-wrong") aria-live="polite">{wrong}</p>
        </div>
    }
    .into_any()
}

/// What is wrong as a sentence.
fn sentence(said: &str) -> String {
    let mut sentence = format!("{said}.");
    if let Some(first) = sentence.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    sentence
}

/// The id of an entry's field.
pub(super) fn entry_id(entry: Entry) -> String {
    match entry {
        Entry::Title => "made-title".to_owned(),
        Entry::Name => "made-name".to_owned(),
        Entry::From => "made-from".to_owned(),
        Entry::To => "made-to".to_owned(),
        Entry::Latitude => "made-latitude".to_owned(),
        Entry::LookFor => "made-look-for".to_owned(),
        Entry::Rule => "made-rule".to_owned(),
        Entry::CueTime(id) => format!("cue-{id}-time"),
        Entry::CueText(id) => format!("cue-{id}-text"),
        Entry::CueChoice(id, index) => format!("cue-{id}-choice-{index}"),
        Entry::CueLatitude(id) => format!("cue-{id}-latitude"),
        Entry::NoteMinutes(index) => format!("note-{index}-minutes"),
        Entry::NoteSay(index) => format!("note-{index}-say"),
    }
}

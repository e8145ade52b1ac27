//! Cues: put them, list them, and change the one that is selected.

use super::entry::entry;
use super::{Look, button, press};
use crate::cockpit::use_cockpit;
use crate::making::{Maker, key_of, use_maker};
use crate::words::MakingWords;
use leptos::prelude::*;
use lessons::demonstration::{Act, Answer, Compare, Cue};
use lessons::making::{Entry, Kind, Step};

/// The cues.
#[component]
pub(super) fn Cues() -> impl IntoView {
    let cockpit = use_cockpit();
    let maker = use_maker();
    let words = cockpit.words.making();
    let all = maker.part(|draft| {
        let cues = draft.cues().iter();
        cues.map(|it| (it.id, it.cue.at_s, (words.cue)(&it.cue)))
            .collect::<Vec<_>>()
    });
    let row = move |(id, at, said): (u32, f64, String)| {
        let line = format!("{} {said}", (words.time)(at));
        let look = Look {
            class: "cue-line",
            chosen: Signal::derive(move || maker.selected() == Some(id)),
            ..Look::named(&line, line.clone())
        };
        view! { <li>{press(look, move || maker.select(id))}</li> }.into_any()
    };
    let put = move |(index, kind): (usize, Kind)| {
        let name = (words.kind)(kind);
        let look = Look {
            key: key_of(index),
            ..Look::named(name, name.to_owned())
        };
        press(look, move || maker.put(kind))
    };
    view! {
        <section class="cues" aria-label=words.cues>
            <p class="hint">{words.keys_hint}</p>
            <div class="put-cues">
                {Kind::ALL.into_iter().enumerate().map(put).collect_view()}
            </div>
            <ol class="cue-list">{move || all().into_iter().map(row).collect_view()}</ol>
            <Editor/>
        </section>
    }
}

/// What the selected cue is made of: its number, its kind, how many choices it has, if any at all,
/// and whether a latitude. The editor is built anew only when that changes.
fn shape(id: u32, cue: &Cue) -> Vec<u32> {
    let kind = Kind::of(&cue.act);
    let kind = Kind::ALL.iter().position(|it| *it == kind);
    let choices = match &cue.act {
        Act::Ask(question) => match &question.answer {
            Answer::Typed { choices, .. } => choices.len() + 1,
            Answer::Figure(_) => 0,
        },
        _ => 0,
    };
    let latitude = matches!(cue.act, Act::Compare(Compare::LatitudeDeg(_)));
    vec![
        id,
        kind.unwrap_or_default() as u32,
        choices as u32,
        u32::from(latitude),
    ]
}

#[component]
fn Editor() -> impl IntoView {
    let maker = use_maker();
    let words = use_cockpit().words.making();
    let selected = maker.numbers(move |draft| {
        let id = maker.selected();
        id.and_then(|id| Some(shape(id, draft.cue(id)?)))
            .unwrap_or_default()
    });
    move || match *selected.get() {
        [id, kind, choices, latitude] => {
            let kind = *Kind::ALL.get(kind as usize)?;
            Some(editor(
                maker,
                words,
                (id, kind),
                choices as usize,
                latitude == 1,
            ))
        }
        _ => None,
    }
}

fn editor(
    maker: Maker,
    words: &'static MakingWords,
    (id, kind): (u32, Kind),
    choices: usize,
    latitude: bool,
) -> AnyView {
    let worded = matches!(kind, Kind::Chapter | Kind::Caption | Kind::Ask);
    let choice = |index| choice(maker, words, id, index);
    view! {
        <fieldset class="cue-editor">
            <legend>{(words.kind)(kind)}</legend>
            {entry(Entry::CueTime(id), false)}
            {worded.then(|| entry(Entry::CueText(id), kind != Kind::Chapter))}
            {offers(maker, words, id, kind)}
            {latitude.then(|| entry(Entry::CueLatitude(id), false))}
            {(1..choices).map(|number| choice(number - 1)).collect_view()}
            <div class="row">
                {(choices > 0).then(|| button(words.add_choice, move || {
                    maker.change(Step::New, |draft| draft.add_choice(id));
                }))}
                {button(words.duplicate_cue, move || {
                    let copy = maker.change(Step::New, |draft| draft.duplicate_cue(id));
                    if let Some(copy) = copy.flatten() {
                        maker.select(copy);
                    }
                })}
                {button(words.delete_cue, move || {
                    maker.change(Step::New, |draft| draft.remove_cue(id));
                })}
            </div>
        </fieldset>
    }
    .into_any()
}

/// What a cue can be set to, to choose from.
fn offers(maker: Maker, words: &'static MakingWords, id: u32, kind: Kind) -> Option<AnyView> {
    let offers = maker.part(move |draft| {
        let cue = draft.cue(id);
        let offers = cue.map_or_else(Vec::new, |cue| draft.offers(cue));
        let now = offers
            .iter()
            .position(|it| Some(it) == cue.map(|cue| &cue.act));
        (offers.iter().map(words.offer).collect::<Vec<_>>(), now)
    });
    if untrack(|| offers().0.is_empty()) {
        return None;
    }
    let name = format!("cue-{id}-offer");
    let chosen = move |event| {
        let index = event_target_value(&event).parse::<usize>();
        maker.change(Step::New, |draft| {
            let act = draft.cue(id).and_then(|cue| {
                let offers = draft.offers(cue);
                index.ok().and_then(|index| offers.get(index).cloned())
            });
            if let Some(act) = act {
                draft.set_act(id, act);
            }
        });
    };
    let view = view! {
        <div class="made-entry">
            <label for=name.clone()>{(words.offered)(kind)}</label>
            <select
                id=name
                prop:value=move || offers().1.unwrap_or_default().to_string()
                on:change=chosen
            >
                {move || {
                    let (said, now) = offers();
                    said.into_iter()
                        .enumerate()
                        .map(|(index, said)| view! {
                            <option value=index.to_string() selected=now == Some(index)>
                                {said}
                            </option>
                        })
                        .collect_view()
                }}
            </select>
        </div>
    };
    Some(view.into_any())
}

/// A choice of a question: its words, whether it is right, and the way to take it out.
fn choice(maker: Maker, words: &'static MakingWords, id: u32, index: usize) -> AnyView {
    let right = maker.part(move |draft| match draft.cue(id).map(|it| &it.act) {
        Some(Act::Ask(question)) => match &question.answer {
            Answer::Typed { right, .. } => *right == index,
            Answer::Figure(_) => false,
        },
        _ => false,
    });
    let says = (words.right)(index + 1);
    let removes = (words.remove_choice)(index + 1);
    view! {
        <div class="choice-line">
            {entry(Entry::CueChoice(id, index), false)}
            <input
                type="radio"
                name=format!("cue-{id}-right")
                aria-label=says.clone()
                title=says
                prop:checked=right
                on:change=move |_| {
                    maker.change(Step::New, |draft| draft.set_right(id, index));
                }
            />
            {press(Look::named("×", removes), move || {
                maker.change(Step::New, |draft| draft.remove_choice(id, index));
            })}
        </div>
    }
    .into_any()
}

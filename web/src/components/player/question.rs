//! A question to the class: its choices, the hands that go up, and the answer of the flight.

use crate::cockpit::{Cockpit, use_cockpit};
use crate::components::controls::keep_focus;
use leptos::prelude::*;
use lessons::demonstration::{Act, Posed};

/// The question that was asked last, until a chapter puts it away.
#[component]
pub(super) fn Question() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let cue = Memo::new(move |_| player.standing().question);
    let posed = move || {
        let cue = cue.get()?;
        let flown = player.open_now()?;
        match &flown.demonstration().cues.get(cue)?.act {
            Act::Ask(question) => Some((
                cue,
                flown.posed(question).unwrap_or_else(|| Posed {
                    // What never came to be leaves nothing to choose from.
                    question: flown.said(&question.question),
                    choices: Vec::new(),
                    right: 0,
                    measured: flown.measured_of(question).map(|it| it.words()),
                }),
            )),
            _ => None,
        }
    };
    let wrong = RwSignal::new(String::new());
    let revealed = Memo::new(move |_| player.standing().revealed_at.is_some());
    move || {
        let (cue, posed) = posed()?;
        wrong.set(String::new());
        let measured = posed.measured.clone();
        let choices = (0..posed.choices.len())
            .map(|choice| view! { <Choice cue choice posed=posed.clone() revealed wrong/> })
            .collect_view();
        Some(view! {
            <div class="question" role="group" aria-labelledby="question">
                <p id="question">{posed.question}</p>
                <div class="choices">{choices}</div>
                <p class="wrong" role="alert">{move || wrong.get()}</p>
                <p class="measured" hidden=move || !revealed.get()>
                    {measured.map(|it| (words.measured)(&it))}
                </p>
            </div>
        })
    }
}

/// One of the choices. Whether it is right is said only when the question is answered.
#[component]
fn Choice(
    cue: usize,
    choice: usize,
    posed: Posed,
    revealed: Memo<bool>,
    wrong: RwSignal<String>,
) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let answers = cockpit.player.answers;
    let is_right = posed.right == choice;
    let chosen = move || answers.chosen(cue) == Some(choice);
    let verdict = move || match (revealed.get(), is_right, chosen()) {
        (true, true, _) => Some(("right", "✓", words.right)),
        (true, false, true) => Some(("wrong", "✗", words.not_right)),
        _ => None,
    };
    let name = posed.choices.get(choice).cloned().unwrap_or_default();
    let hands_for = (words.hands_for)(&name);
    let type_hands = move |event: web_sys::Event| {
        let typed = event_target_value(&event);
        wrong.set(match answers.count(cue, choice, &typed) {
            Ok(()) => String::new(),
            Err(()) => (words.hands_wrong)(typed.trim()),
        });
    };
    let counted = move || {
        let count = answers.hands(cue, choice).filter(|_| revealed.get());
        count.map(|count| bar(cockpit, count, answers.share(cue, choice)))
    };
    view! {
        <div class="choice-of-class" data-verdict=move || verdict().map(|it| it.0)>
            <div class="choose">
                <button
                    type="button"
                    aria-pressed=move || chosen().to_string()
                    on:mousedown=keep_focus
                    on:click=move |_| {
                        if !revealed.get_untracked() {
                            answers.choose(cue, choice);
                        }
                    }
                >
                    {name}
                    {move || verdict().map(|(_, mark, word)| view! {
                        " "
                        <strong class="verdict"><span aria-hidden="true">{mark}</span>" "{word}</strong>
                    })}
                </button>
                <input
                    type="text"
                    class="hands"
                    inputmode="numeric"
                    autocomplete="off"
                    maxlength="6"
                    aria-label=hands_for
                    placeholder=words.hands
                    prop:value=move || answers.hands(cue, choice).map_or_else(String::new, |it| it.to_string())
                    on:change=type_hands
                />
            </div>
            {counted}
        </div>
    }
}

/// How many hands, as a bar and as a number.
fn bar(cockpit: Cockpit, count: u16, share: u16) -> impl IntoView {
    view! {
        <div class="hands-bar">
            <span class="bar" style:width=format!("{share}%")></span>
            <span>{(cockpit.words.demonstrations().counted)(count)}</span>
        </div>
    }
}

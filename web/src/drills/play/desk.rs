//! The flight that counts: what is seen, the controls at the thumb, and what help costs.

use super::AskButton;
use super::ask::Ask;
use super::attempt::Still;
use super::board::use_board;
use super::views::{Card, Dial};
use crate::clock::Rate;
use crate::components::controls::keep_focus;
use leptos::html;
use leptos::prelude::*;
use lessons::drill::Kind;
use lessons::drill::record::Help;

/// Changes of the bank, in the order of their buttons, degrees.
const BANKS: [i8; 4] = [-5, -1, 1, 5];

/// The flight, from its beginning to its end.
#[component]
pub(super) fn Desk() -> impl IntoView {
    let board = use_board();
    let desk = NodeRef::<html::Div>::new();
    Effect::new(move || {
        if let Some(desk) = desk.get() {
            // The controls of a small screen come into sight, and the next key goes to them.
            request_animation_frame(move || {
                let _ = desk.focus();
                desk.scroll_into_view();
            });
        }
    });
    board
        .of(|attempt| (attempt.task().clone(), attempt.put().allowed.clone()))
        .map(|(task, allowed)| {
            let kind = task.id.kind;
            let has_card = board.part(|it| it.has_card);
            let card = move || {
                has_card
                    .get()
                    .unwrap_or_default()
                    .then(|| view! { <Card/> })
            };
            let covered = board.part(|it| !it.cover.shows_heading());
            let covered = move || covered.get().unwrap_or_default().then_some("heading");
            let dial = (kind == Kind::SetGyro).then(|| view! { <Dial/> });
            view! {
                <div class="desk-of-drill" tabindex="-1" node_ref=desk>
                    <p class="question" id="question">{task.question}</p>
                    <div class="pictures" data-covered=covered>{card} {dial}</div>
                    <Instruments kind/>
                    <Standing/>
                    <div class="pad">
                        {if kind == Kind::SetGyro {
                            view! { <Gyro/> }.into_any()
                        } else {
                            view! { <Banks/> }.into_any()
                        }}
                        <Acts kind allowed/>
                    </div>
                </div>
            }
        })
}

/// What the task lets a pilot read.
#[component]
fn Instruments(kind: Kind) -> impl IntoView {
    let board = use_board();
    let (words, page) = (board.words, board.page);
    let bank = board.part(|it| {
        it.moment
            .map(|it| it.motion.bank.to_degrees().round() as i32)
    });
    let asked = board.part(|it| it.bank_asked);
    let turn = board.part(|it| {
        let moment = it.moment?;
        Some((10.0 * moment.motion.rate_of_turn.to_degrees()).round() as i32)
    });
    let time = board.part(|it| it.moment.map_or(0.0, |it| it.time.floor()));
    let speed = board.part(|it| {
        let moment = it.moment?;
        Some((moment.motion.airspeed / compass::unit::KNOT).round() as i32)
    });
    let settings = board.part(|it| it.settings);
    // By the compass alone is not by the clock.
    let has_clock = kind != Kind::RollOut;
    let item =
        |name: &'static str, id: &'static str, value: Signal<String>, note: Signal<String>| {
            view! {
                <div class="value">
                    <span class="value-name">{name}</span>
                    <span class="value-text" id=id>{move || value.get()}</span>
                    <span class="value-note">{move || note.get()}</span>
                </div>
            }
        };
    let none = Signal::stored(String::new());
    let bank_text =
        Signal::derive(move || bank.get().flatten().map_or(String::new(), page.bank_value));
    let asked_text = Signal::derive(move || asked.get().map_or(String::new(), words.bank_asked));
    let turn_text =
        Signal::derive(move || turn.get().flatten().map_or(String::new(), page.rate_value));
    let time_text = Signal::derive(move || time.get().map_or(String::new(), words.clock_value));
    let speed_text = Signal::derive(move || {
        speed
            .get()
            .flatten()
            .map_or(String::new(), page.airspeed_value)
    });
    let set_text = Signal::derive(move || settings.get().map_or(String::new(), words.settings));
    let piloted = kind != Kind::SetGyro;
    view! {
        <div class="instruments">
            {item(page.bank, "bank", bank_text, if piloted { asked_text } else { none })}
            {(kind == Kind::TimedTurn)
                .then(|| item(page.rate_of_turn, "rate-of-turn", turn_text, none))}
            {has_clock.then(|| item(words.clock, "clock", time_text, if piloted { none } else { set_text }))}
            {(!piloted).then(|| item(page.airspeed, "airspeed", speed_text, none))}
        </div>
    }
}

/// Why nothing moves, or how fast it does.
#[component]
fn Standing() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let standing = board.part(|it| (it.still, it.rate));
    let said = move || match standing.get() {
        Some((Some(Still::Asleep), _)) => words.asleep.to_owned(),
        Some((Some(_), _)) => words.paused.to_owned(),
        Some((None, rate)) if rate != Rate::REAL => (words.rate)(rate.factor()),
        _ => String::new(),
    };
    view! { <p class="standing" id="standing" role="status">{said}</p> }
}

/// Bank by fives and ones, and level.
#[component]
fn Banks() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let button = move |degrees: i8| {
        let key = match degrees {
            -5 => "ArrowLeft",
            -1 => "Shift+ArrowLeft",
            1 => "Shift+ArrowRight",
            _ => "ArrowRight",
        };
        let by = degrees.unsigned_abs();
        let (before, after) = if degrees < 0 {
            ("◀ ", "")
        } else {
            ("", " ▶")
        };
        view! {
            <button
                type="button"
                aria-label=(words.bank_by)(degrees)
                aria-keyshortcuts=key
                on:mousedown=keep_focus
                on:click=move |_| board.ask(Ask::Bank(degrees))
            >
                <span aria-hidden="true">{before}</span>
                {format!("{by}°")}
                <span aria-hidden="true">{after}</span>
            </button>
        }
    };
    let [left, a_little_left, a_little_right, right] = BANKS;
    view! {
        <div class="banks" role="group" aria-label=words.controls>
            {button(left)}
            {button(a_little_left)}
            <AskButton ask=Ask::Level label=words.level.to_owned() key="l"/>
            {button(a_little_right)}
            {button(right)}
        </div>
    }
}

/// Sets the indicator, and how fast it goes.
#[component]
fn Gyro() -> impl IntoView {
    let words = use_board().words;
    view! {
        <div class="gyro" role="group" aria-label=words.controls>
            <AskButton
                ask=Ask::SetIndicator
                label=words.set_indicator.to_owned()
                key="s"
                class="strong"
            />
            <AskButton ask=Ask::SpeedUp label=words.speed_up.to_owned() key="+"/>
        </div>
    }
}

/// The end of the flight, and help with what it costs.
#[component]
fn Acts(kind: Kind, allowed: Vec<Help>) -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let still = board.part(|it| it.still.is_some());
    let help = move |help: Help| (words.help)(help, allowed.contains(&help));
    let pause = help(Help::Pause);
    let pause = Signal::derive(move || {
        if still.get().unwrap_or_default() {
            words.fly_on
        } else {
            pause
        }
        .to_owned()
    });
    // Slower helps a pilot; where nobody flies, it is the way back from faster too.
    let slower = help(Help::SlowMotion).to_owned();
    let uncover = help(Help::Uncover).to_owned();
    let on = move || {
        let stands = still.get().unwrap_or_default();
        stands.then(|| {
            view! {
                <AskButton ask=Ask::GoOn label=words.fly_on.to_owned() key="Space" class="strong"/>
            }
        })
    };
    let pace = (kind == Kind::SetGyro).then(|| words.slow_down.to_owned());
    view! {
        <div class="acts">
            {on}
            <AskButton ask=Ask::Finish label=words.finish.to_owned() key="f"/>
            <AskButton ask=Ask::Tell label=words.tell.to_owned() key="t" class="quiet"/>
            <details class="helps">
                <summary>{words.helps}</summary>
                <div class="acts">
                    <AskButton ask=Ask::GoOn label=pause key="Space"/>
                    <AskButton ask=Ask::SlowDown label=pace.unwrap_or(slower) key="-"/>
                    <AskButton ask=Ask::Uncover label=uncover key="u"/>
                </div>
            </details>
        </div>
    }
}

//! The flight again, with the reasons beside the card.

use super::AskButton;
use super::ask::Ask;
use super::board::use_board;
use super::views::{Bowl, Card, Dial, Plan, Torques};
use crate::clock::Rate;
use compass::cause::explain;
use compass::simulation::STEP;
use leptos::prelude::*;

/// Steps that one move of the scrub bar goes by: a tenth of a second.
const SCRUB: u64 = compass::simulation::STEPS_PER_SECOND / 10;

/// Card, readings, what stands beside it, and the bar.
#[component]
pub(super) fn Replay() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let beside = RwSignal::new(0_usize);
    let has_dial = board.part(|it| it.indicator.is_some());
    let view_button = move |(index, label): (usize, &'static str)| {
        view! {
            <button
                type="button"
                aria-pressed=move || (beside.get() == index).to_string()
                on:click=move |_| beside.set(index)
            >
                {label}
            </button>
        }
    };
    view! {
        <section class="replay" aria-label=words.replay>
            <Card/>
            <Figures/>
            {move || has_dial.get().unwrap_or_default().then(|| view! { <Dial/> })}
            <div class="scrub">
                <Scrub/>
                <Pace/>
            </div>
            <div class="views" role="group" aria-label=words.beside>
                {words.views.into_iter().enumerate().map(view_button).collect_view()}
            </div>
            {move || match beside.get() {
                0 => view! { <Plan/> }.into_any(),
                1 => view! { <Bowl/> <Reason/> }.into_any(),
                _ => view! { <Torques/> <Reason/> }.into_any(),
            }}
        </section>
    }
}

/// Heading, compass and their difference in figures.
#[component]
fn Figures() -> impl IntoView {
    let board = use_board();
    let page = board.page;
    let heading = board.part(|it| it.moment.map(|it| it.motion.heading.whole_degrees()));
    let compass = board.part(|it| it.moment.map(|it| it.reading.compass.whole_degrees()));
    let difference = board.part(|it| it.moment.map(|it| it.difference()));
    let three =
        |it: Memo<Option<Option<u16>>>| move || it.get().flatten().map(|it| format!("{it:03}°"));
    view! {
        <p class="figures">
            <span class="of-compass">
                <crate::components::marks::CompassMark/> " " {page.compass} " "
                <strong id="compass">{three(compass)}</strong>
            </span>
            <span class="of-heading">
                <crate::components::marks::HeadingMark/> " " {page.heading} " "
                <strong id="heading">{three(heading)}</strong>
            </span>
            <span>{move || difference.get().flatten().map(page.difference)}</span>
        </p>
    }
}

/// Why the card does what it does at the moment that is seen.
#[component]
fn Reason() -> impl IntoView {
    let board = use_board();
    let field = board.of(|it| it.scenario().map(|it| it.situation().field));
    let sentence = board.part(move |it| {
        let (moment, field) = it.moment.zip(field.flatten())?;
        Some((board.page.why.sentence)(&explain(&moment, &field)))
    });
    view! { <p id="reason">{move || sentence.get().flatten()}</p> }
}

#[component]
fn Scrub() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let span = board.part(|it| it.span);
    let step = board.part(|it| it.step);
    let time = move || step.get().unwrap_or_default() as f64 * STEP;
    let look = move |event| {
        if let Ok(step) = event_target_value(&event).parse() {
            board.ask(Ask::LookAt(step));
        }
    };
    view! {
        <input
            type="range"
            class="slider"
            id="scrub"
            aria-label=words.moment
            min=move || span.get().unwrap_or_default()[0].to_string()
            max=move || span.get().unwrap_or_default()[1].to_string()
            step=SCRUB.to_string()
            prop:value=move || step.get().unwrap_or_default().to_string()
            aria-valuetext=move || (words.moment_value)(time())
            on:input=look
        />
        <output class="clock" for="scrub">{move || (words.moment_value)(time())}</output>
    }
}

/// Play or pause, slower and faster.
#[component]
fn Pace() -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let still = board.part(|it| it.still.is_some());
    let label = Signal::derive(move || {
        let stands = still.get().unwrap_or(true);
        if stands { words.play } else { words.pause }.to_owned()
    });
    let rate = board.part(|it| it.rate);
    let said = move || {
        let rate = rate.get().unwrap_or(Rate::REAL);
        (rate != Rate::REAL).then(|| (words.rate)(rate.factor()))
    };
    view! {
        <div class="acts">
            <AskButton ask=Ask::GoOn label key="Space" class="wide"/>
            <AskButton ask=Ask::SlowDown label=words.slow_down.to_owned() key="-"/>
            <AskButton ask=Ask::SpeedUp label=words.speed_up.to_owned() key="+"/>
            <span class="standing" role="status">{said}</span>
        </div>
    }
}

//! The compass swing: an aircraft on the ramp, its two adjusters, and the half-error rule.

use super::board::{Board, use_board};
use super::fields::{Place, Segments, Typed};
use super::heeling::InTheBank;
use super::iron::Iron;
use super::key::Key;
use super::meant::{OnTheRamp, adjuster_text};
use super::swing_record::Record;
use crate::drawn::Drawn;
use compass::heading::MagneticHeading;
use drawing::rose::{RoseView, rose};
use kurbo::Size;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use lessons::sheet::deviation::CAUTION;

/// The cardinal headings of the adjustment, in its order, the key for each, and the part of what
/// is found that stays: none on the first two, half on the others.
const STEPS: [(&str, &str, f64); 4] = [
    ("360", "n", 0.0),
    ("90", "e", 0.0),
    ("180", "s", 0.5),
    ("270", "w", 0.5),
];

/// How far off a heading the aircraft may stand and still be on it, rad: far less than is read.
const ON_HEADING: f64 = 1e-6;

/// The swing.
#[component]
pub(crate) fn Swing() -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let ramp = board.meant(|reader| reader.ramp());
    view! {
        <section class="form" aria-label=words.form>
            <p>{words.about}</p>
            <Iron/>
            <Place/>
            <Segments key=Key::Electric/>
            <p class="caution-here">{CAUTION}</p>
        </section>
        <section class="results" aria-label=words.results>
            <h2>{words.title}</h2>
            {move || board.is_wrong().then(|| view! { <p class="mend">{board.own().mend}</p> })}
            <div class="ramp-and-steps">
                <OnRamp ramp/>
                <Adjustment ramp/>
            </div>
            <Record ramp/>
            <InTheBank ramp/>
        </section>
    }
}

/// The aircraft, what its compass reads, and the ways to turn it.
#[component]
fn OnRamp(ramp: Memo<Option<OnTheRamp>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let reading = move || {
        let it = ramp.get()?;
        Some((
            it.heading,
            it.ramp.reading(it.heading)?,
            it.ramp.deviation(it.heading)?,
        ))
    };
    let figure = move |of: fn(MagneticHeading, compass::heading::CompassHeading) -> u16| {
        reading().map_or_else(
            || "–".to_owned(),
            |(heading, compass, _)| format!("{:03}°", of(heading, compass)),
        )
    };
    let said = move || reading().map(|(.., deviation)| (words.deviation)(deviation.to_degrees()));
    let described = Signal::derive(move || {
        let said = said().unwrap_or_default();
        (words.rose)(
            &figure(|it, _| it.whole_degrees()),
            &figure(|_, it| it.whole_degrees()),
            &said,
        )
    });
    let button = move |(degrees, key, _): (&'static str, &'static str, f64), name: &'static str| {
        let here = move || is_on(&ramp.get(), degrees);
        view! {
            <button
                type="button"
                aria-pressed=move || here().to_string()
                aria-keyshortcuts=key
                on:click=move |_| board.set(Key::Ramp, degrees)
            >
                {name}
            </button>
        }
    };
    let press = move |event: KeyboardEvent| {
        let typed = event.target().is_some_and(|target| {
            use leptos::wasm_bindgen::JsCast;
            target
                .dyn_into::<web_sys::HtmlInputElement>()
                .is_ok_and(|it| it.type_() == "text")
        });
        let plain = !(event.ctrl_key() || event.meta_key() || event.alt_key());
        let key = event.key().to_lowercase();
        if let Some((degrees, ..)) = STEPS
            .iter()
            .find(|(_, it, _)| plain && !typed && *it == key)
        {
            event.prevent_default();
            board.set(Key::Ramp, *degrees);
        }
    };
    view! {
        <div class="ramp" role="group" aria-label=words.ramp on:keydown=press>
            <dl class="answers">
                <div class="answer heading-answer">
                    <dt>{board.words.heading}</dt>
                    <dd id="ramp-heading">{move || figure(|it, _| it.whole_degrees())}</dd>
                </div>
                <div class="answer compass-answer">
                    <dt>{board.words.compass}</dt>
                    <dd id="ramp-compass">{move || figure(|_, it| it.whole_degrees())}</dd>
                </div>
                <div class="answer">
                    <dt>{words.deviation_name}</dt>
                    <dd class="words" id="ramp-deviation" aria-live="polite">{said}</dd>
                </div>
            </dl>
            <div class="take-home">
                {STEPS.into_iter().zip(words.cardinals).map(|(step, name)| button(step, name)).collect_view()}
            </div>
            <Typed key=Key::Ramp/>
            {move || {
                let (heading, compass, _) = reading()?;
                Some(view! {
                    <Drawn
                        id="ramp-rose"
                        title=words.ramp.to_owned()
                        description=described
                        size=Size::new(260.0, 260.0)
                        draw=move |size| rose(&RoseView {
                            heading,
                            reading: compass,
                            show_heading: true,
                            show_compass: true,
                        }, size)
                    />
                })
            }}
        </div>
    }
}

/// The four steps of the adjustment and the adjusters.
#[component]
fn Adjustment(ramp: Memo<Option<OnTheRamp>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let step = Memo::new(move |_| board.choice(Key::Step).get().parse::<usize>().unwrap_or(0));
    let wrong = board.wrong(Key::Step);
    let item = move |index: usize| {
        let current = move || (step.get() == index).then_some("step");
        let done = move || if step.get() > index { words.done } else { "" };
        view! {
            <li aria-current=current data-done=move || (step.get() > index).to_string()>
                {words.steps[index]}" "<span>{done}</span>
            </li>
        }
    };
    let ready = move || {
        STEPS
            .get(step.get())
            .is_some_and(|(degrees, ..)| is_on(&ramp.get(), degrees))
    };
    let take_out = move |_| {
        let (Some((_, _, keep)), true) = (STEPS.get(step.get_untracked()), untrack(ready)) else {
            return;
        };
        let Some(it) = ramp.get_untracked() else {
            return;
        };
        let found = it.ramp.deviation(it.heading).unwrap_or(0.0);
        let adjusters = it.ramp.brought_to(it.heading, keep * found).adjusters();
        board.set(Key::NorthSouth, adjuster_text(adjusters.north_south));
        board.set(Key::EastWest, adjuster_text(adjusters.east_west));
        next(board, step.get_untracked());
    };
    let by_hand = move |_| {
        if untrack(ready) {
            next(board, step.get_untracked());
        }
    };
    view! {
        <div class="adjustment">
            <h3>{words.adjustment}</h3>
            <ol class="steps">{(0..STEPS.len()).map(item).collect_view()}</ol>
            <p class="hint" id="next" aria-live="polite">
                {move || (words.next)(step.get(), ready())}
            </p>
            <p class="wrong">{move || wrong.get()}</p>
            <div class="take-home">
                <button
                    type="button"
                    id="take-out"
                    aria-disabled=move || (!ready()).to_string()
                    on:click=take_out
                >
                    {move || words.take_out[step.get().min(3)]}
                </button>
                <button
                    type="button"
                    aria-disabled=move || (!ready()).to_string()
                    on:click=by_hand
                >
                    {words.by_hand}
                </button>
            </div>
            <Typed key=Key::NorthSouth slides=[-6000.0, 6000.0, 20.0]/>
            <Typed key=Key::EastWest slides=[-6000.0, 6000.0, 20.0]/>
            <p class="hint">{words.half_error}</p>
        </div>
    }
}

fn next(board: Board, step: usize) {
    board.set(Key::Step, (step + 1).min(STEPS.len()).to_string());
}

/// Whether the aircraft stands on a heading.
fn is_on(ramp: &Option<OnTheRamp>, degrees: &str) -> bool {
    let there = MagneticHeading::from_degrees(degrees.parse().unwrap_or(0.0));
    let stands = ramp.as_ref().map(|it| it.heading.right_of(there).abs());
    stands.is_some_and(|off| off < ON_HEADING)
}

/// Everything as it was before the swing.
pub(crate) fn start_over(board: Board) {
    for (key, text) in [
        (Key::Step, "0"),
        (Key::NorthSouth, "0"),
        (Key::EastWest, "0"),
        (Key::Ramp, "0"),
        (Key::Swung, "no"),
        (Key::Electric, "off"),
    ] {
        board.set(key, text);
    }
}

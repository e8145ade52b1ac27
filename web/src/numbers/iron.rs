//! An aircraft's iron that is set by hand, and worked examples of it.

use super::board::{Board, use_board};
use super::fields::{Segments, Typed};
use super::key::Key;
use super::meant::Reader;
use super::swing::start_over;
use compass::deviation::{HARD_IRON, SOFT_IRON};
use leptos::prelude::*;
use lessons::swing::Ramp;

/// Sliders of hard iron, in nanotesla: as far as the adjusters go.
const HARD: [f64; 3] = [-6000.0, 6000.0, 100.0];
/// Sliders of soft iron.
const SOFT: [f64; 3] = [-0.2, 0.2, 0.01];

/// Worked examples: hard iron forward, right, down in nanotesla, and soft iron row by row. The
/// aircraft are inventions: one for each thing that a swing can find.
const EXAMPLES: [([i32; 3], [&str; 9]); 3] = [
    ([3200, -1600, 0], ["0"; 9]),
    (
        [0, 0, 0],
        ["0.07", "0", "0", "0", "-0.07", "0", "0", "0", "0"],
    ),
    (
        [0, 0, 5000],
        ["0", "0", "0", "0", "0", "0", "0", "0", "-0.05"],
    ),
];

impl Reader<'_> {
    /// The iron as it is set; the seed's where it is hidden.
    pub(crate) fn iron(&mut self, hidden: Ramp) -> Option<Ramp> {
        if self.choice(Key::Iron) == "hidden" {
            return Some(hidden);
        }
        let hard = [0, 1, 2].map(|part| self.number(Key::Hard(part), HARD_IRON, &[]));
        let soft = [0, 1, 2].map(|row| {
            [0, 1, 2].map(|column| self.number(Key::Soft(3 * row + column), SOFT_IRON, &[]))
        });
        let whole = |row: [Option<f64>; 3]| {
            let [x, y, z] = row;
            Some([x?, y?, z?])
        };
        let [a, b, c] = soft.map(whole);
        hidden.with_iron(whole(hard)?, [a?, b?, c?]).ok()
    }
}

/// Hidden iron by its number, or iron by hand.
#[component]
pub(crate) fn Iron() -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let iron = board.choice(Key::Iron);
    let another = move |_| {
        let seed = untrack(|| board.read(|reader| reader.seed())).unwrap_or(0);
        board.set(Key::Seed, ((seed + 1) % 1_000_000).to_string());
        start_over(board);
    };
    view! {
        <Segments key=Key::Iron/>
        {move || match iron.get() {
            "set" => view! { <ByHand/> }.into_any(),
            _ => view! { <Typed key=Key::Seed/> }.into_any(),
        }}
        <div class="take-home">
            <Show when=move || iron.get() == "hidden">
                <button type="button" on:click=another>{words.another}</button>
            </Show>
            <button type="button" on:click=move |_| start_over(board)>{words.start_over}</button>
        </div>
        <details class="examples">
            <summary>{words.examples}</summary>
            <ul>
                {EXAMPLES.iter().zip(words.example).map(|(example, [name, what])| view! {
                    <li>
                        <button type="button" on:click=move |_| set(board, example)>{name}</button>
                        " "{what}
                    </li>
                }).collect_view()}
            </ul>
        </details>
    }
}

fn set(board: Board, (hard, soft): &([i32; 3], [&'static str; 9])) {
    board.set(Key::Iron, "set");
    for (part, value) in (0..).zip(hard) {
        board.set(Key::Hard(part), value.to_string());
    }
    for (part, value) in (0..).zip(soft) {
        board.set(Key::Soft(part), *value);
    }
    start_over(board);
}

#[component]
fn ByHand() -> impl IntoView {
    let words = &use_board().own().swing;
    view! {
        <fieldset class="card">
            <legend>{words.hard_iron}</legend>
            <p class="hint">{words.hard_iron_note}</p>
            {(0..3).map(|part| view! { <Typed key=Key::Hard(part) slides=HARD/> }).collect_view()}
        </fieldset>
        <fieldset class="card">
            <legend>{words.soft_iron}</legend>
            <p class="hint">{words.soft_iron_note}</p>
            <div class="soft-iron">
                {(0..9).map(|part| view! { <Typed key=Key::Soft(part) slides=SOFT/> }).collect_view()}
            </div>
        </fieldset>
    }
}

//! The page as a whole.

use super::asked::Part;
use super::board::{Board, use_board};
use super::corrections::Corrections;
use super::hand_outs::HandOuts;
use super::planner::Planner;
use super::swing::Swing;
use crate::pages::{Frame, Page, browser_words};
use crate::preferences::Preferences;
use leptos::prelude::*;

/// The page of numbers.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = browser_words();
    let preferences = Preferences::load();
    let board = Board::new(words);
    provide_context(board);
    let part = board.part(|asked| asked.part);
    view! {
        <Frame here=Page::Numbers words preferences>
        <Parts/>
        <main class="numbers-page" data-part=move || part.get().name()>
            {move || match part.get() {
                Part::Planner => view! { <Planner/> }.into_any(),
                Part::HandOuts => view! { <HandOuts/> }.into_any(),
                Part::Corrections => view! { <Corrections/> }.into_any(),
                Part::Swing => view! { <Swing/> }.into_any(),
            }}
        </main>
        <p class="told" role="status">{board.told()}</p>
        </Frame>
    }
}

/// The ways from part to part; each keeps what they have in common.
#[component]
fn Parts() -> impl IntoView {
    let board = use_board();
    let shown = board.part(|asked| asked.part);
    let link = move |part: Part| {
        view! {
            <a
                href=move || board.address(part)
                aria-current=move || (shown.get() == part).then_some("true")
            >
                {(board.own().part)(part)}
            </a>
        }
    };
    view! {
        <nav class="parts" aria-label=board.own().parts>
            {Part::ALL.map(link).collect_view()}
        </nav>
    }
}

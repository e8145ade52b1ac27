//! Sheets for print.

use super::board::use_board;
use super::fields::{Flown, Place, Segments, Typed};
use super::key::Key;
use super::lesson::{LessonChoice, Lessons};
use super::meant::Plans;
use super::planner::{Progressed, sheet as roll_out_sheet};
use super::taken::{Home, TakeHome};
use compass::heading::MagneticHeading;
use compass::rule_of_thumb::Turn;
use leptos::prelude::*;
use lessons::sheet::deviation::Swing;
use lessons::sheet::{Sheet, Site, aids, deviation, worksheet};

/// Degrees between two headings of an invented aircraft's swing.
const SWUNG: u16 = 30;

/// The hand-outs.
#[component]
pub(crate) fn HandOuts() -> impl IntoView {
    let board = use_board();
    let words = &board.own().hand_outs;
    let kind = board.choice(Key::Sheet);
    let sites = board.meant(|reader| reader.sites());
    let seed = board.meant(|reader| reader.seed());
    let plans = Memo::new(move |_| {
        let sites = sites.get().filter(|_| kind.get() == "roll-outs")?;
        Some(Plans {
            sites,
            target: MagneticHeading::from_degrees(0.0),
            turn: Turn::Right,
        })
    });
    board.plan(plans);
    let progress = board.work.progress();
    let lessons = Lessons::new();
    Effect::new(move || {
        if kind.get() == "plan" {
            lessons.fetch();
        }
    });
    let sheets = Memo::new(move |_| -> Result<Vec<Sheet>, String> {
        if kind.get() == "plan" {
            return Ok(lessons.sheet(board)?.into_iter().collect());
        }
        let site = sites.get().unwrap_or_default().first().cloned();
        let (Some(site), Some(seed)) = (site, seed.get()) else {
            return Ok(Vec::new());
        };
        let refused = |error| (board.words.form().refused)(&error);
        match kind.get() {
            "aids" => Ok(vec![aids::sheet(&site).map_err(refused)?]),
            "worksheet" => Ok(worksheet::sheets(&site, seed).map_err(refused)?.to_vec()),
            "deviation" => Ok(vec![deviation_card(&site, seed)?]),
            _ => progress.with(|progress| {
                let asked = plans.get().map_or(0, |plans| plans.sites.len());
                let whole = progress.is_whole() && progress.rounds.len() == asked;
                let sites = sites.get().unwrap_or_default();
                Ok(whole
                    .then(|| roll_out_sheet(&sites, &progress.rounds))
                    .into_iter()
                    .collect())
            }),
        }
    });
    let pages = Memo::new(move |_| {
        let sheets = sheets.get().unwrap_or_default();
        handouts::svg_pages(&sheets, board.paper())
    });
    let home = Home {
        name: "dipwise-sheet",
        words: None,
        sheets: Callback::new(move |()| untrack(|| sheets.get().unwrap_or_default())),
    };
    let [placed, flown, seeded, beside] =
        [Key::Way, Key::Airspeed, Key::Seed, Key::Beside].map(|key| board.shows(key));
    let print = move |_| {
        // Refused only by a browser that cannot print.
        let _ = window().print();
    };
    view! {
        <section class="form" aria-label=words.form>
            <Segments key=Key::Sheet/>
            <Segments key=Key::Paper/>
            <Show when=move || kind.get() == "plan"><LessonChoice lessons/></Show>
            <Show when=move || placed.get()><Place/></Show>
            <Show when=move || flown.get()><Flown/></Show>
            <Show when=move || seeded.get()><Typed key=Key::Seed/></Show>
            <Show when=move || beside.get()><Typed key=Key::Beside/></Show>
        </section>
        <section class="results" aria-label=words.results>
            <h2>{words.title}</h2>
            {move || board.is_wrong().then(|| view! { <p class="mend">{board.own().mend}</p> })}
            <Show when=move || kind.get() == "roll-outs"><Progressed/></Show>
            <p class="wrong" aria-live="polite">{move || sheets.get().err()}</p>
            <Show when=move || pages.with(|pages| !pages.is_empty())>
                <div class="paper-tools">
                    <button type="button" class="print" on:click=print>{words.print}</button>
                    <TakeHome home/>
                </div>
            </Show>
            <div class="papers" data-paper=move || board.choice(Key::Paper).get()>
                {move || pages.get().into_iter().map(|page| view! {
                    <div class="paper" inner_html=page></div>
                }).collect_view()}
            </div>
        </section>
    }
}

/// The card of an invented aircraft, swung after its adjustment.
fn deviation_card(site: &Site, seed: u64) -> Result<Sheet, String> {
    let swing = Swing::hidden(&site.name, site.situation.field, seed, SWUNG, true);
    deviation::sheet(&swing).map_err(|error| format!("{error}."))
}

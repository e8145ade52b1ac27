//! The swing of record: what is left on every heading, its coefficients, and the card.

use super::board::use_board;
use super::fields::Segments;
use super::key::Key;
use super::meant::OnTheRamp;
use super::taken::{Home, TableOf, TakeHome, as_csv, as_text};
use crate::drawn::Drawn;
use compass::heading::CompassHeading;
use kurbo::Size;
use leptos::prelude::*;
use lessons::corrections::DeviationCard;
use lessons::sheet::deviation::{self, CAUTION, Swing};
use lessons::sheet::{Part, Sheet, Table};
use lessons::swing::{LIMIT, by_means, fitted, greatest, residuals};

/// The swing of record, once it is asked for.
#[component]
pub(crate) fn Record(ramp: Memo<Option<OnTheRamp>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let every = board.choice(Key::Swing);
    let swung = board.choice(Key::Swung);
    let electric = board.choice(Key::Electric);
    let wrong = board.wrong(Key::Swung);
    let record = Memo::new(move |_| {
        let it = ramp.get().filter(|_| swung.get() == "yes")?;
        let every = if every.get() == "45" { 45 } else { 30 };
        let name = (words.aircraft)(
            it.seed,
            &(board.words.place)(&it.setting),
            electric.get() == "on",
        );
        Some((name, it.ramp.swing(every)))
    });
    view! {
        <div class="record">
            <h3>{words.record}</h3>
            <Segments key=Key::Swing/>
            <button
                type="button"
                id="swing-it"
                aria-pressed=move || (swung.get() == "yes").to_string()
                on:click=move |_| {
                    let now = swung.get_untracked();
                    board.set(Key::Swung, if now == "yes" { "no" } else { "yes" });
                }
            >
                {words.swing_it}
            </button>
            <p class="wrong">{move || wrong.get()}</p>
            {move || record.get().map(|(name, found)| view! { <Found name found/> })}
        </div>
    }
}

/// What was found.
#[component]
fn Found(name: String, found: Vec<(CompassHeading, f64)>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let most = greatest(&found);
    let card = DeviationCard::new(found.clone());
    let fit = fitted(&found).ok();
    let left = fit
        .map(|(fit, _)| residuals(&found, &fit))
        .unwrap_or_default();
    let table = (words.found)(&found, &left);
    let coefficients = fit.zip(card.as_ref().ok()).map(|((fit, most_left), card)| {
        let table = (words.coefficients)(&by_means(card), &fit);
        let title = words.coefficients_title;
        let home = table_home("dipwise-coefficients", title, table.clone());
        view! {
            <div class="coefficients">
                <TableOf caption=title table/>
                <p class="hint">{(words.left_over)(most_left.to_degrees())}</p>
                <TakeHome home of=title/>
            </div>
        }
    });
    let swing = Swing {
        name,
        found: found.clone(),
    };
    let (sheet, refused) = match deviation::sheet(&swing) {
        Ok(sheet) => (Some(sheet), None),
        Err(error) => (None, Some(format!("{error}."))),
    };
    let sheets: Vec<_> = sheet.into_iter().collect();
    let pages = StoredValue::new(sheets.clone());
    let taken = table.clone();
    let home = Home {
        name: "dipwise-deviation-card",
        words: Some(Callback::new(move |()| [as_text(&taken), as_csv(&taken)])),
        sheets: Callback::new(move |()| sheets.clone()),
    };
    let print = move |_| {
        // Refused only by a browser that cannot print.
        let _ = window().print();
    };
    view! {
        <p class="comes" id="verdict" aria-live="polite">
            {(words.verdict)(most.to_degrees(), most <= LIMIT)}
        </p>
        <p class="wrong">{refused}</p>
        <div class="found">
            <TableOf caption=words.record table/>
            {coefficients}
            <Drawn
                id="deviation-curve"
                title=words.curve.to_owned()
                description=(words.verdict)(most.to_degrees(), most <= LIMIT)
                size=Size::new(560.0, 260.0)
                draw=move |size| handouts::deviations(&found, size)
            />
            <Drawn
                id="residual-curve"
                title=words.residual_curve.to_owned()
                description=words.residual_note.to_owned()
                size=Size::new(560.0, 260.0)
                draw=move |size| handouts::residuals(&left, size)
            />
        </div>
        <Segments key=Key::Paper/>
        <div class="paper-tools">
            <button type="button" class="print" on:click=print>{board.own().hand_outs.print}</button>
            <TakeHome home/>
        </div>
        <div class="papers" data-paper=move || board.choice(Key::Paper).get()>
            {move || pages.with_value(|sheets| handouts::svg_pages(sheets, board.paper()))
                .into_iter()
                .map(|page| view! { <div class="paper" inner_html=page></div> })
                .collect_view()}
        </div>
    }
}

/// One table of the swing, to be taken home alone.
pub(crate) fn table_home(name: &'static str, title: &'static str, table: Table) -> Home {
    let kept = StoredValue::new(table);
    Home {
        name,
        words: Some(Callback::new(move |()| {
            kept.with_value(|table| [as_text(table), as_csv(table)])
        })),
        sheets: Callback::new(move |()| {
            vec![Sheet {
                title: title.to_owned(),
                under: String::new(),
                parts: vec![Part::Table(kept.get_value())],
                caution: CAUTION.to_owned(),
            }]
        }),
    }
}

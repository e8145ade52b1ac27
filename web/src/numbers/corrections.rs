//! True, magnetic, compass: the working line by line.

use super::board::use_board;
use super::fields::{Segments, Typed};
use super::key::Key;
use super::taken::{Home, TableOf, TakeHome, as_csv, as_text};
use super::wind::WindFields;
use crate::drawn::Drawn;
use kurbo::Size;
use leptos::prelude::*;
use lessons::corrections::DeviationCard;
use lessons::sheet::{CAUTION, Part, Sheet};

/// The corrections.
#[component]
pub(crate) fn Corrections() -> impl IntoView {
    let board = use_board();
    let words = &board.own().corrections;
    let by = board.choice(Key::VariationBy);
    let from = board.choice(Key::From);
    let variation = board.meant(|reader| reader.variation());
    let card = board.meant(|reader| Some(DeviationCard::new(reader.deviations()?)));
    let worked = Memo::new(move |_| {
        let (variation, card) = (variation.get()?.0, card.get()?.ok()?);
        board.read(|reader| reader.worked(variation, &card))
    });
    let working = Memo::new(move |_| worked.get()?.ok());
    let table = Memo::new(move |_| {
        let (working, wind) = working.get()?;
        Some((words.working)(&working, wind.as_ref(), from.get()))
    });
    let under = Memo::new(move |_| match working.get() {
        Some((_, Some(_))) => words.under_wind,
        _ => words.under,
    });
    let home = Home {
        name: "dipwise-correction",
        words: Some(Callback::new(move |()| {
            let table = untrack(|| table.get()).unwrap_or_default();
            [as_text(&table), as_csv(&table)]
        })),
        sheets: Callback::new(move |()| {
            let table = untrack(|| table.get()).unwrap_or_default();
            let entries = untrack(|| card.get()).and_then(Result::ok);
            let entries = entries.map(|card| Part::Deviations(card.entries().to_vec()));
            vec![Sheet {
                title: words.title.to_owned(),
                under: untrack(|| under.get()).to_owned(),
                parts: [Some(Part::Table(table)), entries]
                    .into_iter()
                    .flatten()
                    .collect(),
                caution: CAUTION.to_owned(),
            }]
        }),
    };
    view! {
        <section class="form" aria-label=words.form>
            <Segments key=Key::From/>
            {move || match from.get() {
                "track" => view! { <Typed key=Key::Track/> },
                _ => view! { <Typed key=Key::Heading/> },
            }}
            <WindFields/>
            <Segments key=Key::VariationBy/>
            {move || match by.get() {
                "place" => view! {
                    <Typed key=Key::Latitude/>
                    <Typed key=Key::Longitude/>
                    <Typed key=Key::Date/>
                    <p class="gives">
                        {move || variation.get().and_then(|(_, setting)| {
                            Some((board.own().field)(&setting?))
                        })}
                    </p>
                }.into_any(),
                _ => view! { <Typed key=Key::Variation/> }.into_any(),
            }}
            <fieldset class="card">
                <legend>{words.card}</legend>
                <p class="hint">{words.card_hint}</p>
                <div class="card-entries">
                    {(0..8).map(|eighth| view! { <Typed key=Key::Deviation(eighth)/> }).collect_view()}
                </div>
            </fieldset>
        </section>
        <section class="results" aria-label=words.results>
            <h2>{words.title}</h2>
            {move || board.is_wrong().then(|| view! { <p class="mend">{board.own().mend}</p> })}
            <p class="wrong" aria-live="polite">
                {move || card.get().and_then(Result::err).map(|error| format!("{error}."))}
                {move || worked.get().and_then(Result::err).map(|error| format!("{error}."))}
            </p>
            <div class="working">
                <div>
                    {move || table.get().map(|table| view! { <TableOf caption=words.title table/> })}
                    <p class="comes" id="steer" aria-live="polite">
                        {move || working.get().map(|(it, wind)| {
                            (words.told)(&it, wind.as_ref(), from.get())
                        })}
                    </p>
                    <p class="hint">{move || under.get()}</p>
                    <TakeHome home/>
                </div>
                {move || card.get().and_then(Result::ok).map(|card| {
                    let entries = card.entries().to_vec();
                    view! {
                        <Drawn
                            id="card-curve"
                            title=words.curve.to_owned()
                            description=words.curve_note.to_owned()
                            size=Size::new(560.0, 260.0)
                            draw=move |size| handouts::deviations(&entries, size)
                        />
                    }
                })}
            </div>
            <h3>{words.verses_title}</h3>
            <ul class="verses">
                {words.verses.iter().map(|verse| view! { <li>{*verse}</li> }).collect_view()}
            </ul>
            <p class="hint">{words.verses_note}</p>
        </section>
    }
}

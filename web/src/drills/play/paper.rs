//! The figures of a task on paper, as tables.

use super::board::use_board;
use leptos::prelude::*;
use lessons::drill::Paper;

/// Variation, heading and deviation card; or the deviations of a swing.
#[component]
pub(super) fn Sheet(paper: Paper) -> impl IntoView {
    let words = use_board().words;
    match paper {
        Paper::Correction {
            from,
            heading_deg,
            variation_deg,
            card_deg,
            ..
        } => {
            let lines = card_deg
                .into_iter()
                .map(|[on, deviation]| (three(on), deviation));
            view! {
                <div class="sheet">
                    <dl class="given" aria-label=words.given>
                        <div><dt>{(words.north)(from)}</dt><dd>{three(heading_deg)}</dd></div>
                        <div>
                            <dt>{words.variation}</dt>
                            <dd>{(words.east_west)(variation_deg)}</dd>
                        </div>
                    </dl>
                    <Lines columns=words.card_columns lines=lines.collect()/>
                </div>
            }
            .into_any()
        }
        Paper::Coefficient { deviations_deg, .. } => {
            let names = words.cardinals.map(str::to_owned);
            let lines = names.into_iter().zip(deviations_deg).collect();
            view! {
                <div class="sheet"><Lines columns=words.swing_columns lines/></div>
            }
            .into_any()
        }
    }
}

#[component]
fn Lines(columns: [&'static str; 2], lines: Vec<(String, f64)>) -> impl IntoView {
    let words = use_board().words;
    let (on, deviations): (Vec<_>, Vec<_>) = lines.into_iter().unzip();
    let deviation = |it: f64| view! { <td>{(words.east_west)(it)}</td> };
    view! {
        <table class="card-lines">
            <caption>{words.card_lines}</caption>
            <tbody>
                <tr>
                    <th scope="row">{columns[0]}</th>
                    {on.into_iter().map(|it| view! { <td>{it}</td> }).collect_view()}
                </tr>
                <tr>
                    <th scope="row">{columns[1]}</th>
                    {deviations.into_iter().map(deviation).collect_view()}
                </tr>
            </tbody>
        </table>
    }
}

/// A heading in three digits; north is 360.
fn three(degrees: f64) -> String {
    let whole = degrees.round().rem_euclid(360.0);
    format!("{:03.0}°", if whole == 0.0 { 360.0 } else { whole })
}

//! One turn by the clock and by the compass, side by side: a picture and figures.

use super::attempt::Turns as Found;
use super::board::use_board;
use crate::components::pictures::Painted;
use crate::words::turns::{CameOut, RollOutAt, TurnWay};
use compass::heading::{CompassHeading, MagneticHeading};
use drawing::turn_chart::{self, TurnChartView, TurnLine, TurnPoint, turn_chart};
use leptos::prelude::*;
use lessons::drill::Task;
use lessons::drill::ways::FlownTurn;

/// A turn as it stands in the table and in the picture.
#[derive(Clone)]
struct Row {
    way: TurnWay,
    rolled_out: RollOutAt,
    end: Option<CameOut>,
    roll_out_s: Option<f64>,
    points: Vec<TurnPoint>,
}

impl Row {
    fn of(way: TurnWay, turn: &FlownTurn, tolerance_deg: f64) -> Self {
        let by_clock = matches!(way, TurnWay::OwnByClock | TurnWay::Clock);
        let points = turn.track.iter().map(|it| TurnPoint {
            time_s: it.time_s,
            turned_deg: it.turned_deg,
            error_deg: it.error_deg,
        });
        Self {
            way,
            rolled_out: turn.end.map_or(RollOutAt::Nothing, |it| {
                if by_clock {
                    RollOutAt::Seconds(it.roll_out_s)
                } else {
                    let reading = CompassHeading::from_degrees(it.reading_deg);
                    RollOutAt::Reading(reading.whole_degrees())
                }
            }),
            end: turn.end.map(|it| CameOut {
                heading: MagneticHeading::from_degrees(it.came_out_deg).whole_degrees(),
                past_deg: it.past_deg,
                is_within: it.is_within(tolerance_deg),
            }),
            roll_out_s: turn.end.map(|it| it.roll_out_s),
            points: points.collect(),
        }
    }

    fn is_own(&self) -> bool {
        matches!(self.way, TurnWay::OwnByClock | TurnWay::OwnByCompass)
    }
}

/// The student's turns first, then those without a mistake.
fn rows(found: &Found, tolerance_deg: f64) -> Vec<Row> {
    let all = [
        (TurnWay::OwnByClock, found.by_clock.as_ref()),
        (TurnWay::OwnByCompass, found.by_compass.as_ref()),
        (TurnWay::Clock, Some(&found.ways.by_clock)),
        (TurnWay::Rule, Some(&found.ways.by_rule)),
        (TurnWay::Bare, Some(&found.ways.bare)),
    ];
    let row = |(way, turn): (TurnWay, Option<&FlownTurn>)| Some(Row::of(way, turn?, tolerance_deg));
    all.into_iter().filter_map(row).collect()
}

/// The comparison; nothing where the task is no turn that is flown in both ways.
#[component]
pub(super) fn Turns() -> impl IntoView {
    let board = use_board();
    let found = board.of(|attempt| Some((attempt.task().clone(), attempt.turns()?)));
    found.flatten().map(|(task, found)| {
        let words = &board.words.turns;
        let rows = rows(&found, task.id.tolerance_deg);
        let turned_to_deg = found.ways.turned_to_deg;
        view! {
            <section class="turns" aria-labelledby="turns">
                <h3 id="turns">{words.heading}</h3>
                <Chart task turned_to_deg rows=rows.clone()/>
                <div class="turns-said">
                    <Table rows/>
                    <p class="hint">{words.counts_not}</p>
                </div>
            </section>
        }
    })
}

/// Where each came out.
#[component]
fn Table(rows: Vec<Row>) -> impl IntoView {
    let words = &use_board().words.turns;
    let row = |(row, number): (Row, u8)| {
        let came_out = match row.end {
            Some(end) => {
                let sign = if end.is_within { "✓" } else { "✗" };
                view! {
                    <td>{format!("{:03}°", end.heading)}</td>
                    <td>{(words.off)(end)} " " <span aria-hidden="true">{sign}</span></td>
                }
                .into_any()
            }
            None => view! { <td colspan="2">{(words.never)(row.way)}</td> }.into_any(),
        };
        view! {
            <tr class:own=row.is_own()>
                <th scope="row">
                    <span class="number" aria-hidden="true">{number}</span>
                    <span>{(words.way)(row.way)}</span>
                </th>
                <td>{(words.rolled_out)(row.rolled_out)}</td>
                {came_out}
            </tr>
        }
    };
    view! {
        <table class="turns-table">
            <thead>
                <tr>
                    {words.columns.map(|it| view! { <th scope="col">{it}</th> }).collect_view()}
                </tr>
            </thead>
            <tbody>{rows.into_iter().zip(1..).map(row).collect_view()}</tbody>
        </table>
    }
}

/// The turns against time. The compass is drawn of the student's turn by it, or else of the one
/// that follows it blindly.
#[component]
fn Chart(task: Task, turned_to_deg: f64, rows: Vec<Row>) -> impl IntoView {
    let board = use_board();
    let words = &board.words.turns;
    let from = board.of(|attempt| attempt.scenario().map(flights::Scenario::heading));
    let from = from.flatten().unwrap_or(MagneticHeading::from_degrees(0.0));
    let onto = from.turned_by(turned_to_deg.to_radians());
    let numbered = || rows.iter().zip(1_u8..);
    let told = numbered().map(|(row, number)| (words.told)(number, row.way, row.end));
    let told: Vec<String> = told.collect();
    let label = (words.picture)([from.whole_degrees(), onto.whole_degrees()], &told);
    let has_own = rows.iter().any(|it| it.way == TurnWay::OwnByCompass);
    let with_reading = if has_own {
        TurnWay::OwnByCompass
    } else {
        TurnWay::Bare
    };
    let tolerance_deg = task.id.tolerance_deg;
    let target = (words.target)(tolerance_deg);
    let draw = move |size| {
        let lines = rows.iter().zip(1..).map(|(row, number)| TurnLine {
            number,
            points: &row.points,
            roll_out_s: row.roll_out_s,
            is_strong: row.is_own(),
            has_reading: row.way == with_reading,
        });
        // What is to be looked at first lies over the others.
        let (strong, mut lines): (Vec<_>, Vec<_>) = lines.partition(|it: &TurnLine| it.is_strong);
        lines.extend(strong);
        let view = TurnChartView {
            from_deg: from.degrees(),
            turned_to_deg,
            tolerance_deg,
            lines: &lines,
            words: turn_chart::Words {
                heading: words.lines[0],
                compass: words.lines[1],
                target: &target,
                seconds: words.seconds,
            },
        };
        turn_chart(&view, size)
    };
    view! { <Painted id="turn-chart" label=label theme=move || board.preferences.theme() draw/> }
}

//! When to begin to roll out: the answers for one target, the table, the rose.

use super::board::{Board, use_board};
use super::fields::{Flown, Place, Segments, Typed};
use super::key::Key;
use super::meant::Plans;
use super::taken::{Home, TableOf, TakeHome, as_text};
use super::work::Progress;
use crate::drawn::Drawn;
use compass::rule_of_thumb::Turn;
use drawing::roll_out_rose::{self, PlaceView};
use kurbo::Size;
use leptos::prelude::*;
use lessons::roll_out::Plan;
use lessons::sheet::roll_outs::{RollOut, allowances, sheet_of, table};
use lessons::sheet::{RosePlace, Sheet, Site};

/// The planner.
#[component]
pub(crate) fn Planner() -> impl IntoView {
    let board = use_board();
    let words = board.own();
    let plans = board.meant(|reader| reader.plans());
    board.plan(plans);
    let progress = board.work.progress();
    view! {
        <section class="form" aria-label=words.planner.form>
            <Place/>
            <Flown/>
            <Segments key=Key::Side/>
            <Typed key=Key::Target/>
            <Segments key=Key::Every/>
            <Typed key=Key::Beside/>
        </section>
        <section class="results" aria-label=words.planner.results>
            <h2>{words.planner.title}</h2>
            {move || board.is_wrong().then(|| view! { <p class="mend">{words.mend}</p> })}
            <Answers plans/>
            <Progressed/>
            {move || {
                let made = progress.get();
                let plans = plans.get();
                plans
                    .filter(|plans| made.is_whole() && made.rounds.len() == plans.sites.len())
                    .map(|plans| view! { <AllRound plans rounds=made.rounds/> })
            }}
        </section>
    }
}

/// The answers for the target that is asked for, side by side.
#[component]
fn Answers(plans: Memo<Option<Plans>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().planner;
    let progress = board.work.progress();
    let plan = Memo::new(move |_| progress.with(|progress| progress.answer));
    let figure = move |name: &'static str, note: &'static str, of: fn(&Plan) -> f64| {
        let degrees = move || {
            plan.get()
                .map_or_else(|| "…".to_owned(), |it| figure_of(of(&it)))
        };
        view! {
            <div class="answer">
                <dt>{name}<span class="hint">{note}</span></dt>
                <dd>{degrees}</dd>
            </div>
        }
    };
    view! {
        <p class="asked">
            {move || plans.get().map(|it| {
                let left = it.turn == Turn::Left;
                (words.asked)(left, it.target.whole_degrees(), it.sites.first().map_or(0.0, |it| it.bank.to_degrees()))
            })}
        </p>
        <dl class="answers" id="answers">
            {figure(words.rule, words.rule_note, |it| it.rule.degrees())}
            {figure(words.half_rule, words.half_rule_note, |it| it.half_rule.degrees())}
            {figure(words.steady, words.steady_note, |it| it.steady.degrees())}
            {figure(words.float, words.float_note, |it| it.float.degrees())}
        </dl>
        <p class="comes" id="comes" aria-live="polite">
            {move || {
                let plan = plan.get()?;
                let bare = plan.bare_overshoot.map(f64::to_degrees);
                let lead = plans.get()?.sites.first()?.lead();
                Some((words.comes)(lead.to_degrees(), plan.exact.whole_degrees(), bare))
            }}
        </p>
    }
}

fn figure_of(degrees: f64) -> String {
    let whole = compass::heading::CompassHeading::from_degrees(degrees).whole_degrees();
    format!("{whole:03}°")
}

/// How far the planning all round is; cancels it, and lets it go on.
#[component]
pub(crate) fn Progressed() -> impl IntoView {
    let board = use_board();
    let words = &board.own().planner;
    let work = board.work;
    let state = Memo::new(move |_| {
        work.progress()
            .with(|it: &Progress| (it.made(), it.whole, it.cancelled, it.refused))
    });
    let bar = move || {
        let (made, whole, cancelled, refused) = state.get();
        if let Some(refused) = refused {
            let said = (board.words.form().refused)(&refused);
            return view! { <p class="wrong">{said}</p> }.into_any();
        }
        if whole == 0 || made == whole {
            return ().into_any();
        }
        let button = if cancelled {
            view! { <button type="button" on:click=move |_| work.resume()>{words.resume}</button> }
                .into_any()
        } else {
            view! { <button type="button" on:click=move |_| work.cancel()>{words.cancel}</button> }
                .into_any()
        };
        view! {
            <progress aria-label=words.progress max=whole.to_string() value=made.to_string()></progress>
            {button}
        }
        .into_any()
    };
    view! { <div class="progress">{bar}</div> }
}

/// Table and rose.
#[component]
fn AllRound(plans: Plans, rounds: Vec<Vec<RollOut>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().planner;
    let kept = StoredValue::new((plans, rounds));
    let every = board.choice(Key::Every);
    let spaced = move || if every.get() == "10" { 10 } else { 30 };
    let table_now = move || kept.with_value(|(_, rounds)| table(&rounds[0], spaced()));
    let home = Home {
        name: "dipwise-roll-outs",
        words: Some(Callback::new(move |()| {
            untrack(|| {
                let csv = kept.with_value(|(_, rounds)| csv(&rounds[0], spaced()));
                [as_text(&table_now()), csv]
            })
        })),
        sheets: Callback::new(move |()| {
            kept.with_value(|(plans, rounds)| vec![sheet(&plans.sites, rounds)])
        }),
    };
    let described = Signal::derive(move || {
        kept.with_value(|(plans, rounds)| described(board, &plans.sites, rounds))
    });
    let places = kept.with_value(|(plans, rounds)| rose_places(&plans.sites, rounds));
    view! {
        <div class="all-round">
            <div>
                {move || view! { <TableOf caption=words.table table=table_now()/> }}
                <p class="hint">{words.table_note}</p>
            </div>
            <div>
                <Drawn
                    id="rose"
                    title=words.rose.to_owned()
                    description=described
                    size=Size::new(300.0, 380.0)
                    draw=move |size| handouts::rose(&places, size)
                />
                <p class="hint">{described}</p>
            </div>
        </div>
        <TakeHome home/>
    }
}

/// The roll-out sheet of what was planned.
pub(crate) fn sheet(sites: &[Site], rounds: &[Vec<RollOut>]) -> Sheet {
    let beside = sites
        .get(1)
        .zip(rounds.get(1))
        .map(|(site, round)| (site, round.as_slice()));
    match (sites.first(), rounds.first()) {
        (Some(site), Some(round)) => sheet_of(site, round, beside),
        _ => Sheet {
            title: String::new(),
            under: String::new(),
            parts: Vec::new(),
            caution: String::new(),
        },
    }
}

fn rose_places(sites: &[Site], rounds: &[Vec<RollOut>]) -> Vec<RosePlace> {
    let place = |(site, round): (&Site, &Vec<RollOut>)| RosePlace {
        name: site.name.clone(),
        allowances: allowances(round, site.lead()),
    };
    sites.iter().zip(rounds).map(place).collect()
}

/// The greatest undershoot and overshoot of each place.
fn described(board: Board, sites: &[Site], rounds: &[Vec<RollOut>]) -> String {
    let said = rose_places(sites, rounds).into_iter().filter_map(|place| {
        let drawn: Vec<_> = (place.allowances.iter())
            .map(|it| roll_out_rose::Allowance {
                target: it.target,
                left: it.left,
                right: it.right,
            })
            .collect();
        let extremes = roll_out_rose::describe(&PlaceView {
            name: "",
            allowances: &drawn,
        })?;
        Some((board.own().planner.extremes)(&place.name, extremes))
    });
    said.collect::<Vec<_>>().join(" ")
}

/// As `dipwise table` writes it.
fn csv(round: &[RollOut], every: u16) -> String {
    let mut out = "target_deg,turn,rule_deg,half_rule_deg,steady_deg,float_deg\n".to_owned();
    for it in round
        .iter()
        .filter(|it| it.target.whole_degrees() % every == 0)
    {
        for (name, plan) in [("left", &it.left), ("right", &it.right)] {
            let readings = [plan.rule, plan.half_rule, plan.steady, plan.float];
            let readings = readings.map(|reading| format!("{:.6}", reading.degrees()));
            out += &format!("{:.6},{name},{}\n", it.target.degrees(), readings.join(","));
        }
    }
    out
}

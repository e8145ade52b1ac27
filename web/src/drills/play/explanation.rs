//! The mark, what is said after every answer, and the ways on.

use super::ask::Ask;
use super::board::use_board;
use super::replay::Replay;
use super::turns::Turns;
use super::verdict::Verdict;
use super::views::MarkScale;
use super::{AskButton, focus_on_arrival};
use leptos::html;
use leptos::prelude::*;
use lessons::drill::mark::Mark;
use lessons::drill::{Aim, Kind, Task};

/// The explanation of an answer.
#[component]
pub(super) fn Explained() -> impl IntoView {
    let board = use_board();
    let found = board.of(|attempt| {
        let marked = attempt.marked();
        let mark = marked.map(|it| it.map(|(_, mark)| mark.clone()));
        let flies = attempt.flown().is_some();
        let mark = mark.map_err(str::to_owned);
        (attempt.task().clone(), attempt.chosen(), mark, flies)
    });
    found.map(|(task, chosen, mark, flies)| match mark {
        Ok(Some(mark)) => view! { <Marked task chosen mark flies/> }.into_any(),
        Ok(None) => ().into_any(),
        Err(reason) => {
            view! { <p class="wrong" role="alert">{reason}</p> <Ways kind=task.id.kind may_compare=false/> }
                .into_any()
        }
    })
}

#[component]
fn Marked(task: Task, chosen: Option<usize>, mark: Mark, flies: bool) -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let verdict = Verdict::of(&task, &mark, chosen);
    let heading = NodeRef::<html::H2>::new();
    focus_on_arrival(heading);
    let said = (words.verdict)(&verdict);
    let sign = match verdict {
        Verdict::Unmarked => "–",
        it if it.is_good() => "✓",
        _ => "✗",
    };
    let right = task
        .choices
        .iter()
        .find(|it| it.right)
        .map(|it| it.text.clone());
    let yours = chosen
        .and_then(|it| task.choices.get(it))
        .filter(|it| !it.right)
        .map(|it| (words.yours_is)(&it.text, &it.slip));
    let not_counted = mark.reason.as_deref().map(words.not_counted);
    let has_side = matches!(task.aim, Some(Aim::RollOut { .. } | Aim::TimedTurn { .. }));
    let tolerance_deg = task.id.tolerance_deg;
    let scale = mark.error_deg.map(|error_deg| {
        let said = (words.mark)(error_deg, tolerance_deg, has_side);
        view! {
            <p class="off">{said}</p>
            <MarkScale error_deg tolerance_deg has_side/>
        }
    });
    let parts = [
        (words.happened, mark.explanation.happened.clone()),
        (words.why, mark.explanation.why.clone()),
        (words.rule, mark.explanation.rule.clone()),
    ];
    let part = |(name, text): (&'static str, String)| {
        view! { <div><h3>{name}</h3><p>{text}</p></div> }
    };
    view! {
        <div class="explained" data-verdict=if verdict.is_good() { "good" } else { "bad" }>
            <div class="said">
                <h2 class="verdict" tabindex="-1" node_ref=heading>
                    <span aria-hidden="true">{sign}</span> " " {said}
                </h2>
                {not_counted.map(|it| view! { <p class="note" id="not-counted">{it}</p> })}
                {yours.map(|it| view! { <p class="yours-is">{it}</p> })}
                {right.map(|it| view! { <p class="right-is">{(words.right_is)(&it)}</p> })}
                {scale}
                <div class="parts-of-it">{parts.map(part).collect_view()}</div>
                <Ideals task=task.clone() mark/>
            </div>
            {flies.then(|| view! { <Replay/> })}
            <Turns/>
            <Ways kind=task.id.kind may_compare=task.id.by_the_compass().is_some()/>
        </div>
    }
}

/// When the roll-out was to begin, by rule and by simulation, and when it did.
#[component]
fn Ideals(task: Task, mark: Mark) -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let ideal = &words.ideal;
    let three = |degrees: f64| {
        let whole = compass::heading::CompassHeading::from_degrees(degrees).whole_degrees();
        format!("{whole:03}°")
    };
    let figure = |unit: &str| {
        let found = mark.figures.iter().find(|it| it.unit == unit);
        found.map(|it| it.value)
    };
    let rows: Vec<(&'static str, String)> = match task.aim {
        Some(Aim::RollOut {
            rule_deg,
            half_rule_deg,
            steady_deg,
            simulated_deg,
            ..
        }) => {
            let yours = figure("°").map(|it| (ideal.yours, three(it)));
            let rows = [
                (ideal.by_rule, three(rule_deg)),
                (ideal.by_half_rule, three(half_rule_deg)),
                (ideal.closed_form, three(steady_deg)),
                (ideal.simulation, three(simulated_deg)),
            ];
            rows.into_iter().chain(yours).collect()
        }
        Some(Aim::TimedTurn {
            rule_s,
            simulated_s,
            ..
        }) => {
            let yours = figure("s").map(|it| (ideal.yours, (ideal.seconds)(it)));
            let rows = [
                (ideal.by_time_rule, (ideal.seconds)(rule_s)),
                (ideal.simulation, (ideal.seconds)(simulated_s)),
            ];
            rows.into_iter().chain(yours).collect()
        }
        _ => return ().into_any(),
    };
    let row = |(name, value): (&'static str, String)| {
        view! { <div><dt>{name}</dt><dd>{value}</dd></div> }
    };
    view! {
        <h3 id="ideals">{words.ideals}</h3>
        <dl class="ideals" aria-labelledby="ideals">{rows.into_iter().map(row).collect_view()}</dl>
    }
    .into_any()
}

/// The next task, the same turn by the compass, or another try.
#[component]
fn Ways(kind: Kind, may_compare: bool) -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let at_end = board.part(|it| it.step >= it.span[1]);
    let from_here = Signal::derive(move || {
        (words.again_from_here)(kind, at_end.get().unwrap_or_default()).to_owned()
    });
    view! {
        <div class="acts ways-on">
            <AskButton ask=Ask::Next label=words.next.to_owned() key="n" class="strong"/>
            {may_compare.then(|| view! {
                <AskButton ask=Ask::ByTheCompass label=words.turns.fly.to_owned() key="c"/>
            })}
            <AskButton ask=Ask::Again label=words.again.to_owned() key="r"/>
            {kind.is_flown().then(|| view! {
                <AskButton ask=Ask::AgainFromHere label=from_here key="b"/>
            })}
            <span class="hint keys-hint">{(words.keys_after)(kind)}</span>
        </div>
    }
}

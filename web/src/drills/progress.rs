//! How practice goes, as pictures with their figures.

use super::keep::use_keep;
use super::route::Part;
use crate::drawn::Drawn;
use crate::today::{local_day, weekday};
use crate::words::ProgressWords;
use crate::words::progress::{GoingWords, Standing};
use drawing::bars::{Bar, bars};
use drawing::forgetting_curve::{self, ForgettingView, forgetting_curve};
use drawing::skill_rose::{self, SkillRoseView, skill_rose};
use kurbo::Size;
use leptos::prelude::*;
use lessons::drill::progress::{
    forgetting, grown, least_remembered, seconds_by_day, seconds_by_kind, skill_in_turns, weakest,
};
use lessons::drill::{Class, Kind};

/// How far ahead the curve goes, in days; chosen: what is learnt today is due within them.
const AHEAD: u32 = 30;
/// Which of its days stand in the table.
const TOLD: [usize; 6] = [0, 1, 3, 7, 14, 30];
/// How many days' time is shown one by one, and how many by kind; chosen: a week and four.
const DAYS: u32 = 7;
const WEEKS: u32 = 28;

const ROSE: Size = Size::new(360.0, 384.0);
const CURVE: Size = Size::new(420.0, 260.0);
const BARS: [Size; 2] = [Size::new(360.0, 147.0), Size::new(360.0, 168.0)];

/// The part.
#[component]
pub(crate) fn Progress() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.going;
    let keep = use_keep();
    let practised = Memo::new(move |_| keep.practice().with(|it| !it.classes.is_empty()));
    let next = move || {
        let today = local_day();
        let (answers, days, settings) = keep.whole().with(|it| {
            let mut days: Vec<u32> = it.answers.iter().map(|it| it.day).collect();
            days.dedup();
            (it.answers.len(), days.len(), it.settings)
        });
        keep.practice().with(|it| {
            let due = it.due(today, 1);
            let least = due.first().copied().or(least_remembered(it, today));
            (own.next)(&Standing {
                answers,
                days,
                classes: it.classes.len(),
                grown: settings.level.is_none().then(|| grown(it, &settings)),
                least,
                recall: least.map_or(0.0, |it| it.recall(today)),
                is_due: !due.is_empty(),
            })
        })
    };
    let weakest = move || {
        let found = (keep.whole()).with(|it| weakest(&it.answers, local_day(), WEEKS));
        found.map(|(kind, passed, of)| {
            let practise = format!("#{}?kind={}", Part::Practise.name(), kind.name());
            view! {
                <p id="weakest">
                    {(own.weakest)(kind, passed, of)} " " <a href=practise>{own.practise_it}</a>
                </p>
            }
        })
    };
    let to_today = || {
        view! { <a class="go" href=format!("#{}", Part::Today.name())>{own.to_today}</a> }
    };
    view! {
        <section class="going" aria-labelledby="going-title">
            <h2 id="going-title">{own.title}</h2>
            {move || if practised.get() {
                view! {
                    <p class="what-next">{next} {to_today()}</p>
                    {weakest}
                    <div class="pictures">
                        <Rose/>
                        <Curve/>
                        <Time/>
                    </div>
                }
                .into_any()
            } else {
                view! {
                    <p class="what-next">{own.empty}</p>
                    {to_today()}
                }
                .into_any()
            }}
        </section>
    }
}

/// Skill in turns, by heading and side.
#[component]
fn Rose() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.going;
    let keep = use_keep();
    let kind = RwSignal::new(None::<Kind>);
    let skill = Memo::new(move |_| {
        let day = local_day();
        keep.practice()
            .with(|it| skill_in_turns(it, kind.get(), day))
    });
    let draw = move |size| {
        let view = SkillRoseView {
            octants: skill.get().map(|sides| sides.map(|it| it.recall)),
            words: skill_rose::Words {
                left: own.left,
                right: own.right,
            },
        };
        skill_rose(&view, size)
    };
    let options = (Kind::ALL.into_iter())
        .filter(|it| !matches!(it, Kind::HoldHeading | Kind::SetGyro | Kind::Corrections))
        .map(|it| view! { <option value=it.name()>{(words.kind)(it)}</option> });
    let rows = move || {
        let rows = skill.get().into_iter().zip(own.octants);
        rows.map(|([left, right], octant)| {
            vec![octant.to_owned(), (own.skill)(left), (own.skill)(right)]
        })
        .collect()
    };
    view! {
        <figure>
            <figcaption>
                <h3>{own.rose}</h3>
                <label class="which">
                    {own.which}
                    <select on:change:target=move |event| {
                        let chosen = event.target().value();
                        kind.set(Kind::ALL.into_iter().find(|it| it.name() == chosen));
                    }>
                        <option value="">{own.all_kinds}</option>
                        {options.collect_view()}
                    </select>
                </label>
            </figcaption>
            <Drawn
                id="skill-rose"
                title=own.rose
                description=Signal::derive(move || (own.rose_said)(&skill.get()))
                size=ROSE
                draw
            />
            <p class="hint">{own.rose_note}</p>
            <Figures
                caption=own.rose
                columns=vec![own.heading, own.left, own.right]
                rows=Signal::derive(rows)
            />
        </figure>
    }
}

/// The forgetting curve.
#[component]
fn Curve() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.going;
    let keep = use_keep();
    let chosen = RwSignal::new(None::<Class>);
    let curve = Memo::new(move |_| {
        let day = local_day();
        (keep.practice()).with(|it| chosen.with(|of| forgetting(it, of.as_ref(), day, AHEAD)))
    });
    let draw = move |size| {
        let view = ForgettingView {
            recall: &curve.get(),
            words: forgetting_curve::Words {
                today: own.now,
                days: own.days,
                refresh: own.refresh,
            },
        };
        forgetting_curve(&view, size)
    };
    let told = move || -> Vec<Vec<String>> {
        let curve = curve.get();
        let days = TOLD
            .into_iter()
            .filter_map(|day| Some((day, curve.get(day)?)));
        days.map(|(day, recall)| vec![(own.in_days)(day), (own.percent)(*recall)])
            .collect()
    };
    let said = move || {
        let cells = told().into_iter().map(|row| row.join(": "));
        cells.collect::<Vec<_>>().join(", ")
    };
    let classes = move || -> Vec<Class> {
        (keep.practice()).with(|it| it.classes.iter().map(|it| it.class.clone()).collect())
    };
    let options = move || {
        let named = classes().into_iter().enumerate();
        named
            .map(|(at, it)| {
                view! { <option value=at.to_string()>{(words.class)(&it)}</option> }
            })
            .collect_view()
    };
    view! {
        <figure>
            <figcaption>
                <h3>{own.curve}</h3>
                <label class="which">
                    {own.which}
                    <select on:change:target=move |event| {
                        let at = event.target().value().parse::<usize>().ok();
                        chosen.set(at.and_then(|at| classes().get(at).cloned()));
                    }>
                        <option value="">{own.all_classes}</option>
                        {options}
                    </select>
                </label>
            </figcaption>
            <Drawn
                id="forgetting-curve"
                title=own.curve
                description=Signal::derive(said)
                size=CURVE
                draw
            />
            <p class="hint">{own.curve_note}</p>
            <Figures
                caption=own.curve
                columns=vec![own.when, own.chance]
                rows=Signal::derive(told)
            />
        </figure>
    }
}

/// Where the time went.
#[component]
fn Time() -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.going;
    let keep = use_keep();
    let by_day = Memo::new(move |_| {
        let today = local_day();
        let days = (keep.whole()).with(|it| seconds_by_day(&it.answers, today, DAYS));
        let named = days.into_iter().map(|(day, seconds)| {
            let name = (own.day)(weekday(day), today.saturating_sub(day));
            (name, seconds)
        });
        named.collect::<Vec<_>>()
    });
    let by_kind = Memo::new(move |_| {
        let today = local_day();
        let kinds = (keep.whole()).with(|it| seconds_by_kind(&it.answers, today, WEEKS));
        let named = kinds.map(|(kind, seconds)| ((words.kind)(kind).to_owned(), seconds));
        named.to_vec()
    });
    let told =
        move |spent: Memo<Vec<(String, f64)>>| Signal::derive(move || rows(own, &spent.get()));
    view! {
        <figure>
            <figcaption><h3>{own.by_day}</h3></figcaption>
            <Spent id="time-by-day" title=own.by_day spent=by_day size=BARS[0]/>
            <figcaption><h3>{own.by_kind}</h3></figcaption>
            <Spent id="time-by-kind" title=own.by_kind spent=by_kind size=BARS[1]/>
            <details class="figures">
                <summary>{own.figures}</summary>
                <Table caption=own.by_day columns=vec![own.when, own.time] rows=told(by_day)/>
                <Table caption=own.by_kind columns=vec![own.kinds, own.time] rows=told(by_kind)/>
            </details>
        </figure>
    }
}

/// Names and times in words.
fn rows(words: &GoingWords, spent: &[(String, f64)]) -> Vec<Vec<String>> {
    let all = spent.iter();
    all.map(|(name, seconds)| vec![name.clone(), (words.spent)(*seconds)])
        .collect()
}

/// Times as bars.
#[component]
fn Spent(
    id: &'static str,
    title: &'static str,
    spent: Memo<Vec<(String, f64)>>,
    size: Size,
) -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.going;
    let draw = move |size| {
        let spent = spent.get();
        let rows = rows(own, &spent);
        let all = spent.iter().zip(&rows).map(|((_, seconds), row)| Bar {
            name: &row[0],
            value: *seconds,
            figure: &row[1],
        });
        bars(&all.collect::<Vec<_>>(), size)
    };
    let said = move || {
        let cells = rows(own, &spent.get())
            .into_iter()
            .map(|row| row.join(": "));
        cells.collect::<Vec<_>>().join(", ")
    };
    view! { <Drawn id title description=Signal::derive(said) size draw/> }
}

/// The figures of a picture as a table, folded away.
#[component]
fn Figures(
    caption: &'static str,
    columns: Vec<&'static str>,
    rows: Signal<Vec<Vec<String>>>,
) -> impl IntoView {
    let words: &ProgressWords = expect_context::<&'static ProgressWords>();
    view! {
        <details class="figures">
            <summary>{words.going.figures}</summary>
            <Table caption columns rows/>
        </details>
    }
}

/// A table; the first of each row names it.
#[component]
fn Table(
    caption: &'static str,
    columns: Vec<&'static str>,
    rows: Signal<Vec<Vec<String>>>,
) -> impl IntoView {
    let row = |row: Vec<String>| {
        let mut cells = row.into_iter();
        let first = cells.next();
        view! {
            <tr>
                <th scope="row">{first}</th>
                {cells.map(|it| view! { <td>{it}</td> }).collect_view()}
            </tr>
        }
    };
    let titles = columns.into_iter();
    view! {
        <table>
            <caption class="unseen">{caption}</caption>
            <thead>
                <tr>{titles.map(|it| view! { <th scope="col">{it}</th> }).collect_view()}</tr>
            </thead>
            <tbody>{move || rows.get().into_iter().map(row).collect_view()}</tbody>
        </table>
    }
}

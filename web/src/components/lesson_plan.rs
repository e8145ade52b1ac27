//! The lesson plan of the demonstration that is open, to be read and to be printed.

use super::player::Plain;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::player::plan::{Item, Plan};
use leptos::prelude::*;
use lessons::demonstration::Flown;

/// The plan, with its buttons, which are not printed.
#[component]
pub(crate) fn LessonPlan() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.demonstrations;
    let player = cockpit.player;
    let plan = move || player.open_now().map(|it| paper(cockpit, &it));
    view! {
        <main class="plan">
            <div class="plan-tools">
                // Refused only in a frame that may not print.
                <Plain button=words.print press=move |_| drop(window().print())/>
                <Plain button=words.close_plan press=move |_| player.show_plan(false)/>
            </div>
            {plan}
        </main>
    }
}

fn paper(cockpit: Cockpit, flown: &Flown) -> impl IntoView + use<> {
    let words = &cockpit.words.demonstrations;
    let plan = Plan::of(flown);
    let notes = plan.notes.into_iter().map(|(minutes, say)| {
        view! { <li><strong>{(words.minutes)(minutes)}</strong><p>{say}</p></li> }
    });
    let course = plan.course.into_iter().map(|(time, item)| {
        view! {
            <tr>
                <th scope="row">{(words.clock)(time)}</th>
                <td>{line(cockpit, item)}</td>
            </tr>
        }
    });
    let figures = plan.figures.into_iter().map(|(name, words)| {
        view! { <div><dt>{name}</dt><dd>{words}</dd></div> }
    });
    let place = cockpit.now().setting;
    view! {
        <article class="paper" id="plan">
            <h2>{plan.title}</h2>
            <p>{(cockpit.words.place)(&place)}" · "{(cockpit.words.dip_line)(place.field().dip().to_degrees())}</p>
            <p>{plan.look_for}</p>
            <h3>{words.notes}" "<small>{(words.minutes_in_all)(plan.minutes)}</small></h3>
            <ul class="plan-notes">{notes.collect_view()}</ul>
            <h3>{words.course}</h3>
            <table>
                <thead><tr><th scope="col">{words.time}</th><th scope="col">{words.happens}</th></tr></thead>
                <tbody>{course.collect_view()}</tbody>
            </table>
            <h3>{words.rule}</h3>
            <p>{plan.rule}</p>
            <h3>{words.figures}</h3>
            <dl class="plan-figures">{figures.collect_view()}</dl>
            <p class="plan-caution">{cockpit.words.caution}</p>
        </article>
    }
}

fn line(cockpit: Cockpit, item: Item) -> AnyView {
    let words = &cockpit.words.demonstrations;
    match item {
        Item::Chapter(title) => view! { <strong>{title}</strong> }.into_any(),
        Item::Caption(text) => text.into_any(),
        Item::Stop => words.plan_stop.into_any(),
        Item::Answer => words.plan_answer.into_any(),
        Item::Question(posed) => {
            let choices = posed.choices.iter().enumerate().map(|(index, choice)| {
                let choice = choice.clone();
                if index == posed.right {
                    view! { <li><strong>"✓ "{choice}</strong>" — "{words.right}</li> }.into_any()
                } else {
                    view! { <li>{choice}</li> }.into_any()
                }
            });
            view! {
                <em>{posed.question.clone()}</em>
                <ul>{choices.collect_view()}</ul>
                {posed.measured.as_ref().map(|it| (words.measured)(it))}
            }
            .into_any()
        }
    }
}

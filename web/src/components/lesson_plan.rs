//! The lesson plan of the demonstration that is open, to be read and to be printed.

use super::player::Plain;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::player::plan::{Item, Plan};
use leptos::html;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use web_sys::Element;

/// The plan, with its buttons, which are not printed.
#[component]
pub(crate) fn LessonPlan() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let sheet = NodeRef::<html::Article>::new();
    Effect::new(move || {
        if let (Some(sheet), Some(flown)) = (sheet.get(), player.open_now()) {
            sheet.set_text_content(None);
            for line in lines(cockpit, Plan::of(&flown)) {
                // Refused only by a browser out of memory.
                let _ = line.write(&sheet);
            }
        }
    });
    view! {
        <main class="plan">
            <div class="plan-tools">
                // Refused only in a frame that may not print.
                <Plain button=words.print press=move |()| drop(window().print())/>
                <Plain button=words.close_plan press=move |()| player.show_plan(false)/>
            </div>
            <article class="sheet" id="plan" node_ref=sheet></article>
        </main>
    }
}

/// A line of the sheet: the element that it is, what stands in its margin, and its text.
struct Line {
    tag: &'static str,
    margin: String,
    text: String,
}

impl Line {
    fn new(tag: &'static str, text: impl Into<String>) -> Self {
        Self {
            tag,
            margin: String::new(),
            text: text.into(),
        }
    }

    fn beside(margin: String, text: String) -> Self {
        Self {
            margin,
            ..Self::new("p", text)
        }
    }

    fn write(&self, sheet: &Element) -> Result<(), JsValue> {
        let line = document().create_element(self.tag)?;
        if !self.margin.is_empty() {
            line.set_class_name("with-margin");
            let margin = document().create_element("strong")?;
            margin.set_text_content(Some(&self.margin));
            line.append_child(&margin)?;
            line.append_with_str_1(" ")?;
        }
        let text = document().create_element("span")?;
        text.set_text_content(Some(&self.text));
        line.append_child(&text)?;
        sheet.append_child(&line)?;
        Ok(())
    }
}

fn lines(cockpit: Cockpit, plan: Plan) -> Vec<Line> {
    let words = cockpit.words.demonstrations();
    let setting = untrack(|| cockpit.now().setting);
    let dip = (cockpit.words.dip_line)(setting.field().dip().to_degrees());
    let place = (cockpit.words.place)(&setting);
    let mut lines = vec![
        Line::new("h2", plan.title),
        Line::new("p", plan.flown),
        Line::new("p", format!("{place} · {dip}")),
        Line::new("p", plan.look_for),
    ];
    lines.push(Line::new("h3", (words.notes)(plan.minutes)));
    let notes = plan.notes.into_iter();
    lines.extend(notes.map(|(minutes, say)| Line::beside((words.minutes)(minutes), say)));
    lines.push(Line::new("h3", words.course));
    for (time, item) in plan.course {
        let text = match item {
            Item::Chapter(title) => {
                lines.push(Line {
                    margin: (words.clock)(time),
                    ..Line::new("h4", title)
                });
                continue;
            }
            Item::Caption(text) => text,
            Item::Stop => words.plan_stop.to_owned(),
            Item::Answer => words.plan_answer.to_owned(),
            Item::Question(posed) => (words.plan_question)(&posed),
        };
        lines.push(Line::beside((words.clock)(time), text));
    }
    lines.push(Line::new("h3", words.rule));
    lines.push(Line::new("p", plan.rule));
    lines.push(Line::new("h3", words.figures));
    let figures = plan.figures.into_iter();
    lines.extend(figures.map(|(name, said)| Line::new("p", (words.figure)(&name, &said))));
    lines.push(Line::new("footer", cockpit.words.caution));
    lines.retain(|it| !it.text.is_empty());
    lines
}

//! English, for the page of numbers and the ways from page to page.

use super::en::ENGLISH;
use super::en_corrections::CORRECTIONS;
use super::en_figures::degrees;
use super::en_numbers_fields::{choice, hint, label, refusal, slider};
use super::en_swing::SWING;
use super::numbers::{HandOutWords, NumbersWords, PagesWords, PlannerWords};
use crate::numbers::Part;
use crate::pages::Page;
use crate::situation_form::nanotesla;

/// The ways from page to page.
pub(super) const PAGES: PagesWords = PagesWords {
    title: "Pages",
    name: |page| match page {
        Page::Fly => "Fly",
        Page::Demonstrations => "Demonstrations",
        Page::Drills => "Drills",
        Page::Sets => "Sets",
        Page::Numbers => "Numbers",
        Page::Maps => "Maps",
    },
};

/// The page of numbers.
pub(super) static NUMBERS: NumbersWords = NumbersWords {
    parts: "Parts of this page",
    part: |part| match part {
        Part::Planner => "Roll-outs",
        Part::HandOuts => "Hand-outs",
        Part::Corrections => "Corrections",
        Part::Swing => "Compass swing",
    },
    label,
    slider,
    hint,
    choice,
    refusal,
    mend: "Mend what is marked, and the figures follow.",
    field: |setting| {
        let field = setting.field();
        let variation = if setting.has_variation() {
            format!(
                "{}. ",
                (ENGLISH.variation_line)(field.variation().to_degrees())
            )
        } else {
            String::new()
        };
        format!(
            "{}. {variation}{}.",
            (ENGLISH.dip_line)(field.dip().to_degrees()),
            (ENGLISH.horizontal_line)(nanotesla(field.horizontal()))
        )
    },
    take_home: "Take this home",
    copy_text: "Copy as text",
    copy_csv: "Copy as CSV",
    copy_link: "Copy link",
    copy_image: "Copy image",
    save_svg: "Save SVG",
    save_png: "Save PNG",
    copied: "Copied.",
    not_copied: "This browser did not let the page copy.",
    planner: PLANNER,
    hand_outs: HandOutWords {
        form: "What to print",
        results: "The sheet",
        title: "Hand-outs for print",
        print: "Print",
        not_fetched: "The demonstrations could not be fetched. Connect, and choose this sheet again.",
        no_lesson: |name| format!("There is no demonstration “{name}”. Choose one from the list."),
    },
    corrections: CORRECTIONS,
    swing: SWING,
};

const PLANNER: PlannerWords = PlannerWords {
    form: "Where, and how the turn is flown",
    results: "When to begin to roll out",
    title: "When to begin to roll out",
    asked: |left, target, bank| {
        let side = if left { "left" } else { "right" };
        format!(
            "Turning {side} at {} of bank onto {target:03}°, begin to roll out when the compass reads:",
            degrees(bank)
        )
    },
    rule: "Rule: latitude",
    rule_note: "in proportion",
    half_rule: "Rule: 15° + ½ latitude",
    half_rule_note: "in proportion",
    steady: "Closed form",
    steady_note: "a card at rest",
    float: "Simulated float",
    float_note: "by flying the turn",
    comes: |lead, exact, bare| {
        let bare = match bare {
            None => "The card never comes to show the bare reading.".to_owned(),
            Some(past) if past.abs() < 0.5 => {
                "Rolling out on the bare reading comes out on the target.".to_owned()
            }
            Some(past) => format!(
                "Rolling out as if the compass did not err comes out {} {} the target.",
                degrees(past.abs().round()),
                if past < 0.0 { "short of" } else { "past" }
            ),
        };
        format!(
            "All four leave {} of lead to stop the turn in. As the simulated aircraft rolls, \
             {exact:03}° is what ends on the target exactly. {bare}",
            degrees(lead)
        )
    },
    progress: "Flying the turns all round",
    cancel: "Cancel",
    resume: "Go on",
    table: "Readings at which to begin to roll out, by target",
    table_note: "Off if bare: how far short of (−) or past (+) the target the simulated aircraft comes out when it rolls out as if the compass did not err. The rules are common practice.",
    rose: "Roll-out rose: undershoot and overshoot by target",
    extremes: |place, extremes| {
        let part = |word: &str, (by, at): (i16, u16)| match by {
            0 => format!("no {word}"),
            by => format!("{word} up to {}° (onto {at:03}°)", by.abs()),
        };
        format!(
            "{place}: {}, {}.",
            part("undershoot", extremes.undershoot),
            part("overshoot", extremes.overshoot)
        )
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_answer_and_the_bare_reading_are_told() {
        let told = PLANNER.comes;
        assert!(told(7.5, 321, Some(23.4)).ends_with("comes out 23° past the target."));
        assert!(told(7.5, 321, Some(-3.0)).ends_with("comes out 3° short of the target."));
        assert!(
            told(7.5, 7, None).contains("007° is what ends on the target exactly. The card never")
        );
    }
}

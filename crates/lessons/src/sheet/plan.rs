//! The page of a lesson: a demonstration, when to say what, and the question it answers.

use super::{CAUTION, Column, Part, Sheet, Table, measures};
use crate::demonstration::{Act, Flown};

/// What is known of a demonstration.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LessonPlan {
    /// What it is called.
    pub title: String,
    /// Where and with what it is flown.
    pub under: String,
    /// What the class is to look for.
    pub look_for: String,
    /// What happens when.
    pub times: Vec<TimeRow>,
    /// What the instructor may say and must not forget.
    pub notes: Vec<String>,
    /// What the class is asked; empty for none.
    pub question: String,
    /// What should come back.
    pub answer: String,
    /// The rule of thumb, told after.
    pub rule: String,
    /// What the demonstration shows in numbers: what, and how much, with its unit.
    pub figures: Vec<(String, String)>,
}

/// A row of the time plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TimeRow {
    /// When, as it is to stand there: `0:30`.
    pub time: String,
    /// What is seen: the chapter.
    pub seen: String,
    /// What is said.
    pub said: String,
}

/// The most figures on a page; chosen: what a class can take in, those that are claimed first.
const MOST_FIGURES: usize = 6;

impl LessonPlan {
    /// The plan of a demonstration: its texts, with the figures that its flight gave.
    pub fn of(flown: &Flown) -> Self {
        let it = flown.demonstration();
        let lasts = flown.plays()[1] - flown.plays()[0];
        let lasts = format!("{} min of flight", measures::clock(lasts));
        let about = [flown.said(&it.aircraft), flown.said(&it.place), lasts];
        let about: Vec<String> = about.into_iter().filter(|it| !it.is_empty()).collect();
        let posed: Vec<_> = (it.cues.iter())
            .filter_map(|cue| match &cue.act {
                Act::Ask(question) => flown.posed(question),
                _ => None,
            })
            .collect();
        let asked = posed.iter().map(|it| {
            let choices = it.choices.join(" / ");
            format!("{} {choices}.", it.question)
        });
        let answered = posed.iter().map(|it| {
            let right = it.choices.get(it.right).map_or("", String::as_str);
            match &it.measured {
                Some(words) if right.starts_with("It ") => format!("It {words}."),
                Some(words) => format!("{right}: {words}."),
                None => format!("{right}."),
            }
        });
        Self {
            title: flown.said(&it.title),
            under: format!("{}.", about.join(". ")),
            look_for: flown.said(&it.look_for),
            times: times(flown),
            notes: (it.notes.iter())
                .map(|note| format!("{} min: {}", note.minutes, flown.said(&note.say)))
                .collect(),
            question: asked.collect::<Vec<_>>().join(" "),
            answer: answered.collect::<Vec<_>>().join(" "),
            rule: flown.said(&it.rule),
            figures: figures(flown),
        }
    }
}

/// A row for each chapter: what is told in it. Without chapters a row for each caption.
fn times(flown: &Flown) -> Vec<TimeRow> {
    let captions = flown.captions();
    let chapters = flown.chapters();
    if chapters.is_empty() {
        let row = captions.iter().map(|caption| TimeRow {
            time: measures::clock(caption.from),
            seen: String::new(),
            said: caption.text.clone(),
        });
        return row.collect();
    }
    let ends = (chapters.iter().skip(1))
        .map(|it| it.from)
        .chain([f64::INFINITY]);
    (chapters.iter().zip(ends))
        .map(|(chapter, end)| {
            let told: Vec<&str> = (captions.iter())
                .filter(|it| it.from >= chapter.from && it.from < end)
                .map(|it| it.text.as_str())
                .collect();
            TimeRow {
                time: measures::clock(chapter.from),
                seen: chapter.title.clone(),
                said: told.join(" "),
            }
        })
        .collect()
}

fn figures(flown: &Flown) -> Vec<(String, String)> {
    let it = flown.demonstration();
    let claimed = |name: &str| it.claims.iter().any(|claim| claim.figure == name);
    let mut names: Vec<&String> = it.figures.keys().collect();
    // The headline first, then what is claimed; the others in their order.
    names.sort_by_key(|name| (it.headline.as_ref() != Some(*name), !claimed(name)));
    let told = names.into_iter().filter_map(|name| {
        let words = flown.figures().get(name)?.words();
        Some((measures::name(it.figures.get(name)?)?, words))
    });
    told.take(MOST_FIGURES).collect()
}

/// The page of a demonstration; what is empty is left out.
pub fn sheet(plan: &LessonPlan) -> Sheet {
    let mut parts = Vec::new();
    let headed = |parts: &mut Vec<Part>, heading: &str, part: Part| {
        parts.push(Part::Heading(heading.to_owned()));
        parts.push(part);
    };
    if !plan.look_for.is_empty() {
        headed(
            &mut parts,
            "Look for",
            Part::Paragraph(plan.look_for.clone()),
        );
    }
    if !plan.times.is_empty() {
        let rows = (plan.times.iter())
            .map(|row| vec![row.time.clone(), row.seen.clone(), row.said.clone()]);
        let table = Table {
            columns: vec![
                Column::figures("time", 0.12),
                Column::words("chapter", 0.26),
                Column::words("what is said", 0.62),
            ],
            rows: rows.collect(),
            ..Table::default()
        };
        headed(&mut parts, "Time plan", Part::Table(table));
    }
    if !plan.notes.is_empty() {
        headed(
            &mut parts,
            "Speaking notes",
            Part::Points(plan.notes.clone()),
        );
    }
    if !plan.question.is_empty() {
        headed(
            &mut parts,
            "Question to the class",
            Part::Paragraph(plan.question.clone()),
        );
    }
    if !plan.answer.is_empty() {
        headed(&mut parts, "Answer", Part::Paragraph(plan.answer.clone()));
    }
    if !plan.rule.is_empty() {
        headed(
            &mut parts,
            "Rule of thumb",
            Part::Paragraph(plan.rule.clone()),
        );
    }
    if !plan.figures.is_empty() {
        let rows =
            (plan.figures.iter()).map(|(what, how_much)| vec![what.clone(), how_much.clone()]);
        let table = Table {
            columns: vec![Column::words("", 0.6), Column::figures("", 0.4)],
            rows: rows.collect(),
            ..Table::default()
        };
        headed(&mut parts, "Figures", Part::Table(table));
    }
    Sheet {
        title: plan.title.clone(),
        under: plan.under.clone(),
        parts,
        caution: CAUTION.to_owned(),
    }
}

//! The page of a lesson: a demonstration, when to say what, and the question it answers.

use super::{CAUTION, Column, Part, Sheet, Table};

/// What is known of a demonstration.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LessonPlan {
    /// What it is called.
    pub title: String,
    /// Where and with what it is flown.
    pub under: String,
    /// What a student can do afterwards.
    pub aim: String,
    /// What happens when.
    pub times: Vec<TimeRow>,
    /// What the instructor may say and must not forget.
    pub notes: Vec<String>,
    /// What the class is asked; empty for none.
    pub question: String,
    /// What should come back.
    pub answer: String,
    /// What the demonstration shows in numbers: what, and how much, with its unit.
    pub figures: Vec<(String, String)>,
}

/// A row of the time plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TimeRow {
    /// When, as it is to stand there: `0:30`.
    pub time: String,
    /// What is seen.
    pub seen: String,
    /// What is said.
    pub said: String,
}

/// The page of a demonstration; what is empty is left out.
pub fn sheet(plan: &LessonPlan) -> Sheet {
    let mut parts = Vec::new();
    let headed = |parts: &mut Vec<Part>, heading: &str, part: Part| {
        parts.push(Part::Heading(heading.to_owned()));
        parts.push(part);
    };
    if !plan.aim.is_empty() {
        headed(&mut parts, "Aim", Part::Paragraph(plan.aim.clone()));
    }
    if !plan.times.is_empty() {
        let rows = (plan.times.iter())
            .map(|row| vec![row.time.clone(), row.seen.clone(), row.said.clone()]);
        let table = Table {
            columns: vec![
                Column::figures("time", 0.12),
                Column::words("what is seen", 0.4),
                Column::words("what is said", 0.48),
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
    if !plan.figures.is_empty() {
        let rows =
            (plan.figures.iter()).map(|(what, how_much)| vec![what.clone(), how_much.clone()]);
        let table = Table {
            columns: vec![Column::words("", 0.7), Column::figures("", 0.3)],
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

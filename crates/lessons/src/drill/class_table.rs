//! Results gathered into the table of a class, with the commonest mistakes.

use super::Kind;
use super::results::{Results, Score, cell};
use serde::Serialize;
use std::collections::BTreeMap;

/// A class's results.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClassTable {
    /// The kinds that were asked, in their order.
    pub kinds: Vec<Kind>,
    /// A row a student, in the order of the files.
    pub students: Vec<Row>,
    /// All of them together.
    pub all: Row,
    /// The mistakes, the commonest first.
    pub mistakes: Vec<Mistake>,
}

/// One row of the table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Row {
    /// Who.
    pub student: String,
    /// For each of the table's kinds, how many were answered and passed.
    pub scores: Vec<Score>,
    /// Over all kinds.
    pub total: Score,
    /// How many tasks the set asks, answered or not.
    pub asked: usize,
}

/// A mistake that was made.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Mistake {
    /// In what kind of task.
    pub kind: Kind,
    /// Which.
    pub mistake: String,
    /// How often.
    pub times: usize,
    /// By how many students.
    pub students: usize,
}

impl ClassTable {
    /// Gathers the results of students.
    pub fn of(results: &[Results]) -> Self {
        let asked = |kind: &Kind| results.iter().any(|it| it.of_kind(*kind).answered > 0);
        let kinds: Vec<Kind> = Kind::ALL.into_iter().filter(asked).collect();
        let row = |student: String, of: &[Results]| {
            let score = |kind: &Kind| sum(of.iter().map(|it| it.of_kind(*kind)));
            let scores: Vec<Score> = kinds.iter().map(score).collect();
            Row {
                student,
                total: sum(scores.iter().copied()),
                asked: of.iter().map(|it| it.set.tasks(it.seed).len()).sum(),
                scores,
            }
        };
        let students = results
            .iter()
            .map(|it| row(it.student.clone(), std::slice::from_ref(it)))
            .collect();
        Self {
            students,
            all: row(String::new(), results),
            mistakes: mistakes(results),
            kinds,
        }
    }

    /// The table as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers and names alone: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// The table as CSV text: a line a student, passed and answered of each kind, and what was
    /// asked.
    pub fn to_csv(&self) -> String {
        let mut text = String::from("student");
        for kind in &self.kinds {
            let name = kind.name();
            text.push_str(&format!(",{name} passed,{name} answered"));
        }
        text.push_str(",passed,answered,asked\n");
        for row in self.students.iter() {
            text.push_str(&cell(&row.student));
            for score in row.scores.iter().chain([&row.total]) {
                text.push_str(&format!(",{},{}", score.passed, score.answered));
            }
            text.push_str(&format!(",{}\n", row.asked));
        }
        text
    }
}

fn sum(scores: impl Iterator<Item = Score>) -> Score {
    scores.fold(Score::default(), |sum, it| Score {
        answered: sum.answered + it.answered,
        passed: sum.passed + it.passed,
    })
}

fn mistakes(results: &[Results]) -> Vec<Mistake> {
    // How often each student made each.
    let mut made: BTreeMap<(Kind, &str), BTreeMap<usize, usize>> = BTreeMap::new();
    for (student, results) in results.iter().enumerate() {
        for answer in &results.answers {
            if let Some(mistake) = &answer.mistake {
                let by = made.entry((answer.record.task.kind, mistake)).or_default();
                *by.entry(student).or_default() += 1;
            }
        }
    }
    let mut mistakes: Vec<Mistake> = made
        .into_iter()
        .map(|((kind, mistake), by)| Mistake {
            kind,
            mistake: mistake.to_owned(),
            times: by.values().sum(),
            students: by.len(),
        })
        .collect();
    mistakes.sort_by_key(|it| std::cmp::Reverse((it.times, it.students)));
    mistakes
}

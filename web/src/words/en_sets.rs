//! English, for the page of sets.

use super::en_play::kind;
use super::en_situation::out_of_range;
use super::sets::{ClassWords, ComposeWords, HandOutWords, PreviewWords, SetWords};
use crate::sets::{Fault, Field, Part};
use crate::situation_form::Wrong;
use lessons::drill::COUNT;
use lessons::drill::record::Help;
use lessons::drill::set::MOST_CHARACTERS;

/// The page of sets.
pub(super) static SETS: SetWords = SetWords {
    parts: "Parts of this page",
    part: |part| match part {
        Part::Compose => "Compose",
        Part::Class => "Class",
    },
    kind,
    compose: ComposeWords {
        form: "The set",
        label,
        hint: |field| match field {
            Field::Title => "",
            Field::Minutes => "empty: none",
            Field::Seed => "empty: fresh tasks for each student; a number: the same for all",
            Field::Parts | Field::Count(_) | Field::Tolerance(_) => "",
            Field::Latitude(_) => "empty: any",
        },
        order: "Order",
        as_given: "As below",
        mixed: "Mixed",
        allowed: "Help that is allowed",
        help: |help| match help {
            Help::Pause => "Pause",
            Help::SlowMotion => "Slow motion",
            Help::GoBack => "Going back",
            Help::Reload => "Beginning again",
            Help::Uncover => "Seeing the heading",
        },
        tasks: "Tasks",
        nth: |at| format!("Part {}", at + 1),
        kind: "Task",
        level: "How hard",
        how_hard: |level| match level {
            1 => "Easy",
            2 => "Middle",
            _ => "Hard",
        },
        earlier: "Earlier",
        later: "Later",
        remove: "Remove",
        add: "Add tasks",
        undo: "Undo",
        redo: "Redo",
        open: "Open a set’s file",
        new: "New set",
        fault,
        mend: "Mend what is marked: then the set can be handed out.",
        refused: |reason| format!("This file holds no set that can be opened. {reason}."),
        unread: "This file could not be read.",
    },
    hand_out: HandOutWords {
        title: "Hand out",
        hint: "The link holds the whole set; no server keeps it. Students send back a file of \
               results, which you open under Class.",
        save: "Save the set’s file",
        open: "Open as a student",
        qti: "Save for a course platform (QTI 2.1)",
        qti_note: |with, without| {
            let left_out = match without {
                0 => String::new(),
                some => format!(
                    " {some} need the motion to be seen or flown and are left out: whatever is \
                     flown, and naming the cause beyond Easy."
                ),
            };
            format!(
                "The QTI package has {with} tasks, asked in words, the same for all \
                 students.{left_out}"
            )
        },
        qti_failed: "The package could not be made.",
    },
    preview: PreviewWords {
        title: "Preview",
        hint: "Without a seed every student gets others of the same kinds.",
        one: "Show me one",
        all: "Show all questions",
        right: "Right:",
        flown: "This one is flown, and marked from the record of the flight.",
        why: "Said after the answer",
        progress: |made, all| format!("{made} of {all} tasks made"),
        cancel: "Cancel",
        list: "The questions",
    },
    class: ClassWords {
        title: "Results of a class",
        about: "Open the results files that students sent back. Every answer is marked again from \
                its record, whatever mark the file says. All of it happens in this browser: nothing \
                is sent anywhere, and nothing is kept when you leave the page.",
        choose: "Open results files",
        drop: "or drop them here",
        progress: |file, done| format!("Marking {file} again: {done} answers"),
        left: |files| match files {
            0 => "the last file".to_owned(),
            1 => "1 more file".to_owned(),
            _ => format!("{files} more files"),
        },
        cancel: "Cancel",
        cancelled: "Cancelled: the files that were not finished are not in the table.",
        refused: "Not taken in",
        kept: "Files in the table",
        file: |answers, changed| {
            let answers = match answers {
                1 => "1 answer".to_owned(),
                _ => format!("{answers} answers"),
            };
            match changed {
                0 => answers,
                1 => format!("{answers}; 1 mark was not what its record gives, and is put right"),
                _ => format!(
                    "{answers}; {changed} marks were not what their records give, and are put right"
                ),
            }
        },
        remove: |file| format!("Take {file} out"),
        unread: "it could not be read as text.",
        too_long: "it is too long to be a file of results.",
        same: |file| format!("it holds the same as {file}."),
        sets: |sets| format!("These are results of {sets} different sets."),
        table: "Passed of answered, student by student",
        student: "Student",
        total: "All",
        unanswered: "Not answered",
        everyone: "All students",
        score: |passed, answered| match answered {
            0 => "–".to_owned(),
            _ => format!("{passed} of {answered}"),
        },
        mistakes: "Commonest mistakes",
        no_mistakes: "No mistake was made.",
        mistake: |mistake, times, students| {
            let by = if students == 1 {
                "1 student".to_owned()
            } else {
                format!("{students} students")
            };
            match times {
                1 => format!("{mistake}: once"),
                _ => format!("{mistake}: {times} times, {by}"),
            }
        },
        csv: "Save table as CSV",
        json: "Save table as JSON",
        xapi: "Save xAPI statements",
        xapi_note: "For a course platform. They name nobody: each student is an account made of \
                    the answers alone.",
        clear: "Clear the table",
    },
};

fn label(field: Field) -> &'static str {
    match field {
        Field::Title => "Title",
        Field::Minutes => "Time limit, minutes",
        Field::Seed => "Seed",
        Field::Parts => "Tasks",
        Field::Count(_) => "How many",
        Field::Latitude(_) => "Latitude",
        Field::Tolerance(_) => "Within ±°",
    }
}

fn fault(field: Field, fault: &Fault) -> String {
    let name = match field {
        Field::Minutes => "Time limit in minutes",
        Field::Tolerance(_) => "Tolerance",
        other => label(other),
    };
    match fault {
        Fault::Number(Wrong::OutOfRange { range, value }) => out_of_range(name, *range, *value),
        Fault::Number(Wrong::NotANumber(text)) => {
            format!("{name} must be {}, not “{text}”.", such(field))
        }
        Fault::Number(_) => format!("{name} must be {}.", such(field)),
        Fault::TooLong(count) => {
            format!("{name} can have at most {MOST_CHARACTERS} characters, not {count}.")
        }
        Fault::NotText => format!("{name} must be one line of text."),
        Fault::TooNearTheEquator(it, least) => format!(
            "{name} must be at least {least}° from the equator for “{}”: nearer to it the errors are \
             too small.",
            kind(*it)
        ),
        Fault::NoParts => "A set needs tasks: add some.".to_owned(),
        Fault::TooMany(count) => format!(
            "A set can have at most {} tasks in all, not {count}.",
            COUNT.most
        ),
    }
}

fn such(field: Field) -> &'static str {
    match field {
        Field::Latitude(_) => "a number of degrees, such as 52 or 33 S, or empty for any",
        Field::Tolerance(_) => "a number of degrees, such as 10",
        Field::Minutes => "a number, such as 30, or empty for none",
        Field::Seed => "a whole number, such as 7, or empty for fresh tasks",
        _ => "a whole number, such as 5",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::drill::LATITUDE;

    #[test]
    fn a_fault_is_one_sentence_that_names_the_field() {
        let beyond = Wrong::OutOfRange {
            range: LATITUDE,
            value: -71.0,
        };
        for (field, is, said) in [
            (
                Field::Latitude(1),
                Fault::Number(beyond),
                "Latitude must be from −70° to 70°, not −71°.",
            ),
            (
                Field::Seed,
                Fault::Number(Wrong::NotANumber("x".to_owned())),
                "Seed must be a whole number, such as 7, or empty for fresh tasks, not “x”.",
            ),
            (
                Field::Count(0),
                Fault::Number(Wrong::Empty),
                "How many must be a whole number, such as 5.",
            ),
            (
                Field::Parts,
                Fault::TooMany(501),
                "A set can have at most 500 tasks in all, not 501.",
            ),
        ] {
            assert_eq!(fault(field, &is), said);
        }
    }
}

//! English, for what is due, how practice goes, and what is kept.

use super::en_play::{hard, kind};
use super::progress::{GoingWords, KeptWords, ProgressWords, SettingsWords, TodayWords};
use crate::drills::Fault;
use lessons::drill::progress::OCTANTS;
use lessons::drill::{Class, Hemisphere, Manoeuvre, Octant};

/// What is due, how practice goes, and what is kept.
pub(super) static PROGRESS: ProgressWords = ProgressWords {
    fault,
    reading: "Reading what this browser kept…",
    kind,
    class,
    hard,
    today: TODAY,
    going: GOING,
    kept: KEPT,
};

fn fault(fault: Fault) -> String {
    match fault {
        Fault::Refused => {
            "This browser lets the page keep nothing, so practice goes on but is forgotten when \
             the page closes: save it under “Kept here” before you leave."
        }
        Fault::Blocked => {
            "Another tab with an older page holds what is kept here: close that tab; practice goes \
             on meanwhile and is kept as soon as it is closed."
        }
        Fault::Newer => {
            "What is kept here was made by a newer page: load this page again; practice goes on \
             until then but is forgotten when the page closes."
        }
        Fault::Full => {
            "This browser has no room left to keep more: what was kept stays, practice goes on, and \
             what is new is forgotten when the page closes, unless you save it under “Kept here”."
        }
        Fault::Lost => {
            "This browser’s storage broke down: practice goes on, and what is new is forgotten when \
             the page closes, unless you save it under “Kept here”."
        }
        Fault::Damaged(1) => {
            "One thing that is kept here is damaged and cannot be read: it is left as it is, and \
             all the rest is here."
        }
        Fault::Damaged(count) => {
            return format!(
                "{count} things that are kept here are damaged and cannot be read: they are left \
                 as they are, and all the rest is here."
            );
        }
    }
    .to_owned()
}

fn octant(octant: Octant) -> &'static str {
    let at = OCTANTS.iter().position(|it| *it == octant);
    GOING.octants[at.unwrap_or(0)]
}

fn class(it: &Class) -> String {
    let flown = match it.manoeuvre {
        Manoeuvre::LeftTurn => "left turn, ",
        Manoeuvre::RightTurn => "right turn, ",
        Manoeuvre::SpeedingUp => "speeding up, ",
        Manoeuvre::SlowingDown => "slowing down, ",
        Manoeuvre::Level => "",
    };
    let side = match it.hemisphere {
        Hemisphere::Northern => "",
        Hemisphere::Southern => ", southern hemisphere",
    };
    format!("{}: {flown}{}{side}", kind(it.kind), octant(it.octant))
}

/// Small numbers as words.
fn count(of: usize) -> String {
    let words = [
        "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve",
    ];
    words
        .get(of)
        .map_or_else(|| of.to_string(), |it| (*it).to_owned())
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|it| it.to_ascii_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

fn some(of: usize, one: &str, more: &str) -> String {
    match of {
        0 => format!("no {more}"),
        1 => format!("1 {one}"),
        _ => format!("{of} {more}"),
    }
}

fn percent(share: f64) -> String {
    format!("{} %", (100.0 * share).round())
}

fn spent(seconds: f64) -> String {
    match seconds {
        it if it <= 0.0 => "–".to_owned(),
        it if it < 59.5 => format!("{} s", it.round()),
        it if it < 5970.0 => format!("{} min", (it / 60.0).round()),
        it => format!("{:.1} h", it / 3600.0),
    }
}

/// How far the level has grown.
fn harder(grown: usize, classes: usize) -> String {
    match (grown, classes) {
        (0, _) => " What holds for two weeks is asked harder; nothing does yet.".to_owned(),
        (grown, all) if grown == all => {
            " All of it holds for two weeks, so it is asked at the hardest level.".to_owned()
        }
        (grown, all) => format!(
            " {} of {all} situations hold for two weeks and are asked at the hardest level.",
            capital(&count(grown))
        ),
    }
}

const TODAY: TodayWords = TodayWords {
    title: "Today",
    next: |queue, seconds| {
        let (old, new) = (queue.to_refresh(), queue.new_ones());
        let what = match (old, new) {
            (0, new) => format!("{} new", count(new)),
            (old, 0) => format!("{} to refresh", count(old)),
            (old, new) => format!("{} to refresh, {} new", count(old), count(new)),
        };
        let minutes = (seconds / 60.0).round().max(1.0) as usize;
        let long = if minutes == 1 { "minute" } else { "minutes" };
        format!("{}. About {} {long}.", capital(&what), count(minutes))
    },
    done: |next, practised| {
        let begun = if practised {
            "That is all for today."
        } else {
            "Nothing is due today."
        };
        match next {
            Some(1) => format!("{begun} The next comes back tomorrow."),
            Some(days) => format!(
                "{begun} The next comes back in {} days.",
                count(days as usize)
            ),
            None => begun.to_owned(),
        }
    },
    begin: "Begin",
    more: "Learn four more",
    list: "What comes",
    is_new: "new",
    to_refresh: "refresh",
    looking: "Looking for the next task…",
    take: "Take the nearest so far",
    left: |left| match left {
        1 => "The last one for today".to_owned(),
        left => format!("{left} left today"),
    },
    stop: "Stop here",
    none: |why| format!("No task was found: {why}. Choose another latitude or level below."),
    settings: SettingsWords {
        title: "How you fly",
        hemisphere: "Hemisphere",
        northern: "North",
        southern: "South",
        both: "Both",
        away: "Latitude",
        away_hint: "degrees, 20 to 70; empty for anywhere",
        level: "How hard",
        grows: "It grows with you",
        levels: [
            "1: gentle turns",
            "2: headings between",
            "3: steep and mixed",
        ],
        tolerance: "Within",
        tolerance_hint: "degrees of the heading, 1 to 30",
        refused: |typed, [least, most]| {
            format!("It must be from {least}° to {most}°, not “{typed}”.")
        },
    },
};

const GOING: GoingWords = GoingWords {
    title: "Progress",
    empty: "Nothing practised yet. Each answer adds to a picture of how you do on every heading, \
            how long it will hold, and where the time went.",
    to_today: "Practise what is due",
    next: |it| {
        let so_far = format!(
            "{} on {}.{}",
            some(it.answers, "answer", "answers"),
            some(it.days, "day", "days"),
            it.grown
                .map_or(String::new(), |grown| harder(grown, it.classes))
        );
        let Some(least) = it.least else {
            return so_far;
        };
        let (named, recall) = (class(&least.class), percent(it.recall));
        if it.is_due {
            format!(
                "{so_far} Next: refresh “{named}”, of which you are least sure ({recall} today)."
            )
        } else {
            format!("{so_far} All of it holds today; “{named}” is the least sure ({recall}).")
        }
    },
    weakest: |it, passed, of| {
        format!(
            "“{}” goes least well: {passed} of {of} passed in the last four weeks.",
            kind(it)
        )
    },
    practise_it: "Practise it",
    which: "Show",
    all_kinds: "All kinds of task",
    all_classes: "All that was practised",
    rose: "Skill in turns, by heading",
    rose_note: "The chance that you get it right today. Empty: not practised yet.",
    left: "left turns",
    right: "right turns",
    octants: [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ],
    skill: |skill| skill.recall.map_or_else(|| "not yet".to_owned(), percent),
    rose_said: |rose| {
        let mut known: Vec<(f64, String)> = Vec::new();
        for (sides, octant) in rose.iter().zip(GOING.octants) {
            for (skill, side) in sides.iter().zip(["left", "right"]) {
                if let Some(recall) = skill.recall {
                    known.push((
                        recall,
                        format!("{side} turns, {octant}: {}", percent(recall)),
                    ));
                }
            }
        }
        known.sort_by(|a, b| a.0.total_cmp(&b.0));
        match (known.first(), known.last()) {
            (Some(least), Some(most)) if known.len() > 1 => {
                format!("Least sure: {}. Surest: {}.", least.1, most.1)
            }
            (Some(only), _) => format!("{}.", capital(&only.1)),
            _ => "No turns practised yet.".to_owned(),
        }
    },
    curve: "How long it holds",
    curve_note: "The chance that you get it right, if you do not practise.",
    now: "today",
    days: "days from today",
    refresh: "refresh under this",
    in_days: |days| match days {
        0 => "today".to_owned(),
        1 => "tomorrow".to_owned(),
        days => format!("in {days} days"),
    },
    percent,
    by_day: "Time, the last seven days",
    by_kind: "Time by kind, the last four weeks",
    time: "time",
    day: |weekday, ago| match ago {
        0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        _ => [
            "Monday",
            "Tuesday",
            "Wednesday",
            "Thursday",
            "Friday",
            "Saturday",
            "Sunday",
        ][weekday % 7]
            .to_owned(),
    },
    spent,
    figures: "As a table",
    heading: "heading",
    when: "day",
    chance: "chance",
    kinds: "kind of task",
};

const KEPT: KeptWords = KeptWords {
    title: "Kept here",
    private: "Your practice is kept in this browser, on this device, and nowhere else. No one else \
              sees it, and clearing the browser’s data deletes it.",
    holds: |answers, handed, begun| {
        if answers + handed + begun == 0 {
            return "Nothing is kept yet. Practise a task, or bring a file from another browser."
                .to_owned();
        }
        let others = [
            (handed, "set from an instructor", "sets from an instructor"),
            (begun, "task that was begun", "tasks that were begun"),
        ];
        let others = others.into_iter().filter(|(of, ..)| *of > 0);
        let others = others.map(|(of, one, more)| format!(", {}", some(of, one, more)));
        format!(
            "{}{}.",
            capital(&some(answers, "answer", "answers")),
            others.collect::<String>()
        )
    },
    save: "Save a copy",
    save_note: "All of it in one file: for another device, or to be safe.",
    open: "Bring in a copy",
    open_note: "You are asked before anything here changes.",
    delete: "Delete it…",
    delete_note: "All of it, from this browser.",
    ask_import: |file, here| {
        format!(
            "The file has {}; {} here. Add it to what is here, or put it in its place?",
            some(file, "answer", "answers"),
            match here {
                1 => "1 is".to_owned(),
                here => format!("{here} are"),
            }
        )
    },
    add: "Add it",
    replace: "Replace what is here",
    leave: "Leave it as it is",
    ask_delete: |here| {
        format!(
            "Delete all that is kept here, with {}?",
            some(here, "answer", "answers")
        )
    },
    delete_all: "Delete all of it",
    deleted: "Deleted.",
    imported: |answers| format!("Brought in: {} now.", some(answers, "answer", "answers")),
    undo: "Undo",
    undone: "Undone.",
    unread: "The file cannot be read.",
    too_long: "The file is over 200 MB: it is no copy of practice.",
    refused: |name, error| format!("“{name}” is no copy of practice that can be read. {error}."),
};

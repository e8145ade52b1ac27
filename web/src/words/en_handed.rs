//! English, for a set that was handed out.

use super::en_play::kind;
use super::handed::HandedWords;
use lessons::drill::record::Help;
use lessons::drill::set::{Order, Part};

/// A set that was handed out.
pub(super) static HANDED: HandedWords = HandedWords {
    part: "Handed out",
    title: "A set of tasks",
    about: "Your instructor handed out a set as a link, a QR code or a file. Open the link, or \
            choose the file here.",
    choose: "Open a set’s file",
    opening: "Opening the set…",
    no_set: "This link opens a flight or a demonstration, not a set: open it on the page Fly.",
    unread: "This file could not be read.",
    refused: |reason| format!("This file holds no set that can be opened. {reason}."),
    asked: |order| match order {
        Order::AsGiven => "It asks, in this order:",
        Order::Mixed => "It asks, in mixed order:",
    },
    asks,
    limit: |seconds| {
        format!(
            "Time limit: {}. It runs from the first task to the last, also while you read what is \
             said after an answer, and while the page is closed.",
            time(seconds)
        )
    },
    allowed,
    name: "Your name, if you like",
    name_hint: "It stands in the file that you send; empty is allowed",
    name_too_long: |most| format!("Your name can have at most {most} characters."),
    begin: "Begin",
    before: |answered, all| {
        format!("You have begun this set before: {answered} of {all} tasks are answered.")
    },
    go_on: "Go on",
    private: "Nothing is sent anywhere: what you answer stays in this browser until you send the \
              file yourself.",
    at: |at, all| format!("Task {at} of {all}"),
    left: |seconds| format!("{} left", time(seconds.max(0.0))),
    last_minute: "Less than a minute is left.",
    done: "The set is done",
    over: "Time is up",
    score: |passed, answered, asked| {
        format!("{passed} passed of {answered} answered; the set asks {asked}.")
    },
    of_kind: |it, passed, answered| format!("{}: {passed} of {answered}", kind(it)),
    send: "Save your results and send the file to your instructor, by mail or as you were told.",
    save: "Save results",
    csv: "Save as CSV",
    xapi: "Save xAPI statements",
    no_xapi: "xAPI statements need a network once; go online and try again.",
    xapi_note: "xAPI is for a course platform. The statements do not have your name.",
};

fn asks(part: &Part) -> String {
    let count = part.count;
    let tasks = if count == 1 { "task" } else { "tasks" };
    let place = part.latitude_deg.map_or(String::new(), |it| {
        let side = if it < 0.0 { "S" } else { "N" };
        format!(" at {}° {side}", it.abs())
    });
    let within = if part.kind.is_flown() {
        format!(", within ±{}°", part.tolerance_deg)
    } else {
        String::new()
    };
    format!(
        "{}: {count} {tasks}{place}{within}; {}",
        kind(part.kind),
        part.kind.description()
    )
}

fn allowed(help: &[Help]) -> String {
    if help.is_empty() {
        return "No help counts: no pause, no slow motion, no going back, no beginning again."
            .to_owned();
    }
    let names = help.iter().map(|it| match it {
        Help::Pause => "pausing",
        Help::SlowMotion => "slow motion",
        Help::GoBack => "going back",
        Help::Reload => "beginning a task again",
        Help::Uncover => "seeing the real heading",
    });
    format!("Allowed: {}.", names.collect::<Vec<_>>().join(", "))
}

/// A time in minutes and seconds.
fn time(seconds: f64) -> String {
    let whole = seconds.ceil() as u64;
    let (minutes, seconds) = (whole / 60, whole % 60);
    match (minutes, seconds) {
        (0, _) => format!("{seconds} s"),
        (_, 0) => format!("{minutes} min"),
        _ => format!("{minutes} min {seconds:02} s"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_told_in_minutes_and_seconds() {
        assert_eq!(time(1800.0), "30 min");
        assert_eq!(time(61.2), "1 min 02 s");
        assert_eq!(time(9.5), "10 s");
        assert_eq!(time(0.0), "0 s");
    }
}

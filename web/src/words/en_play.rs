//! English, for a task from its question to its explanation, and the form that chooses one.

use super::en::sided;
use super::en_situation::out_of_range;
use super::play::{IdealWords, PlayWords, PractiseWords, Seen};
use crate::drills::{Unread, Verdict};
use lessons::drill::record::Help;
use lessons::drill::{DrillError, Kind, North};

pub(super) static PLAY: PlayWords = PlayWords {
    kind,
    hard,
    preparing: "The task is being prepared …",
    begun_before: |allowed| {
        if allowed {
            "You began this task before, which is allowed here."
        } else {
            "You began this task before, so this answer gives no mark."
        }
    },
    choices: "Answers",
    watch: "Watch",
    watch_again: "Watch again",
    begin: "Begin",
    fly_on: "Fly on",
    pause: "Pause",
    finish: "Finish",
    set_indicator: "Set by the compass",
    slow_down: "Slower",
    speed_up: "Faster",
    tell: "Say what is shown",
    again: "Try again",
    again_from_here: |kind, at_end| match kind {
        _ if !at_end => "Try from here",
        Kind::RollOut | Kind::TimedTurn => "Try the roll-out again",
        _ => "Try again from where it counts",
    },
    next: "Next task",
    how: |kind| match kind {
        Kind::RollOut => {
            "Bank with the buttons or the arrow keys. The flight ends by itself once you have been \
             level for 10 s after the turn."
        }
        Kind::TimedTurn => {
            "The clock starts with the flight. The flight ends by itself once you have been level \
             for 10 s after the turn."
        }
        Kind::HoldHeading => {
            "Look for the middle of the swing. The flight ends by itself when the time is over."
        }
        Kind::SetGyro => {
            "You do not fly: you set the indicator. Faster is allowed, for it helps nobody."
        }
        _ => "",
    },
    keys: |kind| match kind {
        Kind::SetGyro => {
            "Keys: Space begins, S sets, + and − change the pace, F finishes, T tells."
        }
        Kind::RollOut | Kind::TimedTurn | Kind::HoldHeading => {
            "Keys: Space begins, ← → bank by 5°, with Shift by 1°, L levels, F finishes, T tells."
        }
        _ => "",
    },
    keys_after: |kind| match kind {
        Kind::Corrections => "Keys: N goes on, R tries again.",
        Kind::TimedTurn => {
            "Keys: N goes on, C flies it by the compass, R tries again, B tries a part of it again, Space plays, + and − change the pace."
        }
        kind if kind.is_flown() => {
            "Keys: N goes on, R tries again, B tries a part of it again, Space plays, + and − change the pace."
        }
        _ => "Keys: N goes on, R tries again, Space plays, + and − change the pace.",
    },
    controls: "Controls",
    bank_by: |degrees| match degrees {
        ..0 => format!("{}° left", -degrees),
        _ => format!("{degrees}° right"),
    },
    level: "Level",
    clock: "Clock",
    clock_value: |seconds| {
        let whole = seconds.max(0.0) as u32;
        format!("{}:{:02}", whole / 60, whole % 60)
    },
    bank_asked: |degrees| format!("asked: {}", sided(degrees, "right", "left", "level")),
    settings: |count| match count {
        1 => "set once".to_owned(),
        _ => format!("set {count} times"),
    },
    helps: "Help",
    help: |help, allowed| match (help, allowed) {
        (Help::Pause, false) => "Pause: no mark then",
        (Help::SlowMotion, false) => "Slower: no mark then",
        (Help::Uncover, false) => "Show the heading: no mark then",
        (Help::Pause, true) => "Pause",
        (Help::SlowMotion, true) => "Slower",
        (Help::Uncover, true) => "Show the heading",
        (Help::GoBack, _) => "Go back",
        (Help::Reload, _) => "Begin again",
    },
    paused: "Paused",
    asleep: "Paused: the page was out of sight",
    rate: |rate| format!("{} of real time", super::en::factor(rate)),
    seen,
    from_above: "The flight from above, its track, and the heading and the compass as rays.",
    verdict: |verdict| match verdict {
        Verdict::Right => "Right".to_owned(),
        Verdict::Wrong => "Not right".to_owned(),
        Verdict::Within => "Within the tolerance".to_owned(),
        Verdict::Beyond => "Beyond the tolerance".to_owned(),
        Verdict::Unmarked => "No mark".to_owned(),
    },
    not_counted: |reason| format!("No mark: {reason}."),
    yours_is: |choice, mistake| format!("Your answer: {choice} ({mistake})"),
    right_is: |choice| format!("The right answer: {choice}"),
    off,
    within: |tolerance| format!("within {tolerance}°"),
    mark: |error, tolerance, has_side| {
        format!(
            "Off by {}; up to {tolerance}° is within the tolerance.",
            off(error, has_side)
        )
    },
    happened: "What happened",
    why: "Why",
    rule: "The rule of thumb",
    turns: super::en_turns::TURNS,
    ideals: "When to begin to roll out",
    ideal: IdealWords {
        by_rule: "By the rule: latitude",
        by_half_rule: "By the rule: 15° + ½ latitude",
        by_time_rule: "By the rule: 3° a second",
        closed_form: "By the closed form",
        simulation: "By the simulation",
        yours: "Yours",
        seconds: |seconds| format!("{seconds:.1} s"),
    },
    replay: "The flight again",
    moment: "Moment of the flight",
    moment_value: |seconds| format!("{seconds:.1} s"),
    play: "Play",
    beside: "Beside the card",
    bowl: "The bowl, cut away, with the Earth's field and what pulls at the card.",
    torques: "The torques about the card's axis, as bars that sum to the net.",
    card_lines: "Deviation card",
    card_columns: ["Compass", "Deviation"],
    swing_columns: ["On", "Deviation"],
    given: "Given",
    variation: "Variation",
    north: |north| match north {
        North::True => "True heading",
        North::Magnetic => "Magnetic heading",
        North::Compass => "Compass heading",
    },
    east_west: |degrees| match degrees {
        0.0 => "0°".to_owned(),
        west if west < 0.0 => format!("{}° W", -west),
        east => format!("{east}° E"),
    },
    cardinals: ["north", "east", "south", "west"],
    views: ["From above", "Bowl", "Torques"],
    practise: PractiseWords {
        title: "Practise",
        hint: "Every task is new. Answers count for what is due next.",
        kind: "Kind of task",
        level: "How hard",
        levels: ["1 easy", "2 middle", "3 hard"],
        tolerance: "Tolerance",
        place: "Where",
        hemispheres: ["Anywhere", "North", "South"],
        latitude: "Latitude",
        latitude_hint: "degrees, such as 45 S; blank for any",
        seed: "Seed",
        seed_hint: "a number gives the same task again; blank for a new one",
        start: "Start",
        change: "Choose another kind",
        had_again: |seed| format!("Seed {seed}. This page's address gives the same task again."),
        unread,
    },
};

fn unread(unread: &Unread) -> String {
    match unread {
        Unread::Kind(text) => {
            format!("There is no kind of task “{text}”: choose one of the eight.")
        }
        Unread::Seed(text) => {
            let most = u64::MAX;
            format!("Seed must be a whole number from 0 to {most}, not “{text}”.")
        }
        Unread::Number(text) => {
            let most = u32::MAX;
            format!("Number must be a whole number from 0 to {most}, not “{text}”.")
        }
        Unread::Latitude(text) => {
            format!("Latitude must be degrees from −70 to 70, such as 45 S, not “{text}”.")
        }
        Unread::OtherSide(text) => {
            format!("Latitude “{text}” is not in the hemisphere that is chosen.")
        }
        Unread::Level(text) => format!("How hard must be 1, 2 or 3, not “{text}”."),
        Unread::Tolerance(text) => format!("Tolerance must be from 1° to 30°, not “{text}”."),
        Unread::Of(text) => {
            format!("The link's “of” must be timed-turn or left out, not “{text}”.")
        }
        Unread::Task(error) => no_task(error),
    }
}

/// Why there is no such task.
fn no_task(error: &DrillError) -> String {
    match error {
        DrillError::OutOfRange { field, reason } => {
            let name = match *field {
                "latitude_deg" => "Latitude",
                "tolerance_deg" => "Tolerance",
                _ => "How hard",
            };
            out_of_range(name, reason.range, reason.value)
        }
        DrillError::TooNearTheEquator {
            kind: it,
            latitude,
            least,
        } => format!(
            "“{}” needs a latitude at least {least}° from the equator, not {latitude}°: nearer to \
             it the errors are too small.",
            kind(*it)
        ),
        DrillError::NoTurnByTheCompass(it) => format!(
            "Only “{}” can be the turn of a timed turn, not “{}”.",
            kind(Kind::RollOut),
            kind(*it)
        ),
        other => format!("{other}."),
    }
}

/// How hard a task is, in a word.
pub(super) fn hard(level: u8) -> &'static str {
    match level {
        1 => "easy",
        2 => "middle",
        _ => "hard",
    }
}

/// What a kind of task is called, on every page.
pub(super) fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Predict => "Predict",
        Kind::Read => "Read the card",
        Kind::RollOut => "Roll out",
        Kind::TimedTurn => "Timed turn",
        Kind::HoldHeading => "Hold a heading",
        Kind::SetGyro => "Set the gyro",
        Kind::NameTheCause => "Name the cause",
        Kind::Corrections => "Corrections",
    }
}

fn off(error: f64, has_side: bool) -> String {
    let by = (10.0 * error.abs()).round() / 10.0;
    match error {
        _ if by == 0.0 => "0°".to_owned(),
        _ if !has_side => format!("{by}°"),
        left if left < 0.0 => format!("{by}° left"),
        _ => format!("{by}° right"),
    }
}

fn seen(seen: Seen) -> String {
    let heading = |name: &str, it: Option<u16>| it.map(|it| format!("{name} {it:03}°"));
    let bank = seen.bank.map(|it| match it {
        0 => "wings level".to_owned(),
        _ => format!("bank {}", sided(it, "right", "left", "level")),
    });
    let turn = seen
        .rate_of_turn
        .map(|it| format!("turning at {}° a second", f64::from(it.abs()) / 10.0));
    let parts: Vec<String> = [
        heading("compass", seen.compass),
        heading("heading", seen.heading),
        heading("indicator", seen.indicator),
        bank,
        turn,
        seen.time.map(|it| format!("{it} seconds")),
    ]
    .into_iter()
    .flatten()
    .collect();
    let said = parts.join(", ");
    let mut letters = said.chars();
    match letters.next() {
        Some(first) => std::iter::once(first.to_ascii_uppercase())
            .chain(letters)
            .chain(['.'])
            .collect(),
        None => String::new(),
    }
}

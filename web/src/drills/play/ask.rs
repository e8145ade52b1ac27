//! What a student can ask for while a task is put, and the keys for it.

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ask {
    /// The choice at a place, from 0.
    Choose(usize),
    /// Begin, watch, go on; or stand still.
    GoOn,
    /// More bank by so many degrees, right positive.
    Bank(i8),
    /// Level the wings.
    Level,
    /// Set the heading indicator by the compass.
    SetIndicator,
    /// End the flight and have it marked.
    Finish,
    /// Show the real heading.
    Uncover,
    /// Half as fast.
    SlowDown,
    /// Twice as fast.
    SpeedUp,
    /// See a step of what was flown.
    LookAt(u64),
    /// Another try from the start.
    Again,
    /// Another try from the moment that is seen.
    AgainFromHere,
    /// The same turn by the compass.
    ByTheCompass,
    /// The next task.
    Next,
    /// Say in words what is shown.
    Tell,
}

/// What a key asks for; `shift` says whether Shift is held. The second value says whether it asks
/// again while it is held down.
pub(super) fn key(key: &str, shift: bool) -> Option<(Ask, bool)> {
    let by = if shift { 1 } else { 5 };
    Some(match key.to_ascii_lowercase().as_str() {
        "arrowleft" => (Ask::Bank(-by), true),
        "arrowright" => (Ask::Bank(by), true),
        "l" => (Ask::Level, false),
        " " => (Ask::GoOn, false),
        "s" => (Ask::SetIndicator, false),
        "f" => (Ask::Finish, false),
        "u" => (Ask::Uncover, false),
        "-" => (Ask::SlowDown, false),
        "+" | "=" => (Ask::SpeedUp, false),
        "r" => (Ask::Again, false),
        "b" => (Ask::AgainFromHere, false),
        "c" => (Ask::ByTheCompass, false),
        "n" => (Ask::Next, false),
        "t" => (Ask::Tell, false),
        digit => {
            let number: usize = digit.parse().ok().filter(|it| (1..=9).contains(it))?;
            (Ask::Choose(number - 1), false)
        }
    })
}

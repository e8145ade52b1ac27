//! Everything a user can ask for, and the keys that ask for it.
//!
//! One table makes both the behaviour of the keys and the list of them on the page.

use crate::cover::Cover;
use crate::words::FlightWords;

/// What a user asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Intent {
    /// More bank by so many degrees, right positive.
    Bank(i8),
    /// Wings level, rudder centred.
    LevelWings,
    /// More airspeed by so many knots.
    Speed(i8),
    /// A steeper climb by so many degrees.
    Climb(i8),
    /// More rudder by so many quarters of its travel, right positive.
    Rudder(i8),
    /// Pause, or go on: fly at the end of the flight, replay from an earlier moment.
    Pause,
    /// Replay what was flown from the moment that is looked at, or else from its start; or pause
    /// the replay.
    Replay,
    /// Mark the start of a stretch to replay over and over, then its end; or clear it.
    Loop,
    /// Pause and fly on by a tenth of a second; or look as much further on.
    Step,
    /// Pause and look at what was a tenth of a second earlier.
    LookBack,
    /// Look so many seconds further on, or back.
    LookBy(i8),
    /// Look at the moment so many seconds after the start.
    LookAt(f64),
    /// Look at the start of the flight.
    LookAtStart,
    /// Return to the end of the flight.
    LookAtEnd,
    /// Look at the event before what is seen.
    LastEvent,
    /// Look at the event after what is seen.
    NextEvent,
    /// Fly on from the moment that is looked at; the flight so far is kept as the old one.
    FlyFromHere,
    /// Return to the old flight; the one under way is then the old one.
    ReturnToOld,
    /// Half as fast.
    SlowDown,
    /// Twice as fast.
    SpeedUp,
    /// Fly again from the start, the place kept.
    Restart,
    /// Show or hide the list of keys.
    ShowKeys,
    /// Show or hide why the card does what it does.
    ShowWhy,
    /// Show or fold the situation.
    ShowSituation,
    /// Undo the last change of the situation that is being set.
    Undo,
    /// Show or hide the timeline.
    ShowTimeline,
    /// Show two at once, or one.
    ShowBeside,
    /// Show or hide what makes films of the flight.
    ShowFilm,
    /// Set the heading indicator to what the compass reads.
    SetIndicator,
    /// More drift of the heading indicator's own by so many degrees an hour.
    MechanicalDrift(i8),
    /// Show large the card, or what stands beside it.
    ChangeView,
    /// Show beside the card the next of rose, track and heading indicator.
    ChangeAside,
    /// Draw the chart against time or against heading.
    ChangeChart,
    /// Change between day and night.
    ChangeLight,
    /// Say the situation in words.
    Tell,
    /// Begin presenter mode, or end it.
    Present,
    /// End presenter mode.
    StopPresenting,
    /// The next step of a lesson: raise the curtain, else show what is covered, else pause or fly
    /// on. Of the demonstration that is open: play on from where it stands, else go to the next
    /// cue.
    Advance,
    /// Cover the compass and let the class say what it shows.
    AskClass,
    /// Let the curtain down over everything, or raise it.
    Curtain,
    /// Cover the compass, the heading, nothing: the next of these.
    ChangeCover,
    /// Cover this, or show it again.
    ToggleCover(Cover),
    /// Of the demonstration that is open: from where it stands at a cue, play on; else go to the
    /// next cue.
    NextCue,
    /// Go back to the cue before.
    LastCue,
}

impl Intent {
    /// Whether this moves the aircraft's controls, the heading indicator's among them.
    pub(crate) fn moves_controls(self) -> bool {
        matches!(
            self,
            Self::Bank(_)
                | Self::LevelWings
                | Self::Speed(_)
                | Self::Climb(_)
                | Self::Rudder(_)
                | Self::SetIndicator
                | Self::MechanicalDrift(_)
        )
    }
}

impl Intent {
    /// Whether this belongs to a lesson, which a slide clicker leads whether or not keys fly.
    pub(crate) fn leads_lesson(self) -> bool {
        matches!(
            self,
            Self::Advance | Self::AskClass | Self::StopPresenting | Self::NextCue | Self::LastCue
        )
    }
}

/// A key that asks for something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Binding {
    /// What the browser calls the key (`KeyboardEvent.key`, letters in lower case).
    key: &'static str,
    /// Whether Shift must be held; `None`: it does not matter.
    shift: Option<bool>,
    /// What it asks for.
    pub(crate) intent: Intent,
    /// Whether it asks again while held down.
    repeats: bool,
    /// What stands on the key, or its name.
    pub(crate) cap: &'static str,
}

impl Binding {
    const fn held(key: &'static str, shift: bool, intent: Intent, cap: &'static str) -> Self {
        Self {
            key,
            shift: Some(shift),
            intent,
            repeats: true,
            cap,
        }
    }

    const fn letter(key: &'static str, intent: Intent, cap: &'static str) -> Self {
        Self {
            key,
            shift: None,
            intent,
            repeats: false,
            cap,
        }
    }

    /// The key as the `aria-keyshortcuts` attribute names it.
    pub(crate) fn shortcut(&self) -> String {
        let key = if self.key == " " { "Space" } else { self.key };
        match self.shift {
            Some(true) => format!("Shift+{key}"),
            _ => key.to_owned(),
        }
    }
}

/// A line of the key list: keys that belong together and what they do.
pub(crate) struct Line {
    /// The keys, in the order in which the words name them.
    pub(crate) bindings: &'static [Binding],
    /// What they do.
    pub(crate) words: fn(&FlightWords) -> &'static str,
    /// Whether Shift is shown before the keys.
    pub(crate) with_shift: bool,
}

impl Line {
    const fn new(bindings: &'static [Binding], words: fn(&FlightWords) -> &'static str) -> Self {
        Self {
            bindings,
            words,
            with_shift: false,
        }
    }
}

/// The keys, as they are listed and as they act.
pub(crate) const KEYS: &[Line] = &[
    Line::new(
        &[
            Binding::held("ArrowLeft", false, Intent::Bank(-5), "←"),
            Binding::held("ArrowRight", false, Intent::Bank(5), "→"),
        ],
        |words| words.key_bank,
    ),
    Line::new(
        &[
            Binding::held("ArrowUp", false, Intent::Speed(5), "↑"),
            Binding::held("ArrowDown", false, Intent::Speed(-5), "↓"),
        ],
        |words| words.key_speed,
    ),
    Line {
        bindings: &[
            Binding::held("ArrowLeft", true, Intent::Bank(-1), "←"),
            Binding::held("ArrowRight", true, Intent::Bank(1), "→"),
            Binding::held("ArrowUp", true, Intent::Speed(1), "↑"),
            Binding::held("ArrowDown", true, Intent::Speed(-1), "↓"),
        ],
        words: |words| words.key_fine,
        with_shift: true,
    },
    Line::new(&[Binding::letter("l", Intent::LevelWings, "L")], |words| {
        words.key_level
    }),
    Line::new(
        &[
            Binding::letter("c", Intent::Climb(1), "C"),
            Binding::letter("d", Intent::Climb(-1), "D"),
        ],
        |words| words.key_climb,
    ),
    Line::new(
        &[
            Binding::letter("z", Intent::Rudder(-1), "Z"),
            Binding::letter("x", Intent::Rudder(1), "X"),
        ],
        |words| words.key_rudder,
    ),
    Line::new(&[Binding::letter(" ", Intent::Pause, "Space")], |words| {
        words.key_pause
    }),
    Line::new(
        &[
            Binding {
                repeats: true,
                ..Binding::letter(",", Intent::LookBack, ",")
            },
            Binding {
                repeats: true,
                ..Binding::letter(".", Intent::Step, ".")
            },
        ],
        |words| words.key_step,
    ),
    Line::new(
        &[
            Binding::letter("[", Intent::LastEvent, "["),
            Binding::letter("]", Intent::NextEvent, "]"),
        ],
        |words| words.key_events,
    ),
    Line::new(
        &[
            Binding::letter("Home", Intent::LookAtStart, "Home"),
            Binding::letter("End", Intent::LookAtEnd, "End"),
        ],
        |words| words.key_ends,
    ),
    Line::new(
        &[
            Binding::letter("m", Intent::Replay, "M"),
            Binding::letter("b", Intent::Loop, "B"),
        ],
        |words| words.time().key_replay,
    ),
    Line::new(
        &[
            Binding::letter("f", Intent::FlyFromHere, "F"),
            Binding::letter("o", Intent::ReturnToOld, "O"),
        ],
        |words| words.key_branch,
    ),
    Line::new(
        &[
            Binding::letter("-", Intent::SlowDown, "−"),
            Binding::letter("+", Intent::SpeedUp, "+"),
            // The same key without Shift on many keyboards.
            Binding::letter("=", Intent::SpeedUp, ""),
        ],
        |words| words.key_rate,
    ),
    Line::new(&[Binding::letter("r", Intent::Restart, "R")], |words| {
        words.key_restart
    }),
    Line::new(
        &[
            Binding::letter("w", Intent::ShowWhy, "W"),
            Binding::letter("g", Intent::ShowTimeline, "G"),
        ],
        |words| words.key_why,
    ),
    Line::new(
        &[
            Binding::letter("s", Intent::ShowSituation, "S"),
            Binding::letter("u", Intent::Undo, "U"),
        ],
        |words| words.key_situation,
    ),
    Line::new(
        &[
            Binding::letter("y", Intent::ShowBeside, "Y"),
            Binding::letter("k", Intent::ShowFilm, "K"),
        ],
        |words| words.film().keys,
    ),
    Line::new(
        &[
            Binding::letter("v", Intent::ChangeView, "V"),
            Binding::letter("n", Intent::ChangeLight, "N"),
        ],
        |words| words.key_look,
    ),
    Line::new(
        &[
            Binding::letter("p", Intent::Present, "P"),
            Binding::letter("h", Intent::ChangeCover, "H"),
        ],
        |words| words.presenter().key_present,
    ),
    Line::new(
        &[
            Binding::letter("a", Intent::ChangeAside, "A"),
            Binding::letter("i", Intent::SetIndicator, "I"),
            Binding::letter("e", Intent::ChangeChart, "E"),
        ],
        |words| words.views.keys,
    ),
    Line::new(
        &[
            Binding::letter("t", Intent::Tell, "T"),
            Binding::letter("?", Intent::ShowKeys, "?"),
        ],
        |words| words.key_tell,
    ),
];

/// The keys of presenter mode, which come before all others while it runs: those that a slide
/// clicker sends.
pub(crate) const PRESENTER_KEYS: [Line; 4] = [
    Line::new(
        &[Binding::letter("PageDown", Intent::Advance, "Page Down")],
        |words| words.presenter().key_advance,
    ),
    Line::new(
        &[Binding::letter("PageUp", Intent::AskClass, "Page Up")],
        |words| words.presenter().key_ask,
    ),
    Line::new(
        &[
            Binding::letter(".", Intent::Curtain, "."),
            // Some clickers send this one for the same button.
            Binding::letter("b", Intent::Curtain, "B"),
        ],
        |words| words.presenter().key_curtain,
    ),
    Line::new(
        &[Binding::letter("Escape", Intent::StopPresenting, "Esc")],
        |words| words.presenter().key_leave,
    ),
];

/// The keys while a demonstration is open, which come before those of presenter mode.
pub(crate) const DEMONSTRATION_KEYS: [Line; 1] = [Line::new(
    &[
        Binding::letter("PageDown", Intent::Advance, "Page Down"),
        Binding::letter("PageUp", Intent::LastCue, "Page Up"),
    ],
    |words| words.demonstrations().keys,
)];

/// A key as it was pressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Press<'a> {
    /// What the browser calls the key.
    pub(crate) key: &'a str,
    /// Shift is held.
    pub(crate) shift: bool,
    /// Control, Alt or the command key is held: the browser's own business.
    pub(crate) browser: bool,
    /// It is held down and repeats.
    pub(crate) repeat: bool,
    /// Presenter mode runs.
    pub(crate) presenting: bool,
    /// A demonstration is open.
    pub(crate) demonstrating: bool,
}

/// What a press of a key means here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Meaning {
    /// Nothing: the browser may do what it does.
    None,
    /// Ours, but nothing to do.
    Held,
    /// This.
    Asks(Intent),
}

/// What a press asks for.
pub(crate) fn meaning(press: Press<'_>) -> Meaning {
    if press.browser {
        return Meaning::None;
    }
    let lower = press.key.to_lowercase();
    let presenter: &[Line] = if press.presenting {
        &PRESENTER_KEYS
    } else {
        &[]
    };
    let demonstration: &[Line] = if press.demonstrating {
        &DEMONSTRATION_KEYS
    } else {
        &[]
    };
    let lines = demonstration.iter().chain(presenter).chain(KEYS);
    let mut bindings = lines.flat_map(|line| line.bindings);
    let found = bindings.find(|binding| {
        binding.key.to_lowercase() == lower
            && binding.shift.is_none_or(|shift| shift == press.shift)
    });
    match found {
        None => Meaning::None,
        Some(binding) if press.repeat && !binding.repeats => Meaning::Held,
        Some(binding) => Meaning::Asks(binding.intent),
    }
}

/// The key that asks for this, as `aria-keyshortcuts` names it; empty if there is none.
pub(crate) fn shortcut(intent: Intent) -> String {
    KEYS.iter()
        .chain(&PRESENTER_KEYS)
        .chain(&DEMONSTRATION_KEYS)
        .flat_map(|line| line.bindings)
        .find(|binding| binding.intent == intent)
        .map(Binding::shortcut)
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(key: &str) -> Press<'_> {
        Press {
            key,
            ..Press::default()
        }
    }

    #[test]
    fn every_listed_key_does_what_its_line_says() {
        for binding in KEYS.iter().flat_map(|line| line.bindings) {
            let press = Press {
                key: binding.key,
                shift: binding.shift.unwrap_or(false),
                ..Press::default()
            };
            assert_eq!(meaning(press), Meaning::Asks(binding.intent), "{binding:?}");
        }
    }

    #[test]
    fn presenter_mode_has_keys_of_its_own_and_keeps_the_others() {
        for binding in PRESENTER_KEYS.iter().flat_map(|line| line.bindings) {
            let press = Press {
                presenting: true,
                ..key(binding.key)
            };
            assert_eq!(meaning(press), Meaning::Asks(binding.intent), "{binding:?}");
            assert_ne!(meaning(key(binding.key)), Meaning::Asks(binding.intent));
        }
        let flown = Press {
            presenting: true,
            ..key("ArrowRight")
        };
        assert_eq!(meaning(flown), Meaning::Asks(Intent::Bank(5)));
    }

    #[test]
    fn the_keys_of_a_demonstration_come_before_those_of_presenter_mode() {
        for presenting in [false, true] {
            for binding in DEMONSTRATION_KEYS.iter().flat_map(|line| line.bindings) {
                let press = Press {
                    presenting,
                    demonstrating: true,
                    ..key(binding.key)
                };
                assert_eq!(meaning(press), Meaning::Asks(binding.intent), "{binding:?}");
            }
        }
    }

    #[test]
    fn shift_makes_the_arrows_fine_and_leaves_letters_alone() {
        let shifted = |name| Press {
            shift: true,
            ..key(name)
        };
        assert_eq!(
            meaning(shifted("ArrowRight")),
            Meaning::Asks(Intent::Bank(1))
        );
        assert_eq!(meaning(shifted("L")), Meaning::Asks(Intent::LevelWings));
        assert_eq!(meaning(shifted("?")), Meaning::Asks(Intent::ShowKeys));
    }

    #[test]
    fn the_browsers_own_shortcuts_stay_its_own() {
        let reload = Press {
            browser: true,
            ..key("r")
        };
        assert_eq!(meaning(reload), Meaning::None);
        assert_eq!(meaning(key("Tab")), Meaning::None);
    }

    #[test]
    fn a_held_key_repeats_only_where_that_makes_sense() {
        let held = |name| Press {
            repeat: true,
            ..key(name)
        };
        assert_eq!(meaning(held("ArrowUp")), Meaning::Asks(Intent::Speed(5)));
        assert_eq!(meaning(held(",")), Meaning::Asks(Intent::LookBack));
        assert_eq!(meaning(held(" ")), Meaning::Held);
    }
}

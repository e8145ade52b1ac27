//! Every word on the page: one table, filled once for each language.
//!
//! Another language is one more file beside `en.rs` and one more line in [`Words::for_tag`] and
//! in what gives the words of some pages.
//! Sentences with numbers in them are functions, so that each language orders and bends its own
//! words, and no component puts a sentence together.

mod demonstrations;
mod drills;
mod en;
mod en_beside;
mod en_corrections;
mod en_demonstrations;
mod en_drills;
mod en_figures;
mod en_film;
mod en_handed;
mod en_links;
mod en_making;
mod en_maps;
mod en_numbers;
mod en_numbers_fields;
mod en_play;
mod en_presenter;
mod en_progress;
mod en_sets;
mod en_situation;
mod en_stick;
mod en_swing;
mod en_time;
mod en_turns;
mod en_views;
mod en_why;
mod film;
mod handed;
mod links;
mod making;
mod maps;
pub(crate) mod numbers;
pub(crate) mod play;
pub(crate) mod progress;
pub(crate) mod sets;
pub(crate) mod turns;
mod views;

use crate::beside::Change;
use crate::cover::Cover;
use crate::session::Readout;
use crate::setting::{FloatChoice, IronChoice, Setting};
use crate::situation_form::{Entry, Fault, Mark};
use crate::stretch::Stretch;
use compass::cause::Explanation;
use compass::gust::RoughAir;
use compass::range::{OutOfRange, Range};
use compass::reading::Difference;
pub(crate) use demonstrations::DemonstrationWords;
use drawing::strip_chart::{self, StripFigures};
use drawing::torque_ledger;
pub(crate) use drills::DrillWords;
pub(crate) use film::FilmWords;
use flights::events::Event;
pub(crate) use handed::HandedWords;
pub(crate) use links::LinkWords;
pub(crate) use making::MakingWords;
pub(crate) use maps::MapWords;
use numbers::PagesWords;
pub(crate) use progress::ProgressWords;
pub(crate) use sets::SetWords;
use std::ops::Deref;
pub(crate) use views::{Errors, ReadOff, ViewWords};

/// The words of one language that every page may say.
pub(crate) struct Words {
    /// BCP 47 tag, for the `lang` attribute.
    pub(crate) tag: &'static str,
    pub(crate) name: &'static str,
    pub(crate) caution: &'static str,
    pub(crate) heading: &'static str,
    pub(crate) compass: &'static str,
    pub(crate) difference: fn(Difference) -> String,
    /// The same, short, for beside the error's bar.
    pub(crate) error: fn(Difference) -> String,
    pub(crate) at_stop: &'static str,
    pub(crate) bank: &'static str,
    pub(crate) bank_value: fn(i32) -> String,
    pub(crate) rate_of_turn: &'static str,
    /// Takes tenths of a degree a second.
    pub(crate) rate_value: fn(i32) -> String,
    pub(crate) airspeed: &'static str,
    pub(crate) airspeed_value: fn(i32) -> String,
    pub(crate) by_night: &'static str,
    pub(crate) by_day: &'static str,
    pub(crate) links: LinkWords,
    pub(crate) why: WhyWords,
    pub(crate) views: ViewWords,
    pub(crate) pages: PagesWords,
    pub(crate) place: fn(&Setting) -> String,
    /// Takes degrees, down positive.
    pub(crate) dip_line: fn(f64) -> String,
    /// Takes degrees, east positive.
    pub(crate) variation_line: fn(f64) -> String,
    pub(crate) horizontal_line: fn(i64) -> String,
}

/// The words of the page of the flight, those of every page among them.
pub(crate) struct FlightWords {
    pub(crate) of_all: &'static Words,

    pub(crate) failed: &'static str,

    // The readings.
    pub(crate) readings: &'static str,
    pub(crate) true_heading: fn(u16) -> String,
    pub(crate) zone_caution: &'static str,
    pub(crate) zone_unreliable: &'static str,
    /// All of the situation in sentences.
    pub(crate) situation: fn(&Readout) -> String,
    pub(crate) card_face: fn(&Readout) -> String,
    pub(crate) rose: fn(&Readout) -> String,
    pub(crate) tell: &'static str,

    // Instruments and controls.
    pub(crate) controls: &'static str,
    pub(crate) standard_rate: &'static str,
    pub(crate) climb: &'static str,
    pub(crate) climb_value: fn(i32) -> String,
    pub(crate) rudder: &'static str,
    pub(crate) rudder_value: fn(i32) -> String,
    pub(crate) motion: &'static str,
    pub(crate) motion_value: fn(f64) -> String,
    pub(crate) slow_motion: fn(f64) -> String,
    pub(crate) paused: &'static str,
    pub(crate) asleep: &'static str,
    pub(crate) bank_left: Button,
    pub(crate) level_wings: Button,
    pub(crate) bank_right: Button,
    pub(crate) slower: Button,
    pub(crate) faster: Button,
    pub(crate) descend: Button,
    pub(crate) climb_more: Button,
    pub(crate) rudder_left: Button,
    pub(crate) rudder_right: Button,
    pub(crate) pause: Button,
    pub(crate) fly_on: Button,
    pub(crate) step: Button,
    pub(crate) slow_down: Button,
    pub(crate) speed_up: Button,
    pub(crate) restart: Button,

    // The timeline.
    pub(crate) timeline: &'static str,
    pub(crate) playhead: &'static str,
    /// Time, heading, compass and difference of the moment that is read.
    pub(crate) moment: fn(&Readout) -> String,
    /// The whole flight in sentences.
    pub(crate) flight: fn(&StripFigures) -> String,
    /// An event, short, for beside its mark.
    pub(crate) event: fn(&Event) -> String,
    /// An event that was jumped to, and the moment there.
    pub(crate) event_told: fn(&Event, &str) -> String,
    /// The words in the strips.
    pub(crate) strips: strip_chart::Words<'static>,
    pub(crate) looking_back: &'static str,
    /// For who moves the controls meanwhile.
    pub(crate) looking_hint: &'static str,
    pub(crate) last_event: Button,
    pub(crate) next_event: Button,
    pub(crate) look_at_end: Button,
    pub(crate) fly_from_here: Button,
    pub(crate) return_to_old: Button,
    pub(crate) save_csv: Button,
    pub(crate) save_svg: Button,

    // The page's own buttons.
    pub(crate) show_why: Button,
    pub(crate) show_card: Button,
    pub(crate) keys: &'static str,
    pub(crate) keys_fly: &'static str,
    pub(crate) key_bank: &'static str,
    pub(crate) key_speed: &'static str,
    pub(crate) key_fine: &'static str,
    pub(crate) key_level: &'static str,
    pub(crate) key_climb: &'static str,
    pub(crate) key_rudder: &'static str,
    pub(crate) key_pause: &'static str,
    pub(crate) key_step: &'static str,
    pub(crate) key_events: &'static str,
    pub(crate) key_ends: &'static str,
    pub(crate) key_branch: &'static str,
    pub(crate) key_rate: &'static str,
    pub(crate) key_restart: &'static str,
    pub(crate) key_why: &'static str,
    pub(crate) key_situation: &'static str,
    pub(crate) key_look: &'static str,
    pub(crate) key_tell: &'static str,

    // Links, QR codes and frames.

    // Why the card does what it does.

    // What stands beside the card; the chart against heading.

    // The ways from page to page.

    // The situation.
    pub(crate) set_situation: &'static str,
    pub(crate) no_variation: &'static str,
    pub(crate) way: &'static str,
    pub(crate) way_latitude: &'static str,
    pub(crate) way_place: &'static str,
    pub(crate) way_by_hand: &'static str,
    pub(crate) gives: &'static str,
    pub(crate) gives_nothing: &'static str,
    pub(crate) start_heading: &'static str,
    pub(crate) float: &'static str,
    /// `None`: a float whose settings are the user's own.
    pub(crate) float_choice: fn(Option<FloatChoice>) -> &'static str,
    /// In the form, where it stands beside the word for a float.
    pub(crate) float_option: fn(FloatChoice) -> &'static str,
    pub(crate) air: &'static str,
    pub(crate) air_choice: fn(RoughAir) -> &'static str,
    /// In the form, where it stands beside the word for the air.
    pub(crate) air_option: fn(RoughAir) -> &'static str,
}

impl Deref for FlightWords {
    type Target = Words;

    fn deref(&self) -> &Words {
        self.of_all
    }
}

/// The words of the form that sets a flight.
pub(crate) struct FormWords {
    /// What an entry is called.
    pub(crate) label: fn(Entry) -> &'static str,
    /// Its unit, and what else is to be known before typing.
    pub(crate) hint: fn(Entry) -> &'static str,
    pub(crate) float_hint: fn(Range, Mark) -> String,
    pub(crate) hemisphere: &'static str,
    pub(crate) north: &'static str,
    pub(crate) south: &'static str,
    pub(crate) map: &'static str,
    pub(crate) map_hint: &'static str,
    /// Takes latitude and longitude, and dip, in degrees.
    pub(crate) map_place: fn(Option<(f64, f64)>, Option<f64>) -> String,
    /// Takes degrees, down positive.
    pub(crate) dip_mark: fn(i16) -> String,
    pub(crate) iron: &'static str,
    /// `None`: iron whose numbers are the user's own.
    pub(crate) iron_choice: fn(Option<IronChoice>) -> &'static str,
    /// In the form, where it stands beside the word for iron.
    pub(crate) iron_option: fn(IronChoice) -> &'static str,
    pub(crate) own: &'static str,
    pub(crate) float_numbers: &'static str,
    pub(crate) float_note: &'static str,
    pub(crate) iron_numbers: &'static str,
    pub(crate) iron_note: &'static str,
    /// Forward, right, down.
    pub(crate) axes: [&'static str; 3],
    pub(crate) soft: &'static str,
    pub(crate) soft_hint: &'static str,
    pub(crate) deviation: &'static str,
    /// North, east, south, west.
    pub(crate) cardinals: [&'static str; 4],
    /// Takes degrees, east positive.
    pub(crate) deviation_value: fn(Option<f64>) -> String,
    pub(crate) undo: Button,
    pub(crate) undone: &'static str,
    pub(crate) none_undone: &'static str,
    pub(crate) reset: Button,
    pub(crate) old_flight: Button,
    pub(crate) begin: &'static str,
    pub(crate) fault: fn(&Fault) -> String,
    /// A flight that could not be started although each entry was fine.
    pub(crate) refused: fn(&OutOfRange) -> String,
}

/// The words for what was flown, replayed or taken home.
pub(crate) struct TimeWords {
    /// Takes the rate.
    pub(crate) replaying: fn(f64) -> String,
    pub(crate) replay: Button,
    pub(crate) pause_replay: Button,
    /// For the loop: nothing marked, its start marked, all of it marked.
    pub(crate) loops: fn(Stretch) -> Button,
    /// What the loop is now.
    pub(crate) loop_told: fn(Stretch) -> String,
    /// Time, heading, compass and difference where the pointer is.
    pub(crate) read_off: fn(&strip_chart::Sample) -> String,
    pub(crate) save_png: Button,
    pub(crate) save_flight: Button,
    /// Of a flight that no file can hold.
    pub(crate) not_saved: &'static str,
    pub(crate) key_replay: &'static str,
}

/// The words that explain the card.
pub(crate) struct WhyWords {
    pub(crate) title: &'static str,
    /// The computed reason, in one sentence.
    pub(crate) sentence: fn(&Explanation) -> String,
    pub(crate) bowl: fn(&Readout) -> String,
    pub(crate) ledger: fn(&Readout) -> String,
    pub(crate) true_vertical: &'static str,
    pub(crate) apparent_vertical: &'static str,
    pub(crate) vertical_pull: &'static str,
    /// Takes degrees, down positive.
    pub(crate) dip: fn(i16) -> String,
    /// Takes degrees, right positive.
    pub(crate) bank: fn(i32) -> String,
    /// In the order of `drawing::torque_ledger::parts`.
    pub(crate) torques: [&'static str; torque_ledger::PARTS],
    pub(crate) net: &'static str,
    pub(crate) clockwise: &'static str,
    pub(crate) anticlockwise: &'static str,
    pub(crate) seen_from: &'static str,
    /// Three-quarter view, pilot's seat, behind, side, above.
    pub(crate) cameras: [&'static str; 5],
    pub(crate) shown: &'static str,
    /// In the order of `drawing::bowl_view::Parts`.
    pub(crate) parts: [&'static str; 10],
}

impl WhyWords {
    /// What stands in the picture of the torques.
    pub(crate) fn in_ledger(&self) -> torque_ledger::Words<'static> {
        torque_ledger::Words {
            parts: self.torques,
            net: self.net,
            anticlockwise: self.anticlockwise,
            clockwise: self.clockwise,
        }
    }
}

/// The words of two at once.
pub(crate) struct BesideWords {
    pub(crate) title: &'static str,
    pub(crate) compare: Button,
    pub(crate) other_compass: &'static str,
    pub(crate) changed: &'static str,
    pub(crate) change: fn(Change) -> &'static str,
    pub(crate) latitude: &'static str,
    /// Takes degrees, north positive.
    pub(crate) latitude_value: fn(i8) -> String,
    /// Takes degrees between the two compasses.
    pub(crate) apart: fn(u16) -> String,
    pub(crate) card_face: fn(&Readout) -> String,
}

/// The words before a class.
pub(crate) struct PresenterWords {
    pub(crate) present: Button,
    pub(crate) leave: Button,
    /// What the next step of the lesson does: reveal what is covered.
    pub(crate) reveal: Button,
    /// Told when presenter mode begins and ends.
    pub(crate) begun: &'static str,
    pub(crate) ended: &'static str,
    /// Told where the browser does not keep the screen awake.
    pub(crate) may_go_dark: &'static str,
    /// Stands on what is covered.
    pub(crate) covered: &'static str,
    /// Stands on the covered window.
    pub(crate) question: &'static str,
    /// The names of the buttons that cover a reading.
    pub(crate) cover_compass: &'static str,
    pub(crate) cover_heading: &'static str,
    /// Told when the cover changes.
    pub(crate) covers: fn(Cover) -> &'static str,
    /// On the curtain.
    pub(crate) curtain: &'static str,
    /// Takes whether it is down now.
    pub(crate) curtain_told: fn(bool) -> &'static str,
    /// Takes seconds of flight.
    pub(crate) time: fn(f64) -> String,
    /// The keys of presenter mode.
    pub(crate) keys: &'static str,
    pub(crate) key_present: &'static str,
    pub(crate) key_advance: &'static str,
    pub(crate) key_ask: &'static str,
    pub(crate) key_curtain: &'static str,
    pub(crate) key_leave: &'static str,
    /// The bowl, as what the arrow keys go round.
    pub(crate) orbit: &'static str,
}

/// The words for a stick.
pub(crate) struct StickWords {
    pub(crate) stick: &'static str,
    pub(crate) bank: &'static str,
    pub(crate) speed: &'static str,
    /// Takes the axis, counted from one.
    pub(crate) axis: fn(usize) -> String,
    pub(crate) no_axis: &'static str,
    pub(crate) reversed: &'static str,
    pub(crate) dead_zone: &'static str,
    pub(crate) per_cent: fn(u8) -> String,
    /// The buttons that find an axis by its movement, and what to do meanwhile.
    pub(crate) find: &'static str,
    pub(crate) find_bank: &'static str,
    pub(crate) find_speed: &'static str,
    pub(crate) move_right: &'static str,
    pub(crate) move_fast: &'static str,
    /// What the stick's buttons do.
    pub(crate) buttons: &'static str,
    /// Takes the bank at full stick in degrees, and the slowest and fastest airspeed in knots.
    pub(crate) ranges: fn(f64, [f64; 2]) -> String,
}

/// The words of a button: what is on it, and its whole name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Button {
    /// On the button.
    pub(crate) label: &'static str,
    /// For those who do not see where it stands; begins with the label.
    pub(crate) name: &'static str,
}

impl FlightWords {
    /// The words that come nearest to a BCP 47 tag.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &en::FLIGHT
    }
}

impl Words {
    /// The words that come nearest to a BCP 47 tag.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &en::ENGLISH
    }

    // What only some pages say is no field, which every page would hold: a program holds what it
    // asks for.

    /// Replay, loop and what is taken home.
    pub(crate) fn time(&self) -> &'static TimeWords {
        &en_time::TIME
    }

    /// Two at once.
    pub(crate) fn beside(&self) -> &'static BesideWords {
        &en_beside::BESIDE
    }

    /// The form that sets a flight.
    pub(crate) fn form(&self) -> &'static FormWords {
        &en_situation::FORM
    }

    /// Before a class.
    pub(crate) fn presenter(&self) -> &'static PresenterWords {
        &en_presenter::PRESENTER
    }

    /// A stick in the hand.
    pub(crate) fn stick(&self) -> &'static StickWords {
        &en_stick::STICK
    }

    /// Demonstrations.
    pub(crate) fn demonstrations(&self) -> &'static DemonstrationWords {
        &en_demonstrations::DEMONSTRATIONS
    }

    /// Making demonstrations.
    pub(crate) fn making(&self) -> &'static MakingWords {
        &en_making::MAKING
    }

    /// Films, stills and animations.
    pub(crate) fn film(&self) -> &'static FilmWords {
        &en_film::FILM
    }
}

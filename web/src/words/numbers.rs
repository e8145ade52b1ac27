//! The words of the page of numbers, and of the ways from page to page.

use crate::numbers::{Key, Part};
use crate::pages::Page;
use crate::setting::Setting;
use crate::situation_form::Wrong;
use compass::deviation::Coefficients;
use compass::heading::CompassHeading;
use drawing::roll_out_rose::Extremes;
use lessons::corrections::Working;
use lessons::sheet::Table;
use lessons::wind::Triangle;

/// A deviation, or what is left over of one, by compass heading; rad, east positive.
pub(crate) type OnHeading = (CompassHeading, f64);

/// The words of the ways from page to page.
pub(crate) struct PagesWords {
    pub(crate) title: &'static str,
    pub(crate) name: fn(Page) -> &'static str,
}

/// The words of the page of numbers.
pub(crate) struct NumbersWords {
    pub(crate) parts: &'static str,
    pub(crate) part: fn(Part) -> &'static str,
    /// What a field is called.
    pub(crate) label: fn(Key) -> &'static str,
    /// What a field's slider is called.
    pub(crate) slider: fn(Key) -> &'static str,
    /// Its unit, and what else is to be known before typing.
    pub(crate) hint: fn(Key) -> &'static str,
    /// One of a field's choices.
    pub(crate) choice: fn(Key, &'static str) -> &'static str,
    pub(crate) refusal: fn(Key, &Wrong) -> String,
    /// Shown where something is wrong and so nothing new is computed.
    pub(crate) mend: &'static str,
    /// Dip, variation and horizontal intensity.
    pub(crate) field: fn(&Setting) -> String,
    pub(crate) take_home: &'static str,
    pub(crate) copy_text: &'static str,
    pub(crate) copy_csv: &'static str,
    pub(crate) copy_link: &'static str,
    pub(crate) copy_image: &'static str,
    pub(crate) save_svg: &'static str,
    pub(crate) save_png: &'static str,
    pub(crate) copied: &'static str,
    pub(crate) not_copied: &'static str,
    pub(crate) planner: PlannerWords,
    pub(crate) hand_outs: HandOutWords,
    pub(crate) corrections: CorrectionWords,
    pub(crate) swing: SwingWords,
}

impl NumbersWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_numbers::NUMBERS
    }
}

/// The words of the planner.
pub(crate) struct PlannerWords {
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    pub(crate) title: &'static str,
    /// Takes whether the turn is to the left, the target, and the bank in degrees.
    pub(crate) asked: fn(bool, u16, f64) -> String,
    pub(crate) rule: &'static str,
    pub(crate) rule_note: &'static str,
    pub(crate) half_rule: &'static str,
    pub(crate) half_rule_note: &'static str,
    pub(crate) steady: &'static str,
    pub(crate) steady_note: &'static str,
    pub(crate) float: &'static str,
    pub(crate) float_note: &'static str,
    /// Takes the lead in degrees, the reading that comes out on the target exactly, and how far past the target the
    /// bare reading brings the aircraft, in degrees.
    pub(crate) comes: fn(f64, u16, Option<f64>) -> String,
    pub(crate) progress: &'static str,
    pub(crate) cancel: &'static str,
    pub(crate) resume: &'static str,
    pub(crate) table: &'static str,
    pub(crate) table_note: &'static str,
    pub(crate) rose: &'static str,
    /// Takes the place and its extremes.
    pub(crate) extremes: fn(&str, Extremes) -> String,
}

/// The words of the hand-outs.
pub(crate) struct HandOutWords {
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    pub(crate) title: &'static str,
    pub(crate) print: &'static str,
    pub(crate) not_fetched: &'static str,
    pub(crate) no_lesson: fn(&str) -> String,
}

/// The words of the corrections.
pub(crate) struct CorrectionWords {
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    pub(crate) title: &'static str,
    pub(crate) under: &'static str,
    pub(crate) under_wind: &'static str,
    /// The working, begun at what was given (`true`, `magnetic`, `compass` or `track`); with the
    /// triangle of the wind where one is asked for.
    pub(crate) working: fn(&Working, Option<&Triangle>, &'static str) -> Table,
    /// The answer in a sentence.
    pub(crate) told: fn(&Working, Option<&Triangle>, &'static str) -> String,
    pub(crate) card: &'static str,
    pub(crate) card_hint: &'static str,
    pub(crate) curve: &'static str,
    pub(crate) curve_note: &'static str,
    pub(crate) verses_title: &'static str,
    pub(crate) verses: &'static [&'static str],
    pub(crate) verses_note: &'static str,
}

/// The words of the swing.
pub(crate) struct SwingWords {
    pub(crate) form: &'static str,
    pub(crate) results: &'static str,
    pub(crate) title: &'static str,
    pub(crate) about: &'static str,
    pub(crate) another: &'static str,
    pub(crate) start_over: &'static str,
    pub(crate) ramp: &'static str,
    pub(crate) deviation_name: &'static str,
    /// Takes degrees, east positive.
    pub(crate) deviation: fn(f64) -> String,
    /// Takes heading, compass and deviation.
    pub(crate) rose: fn(&str, &str, &str) -> String,
    pub(crate) cardinals: [&'static str; 4],
    pub(crate) adjustment: &'static str,
    pub(crate) steps: [&'static str; 4],
    pub(crate) done: &'static str,
    /// What to do next: takes the step, and whether the aircraft stands on its heading.
    pub(crate) next: fn(usize, bool) -> &'static str,
    pub(crate) take_out: [&'static str; 4],
    pub(crate) by_hand: &'static str,
    pub(crate) half_error: &'static str,
    pub(crate) record: &'static str,
    pub(crate) swing_it: &'static str,
    /// Takes the seed of hidden iron, the place, and whether radios and lights are on.
    pub(crate) aircraft: fn(Option<u64>, &str, bool) -> String,
    /// Takes the swing and what it has over its coefficients.
    pub(crate) found: fn(&[OnHeading], &[OnHeading]) -> Table,
    pub(crate) coefficients_title: &'static str,
    /// Takes coefficients by means and by least squares.
    pub(crate) coefficients: fn(&Coefficients, &Coefficients) -> Table,
    /// Takes the greatest residual in degrees.
    pub(crate) left_over: fn(f64) -> String,
    /// Takes the greatest deviation in degrees, and whether it is within the limit.
    pub(crate) verdict: fn(f64, bool) -> String,
    pub(crate) curve: &'static str,
    pub(crate) residual_curve: &'static str,
    pub(crate) residual_note: &'static str,
    pub(crate) examples: &'static str,
    /// Worked examples: what the button is called, and what its swing finds.
    pub(crate) example: [[&'static str; 2]; 3],
    pub(crate) hard_iron: &'static str,
    pub(crate) hard_iron_note: &'static str,
    pub(crate) soft_iron: &'static str,
    pub(crate) soft_iron_note: &'static str,
    pub(crate) heeling: &'static str,
    pub(crate) heeling_note: &'static str,
    /// Takes the deviations (rad, east positive) on the four cardinal headings, bank by bank.
    pub(crate) in_bank: fn(&[[f64; 5]; 4]) -> Table,
    /// The same in a sentence.
    pub(crate) heeling_told: fn(&[[f64; 5]; 4]) -> String,
    /// The banks, from the left.
    pub(crate) banks: [&'static str; 5],
    pub(crate) east: &'static str,
    pub(crate) west: &'static str,
    pub(crate) fly_it: &'static str,
    pub(crate) fly_note: &'static str,
    pub(crate) not_flown: &'static str,
}

//! The words of a set that was handed out.

use lessons::drill::Kind;
use lessons::drill::record::Help;
use lessons::drill::set::{Order, Part};

/// The words of a set that was handed out.
pub(crate) struct HandedWords {
    /// Among the parts of the page.
    pub(crate) part: &'static str,
    pub(crate) title: &'static str,
    pub(crate) about: &'static str,
    pub(crate) choose: &'static str,
    pub(crate) opening: &'static str,
    pub(crate) no_set: &'static str,
    pub(crate) unread: &'static str,
    /// Why a file was not opened.
    pub(crate) refused: fn(&str) -> String,
    pub(crate) asked: fn(Order) -> &'static str,
    pub(crate) asks: fn(&Part) -> String,
    /// Takes the time limit, seconds.
    pub(crate) limit: fn(f64) -> String,
    pub(crate) allowed: fn(&[Help]) -> String,
    pub(crate) name: &'static str,
    pub(crate) name_hint: &'static str,
    pub(crate) name_too_long: fn(usize) -> String,
    pub(crate) begin: &'static str,
    /// Takes how many are answered, of how many.
    pub(crate) before: fn(usize, usize) -> String,
    pub(crate) go_on: &'static str,
    pub(crate) private: &'static str,
    pub(crate) at: fn(usize, usize) -> String,
    /// Takes the time that is left, seconds.
    pub(crate) left: fn(f64) -> String,
    pub(crate) last_minute: &'static str,
    pub(crate) done: &'static str,
    pub(crate) over: &'static str,
    /// Takes how many are passed, answered, and asked.
    pub(crate) score: fn(usize, usize, usize) -> String,
    pub(crate) of_kind: fn(Kind, usize, usize) -> String,
    pub(crate) send: &'static str,
    pub(crate) save: &'static str,
    pub(crate) csv: &'static str,
    pub(crate) xapi: &'static str,
    pub(crate) xapi_note: &'static str,
    /// What makes the statements could not be fetched.
    pub(crate) no_xapi: &'static str,
}

impl HandedWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_handed::HANDED
    }
}

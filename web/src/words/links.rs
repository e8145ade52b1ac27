//! The words for links, QR codes and frames.

use super::Button;
use crate::link::Fault;
use crate::share::Subject;

/// The words for passing on what the page shows.
pub(crate) struct LinkWords {
    /// Opens the dialog; its label is the dialog's title.
    pub(crate) share: Button,
    /// What is passed on.
    pub(crate) what: &'static str,
    pub(crate) subject: fn(Subject) -> &'static str,
    pub(crate) making: &'static str,
    pub(crate) link: &'static str,
    /// Takes characters, and whether it carries what it opens.
    pub(crate) length: fn(usize, bool) -> String,
    pub(crate) frame: &'static str,
    pub(crate) frame_hint: &'static str,
    pub(crate) copy: &'static str,
    pub(crate) copied: &'static str,
    /// Where the browser does not copy: the text is selected.
    pub(crate) copy_by_hand: &'static str,
    pub(crate) qr_code: &'static str,
    pub(crate) large: &'static str,
    /// Takes the link's characters, and how many a code holds.
    pub(crate) no_qr_code: fn(usize, usize) -> String,
    pub(crate) save_file: &'static str,
    pub(crate) close: &'static str,
    /// Why there is no link, or none was opened.
    pub(crate) fault: fn(&Fault) -> String,
    /// Puts that sentence away.
    pub(crate) put_away: &'static str,
    /// In a frame on another page.
    pub(crate) open_in_full: &'static str,
}

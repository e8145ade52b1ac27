//! The words of films, stills and animations.

use super::Button;
use crate::film::kit::{Container, Formats};
use crate::setting::Setting;

/// The words of films, stills and animations.
pub(crate) struct FilmWords {
    /// In the key list: two at once, and this.
    pub(crate) keys: &'static str,
    pub(crate) show: Button,
    pub(crate) title: &'static str,
    pub(crate) close: Button,

    // In the frame.
    pub(crate) time: &'static str,
    /// Takes seconds of flight.
    pub(crate) clock: fn(f64) -> String,
    pub(crate) place: fn(&Setting) -> String,

    // What is filmed, and how.
    /// Takes from when to when, in seconds, and whether a stretch is marked.
    pub(crate) span: fn([f64; 2], bool) -> String,
    pub(crate) nothing: &'static str,
    pub(crate) name: &'static str,
    pub(crate) size: &'static str,
    /// Takes frames a second.
    pub(crate) fps: fn(u32) -> String,
    pub(crate) frames: &'static str,
    pub(crate) speed: &'static str,
    /// Takes how many times slower.
    pub(crate) slower: fn(u32) -> &'static str,
    pub(crate) format: &'static str,
    pub(crate) container: fn(Container) -> &'static str,
    /// What is offered at this size, and why not more; nothing before it is known. Takes whether
    /// there is a narration.
    pub(crate) formats: fn(Option<&Formats>, bool) -> String,
    pub(crate) torques: &'static str,
    pub(crate) strips: &'static str,

    // What is made of it.
    pub(crate) render: Button,
    pub(crate) gif: Button,
    pub(crate) gif_too_long: &'static str,
    pub(crate) png: Button,
    pub(crate) svg: Button,
    /// Takes frames done, frames in all, and the seconds that are left where they are known.
    pub(crate) progress: fn(u32, u32, Option<f64>) -> String,
    pub(crate) cancel: Button,
    pub(crate) cancelled: &'static str,
    /// What is done; takes the file's ending and its size in bytes.
    pub(crate) save: fn(&str, f64) -> String,
    pub(crate) captions: &'static str,
    pub(crate) chapters: &'static str,
    pub(crate) ready: &'static str,
    /// Takes what the browser says, which may be nothing.
    pub(crate) failed: fn(&str) -> String,

    // Live, and the narration.
    pub(crate) live: &'static str,
    pub(crate) microphone: &'static str,
    pub(crate) record: Button,
    pub(crate) recording: &'static str,
    pub(crate) held: &'static str,
    pub(crate) hold: Button,
    pub(crate) go_on: Button,
    pub(crate) end: Button,
    pub(crate) level: &'static str,
    pub(crate) refused: &'static str,
    pub(crate) narrate: Button,
    /// Takes its seconds.
    pub(crate) narration: fn(f64) -> String,
    pub(crate) drop: Button,
}

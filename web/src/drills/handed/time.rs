//! The time that a set has taken: from its beginning on, whatever the page did meanwhile.

use leptos::prelude::*;
use web_sys::js_sys::Date;

/// Where the beginning of a set is kept, before its link's text and its seed.
const KEPT: &str = "dipwise.begun.";

/// When a set was begun, milliseconds by the browser's clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Begun(f64);

impl Begun {
    /// Begins now, or goes on from when it was begun; `taken_s` is what its answers took, for a
    /// browser that kept no beginning.
    pub(super) fn of(code: &str, seed: u64, taken_s: f64) -> Self {
        let key = format!("{KEPT}{seed}.{code}");
        let now = Date::now();
        let storage = window().local_storage().ok().flatten();
        let kept = storage.as_ref().and_then(|it| it.get_item(&key).ok()?);
        let kept = kept.and_then(|it| it.parse().ok());
        let begun = kept
            .filter(|it: &f64| it.is_finite())
            .unwrap_or(now - 1000.0 * taken_s)
            // A clock that was set back meanwhile gives no time.
            .min(now);
        if let Some(storage) = storage {
            // A browser that keeps nothing counts from what the answers took.
            let _ = storage.set_item(&key, &begun.to_string());
        }
        Self(begun)
    }

    /// How long ago, seconds.
    pub(super) fn ago_s(self) -> f64 {
        ((Date::now() - self.0) / 1000.0).max(0.0)
    }
}

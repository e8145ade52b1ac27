//! Work that takes longer than a frame, done in slices between frames.

use leptos::prelude::*;
use web_sys::js_sys::Date;

/// How long one slice goes on, in milliseconds; chosen: half a frame.
const SLICE: f64 = 8.0;

/// Does steps between frames until one says that there is no more to do.
pub(crate) fn between_frames(mut step: impl FnMut() -> bool + 'static) {
    request_animation_frame(move || {
        let begun = Date::now();
        let mut goes_on = true;
        while goes_on && Date::now() - begun < SLICE {
            goes_on = step();
        }
        if goes_on {
            between_frames(step);
        }
    });
}

//! The page where a flight is flown; and what measures it, called by `tests/browser/measure.js`.

use leptos::wasm_bindgen::prelude::*;

fn main() {
    web::fly();
}

/// Flies a turn for so many seconds of flight, as fast as it can, recorded as on the page. Gives
/// the last reading in degrees, or nothing where no flight can be started.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn fly_for(seconds: u32) -> Option<f64> {
    web::fly_for(seconds)
}

/// The bytes of memory that the page has taken for itself so far; it never gives any back.
#[cfg(target_arch = "wasm32")]
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn memory_bytes() -> f64 {
    web::memory_bytes()
}

/// The bytes by which the record of a flight grows in a minute of flight, changes of the controls
/// aside.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn record_bytes_a_minute() -> f64 {
    web::record_bytes_a_minute()
}

//! For measuring how fast the simulation runs in a browser.

use compass::simulation::STEPS_PER_SECOND;
use leptos::wasm_bindgen;
use leptos::wasm_bindgen::prelude::wasm_bindgen;

use crate::intent::Intent;
use crate::session::Session;
use crate::setting::Setting;

/// Flies a turn for so many seconds of flight, as fast as it can, recorded as on the page. Gives
/// the last reading in degrees, or nothing where no flight can be started.
#[wasm_bindgen]
pub fn fly_for(seconds: u32) -> Option<f64> {
    let mut session = Session::new(Setting::home().ok()?).ok()?;
    session.ask(Intent::Bank(15)).ok()?;
    session.fly(u64::from(seconds) * STEPS_PER_SECOND);
    Some(session.readout().compass.degrees())
}

//! For measuring in a browser how fast the simulation runs and how much memory a flight takes. The
//! program of the flight gives it to the browser; the others have no use for a session.

use crate::flown::RECORD_BYTES_A_MINUTE;
use crate::intent::Intent;
use crate::session::Session;
use crate::setting::Setting;
use compass::simulation::STEPS_PER_SECOND;

/// Flies a turn for so many seconds of flight, as fast as it can, recorded as on the page. Gives
/// the last reading in degrees, or nothing where no flight can be started.
pub fn fly_for(seconds: u32) -> Option<f64> {
    let mut session = Session::new(Setting::home().ok()?).ok()?;
    session.ask(Intent::Bank(15)).ok()?;
    session.fly(u64::from(seconds) * STEPS_PER_SECOND);
    Some(session.readout().compass.degrees())
}

/// The bytes of memory that the page has taken for itself so far; it never gives any back.
#[cfg(target_arch = "wasm32")]
pub fn memory_bytes() -> f64 {
    core::arch::wasm32::memory_size::<0>() as f64 * 65_536.0
}

/// The bytes by which the record of a flight grows in a minute of flight, changes of the controls
/// aside.
pub fn record_bytes_a_minute() -> f64 {
    RECORD_BYTES_A_MINUTE as f64
}

//! The heading indicator: its dial, what it shows wrong and why, and how it is set.

use super::controls::Ask;
use super::pictures::Picture;
use crate::cockpit::use_cockpit;
use crate::intent::Intent;
use crate::session::Readout;
use compass::unit::Unit;
use drawing::heading_dial::heading_dial;
use kurbo::Size;
use leptos::prelude::*;

/// How much one press changes the mechanical drift, in degrees an hour; chosen: an hour of it
/// is seen at once.
const DRIFT_STEP: i8 = 5;

/// Dial, words and buttons.
#[component]
pub(crate) fn Indicator() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.views;
    let per_hour = Unit::DegreePerHour.in_si();
    let draw = |readout: &Readout, size: Size| heading_dial(&readout.dial(), size);
    let error = cockpit.part(Readout::indicator_error);
    let drifted = cockpit.part(|readout| {
        let drifted = readout.indicator.drifted(readout.time).to_degrees();
        let since = readout.time - readout.indicator.set_at();
        ((10.0 * drifted).round() as i32, since.max(0.0) as u32)
    });
    let earth = cockpit.part(move |readout| {
        let latitude = readout.setting.source.latitude();
        let drift = readout.indicator.earth_drift() / per_hour;
        latitude.map(|_| (10.0 * drift).round() as i32)
    });
    let mechanical = cockpit
        .part(move |readout| (readout.indicator.mechanical_drift() / per_hour).round() as i32);
    let drifted_words = move || {
        let (tenths, seconds) = drifted.get();
        (words.drifted)(tenths, seconds)
    };
    view! {
        <div class="indicator">
            <Picture id="dial" text=words.dial draw/>
            <div class="indicator-words">
                <p id="indicator-error"><strong>{move || (words.indicator_error)(error.get())}</strong></p>
                <p id="indicator-drift">{drifted_words}</p>
                <p class="hint">{move || (words.earth_drift)(earth.get())}</p>
            </div>
            <div class="indicator-buttons">
                <Ask intent=Intent::SetIndicator button=words.set_indicator/>
                <div class="own-drift" role="group" aria-label=words.mechanical>
                    <span>
                        {words.mechanical} " "
                        <strong id="own-drift">
                            {move || (words.mechanical_drift)(mechanical.get())}
                        </strong>
                    </span>
                    <Ask intent=Intent::MechanicalDrift(-DRIFT_STEP) button=words.drift_less/>
                    <Ask intent=Intent::MechanicalDrift(DRIFT_STEP) button=words.drift_more/>
                </div>
            </div>
        </div>
    }
}

//! The two readings, one above the other on the lubber line, and their difference in words.

use super::marks::{CompassMark, HeadingMark};
use crate::cockpit::use_cockpit;
use compass::field::Zone;
use leptos::prelude::*;

/// The middle of the page. Carries what it shows as data, for tests and other programs.
#[component]
pub(crate) fn Readings(children: Children) -> impl IntoView {
    let cockpit = use_cockpit();
    let number = |of: fn(&crate::session::Readout) -> f64| {
        let text = cockpit.part(move |readout| format!("{:.2}", of(readout)));
        move || text.get()
    };
    let at_stop = cockpit.part(|readout| readout.at_stop);
    view! {
        <section
            class="readings"
            id="readings"
            aria-label=cockpit.words.readings
            data-time=number(|readout| readout.time)
            data-heading=number(|readout| readout.heading.degrees())
            data-compass=number(|readout| readout.compass.degrees())
            data-bank=number(|readout| readout.bank)
            data-airspeed=number(|readout| readout.airspeed)
            data-tilt=number(|readout| readout.tilt)
            data-at-stop=move || at_stop.get().to_string()
        >
            {children()}
        </section>
    }
}

/// What the compass says, and how it compares.
#[component]
pub(crate) fn CompassLine() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let figure = cockpit.part(|readout| readout.compass.whole_degrees());
    let difference = cockpit.part(|readout| readout.difference);
    let warning = cockpit.part(move |readout| match readout.zone {
        Zone::Unreliable => words.zone_unreliable,
        Zone::Caution => words.zone_caution,
        Zone::Reliable => "",
    });
    view! {
        <div class="reading compass-reading">
            <p class="reading-name"><CompassMark/>" "<span>{words.compass}</span></p>
            <p class="figure" id="compass"><Figure value=figure/></p>
            <p class="reading-note">
                <strong class="difference" id="difference">
                    {move || (words.difference)(difference.get())}
                </strong>
            </p>
            <p class="warning" id="warning">{move || warning.get()}</p>
        </div>
    }
}

/// Where the aircraft is heading.
#[component]
pub(crate) fn HeadingLine() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let figure = cockpit.part(|readout| readout.heading.whole_degrees());
    let from_true = cockpit.part(|readout| readout.true_heading.map(|it| it.whole_degrees()));
    view! {
        <div class="reading heading-reading">
            <p class="reading-name"><HeadingMark/>" "<span>{words.heading}</span></p>
            <p class="figure" id="heading"><Figure value=figure/></p>
            <p class="reading-note" id="true-heading">
                {move || from_true.get().map(words.true_heading)}
            </p>
        </div>
    }
}

/// Three digits, centred; the degree sign hangs outside.
#[component]
pub(super) fn Figure(value: Memo<u16>) -> impl IntoView {
    view! { {move || format!("{:03}", value.get())}<span class="degree">"°"</span> }
}

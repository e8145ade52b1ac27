//! The two readings, one above the other on the lubber line, and their difference in words.

use super::cover::CoverButton;
use super::marks::{CompassMark, HeadingMark};
use crate::cockpit::use_cockpit;
use crate::cover::Cover;
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
    // What is covered is not given away to other programs either.
    let unless_covered = |shown: fn(Cover) -> bool, of: fn(&crate::session::Readout) -> String| {
        let text = cockpit.part(move |readout| shown(readout.cover).then(|| of(readout)));
        move || text.get()
    };
    view! {
        <section
            class="readings"
            id="readings"
            aria-label=cockpit.words.readings
            data-time=number(|readout| readout.time)
            data-heading=unless_covered(Cover::shows_heading, |readout| {
                format!("{:.2}", readout.heading.degrees())
            })
            data-compass=unless_covered(Cover::shows_compass, |readout| {
                format!("{:.2}", readout.compass.degrees())
            })
            data-bank=number(|readout| readout.bank)
            data-airspeed=number(|readout| readout.airspeed)
            data-tilt=unless_covered(Cover::shows_compass, |readout| {
                format!("{:.2}", readout.tilt)
            })
            data-at-stop=unless_covered(Cover::shows_compass, |readout| {
                readout.at_stop.to_string()
            })
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
    let figure = cockpit.part(|readout| {
        let shown = readout.cover.shows_compass();
        shown.then(|| readout.compass.whole_degrees())
    });
    let difference =
        cockpit.part(|readout| readout.cover.shows_both().then_some(readout.difference));
    let warning = cockpit.part(move |readout| match readout.zone {
        Zone::Unreliable => words.zone_unreliable,
        Zone::Caution => words.zone_caution,
        Zone::Reliable => "",
    });
    view! {
        <div class="reading compass-reading">
            <div class="reading-name">
                <CoverButton cover=Cover::Compass name=words.presenter().cover_compass>
                    <CompassMark/>" "<span>{words.compass}</span>
                </CoverButton>
            </div>
            <div class="figure" id="compass"><Figure value=figure/></div>
            <div class="reading-note">
                <strong class="difference" id="difference">
                    {move || difference.get().map(words.difference)}
                </strong>
            </div>
            <div class="warning" id="warning">{move || warning.get()}</div>
        </div>
    }
}

/// Where the aircraft is heading.
#[component]
pub(crate) fn HeadingLine() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let figure = cockpit.part(|readout| {
        let shown = readout.cover.shows_heading();
        shown.then(|| readout.heading.whole_degrees())
    });
    let from_true = cockpit.part(|readout| {
        let shown = readout
            .true_heading
            .filter(|_| readout.cover.shows_heading());
        shown.map(|it| it.whole_degrees())
    });
    view! {
        <div class="reading heading-reading">
            <div class="reading-name">
                <CoverButton cover=Cover::Heading name=words.presenter().cover_heading>
                    <HeadingMark/>" "<span>{words.heading}</span>
                </CoverButton>
            </div>
            <div class="figure" id="heading"><Figure value=figure/></div>
            <div class="reading-note" id="true-heading">
                {move || from_true.get().map(words.true_heading)}
            </div>
        </div>
    }
}

/// Three digits, centred; the degree sign hangs outside. Covered, a mark that asks.
#[component]
pub(super) fn Figure(value: Memo<Option<u16>>) -> impl IntoView {
    let covered = use_cockpit().words.presenter().covered;
    move || match value.get() {
        Some(value) => view! { {format!("{value:03}")}<span class="degree">"°"</span> }.into_any(),
        None => view! {
            <span class="asked" aria-hidden="true">"?"</span>
            <span class="unseen">{covered}</span>
        }
        .into_any(),
    }
}

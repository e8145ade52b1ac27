//! The flight from above: its track, and both directions as rays from the aircraft.

use super::pictures::Picture;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::session::Readout;
use drawing::plan_view::{Fit, PlanView, Words, describe, plan_view, scale_bar};
use kurbo::Size;
use leptos::prelude::*;

/// The track up to what is seen; what was flown after it is faint.
#[component]
pub(crate) fn Track() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.views;
    let draw = move |readout: &Readout, size: Size| {
        let heading = (words.heading_ray)(readout.heading.whole_degrees());
        let compass = (words.compass_ray)(readout.compass.whole_degrees());
        let error = (cockpit.words.error)(readout.difference);
        let variation = (words.variation)(readout.setting.field().variation().to_degrees());
        with_view(cockpit, readout, |view| {
            let scale = scale_bar(view, size).map(words.scale);
            let words = Words {
                magnetic_north: Some(words.magnetic_north),
                true_north: Some(words.true_north),
                variation: Some(&variation),
                heading: Some(&heading),
                compass: Some(&compass),
                error: (!error.is_empty()).then_some(error.as_str()),
                scale: scale.as_deref(),
            };
            plan_view(&PlanView { words, ..*view }, size)
        })
    };
    let text = move |readout: &Readout| {
        with_view(cockpit, readout, |view| {
            (words.track)(readout, &describe(view))
        })
    };
    view! { <Picture id="track" text draw/> }
}

/// What is seen of the flight, without words.
fn with_view<T>(cockpit: Cockpit, readout: &Readout, then: impl FnOnce(&PlanView<'_>) -> T) -> T {
    cockpit.with_session(|session| {
        let (track, later) = session.flown().track(&readout.moment);
        then(&PlanView {
            heading: readout.heading,
            reading: readout.compass,
            variation: if readout.setting.has_variation() {
                readout.setting.field().variation()
            } else {
                0.0
            },
            track: &track,
            later: &later,
            fit: Fit::Whole,
            show_heading: true,
            show_compass: true,
            words: Words::default(),
        })
    })
}

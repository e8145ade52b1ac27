//! Card face and rose, and the canvas that every picture stands on.

use crate::cockpit::{Cockpit, use_cockpit};
use crate::session::Readout;
use crate::stage::Stage;
use drawing::card_face::{CardFaceView, Words, card_face};
use drawing::rose::{RoseView, rose};
use drawing::shape::Shape;
use drawing::theme::{Light, Theme};
use kurbo::Size;
use leptos::ev::Custom;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use leptos_use_event_listener::use_event_listener;
use web_sys::Event;

/// The floating card above the heading ruler.
#[component]
pub(crate) fn CardFace() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let draw = move |readout: &Readout, size: Size| {
        let error = (words.error)(readout.difference);
        let view = CardFaceView {
            attitude: readout.moment.reading.card,
            heading: readout.heading,
            reading: readout.compass,
            apparent_vertical: readout.moment.apparent_gravity,
            at_stop: readout.at_stop,
            show_reference: true,
            show_compass: true,
            words: Words {
                error: (!error.is_empty()).then_some(error.as_str()),
                stop: readout.at_stop.then_some(words.at_stop),
                cover: None,
            },
        };
        card_face(&view, size)
    };
    view! { <Picture id="card" text=words.card_face draw/> }
}

/// Both directions from above.
#[component]
pub(crate) fn Rose() -> impl IntoView {
    let draw = |readout: &Readout, size: Size| {
        let view = RoseView {
            heading: readout.heading,
            reading: readout.compass,
            show_heading: true,
            show_compass: true,
        };
        rose(&view, size)
    };
    view! { <Picture id="rose" text=use_cockpit().words.rose draw/> }
}

/// A canvas that fills its box and is painted anew only when something changed.
#[component]
pub(crate) fn Picture<F, T>(
    /// Names the box, for the style sheet.
    id: &'static str,
    /// The text equivalent.
    text: T,
    /// Draws it for a size.
    draw: F,
) -> impl IntoView
where
    F: Fn(&Readout, Size) -> Vec<Shape> + 'static,
    T: Fn(&Readout) -> String + Send + Sync + 'static,
{
    let cockpit = use_cockpit();
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = fonts_loaded();
    Effect::new(move || {
        fonts.track();
        let size = Size::new(width.get(), height.get());
        let theme = theme(cockpit);
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            Stage::paint(&canvas, size, &theme, &draw(&cockpit.readout(), size));
        }
    });
    let label = cockpit.slowly(text);
    view! {
        <div class="picture" id=id node_ref=frame>
            <canvas node_ref=canvas role="img" aria-label=move || label.get()></canvas>
        </div>
    }
}

/// The colours of the page as it is lit.
pub(super) fn theme(cockpit: Cockpit) -> Theme {
    match cockpit.preferences.light() {
        Light::Day => Theme::day(),
        Light::Night => Theme::night(),
    }
}

/// Fires when fonts have arrived: what was painted in another must be painted anew.
pub(super) fn fonts_loaded() -> Trigger {
    let loaded = Trigger::new();
    let event = Custom::<Event>::new("loadingdone");
    let _ = use_event_listener(document().fonts(), event, move |_| loaded.notify());
    loaded
}

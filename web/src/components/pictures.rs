//! Card face and rose, and the canvas that every picture stands on.

use crate::cockpit::{Cockpit, use_cockpit};
use crate::cover::Cover;
use crate::session::Readout;
use crate::stage::Stage;
use crate::words::Words as PageWords;
use compass::reading::Difference;
use compass::simulation::Moment;
use drawing::card_face::{CardFaceView, Words, card_face};
use drawing::rose::{RoseView, rose};
use drawing::shape::Shape;
use drawing::theme::Theme;
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
        face(
            words,
            &readout.moment,
            readout.difference,
            readout.cover,
            size,
        )
    };
    view! { <Picture id="card" text=words.card_face draw/> }
}

/// The card face of an instant.
pub(crate) fn face(
    words: &PageWords,
    moment: &Moment,
    difference: Difference,
    cover: Cover,
    size: Size,
) -> Vec<Shape> {
    let error = (words.error)(difference);
    let reading = &moment.reading;
    let view = CardFaceView {
        attitude: reading.card,
        heading: moment.motion.heading,
        reading: reading.compass,
        apparent_vertical: moment.apparent_gravity,
        at_stop: reading.at_stop,
        show_reference: cover.shows_heading(),
        show_compass: cover.shows_compass(),
        words: Words {
            error: (cover.shows_both() && !error.is_empty()).then_some(error.as_str()),
            stop: reading.at_stop.then_some(words.at_stop),
            cover: Some(words.presenter().question),
        },
    };
    card_face(&view, size)
}

/// Both directions from above.
#[component]
pub(crate) fn Rose() -> impl IntoView {
    let draw = |readout: &Readout, size: Size| {
        let view = RoseView {
            heading: readout.heading,
            reading: readout.compass,
            show_heading: readout.cover.shows_heading(),
            show_compass: readout.cover.shows_compass(),
        };
        rose(&view, size)
    };
    view! { <Picture id="rose" text=use_cockpit().words.rose draw/> }
}

/// A picture of what can be read.
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
    let label = cockpit.slowly(text);
    view! {
        <Painted
            id
            label
            theme=move || theme(cockpit)
            draw=move |size| draw(&cockpit.readout(), size)
        />
    }
}

/// A canvas that fills its box and is painted anew only when something changed.
#[component]
pub(crate) fn Painted<F, C>(
    /// Names the box, for the style sheet.
    id: &'static str,
    /// The text equivalent.
    #[prop(into)]
    label: Signal<String>,
    /// The colours.
    theme: C,
    /// Draws it for a size.
    draw: F,
) -> impl IntoView
where
    F: Fn(Size) -> Vec<Shape> + 'static,
    C: Fn() -> Theme + 'static,
{
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = fonts_loaded();
    Effect::new(move || {
        fonts.track();
        let size = Size::new(width.get(), height.get());
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            Stage::paint(&canvas, size, &theme(), &draw(size));
        }
    });
    view! {
        <div class="picture" id=id node_ref=frame>
            <canvas node_ref=canvas role="img" aria-label=move || label.get()></canvas>
        </div>
    }
}

/// The colours of the page as it is lit.
pub(super) fn theme(cockpit: Cockpit) -> Theme {
    let theme = cockpit.preferences.theme();
    if cockpit.presenter.presenting() {
        theme.strong()
    } else {
        theme
    }
}

/// Fires when fonts have arrived: what was painted in another must be painted anew.
pub(super) fn fonts_loaded() -> Trigger {
    let loaded = Trigger::new();
    let event = Custom::<Event>::new("loadingdone");
    let _ = use_event_listener(document().fonts(), event, move |_| loaded.notify());
    loaded
}

//! Why the card does what it does: one sentence, the bowl cut away, the torques.

use super::controls::keep_focus;
use super::cover::CoverWord;
use super::pictures::Picture;
use crate::cockpit::use_cockpit;
use crate::session::Readout;
use crate::words::WhyWords;
use compass::cause::explain;
use compass::field::MagneticField;
use compass::simulation::Moment;
use drawing::bowl_view::{self, BowlView, Parts, bowl_view};
use drawing::shape::Shape;
use drawing::stage3d::Camera;
use drawing::torque_ledger::{LedgerView, SMALLEST_SCALE, steady_scale, torque_ledger};
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use std::cell::Cell;
use web_sys::{KeyboardEvent, PointerEvent};

/// How far the camera goes round for each pixel of a drag, radians; chosen: a drag across the
/// picture goes half round.
const ORBIT: f64 = 0.01;

/// How far it goes round for each press of an arrow key, radians; chosen: a dozen presses go a
/// third round.
const ORBIT_STEP: f64 = 10.0 * std::f64::consts::PI / 180.0;

/// The cameras, in the order of their words.
const CAMERAS: [fn() -> Camera; 5] = [
    Camera::default,
    Camera::pilots_seat,
    Camera::behind,
    Camera::side,
    Camera::above,
];

/// One part of the picture, to be shown or not.
type Part = fn(&mut Parts) -> &mut bool;

/// The parts, in the order of their words.
const PARTS: [Part; 10] = [
    |parts| &mut parts.bowl,
    |parts| &mut parts.liquid,
    |parts| &mut parts.pivot,
    |parts| &mut parts.card,
    |parts| &mut parts.magnet,
    |parts| &mut parts.field,
    |parts| &mut parts.components,
    |parts| &mut parts.pulls,
    |parts| &mut parts.verticals,
    |parts| &mut parts.bank,
];

/// The reasons, where they are shown.
#[component]
pub(crate) fn Why() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.why;
    let camera = RwSignal::new(Camera::default());
    let parts = RwSignal::new(Parts::ALL);
    let sentence = cockpit
        .part(move |readout| (words.sentence)(&explain(&readout.moment, &readout.setting.field())));
    view! {
        <Show
            when=move || cockpit.why_shown() && cockpit.cover().shows_both()
            fallback=move || {
                cockpit
                    .why_shown()
                    .then(|| view! { <div class="why-covered" id="why"><CoverWord/></div> })
            }
        >
            <section class="why" id="why" aria-label=words.title>
                <div class="why-card">
                    <p class="why-sentence" id="why-sentence">{move || sentence.get()}</p>
                    <Bowl camera parts/>
                    <Cameras camera/>
                    <Shown parts/>
                </div>
                <Ledger/>
            </section>
        </Show>
    }
}

/// Draws the bowl at a moment in a field: seen from there, with those parts.
pub(crate) fn bowl(
    words: &WhyWords,
    moment: &Moment,
    field: &MagneticField,
    (camera, parts): (Camera, Parts),
    size: Size,
) -> Vec<Shape> {
    let dip = (words.dip)(field.dip().to_degrees().round() as i16);
    let bank = (words.bank)(moment.motion.bank.to_degrees().round() as i32);
    bowl_view(
        &BowlView {
            moment,
            field,
            camera,
            parts,
            words: bowl_view::Words {
                dip: Some(&dip),
                vertical_pull: Some(words.vertical_pull),
                true_vertical: Some(words.true_vertical),
                apparent_vertical: Some(words.apparent_vertical),
                bank: Some(&bank),
                ..bowl_view::Words::default()
            },
        },
        size,
    )
}

/// Draws the torques of a moment; the scale is that of the last picture, and becomes this one's.
pub(crate) fn ledger(
    words: &WhyWords,
    moment: &Moment,
    scale: &Cell<f64>,
    size: Size,
) -> Vec<Shape> {
    let torques = moment.torques;
    scale.set(steady_scale(&torques, scale.get()));
    let view = LedgerView {
        torques,
        scale: scale.get(),
        words: words.in_ledger(),
    };
    torque_ledger(&view, size)
}

/// The bowl in three dimensions; a drag or the arrow keys go round it.
#[component]
fn Bowl(camera: RwSignal<Camera>, parts: RwSignal<Parts>) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.why;
    let draw = move |readout: &Readout, size: Size| {
        let field = readout.setting.field();
        bowl(
            words,
            &readout.moment,
            &field,
            (camera.get(), parts.get()),
            size,
        )
    };
    let frame = NodeRef::<html::Div>::new();
    let orbit = move |event: PointerEvent| {
        if event.buttons() & 1 == 1 {
            let (right, down) = (event.movement_x(), event.movement_y());
            camera.update(|camera| {
                *camera = camera.orbited(-ORBIT * f64::from(right), ORBIT * f64::from(down));
            });
        }
    };
    let hold = move |event: PointerEvent| {
        if let Some(frame) = frame.get_untracked() {
            // Without the capture, a drag ends at the edge.
            let _ = frame.set_pointer_capture(event.pointer_id());
        }
    };
    let pressed = move |event: KeyboardEvent| {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        // While the picture has the focus these keys are its own and do not fly.
        let (round, up) = match event.key().as_str() {
            "ArrowLeft" => (ORBIT_STEP, 0.0),
            "ArrowRight" => (-ORBIT_STEP, 0.0),
            "ArrowUp" => (0.0, ORBIT_STEP),
            "ArrowDown" => (0.0, -ORBIT_STEP),
            "Home" => {
                event.prevent_default();
                camera.set(Camera::default());
                return;
            }
            _ => return,
        };
        event.prevent_default();
        camera.update(|camera| *camera = camera.orbited(round, up));
    };
    view! {
        <div
            class="bowl"
            role="group"
            tabindex="0"
            node_ref=frame
            aria-label=cockpit.words.presenter().orbit
            on:pointerdown=hold
            on:pointermove=orbit
            on:keydown=pressed
        >
            <Picture id="bowl" text=words.bowl draw/>
        </div>
    }
}

/// The places to look from.
#[component]
fn Cameras(camera: RwSignal<Camera>) -> impl IntoView {
    let words = &use_cockpit().words.why;
    let button = move |(label, place): (&'static str, fn() -> Camera)| {
        view! {
            <button
                type="button"
                aria-pressed=move || (camera.get() == place()).to_string()
                on:mousedown=keep_focus
                on:click=move |_| camera.set(place())
            >
                {label}
            </button>
        }
    };
    view! {
        <div class="cameras" role="group" aria-label=words.seen_from>
            {words.cameras.into_iter().zip(CAMERAS).map(button).collect_view()}
        </div>
    }
}

/// The torques, as bars that sum to the net.
#[component]
fn Ledger() -> impl IntoView {
    let words = &use_cockpit().words.why;
    let scale = Cell::new(SMALLEST_SCALE);
    let draw = move |readout: &Readout, size: Size| ledger(words, &readout.moment, &scale, size);
    view! { <Picture id="ledger" text=words.ledger draw/> }
}

/// What the picture of the bowl shows, part by part, so that a lesson can build it up.
#[component]
fn Shown(parts: RwSignal<Parts>) -> impl IntoView {
    let words = &use_cockpit().words.why;
    let tick = move |(label, part): (&'static str, Part)| {
        view! {
            <label>
                <input
                    type="checkbox"
                    prop:checked=move || *part(&mut parts.get())
                    on:change=move |_| parts.update(|parts| *part(parts) = !*part(parts))
                />
                {label}
            </label>
        }
    };
    view! {
        <details class="shown">
            <summary>{words.shown}</summary>
            <div class="shown-parts">
                {words.parts.into_iter().zip(PARTS).map(tick).collect_view()}
            </div>
        </details>
    }
}

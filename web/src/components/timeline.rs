//! The timeline: the whole flight as a strip chart, to look back at any moment of it, to fly on
//! from there, and to take home.

use super::controls::{Ask, keep_focus};
use super::error_chart::{self, AgainstWhat, ErrorChart};
use super::pictures::{fonts_loaded, theme};
use crate::cockpit::{Against, Cockpit, use_cockpit};
use crate::download::download;
use crate::intent::{Intent, shortcut};
use crate::session::Session;
use crate::stage::Stage;
use drawing::chart::Frame;
use drawing::strip_chart::{
    Event, StripChartView, StripLayout, describe, read_at, strip_chart, to_csv,
};
use drawing::svg::Picture;
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use web_sys::{KeyboardEvent, PointerEvent};

/// The chart is as long as so many whole seconds, so that it does not creep while it fills.
const STRETCH: f64 = 60.0;

/// The size of the chart that is taken home; chosen: the width of a printed page at a height at
/// which three strips are read with ease.
const EXPORTED: Size = Size::new(1180.0, 420.0);

/// The chart along the foot, and its buttons.
#[component]
pub(crate) fn Timeline() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let looking = cockpit.part(|readout| readout.looking);
    let has_old = cockpit.part(|readout| readout.has_old);
    let hidden = move || !cockpit.timeline_shown();
    let against_time = move || cockpit.against() == Against::Time;
    view! {
        <section class="timeline" aria-label=words.timeline>
            <div class="time-tools">
                <div class="time-head">
                <button
                    type="button"
                    class="quiet time-toggle"
                    id="timeline"
                    aria-expanded=move || cockpit.timeline_shown().to_string()
                    aria-controls="time-chart"
                    aria-keyshortcuts=shortcut(Intent::ShowTimeline)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::ShowTimeline)
                >
                    {words.timeline}
                </button>
                <div hidden=hidden><AgainstWhat/></div>
                </div>
                <div class="time-buttons" hidden=hidden>
                    <Ask intent=Intent::LastEvent button=words.last_event sign="‹"/>
                    <Ask intent=Intent::NextEvent button=words.next_event sign="›"/>
                    <Ask intent=Intent::LookAtEnd button=words.look_at_end/>
                    <button
                        type="button"
                        class="save"
                        on:mousedown=keep_focus
                        on:click=move |_| save(cockpit, save_csv, error_chart::save_csv)
                        aria-label=words.save_csv.name
                        title=words.save_csv.name
                    >
                        {words.save_csv.label}
                    </button>
                    <button
                        type="button"
                        class="save"
                        on:mousedown=keep_focus
                        on:click=move |_| save(cockpit, save_svg, error_chart::save_svg)
                        aria-label=words.save_svg.name
                        title=words.save_svg.name
                    >
                        {words.save_svg.label}
                    </button>
                    <div class="branch" hidden=move || !looking.get()>
                        <Ask intent=Intent::FlyFromHere button=words.fly_from_here/>
                    </div>
                    <div class="branch" hidden=move || !has_old.get() || looking.get()>
                        <Ask intent=Intent::ReturnToOld button=words.return_to_old/>
                    </div>
                </div>
            </div>
            <div class="time-chart" id="time-chart" hidden=hidden>
                <Show when=against_time fallback=ErrorChart>
                    <Chart/>
                </Show>
            </div>
        </section>
    }
}

/// The strips, on which the playhead is moved as on a slider.
#[component]
fn Chart() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = fonts_loaded();
    // Where the strips stand in what was painted last.
    let area = StoredValue::new(None::<Frame>);
    let cursor = RwSignal::new(None::<f64>);
    let dragged = StoredValue::new(false);

    let still = cockpit.still();
    Effect::new(move || {
        fonts.track();
        cockpit.track_chart(still);
        let size = Size::new(width.get(), height.get());
        let theme = theme(cockpit);
        let cursor = cursor.get();
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            let playhead = cockpit.now().time;
            cockpit.with_session(|session| {
                with_view(cockpit, session, |view| {
                    let view = StripChartView {
                        playhead: Some(playhead),
                        // Beyond the end of the flight there is nothing to read off.
                        cursor: cursor.filter(|time| read_at(view.samples, *time).is_some()),
                        ..*view
                    };
                    area.set_value(Some(StripLayout::new(&view, size).heading));
                    Stage::paint(&canvas, size, &theme, &strip_chart(&view, size));
                });
            });
        }
    });

    // The time under a pointer, the nearest one on the strips for one beside them.
    let under = move |event: &PointerEvent| {
        let (frame, area) = (frame.get_untracked()?, area.get_value()?);
        let x = f64::from(event.client_x()) - frame.get_bounding_client_rect().left();
        area.x.value(x.clamp(area.area.x0, area.area.x1))
    };
    let look = move |event: &PointerEvent| {
        if let Some(time) = under(event) {
            cockpit.ask(Intent::LookAt(time));
        }
    };
    let down = move |event: PointerEvent| {
        if event.button() == 0 && event.is_primary() {
            if let Some(frame) = frame.get_untracked() {
                // Without the capture, a drag ends at the edge.
                let _ = frame.set_pointer_capture(event.pointer_id());
            }
            dragged.set_value(true);
            cursor.set(None);
            look(&event);
        }
    };
    let moved = move |event: PointerEvent| {
        if dragged.get_value() {
            look(&event);
        } else {
            cursor.set(under(&event));
        }
    };
    let left = move |_: PointerEvent| {
        dragged.set_value(false);
        cursor.set(None);
    };
    let pressed = move |event: KeyboardEvent| {
        if let Some(intent) = slid(&event) {
            event.prevent_default();
            cockpit.ask(intent);
        }
    };

    let tenths = |seconds: f64| format!("{:.1}", seconds);
    let now = cockpit.at_leisure(move |readout| tenths(readout.time.min(readout.flown)));
    let most = cockpit.at_leisure(move |readout| tenths(readout.flown));
    let text = cockpit.at_leisure(words.moment);
    let told = Memo::new(move |_| {
        cockpit.track_beat();
        cockpit.with_session(|session| description(cockpit, session))
    });
    view! {
        <div
            class="picture"
            id="strips"
            role="slider"
            tabindex="0"
            node_ref=frame
            aria-label=words.playhead
            aria-describedby="strips-told"
            aria-valuemin="0.0"
            aria-valuemax=move || most.get()
            aria-valuenow=move || now.get()
            aria-valuetext=move || text.get()
            on:mousedown=keep_focus
            on:pointerdown=down
            on:pointermove=moved
            on:pointerup=left
            on:pointercancel=left
            on:pointerleave=move |_| cursor.set(None)
            on:keydown=pressed
        >
            <canvas node_ref=canvas aria-hidden="true"></canvas>
        </div>
        <p class="unseen" id="strips-told">{move || told.get()}</p>
    }
}

/// What a key asks of the slider while it has the focus.
fn slid(event: &KeyboardEvent) -> Option<Intent> {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return None;
    }
    Some(match event.key().as_str() {
        "ArrowLeft" | "ArrowDown" => Intent::LookBy(-1),
        "ArrowRight" | "ArrowUp" => Intent::LookBy(1),
        "PageDown" => Intent::LastEvent,
        "PageUp" => Intent::NextEvent,
        "Home" => Intent::LookAtStart,
        "End" => Intent::LookAtEnd,
        _ => return None,
    })
}

/// The flight as the chart shows it, without playhead and cursor.
fn with_view<T>(
    cockpit: Cockpit,
    session: &Session,
    then: impl FnOnce(&StripChartView<'_>) -> T,
) -> T {
    let words = cockpit.words;
    let flown = session.flown();
    let named: Vec<(f64, String)> = flown
        .events()
        .iter()
        .map(|it| (it.time, (words.event)(&it.event)))
        .collect();
    let events: Vec<Event<'_>> = named
        .iter()
        .map(|(time, words)| Event { time: *time, words })
        .collect();
    let end = flown.end().time();
    then(&StripChartView {
        samples: flown.chart(),
        window: [0.0, ((end / STRETCH).ceil() * STRETCH).max(STRETCH)],
        events: &events,
        words: words.strips,
        ..StripChartView::default()
    })
}

fn description(cockpit: Cockpit, session: &Session) -> String {
    with_view(cockpit, session, |view| {
        (cockpit.words.flight)(&describe(view))
    })
}

/// Saves the chart that is seen.
fn save(cockpit: Cockpit, against_time: fn(Cockpit), against_heading: fn(Cockpit)) {
    match untrack(|| cockpit.against()) {
        Against::Time => against_time(cockpit),
        Against::Heading => against_heading(cockpit),
    }
}

fn save_csv(cockpit: Cockpit) {
    let text = cockpit.with_session(|session| to_csv(session.flown().chart()));
    download("dipwise-flight.csv", "text/csv", &text);
}

fn save_svg(cockpit: Cockpit) {
    let theme = untrack(|| theme(cockpit));
    let text = cockpit.with_session(|session| {
        with_view(cockpit, session, |view| {
            // As long as the flight, as nothing more is to come.
            let end = session.flown().end().time().max(1.0);
            let view = StripChartView {
                window: [0.0, end],
                ..*view
            };
            Picture {
                size: EXPORTED,
                shapes: &strip_chart(&view, EXPORTED),
                theme: &theme,
                id: "flight",
                title: cockpit.words.timeline,
                description: &(cockpit.words.flight)(&describe(&view)),
                ground: true,
            }
            .to_svg()
        })
    });
    download("dipwise-flight.svg", "image/svg+xml", &text);
}

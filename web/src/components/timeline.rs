//! The timeline: the whole flight as a strip chart, to look back at any moment of it, to fly on
//! from there, and to take home.

use super::controls::{Ask, keep_focus};
use super::cover::CoverWord;
use super::error_chart::{self, AgainstWhat, ErrorChart};
use super::making::MakeOfFlight;
use super::pictures::{fonts_loaded, theme};
use crate::cockpit::{Against, Cockpit, use_cockpit};
use crate::download::{download, download_png};
use crate::intent::{Intent, shortcut};
use crate::session::{Readout, Session};
use crate::stage::Stage;
use crate::words::Button;
use drawing::strip_chart::{
    Event, StripChartView, StripLayout, describe, laid_out, moving, strip_chart, to_csv,
};
use drawing::svg::Picture;
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use web_sys::{KeyboardEvent, PointerEvent};

/// The chart is as long as so many whole seconds, so that it does not creep while it fills.
const STRETCH: f64 = 60.0;

/// How far the read-out stands from the pointer, in pixels; chosen.
const BESIDE: f64 = 8.0;

/// Below this width, in pixels, there is no room for it beside the pointer: it stands at the left.
/// Chosen: twice its length and a little.
const NARROW: f64 = 680.0;

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
    let replaying = cockpit.part(Readout::replaying);
    let stretch = cockpit.part(|readout| readout.stretch);
    let replay = Signal::derive(move || {
        if replaying.get() {
            words.time().pause_replay
        } else {
            words.time().replay
        }
    });
    let loops = Signal::derive(move || (words.time().loops)(stretch.get()));
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
                    <div class="by-third">
                        <Ask intent=Intent::Replay button=replay/>
                        <Ask intent=Intent::Loop button=loops/>
                        <Ask intent=Intent::ShowFilm button=words.film().show/>
                    </div>
                    <Save button=words.save_csv save=[save_csv, error_chart::save_csv]/>
                    <Save button=words.save_svg save=[save_svg, error_chart::save_svg]/>
                    <Save button=words.time().save_png save=[save_png, error_chart::save_png]/>
                    <Save button=words.time().save_flight save=[save_flight; 2]/>
                    <MakeOfFlight/>
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
                <CoverWord/>
            </div>
        </section>
    }
}

/// A button that hands the browser a file: of the chart against time, or of that against heading.
#[component]
fn Save(button: Button, save: [fn(Cockpit); 2]) -> impl IntoView {
    let cockpit = use_cockpit();
    view! {
        <button
            type="button"
            class="save"
            on:mousedown=keep_focus
            on:click=move |_| match untrack(|| cockpit.against()) {
                Against::Time => save[0](cockpit),
                Against::Heading => save[1](cockpit),
            }
            aria-label=button.name
            title=button.name
        >
            {button.label}
        </button>
    }
}

/// The strips, on which the playhead is moved as on a slider.
#[component]
fn Chart() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    // What moves stands on a canvas of its own, painted every frame; the strips seldom are.
    let over = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let size = Memo::new(move |_| Size::new(width.get(), height.get()));
    let fonts = fonts_loaded();
    // Where the strips stand in what was painted last.
    let layout = RwSignal::new_local(None::<StripLayout>);
    let cursor = RwSignal::new(None::<f64>);
    let dragged = StoredValue::new(false);

    let still = cockpit.still();
    let stretch = cockpit.part(|readout| readout.stretch);
    Effect::new(move || {
        fonts.track();
        stretch.track();
        cockpit.track_chart(still);
        let size = size.get();
        let theme = theme(cockpit);
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            cockpit.with_session(|session| {
                with_view(cockpit, session, |view| {
                    let (shapes, place) = laid_out(view, size);
                    Stage::paint(&canvas, size, &theme, &shapes);
                    layout.set(Some(place));
                });
            });
        }
    });
    let time = cockpit.part(|readout| readout.time);
    let read_off = Memo::new(move |_| {
        // Beyond the end of the flight there is nothing to read off.
        let time = cursor.get()?;
        if cockpit.player.seen().is_some_and(|seen| time > seen) {
            return None;
        }
        cockpit.with_session(|session| session.flown().read_at(time))
    });
    Effect::new(move || {
        let size = size.get();
        let theme = theme(cockpit);
        let read_off = read_off.get();
        let view = StripChartView {
            samples: read_off.as_slice(),
            playhead: Some(time.get()),
            cursor: read_off.map(|sample| sample.time),
            words: words.strips,
            ..StripChartView::default()
        };
        if let Some(canvas) = over.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            layout.with(|layout| {
                if let Some(layout) = layout {
                    Stage::paint(&canvas, size, &theme, &moving(&view, layout));
                }
            });
        }
    });

    // The time under a pointer, the nearest one on the strips for one beside them.
    let under = move |event: &PointerEvent| {
        let frame = frame.get_untracked()?;
        let x = f64::from(event.client_x()) - frame.get_bounding_client_rect().left();
        layout.with_untracked(|layout| {
            let area = layout.as_ref()?.heading.area;
            layout.as_ref()?.time_at(x.clamp(area.x0, area.x1))
        })
    };
    // The read-out stands beside the pointer, on the side where there is room: pixels from the
    // left, and from the right.
    let beside = Memo::new(move |_| {
        let place = layout.with(|layout| Some(layout.as_ref()?.x_of(cursor.get()?)));
        let (place, width) = (place.unwrap_or_default(), size.get().width);
        let pixels = |from_edge: f64| format!("{:.0}px", from_edge + BESIDE);
        if width < NARROW {
            ("0px".to_owned(), "auto".to_owned())
        } else if place > 0.5 * width {
            ("auto".to_owned(), pixels(width - place))
        } else {
            (pixels(place), "auto".to_owned())
        }
    });
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
        // A slide clicker's keys lead the lesson, whatever has the focus.
        let leads = untrack(|| cockpit.presenter.presenting() || cockpit.player.plays());
        let clicked = leads && event.key().starts_with("Page");
        if !clicked && let Some(intent) = slid(&event) {
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
            <canvas node_ref=over aria-hidden="true"></canvas>
            // Only a pointer asks for it; the slider's value says the same of the playhead.
            <p
                class="read-off"
                id="read-off"
                aria-hidden="true"
                hidden=move || read_off.get().is_none()
                style:left=move || beside.get().0
                style:right=move || beside.get().1
            >
                {move || read_off.get().map(|sample| (words.time().read_off)(&sample))}
            </p>
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
    // Of a demonstration, what the class has seen.
    let seen = cockpit.player.seen().unwrap_or(f64::INFINITY);
    let samples = flown.chart();
    let samples = &samples[..samples.partition_point(|it| it.time <= seen)];
    let named: Vec<(f64, String)> = flown
        .events()
        .iter()
        .filter(|it| it.time <= seen)
        .map(|it| (it.time, (words.event)(&it.event)))
        .collect();
    let events: Vec<Event<'_>> = named
        .iter()
        .map(|(time, words)| Event { time: *time, words })
        .collect();
    let end = flown.end().time();
    then(&StripChartView {
        samples,
        window: [0.0, ((end / STRETCH).ceil() * STRETCH).max(STRETCH)],
        events: &events,
        stretch: session.stretch().seconds(),
        words: words.strips,
        ..StripChartView::default()
    })
}

/// The layout of the strips in a size: where their time axis stands.
pub(super) fn strip_layout(cockpit: Cockpit, size: Size) -> StripLayout {
    cockpit.with_session(|session| with_view(cockpit, session, |view| StripLayout::new(view, size)))
}

fn description(cockpit: Cockpit, session: &Session) -> String {
    with_view(cockpit, session, |view| {
        (cockpit.words.flight)(&describe(view))
    })
}

fn save_csv(cockpit: Cockpit) {
    let text = cockpit.with_session(|session| to_csv(&session.flown().table()));
    download("dipwise-flight.csv", "text/csv", &text);
}

fn save_svg(cockpit: Cockpit) {
    let theme = untrack(|| theme(cockpit));
    let text = with_whole(cockpit, |view| {
        Picture {
            size: EXPORTED,
            shapes: &strip_chart(view, EXPORTED),
            theme: &theme,
            id: "flight",
            title: cockpit.words.timeline,
            description: &(cockpit.words.flight)(&describe(view)),
            ground: true,
        }
        .to_svg()
    });
    download("dipwise-flight.svg", "image/svg+xml", &text);
}

fn save_png(cockpit: Cockpit) {
    let theme = untrack(|| theme(cockpit));
    let shapes = with_whole(cockpit, |view| strip_chart(view, EXPORTED));
    download_png("dipwise-flight.png", EXPORTED, &theme, &shapes);
}

fn save_flight(cockpit: Cockpit) {
    match cockpit.with_session(Session::to_scenario) {
        Some(file) => download("dipwise-flight.json", "application/json", &file.to_json()),
        None => cockpit.tell(cockpit.words.time().not_saved.to_owned()),
    }
}

/// The chart as it is taken home: as long as the flight, as nothing more is to come.
fn with_whole<T>(cockpit: Cockpit, then: impl FnOnce(&StripChartView<'_>) -> T) -> T {
    cockpit.with_session(|session| {
        with_view(cockpit, session, |view| {
            let end = session.flown().end().time().max(1.0);
            then(&StripChartView {
                window: [0.0, end],
                ..*view
            })
        })
    })
}

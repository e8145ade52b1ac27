//! The error against the heading in the turn or change of speed that is seen: by the closed
//! form, by the rule of thumb, and in this flight.

use super::controls::keep_focus;
use super::pictures::{fonts_loaded, theme};
use crate::cockpit::{Against, Cockpit, use_cockpit};
use crate::download::{download, download_png};
use crate::intent::{Intent, shortcut};
use crate::session::Session;
use crate::stage::Stage;
use crate::words::{Errors, ReadOff};
use compass::heading::MagneticHeading;
use drawing::error_chart::{
    ErrorAt, ErrorChartView, ErrorLayout, Line, Words, describe, error_chart, read_at, sampled,
    to_csv,
};
use drawing::svg::Picture;
use flights::manoeuvre::Kind;
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use web_sys::{KeyboardEvent, PointerEvent};

/// The size of the chart that is taken home; chosen: as that against time.
const EXPORTED: Size = Size::new(1180.0, 420.0);

/// How far the arrow keys move the heading that is read off, in degrees, and the page keys.
const STEP: f64 = 5.0;
const STRIDE: f64 = 30.0;

/// The buttons that choose what the chart is drawn against.
#[component]
pub(crate) fn AgainstWhat() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.views;
    let button = move |(against, button): (Against, crate::words::Button)| {
        view! {
            <button
                type="button"
                aria-pressed=move || (cockpit.against() == against).to_string()
                aria-label=button.name
                title=button.name
                on:mousedown=keep_focus
                on:click=move |_| cockpit.draw_against(against)
            >
                {button.label}
            </button>
        }
    };
    let choices = [
        (Against::Time, words.against_time),
        (Against::Heading, words.against_heading),
    ];
    view! {
        <div
            class="choice"
            role="group"
            aria-label=words.against
            aria-keyshortcuts=shortcut(Intent::ChangeChart)
        >
            {choices.map(button).collect_view()}
        </div>
    }
}

/// What is computed for a manoeuvre: it changes with that alone.
#[derive(Clone, Debug, Default, PartialEq)]
struct Theory {
    kind: Option<Kind>,
    closed_form: Vec<ErrorAt>,
    rule: Vec<ErrorAt>,
}

impl Theory {
    fn of(kind: Option<Kind>, dip: f64, latitude: Option<f64>) -> Self {
        let closed_form = kind.map(|kind| sampled(|heading| kind.closed_form(heading, dip)));
        let rule = kind.zip(latitude).and_then(|(kind, latitude)| {
            kind.rule_of_thumb(MagneticHeading::from_radians(0.0), latitude)?;
            Some(sampled(|heading| {
                kind.rule_of_thumb(heading, latitude).unwrap_or(f64::NAN)
            }))
        });
        Self {
            kind,
            closed_form: closed_form.unwrap_or_default(),
            rule: rule.unwrap_or_default(),
        }
    }
}

/// The chart, on which the heading to read the errors on is moved as on a slider.
#[component]
pub(crate) fn ErrorChart() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = &cockpit.words.views;
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = fonts_loaded();
    // Where the chart stands in what was painted last.
    let layout = StoredValue::new(None::<ErrorLayout>);
    // The heading that is read off, in degrees.
    let cursor = RwSignal::new(None::<f64>);

    let still = cockpit.still();
    let kind = Memo::new(move |_| {
        cockpit.track_chart(still);
        cockpit.with_session(|session| kind(cockpit, session))
    });
    let earth = cockpit.part(|readout| (readout.setting.field().dip(), latitude(readout)));
    let theory = Memo::new(move |_| {
        let (dip, latitude) = earth.get();
        Theory::of(kind.get(), dip, latitude)
    });
    let look = move |cursor: Option<f64>, then: &mut dyn FnMut(&ErrorChartView<'_>)| {
        theory.with(|theory| {
            cockpit.with_session(|session| {
                with_view(cockpit, session, theory, |view| {
                    let cursor = cursor.map(MagneticHeading::from_degrees);
                    then(&ErrorChartView { cursor, ..*view });
                });
            });
        });
    };
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
            look(cursor, &mut |view| {
                layout.set_value(Some(ErrorLayout::new(view, size)));
                Stage::paint(&canvas, size, &theme, &error_chart(view, size));
            });
        }
    });

    let under = move |event: &PointerEvent| {
        let (frame, layout) = (frame.get_untracked()?, layout.get_value()?);
        let x = f64::from(event.client_x()) - frame.get_bounding_client_rect().left();
        let area = layout.frame.area;
        layout.frame.x.value(x.clamp(area.x0, area.x1))
    };
    let pressed = move |event: KeyboardEvent| {
        let from = cursor.get_untracked();
        let now = || cockpit.now().heading.degrees();
        if let Some(to) = slid(&event, from.unwrap_or_else(now)) {
            event.prevent_default();
            cursor.set(Some(to));
        }
    };

    let heading = Memo::new(move |_| {
        cockpit.track_chart(still);
        let degrees = cursor
            .get()
            .unwrap_or_else(|| cockpit.now().heading.degrees());
        degrees.round() % 360.0
    });
    let read = Memo::new(move |_| {
        cockpit.track_chart(still);
        let mut said = String::new();
        look(Some(heading.get()), &mut |view| {
            said = read_off(cockpit, view, theory.with(|theory| theory.kind));
        });
        said
    });
    let caption = Memo::new(move |_| {
        if cursor.get().is_some() {
            return read.get();
        }
        (words.errors_of)(&errors(cockpit, kind.get()))
    });
    let told = Memo::new(move |_| {
        cockpit.track_beat();
        let mut said = String::new();
        look(None, &mut |view| {
            said = (words.errors)(&errors(cockpit, kind.get_untracked()), &describe(view));
        });
        said
    });
    view! {
        <p class="errors-caption" id="errors-caption">{move || caption.get()}</p>
        <div
            class="picture"
            id="errors"
            role="slider"
            tabindex="0"
            node_ref=frame
            aria-label=words.read_at
            aria-describedby="errors-told"
            aria-valuemin="0"
            aria-valuemax="359"
            aria-valuenow=move || heading.get().to_string()
            aria-valuetext=move || read.get()
            on:mousedown=keep_focus
            on:pointerdown=move |event| cursor.set(under(&event))
            on:pointermove=move |event| cursor.set(under(&event))
            on:pointerleave=move |_| cursor.set(None)
            on:blur=move |_| cursor.set(None)
            on:keydown=pressed
        >
            <canvas node_ref=canvas aria-hidden="true"></canvas>
        </div>
        <p class="unseen" id="errors-told">{move || told.get()}</p>
    }
}

/// Where a key moves the heading that is read off: round and round in whole steps.
fn slid(event: &KeyboardEvent, from: f64) -> Option<f64> {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return None;
    }
    let step = |by: f64| (STEP * (from / STEP).round() + by).rem_euclid(360.0);
    Some(match event.key().as_str() {
        "ArrowLeft" | "ArrowDown" => step(-STEP),
        "ArrowRight" | "ArrowUp" => step(STEP),
        "PageDown" => step(-STRIDE),
        "PageUp" => step(STRIDE),
        "Home" => 0.0,
        "End" => 360.0 - STEP,
        _ => return None,
    })
}

fn latitude(readout: &crate::session::Readout) -> Option<f64> {
    readout.setting.source.latitude()
}

/// The manoeuvre that is seen.
fn kind(cockpit: Cockpit, session: &Session) -> Option<Kind> {
    let seen = session.flown().manoeuvre(cockpit.now().time);
    seen.map(|it| it.kind.rounded())
}

/// What the chart is drawn for.
fn errors(cockpit: Cockpit, kind: Option<Kind>) -> Errors {
    let now = cockpit.now();
    Errors {
        kind,
        dip: now.setting.field().dip().to_degrees(),
        has_latitude: latitude(&now).is_some(),
    }
}

/// The chart as it is, without cursor.
fn with_view<T>(
    cockpit: Cockpit,
    session: &Session,
    theory: &Theory,
    then: impl FnOnce(&ErrorChartView<'_>) -> T,
) -> T {
    let words = &cockpit.words.views;
    let now = cockpit.now();
    let flown = session.flown();
    let in_it = flown.manoeuvre(now.time);
    let in_it = in_it.iter().flat_map(|it| flown.samples_of(it));
    let float: Vec<ErrorAt> = in_it
        .map(|sample| ErrorAt {
            heading: MagneticHeading::from_radians(sample.heading),
            error: sample.error,
        })
        .collect();
    let [above, below] = theory.kind.map_or([""; 2], words.sides);
    then(&ErrorChartView {
        closed_form: Line {
            points: &theory.closed_form,
            words: words.closed_form,
        },
        rule: Line {
            points: &theory.rule,
            words: if theory.rule.is_empty() {
                ""
            } else {
                words.rule
            },
        },
        float: Line {
            points: &float,
            words: words.this_flight,
        },
        now: Some(ErrorAt {
            heading: now.heading,
            error: now.compass.error_from(now.heading),
        }),
        cursor: None,
        words: Words {
            above,
            below,
            lag_above: matches!(theory.kind, Some(Kind::Turn { bank }) if bank < 0.0),
            cardinals: words.cardinals,
            empty: words.no_errors,
        },
    })
}

/// The lines at the cursor, in words.
fn read_off(cockpit: Cockpit, view: &ErrorChartView<'_>, kind: Option<Kind>) -> String {
    let Some(heading) = view.cursor else {
        return String::new();
    };
    let degrees = |line: &Line<'_>| {
        let error = read_at(line, heading)?;
        Some(error.to_degrees().round() as i16)
    };
    (cockpit.words.views.read_off)(&ReadOff {
        heading: heading.whole_degrees(),
        kind,
        closed_form: degrees(&view.closed_form),
        rule: degrees(&view.rule),
        float: degrees(&view.float),
    })
}

/// The chart as it stands, for taking home.
fn taken_home<T>(cockpit: Cockpit, then: impl FnOnce(&ErrorChartView<'_>) -> T) -> T {
    let now = cockpit.now();
    cockpit.with_session(|session| {
        let kind = kind(cockpit, session);
        let theory = Theory::of(kind, now.setting.field().dip(), latitude(&now));
        with_view(cockpit, session, &theory, then)
    })
}

/// Saves the lines as a table.
pub(super) fn save_csv(cockpit: Cockpit) {
    download(
        "dipwise-errors.csv",
        "text/csv",
        &taken_home(cockpit, to_csv),
    );
}

/// Saves the chart as a picture.
pub(super) fn save_svg(cockpit: Cockpit) {
    let theme = untrack(|| theme(cockpit));
    let words = &cockpit.words.views;
    let text = taken_home(cockpit, |view| {
        let kind = cockpit.with_session(|session| kind(cockpit, session));
        Picture {
            size: EXPORTED,
            shapes: &error_chart(view, EXPORTED),
            theme: &theme,
            id: "errors",
            title: words.errors_title,
            description: &(words.errors)(&errors(cockpit, kind), &describe(view)),
            ground: true,
        }
        .to_svg()
    });
    download("dipwise-errors.svg", "image/svg+xml", &text);
}

/// Saves the chart as an image.
pub(super) fn save_png(cockpit: Cockpit) {
    let theme = untrack(|| theme(cockpit));
    let shapes = taken_home(cockpit, |view| error_chart(view, EXPORTED));
    download_png("dipwise-errors.png", EXPORTED, &theme, &shapes);
}

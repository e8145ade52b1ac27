//! The world to choose a place on: by pointer, by finger or by arrow keys.

use crate::arrows::moved_by;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::components::pictures::{fonts_loaded, theme};
use crate::dip_lines::{DipLine, Survey};
use crate::situation_form::{SituationForm, Step, Way};
use crate::stage::Stage;
use drawing::world_map::{Line, Weight, WorldMapView, area, locate, world_map};
use kurbo::{Point, Size};
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use std::ops::ControlFlow;
use std::sync::LazyLock;
use std::time::Duration;
use web_sys::js_sys::Date;
use web_sys::{KeyboardEvent, PointerEvent};

/// Milliseconds of a frame that a survey may take; chosen: a frame has 16, and half of them are
/// the flight's.
const SLICE: f64 = 5.0;
/// How long a year must stand before its lines are drawn: typing goes through other years.
const SETTLED: Duration = Duration::from_millis(300);
/// The narrowest map, in pixels, whose lines can bear words.
const LETTERED: f64 = 280.0;

/// The outlines of land, as polygons.
static LAND: LazyLock<Vec<Vec<(f64, f64)>>> = LazyLock::new(|| {
    let outlines = earth::land::outlines();
    outlines.iter().map(earth::land::Outline::closed).collect()
});

/// The map, where the field is set by a place.
#[component]
pub(super) fn Map() -> impl IntoView {
    let cockpit = use_cockpit();
    let way = cockpit.draft.way();
    let shown = Memo::new(move |_| cockpit.situation_shown() && way.get() == Way::Place);
    let lines = dip_lines(cockpit, shown);
    view! {
        <Show when=move || way.get() == Way::Place>
            <World lines/>
        </Show>
    }
}

#[component]
fn World(lines: RwSignal<Vec<DipLine>>) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.form();
    let draft = cockpit.draft;
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = fonts_loaded();
    let position = draft.part(SituationForm::position);
    Effect::new(move || {
        fonts.track();
        let size = Size::new(width.get(), height.get());
        let theme = theme(cockpit);
        let place = position
            .get()
            .map(|(latitude, longitude)| (latitude.to_radians(), longitude.to_radians()));
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            let shapes = lines.with(|lines| drawn(lines, place, size, words.dip_mark));
            Stage::paint(&canvas, size, &theme, &shapes);
        }
    });

    let point = move |event: &PointerEvent, step: Step| {
        let size = Size::new(width.get_untracked(), height.get_untracked());
        if let Some(frame) = frame.get_untracked()
            && let Some(place) = place_under(event, &frame, size)
        {
            draft.change(step, |form| form.set_position(place));
        }
    };
    let down = move |event: PointerEvent| {
        if event.button() == 0 {
            if let Some(frame) = frame.get_untracked() {
                // Refused only for a pointer that is gone.
                let _ = frame.set_pointer_capture(event.pointer_id());
            }
            point(&event, Step::New);
        }
    };
    let drag = move |event: PointerEvent| {
        if event.buttons() & 1 == 1 {
            point(&event, Step::GoesOn);
        }
    };
    let key = move |event: KeyboardEvent| {
        let Some((north, east)) = moved_by(&event) else {
            return;
        };
        event.prevent_default();
        let step = if event.repeat() {
            Step::GoesOn
        } else {
            Step::New
        };
        draft.change(step, |form| form.move_by(north, east));
    };
    let said = draft.part(move |form| {
        let dip = form
            .field()
            .map(|setting| setting.field().dip().to_degrees());
        (words.map_place)(form.position(), dip)
    });
    view! {
        <div class="map">
            <div
                class="picture"
                id="map"
                role="application"
                tabindex="0"
                aria-label=words.map
                aria-describedby="map-place map-hint"
                data-lines=move || lines.with(Vec::len).to_string()
                node_ref=frame
                on:pointerdown=down
                on:pointermove=drag
                on:keydown=key
            >
                <canvas node_ref=canvas aria-hidden="true"></canvas>
            </div>
            <p class="unseen" id="map-place" role="status">{move || said.get()}</p>
            <p class="hint" id="map-hint">{words.map_hint}</p>
        </div>
    }
}

/// The map's shapes.
fn drawn(
    lines: &[DipLine],
    place: Option<(f64, f64)>,
    size: Size,
    dip_mark: fn(i16) -> String,
) -> Vec<drawing::shape::Shape> {
    let lettered = size.width >= LETTERED;
    let mark = |line: &DipLine| {
        if lettered {
            dip_mark(line.dip)
        } else {
            String::new()
        }
    };
    let marks: Vec<String> = lines.iter().map(mark).collect();
    let lines: Vec<Line<'_>> = lines
        .iter()
        .zip(&marks)
        .map(|(line, words)| Line {
            points: &line.points,
            words,
            weight: match line.dip {
                0 => Weight::Strong,
                ..0 => Weight::Below,
                _ => Weight::Plain,
            },
        })
        .collect();
    let view = WorldMapView {
        land: &LAND,
        lines: &lines,
        place,
        pointer: None,
        ..WorldMapView::default()
    };
    world_map(&view, size)
}

/// The place under the pointer in whole degrees, about what a pixel is; beside the map, the
/// nearest on its edge.
fn place_under(event: &PointerEvent, frame: &web_sys::Element, size: Size) -> Option<(f64, f64)> {
    let corner = frame.get_bounding_client_rect();
    let map = area(size)?;
    let point = Point::new(
        (f64::from(event.client_x()) - corner.left()).clamp(map.x0, map.x1),
        (f64::from(event.client_y()) - corner.top()).clamp(map.y0, map.y1),
    );
    let (latitude, longitude) = locate(point, size)?;
    Some((
        latitude.to_degrees().round(),
        longitude.to_degrees().round(),
    ))
}

/// The lines of the year that is typed, from when the map is first shown; those of another year
/// stay until they are ready.
fn dip_lines(cockpit: Cockpit, shown: Memo<bool>) -> RwSignal<Vec<DipLine>> {
    let lines = RwSignal::new(Vec::new());
    let year = cockpit.draft.part(SituationForm::year);
    // The year whose lines were asked for last; a survey of another year gives up.
    let wanted = StoredValue::new(None::<u16>);
    Effect::new(move || {
        if let (true, Some(year)) = (shown.get(), year.get())
            && wanted.get_value() != Some(year)
            && let Ok(survey) = Survey::of_year(year)
        {
            let first = wanted.get_value().is_none();
            wanted.set_value(Some(year));
            let wait = if first { Duration::ZERO } else { SETTLED };
            let is_wanted = move || wanted.try_get_value() == Some(Some(year));
            set_timeout(move || go_on(survey, is_wanted, lines), wait);
        }
    });
    lines
}

/// Goes on with a survey, a slice in each frame.
fn go_on(
    mut survey: Survey,
    is_wanted: impl Fn() -> bool + 'static,
    lines: RwSignal<Vec<DipLine>>,
) {
    request_animation_frame(move || {
        if !is_wanted() {
            return;
        }
        let start = Date::now();
        while Date::now() - start < SLICE {
            if let ControlFlow::Break(found) = survey.advance() {
                lines.try_set(found);
                return;
            }
        }
        go_on(survey, is_wanted, lines);
    });
}

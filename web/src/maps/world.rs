//! The map, flat or as a globe: shown, pointed at, turned, and taken home.

use super::atlas::{Atlas, folded, use_atlas};
use super::figures::{csv, table};
use super::key::Key;
use crate::arrows::moved_by;
use crate::download::{copy_png, download, download_png};
use crate::numbers::{TableOf, as_csv, as_text};
use crate::stage::Stage;
use drawing::shape::Shape;
use drawing::svg::Picture;
use drawing::world_map::{Place, Projection, world_map};
use kurbo::{Point, Size};
use leptos::ev::Custom;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use leptos_use_event_listener::use_event_listener;
use std::sync::LazyLock;
use web_sys::{Event, KeyboardEvent, PointerEvent};

/// The outlines of land, as polygons.
static LAND: LazyLock<Vec<Vec<Place>>> = LazyLock::new(|| {
    let outlines = earth::land::outlines();
    outlines.iter().map(earth::land::Outline::closed).collect()
});

/// How far a pointer moves before it turns the globe and no longer points, in pixels; chosen.
const STILL: f64 = 4.0;
/// Degrees that a button turns the globe by; chosen.
const TURN: f64 = 15.0;

/// The map.
#[component]
pub(crate) fn World() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let frame = NodeRef::<html::Div>::new();
    let canvas = NodeRef::<html::Canvas>::new();
    let UseElementSizeReturn { width, height } = use_element_size(frame);
    let fonts = Trigger::new();
    let loaded = Custom::<Event>::new("loadingdone");
    let _ = use_event_listener(document().fonts(), loaded, move |_| fonts.notify());
    let projection = atlas.projection();
    Effect::new(move || {
        fonts.track();
        let size = Size::new(width.get(), height.get());
        if let Some(canvas) = canvas.get()
            && size.width > 0.0
            && size.height > 0.0
        {
            let shapes = drawn(atlas, size);
            Stage::paint(&canvas, size, &atlas.theme(), &shapes);
        }
    });
    let size = move || Size::new(width.get_untracked(), height.get_untracked());
    // Where the pointer went down, and where it was last.
    let held = StoredValue::new(None::<(Point, Point)>);
    let place_at = move |event: &PointerEvent| {
        let frame = frame.get_untracked()?;
        let corner = frame.get_bounding_client_rect();
        let at = Point::new(
            f64::from(event.client_x()) - corner.left(),
            f64::from(event.client_y()) - corner.top(),
        );
        let place = projection.get_untracked().locate(at, size());
        Some((at, place))
    };
    let point = move |place: Option<Place>| {
        if let Some((latitude, longitude)) = place {
            let whole = |angle: f64| angle.to_degrees().round();
            atlas.point_at(whole(latitude), whole(longitude));
        }
    };
    let is_globe = move || matches!(projection.get_untracked(), Projection::Globe(_));
    let down = move |event: PointerEvent| {
        if event.button() != 0 {
            return;
        }
        if let Some(frame) = frame.get_untracked() {
            // Refused only for a pointer that is gone.
            let _ = frame.set_pointer_capture(event.pointer_id());
        }
        if let Some((at, place)) = place_at(&event) {
            held.set_value(Some((at, at)));
            if !is_globe() {
                point(place);
            }
        }
    };
    let drag = move |event: PointerEvent| {
        let (Some((from, last)), Some((at, place))) = (held.get_value(), place_at(&event)) else {
            return;
        };
        if event.buttons() & 1 == 0 {
            return;
        }
        if !is_globe() {
            point(place);
        } else if (at - from).hypot2() > STILL * STILL {
            held.set_value(Some((Point::new(f64::INFINITY, 0.0), at)));
            // A drag across the radius turns the globe by a radian.
            let radius = 0.5 * size().width.min(size().height);
            let by = (at - last) * (1.0 / radius).to_degrees();
            atlas.turn_globe(by.y, -by.x);
        }
    };
    let up = move |event: PointerEvent| {
        let from = held.get_value().map(|(from, _)| from);
        held.set_value(None);
        if let (Some(from), Some((_, place)), true) = (from, place_at(&event), is_globe())
            && from.is_finite()
        {
            point(place);
        }
    };
    let key = move |event: KeyboardEvent| {
        let Some((north, east)) = moved_by(&event) else {
            return;
        };
        event.prevent_default();
        let place = atlas.meant().with_untracked(|meant| meant.place);
        let (latitude, longitude) = place.map_or((0.0, 0.0), |it| {
            (it.latitude().to_degrees(), it.longitude().to_degrees())
        });
        let latitude = (latitude + north).clamp(-90.0, 90.0);
        let longitude = folded(longitude + east);
        atlas.point_at(latitude, longitude);
        // The globe follows a point that goes out of sight.
        let there = (latitude.to_radians(), longitude.to_radians());
        if is_globe() && projection.get_untracked().point_of(there, size()).is_none() {
            atlas.turn_globe(2.0 * north, 2.0 * east);
        }
    };
    let lines = move || atlas.shown().get().map_or(0, |shown| shown.count());
    let globe = move || matches!(projection.get(), Projection::Globe(_));
    view! {
        <div class="world" data-view=move || if globe() { "globe" } else { "flat" }>
            <div
                class="picture"
                id="map"
                role="application"
                tabindex="0"
                aria-label=words.map
                aria-describedby="point-said map-hint"
                data-lines=move || lines().to_string()
                node_ref=frame
                on:pointerdown=down
                on:pointermove=drag
                on:pointerup=up
                on:keydown=key
            >
                <canvas node_ref=canvas aria-hidden="true"></canvas>
            </div>
            <Show when=globe>
                <Turning/>
            </Show>
        </div>
        <p class="hint" id="map-hint">
            {move || (words.map_hint)(atlas.show().get(), globe())}
        </p>
    }
}

/// Buttons that turn the globe.
#[component]
fn Turning() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let turns = [
        (words.turn_west, "←", 0.0, -TURN),
        (words.turn_north, "↑", TURN, 0.0),
        (words.turn_south, "↓", -TURN, 0.0),
        (words.turn_east, "→", 0.0, TURN),
    ];
    let button = move |(name, sign, north, east): (&'static str, &'static str, f64, f64)| {
        view! {
            <button type="button" aria-label=name on:click=move |_| atlas.turn_globe(north, east)>
                {sign}
            </button>
        }
    };
    view! {
        <div class="turning" role="group" aria-label=words.turn_globe>
            {turns.map(button).collect_view()}
        </div>
    }
}

/// The map's shapes; follows what it shows.
fn drawn(atlas: Atlas, size: Size) -> Vec<Shape> {
    let place = atlas.meant().with(|meant| meant.place);
    let place = place.map(|it| (it.latitude(), it.longitude()));
    let projection = atlas.projection().get();
    let shown = atlas.shown().get().unwrap_or_default();
    shown.viewed(&LAND, projection, place, |view| world_map(view, size))
}

/// The size of a map that is taken home.
fn size_at_home(projection: Projection) -> Size {
    match projection {
        Projection::Flat => Size::new(1200.0, 600.0),
        Projection::Globe(_) => Size::new(800.0, 800.0),
    }
}

/// The buttons that take the map home, and its figures in words.
#[component]
pub(crate) fn TakeHome() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let name = move || format!("dipwise-map-{}", atlas.choice(Key::Show).get());
    let svg = move |_| {
        untrack(|| {
            let size = size_at_home(atlas.projection().get());
            let show = atlas.show().get();
            let document = Picture {
                size,
                shapes: &drawn(atlas, size),
                theme: &atlas.theme(),
                id: "map",
                title: (words.title)(show),
                description: (words.about)(show),
                ground: true,
            }
            .to_svg();
            download(&format!("{}.svg", name()), "image/svg+xml", &document);
        });
    };
    let png = move |_| {
        untrack(|| {
            let size = size_at_home(atlas.projection().get());
            let shapes = drawn(atlas, size);
            download_png(&format!("{}.png", name()), size, &atlas.theme(), &shapes);
        });
    };
    let save_csv = move |_| {
        untrack(|| download(&format!("{}.csv", name()), "text/csv", &csv(atlas)));
    };
    let image = move |_| {
        untrack(|| {
            let size = size_at_home(atlas.projection().get());
            atlas.tell(copy_png(size, atlas.theme(), drawn(atlas, size)));
        });
    };
    let text = move |_| atlas.copy(untrack(|| as_text(&table(atlas))));
    let copy_csv = move |_| atlas.copy(untrack(|| as_csv(&table(atlas))));
    view! {
        <div class="take-home" role="group" aria-label=words.take_home>
            <button type="button" on:click=text>{words.copy_text}</button>
            <button type="button" on:click=copy_csv>{words.copy_csv}</button>
            <button type="button" on:click=image>{words.copy_image}</button>
            <button type="button" on:click=save_csv>{words.save_csv}</button>
            <button type="button" on:click=svg>{words.save_svg}</button>
            <button type="button" on:click=png>{words.save_png}</button>
            <button type="button" on:click=move |_| atlas.copy(atlas.link())>{words.copy_link}</button>
        </div>
        <details class="in-figures">
            <summary>{words.in_figures}</summary>
            {move || view! { <TableOf caption=(words.title)(atlas.show().get()) table=table(atlas)/> }}
        </details>
    }
}

//! From dip to latitude: the dipole Earth with an aircraft on it, and dip against latitude.

use super::atlas::{Atlas, use_atlas};
use super::fields::Typed;
use super::form::Days;
use super::key::Key;
use crate::download::{copy_png, download, download_png};
use crate::numbers::{TableOf, as_csv, as_text};
use drawing::dipole_earth::{Curve, DipoleEarthView, Stroke, Words, dipole_earth};
use drawing::shape::Shape;
use drawing::svg::Picture;
use earth::dipole;
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use lessons::dip_latitude::{along_meridian, by_rule, card_tilt, dipole_curve, latitude_by_dipole};
use lessons::sheet::{Column, Table};

/// The size that the picture is drawn for, side by side.
const SIZE: Size = Size::new(1000.0, 480.0);
/// The same, one over the other.
const TALL: Size = Size::new(480.0, 920.0);
/// The narrowest box in which the two stand side by side, in pixels; chosen.
const WIDE: f64 = 560.0;

/// From dip to latitude.
#[component]
pub(crate) fn Dip() -> impl IntoView {
    let atlas = use_atlas();
    let words = &atlas.own().dip_part;
    let frame = NodeRef::<html::Div>::new();
    let UseElementSizeReturn { width, .. } = use_element_size(frame);
    let size = Memo::new(move |_| {
        if (1.0..WIDE).contains(&width.get()) {
            TALL
        } else {
            SIZE
        }
    });
    let svg = move || picture(atlas, size.get(), false);
    let figures = move || {
        let rows = table(atlas).rows.into_iter().map(|row| {
            let mut cells = row.into_iter();
            let name = cells.next();
            let id = cells.next();
            view! {
                <div>
                    <dt>{name}</dt>
                    <dd>{id} <span class="hint">{cells.next()}</span></dd>
                </div>
            }
        });
        view! { <dl class="figures" id="dips">{rows.collect_view()}</dl> }
    };
    let save_svg = move |_| {
        let document = untrack(|| picture(atlas, SIZE, true));
        download("dipwise-dip-and-latitude.svg", "image/svg+xml", &document);
    };
    let save_png = move |_| {
        untrack(|| {
            download_png(
                "dipwise-dip-and-latitude.png",
                SIZE,
                &atlas.theme(),
                &drawn(atlas, SIZE),
            );
        });
    };
    let image = move |_| {
        atlas.tell(untrack(|| {
            copy_png(SIZE, atlas.theme(), drawn(atlas, SIZE))
        }));
    };
    let text = move |_| atlas.copy(untrack(|| as_text(&along(atlas))));
    let csv = move |_| atlas.copy(untrack(|| as_csv(&along(atlas))));
    let own = atlas.own();
    view! {
        <section class="form" aria-label=words.form>
            <Typed key=Key::Latitude slides=[-90.0, 90.0, 1.0]/>
            <Typed key=Key::Longitude slides=[-180.0, 180.0, 1.0]/>
            <Typed key=Key::Date/>
            <Days/>
        </section>
        <section class="sheet" aria-label=words.results>
            <h2>{words.title}</h2>
            <p class="about">{words.about}</p>
            <div class="drawn" id="dipole" node_ref=frame inner_html=svg></div>
            <div class="take-home" role="group" aria-label=own.take_home>
                <button type="button" on:click=text>{own.copy_text}</button>
                <button type="button" on:click=csv>{own.copy_csv}</button>
                <button type="button" on:click=image>{own.copy_image}</button>
                <button type="button" on:click=save_svg>{own.save_svg}</button>
                <button type="button" on:click=save_png>{own.save_png}</button>
                <button type="button" on:click=move |_| atlas.copy(atlas.link())>{own.copy_link}</button>
            </div>
            <details class="in-figures">
                <summary>{words.in_figures}</summary>
                {move || view! { <TableOf caption=words.title table=along(atlas)/> }}
            </details>
        </section>
        <section class="point" aria-label=words.here>
            <h3>{words.here}</h3>
            {figures}
        </section>
    }
}

/// The curve along the meridian that is asked for; none where something is wrong.
fn meridian(atlas: Atlas) -> Option<Vec<(f64, f64)>> {
    let (place, date) = atlas.meant().with(|meant| (meant.place, meant.date));
    along_meridian(place?.longitude(), date?).ok()
}

fn drawn(atlas: Atlas, size: Size) -> Vec<Shape> {
    let words = &atlas.own().dip_part;
    let place = atlas.meant().with(|meant| meant.place);
    let Some((place, field)) = place.and_then(|it| Some((it, dipole::field(it.latitude()).ok()?)))
    else {
        return Vec::new();
    };
    let dipole = dipole_curve();
    let rule: Vec<(f64, f64)> = dipole.iter().map(|it| (it.0, by_rule(it.0))).collect();
    let model = meridian(atlas).unwrap_or_default();
    let curve = |points, words, stroke, at: f64| Curve {
        points,
        words,
        stroke,
        named_at: at.to_radians(),
    };
    dipole_earth(
        &DipoleEarthView {
            latitude: place.latitude(),
            dip: field.dip(),
            tilt: card_tilt(field).unwrap_or(0.0),
            curves: &[
                curve(rule.as_slice(), words.rule_curve, Stroke::Dashed, -30.0),
                curve(dipole.as_slice(), words.dipole_curve, Stroke::Solid, 28.0),
                curve(model.as_slice(), words.model_curve, Stroke::Heavy, -52.0),
            ],
            words: Words {
                poles: ["N", "S"],
                field: words.field,
                horizontal: words.horizontal,
                vertical: words.vertical,
                latitude: words.latitude_axis,
                dip: words.dip_axis,
            },
        },
        size,
    )
}

fn picture(atlas: Atlas, size: Size, ground: bool) -> String {
    let words = &atlas.own().dip_part;
    let rows = table(atlas).rows;
    let said: Vec<String> = rows
        .iter()
        .map(|row| format!("{}: {}.", row[0], row[1]))
        .collect();
    Picture {
        size,
        shapes: &drawn(atlas, size),
        theme: &atlas.theme(),
        id: "dipole",
        title: words.title,
        description: &said.join(" "),
        ground,
    }
    .to_svg()
}

/// What is so at the latitude of the aircraft.
fn table(atlas: Atlas) -> Table {
    let own = atlas.own();
    let words = &own.dip_part;
    let (place, date) = atlas.meant().with(|meant| (meant.place, meant.date));
    let mut rows = Vec::new();
    if let Some(place) = place {
        let figure = own.degrees;
        let tenth = |angle: f64| figure((angle.to_degrees() * 10.0).round() / 10.0);
        let latitude = place.latitude();
        let mut row =
            |name: &str, value: String, note: String| rows.push(vec![name.to_owned(), value, note]);
        row(words.by_rule, tenth(by_rule(latitude)), String::new());
        if let Ok(field) = dipole::field(latitude) {
            row(words.by_dipole, tenth(field.dip()), String::new());
            let tilt = card_tilt(field).map(tenth).unwrap_or_default();
            row(words.tilt, tilt, words.tilt_note.to_owned());
        }
        let here = date.and_then(|date| earth::PlaceField::at(place, date).ok());
        if let Some(field) = here {
            row(words.by_model, tenth(field.dip()), String::new());
            row(words.back_rule, tenth(field.dip()), String::new());
            row(
                words.back_dipole,
                tenth(latitude_by_dipole(field.dip())),
                String::new(),
            );
        }
    }
    Table {
        groups: Vec::new(),
        columns: Vec::new(),
        rows,
        to_write_in: false,
    }
}

/// The three dips from pole to pole, every 10°.
fn along(atlas: Atlas) -> Table {
    let own = atlas.own();
    let words = &own.dip_part;
    let columns = [
        own.latitude,
        words.rule_curve,
        words.dipole_curve,
        words.model_curve,
    ];
    let model = meridian(atlas).unwrap_or_default();
    let tenth = |angle: f64| (own.degrees)((angle.to_degrees() * 10.0).round() / 10.0);
    let rows = dipole_curve()
        .into_iter()
        .zip(&model)
        .step_by(5)
        .map(|((latitude, dip), model)| {
            let name = (own.on_latitude)(latitude.to_degrees().round());
            vec![name, tenth(by_rule(latitude)), tenth(dip), tenth(model.1)]
        });
    Table {
        groups: Vec::new(),
        columns: columns
            .iter()
            .map(|title| Column::figures(title, 1.0))
            .collect(),
        rows: rows.collect(),
        to_write_in: false,
    }
}

//! Hand-outs laid out on paper: what `lessons` says of a sheet, as `drawing` draws it.

use compass::heading::CompassHeading;
use drawing::deviation_curve::{DeviationCurveView, deviation_curve};
use drawing::roll_out_rose::{self, Allowance, PlaceView, RollOutRoseView, roll_out_rose};
use drawing::shape::{Group, Shape};
use drawing::sheet::{self, Block, Column, Figure, Paper, SheetView, TableView};
use drawing::svg::Picture;
use drawing::theme::Theme;
use kurbo::{Affine, Size};
use lessons::sheet::{Part, RosePlace, Sheet};
use lessons::swing::LIMIT;

/// The least height of a row that is written into by hand, points; chosen, about 12 mm.
const BY_HAND: f64 = 34.0;

/// The sheets as one SVG document, one page below another; a point is `scale` units.
pub fn svg(sheets: &[Sheet], paper: Paper, scale: f64) -> String {
    let pages = pages(sheets, paper);
    let (size, shapes) = below_another(&pages, paper, scale);
    picture(sheets, "sheet", size, &shapes)
}

/// Each page as an SVG document of its own, in points.
pub fn svg_pages(sheets: &[Sheet], paper: Paper) -> Vec<String> {
    let pages = pages(sheets, paper);
    (pages.iter().enumerate())
        .map(|(index, shapes)| {
            let id = format!("sheet-{}", index + 1);
            picture(sheets, &id, paper.size(), shapes)
        })
        .collect()
}

/// The shapes of all pages, one below another, and the size that they are drawn for.
pub fn shapes(sheets: &[Sheet], paper: Paper) -> (Size, Vec<Shape>) {
    below_another(&pages(sheets, paper), paper, 1.0)
}

/// As a printer sees them: black on white.
pub fn theme() -> Theme {
    Theme::day().strong()
}

fn below_another(pages: &[Vec<Shape>], paper: Paper, scale: f64) -> (Size, Vec<Shape>) {
    let size = paper.size();
    let whole = Size::new(size.width, size.height * pages.len() as f64) * scale;
    let shapes = (pages.iter().enumerate()).map(|(index, shapes)| {
        let down = Affine::translate((0.0, size.height * index as f64));
        Shape::Group(Group {
            transform: Affine::scale(scale) * down,
            clip: None,
            opacity: 1.0,
            shapes: shapes.clone(),
        })
    });
    (whole, shapes.collect())
}

/// What the sheets are called.
pub fn title(sheets: &[Sheet]) -> &str {
    sheets.first().map_or("", |sheet| &sheet.title)
}

fn picture(sheets: &[Sheet], id: &str, size: Size, shapes: &[Shape]) -> String {
    Picture {
        size,
        shapes,
        theme: &theme(),
        id,
        title: title(sheets),
        description: sheets.first().map_or("", |sheet| &sheet.under),
        ground: true,
    }
    .to_svg()
}

fn pages(sheets: &[Sheet], paper: Paper) -> Vec<Vec<Shape>> {
    sheets.iter().flat_map(|sheet| laid(sheet, paper)).collect()
}

/// What draws a picture for a size.
type Draws<'a> = Box<dyn Fn(Size) -> Vec<Shape> + 'a>;

/// The pages of one sheet, each drawn for the size of the paper.
pub fn laid(sheet: &Sheet, paper: Paper) -> Vec<Vec<Shape>> {
    // Blocks borrow columns and pictures, so those are made first, one for each part.
    let columns: Vec<Vec<Column>> = sheet.parts.iter().map(columns).collect();
    let draws: Vec<Option<Draws>> = sheet.parts.iter().map(draws).collect();
    let blocks =
        (sheet.parts.iter().zip(&columns).zip(&draws)).map(|((part, columns), draw)| {
            match (part, draw) {
                (Part::Heading(words), _) => Block::Heading(words),
                (Part::Paragraph(words), _) => Block::Paragraph(words),
                (Part::Points(points), _) => Block::Points(points),
                (Part::Table(table), _) => Block::Table(TableView {
                    groups: &table.groups,
                    columns,
                    rows: &table.rows,
                    least_row: if table.to_write_in { BY_HAND } else { 0.0 },
                }),
                (part, Some(draw)) => {
                    let [least, most] = heights(part);
                    Block::Picture(Figure { draw, least, most })
                }
                (Part::RollOutRose(_) | Part::Deviations(_), None) => Block::Points(&[]),
            }
        });
    let blocks: Vec<Block> = blocks.collect();
    let view = SheetView {
        title: &sheet.title,
        under: &sheet.under,
        blocks: &blocks,
        caution: &sheet.caution,
    };
    sheet::pages(&view, paper)
}

fn columns(part: &Part) -> Vec<Column> {
    let Part::Table(table) = part else {
        return Vec::new();
    };
    (table.columns.iter())
        .map(|column| Column {
            title: column.title.clone(),
            share: column.share,
            centred: column.figures,
        })
        .collect()
}

/// The least and the greatest height of a picture, points; chosen: legible, and not wider apart
/// than its lines bear.
fn heights(part: &Part) -> [f64; 2] {
    match part {
        Part::Deviations(_) => [150.0, 260.0],
        _ => [220.0, 360.0],
    }
}

fn draws(part: &Part) -> Option<Draws<'_>> {
    match part {
        Part::RollOutRose(places) => Some(Box::new(move |size| rose(places, size))),
        Part::Deviations(found) => Some(Box::new(move |size| deviations(found, size))),
        _ => None,
    }
}

/// The roll-out rose of one place or two.
pub fn rose(places: &[RosePlace], size: Size) -> Vec<Shape> {
    let allowances: Vec<Vec<Allowance>> = (places.iter())
        .map(|place| {
            let drawn = place.allowances.iter().map(|it| Allowance {
                target: it.target,
                left: it.left,
                right: it.right,
            });
            drawn.collect()
        })
        .collect();
    let places: Vec<PlaceView> = (places.iter().zip(&allowances))
        .map(|(place, allowances)| PlaceView {
            name: &place.name,
            allowances,
        })
        .collect();
    let view = RollOutRoseView {
        places: &places,
        words: roll_out_rose::Words {
            left: "left turn",
            right: "right turn",
            inside: "inside: undershoot, begin early",
            on: "dots: begin as it reads",
            outside: "outside: overshoot, begin late",
        },
    };
    roll_out_rose(&view, size)
}

/// What a swing has over its coefficients (rad), by compass heading.
pub fn residuals(found: &[(CompassHeading, f64)], size: Size) -> Vec<Shape> {
    let view = DeviationCurveView {
        found,
        limit: f64::NAN,
        limit_words: "",
        east: "left over, east",
        west: "left over, west",
    };
    deviation_curve(&view, size)
}

/// A swing's deviations (rad, east positive) by compass heading, with the limit.
pub fn deviations(found: &[(CompassHeading, f64)], size: Size) -> Vec<Shape> {
    let view = DeviationCurveView {
        found,
        limit: LIMIT,
        limit_words: "limit 10°",
        east: "deviation east",
        west: "deviation west",
    };
    deviation_curve(&view, size)
}

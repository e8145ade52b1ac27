//! Sheets as pages, and pages as files.

use crate::{pdf, picture};
use drawing::deviation_curve::{DeviationCurveView, deviation_curve};
use drawing::roll_out_rose::{self, Allowance, PlaceView, RollOutRoseView, roll_out_rose};
use drawing::shape::{Group, Shape};
use drawing::sheet::{self, Block, Column, Figure, Paper, SheetView, TableView};
use drawing::svg::Picture;
use drawing::theme::Theme;
use kurbo::{Affine, Size};
use lessons::sheet::{Part, RosePlace, Sheet};
use lessons::swing::LIMIT;

/// Pixels to a point in a PNG: 200 to an inch, as office printers need for letters of this size.
const PIXELS: f64 = 200.0 / 72.0;

/// The least height of a row that is written into by hand, points; chosen, about 12 mm.
const BY_HAND: f64 = 34.0;

/// The pages in one SVG document, one below another; a point is `scale` units.
pub(super) fn svg(sheets: &[Sheet], paper: Paper, scale: f64) -> String {
    let pages = pages(sheets, paper);
    let size = paper.size();
    let whole = Size::new(size.width, size.height * pages.len() as f64) * scale;
    let shapes: Vec<Shape> = (pages.into_iter().enumerate())
        .map(|(index, shapes)| {
            let down = Affine::translate((0.0, size.height * index as f64));
            Shape::Group(Group {
                transform: Affine::scale(scale) * down,
                clip: None,
                opacity: 1.0,
                shapes,
            })
        })
        .collect();
    picture(sheets, whole, &shapes)
}

/// The pages as a PDF.
pub(super) fn pdf(sheets: &[Sheet], paper: Paper) -> Result<Vec<u8>, String> {
    let pages: Vec<String> = (pages(sheets, paper).iter())
        .map(|shapes| picture(sheets, paper.size(), shapes))
        .collect();
    pdf::pdf(pages.iter().map(String::as_str), title(sheets))
}

/// The pages as a PNG, one below another.
pub(super) fn png(sheets: &[Sheet], paper: Paper) -> Result<Vec<u8>, String> {
    picture::png(&svg(sheets, paper, PIXELS))
}

fn title(sheets: &[Sheet]) -> &str {
    sheets.first().map_or("", |sheet| &sheet.title)
}

/// Black on white, as a printer sees it.
fn picture(sheets: &[Sheet], size: Size, shapes: &[Shape]) -> String {
    Picture {
        size,
        shapes,
        theme: &Theme::day().strong(),
        id: "sheet",
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

/// The pages of one sheet.
fn laid(sheet: &Sheet, paper: Paper) -> Vec<Vec<Shape>> {
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
        Part::Deviations(found) => Some(Box::new(move |size| {
            let view = DeviationCurveView {
                found,
                limit: LIMIT,
                limit_words: "limit 10°",
                east: "deviation east",
                west: "deviation west",
            };
            deviation_curve(&view, size)
        })),
        _ => None,
    }
}

fn rose(places: &[RosePlace], size: Size) -> Vec<Shape> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::font;
    use compass::deviation::AircraftIron;
    use compass::field::MagneticField;
    use compass::float_settings::FloatSettings;
    use compass::gust::RoughAir;
    use compass::simulation::Situation;
    use lessons::sheet::deviation::Swing;
    use lessons::sheet::plan::{LessonPlan, TimeRow};
    use lessons::sheet::{Site, aids, deviation, plan, roll_outs, worksheet};

    /// A sheet of each kind, where the dip points up.
    fn every_kind() -> Vec<Sheet> {
        let field = MagneticField::new(22e-6, -52e-6, 0.3).unwrap();
        let site = Site {
            name: "Latitude 41° S".to_owned(),
            latitude: -0.7,
            situation: Situation {
                field,
                iron: AircraftIron::NONE,
                float: FloatSettings::default(),
                air: RoughAir::Still,
            },
            bank: 0.3,
            airspeed: 50.0,
        };
        let [task, key] = worksheet::sheets(&site, 9).unwrap();
        let swing = Swing::hidden("On the ramp", field, 9, 30, true);
        let rows = (1..=9).map(|minute| TimeRow {
            time: format!("{minute}:00"),
            seen: "The aircraft turns off south, and the card runs ahead of it.".to_owned(),
            said: "Watch the card against the lubber line, then the heading.".to_owned(),
        });
        let lesson = LessonPlan {
            title: "Off south, too fast".to_owned(),
            under: "Latitude 41° S, standard float, 100 kt.".to_owned(),
            aim: "The class can say which way the card errs, and why.".to_owned(),
            times: rows.collect(),
            notes: vec!["Ask before the turn begins, not after.".to_owned(); 4],
            question: "Which way does the card turn first?".to_owned(),
            answer: "The wrong way, by some 10°.".to_owned(),
            figures: vec![("greatest lead".to_owned(), "23°".to_owned()); 3],
        };
        vec![
            roll_outs::sheet(&site, None).unwrap(),
            aids::sheet(&site).unwrap(),
            task,
            key,
            deviation::sheet(&swing).unwrap(),
            plan::sheet(&lesson),
        ]
    }

    #[test]
    fn every_sheet_is_one_page_and_every_letter_is_in_the_font() {
        fn letters(group: &usvg::Group, count: &mut usize) {
            for node in group.children() {
                match node {
                    usvg::Node::Group(group) => letters(group, count),
                    usvg::Node::Text(text) => {
                        for glyph in text.layouted().iter().flat_map(|it| &it.positioned_glyphs) {
                            assert_ne!(glyph.id.0, 0, "not in the font: {:?}", glyph.text);
                            *count += 1;
                        }
                    }
                    _ => {}
                }
            }
        }
        let sheets = every_kind();
        for paper in [Paper::A4, Paper::Letter] {
            for sheet in &sheets {
                assert_eq!(laid(sheet, paper).len(), 1, "{}: {paper:?}", sheet.title);
            }
        }
        let document = svg(&sheets, Paper::A4, 1.0);
        let tree = usvg::Tree::from_str(&document, &font::options()).unwrap();
        let mut count = 0;
        letters(tree.root(), &mut count);
        assert!(count > 5000, "{count}");
    }
}

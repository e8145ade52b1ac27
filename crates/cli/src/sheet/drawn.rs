//! Sheets as files.

use crate::{pdf, picture};
use drawing::sheet::Paper;
use lessons::sheet::Sheet;

/// Pixels to a point in a PNG: 200 to an inch, as office printers need for letters of this size.
const PIXELS: f64 = 200.0 / 72.0;

/// The pages as a PDF.
pub(super) fn pdf(sheets: &[Sheet], paper: Paper) -> Result<Vec<u8>, String> {
    let pages = handouts::svg_pages(sheets, paper);
    pdf::pdf(pages.iter().map(String::as_str), handouts::title(sheets))
}

/// The pages as a PNG, one below another.
pub(super) fn png(sheets: &[Sheet], paper: Paper) -> Result<Vec<u8>, String> {
    picture::png(&handouts::svg(sheets, paper, PIXELS))
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
    use handouts::{laid, svg};
    use lessons::demonstration::{Flown, catalogue};
    use lessons::roll_out::Lead;
    use lessons::sheet::deviation::Swing;
    use lessons::sheet::plan::{self, LessonPlan};
    use lessons::sheet::{Site, aids, deviation, roll_outs, worksheet};

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
            lead: Lead::default(),
        };
        let [task, key] = worksheet::sheets(&site, 9).unwrap();
        let swing = Swing::hidden("On the ramp", field, 9, 30, true);
        vec![
            roll_outs::sheet(&site, None).unwrap(),
            aids::sheet(&site).unwrap(),
            task,
            key,
            deviation::sheet(&swing).unwrap(),
        ]
    }

    /// The page of every demonstration of the catalogue.
    fn every_plan() -> impl Iterator<Item = Sheet> {
        catalogue::FILES.iter().map(|(name, _)| {
            let flown = Flown::new(catalogue::find(name).unwrap().unwrap()).unwrap();
            plan::sheet(&LessonPlan::of(&flown))
        })
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
        let sheets: Vec<Sheet> = every_kind().into_iter().chain(every_plan()).collect();
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

//! The font that pages and pictures are set in: the one that the page in the browser uses.

use std::sync::{Arc, LazyLock};
use usvg::Options;
use usvg::fontdb::Database;

/// Atkinson Hyperlegible Next, weights 200 to 800 in one file. It holds Latin letters only.
const FILE: &[u8] = include_bytes!("../../../static/fonts/atkinson-hyperlegible-next.woff2");

/// What the family calls itself.
const FAMILY: &str = "Atkinson Hyperlegible Next";

/// Unpacked once: browsers take the packed form, everything else the plain one.
static FONTS: LazyLock<Arc<Database>> = LazyLock::new(|| {
    let mut fonts = Database::new();
    // The file is part of the program, so this works always or never; a test sees to it.
    fonts.load_font_data(wuff::decompress_woff2(FILE).unwrap_or_default());
    fonts.set_sans_serif_family(FAMILY);
    fonts.set_serif_family(FAMILY);
    Arc::new(fonts)
});

/// How an SVG document is read: its words in this font and in no other, so that a picture is the
/// same on every machine.
pub(crate) fn options() -> Options<'static> {
    Options {
        fontdb: Arc::clone(&FONTS),
        font_family: FAMILY.to_owned(),
        ..Options::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use usvg::fontdb::{Family, Query};

    #[test]
    fn the_font_is_unpacked_and_found_by_its_name() {
        let fonts = options().fontdb;
        assert_eq!(fonts.len(), 1);
        for family in [Family::Name(FAMILY), Family::SansSerif] {
            let query = Query {
                families: &[family],
                ..Query::default()
            };
            assert!(fonts.query(&query).is_some());
        }
    }

    #[test]
    fn heavier_words_are_wider() {
        let width = |weight: u16| {
            let svg = format!(
                "<svg xmlns='http://www.w3.org/2000/svg' width='400' height='40' \
                 font-family='sans-serif'><text x='0' y='30' font-size='30' \
                 font-weight='{weight}'>heading 045°</text></svg>"
            );
            let tree = usvg::Tree::from_str(&svg, &options()).unwrap();
            tree.root().bounding_box().width()
        };
        let [light, plain, bold] = [200, 400, 700].map(width);
        assert!(light < plain && plain < bold, "{light} {plain} {bold}");
    }

    /// How far the next letter stands from a letter's own place, without kerning.
    fn advance(letter: char, weight: u16) -> f64 {
        let letter = match letter {
            '<' => "&lt;".to_owned(),
            '&' => "&amp;".to_owned(),
            other => other.to_string(),
        };
        let svg = format!(
            "<svg xmlns='http://www.w3.org/2000/svg' width='4000' height='1000' \
             font-family='sans-serif'><text xml:space='preserve' y='900' font-size='1000' \
             font-kerning='none' font-weight='{weight}'>H{letter}H</text></svg>"
        );
        let tree = usvg::Tree::from_str(&svg, &options()).unwrap();
        let Some(usvg::Node::Text(text)) = tree.root().children().first() else {
            panic!("no text: {svg}");
        };
        let glyphs = &text.layouted()[0].positioned_glyphs;
        assert!(
            glyphs.iter().all(|glyph| glyph.id.0 != 0),
            "not in the font: {letter}"
        );
        f64::from(glyphs[2].transform().tx - glyphs[1].transform().tx)
    }

    #[test]
    fn sheets_measure_their_words_as_the_font_does() {
        // The table holds whole thousandths; between its masters the font rounds too.
        for letter in (' '..='~').chain("\u{a0}°–—−×±½’“”·…".chars()) {
            for weight in [400, 700] {
                let measured = drawing::sheet::width(&letter.to_string(), 1000.0, weight);
                let real = advance(letter, weight);
                assert!(
                    (measured - real).abs() <= 1.0,
                    "{letter:?} {weight}: {measured} {real}"
                );
            }
        }
    }
}

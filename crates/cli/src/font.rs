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
}

//! Pages to PDF: lines stay lines, words can be selected and searched, the font is inside.

use crate::font;
use krilla::Document;
use krilla::geom::Size;
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla_svg::{SurfaceExt, SvgSettings};
use usvg::Tree;

/// A PDF of pages that are SVG documents, each as large as it says, in points. The same pages
/// give the same bytes.
///
/// # Errors
/// A page that is no SVG or has no size, or a font that cannot be embedded, in a sentence.
pub(crate) fn pdf<'a>(
    pages: impl IntoIterator<Item = &'a str>,
    title: &str,
) -> Result<Vec<u8>, String> {
    let mut document = Document::new();
    let options = font::options();
    for page in pages {
        let tree = Tree::from_str(page, &options)
            .map_err(|error| format!("a page cannot be read: {error}"))?;
        let (width, height) = (tree.size().width(), tree.size().height());
        let (Some(size), Some(settings)) = (
            Size::from_wh(width, height),
            PageSettings::from_wh(width, height),
        ) else {
            return Err(format!("a page cannot be {width} by {height} points"));
        };
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        let drawn = surface.draw_svg(&tree, size, SvgSettings::default());
        surface.finish();
        page.finish();
        drawn.ok_or("a page cannot be drawn")?;
    }
    document.set_metadata(
        Metadata::new()
            .title(title.to_owned())
            .language("en".to_owned()),
    );
    document.finish().map_err(|error| error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<svg xmlns='http://www.w3.org/2000/svg' width='595' height='842' \
        font-family='sans-serif'><text x='50' y='80' font-size='20'>Roll out at 037°</text>\
        <text x='50' y='120' font-size='20' font-weight='700'>Bold words</text></svg>";

    #[test]
    fn the_same_pages_give_the_same_bytes() {
        let [once, again] = [(); 2].map(|()| pdf([PAGE, PAGE], "Two pages").unwrap());
        assert!(once.starts_with(b"%PDF-"));
        assert_eq!(once, again);
    }

    #[test]
    fn what_is_no_picture_is_refused_in_a_sentence() {
        let said = pdf(["words"], "").unwrap_err();
        assert!(said.starts_with("a page cannot be read"), "{said}");
    }
}

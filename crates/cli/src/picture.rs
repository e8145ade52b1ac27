//! An SVG document as a PNG, its words in the page's font.

use crate::font;
use resvg::render;
use resvg::tiny_skia::{Pixmap, Transform};
use usvg::Tree;

/// The PNG of an SVG document, a pixel to each of its units.
///
/// # Errors
/// A document that is no SVG, or one of no size, in a sentence.
pub(crate) fn png(svg: &str) -> Result<Vec<u8>, String> {
    let tree = Tree::from_str(svg, &font::options())
        .map_err(|error| format!("the picture cannot be read: {error}"))?;
    let size = tree.size().to_int_size();
    let mut pixels = Pixmap::new(size.width(), size.height())
        .ok_or_else(|| "the picture is too large".to_owned())?;
    render(&tree, Transform::identity(), &mut pixels.as_mut());
    pixels
        .encode_png()
        .map_err(|error| format!("the picture cannot be packed: {error}"))
}

//! Numerals, words and their places.

use crate::layout::Layout;
use crate::outline::rounded;
use crate::shape::{Anchor, CAP_HEIGHT, Shape, Text, Tone};
use crate::theme::Role;
use kurbo::{Affine, Point, Rect, Size};
use std::borrow::Cow;

/// The numerals, every 30° from north: tens of degrees, and letters at the cardinal points.
pub(crate) const NUMERALS: [&str; 12] = [
    "N", "3", "6", "E", "12", "15", "S", "21", "24", "W", "30", "33",
];

/// Half the width of a mark as printed, for a long and a short one.
pub(crate) fn mark_half_width(layout: &Layout, long: bool) -> f64 {
    layout.line(if long { 2.4 } else { 1.5 })
}

/// Text whose capitals are centred on a height.
pub(crate) fn label(
    content: impl Into<Cow<'static, str>>,
    at: Point,
    anchor: Anchor,
    size: f64,
    weight: u16,
    tone: Tone,
) -> Shape {
    Shape::Text(Text {
        content: content.into(),
        place: Affine::translate((at.x, at.y + CAP_HEIGHT * size / 2.0)),
        anchor,
        size,
        weight,
        tone,
    })
}

/// Words on a plate of one colour, about a point.
pub(crate) fn plate(shapes: &mut Vec<Shape>, words: &str, centre: Point, size: f64, ground: Role) {
    let half = Size::new(text_width(words, size) / 2.0 + 0.6 * size, 0.68 * size);
    let rect = Rect::from_center_size(centre, half * 2.0);
    shapes.push(Shape::flat(rounded(rect, 0.3 * size), ground.solid()));
    shapes.push(label(
        words.to_owned(),
        centre,
        Anchor::Middle,
        size,
        600,
        Role::Ink.solid(),
    ));
}

/// About how wide text is; fonts differ, and nothing here can measure one.
pub(crate) fn text_width(words: &str, size: f64) -> f64 {
    0.55 * size * words.chars().count() as f64
}

//! How far off a flown task ended, against what was allowed: a scale with the allowed part as a
//! band and a mark where the flight came out.

use crate::layout::fits;
use crate::lettering::{label, text_width};
use crate::outline::{polygon, rounded, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{Point, Rect, Size};

/// What the scale shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MarkScaleView<'a> {
    /// How far off, degrees; where it has a side, right positive.
    pub error_deg: f64,
    /// How far off it may be, degrees, above 0.
    pub tolerance_deg: f64,
    /// Whether the error has a side. If not, the scale begins at 0.
    pub has_side: bool,
    /// Words to place.
    pub words: Words<'a>,
}

/// Words to place, already in the reader's language.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// At the mark, as in “7° right”.
    pub error: &'a str,
    /// In the band, as in “within 10°”.
    pub within: &'a str,
}

/// How much of the scale the allowed part takes where the error is within it; chosen: room is left
/// for what would be beyond.
const BAND: f64 = 0.5;
/// Size of type, as a share of the height.
const TEXT: f64 = 0.24;

/// Draws the scale; nothing under 8 or over 100,000 either way, nor for a tolerance that is none.
pub fn mark_scale(view: &MarkScaleView, size: Size) -> Vec<Shape> {
    let can_be = view.tolerance_deg > 0.0 && view.error_deg.is_finite();
    if !(fits(size) && can_be) {
        return Vec::new();
    }
    let scale = Scale::new(view, size);
    let mut shapes = Vec::with_capacity(12);
    let line = 0.02 * size.height;
    let (top, bottom) = (0.36 * size.height, 0.66 * size.height);
    let whole = Rect::new(scale.least_x, top, scale.most_x, bottom);
    shapes.push(Shape::flat(
        rounded(whole, 0.06 * size.height),
        Role::Card.solid(),
    ));

    let band = Rect::new(
        scale.x(if view.has_side {
            -view.tolerance_deg
        } else {
            0.0
        }),
        top,
        scale.x(view.tolerance_deg),
        bottom,
    );
    shapes.push(Shape::flat(rounded(band, 0.0), Role::Paper.solid()));
    let ink = Pen::solid(Role::Ink, line);
    shapes.push(Shape::line(rounded(band, 0.0), ink));
    let zero = scale.x(0.0);
    let along = segment(Point::new(zero, top), Point::new(zero, bottom));
    shapes.push(Shape::line(along, Pen::solid(Role::Ink, 2.0 * line)));

    let text = (TEXT * size.height).min(18.0);
    figures(&mut shapes, view, &scale, size, text);
    mark(&mut shapes, view, &scale, size, text);
    shapes
}

/// What the band's ends stand for, and what it is; where it is too narrow for that, the words
/// stand below it in the place of the figures.
fn figures(shapes: &mut Vec<Shape>, view: &MarkScaleView, scale: &Scale, size: Size, text: f64) {
    let below = 0.84 * size.height;
    let half = scale.degree * view.tolerance_deg;
    let middle = if view.has_side {
        scale.x(0.0)
    } else {
        scale.x(0.5 * view.tolerance_deg)
    };
    let width = if view.has_side { 2.0 * half } else { half };
    let small = 0.9 * text;
    let within = |at: Point| {
        let ink = Role::Ink.solid();
        let words = view.words.within.to_owned();
        label(words, at, Anchor::Middle, small, 600, ink)
    };
    if text_width(view.words.within, small) > width {
        // Not beyond the picture's edge.
        let room = 0.5 * text_width(view.words.within, small);
        let x = middle.clamp(room, (size.width - room).max(room));
        shapes.push(within(Point::new(x, below)));
        return;
    }
    let beside = if view.has_side {
        scale.x(0.5 * view.tolerance_deg)
    } else {
        middle
    };
    let fits_beside = text_width(view.words.within, small) < half;
    let x = if fits_beside { beside } else { middle };
    shapes.push(within(Point::new(x, 0.51 * size.height)));
    let ends: &[f64] = if view.has_side {
        &[-1.0, 0.0, 1.0]
    } else {
        &[0.0, 1.0]
    };
    for end in ends {
        let degrees = end * view.tolerance_deg;
        let at = Point::new(scale.x(degrees), below);
        let figure = format!("{}°", degrees.abs());
        let faint = Role::FaintInk.solid();
        shapes.push(label(figure, at, Anchor::Middle, text, 400, faint));
    }
}

/// The mark above the scale, with its words on the side where there is more room.
fn mark(shapes: &mut Vec<Shape>, view: &MarkScaleView, scale: &Scale, size: Size, text: f64) {
    let off = if view.has_side {
        view.error_deg
    } else {
        view.error_deg.abs()
    };
    let x = scale.x(off);
    let (tip, half) = (0.42 * size.height, 0.09 * size.height);
    let sign = polygon(&[
        Point::new(x, tip),
        Point::new(x - half, tip - 2.0 * half),
        Point::new(x + half, tip - 2.0 * half),
    ]);
    shapes.push(Shape::flat(sign, Role::Ink.solid()));
    let (beside, anchor) = if x > 0.5 * size.width {
        (x - 2.0 * half, Anchor::End)
    } else {
        (x + 2.0 * half, Anchor::Start)
    };
    let at = Point::new(beside, 0.17 * size.height);
    let ink = Role::Ink.solid();
    shapes.push(label(
        view.words.error.to_owned(),
        at,
        anchor,
        1.1 * text,
        700,
        ink,
    ));
}

struct Scale {
    least_x: f64,
    most_x: f64,
    /// Where 0 stands, and how long a degree is.
    zero: f64,
    degree: f64,
    reach: f64,
}

impl Scale {
    fn new(view: &MarkScaleView, size: Size) -> Self {
        let margin = 0.03 * size.width + 4.0;
        let (least_x, most_x) = (margin, size.width - margin);
        // The whole of the error is seen, and never less than twice what is allowed.
        let reach = (view.tolerance_deg / BAND).max(1.1 * view.error_deg.abs());
        let length = most_x - least_x;
        let (zero, degree) = if view.has_side {
            (least_x + 0.5 * length, 0.5 * length / reach)
        } else {
            (least_x, length / reach)
        };
        Self {
            least_x,
            most_x,
            zero,
            degree,
            reach,
        }
    }

    fn x(&self, degrees: f64) -> f64 {
        self.zero + self.degree * degrees.clamp(-self.reach, self.reach)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::Text;

    const SIZE: Size = Size::new(360.0, 88.0);

    fn texts(error_deg: f64, has_side: bool) -> Vec<Text> {
        let view = MarkScaleView {
            error_deg,
            tolerance_deg: 10.0,
            has_side,
            words: Words {
                error: "off",
                within: "within 10°",
            },
        };
        let shapes = mark_scale(&view, SIZE);
        let texts = shapes.into_iter().filter_map(|shape| match shape {
            Shape::Text(text) => Some(text),
            _ => None,
        });
        texts.collect()
    }

    fn x(text: &Text) -> f64 {
        text.place.translation().x
    }

    #[test]
    fn what_is_off_to_the_left_stands_left_of_what_is_off_to_the_right() {
        let at = |error| {
            let found = texts(error, true);
            x(found.iter().find(|it| it.content == "off").unwrap())
        };
        assert!(at(-15.0) < at(-5.0) && at(5.0) > at(-5.0) && at(15.0) > at(5.0));
    }

    #[test]
    fn words_stay_within_the_picture_and_apart_however_far_off() {
        for error in [0.0, 9.0, -20.0, 91.9, 180.0] {
            for has_side in [true, false] {
                let found = texts(error, has_side);
                for text in &found {
                    let width = text_width(&text.content, text.size);
                    let left = match text.anchor {
                        Anchor::Start => x(text),
                        Anchor::Middle => x(text) - width / 2.0,
                        Anchor::End => x(text) - width,
                    };
                    assert!(
                        left >= 0.0 && left + width <= SIZE.width,
                        "{error} {text:?}"
                    );
                }
                // The figures stand only where the band has room for its own words.
                let figures = found.iter().filter(|it| it.content == "10°").count();
                assert!(figures == 0 || error.abs() < 40.0, "{error}");
            }
        }
    }

    #[test]
    fn no_picture_without_a_size_or_a_tolerance() {
        let view = MarkScaleView {
            error_deg: f64::NAN,
            tolerance_deg: 10.0,
            has_side: true,
            words: Words::default(),
        };
        assert!(mark_scale(&view, SIZE).is_empty());
        let none = MarkScaleView {
            error_deg: 1.0,
            tolerance_deg: 0.0,
            ..view
        };
        assert!(mark_scale(&none, SIZE).is_empty());
        let small = MarkScaleView {
            tolerance_deg: 5.0,
            ..none
        };
        assert!(mark_scale(&small, Size::new(4.0, 4.0)).is_empty());
        assert!(!mark_scale(&small, SIZE).is_empty());
    }
}

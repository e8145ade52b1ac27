//! The words and figures of a frame.

use super::{StillView, Words};
use crate::lettering::{label, text_width};
use crate::outline::{diamond, polygon};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{BezPath, Point, Rect};

/// Title and chapter on the left, the place on the right.
pub(super) fn head(shapes: &mut Vec<Shape>, words: &Words, area: Rect) {
    let right = 0.36 * area.width();
    let left = area.width() - right - 40.0;
    // Either alone stands in the middle of the head.
    let [first, second] = if words.title.is_empty() || words.chapter.is_empty() {
        [64.0, 64.0]
    } else {
        [42.0, 86.0]
    };
    let at = |y: f64| Point::new(area.x0, area.y0 + y);
    Line {
        anchor: Anchor::Start,
        size: 44.0,
        weight: 700,
        role: Role::Ink,
        room: left,
    }
    .put(shapes, words.title, at(first));
    Line {
        anchor: Anchor::Start,
        size: 32.0,
        weight: 500,
        role: Role::FaintInk,
        room: left,
    }
    .put(shapes, words.chapter, at(second));
    let end = Point::new(area.x1, area.y0 + 64.0);
    Line {
        anchor: Anchor::End,
        size: 34.0,
        weight: 500,
        role: Role::FaintInk,
        room: right,
    }
    .put(shapes, words.place, end);
}

/// Heading, difference and compass side by side.
pub(super) fn readings(shapes: &mut Vec<Shape>, view: &StillView, area: Rect) {
    let words = &view.words;
    let figures = super::describe(view);
    let third = area.width() / 3.0;
    let middle = |column: f64| area.x0 + (column + 0.5) * third;
    let blocks = [
        (0.0, words.heading, figures.heading, Role::Heading),
        (2.0, words.compass, figures.reading, Role::Compass),
    ];
    for (column, name, figure, role) in blocks {
        let x = middle(column);
        let size = 132.0;
        let y = area.y0 + 30.0;
        // Mark and name begin where the figure does.
        let edge = x - 1.5 * DIGIT * size;
        Line {
            anchor: Anchor::Start,
            size: 34.0,
            weight: 500,
            role: Role::Ink,
            room: third,
        }
        .put(shapes, name, Point::new(edge + 48.0, y));
        mark(shapes, Point::new(edge + 20.0, y), role);
        let (said, role) = match figure {
            Some(degrees) => (format!("{degrees:03}"), role),
            None => ("?".to_owned(), Role::FaintInk),
        };
        let at = Point::new(x, area.y0 + 116.0);
        shapes.push(label(said, at, Anchor::Middle, size, 700, role.solid()));
        if figure.is_some() {
            // The degree sign hangs outside, so that the three digits stand in the middle.
            let at = Point::new(x + 1.5 * DIGIT * size, at.y);
            shapes.push(label("°", at, Anchor::Start, size, 700, role.solid()));
        }
    }
    if figures.difference.is_some() {
        let at = Point::new(middle(1.0), area.y0 + 116.0);
        Line {
            anchor: Anchor::Middle,
            size: 64.0,
            weight: 700,
            role: Role::Ink,
            room: third,
        }
        .put(shapes, words.difference, at);
    }
}

/// The width of a tabular figure as a share of the font's size: measured on the page's font at
/// weight 700.
const DIGIT: f64 = 0.62;

/// The mark of the heading or of the compass, about a point.
fn mark(shapes: &mut Vec<Shape>, at: Point, role: Role) {
    if role == Role::Heading {
        let triangle: BezPath =
            polygon(&[at + (0.0, -14.0), at + (16.0, 14.0), at + (-16.0, 14.0)]);
        shapes.push(Shape::line(triangle, Pen::solid(role, 5.0)));
    } else {
        shapes.push(Shape::flat(diamond(at, 17.0), role.solid()));
    }
}

/// Further figures, a row each: the name on the left, the figure on the right.
pub(super) fn figures(shapes: &mut Vec<Shape>, figures: &[(&str, &str)], area: Rect) {
    let row = area.height() / figures.len().max(1) as f64;
    for (index, (name, figure)) in figures.iter().enumerate() {
        let y = area.y0 + (index as f64 + 0.5) * row;
        let half = area.width() / 2.0 - 10.0;
        let start = Point::new(area.x0, y);
        Line {
            anchor: Anchor::Start,
            size: 0.4 * row,
            weight: 500,
            role: Role::FaintInk,
            room: 0.9 * half,
        }
        .put(shapes, name, start);
        let end = Point::new(area.x1, y);
        Line {
            anchor: Anchor::End,
            size: 0.62 * row,
            weight: 700,
            role: Role::Ink,
            room: 1.1 * half,
        }
        .put(shapes, figure, end);
    }
}

/// What is said at this moment, on up to three lines, as large as they can be.
pub(super) fn caption(shapes: &mut Vec<Shape>, words: &str, area: Rect) {
    let sizes = [46.0, 42.0, 38.0, 34.0, 30.0, 26.0];
    let fitting = sizes.into_iter().find_map(|size| {
        let lines = broken(words, size, area.width());
        (lines.len() as f64 * 1.3 * size <= area.height() - 8.0).then_some((size, lines))
    });
    let (size, lines) = fitting.unwrap_or_else(|| {
        // Far more than can be said in a moment: its beginning.
        let mut lines = broken(words, 26.0, area.width());
        lines.truncate(3);
        (26.0, lines)
    });
    let first = area.center().y - 0.5 * 1.3 * size * (lines.len() as f64 - 1.0);
    for (index, line) in lines.into_iter().enumerate() {
        let at = Point::new(area.center().x, first + 1.3 * size * index as f64);
        shapes.push(label(
            line,
            at,
            Anchor::Middle,
            size,
            600,
            Role::Ink.solid(),
        ));
    }
}

/// What the picture is not for, along the foot.
pub(super) fn caution(shapes: &mut Vec<Shape>, words: &str, area: Rect) {
    let at = Point::new(area.center().x, area.center().y - 4.0);
    Line {
        anchor: Anchor::Middle,
        size: 24.0,
        weight: 400,
        role: Role::FaintInk,
        room: area.width(),
    }
    .put(shapes, words, at);
}

/// How one line of text is set.
struct Line {
    anchor: Anchor,
    /// Its size where there is room.
    size: f64,
    weight: u16,
    role: Role,
    /// How wide it may be.
    room: f64,
}

impl Line {
    /// Puts words at a place, smaller where they are wider than there is room; none where there are
    /// none.
    fn put(&self, shapes: &mut Vec<Shape>, words: &str, at: Point) {
        if !words.is_empty() {
            let size = fitted(words, self.size, self.room);
            let tone = self.role.solid();
            shapes.push(label(
                words.to_owned(),
                at,
                self.anchor,
                size,
                self.weight,
                tone,
            ));
        }
    }
}

/// The size at which words are no wider than `room`, `size` at the most.
fn fitted(words: &str, size: f64, room: f64) -> f64 {
    let width = text_width(words, size);
    if width > room {
        size * room / width
    } else {
        size
    }
}

/// Words broken into lines no wider than `room`; a word that is wider stands alone.
fn broken(words: &str, size: f64, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match lines.last_mut() {
            Some(line) if text_width(line, size) + text_width(word, size) + size < room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_words_are_broken_between_words_and_none_is_lost() {
        let words = "The card lags behind the turn, and the more so the nearer to north.";
        let lines = broken(words, 46.0, 900.0);
        assert!(lines.len() == 2, "{lines:?}");
        assert_eq!(lines.join(" "), words);
        assert!(lines.iter().all(|line| text_width(line, 46.0) <= 900.0));
    }

    #[test]
    fn words_too_long_for_their_place_are_set_smaller() {
        let words = "x".repeat(100);
        let size = fitted(&words, 44.0, 500.0);
        assert!((text_width(&words, size) - 500.0).abs() < 1e-9);
        assert_eq!(fitted("x", 44.0, 500.0), 44.0);
    }
}

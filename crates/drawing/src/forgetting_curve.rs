//! The forgetting curve: the chance of recall from today on, if nothing more is practised.
//!
//! ```
//! use drawing::forgetting_curve::{ForgettingView, forgetting_curve};
//!
//! let view = ForgettingView { recall: &[0.95, 0.9, 0.86], ..ForgettingView::default() };
//! assert!(!forgetting_curve(&view, kurbo::Size::new(400.0, 240.0)).is_empty());
//! ```

use crate::chart::axis::Steps;
use crate::chart::{FAINT, Frame, Mark, fits, type_size};
use crate::lettering::label;
use crate::outline::{add_segment, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::sheet::width;
use crate::theme::Role;
use kurbo::{BezPath, Point, Rect, Shape as _, Size};

/// Words to place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// The first day.
    pub today: &'a str,
    /// What the days are, at the end of their axis.
    pub days: &'a str,
    /// The line under which it is time to refresh.
    pub refresh: &'a str,
}

/// What the curve shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ForgettingView<'a> {
    /// The chance of recall, 0 to 1, today and on each day after.
    pub recall: &'a [f64],
    /// Words to place.
    pub words: Words<'a>,
}

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(420.0, 260.0);
/// Under this it is time to refresh: a class is due there.
const REFRESH: f64 = 0.9;

/// Draws the curve, in ink; nothing under 8 or over 100,000 either way.
pub fn forgetting_curve(view: &ForgettingView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let letters = type_size(size, NATURAL);
    let area = Rect::new(
        4.0 * letters,
        0.9 * letters,
        size.width - 1.2 * letters,
        size.height - 2.2 * letters,
    );
    let last = view.recall.len().saturating_sub(1).max(1) as f64;
    let frame = Frame::new(area, [0.0, last], [0.0, 1.0]);
    let line = letters / 13.0;
    let mut shapes = Vec::with_capacity(32);
    scales(&mut shapes, &frame, view, last, letters);

    let ends = [0.0, last].map(|x| frame.place(Point::new(x, REFRESH)));
    let dashes = Pen::solid(Role::Ink, 1.4 * line).dashed(7.0 * line, 5.0 * line);
    shapes.push(Shape::line(segment(ends[0], ends[1]), dashes));

    let points: Vec<Point> = (0_u32..)
        .zip(view.recall)
        .filter(|(_, recall)| recall.is_finite())
        .map(|(day, recall)| frame.place(Point::new(f64::from(day), recall.clamp(0.0, 1.0))))
        .collect();
    let Some((first, rest)) = points.split_first() else {
        return shapes;
    };
    let mut path = BezPath::new();
    path.move_to(*first);
    for point in rest {
        path.line_to(*point);
    }
    shapes.push(Shape::line(path, Pen::solid(Role::Ink, 2.4 * line)));
    Mark::Ring.draw(&mut shapes, *first, 5.0 * line);
    refresh_words(&mut shapes, &frame, view, letters);
    shapes
}

/// The words of the line, above or below it, wherever the curve is not.
fn refresh_words(shapes: &mut Vec<Shape>, frame: &Frame, view: &ForgettingView, letters: f64) {
    let words = view.words.refresh;
    if words.is_empty() {
        return;
    }
    let size = 0.9 * letters;
    let line = frame.place(Point::new(0.0, REFRESH)).y;
    let at = Point::new(frame.area.x1 - 0.4 * letters, line - 0.8 * letters);
    let wide = width(words, size, 400) + 0.4 * letters;
    let ground = Rect::new(
        at.x - wide,
        at.y - 0.6 * letters,
        at.x + 0.2 * letters,
        at.y + 0.6 * letters,
    );
    shapes.push(Shape::flat(ground.to_path(0.1), Role::Paper.at(0.85)));
    let ink = Role::Ink.solid();
    shapes.push(label(words.to_owned(), at, Anchor::End, size, 400, ink));
}

fn scales(shapes: &mut Vec<Shape>, frame: &Frame, view: &ForgettingView, last: f64, letters: f64) {
    let line = letters / 13.0;
    let ink = Role::Ink.solid();
    let mut hairs = BezPath::new();
    for quarter in 0..=4 {
        let recall = f64::from(quarter) / 4.0;
        let [left, right] = [0.0, last].map(|x| frame.place(Point::new(x, recall)));
        add_segment(&mut hairs, left, right);
        let words = format!("{} %", 25 * quarter);
        let at = left - (0.5 * letters, 0.0);
        shapes.push(label(words, at, Anchor::End, 0.9 * letters, 400, ink));
    }
    for day in Steps::Decimal.ticks([0.0, last], frame.area.width() / (4.0 * letters)) {
        let [low, high] = [0.0, 1.0].map(|y| frame.place(Point::new(day, y)));
        add_segment(&mut hairs, low, high);
        let (words, anchor) = if day == 0.0 {
            (view.words.today.to_owned(), Anchor::Middle)
        } else {
            (format!("{day}"), Anchor::Middle)
        };
        let at = low + (0.0, 0.95 * letters);
        shapes.push(label(words, at, anchor, 0.9 * letters, 400, ink));
    }
    shapes.push(Shape::line(hairs, Pen::solid(Role::Rule, 0.7 * line)));
    let at = Point::new(frame.area.x1, frame.area.y1 + 1.75 * letters);
    let words = view.words.days.to_owned();
    shapes.push(label(words, at, Anchor::End, 0.85 * letters, 400, FAINT));
}

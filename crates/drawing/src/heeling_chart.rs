//! Deviation against bank: a line for each heading, told apart by its dashes and its name.

use crate::chart::axis::{Steps, degrees, round_span};
use crate::chart::placing::spread;
use crate::chart::{Frame, fits, type_size};
use crate::lettering::label;
use crate::outline::{add_segment, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{BezPath, Point, Rect, Size};

/// What the chart shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HeelingChartView<'a> {
    /// The banks, rad, right positive, from left to right.
    pub banks: &'a [f64],
    /// What stands below each; nothing, and no hairline, where it is empty.
    pub bank_words: &'a [&'a str],
    /// What each line is called, and its deviations (rad, east positive) bank by bank; where one
    /// is not finite the line breaks.
    pub lines: &'a [(&'a str, &'a [f64])],
    /// What stands at the upper end: deviation to the east.
    pub east: &'a str,
    /// What stands at the lower end.
    pub west: &'a str,
}

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(760.0, 300.0);

/// Dashes and gaps of the lines, for letters 13 high: they stay apart in black and white.
const DASHES: [Option<[f64; 2]>; 4] = [None, Some([11.0, 5.0]), Some([2.5, 4.0]), Some([6.0, 3.0])];

/// Draws the chart, in ink; nothing under 8 or over 100,000 either way, or without two banks.
pub fn heeling_chart(view: &HeelingChartView, size: Size) -> Vec<Shape> {
    let (Some(first), Some(last)) = (view.banks.first(), view.banks.last()) else {
        return Vec::new();
    };
    if !fits(size) || last <= first {
        return Vec::new();
    }
    let letters = type_size(size, NATURAL);
    let line = letters / 13.0;
    let area = Rect::new(
        3.4 * letters,
        2.0 * letters,
        size.width - 4.5 * letters,
        size.height - 3.4 * letters,
    );
    let values = view.lines.iter().flat_map(|(_, line)| line.iter());
    let values = values.map(|it| it.to_degrees()).filter(|it| it.is_finite());
    let span = round_span(values.chain([1.0, -1.0]), 1.0, Steps::Degrees);
    let frame = Frame::new(area, [*first, *last], span);
    let mut shapes = Vec::new();
    scales(&mut shapes, &frame, view, span, letters);

    let mut ends = Vec::new();
    for ((name, found), dashes) in view.lines.iter().zip(DASHES.iter().cycle()) {
        let mut path = BezPath::new();
        let (mut end, mut broken) = (None, true);
        for (bank, deviation) in view.banks.iter().zip(*found) {
            let at = frame.place(Point::new(*bank, deviation.to_degrees()));
            if !at.is_finite() {
                broken = true;
                continue;
            }
            if broken {
                path.move_to(at);
            } else {
                path.line_to(at);
            }
            broken = false;
            end = Some(at);
        }
        let pen = Pen::solid(Role::Ink, 2.0 * line);
        let pen = match dashes {
            Some([dash, gap]) => pen.dashed(dash * line, gap * line),
            None => pen,
        };
        shapes.push(Shape::line(path, pen));
        ends.extend(end.map(|end| (*name, end)));
    }
    let wanted: Vec<f64> = ends.iter().map(|(_, end)| end.y).collect();
    let heights = spread(&wanted, 1.15 * letters, area.y0, area.y1);
    for ((name, end), height) in ends.into_iter().zip(heights) {
        let at = Point::new(end.x + 0.5 * letters, height);
        shapes.push(label(
            name.to_owned(),
            at,
            Anchor::Start,
            letters,
            600,
            Role::Ink.solid(),
        ));
    }
    shapes
}

/// Hairlines with their figures, the line of no deviation, and what up and down mean.
fn scales(
    shapes: &mut Vec<Shape>,
    frame: &Frame,
    view: &HeelingChartView,
    span: [f64; 2],
    letters: f64,
) {
    let line = letters / 13.0;
    let ink = Role::Ink.solid();
    let [left, right] = frame.x.values();
    let mut hairs = BezPath::new();
    for (index, bank) in view.banks.iter().enumerate() {
        let words = view.bank_words.get(index).copied().unwrap_or_default();
        if words.is_empty() {
            continue;
        }
        let [low, high] = span.map(|y| frame.place(Point::new(*bank, y)));
        add_segment(&mut hairs, low, high);
        let at = low + (0.0, 0.95 * letters);
        let words = words.to_owned();
        shapes.push(label(words, at, Anchor::Middle, 0.9 * letters, 400, ink));
    }
    let room = frame.area.height() / (1.8 * letters);
    let step = Steps::Degrees.step(span[1] - span[0], room);
    for value in Steps::Degrees.ticks(span, room) {
        let [from, to] = [left, right].map(|x| frame.place(Point::new(x, value)));
        add_segment(&mut hairs, from, to);
        let at = from - (0.4 * letters, 0.0);
        let words = degrees(value, step);
        shapes.push(label(words, at, Anchor::End, 0.9 * letters, 400, ink));
    }
    shapes.push(Shape::line(hairs, Pen::solid(Role::Rule, 0.7 * line)));
    let ends = [left, right].map(|x| frame.place(Point::new(x, 0.0)));
    let zero = Pen::solid(Role::Ink, 1.2 * line);
    shapes.push(Shape::line(segment(ends[0], ends[1]), zero));
    for (words, y, down) in [(view.east, span[1], -0.9), (view.west, span[0], 2.3)] {
        let at = frame.place(Point::new(left, y)) + (0.0, down * letters);
        let words = words.to_owned();
        shapes.push(label(words, at, Anchor::Start, 0.9 * letters, 400, ink));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::PathEl;

    #[test]
    fn a_line_breaks_where_there_is_no_deviation() {
        let banks = [-0.4, -0.2, 0.0, 0.2, 0.4];
        let begun = |found: &[f64]| {
            let view = HeelingChartView {
                banks: &banks,
                bank_words: &[],
                lines: &[("North", found)],
                ..HeelingChartView::default()
            };
            let shapes = heeling_chart(&view, Size::new(560.0, 260.0));
            let paths = shapes.iter().filter_map(|shape| match shape {
                Shape::Stroke { path, pen } if pen.width > 1.4 => Some(path),
                _ => None,
            });
            let moves = |path: &BezPath| {
                let elements = path.elements().iter();
                elements
                    .filter(|it| matches!(it, PathEl::MoveTo(_)))
                    .count()
            };
            paths.map(moves).max().unwrap_or(0)
        };
        assert_eq!(begun(&[0.1, 0.1, 0.1, 0.1, 0.1]), 1);
        assert_eq!(begun(&[0.1, 0.1, f64::NAN, 0.1, 0.1]), 2);
        assert_eq!(begun(&[f64::NAN, 0.1, 0.1, 0.1, f64::NAN]), 1);
    }
}

//! What the lines and the band are, above the chart.

use super::Words;
use crate::chart::{Mark, compass_pen, heading_pen};
use crate::lettering::{label, text_width};
use crate::outline::segment;
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{Point, Rect, Shape as _};

/// One after another from the left.
pub(super) fn key(shapes: &mut Vec<Shape>, words: &Words, letters: f64) {
    let unit = letters / 13.0;
    let size = 0.9 * letters;
    let long = 2.2 * letters;
    let y = 0.95 * letters;
    let mut x = 0.4 * letters;
    for (what, words) in [words.heading, words.compass, words.target]
        .into_iter()
        .enumerate()
    {
        if words.is_empty() {
            continue;
        }
        let ends = [Point::new(x, y), Point::new(x + long, y)];
        let middle = ends[0].midpoint(ends[1]);
        let line = |pen: Pen| Shape::line(segment(ends[0], ends[1]), pen);
        match what {
            0 => {
                shapes.push(line(heading_pen(2.2 * unit)));
                Mark::Heading.draw(shapes, middle, 4.5 * unit);
            }
            1 => {
                shapes.push(line(compass_pen(2.2 * unit)));
                Mark::Compass.draw(shapes, middle, 4.5 * unit);
            }
            _ => {
                let half = 0.45 * letters;
                let rect = Rect::new(ends[0].x, y - half, ends[1].x, y + half);
                shapes.push(Shape::flat(rect.to_path(0.1), Role::Rule.at(0.6)));
                shapes.push(line(Pen::solid(Role::Ink, 1.2 * unit)));
            }
        }
        let at = Point::new(x + long + 0.4 * letters, y);
        let ink = Role::Ink.solid();
        shapes.push(label(words.to_owned(), at, Anchor::Start, size, 400, ink));
        x = at.x + text_width(words, size) + 1.3 * letters;
    }
}

//! Which turn came out where, at the right edge of the chart.

use super::{TurnChartView, TurnLine, end};
use crate::chart::Frame;
use crate::chart::placing::spread;
use crate::lettering::label;
use crate::outline::{ellipse, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{Affine, Point};

/// The numbers at the right edge, each level with where its turn came out as far as there is room.
pub(super) fn numbers(shapes: &mut Vec<Shape>, view: &TurnChartView, frame: &Frame, letters: f64) {
    let unit = letters / 13.0;
    let area = frame.area;
    let ended: Vec<(&TurnLine, Point)> = (view.lines.iter())
        .filter_map(|line| {
            let end = end(line)?;
            let at = Point::new(end.time_s, view.from_deg + end.turned_deg);
            Some((line, frame.place(at)))
        })
        .collect();
    let wanted: Vec<f64> = ended.iter().map(|(_, at)| at.y).collect();
    let radius = 0.82 * letters;
    let middles = spread(&wanted, 2.1 * radius, area.y0, area.y1);
    for ((line, at), y) in ended.into_iter().zip(middles) {
        let middle = Point::new(area.x1 + 1.5 * letters, y);
        let edge = Point::new(area.x1, at.y);
        // The heading goes on level to the edge, and from there to its number.
        let mut way = segment(at, edge);
        way.line_to(middle);
        let pen = Pen::solid(Role::FaintInk, 0.9 * unit).dashed(1.0 * unit, 2.6 * unit);
        shapes.push(Shape::line(way, pen));
        let disc = ellipse(Affine::new([radius, 0.0, 0.0, radius, middle.x, middle.y]));
        let (ground, ink) = if line.is_strong {
            (Role::Ink, Role::Paper)
        } else {
            (Role::Paper, Role::Ink)
        };
        shapes.push(Shape::flat(disc.clone(), ground.solid()));
        shapes.push(Shape::line(disc, Pen::solid(Role::Ink, 1.2 * unit)));
        let number = format!("{}", line.number);
        let size = letters;
        shapes.push(label(
            number,
            middle,
            Anchor::Middle,
            size,
            700,
            ink.solid(),
        ));
    }
}

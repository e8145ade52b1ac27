//! How areas of a map look.

use super::draw::Map;
use super::{Area, Look};
use crate::outline::hatch;
use crate::shape::{Pen, Shape};
use crate::theme::Role;

impl Map {
    /// An area's shade and strokes.
    pub(super) fn area(&self, shapes: &mut Vec<Shape>, area: &Area) {
        let path = self.filled(area.outlines);
        if path.elements().is_empty() {
            return;
        }
        let shade = match area.look {
            Look::Shade | Look::Rising | Look::Upright => Role::Ink.at(0.05),
            Look::Caution => Role::Ink.at(0.08),
            Look::Unreliable => Role::Ink.at(0.3),
        };
        shapes.push(Shape::flat(path.clone(), shade));
        let strokes = |step: f64, lean: f64| hatch(self.area, step * self.unit, lean);
        let lines = match area.look {
            Look::Shade => Vec::new(),
            Look::Rising => vec![strokes(11.0, 1.0)],
            Look::Upright => vec![self.uprights(6.0)],
            Look::Caution => vec![strokes(8.0, 1.0), strokes(8.0, -1.0)],
            Look::Unreliable => vec![strokes(4.0, 1.0), strokes(4.0, -1.0)],
        };
        let pen = Pen::solid(Role::Ink, 0.7 * self.unit).faded(0.42);
        let lines: Vec<Shape> = lines
            .into_iter()
            .map(|line| Shape::line(line, pen))
            .collect();
        if !lines.is_empty() {
            shapes.push(Shape::clipped(path, lines));
        }
    }

    fn uprights(&self, step: f64) -> kurbo::BezPath {
        crate::chart::uprights(self.area, step * self.unit)
    }
}

//! What is fixed to the airframe about the drum: bowl and liquid, lubber line and glass.

use crate::layout::Layout;
use crate::outline::{add_arc, segment};
use crate::shape::{Paint, Pen, Shape, Stop};
use crate::theme::Role;
use compass::frame::{Body, Vector};
use kurbo::{Affine, BezPath, Point, Rect, Shape as _};
use std::f64::consts::FRAC_PI_2;

/// The liquid's surface as the affine of the unit circle (x forward, y right), or none where
/// it has no level worth drawing.
pub(crate) fn surface(apparent: Vector<Body>, layout: &Layout) -> Option<Affine> {
    let down = apparent.xyz.try_normalize()?;
    // Lying on its side or upside down the bowl has no surface within the window.
    if down.z < 0.1 {
        return None;
    }
    let reach = 1.08 * layout.radius;
    let level = layout.pivot.y - 0.425 * layout.window.height();
    Some(Affine::new([
        0.0,
        -reach * down.x / down.z,
        reach,
        -reach * down.y / down.z,
        layout.middle,
        level,
    ]))
}

/// The near edge of the surface and the far one, left to right.
pub(crate) fn edges(surface: Affine) -> [BezPath; 2] {
    let mut near = BezPath::new();
    add_arc(&mut near, surface, -FRAC_PI_2, -3.0 * FRAC_PI_2);
    let mut far = BezPath::new();
    add_arc(&mut far, surface, -FRAC_PI_2, FRAC_PI_2);
    [near, far]
}

pub(crate) fn liquid(inside: &mut Vec<Shape>, surface: Option<Affine>, layout: &Layout) {
    let window = layout.window;
    inside.push(Shape::Fill {
        path: window.to_path(0.1),
        paint: Paint::Linear {
            from: Point::new(window.x0, window.y0),
            to: Point::new(window.x0, window.y1),
            stops: vec![
                Stop {
                    offset: 0.1,
                    tone: Role::Liquid.solid(),
                },
                Stop {
                    offset: 1.0,
                    tone: Role::LiquidDeep.solid(),
                },
            ],
        },
    });
    let Some(surface) = surface else { return };
    let [near, far] = edges(surface);
    for mut path in [near, far.clone()] {
        // The air above either edge: where only one of the two lies, the surface is seen from
        // above or from below.
        path.line_to(Point::new(
            window.x1 + window.width(),
            window.y0 - window.height(),
        ));
        path.line_to(Point::new(
            window.x0 - window.width(),
            window.y0 - window.height(),
        ));
        path.close_path();
        inside.push(Shape::flat(path, Role::Air.at(0.75)));
    }
    let pen = Pen::solid(Role::Surface, layout.line(1.5));
    inside.push(Shape::line(far, pen.faded(0.5)));
}

/// The near edge of the surface, before the drum.
pub(crate) fn meniscus(inside: &mut Vec<Shape>, surface: Affine, layout: &Layout) {
    let [near, _] = edges(surface);
    let pen = Pen::solid(Role::Surface, layout.line(1.5));
    inside.push(Shape::line(near, pen.faded(0.9)));
}

/// The lubber line across the window.
pub(crate) fn lubber(inside: &mut Vec<Shape>, layout: &Layout) {
    let line = segment(
        Point::new(layout.middle, layout.window.y0),
        Point::new(layout.middle, layout.window.y1),
    );
    inside.push(Shape::line(
        line.clone(),
        Pen::solid(Role::Halo, layout.line(7.0)).faded(0.8),
    ));
    inside.push(Shape::line(
        line,
        Pen::solid(Role::Lubber, layout.line(3.2)),
    ));
}

/// What the pane adds: shade under its top edge, and the curve of the glass at its ends.
pub(crate) fn glass(inside: &mut Vec<Shape>, layout: &Layout) {
    let w = layout.window;
    let end = 0.07 * w.width();
    let corner = Point::new(w.x0, w.y0);
    inside.push(Shape::shaded(
        Rect::new(w.x0, w.y0, w.x1, w.y0 + 0.1 * w.height()).to_path(0.1),
        Role::Shadow,
        corner,
        corner + (0.0, 0.1 * w.height()),
        &[(0.0, 0.14), (0.4, 0.05), (1.0, 0.0)],
    ));
    for (x, inward) in [(w.x0, end), (w.x1, -end)] {
        inside.push(Shape::shaded(
            Rect::new(x, w.y0, x + inward, w.y1).abs().to_path(0.1),
            Role::Shadow,
            Point::new(x, w.y0),
            Point::new(x + inward, w.y0),
            &[(0.0, 0.16), (0.3, 0.07), (1.0, 0.0)],
        ));
    }
}

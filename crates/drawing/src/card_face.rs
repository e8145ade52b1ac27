//! The card face: the floating card in its window, and how far it errs.
//!
//! Three parts stand on one lubber line:
//!
//! - the *drum*, the card's side as seen from the pilot's seat behind it;
//! - the *gap scale*, on which the error is a length from the lubber line to where the
//!   heading's numeral now stands on the card;
//! - the *heading ruler*, flat, to the drum's own scale and direction.
//!
//! # Projection
//! Parallel rays along the airframe's x: a point at (x, y, z) in body axes is seen at
//! (middle + y, pivot + z), and the near side is the one with x below zero. The mark of a
//! reading h is printed on the card at the direction (−cos h, −sin h), so that on north N stands
//! at the lubber line, 33 to its right and 3 to its left, and a right turn brings 3 under the
//! line. On a level card that reads r it stands R sin(r − h) to the right of the line; on the
//! ruler, for the heading H, R sin(H − h).

use crate::bowl::{glass, liquid, lubber, meniscus, surface};
use crate::drum::{Drum, marks, side};
use crate::figures::Figures;
use crate::layout::{Layout, VISIBLE};
use crate::lettering::{plate, text_width};
use crate::outline::{hatch, rounded, segment};
use crate::scales::{compass_pen, gap_scale, ruler};
use crate::shape::{Pen, Shape};
use crate::theme::Role;
use compass::frame::{Body, Card, Rotation, Vector};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use glam::{DQuat, DVec3};
use kurbo::{Point, Size};

/// What the card face shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardFaceView<'a> {
    /// From card axes to those of the airframe and the bowl. Drawn as given; an attitude that
    /// is no rotation (zero or not finite) is drawn as the level card of the reading.
    pub attitude: Rotation<Card, Body>,
    /// Where the aircraft is heading.
    pub heading: MagneticHeading,
    /// What the card reads at the lubber line.
    pub reading: CompassHeading,
    /// Apparent gravity in body axes, of any length: the liquid levels itself square to it.
    pub apparent_vertical: Vector<Body>,
    /// Whether the card touches its tilt stop.
    pub at_stop: bool,
    /// Whether ruler and gap scale are shown.
    pub show_reference: bool,
    /// Whether the card is shown; if not, the window is covered.
    pub show_compass: bool,
    /// Words to place.
    pub words: Words<'a>,
}

/// Words to place in the picture, already in the reader's language.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// Beside the error's bar, as in “lags 23°”.
    pub error: Option<&'a str>,
    /// In the window while the card touches its stop.
    pub stop: Option<&'a str>,
    /// On the cover while the card is hidden.
    pub cover: Option<&'a str>,
}

/// The attitude of a card that is square to the bowl and reads `reading`.
pub fn level(reading: CompassHeading) -> Rotation<Card, Body> {
    let (s, c) = maths::sin_cos(-reading.radians() / 2.0);
    Rotation::from_quaternion(DQuat::from_xyzw(0.0, 0.0, s, c))
}

/// What the card face shows, in whole numbers: what its text equivalent is made from.
pub fn describe(view: &CardFaceView) -> Figures {
    let mut figures = Figures::of(
        view.show_reference.then_some(view.heading),
        view.show_compass.then_some(view.reading),
    );
    if view.show_compass {
        let tilt = Vector::<Body>::from_xyz(proper(view) * DVec3::Z).angle_to(Vector::z_axis());
        figures.tilt = Some(tilt.to_degrees().round() as u16);
        figures.at_stop = view.at_stop;
    }
    figures
}

/// Draws the card face; nothing if the size is too small for a [`Layout`].
pub fn card_face(view: &CardFaceView, size: Size) -> Vec<Shape> {
    let Some(layout) = Layout::for_size(size) else {
        return Vec::new();
    };
    let mut shapes = Vec::with_capacity(64);
    if view.show_compass {
        window(&mut shapes, view, &layout);
    } else {
        covered(&mut shapes, view, &layout);
    }
    if view.show_reference {
        gap_scale(&mut shapes, view, &layout);
        ruler(&mut shapes, view, &layout);
    }
    shapes
}

/// The view's attitude as a unit quaternion, or that of the level card if it is none.
fn proper(view: &CardFaceView) -> DQuat {
    let given = view.attitude.quaternion;
    let length = given.length();
    if length > 1e-9 && length.is_finite() {
        given * (1.0 / length)
    } else {
        level(view.reading).quaternion
    }
}

/// The window with what floats in it.
fn window(shapes: &mut Vec<Shape>, view: &CardFaceView, layout: &Layout) {
    let pane = rounded(layout.window, 0.09 * layout.window.height());
    let drum = Drum::new(proper(view), layout);
    let mut inside = Vec::with_capacity(48);
    let surface = surface(view.apparent_vertical, layout);
    liquid(&mut inside, surface, layout);
    side(&mut inside, &drum, layout);
    marks(&mut inside, &drum, layout);
    if let Some(surface) = surface {
        meniscus(&mut inside, surface, layout);
    }
    lubber(&mut inside, layout);
    if view.show_reference {
        link(&mut inside, view, &drum, layout);
    }
    glass(&mut inside, layout);
    if let (true, Some(words)) = (view.at_stop, view.words.stop) {
        stop_words(&mut inside, words, &drum, layout);
    }
    shapes.push(Shape::clipped(pane.clone(), inside));
    let edge = if view.at_stop {
        Pen::solid(Role::Ink, layout.line(5.0))
    } else {
        Pen::solid(Role::Rule, layout.line(2.0))
    };
    shapes.push(Shape::line(pane, edge));
}

/// The covered window: the presenter asks the class what the card shows.
fn covered(shapes: &mut Vec<Shape>, view: &CardFaceView, layout: &Layout) {
    let pane = rounded(layout.window, 0.09 * layout.window.height());
    shapes.push(Shape::flat(pane.clone(), Role::Cover.solid()));
    let slats = hatch(layout.window, 26.0 * layout.unit(), 1.0);
    let pen = Pen::solid(Role::Rule, layout.line(1.5)).faded(0.6);
    let mut inside = vec![Shape::line(slats, pen)];
    lubber(&mut inside, layout);
    shapes.push(Shape::clipped(pane.clone(), inside));
    shapes.push(Shape::line(pane, Pen::solid(Role::Rule, layout.line(2.0))));
    if let Some(words) = view.words.cover {
        let size = 0.11 * layout.window.height();
        plate(shapes, words, layout.window.center(), size, Role::Cover);
    }
}

/// The compass's dashed line, from the heading's mark on the drum down to the sill.
fn link(inside: &mut Vec<Shape>, view: &CardFaceView, drum: &Drum, layout: &Layout) {
    let heading = view.heading.radians();
    let error = view.reading.error_from(view.heading);
    if drum.facing(heading) <= 0.1 || error.abs() > VISIBLE {
        return;
    }
    let from = drum.side(heading, drum.half - 0.3 * layout.drum);
    let sill = Point::new(layout.middle + layout.offset(error), layout.window.y1);
    let path = segment(from, sill);
    inside.push(Shape::line(
        path.clone(),
        Pen::solid(Role::Halo, layout.line(11.0)),
    ));
    inside.push(Shape::line(path, compass_pen(layout)));
}

/// The words that the card touches its stop, over the card's low side, where the window is
/// free.
fn stop_words(inside: &mut Vec<Shape>, words: &str, drum: &Drum, layout: &Layout) {
    let w = layout.window;
    let size = 0.085 * w.height();
    let half = (text_width(words, size) / 2.0 + 0.6 * size).min(w.width() / 2.0);
    let low = if drum.z.y > 0.0 { -1.0 } else { 1.0 };
    let x = layout.middle + low * (w.width() / 2.0 - half - 0.06 * w.height());
    let at = Point::new(x, w.y0 + 0.12 * w.height());
    plate(inside, words, at, size, Role::Paper);
}

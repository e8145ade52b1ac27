//! The flight from above: the track flown, the aircraft, and where it heads against what its
//! compass says.
//!
//! Magnetic north is up. From the aircraft go two rays, the real heading and the compass
//! reading; the hatched gap between them is the error. Where the place has variation, true north
//! stands beside magnetic north with the angle between them.

mod legend;

use crate::figures::Figures;
use crate::labels::{Labels, Lettering};
use crate::outline::{add_arc, diamond, ellipse, hatch, polygon, rounded, segment};
use crate::shape::{Pen, Shape};
use crate::theme::Role;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use kurbo::{Affine, BezPath, PathEl, Point, Rect, Size, Vec2};
use std::f64::consts::FRAC_PI_2;

/// What the plan shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanView<'a> {
    /// Where the aircraft is heading.
    pub heading: MagneticHeading,
    /// What the card reads at the lubber line.
    pub reading: CompassHeading,
    /// Variation in radians, east positive.
    pub variation: f64,
    /// The track so far: metres toward magnetic north and east of any fixed point, the aircraft
    /// at the last. Points further than the Earth is round are left out.
    pub track: &'a [Position],
    /// What was flown after this, where an earlier moment is looked at; faint.
    pub later: &'a [Position],
    /// How the track is fitted.
    pub fit: Fit,
    /// Whether the real heading is shown.
    pub show_heading: bool,
    /// Whether the compass reading is shown.
    pub show_compass: bool,
    /// Words to place.
    pub words: Words<'a>,
}

/// A place by its distance from a fixed point, in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Position {
    /// Toward magnetic north.
    pub north: f64,
    /// Toward magnetic east.
    pub east: f64,
}

/// How the track is fitted into the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fit {
    /// The whole track is seen.
    Whole,
    /// The aircraft keeps its place in the middle, and the picture is so many metres wide or
    /// high, whichever is less.
    Follow(f64),
}

/// Words to place, already in the reader's language; one that is left out is not placed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// At magnetic north, as in “magnetic north”.
    pub magnetic_north: Option<&'a str>,
    /// At true north.
    pub true_north: Option<&'a str>,
    /// At the angle between them, as in “8° east”.
    pub variation: Option<&'a str>,
    /// At the heading's ray, as in “heading 007°”.
    pub heading: Option<&'a str>,
    /// At the compass's ray, as in “compass 344°”.
    pub compass: Option<&'a str>,
    /// At the gap, as in “lags 23°”.
    pub error: Option<&'a str>,
    /// At the scale, as in “1 km”; see [`scale_bar`].
    pub scale: Option<&'a str>,
}

/// What the plan shows, in whole numbers, for its text equivalent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Description {
    /// Heading, reading and their difference, as far as they are shown.
    pub figures: Figures,
    /// Variation in whole degrees, east positive; none where it is less than half a degree.
    pub variation: Option<i16>,
    /// Length of the track in metres.
    pub flown: u32,
}

/// Variations smaller than this, in radians, are not drawn: half a degree.
const SLIGHT: f64 = 0.5 * std::f64::consts::PI / 180.0;
/// Points of the track nearer to each other than this in the picture are left out.
const LEAST_STEP: f64 = 1.5;
/// Sizes below this (in either direction) are too small to show anything.
const SMALLEST: f64 = 8.0;
/// The least that the whole picture measures, in metres, so that a flight's first seconds do not
/// fill it.
const LEAST_SPAN: f64 = 1500.0;
/// The least that can be followed, in metres, and the furthest that anything lies.
const NEAREST: f64 = 10.0;
const FARTHEST: f64 = 4e7;

/// Length of the rays as a share of the picture.
const RAY: f64 = 0.25;
/// Between the picture's edge and what stands along it, in a picture 400 wide.
const MARGIN: f64 = 12.0;
/// Size of the type at the foot as a share of that at the rays.
const SMALL_TEXT: f64 = 0.9;

/// What the plan shows, in whole numbers.
pub fn describe(view: &PlanView) -> Description {
    let flown: f64 = view
        .track
        .windows(2)
        .map(|pair| {
            let (a, b) = (vector(pair[0]), vector(pair[1]));
            (b - a).hypot2().sqrt()
        })
        .filter(|way| way.is_finite())
        .sum();
    Description {
        figures: Figures::of(
            view.show_heading.then_some(view.heading),
            view.show_compass.then_some(view.reading),
        ),
        variation: (view.variation.abs() >= SLIGHT)
            .then(|| view.variation.to_degrees().round() as i16),
        flown: flown.round() as u32,
    }
}

/// How many metres the scale bar stands for at this size: 1, 2 or 5 times a power of ten, or
/// none where nothing is drawn.
pub fn scale_bar(view: &PlanView, size: Size) -> Option<f64> {
    Plan::new(view, size).map(|plan| plan.bar)
}

/// Metres east and south: the picture's own directions.
fn vector(position: Position) -> Vec2 {
    Vec2::new(position.east, -position.north)
}

fn is_on_earth(position: &&Position) -> bool {
    position.north.abs() <= FARTHEST && position.east.abs() <= FARTHEST
}

struct Plan {
    size: Size,
    /// From metres east and south to the picture.
    place: Affine,
    /// Where the aircraft is seen.
    aircraft: Point,
    /// The unit of line widths and marks: 1 in a picture 400 wide or high.
    unit: f64,
    text: f64,
    /// Height of the foot, and whether its legend has a row of its own.
    foot: f64,
    two_rows: bool,
    has_true_north: bool,
    /// Metres of the scale bar, and its length in the picture.
    bar: f64,
    bar_length: f64,
}

impl Plan {
    fn new(view: &PlanView, size: Size) -> Option<Self> {
        let fits = |length: f64| length.is_finite() && length >= SMALLEST;
        if !(fits(size.width) && fits(size.height)) {
            return None;
        }
        let least = size.width.min(size.height);
        let unit = least / 400.0;
        let text = (15.0 * unit).clamp(11.5, 24.0).min(0.12 * least);
        let small = SMALL_TEXT * text;
        let margin = MARGIN * unit;
        let longest_bar = 0.22 * size.width;
        let has_true_north = view.variation.abs() >= SLIGHT && view.variation.is_finite();
        let wide = legend::width(view, has_true_north, small);
        let two_rows = wide + longest_bar + 2.0 * margin > size.width;
        let foot = margin + if two_rows { 2.8 } else { 1.4 } * small;

        let here = view.track.iter().rev().find(is_on_earth).copied();
        let here = vector(here.unwrap_or_default());
        let middle = Vec2::new(0.5 * size.width, 0.5 * (size.height - foot) + 0.2 * text);
        let (scale, at) = match view.fit {
            Fit::Follow(across) if across > 0.0 => {
                (least / across.clamp(NEAREST, FARTHEST), middle)
            }
            _ => {
                let mut bounds = Rect::from_points(here.to_point(), here.to_point());
                for position in view.track.iter().chain(view.later).filter(is_on_earth) {
                    bounds = bounds.union_pt(vector(*position).to_point());
                }
                // The track within the margins, and the rays with their words too, whichever way
                // they point.
                let around = 1.15 * RAY * least;
                let high = size.height - foot;
                let [x, y] = [
                    Fitted::new(size.width, margin, around + 3.0 * text),
                    Fitted::new(high, margin, around + 1.6 * text),
                ];
                let [dx, dy] = [
                    [here.x - bounds.x0, bounds.x1 - here.x],
                    [here.y - bounds.y0, bounds.y1 - here.y],
                ];
                let scale = x.scale(dx).min(y.scale(dy)).min(least / LEAST_SPAN);
                (scale, Vec2::new(x.place(dx, scale), y.place(dy, scale)))
            }
        };
        let at = at.is_finite().then_some(at)?;
        let place = Affine::new([
            scale,
            0.0,
            0.0,
            scale,
            at.x - scale * here.x,
            at.y - scale * here.y,
        ]);
        let (bar, bar_length) = bar(scale, longest_bar);
        Some(Self {
            size,
            place: place.is_finite().then_some(place)?,
            aircraft: at.to_point(),
            unit,
            text,
            foot,
            two_rows,
            has_true_north,
            bar,
            bar_length,
        })
    }

    /// As on the other pictures: small pictures keep stronger lines.
    fn line(&self, width: f64) -> f64 {
        width * (0.4 + 0.6 * self.unit).min(2.0 * self.unit)
    }

    /// Between the picture's edge and what stands in its corners.
    fn margin(&self) -> f64 {
        MARGIN * self.unit
    }

    fn small_text(&self) -> f64 {
        SMALL_TEXT * self.text
    }

    /// Length of the rays.
    fn ray(&self) -> f64 {
        RAY * self.size.width.min(self.size.height)
    }

    /// A point in a direction (radians clockwise from up) from the aircraft.
    fn at(&self, direction: f64, distance: f64) -> Point {
        self.aircraft + toward(direction) * distance
    }
}

/// One direction of the picture, into which a track and what stands about its end are fitted.
struct Fitted {
    whole: f64,
    room: f64,
    /// What the surroundings of the aircraft take up on either side of it.
    around: f64,
}

impl Fitted {
    fn new(whole: f64, margin: f64, around: f64) -> Self {
        let room = (whole - 2.0 * margin).max(0.5 * whole);
        Self {
            whole,
            room,
            around: around.min(0.4 * room),
        }
    }

    /// The greatest scale at which what lies `before` and `after` the aircraft fits.
    fn scale(&self, [before, after]: [f64; 2]) -> f64 {
        let both = self.room / (before + after);
        if both * before.min(after) >= self.around {
            both
        } else {
            (self.room - self.around) / before.max(after)
        }
    }

    /// Where the aircraft stands at a scale.
    fn place(&self, [before, after]: [f64; 2], scale: f64) -> f64 {
        let [before, after] = [before, after].map(|d| (d * scale).max(self.around));
        0.5 * (self.whole + before - after)
    }
}

/// The unit vector in a direction, radians clockwise from up.
fn toward(direction: f64) -> Vec2 {
    let (s, c) = maths::sin_cos(direction);
    Vec2::new(s, -c)
}

/// The longest of 1, 2 and 5 times a power of ten metres that is no longer than `most` in the
/// picture, and its length there.
fn bar(scale: f64, most: f64) -> (f64, f64) {
    let mut metres = 1e-3;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle().take(45) {
        if metres * factor * scale > most {
            break;
        }
        metres *= factor;
    }
    // A thousandth times these factors is never quite a whole number.
    let metres = (metres * 1e3).round() / 1e3;
    (metres, (metres * scale).min(most))
}

/// Draws the plan; nothing if the size is too small (under 8 either way) or not finite.
pub fn plan_view(view: &PlanView, size: Size) -> Vec<Shape> {
    let Some(plan) = Plan::new(view, size) else {
        return Vec::new();
    };
    let mut shapes = Vec::with_capacity(48);
    track(&mut shapes, &plan, view);
    let (heading, reading) = (view.heading.radians(), view.reading.radians());
    let error = view.reading.error_from(view.heading);
    north_line(&mut shapes, &plan);
    if view.show_heading && view.show_compass {
        gap(&mut shapes, &plan, heading, error);
    }
    aircraft(&mut shapes, &plan, heading, view.show_heading);
    if view.show_heading {
        heading_ray(&mut shapes, &plan, heading);
    }
    if view.show_compass {
        compass_ray(&mut shapes, &plan, reading);
    }
    ray_words(&mut shapes, &plan, view, error);
    legend::norths(&mut shapes, &plan, view);
    legend::foot(&mut shapes, &plan, view);
    shapes
}

/// The track, with a ring where it begins; what came later is dotted.
fn track(shapes: &mut Vec<Shape>, plan: &Plan, view: &PlanView) {
    let mut inside = Vec::with_capacity(4);
    if let Some((mut later, _)) = line(plan, view.later) {
        // It goes on from the aircraft.
        if let Some(PathEl::MoveTo(start)) = later.elements().first().copied() {
            later.push(PathEl::MoveTo(plan.aircraft));
            later.push(PathEl::LineTo(start));
        }
        let dot = plan.line(2.2);
        let pen = Pen::solid(Role::FaintInk, dot).dashed(0.1, 2.2 * dot);
        inside.push(Shape::line(later, pen.faded(0.6)));
    }
    if let Some((mut path, start)) = line(plan, view.track) {
        path.line_to(plan.aircraft);
        let pen = Pen::solid(Role::FaintInk, plan.line(2.6)).faded(0.85);
        let ring = ellipse(Affine::translate(start.to_vec2()) * Affine::scale(plan.line(4.0)));
        inside.push(Shape::line(path, pen));
        inside.push(Shape::flat(ring.clone(), Role::Paper.solid()));
        let pen = Pen::solid(Role::FaintInk, plan.line(2.0));
        inside.push(Shape::line(ring, pen));
    }
    if !inside.is_empty() {
        let around = Rect::from_origin_size(Point::ORIGIN, plan.size);
        shapes.push(Shape::clipped(rounded(around, 0.0), inside));
    }
}

/// A line through positions, without those that would fall on each other, and where it begins.
fn line(plan: &Plan, positions: &[Position]) -> Option<(BezPath, Point)> {
    let mut path = BezPath::new();
    let mut ends: Option<(Point, Point)> = None;
    for position in positions.iter().filter(is_on_earth) {
        let p = plan.place * vector(*position).to_point();
        match ends {
            None => {
                path.move_to(p);
                ends = Some((p, p));
            }
            Some((start, q)) if (p - q).hypot2() >= LEAST_STEP * LEAST_STEP => {
                path.line_to(p);
                ends = Some((start, p));
            }
            Some(_) => {}
        }
    }
    ends.map(|(start, _)| (path, start))
}

/// A fine line to magnetic north through the aircraft, from which both directions are counted.
fn north_line(shapes: &mut Vec<Shape>, plan: &Plan) {
    shapes.push(Shape::line(
        segment(plan.aircraft, plan.at(0.0, 1.12 * plan.ray())),
        Pen::solid(Role::FaintInk, plan.line(1.4)).dashed(0.1, plan.line(5.0)),
    ));
}

/// The error, hatched, from the heading to the reading.
fn gap(shapes: &mut Vec<Shape>, plan: &Plan, heading: f64, error: f64) {
    if error == 0.0 {
        return;
    }
    let reach = 0.8 * plan.ray();
    let at = plan.aircraft;
    let place = Affine::translate(at.to_vec2()) * Affine::scale(reach);
    let mut path = BezPath::new();
    path.move_to(at);
    add_arc(
        &mut path,
        place,
        heading - FRAC_PI_2,
        heading + error - FRAC_PI_2,
    );
    path.close_path();
    let area = Rect::from_center_size(at, (2.0 * reach, 2.0 * reach));
    let lean = if error < 0.0 { -1.0 } else { 1.0 };
    let lines = hatch(area, plan.line(9.0), lean);
    let pen = Pen::solid(Role::Compass, plan.line(1.5));
    shapes.push(Shape::flat(path.clone(), Role::Compass.at(0.14)));
    shapes.push(Shape::clipped(path.clone(), vec![Shape::line(lines, pen)]));
    shapes.push(Shape::line(path, pen));
}

/// The aircraft from above: half of its outline from nose to tail, x to the right and y back.
const OUTLINE: [(f64, f64); 13] = [
    (0.0, -1.0),
    (0.1, -0.82),
    (0.13, -0.4),
    (0.95, -0.2),
    (1.0, -0.13),
    (1.0, 0.02),
    (0.13, 0.06),
    (0.08, 0.62),
    (0.36, 0.74),
    (0.38, 0.8),
    (0.38, 0.88),
    (0.06, 0.88),
    (0.0, 0.96),
];

fn aircraft(shapes: &mut Vec<Shape>, plan: &Plan, heading: f64, show_heading: bool) {
    if !show_heading {
        // The outline would tell the heading.
        let dot =
            ellipse(Affine::translate(plan.aircraft.to_vec2()) * Affine::scale(plan.line(7.0)));
        shapes.push(Shape::flat(dot, Role::Ink.solid()));
        return;
    }
    let half = OUTLINE.map(Point::from);
    let mut points = half.to_vec();
    points.extend(half.iter().rev().skip(1).map(|p| Point::new(-p.x, p.y)));
    points.pop();
    let mut path = polygon(&points);
    let (s, c) = maths::sin_cos(heading);
    let size = 27.0 * plan.unit;
    let at = plan.aircraft;
    path.apply_affine(Affine::new([
        size * c,
        size * s,
        -size * s,
        size * c,
        at.x,
        at.y,
    ]));
    shapes.push(Shape::line(
        path.clone(),
        Pen::solid(Role::Halo, plan.line(5.0)),
    ));
    shapes.push(Shape::flat(path.clone(), Role::Ink.solid()));
}

/// Solid line, open triangle.
fn heading_ray(shapes: &mut Vec<Shape>, plan: &Plan, heading: f64) {
    let from = plan.at(heading, 27.0 * plan.unit);
    let base = plan.at(heading, 0.87 * plan.ray());
    shapes.push(Shape::line(
        segment(from, base),
        Pen::solid(Role::Heading, plan.line(4.5)),
    ));
    let across = toward(heading + FRAC_PI_2) * (0.085 * plan.ray());
    let head = polygon(&[
        plan.at(heading, 1.04 * plan.ray()),
        base + across,
        base - across,
    ]);
    shapes.push(Shape::flat(head.clone(), Role::Paper.solid()));
    shapes.push(Shape::line(head, Pen::solid(Role::Heading, plan.line(3.4))));
}

/// Dashed line, filled diamond.
fn compass_ray(shapes: &mut Vec<Shape>, plan: &Plan, reading: f64) {
    let path = segment(
        plan.at(reading, 27.0 * plan.unit),
        plan.at(reading, 0.9 * plan.ray()),
    );
    let dash = plan.line(8.0);
    // Only the dashes have a halo: where the two rays lie on each other, both are seen.
    for pen in [
        Pen::solid(Role::Halo, plan.line(7.5)),
        Pen::solid(Role::Compass, plan.line(4.2)),
    ] {
        let pen = pen.dashed(dash, 1.7 * dash);
        shapes.push(Shape::line(path.clone(), pen));
    }
    let mut mark = diamond(Point::ORIGIN, plan.line(8.0));
    let (s, c) = maths::sin_cos(reading);
    let at = plan.at(reading, 0.96 * plan.ray());
    mark.apply_affine(Affine::new([c, s, -s, c, at.x, at.y]));
    shapes.push(Shape::line(
        mark.clone(),
        Pen::solid(Role::Halo, plan.line(4.0)),
    ));
    shapes.push(Shape::flat(mark, Role::Compass.solid()));
}

/// The words at both rays and at the gap between them, beyond their ends.
fn ray_words(shapes: &mut Vec<Shape>, plan: &Plan, view: &PlanView, error: f64) {
    let (heading, reading) = (view.heading.radians(), view.reading.radians());
    let both = view.show_heading && view.show_compass;
    // When the rays are close, their words part.
    let away = if error < 0.0 { -1.0 } else { 1.0 };
    let part = if both {
        away * (0.5 * (0.7 - error.abs())).max(0.0)
    } else {
        0.0
    };
    let words = &view.words;
    let gap = plan.line(7.0);
    let set = Lettering::of(plan.text, 600);
    let mut labels = Labels::default();
    let mut beyond = |words: Option<&str>, direction: f64| {
        let end = plan.at(direction, 1.1 * plan.ray());
        labels.beside(words, end, toward(direction), 0.6 * gap, set);
    };
    beyond(words.heading.filter(|_| view.show_heading), heading - part);
    beyond(words.compass.filter(|_| view.show_compass), reading + part);
    let error_set = Lettering::of(1.1 * plan.text, 700);
    let middle = heading + 0.5 * error;
    let at = plan.at(middle, 1.12 * plan.ray());
    let words = words.error.filter(|_| both);
    labels.beside(words, at, toward(middle), 0.6 * gap, error_set);
    let above_the_foot = Size::new(plan.size.width, plan.size.height - plan.foot);
    labels.place(shapes, above_the_foot);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_a_round_number_that_fits() {
        for scale in [1e-3, 0.02, 0.13, 1.0, 7.7] {
            let (metres, length) = bar(scale, 100.0);
            assert!(length <= 100.0 && length > 39.9, "{metres} {length}");
            let mut digits = metres;
            while digits >= 10.0 {
                digits /= 10.0;
            }
            assert!([1.0, 2.0, 5.0].iter().any(|d| (d - digits).abs() < 1e-9));
        }
    }
}

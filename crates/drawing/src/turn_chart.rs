//! One turn flown in several ways, against time: the real heading of each until it comes out, the
//! compass reading of those that it is asked for, and the target with what is allowed about it.
//!
//! The real heading is the solid line, the compass the dashed one, each in its own colour and with
//! its own mark where the roll-out began. What comes out where is numbered at the right edge; a
//! number on a filled disc and a thicker line stand for what is to be looked at first.
//!
//! ```
//! use drawing::turn_chart::{TurnChartView, TurnLine, TurnPoint, turn_chart};
//!
//! let points: Vec<TurnPoint> = (0..40)
//!     .map(|second| {
//!         let turned_deg = f64::from(3 * second).min(90.0);
//!         TurnPoint { time_s: f64::from(second), turned_deg, error_deg: -8.0 }
//!     })
//!     .collect();
//! let line = TurnLine { number: 1, points: &points, ..TurnLine::default() };
//! let view = TurnChartView { turned_to_deg: 90.0, lines: &[line], ..TurnChartView::default() };
//! assert!(!turn_chart(&view, kurbo::Size::new(560.0, 340.0)).is_empty());
//! ```

mod key;
mod numbers;

use crate::chart::axis::{Steps, heading};
use crate::chart::series::{between, runs};
use crate::chart::{
    FAINT, Frame, Mark, compass_pen, drawn, fits, heading_pen, polylines, type_size,
};
use crate::lettering::label;
use crate::outline::{add_segment, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use key::key;
use kurbo::{BezPath, Point, Rect, Shape as _, Size};
use numbers::numbers;

/// A moment of a turn. One with a figure that is not finite is left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnPoint {
    /// Seconds since the roll-in began.
    pub time_s: f64,
    /// How far the aircraft has turned, degrees, right positive, whole circles counted.
    pub turned_deg: f64,
    /// The compass reading less the heading, degrees, right positive.
    pub error_deg: f64,
}

/// A turn that was flown.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TurnLine<'a> {
    /// What it is numbered with.
    pub number: u8,
    /// The flight, from its start on.
    pub points: &'a [TurnPoint],
    /// When the roll-out began, seconds; none where it never did, which has no number either.
    pub roll_out_s: Option<f64>,
    /// Whether it is to be looked at first.
    pub is_strong: bool,
    /// Whether the compass reading is drawn too.
    pub has_reading: bool,
}

/// Words to place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// The solid line.
    pub heading: &'a str,
    /// The dashed line.
    pub compass: &'a str,
    /// The band, with what is allowed.
    pub target: &'a str,
    /// What the figures of time are.
    pub seconds: &'a str,
}

/// What the chart shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TurnChartView<'a> {
    /// The magnetic heading that the turn starts from, degrees.
    pub from_deg: f64,
    /// How far the target is turned to, degrees, right positive.
    pub turned_to_deg: f64,
    /// How far off the target is allowed, degrees.
    pub tolerance_deg: f64,
    /// The turns; later ones lie over earlier ones.
    pub lines: &'a [TurnLine<'a>],
    /// Words to place.
    pub words: Words<'a>,
}

/// Where a turn came out, in whole degrees: what the text equivalent is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CameOut {
    /// The turn's number.
    pub number: u8,
    /// The heading, 1 to 360.
    pub heading: u16,
    /// That less the target, right positive.
    pub off: i16,
}

/// Where the turns came out, in their order; those that never did are left out.
pub fn describe(view: &TurnChartView) -> Vec<CameOut> {
    let ended = view.lines.iter().filter_map(|line| {
        let end = end(line)?;
        let off = (end.turned_deg - view.turned_to_deg + 180.0).rem_euclid(360.0) - 180.0;
        let whole = (view.from_deg + end.turned_deg).rem_euclid(360.0).round() as u16;
        Some(CameOut {
            number: line.number,
            heading: if whole == 0 { 360 } else { whole },
            off: off.round() as i16,
        })
    });
    ended.collect()
}

/// The last moment of a turn that came out.
fn end<'a>(line: &TurnLine<'a>) -> Option<&'a TurnPoint> {
    line.roll_out_s?;
    line.points.last().filter(|it| it.is_finite())
}

impl TurnPoint {
    fn is_finite(&self) -> bool {
        self.time_s.is_finite() && self.turned_deg.is_finite() && self.error_deg.is_finite()
    }
}

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(560.0, 340.0);
/// Seconds before the roll-in that are shown.
const BEFORE_S: f64 = 3.0;
/// Room above and below what is flown, degrees.
const ROOM_DEG: f64 = 8.0;
/// The most circles of the target's band that are drawn, either way.
const CIRCLES: i32 = 5;

/// Draws the chart; nothing under 8 or over 100,000 either way, nor for a target or a start that is
/// no number.
pub fn turn_chart(view: &TurnChartView, size: Size) -> Vec<Shape> {
    let target = view.from_deg + view.turned_to_deg;
    if !(fits(size) && target.is_finite() && view.tolerance_deg.is_finite()) {
        return Vec::new();
    }
    let letters = type_size(size, NATURAL);
    let area = Rect::new(
        3.2 * letters,
        2.2 * letters,
        size.width - 2.8 * letters,
        size.height - 3.3 * letters,
    );
    if area.width() <= letters || area.height() <= letters {
        return Vec::new();
    }
    let seen = Seen::of(view);
    let frame = Frame::new(area, [-BEFORE_S, seen.until_s], seen.headings);
    let unit = letters / 13.0;
    let mut shapes = Vec::with_capacity(64);
    shapes.push(Shape::flat(area.to_path(0.1), Role::Card.at(0.55)));
    band(&mut shapes, view, &frame, target, unit);
    scales(&mut shapes, view, &frame, letters);
    for line in view.lines {
        turn(&mut shapes, view, line, &frame, unit);
    }
    numbers(&mut shapes, view, &frame, letters);
    key(&mut shapes, &view.words, letters);
    shapes
}

/// What of the turns is seen.
struct Seen {
    until_s: f64,
    /// From least to most, degrees, whole circles counted.
    headings: [f64; 2],
}

impl Seen {
    fn of(view: &TurnChartView) -> Self {
        let finite = |line: &TurnLine| {
            let points = line.points.iter().filter(|it| it.is_finite());
            points.map(|it| it.time_s).fold(0.0, f64::max)
        };
        let ended = view.lines.iter().filter(|line| end(line).is_some());
        let until_s = ended.map(finite).fold(0.0, f64::max);
        let until_s = if until_s > 0.0 {
            until_s
        } else {
            view.lines.iter().map(finite).fold(10.0, f64::max)
        };
        let target = view.turned_to_deg;
        let mut least = (target - view.tolerance_deg).min(0.0);
        let mut most = (target + view.tolerance_deg).max(0.0);
        for line in view.lines {
            let points = line.points.iter().filter(|it| it.is_finite());
            for it in points.filter(|it| (-BEFORE_S..=until_s).contains(&it.time_s)) {
                let reading = it.turned_deg + if line.has_reading { it.error_deg } else { 0.0 };
                least = least.min(it.turned_deg).min(reading);
                most = most.max(it.turned_deg).max(reading);
            }
        }
        Self {
            until_s,
            headings: [least - ROOM_DEG, most + ROOM_DEG].map(|it| view.from_deg + it),
        }
    }
}

/// The target with what is allowed about it, on every circle that is seen.
fn band(shapes: &mut Vec<Shape>, view: &TurnChartView, frame: &Frame, target: f64, unit: f64) {
    let [least, most] = frame.y.values();
    let area = frame.area;
    for circle in -CIRCLES..=CIRCLES {
        let target = target + 360.0 * f64::from(circle);
        let [low, high] = [-1.0, 1.0].map(|side| target + side * view.tolerance_deg);
        if high < least || low > most {
            continue;
        }
        let [top, bottom] = [high.min(most), low.max(least)].map(|it| frame.y.place(it));
        let rect = Rect::new(area.x0, top, area.x1, bottom);
        shapes.push(Shape::flat(rect.to_path(0.1), Role::Rule.at(0.6)));
        let edges = Pen::solid(Role::Ink, 0.9 * unit).dashed(1.0 * unit, 4.0 * unit);
        let across = |heading: f64| {
            let y = frame.y.place(heading);
            segment(Point::new(area.x0, y), Point::new(area.x1, y))
        };
        for edge in [low, high]
            .into_iter()
            .filter(|it| (least..=most).contains(it))
        {
            shapes.push(Shape::line(across(edge), edges));
        }
        if (least..=most).contains(&target) {
            shapes.push(Shape::line(
                across(target),
                Pen::solid(Role::Ink, 1.2 * unit),
            ));
        }
    }
}

/// Hairlines with their figures.
fn scales(shapes: &mut Vec<Shape>, view: &TurnChartView, frame: &Frame, letters: f64) {
    let unit = letters / 13.0;
    let size = 0.9 * letters;
    let area = frame.area;
    let ink = Role::Ink.solid();
    let mut hairs = BezPath::new();
    for heading_deg in frame.y.ticks(Steps::Headings, 1.8 * letters) {
        let y = frame.y.place(heading_deg);
        add_segment(&mut hairs, Point::new(area.x0, y), Point::new(area.x1, y));
        let at = Point::new(area.x0 - 0.4 * letters, y);
        shapes.push(label(heading(heading_deg), at, Anchor::End, size, 400, ink));
    }
    for second in frame.x.ticks(Steps::Seconds, 3.2 * letters) {
        let x = frame.x.place(second);
        add_segment(&mut hairs, Point::new(x, area.y0), Point::new(x, area.y1));
        let at = Point::new(x, area.y1 + 0.9 * letters);
        shapes.push(label(
            format!("{second}"),
            at,
            Anchor::Middle,
            size,
            400,
            ink,
        ));
    }
    shapes.push(Shape::line(hairs, Pen::solid(Role::Rule, 0.7 * unit)));
    let words = view.words.seconds.to_owned();
    let at = Point::new(area.x1, area.y1 + 2.2 * letters);
    shapes.push(label(words, at, Anchor::End, size, 400, FAINT));
}

/// A turn's lines, and the marks of its roll-out.
fn turn(shapes: &mut Vec<Shape>, view: &TurnChartView, line: &TurnLine, frame: &Frame, unit: f64) {
    let points: Vec<&TurnPoint> = line.points.iter().filter(|it| it.is_finite()).collect();
    let place = |it: &TurnPoint, error: f64| {
        frame.place(Point::new(it.time_s, view.from_deg + it.turned_deg + error))
    };
    let width = unit * if line.is_strong { 3.0 } else { 1.6 };
    let clip = frame.clip(width);
    if line.has_reading {
        // A card that goes round the other way jumps from one side of the aircraft to the other.
        let mut all: Vec<Vec<Point>> = vec![Vec::new()];
        let mut last = 0.0_f64;
        for it in &points {
            if (it.error_deg - last).abs() > 180.0 {
                all.push(Vec::new());
            }
            last = it.error_deg;
            if let Some(run) = all.last_mut() {
                run.push(place(it, it.error_deg));
            }
        }
        let all: Vec<Vec<Point>> = all.iter().map(|it| drawn(it)).collect();
        let path = Shape::line(polylines(&all), compass_pen(width));
        shapes.push(Shape::clipped(clip.clone(), vec![path]));
    }
    let headings = runs(points.iter().map(|it| place(it, 0.0)));
    let headings: Vec<Vec<Point>> = headings.iter().map(|it| drawn(it)).collect();
    let path = Shape::line(polylines(&headings), heading_pen(width));
    shapes.push(Shape::clipped(clip, vec![path]));

    let at = line
        .roll_out_s
        .and_then(|time| between(points.len(), |at| points[at].time_s, time));
    if let Some((before, after, share)) = at {
        let half = unit * if line.is_strong { 6.0 } else { 4.5 };
        let nearest = points[if share < 0.5 { before } else { after }];
        Mark::Heading.draw(shapes, place(nearest, 0.0), half);
        if line.has_reading {
            Mark::Compass.draw(shapes, place(nearest, nearest.error_deg), half);
        }
    }
}

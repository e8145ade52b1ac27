//! The torque ledger: the named torques about the card's axis as bars that add up to the net.
//!
//! Each bar starts where the one above it ended, so that the last end is the sum, and the net
//! below it starts from the centre line and ends there. To the right turns the card clockwise
//! (from above), to the left anticlockwise; the one is filled, the other hatched, and each bar
//! ends in a point.

use crate::lettering::{label, text_width};
use crate::outline::{add_segment, ellipse, hatch, polygon, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::reading::Torques;
use kurbo::{Affine, BezPath, Point, Rect, Size};

/// How many torques have a name.
pub const PARTS: usize = 6;

/// What the ledger shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LedgerView<'a> {
    /// The torques.
    pub torques: Torques,
    /// The torque at either end of the scale, rad/s², above zero. Keep it from frame to frame:
    /// a bar's length then means the same; [`steady_scale`] finds one.
    pub scale: f64,
    /// Words to place.
    pub words: Words<'a>,
}

/// Words to place, already in the reader's language.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// The names of the torques, in the order of [`parts`].
    pub parts: [&'a str; PARTS],
    /// The name of their sum.
    pub net: &'a str,
    /// What a bar to the left does, as in “turns the card anticlockwise”.
    pub anticlockwise: &'a str,
    /// What a bar to the right does.
    pub clockwise: &'a str,
}

/// The torques in the ledger's order, rad/s²: first what pulls the card off, then what holds it.
pub fn parts(torques: &Torques) -> [f64; PARTS] {
    [
        torques.vertical_field,
        torques.balance_weight,
        torques.iron,
        torques.liquid_drag,
        torques.friction,
        torques.horizontal_field,
    ]
}

/// The ledger in whole numbers, for its text equivalent: thousandths of a rad/s², clockwise
/// positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Description {
    /// The torques, in the order of [`parts`].
    pub parts: [i32; PARTS],
    /// Their sum. It may differ by a few units from that of the rounded parts.
    pub net: i32,
    /// Whether every bar ends within the scale.
    pub fits: bool,
}

/// The ledger in whole numbers.
pub fn describe(view: &LedgerView) -> Description {
    let thousandths = |torque: f64| (1000.0 * torque).round() as i32;
    Description {
        parts: parts(&view.torques).map(thousandths),
        net: thousandths(view.torques.net()),
        fits: runs(&view.torques)
            .iter()
            .all(|&[_, to]| to.abs() <= view.scale),
    }
}

/// A scale for a ledger that showed `scale` before: the least of 1, 2 and 5 times a power of ten
/// that holds every bar, and never a smaller one than before, so that it seldom changes.
pub fn steady_scale(torques: &Torques, scale: f64) -> f64 {
    let reach = runs(torques)
        .iter()
        .fold(0.0_f64, |most, &[_, to]| most.max(to.abs()));
    if !(reach > scale && reach < LARGEST_SCALE) {
        return scale;
    }
    let mut wanted = SMALLEST_SCALE;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle() {
        if wanted >= reach {
            break;
        }
        wanted *= factor;
    }
    wanted.max(scale)
}

/// The first scale to give to [`steady_scale`], rad/s².
pub const SMALLEST_SCALE: f64 = 0.1;
const LARGEST_SCALE: f64 = 1e9;

/// From where to where each bar runs.
fn runs(torques: &Torques) -> [[f64; 2]; PARTS] {
    let mut sum = 0.0;
    parts(torques).map(|part| {
        let from = sum;
        sum += part;
        [from, sum]
    })
}

/// Sizes below this (in either direction) are too small to show anything.
const SMALLEST: f64 = 8.0;

struct Ledger {
    /// x of the centre line, and half the width of the scale.
    centre: f64,
    reach: f64,
    /// Where the names begin, or nothing if there is room for none beside the bars.
    names: f64,
    top: f64,
    row: f64,
    text: f64,
    /// Whether what the two sides do takes two lines, and the size of its type.
    two_lines: bool,
    side_text: f64,
    scale: f64,
}

impl Ledger {
    fn new(view: &LedgerView, size: Size) -> Option<Self> {
        let fits = |length: f64| length.is_finite() && length >= SMALLEST;
        if !(fits(size.width) && fits(size.height)) {
            return None;
        }
        // A head of up to two rows, the torques, and the net with a little space over it.
        let margin = 0.02 * size.width;
        let row = size.height / (PARTS as f64 + 3.6);
        let longest = view
            .words
            .parts
            .iter()
            .chain([&view.words.net])
            .map(|words| text_width(words, 1.0))
            .fold(1.0, f64::max);
        let column = 0.36 * size.width;
        let text = (0.46 * row).min(column / longest).min(24.0);
        let names = (longest * text + margin).min(column);
        let reach = (size.width - names - 3.0 * margin) / 2.0;
        // What either side does stands over its half, or if there is no room, on a line of
        // its own; both in the same size.
        let longest = text_width(view.words.anticlockwise, 1.0)
            .max(text_width(view.words.clockwise, 1.0))
            .max(1.0);
        let room = |width: f64| ((width - 1.6 * text) / longest).max(0.01);
        let two_lines = room(reach) < 0.85 * text;
        let side_text = text.min(room(if two_lines { 2.0 * reach } else { reach }));
        Some(Self {
            centre: names + 2.0 * margin + reach,
            reach,
            names: margin,
            top: if two_lines { 2.1 } else { 1.3 } * row,
            two_lines,
            side_text,
            row,
            text,
            scale: if view.scale > 0.0 && view.scale.is_finite() {
                view.scale
            } else {
                1.0
            },
        })
    }

    /// Where a torque lies along the scale; one beyond it lies at its end.
    fn x(&self, torque: f64) -> f64 {
        let share = torque / self.scale;
        let share = if share.is_nan() { 0.0 } else { share };
        self.centre + self.reach * share.clamp(-1.0, 1.0)
    }

    /// The middle of a row; the last is that of the net.
    fn y(&self, row: usize) -> f64 {
        let space = if row == PARTS { 0.35 } else { 0.0 };
        self.top + self.row * (row as f64 + 0.5 + space)
    }

    fn line(&self, width: f64) -> f64 {
        width * (0.4 + 0.6 * self.row / 34.0).clamp(0.3, 2.0)
    }
}

/// Draws the ledger; nothing if the size is too small (under 8 either way) or not finite.
pub fn torque_ledger(view: &LedgerView, size: Size) -> Vec<Shape> {
    let Some(ledger) = Ledger::new(view, size) else {
        return Vec::new();
    };
    let mut shapes = Vec::with_capacity(48);
    frame(&mut shapes, &ledger, view);
    let runs = runs(&view.torques);
    for (row, [from, to]) in runs.into_iter().enumerate() {
        // Carries the sum down to the next row, and from the last one to the net's end.
        let x = ledger.x(to);
        let below = ledger.y(row + 1) + if row + 1 == PARTS { 0.3 } else { -0.3 } * ledger.row;
        let path = segment(
            Point::new(x, ledger.y(row) - 0.3 * ledger.row),
            Point::new(x, below),
        );
        shapes.push(Shape::line(
            path,
            Pen::solid(Role::FaintInk, ledger.line(1.8)).dashed(0.1, ledger.line(4.5)),
        ));
        bar(&mut shapes, &ledger, row, [from, to]);
    }
    let sum = runs[PARTS - 1][1];
    bar(&mut shapes, &ledger, PARTS, [0.0, sum]);
    shapes
}

/// Names, centre line and what either side does.
fn frame(shapes: &mut Vec<Shape>, ledger: &Ledger, view: &LedgerView) {
    let words = &view.words;
    let parts = parts(&view.torques);
    let bottom = ledger.y(PARTS) + 0.55 * ledger.row;
    let mut rules = BezPath::new();
    for share in [-1.0, -0.5, 0.5, 1.0] {
        let x = ledger.centre + share * ledger.reach;
        add_segment(&mut rules, Point::new(x, ledger.top), Point::new(x, bottom));
    }
    shapes.push(Shape::line(rules, Pen::solid(Role::Rule, ledger.line(1.0))));
    let over_net = ledger.y(PARTS) - 0.68 * ledger.row;
    shapes.push(Shape::line(
        segment(
            Point::new(ledger.names, over_net),
            Point::new(ledger.centre + ledger.reach, over_net),
        ),
        Pen::solid(Role::FaintInk, ledger.line(1.3)),
    ));
    shapes.push(Shape::line(
        segment(
            Point::new(ledger.centre, ledger.top),
            Point::new(ledger.centre, bottom),
        ),
        Pen::solid(Role::Ink, ledger.line(2.0)),
    ));
    let named = words.parts.iter().chain([&words.net]);
    for (row, name) in named.enumerate() {
        // The names of those that do nothing step back.
        let (weight, role) = match parts.get(row) {
            None => (700, Role::Ink),
            Some(part) if part.abs() * ledger.reach < SLIGHT_LENGTH * ledger.scale => {
                (400, Role::FaintInk)
            }
            Some(_) => (600, Role::Ink),
        };
        shapes.push(label(
            (*name).to_owned(),
            Point::new(ledger.names, ledger.y(row)),
            Anchor::Start,
            ledger.text,
            weight,
            role.solid(),
        ));
    }
    let arrow = 0.5 * ledger.text;
    for (side, words) in [(-1.0, words.anticlockwise), (1.0, words.clockwise)] {
        let x = ledger.centre + side * ledger.reach;
        let y = if ledger.two_lines && side > 0.0 {
            1.5 * ledger.row
        } else {
            0.6 * ledger.row
        };
        shapes.push(Shape::flat(
            polygon(&[
                Point::new(x, y),
                Point::new(x - side * 1.2 * arrow, y - 0.8 * arrow),
                Point::new(x - side * 1.2 * arrow, y + 0.8 * arrow),
            ]),
            Role::FaintInk.solid(),
        ));
        shapes.push(label(
            words.to_owned(),
            Point::new(x - side * 2.0 * arrow, y),
            if side < 0.0 {
                Anchor::Start
            } else {
                Anchor::End
            },
            ledger.side_text,
            500,
            Role::FaintInk.solid(),
        ));
    }
}

/// Bars shorter than this in the picture are not drawn.
const SLIGHT_LENGTH: f64 = 1.5;

/// One bar, pointed at its end; cut across where it goes on beyond the scale.
fn bar(shapes: &mut Vec<Shape>, ledger: &Ledger, row: usize, [from, to]: [f64; 2]) {
    let (x0, x1) = (ledger.x(from), ledger.x(to));
    let y = ledger.y(row);
    let net = row == PARTS;
    let half = if net { 0.36 } else { 0.27 } * ledger.row;
    let length = (x1 - x0).abs();
    let pen = Pen::solid(Role::Ink, ledger.line(1.4));
    if length < SLIGHT_LENGTH {
        // Nothing to speak of. A net of nothing is a ring: all in balance.
        if net {
            let place = Affine::translate((x1, y)) * Affine::scale(0.5 * half);
            let ring = ellipse(place);
            shapes.push(Shape::flat(ring.clone(), Role::Paper.solid()));
            shapes.push(Shape::line(ring, Pen::solid(Role::Ink, ledger.line(2.4))));
        }
        return;
    }
    let way = if x1 > x0 { 1.0 } else { -1.0 };
    let head = (0.9 * half).min(length);
    let neck = x1 - way * head;
    let path = polygon(&[
        Point::new(x0, y - half),
        Point::new(neck, y - half),
        Point::new(x1, y),
        Point::new(neck, y + half),
        Point::new(x0, y + half),
    ]);
    if way > 0.0 {
        let tone = Role::Ink.at(if net { 1.0 } else { 0.72 });
        shapes.push(Shape::flat(path.clone(), tone));
    } else {
        let area = Rect::new(x0.min(x1), y - half, x0.max(x1), y + half);
        let lines = hatch(area, ledger.line(if net { 4.5 } else { 6.0 }), 1.0);
        let pen = Pen::solid(Role::Ink, ledger.line(if net { 2.2 } else { 1.4 }));
        shapes.push(Shape::flat(path.clone(), Role::Paper.solid()));
        shapes.push(Shape::clipped(path.clone(), vec![Shape::line(lines, pen)]));
    }
    shapes.push(Shape::line(path, pen));
    if to.abs() > ledger.scale {
        let slant = 0.5 * half;
        let x = x1 - way * 1.9 * half;
        let mut cut = BezPath::new();
        for x in [x, x + 0.45 * half] {
            add_segment(
                &mut cut,
                Point::new(x - slant, y + 1.25 * half),
                Point::new(x + slant, y - 1.25 * half),
            );
        }
        shapes.push(Shape::line(cut, Pen::solid(Role::Paper, ledger.line(3.0))));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TORQUES: Torques = Torques {
        horizontal_field: -0.31,
        vertical_field: 0.62,
        iron: 0.0,
        balance_weight: 0.0,
        liquid_drag: -0.12,
        friction: 0.001,
    };

    #[test]
    fn the_last_run_ends_on_the_net() {
        let runs = runs(&TORQUES);
        assert!((runs[PARTS - 1][1] - TORQUES.net()).abs() < 1e-12);
        for pair in runs.windows(2) {
            assert_eq!(pair[0][1], pair[1][0]);
        }
    }

    #[test]
    fn a_scale_only_grows_and_then_holds_every_bar() {
        let first = steady_scale(&TORQUES, SMALLEST_SCALE);
        assert_eq!(first, 1.0);
        let small = Torques {
            vertical_field: 0.01,
            ..TORQUES
        };
        assert_eq!(steady_scale(&small, first), first, "never shrinks");
        let large = Torques {
            vertical_field: 7.0,
            ..TORQUES
        };
        assert!((steady_scale(&large, first) - 10.0).abs() < 1e-9);
        let endless = Torques {
            vertical_field: f64::INFINITY,
            ..TORQUES
        };
        assert_eq!(steady_scale(&endless, first), first);
    }
}

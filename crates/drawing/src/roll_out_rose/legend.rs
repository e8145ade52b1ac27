//! What each line of the rose is, and what inside and outside mean.

use super::scale::zero_pen;
use super::{PlaceView, RollOutRoseView, STRENGTHS, Style, Words};
use crate::lettering::label;
use crate::outline::segment;
use crate::round::Round;
use crate::shape::{Anchor, Shape};
use crate::sheet::width;
use crate::theme::Role;
use kurbo::Point;

/// The width of the legend for letters of size 1.
pub(super) fn widest_words(view: &RollOutRoseView, places: &[PlaceView]) -> f64 {
    let Words {
        left,
        right,
        inside,
        on,
        outside,
    } = view.words;
    let turns = (places.iter()).flat_map(|place| [left, right].map(|turn| entry(place.name, turn)));
    (turns.chain([inside, on, outside].map(str::to_owned)))
        .fold(0.0, |most: f64, words| most.max(width(&words, 1.0, 400)))
        + SAMPLE
}

/// The length of a sample of a line and the gap after it, in letters' sizes.
const SAMPLE: f64 = 4.2;

fn entry(name: &str, turn: &str) -> String {
    match name {
        "" => turn.to_owned(),
        name => format!("{name}, {turn}"),
    }
}

/// What each line is, and what inside and outside mean.
pub(super) fn legend(
    shapes: &mut Vec<Shape>,
    view: &RollOutRoseView,
    places: &[PlaceView],
    rose: &Round,
    corner: Point,
    type_size: f64,
) {
    let mut y = corner.y + 0.8 * type_size;
    let ink = Role::Ink.solid();
    let length = (SAMPLE - 1.0) * type_size;
    for (place, strength) in places.iter().zip(STRENGTHS) {
        for (style, turn) in [
            (Style::Right, view.words.right),
            (Style::Left, view.words.left),
        ] {
            let from = Point::new(corner.x, y);
            let width = rose.line(strength);
            shapes.push(Shape::line(
                segment(from, from + (length, 0.0)),
                style.pen(width),
            ));
            let half = rose.line(2.2 + 0.8 * strength);
            let thin = rose.line(0.6 + 0.5 * strength);
            style.mark(shapes, from + (length / 2.0, 0.0), half, thin);
            let at = Point::new(corner.x + SAMPLE * type_size, y);
            let words = entry(place.name, turn);
            shapes.push(label(words, at, Anchor::Start, type_size, 400, ink));
            y += 1.6 * type_size;
        }
    }
    let Words {
        inside,
        on,
        outside,
        ..
    } = view.words;
    for (words, dotted) in [(outside, false), (on, true), (inside, false)] {
        if words.is_empty() {
            continue;
        }
        let from = Point::new(corner.x, y);
        if dotted {
            let dots = zero_pen(rose);
            shapes.push(Shape::line(segment(from, from + (length, 0.0)), dots));
        } else {
            let sign = if words == inside { "−" } else { "+" };
            let middle = from + (length / 2.0, 0.0);
            shapes.push(label(sign, middle, Anchor::Middle, type_size, 700, ink));
        }
        let at = Point::new(corner.x + SAMPLE * type_size, y);
        shapes.push(label(
            words.to_owned(),
            at,
            Anchor::Start,
            type_size,
            400,
            ink,
        ));
        y += 1.6 * type_size;
    }
}

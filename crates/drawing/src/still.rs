//! A whole frame: the readings, the card, what is seen from above, and words, for videos, stills
//! and the command line.
//!
//! A frame is composed once, 1920 by 1080, and scaled to the size that is asked for: the same
//! picture on a slide and in a film four times as fine. Figures are a ninth of its height, so that
//! the back row reads them.

mod lettered;

use crate::card_face::{CardFaceView, card_face};
use crate::figures::Figures;
use crate::heading_dial::{DialView, heading_dial};
use crate::layout::fits;
use crate::outline::segment;
use crate::rose::{RoseView, rose};
use crate::shape::{Group, Pen, Shape};
use crate::strip_chart::{StripChartView, strip_chart};
use crate::theme::Role;
use crate::torque_ledger::{LedgerView, torque_ledger};
use compass::heading_indicator::GyroHeading;
use kurbo::{Affine, Point, Rect, Size};

/// The size that a frame is composed in; the unit of all lengths below.
pub const COMPOSED: Size = Size::new(1920.0, 1080.0);

/// What a frame shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StillView<'a> {
    /// The card, and what is covered of it and of the heading.
    pub card: CardFaceView<'a>,
    /// What stands beside the card.
    pub beside: Beside,
    /// The torques, under what stands beside the card.
    pub ledger: Option<LedgerView<'a>>,
    /// The flight against time, under the card.
    pub strip: Option<StripChartView<'a>>,
    /// Whether room is kept for captions: the same through a whole film, or the card would jump.
    pub captioned: bool,
    /// Words to place.
    pub words: Words<'a>,
}

/// What stands beside the card.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Beside {
    /// The rose.
    Rose,
    /// The heading indicator, and what it shows.
    Dial(GyroHeading),
}

/// Words to place, already in the reader's language; those left empty are left out. Those too long
/// for their place are set smaller.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// What the film or the still is called.
    pub title: &'a str,
    /// The part of it.
    pub chapter: &'a str,
    /// Where this is, as in “45° N, dip 63°”.
    pub place: &'a str,
    /// The name of the heading's figure.
    pub heading: &'a str,
    /// The name of the compass's figure.
    pub compass: &'a str,
    /// How the compass differs, as in “lags by 23°”; shown where both are.
    pub difference: &'a str,
    /// Further figures, each with its name, as in “bank” and “17° right”.
    pub figures: &'a [(&'a str, &'a str)],
    /// What is said at this moment.
    pub caption: &'a str,
    /// What the picture is not for.
    pub caution: &'a str,
}

/// What a frame shows, in whole numbers: what its sentence is made from.
pub fn describe(view: &StillView) -> Figures {
    crate::card_face::describe(&view.card)
}

/// Distance of everything from the edge.
const MARGIN: f64 = 48.0;
/// From the left edge of the card's column to its right edge.
const CARD: [f64; 2] = [MARGIN, 1356.0];
/// The same for what stands beside it.
const SIDE: [f64; 2] = [1404.0, 1920.0 - MARGIN];
/// Where the head ends and where the readings end.
const HEAD: f64 = 116.0;
const READINGS: f64 = 304.0;
/// Height of the foot that holds the caution, and of the room for captions above it.
const FOOT: f64 = 56.0;
const CAPTION: f64 = 136.0;
/// Height of the strips; they are drawn as for half the size, so that their words are read.
const STRIPS: f64 = 320.0;
const STRIPS_SCALE: f64 = 2.0;
/// Height of one further figure, alone and over the torques.
const FIGURE: [f64; 2] = [92.0, 60.0];

/// Draws a frame as large as the size allows, in its middle; nothing under 8 or over 100,000 either
/// way.
pub fn still(view: &StillView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let scale = (size.width / COMPOSED.width).min(size.height / COMPOSED.height);
    let rest = (size - COMPOSED * scale) * 0.5;
    vec![Shape::Group(Group {
        transform: Affine::translate((rest.width, rest.height)) * Affine::scale(scale),
        clip: None,
        opacity: 1.0,
        shapes: composed(view),
    })]
}

fn composed(view: &StillView) -> Vec<Shape> {
    let mut shapes = Vec::with_capacity(48);
    let words = &view.words;
    lettered::head(&mut shapes, words, head());
    let readings = Rect::new(CARD[0], HEAD, CARD[1], READINGS);
    lettered::readings(&mut shapes, view, readings);

    let foot = COMPOSED.height - FOOT;
    let bottom = if view.captioned { foot - CAPTION } else { foot };
    let under = if view.strip.is_some() { STRIPS } else { 0.0 };
    let card = Rect::new(CARD[0], READINGS, CARD[1], bottom - under);
    place(&mut shapes, card, 1.0, |size| card_face(&view.card, size));
    if let Some(strip) = &view.strip {
        let area = Rect::new(CARD[0], bottom - under, CARD[1], bottom);
        place(&mut shapes, area, STRIPS_SCALE, |size| {
            strip_chart(strip, size)
        });
    }
    side(&mut shapes, view, Rect::new(SIDE[0], HEAD, SIDE[1], bottom));

    if view.captioned {
        let area = Rect::new(MARGIN, bottom, COMPOSED.width - MARGIN, foot);
        let rule = segment(Point::new(area.x0, area.y0), Point::new(area.x1, area.y0));
        shapes.push(Shape::line(rule, Pen::solid(Role::Rule, 2.0)));
        lettered::caption(&mut shapes, words.caption, area);
    }
    let area = Rect::new(MARGIN, foot, COMPOSED.width - MARGIN, COMPOSED.height);
    lettered::caution(&mut shapes, words.caution, area);
    shapes
}

fn head() -> Rect {
    Rect::new(MARGIN, 0.0, COMPOSED.width - MARGIN, HEAD)
}

/// What stands beside the card: from above, then the torques, then further figures.
fn side(shapes: &mut Vec<Shape>, view: &StillView, area: Rect) {
    let row = FIGURE[usize::from(view.ledger.is_some())];
    let figures = row * view.words.figures.len() as f64;
    let room = (area.height() - figures).max(0.0);
    let torques = if view.ledger.is_some() {
        0.52 * room
    } else {
        0.0
    };
    let over = Rect::new(area.x0, area.y0, area.x1, area.y0 + room - torques);
    place(shapes, over, 1.0, |size| from_above(view, size));
    if let Some(ledger) = &view.ledger {
        let area = Rect::new(area.x0, over.y1, area.x1, over.y1 + torques);
        place(shapes, area, 1.0, |size| torque_ledger(ledger, size));
    }
    let below = Rect::new(area.x0, area.y1 - figures, area.x1, area.y1);
    lettered::figures(shapes, view.words.figures, below);
}

fn from_above(view: &StillView, size: Size) -> Vec<Shape> {
    let card = &view.card;
    match view.beside {
        Beside::Rose => {
            let view = RoseView {
                heading: card.heading,
                reading: card.reading,
                show_heading: card.show_reference,
                show_compass: card.show_compass,
            };
            rose(&view, size)
        }
        Beside::Dial(indication) => {
            let view = DialView {
                indication,
                heading: card.show_reference.then_some(card.heading),
                compass: card.show_compass.then_some(card.reading),
            };
            heading_dial(&view, size)
        }
    }
}

/// Puts a picture into an area, drawn as for an area so many times smaller.
fn place(shapes: &mut Vec<Shape>, area: Rect, scale: f64, draw: impl FnOnce(Size) -> Vec<Shape>) {
    let shapes_of_it = draw(area.size() / scale);
    shapes.push(Shape::Group(Group {
        transform: Affine::translate(area.origin().to_vec2()) * Affine::scale(scale),
        clip: None,
        opacity: 1.0,
        shapes: shapes_of_it,
    }));
}

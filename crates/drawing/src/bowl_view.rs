//! The bowl, cut away, in three dimensions: why the card turns.
//!
//! Bowl, liquid, pivot, card and magnet stand as the simulation has them, within a hint of the
//! airframe, together with the Earth's field, the two verticals and the sideways pulls that turn
//! the card. Every part can be left out ([`Parts`]), so that an idea can be built up step by
//! step. The side of the bowl that is turned to the camera is cut away, whatever the camera.
//!
//! The card's letters stand on its top, each in the direction that it names; the numerals that
//! a pilot reads are printed on the opposite side of the drum and belong to the card face.
//!
//! # Lengths
//! The field's arrow is 1.2 radii of the bowl long at 50 µT, and never longer or shorter than
//! can be seen; its horizontal and vertical parts are to the same scale, and so are the pulls at
//! the north mark: they are those two parts as far as they lie along the card's own east and
//! west. Only these can turn the card.

mod airframe;
mod arrows;
mod card;
mod shell;
#[cfg(test)]
mod tests;

use crate::figures::{Figures, Side};
use crate::labels::Labels;
use crate::shape::Shape;
use crate::stage3d::Stage;
pub use crate::stage3d::{Camera, Mount};
use compass::field::MagneticField;
use compass::maths;
use compass::simulation::Moment;
use compass::unit::NANOTESLA;
use glam::{DQuat, DVec3};
use kurbo::Size;

/// What is shown; each part can be switched off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parts {
    /// The bowl, its near half cut away.
    pub bowl: bool,
    /// The liquid, level with the apparent vertical.
    pub liquid: bool,
    /// The pin that the card stands on.
    pub pivot: bool,
    /// The card with its letters, and its north.
    pub card: bool,
    /// The magnet on the card.
    pub magnet: bool,
    /// The Earth's field as one arrow.
    pub field: bool,
    /// The field's horizontal and vertical parts.
    pub components: bool,
    /// At the north mark, how much of either part lies across the magnet and turns the card.
    pub pulls: bool,
    /// The apparent vertical beside the true one.
    pub verticals: bool,
    /// The airframe, the horizon, and the bank between them.
    pub bank: bool,
}

impl Parts {
    /// Everything.
    pub const ALL: Self = Self {
        bowl: true,
        liquid: true,
        pivot: true,
        card: true,
        magnet: true,
        field: true,
        components: true,
        pulls: true,
        verticals: true,
        bank: true,
    };
    /// Nothing: to switch on one by one.
    pub const NONE: Self = Self {
        bowl: false,
        liquid: false,
        pivot: false,
        card: false,
        magnet: false,
        field: false,
        components: false,
        pulls: false,
        verticals: false,
        bank: false,
    };
}

impl Default for Parts {
    fn default() -> Self {
        Self::ALL
    }
}

/// Words to place, already in the reader's language; one that is left out is not placed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words<'a> {
    /// The card's letters: north, east, south, west.
    pub cardinals: [&'a str; 4],
    /// At the tip of the field's arrow, as in “F”.
    pub total: Option<&'a str>,
    /// At its horizontal part, as in “H”.
    pub horizontal: Option<&'a str>,
    /// At its vertical part, as in “Z”.
    pub vertical: Option<&'a str>,
    /// At the angle between the arrow and its horizontal part, as in “dip 65°”.
    pub dip: Option<&'a str>,
    /// At the sideways pull of the vertical part, as in “Z pulls”.
    pub vertical_pull: Option<&'a str>,
    /// At the sideways pull of the horizontal part, as in “H pulls back”.
    pub horizontal_pull: Option<&'a str>,
    /// At the true vertical.
    pub true_vertical: Option<&'a str>,
    /// At the apparent vertical.
    pub apparent_vertical: Option<&'a str>,
    /// At the angle between the wings and the horizon, as in “bank 17° right”.
    pub bank: Option<&'a str>,
}

impl Default for Words<'_> {
    /// The letters that stand for the same in the trade everywhere, and no words.
    fn default() -> Self {
        Self {
            cardinals: ["N", "E", "S", "W"],
            total: Some("F"),
            horizontal: Some("H"),
            vertical: Some("Z"),
            dip: None,
            vertical_pull: None,
            horizontal_pull: None,
            true_vertical: None,
            apparent_vertical: None,
            bank: None,
        }
    }
}

/// What the picture shows.
#[derive(Clone, Copy, Debug)]
pub struct BowlView<'a> {
    /// The instant shown.
    pub moment: &'a Moment,
    /// The Earth's field.
    pub field: &'a MagneticField,
    /// Where it is seen from.
    pub camera: Camera,
    /// What is shown.
    pub parts: Parts,
    /// Words to place.
    pub words: Words<'a>,
}

/// What the picture shows, in whole numbers, for its text equivalent; nothing that it hides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Description {
    /// Heading (with the airframe), reading, tilt and stop (with the card).
    pub figures: Figures,
    /// The bank in whole degrees and its side, with the airframe.
    pub bank: Option<(u16, Side)>,
    /// The angle between the apparent vertical and the true one, in whole degrees.
    pub apparent_vertical: Option<u16>,
    /// Horizontal and vertical intensity in nanotesla, vertical down positive, with the parts.
    pub components: Option<(u32, i32)>,
    /// Total intensity in nanotesla and dip in whole degrees, down positive, with the arrow.
    pub field: Option<(u32, i16)>,
    /// To which side of the card's own north the vertical part pulls the north mark, with the
    /// pulls: right is clockwise from above. In the middle: too weak to be seen.
    pub vertical_pull: Option<Side>,
    /// The same of the horizontal part.
    pub horizontal_pull: Option<Side>,
}

/// The scene in level axes (see [`crate::stage3d`]).
pub(crate) struct Scene {
    pub(crate) stage: Stage,
    /// From body axes.
    pub(crate) airframe: DQuat,
    pub(crate) bank: f64,
    /// The card's own axes: its north, its east, and down.
    pub(crate) card: [DVec3; 3],
    /// Apparent gravity's direction, if it has one.
    pub(crate) felt_down: Option<DVec3>,
    /// The field's horizontal and vertical part, as drawn.
    pub(crate) horizontal: DVec3,
    pub(crate) vertical: DVec3,
}

/// Length of the field's arrow per tesla, and its least and greatest length.
const LENGTH_PER_TESLA: f64 = 1.2 / 50e-6;
const LENGTHS: [f64; 2] = [0.35, 1.4];
/// Pulls shorter than this are not drawn, in radii of the bowl.
const SLIGHT_PULL: f64 = 0.012;
/// Angles smaller than this are not drawn, in radians: half a degree.
const SLIGHT_ANGLE: f64 = 0.5 * std::f64::consts::PI / 180.0;

/// The quaternion at unit length, or none.
fn proper(given: DQuat) -> DQuat {
    let length = given.length();
    if length > 1e-9 && length.is_finite() {
        given * (1.0 / length)
    } else {
        DQuat::IDENTITY
    }
}

impl Scene {
    fn new(view: &BowlView, size: Size) -> Option<Self> {
        let motion = &view.moment.motion;
        let heading = motion.heading.radians();
        let (s, c) = maths::sin_cos(-heading / 2.0);
        let to_level = DQuat::from_xyzw(0.0, 0.0, s, c);
        let airframe = proper(to_level * proper(motion.attitude.quaternion));
        let card = proper(airframe * proper(view.moment.reading.card.quaternion));
        let total = view.field.total();
        let length = (total * LENGTH_PER_TESLA).clamp(LENGTHS[0], LENGTHS[1]);
        let scale = if total > 0.0 { length / total } else { 0.0 };
        let (north_y, north_x) = maths::sin_cos(-heading);
        Some(Self {
            stage: Stage::new(&view.camera, airframe, size)?,
            airframe,
            bank: if motion.bank.is_finite() {
                motion.bank
            } else {
                0.0
            },
            card: [card * DVec3::X, card * DVec3::Y, card * DVec3::Z],
            felt_down: view
                .moment
                .apparent_gravity
                .xyz
                .try_normalize()
                .map(|felt| airframe * felt),
            horizontal: DVec3::new(north_x, north_y, 0.0) * (view.field.horizontal() * scale),
            vertical: DVec3::Z * (view.field.vertical() * scale),
        })
    }

    /// How much of the horizontal and of the vertical part lies along the card's own east: what
    /// turns the card, clockwise positive.
    pub(crate) fn pulls(&self) -> [f64; 2] {
        [
            self.horizontal.dot(self.card[1]),
            self.vertical.dot(self.card[1]),
        ]
    }

    /// The card's top or its underside, whichever is seen: the outward normal.
    pub(crate) fn seen_face(&self) -> DVec3 {
        let up = -self.card[2];
        if self.stage.faces(up * card::HALF_HEIGHT, up) {
            up
        } else {
            -up
        }
    }
}

/// What the picture shows, in whole numbers.
pub fn describe(view: &BowlView) -> Description {
    let parts = view.parts;
    let moment = view.moment;
    let scene = Scene::new(view, Size::new(100.0, 100.0));
    let mut figures = Figures::of(
        parts.bank.then_some(moment.motion.heading),
        parts.card.then_some(moment.reading.compass),
    );
    if parts.card {
        figures.tilt = Some(moment.reading.tilt.to_degrees().round() as u16);
        figures.at_stop = moment.reading.at_stop;
    }
    let nanotesla = |tesla: f64| (tesla / NANOTESLA).round();
    let side = |value: f64, slight: f64| match value {
        value if value > slight => Side::Right,
        value if value < -slight => Side::Left,
        _ => Side::Middle,
    };
    let degrees = moment.motion.bank.to_degrees().round();
    let pulls = scene.as_ref().filter(|_| parts.pulls).map(Scene::pulls);
    let [horizontal, vertical] = [0, 1].map(|i| pulls.map(|pulls| side(pulls[i], SLIGHT_PULL)));
    Description {
        figures,
        bank: parts
            .bank
            .then(|| (degrees.abs() as u16, side(degrees, 0.0))),
        apparent_vertical: scene
            .and_then(|scene| scene.felt_down)
            .filter(|_| parts.verticals)
            .map(|felt| {
                let angle = maths::atan2(felt.cross(DVec3::Z).length(), felt.z);
                angle.to_degrees().round() as u16
            }),
        components: parts.components.then(|| {
            (
                nanotesla(view.field.horizontal()) as u32,
                nanotesla(view.field.vertical()) as i32,
            )
        }),
        field: parts.field.then(|| {
            (
                nanotesla(view.field.total()) as u32,
                view.field.dip().to_degrees().round() as i16,
            )
        }),
        vertical_pull: vertical,
        horizontal_pull: horizontal,
    }
}

/// Draws the bowl; nothing if the size is too small (under 8 either way) or not finite.
pub fn bowl_view(view: &BowlView, size: Size) -> Vec<Shape> {
    let Some(scene) = Scene::new(view, size) else {
        return Vec::new();
    };
    let (parts, words) = (view.parts, &view.words);
    let mut shapes = Vec::with_capacity(128);
    let mut labels = Labels::default();

    // What is solid, from the far side to the near side. Where the order depends on the camera,
    // it changes only as the parts concerned are seen edge-on or apart from each other.
    if parts.bank {
        airframe::beyond(&mut shapes, &scene);
    }
    if parts.bowl {
        shell::bowl(&mut shapes, &scene);
    }
    if parts.liquid {
        shell::liquid(&mut shapes, &scene, parts.bowl);
    }
    let above = scene.seen_face().dot(scene.card[2]) < 0.0;
    if parts.pivot && above {
        card::pin(&mut shapes, &scene);
    }
    if parts.card || parts.magnet {
        arrows::under(&mut shapes, &scene, parts);
    }
    if parts.card {
        card::card(&mut shapes, &scene, view.moment.reading.at_stop, words);
    }
    if parts.magnet {
        card::magnet(&mut shapes, &scene);
    }
    if parts.pivot {
        if above {
            card::cap(&mut shapes, &scene);
        } else {
            card::pin(&mut shapes, &scene);
        }
    }
    if parts.liquid {
        shell::surface(&mut shapes, &scene);
    }

    // What is meant: over all that is solid, so that nothing hides it.
    if parts.bank {
        airframe::near(&mut shapes, &mut labels, &scene, words);
    }
    if parts.verticals {
        arrows::verticals(&mut shapes, &mut labels, &scene, words);
    }
    arrows::field(&mut shapes, &mut labels, &scene, parts, words);
    if parts.pulls {
        arrows::pulls(&mut shapes, &mut labels, &scene, words);
    }
    if parts.card {
        card::north(&mut shapes, &scene);
    }
    labels.place(&mut shapes, size);
    shapes
}

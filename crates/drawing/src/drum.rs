//! The drum: the card's side, projected as it lies.

use crate::layout::Layout;
use crate::lettering::{NUMERALS, mark_half_width};
use crate::outline::{add_arc, add_polygon, ellipse};
use crate::shape::{Anchor, CAP_HEIGHT, Pen, Shape, Text};
use crate::theme::Role;
use compass::maths;
use glam::{DQuat, DVec3};
use kurbo::{Affine, BezPath, Point, Vec2};
use std::f64::consts::PI;

/// The drum as it lies in the picture.
pub(crate) struct Drum {
    /// The card's axes in body axes.
    pub(crate) x: DVec3,
    pub(crate) y: DVec3,
    pub(crate) z: DVec3,
    /// Where the pivot is seen.
    pivot: Point,
    radius: f64,
    /// Half the height of the side.
    pub(crate) half: f64,
}

impl Drum {
    pub(crate) fn new(attitude: DQuat, layout: &Layout) -> Self {
        Self {
            x: attitude * DVec3::X,
            y: attitude * DVec3::Y,
            z: attitude * DVec3::Z,
            pivot: layout.pivot,
            radius: layout.radius,
            half: layout.drum / 2.0,
        }
    }

    pub(crate) fn seen(&self, p: DVec3) -> Point {
        self.pivot + (p.y, p.z)
    }

    /// The outward direction of the mark of `reading` radians, in body axes.
    pub(crate) fn outward(&self, reading: f64) -> DVec3 {
        let (s, c) = maths::sin_cos(reading);
        -(self.x * c + self.y * s)
    }

    /// How squarely the surface there faces the pilot: the cosine, below zero on the far side.
    pub(crate) fn facing(&self, reading: f64) -> f64 {
        -self.outward(reading).x
    }

    /// Where a point of the side is seen: at the mark of `reading` radians, `down` along the
    /// card's axis from the drum's middle.
    pub(crate) fn side(&self, reading: f64, down: f64) -> Point {
        self.seen(self.outward(reading) * self.radius + self.z * down)
    }

    /// From a plane that touches the side at the mark of `reading` (x to the right as printed,
    /// y down, origin at the drum's middle height) to the picture.
    pub(crate) fn tangent(&self, reading: f64) -> Affine {
        let (s, c) = maths::sin_cos(reading);
        let right = self.y * c - self.x * s;
        let at = self.side(reading, 0.0);
        Affine::new([right.y, right.z, self.z.y, self.z.z, at.x, at.y])
    }

    /// Unit directions across the axis: to where the side turns away from the pilot, and to
    /// where it is nearest.
    pub(crate) fn limb_and_near(&self) -> (DVec3, DVec3) {
        let across = self.z.cross(DVec3::X);
        let length = across.length();
        // A card seen along its own axis has no side; any direction will do.
        let limb = if length > 1e-9 {
            across * (1.0 / length)
        } else {
            self.y
        };
        let near = limb.cross(self.z);
        (limb, if near.x <= 0.0 { near } else { -near })
    }

    /// From the unit circle (x to the limb, y to the near side) to the rim `down` from the
    /// middle.
    pub(crate) fn rim(&self, down: f64) -> Affine {
        let (limb, near) = self.limb_and_near();
        let (limb, near) = (limb * self.radius, near * self.radius);
        let centre = self.seen(self.z * down);
        Affine::new([limb.y, limb.z, near.y, near.z, centre.x, centre.y])
    }

    /// The near half of a rim.
    pub(crate) fn near_rim(&self, down: f64) -> BezPath {
        let mut path = BezPath::new();
        add_arc(&mut path, self.rim(down), 0.0, PI);
        path
    }

    /// A band of the near side between two heights.
    pub(crate) fn band(&self, from: f64, to: f64) -> BezPath {
        let mut path = self.near_rim(from);
        add_arc(&mut path, self.rim(to), PI, 0.0);
        path.close_path();
        path
    }
}

/// The drum's body: its shadow, the end that shows when it tilts, and its side.
pub(crate) fn side(inside: &mut Vec<Shape>, drum: &Drum, layout: &Layout) {
    let (limb, near) = drum.limb_and_near();
    let across = Vec2::new(limb.y, limb.z) * drum.radius;
    let along = Vec2::new(drum.z.y, drum.z.z);

    // Its shadow falls into the liquid below, softer with depth: layers laid over each other.
    let lower = if along.y >= 0.0 {
        drum.half
    } else {
        -drum.half
    };
    for layer in 1..=16_u8 {
        let depth = f64::from(layer) / 16.0;
        let fall = Affine::translate((0.0, 0.15 * layout.window.height() * depth * depth));
        let mut shadow = drum.near_rim(lower);
        add_arc(&mut shadow, fall * drum.rim(lower), PI, 0.0);
        shadow.close_path();
        inside.push(Shape::flat(shadow, Role::Shadow.at(0.02)));
    }

    // The end that faces the pilot, if the card tilts fore or aft.
    let (height, role) = if drum.z.x > 0.0 {
        (-drum.half, Role::CardTop)
    } else {
        (drum.half, Role::CardUnder)
    };
    let rim = drum.rim(height);
    inside.push(Shape::flat(ellipse(rim), role.solid()));
    let shrink = |share: f64| Affine::scale(share);
    let wall = Pen::solid(Role::CardShade, layout.line(1.5));
    inside.push(Shape::line(ellipse(rim * shrink(0.955)), wall.faded(0.55)));
    if role == Role::CardTop {
        inside.push(Shape::flat(
            ellipse(rim * shrink(0.3)),
            Role::CardShade.at(0.25),
        ));
        inside.push(Shape::flat(
            ellipse(rim * shrink(0.07)),
            Role::CardShade.at(0.8),
        ));
    } else {
        // Under the card it grows darker toward the side that hides the light.
        let deep = drum.seen(drum.z * drum.half + near * drum.radius);
        let open = drum.seen(drum.z * drum.half - near * drum.radius);
        inside.push(Shape::shaded(
            ellipse(rim),
            Role::Shadow,
            deep,
            open,
            &[(0.0, 0.36), (0.5, 0.12), (1.0, 0.0)],
        ));
    }

    // The side: its own colour, then shade toward the limbs, then light from above.
    let (top, foot) = (-drum.half, drum.half);
    let whole = drum.band(top, foot);
    inside.push(Shape::flat(whole.clone(), Role::Card.solid()));
    inside.push(Shape::shaded(
        whole.clone(),
        Role::CardShade,
        drum.pivot - across,
        drum.pivot + across,
        &[
            (0.0, 1.0),
            (0.05, 0.78),
            (0.13, 0.42),
            (0.24, 0.17),
            (0.37, 0.04),
            (0.5, 0.0),
            (0.63, 0.04),
            (0.76, 0.17),
            (0.87, 0.42),
            (0.95, 0.78),
            (1.0, 1.0),
        ],
    ));
    let face = near * drum.radius;
    let upper = drum.seen(drum.z * top + face);
    let under = drum.seen(drum.z * foot + face);
    inside.push(Shape::shaded(
        whole,
        Role::Shadow,
        upper,
        under,
        &[(0.0, 0.0), (0.5, 0.0), (1.0, 0.13)],
    ));
    // A turned-over edge that catches the light above, and one that loses it below.
    let lip = 0.028 * layout.drum;
    inside.push(Shape::flat(drum.band(top, top + lip), Role::Glass.at(0.9)));
    inside.push(Shape::flat(
        drum.band(top + lip, top + 1.5 * lip),
        Role::CardShade.at(0.45),
    ));
    inside.push(Shape::flat(
        drum.band(foot - lip, foot),
        Role::CardShade.at(0.6),
    ));
}

/// Marks and numerals on the drum's side.
pub(crate) fn marks(inside: &mut Vec<Shape>, drum: &Drum, layout: &Layout) {
    let height = layout.drum;
    let foot = drum.half - 0.055 * height;
    let mut path = BezPath::new();
    for step in 0..72_u32 {
        let reading = f64::from(5 * step).to_radians();
        if drum.facing(reading) <= 0.02 {
            continue;
        }
        let long = step % 2 == 0;
        let tall = if long { 0.23 } else { 0.13 } * height;
        let wide = mark_half_width(layout, long) / drum.radius;
        add_polygon(
            &mut path,
            &[
                drum.side(reading - wide, foot - tall),
                drum.side(reading + wide, foot - tall),
                drum.side(reading + wide, foot),
                drum.side(reading - wide, foot),
            ],
        );
    }
    inside.push(Shape::flat(path, Role::CardInk.solid()));

    let size = 0.66 * height;
    // The base line lies so that figures have equal space above and below, over the marks.
    let base = -0.5 * height + 0.105 * height + CAP_HEIGHT * size;
    for (numeral, step) in NUMERALS.into_iter().zip(0_u32..) {
        let reading = f64::from(30 * step).to_radians();
        // Paint fades where the surface turns away.
        let alpha = ((drum.facing(reading) - 0.1) / 0.2).clamp(0.0, 1.0);
        if alpha > 0.0 {
            inside.push(Shape::Text(Text {
                content: numeral.into(),
                place: drum.tangent(reading) * Affine::translate((0.0, base)),
                anchor: Anchor::Middle,
                size,
                weight: 700,
                tone: Role::CardInk.at(alpha),
            }));
        }
    }
}

//! The rose's scale: from degrees to distances from the middle.

use super::PlaceView;
use crate::lettering::{label, text_width};
use crate::outline::{ellipse, rounded};
use crate::round::Round;
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::heading::MagneticHeading;
use kurbo::{Affine, Rect, Size};

/// The circle of no allowance, as a share of the ring's radius; chosen, so that about as much room
/// is left inside for undershoot as outside for overshoot.
const ZERO: f64 = 0.56;
/// How far the greatest value of the scale lies from that circle: it lies on the ring.
const REACH: f64 = 1.0 - ZERO;
/// The scales: the greatest value and the step of its circles, degrees; chosen for round steps.
const SCALES: [(f64, f64); 6] = [
    (10.0, 5.0),
    (20.0, 10.0),
    (40.0, 20.0),
    (60.0, 20.0),
    (90.0, 30.0),
    (180.0, 60.0),
];

pub(super) struct Scale {
    /// The greatest value, degrees.
    most: f64,
    /// From circle to circle, degrees.
    step: f64,
}

impl Scale {
    /// The least scale that holds all allowances.
    pub(super) fn of(places: &[PlaceView]) -> Self {
        let greatest = (places.iter().flat_map(|place| place.allowances))
            .flat_map(|it| [it.left, it.right])
            .filter(|it| it.is_finite())
            .fold(0.0, |most: f64, it| most.max(it.abs()))
            .to_degrees();
        let holds = SCALES.into_iter().find(|(most, _)| greatest <= *most);
        let (most, step) = holds.unwrap_or(SCALES[SCALES.len() - 1]);
        Self { most, step }
    }

    /// Where an allowance (rad) lies, as a share of the ring's radius; never outside the ring.
    pub(super) fn share(&self, allowance: f64) -> f64 {
        let share = ZERO + REACH * allowance.to_degrees() / self.most;
        share.clamp(ZERO - REACH, 1.0)
    }

    /// The values of its circles in degrees, but for the greatest, which is the ring.
    fn values(&self) -> impl Iterator<Item = f64> {
        let steps = (self.most / self.step).round() as i32;
        let step = self.step;
        (-steps..steps).map(move |index| f64::from(index) * step)
    }

    /// Its circles, hairlines, and the one of no allowance, dotted and strong.
    pub(super) fn circles(&self, shapes: &mut Vec<Shape>, rose: &Round) {
        for value in self.values() {
            let share = self.share(value.to_radians());
            let circle = ellipse(rose.along(0.0) * Affine::scale(share));
            let pen = if value == 0.0 {
                zero_pen(rose)
            } else {
                Pen::solid(Role::Rule, rose.line(0.8))
            };
            shapes.push(Shape::line(circle, pen));
        }
    }

    /// Its figures, those for overshoot in one direction and those for undershoot in another, each
    /// where the lines of the places leave most room.
    pub(super) fn figures(
        &self,
        shapes: &mut Vec<Shape>,
        rose: &Round,
        places: &[PlaceView],
        type_size: f64,
    ) {
        let (under, over): (Vec<f64>, Vec<f64>) = self.values().partition(|value| *value < 0.0);
        for values in [under, over] {
            let shares: Vec<f64> = (values.iter())
                .map(|value| self.share(value.to_radians()))
                .collect();
            let direction = self.clearest(places, &shares);
            for (value, share) in values.iter().zip(&shares) {
                let words = match value {
                    0.0 => "0".to_owned(),
                    below if *below < 0.0 => format!("−{}", -below),
                    above => format!("+{above}"),
                };
                let at = rose.at(direction, *share);
                let wide = text_width(&words, type_size) + 0.3 * type_size;
                let ground = Rect::from_center_size(at, Size::new(wide, type_size));
                let ground = rounded(ground, 0.2 * type_size);
                shapes.push(Shape::flat(ground, Role::Paper.solid()));
                let ink = Role::FaintInk.solid();
                shapes.push(label(words, at, Anchor::Middle, type_size, 400, ink));
            }
        }
    }

    /// The direction, rad, in which no line comes near any of these shares.
    fn clearest(&self, places: &[PlaceView], shares: &[f64]) -> f64 {
        let clearance = |direction: f64| {
            let near = |target: MagneticHeading| {
                let off = target.right_of(MagneticHeading::from_radians(direction));
                // Half of what lies between two directions, and a hair.
                off.abs() < 5.1_f64.to_radians()
            };
            (places.iter().flat_map(|place| place.allowances))
                .filter(|it| near(it.target))
                .flat_map(|it| [it.left, it.right])
                .flat_map(|it| {
                    shares
                        .iter()
                        .map(move |share| (self.share(it) - share).abs())
                })
                .fold(f64::INFINITY, f64::min)
        };
        let directions = (0..36).map(|step| f64::from(10 * step).to_radians());
        let ranked = directions.map(|direction| (direction, clearance(direction)));
        let first = (0.0, clearance(0.0));
        ranked
            .fold(
                first,
                |best, next| if next.1 > best.1 { next } else { best },
            )
            .0
    }
}

/// How the circle of no allowance is drawn.
pub(super) fn zero_pen(rose: &Round) -> Pen {
    let width = rose.line(2.4);
    Pen::solid(Role::Ink, width).dashed(0.01, 2.4 * width)
}

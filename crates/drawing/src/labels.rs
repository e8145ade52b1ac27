//! Labels that stay upright, inside the picture and apart from each other.

use crate::lettering::{label, text_width};
use crate::outline::rounded;
use crate::shape::{Anchor, Shape, Tone};
use crate::theme::Role;
use kurbo::{Point, Rect, Size, Vec2};

/// How a label is set.
#[derive(Clone, Copy)]
pub(crate) struct Lettering {
    size: f64,
    weight: u16,
    tone: Tone,
}

impl Lettering {
    /// In ink.
    pub(crate) fn of(size: f64, weight: u16) -> Self {
        Self {
            size,
            weight,
            tone: Role::Ink.solid(),
        }
    }

    /// In another role.
    pub(crate) fn in_role(mut self, role: Role) -> Self {
        self.tone.role = role;
        self
    }

    /// How opaque it is.
    pub(crate) fn alpha(&self) -> f64 {
        self.tone.alpha
    }

    /// Fading away as what it names is seen from end to end: as its `seen` length in the picture
    /// falls from `whole` times the label's height to half as much.
    pub(crate) fn shown(mut self, seen: f64, whole: f64) -> Self {
        let share = (2.0 * seen / (whole * self.size) - 1.0).clamp(0.0, 1.0);
        self.tone.alpha *= share;
        self
    }
}

/// One label before it has found its place.
struct Label {
    words: String,
    set: Lettering,
    /// Its middle.
    at: Point,
    half: Size,
}

/// The labels of one picture.
#[derive(Default)]
pub(crate) struct Labels {
    all: Vec<Label>,
}

/// How often labels are pushed apart.
const ROUNDS: usize = 24;

impl Labels {
    /// Asks for a label beside a point, on its side in a direction of any length.
    pub(crate) fn beside(
        &mut self,
        words: Option<&str>,
        at: Point,
        direction: Vec2,
        gap: f64,
        set: Lettering,
    ) {
        let Some(words) = words.filter(|words| !words.is_empty()) else {
            return;
        };
        if set.tone.alpha < 0.02 {
            return;
        }
        let size = set.size;
        let half = Size::new(text_width(words, size) / 2.0 + 0.2 * size, 0.58 * size);
        let length = direction.hypot2().sqrt();
        let side = if length > 1e-6 {
            direction / length
        } else {
            Vec2::new(0.0, -1.0)
        };
        // The plate's middle moves on an ellipse about the point, so that it never jumps as the
        // direction turns.
        let middle = at + Vec2::new(side.x * (half.width + gap), side.y * (half.height + gap));
        self.all.push(Label {
            words: words.to_owned(),
            set,
            at: middle,
            half,
        });
    }

    /// Finds every label its place and draws it.
    ///
    /// Labels that overlap are pushed apart up and down, the more gently the less they overlap
    /// sideways, so that none jumps as others come near; only two that pass each other change
    /// places.
    pub(crate) fn place(mut self, shapes: &mut Vec<Shape>, size: Size) {
        for _ in 0..ROUNDS {
            for i in 1..self.all.len() {
                let (before, rest) = self.all.split_at_mut(i);
                let b = &mut rest[0];
                for a in before {
                    let wide = a.half.width + b.half.width - (a.at.x - b.at.x).abs();
                    let tall = a.half.height + b.half.height - (a.at.y - b.at.y).abs();
                    if wide > 0.0 && tall > 0.0 {
                        let share = (wide / (0.6 * a.set.size)).min(1.0);
                        let push = 0.25 * tall * share;
                        let way = if b.at.y >= a.at.y { 1.0 } else { -1.0 };
                        a.at.y -= way * push;
                        b.at.y += way * push;
                    }
                }
            }
            for label in &mut self.all {
                label.at.x = within(label.at.x, label.half.width, size.width);
                label.at.y = within(label.at.y, label.half.height, size.height);
            }
        }
        for label in &self.all {
            let plate = Rect::from_center_size(label.at, label.half * 2.0);
            shapes.push(Shape::flat(
                rounded(plate, 0.35 * label.set.size),
                Role::Paper.at(0.7 * label.set.tone.alpha),
            ));
        }
        for Label { words, set, at, .. } in self.all {
            shapes.push(label(
                words,
                at,
                Anchor::Middle,
                set.size,
                set.weight,
                set.tone,
            ));
        }
    }
}

/// The middle nearest to `at` at which a label of half a length lies within a whole.
fn within(at: f64, half: f64, whole: f64) -> f64 {
    let margin = half + 2.0;
    if whole > 2.0 * margin {
        at.clamp(margin, whole - margin)
    } else {
        whole / 2.0
    }
}

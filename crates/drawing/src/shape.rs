//! What a drawing is made of: a handful of shapes, coloured by role.
//!
//! Lengths are in the picture's own units: those of the size that the drawing function was
//! given (CSS pixels on a page), x to the right and y down from the top left corner.

use crate::theme::Role;
use kurbo::{Affine, BezPath, Point};
use std::borrow::Cow;

/// One thing to paint; later shapes lie over earlier ones.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// The inside of a path (non-zero winding).
    Fill {
        /// The outline.
        path: BezPath,
        /// What fills it.
        paint: Paint,
    },
    /// A line along a path.
    Stroke {
        /// The middle of the line.
        path: BezPath,
        /// How the line looks.
        pen: Pen,
    },
    /// One line of text.
    Text(Text),
    /// Shapes that share a transform, a clip or an opacity.
    Group(Group),
}

/// What fills a path.
#[derive(Clone, Debug, PartialEq)]
pub enum Paint {
    /// One tone all over.
    Flat(Tone),
    /// Tones along the line from `from` to `to`, in the picture's units.
    Linear {
        /// Where offset 0 lies.
        from: Point,
        /// Where offset 1 lies.
        to: Point,
        /// Tones in the order of their offsets.
        stops: Vec<Stop>,
    },
}

/// A colour by what it stands for, more or less opaque.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tone {
    /// What the colour stands for.
    pub role: Role,
    /// Opacity, from 0 (nothing) to 1 (solid).
    pub alpha: f64,
}

/// A tone at a place along a gradient.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// Place along the gradient, from 0 to 1.
    pub offset: f64,
    /// The tone there.
    pub tone: Tone,
}

/// How a line looks; its ends and corners are round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Its tone.
    pub tone: Tone,
    /// Its width, not negative.
    pub width: f64,
    /// Lengths of dash and gap, both above zero; `None` for a solid line.
    pub dash: Option<[f64; 2]>,
}

/// One line of text in the theme's font.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The words or figures.
    pub content: Cow<'static, str>,
    /// From the text's own plane (the anchor at the origin, on the base line) to the picture.
    pub place: Affine,
    /// Which part of the text stands at the origin.
    pub anchor: Anchor,
    /// Size of the font (the em), above zero, in the text's own plane.
    pub size: f64,
    /// Weight of the font, from 100 to 900.
    pub weight: u16,
    /// Its tone.
    pub tone: Tone,
}

/// Which part of a line of text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// Shapes that share a transform, a clip or an opacity.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// From the group's plane to the one around it.
    pub transform: Affine,
    /// Only what lies inside this path, in the group's plane, is seen.
    pub clip: Option<BezPath>,
    /// Opacity of the whole, from 0 to 1.
    pub opacity: f64,
    /// What it holds.
    pub shapes: Vec<Shape>,
}

/// Height of a capital or a figure as a share of the font's size. Measured on Atkinson
/// Hyperlegible Next; fallback fonts differ by a few hundredths, which moves text by less than
/// the width of its strokes.
pub const CAP_HEIGHT: f64 = 0.67;

impl Role {
    /// This role, solid.
    pub const fn solid(self) -> Tone {
        self.at(1.0)
    }

    /// This role at an opacity from 0 to 1.
    pub const fn at(self, alpha: f64) -> Tone {
        Tone { role: self, alpha }
    }
}

impl Pen {
    /// A solid line of one width.
    pub const fn solid(role: Role, width: f64) -> Self {
        Self {
            tone: role.solid(),
            width,
            dash: None,
        }
    }

    /// The same line, more or less opaque (0 to 1).
    #[must_use]
    pub const fn faded(mut self, alpha: f64) -> Self {
        self.tone.alpha = alpha;
        self
    }

    /// The same line, broken into dashes of `dash` with gaps of `gap` between.
    #[must_use]
    pub const fn dashed(mut self, dash: f64, gap: f64) -> Self {
        self.dash = Some([dash, gap]);
        self
    }
}

impl Shape {
    /// A path filled with one tone.
    pub fn flat(path: BezPath, tone: Tone) -> Self {
        Self::Fill {
            path,
            paint: Paint::Flat(tone),
        }
    }

    /// A path filled with one role that fades along a line: pairs of offset and opacity.
    pub fn shaded(
        path: BezPath,
        role: Role,
        from: Point,
        to: Point,
        alphas: &[(f64, f64)],
    ) -> Self {
        let stops = alphas
            .iter()
            .map(|&(offset, alpha)| Stop {
                offset,
                tone: role.at(alpha),
            })
            .collect();
        Self::Fill {
            path,
            paint: Paint::Linear { from, to, stops },
        }
    }

    /// A line along a path.
    pub fn line(path: BezPath, pen: Pen) -> Self {
        Self::Stroke { path, pen }
    }

    /// Shapes seen only inside `clip`.
    pub fn clipped(clip: BezPath, shapes: Vec<Self>) -> Self {
        Self::Group(Group {
            transform: Affine::IDENTITY,
            clip: Some(clip),
            opacity: 1.0,
            shapes,
        })
    }
}

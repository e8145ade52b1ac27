//! Where the words on a map stand.

use super::draw::{Map, Surface};
use super::{Line, Weight, WorldMapView};
use crate::chart::placing::overlap;
use crate::lettering::{label, text_width};
use crate::shape::{Anchor, Group, Shape};
use crate::theme::Role;
use compass::maths;
use kurbo::{Affine, BezPath, Point, Rect, Size, Vec2};
use std::f64::consts::{FRAC_PI_2, PI};

impl Map {
    /// Where the lines' words stand: once or a few times on each line, upright as read, on the
    /// same few meridians where they can be, and clear of each other.
    pub(super) fn labels<'a>(
        &self,
        lines: &[Line<'a>],
        placed: &[Vec<Point>],
        mut taken: Vec<Label<'a>>,
    ) -> Vec<Label<'a>> {
        let mut named = vec![false; lines.len()];
        // Middle of the Atlantic, of the Pacific and of the Indian Ocean, as shares of the width.
        let columns: &[f64] = match self.surface {
            Surface::Flat if self.area.width() > 600.0 => &[0.415, 0.1, 0.72],
            Surface::Flat => &[0.415],
            Surface::Round(_) => &[],
        };
        let order = |weight: Weight| usize::from(weight != Weight::Strong);
        let mut by_weight: Vec<usize> = (0..lines.len()).collect();
        by_weight.sort_by_key(|&i| order(lines[i].weight));
        for &column in columns {
            let x = self.area.x0 + column * self.area.width();
            for &index in &by_weight {
                let candidates = crossings(&placed[index], x);
                named[index] |= self.settle(&mut taken, &lines[index], &placed[index], candidates);
            }
        }
        // A long line with no words yet has them as near to its middle as there is room.
        for &index in &by_weight {
            let points = &placed[index];
            let steps = points
                .windows(2)
                .map(|two| (two[1] - two[0]).hypot2().sqrt());
            let enough = 5.0 * text_width(lines[index].words, self.type_size);
            if !named[index] && steps.sum::<f64>() > enough {
                let tries = 25;
                let outward = (0..tries).map(|i: usize| {
                    let half = tries / 2;
                    let share = if i.is_multiple_of(2) {
                        half + i / 2
                    } else {
                        half - i.div_ceil(2)
                    };
                    share * (points.len() - 1) / (tries - 1)
                });
                let candidates = outward.map(|i| (i, points[i])).collect();
                self.settle(&mut taken, &lines[index], points, candidates);
            }
        }
        taken
    }

    /// Puts a line's words at the first of some places that is clear; whether there is one.
    fn settle<'a>(
        &self,
        taken: &mut Vec<Label<'a>>,
        line: &Line<'a>,
        points: &[Point],
        candidates: Vec<(usize, Point)>,
    ) -> bool {
        if line.words.is_empty() {
            return false;
        }
        let size = if line.weight == Weight::Strong {
            1.1
        } else {
            1.0
        } * self.type_size;
        let width = text_width(line.words, size);
        for (index, at) in candidates {
            let along = direction(points, index, 0.5 * width + size);
            let label = Label {
                words: line.words,
                at,
                along,
                size: Size::new(width + 0.5 * size, 1.15 * size),
                type_size: size,
                strong: line.weight == Weight::Strong,
            };
            let rect = label.bounds();
            if self.holds(rect, 0.2 * size)
                && taken.iter().all(|other| !overlap(other.bounds(), rect))
            {
                taken.push(label);
                return true;
            }
        }
        false
    }

    /// Whether a rectangle lies on the map, to within a slack.
    fn holds(&self, rect: Rect, slack: f64) -> bool {
        let room = self.area.inset(-slack);
        let inside =
            room.x0 <= rect.x0 && rect.x1 <= room.x1 && room.y0 <= rect.y0 && rect.y1 <= room.y1;
        let corners = [
            (rect.x0, rect.y0),
            (rect.x1, rect.y0),
            (rect.x1, rect.y1),
            (rect.x0, rect.y1),
        ];
        match &self.surface {
            Surface::Flat => inside,
            Surface::Round(globe) => {
                (corners.iter()).all(|&(x, y)| globe.locate(Point::new(x, y)).is_some())
            }
        }
    }

    /// The words of areas and spots, each where it asks to be if there is room.
    pub(super) fn words<'a>(&self, view: &WorldMapView<'a>) -> Vec<Label<'a>> {
        let mut taken: Vec<Label> = Vec::new();
        let in_areas = (view.areas.iter())
            .flat_map(|area| area.at.iter().map(move |&at| (at, area.words, 1.15, 0.0)));
        let at_spots = view.spots.iter().map(|&(at, words)| (at, words, 1.0, 1.3));
        for (at, words, share, below) in in_areas.chain(at_spots) {
            let Some(at) = self.point_of(at).filter(|_| !words.is_empty()) else {
                continue;
            };
            let size = share * self.type_size;
            let width = text_width(words, size) + 0.5 * size;
            // Moved in from the edge by as much as is needed.
            let half = width / 2.0;
            let x = if self.area.width() > 2.0 * half {
                at.x.clamp(self.area.x0 + half, self.area.x1 - half)
            } else {
                at.x
            };
            for side in [1.0, -1.0] {
                let label = Label {
                    words,
                    at: Point::new(x, at.y + side * below * size),
                    along: Vec2::new(1.0, 0.0),
                    size: Size::new(width, 1.15 * size),
                    type_size: size,
                    strong: true,
                };
                let rect = label.bounds();
                let clear = taken.iter().all(|other| !overlap(other.bounds(), rect));
                if self.holds(rect, 0.2 * size) && clear {
                    taken.push(label);
                    break;
                }
            }
        }
        taken
    }
}

/// Words on a line.
#[derive(Clone, Debug)]
pub(super) struct Label<'a> {
    words: &'a str,
    at: Point,
    /// The way of the line, a unit vector to the right.
    along: Vec2,
    size: Size,
    type_size: f64,
    strong: bool,
}

impl Label<'_> {
    fn turned(&self) -> Affine {
        let Vec2 { x, y } = self.along;
        Affine::new([x, y, -y, x, self.at.x, self.at.y])
    }

    fn plate(&self) -> BezPath {
        let rect = Rect::from_center_size(Point::ZERO, self.size);
        self.turned() * crate::outline::rounded(rect, 0.3 * self.type_size)
    }

    fn bounds(&self) -> Rect {
        let Vec2 { x, y } = self.along;
        let wide = self.size.width * x.abs() + self.size.height * y.abs();
        let tall = self.size.width * y.abs() + self.size.height * x.abs();
        Rect::from_center_size(self.at, (wide, tall))
    }

    pub(super) fn draw(&self, shapes: &mut Vec<Shape>) {
        shapes.push(Shape::flat(self.plate(), Role::Halo.at(0.86)));
        let words = label(
            self.words.to_owned(),
            Point::ZERO,
            Anchor::Middle,
            self.type_size,
            if self.strong { 700 } else { 500 },
            Role::Ink.solid(),
        );
        shapes.push(Shape::Group(Group {
            transform: self.turned(),
            clip: None,
            opacity: 1.0,
            shapes: vec![words],
        }));
    }
}

/// Where a line crosses an upright, with the index of the point before.
fn crossings(points: &[Point], x: f64) -> Vec<(usize, Point)> {
    let pairs = points.iter().zip(points.iter().skip(1)).enumerate();
    pairs
        .filter_map(|(index, (a, b))| {
            let share = (x - a.x) / (b.x - a.x);
            (0.0..=1.0)
                .contains(&share)
                .then(|| (index, a.lerp(*b, share)))
        })
        .collect()
}

/// The way a line takes about one of its points, seen over a length to either side; to the right.
fn direction(points: &[Point], index: usize, length: f64) -> Vec2 {
    let here = points[index];
    let far = |p: &&Point| (**p - here).hypot2() > length * length;
    let after = points[index..].iter().find(far).or(points.last());
    let before = points[..=index].iter().rev().find(far).or(points.first());
    let way = after
        .zip(before)
        .map_or(Vec2::new(1.0, 0.0), |(a, b)| *a - *b);
    let angle = maths::atan2(way.y, way.x);
    // Read from the left, or from below where it stands upright.
    let upright = if angle > FRAC_PI_2 {
        angle - PI
    } else if angle <= -FRAC_PI_2 {
        angle + PI
    } else {
        angle
    };
    let (sin, cos) = maths::sin_cos(upright);
    Vec2::new(cos, sin)
}

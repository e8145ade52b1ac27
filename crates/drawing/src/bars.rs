//! Bars side by side, each with its name at the left and its figure behind it.
//!
//! ```
//! use drawing::bars::{Bar, bars};
//!
//! let all = [Bar { name: "Mon", value: 6.0, figure: "6 min" }];
//! assert!(!bars(&all, kurbo::Size::new(300.0, 40.0)).is_empty());
//! ```

use crate::chart::{fits, type_size};
use crate::lettering::label;
use crate::outline::segment;
use crate::shape::{Anchor, Pen, Shape};
use crate::sheet::width;
use crate::theme::Role;
use kurbo::{Point, Rect, Shape as _, Size};

/// One bar.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bar<'a> {
    /// What it stands for.
    pub name: &'a str,
    /// Its length, in any unit that all share; what is negative or not finite has none.
    pub value: f64,
    /// Its value in words.
    pub figure: &'a str,
}

/// Draws the bars from top to bottom, the longest as long as there is room; nothing under 8 or
/// over 100,000 either way.
pub fn bars(all: &[Bar], size: Size) -> Vec<Shape> {
    if !fits(size) || all.is_empty() {
        return Vec::new();
    }
    let row = size.height / all.len() as f64;
    let letters = type_size(size, Size::new(360.0, 22.0 * all.len() as f64)).min(0.7 * row);
    let widest = |words: fn(&Bar) -> f64| letters * all.iter().map(words).fold(0.0, f64::max);
    let names = widest(|bar| width(bar.name, 1.0, 400));
    let figures = widest(|bar| width(bar.figure, 1.0, 600));
    let left = names + 0.8 * letters;
    let room = (size.width - left - figures - 1.2 * letters).max(1.0);
    let value = |bar: &Bar| Some(bar.value).filter(|it| it.is_finite() && *it > 0.0);
    let most = all.iter().filter_map(value).fold(0.0, f64::max);
    let ink = Role::Ink.solid();
    let mut shapes = Vec::with_capacity(3 * all.len() + 1);
    for (index, bar) in all.iter().enumerate() {
        let middle = row * (index as f64 + 0.5);
        let at = Point::new(left - 0.6 * letters, middle);
        let name = bar.name.to_owned();
        shapes.push(label(name, at, Anchor::End, letters, 400, ink));
        let long = value(bar).map_or(0.0, |it| room * it / most);
        if long > 0.0 {
            let half = 0.32 * row;
            let rect = Rect::new(left, middle - half, left + long, middle + half);
            shapes.push(Shape::flat(rect.to_path(0.1), Role::FaintInk.solid()));
        }
        let at = Point::new(left + long + 0.5 * letters, middle);
        let figure = bar.figure.to_owned();
        shapes.push(label(figure, at, Anchor::Start, letters, 600, ink));
    }
    let ends = [0.0, size.height].map(|y| Point::new(left, y));
    let pen = Pen::solid(Role::Ink, letters / 13.0);
    shapes.push(Shape::line(segment(ends[0], ends[1]), pen));
    shapes
}

//! Where the parts of the card face stand, for any size.

use compass::maths;
use kurbo::{Point, Rect, Size};

/// How far to each side of the lubber line the window shows of the drum, in radians (62°): a
/// lag of 40° still has its numeral well inside.
pub const VISIBLE: f64 = 62.0 * std::f64::consts::PI / 180.0;

/// Whether a picture of this size can show anything: from 8 to 100,000 either way, more than
/// any screen or sheet.
pub(crate) fn fits(size: Size) -> bool {
    let shown = 8.0..=100_000.0;
    shown.contains(&size.width) && shown.contains(&size.height)
}

/// Where the parts of the card face stand.
///
/// From top to bottom: the window with the drum, the gap scale, the heading ruler. All three
/// share the lubber line and one projection: a mark that lies an angle `a` to the right of the
/// lubber line stands [`Layout::offset`]`(a)` to the right of it. That all three are always
/// given their place keeps the drum still when a part is hidden.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// The whole picture.
    pub size: Size,
    /// x of the lubber line.
    pub middle: f64,
    /// Radius of the drum.
    pub radius: f64,
    /// Height of the drum's side.
    pub drum: f64,
    /// The card's pivot: the middle of the drum when it is level.
    pub pivot: Point,
    /// The window.
    pub window: Rect,
    /// The gap scale.
    pub gap: Rect,
    /// The heading ruler.
    pub ruler: Rect,
}

impl Layout {
    /// The layout for a size; `None` if it is under 8 or over 100,000 either way.
    pub fn for_size(size: Size) -> Option<Self> {
        if !fits(size) {
            return None;
        }
        let reach = maths::sin(VISIBLE);
        let middle = size.width / 2.0;
        let margin = 0.018 * size.width.min(size.height);
        let widest = middle - margin;
        // Window, gap and ruler share the height as 1 : 0.25 : 0.27. In a tall picture the
        // window is no taller than the drum's radius; in a wide one the radius is no more than
        // 1.7 windows, or a card that tilts fore or aft would leave the window.
        let tallest = (size.height - 2.0 * margin) / 1.52;
        let height = tallest.min(widest / reach);
        let half = widest.min(1.7 * height * reach);
        let radius = half / reach;
        let top = (size.height - 1.52 * height) / 2.0;
        let window = Rect::new(middle - half, top, middle + half, top + height);
        let gap = Rect::new(window.x0, window.y1, window.x1, window.y1 + 0.25 * height);
        let ruler = Rect::new(gap.x0, gap.y1, gap.x1, gap.y1 + 0.27 * height);
        Some(Self {
            size,
            middle,
            radius,
            drum: (0.56 * height).min(0.38 * radius),
            pivot: Point::new(middle, top + 0.54 * height),
            window,
            gap,
            ruler,
        })
    }

    /// How far to the right of the lubber line a mark stands that lies `angle` radians to the
    /// right of it on the near side of the level drum, and on both scales.
    pub fn offset(&self, angle: f64) -> f64 {
        self.radius * maths::sin(angle)
    }

    /// The unit that line widths and small type are made from: 1 in a window 300 high.
    pub(crate) fn unit(&self) -> f64 {
        self.window.height() / 300.0
    }

    /// A line width for a window 300 high, never thinner than a hair that is still seen.
    pub(crate) fn line(&self, width: f64) -> f64 {
        // Small pictures are seen from near by: their lines shrink less than the rest.
        let unit = self.unit();
        width * (0.4 + 0.6 * unit).min(unit.max(0.02) * 2.0)
    }
}

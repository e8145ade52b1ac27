//! A page for print: a title, then headings, paragraphs, tables and pictures one below another,
//! and a caution at the foot.
//!
//! A page is a picture in points. All of it is in ink on paper, so that a copier loses nothing.
//! What does not fit at the usual size is set a little smaller; what does not fit then goes on on
//! a further page, so that nothing is lost.
//!
//! ```
//! use drawing::sheet::{Block, Paper, SheetView, pages};
//!
//! let view = SheetView {
//!     title: "Roll-outs",
//!     under: "30° N",
//!     blocks: &[Block::Paragraph("Begin to roll out when the compass reads:")],
//!     caution: "For training, not for navigation.",
//! };
//! assert_eq!(pages(&view, Paper::A4).len(), 1);
//! ```

mod breaking;
mod measure;
mod page;
mod table;

pub use measure::width;
pub use page::pages;

use crate::shape::Shape;
use kurbo::Size;

/// A size of paper, upright.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 mm by 297 mm (ISO 216).
    A4,
    /// 8½ in by 11 in (ANSI A).
    Letter,
}

impl Paper {
    /// Its size in points of 1/72 in.
    pub fn size(self) -> Size {
        match self {
            Self::A4 => Size::new(210.0, 297.0) * (72.0 / 25.4),
            Self::Letter => Size::new(8.5, 11.0) * 72.0,
        }
    }
}

/// What a sheet shows.
#[derive(Clone, Copy)]
pub struct SheetView<'a> {
    /// Its title.
    pub title: &'a str,
    /// A line below the title: for where and for what it was computed.
    pub under: &'a str,
    /// What stands on it, from top to bottom.
    pub blocks: &'a [Block<'a>],
    /// What stands in a box at the foot of each page.
    pub caution: &'a str,
}

/// One part of a sheet.
#[derive(Clone, Copy)]
pub enum Block<'a> {
    /// A heading; it stays with what follows.
    Heading(&'a str),
    /// Words, broken into lines.
    Paragraph(&'a str),
    /// Paragraphs with a point before each.
    Points(&'a [String]),
    /// A table.
    Table(TableView<'a>),
    /// A picture.
    Picture(Figure<'a>),
}

/// A table. Cells are broken into lines; rows are parted by hairlines.
#[derive(Clone, Copy, Debug, Default)]
pub struct TableView<'a> {
    /// Words over several columns, and how many each stands over, from the left; groups are parted
    /// by a hairline; may be empty.
    pub groups: &'a [(String, usize)],
    /// Its columns.
    pub columns: &'a [Column],
    /// Its cells, row by row; what a row has beyond the columns is not drawn.
    pub rows: &'a [Vec<String>],
    /// The least height of a row in points, for what is to be written in by hand.
    pub least_row: f64,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands over it.
    pub title: String,
    /// Its share of the width, in proportion to the other columns' shares.
    pub share: f64,
    /// Whether its cells stand in the middle, as figures do, and not at the left, as words do.
    pub centred: bool,
}

/// A picture on a sheet, as high as the page has room for.
#[derive(Clone, Copy)]
pub struct Figure<'a> {
    /// Draws it for a size.
    pub draw: &'a dyn Fn(Size) -> Vec<Shape>,
    /// Its least height in points.
    pub least: f64,
    /// Its greatest height in points.
    pub most: f64,
}

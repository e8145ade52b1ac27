//! Blocks into pages.

use super::breaking::lines;
use super::{Block, Paper, SheetView, table};
use crate::outline::{ellipse, rounded, segment};
use crate::shape::{Anchor, CAP_HEIGHT, Group, Pen, Shape, Text};
use crate::theme::Role;
use kurbo::{Affine, BezPath, Point, Rect, Size};

/// The margin on all sides: 15 mm, which every office printer can print up to; points.
const MARGIN: f64 = 42.5;
/// Sizes of letters, points.
const TITLE: f64 = 20.0;
const UNDER: f64 = 10.0;
const HEADING: f64 = 12.5;
const BODY: f64 = 10.0;
const CAUTION: f64 = 8.4;
/// From one line to the next, in sizes of letters.
pub(super) const LEADING: f64 = 1.32;
/// How small the letters of a sheet may get to fit its page, as a share of the usual; below this
/// a caution on a printed page is hard to read. Chosen.
const SMALLEST: f64 = 0.84;
/// How large they may get on a sheet of words alone. Chosen.
const LARGEST: f64 = 1.16;
/// What pictures of a size need, in the space after them.
const AFTER: f64 = 9.0;

/// What is never parted: a line, a row, a picture.
pub(super) struct Piece {
    /// Its height, points.
    pub(super) height: f64,
    /// What it shows, from its own top left corner.
    pub(super) shapes: Vec<Shape>,
    /// Whether the piece after it has to stand on the same page.
    pub(super) keep: bool,
}

impl Piece {
    pub(super) fn space(height: f64) -> Self {
        Self {
            height,
            shapes: Vec::new(),
            keep: false,
        }
    }
}

/// The pages of a sheet, in points; mostly one. Each is to be drawn at the paper's own size.
pub fn pages(view: &SheetView, paper: Paper) -> Vec<Vec<Shape>> {
    let frame = Frame::of(view, paper);
    let room = frame.bottom - frame.top;
    let pictured = (view.blocks.iter()).any(|block| matches!(block, Block::Picture(_)));
    let largest = if pictured { 1.0 } else { LARGEST };
    let scales = (0..).map(|step| largest - 0.02 * f64::from(step));
    let fitting = scales
        .take_while(|scale| *scale >= SMALLEST)
        .find(|scale| height(&frame.pieces(view, *scale, 0.0)) <= room);
    let scale = fitting.unwrap_or(1.0);
    // What room is left goes to the pictures.
    let spare = (room - height(&frame.pieces(view, scale, 0.0))).max(0.0);
    let share = if fitting.is_some() { spare } else { 0.0 };

    let mut pages = vec![frame.furniture(view, true)];
    let mut y = frame.top;
    let mut pieces = frame.pieces(view, scale, share).into_iter().peekable();
    while let Some(piece) = pieces.next() {
        let with_next = match pieces.peek() {
            Some(next) if piece.keep => piece.height + next.height,
            _ => piece.height,
        };
        // Rounding of sums must not make a page.
        let full = y + with_next > frame.bottom + 1e-6;
        let begun = y > frame.top;
        if full && begun {
            pages.push(frame.furniture(view, false));
            y = frame.top;
        }
        if let Some(page) = pages.last_mut().filter(|_| !piece.shapes.is_empty()) {
            page.push(Shape::Group(Group {
                transform: Affine::translate((MARGIN, y)),
                clip: None,
                opacity: 1.0,
                shapes: piece.shapes,
            }));
        }
        y += piece.height;
    }
    pages
}

fn height(pieces: &[Piece]) -> f64 {
    pieces.iter().map(|piece| piece.height).sum()
}

/// What stands on every page, and the room between.
struct Frame {
    size: Size,
    top: f64,
    bottom: f64,
    title: Vec<String>,
    under: Vec<String>,
    caution: Vec<String>,
}

impl Frame {
    fn of(view: &SheetView, paper: Paper) -> Self {
        let size = paper.size();
        let width = size.width - 2.0 * MARGIN;
        let title = lines(view.title, width, TITLE, 700);
        let under = lines(view.under, width, UNDER, 400);
        let caution = lines(view.caution, width - 16.0, CAUTION, 400);
        let head = TITLE * 1.15 * title.len() as f64 + UNDER * LEADING * under.len() as f64;
        let foot = CAUTION * LEADING * caution.len() as f64 + 11.0;
        Self {
            size,
            top: MARGIN + head + 16.0,
            bottom: size.height - MARGIN - foot - 8.0,
            title,
            under,
            caution,
        }
    }

    fn width(&self) -> f64 {
        self.size.width - 2.0 * MARGIN
    }

    /// Title, rule and caution.
    fn furniture(&self, view: &SheetView, first: bool) -> Vec<Shape> {
        let mut shapes = Vec::new();
        let mut y = MARGIN;
        for words in &self.title {
            // A further page says whose it is.
            let words = if first {
                words.clone()
            } else {
                format!("{words} (…)")
            };
            shapes.push(line(
                &words,
                Point::new(MARGIN, y + TITLE * 0.8),
                TITLE,
                700,
            ));
            y += 1.15 * TITLE;
        }
        for words in &self.under {
            shapes.push(line(words, Point::new(MARGIN, y + UNDER), UNDER, 400));
            y += UNDER * LEADING;
        }
        let rule = segment(
            Point::new(MARGIN, y + 6.0),
            Point::new(self.size.width - MARGIN, y + 6.0),
        );
        shapes.push(Shape::line(rule, Pen::solid(Role::Ink, 1.4)));
        if view.caution.is_empty() {
            return shapes;
        }
        let foot = Rect::new(
            MARGIN,
            self.bottom + 8.0,
            self.size.width - MARGIN,
            self.size.height - MARGIN,
        );
        shapes.push(Shape::line(rounded(foot, 4.0), Pen::solid(Role::Ink, 0.8)));
        for (index, words) in self.caution.iter().enumerate() {
            let base = foot.y0 + 5.0 + CAUTION + CAUTION * LEADING * index as f64;
            shapes.push(line(words, Point::new(MARGIN + 8.0, base), CAUTION, 400));
        }
        shapes
    }

    /// Everything between head and foot; `spare` points are shared among the pictures.
    fn pieces(&self, view: &SheetView, scale: f64, spare: f64) -> Vec<Piece> {
        let stretches = |block: &Block| match block {
            Block::Picture(figure) => (figure.most - figure.least).max(0.0),
            _ => 0.0,
        };
        let stretch: f64 = view.blocks.iter().map(stretches).sum();
        let mut pieces = Vec::new();
        for block in view.blocks {
            match block {
                Block::Heading(words) => self.heading(&mut pieces, words, scale),
                Block::Paragraph(words) => {
                    self.paragraph(&mut pieces, words, 0.0, BODY * scale);
                    pieces.push(Piece::space(0.5 * BODY * scale));
                }
                Block::Points(points) => {
                    for words in *points {
                        self.point(&mut pieces, words, scale);
                    }
                    pieces.push(Piece::space(0.35 * BODY * scale));
                }
                Block::Table(view) => table::pieces(&mut pieces, view, self.width(), scale),
                Block::Picture(figure) => {
                    let share = spare * stretches(block) / stretch.max(1.0);
                    let height = (figure.least + share).min(figure.most.max(figure.least));
                    pieces.push(Piece {
                        height,
                        shapes: (figure.draw)(Size::new(self.width(), height)),
                        keep: false,
                    });
                    pieces.push(Piece::space(AFTER * scale));
                }
            }
        }
        pieces
    }

    fn heading(&self, pieces: &mut Vec<Piece>, words: &str, scale: f64) {
        let size = HEADING * scale;
        if !pieces.is_empty() {
            pieces.push(Piece::space(0.45 * size));
        }
        for words in lines(words, self.width(), size, 700) {
            pieces.push(Piece {
                height: 1.42 * size,
                shapes: vec![line(&words, Point::new(0.0, size), size, 700)],
                keep: true,
            });
        }
    }

    fn paragraph(&self, pieces: &mut Vec<Piece>, words: &str, indent: f64, size: f64) {
        for words in lines(words, self.width() - indent, size, 400) {
            pieces.push(Piece {
                height: LEADING * size,
                shapes: vec![line(&words, Point::new(indent, size), size, 400)],
                keep: false,
            });
        }
    }

    fn point(&self, pieces: &mut Vec<Piece>, words: &str, scale: f64) {
        let size = BODY * scale;
        let before = pieces.len();
        self.paragraph(pieces, words, 1.2 * size, size);
        if let Some(first) = pieces.get_mut(before) {
            let place = Affine::new([0.16 * size, 0.0, 0.0, 0.16 * size, 0.4 * size, 0.67 * size]);
            first
                .shapes
                .push(Shape::flat(ellipse(place), Role::Ink.solid()));
        }
        pieces.push(Piece::space(0.2 * size));
    }
}

/// A line of words from the left end of its base line.
pub(super) fn line(words: &str, base: Point, size: f64, weight: u16) -> Shape {
    Shape::Text(Text {
        content: words.to_owned().into(),
        place: Affine::translate(base.to_vec2()),
        anchor: Anchor::Start,
        size,
        weight,
        tone: Role::Ink.solid(),
    })
}

/// The same about its middle, at the height of its capitals.
pub(super) fn centred(words: &str, middle: Point, size: f64, weight: u16) -> Shape {
    Shape::Text(Text {
        content: words.to_owned().into(),
        place: Affine::translate((middle.x, middle.y + CAP_HEIGHT * size / 2.0)),
        anchor: Anchor::Middle,
        size,
        weight,
        tone: Role::Ink.solid(),
    })
}

/// A rule across or down.
pub(super) fn rule(from: Point, to: Point, width: f64) -> Shape {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    Shape::line(path, Pen::solid(Role::Ink, width))
}

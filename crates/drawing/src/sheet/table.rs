//! Tables on a sheet.

use super::TableView;
use super::breaking::lines;
use super::page::{LEADING, Piece, centred, line, rule};
use crate::shape::Shape;
use kurbo::Point;

/// The size of its letters, points.
const SIZE: f64 = 9.4;
/// Room on both sides of a cell's words and above and below them, points.
const BESIDE: f64 = 4.0;
const ABOVE: f64 = 3.0;

/// Adds a table's rows, each a piece; its head stays with the first row.
pub(super) fn pieces(pieces: &mut Vec<Piece>, view: &TableView, width: f64, scale: f64) {
    let size = SIZE * scale;
    let total: f64 = view.columns.iter().map(|it| it.share.max(0.0)).sum();
    if total <= 0.0 {
        return;
    }
    let mut edges = vec![0.0];
    for column in view.columns {
        let last = edges.last().copied().unwrap_or(0.0);
        edges.push(last + width * column.share.max(0.0) / total);
    }
    let table = Table { view, edges, size };
    if view.groups.iter().any(|(words, _)| !words.is_empty()) {
        pieces.push(table.groups());
    }
    let titles: Vec<String> = view.columns.iter().map(|it| it.title.clone()).collect();
    if titles.iter().any(|title| !title.is_empty()) {
        let mut head = table.row(&titles, 700, 0.0);
        head.keep = true;
        let at = head.height;
        let [from, to] = [0.0, width].map(|x| Point::new(x, at));
        head.shapes.push(rule(from, to, 1.0));
        pieces.push(head);
    }
    for cells in view.rows {
        let mut row = table.row(cells, 400, view.least_row * scale);
        let at = row.height;
        let [from, to] = [0.0, width].map(|x| Point::new(x, at));
        row.shapes.push(rule(from, to, 0.35));
        pieces.push(row);
    }
    pieces.push(Piece::space(0.8 * size));
}

struct Table<'a> {
    view: &'a TableView<'a>,
    /// Where columns begin and end.
    edges: Vec<f64>,
    size: f64,
}

impl Table<'_> {
    /// The words over several columns, with a rule below each.
    fn groups(&self) -> Piece {
        let height = LEADING * self.size + ABOVE;
        let mut shapes = Vec::new();
        let mut column = 0;
        for (words, count) in self.view.groups {
            let end = (column + count).min(self.edges.len() - 1);
            let [from, to] = [self.edges[column], self.edges[end]];
            if !words.is_empty() {
                let middle = Point::new(0.5 * (from + to), height / 2.0);
                shapes.push(centred(words, middle, self.size, 700));
                let [from, to] = [from + BESIDE, to - BESIDE].map(|x| Point::new(x, height));
                shapes.push(rule(from, to, 0.6));
            }
            column = end;
        }
        Piece {
            height: height + 1.0,
            shapes,
            keep: true,
        }
    }

    /// A row, as high as its highest cell.
    fn row(&self, cells: &[String], weight: u16, least: f64) -> Piece {
        let leading = 1.22 * self.size;
        let mut shapes: Vec<Shape> = Vec::new();
        let broken: Vec<Vec<String>> = (self.edges.windows(2).zip(cells))
            .map(|(edge, words)| {
                let room = edge[1] - edge[0] - 2.0 * BESIDE;
                lines(words, room, self.size, weight)
            })
            .collect();
        let most = broken.iter().map(Vec::len).max().unwrap_or(0);
        let height = (leading * most as f64 + 2.0 * ABOVE).max(least);
        for ((edge, column), words) in self.edges.windows(2).zip(self.view.columns).zip(&broken) {
            for (index, words) in words.iter().enumerate() {
                let middle = ABOVE + leading * (0.5 + index as f64);
                if column.centred {
                    let at = Point::new(0.5 * (edge[0] + edge[1]), middle);
                    shapes.push(centred(words, at, self.size, weight));
                } else {
                    let base = Point::new(edge[0] + BESIDE, middle + 0.335 * self.size);
                    shapes.push(line(words, base, self.size, weight));
                }
            }
        }
        // A hairline parts the groups of columns.
        let mut column = 0;
        for (_, count) in self.view.groups {
            column = (column + count).min(self.edges.len() - 1);
            if column < self.edges.len() - 1 {
                let [from, to] = [0.0, height].map(|y| Point::new(self.edges[column], y));
                shapes.push(rule(from, to, 0.35));
            }
        }
        Piece {
            height,
            shapes,
            keep: false,
        }
    }
}

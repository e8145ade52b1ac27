//! The error against the heading: closed form, rule of thumb and simulated float as three lines.
//!
//! Zero is the heading's own line. In a right turn what lies below it lags and what lies above it
//! leads, in a left turn the other way round: the words for the two sides are the caller's.
//!
//! ```
//! use compass::steady::in_turn;
//! use drawing::error_chart::{ErrorChartView, Line, describe, error_chart, sampled};
//!
//! let (bank, dip) = (15_f64.to_radians(), 55_f64.to_radians());
//! let closed_form = sampled(|heading| in_turn(heading, bank, dip).error_from(heading));
//! let view = ErrorChartView {
//!     closed_form: Line { points: &closed_form, words: "closed form" },
//!     ..ErrorChartView::default()
//! };
//! assert!(!error_chart(&view, kurbo::Size::new(800.0, 320.0)).is_empty());
//! assert_eq!(describe(&view).closed_form.unwrap().least, -23);
//! ```

use crate::chart::axis::{Steps, degrees, heading, round_span};
use crate::chart::placing::{clearest, spread};
use crate::chart::series::spaced;
use crate::chart::{
    FAINT, Frame, Hatch, Mark, compass_pen, csv, fits, heading_pen, polylines, type_size,
};
use crate::lettering::{label, plate, text_width};
use crate::outline::{add_segment, rounded, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::angle::half_turn;
use compass::heading::MagneticHeading;
use kurbo::{BezPath, Point, Rect, Size};

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(800.0, 260.0);

/// An error on a heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ErrorAt {
    /// The magnetic heading.
    pub heading: MagneticHeading,
    /// Reading less heading in radians; one that is not finite is a gap.
    pub error: f64,
}

/// One of the three lines.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Line<'a> {
    /// Its points: by heading for what is computed, in order of time for what was flown.
    pub points: &'a [ErrorAt],
    /// Its name.
    pub words: &'a str,
}

/// What the chart shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ErrorChartView<'a> {
    /// Where a card would come to rest that stood square to the apparent vertical: a plain line.
    pub closed_form: Line<'a>,
    /// The rule of thumb: a dotted line.
    pub rule: Line<'a>,
    /// What the float did: the compass's dashed line.
    pub float: Line<'a>,
    /// Where the flight is now.
    pub now: Option<ErrorAt>,
    /// Where the lines are being read off.
    pub cursor: Option<MagneticHeading>,
    /// Words to place.
    pub words: Words<'a>,
}

/// Words to place in the picture, already in the reader's language; those left empty are left
/// out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// What lies above zero, as in “leads”.
    pub above: &'a str,
    /// What lies below zero, as in “lags”.
    pub below: &'a str,
    /// Whether it is a lag that lies above zero, as in a left turn: for the hatches.
    pub lag_above: bool,
    /// The letters of north, east, south and west.
    pub cardinals: [&'a str; 4],
    /// In the chart while there is nothing to show.
    pub empty: &'a str,
}

/// What a function gives on every whole degree of heading, both ends of the circle included.
pub fn sampled(error: impl Fn(MagneticHeading) -> f64) -> Vec<ErrorAt> {
    (0..=360_u16)
        .map(|degree| {
            let heading = MagneticHeading::from_degrees(f64::from(degree));
            ErrorAt {
                heading,
                error: error(heading),
            }
        })
        .collect()
}

/// A line's error on a heading, in radians, interpolated; where a line passes a heading more than
/// once, as it was the last time.
pub fn read_at(line: &Line, heading: MagneticHeading) -> Option<f64> {
    let mut pairs = line.points.windows(2).rev();
    pairs.find_map(|pair| {
        let (a, b) = (pair[0], pair[1]);
        let step = b.heading.right_of(a.heading);
        let beyond = heading.right_of(a.heading);
        // Two points that stand together have no direction; a long way apart is a gap.
        let share = if beyond == 0.0 { 0.0 } else { beyond / step };
        let on = (0.0..=1.0).contains(&share) && step.abs() < FARTHEST;
        let error = a.error + share * half_turn(b.error - a.error);
        (on && error.is_finite()).then(|| half_turn(error))
    })
}

/// The lines as comma-separated text, in degrees: one line of text for each point.
pub fn to_csv(view: &ErrorChartView) -> String {
    let mut out = String::from("line,heading_deg,error_deg\n");
    for line in lines(view) {
        let name = csv::field(line.words);
        for point in line.points.iter().filter(|point| point.error.is_finite()) {
            let heading = csv::number(csv::heading(point.heading.degrees()));
            let error = csv::number(point.error.to_degrees());
            out.push_str(&format!("{name},{heading},{error}\n"));
        }
    }
    out
}

/// The span of one line, in whole degrees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LineFigures {
    /// The least error.
    pub least: i16,
    /// The heading where it is, 1 to 360.
    pub least_at: u16,
    /// The greatest error.
    pub greatest: i16,
    /// The heading where it is, 1 to 360.
    pub greatest_at: u16,
}

/// What the chart shows, in whole numbers: what its text equivalent is made from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ErrorFigures {
    /// Of the closed form.
    pub closed_form: Option<LineFigures>,
    /// Of the rule of thumb.
    pub rule: Option<LineFigures>,
    /// Of the float.
    pub float: Option<LineFigures>,
}

/// What the chart shows.
pub fn describe(view: &ErrorChartView) -> ErrorFigures {
    let of = |line: &Line| {
        let points = || line.points.iter().filter(|point| point.error.is_finite());
        let least = points().min_by(|a, b| a.error.total_cmp(&b.error))?;
        let greatest = points().max_by(|a, b| a.error.total_cmp(&b.error))?;
        Some(LineFigures {
            least: least.error.to_degrees().round() as i16,
            least_at: least.heading.whole_degrees(),
            greatest: greatest.error.to_degrees().round() as i16,
            greatest_at: greatest.heading.whole_degrees(),
        })
    };
    ErrorFigures {
        closed_form: of(&view.closed_form),
        rule: of(&view.rule),
        float: of(&view.float),
    }
}

/// Where the chart's parts stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ErrorLayout {
    /// Heading and error, in degrees.
    pub frame: Frame,
    /// Size of figures and words.
    type_size: f64,
}

impl ErrorLayout {
    /// The layout for a size.
    pub fn new(view: &ErrorChartView, size: Size) -> Self {
        let type_size = type_size(size, NATURAL);
        let unit = type_size / 13.0;
        let errors = lines(view).into_iter().flat_map(|line| line.points.iter());
        let span = round_span(errors.map(|p| p.error.to_degrees()), 20.0, Steps::Degrees);
        // As far up as down, so that the two ways to err are seen to be alike.
        let reach = span[1].max(-span[0]).min(180.0);
        let left = text_width("−180°", type_size) + 9.0 * unit;
        let names = [view.closed_form.words, view.rule.words];
        let widest = names
            .iter()
            .map(|w| text_width(w, type_size))
            .fold(0.0, f64::max);
        // On a narrow picture the names stand within the chart.
        let right = if widest + 22.0 * unit < 0.22 * size.width {
            widest + 22.0 * unit
        } else {
            1.3 * type_size
        };
        let (x0, y0) = (left.min(0.3 * size.width), 0.7 * type_size);
        let area = Rect::new(
            x0,
            y0,
            (size.width - right).max(x0 + 1.0),
            (size.height - 1.9 * type_size).max(y0 + 1.0),
        );
        Self {
            frame: Frame::new(area, [0.0, 360.0], [-reach, reach]),
            type_size,
        }
    }

    /// The heading at a place of the picture, for pointers: none beside the chart.
    pub fn heading_at(&self, x: f64) -> Option<MagneticHeading> {
        self.frame.x.value(x).map(MagneticHeading::from_degrees)
    }

    fn unit(&self) -> f64 {
        self.type_size / 13.0
    }
}

fn lines<'a>(view: &ErrorChartView<'a>) -> [Line<'a>; 3] {
    [view.closed_form, view.rule, view.float]
}

/// Draws the chart; nothing in a picture under 8 either way.
pub fn error_chart(view: &ErrorChartView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let layout = ErrorLayout::new(view, size);
    let frame = &layout.frame;
    let unit = layout.unit();
    let mut shapes = Vec::with_capacity(48);
    scales(&mut shapes, view, &layout);

    let placed = lines(view).map(|line| placed(&line, frame));
    let [closed_form, rule, float] = &placed;
    let halo = Pen::solid(Role::Paper, 4.6 * unit).faded(0.7);
    let dots = Pen::solid(Role::FaintInk, 2.4 * unit).dashed(0.1 * unit, 4.6 * unit);
    let inside = vec![
        Shape::line(polylines(closed_form), Pen::solid(Role::Ink, 1.8 * unit)),
        Shape::line(polylines(rule), dots),
        Shape::line(polylines(float), halo),
        Shape::line(polylines(float), compass_pen(2.2 * unit)),
    ];
    shapes.push(Shape::clipped(frame.clip(2.0 * unit), inside));
    marks(&mut shapes, &placed, &layout);
    let mut taken = keys(&mut shapes, view, &placed, &layout);
    taken.extend(reading_places(view, &layout));
    names(&mut shapes, view, &placed, size, taken, &layout);
    if placed.iter().all(Vec::is_empty) && !view.words.empty.is_empty() {
        let size = 1.15 * layout.type_size;
        plate(
            &mut shapes,
            view.words.empty,
            frame.area.center(),
            size,
            Role::Paper,
        );
    }
    readings(&mut shapes, view, &layout);
    shapes
}

/// A turn by more than this between two points is a gap; chosen, far above a degree of a
/// computed line and a tenth of a second of a flight.
const FARTHEST: f64 = 0.5;

/// A line in the picture's units, cut where it passes north or the far side of the circle.
fn placed(line: &Line, frame: &Frame) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut before: Option<Point> = None;
    for point in line.points {
        if !point.error.is_finite() {
            before = None;
            continue;
        }
        let error = half_turn(point.error).to_degrees();
        let at = Point::new(point.heading.degrees(), error);
        match before {
            Some(from) if near(from, at) => {
                // The same heading, as seen from the point before.
                let turned = from.x + half_turn((at.x - from.x).to_radians()).to_degrees();
                if !(0.0..360.0).contains(&turned) {
                    let (out, back) = if turned < 0.0 {
                        (0.0, 360.0)
                    } else {
                        (360.0, 0.0)
                    };
                    let share = (out - from.x) / (turned - from.x);
                    let error = from.y + share * (at.y - from.y);
                    if let Some(run) = runs.last_mut() {
                        run.push(Point::new(out, error));
                    }
                    runs.push(vec![Point::new(back, error)]);
                }
            }
            _ => runs.push(Vec::new()),
        }
        if let Some(run) = runs.last_mut() {
            run.push(at);
        }
        before = Some(at);
    }
    runs.iter()
        .map(|run| {
            let points: Vec<Point> = run.iter().map(|&p| frame.place(p)).collect();
            spaced(&points, 0.6)
        })
        .collect()
}

/// Whether a line goes on from one point to the next.
fn near(from: Point, to: Point) -> bool {
    half_turn((to.x - from.x).to_radians()).abs() < FARTHEST && (to.y - from.y).abs() < 180.0
}

fn scales(shapes: &mut Vec<Shape>, view: &ErrorChartView, layout: &ErrorLayout) {
    use kurbo::Shape as _;
    let (unit, size) = (layout.unit(), layout.type_size);
    let frame = &layout.frame;
    let area = frame.area;
    shapes.push(Shape::flat(area.to_path(0.1), Role::Card.at(0.55)));

    let mut hairs = BezPath::new();
    for y in frame.y.ticks(Steps::Degrees, 1.5 * size) {
        let at = frame.y.place(y);
        add_segment(&mut hairs, Point::new(area.x0, at), Point::new(area.x1, at));
        let place = Point::new(area.x0 - 6.0 * unit, at);
        shapes.push(label(degrees(y, 1.0), place, Anchor::End, size, 500, FAINT));
    }
    // Figures every thirty degrees where they fit, or else at the cardinal points alone.
    let wide = text_width("000°", size) + 0.6 * size;
    let all = area.width() / 12.0 > wide;
    for step in 0..=12_u8 {
        let x = frame.x.place(30.0 * f64::from(step));
        add_segment(
            &mut hairs,
            Point::new(x, area.y0),
            Point::new(x, area.y1 + 4.0 * unit),
        );
        let cardinal = step % 3 == 0;
        let letter = view.words.cardinals[usize::from(step / 3 % 4)];
        let at = Point::new(x, area.y1 + 4.0 * unit + 0.75 * size);
        if cardinal && !letter.is_empty() {
            let tone = Role::Ink.solid();
            shapes.push(label(
                letter.to_owned(),
                at,
                Anchor::Middle,
                size,
                700,
                tone,
            ));
        } else if all || cardinal {
            let words = heading(30.0 * f64::from(step));
            shapes.push(label(words, at, Anchor::Middle, size, 500, FAINT));
        }
    }
    shapes.push(Shape::line(hairs, Pen::solid(Role::Rule, 0.9 * unit)));
    let zero = frame.y.place(0.0);
    let line = segment(Point::new(area.x0, zero), Point::new(area.x1, zero));
    shapes.push(Shape::line(line, heading_pen(1.6 * unit)));
    Mark::Heading.draw(shapes, Point::new(area.x0, zero), 4.5 * unit);
}

/// The words for the two sides, each with its hatch, where they hide least; the room they take.
fn keys(
    shapes: &mut Vec<Shape>,
    view: &ErrorChartView,
    placed: &[Vec<Vec<Point>>; 3],
    layout: &ErrorLayout,
) -> Vec<Rect> {
    use kurbo::Shape as _;
    let (unit, size) = (layout.unit(), layout.type_size);
    let area = layout.frame.area;
    let all: Vec<Point> = placed.iter().flatten().flatten().copied().collect();
    let mut taken = Vec::new();
    let (above, below) = if view.words.lag_above {
        (Hatch::Lag, Hatch::Lead)
    } else {
        (Hatch::Lead, Hatch::Lag)
    };
    for (words, hatch, edge, inward) in [
        (view.words.above, above, area.y0, 1.0),
        (view.words.below, below, area.y1, -1.0),
    ] {
        let needed = Size::new(text_width(words, size) + 3.2 * size, 1.4 * size);
        let y = edge + inward * 0.95 * size;
        let first = area.x0 + 0.5 * needed.width + 0.3 * size;
        let last = area.x1 - 0.5 * needed.width - 0.3 * size;
        let along =
            (0..=12_u8).map(|i| Point::new(first + f64::from(i) / 12.0 * (last - first), y));
        let Some(middle) = clearest(along, needed, area, &taken, &all) else {
            continue;
        };
        if words.is_empty() {
            continue;
        }
        let rect = Rect::from_center_size(middle, needed);
        let swatch = Rect::from_center_size((rect.x0 + 1.1 * size, y), (1.6 * size, 0.8 * size));
        hatch.draw(shapes, swatch.to_path(0.1), swatch, unit);
        let at = Point::new(swatch.x1 + 0.4 * size, y);
        shapes.push(label(words.to_owned(), at, Anchor::Start, size, 600, FAINT));
        taken.push(rect);
    }
    taken
}

/// What marks the lines: rings, squares and diamonds, set off from each other.
const MARKS: [Mark; 3] = [Mark::Ring, Mark::Square, Mark::Compass];

/// Marks along the lines, so that they are told apart where they cross.
fn marks(shapes: &mut Vec<Shape>, placed: &[Vec<Vec<Point>>; 3], layout: &ErrorLayout) {
    let unit = layout.unit();
    let area = layout.frame.area;
    let apart = area.width() / 4.0;
    for (index, (runs, mark)) in placed.iter().zip(MARKS).enumerate() {
        let shift = apart * (index as f64 + 0.5) / 3.0;
        for column in 0..4_u8 {
            let x = area.x0 + shift + apart * f64::from(column);
            // The latest pass counts.
            let crossing = runs.iter().rev().find_map(|run| {
                run.windows(2).rev().find_map(|two| {
                    let share = (x - two[0].x) / (two[1].x - two[0].x);
                    (0.0..=1.0)
                        .contains(&share)
                        .then(|| two[0].lerp(two[1], share))
                })
            });
            if let Some(at) = crossing {
                mark.draw(shapes, at, 4.2 * unit);
            }
        }
    }
}

/// The lines' names: in the margin at a line's end where there is room, or else beside the line
/// where it hides least.
fn names(
    shapes: &mut Vec<Shape>,
    view: &ErrorChartView,
    placed: &[Vec<Vec<Point>>; 3],
    size: Size,
    mut taken: Vec<Rect>,
    layout: &ErrorLayout,
) {
    let (unit, type_size) = (layout.unit(), layout.type_size);
    let area = layout.frame.area;
    let margin = size.width - area.x1 - 20.0 * unit;
    let all: Vec<Point> = placed.iter().flatten().flatten().copied().collect();
    let mut at_end: Vec<(&str, Point, Mark)> = Vec::new();
    let mut beside: Vec<(&str, &Vec<Vec<Point>>, Mark)> = Vec::new();
    for ((line, runs), mark) in lines(view).into_iter().zip(placed).zip(MARKS) {
        let end = runs.iter().rev().flatten().find(|p| p.x > area.x1 - 1.0);
        let fits = text_width(line.words, type_size) <= margin;
        match end {
            _ if line.words.is_empty() || runs.is_empty() => {}
            Some(&end) if fits && mark != Mark::Compass => at_end.push((line.words, end, mark)),
            _ => beside.push((line.words, runs, mark)),
        }
    }

    let wanted: Vec<f64> = at_end.iter().map(|(_, end, _)| end.y).collect();
    let middles = spread(&wanted, 1.2 * type_size, area.y0, area.y1);
    for ((words, end, _), middle) in at_end.into_iter().zip(middles) {
        let x = area.x1 + 15.0 * unit;
        let mut leader = segment(end, Point::new(area.x1 + 5.0 * unit, end.y));
        leader.line_to(Point::new(x - 3.0 * unit, middle));
        shapes.push(Shape::line(leader, Pen::solid(Role::FaintInk, 0.9 * unit)));
        let tone = Role::Ink.solid();
        let at = Point::new(x, middle);
        shapes.push(label(
            words.to_owned(),
            at,
            Anchor::Start,
            type_size,
            600,
            tone,
        ));
    }

    for (words, runs, mark) in beside {
        let needed = Size::new(
            text_width(words, type_size) + 1.9 * type_size,
            1.3 * type_size,
        );
        let off = 0.5 * needed.height + 5.0 * unit;
        let along = runs.iter().flatten();
        let aside = 0.5 * needed.width;
        let candidates = along.flat_map(|p| {
            let shifts = [0.0, aside, -aside].into_iter();
            shifts.flat_map(move |x| [*p + (x, off), *p + (x, -off)])
        });
        if let Some(middle) = clearest(candidates, needed, area, &taken, &all) {
            let rect = Rect::from_center_size(middle, needed);
            taken.push(rect);
            let ground = rounded(rect, 0.3 * type_size);
            shapes.push(Shape::flat(ground, Role::Card.at(0.8)));
            mark.draw(
                shapes,
                Point::new(rect.x0 + 0.75 * type_size, middle.y),
                4.2 * unit,
            );
            let at = Point::new(rect.x0 + 1.5 * type_size, middle.y);
            let tone = Role::Ink.solid();
            shapes.push(label(
                words.to_owned(),
                at,
                Anchor::Start,
                type_size,
                600,
                tone,
            ));
        }
    }
}

/// Where a heading and an error stand.
fn place(frame: &Frame, heading: MagneticHeading, error: f64) -> Point {
    frame.place(Point::new(heading.degrees(), half_turn(error).to_degrees()))
}

/// The places that names must leave free for what is read off.
fn reading_places(view: &ErrorChartView, layout: &ErrorLayout) -> Vec<Rect> {
    let frame = &layout.frame;
    let half = 8.0 * layout.unit();
    let mut places = Vec::new();
    if let Some(now) = view.now.filter(|now| now.error.is_finite()) {
        let at = place(frame, now.heading, now.error);
        let zero = Point::new(at.x, frame.y.place(0.0));
        places.push(Rect::from_points(zero, at).inflate(half, half));
    }
    if let Some(heading) = view.cursor {
        let x = frame.x.place(heading.degrees());
        places.push(Rect::new(x - half, frame.area.y0, x + half, frame.area.y1));
    }
    places
}

/// Where the flight is, and where the lines are read off.
fn readings(shapes: &mut Vec<Shape>, view: &ErrorChartView, layout: &ErrorLayout) {
    let unit = layout.unit();
    let frame = &layout.frame;
    if let Some(heading) = view.cursor {
        let x = frame.x.place(heading.degrees());
        let line = segment(Point::new(x, frame.area.y0), Point::new(x, frame.area.y1));
        let pen = Pen::solid(Role::Ink, 1.2 * unit).dashed(0.1 * unit, 3.0 * unit);
        shapes.push(Shape::line(line, pen));
        for (line, mark) in lines(view).iter().zip(MARKS) {
            if let Some(error) = read_at(line, heading) {
                mark.draw(shapes, place(frame, heading, error), 5.5 * unit);
            }
        }
    }
    if let Some(now) = view.now.filter(|now| now.error.is_finite()) {
        let at = place(frame, now.heading, now.error);
        let zero = Point::new(at.x, frame.y.place(0.0));
        shapes.push(Shape::line(segment(zero, at), compass_pen(2.2 * unit)));
        Mark::Heading.draw(shapes, zero, 6.5 * unit);
        Mark::Compass.draw(shapes, at, 6.5 * unit);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::maths;

    fn at(heading: f64, error: f64) -> ErrorAt {
        ErrorAt {
            heading: MagneticHeading::from_degrees(heading),
            error: error.to_radians(),
        }
    }

    fn frame() -> Frame {
        // A unit of the picture for each degree.
        Frame::new(
            Rect::new(0.0, 0.0, 360.0, 360.0),
            [0.0, 360.0],
            [-180.0, 180.0],
        )
    }

    fn line<'a>(points: &'a [ErrorAt]) -> Line<'a> {
        Line { points, words: "" }
    }

    #[test]
    fn a_line_past_north_ends_at_one_edge_and_goes_on_from_the_other() {
        let right = placed(&line(&[at(350.0, -20.0), at(10.0, -30.0)]), &frame());
        assert_eq!(right.len(), 2);
        let ends = [right[0][1], right[1][0]];
        let near = |p: Point, x: f64, y: f64| (p - Point::new(x, y)).hypot2() < 1e-9;
        assert!(
            near(ends[0], 360.0, 205.0) && near(ends[1], 0.0, 205.0),
            "{ends:?}"
        );
        let left = placed(&line(&[at(10.0, 0.0), at(350.0, 0.0)]), &frame());
        assert!(near(left[0][1], 0.0, 180.0) && near(left[1][0], 360.0, 180.0));
    }

    #[test]
    fn no_stroke_crosses_the_chart() {
        // A card that spins: the error passes 180° while the heading goes round.
        let spin: Vec<ErrorAt> = (0..900)
            .map(|i| {
                at(
                    f64::from(i) * 1.7,
                    half_turn((f64::from(i) * -2.3).to_radians()).to_degrees(),
                )
            })
            .collect();
        let runs = placed(&line(&spin), &frame());
        assert!(runs.len() > 5);
        for two in runs.iter().flat_map(|run| run.windows(2)) {
            assert!((two[1] - two[0]).hypot2() < 9.0);
        }
    }

    #[test]
    fn a_computed_line_reaches_from_edge_to_edge() {
        let closed = sampled(|heading| -0.4 * maths::cos(heading.radians()));
        let runs = placed(&line(&closed), &frame());
        let xs = || runs.iter().flatten().map(|p| p.x);
        assert_eq!(xs().fold(f64::INFINITY, f64::min), 0.0);
        assert_eq!(xs().fold(0.0, f64::max), 360.0);
    }

    #[test]
    fn reading_off_takes_the_last_pass_and_nothing_where_there_is_none() {
        let flown = [
            at(350.0, 0.0),
            at(10.0, -20.0),
            at(350.0, -30.0),
            f64_gap(),
            at(90.0, 5.0),
        ];
        let read = |heading: f64| {
            let read = read_at(&line(&flown), MagneticHeading::from_degrees(heading));
            read.map(f64::to_degrees)
        };
        assert!((read(0.0).unwrap() + 25.0).abs() < 1e-9);
        assert_eq!(read(180.0), None);
        assert_eq!(read(50.0), None, "across a gap");
        let closed = sampled(|heading| heading.radians() / 10.0);
        let read = read_at(&line(&closed), MagneticHeading::from_degrees(45.5)).unwrap();
        assert!((read - 0.45_f64 * 45.5_f64.to_radians() / 4.5).abs() < 1e-9);
        assert_eq!(
            read_at(&Line::default(), MagneticHeading::from_degrees(0.0)),
            None
        );
    }

    fn f64_gap() -> ErrorAt {
        at(20.0, f64::NAN)
    }

    #[test]
    fn figures_are_those_of_the_published_closed_form() {
        // E. Williams, Compass Errors (2001), eq. 2 with dip 55° and 15° of bank to the right:
        // the extreme is −22.58° at 027.1, and by symmetry 22.58° at 152.9.
        let (bank, dip) = (15_f64.to_radians(), 55_f64.to_radians());
        let closed = sampled(|h| compass::steady::in_turn(h, bank, dip).error_from(h));
        let view = ErrorChartView {
            closed_form: line(&closed),
            ..ErrorChartView::default()
        };
        let figures = describe(&view);
        let expected = LineFigures {
            least: -23,
            least_at: 27,
            greatest: 23,
            greatest_at: 153,
        };
        assert_eq!(figures.closed_form, Some(expected));
        assert_eq!((figures.rule, figures.float), (None, None));
    }

    #[test]
    fn text_names_the_line_of_each_point() {
        let points = [at(359.999_999_99, -1.5), at(90.0, f64::NAN)];
        let view = ErrorChartView {
            float: Line {
                points: &points,
                words: "float, simulated",
            },
            ..ErrorChartView::default()
        };
        let expected = "line,heading_deg,error_deg\n\"float, simulated\",0.000000,-1.500000\n";
        assert_eq!(to_csv(&view), expected);
    }
}

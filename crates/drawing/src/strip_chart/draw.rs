//! The strips' shapes.

use super::StripChartView;
use super::layout::{Series, StripLayout};
use crate::chart::axis::{Steps, clock, degrees, figure, heading};
use crate::chart::placing::{clearest, spread};
use crate::chart::series::{fold, runs};
use crate::chart::{FAINT, Frame, Hatch, Mark, compass_pen, drawn, heading_pen, polylines};
use crate::lettering::{label, plate, text_width};
use crate::outline::{add_segment, polygon, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::reading::Difference;
use kurbo::{BezPath, Point, Rect, Size};

/// Everything, from the ground up.
pub(super) fn draw(view: &StripChartView, layout: &StripLayout, series: &Series) -> Vec<Shape> {
    let mut shapes = Vec::with_capacity(96);
    grounds(&mut shapes, layout);
    if let Some(stretch) = view.stretch {
        set_off(&mut shapes, stretch, layout);
    }
    scales(&mut shapes, view, layout);
    if series.samples.iter().any(super::Sample::is_finite) {
        events(&mut shapes, view, layout);
        errors(&mut shapes, view, layout, series);
        headings(&mut shapes, view, layout, series);
        flying(&mut shapes, view, layout, series);
    } else {
        events(&mut shapes, view, layout);
        empty(&mut shapes, view, layout);
    }
    if let Some(stretch) = view.stretch {
        name_the_stretch(&mut shapes, view.words.stretch, stretch, layout);
    }
    if let Some(time) = view.playhead {
        playhead(&mut shapes, time, layout);
    }
    kinds(&mut shapes, view, layout, series);
    if let Some(time) = view.cursor {
        cursor(&mut shapes, view, time, layout);
    }
    shapes
}

fn frames(layout: &StripLayout) -> [&Frame; 3] {
    [&layout.heading, &layout.error, &layout.bank]
}

fn grounds(shapes: &mut Vec<Shape>, layout: &StripLayout) {
    use kurbo::Shape as _;
    for frame in frames(layout) {
        let ground = frame.area.to_path(0.1);
        shapes.push(Shape::flat(ground, Role::Card.at(0.55)));
    }
}

/// What moves: playhead and cursor.
pub(super) fn moving(view: &StripChartView, layout: &StripLayout) -> Vec<Shape> {
    let mut shapes = Vec::new();
    if let Some(time) = view.playhead {
        playhead(&mut shapes, time, layout);
    }
    if let Some(time) = view.cursor {
        cursor(&mut shapes, view, time, layout);
    }
    shapes
}

/// Where a stretch stands within the strips; none when it is out of sight or no stretch.
fn place_of([from, to]: [f64; 2], layout: &StripLayout) -> Option<Rect> {
    let [first, last] = layout.heading.x.values();
    let area = layout.heading.area;
    let place = |time: f64| layout.x_of(time).clamp(area.x0, area.x1);
    let rect = Rect::new(place(from), area.y0, place(to), layout.bank.area.y1);
    let seen = from <= to && to >= first && from <= last;
    // The places of the widest windows are no numbers.
    (seen && rect.x0 <= rect.x1).then_some(rect)
}

/// A stretch of time set off by a quiet ground between brackets; one that has no end yet by the
/// bracket at its start.
fn set_off(shapes: &mut Vec<Shape>, [from, to]: [f64; 2], layout: &StripLayout) {
    use kurbo::Shape as _;
    let Some(rect) = place_of([from, to], layout) else {
        return;
    };
    let unit = layout.unit();
    let seen = layout.heading.x.values();
    if rect.x1 > rect.x0 {
        shapes.push(Shape::flat(rect.to_path(0.1), Role::Rule.at(0.45)));
    }
    // One without length has but its start.
    let count = if to > from { 2 } else { 1 };
    let foot = 7.0 * unit;
    let brackets: Vec<Vec<Point>> = [(from, rect.x0, foot), (to, rect.x1, -foot)]
        .into_iter()
        .take(count)
        .filter(|(time, ..)| (seen[0]..=seen[1]).contains(time))
        .map(|(_, x, foot)| {
            [
                (x + foot, rect.y0),
                (x, rect.y0),
                (x, rect.y1),
                (x + foot, rect.y1),
            ]
            .map(Point::from)
            .to_vec()
        })
        .collect();
    let pen = Pen::solid(Role::Ink, 1.6 * unit);
    shapes.push(Shape::line(polylines(&brackets), pen));
}

/// What the stretch is, in the space between the upper strips, where no line runs.
fn name_the_stretch(shapes: &mut Vec<Shape>, words: &str, stretch: [f64; 2], layout: &StripLayout) {
    let Some(rect) = place_of(stretch, layout).filter(|_| !words.is_empty()) else {
        return;
    };
    let size = 0.85 * layout.type_size;
    let area = layout.heading.area;
    let half = 0.5 * text_width(words, size) + 0.6 * size;
    let x = rect
        .center()
        .x
        .clamp(area.x0 + half, (area.x1 - half).max(area.x0 + half));
    let y = 0.5 * (area.y1 + layout.error.area.y0);
    plate(shapes, words, Point::new(x, y), size, Role::Paper);
}

/// Hairlines at round values with their figures, and time along the bottom.
fn scales(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout) {
    let unit = layout.unit();
    let size = layout.type_size;
    let room = 1.1 * size;
    let mut lines = BezPath::new();
    let mut across = |frame: &Frame, y: f64| {
        let y = frame.y.place(y);
        add_segment(
            &mut lines,
            Point::new(frame.area.x0, y),
            Point::new(frame.area.x1, y),
        );
    };
    let mut figures: Vec<(String, Point)> = Vec::new();
    let mut figure_at = |frame: &Frame, y: f64, text: String| {
        figures.push((
            text,
            Point::new(frame.area.x0 - 6.0 * unit, frame.y.place(y)),
        ));
    };

    let frame = &layout.heading;
    for y in frame.y.ticks(Steps::Headings, room) {
        across(frame, y);
        figure_at(frame, y, heading(y));
    }
    let frame = &layout.error;
    if view.show_reference && view.show_compass {
        for y in frame.y.ticks(Steps::Degrees, room) {
            across(frame, y);
            figure_at(frame, y, degrees(y, 1.0));
        }
    }
    let frame = &layout.bank;
    for y in frame.y.ticks(Steps::Degrees, room) {
        across(frame, y);
        // Which side is said by the words beside it.
        figure_at(frame, y, degrees(y.abs(), 1.0));
    }

    let time = &layout.heading.x;
    let widest = text_width("00:00", size) + 2.5 * size;
    let bottom = layout.bank.area.y1;
    let [from, to] = time.values();
    let most = (layout.bank.area.width() / widest).max(1.0);
    let step = Steps::Seconds.step(to - from, most);
    let mut uprights = BezPath::new();
    for seconds in time.ticks(Steps::Seconds, widest) {
        let x = time.place(seconds);
        for frame in frames(layout) {
            add_segment(
                &mut uprights,
                Point::new(x, frame.area.y0),
                Point::new(x, frame.area.y1),
            );
        }
        add_segment(
            &mut uprights,
            Point::new(x, bottom),
            Point::new(x, bottom + 4.0 * unit),
        );
        let at = Point::new(x, bottom + 4.0 * unit + 0.75 * size);
        shapes.push(label(
            clock(seconds, step),
            at,
            Anchor::Middle,
            size,
            500,
            FAINT,
        ));
    }
    let hair = Pen::solid(Role::Rule, 0.9 * unit);
    shapes.push(Shape::line(uprights, hair.faded(0.7)));
    shapes.push(Shape::line(lines, hair));
    for (text, at) in figures {
        shapes.push(label(text, at, Anchor::End, size, 500, FAINT));
    }
}

/// Poles through all strips, with words above.
fn events(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout) {
    let (unit, size) = (layout.unit(), layout.type_size);
    let area = layout.heading.area;
    let [from, to] = layout.heading.x.values();
    let within = view.events.iter().filter(|e| (from..=to).contains(&e.time));
    let mut poles = BezPath::new();
    for (event, flag) in within.zip(&layout.flags) {
        let x = layout.x_of(event.time);
        let mut top = area.y0;
        if let Some(flag) = flag {
            let middle = area.y0 - (0.95 + 1.45 * flag.lane as f64) * size;
            top = middle - 0.55 * size;
            let at = Point::new(flag.start, middle);
            let tone = Role::Ink.solid();
            shapes.push(label(
                event.words.to_owned(),
                at,
                Anchor::Start,
                size,
                500,
                tone,
            ));
        }
        add_segment(
            &mut poles,
            Point::new(x, top),
            Point::new(x, layout.bank.area.y1),
        );
    }
    shapes.push(Shape::line(
        poles,
        Pen::solid(Role::FaintInk, unit).faded(0.75),
    ));
}

/// A folded, thinned line in the picture's units.
fn folded(points: &[Point], frame: &Frame, turn: f64, least: f64) -> Vec<Vec<Point>> {
    fold(points.iter().copied(), least, turn)
        .iter()
        .map(|run| {
            let placed: Vec<Point> = run.iter().map(|&p| frame.place(p)).collect();
            drawn(&placed)
        })
        .collect()
}

fn headings(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout, series: &Series) {
    let unit = layout.unit();
    let frame = &layout.heading;
    let [least, _] = frame.y.values();
    let line = |points: &[Point]| polylines(&folded(points, frame, 360.0, least));
    let mut inside = Vec::new();
    if view.show_reference {
        let path = line(&series.heading);
        inside.push(Shape::line(path, heading_pen(2.2 * unit)));
    }
    if view.show_compass {
        let path = line(&series.reading);
        inside.push(Shape::line(path, compass_pen(2.2 * unit)));
    }
    shapes.push(Shape::clipped(frame.clip(2.0 * unit), inside));

    let words = &view.words;
    let ends = [
        (
            view.show_reference,
            words.heading,
            &series.heading,
            Mark::Heading,
        ),
        (
            view.show_compass,
            words.compass,
            &series.reading,
            Mark::Compass,
        ),
    ];
    let mut labels = Vec::new();
    for (_, words, points, mark) in ends.into_iter().filter(|end| end.0) {
        if let Some(end) = line_end(points, frame, Some(least)) {
            labels.push((words, end, Some(mark)));
        }
    }
    end_labels(shapes, &labels, frame, layout);
}

/// Where a line ends within the window; a folded one within its turn.
fn line_end(points: &[Point], frame: &Frame, least: Option<f64>) -> Option<Point> {
    let [_, to] = frame.x.values();
    let end = points.iter().rev().find(|p| p.is_finite() && p.x <= to)?;
    let y = match least {
        Some(least) => least + (end.y - least).rem_euclid(360.0),
        None => end.y,
    };
    Some(frame.place(Point::new(end.x, y)))
}

/// Marks at the ends of lines, and words in the right margin that keep clear of each other.
fn end_labels(
    shapes: &mut Vec<Shape>,
    labels: &[(&str, Point, Option<Mark>)],
    frame: &Frame,
    layout: &StripLayout,
) {
    let (unit, size) = (layout.unit(), layout.type_size);
    let height = 1.2 * size;
    let wanted: Vec<f64> = labels.iter().map(|(_, end, _)| end.y).collect();
    let slack = (labels.len() as f64 * height - frame.area.height()).max(0.0) / 2.0 + 0.3 * size;
    let middles = spread(
        &wanted,
        height,
        frame.area.y0 - slack,
        frame.area.y1 + slack,
    );
    let beside = Point::new(frame.area.x1 + 10.0 * unit, 0.0);
    for (&(words, end, mark), middle) in labels.iter().zip(middles) {
        let at = Point::new(beside.x, middle);
        let mut start = at;
        if let Some(mark) = mark {
            // A line that ends before the margin keeps a mark of its own.
            if end.x < frame.area.x1 - 8.0 * unit {
                mark.draw(shapes, end, 5.0 * unit);
            }
            mark.draw(shapes, at, 5.0 * unit);
            start.x += 10.0 * unit;
        }
        if !words.is_empty() {
            let tone = Role::Ink.solid();
            shapes.push(label(
                words.to_owned(),
                start,
                Anchor::Start,
                size,
                600,
                tone,
            ));
        }
    }
}

/// The gap scale unrolled: zero is the heading's line, and the compass's strays from it.
fn errors(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout, series: &Series) {
    if !(view.show_reference && view.show_compass) {
        return;
    }
    let unit = layout.unit();
    let frame = &layout.error;
    let zero = frame.y.place(0.0);
    let [lag, lead] = lags_and_leads(layout, series);
    let straight = stretches(layout, series, |d| {
        matches!(d, Difference::ReadsMore(_) | Difference::ReadsLess(_))
    });

    let mut inside = Vec::new();
    let tint = under(&straight, zero);
    inside.push(Shape::flat(tint, Role::Compass.at(0.12)));
    Hatch::Lag.draw(&mut inside, under(&lag, zero), frame.area, unit);
    Hatch::Lead.draw(&mut inside, under(&lead, zero), frame.area, unit);
    let base = segment(
        Point::new(frame.area.x0, zero),
        Point::new(frame.area.x1, zero),
    );
    inside.push(Shape::line(base, heading_pen(1.6 * unit)));
    let lines: Vec<Vec<Point>> = error_runs(layout, series)
        .iter()
        .map(|run| drawn(run))
        .collect();
    inside.push(Shape::line(polylines(&lines), compass_pen(2.2 * unit)));
    shapes.push(Shape::clipped(frame.clip(2.0 * unit), inside));

    if let Some(end) = line_end(&series.error, frame, None) {
        let labels = [(view.words.error, end, Some(Mark::Compass))];
        end_labels(shapes, &labels, frame, layout);
    }
}

/// Where the compass lags, and where it leads.
fn lags_and_leads(layout: &StripLayout, series: &Series) -> [Vec<Vec<Point>>; 2] {
    [
        stretches(layout, series, |d| matches!(d, Difference::Lags(_))),
        stretches(layout, series, |d| matches!(d, Difference::Leads(_))),
    ]
}

/// The words for lag and lead, over everything that moves, so that they stand still.
fn kinds(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout, series: &Series) {
    if view.show_reference && view.show_compass {
        let mut taken = Vec::new();
        let words = [view.words.lags, view.words.leads];
        for (words, stretches) in words.into_iter().zip(lags_and_leads(layout, series)) {
            name_the_largest(shapes, words, &stretches, layout, &mut taken);
        }
    }
}

/// The error's line in the picture's units, cut where it jumps from one end of the circle to the
/// other.
fn error_runs(layout: &StripLayout, series: &Series) -> Vec<Vec<Point>> {
    let points = series.error.iter().copied();
    let placed = |p: &Point| layout.error.place(*p);
    runs(points)
        .iter()
        .flat_map(|run| run.chunk_by(|a, b| (b.y - a.y).abs() < 180.0))
        .map(|run| run.iter().map(placed).collect())
        .collect()
}

/// The error's line where the difference is of one kind, each stretch up to the first sample of
/// the next kind.
fn stretches(
    layout: &StripLayout,
    series: &Series,
    kind: fn(Difference) -> bool,
) -> Vec<Vec<Point>> {
    let of_kind: Vec<bool> = series
        .samples
        .iter()
        .map(|sample| sample.is_finite() && kind(sample.difference()))
        .collect();
    let mut found: Vec<Vec<Point>> = Vec::new();
    let mut open = false;
    let mut last: Option<Point> = None;
    for (&point, &of_kind) in series.error.iter().zip(&of_kind) {
        let whole = point.is_finite() && last.is_none_or(|l| (point.y - l.y).abs() < 180.0);
        match found.last_mut() {
            Some(stretch) if open && whole => stretch.push(layout.error.place(point)),
            _ if of_kind => found.push(vec![layout.error.place(point)]),
            _ => {}
        }
        open = of_kind;
        last = point.is_finite().then_some(point);
    }
    found.iter().map(|stretch| drawn(stretch)).collect()
}

/// The areas between lines and zero.
fn under(stretches: &[Vec<Point>], zero: f64) -> BezPath {
    // Two corners at zero, and the way back.
    let mut path = BezPath::with_capacity(stretches.iter().map(|it| it.len() + 3).sum());
    for stretch in stretches {
        if let (Some(first), Some(last)) = (stretch.first(), stretch.last()) {
            path.move_to((first.x, zero));
            for &point in stretch {
                path.line_to(point);
            }
            path.line_to((last.x, zero));
            path.close_path();
        }
    }
    path
}

/// Words on the largest of some stretches: within it, or else on the free side of zero.
fn name_the_largest(
    shapes: &mut Vec<Shape>,
    words: &str,
    stretches: &[Vec<Point>],
    layout: &StripLayout,
    taken: &mut Vec<Rect>,
) {
    let zero = layout.error.y.place(0.0);
    let area =
        |stretch: &Vec<Point>| -> f64 { sides(stretch, zero).map(|(_, _, area)| area).sum() };
    let Some(largest) = stretches.iter().max_by(|a, b| area(a).total_cmp(&area(b))) else {
        return;
    };
    let size = 0.95 * layout.type_size;
    let tall = 1.36 * size;
    let wide = text_width(words, size) + 1.2 * size;
    if words.is_empty() || area(largest) < 0.25 * tall * tall {
        return;
    }
    let Some(at) = half_way(largest, zero) else {
        return;
    };
    let room = layout.error.area;
    let x = at.x.clamp(
        room.x0 + wide / 2.0,
        (room.x1 - wide / 2.0).max(room.x0 + wide / 2.0),
    );
    let inside = (at.y - zero).abs() > 1.25 * tall;
    let y = if inside {
        (at.y + zero) / 2.0
    } else {
        zero - 0.75 * tall * (at.y - zero).signum()
    };
    let y = y.clamp(
        room.y0 + tall / 2.0,
        (room.y1 - tall / 2.0).max(room.y0 + tall / 2.0),
    );
    let rect = Rect::from_center_size((x, y), (wide, tall));
    if taken
        .iter()
        .all(|other| !crate::chart::placing::overlap(rect, *other))
    {
        plate(shapes, words, rect.center(), size, Role::Paper);
        taken.push(rect);
    }
}

/// The sides of a line, each with the area between it and zero.
fn sides(line: &[Point], zero: f64) -> impl Iterator<Item = (Point, Point, f64)> {
    line.windows(2).map(move |two| {
        let (a, b) = (two[0], two[1]);
        (a, b, (b.x - a.x) * ((a.y + b.y) / 2.0 - zero).abs())
    })
}

/// The point of a line with as much area between it and zero on the left as on the right.
fn half_way(line: &[Point], zero: f64) -> Option<Point> {
    let mut left = 0.5 * sides(line, zero).map(|(_, _, area)| area).sum::<f64>();
    sides(line, zero).find_map(|(a, b, area)| {
        left -= area;
        (left <= 0.0).then(|| a.lerp(b, if area > 0.0 { 1.0 + left / area } else { 0.0 }))
    })
}

/// Bank and airspeed.
fn flying(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout, series: &Series) {
    let unit = layout.unit();
    let line = |points: &[Point], frame: &Frame| {
        let lines: Vec<Vec<Point>> = runs(points.iter().map(|&p| frame.place(p)))
            .iter()
            .map(|run| drawn(run))
            .collect();
        polylines(&lines)
    };
    let frame = &layout.bank;
    let zero = frame.y.place(0.0);
    let level = segment(
        Point::new(frame.area.x0, zero),
        Point::new(frame.area.x1, zero),
    );
    let bank = line(&series.bank, frame);
    let airspeed = line(&series.airspeed, &layout.airspeed);
    let inside = vec![
        Shape::line(level, Pen::solid(Role::FaintInk, unit).faded(0.7)),
        Shape::line(
            airspeed,
            Pen::solid(Role::FaintInk, 1.8 * unit).dashed(0.4 * unit, 3.8 * unit),
        ),
        Shape::line(bank, Pen::solid(Role::Ink, 1.8 * unit)),
    ];
    shapes.push(Shape::clipped(frame.clip(2.0 * unit), inside));

    sides_of_bank(shapes, view, layout, series);

    let mut labels = Vec::new();
    let airspeed = line_end(&series.airspeed, &layout.airspeed, None);
    let bank = line_end(&series.bank, frame, None);
    for (words, end) in [(view.words.airspeed, airspeed), (view.words.bank, bank)] {
        labels.extend(end.map(|end| (words, end, None)));
    }
    // How fast, at the line's end: a second column of figures would be taken for bank's.
    let last = series.airspeed.iter().rev().find(|p| p.is_finite());
    let words = last.map(|p| format!("{} {}", figure(p.y.round(), 1.0), view.words.airspeed));
    if let (Some(words), Some(first)) = (&words, labels.first_mut())
        && !view.words.airspeed.is_empty()
    {
        first.0 = words;
    }
    end_labels(shapes, &labels, frame, layout);
}

/// The sides of bank, at zero where the lines leave room.
fn sides_of_bank(
    shapes: &mut Vec<Shape>,
    view: &StripChartView,
    layout: &StripLayout,
    series: &Series,
) {
    let frame = &layout.bank;
    let size = 0.85 * layout.type_size;
    let zero = frame.y.place(0.0);
    let place = |frame: &Frame, line: &[Point]| -> Vec<Point> {
        let finite = line.iter().filter(|p| p.is_finite());
        finite.map(|&p| frame.place(p)).collect()
    };
    let mut lines = place(frame, &series.bank);
    lines.extend(place(&layout.airspeed, &series.airspeed));
    for (words, edge, outward) in [
        (view.words.right, frame.area.y0, -1.0),
        (view.words.left, frame.area.y1, 1.0),
    ] {
        if words.is_empty() || (edge - zero).abs() < 1.1 * size {
            continue;
        }
        let needed = Size::new(text_width(words, size) + 0.6 * size, 1.1 * size);
        let y = zero + outward * 0.65 * size;
        let first = frame.area.x0 + 0.5 * needed.width + 2.0;
        let last = frame.area.x1 - 0.5 * needed.width - 2.0;
        let along = (0..12_u8).map(|i| Point::new(first + f64::from(i) / 11.0 * (last - first), y));
        if let Some(at) = clearest(along, needed, frame.area, &[], &lines) {
            shapes.push(label(
                words.to_owned(),
                at,
                Anchor::Middle,
                size,
                500,
                FAINT,
            ));
        }
    }
}

fn empty(shapes: &mut Vec<Shape>, view: &StripChartView, layout: &StripLayout) {
    if !view.words.empty.is_empty() {
        let area = layout.heading.area.union(layout.bank.area);
        let size = 1.15 * layout.type_size;
        plate(shapes, view.words.empty, area.center(), size, Role::Paper);
    }
}

/// The playhead: a strong line with a head on the time axis.
fn playhead(shapes: &mut Vec<Shape>, time: f64, layout: &StripLayout) {
    let unit = layout.unit();
    let area = layout.heading.area;
    let x = layout.x_of(time);
    if !(x >= area.x0 - 0.5 && x <= area.x1 + 0.5) {
        return;
    }
    let path = segment(Point::new(x, area.y0), Point::new(x, layout.bank.area.y1));
    shapes.push(Shape::line(
        path.clone(),
        Pen::solid(Role::Halo, 5.0 * unit).faded(0.8),
    ));
    shapes.push(Shape::line(path, Pen::solid(Role::Lubber, 2.0 * unit)));
    let y = layout.bank.area.y1;
    let head = polygon(&[
        Point::new(x, y - 3.0 * unit),
        Point::new(x - 5.0 * unit, y + 5.0 * unit),
        Point::new(x + 5.0 * unit, y + 5.0 * unit),
    ]);
    shapes.push(Shape::flat(head, Role::Lubber.solid()));
}

/// Where the flight is read off: a thin line, and a mark on every line it crosses.
fn cursor(shapes: &mut Vec<Shape>, view: &StripChartView, time: f64, layout: &StripLayout) {
    let unit = layout.unit();
    let area = layout.heading.area;
    let x = layout.x_of(time);
    if !(x >= area.x0 && x <= area.x1) {
        return;
    }
    let path = segment(Point::new(x, area.y0), Point::new(x, layout.bank.area.y1));
    let pen = Pen::solid(Role::Ink, 1.2 * unit).dashed(0.1 * unit, 3.0 * unit);
    shapes.push(Shape::line(path, pen));
    let Some(sample) = super::read_at(view.samples, time) else {
        return;
    };
    let [least, _] = layout.heading.y.values();
    let fold = |degrees: f64| least + (degrees - least).rem_euclid(360.0);
    let mut marks = Vec::new();
    if view.show_reference {
        marks.push((
            &layout.heading,
            fold(sample.heading.degrees()),
            Mark::Heading,
        ));
    }
    if view.show_compass {
        marks.push((
            &layout.heading,
            fold(sample.reading.degrees()),
            Mark::Compass,
        ));
    }
    if view.show_reference && view.show_compass {
        marks.push((&layout.error, sample.error().to_degrees(), Mark::Compass));
    }
    marks.push((&layout.bank, sample.bank.to_degrees(), Mark::Ring));
    let knots = sample.airspeed / compass::unit::KNOT;
    marks.push((&layout.airspeed, knots, Mark::Square));
    for (frame, y, mark) in marks {
        let at = frame.place(Point::new(time, y));
        if at.y >= frame.area.y0 - unit && at.y <= frame.area.y1 + unit {
            mark.draw(shapes, at, 5.0 * unit);
        }
    }
}

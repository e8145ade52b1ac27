//! Series of values: gaps, turns past north, thinning, values between samples.

use kurbo::Point;

/// The unbroken runs of points with an angle as y that runs on past a full turn, folded into one
/// turn from `least` on.
///
/// Where the angle passes an end of the turn the run ends there, and the next one begins at the
/// other end: no stroke crosses the chart. A point that is not finite, or that goes back in x, is
/// a gap.
pub fn fold(points: impl IntoIterator<Item = Point>, least: f64, turn: f64) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut before: Option<Point> = None;
    for point in points {
        let which = ((point.y - least) / turn).floor();
        if !(point.is_finite() && which.is_finite()) {
            before = None;
            continue;
        }
        let at = |turns: f64, p: Point| Point::new(p.x, p.y - turns * turn);
        match before.filter(|before| before.x <= point.x) {
            None => runs.push(Vec::new()),
            Some(from) => {
                let mut turns = ((from.y - least) / turn).floor();
                // A jump of many turns within one step is no line that could be followed.
                if (which - turns).abs() > 3.0 {
                    runs.push(Vec::new());
                    turns = which;
                }
                while turns != which {
                    let up = which > turns;
                    let end = least + turn * if up { turns + 1.0 } else { turns };
                    let share = (end - from.y) / (point.y - from.y);
                    let crossing = Point::new(from.x + share * (point.x - from.x), end);
                    if let Some(run) = runs.last_mut() {
                        run.push(at(turns, crossing));
                    }
                    turns += if up { 1.0 } else { -1.0 };
                    runs.push(vec![at(turns, crossing)]);
                }
            }
        }
        if let Some(run) = runs.last_mut() {
            run.push(at(which, point));
        }
        before = Some(point);
    }
    runs
}

/// The unbroken runs of points; one that is not finite, or that goes back in x, is a gap.
pub fn runs(points: impl IntoIterator<Item = Point>) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut before: Option<Point> = None;
    for point in points {
        if !point.is_finite() {
            before = None;
            continue;
        }
        match (runs.last_mut(), before) {
            (Some(run), Some(before)) if before.x <= point.x => run.push(point),
            _ => runs.push(vec![point]),
        }
        before = Some(point);
    }
    runs
}

/// The same line with no more than two points in each column one unit wide, beside the first and
/// the last point of all: those of the least and the greatest y, so that no peak is lost. Points
/// are in the picture's units, x never going back.
pub fn thin(points: &[Point]) -> Vec<Point> {
    let mut thinned: Vec<Point> = Vec::new();
    for column in points.chunk_by(|a, b| a.x.floor() == b.x.floor()) {
        let low = column
            .iter()
            .enumerate()
            .min_by(|a, b| a.1.y.total_cmp(&b.1.y));
        let high = column
            .iter()
            .enumerate()
            .max_by(|a, b| a.1.y.total_cmp(&b.1.y));
        if let Some(((low_index, low), (high_index, high))) = low.zip(high) {
            if low_index < high_index {
                thinned.extend([*low, *high]);
            } else if high_index < low_index {
                thinned.extend([*high, *low]);
            } else {
                thinned.push(*low);
            }
        }
    }
    let ends = points.first().zip(points.last());
    if let Some((first, last)) = ends {
        if thinned.first() != Some(first) {
            thinned.insert(0, *first);
        }
        if thinned.last() != Some(last) {
            thinned.push(*last);
        }
    }
    thinned
}

/// The same line without points nearer than `least` to the last one kept; its ends stay. For lines
/// that go back and forth.
pub fn spaced(points: &[Point], least: f64) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    for (index, &point) in points.iter().enumerate() {
        let far = kept
            .last()
            .is_none_or(|last| (point - *last).hypot2() >= least * least);
        if far || index + 1 == points.len() {
            kept.push(point);
        }
    }
    kept
}

/// The same line without points that lie within `tolerance` of the straight line between those
/// kept about them (Ramer 1972; Douglas and Peucker 1973); its ends stay.
pub fn straightened(points: &[Point], tolerance: f64) -> Vec<Point> {
    let Some(last) = points.len().checked_sub(1) else {
        return Vec::new();
    };
    let mut kept = vec![false; points.len()];
    (kept[0], kept[last]) = (true, true);
    let mut open = vec![(0, last)];
    while let Some((from, to)) = open.pop() {
        let (a, b) = (points[from], points[to]);
        let along = b - a;
        let length = along.hypot2();
        let off = |p: Point| {
            let share = ((p - a).dot(along) / length).clamp(0.0, 1.0);
            let foot = if length > 0.0 { a + along * share } else { a };
            (p - foot).hypot2()
        };
        let between = (from + 1..to).map(|index| (off(points[index]), index));
        let farthest = between.max_by(|a, b| a.0.total_cmp(&b.0));
        if let Some((_, index)) = farthest.filter(|(off, _)| *off > tolerance * tolerance) {
            kept[index] = true;
            open.extend([(from, index), (index, to)]);
        }
    }
    let kept = points.iter().zip(kept).filter(|(_, kept)| *kept);
    kept.map(|(point, _)| *point).collect()
}

/// Between which two of ascending values `x` lies, and how far from the one to the other (0 to
/// 1); none outside them.
pub fn between(count: usize, at: impl Fn(usize) -> f64, x: f64) -> Option<(usize, usize, f64)> {
    let last = count.checked_sub(1)?;
    // The first value at or beyond x.
    let (mut low, mut high) = (0, count);
    while low < high {
        let middle = usize::midpoint(low, high);
        if at(middle) < x {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    if low > last || x.is_nan() {
        return None;
    }
    if at(low) == x {
        return Some((low, low, 0.0));
    }
    let before = low.checked_sub(1)?;
    let share = (x - at(before)) / (at(low) - at(before));
    (0.0..=1.0).contains(&share).then_some((before, low, share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::maths;

    fn points(ys: &[f64]) -> Vec<Point> {
        let xs = (0_u32..).map(f64::from);
        xs.zip(ys).map(|(x, &y)| Point::new(x, y)).collect()
    }

    #[test]
    fn a_turn_past_north_ends_at_the_top_and_goes_on_from_the_bottom() {
        let folded = fold(points(&[340.0, 350.0, 370.0, 380.0]), 0.0, 360.0);
        let expected = [
            vec![
                Point::new(0.0, 340.0),
                Point::new(1.0, 350.0),
                Point::new(1.5, 360.0),
            ],
            vec![
                Point::new(1.5, 0.0),
                Point::new(2.0, 10.0),
                Point::new(3.0, 20.0),
            ],
        ];
        assert_eq!(folded, expected);
        let back = fold(points(&[370.0, 350.0]), 0.0, 360.0);
        assert_eq!(back[0], [Point::new(0.0, 10.0), Point::new(0.5, 0.0)]);
        assert_eq!(back[1], [Point::new(0.5, 360.0), Point::new(1.0, 350.0)]);
    }

    #[test]
    fn no_piece_of_a_folded_line_is_half_a_turn_tall() {
        let spiral = (0..500).map(|i| Point::new(f64::from(i), 7.3 * f64::from(i) - 900.0));
        let folded = fold(spiral, -180.0, 360.0);
        assert!(folded.len() > 9);
        for two in folded.iter().flat_map(|run| run.windows(2)) {
            assert!((two[1].y - two[0].y).abs() < 7.31);
        }
        for p in folded.iter().flatten() {
            assert!((-180.0..=180.0).contains(&p.y));
        }
    }

    #[test]
    fn what_is_no_number_is_a_gap() {
        assert_eq!(fold(points(&[1.0, f64::NAN, 2.0]), 0.0, 360.0).len(), 2);
        assert_eq!(runs(points(&[1.0, f64::INFINITY, 2.0, 3.0])).len(), 2);
        let back = [Point::new(1.0, 0.0), Point::new(0.0, 0.0)];
        assert_eq!(runs(back).len(), 2);
        assert_eq!(fold([], 0.0, 360.0), Vec::<Vec<Point>>::new());
    }

    #[test]
    fn thinning_keeps_every_peak_and_no_more_than_two_points_a_column() {
        // Ten minutes at ten a second on 500 columns, with one spike up and one down.
        let line: Vec<Point> = (0..6000_u32)
            .map(|i| {
                let y = match i {
                    1234 => 99.0,
                    4321 => -99.0,
                    _ => f64::from(i % 7),
                };
                Point::new(f64::from(i) / 12.0, y)
            })
            .collect();
        let thinned = thin(&line);
        assert!(thinned.len() <= 2 * 500 + 2, "{}", thinned.len());
        assert!(thinned.contains(&line[1234]) && thinned.contains(&line[4321]));
        assert_eq!(thinned.first(), line.first());
        assert_eq!(thinned.last(), line.last());
        assert!(thinned.is_sorted_by(|a, b| a.x <= b.x));
        for column in 0..500 {
            let within = |p: &&Point| p.x.floor() == f64::from(column);
            let extreme = |points: &[Point], sign: f64| {
                let ys = points.iter().filter(within).map(|p| sign * p.y);
                ys.fold(f64::NEG_INFINITY, f64::max)
            };
            for sign in [1.0, -1.0] {
                assert_eq!(extreme(&line, sign), extreme(&thinned, sign));
            }
        }
    }

    #[test]
    fn a_sparse_line_is_left_as_it_is() {
        let line = points(&[1.0, 5.0, 2.0, 2.0]);
        assert_eq!(thin(&line), line);
        assert_eq!(spaced(&line, 0.5), line);
        assert!(thin(&[]).is_empty() && spaced(&[], 1.0).is_empty());
    }

    #[test]
    fn straightening_strays_no_further_than_allowed() {
        let wave = |i: u32| Point::new(f64::from(i), 40.0 * maths::sin(f64::from(i) / 50.0));
        let line: Vec<Point> = (0..1000).map(wave).collect();
        let few = straightened(&line, 0.1);
        assert!(few.len() < 200, "{}", few.len());
        for p in &line {
            let y = few
                .windows(2)
                .find(|two| two[0].x <= p.x && p.x <= two[1].x);
            let y = y.map(|two| {
                two[0]
                    .lerp(two[1], (p.x - two[0].x) / (two[1].x - two[0].x))
                    .y
            });
            // Measured upright, on a slope below 40/50, so a little more than square to the line.
            assert!((y.unwrap() - p.y).abs() < 0.13);
        }
        assert!(straightened(&[], 0.1).is_empty());
        let dot = [Point::new(1.0, 1.0); 5];
        assert_eq!(straightened(&dot, 0.1), [dot[0], dot[0]]);
    }

    #[test]
    fn a_value_lies_between_its_neighbours_or_nowhere() {
        let xs = [1.0, 2.0, 4.0];
        let find = |x| between(xs.len(), |i| xs[i], x);
        assert_eq!(find(3.0), Some((1, 2, 0.5)));
        assert_eq!(find(1.0), Some((0, 0, 0.0)));
        assert_eq!(find(4.0), Some((2, 2, 0.0)));
        assert_eq!(find(0.9), None);
        assert_eq!(find(4.1), None);
        assert_eq!(find(f64::NAN), None);
        assert_eq!(between(0, |_| 0.0, 1.0), None);
    }
}

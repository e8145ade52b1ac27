//! Labels that keep out of each other's way.

use kurbo::{Point, Rect, Size};

/// Middles for labels of one height along a line, each as near as can be to where it is wanted,
/// in the order given; none overlap, and all lie between `from` and `to` if there is room.
pub fn spread(wanted: &[f64], height: f64, from: f64, to: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|&a, &b| wanted[a].total_cmp(&wanted[b]));

    // Groups that touch move as one, about the mean of what their members want: (count, sum of
    // where the group's first member would go).
    let mut groups: Vec<(usize, f64)> = Vec::new();
    for &index in &order {
        groups.push((1, wanted[index]));
        while let [.., (count, sum), (next, next_sum)] = groups[..] {
            let end = sum / count as f64 + height * count as f64;
            if next_sum / next as f64 >= end {
                break;
            }
            groups.truncate(groups.len() - 2);
            let shifted = next_sum - height * (count * next) as f64;
            groups.push((count + next, sum + shifted));
        }
    }
    let mut middles: Vec<f64> = groups
        .iter()
        .flat_map(|&(count, sum)| (0..count).map(move |i| sum / count as f64 + height * i as f64))
        .collect();

    // Into the room, first from its start and then from its end.
    let count = middles.len();
    for (i, middle) in middles.iter_mut().enumerate() {
        let least = from + height * (i as f64 + 0.5);
        let most = to - height * ((count - i) as f64 - 0.5);
        *middle = middle.min(most).max(least);
    }
    let mut placed = vec![0.0; count];
    for (&index, middle) in order.iter().zip(middles) {
        placed[index] = middle;
    }
    placed
}

/// A flag on its pole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flag {
    /// In which lane, counted from the one nearest the chart.
    pub lane: usize,
    /// Where the words begin.
    pub start: f64,
}

/// Places for words beside upright marks, as flags on poles: `marks` are where each pole stands and
/// how wide its words are, from left to right. A flag flies to the right of its pole, or to the
/// left where the room ends; none where all lanes are taken.
pub fn flags(
    marks: &[(f64, f64)],
    gap: f64,
    from: f64,
    to: f64,
    lanes: usize,
) -> Vec<Option<Flag>> {
    let mut taken: Vec<Vec<(f64, f64)>> = vec![Vec::new(); lanes];
    marks
        .iter()
        .enumerate()
        .map(|(index, &(pole, width))| {
            let right = (pole, pole + gap + width);
            let left = (pole - gap - width, pole);
            let sides = [right, left]
                .into_iter()
                .filter(|side| side.0 >= from - gap && side.1 <= to);
            for (start, end) in sides {
                for (lane, others) in taken.iter_mut().enumerate() {
                    // A pole reaches up to its own lane: any may cross all lanes but the last.
                    let free = others
                        .iter()
                        .all(|&(a, b)| end + gap <= a || b + gap <= start);
                    let poles = marks
                        .iter()
                        .enumerate()
                        .filter(|&(other, _)| other != index);
                    let crossed =
                        lane + 1 < lanes && poles.clone().any(|(_, &(x, _))| start < x && x < end);
                    if free && !crossed {
                        others.push((start, end));
                        let start = if start < pole { start } else { start + gap };
                        return Some(Flag { lane, start });
                    }
                }
            }
            None
        })
        .collect()
}

/// The middle of the best place for a label of a size among `candidates`: inside `room`, clear of
/// `taken` and on as few as can be of `points`; the first of equally good ones. None if none is
/// inside and clear.
pub fn clearest(
    candidates: impl IntoIterator<Item = Point>,
    size: Size,
    room: Rect,
    taken: &[Rect],
    points: &[Point],
) -> Option<Point> {
    let mut best: Option<(usize, Point)> = None;
    for candidate in candidates {
        let rect = Rect::from_center_size(candidate, size);
        let inside =
            rect.x0 >= room.x0 && rect.x1 <= room.x1 && rect.y0 >= room.y0 && rect.y1 <= room.y1;
        if !inside || taken.iter().any(|other| overlap(rect, *other)) {
            continue;
        }
        let hidden = points.iter().filter(|p| rect.contains(**p)).count();
        if best.is_none_or(|(least, _)| hidden < least) {
            best = Some((hidden, candidate));
        }
    }
    best.map(|(_, place)| place)
}

/// Whether two rectangles share an area.
pub fn overlap(a: Rect, b: Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn labels_that_have_room_stay_where_they_are_wanted() {
        assert_eq!(spread(&[80.0, 20.0], 10.0, 0.0, 100.0), [80.0, 20.0]);
        assert!(spread(&[], 10.0, 0.0, 100.0).is_empty());
    }

    #[test]
    fn labels_that_collide_part_evenly() {
        assert_eq!(spread(&[50.0, 50.0], 10.0, 0.0, 100.0), [45.0, 55.0]);
        assert_eq!(
            spread(&[52.0, 50.0, 51.0], 10.0, 0.0, 100.0),
            [61.0, 41.0, 51.0]
        );
        assert_eq!(spread(&[0.0, 0.0], 10.0, 0.0, 100.0), [5.0, 15.0]);
        assert_eq!(spread(&[100.0, 100.0], 10.0, 0.0, 100.0), [85.0, 95.0]);
    }

    #[test]
    fn flags_turn_round_at_the_end_and_move_up_a_lane() {
        let placed = flags(
            &[(10.0, 40.0), (30.0, 40.0), (95.0, 40.0)],
            4.0,
            0.0,
            100.0,
            2,
        );
        // The first would lie across the second's pole.
        assert_eq!(
            placed[0],
            Some(Flag {
                lane: 1,
                start: 14.0
            })
        );
        assert_eq!(
            placed[1],
            Some(Flag {
                lane: 0,
                start: 34.0
            })
        );
        // No room to the right; to the left it lies in the outer lane.
        assert_eq!(placed[2], None);
        let placed = flags(&[(95.0, 40.0)], 4.0, 0.0, 100.0, 1);
        assert_eq!(
            placed[0],
            Some(Flag {
                lane: 0,
                start: 51.0
            })
        );
    }

    #[test]
    fn the_clearest_place_hides_least() {
        let room = Rect::new(0.0, 0.0, 100.0, 100.0);
        let candidates = [
            Point::new(2.0, 50.0),
            Point::new(30.0, 50.0),
            Point::new(60.0, 50.0),
        ];
        let size = Size::new(20.0, 10.0);
        let points = [Point::new(30.0, 52.0)];
        let place = |taken: &[Rect]| clearest(candidates, size, room, taken, &points);
        assert_eq!(place(&[]), Some(candidates[2]));
        assert_eq!(
            place(&[Rect::new(55.0, 40.0, 65.0, 60.0)]),
            Some(candidates[1])
        );
        assert_eq!(place(&[room]), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn spread_labels_never_overlap(wanted in prop::collection::vec(-50.0..150.0, 0..9)) {
            let placed = spread(&wanted, 10.0, 0.0, 100.0);
            let mut sorted = placed.clone();
            sorted.sort_by(f64::total_cmp);
            prop_assert!(sorted.windows(2).all(|two| two[1] - two[0] >= 10.0 - 1e-9));
            prop_assert!(sorted.iter().all(|m| (5.0 - 1e-9..=95.0 + 1e-9).contains(m)));
            for (i, a) in wanted.iter().enumerate() {
                for (j, b) in wanted.iter().enumerate() {
                    prop_assert!(a >= b || placed[i] < placed[j], "kept in order: {} {}", i, j);
                }
            }
        }

        #[test]
        fn flags_never_overlap(
            marks in prop::collection::vec((0.0..300.0, 5.0..90.0), 0..12),
            lanes in 0_usize..4,
        ) {
            let mut marks = marks;
            marks.sort_by(|a: &(f64, f64), b| a.0.total_cmp(&b.0));
            let placed = flags(&marks, 4.0, 0.0, 300.0, lanes);
            let boxes: Vec<(usize, f64, f64)> = placed
                .iter()
                .zip(&marks)
                .filter_map(|(flag, mark)| flag.map(|f| (f.lane, f.start, f.start + mark.1)))
                .collect();
            for (i, a) in boxes.iter().enumerate() {
                prop_assert!(a.0 < lanes && a.1 >= -4.0 && a.2 <= 300.0 + 1e-9);
                for b in &boxes[i + 1..] {
                    prop_assert!(a.0 != b.0 || a.2 <= b.1 + 1e-9 || b.2 <= a.1 + 1e-9);
                }
            }
        }
    }
}

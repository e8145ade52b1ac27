//! Where the strips stand, and what their axes span.

use super::{Sample, StripChartView};
use crate::chart::axis::{Axis, Steps, round_span};
use crate::chart::placing::{Flag, flags};
use crate::chart::{Frame, type_size};
use crate::lettering::text_width;
use compass::angle::half_turn;
use compass::unit::KNOT;
use kurbo::{Point, Rect, Size};

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(1180.0, 260.0);

/// Where the strips stand.
#[derive(Clone, Debug, PartialEq)]
pub struct StripLayout {
    /// The whole picture.
    pub size: Size,
    /// Time and heading, in seconds and degrees; headings run on past 360 where the flight does.
    pub heading: Frame,
    /// Time and error, in seconds and degrees.
    pub error: Frame,
    /// Time and bank, in seconds and degrees.
    pub bank: Frame,
    /// Time and airspeed, in seconds and knots: the same rectangle as the bank's.
    pub airspeed: Frame,
    /// Size of figures and words.
    pub(crate) type_size: f64,
    /// Where the words of each event fly.
    pub(crate) flags: Vec<Option<Flag>>,
}

/// The samples within the window, and one beyond either end, as lines in the units of the axes.
pub(super) struct Series<'a> {
    pub(super) samples: &'a [Sample],
    /// Degrees that run on past full turns.
    pub(super) heading: Vec<Point>,
    /// The same.
    pub(super) reading: Vec<Point>,
    /// Degrees in (−180, 180].
    pub(super) error: Vec<Point>,
    pub(super) bank: Vec<Point>,
    pub(super) airspeed: Vec<Point>,
}

impl StripLayout {
    /// The layout for a size.
    pub fn new(view: &StripChartView, size: Size) -> Self {
        Self::around(view, &Series::of(view), size)
    }

    /// The layout for a size, and for these lines of the view.
    pub(super) fn around(view: &StripChartView, series: &Series, size: Size) -> Self {
        let [from, to] = window(view);
        let type_size = type_size(size, NATURAL);
        let unit = type_size / 13.0;
        let words = &view.words;

        let left = text_width("−180°", type_size) + 9.0 * unit;
        let ends = [
            words.heading,
            words.compass,
            words.error,
            words.bank,
            words.airspeed,
        ];
        let widest = ends
            .iter()
            .map(|words| text_width(words, type_size))
            .fold(text_width("000", type_size), f64::max);
        let right = (widest + 29.0 * unit).min(0.3 * size.width);
        let (x0, x1) = (left.min(0.3 * size.width), size.width - right);

        // Two lanes for the events' words where there is room, one if one is enough or all there
        // is.
        let time = Axis::new([from, to], [x0, x1]);
        let marks: Vec<(f64, f64)> = view
            .events
            .iter()
            .filter(|event| (from..=to).contains(&event.time))
            .map(|event| (time.place(event.time), text_width(event.words, type_size)))
            .collect();
        let fly = |lanes| flags(&marks, 5.0 * unit, x0, size.width, lanes);
        let lanes = match size.height / type_size {
            _ if marks.is_empty() => 0,
            ..7.0 => 0,
            ..14.0 => 1,
            _ if fly(1).iter().all(Option::is_some) => 1,
            _ => 2,
        };
        let top = (1.45 * lanes as f64 + 0.55) * type_size;
        let bottom = size.height - 1.9 * type_size;
        let gap = 1.05 * type_size;
        let room = (bottom - top - 2.0 * gap).max(0.0);
        let strip = |above: f64, share: f64, before: f64| {
            let y0 = top + above * room + before * gap;
            Rect::new(x0, y0, x1.max(x0 + 1.0), (y0 + share * room).max(y0 + 1.0))
        };
        let (first, second) = (0.4, 0.35);
        let third = strip(first + second, 1.0 - first - second, 2.0);
        let seconds = [from, to];
        let finest = 10.0;
        let errors = series.error.iter().map(|p| p.y);
        // Room beyond the greatest bank, for words and to be seen to hold.
        let banks = series.bank.iter().map(|p| 1.4 * p.y);
        Self {
            size,
            heading: Frame::new(strip(0.0, first, 0.0), seconds, series.headings(view)),
            error: Frame::new(
                strip(first, second, 1.0),
                seconds,
                round_span(errors, finest, Steps::Degrees),
            ),
            bank: Frame::new(
                third,
                seconds,
                round_span(banks, 2.0 * finest, Steps::Degrees),
            ),
            airspeed: Frame::new(third, seconds, series.airspeeds()),
            type_size,
            flags: fly(lanes),
        }
    }

    /// The time at a place of the picture, for pointers: none to the left and the right of the
    /// strips.
    pub fn time_at(&self, x: f64) -> Option<f64> {
        self.heading.x.value(x)
    }

    /// Where a time stands.
    pub fn x_of(&self, time: f64) -> f64 {
        self.heading.x.place(time)
    }

    /// The unit that line widths are made from.
    pub(crate) fn unit(&self) -> f64 {
        self.type_size / 13.0
    }
}

impl<'a> Series<'a> {
    pub(super) fn of(view: &StripChartView<'a>) -> Self {
        let samples = shown(view.samples, window(view));
        let [mut heading, mut reading] = [(); 2].map(|()| Vec::with_capacity(samples.len()));
        // The last finite heading and reading, running on.
        let mut last: Option<(f64, f64)> = None;
        for sample in samples {
            let (h, r) = if sample.is_finite() {
                let (h, r) = (sample.heading.radians(), sample.reading.radians());
                let (h, r) = match last {
                    None => (h, h + half_turn(r - h)),
                    Some((h0, r0)) => (h0 + half_turn(h - h0), r0 + half_turn(r - r0)),
                };
                last = Some((h, r));
                (h.to_degrees(), r.to_degrees())
            } else {
                (f64::NAN, f64::NAN)
            };
            heading.push(Point::new(sample.time, h));
            reading.push(Point::new(sample.time, r));
        }
        let line = |value: fn(&Sample) -> f64| -> Vec<Point> {
            let value = |s: &Sample| if s.is_finite() { value(s) } else { f64::NAN };
            samples
                .iter()
                .map(|s| Point::new(s.time, value(s)))
                .collect()
        };
        Self {
            error: line(|sample| sample.error().to_degrees()),
            bank: line(|sample| sample.bank.to_degrees()),
            airspeed: line(|sample| sample.airspeed / KNOT),
            samples,
            heading,
            reading,
        }
    }

    /// The part of the circle that the heading's strip shows, in degrees.
    fn headings(&self, view: &StripChartView) -> [f64; 2] {
        let heading = self.heading.iter().filter(|_| view.show_reference);
        let reading = self.reading.iter().filter(|_| view.show_compass);
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for p in heading.chain(reading).filter(|p| p.y.is_finite()) {
            low = low.min(p.y);
            high = high.max(p.y);
        }
        let circle = [0.0, 360.0];
        if low > high {
            return circle;
        }
        // Whole steps around it with a little air, and never so close that the card's hunting fills the strip.
        let step = 30.0;
        let air = 4.0;
        let mut part = [low - air, high + air].map(|end| end / step);
        part = [part[0].floor() * step, part[1].ceil() * step];
        while part[1] - part[0] < 2.0 * step {
            if low - part[0] < part[1] - high {
                part[0] -= step;
            } else {
                part[1] += step;
            }
        }
        if part[1] - part[0] > 300.0 {
            circle
        } else {
            part
        }
    }

    fn airspeeds(&self) -> [f64; 2] {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for p in self.airspeed.iter().filter(|p| p.y.is_finite()) {
            low = low.min(p.y);
            high = high.max(p.y);
        }
        if low > high {
            return [0.0, 100.0];
        }
        // Room below, so that a steady speed stands above the greatest bank, whose axis leaves at
        // least a seventh free; a change is seen as one of at least fifty knots' scale.
        let span = (high - low).max(50.0 / 0.88);
        [high - 0.88 * span, high + 0.12 * span]
    }
}

/// From when to when, in seconds: what the axis makes of a window that is none.
fn window(view: &StripChartView) -> [f64; 2] {
    Axis::new(view.window, [0.0, 1.0]).values()
}

/// The samples within a window, and one beyond either end.
fn shown(samples: &[Sample], [from, to]: [f64; 2]) -> &[Sample] {
    let first = samples.iter().position(|s| s.time >= from);
    let last = samples.iter().rposition(|s| s.time <= to);
    match (first, last) {
        (Some(first), Some(last)) => {
            let end = (last + 2).min(samples.len());
            &samples[first.saturating_sub(1).min(end)..end]
        }
        _ => &[],
    }
}

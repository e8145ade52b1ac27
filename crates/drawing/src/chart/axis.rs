//! From values to places and back, round steps for ticks, and their figures.

/// A straight scale: values along a line of the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    values: [f64; 2],
    places: [f64; 2],
}

impl Axis {
    /// From `values[0]` at `places[0]` to `values[1]` at `places[1]`. Values that are not finite
    /// or not in ascending order become a span of one.
    pub fn new(values: [f64; 2], places: [f64; 2]) -> Self {
        let [from, to] = values;
        let proper = to - from > 0.0 && (to - from).is_finite();
        let values = if proper {
            values
        } else if from.abs() < 1e12 {
            [from, from + 1.0]
        } else {
            [0.0, 1.0]
        };
        Self { values, places }
    }

    /// The least and the greatest value.
    pub fn values(&self) -> [f64; 2] {
        self.values
    }

    /// Where a value stands; it may be beyond the ends, by ten thousand times the axis's length at
    /// most, so that no value is too large to be drawn.
    pub fn place(&self, value: f64) -> f64 {
        let share = (value - self.values[0]) / (self.values[1] - self.values[0]);
        let share = share.clamp(-1e4, 1e4);
        self.places[0] + share * (self.places[1] - self.places[0])
    }

    /// The value that stands at a place, none beyond the ends.
    pub fn value(&self, place: f64) -> Option<f64> {
        let share = (place - self.places[0]) / (self.places[1] - self.places[0]);
        let value = self.values[0] + share * (self.values[1] - self.values[0]);
        (0.0..=1.0).contains(&share).then_some(value)
    }

    /// Ticks at round values, no more than one for every `room` of the picture's units.
    pub fn ticks(&self, steps: Steps, room: f64) -> Vec<f64> {
        let length = (self.places[1] - self.places[0]).abs();
        let most = (length / room.max(1e-9)).min(1e4);
        steps.ticks(self.values, most)
    }
}

/// What counts as a round step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Steps {
    /// 1, 2 or 5 times a power of ten.
    Decimal,
    /// The same below ten; then 10, 15, 20, 30, 45, 60 and 90 degrees.
    Degrees,
    /// The same below ten; then 10, 30 and 90 degrees.
    Headings,
    /// The same below ten seconds; then 10, 15 and 30 seconds, 1, 2, 5, 10, 15 and 30 minutes and
    /// hours.
    Seconds,
}

/// Round steps of degrees from ten on.
const DEGREES: [f64; 8] = [10.0, 15.0, 20.0, 30.0, 45.0, 60.0, 90.0, 180.0];
/// Round steps of headings from ten degrees on.
const HEADINGS: [f64; 4] = [10.0, 30.0, 90.0, 360.0];
/// Round steps of seconds from ten on.
const SECONDS: [f64; 14] = [
    10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, 3600.0, 7200.0, 14_400.0, 21_600.0,
    43_200.0,
];

impl Steps {
    /// The least round step of which no more than `most` fit into `span`.
    pub fn step(self, span: f64, most: f64) -> f64 {
        let least = span.abs() / most.max(1.0);
        if !(least > 0.0 && least.is_finite()) {
            return 1.0;
        }
        let own: &[f64] = match self {
            Self::Decimal => &[],
            Self::Degrees => &DEGREES,
            Self::Headings => &HEADINGS,
            Self::Seconds => &SECONDS,
        };
        // A hair of slack, so that an exact fit is one.
        let enough = |step: &&f64| **step >= least * (1.0 - 1e-9);
        let decimal = decimal_step(least);
        match own.iter().find(enough) {
            Some(&step) if decimal >= 10.0 => step,
            _ => decimal,
        }
    }

    /// The round values from `values[0]` to `values[1]`, both included, at the least round step
    /// of which no more than `most` fit in; a thousand at most.
    pub fn ticks(self, values: [f64; 2], most: f64) -> Vec<f64> {
        let [from, to] = values;
        let step = self.step(to - from, most);
        let slack = 1e-9;
        let first = (from / step - slack).ceil();
        let last = (to / step + slack).floor();
        if !(first.is_finite() && last.is_finite()) {
            return Vec::new();
        }
        let count = (last - first + 1.0).clamp(0.0, 1000.0) as u32;
        (0..count)
            .map(|index| (first + f64::from(index)) * step + 0.0)
            .collect()
    }
}

/// The least of 1, 2 and 5 times a power of ten that is no less than `least`, which is above
/// zero; within 10⁻¹² and 5 × 10¹².
fn decimal_step(least: f64) -> f64 {
    let least = least * (1.0 - 1e-9);
    let fits = |step: &f64| *step >= least;
    let all = (-12..=12_i32).flat_map(|power| {
        let scale = 10_u64.pow(power.unsigned_abs()) as f64;
        // Dividing keeps tenths and hundredths as near as they can be written.
        [1.0, 2.0, 5.0].map(|factor| {
            if power < 0 {
                factor / scale
            } else {
                factor * scale
            }
        })
    });
    all.into_iter().find(fits).unwrap_or(5e12)
}

/// The round span around the least and the greatest of some values, zero always within it and
/// nothing below `least` wide on the side where there is any; its ends are ticks.
pub fn round_span(values: impl Iterator<Item = f64>, least: f64, steps: Steps) -> [f64; 2] {
    let (mut low, mut high) = (0.0_f64, 0.0_f64);
    for value in values.filter(|value| value.is_finite()) {
        low = low.min(value);
        high = high.max(value);
    }
    if high - low < least {
        // Toward the side that is used, or else above.
        if -low > high {
            low = high - least;
        } else {
            high = low + least;
        }
    }
    let step = steps.step(high - low, 4.0);
    // A value that just touches a tick does not need another.
    let out = |value: f64| (value / step - 0.02).ceil() * step + 0.0;
    [-out(-low), out(high)].map(|end| end + 0.0)
}

/// A number as short as its step allows, with a true minus sign.
pub fn figure(value: f64, step: f64) -> String {
    let decimals = (0..6)
        .find(|&n| {
            let scale = f64::from(10_u32.pow(n));
            ((step * scale).round() - step * scale).abs() < 1e-6 * scale * step
        })
        .unwrap_or(6);
    let text = format!("{:.*}", decimals as usize, value.abs());
    let nought = text.bytes().all(|b| matches!(b, b'0' | b'.'));
    if value < 0.0 && !nought {
        format!("\u{2212}{text}")
    } else {
        text
    }
}

/// Degrees with their sign.
pub fn degrees(value: f64, step: f64) -> String {
    format!("{}°", figure(value, step))
}

/// A heading in degrees, folded into one turn, in three figures; north is 360.
pub fn heading(degrees: f64) -> String {
    let whole = degrees.rem_euclid(360.0).round() as u16 % 360;
    format!("{:03}°", if whole == 0 { 360 } else { whole })
}

/// Seconds as minutes and seconds, from an hour on with hours, below whole seconds with decimals.
pub fn clock(seconds: f64, step: f64) -> String {
    if step < 1.0 {
        let minutes = (seconds / 60.0).floor();
        let rest = seconds - 60.0 * minutes;
        let pad = if rest < 9.999_999_5 { "0" } else { "" };
        return format!("{minutes:.0}:{pad}{}", figure(rest, step));
    }
    let whole = seconds.round().clamp(-3.6e8, 3.6e8) as i64;
    let (minus, whole) = (if whole < 0 { "\u{2212}" } else { "" }, whole.abs());
    let (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
    if hours > 0 {
        format!("{minus}{hours}:{minutes:02}:{rest:02}")
    } else {
        format!("{minus}{minutes}:{rest:02}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_no_more_than_asked_for() {
        assert_eq!(Steps::Decimal.step(10.0, 5.0), 2.0);
        assert_eq!(Steps::Decimal.step(1.0, 5.0), 0.2);
        assert_eq!(Steps::Decimal.step(0.07, 10.0), 0.01);
        assert_eq!(Steps::Decimal.step(9e5, 4.0), 500_000.0);
        assert_eq!(Steps::Degrees.step(8.0, 4.0), 2.0);
        assert_eq!(Steps::Degrees.step(45.0, 5.0), 10.0);
        assert_eq!(Steps::Degrees.step(100.0, 4.0), 30.0);
        assert_eq!(Steps::Headings.step(60.0, 5.0), 30.0);
        assert_eq!(Steps::Headings.step(360.0, 12.0), 30.0);
        assert_eq!(Steps::Headings.step(360.0, 5.0), 90.0);
        assert_eq!(Steps::Seconds.step(120.0, 8.0), 15.0);
        assert_eq!(Steps::Seconds.step(600.0, 5.0), 120.0);
        assert_eq!(Steps::Seconds.step(600.0, 2.0), 300.0);
        for nonsense in [0.0, f64::NAN, f64::INFINITY] {
            assert_eq!(Steps::Degrees.step(nonsense, 4.0), 1.0);
        }
    }

    #[test]
    fn ticks_are_whole_steps_within_the_ends() {
        assert_eq!(
            Steps::Degrees.ticks([-23.0, 12.0], 5.0),
            [-20.0, -10.0, 0.0, 10.0]
        );
        assert_eq!(
            Steps::Decimal.ticks([0.0, 0.3], 3.0),
            [0.0, 0.1, 0.2, 0.3].map(|v: f64| (v * 10.0).round() * 0.1)
        );
        assert_eq!(
            Steps::Seconds.ticks([0.0, 120.0], 4.0),
            [0.0, 30.0, 60.0, 90.0, 120.0]
        );
        assert!(Steps::Decimal.ticks([f64::NAN, 1.0], 4.0).is_empty());
        assert!(Steps::Decimal.ticks([5.0, -5.0], 4.0).is_empty());
        // Far from zero a step may be less than a last bit.
        assert!(Steps::Decimal.ticks([1e300, 1.1e300], 4.0).len() <= 1000);
    }

    #[test]
    fn an_axis_goes_both_ways() {
        let axis = Axis::new([10.0, 20.0], [300.0, 100.0]);
        assert_eq!(axis.place(15.0), 200.0);
        assert_eq!(axis.value(150.0), Some(17.5));
        assert_eq!(axis.value(99.0), None);
        assert_eq!(Axis::new([3.0, 3.0], [0.0, 1.0]).values(), [3.0, 4.0]);
        assert_eq!(
            Axis::new([f64::NAN, f64::NAN], [0.0, 1.0]).values(),
            [0.0, 1.0]
        );
    }

    #[test]
    fn a_round_span_holds_zero_and_all_values() {
        let span = |values: &[f64]| round_span(values.iter().copied(), 10.0, Steps::Degrees);
        assert_eq!(span(&[]), [0.0, 10.0]);
        assert_eq!(span(&[-23.0, 6.0]), [-30.0, 10.0]);
        assert_eq!(span(&[-3.0]), [-10.0, 0.0]);
        assert_eq!(span(&[f64::NAN, -179.0, 179.0]), [-180.0, 180.0]);
    }

    #[test]
    fn figures_are_short_and_read_as_people_write_them() {
        assert_eq!(figure(-20.0, 10.0), "\u{2212}20");
        assert_eq!(figure(-0.0, 10.0), "0");
        assert_eq!(figure(0.30000000000000004, 0.1), "0.3");
        assert_eq!(degrees(2.5, 0.5), "2.5°");
        assert_eq!(heading(0.0), "360°");
        assert_eq!(heading(367.0), "007°");
        assert_eq!(heading(-0.2), "360°");
        assert_eq!(clock(75.0, 15.0), "1:15");
        assert_eq!(clock(3675.0, 15.0), "1:01:15");
        assert_eq!(clock(4.5, 0.5), "0:04.5");
        assert_eq!(clock(-5.0, 5.0), "\u{2212}0:05");
    }
}

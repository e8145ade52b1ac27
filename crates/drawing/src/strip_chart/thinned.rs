//! A flight with no more samples than can be seen, however long it lasts.

use super::Sample;
use compass::angle::half_turn;
use compass::reading::Difference;
use std::mem::Discriminant;

/// The most samples kept; chosen: one or two for each pixel of the widest chart, with room for
/// the peaks of rough air.
const MOST: usize = 2400;
/// The narrowest column in seconds; chosen: two samples of a flight that is sampled ten times a
/// second.
const NARROWEST: f64 = 0.2;

/// Samples of a flight as it grows, thinned into columns of time. Each column keeps its first and
/// last sample and those of the least and the greatest value of every line, so that no peak is
/// lost and every line begins and ends where it did. Where the compass begins to lag or to lead a
/// column of its own begins.
///
/// ```
/// use compass::heading::{CompassHeading, MagneticHeading};
/// use drawing::strip_chart::{Sample, Thinned};
///
/// let mut thinned = Thinned::default();
/// for second in 0..100_000 {
///     thinned.push(Sample {
///         time: f64::from(second),
///         heading: MagneticHeading::from_degrees(90.0),
///         reading: CompassHeading::from_degrees(90.0),
///         rate_of_turn: 0.0,
///         bank: if second == 54_321 { 0.5 } else { 0.0 },
///         airspeed: 50.0,
///     });
/// }
/// assert!(thinned.samples().len() < 3000);
/// assert!(thinned.samples().iter().any(|sample| sample.bank == 0.5));
/// ```
#[derive(Clone, Debug, Default)]
pub struct Thinned {
    samples: Vec<Sample>,
    /// Where the last column starts in the samples.
    open: usize,
    /// Seconds; none: nothing had to be left out yet.
    column: Option<f64>,
}

impl Thinned {
    /// Takes the next sample of the flight, in order of time.
    pub fn push(&mut self, sample: Sample) {
        if let Some(column) = self.column {
            let same = self
                .samples
                .get(self.open)
                .is_some_and(|first| place(first, column) == place(&sample, column));
            if !same {
                self.open = self.samples.len();
            }
            self.samples.push(sample);
            let kept = extremes(&self.samples[self.open..]);
            self.samples.truncate(self.open);
            self.samples.extend(kept);
        } else {
            self.samples.push(sample);
        }
        // Halves it at least every other time; a flight of nothing but gaps cannot be thinned.
        while self.samples.len() > MOST && self.column.is_none_or(f64::is_finite) {
            self.widen();
        }
    }

    /// The samples that are left, in order of time; the last one taken is always among them.
    pub fn samples(&self) -> &[Sample] {
        &self.samples
    }

    fn widen(&mut self) {
        let column = self.column.map_or(NARROWEST, |column| 2.0 * column);
        let mut thinned = Vec::with_capacity(MOST + 1);
        for chunk in self
            .samples
            .chunk_by(|a, b| place(a, column) == place(b, column))
        {
            self.open = thinned.len();
            thinned.extend(extremes(chunk));
        }
        self.samples = thinned;
        self.column = Some(column);
    }
}

/// Which column a sample stands in; none: a gap, which stands alone with others beside it.
fn place(sample: &Sample, column: f64) -> Option<(f64, Discriminant<Difference>)> {
    let kind = std::mem::discriminant(&sample.difference());
    sample
        .is_finite()
        .then(|| ((sample.time / column).floor(), kind))
}

/// The first and the last sample of a column and those of every line's extremes, in order of time.
fn extremes(column: &[Sample]) -> Vec<Sample> {
    let Some((first, last)) = column.first().zip(column.len().checked_sub(1)) else {
        return Vec::new();
    };
    let mut kept = vec![0, last];
    if first.is_finite() {
        let lines: [&dyn Fn(&Sample) -> f64; 5] = [
            &|it| half_turn(it.heading.radians() - first.heading.radians()),
            &|it| half_turn(it.reading.radians() - first.reading.radians()),
            &Sample::error,
            &|it| it.bank,
            &|it| it.airspeed,
        ];
        for line in lines {
            let (mut least, mut most) = (0, 0);
            let (mut low, mut high) = (line(first), line(first));
            for (index, sample) in column.iter().enumerate() {
                let value = line(sample);
                if value < low {
                    (least, low) = (index, value);
                }
                if value > high {
                    (most, high) = (index, value);
                }
            }
            kept.extend([least, most]);
        }
    }
    kept.sort_unstable();
    kept.dedup();
    kept.into_iter().map(|index| column[index]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::heading::{CompassHeading, MagneticHeading};
    use compass::maths;

    fn sample(tenths: u32, bank: f64, error: f64) -> Sample {
        let heading = f64::from(tenths) * 0.3;
        Sample {
            time: f64::from(tenths) / 10.0,
            heading: MagneticHeading::from_degrees(heading),
            reading: CompassHeading::from_degrees(heading + error),
            rate_of_turn: 0.05,
            bank,
            airspeed: 50.0,
        }
    }

    /// Twenty minutes, the bank shaking, with a spike up, a spike down and a short great lag.
    fn flight() -> Vec<Sample> {
        (0..12_000)
            .map(|tenths| {
                let bank = match tenths {
                    4321 => 0.9,
                    8765 => -0.9,
                    _ => 0.1 * maths::sin(f64::from(tenths) / 3.0),
                };
                let error = if tenths == 7777 { -40.0 } else { -5.0 };
                sample(tenths, bank, error)
            })
            .collect()
    }

    #[test]
    fn a_long_flight_is_thinned_and_keeps_every_peak_and_its_ends() {
        let flight = flight();
        let mut thinned = Thinned::default();
        for sample in &flight {
            thinned.push(*sample);
            assert!(thinned.samples().len() <= MOST);
            assert_eq!(thinned.samples().last(), Some(sample));
        }
        let kept = thinned.samples();
        assert_eq!(kept[0], flight[0]);
        for peak in [4321, 8765, 7777] {
            assert!(kept.contains(&flight[peak]), "{peak}");
        }
        assert!(kept.is_sorted_by(|a, b| a.time < b.time));
        // Nowhere is there a hole wider than two columns of the last width.
        let column = thinned.column.unwrap();
        for two in kept.windows(2) {
            assert!(two[1].time - two[0].time <= 2.0 * column);
        }
        // In every column the bank reaches as far as it did.
        let of = |samples: &[Sample], which: f64, sign: f64| {
            let within = samples
                .iter()
                .filter(|it| (it.time / column).floor() == which);
            within.map(|it| sign * it.bank).fold(f64::MIN, f64::max)
        };
        for which in 0..(1200.0 / column) as u32 {
            for sign in [1.0, -1.0] {
                let which = f64::from(which);
                assert_eq!(of(&flight, which, sign), of(kept, which, sign));
            }
        }
    }

    #[test]
    fn a_short_flight_is_left_as_it_is() {
        let flight: Vec<Sample> = flight().into_iter().take(MOST).collect();
        let mut thinned = Thinned::default();
        for sample in &flight {
            thinned.push(*sample);
        }
        assert_eq!(thinned.samples(), flight);
    }

    #[test]
    fn gaps_stay_gaps_and_end() {
        let mut thinned = Thinned::default();
        for tenths in 0..20_000 {
            let mut sample = sample(tenths, 0.1, 0.0);
            if (9000..9100).contains(&tenths) {
                sample.bank = f64::NAN;
            }
            thinned.push(sample);
        }
        let gaps = thinned.samples().iter().filter(|it| !it.is_finite());
        assert!((1..=2).contains(&gaps.count()));
    }
}

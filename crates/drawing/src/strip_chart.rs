//! The flight against time: three strips that share one time axis.
//!
//! - *heading and reading*: the heading's solid line and the compass's dashed one. While a flight
//!   stays within less than a full circle, the strip shows just that part of it, so that a turn
//!   through north is one unbroken line;
//! - *error*: the gap scale unrolled along time. Zero is the heading's own line; the compass's
//!   line strays from it, and the space between is hatched, one way where it lags and another
//!   where it leads;
//! - *bank and airspeed*.
//!
//! ```
//! use compass::heading::{CompassHeading, MagneticHeading};
//! use drawing::strip_chart::{Sample, StripChartView, describe, read_at, strip_chart};
//!
//! let samples: Vec<Sample> = (0..100)
//!     .map(|tenths| {
//!         let heading = 350.0 + 0.3 * f64::from(tenths);
//!         Sample {
//!             time: f64::from(tenths) / 10.0,
//!             heading: MagneticHeading::from_degrees(heading),
//!             reading: CompassHeading::from_degrees(heading - 20.0),
//!             rate_of_turn: 3_f64.to_radians(),
//!             bank: 15_f64.to_radians(),
//!             airspeed: 50.0,
//!         }
//!     })
//!     .collect();
//! let view = StripChartView { samples: &samples, window: [0.0, 10.0], ..StripChartView::default() };
//! let shapes = strip_chart(&view, kurbo::Size::new(1180.0, 260.0));
//! assert!(!shapes.is_empty());
//! assert_eq!(describe(&view).greatest_lag.unwrap().degrees, 20);
//! // Between two samples, and past north.
//! assert!((read_at(&samples, 4.25).unwrap().heading.degrees() - 2.75).abs() < 1e-9);
//! ```

mod draw;
mod layout;
mod thinned;

use layout::Series;
pub use layout::StripLayout;
pub use thinned::Thinned;

use crate::chart::series::between;
use crate::chart::{csv, fits};
use crate::shape::Shape;
use compass::angle::half_turn;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::reading::Difference;
use compass::simulation::Moment;
use compass::unit::KNOT;
use kurbo::Size;

/// One instant of a flight, in SI units and radians. One whose time is not finite is a gap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Seconds since the start.
    pub time: f64,
    /// Where the aircraft is heading.
    pub heading: MagneticHeading,
    /// What the card reads at the lubber line.
    pub reading: CompassHeading,
    /// Rate of turn, right positive.
    pub rate_of_turn: f64,
    /// Bank, right positive.
    pub bank: f64,
    /// True airspeed.
    pub airspeed: f64,
}

impl Sample {
    /// Reading less heading, in (−π, π].
    pub fn error(&self) -> f64 {
        self.reading.error_from(self.heading)
    }

    /// How the reading compares with the heading, in the words that are used everywhere.
    pub fn difference(&self) -> Difference {
        Difference::between(self.reading, self.heading, self.rate_of_turn)
    }

    fn is_finite(&self) -> bool {
        let values = [
            self.time,
            self.heading.radians(),
            self.reading.radians(),
            self.rate_of_turn,
            self.bank,
            self.airspeed,
        ];
        values.iter().all(|value| value.is_finite())
    }
}

impl From<&Moment> for Sample {
    fn from(moment: &Moment) -> Self {
        Self {
            time: moment.time,
            heading: moment.motion.heading,
            reading: moment.reading.compass,
            rate_of_turn: moment.motion.rate_of_turn,
            bank: moment.motion.bank,
            airspeed: moment.motion.airspeed,
        }
    }
}

/// A moment worth a mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event<'a> {
    /// Seconds since the start.
    pub time: f64,
    /// What happens, in a few words.
    pub words: &'a str,
}

/// What the strips show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripChartView<'a> {
    /// The flight, in order of time.
    pub samples: &'a [Sample],
    /// From when to when, in seconds.
    pub window: [f64; 2],
    /// Where the playhead stands.
    pub playhead: Option<f64>,
    /// Where the flight is being read off.
    pub cursor: Option<f64>,
    /// A stretch that is set off from the rest, such as one that is looped: from when to when. One
    /// without length is a stretch whose end is not marked yet.
    pub stretch: Option<[f64; 2]>,
    /// Moments to mark, in order of time.
    pub events: &'a [Event<'a>],
    /// Whether the heading is shown.
    pub show_reference: bool,
    /// Whether the compass is shown.
    pub show_compass: bool,
    /// Words to place.
    pub words: Words<'a>,
}

impl Default for StripChartView<'_> {
    fn default() -> Self {
        Self {
            samples: &[],
            window: [0.0, 60.0],
            playhead: None,
            cursor: None,
            stretch: None,
            events: &[],
            show_reference: true,
            show_compass: true,
            words: Words::default(),
        }
    }
}

/// Words to place in the picture, already in the reader's language; those left empty are left
/// out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// At the end of the heading's line.
    pub heading: &'a str,
    /// At the end of the compass's line.
    pub compass: &'a str,
    /// What the second strip shows, as in “error”.
    pub error: &'a str,
    /// Where the compass lags, as in “lags”.
    pub lags: &'a str,
    /// Where the compass leads, as in “leads”.
    pub leads: &'a str,
    /// At the end of the bank's line.
    pub bank: &'a str,
    /// The side of positive bank, as in “right”.
    pub right: &'a str,
    /// The side of negative bank, as in “left”.
    pub left: &'a str,
    /// At the end of the airspeed's line, as in “airspeed, kt”.
    pub airspeed: &'a str,
    /// What a stretch that is set off is, as in “loop”.
    pub stretch: &'a str,
    /// In place of the strips while there is nothing to show.
    pub empty: &'a str,
}

/// Draws the strips; nothing in a picture under 8 either way.
pub fn strip_chart(view: &StripChartView, size: Size) -> Vec<Shape> {
    laid_out(view, size).0
}

/// Draws the strips as [`strip_chart`] does, and says where they stand.
pub fn laid_out(view: &StripChartView, size: Size) -> (Vec<Shape>, StripLayout) {
    let series = Series::of(view);
    let layout = StripLayout::around(view, &series, size);
    let shapes = if fits(size) {
        draw::draw(view, &layout, &series)
    } else {
        Vec::new()
    };
    (shapes, layout)
}

/// Draws what moves over the strips, playhead and cursor, on a layout of the same flight: for a
/// picture of its own above the strips, which then need not be drawn as often. Of the samples it
/// needs those around the cursor. Nothing where [`strip_chart`] draws nothing.
pub fn moving(view: &StripChartView, layout: &StripLayout) -> Vec<Shape> {
    if !fits(layout.size) {
        return Vec::new();
    }
    draw::moving(view, layout)
}

/// The flight at a time, interpolated between the samples before and after; none outside the
/// flight and within gaps.
pub fn read_at(samples: &[Sample], time: f64) -> Option<Sample> {
    let (before, after, share) = between(samples.len(), |i| samples[i].time, time)?;
    let (a, b) = (samples[before], samples[after]);
    if !(a.is_finite() && b.is_finite()) {
        return None;
    }
    let mix = |from: f64, to: f64| from + share * (to - from);
    let turned = share * half_turn(b.heading.radians() - a.heading.radians());
    let swung = share * half_turn(b.reading.radians() - a.reading.radians());
    Some(Sample {
        time,
        heading: a.heading.turned_by(turned),
        reading: a.reading.turned_by(swung),
        rate_of_turn: mix(a.rate_of_turn, b.rate_of_turn),
        bank: mix(a.bank, b.bank),
        airspeed: mix(a.airspeed, b.airspeed),
    })
}

/// The samples as comma-separated text, in degrees, knots and seconds.
pub fn to_csv(samples: &[Sample]) -> String {
    let names = [
        "time_s",
        "heading_deg",
        "reading_deg",
        "error_deg",
        "bank_deg",
        "airspeed_kt",
        "rate_of_turn_deg_s",
    ];
    let rows = samples.iter().filter(|sample| sample.is_finite());
    csv::table(
        names,
        rows.map(|sample| {
            [
                sample.time,
                csv::heading(sample.heading.degrees()),
                csv::heading(sample.reading.degrees()),
                sample.error().to_degrees(),
                sample.bank.to_degrees(),
                sample.airspeed / KNOT,
                sample.rate_of_turn.to_degrees(),
            ]
        }),
    )
}

/// A greatest value and when it was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Whole degrees, not negative.
    pub degrees: u16,
    /// Seconds since the start.
    pub time: f64,
    /// The heading then, 1 to 360.
    pub heading: u16,
}

/// What the strips show, in whole numbers: what their text equivalent is made from. Nothing that
/// is hidden.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StripFigures {
    /// From when to when there is anything to see, in seconds.
    pub time: Option<[f64; 2]>,
    /// Heading at the start and at the end, 1 to 360.
    pub heading: Option<[u16; 2]>,
    /// Reading at the start and at the end, 1 to 360.
    pub reading: Option<[u16; 2]>,
    /// The greatest lag in a turn.
    pub greatest_lag: Option<Peak>,
    /// The greatest lead in a turn.
    pub greatest_lead: Option<Peak>,
    /// The least and the greatest bank in whole degrees, right positive.
    pub bank: Option<[i16; 2]>,
    /// The least and the greatest airspeed in whole knots.
    pub airspeed: Option<[u16; 2]>,
    /// How many events lie within.
    pub events: usize,
}

/// What the strips show within their window.
pub fn describe(view: &StripChartView) -> StripFigures {
    let [from, to] = view.window;
    let within = |time: f64| (from..=to).contains(&time);
    let shown: Vec<&Sample> = view
        .samples
        .iter()
        .filter(|sample| sample.is_finite() && within(sample.time))
        .collect();
    let events = view.events.iter().filter(|event| within(event.time));
    let (Some(first), Some(last)) = (shown.first(), shown.last()) else {
        return StripFigures {
            events: events.count(),
            ..StripFigures::default()
        };
    };
    let both = view.show_reference && view.show_compass;
    let peak = |size: fn(Difference) -> Option<u16>| {
        let sized = shown
            .iter()
            .filter_map(|sample| Some((size(sample.difference())?, *sample)));
        // The first of equally great ones.
        let greatest = sized.reduce(|a, b| if b.0 > a.0 { b } else { a });
        greatest.filter(|_| both).map(|(degrees, sample)| Peak {
            degrees,
            time: sample.time,
            heading: sample.heading.whole_degrees(),
        })
    };
    let span = |value: fn(&Sample) -> f64| {
        let values = || shown.iter().map(|sample| value(sample));
        [
            values().fold(f64::INFINITY, f64::min),
            values().fold(f64::NEG_INFINITY, f64::max),
        ]
    };
    StripFigures {
        time: Some([first.time, last.time]),
        heading: view
            .show_reference
            .then(|| [first, last].map(|sample| sample.heading.whole_degrees())),
        reading: view
            .show_compass
            .then(|| [first, last].map(|sample| sample.reading.whole_degrees())),
        greatest_lag: peak(|difference| match difference {
            Difference::Lags(by) => Some(by),
            _ => None,
        }),
        greatest_lead: peak(|difference| match difference {
            Difference::Leads(by) => Some(by),
            _ => None,
        }),
        bank: Some(span(|sample| sample.bank.to_degrees()).map(|bank| bank.round() as i16)),
        airspeed: Some(span(|sample| sample.airspeed / KNOT).map(|speed| speed.round() as u16)),
        events: events.count(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(time: f64, heading: f64, reading: f64, rate: f64) -> Sample {
        Sample {
            time,
            heading: MagneticHeading::from_degrees(heading),
            reading: CompassHeading::from_degrees(reading),
            rate_of_turn: rate.to_radians(),
            bank: (5.0 * rate).to_radians(),
            airspeed: 100.0 * KNOT,
        }
    }

    /// A right turn through north and a left one back, then straight on.
    fn flight() -> Vec<Sample> {
        vec![
            sample(0.0, 350.0, 350.0, 3.0),
            sample(10.0, 20.0, 355.0, 3.0),
            sample(20.0, 20.0, 26.0, -3.0),
            sample(30.0, 350.0, 2.0, -3.0),
            sample(40.0, 350.0, 360.0, 0.0),
        ]
    }

    #[test]
    fn reading_off_between_samples_goes_the_short_way_past_north() {
        let samples = flight();
        let at = |time| read_at(&samples, time).unwrap();
        assert!((at(5.0).heading.degrees() - 5.0).abs() < 1e-9);
        assert!((at(5.0).reading.degrees() - 352.5).abs() < 1e-9);
        assert!((at(25.0).heading.degrees() - 5.0).abs() < 1e-9);
        assert_eq!(at(40.0), samples[4]);
        assert_eq!(read_at(&samples, 40.1), None);
        assert_eq!(read_at(&samples, -0.1), None);
        assert_eq!(read_at(&[], 0.0), None);
    }

    #[test]
    fn nothing_is_read_off_within_a_gap() {
        let mut samples = flight();
        samples[1].airspeed = f64::NAN;
        assert_eq!(read_at(&samples, 5.0), None);
        assert!(read_at(&samples, 25.0).is_some());
    }

    #[test]
    fn figures_tell_the_greatest_lag_and_lead_with_when_and_where() {
        let samples = flight();
        let view = StripChartView {
            samples: &samples,
            window: [0.0, 60.0],
            ..StripChartView::default()
        };
        let figures = describe(&view);
        assert_eq!(figures.time, Some([0.0, 40.0]));
        assert_eq!(figures.heading, Some([350, 350]));
        assert_eq!(figures.reading, Some([350, 360]));
        let lag = Peak {
            degrees: 25,
            time: 10.0,
            heading: 20,
        };
        assert_eq!(figures.greatest_lag, Some(lag));
        assert_eq!(
            figures.greatest_lead, None,
            "in a left turn, more is behind"
        );
        assert_eq!(figures.bank, Some([-15, 15]));
        assert_eq!(figures.airspeed, Some([100, 100]));
        // The straight flight at the end neither lags nor leads.
        let end = StripChartView {
            window: [35.0, 60.0],
            ..view
        };
        assert_eq!(describe(&end).greatest_lag, None);
    }

    #[test]
    fn what_is_hidden_is_not_told() {
        let samples = flight();
        let view = StripChartView {
            samples: &samples,
            show_compass: false,
            ..StripChartView::default()
        };
        let figures = describe(&view);
        assert_eq!((figures.reading, figures.greatest_lag), (None, None));
        assert!(figures.heading.is_some());
        assert_eq!(
            describe(&StripChartView::default()),
            StripFigures::default()
        );
    }

    #[test]
    fn a_turn_through_north_is_shown_unbroken_and_a_full_circle_from_north_to_north() {
        let samples = flight();
        let view = StripChartView {
            samples: &samples,
            ..StripChartView::default()
        };
        let size = Size::new(1180.0, 260.0);
        let part = StripLayout::new(&view, size).heading.y.values();
        assert_eq!(part, [330.0, 390.0]);
        let around: Vec<Sample> = (0..60)
            .map(|i| sample(f64::from(i), 9.0 * f64::from(i), 9.0 * f64::from(i), 9.0))
            .collect();
        let view = StripChartView {
            samples: &around,
            ..view
        };
        assert_eq!(
            StripLayout::new(&view, size).heading.y.values(),
            [0.0, 360.0]
        );
    }

    #[test]
    fn a_place_in_the_picture_is_a_time() {
        let view = StripChartView {
            window: [10.0, 20.0],
            ..StripChartView::default()
        };
        let layout = StripLayout::new(&view, Size::new(800.0, 220.0));
        let x = layout.x_of(12.5);
        assert!((layout.time_at(x).unwrap() - 12.5).abs() < 1e-9);
        assert_eq!(layout.time_at(0.0), None);
    }

    #[test]
    fn text_has_a_header_and_six_decimals_and_leaves_gaps_out() {
        let mut samples = flight();
        samples[1].time = f64::NAN;
        let text = to_csv(&samples[..3]);
        let expected = "\
time_s,heading_deg,reading_deg,error_deg,bank_deg,airspeed_kt,rate_of_turn_deg_s
0.000000,350.000000,350.000000,0.000000,15.000000,100.000000,3.000000
20.000000,20.000000,26.000000,6.000000,-15.000000,100.000000,-3.000000
";
        assert_eq!(text, expected);
    }
}

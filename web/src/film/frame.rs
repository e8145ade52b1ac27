//! One frame of a film or a still: the moment in the words of the page.

use super::captions::Captions;
use crate::cover::Cover;
use crate::setting::Setting;
use crate::words::FlightWords;
use compass::heading_indicator::GyroHeading;
use compass::simulation::Moment;
use compass::unit::KNOT;
use drawing::card_face::{self, CardFaceView};
use drawing::shape::Shape;
use drawing::still::{self, Beside, COMPOSED, StillView};
use drawing::strip_chart::{Sample, StripChartView};
use drawing::torque_ledger::LedgerView;

/// What goes into every frame alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Composition {
    /// What the film is called; may be empty.
    pub(crate) title: String,
    /// Whether the torques are drawn.
    pub(crate) torques: bool,
    /// Whether the flight so far is drawn.
    pub(crate) strips: bool,
    /// Captions and chapters.
    pub(crate) captions: Captions,
}

/// What changes from frame to frame.
pub(crate) struct Instant<'a> {
    /// The moment.
    pub(crate) moment: &'a Moment,
    /// What the flight started from.
    pub(crate) setting: &'a Setting,
    /// What the heading indicator shows, where it takes the place of the rose.
    pub(crate) dial: Option<GyroHeading>,
    /// What is not to be shown.
    pub(crate) cover: Cover,
    /// The flight so far, and from when to when its strips run, in seconds.
    pub(crate) samples: &'a [Sample],
    pub(crate) window: [f64; 2],
    /// The torque at either end of the ledger's scale, rad/s².
    pub(crate) scale: f64,
}

/// Draws a frame, [`COMPOSED`] in size.
pub(crate) fn frame(
    words: &FlightWords,
    composition: &Composition,
    instant: &Instant,
) -> Vec<Shape> {
    let moment = instant.moment;
    let (motion, reading) = (&moment.motion, &moment.reading);
    let difference = moment.difference();
    let [error, said] = [(words.error)(difference), (words.difference)(difference)];
    let figures = [
        (words.film().time, (words.film().clock)(moment.time)),
        (
            words.bank,
            (words.bank_value)(motion.bank.to_degrees().round() as i32),
        ),
        (
            words.airspeed,
            (words.airspeed_value)((motion.airspeed / KNOT).round() as i32),
        ),
    ];
    let figures = figures
        .each_ref()
        .map(|(name, figure)| (*name, figure.as_str()));
    let place = (words.film().place)(instant.setting);
    let cover = instant.cover;
    let captions = &composition.captions;
    let view = StillView {
        card: CardFaceView {
            attitude: reading.card,
            heading: motion.heading,
            reading: reading.compass,
            apparent_vertical: moment.apparent_gravity,
            at_stop: reading.at_stop,
            show_reference: cover.shows_heading(),
            show_compass: cover.shows_compass(),
            words: card_face::Words {
                error: (cover.shows_both() && !error.is_empty()).then_some(error.as_str()),
                stop: Some(words.at_stop),
                cover: Some(words.presenter().question),
            },
        },
        beside: instant.dial.map_or(Beside::Rose, Beside::Dial),
        // Torques and strips say how the card errs: not while one reading is covered.
        ledger: (composition.torques && cover.shows_both()).then_some(LedgerView {
            torques: moment.torques,
            scale: instant.scale,
            words: words.why.in_ledger(),
        }),
        strip: composition.strips.then_some(StripChartView {
            samples: instant.samples,
            window: instant.window,
            show_reference: cover.shows_heading(),
            show_compass: cover.shows_compass(),
            words: words.strips,
            ..StripChartView::default()
        }),
        captioned: !captions.cues.is_empty(),
        words: still::Words {
            title: &composition.title,
            chapter: captions.chapter_at(moment.time),
            place: &place,
            heading: words.heading,
            compass: words.compass,
            difference: &said,
            figures: &figures,
            caption: captions.cue_at(moment.time),
            caution: words.caution,
        },
    };
    still::still(&view, COMPOSED)
}

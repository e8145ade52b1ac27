//! What the panel paints: this moment, and the frames of a film.

use super::making::{Doing, Making, SIZES};
use crate::components::pictures::theme;
use crate::cover::Cover;
use crate::download::{download, download_png};
use crate::film::Film;
use crate::film::captions::Captions;
use crate::film::frame::{Composition, Instant, frame};
use crate::film::kit::Job;
use crate::preferences::Aside;
use crate::session::Readout;
use crate::stage::Stage;
use crate::stretch::Stretch;
use compass::simulation::{Moment, STEP};
use drawing::shape::Shape;
use drawing::still::COMPOSED;
use drawing::strip_chart::Sample;
use drawing::svg::Picture;
use drawing::torque_ledger::{SMALLEST_SCALE, steady_scale};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use std::sync::Arc;
use web_sys::HtmlCanvasElement;
use web_sys::js_sys::Date;

/// The strips of a flight that goes on are as long as so many whole seconds.
const STRETCH: f64 = 60.0;

impl Making {
    pub(super) fn save_png(self) {
        let theme = untrack(|| theme(self.cockpit));
        let shapes = self.shapes_now(&self.cockpit.now());
        download_png("dipwise-still.png", COMPOSED, &theme, &shapes);
    }

    pub(super) fn save_svg(self) {
        let readout = self.cockpit.now();
        let words = self.cockpit.words;
        let shown = readout.cover.shows_both();
        let text = Picture {
            size: COMPOSED,
            shapes: &self.shapes_now(&readout),
            theme: &untrack(|| theme(self.cockpit)),
            id: "frame",
            title: words.readings,
            description: &if shown {
                (words.moment)(&readout)
            } else {
                (words.card_face)(&readout)
            },
            ground: true,
        }
        .to_svg();
        download("dipwise-still.svg", "image/svg+xml", &text);
    }

    /// Paints this moment: as fine as it is recorded, or for a look.
    pub(super) fn paint_now(self) {
        let Some(canvas) = self.canvas.get_untracked() else {
            return;
        };
        let recording = matches!(self.doing.get_untracked(), Doing::Recording(_));
        let fine = if recording {
            fine(SIZES[self.size.get_untracked()])
        } else {
            0.5
        };
        let theme = untrack(|| theme(self.cockpit));
        let shapes = untrack(|| self.shapes_now(&self.cockpit.now()));
        Stage::paint_apart(&canvas, COMPOSED, fine, &theme, &shapes);
    }

    fn shapes_now(self, readout: &Readout) -> Vec<Shape> {
        let composition = self.composition(readout.cover);
        let moment = &readout.moment;
        self.cockpit.with_session(|session| {
            let samples = until(session.flown().chart(), moment);
            let end = (readout.flown / STRETCH).ceil().max(1.0) * STRETCH;
            frame(
                self.cockpit.words,
                &composition,
                &Instant {
                    moment,
                    setting: &readout.setting,
                    dial: self.dial().then(|| readout.indication()),
                    cover: readout.cover,
                    samples: &samples,
                    window: [0.0, end],
                    scale: steady_scale(&moment.torques, SMALLEST_SCALE),
                },
            )
        })
    }

    fn dial(self) -> bool {
        untrack(|| self.cockpit.preferences.aside()) == Aside::Indicator
    }

    fn composition(self, cover: Cover) -> Composition {
        Composition {
            title: self.title.get_untracked(),
            torques: self.torques.get_untracked(),
            strips: self.strips.get_untracked(),
            captions: match self.captions() {
                // What is said and done tells how the card errs.
                (captions, true) if cover.shows_both() => captions,
                _ => Captions::default(),
            },
        }
    }

    /// The demonstration that is open, unless the pilot has taken over from it.
    fn played(self) -> Option<Arc<lessons::demonstration::Flown>> {
        untrack(|| self.player.open_now().filter(|_| self.player.plays()))
    }

    /// Captions and chapters of the demonstration that is open, while its flight is flown; else the
    /// flight's events as chapters. Whether they are a demonstration's: events are not shown in the
    /// picture.
    fn captions(self) -> (Captions, bool) {
        let words = self.cockpit.words;
        let played = self.played();
        self.cockpit.with_session(|session| {
            let flown = session.flown();
            let shown = played.is_some();
            let captions = match played {
                Some(played) => Captions {
                    cues: (played.captions().into_iter())
                        .map(|it| (it.from, it.to, it.text))
                        .collect(),
                    chapters: (played.chapters().into_iter())
                        .map(|it| (it.from, it.title))
                        .collect(),
                },
                None => Captions {
                    cues: Vec::new(),
                    chapters: (flown.events().iter())
                        .map(|it| (it.time, (words.event)(&it.event)))
                        .collect(),
                },
            };
            (captions, shown)
        })
    }

    /// The frames of a film; none, and the reason told, where there is nothing or too much to film.
    pub(super) fn job(self, size: [u32; 2], fps: u32, slower: u32, most: u32) -> Option<Job> {
        self.clear();
        let cockpit = self.cockpit;
        let words = cockpit.words;
        let played = self.played();
        let (mut film, setting) = cockpit.with_session(|session| {
            let stretch = match (session.stretch(), &played) {
                (whole @ Stretch::Whole(..), _) => whole,
                // Of a demonstration that is trimmed, what plays.
                (_, Some(played)) => {
                    let [from, to] = played.plays().map(|it| (it / STEP).round() as u64);
                    Stretch::Whole(from, to)
                }
                (other, None) => other,
            };
            let film = Film::of(session.flown(), stretch, fps, slower);
            (film, session.readout().setting)
        });
        let frames = film.frames();
        let [from, to] = film.span();
        if from == to || frames > most {
            let why = if from == to {
                words.film().nothing
            } else {
                words.film().gif_too_long
            };
            self.tell(why.to_owned());
            return None;
        }
        let canvas: HtmlCanvasElement = document().create_element("canvas").ok()?.unchecked_into();
        canvas.set_width(size[0]);
        canvas.set_height(size[1]);
        let composition = self.composition(Cover::Nothing);
        let (captions, _) = self.captions();
        self.beside.set_value([
            (!captions.cues.is_empty()).then(|| captions.captions_vtt([from, to], slower)),
            (!captions.chapters.is_empty()).then(|| captions.chapters_vtt([from, to], slower)),
        ]);
        let (theme, dial) = (untrack(|| theme(cockpit)), self.dial());
        let mut scale = SMALLEST_SCALE;
        let painted = canvas.clone();
        let paint = move |number| {
            let moment = film.moment(number);
            scale = steady_scale(&moment.torques, scale);
            let flown = film.flown();
            let step = (moment.time / STEP) as u64;
            let samples = until(flown.chart(), &moment);
            let shapes = frame(
                words,
                &composition,
                &Instant {
                    moment: &moment,
                    setting: &setting,
                    dial: dial.then(|| {
                        flown
                            .indicator_at(step)
                            .indication(moment.motion.heading, moment.time)
                    }),
                    cover: Cover::Nothing,
                    samples: &samples,
                    window: [from, to],
                    scale,
                },
            );
            Stage::paint_apart(&painted, COMPOSED, fine(size), &theme, &shapes);
        };
        self.started.set_value(Date::now());
        self.doing.set(Doing::Rendering(0, frames, None));
        Some(Job {
            canvas,
            frames,
            fps,
            paint: Box::new(paint),
        })
    }
}

/// Pixels for each unit of a frame as it is composed.
fn fine([width, _]: [u32; 2]) -> f64 {
    f64::from(width) / COMPOSED.width
}

/// The flight up to a moment, the moment itself last.
fn until(samples: &[Sample], moment: &Moment) -> Vec<Sample> {
    let before = samples.partition_point(|it| it.time < moment.time);
    let mut samples = samples[..before].to_vec();
    samples.push(Sample::from(moment));
    samples
}

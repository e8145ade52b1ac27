//! What the panel makes: videos, animations and stills of the flight, and live recordings.

use crate::cockpit::Cockpit;
use crate::components::pictures::theme;
use crate::cover::Cover;
use crate::download::{download, download_png};
use crate::film::captions::Captions;
use crate::film::frame::{Composition, Instant, frame};
use crate::film::kit::{Container, Formats, Heard, Job, Kit};
use crate::film::{Film, ends};
use crate::flown::Origin;
use crate::intent::Intent;
use crate::player::Player;
use crate::preferences::Aside;
use crate::session::Readout;
use crate::stage::Stage;
use compass::simulation::{Moment, STEP};
use drawing::shape::Shape;
use drawing::still::COMPOSED;
use drawing::strip_chart::Sample;
use drawing::svg::Picture;
use drawing::torque_ledger::{SMALLEST_SCALE, steady_scale};
use leptos::html;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use web_sys::js_sys::Date;
use web_sys::{Blob, HtmlCanvasElement, Url};

/// Width and height of a video, in pixels.
pub(super) const SIZES: [[u32; 2]; 3] = [[1280, 720], [1920, 1080], [3840, 2160]];
/// Frames a second.
pub(super) const FPS: [u32; 2] = [30, 60];
/// How many times slower than the flight.
pub(super) const SLOWER: [u32; 3] = [1, 2, 4];

/// Width and height of a GIF in pixels, and its frames a second; chosen: half a slide, and as few
/// as still show a swing.
const GIF: [u32; 2] = [960, 540];
const GIF_FPS: u32 = 10;
/// The most frames of a GIF: a minute of them.
const GIF_FRAMES: u32 = 60 * GIF_FPS;

/// The strips of a flight that goes on are as long as so many whole seconds.
const STRETCH: f64 = 60.0;

/// What goes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Doing {
    Nothing,
    /// Frames done, frames in all, and the seconds that are left where they are known.
    Rendering(u32, u32, Option<f64>),
    /// Live; held or not.
    Recording(bool),
    /// The narration alone; held or not.
    Narrating(bool),
}

/// A file that waits to be saved.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Done {
    pub(super) address: String,
    pub(super) ending: &'static str,
    pub(super) bytes: f64,
    /// Captions and chapters as WebVTT, where there are any.
    pub(super) captions: Option<String>,
    pub(super) chapters: Option<String>,
}

/// The state of the panel.
#[derive(Clone, Copy)]
pub(super) struct Making {
    cockpit: Cockpit,
    player: Player,
    kit: Kit,
    /// This moment as it would be filmed, and what a live recording records.
    pub(super) canvas: NodeRef<html::Canvas>,
    pub(super) title: RwSignal<String>,
    /// Which of [`SIZES`], [`FPS`], [`SLOWER`] and [`Container::ALL`].
    pub(super) size: RwSignal<usize>,
    pub(super) fps: RwSignal<usize>,
    pub(super) slower: RwSignal<usize>,
    pub(super) container: RwSignal<usize>,
    pub(super) torques: RwSignal<bool>,
    pub(super) strips: RwSignal<bool>,
    pub(super) sound: RwSignal<bool>,
    pub(super) formats: RwSignal<Option<Formats>>,
    pub(super) doing: RwSignal<Doing>,
    pub(super) level: RwSignal<f64>,
    pub(super) narration: RwSignal<Option<f64>>,
    pub(super) notice: RwSignal<String>,
    pub(super) done: RwSignal<Option<Done>>,
    /// Captions and chapters of the film under way.
    beside: StoredValue<[Option<String>; 2]>,
    started: StoredValue<f64>,
}

impl Making {
    pub(super) fn new(cockpit: Cockpit, player: Player) -> Self {
        let doing = RwSignal::new(Doing::Nothing);
        // What is heard changes signals, which are made first.
        let heard = StoredValue::new_local(None::<Self>);
        let kit = Kit::new(move |what| {
            if let Some(making) = heard.try_get_value().flatten() {
                making.hear(what);
            }
        });
        let making = Self {
            cockpit,
            player,
            kit,
            canvas: NodeRef::new(),
            title: RwSignal::default(),
            size: RwSignal::new(1),
            fps: RwSignal::new(0),
            slower: RwSignal::new(0),
            container: RwSignal::new(0),
            torques: RwSignal::new(false),
            strips: RwSignal::new(false),
            sound: RwSignal::new(true),
            formats: RwSignal::new(None),
            doing,
            level: RwSignal::new(0.0),
            narration: RwSignal::new(None),
            notice: RwSignal::default(),
            done: RwSignal::new(None),
            beside: StoredValue::default(),
            started: StoredValue::new(0.0),
        };
        heard.set_value(Some(making));
        making
    }

    /// Asks anew what the browser can encode at the size that is chosen.
    pub(super) fn ask_formats(self) {
        self.kit.formats(SIZES[self.size.get()]);
    }

    /// Whether a video can be rendered as it is chosen.
    pub(super) fn can_render(self) -> bool {
        let container = Container::ALL[self.container.get()];
        self.formats
            .with(|it| it.as_ref().is_some_and(|it| it.offers(container)))
    }

    pub(super) fn render(self) {
        let [fps, slower] = [
            FPS[self.fps.get_untracked()],
            SLOWER[self.slower.get_untracked()],
        ];
        let size = SIZES[self.size.get_untracked()];
        if let Some(job) = self.job(size, fps, slower, u32::MAX) {
            let container = Container::ALL[self.container.get_untracked()];
            self.kit.render(job, container);
        }
    }

    pub(super) fn animate(self) {
        let slower = SLOWER[self.slower.get_untracked()];
        if let Some(job) = self.job(GIF, GIF_FPS, slower, GIF_FRAMES) {
            self.kit.animate(job);
        }
    }

    pub(super) fn cancel(self) {
        self.kit.cancel();
    }

    /// Records what is painted from now on, in the size that is chosen.
    pub(super) fn record(self) {
        self.doing.set(Doing::Recording(false));
        self.clear();
        self.paint_now();
        if let Some(canvas) = self.canvas.get_untracked() {
            self.kit.record(canvas, self.sound.get_untracked());
        }
    }

    /// Records a narration while the flight, or its marked stretch, is replayed.
    pub(super) fn narrate(self) {
        self.doing.set(Doing::Narrating(false));
        self.clear();
        self.kit.narrate();
    }

    pub(super) fn drop_narration(self) {
        self.kit.drop_narration();
        self.narration.set(None);
    }

    /// Pauses what is recorded, or goes on.
    pub(super) fn hold(self) {
        let next = match self.doing.get_untracked() {
            Doing::Recording(held) => Doing::Recording(!held),
            Doing::Narrating(held) => Doing::Narrating(!held),
            other => other,
        };
        self.doing.set(next);
        let held = matches!(next, Doing::Recording(true) | Doing::Narrating(true));
        self.kit.hold(held);
    }

    pub(super) fn end(self) {
        self.kit.end();
    }

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

    /// Captions and chapters of the demonstration that is open, while its flight is flown; else the
    /// flight's events as chapters. Whether they are a demonstration's: events are not shown in the
    /// picture.
    fn captions(self) -> (Captions, bool) {
        let words = self.cockpit.words;
        let open = untrack(|| self.player.open_now());
        self.cockpit.with_session(|session| {
            let flown = session.flown();
            let played = open.filter(|it| {
                matches!(flown.origin(), Origin::Script(file)
                    if **file == it.demonstration().scenario)
            });
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

    /// From when to when would be filmed, in seconds, and whether that is a marked stretch.
    pub(super) fn span(self) -> ([f64; 2], bool) {
        self.cockpit.with_session(|session| {
            let stretch = session.stretch();
            let marked = matches!(stretch, crate::stretch::Stretch::Whole(..));
            (
                ends(session.flown(), stretch).map(|step| step as f64 * STEP),
                marked,
            )
        })
    }

    /// The frames of a film; none, and the reason told, where there is nothing or too much to film.
    fn job(self, size: [u32; 2], fps: u32, slower: u32, most: u32) -> Option<Job> {
        self.clear();
        let cockpit = self.cockpit;
        let words = cockpit.words;
        let (mut film, setting) = cockpit.with_session(|session| {
            let film = Film::of(session.flown(), session.stretch(), fps, slower);
            (film, session.readout().setting)
        });
        let frames = film.frames();
        let [from, to] = film.span();
        if from == to || frames > most {
            let why = if from == to {
                words.film.nothing
            } else {
                words.film.gif_too_long
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

    fn hear(self, heard: Heard) {
        let words = &self.cockpit.words.film;
        match heard {
            Heard::Formats(formats) => {
                let now = self.container.get_untracked();
                let offered = |it: &Container| formats.offers(*it);
                if !offered(&Container::ALL[now])
                    && let Some(other) = Container::ALL.iter().position(offered)
                {
                    self.container.set(other);
                }
                self.formats.set(Some(formats));
            }
            Heard::Progress(done) => {
                if let Doing::Rendering(_, all, _) = self.doing.get_untracked() {
                    let spent = (Date::now() - self.started.get_value()) / 1000.0;
                    // Of the first few frames nothing can be told.
                    let left = (done > 5)
                        .then(|| spent * f64::from(all - done.min(all)) / f64::from(done));
                    self.doing.set(Doing::Rendering(done, all, left));
                }
            }
            Heard::Level(level) => self.level.set(level),
            Heard::Recording => {
                if matches!(self.doing.get_untracked(), Doing::Narrating(_)) {
                    self.replay();
                }
            }
            Heard::Narrated(seconds) => {
                self.narration.set(Some(seconds));
                self.doing.set(Doing::Nothing);
            }
            Heard::Ready(blob) => {
                self.keep(&blob);
                self.doing.set(Doing::Nothing);
                self.tell(words.ready.to_owned());
            }
            Heard::Cancelled => self.stop(words.cancelled.to_owned()),
            Heard::Refused => self.stop(words.refused.to_owned()),
            Heard::Failed(said) => self.stop((words.failed)(&said)),
        }
    }

    /// Replays what would be filmed, from its start.
    fn replay(self) {
        let ([from, _], _) = self.span();
        self.cockpit.ask(Intent::LookAt(from));
        if self.cockpit.now().pause.is_some() {
            self.cockpit.ask(Intent::Pause);
        }
    }

    fn keep(self, blob: &Blob) {
        let kind = blob.type_();
        let ending = ["gif", "webm"]
            .into_iter()
            .find(|ending| kind.contains(ending));
        let [captions, chapters] = self.beside.get_value();
        if let Ok(address) = Url::create_object_url_with_blob(blob) {
            self.done.set(Some(Done {
                address,
                ending: ending.unwrap_or("mp4"),
                bytes: blob.size(),
                captions,
                chapters,
            }));
        }
    }

    fn stop(self, why: String) {
        self.doing.set(Doing::Nothing);
        self.tell(why);
    }

    /// Forgets what was made before.
    fn clear(self) {
        self.notice.set(String::new());
        self.beside.set_value([None, None]);
        if let Some(old) = self.done.get_untracked() {
            let _ = Url::revoke_object_url(&old.address);
        }
        self.done.set(None);
    }

    fn tell(self, words: String) {
        self.cockpit.tell(words.clone());
        self.notice.set(words);
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

//! What the panel makes: videos, animations and stills of the flight, and live recordings.

use crate::cockpit::Cockpit;
use crate::film::ends;
use crate::film::kit::{Container, Formats, Heard, Kit};
use crate::intent::Intent;
use crate::player::Player;
use compass::simulation::STEP;
use leptos::html;
use leptos::prelude::*;
use web_sys::js_sys::Date;
use web_sys::{Blob, Url};

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
    pub(super) cockpit: Cockpit,
    pub(super) player: Player,
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
    pub(super) beside: StoredValue<[Option<String>; 2]>,
    pub(super) started: StoredValue<f64>,
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

    fn hear(self, heard: Heard) {
        let words = self.cockpit.words.film();
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
    pub(super) fn clear(self) {
        self.notice.set(String::new());
        self.beside.set_value([None, None]);
        if let Some(old) = self.done.get_untracked() {
            let _ = Url::revoke_object_url(&old.address);
        }
        self.done.set(None);
    }

    pub(super) fn tell(self, words: String) {
        self.cockpit.tell(words.clone());
        self.notice.set(words);
    }
}

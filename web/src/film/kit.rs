//! The bridge to `static/film.js`, which encodes what is painted. It is loaded when first needed.

use crate::later::later;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::closure::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::rc::Rc;
use web_sys::js_sys::{Array, Function, Object, Reflect};
use web_sys::{Blob, HtmlCanvasElement};

/// What the browser can encode at the size that was asked for: names of codecs, as in “avc”.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Formats {
    /// In an MP4 file.
    pub(crate) mp4: Option<String>,
    /// In a WebM file.
    pub(crate) webm: Option<String>,
    /// The sound of an MP4 file.
    pub(crate) sound: Option<String>,
}

impl Formats {
    /// Whether a file of this kind can be rendered.
    pub(crate) fn offers(&self, container: Container) -> bool {
        match container {
            Container::Mp4 => self.mp4.is_some(),
            Container::WebM => self.webm.is_some(),
        }
    }
}

/// The files that can be rendered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Container {
    /// For programs that show slides.
    Mp4,
    /// For browsers.
    WebM,
}

impl Container {
    /// Every one, in the order of the list.
    pub(crate) const ALL: [Self; 2] = [Self::Mp4, Self::WebM];

    /// The ending of its files' names, by which `film.js` knows it too.
    pub(crate) fn ending(self) -> &'static str {
        match self {
            Self::Mp4 => "mp4",
            Self::WebM => "webm",
        }
    }
}

/// What is heard of the work.
pub(crate) enum Heard {
    /// What can be encoded.
    Formats(Formats),
    /// So many frames are done.
    Progress(u32),
    /// How loud the microphone is, from 0 to 1.
    Level(f64),
    /// A recording has begun.
    Recording,
    /// A narration of so many seconds is kept.
    Narrated(f64),
    /// A file is done.
    Ready(Blob),
    /// The work was cancelled.
    Cancelled,
    /// There is no microphone, or it was not allowed.
    Refused,
    /// The browser says what went wrong; empty where the kit cannot be fetched.
    Failed(String),
}

/// Frames to be painted one after the other.
pub(crate) struct Job {
    /// Where they are painted; it has its size already.
    pub(crate) canvas: HtmlCanvasElement,
    /// How many.
    pub(crate) frames: u32,
    /// So many of them a second.
    pub(crate) fps: u32,
    /// Paints one, counted from nought.
    pub(crate) paint: Box<dyn FnMut(u32)>,
}

/// What paints one frame, as JavaScript calls it.
type Painting = Closure<dyn FnMut(u32)>;

/// What encodes, records and listens.
#[derive(Clone, Copy)]
pub(crate) struct Kit {
    hear: StoredValue<Rc<dyn Fn(Heard)>, LocalStorage>,
    loaded: StoredValue<Option<JsValue>, LocalStorage>,
    /// What paints the frames of the job under way: it must live as long.
    painting: StoredValue<Option<Painting>, LocalStorage>,
}

impl Kit {
    /// A kit that tells of its work.
    pub(crate) fn new(hear: impl Fn(Heard) + 'static) -> Self {
        Self {
            hear: StoredValue::new_local(Rc::new(hear)),
            loaded: StoredValue::new_local(None),
            painting: StoredValue::new_local(None),
        }
    }

    /// Asks what can be encoded at a size.
    pub(crate) fn formats(self, [width, height]: [u32; 2]) {
        self.ask("formats", vec![width.into(), height.into()]);
    }

    /// Renders a video, with the narration under it if one is kept.
    pub(crate) fn render(self, job: Job, container: Container) {
        let told = self.told(job);
        let _ = Reflect::set(&told, &"container".into(), &container.ending().into());
        self.ask("render", vec![told.into()]);
    }

    /// Renders a GIF.
    pub(crate) fn animate(self, job: Job) {
        let told = self.told(job);
        self.ask("animate", vec![told.into()]);
    }

    /// Cancels what is rendered.
    pub(crate) fn cancel(self) {
        self.ask("cancel", Vec::new());
    }

    /// Records what is painted on a canvas from now on, with the microphone or without.
    pub(crate) fn record(self, canvas: HtmlCanvasElement, sound: bool) {
        self.ask("record", vec![canvas.into(), sound.into()]);
    }

    /// Records a narration alone.
    pub(crate) fn narrate(self) {
        self.ask("narrate", Vec::new());
    }

    /// Forgets the narration.
    pub(crate) fn drop_narration(self) {
        self.ask("drop", Vec::new());
    }

    /// Pauses what is recorded, or goes on.
    pub(crate) fn hold(self, held: bool) {
        self.ask("hold", vec![held.into()]);
    }

    /// Ends what is recorded.
    pub(crate) fn end(self) {
        self.ask("end", Vec::new());
    }

    fn told(self, job: Job) -> Object {
        let painting = Painting::wrap(job.paint);
        let told = Object::new();
        for (name, value) in [
            ("canvas", job.canvas.into()),
            ("frames", job.frames.into()),
            ("fps", job.fps.into()),
            ("paint", painting.as_ref().clone()),
        ] {
            // A plain object takes any name.
            let _ = Reflect::set(&told, &name.into(), &value);
        }
        self.painting.set_value(Some(painting));
        told
    }

    /// Calls a function of the kit, loaded first where it is not yet.
    fn ask(self, name: &'static str, arguments: Vec<JsValue>) {
        spawn_local(async move {
            let kit = match self.loaded.get_value() {
                Some(kit) => Some(kit),
                None => self.load().await,
            };
            let asked = kit.and_then(|kit| {
                let function: Function = Reflect::get(&kit, &name.into()).ok()?.dyn_into().ok()?;
                function
                    .apply(&kit, &arguments.iter().collect::<Array>())
                    .ok()
            });
            if asked.is_none() {
                (self.hear.get_value())(Heard::Failed(String::new()));
            }
        });
    }

    async fn load(self) -> Option<JsValue> {
        let module = later("film").await?;
        let make: Function = Reflect::get(&module, &"kit".into()).ok()?.dyn_into().ok()?;
        let hear = self.hear.get_value();
        let listen = Closure::<dyn Fn(JsValue, JsValue)>::new(move |kind: JsValue, value| {
            if let Some(heard) = heard(&kind.as_string().unwrap_or_default(), value) {
                hear(heard);
            }
        });
        // Kept as long as the page: what is recorded may speak up at any time.
        let kit = make.call1(&module, &listen.into_js_value()).ok()?;
        self.loaded.set_value(Some(kit.clone()));
        Some(kit)
    }
}

fn heard(kind: &str, value: JsValue) -> Option<Heard> {
    Some(match kind {
        "formats" => {
            let codec = |name: &str| Reflect::get(&value, &name.into()).ok()?.as_string();
            Heard::Formats(Formats {
                mp4: codec("mp4"),
                webm: codec("webm"),
                sound: codec("sound"),
            })
        }
        "progress" => Heard::Progress(value.as_f64()? as u32),
        "level" => Heard::Level(value.as_f64()?),
        "recording" => Heard::Recording,
        "narrated" => Heard::Narrated(value.as_f64()?),
        "ready" => Heard::Ready(value.dyn_into().ok()?),
        "cancelled" => Heard::Cancelled,
        "refused" => Heard::Refused,
        "failed" => Heard::Failed(value.as_string().unwrap_or_default()),
        _ => return None,
    })
}

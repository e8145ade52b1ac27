//! What the parts of the page share: what is asked, what it means, and the work.

use super::asked::{Asked, Meant, Part};
use super::key::Key;
use super::shown::{Show, Shown};
use super::work::{Wanted, Work};
use crate::address::{self, hash, put_on_clipboard};
use crate::field::Field;
use crate::preferences::Preferences;
use crate::today::today;
use crate::words::{MapWords, Words};
use drawing::theme::Theme;
use drawing::world_map::Projection;
use leptos::ev;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use leptos_use_event_listener::use_event_listener;
use std::sync::Arc;

/// What the parts of the page share.
#[derive(Clone, Copy)]
pub(crate) struct Atlas {
    /// The words of all pages.
    pub(crate) words: &'static Words,
    /// The work.
    pub(crate) work: Work,
    preferences: Preferences,
    asked: RwSignal<Asked>,
    meant: Memo<Meant>,
    shown: Memo<Option<Arc<Shown>>>,
    told: RwSignal<&'static str>,
}

impl Atlas {
    /// As the address asks.
    pub(crate) fn new(words: &'static Words, preferences: Preferences) -> Self {
        let asked = RwSignal::new(by_address(&Asked::new(today())));
        let meant = Memo::new(move |_| asked.with(Asked::meant));
        let work = Work::new();
        let atlas = Self {
            words,
            work,
            preferences,
            asked,
            meant,
            shown: Memo::new(move |_| shown(words, asked, meant, work)),
            told: RwSignal::new(""),
        };
        let known = StoredValue::new(hash());
        let _ = use_event_listener(window(), ev::hashchange, move |_| {
            known.set_value(hash());
            atlas.asked.update(|asked| *asked = by_address(asked));
        });
        address::keep(
            move || atlas.asked.with(|asked| address_of(asked, asked.part)),
            known,
        );
        let wanted = Memo::new(move |_| {
            let date = meant.with(|meant| meant.date)?;
            let turn = meant.with(|meant| meant.turn);
            let simulated = asked.with(|asked| asked.choice(Key::Show) == "simulated");
            let float = asked.with(|asked| asked.choice(Key::Float));
            Some(Wanted {
                date,
                turn: turn.filter(|_| simulated).map(|turn| (turn, float)),
            })
        });
        Effect::new(move || work.ask(wanted.get()));
        atlas
    }

    /// The words of this page.
    pub(crate) fn own(self) -> &'static MapWords {
        MapWords::for_tag(self.words.tag)
    }

    /// A part of what is asked; its readers run only when that part changes.
    pub(crate) fn part<T>(self, of: impl Fn(&Asked) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.asked.with(&of))
    }

    /// What the fields mean.
    pub(crate) fn meant(self) -> Memo<Meant> {
        self.meant
    }

    /// What the map shows, as soon as it can.
    pub(crate) fn shown(self) -> Memo<Option<Arc<Shown>>> {
        self.shown
    }

    /// Which quantity the map shows.
    pub(crate) fn show(self) -> Memo<Show> {
        self.part(|asked| Show::named(asked.choice(Key::Show)))
    }

    /// How the Earth lies in the picture.
    pub(crate) fn projection(self) -> Memo<Projection> {
        self.part(|asked| match asked.choice(Key::View) {
            "globe" => Projection::Globe(asked.middle()),
            _ => Projection::Flat,
        })
    }

    /// What stands in a field.
    pub(crate) fn text(self, key: Key) -> Memo<String> {
        self.part(move |asked| asked.text(key).to_owned())
    }

    /// What is chosen in a field of choices.
    pub(crate) fn choice(self, key: Key) -> Memo<&'static str> {
        self.part(move |asked| asked.choice(key))
    }

    /// What is wrong with a field.
    pub(crate) fn wrong(self, key: Key) -> Memo<Option<String>> {
        Memo::new(move |_| {
            self.meant.with(|meant| {
                let (_, wrong) = meant.faults.iter().find(|fault| fault.0 == key)?;
                Some((self.own().refusal)(key, wrong))
            })
        })
    }

    /// A field, for the form.
    pub(crate) fn field(self, key: Key) -> Field {
        let words = self.own();
        let named = |choice: &&'static str| (*choice, (words.choice)(key, choice));
        Field {
            id: key.name(),
            label: (words.label)(key),
            hint: (words.hint)(key),
            slider: (words.slider)(key),
            is_date: key == Key::Date,
            choices: key.choices().iter().map(named).collect(),
            text: self.text(key),
            chosen: self.choice(key),
            wrong: self.wrong(key),
            set: Callback::new(move |text: String| self.set(key, text)),
        }
    }

    /// Puts a text into a field.
    pub(crate) fn set(self, key: Key, text: impl Into<String>) {
        let text = text.into();
        if self.asked.with_untracked(|asked| asked.text(key) != text) {
            self.asked.update(|asked| asked.set(key, text));
        }
    }

    /// Moves the point, in degrees.
    pub(crate) fn point_at(self, latitude: f64, longitude: f64) {
        self.asked.update(|asked| {
            asked.set(Key::Latitude, degrees(latitude));
            asked.set(Key::Longitude, degrees(longitude));
        });
    }

    /// Turns the globe by so many degrees to the north and to the east.
    pub(crate) fn turn_globe(self, north: f64, east: f64) {
        self.asked.update(|asked| {
            let (latitude, longitude) = asked.middle();
            let latitude = (latitude.to_degrees() + north).clamp(-90.0, 90.0);
            let longitude = longitude.to_degrees() + east;
            asked.set(Key::MiddleLatitude, degrees(latitude));
            asked.set(Key::MiddleLongitude, degrees(folded(longitude)));
        });
    }

    /// The address of a part after `#`, with it.
    pub(crate) fn address(self, part: Part) -> String {
        self.asked.with(|asked| address_of(asked, part))
    }

    /// The address of the page as it stands.
    pub(crate) fn link(self) -> String {
        let here = self
            .asked
            .with_untracked(|asked| address_of(asked, asked.part));
        address::link(&here)
    }

    /// The colours of the page as it is lit.
    pub(crate) fn theme(self) -> Theme {
        self.preferences.theme()
    }

    /// What is told to those who do not see it, and shown in a line.
    pub(crate) fn told(self) -> RwSignal<&'static str> {
        self.told
    }

    /// Copies a text, and says whether that went well.
    pub(crate) fn copy(self, text: String) {
        self.tell(async move { put_on_clipboard(&text).await });
    }

    /// Says whether a copy went well.
    pub(crate) fn tell(self, copied: impl Future<Output = Result<(), JsValue>> + 'static) {
        self.told.set("");
        leptos::task::spawn_local(async move {
            let words = self.own();
            let said = if copied.await.is_ok() {
                words.copied
            } else {
                words.not_copied
            };
            let _ = self.told.try_set(said);
        });
    }
}

/// The atlas of the page that this component stands in.
pub(crate) fn use_atlas() -> Atlas {
    expect_context()
}

/// Degrees as they stand in a field: a tenth is all that a pixel of a map is.
fn degrees(value: f64) -> String {
    crate::situation_form::typed((value * 10.0).round() / 10.0)
}

/// A longitude in degrees within ±180.
pub(crate) fn folded(longitude: f64) -> f64 {
    (longitude + 180.0).rem_euclid(360.0) - 180.0
}

fn address_of(asked: &Asked, part: Part) -> String {
    address::address(part.name(), asked.named(part))
}

fn by_address(asked: &Asked) -> Asked {
    let (part, given) = address::asked();
    asked.at(&part, given)
}

fn shown(
    words: &'static Words,
    asked: RwSignal<Asked>,
    meant: Memo<Meant>,
    work: Work,
) -> Option<Arc<Shown>> {
    let world = work.world().get()?;
    let show = asked.with(|asked| Show::named(asked.choice(Key::Show)));
    let own = MapWords::for_tag(words.tag);
    // Only the maps of the rule depend on the turn.
    let turn = if show.is_of_rule() {
        meant.with(|meant| meant.turn)
    } else {
        None
    };
    let bank = turn.map_or(0.0, |turn| turn.bank);
    let lags = match show {
        Show::Simulated => work.lags().get().filter(|lags| Some(lags.turn) == turn),
        _ => None,
    };
    let map = Shown::new(show, &world, bank, lags.as_deref(), own);
    Some(Arc::new(map))
}

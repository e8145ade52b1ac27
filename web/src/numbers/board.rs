//! What the parts of the page share: what is asked, what is wrong with it, and the planner.

use super::asked::{Asked, Part};
use super::key::Key;
use super::meant::{Plans, Reader, Refusal};
use super::work::Work;
use crate::address::{self, hash, put_on_clipboard};
use crate::field::Field;
use crate::today::today;
use crate::words::Words;
use crate::words::numbers::NumbersWords;
use drawing::sheet::Paper;
use leptos::ev;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use leptos_use_event_listener::use_event_listener;

/// What the parts of the page share.
#[derive(Clone, Copy)]
pub(crate) struct Board {
    /// The words of the page.
    pub(crate) words: &'static Words,
    /// The planner.
    pub(crate) work: Work,
    asked: RwSignal<Asked>,
    faults: Memo<Vec<Refusal>>,
    told: RwSignal<&'static str>,
}

impl Board {
    /// As the address asks.
    pub(crate) fn new(words: &'static Words) -> Self {
        let asked = RwSignal::new(by_address(&Asked::new(today())));
        let board = Self {
            words,
            work: Work::new(),
            asked,
            faults: Memo::new(move |_| asked.with(|asked| Reader::faults(asked, words))),
            told: RwSignal::new(""),
        };
        let known = StoredValue::new(hash());
        let _ = use_event_listener(window(), ev::hashchange, move |_| {
            known.set_value(hash());
            board.asked.update(|asked| *asked = by_address(asked));
        });
        address::keep(
            move || board.asked.with(|asked| address(asked, asked.part)),
            known,
        );
        board
    }

    /// The words of this page.
    pub(crate) fn own(self) -> &'static NumbersWords {
        NumbersWords::for_tag(self.words.tag)
    }

    /// A part of what is asked; its readers run only when that part changes.
    pub(crate) fn part<T>(self, of: impl Fn(&Asked) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.asked.with(&of))
    }

    /// What is asked becomes numbers; none where something is wrong.
    pub(crate) fn meant<T>(
        self,
        of: impl Fn(&mut Reader) -> Option<T> + Send + Sync + 'static,
    ) -> Memo<Option<T>>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.read(&of))
    }

    /// The same at once, and again whenever anything else is asked.
    pub(crate) fn read<T>(self, of: impl FnOnce(&mut Reader) -> T) -> T {
        self.asked
            .with(|asked| of(&mut Reader::new(asked, self.words)))
    }

    /// What stands in a field.
    pub(crate) fn text(self, key: Key) -> Memo<String> {
        self.part(move |asked| asked.text(key).to_owned())
    }

    /// What is chosen in a field of choices.
    pub(crate) fn choice(self, key: Key) -> Memo<&'static str> {
        self.part(move |asked| asked.choice(key))
    }

    /// Whether a field stands on the page as it is asked for.
    pub(crate) fn shows(self, key: Key) -> Memo<bool> {
        self.part(move |asked| asked.shows(asked.part, key))
    }

    /// What is wrong with a field.
    pub(crate) fn wrong(self, key: Key) -> Memo<Option<String>> {
        Memo::new(move |_| {
            self.faults.with(|faults| {
                let fault = faults.iter().find(|fault| fault.key == key)?;
                Some((self.own().refusal)(key, &fault.wrong))
            })
        })
    }

    /// Whether anything is wrong.
    pub(crate) fn is_wrong(self) -> bool {
        self.faults.with(|faults| !faults.is_empty())
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

    /// The address of a part after `#`, with it.
    pub(crate) fn address(self, part: Part) -> String {
        self.asked.with(|asked| address(asked, part))
    }

    /// The size of paper.
    pub(crate) fn paper(self) -> Paper {
        match self.choice(Key::Paper).get() {
            "letter" => Paper::Letter,
            _ => Paper::A4,
        }
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

    /// Plans what these plans ask for from now on.
    pub(crate) fn plan(self, plans: Memo<Option<Plans>>) {
        Effect::new(move || self.work.ask(plans.get()));
    }
}

/// The board of the page that this component stands in.
pub(crate) fn use_board() -> Board {
    expect_context()
}

fn address(asked: &Asked, part: Part) -> String {
    address::address(part.name(), asked.named(part))
}

fn by_address(asked: &Asked) -> Asked {
    let (part, given) = address::asked();
    asked.at(&part, given)
}

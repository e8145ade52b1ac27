//! The set that is composed: its draft, what it means, every change undone, all of it in the
//! address.

use super::draft::{Draft, DraftPart, Fault, Field};
use super::route::hash;
use leptos::ev;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use leptos_use_event_listener::use_event_listener;
use lessons::drill::Kind;
use lessons::drill::set::PracticeSet;
use lessons::making::{History, Step};
use std::time::Duration;
use web_sys::UrlSearchParams;
use web_sys::js_sys::JsString;

/// How long the address waits for the last of many changes; chosen: browsers allow some hundred
/// in half a minute.
const SETTLED: Duration = Duration::from_millis(250);
/// Where the last draft is kept for whoever comes back without its address.
const KEPT: &str = "dipwise.set";

/// The set that is composed.
#[derive(Clone, Copy)]
pub(crate) struct Desk {
    draft: RwSignal<Draft>,
    history: RwSignal<History<Draft, Field>>,
    read: Memo<Result<PracticeSet, Vec<(Field, Fault)>>>,
}

impl Desk {
    /// As the address has it, or as it was left.
    pub(crate) fn open() -> Self {
        let first = by_address(&hash()).or_else(|| by_address(&kept()?));
        let draft = RwSignal::new(first.unwrap_or_default());
        let desk = Self {
            draft,
            history: RwSignal::new(History::default()),
            read: Memo::new(move |_| draft.with(Draft::set)),
        };
        let known = StoredValue::new(hash());
        let _ = use_event_listener(window(), ev::hashchange, move |_| {
            known.set_value(hash());
            if let Some(other) = by_address(&hash())
                && desk.draft.with_untracked(|it| it.named() != other.named())
            {
                desk.change(Step::New, |draft| *draft = other);
            }
        });
        desk.keep_address(known);
        desk
    }

    /// The draft.
    pub(crate) fn draft(self) -> RwSignal<Draft> {
        self.draft
    }

    /// The set that it means; none where something is wrong.
    pub(crate) fn set(self) -> Memo<Option<PracticeSet>> {
        Memo::new(move |_| self.read.with(|read| read.as_ref().ok().cloned()))
    }

    /// What is wrong with a field.
    pub(crate) fn fault(self, field: Field) -> Memo<Option<Fault>> {
        Memo::new(move |_| {
            self.read.with(|read| {
                let faults = read.as_ref().err()?;
                let found = faults.iter().find(|(it, _)| *it == field);
                found.map(|(_, fault)| fault.clone())
            })
        })
    }

    /// Whether anything is wrong.
    pub(crate) fn is_wrong(self) -> bool {
        self.read.with(Result::is_err)
    }

    /// Changes the draft.
    pub(crate) fn change(self, step: Step<Field>, change: impl FnOnce(&mut Draft)) {
        let before = self.draft.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        if after != before {
            self.history.update(|it| it.keep(before, step));
            self.draft.set(after);
        }
    }

    /// Types into a field.
    pub(crate) fn put(self, field: Field, text: String) {
        self.change(Step::In(field), |draft| {
            let into = match field {
                Field::Title => Some(&mut draft.title),
                Field::Minutes => Some(&mut draft.minutes),
                Field::Seed => Some(&mut draft.seed),
                Field::Parts => None,
                Field::Count(id) => draft.part_mut(id).map(|it| &mut it.count),
                Field::Latitude(id) => draft.part_mut(id).map(|it| &mut it.latitude),
                Field::Tolerance(id) => draft.part_mut(id).map(|it| &mut it.tolerance),
            };
            if let Some(into) = into {
                *into = text;
            }
        });
    }

    /// Adds a part, and gives its id.
    pub(crate) fn add(self) -> u32 {
        let id = self.next_id();
        self.change(Step::New, |draft| {
            let had = |kind: &Kind| draft.parts.iter().any(|it| it.kind == *kind);
            let kind = Kind::ALL.into_iter().find(|it| !had(it));
            draft
                .parts
                .push(DraftPart::new(id, kind.unwrap_or(Kind::Predict)));
        });
        id
    }

    /// Takes a change back, or does it again.
    pub(crate) fn go(self, back: bool) {
        let mut draft = self.draft.get_untracked();
        let mut went = false;
        self.history.update(|it| {
            went = if back {
                it.undo(&mut draft)
            } else {
                it.redo(&mut draft)
            };
        });
        if went {
            self.draft.set(draft);
        }
    }

    /// Whether there is a change to take back, or to do again.
    pub(crate) fn can_go(self, back: bool) -> bool {
        self.history
            .with(|it| if back { it.can_undo() } else { it.can_redo() })
    }

    /// Above every id that is in use or could be undone to.
    fn next_id(self) -> u32 {
        let most = self
            .draft
            .with_untracked(|it| it.parts.iter().map(|part| part.id).max());
        most.map_or(0, |it| it + 1)
    }

    /// Writes the draft into the address, and keeps it; `known` is the address as it was last read
    /// or written.
    fn keep_address(self, known: StoredValue<String>) {
        let waiting = StoredValue::new(None::<TimeoutHandle>);
        Effect::new(move || {
            let address = self.draft.with(address);
            let write = move || {
                let there = hash();
                // Another address was asked for, and is about to be read; or the other part.
                if known.with_value(|known| *known != there) || there.starts_with("#class") {
                    return;
                }
                let history = window().history();
                // Refused where there were too many changes: the next one is written again.
                let _ = history.map(|history| {
                    history.replace_state_with_url(&JsValue::NULL, "", Some(&address))
                });
                known.set_value(hash());
                keep(&address);
            };
            let next = set_timeout_with_handle(write, SETTLED).ok();
            if let Some(before) = waiting
                .try_update_value(|it| std::mem::replace(it, next))
                .flatten()
            {
                before.clear();
            }
        });
    }
}

/// The address of a draft after `#`, with it.
pub(crate) fn address(draft: &Draft) -> String {
    let Ok(fields) = UrlSearchParams::new() else {
        return "#compose".to_owned();
    };
    for (name, text) in draft.named() {
        fields.append(name, &text);
    }
    format!("#compose?{}", String::from(fields.to_string()))
}

fn by_address(hash: &str) -> Option<Draft> {
    let (_, fields) = hash.split_once('?')?;
    let fields = UrlSearchParams::new_with_str(fields).ok()?;
    Draft::at(|name| {
        let texts = fields.get_all(name);
        texts
            .iter()
            .map(|it| String::from(JsString::from(it)))
            .collect()
    })
}

/// A browser that keeps nothing counts as one that kept nothing: the address has it all.
fn kept() -> Option<String> {
    window().local_storage().ok()??.get_item(KEPT).ok()?
}

fn keep(address: &str) {
    if let Ok(Some(storage)) = window().local_storage() {
        let _ = storage.set_item(KEPT, address);
    }
}

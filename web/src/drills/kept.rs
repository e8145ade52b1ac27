//! What is kept in this browser: a copy of it, another put in, all of it deleted.

use super::keep::{Keep, use_keep};
use crate::download::download;
use crate::today::today;
use crate::words::ProgressWords;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use lessons::drill;
use web_sys::js_sys::futures::JsFuture;
use web_sys::{Event, HtmlInputElement};

/// The longest file that is read, in bytes; chosen: [`drill::kept::MOST_ANSWERS`] answers and
/// room.
const LONGEST: f64 = 200e6;

/// What is asked before anything changes.
#[derive(Clone, Debug, PartialEq)]
enum Asked {
    /// Whether all is to be deleted.
    Delete,
    /// What is to be done with a file.
    Import(Box<drill::kept::Kept>),
}

/// What was done, or what was wrong.
#[derive(Clone, Debug, Default, PartialEq)]
struct Told {
    said: String,
    /// What was kept before and after, to go back.
    change: Option<(drill::kept::Kept, drill::kept::Kept)>,
}

#[derive(Clone, Copy)]
struct Desk {
    keep: Keep,
    words: &'static ProgressWords,
    asked: RwSignal<Option<Asked>>,
    told: RwSignal<Told>,
}

impl Desk {
    fn save(self) {
        let whole = self.keep.whole().get_untracked().to_json();
        let name = format!("dipwise-practice-{}.json", today());
        download(&name, "application/json", &whole);
    }

    fn say(self, said: String) {
        self.told.set(Told { said, change: None });
    }

    /// Changes what is kept; the way back stays open until something else is done.
    fn change(self, change: impl FnOnce(Keep), said: impl FnOnce(usize) -> String) {
        let before = self.keep.whole().get_untracked();
        change(self.keep);
        let after = self.keep.whole().get_untracked();
        self.told.set(Told {
            said: said(after.answers.len()),
            change: Some((before, after)),
        });
        self.asked.set(None);
    }

    fn undo(self) {
        if let Some((before, after)) = self.told.get_untracked().change {
            self.keep.go_back(before, after);
            self.say(self.words.kept.undone.to_owned());
        }
    }

    /// A file was chosen: it is read, and what it holds is asked about.
    fn chosen(self, event: &Event) {
        let input = event.target();
        let Some(input) = input.and_then(|it| it.dyn_into::<HtmlInputElement>().ok()) else {
            return;
        };
        let Some(file) = input.files().and_then(|it| it.get(0)) else {
            return;
        };
        // The same file can be chosen again, once it is mended.
        input.set_value("");
        self.asked.set(None);
        if file.size() > LONGEST {
            self.say(self.words.kept.too_long.to_owned());
            return;
        }
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await.ok();
            match text.and_then(|it| it.as_string()) {
                Some(text) => self.read(&file.name(), &text),
                None => self.say(self.words.kept.unread.to_owned()),
            }
        });
    }

    fn read(self, name: &str, text: &str) {
        match drill::kept::Kept::from_json(text) {
            Ok(kept) if self.keep.whole().with_untracked(|it| it.is_empty()) => {
                self.change(|keep| keep.replace(kept), self.words.kept.imported);
            }
            Ok(kept) => {
                self.say(String::new());
                self.asked.set(Some(Asked::Import(Box::new(kept))));
            }
            Err(error) => self.say((self.words.kept.refused)(name, &error)),
        }
    }
}

/// The part.
#[component]
pub(crate) fn Kept() -> impl IntoView {
    let words: &'static ProgressWords = expect_context::<&'static ProgressWords>();
    let own = &words.kept;
    let keep = use_keep();
    let desk = Desk {
        keep,
        words,
        asked: RwSignal::new(None),
        told: RwSignal::new(Told::default()),
    };
    let holds = move || {
        (keep.whole()).with(|it| (own.holds)(it.answers.len(), it.handed.len(), it.begun.len()))
    };
    let empty = Memo::new(move |_| keep.whole().with(drill::kept::Kept::is_empty));
    let delete = move |_| {
        desk.say(String::new());
        desk.asked.set(Some(Asked::Delete));
    };
    view! {
        <section class="kept" aria-labelledby="kept-title">
            <h2 id="kept-title">{own.title}</h2>
            <p class="what-next" id="holds">{holds}</p>
            <p class="private">{own.private}</p>
            <ul class="ways-out">
                <li>
                    <button type="button" disabled=move || empty.get() on:click=move |_| desk.save()>
                        {own.save}
                    </button>
                    <span class="hint">{own.save_note}</span>
                </li>
                <li>
                    <label class="file">
                        <span>{own.open}</span>
                        <input
                            type="file"
                            accept=".json,application/json"
                            on:change=move |event| desk.chosen(&event)
                        />
                    </label>
                    <span class="hint">{own.open_note}</span>
                </li>
                <li>
                    <button type="button" disabled=move || empty.get() on:click=delete>
                        {own.delete}
                    </button>
                    <span class="hint">{own.delete_note}</span>
                </li>
            </ul>
            {move || desk.asked.get().map(|asked| view! { <Question desk asked/> })}
            <div class="done" role="status">
                <p>{move || desk.told.with(|it| it.said.clone())}</p>
                <Show when=move || desk.told.with(|it| it.change.is_some())>
                    <button type="button" on:click=move |_| desk.undo()>{own.undo}</button>
                </Show>
            </div>
        </section>
    }
}

/// What is asked, with its answers.
#[component]
fn Question(desk: Desk, asked: Asked) -> impl IntoView {
    let own = &desk.words.kept;
    let here = desk.keep.whole().with_untracked(|it| it.answers.len());
    // Who uses the keyboard stands before the question at once.
    let first = NodeRef::<leptos::html::Div>::new();
    Effect::new(move || {
        if let Some(question) = first.get() {
            let _ = question.focus();
        }
    });
    let (question, answers) = match asked {
        Asked::Delete => {
            let delete = move |_| {
                let settings = desk.keep.whole().with_untracked(|it| it.settings);
                let empty = drill::kept::Kept {
                    settings,
                    ..drill::kept::Kept::default()
                };
                desk.change(|keep| keep.replace(empty), |_| own.deleted.to_owned());
            };
            let answers = view! {
                <button type="button" on:click=delete>{own.delete_all}</button>
            };
            ((own.ask_delete)(here), answers.into_any())
        }
        Asked::Import(kept) => {
            let question = (own.ask_import)(kept.answers.len(), here);
            let (added, replaced) = (kept.clone(), *kept);
            let add = move |_| {
                let added = *added.clone();
                desk.change(|keep| keep.add(added), own.imported);
            };
            let replace = move |_| {
                let replaced = replaced.clone();
                desk.change(|keep| keep.replace(replaced), own.imported);
            };
            let answers = view! {
                <button type="button" on:click=add>{own.add}</button>
                <button type="button" on:click=replace>{own.replace}</button>
            };
            (question, answers.into_any())
        }
    };
    view! {
        <div class="question" role="group" aria-labelledby="question" tabindex="-1" node_ref=first>
            <p id="question">{question}</p>
            <div class="ways-in">
                {answers}
                <button type="button" on:click=move |_| desk.asked.set(None)>{own.leave}</button>
            </div>
        </div>
    }
}

//! A set is handed out: as a link, a QR code, a file, and a package for a course platform.

use super::super::app::said;
use super::super::desk::Desk;
use super::preview::Progress;
use super::tasks::{Making, shown};
use crate::components::link_forms::{Copied, QrCode};
use crate::download::{download, download_bytes};
use crate::link::{self, Code, Fault};
use crate::pages::Page;
use drawing::qr_code::MOST_BYTES;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::qti;
use lessons::drill::set::PracticeSet;
use std::time::Duration;

/// How long the link waits for the last of many changes; chosen: typing goes on within it.
const SETTLED: Duration = Duration::from_millis(300);

/// A link that was made.
#[derive(Clone, Debug, PartialEq)]
struct Made {
    link: String,
    /// None for a link that is too long for one.
    code: Option<Code>,
}

/// Handing out.
#[component]
pub(super) fn HandOut() -> impl IntoView {
    let desk: Desk = expect_context();
    let all = said();
    let words = &all.own.hand_out;
    let set = desk.set();
    let made = RwSignal::new(None::<Result<Made, Fault>>);
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move || {
        let now = set.get();
        let start = move || {
            spawn_local(async move {
                let found = match now.clone() {
                    Some(it) => Some(make(it).await),
                    None => None,
                };
                // Something else may stand there by now.
                if set.try_get_untracked() == Some(now) {
                    made.try_set(found);
                }
            });
        };
        let next = set_timeout_with_handle(start, SETTLED).ok();
        let before = waiting.try_update_value(|it| std::mem::replace(it, next));
        if let Some(before) = before.flatten() {
            before.clear();
        }
    });
    view! {
        <section class="hand-out" aria-labelledby="hand-out-title" hidden=move || set.with(Option::is_none)>
            <h2 id="hand-out-title">{words.title}</h2>
            <p class="hint">{words.hint}</p>
            {move || match made.get() {
                None => view! { <p role="status">{all.all.links.making}</p> }.into_any(),
                Some(Ok(made)) => view! { <Link made/> }.into_any(),
                Some(Err(fault)) => view! {
                    <p role="status">{(all.all.links.fault)(&fault)}</p>
                    <div class="take-home"><SaveFile/></div>
                }
                .into_any(),
            }}
            <Package/>
        </section>
    }
}

/// The link of a set, and its code.
async fn make(set: PracticeSet) -> Result<Made, Fault> {
    let text = link::of_set(&set).await?;
    let here = window().location().href().unwrap_or_default();
    let page = here.split(['#', '?']).next().unwrap_or_default();
    let folder = page.rfind('/').map_or("", |at| &page[..=at]);
    let link = format!("{folder}{}#set={text}", Page::Drills.address());
    let code = link::code(&link).await?;
    Ok(Made { link, code })
}

#[component]
fn Link(made: Made) -> impl IntoView {
    let all = said();
    let words = &all.all.links;
    let Made { link, code } = made;
    let length = link.len();
    let code = match code {
        Some(code) => view! { <QrCode words code/> }.into_any(),
        None => view! { <p>{(words.no_qr_code)(length, MOST_BYTES)}</p> }.into_any(),
    };
    view! {
        <div class="share-parts">
            {code}
            <div class="share-texts">
                <Copied words label=words.link id="set-link" text=link.clone()/>
                <p class="hint">{(words.length)(length, true)}</p>
                <div class="take-home">
                    <SaveFile/>
                    <a id="open-set" href=link target="_blank" rel="noopener">
                        {all.own.hand_out.open}
                    </a>
                </div>
            </div>
        </div>
    }
}

/// The set's file, which needs no link.
#[component]
fn SaveFile() -> impl IntoView {
    let desk: Desk = expect_context();
    let set = desk.set();
    let save = move |_| {
        if let Some(set) = set.get_untracked() {
            download("dipwise-set.json", "application/json", &set.to_json());
        }
    };
    view! { <button type="button" on:click=save>{said().own.hand_out.save}</button> }
}

/// The package for a course platform.
#[component]
fn Package() -> impl IntoView {
    let desk: Desk = expect_context();
    let words = &said().own.hand_out;
    let set = desk.set();
    let making = Making::new();
    let failed = RwSignal::new(false);
    Effect::new(move || {
        set.track();
        making.clear();
        failed.set(false);
    });
    let counts = Memo::new(move |_| {
        set.with(|it| {
            let parts = it.as_ref().map_or(&[][..], |it| &it.parts);
            let of = |asked: bool| {
                let those = parts
                    .iter()
                    .filter(|it| qti::in_words(it.kind, it.level) == asked);
                those.map(|it| it.count as usize).sum::<usize>()
            };
            (of(true), of(false))
        })
    });
    let save = move |_| {
        let Some(set) = set.get_untracked().filter(|_| counts.get_untracked().0 > 0) else {
            return;
        };
        let mut tasks = shown(&set);
        tasks.retain(|it| qti::in_words(it.kind, it.level));
        making.make(tasks, move |tasks| match qti::package(&set, tasks) {
            Ok(bytes) => download_bytes("dipwise-qti.zip", "application/zip", &bytes),
            Err(_) => failed.set(true),
        });
    };
    view! {
        <div class="package">
            <button
                type="button"
                aria-disabled=move || (counts.get().0 == 0).to_string()
                on:click=save
            >
                {words.qti}
            </button>
            <p class="hint">{move || (words.qti_note)(counts.get().0, counts.get().1)}</p>
            <Progress making/>
            <p class="wrong" role="alert">{move || failed.get().then_some(words.qti_failed)}</p>
        </div>
    }
}

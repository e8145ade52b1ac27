//! A set that was handed out: opened by its link or its file, done in order, taken home.

mod begin;
mod ending;
mod run;
mod time;

use crate::chosen_file::chosen_text;
use crate::link;
use crate::pages::browser_words;
use crate::words::HandedWords;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::set::PracticeSet;
use run::Run;

/// A set by what its link carries; nothing for one that is still to be opened.
#[component]
pub(crate) fn Handed(set: String) -> impl IntoView {
    let opened = RwSignal::new(None::<Result<PracticeSet, String>>);
    let code = set.clone();
    if !set.is_empty() {
        spawn_local(async move {
            let found = open(&set).await;
            opened.try_set(Some(found));
        });
    }
    let words = words();
    view! {
        <section class="handed">
            {move || match opened.get() {
                Some(Ok(set)) => view! { <Run set code=code.clone()/> }.into_any(),
                Some(Err(said)) => view! {
                    <p class="wrong" role="alert">{said}</p>
                    <OpenFile/>
                }
                .into_any(),
                None if code.is_empty() => view! {
                    <h2>{words.title}</h2>
                    <p>{words.about}</p>
                    <OpenFile/>
                }
                .into_any(),
                None => view! { <p role="status">{words.opening}</p> }.into_any(),
            }}
        </section>
    }
}

/// The way to a set's file, to stand among the parts of the page.
#[component]
pub(crate) fn HandedLink(
    /// Whether a set is shown now.
    #[prop(into)]
    shown: Signal<bool>,
) -> impl IntoView {
    view! {
        <a href="#set=" aria-current=move || shown.get().then_some("true")>{words().part}</a>
    }
}

async fn open(code: &str) -> Result<PracticeSet, String> {
    match link::set_of(code).await {
        Ok(Some(set)) => Ok(set),
        Ok(None) => Err(words().no_set.to_owned()),
        Err(fault) => Err((browser_words().links.fault)(&fault)),
    }
}

/// A set's file becomes its link, so that a reload opens it again.
#[component]
fn OpenFile() -> impl IntoView {
    let refused = RwSignal::new(String::new());
    let choose = move |event| {
        spawn_local(async move {
            refused.set(String::new());
            let said = match chosen_text(&event).await {
                None => return,
                Some(Err(_)) => words().unread.to_owned(),
                Some(Ok(text)) => match go_to(&text).await {
                    Ok(()) => return,
                    Err(said) => said,
                },
            };
            refused.try_set(said);
        });
    };
    view! {
        <div class="take-home">
            <label class="file">
                <input type="file" accept=".json,application/json" on:change=choose/>
                <span>{words().choose}</span>
            </label>
        </div>
        <p class="wrong" role="alert">{move || refused.get()}</p>
    }
}

async fn go_to(text: &str) -> Result<(), String> {
    let set = PracticeSet::from_json(text).map_err(|it| (words().refused)(&it.to_string()))?;
    let code = link::of_set(&set).await;
    let code = code.map_err(|fault| (browser_words().links.fault)(&fault))?;
    // An address of this page is never refused.
    let _ = window().location().set_hash(&format!("set={code}"));
    Ok(())
}

fn words() -> &'static HandedWords {
    HandedWords::for_tag(browser_words().tag)
}

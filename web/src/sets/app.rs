//! The page as a whole.

use super::class::Class;
use super::compose::Compose;
use super::desk::{Desk, address};
use super::route::{Part, use_part};
use crate::pages::{Frame, Page, browser_words};
use crate::preferences::Preferences;
use crate::words::{SetWords, Words};
use leptos::prelude::*;

/// What the parts of the page share: the words of all pages and its own.
#[derive(Clone, Copy)]
pub(super) struct Said {
    pub(super) all: &'static Words,
    pub(super) own: &'static SetWords,
}

/// The page of sets.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = browser_words();
    let own = SetWords::for_tag(words.tag);
    let preferences = Preferences::load();
    let desk = Desk::open();
    provide_context(desk);
    provide_context(Said { all: words, own });
    let part = use_part();
    view! {
        <Frame here=Page::Sets words preferences>
            <Parts part desk/>
            <main class="sets-page" data-part=move || part.get().name()>
                {move || match part.get() {
                    Part::Compose => view! { <Compose/> }.into_any(),
                    Part::Class => view! { <Class/> }.into_any(),
                }}
            </main>
        </Frame>
    }
}

/// The ways from part to part; that to the draft keeps it.
#[component]
fn Parts(part: Signal<Part>, desk: Desk) -> impl IntoView {
    let words = said().own;
    let link = move |it: Part| {
        let to = move || match it {
            Part::Compose => desk.draft().with(address),
            Part::Class => format!("#{}", it.name()),
        };
        view! {
            <a href=to aria-current=move || (part.get() == it).then_some("true")>
                {(words.part)(it)}
            </a>
        }
    };
    view! {
        <nav class="parts" aria-label=words.parts>
            {Part::ALL.map(link).collect_view()}
        </nav>
    }
}

/// The words of the page.
pub(super) fn said() -> Said {
    expect_context()
}

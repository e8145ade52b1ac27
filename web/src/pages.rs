//! The ways from page to page.

use crate::light::follow_light;
use crate::preferences::Preferences;
use crate::words::Words;
use drawing::theme::Light;
use leptos::prelude::*;

/// A page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Page {
    /// Where a flight is flown.
    Fly,
    /// The catalogue of demonstrations.
    Demonstrations,
    /// Tasks to practise.
    Drills,
    /// Sets of tasks for a class.
    Sets,
    /// Numbers on paper.
    Numbers,
    /// Maps of the world.
    Maps,
}

impl Page {
    const ALL: [Self; 6] = [
        Self::Fly,
        Self::Demonstrations,
        Self::Drills,
        Self::Sets,
        Self::Numbers,
        Self::Maps,
    ];

    /// Where it stands, from another page.
    pub(crate) fn address(self) -> &'static str {
        match self {
            Self::Fly => "index.html",
            Self::Demonstrations => "index.html#/demonstrations",
            Self::Drills => "drills.html",
            Self::Sets => "sets.html",
            Self::Numbers => "numbers.html",
            Self::Maps => "maps.html",
        }
    }
}

/// Where a page stands from the one that is here: flight and demonstrations are one document, and
/// going from the one to the other loses nothing.
fn address(here: Page, to: Page) -> &'static str {
    let within = |page| matches!(page, Page::Fly | Page::Demonstrations);
    match to {
        Page::Fly if within(here) => "#/",
        _ if within(here) && within(to) => to.address().trim_start_matches("index.html"),
        _ => to.address(),
    }
}

/// Links to every page, from the one that this stands on: in a line where the style sheet finds
/// room for one, else behind a button.
#[component]
pub(crate) fn Pages(here: Page, words: &'static Words) -> impl IntoView {
    let link = move |page: Page| {
        let name = (words.pages.name)(page);
        let current = (page == here).then_some("page");
        view! { <a href=address(here, page) aria-current=current>{name}</a> }
    };
    view! {
        <button type="button" class="quiet pages-button" id="pages-button" popovertarget="pages">
            <span class="pages-label">{words.pages.title}</span>
        </button>
        <nav class="pages" id="pages" popover="auto" aria-label=words.pages.title>
            {Page::ALL.map(link).collect_view()}
        </nav>
    }
}

/// The frame of a page beside the flight: its top line, what it holds, the caution. What it holds
/// has the preferences as context.
#[component]
pub(crate) fn Frame(
    here: Page,
    words: &'static Words,
    preferences: Preferences,
    children: Children,
) -> impl IntoView {
    follow_light(preferences, words);
    provide_context(preferences);
    view! {
        <header class="top">
            <h1><a href=Page::Fly.address()>{words.name}</a></h1>
            <div class="page-buttons">
                <Pages here words/>
                <button
                    type="button"
                    class="quiet"
                    id="light"
                    on:click=move |_| preferences.change_light()
                >
                    {move || match preferences.light() {
                        Light::Day => words.by_night,
                        Light::Night => words.by_day,
                    }}
                </button>
            </div>
        </header>
        {children()}
        <footer class="caution">{words.caution}</footer>
    }
}

/// The words that the browser asks for.
pub(crate) fn browser_words() -> &'static Words {
    Words::for_tag(&window().navigator().language().unwrap_or_default())
}

//! The ways from page to page.

use crate::words::Words;
use leptos::prelude::*;

/// A page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Page {
    /// Where a flight is flown.
    Fly,
    /// The catalogue of demonstrations.
    Demonstrations,
    /// Numbers on paper.
    Numbers,
}

impl Page {
    const ALL: [Self; 3] = [Self::Fly, Self::Demonstrations, Self::Numbers];

    /// Where it stands.
    pub(crate) fn address(self) -> &'static str {
        match self {
            Self::Fly => "index.html",
            Self::Demonstrations => "index.html#/demonstrations",
            Self::Numbers => "numbers.html",
        }
    }
}

/// Links to every page, from the one that this stands on.
#[component]
pub(crate) fn Pages(here: Page, words: &'static Words) -> impl IntoView {
    let link = move |page: Page| {
        let name = (words.pages.name)(page);
        let current = (page == here).then_some("page");
        view! { <a href=page.address() aria-current=current>{name}</a> }
    };
    view! {
        <nav class="pages" aria-label=words.pages.title>
            {Page::ALL.map(link).collect_view()}
        </nav>
    }
}

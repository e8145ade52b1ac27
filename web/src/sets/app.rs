//! The page as a whole.

use crate::pages::{Frame, Page, browser_words};
use crate::preferences::Preferences;
use leptos::prelude::*;

/// The page of sets.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = browser_words();
    let preferences = Preferences::load();
    view! {
        <Frame here=Page::Sets words preferences>
            <main class="sets-page"></main>
        </Frame>
    }
}

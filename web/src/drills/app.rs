//! The page as a whole.

use crate::light::follow_light;
use crate::preferences::Preferences;
use crate::words::Words;
use leptos::prelude::*;

/// The page of drills.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = Words::for_tag(&window().navigator().language().unwrap_or_default());
    follow_light(Preferences::load(), words);
    view! {
        <header class="top">
            <h1><a href="index.html">{words.name}</a></h1>
        </header>
        <main class="drills"></main>
        <footer class="caution">{words.caution}</footer>
    }
}

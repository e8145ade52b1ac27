//! The page as a whole.

use super::handed::{Handed, HandedLink};
use super::keep::Keep;
use super::kept::Kept;
use super::practise::Practise;
use super::progress::Progress;
use super::route::{Part, Route, use_route};
use super::today::Today;
use crate::pages::{Frame, Page, browser_words};
use crate::preferences::Preferences;
use crate::words::{DrillWords, ProgressWords};
use leptos::prelude::*;

/// The page of drills.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = browser_words();
    let preferences = Preferences::load();
    let keep = Keep::open();
    provide_context(keep);
    let own = ProgressWords::for_tag(words.tag);
    provide_context(own);
    let route = use_route();
    view! {
        <Frame here=Page::Drills words preferences>
            <Parts words=DrillWords::for_tag(words.tag) route/>
            <p class="storage" role="alert">{move || keep.fault().get().map(own.fault)}</p>
            <main class="drills-page">
                {move || if !keep.ready().get() {
                    // What was begun is known only then.
                    view! { <p>{own.reading}</p> }.into_any()
                } else { match route.get() {
                    Route::Handed(set) => view! { <Handed set/> }.into_any(),
                    Route::Part(Part::Today, _) => view! { <Today/> }.into_any(),
                    Route::Part(Part::Practise, fields) => view! { <Practise fields/> }.into_any(),
                    Route::Part(Part::Progress, _) => view! { <Progress/> }.into_any(),
                    Route::Part(Part::Kept, _) => view! { <Kept/> }.into_any(),
                }}}
            </main>
        </Frame>
    }
}

#[component]
fn Parts(words: &'static DrillWords, route: Signal<Route>) -> impl IntoView {
    let link = move |part: Part| {
        let shown = move || matches!(route.get(), Route::Part(it, _) if it == part);
        view! {
            <a
                href=format!("#{}", part.name())
                aria-current=move || shown().then_some("true")
            >
                {(words.part)(part)}
            </a>
        }
    };
    view! {
        <nav class="parts" aria-label=words.parts>
            {Part::ALL.map(link).collect_view()}
            <HandedLink shown=Signal::derive(move || matches!(route.get(), Route::Handed(_)))/>
        </nav>
    }
}

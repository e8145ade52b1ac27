//! The page as a whole.

use super::asked::Part;
use super::atlas::{Atlas, use_atlas};
use super::dip::Dip;
use super::form::{Form, Progressed};
use super::point::AtPoint;
use super::world::{TakeHome, World};
use crate::pages::{Frame, Page, browser_words};
use crate::preferences::Preferences;
use leptos::prelude::*;

/// The page of maps.
#[component]
pub(crate) fn App() -> impl IntoView {
    let words = browser_words();
    let preferences = Preferences::load();
    let atlas = Atlas::new(words, preferences);
    provide_context(atlas);
    let part = atlas.part(|asked| asked.part);
    view! {
        <Frame here=Page::Maps words preferences>
            <Parts/>
            <main class="maps-page" data-part=move || part.get().name()>
                {move || match part.get() {
                    Part::Maps => view! { <Maps/> }.into_any(),
                    Part::Dip => view! { <Dip/> }.into_any(),
                }}
            </main>
            <p class="told" role="status">{atlas.told()}</p>
        </Frame>
    }
}

/// The ways from part to part; each keeps what they have in common.
#[component]
fn Parts() -> impl IntoView {
    let atlas = use_atlas();
    let shown = atlas.part(|asked| asked.part);
    let link = move |part: Part| {
        view! {
            <a
                href=move || atlas.address(part)
                aria-current=move || (shown.get() == part).then_some("true")
            >
                {(atlas.own().part)(part)}
            </a>
        }
    };
    view! {
        <nav class="parts" aria-label=atlas.own().parts>
            {Part::ALL.map(link).collect_view()}
        </nav>
    }
}

/// Maps of the world.
#[component]
fn Maps() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let show = atlas.show();
    view! {
        <Form/>
        <section class="sheet" aria-label=words.results>
            <h2>{move || (words.title)(show.get())}</h2>
            <p class="about">{move || (words.about)(show.get())}</p>
            <World/>
            <Progressed/>
            <TakeHome/>
        </section>
        <AtPoint/>
    }
}

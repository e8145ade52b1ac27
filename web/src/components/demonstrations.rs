//! The catalogue of demonstrations, with what each comes to at a chosen latitude.

use super::controls::keep_focus;
use crate::cockpit::{Cockpit, use_cockpit};
use crate::player::file::open_file;
use crate::player::headlines::{Headline, latitude_of};
use crate::route::Route;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use lessons::demonstration::Demonstration;
use web_sys::{Event, HtmlInputElement};

/// The page that lists them.
#[component]
pub(crate) fn Demonstrations() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    spawn_local(player.fetch_catalogue());
    let fault = move || player.fault();
    // Whoever lists them measured has something to wait for.
    let progress = move || {
        let (done, of) = (player.headlines.count(), player.catalogue().len());
        (done < of).then(|| (words.measuring)(done, of))
    };
    let groups = move || {
        let all = player.catalogue();
        let group = |(title, indices): (&'static str, Vec<usize>)| {
            let item = |index: usize| view! { <Item index demonstration=all[index].clone()/> };
            let items = indices.into_iter().map(item).collect_view();
            view! { <section class="demonstration-group"><h3>{title}</h3><ul>{items}</ul></section> }
        };
        let grouped = (words.groups)(&all);
        grouped.into_iter().map(group).collect_view()
    };
    view! {
        <main class="demonstrations" id="demonstrations">
            <h2>{words.title}</h2>
            <p>{words.about}</p>
            <div class="demonstrations-tools">
                <Latitude/>
                <OpenFile/>
                <a class="button" href=Route::Make.address()>{cockpit.words.making().title}</a>
            </div>
            <p class="wrong" id="fault" role="alert">{fault}</p>
            <p class="measuring" role="status">{progress}</p>
            {groups}
        </main>
    }
}

/// A demonstration of the list.
#[component]
fn Item(index: usize, demonstration: Demonstration) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let headline = move || player.headlines.get(index);
    let Demonstration { name, title, .. } = demonstration.clone();
    let address = move || {
        let latitude = player.headlines.latitude().map(|it| it.to_string());
        Route::Demonstration(name.clone(), latitude).address()
    };
    let title = move || headline().map_or(title.clone(), |it| it.title);
    let figure = move || match headline()?.figure {
        Ok(figure) => figure.map(|it| (words.headline)(&it)),
        Err(error) => Some(error),
    };
    let change = move |_| {
        let latitude = player.headlines.latitude();
        let there = match latitude {
            Some(degrees) => demonstration.clone().at_latitude_deg(f64::from(degrees)),
            None => demonstration.clone(),
        };
        player.to_change.set(Some(there));
        Route::Make.go();
    };
    view! {
        <li class="demonstration">
            <a class="demonstration-title" href=address>{title}</a>
            <p class="look-for">{move || headline().map(|it: Headline| it.look_for)}</p>
            <div class="demonstration-foot">
            <p class="headline">{figure}</p>
            <button
                type="button"
                class="quiet"
                title=words.change.name
                on:mousedown=keep_focus
                on:click=change
            >
                {words.change.label}
            </button>
            </div>
        </li>
    }
}

/// Where they are flown: each where it was made, or all at one latitude, which the address keeps.
#[component]
fn Latitude() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let value = cockpit.words.beside().latitude_value;
    let headlines = cockpit.player.headlines;
    let text = move || match headlines.latitude() {
        Some(degrees) => value(degrees),
        None => words.as_made.to_owned(),
    };
    let go = |to: Route| to.go_instead();
    let slide = move |event: Event| {
        if let Ok(degrees) = latitude_of(&event_target_value(&event)) {
            headlines.move_to(Some(degrees));
        }
    };
    let settle = move |event: Event| go(Route::DemonstrationsAt(event_target_value(&event)));
    view! {
        <div class="demonstrations-latitude">
            <label for="catalogue-latitude">{words.latitude}</label>
            <input
                type="range"
                class="slider"
                id="catalogue-latitude"
                min="-90"
                max="90"
                step="1"
                aria-valuetext=text
                prop:value=move || headlines.latitude().unwrap_or(45).to_string()
                on:input=slide
                on:change=settle
            />
            <output for="catalogue-latitude">{text}</output>
            <button
                type="button"
                hidden=move || headlines.latitude().is_none()
                on:mousedown=keep_focus
                on:click=move |_| go(Route::Demonstrations)
            >
                {words.to_as_made}
            </button>
        </div>
    }
}

/// Opens a file of the user's.
#[component]
fn OpenFile() -> impl IntoView {
    let cockpit = use_cockpit();
    let chosen = move |event: Event| {
        let input = event.target().and_then(|it| it.dyn_into().ok());
        let Some(input): Option<HtmlInputElement> = input else {
            return;
        };
        let file = input.files().and_then(|it| it.get(0));
        if let Some(file) = file {
            spawn_local(open(cockpit, file));
        }
        // The same file, mended, can be chosen again.
        input.set_value("");
    };
    view! {
        <label class="open-file button">
            {cockpit.words.demonstrations().open_file}
            <input type="file" class="unseen" id="open-file" accept=".json,application/json" on:change=chosen/>
        </label>
    }
}

async fn open(cockpit: Cockpit, file: web_sys::File) {
    let opened = open_file(cockpit, file).await;
    cockpit
        .player
        .set_fault(opened.clone().err().unwrap_or_default());
    if opened.is_ok() {
        Route::Fly.go();
    }
}

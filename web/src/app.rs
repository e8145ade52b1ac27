//! The page as a whole: its parts, its keys, its one loop.

use crate::cockpit::Cockpit;
use crate::components::aside::BesideTheCard;
use crate::components::beside::Beside;
use crate::components::controls::Controls;
use crate::components::key_list::KeyList;
use crate::components::pictures::CardFace;
use crate::components::presenter::PresenterLayer;
use crate::components::readings::{CompassLine, HeadingLine, Readings};
use crate::components::situation::Situation;
use crate::components::timeline::Timeline;
use crate::components::top_bar::TopBar;
use crate::components::why::Why;
use crate::cover::Cover;
use crate::hands::Hands;
use crate::intent::{Intent, Meaning, Press, meaning};
use crate::light::follow_light;
use crate::player::{Player, catalogue};
use crate::preferences::View;
use crate::route::{Route, use_route};
use crate::session::Session;
use crate::setting::Setting;
use crate::situation_form::{Draft, SituationForm};
use crate::today::today;
use crate::words::Words;
use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use leptos_use_document_visibility::use_document_visibility;
use leptos_use_raf_fn::{UseRafFnCallbackArgs, use_raf_fn};
use web_sys::{HtmlElement, KeyboardEvent, VisibilityState};

/// Where the page is wide enough for three columns and tall enough for the key list under what
/// stands beside the card.
const ROOMY: &str = "(min-width: 70rem) and (min-height: 42rem)";

/// The page.
#[component]
pub(crate) fn App() -> impl IntoView {
    let tag = window().navigator().language().unwrap_or_default();
    let words = Words::for_tag(&tag);
    let session = Setting::home()
        .ok()
        .and_then(|setting| Session::new(setting).ok());
    match session {
        Some(session) => {
            let draft = Draft::new(SituationForm::new(today()));
            let cockpit = Cockpit::new(session, draft, words, matches(ROOMY));
            let hands = Hands::new(cockpit);
            provide_context(cockpit);
            provide_context(hands);
            let player = Player::new();
            provide_context(player);
            follow(cockpit, player);
            run(cockpit, hands);
            view! { <Page cockpit/> }.into_any()
        }
        None => view! { <p role="alert">{words.failed}</p> }.into_any(),
    }
}

#[component]
fn Page(cockpit: Cockpit) -> impl IntoView {
    let words = cockpit.words;
    let view = move || match cockpit.preferences.view() {
        View::Card => "card",
        View::Aside => "aside",
    };
    let cover = move || match cockpit.cover() {
        Cover::Nothing => None,
        Cover::Compass => Some("compass"),
        Cover::Heading => Some("heading"),
    };
    view! {
        <TopBar/>
        <main
            class="page"
            data-view=view
            data-two=move || cockpit.beside_shown().then_some("shown")
            data-why=move || cockpit.why_shown().then_some("shown")
            data-cover=cover
            // Behind the curtain nothing is read out either.
            inert=move || cockpit.presenter.curtain()
        >
            <Situation/>
            <Readings>
                <CompassLine/>
                <CardFace/>
                <HeadingLine/>
                <BesideTheCard/>
            </Readings>
            <Beside/>
            <Why/>
            <Timeline/>
            <KeyList/>
            <Controls/>
        </main>
        <footer class="caution">{words.caution}</footer>
        <PresenterLayer/>
        <p class="unseen" role="status" aria-live="polite">{move || cockpit.told()}</p>
    }
}

/// Opens what the address names.
fn follow(cockpit: Cockpit, player: Player) {
    let route = use_route();
    Effect::new(move || match route.get() {
        Route::Demonstration(name, latitude) => spawn_local(async move {
            let found = catalogue().await.into_iter().find(|it| it.name == name);
            let latitude = latitude.and_then(|it| it.parse::<f64>().ok());
            let opened = found.map(|it| match latitude {
                Some(degrees) => player.open(cockpit, it.at_latitude_deg(degrees)),
                None => player.open(cockpit, it),
            });
            if let Some(Err(error)) = opened {
                cockpit.tell(error.to_string());
            }
        }),
        _ => player.close(),
    });
}

/// Connects the cockpit with the browser: frames, keys, sight, light and language.
fn run(cockpit: Cockpit, hands: Hands) {
    let _ = use_raf_fn(move |UseRafFnCallbackArgs { timestamp, .. }| {
        hands.frame();
        cockpit.frame(timestamp / 1000.0);
    });

    let visibility = use_document_visibility();
    Effect::new(move || {
        if visibility.get() == VisibilityState::Hidden {
            cockpit.sleep();
        }
    });

    let keys = window_event_listener(ev::keydown, move |event| press(cockpit, &event));
    on_cleanup(move || keys.remove());

    follow_light(cockpit.preferences, cockpit.words);
}

/// A key was pressed anywhere on the page.
fn press(cockpit: Cockpit, event: &KeyboardEvent) {
    let key = event.key();
    let press = Press {
        key: &key,
        shift: event.shift_key(),
        browser: event.ctrl_key() || event.alt_key() || event.meta_key() || event.is_composing(),
        repeat: event.repeat(),
        presenting: untrack(|| cockpit.presenter.presenting()),
    };
    if event.default_prevented() || belongs_elsewhere(event, &key) {
        return;
    }
    match meaning(press) {
        Meaning::None => {}
        Meaning::Held => event.prevent_default(),
        Meaning::Asks(intent) => {
            let always = intent == Intent::ShowKeys || intent.leads_lesson();
            if always || untrack(|| cockpit.preferences.keys_fly()) {
                event.prevent_default();
                cockpit.ask(intent);
            }
        }
    }
}

/// Whether the element in focus uses this key itself.
fn belongs_elsewhere(event: &KeyboardEvent, key: &str) -> bool {
    let Some(element) = event
        .target()
        .and_then(|target| target.dyn_into::<HtmlElement>().ok())
    else {
        return false;
    };
    let name = element.tag_name();
    let typed_into =
        matches!(name.as_str(), "INPUT" | "SELECT" | "TEXTAREA") || element.is_content_editable();
    let pressed = key == " " && matches!(name.as_str(), "BUTTON" | "SUMMARY" | "A");
    typed_into || pressed
}

fn matches(query: &str) -> bool {
    window()
        .match_media(query)
        .ok()
        .flatten()
        .is_some_and(|list| list.matches())
}

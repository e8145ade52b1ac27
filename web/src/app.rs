//! The page as a whole: its parts, its keys, its one loop.

use crate::cockpit::Cockpit;
use crate::components::aside::BesideTheCard;
use crate::components::beside::Beside;
use crate::components::controls::Controls;
use crate::components::key_list::KeyList;
use crate::components::pictures::CardFace;
use crate::components::presenter::PresenterLayer;
use crate::components::readings::{CompassLine, HeadingLine, Readings};
use crate::components::share::OpenInFull;
use crate::components::situation::Situation;
use crate::components::timeline::Timeline;
use crate::components::top_bar::TopBar;
use crate::components::why::Why;
use crate::cover::Cover;
use crate::embed::embedded;
use crate::hands::Hands;
use crate::intent::{Intent, Meaning, Press, meaning};
use crate::light::follow_light;
use crate::preferences::View;
use crate::route::{Route, use_route};
use crate::session::Session;
use crate::setting::Setting;
use crate::situation_form::{Draft, SituationForm};
use crate::teaching::{Begun, KeyTaker, Teaching, leave};
use crate::today::today;
use crate::words::FlightWords;
use leptos::ev;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos_use_document_visibility::use_document_visibility;
use leptos_use_raf_fn::{UseRafFnCallbackArgs, use_raf_fn};
use lessons::demonstration::Part;
use web_sys::{HtmlElement, KeyboardEvent, VisibilityState};

/// Where the page is wide enough for three columns and tall enough for the key list under what
/// stands beside the card.
const ROOMY: &str = "(min-width: 70rem) and (min-height: 42rem)";

/// The page: the flight, and what is taught with it if this program has that.
#[component]
pub(crate) fn App(teaching: Option<Teaching>) -> impl IntoView {
    let tag = window().navigator().language().unwrap_or_default();
    let words = FlightWords::for_tag(&tag);
    let session = Setting::home()
        .ok()
        .and_then(|setting| Session::new(setting).ok());
    match session {
        Some(session) => {
            let draft = Draft::new(SituationForm::new(today()));
            let cockpit = Cockpit::new(session, draft, words, matches(ROOMY), teaching);
            let hands = Hands::new(cockpit);
            provide_context(cockpit);
            provide_context(hands);
            let route = use_route();
            let begun = teaching.map(|it| (it.begin)(cockpit, route));
            let listed = begun.as_ref().map(|it| it.listed);
            let listed = listed.unwrap_or_else(|| Memo::new(|_| false));
            let making = begun.as_ref().map(|it| it.making).unwrap_or_default();
            if teaching.is_none() {
                Effect::new(move || {
                    let route = route.get();
                    if route != Route::Fly {
                        untrack(|| leave(cockpit, &route));
                    }
                });
            }
            let flies = Memo::new(move |_| !listed.get() && !cockpit.player.plan_shown());
            run(cockpit, hands, teaching, begun, flies);
            view! {
                <Page cockpit teaching listed making flies/>
            }
            .into_any()
        }
        None => view! { <p role="alert">{words.failed}</p> }.into_any(),
    }
}

#[component]
fn Page(
    cockpit: Cockpit,
    teaching: Option<Teaching>,
    listed: Memo<bool>,
    making: Signal<bool>,
    flies: Memo<bool>,
) -> impl IntoView {
    let words = cockpit.words;
    let player = cockpit.player;
    let highlight = move || {
        let part = player.standing().highlight;
        player.plays().then(|| words_of(part)).flatten()
    };
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
        <TopBar listed/>
        {teaching.map(|it| (it.pages)(listed))}
        <main
            class="page"
            hidden=move || !flies.get()
            data-view=view
            data-demonstration=move || player.plays().then_some("plays")
            data-highlight=highlight
            data-two=move || cockpit.beside_shown().then_some("shown")
            data-why=move || cockpit.why_shown().then_some("shown")
            data-cover=cover
            data-making=move || making.get().then_some("shown")
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
            {teaching.map(|it| (it.bench)())}
            <KeyList/>
            <div class="foot">{teaching.map(|it| (it.bar)())}<Controls/></div>
        </main>
        <footer class="caution">{words.caution} {embedded().then(|| view! { " " <OpenInFull/> })}</footer>
        {teaching.map(|it| (it.layers)())}
        <PresenterLayer/>
        <p class="unseen" role="status" aria-live="polite">{move || cockpit.told()}</p>
    }
}

/// The part of the page that is pointed at, as the style sheet names it.
fn words_of(part: Part) -> Option<&'static str> {
    Some(match part {
        Part::Nothing => return None,
        Part::Compass => "compass",
        Part::Heading => "heading",
        Part::Beside => "beside",
        Part::Reasons => "reasons",
        Part::Chart => "chart",
    })
}

/// Connects the cockpit with the browser: frames, keys, sight, light and language.
fn run(
    cockpit: Cockpit,
    hands: Hands,
    teaching: Option<Teaching>,
    begun: Option<Begun>,
    flies: Memo<bool>,
) {
    let (listed, taker) = begun.map(|it| (it.listed, it.press)).unzip();
    let _ = use_raf_fn(move |UseRafFnCallbackArgs { timestamp, .. }| {
        hands.frame();
        cockpit.frame(timestamp / 1000.0);
        if let Some((teaching, listed)) = teaching.zip(listed)
            && listed.get_untracked()
        {
            (teaching.list_frame)(cockpit);
        }
    });

    let visibility = use_document_visibility();
    Effect::new(move || {
        if visibility.get() == VisibilityState::Hidden {
            cockpit.sleep();
        }
    });

    let keys = window_event_listener(ev::keydown, move |event| {
        // The keys fly what is seen.
        if flies.get_untracked() {
            press(cockpit, taker.as_ref(), &event);
        }
    });
    Effect::new(move || {
        if !flies.get() {
            cockpit.sleep();
        }
    });
    on_cleanup(move || keys.remove());

    follow_light(cockpit.preferences, cockpit.words);
}

/// A key was pressed anywhere on the page.
fn press(cockpit: Cockpit, taker: Option<&KeyTaker>, event: &KeyboardEvent) {
    let key = event.key();
    let press = Press {
        key: &key,
        shift: event.shift_key(),
        browser: event.ctrl_key() || event.alt_key() || event.meta_key() || event.is_composing(),
        repeat: event.repeat(),
        presenting: untrack(|| cockpit.presenter.presenting()),
        demonstrating: untrack(|| cockpit.player.plays()),
    };
    // A slide clicker leads a demonstration, whatever has the focus.
    let clicked = press.demonstrating && key.starts_with("Page");
    let elsewhere = !clicked && belongs_elsewhere(event, &key);
    let taken = || taker.is_some_and(|it| it(event, elsewhere));
    if event.default_prevented() || taken() || elsewhere {
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

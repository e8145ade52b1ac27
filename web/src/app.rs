//! The page as a whole: its parts, its keys, its one loop.

use crate::cockpit::Cockpit;
use crate::components::aside::BesideTheCard;
use crate::components::beside::Beside;
use crate::components::controls::Controls;
use crate::components::demonstrations::Demonstrations;
use crate::components::film_panel::FilmPanel;
use crate::components::key_list::KeyList;
use crate::components::lesson_plan::LessonPlan;
use crate::components::making::{CueLane, MakingBench};
use crate::components::pictures::CardFace;
use crate::components::player::PlayerBar;
use crate::components::presenter::PresenterLayer;
use crate::components::readings::{CompassLine, HeadingLine, Readings};
use crate::components::share::{OpenInFull, RefusedLink, ShareDialog};
use crate::components::situation::Situation;
use crate::components::timeline::Timeline;
use crate::components::top_bar::TopBar;
use crate::components::why::Why;
use crate::cover::Cover;
use crate::embed::embedded;
use crate::hands::Hands;
use crate::intent::{Intent, Meaning, Press, meaning};
use crate::light::follow_light;
use crate::making::{Maker, use_maker};
use crate::player::Player;
use crate::player::headlines::latitude_of;
use crate::preferences::View;
use crate::route::{Route, use_route};
use crate::session::Session;
use crate::setting::Setting;
use crate::share::{self, Share};
use crate::situation_form::{Draft, SituationForm};
use crate::words::Words;
use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use leptos_use_document_visibility::use_document_visibility;
use leptos_use_raf_fn::{UseRafFnCallbackArgs, use_raf_fn};
use lessons::demonstration::{Demonstration, Part};
use web_sys::js_sys::Date;
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
            let player = cockpit.player;
            provide_context(player);
            let share = Share::new();
            provide_context(share);
            let route = use_route();
            follow(cockpit, player, share, route);
            let maker = Maker::new(cockpit, route);
            provide_context(maker);
            // A demonstration that cannot be opened leaves one to choose another.
            let listed = Memo::new(move |_| {
                let route = route.get();
                let in_vain = matches!(route, Route::Demonstration(..));
                route.is_list() || (in_vain && !player.fault().is_empty())
            });
            let flies = Memo::new(move |_| !listed.get() && !player.plan_shown());
            run(cockpit, hands, maker, listed, flies);
            view! {
                <Page cockpit listed flies/>
            }
            .into_any()
        }
        None => view! { <p role="alert">{words.failed}</p> }.into_any(),
    }
}

#[component]
fn Page(cockpit: Cockpit, listed: Memo<bool>, flies: Memo<bool>) -> impl IntoView {
    let maker = use_maker();
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
        <RefusedLink/>
        <Show when=move || listed.get()><Demonstrations/></Show>
        <Show when=move || player.plan_shown() && !listed.get()><LessonPlan/></Show>
        <main
            class="page"
            hidden=move || !flies.get()
            data-view=view
            data-demonstration=move || player.plays().then_some("plays")
            data-highlight=highlight
            data-two=move || cockpit.beside_shown().then_some("shown")
            data-why=move || cockpit.why_shown().then_some("shown")
            data-cover=cover
            data-making=move || maker.shown().then_some("shown")
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
            <CueLane/>
            <MakingBench/>
            <KeyList/>
            <div class="foot"><PlayerBar/><Controls/></div>
        </main>
        <footer class="caution">{words.caution} {embedded().then(|| view! { " " <OpenInFull/> })}</footer>
        <ShareDialog/>
        <FilmPanel/>
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

/// Opens what the address names.
fn follow(cockpit: Cockpit, player: Player, share: Share, route: Signal<Route>) {
    // What was opened by another way than the address does not leave with it.
    let by_address = StoredValue::new(false);
    Effect::new(move || {
        let now = route.get();
        // A link that is refused changes nothing.
        if by_address.get_value() && !matches!(now, Route::Carried(_)) {
            by_address.set_value(false);
            player.close();
        }
        player.set_fault(String::new());
        share.set_refused(None);
        let words = &cockpit.words.demonstrations;
        match now {
            Route::Carried(text) => {
                spawn_local(async move {
                    match share::open(cockpit, player, &text).await {
                        Ok(()) => by_address.set_value(untrack(|| player.plays())),
                        Err(fault) => share.set_refused(Some(fault)),
                    }
                });
            }
            Route::Demonstrations => player.headlines.move_to(None),
            Route::DemonstrationsAt(text) => match latitude_of(&text) {
                Ok(degrees) => player.headlines.move_to(Some(degrees)),
                Err(()) => player.set_fault((words.no_latitude)(&text)),
            },
            Route::Demonstration(name, latitude) => spawn_local(async move {
                player.fetch_catalogue().await;
                match find(player, &name, latitude.as_deref(), cockpit.words) {
                    Ok(found) => match player.open(cockpit, found) {
                        Ok(()) => by_address.set_value(true),
                        Err(error) => player.set_fault(error.to_string()),
                    },
                    Err(fault) => player.set_fault(fault),
                }
            }),
            _ => {}
        }
    });
}

/// The demonstration of the catalogue that an address names; or what is wrong with the address.
fn find(
    player: Player,
    name: &str,
    latitude: Option<&str>,
    words: &Words,
) -> Result<Demonstration, String> {
    let words = &words.demonstrations;
    let all = untrack(|| player.catalogue());
    let found = all.into_iter().find(|it| it.name == name);
    let found = found.ok_or_else(|| (words.not_found)(name))?;
    let Some(text) = latitude else {
        return Ok(found);
    };
    let degrees = text.parse::<f64>();
    let degrees = degrees.map_err(|_| (words.no_latitude)(text))?;
    Ok(found.at_latitude_deg(degrees))
}

/// Connects the cockpit with the browser: frames, keys, sight, light and language.
fn run(cockpit: Cockpit, hands: Hands, maker: Maker, listed: Memo<bool>, flies: Memo<bool>) {
    let _ = use_raf_fn(move |UseRafFnCallbackArgs { timestamp, .. }| {
        hands.frame();
        cockpit.frame(timestamp / 1000.0);
        if listed.get_untracked() {
            cockpit.player.measure_next();
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
            press(cockpit, maker, &event);
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
fn press(cockpit: Cockpit, maker: Maker, event: &KeyboardEvent) {
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
    if event.default_prevented() || maker.press(event, elsewhere) || elsewhere {
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

/// Today as year-month-day, by the browser's clock.
fn today() -> String {
    let iso = String::from(Date::new_0().to_iso_string());
    iso.split('T').next().unwrap_or_default().to_owned()
}

fn matches(query: &str) -> bool {
    window()
        .match_media(query)
        .ok()
        .flatten()
        .is_some_and(|list| list.matches())
}

//! What the page has beyond the flight: demonstrations, making them, links and films.
//!
//! All of it is in a program of its own, `teach`, so that who only flies does not fetch it: the
//! program of the flight knows it by the functions of [`Teaching`] alone. `static/start.js` starts
//! the one that the address asks for, and [`leave`] goes from the flight's to the other.

use crate::cockpit::Cockpit;
use crate::intent::Intent;
use crate::route::Route;
use crate::session::Session;
use flights::ScenarioFile;
use leptos::prelude::*;
use std::rc::Rc;
use web_sys::{KeyboardEvent, Storage};

/// Where the flight waits, in the storage of this tab, while one program gives way to the other.
const WAITING: &str = "dipwise-flight";

/// The parts of the page that were shown with it.
const SHOWN: &str = "dipwise-shown";

/// What stands after them if the flight was not paused.
const FLYING: &str = " flying";

/// Takes a key, unless it is typed into something, and says whether it was used.
pub(crate) type KeyTaker = Rc<dyn Fn(&KeyboardEvent, bool) -> bool>;

/// Begins a demonstration of the flight so far; in the context where there is a bench.
#[derive(Clone, Copy)]
pub(crate) struct MakesOfFlight(pub(crate) Callback<()>);

/// What is there once teaching has begun.
pub(crate) struct Begun {
    /// A list or a page is shown in the place of the flight.
    pub(crate) listed: Memo<bool>,
    /// The bench on which demonstrations are made is shown.
    pub(crate) making: Signal<bool>,
    /// Takes the keys of the bench.
    pub(crate) press: KeyTaker,
}

/// The parts of the page, each where it stands.
#[derive(Clone, Copy)]
pub(crate) struct Teaching {
    /// Provides what the parts need, and opens what the address names.
    pub(crate) begin: fn(Cockpit, Signal<Route>) -> Begun,
    /// Above the flight, or in its place.
    pub(crate) pages: fn(Memo<bool>) -> AnyView,
    /// Below the timeline.
    pub(crate) bench: fn() -> AnyView,
    /// In the place of the flying controls.
    pub(crate) bar: fn() -> AnyView,
    /// Over all.
    pub(crate) layers: fn() -> AnyView,
    /// Does what is asked in the place of the flight, if it does.
    pub(crate) takes: fn(Cockpit, Intent) -> bool,
    /// Once a frame.
    pub(crate) frame: fn(Cockpit),
    /// Once a frame while a list is shown.
    pub(crate) list_frame: fn(Cockpit),
}

/// Goes to a route that the flight's program does not have. The flight so far goes along.
pub(crate) fn leave(cockpit: Cockpit, to: &Route) {
    let flight = cockpit.with_session(Session::to_scenario);
    let flown = cockpit.with_session(|session| session.flown().steps() > 0);
    if let (Some(storage), Some(file), true) = (storage(), flight, flown) {
        // Where nothing can be kept, the page begins anew.
        let _ = storage.set_item(WAITING, &file.to_json());
        let flying = cockpit.now().pause.is_none();
        let shown = cockpit.shown_parts() + if flying { FLYING } else { "" };
        let _ = storage.set_item(SHOWN, &shown);
    }
    to.go();
    let _ = window().location().reload();
}

/// The flight that another program left, at its end, and as paused as it was.
pub(crate) fn take_up(cockpit: Cockpit) {
    let Some(storage) = storage() else {
        return;
    };
    let Ok(Some(text)) = storage.get_item(WAITING) else {
        return;
    };
    let _ = storage.remove_item(WAITING);
    // What is no flight was not left by this page.
    if let Ok(file) = flights::read_json::<ScenarioFile>(&text)
        && cockpit.open(&file).is_ok()
    {
        cockpit.ask(Intent::LookAtEnd);
        if let Ok(Some(shown)) = storage.get_item(SHOWN) {
            cockpit.show_parts(&shown);
            if shown.ends_with(FLYING) {
                cockpit.ask(Intent::Pause);
            }
        }
    }
}

fn storage() -> Option<Storage> {
    if crate::embed::embedded() {
        return None;
    }
    window().session_storage().ok().flatten()
}

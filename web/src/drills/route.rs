//! The part of the page that the address asks for.

use leptos::ev;
use leptos::prelude::*;
use leptos_use_event_listener::use_event_listener;

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Part {
    /// What is due.
    #[default]
    Today,
    /// Tasks of a kind that is chosen.
    Practise,
    /// How it goes.
    Progress,
    /// What is kept here.
    Kept,
}

impl Part {
    /// Every part once.
    pub(crate) const ALL: [Self; 4] = [Self::Today, Self::Practise, Self::Progress, Self::Kept];

    /// What the address calls it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Today => "today",
            Self::Practise => "practise",
            Self::Progress => "progress",
            Self::Kept => "kept",
        }
    }
}

/// What the address asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Route {
    /// A part, and what follows its name after `?`.
    Part(Part, String),
    /// A set that was handed out, as its link carries it.
    Handed(String),
}

/// What the address asks for now.
pub(crate) fn use_route() -> Signal<Route> {
    let route = RwSignal::new(read());
    let _ = use_event_listener(window(), ev::hashchange, move |_| route.set(read()));
    route.into()
}

fn read() -> Route {
    let hash = window().location().hash().unwrap_or_default();
    let text = hash.trim_start_matches(['#', '/']);
    if let Some(set) = text.strip_prefix("set=") {
        return Route::Handed(set.to_owned());
    }
    let (name, fields) = text.split_once('?').unwrap_or((text, ""));
    let named = Part::ALL.into_iter().find(|it| it.name() == name);
    Route::Part(named.unwrap_or_default(), fields.to_owned())
}

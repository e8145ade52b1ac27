//! The part of the page that the address asks for.

use leptos::ev;
use leptos::prelude::*;
use leptos_use_event_listener::use_event_listener;

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Part {
    /// A set is composed and handed out.
    #[default]
    Compose,
    /// Results are gathered.
    Class,
}

impl Part {
    /// Every part once.
    pub(crate) const ALL: [Self; 2] = [Self::Compose, Self::Class];

    /// What the address calls it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Compose => "compose",
            Self::Class => "class",
        }
    }
}

/// The part that the address asks for now.
pub(crate) fn use_part() -> Signal<Part> {
    let part = RwSignal::new(read());
    let _ = use_event_listener(window(), ev::hashchange, move |_| part.set(read()));
    part.into()
}

fn read() -> Part {
    let hash = hash();
    let name = hash.trim_start_matches(['#', '/']);
    let name = name.split('?').next().unwrap_or_default();
    let named = Part::ALL.into_iter().find(|it| it.name() == name);
    named.unwrap_or_default()
}

/// The address after its `#`, with it.
pub(super) fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

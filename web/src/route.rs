//! What the address names after its `#`.

use leptos::ev;
use leptos::prelude::*;
use leptos_use_event_listener::use_event_listener;

/// A page, or something to open on it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) enum Route {
    /// The flight; whatever no other route is.
    #[default]
    Fly,
    /// The catalogue of demonstrations.
    Demonstrations,
    /// The same, all moved to a latitude in degrees north, as it stands in the address.
    DemonstrationsAt(String),
    /// A demonstration of the catalogue, by name, and the latitude in degrees north that it is
    /// moved to, as it stands in the address.
    Demonstration(String, Option<String>),
    /// Where demonstrations are made.
    Make,
    /// Where the flight becomes a film.
    Film,
    /// Where a link to the flight is made.
    Share,
    /// A demonstration or a situation that the link itself carries.
    Carried(String),
}

impl Route {
    /// Reads the address after `#`.
    pub(crate) fn of(fragment: &str) -> Self {
        let fragment = fragment.trim_start_matches('#');
        if let Some(carried) = fragment.strip_prefix("d=") {
            return Self::Carried(carried.to_owned());
        }
        let path = fragment.trim_matches('/');
        if let Some(latitude) = path.strip_prefix("demonstrations@") {
            return Self::DemonstrationsAt(latitude.to_owned());
        }
        match path.split('/').collect::<Vec<_>>().as_slice() {
            ["demonstrations"] => Self::Demonstrations,
            ["demonstrations", name] => Self::Demonstration((*name).to_owned(), None),
            ["demonstrations", name, latitude] => {
                Self::Demonstration((*name).to_owned(), Some((*latitude).to_owned()))
            }
            ["make"] => Self::Make,
            ["film"] => Self::Film,
            ["share"] => Self::Share,
            _ => Self::Fly,
        }
    }

    /// The address after `#`, with it.
    pub(crate) fn address(&self) -> String {
        match self {
            Self::Fly => "#/".to_owned(),
            Self::Demonstrations => "#/demonstrations".to_owned(),
            Self::DemonstrationsAt(latitude) => format!("#/demonstrations@{latitude}"),
            Self::Demonstration(name, None) => format!("#/demonstrations/{name}"),
            Self::Demonstration(name, Some(latitude)) => {
                format!("#/demonstrations/{name}/{latitude}")
            }
            Self::Make => "#/make".to_owned(),
            Self::Film => "#/film".to_owned(),
            Self::Share => "#/share".to_owned(),
            Self::Carried(carried) => format!("#d={carried}"),
        }
    }

    /// That of the address as it is now.
    pub(crate) fn now() -> Self {
        Self::of(&window().location().hash().unwrap_or_default())
    }

    /// Whether it is a page beside the flight.
    pub(crate) fn is_list(&self) -> bool {
        matches!(self, Self::Demonstrations | Self::DemonstrationsAt(_))
    }

    /// Goes there in the place of where one is: the way back does not lead here.
    pub(crate) fn go_instead(&self) {
        let _ = window().location().replace(&self.address());
    }

    /// Goes there.
    pub(crate) fn go(&self) {
        // Only a sandboxed frame refuses; the page then stays where it is.
        let _ = window().location().set_hash(&self.address());
    }
}

/// The route of the address, whenever it changes.
pub(crate) fn use_route() -> Signal<Route> {
    let route = RwSignal::new(Route::now());
    let _ = use_event_listener(window(), ev::hashchange, move |_| route.set(Route::now()));
    route.into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_address_is_read_as_what_it_was_written_from() {
        for route in [
            Route::Fly,
            Route::Demonstrations,
            Route::DemonstrationsAt("-35".to_owned()),
            Route::Demonstration("onto-north".to_owned(), None),
            Route::Demonstration("onto-north".to_owned(), Some("-35".to_owned())),
            Route::Make,
            Route::Carried("AbC-_9".to_owned()),
        ] {
            assert_eq!(Route::of(&route.address()), route);
        }
    }

    #[test]
    fn what_is_no_address_is_the_flight() {
        for fragment in [
            "",
            "#",
            "#/",
            "#nonsense",
            "#/demonstrations/a/b/c",
            "#/make/x",
        ] {
            assert_eq!(Route::of(fragment), Route::Fly, "{fragment}");
        }
    }
}

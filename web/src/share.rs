//! What can be passed on as a link, and what came as one.

use crate::cockpit::Cockpit;
use crate::link::{self, Fault};
use crate::pages::Page;
use crate::player::Player;
use crate::route::Route;
use crate::session::Session;
use crate::setting::Setting;
use flights::{Scenario, ScenarioError};
use leptos::prelude::*;
use lessons::demonstration::DemonstrationError;
use lessons::link::{Carried, Kind, LinkError};

/// What can be passed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Subject {
    /// The demonstration that is open.
    Demonstration,
    /// The flight so far.
    Flight,
    /// What the flight started from.
    Situation,
}

impl Subject {
    /// Each of them once, the largest first.
    pub(crate) const ALL: [Self; 3] = [Self::Demonstration, Self::Flight, Self::Situation];

    /// Whether there is such a thing now.
    pub(crate) fn is_there(self, cockpit: Cockpit, player: Player) -> bool {
        match self {
            Self::Demonstration => player.open_now().is_some(),
            Self::Flight => cockpit.with_session(|session| session.flown().steps() > 0),
            Self::Situation => true,
        }
    }

    /// It, as it is now; none for a flight that went on from the middle of a script.
    pub(crate) fn carried(self, cockpit: Cockpit, player: Player) -> Option<Carried> {
        match self {
            Self::Demonstration => {
                let open = untrack(|| player.open_now())?;
                let demonstration = Box::new(open.demonstration().clone());
                Some(Carried::Demonstration(demonstration))
            }
            Self::Flight => (cockpit.with_session(Session::to_scenario)).map(Carried::Flight),
            Self::Situation => Some(Carried::Situation(cockpit.now().setting.to_file())),
        }
    }
}

/// The dialog for passing things on, and the link that was refused last.
#[derive(Clone, Copy)]
pub(crate) struct Share {
    shown: RwSignal<bool>,
    refused: RwSignal<Option<Fault>>,
}

impl Share {
    /// Nothing is shown, nothing was refused.
    pub(crate) fn new() -> Self {
        Self {
            shown: RwSignal::new(false),
            refused: RwSignal::new(None),
        }
    }

    /// Whether the dialog is shown.
    pub(crate) fn shown(self) -> bool {
        self.shown.get()
    }

    /// Shows the dialog, or closes it.
    pub(crate) fn show(self, shown: bool) {
        self.shown.set(shown);
    }

    /// Why the link in the address was not opened, until this is put away.
    pub(crate) fn refused(self) -> Option<Fault> {
        self.refused.get()
    }

    /// Says why a link was not opened, or puts that away.
    pub(crate) fn set_refused(self, fault: Option<Fault>) {
        self.refused.set(fault);
    }
}

/// Where something is to be found: the short address for what is in the catalogue, else one that
/// carries it.
pub(crate) async fn route_to(player: Player, carried: Carried) -> Result<Route, Fault> {
    if let Carried::Demonstration(open) = &carried {
        player.fetch_catalogue().await;
        for listed in untrack(|| player.catalogue()) {
            if listed.name != open.name {
                continue;
            }
            if listed == **open {
                return Ok(Route::Demonstration(listed.name, None));
            }
            // The latitude that it was moved to stands in its own address.
            let route = Route::now();
            if let Route::Demonstration(name, Some(latitude)) = &route
                && *name == listed.name
                && let Ok(degrees) = latitude.parse()
                && listed.at_latitude_deg(degrees) == **open
            {
                return Ok(route);
            }
        }
    }
    Ok(Route::Carried(link::to_link(&carried).await?))
}

/// Opens what the text of a link carries.
///
/// # Errors
/// A link that is refused: nothing has changed then.
pub(crate) async fn open(cockpit: Cockpit, player: Player, text: &str) -> Result<(), Fault> {
    let carried = link::from_link(text).await?;
    if Route::now() != Route::Carried(text.to_owned()) {
        // Another address was gone to meanwhile.
        return Ok(());
    }
    let refused = |error: DemonstrationError| Fault::Link(LinkError::Refused(error));
    let file = match carried {
        Carried::Demonstration(it) => return player.open(cockpit, *it).map_err(refused),
        Carried::Flight(ref it) | Carried::Situation(ref it) => it,
        Carried::Set(_) => {
            // It is practised on another page; a browser follows an address of its own site.
            let _ = window()
                .location()
                .set_href(&format!("{}#set={text}", Page::Drills.address()));
            return Ok(());
        }
    };
    // Only what can be flown takes the place of what is open.
    let scenario = Scenario::from_file(file).and_then(|it| it.simulation().map(|_| it));
    let scenario = scenario.map_err(|error| refused(error.into()))?;
    player.close();
    let opened = if carried.kind() == Kind::Flight {
        cockpit.open(file)
    } else {
        let begun = cockpit.begin(Setting::of_scenario(&scenario));
        begun.map_err(|error| ScenarioError::at("", error))
    };
    opened.map_err(|error| refused(error.into()))
}

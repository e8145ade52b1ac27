//! The program of the whole page: the flight, and everything that is taught with it.

use crate::cockpit::Cockpit;
use crate::components::demonstrations::Demonstrations;
use crate::components::film_panel::FilmPanel;
use crate::components::lesson_plan::LessonPlan;
use crate::components::making::{CueLane, MakingBench};
use crate::components::player::PlayerBar;
use crate::components::share::{RefusedLink, ShareDialog};
use crate::intent::Intent;
use crate::making::Maker;
use crate::player::Player;
use crate::player::headlines::latitude_of;
use crate::route::Route;
use crate::share::{self, Share};
use crate::teaching::{Begun, MakesOfFlight, Teaching, take_up};
use crate::words::FlightWords;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::demonstration::Demonstration;
use std::rc::Rc;

/// Everything that is taught with the flight.
pub(crate) const TEACHING: Teaching = Teaching {
    begin,
    pages: |listed| {
        let player: Player = expect_context();
        view! {
            <RefusedLink/>
            <Show when=move || listed.get()><Demonstrations/></Show>
            <Show when=move || player.plan_shown() && !listed.get()><LessonPlan/></Show>
        }
        .into_any()
    },
    bench: || view! { <CueLane/> <MakingBench/> }.into_any(),
    bar: || view! { <PlayerBar/> }.into_any(),
    layers: || view! { <ShareDialog/> <FilmPanel/> }.into_any(),
    takes: |cockpit, intent| cockpit.player.takes(cockpit, intent),
    frame: |cockpit| cockpit.player.frame(cockpit),
    list_frame: |cockpit| cockpit.player.measure_next(),
};

fn begin(cockpit: Cockpit, route: Signal<Route>) -> Begun {
    let player = cockpit.player;
    provide_context(player);
    let share = Share::new();
    provide_context(share);
    take_up(cockpit);
    follow(cockpit, player, share, route);
    let maker = Maker::new(cockpit, route);
    provide_context(maker);
    provide_context(MakesOfFlight(Callback::new(move |()| {
        maker.begin_of_flight()
    })));
    Begun {
        // A demonstration that cannot be opened leaves one to choose another.
        listed: Memo::new(move |_| {
            let route = route.get();
            let in_vain = matches!(route, Route::Demonstration(..));
            route.is_list() || (in_vain && !player.fault().is_empty())
        }),
        making: Signal::derive(move || maker.shown()),
        press: Rc::new(move |event, typing| maker.press(event, typing)),
    }
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
        let words = cockpit.words.demonstrations();
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
            Route::Film if !untrack(|| cockpit.film_shown()) => cockpit.ask(Intent::ShowFilm),
            Route::Share => share.show(true),
            _ => {}
        }
    });
}

/// The demonstration of the catalogue that an address names; or what is wrong with the address.
fn find(
    player: Player,
    name: &str,
    latitude: Option<&str>,
    words: &FlightWords,
) -> Result<Demonstration, String> {
    let words = words.demonstrations();
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

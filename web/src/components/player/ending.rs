//! What stands at the end of a demonstration: the rule, with what was measured on this flight.

use crate::cockpit::use_cockpit;
use crate::components::controls::{Ask, keep_focus};
use crate::intent::Intent;
use crate::route::{Route, use_route};
use leptos::prelude::*;

/// The rule of thumb, and where to go from here.
#[component]
pub(super) fn Ending() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let rule = move || {
        let flown = player.open_now()?;
        let rule = flown.said(&flown.demonstration().rule);
        (!rule.is_empty()).then(|| {
            view! { <p class="rule"><strong>{words.rule}": "</strong><span id="rule">{rule}</span></p> }
        })
    };
    let route = use_route();
    let next = move || {
        let next = player.next()?;
        // Where this one was moved to, the next is moved to as well.
        let latitude = match route.get() {
            Route::Demonstration(_, latitude) => latitude,
            _ => None,
        };
        let to = Route::Demonstration(next.name, latitude).address();
        Some(
            view! { <a class="button" href=to on:mousedown=keep_focus>{(words.next)(&next.title)}</a> },
        )
    };
    view! {
        <div class="ending">
            {rule}
            <div class="ending-tools">
                <Ask intent=Intent::Restart button=words.again/>
                {next}
            </div>
        </div>
    }
}

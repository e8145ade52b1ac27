//! The top line: name, what the flight is doing, and the page's own buttons.

use super::beside::CompareButton;
use super::controls::keep_focus;
use super::making::MakeButton;
use super::presenter::PresenterTools;
use super::share::ShareButton;
use crate::clock::Rate;
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use crate::pages::{Page, Pages};
use crate::preferences::View;
use crate::session::Pause;
use drawing::theme::Light;
use leptos::prelude::*;

/// The top line.
#[component]
pub(crate) fn TopBar(
    /// Whether the demonstrations are listed, in the place of the flight.
    listed: Memo<bool>,
) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let state = cockpit.part(|readout| (readout.looking, readout.pause, readout.rate));
    let player = cockpit.player;
    let doing = move || match state.get() {
        (_, Some(_), _) if player.plays() && player.waits() => {
            words.demonstrations().stands.to_owned()
        }
        (_, Some(_), _) if player.plays() => words.paused.to_owned(),
        (true, None, rate) => (words.time().replaying)(rate.factor()),
        (true, ..) => words.looking_back.to_owned(),
        (_, Some(Pause::Asked), _) => words.paused.to_owned(),
        (_, Some(Pause::Asleep), _) => words.asleep.to_owned(),
        (_, None, Rate::REAL) => String::new(),
        (_, None, rate) => (words.slow_motion)(rate.factor()),
    };
    let preferences = cockpit.preferences;
    let view_words = move || match preferences.view() {
        View::Card => (words.views.show)(preferences.aside()),
        View::Aside => words.show_card,
    };
    let light_words = move || match preferences.light() {
        Light::Day => words.by_night,
        Light::Night => words.by_day,
    };
    view! {
        <header class="top">
            <h1>{words.name}</h1>
            <p class="doing" id="doing" role="status">{doing}</p>
            <div class="page-buttons">
                // Anew for each, so that the one that is chosen closes the list.
                {move || {
                    let here = match listed.get() {
                        true => Page::Demonstrations,
                        false => Page::Fly,
                    };
                    view! { <Pages here words/> }
                }}
                <button
                    type="button"
                    class="quiet view-button"
                    id="view"
                    aria-label=move || view_words().name
                    title=move || view_words().name
                    aria-keyshortcuts=shortcut(Intent::ChangeView)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::ChangeView)
                >
                    {move || view_words().label}
                </button>
                <CompareButton/>
                <MakeButton/>
                <button
                    type="button"
                    class="quiet"
                    id="show-why"
                    aria-label=words.show_why.name
                    title=words.show_why.name
                    aria-expanded=move || cockpit.why_shown().to_string()
                    aria-controls="why"
                    aria-keyshortcuts=shortcut(Intent::ShowWhy)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::ShowWhy)
                >
                    {words.show_why.label}
                </button>
                <ShareButton/>
                <button
                    type="button"
                    class="quiet"
                    id="light"
                    aria-keyshortcuts=shortcut(Intent::ChangeLight)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::ChangeLight)
                >
                    {light_words}
                </button>
                <button
                    type="button"
                    class="quiet"
                    aria-expanded=move || cockpit.keys_shown().to_string()
                    aria-controls="keys"
                    aria-keyshortcuts=shortcut(Intent::ShowKeys)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::ShowKeys)
                >
                    {words.keys}
                </button>
                <button
                    type="button"
                    class="quiet tell"
                    aria-keyshortcuts=shortcut(Intent::Tell)
                    on:click=move |_| cockpit.ask(Intent::Tell)
                >
                    {words.tell}
                </button>
                <button
                    type="button"
                    class="quiet present"
                    id="present"
                    aria-label=words.presenter().present.name
                    title=words.presenter().present.name
                    aria-keyshortcuts=shortcut(Intent::Present)
                    on:mousedown=keep_focus
                    on:click=move |_| cockpit.ask(Intent::Present)
                >
                    <svg class="present-mark" viewBox="0 0 24 24" aria-hidden="true">
                        <path d="M4 9V4H9M15 4H20V9M20 15V20H15M9 20H4V15"/>
                    </svg>
                    <span class="present-label">{words.presenter().present.label}</span>
                </button>
            </div>
            <PresenterTools/>
        </header>
    }
}

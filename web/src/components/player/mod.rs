//! The bar of the demonstration that is open, in the place of the flying controls: what is said,
//! what is asked, and the buttons that lead it.

mod ending;
mod question;

use super::controls::{Ask, keep_focus};
use crate::cockpit::use_cockpit;
use crate::intent::{Intent, shortcut};
use crate::route::Route;
use crate::words::Button;
use ending::Ending;
use leptos::prelude::*;
use lessons::demonstration::{Act, Cue, Flown};
use question::Question;
use std::sync::Arc;

/// The bar, while a demonstration is open.
#[component]
pub(crate) fn PlayerBar() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    view! {
        {move || {
            let flown = player.open_now()?;
            Some(view! {
                <section class="player" aria-label=words.player>
                    <Show when=move || player.is_away() fallback=move || view! { <Stage/><Tools/> }>
                        <Away/>
                    </Show>
                    <Heading flown=flown.clone()/>
                </section>
            })
        }}
    }
}

/// Its title and chapter, and what can be done with it as a whole.
#[component]
fn Heading(flown: Arc<Flown>) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let title = flown.said(&flown.demonstration().title);
    let change = move |()| {
        let open = player.open_now();
        let open = open.map(|it| it.demonstration().clone());
        player.to_change.set(open);
        Route::Make.go();
    };
    let leave = move |()| {
        player.close();
        Route::Fly.go();
    };
    view! {
        <header class="player-head">
            <h2 id="demonstration">{title}</h2>
            <p class="player-chapter">{move || chapter(&flown, player.standing().chapter)}</p>
        </header>
        <div class="player-whole">
            <Plain button=words.plan press=move |()| player.show_plan(true)/>
            <Plain button=words.change press=change/>
            <Plain button=words.leave press=leave/>
        </div>
    }
}

/// What is said and asked.
#[component]
fn Stage() -> impl IntoView {
    let cockpit = use_cockpit();
    let player = cockpit.player;
    let caption = move || {
        let standing = player.standing();
        // While the class is asked, the question alone stands there.
        let asks = standing
            .question
            .is_some_and(|it| it + 1 == standing.passed);
        let index = standing.caption.filter(|_| player.captions() && !asks)?;
        let flown = player.open_now()?;
        match &flown.demonstration().cues.get(index)?.act {
            Act::Caption(text) => Some(flown.said(text)),
            _ => None,
        }
    };
    view! {
        <div class="player-stage">
            <Show when=move || player.finished() fallback=move || view! {
                <p class="caption" id="caption">{caption}</p>
                <Question/>
            }>
                <Ending/>
            </Show>
        </div>
    }
}

/// The buttons that lead it.
#[component]
fn Tools() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let stands = cockpit.part(|readout| readout.pause.is_some());
    let rate = cockpit.part(|readout| readout.rate);
    let play = move || {
        if stands.get() {
            words.play
        } else {
            words.pause
        }
    };
    view! {
        <div class="player-tools">
            <Ask intent=Intent::LastCue button=words.last_cue sign="‹"/>
            <button
                type="button"
                class="play"
                id="play"
                aria-label=move || play().name
                title=move || play().name
                aria-keyshortcuts=shortcut(Intent::Pause)
                on:mousedown=keep_focus
                on:click=move |_| cockpit.ask(Intent::Pause)
            >
                {move || play().label}
            </button>
            <Ask intent=Intent::NextCue button=words.next_cue sign="›"/>
            <Chapters/>
            <span class="tempo" role="group" aria-label=cockpit.words.motion>
                <Ask intent=Intent::SlowDown button=cockpit.words.slow_down/>
                <output id="tempo">{move || (cockpit.words.motion_value)(rate.get().factor())}</output>
                <Ask intent=Intent::SpeedUp button=cockpit.words.speed_up/>
            </span>
            <Plain
                button=words.loops
                pressed=Signal::derive(move || player.looped())
                press=move |()| player.toggle_loop()
            />
            <Plain
                button=words.captions
                pressed=Signal::derive(move || player.captions())
                press=move |()| player.toggle_captions()
            />
            <Ask intent=Intent::Restart button=words.again/>
            <Ask intent=Intent::FlyFromHere button=words.take_controls/>
        </div>
    }
}

/// The chapters, to go to one.
#[component]
fn Chapters() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    let player = cockpit.player;
    let go = move |event: web_sys::Event| {
        let index = event_target_value(&event).parse::<usize>().ok();
        let flown = untrack(|| player.open_now());
        let found = flown.and_then(|it| Some(it.demonstration().cues.get(index?)?.at_s));
        if let Some(time) = found {
            player.jump(cockpit, time);
        }
    };
    let options = move || {
        let flown = player.open_now()?;
        let cues = flown.demonstration().cues.iter().enumerate();
        let option = |(index, cue): (usize, &Cue)| match &cue.act {
            Act::Chapter(title) => Some(view! {
                <option
                    value=index.to_string()
                    selected=move || player.standing().chapter == Some(index)
                >
                    {flown.said(title)}
                </option>
            }),
            _ => None,
        };
        Some(cues.filter_map(option).collect_view())
    };
    view! {
        <select class="chapters" id="chapters" aria-label=words.chapter on:change=go>
            {options}
        </select>
    }
}

/// What stands there while the pilot flies.
#[component]
fn Away() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.demonstrations();
    view! {
        <div class="player-stage away">
            <p class="caption">{words.flying}</p>
            <Plain button=words.come_back press=move |()| cockpit.player.come_back(cockpit)/>
        </div>
    }
}

/// A button that is no intent; with `pressed` one that is on or off.
#[component]
pub(crate) fn Plain(
    button: Button,
    #[prop(optional, into)] pressed: Option<Signal<bool>>,
    #[prop(into)] press: Callback<()>,
) -> impl IntoView {
    view! {
        <button
            type="button"
            aria-label=button.name
            title=button.name
            aria-pressed=pressed.map(|it| move || it.get().to_string())
            on:mousedown=keep_focus
            on:click=move |_| press.run(())
        >
            {button.label}
        </button>
    }
}

fn chapter(flown: &Flown, index: Option<usize>) -> Option<String> {
    match &flown.demonstration().cues.get(index?)?.act {
        Act::Chapter(title) => Some(flown.said(title)),
        _ => None,
    }
}

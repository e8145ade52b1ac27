//! Instruments and controls: each value above the buttons that change it.

use crate::cockpit::{Cockpit, use_cockpit};
use crate::intent::{Intent, shortcut};
use crate::words::Button;
use leptos::prelude::*;

/// The row along the bottom.
#[component]
pub(crate) fn Controls() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words;
    let bank = cockpit.part(|readout| readout.bank.round() as i32);
    let turn = cockpit.part(|readout| (10.0 * readout.rate_of_turn).round() as i32);
    let standard = cockpit.part(|readout| readout.standard_rate);
    let speed = cockpit.part(|readout| readout.airspeed.round() as i32);
    let climb = cockpit.part(|readout| readout.climb.round() as i32);
    let rudder = cockpit.part(|readout| readout.rudder.round() as i32);
    let rate = cockpit.part(|readout| readout.rate);
    let paused = cockpit.part(|readout| (readout.pause.is_some(), readout.looking));
    view! {
        <section class="desk" aria-label=words.controls>
            <div class="group group-bank" role="group" aria-label=words.bank>
                <div class="values">
                    <Value name=words.bank id="bank" text=move || (words.bank_value)(bank.get())/>
                    <Value
                        name=words.rate_of_turn
                        id="rate-of-turn"
                        text=move || (words.rate_value)(turn.get())
                        note=Signal::derive(move || {
                            if standard.get() { words.standard_rate } else { "" }
                        })
                    />
                </div>
                <div class="buttons">
                    <Ask intent=Intent::Bank(-5) button=words.bank_left sign="←"/>
                    <Ask intent=Intent::LevelWings button=words.level_wings sign="—"/>
                    <Ask intent=Intent::Bank(5) button=words.bank_right sign="→"/>
                </div>
            </div>
            <div class="group group-speed" role="group" aria-label=words.airspeed>
                <Value
                    name=words.airspeed
                    id="airspeed"
                    text=move || (words.airspeed_value)(speed.get())
                />
                <div class="buttons">
                    <Ask intent=Intent::Speed(-5) button=words.slower sign="−"/>
                    <Ask intent=Intent::Speed(5) button=words.faster sign="+"/>
                </div>
            </div>
            <div class="group group-climb" role="group" aria-label=words.climb>
                <Value
                    name=words.climb
                    id="climb"
                    text=move || (words.climb_value)(climb.get())
                />
                <div class="buttons">
                    <Ask intent=Intent::Climb(-1) button=words.descend sign="↓"/>
                    <Ask intent=Intent::Climb(1) button=words.climb_more sign="↑"/>
                </div>
            </div>
            <div class="group group-rudder" role="group" aria-label=words.rudder>
                <Value
                    name=words.rudder
                    id="rudder"
                    text=move || (words.rudder_value)(rudder.get())
                />
                <div class="buttons">
                    <Ask intent=Intent::Rudder(-1) button=words.rudder_left sign="←"/>
                    <Ask intent=Intent::Rudder(1) button=words.rudder_right sign="→"/>
                </div>
            </div>
            <div class="group group-motion" role="group" aria-label=words.motion>
                <Value
                    name=words.motion
                    id="motion"
                    text=move || (words.motion_value)(rate.get().factor())
                />
                <div class="buttons">
                    <PauseButton cockpit paused/>
                    <Ask intent=Intent::Step button=words.step/>
                    <Ask intent=Intent::SlowDown button=words.slow_down/>
                    <Ask intent=Intent::SpeedUp button=words.speed_up/>
                    <Ask intent=Intent::Restart button=words.restart/>
                </div>
            </div>
        </section>
    }
}

/// A value with its name; the note stands beside it.
#[component]
fn Value(
    name: &'static str,
    id: &'static str,
    text: impl Fn() -> String + Send + 'static,
    #[prop(optional, into)] note: Signal<&'static str>,
) -> impl IntoView {
    view! {
        <div class="value">
            <span class="value-name">
                {name} " " <span class="value-note">{move || note.get()}</span>
            </span>
            " "
            <span class="value-text" id=id>{text}</span>
        </div>
    }
}

/// A button that asks for something; its words may change with what it does now.
#[component]
pub(crate) fn Ask(
    intent: Intent,
    #[prop(into)] button: Signal<Button>,
    #[prop(optional)] sign: &'static str,
) -> impl IntoView {
    let cockpit = use_cockpit();
    view! {
        <button
            type="button"
            aria-label=move || button.get().name
            aria-keyshortcuts=shortcut(intent)
            title=move || button.get().name
            on:mousedown=keep_focus
            on:click=move |_| cockpit.ask(intent)
        >
            {(!sign.is_empty()).then(|| view! { <span class="sign" aria-hidden="true">{sign}</span> })}
            <span>{move || button.get().label}</span>
        </button>
    }
}

#[component]
fn PauseButton(cockpit: Cockpit, paused: Memo<(bool, bool)>) -> impl IntoView {
    let words = cockpit.words;
    let button = move || match paused.get() {
        (true, false) => words.fly_on,
        (true, true) => words.time().replay,
        (false, false) => words.pause,
        (false, true) => words.time().pause_replay,
    };
    view! {
        <button
            type="button"
            class="wide"
            id="pause"
            aria-label=move || button().name
            aria-keyshortcuts=shortcut(Intent::Pause)
            title=move || button().name
            on:mousedown=keep_focus
            on:click=move |_| cockpit.ask(Intent::Pause)
        >
            {move || button().label}
        </button>
    }
}

/// A mouse click must not take the focus: the space bar would then press the button again
/// instead of pausing. Keys still reach every button.
pub(crate) fn keep_focus(event: web_sys::MouseEvent) {
    event.prevent_default();
}

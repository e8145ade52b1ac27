//! The panel that makes films: the picture as it would be filmed, how, and what is made of it.

mod making;
mod painting;

use super::controls::keep_focus;
use crate::cockpit::use_cockpit;
use crate::film::kit::Container;
use crate::intent::{Intent, shortcut};
use crate::player::Player;
use crate::words::Button;
use leptos::html;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use making::{Doing, Done, FPS, Making, SIZES, SLOWER};
use web_sys::{HtmlElement, KeyboardEvent};

/// The panel, from when it is first asked for: what it makes goes on while it is hidden.
#[component]
pub(crate) fn FilmPanel() -> impl IntoView {
    let cockpit = use_cockpit();
    let opened =
        Memo::new(move |was: Option<&bool>| was.is_some_and(|was| *was) || cockpit.film_shown());
    view! { <Show when=move || opened.get()><Panel/></Show> }
}

#[component]
fn Panel() -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.film();
    let making = Making::new(cockpit, expect_context::<Player>());
    let section = NodeRef::<html::Section>::new();
    keep_place(making, section);
    Effect::new(move || making.ask_formats());
    let pressed = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            cockpit.ask(Intent::ShowFilm);
        }
    };
    let recording = move || matches!(making.doing.get(), Doing::Recording(_));
    view! {
        <section
            class="film"
            id="film"
            tabindex="-1"
            node_ref=section
            aria-label=words.title
            hidden=move || !cockpit.film_shown()
            data-live=recording
            on:keydown=pressed
        >
            <header>
                <h2>{words.title}</h2>
                <button
                    type="button"
                    class="quiet"
                    aria-label=words.close.name
                    aria-keyshortcuts=shortcut(Intent::ShowFilm)
                    on:click=move |_| cockpit.ask(Intent::ShowFilm)
                >
                    {words.close.label}
                </button>
            </header>
            <Screen making/>
            <Settings making/>
            <Work making/>
        </section>
    }
}

/// Takes the focus into the panel when it opens, and gives it back when it closes. A button that
/// goes away while it is in focus must not let the focus fall out of the panel.
fn keep_place(making: Making, section: NodeRef<html::Section>) {
    let cockpit = use_cockpit();
    let before = StoredValue::new_local(None::<HtmlElement>);
    Effect::new(move || {
        let Some(section) = section.get() else { return };
        if cockpit.film_shown() {
            let active = document().active_element();
            before.set_value(active.and_then(|it| it.dyn_into().ok()));
            let _ = section.focus();
        } else if let Some(element) = before.get_value() {
            let _ = element.focus();
        }
    });
    let kind = Memo::new(move |_| std::mem::discriminant(&making.doing.get()));
    Effect::new(move || {
        // Only a memo that is read takes part.
        kind.get();
        // Once the old buttons are gone.
        request_animation_frame(move || {
            let lost = document()
                .active_element()
                .is_none_or(|it| it.tag_name() == "BODY");
            if let Some(section) = section.get_untracked()
                && lost
            {
                let _ = section.focus();
            }
        });
    });
}

/// This moment as it would be filmed, and the live recording of it.
#[component]
fn Screen(making: Making) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.film();
    let canvas = making.canvas;
    let still = cockpit.still();
    Effect::new(move || {
        let recording = matches!(making.doing.get(), Doing::Recording(_));
        if recording {
            // Every frame; and once a second while nothing changes.
            cockpit.readout();
            cockpit.track_beat();
        } else {
            cockpit.track_chart(still);
            cockpit.preferences.light();
            cockpit.cover();
        }
        making.title.track();
        making.torques.track();
        making.strips.track();
        if canvas.get().is_some() && (recording || cockpit.film_shown()) {
            making.paint_now();
        }
    });
    let text = cockpit.at_leisure(cockpit.words.card_face);
    let idle = move || making.doing.get() == Doing::Nothing;
    view! {
        <canvas class="film-screen" node_ref=canvas role="img" aria-label=move || text.get()></canvas>
        <fieldset class="film-live" hidden=move || !idle()>
            <legend class="unseen">{words.live}</legend>
            <Do making button=words.record act=Making::record/>
            <Check label=words.microphone on=making.sound/>
        </fieldset>
    }
}

/// What is filmed, and how.
#[component]
fn Settings(making: Making) -> impl IntoView {
    let cockpit = use_cockpit();
    let words = cockpit.words.film();
    let sizes = SIZES.map(|[width, height]| format!("{width} × {height}"));
    let stretch = cockpit.part(|readout| readout.stretch);
    let span = move || {
        cockpit.track_beat();
        stretch.get();
        let (span, marked) = making.span();
        (words.span)(span, marked)
    };
    view! {
        <div class="film-settings" hidden=move || making.doing.get() != Doing::Nothing>
            <p class="film-span">{span}</p>
            <div class="film-name">
                <label for="film-title">{words.name}</label>
                <input
                    id="film-title"
                    maxlength="80"
                    autocomplete="off"
                    prop:value=making.title
                    on:input=move |event| making.title.set(event_target_value(&event))
                />
            </div>
            <Choice id="film-size" label=words.size options=sizes.to_vec() chosen=making.size/>
            <Choice
                id="film-frames"
                label=words.frames
                options=FPS.map(words.fps).to_vec()
                chosen=making.fps
            />
            <Choice
                id="film-speed"
                label=words.speed
                options=SLOWER.map(|it| (words.slower)(it).to_owned()).to_vec()
                chosen=making.slower
            />
            <Choice
                id="film-format"
                label=words.format
                options=Container::ALL.map(|it| (words.container)(it).to_owned()).to_vec()
                chosen=making.container
            />
            <Check label=words.torques on=making.torques/>
            <Check label=words.strips on=making.strips/>
            <p class="hint" id="film-formats">
                {move || {
                    let narrated = making.narration.get().is_some();
                    making.formats.with(|it| (words.formats)(it.as_ref(), narrated))
                }}
            </p>
        </div>
    }
}

/// What is made, what goes on, and what is done.
#[component]
fn Work(making: Making) -> impl IntoView {
    let words = use_cockpit().words.film();
    let doing = making.doing;
    view! {
        {move || match doing.get() {
            Doing::Nothing => view! { <Make making/> }.into_any(),
            Doing::Rendering(..) => view! { <Progress making/> }.into_any(),
            Doing::Recording(held) | Doing::Narrating(held) => {
                let button = if held { words.go_on } else { words.hold };
                view! {
                    <div class="film-buttons">
                        <p class="film-doing">{if held { words.held } else { words.recording }}</p>
                        <meter min="0" max="1" aria-label=words.level value=making.level></meter>
                        <Do making button=button act=Making::hold/>
                        <Do making button=words.end act=Making::end/>
                    </div>
                }
                .into_any()
            }
        }}
        <p class="film-notice">{making.notice}</p>
        {move || making.done.get().map(|done| view! { <Saved done/> })}
    }
}

#[component]
fn Make(making: Making) -> impl IntoView {
    let words = use_cockpit().words.film();
    view! {
        <div class="film-buttons">
            <button
                type="button"
                id="film-render"
                aria-label=words.render.name
                disabled=move || !making.can_render()
                on:mousedown=keep_focus
                on:click=move |_| making.render()
            >
                {words.render.label}
            </button>
            <Do making button=words.gif act=Making::animate/>
            <Do making button=words.png act=Making::save_png/>
            <Do making button=words.svg act=Making::save_svg/>
            {move || match making.narration.get() {
                None => view! { <Do making button=words.narrate act=Making::narrate/> }.into_any(),
                Some(seconds) => view! {
                    <p>{(words.narration)(seconds)}</p>
                    <Do making button=words.drop act=Making::drop_narration/>
                }
                .into_any(),
            }}
        </div>
    }
}

#[component]
fn Progress(making: Making) -> impl IntoView {
    let words = use_cockpit().words.film();
    let so_far = move || match making.doing.get() {
        Doing::Rendering(done, all, left) => (done, all, left),
        _ => (0, 1, None),
    };
    let said = move || {
        let (done, all, left) = so_far();
        (words.progress)(done, all, left)
    };
    view! {
        <div class="film-buttons">
            <progress
                max=so_far().1.to_string()
                value=move || so_far().0.to_string()
                aria-label=words.render.label
            ></progress>
            <p id="film-progress">{said}</p>
            <Do making button=words.cancel act=Making::cancel/>
        </div>
    }
}

/// The file that is done, and its captions and chapters beside it.
#[component]
fn Saved(done: Done) -> impl IntoView {
    let words = use_cockpit().words.film();
    let name = format!("dipwise-film.{}", done.ending);
    let beside = |text: Option<String>, name: &'static str, words: &'static str| {
        text.map(|text| {
            let address = format!("data:text/vtt;charset=utf-8,{}", escaped(&text));
            view! { <a class="film-save" href=address download=name>{words}</a> }
        })
    };
    view! {
        <div class="film-buttons" id="film-done">
            <a class="film-save" href=done.address download=name>
                {(words.save)(done.ending, done.bytes)}
            </a>
            {beside(done.captions, "dipwise-captions.vtt", words.captions)}
            {beside(done.chapters, "dipwise-chapters.vtt", words.chapters)}
        </div>
    }
}

fn escaped(text: &str) -> String {
    web_sys::js_sys::encode_uri_component(text).into()
}

/// A button that does something here.
#[component]
fn Do(making: Making, button: Button, act: fn(Making)) -> impl IntoView {
    view! {
        <button
            type="button"
            aria-label=button.name
            title=button.name
            on:mousedown=keep_focus
            on:click=move |_| act(making)
        >
            {button.label}
        </button>
    }
}

/// A list to choose from, by the place in it.
#[component]
fn Choice(
    id: &'static str,
    label: &'static str,
    options: Vec<String>,
    chosen: RwSignal<usize>,
) -> impl IntoView {
    let choose = move |event: web_sys::Event| {
        if let Ok(index) = event_target_value(&event).parse() {
            chosen.set(index);
        }
    };
    let option = move |(index, words): (usize, String)| {
        view! { <option value=index selected=move || chosen.get() == index>{words}</option> }
    };
    view! {
        <div class="film-choice">
            <label for=id>{label}</label>
            <select id=id on:change=choose>
                {options.into_iter().enumerate().map(option).collect_view()}
            </select>
        </div>
    }
}

/// A box to tick.
#[component]
fn Check(label: &'static str, on: RwSignal<bool>) -> impl IntoView {
    view! {
        <label class="film-check">
            <input
                type="checkbox"
                prop:checked=on
                on:change=move |event| on.set(event_target_checked(&event))
            />
            {label}
        </label>
    }
}

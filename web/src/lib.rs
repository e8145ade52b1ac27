//! The pages: a compass to fly in the browser.
//!
//! Each page is a program in `bin/`, which starts what stands here.
//!
//! | file | concern |
//! |---|---|
//! | `session.rs` | the flight under way; sole caller of the simulation |
//! | `flown.rs` | a flight as it was flown, to look back at and to cut |
//! | `blocks.rs` | a list that grows without moving what it holds: the samples of a flight |
//! | `stretch.rs` | a stretch of it that is replayed over and over |
//! | `clock.rs` | frame times → whole steps |
//! | `intent.rs` | what a user can ask for, and the keys for it |
//! | `route.rs`, `later.rs` | what the address names; files that are fetched when asked for |
//! | `address.rs` | the part of the address after `#`; the clipboard |
//! | `link.rs`, `share.rs` | links that carry what they open; what can be passed on |
//! | `embed.rs` | the page in a frame on another page |
//! | `player/` | a demonstration that is played over the session; what the list of them says |
//! | `making/` | demonstrations that are made here: the draft, where it is kept, its flight |
//! | `setting.rs`, `place.rs` | what a flight starts from; the form that sets it |
//! | `cockpit.rs` | the session as signals: components read, and send intents |
//! | `cover.rs`, `presenter.rs` | what is hidden from a class; presenter mode |
//! | `screen.rs` | fill the screen, keep it awake |
//! | `stick.rs`, `hands.rs` | a stick's axes and buttons → what it asks for; the browser's sticks |
//! | `preferences.rs` | what the browser remembers |
//! | `stage.rs` | shapes → canvas |
//! | `film.rs`, `film/` | a flight → frames; the bridge to `static/film.js`, which encodes them |
//! | `drawn.rs` | a picture in the colours of the page |
//! | `download.rs`, `chosen_file.rs` | text or a picture → a file of the user's; a file that a user chose → text |
//! | `words/` | every word on the page |
//! | `teaching.rs`, `teach.rs` | what is taught with the flight, in a program of its own |
//! | `app.rs`, `components/` | the page of the flight |
//! | `numbers/` | the page of numbers |
//! | `drills/` | the page of drills: tasks, what is due, progress, what is kept |
//! | `sets/` | the page of sets: composed, handed out, gathered |
//! | `maps/` | the page of maps |
//! | `pages.rs`, `field.rs` | the ways from page to page; the fields of forms |
//! | `between_frames.rs` | work in slices between frames |
//! | `arrows.rs` | arrow keys that move a point over a map |
//! | `today.rs` | the day, by the browser's clock |
//! | `light.rs` | light and language on the page's root |
//! | `speed.rs` | for measuring: flies as fast as it can |

#![allow(
    unreachable_pub,
    reason = "Leptos's component macro marks what it makes as public"
)]

mod address;
mod app;
mod arrows;
mod beside;
mod between_frames;
mod blocks;
mod chosen_file;
mod clock;
mod cockpit;
mod components;
mod cover;
mod dip_lines;
mod download;
mod drawn;
mod drills;
mod embed;
mod field;
mod film;
mod flown;
mod hands;
mod intent;
mod later;
mod light;
mod link;
mod making;
mod maps;
mod numbers;
mod pages;
mod player;
mod preferences;
mod presenter;
mod route;
mod screen;
mod session;
mod sets;
mod setting;
mod share;
mod situation_form;
mod speed;
mod stage;
mod stick;
mod stretch;
mod teach;
mod teaching;
mod today;
mod words;

/// Starts the page of numbers.
pub fn numbers() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(numbers::App);
}

/// Starts the page of drills.
pub fn drills() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(drills::App);
}

/// Starts the page of sets.
pub fn sets() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(sets::App);
}

/// Starts the page of maps; in a worker, which has no window, only what it computes with.
pub fn maps() {
    console_error_panic_hook::set_once();
    if web_sys::window().is_some() {
        leptos::mount::mount_to_body(maps::App);
    }
}

pub use maps::{lags_of_nodes, surveyed_rows};
#[cfg(target_arch = "wasm32")]
pub use speed::memory_bytes;
pub use speed::{fly_for, record_bytes_a_minute};

/// Starts the page where a flight is flown.
pub fn fly() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(|| leptos::view! { <app::App teaching=None/> });
}

/// Starts the same page with everything that is taught with the flight.
pub fn teach() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(|| leptos::view! { <app::App teaching=Some(teach::TEACHING)/> });
}

//! The page: a compass to fly in the browser.
//!
//! | file | concern |
//! |---|---|
//! | `session.rs` | the flight under way; sole caller of the simulation |
//! | `flown.rs` | a flight as it was flown, to look back at and to cut |
//! | `stretch.rs` | a stretch of it that is replayed over and over |
//! | `clock.rs` | frame times → whole steps |
//! | `intent.rs` | what a user can ask for, and the keys for it |
//! | `route.rs`, `later.rs` | what the address names; files that are fetched when asked for |
//! | `player/` | a demonstration that is played over the session; what the list of them says |
//! | `making/` | demonstrations that are made here: the draft, where it is kept, its flight |
//! | `setting.rs`, `place.rs` | what a flight starts from; the form that sets it |
//! | `cockpit.rs` | the session as signals: components read, and send intents |
//! | `cover.rs`, `presenter.rs` | what is hidden from a class; presenter mode |
//! | `screen.rs` | fill the screen, keep it awake |
//! | `stick.rs`, `hands.rs` | a stick's axes and buttons → what it asks for; the browser's sticks |
//! | `preferences.rs` | what the browser remembers |
//! | `stage.rs` | shapes → canvas |
//! | `download.rs` | text or a picture → a file of the user's |
//! | `words/` | every word on the page |
//! | `app.rs`, `components/` | the page |
//! | `speed.rs` | for measuring: flies as fast as it can |

#![allow(
    unreachable_pub,
    reason = "Leptos's component macro marks what it makes as public"
)]

mod app;
mod beside;
mod clock;
mod cockpit;
mod components;
mod cover;
mod dip_lines;
mod download;
mod flown;
mod hands;
mod intent;
mod later;
mod making;
mod player;
mod preferences;
mod presenter;
mod route;
mod screen;
mod session;
mod setting;
mod situation_form;
mod speed;
mod stage;
mod stick;
mod stretch;
mod words;

fn main() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(app::App);
}

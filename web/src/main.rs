//! The page: a compass to fly in the browser.
//!
//! | file | concern |
//! |---|---|
//! | `session.rs` | the flight under way; sole caller of the simulation |
//! | `flown.rs` | a flight as it was flown, to look back at and to cut |
//! | `clock.rs` | frame times → whole steps |
//! | `intent.rs` | what a user can ask for, and the keys for it |
//! | `setting.rs`, `place.rs` | what a flight starts from; the form that sets it |
//! | `cockpit.rs` | the session as signals: components read, and send intents |
//! | `preferences.rs` | what the browser remembers |
//! | `stage.rs` | shapes → canvas |
//! | `download.rs` | text → a file of the user's |
//! | `words/` | every word on the page |
//! | `app.rs`, `components/` | the page |
//! | `speed.rs` | for measuring: flies as fast as it can |

#![allow(
    unreachable_pub,
    reason = "Leptos's component macro marks what it makes as public"
)]

mod app;
mod clock;
mod cockpit;
mod components;
mod dip_lines;
mod download;
mod flown;
mod intent;
mod preferences;
mod session;
mod setting;
mod situation_form;
mod speed;
mod stage;
mod words;

fn main() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(app::App);
}

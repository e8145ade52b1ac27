//! A file of the user's: a demonstration, or a flight.

use crate::cockpit::Cockpit;
use crate::session::Session;
use flights::{ScenarioFile, read_json};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use lessons::demonstration::{Demonstration, LONGEST_FILE};
use web_sys::File;
use web_sys::js_sys::futures::JsFuture;

/// Opens what a file holds.
///
/// # Errors
/// A file that cannot be read or flown, in one sentence: what was open stays.
pub(crate) async fn open_file(cockpit: Cockpit, file: File) -> Result<(), String> {
    let words = cockpit.words.demonstrations();
    if file.size() > LONGEST_FILE as f64 {
        return Err((words.too_long)(file.size(), LONGEST_FILE as f64));
    }
    let text = text(&file).await.ok().and_then(|it| it.as_string());
    open_text(cockpit, &text.ok_or(words.unreadable)?)
}

async fn text(file: &File) -> Result<JsValue, JsValue> {
    JsFuture::from(file.text()).await
}

fn open_text(cockpit: Cockpit, text: &str) -> Result<(), String> {
    // A demonstration says so by its version; what does not is a flight.
    if text.contains("\"demonstration\"") {
        let read = Demonstration::from_json(text).map_err(|it| it.to_string())?;
        return (cockpit.player.open(cockpit, read)).map_err(|it| it.to_string());
    }
    let flight: ScenarioFile = read_json(text).map_err(|it| it.to_string())?;
    // Whether it can be flown is known before anything is put away.
    Session::of_script(&flight).map_err(|it| it.to_string())?;
    cockpit.player.close();
    untrack(|| cockpit.open(&flight)).map_err(|it| it.to_string())
}

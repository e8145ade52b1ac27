//! What is passed on now and then: the form of links and their QR code, and results as statements
//! for a course platform. Fetched when one of them is asked for; `web/src/link.rs` calls it.

use drawing::qr_code::qr_code;
use leptos::wasm_bindgen::prelude::*;
use lessons::drill::results::Results;
use lessons::drill::xapi;
use lessons::link::{Kind, LinkError, read, write};

/// The text of a link that carries a file; nothing for one that is too long.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn seal(kind: u8, json: &str) -> Option<String> {
    let kind = Kind::ALL.into_iter().find(|it| *it as u8 == kind)?;
    write(kind, json).ok()
}

/// The kind and the JSON that a link carries; or nothing for a link that is damaged, and its text
/// alone for one that is newer.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn unseal(text: &str) -> Vec<JsValue> {
    match read(text) {
        Ok((kind, json)) => vec![(kind as u8).into(), json.into()],
        Err(LinkError::Newer) => vec![text.into()],
        Err(_) => Vec::new(),
    }
}

/// The side of a link's QR code and the path of its black squares; nothing for one too long.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn code(link: &str) -> Vec<JsValue> {
    match qr_code(link) {
        Some(code) => vec![code.side.into(), code.black.to_svg().into()],
        None => Vec::new(),
    }
}

/// The xAPI statements of a student's results, both as JSON; nothing for what are no results.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn statements(results: &str) -> Option<String> {
    let results = Results::from_json(results).ok()?;
    Some(xapi::to_json(std::slice::from_ref(&results)))
}

fn main() {}

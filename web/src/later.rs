//! What is fetched only when it is asked for, by its name in `static/start.js`.

use flights::read_json;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use lessons::demonstration::Demonstration;
use web_sys::js_sys::futures::JsFuture;
use web_sys::js_sys::{Function, Promise, Reflect};

/// The demonstrations of the catalogue, in order; none where they cannot be fetched.
pub(crate) async fn demonstrations() -> Vec<Demonstration> {
    let text = later("demonstrations").await.and_then(|it| it.as_string());
    text.and_then(|it| read_json(&it).ok()).unwrap_or_default()
}

/// The text or the module of that name; none where there is no network and no copy is kept.
pub(crate) async fn later(name: &str) -> Option<JsValue> {
    let all = Reflect::get(&window(), &"dipwiseLater".into()).ok()?;
    let fetch: Function = Reflect::get(&all, &name.into()).ok()?.dyn_into().ok()?;
    let promised = fetch.call0(&all).ok()?;
    JsFuture::from(Promise::resolve(&promised)).await.ok()
}

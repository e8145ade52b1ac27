//! What is fetched only when it is asked for, by its name in `static/start.js`.

use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::futures::JsFuture;
use web_sys::js_sys::{Function, Promise, Reflect};

/// The text or the module of that name; none where there is no network and no copy is kept.
pub(crate) async fn later(name: &str) -> Option<JsValue> {
    let all = Reflect::get(&window(), &"dipwiseLater".into()).ok()?;
    let fetch: Function = Reflect::get(&all, &name.into()).ok()?.dyn_into().ok()?;
    let promised = fetch.call0(&all).ok()?;
    JsFuture::from(Promise::resolve(&promised)).await.ok()
}

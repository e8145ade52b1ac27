//! The screen: filled by the page, and kept from going dark.
//!
//! A browser may refuse either; the page then does without.

use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::futures::JsFuture;
use web_sys::js_sys::{Function, Promise, Reflect};

/// Fills the screen with the page.
pub(crate) fn fill() {
    if let Some(root) = document().document_element() {
        spawn_local(async move {
            let _ = call(&root, "requestFullscreen", &[]).await;
        });
    }
}

/// Whether the page fills the screen.
pub(crate) fn is_filled() -> bool {
    document().fullscreen_element().is_some()
}

/// Gives the rest of the screen back.
pub(crate) fn give_back() {
    if is_filled() {
        spawn_local(async move {
            let _ = call(&document(), "exitFullscreen", &[]).await;
        });
    }
}

/// Holds the screen awake until it is dropped.
pub(crate) struct Awake(JsValue);

impl Awake {
    /// Asks the browser to keep the screen awake; nothing if it refuses.
    pub(crate) async fn hold() -> Option<Self> {
        let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
        let held = call(&lock, "request", &["screen".into()]).await.ok()?;
        Some(Self(held))
    }
}

impl Drop for Awake {
    fn drop(&mut self) {
        let held = self.0.clone();
        spawn_local(async move {
            let _ = call(&held, "release", &[]).await;
        });
    }
}

/// Calls a method that promises something, by name: some browsers lack it, and a promise that is
/// broken must not be left lying.
pub(crate) async fn call(
    on: &JsValue,
    method: &str,
    arguments: &[JsValue],
) -> Result<JsValue, JsValue> {
    let method: Function = Reflect::get(on, &method.into())?.dyn_into()?;
    let promised = method.apply(on, &arguments.iter().collect())?;
    JsFuture::from(Promise::resolve(&promised)).await
}

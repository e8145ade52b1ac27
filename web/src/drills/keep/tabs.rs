//! What tabs of this page tell each other: that what is kept has changed.

use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

/// The way to the other tabs.
#[derive(Default)]
pub(super) struct Tabs(Option<BroadcastChannel>);

impl Tabs {
    /// Calls `on_changed` when another tab changed what is kept. Where a browser has no such way,
    /// each tab sees what the others kept when it is opened again.
    pub(super) fn new(on_changed: impl Fn() + 'static) -> Self {
        let channel = BroadcastChannel::new("dipwise-drills").ok();
        if let Some(channel) = &channel {
            let heard = Closure::<dyn Fn(MessageEvent)>::new(move |_| on_changed());
            channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
            // As long as the page.
            heard.forget();
        }
        Self(channel)
    }

    /// Tells the other tabs.
    pub(super) fn tell(&self) {
        if let Some(channel) = &self.0 {
            // Only a closed channel refuses, and this one is never closed.
            let _ = channel.post_message(&"changed".into());
        }
    }
}

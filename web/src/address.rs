//! The address of a page after its `#`, and the clipboard: how what is asked goes on to others.

use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use std::time::Duration;
use web_sys::UrlSearchParams;
use web_sys::js_sys::Reflect;
use web_sys::js_sys::futures::JsFuture;

/// How long the address waits for the last of many changes; chosen: browsers allow some hundred
/// in half a minute.
const SETTLED: Duration = Duration::from_millis(250);

/// The address after its `#`, with it.
pub(crate) fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// The address of a part of the page, with the fields that it must name.
pub(crate) fn address<'a>(
    part: &str,
    named: impl Iterator<Item = (&'static str, &'a str)>,
) -> String {
    let Ok(fields) = UrlSearchParams::new() else {
        return format!("#{part}");
    };
    for (name, text) in named {
        fields.append(name, text);
    }
    let fields = String::from(fields.to_string());
    let mark = if fields.is_empty() { "" } else { "?" };
    format!("#{part}{mark}{fields}")
}

/// The part that the address names, and what it says of a field by name.
pub(crate) fn asked() -> (String, impl Fn(&str) -> Option<String>) {
    let hash = hash();
    let (part, fields) = hash.split_once('?').unwrap_or((&hash, ""));
    let fields = UrlSearchParams::new_with_str(fields).ok();
    let part = part.trim_start_matches(['#', '/']).to_owned();
    (part, move |name: &str| {
        fields.as_ref().and_then(|fields| fields.get(name))
    })
}

/// The whole address of this page with another end after `#`.
pub(crate) fn link(address: &str) -> String {
    let here = window().location().href().unwrap_or_default();
    let page = here.split('#').next().unwrap_or_default();
    format!("{page}{address}")
}

/// Writes what is asked into the address; `known` is the address as it was last read or written.
pub(crate) fn keep(address: impl Fn() -> String + 'static, known: StoredValue<String>) {
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move || {
        let address = address();
        let write = move || {
            // Another address was asked for, and is about to be read.
            if known.with_value(|known| *known != hash()) {
                return;
            }
            let history = window().history();
            // Refused where there were too many changes: the next one is written again.
            let _ = history
                .map(|history| history.replace_state_with_url(&JsValue::NULL, "", Some(&address)));
            known.set_value(hash());
        };
        let next = set_timeout_with_handle(write, SETTLED).ok();
        if let Some(before) = waiting
            .try_update_value(|it| std::mem::replace(it, next))
            .flatten()
        {
            before.clear();
        }
    });
}

/// Puts a text on the clipboard. Browsers have one only on a page that came by a safe way.
pub(crate) async fn put_on_clipboard(text: &str) -> Result<(), JsValue> {
    let navigator = window().navigator();
    if Reflect::get(&navigator, &"clipboard".into())?.is_undefined() {
        return Err(JsValue::UNDEFINED);
    }
    JsFuture::from(navigator.clipboard().write_text(text)).await?;
    Ok(())
}

//! A link as it is passed on: a text to copy, and its QR code.

use crate::link::Code;
use crate::screen::call;
use crate::words::LinkWords;
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsValue;
use web_sys::HtmlInputElement;
use web_sys::js_sys::Reflect;

/// The QR code of a link, and a button that makes it as large as the screen.
#[component]
pub(crate) fn QrCode(words: &'static LinkWords, code: Code) -> impl IntoView {
    let box_of = format!("0 0 {0} {0}", code.side);
    let large = RwSignal::new(false);
    view! {
        <div class="qr" class:large=move || large.get()>
            <svg viewBox=box_of role="img" aria-label=words.qr_code id="qr-code">
                <rect width="100%" height="100%"/>
                <path d=code.black/>
            </svg>
            <button
                type="button"
                aria-pressed=move || large.get().to_string()
                on:click=move |_| large.update(|it| *it = !*it)
            >
                {words.large}
            </button>
        </div>
    }
}

/// A text with a button that copies it; where the browser refuses, it is selected.
#[component]
pub(crate) fn Copied(
    words: &'static LinkWords,
    label: &'static str,
    id: &'static str,
    text: String,
) -> impl IntoView {
    let field = NodeRef::<html::Input>::new();
    let said = RwSignal::new("");
    let copied = text.clone();
    let copy = move |_| {
        let text = JsValue::from_str(&copied);
        spawn_local(async move {
            let done = match Reflect::get(&window().navigator(), &"clipboard".into()) {
                Ok(clipboard) => call(&clipboard, "writeText", &[text]).await.is_ok(),
                Err(_) => false,
            };
            if !done && let Some(field) = field.try_get_untracked().flatten() {
                select(&field);
            }
            said.try_set(if done {
                words.copied
            } else {
                words.copy_by_hand
            });
        });
    };
    view! {
        <div class="copied">
            <label for=id>{label}</label>
            <input
                type="text"
                readonly
                id=id
                node_ref=field
                value=text
                on:focus=move |_| {
                    if let Some(field) = field.get_untracked() {
                        select(&field);
                    }
                }
            />
            <button type="button" on:click=copy>{words.copy}</button>
            <span role="status">{move || said.get()}</span>
        </div>
    }
}

fn select(field: &HtmlInputElement) {
    // Neither fails for a text field on the page.
    let _ = field.focus();
    field.select();
}

//! What is kept: open it, delete it, put it back; begin another.

use super::button;
use crate::cockpit::use_cockpit;
use crate::download::download;
use crate::making::{Kept, Maker, use_maker};
use crate::words::MakingWords;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use lessons::demonstration::LONGEST_FILE;
use web_sys::js_sys::futures::JsFuture;
use web_sys::{Event, HtmlInputElement};

/// The list, unfolded while no draft is open, and the ways to begin one.
#[component]
pub(super) fn Shelf() -> impl IntoView {
    let cockpit = use_cockpit();
    let maker = use_maker();
    let words = &cockpit.words.making;
    let kept = Memo::new(move |_| (maker.kept(), maker.open_id()));
    let flown = cockpit.part(|readout| readout.flown > 0.0);
    view! {
        <details class="shelf" id="shelf" open=untrack(|| !maker.is_open())>
            <summary>{move || (words.mine)(maker.kept().len())}</summary>
            <ul>
                {move || {
                    let (kept, open) = kept.get();
                    let row = |it| row(maker, words, it, open.as_deref());
                    kept.into_iter().map(row).collect_view()
                }}
            </ul>
            <p class="hint" hidden=move || !maker.kept().is_empty()>{words.none_yet}</p>
        </details>
        <p class="put-back" role="status">
            {move || maker.deleted().map(|title| (words.deleted)(&title))}
            " "
            <Show when=move || maker.deleted().is_some()>
                {button(words.put_back, move || maker.undelete())}
            </Show>
        </p>
        <div class="begin-making">
            <Show when=move || flown.get()>
                {button(words.of_flight, move || maker.begin_of_flight())}
            </Show>
            <label class="file">
                <input type="file" accept=".json,application/json" on:change=move |event| {
                    chosen(maker, words, &event);
                }/>
                <span>{words.open_file}</span>
            </label>
        </div>
        <p class="wrong" role="alert" id="not-opened">{move || maker.refused()}</p>
    }
}

fn row(maker: Maker, words: &'static MakingWords, kept: Kept, open: Option<&str>) -> AnyView {
    let is_open = open == Some(kept.id.as_str());
    let (id, delete) = (kept.id.clone(), kept.id.clone());
    let title = match &kept.title {
        None => words.unreadable,
        Some(title) if title.trim().is_empty() => words.untitled,
        Some(title) => title,
    };
    let (title, deletes) = (title.to_owned(), (words.delete)(title));
    let first = if kept.title.is_some() {
        view! {
            <button
                type="button"
                class="title"
                aria-current=is_open.then_some("true")
                on:click=move |_| maker.open(&id)
            >
                {title}
            </button>
        }
        .into_any()
    } else {
        view! {
            <span class="title">{title}</span>
            {button(words.save_as_it_is, move || {
                download("dipwise-unread.txt", "text/plain", &maker.raw(&id));
            })}
        }
        .into_any()
    };
    view! {
        <li>
            {first}
            <button
                type="button"
                class="quiet"
                aria-label=deletes.clone()
                title=deletes
                on:click=move |_| maker.delete(&delete)
            >
                "×"
            </button>
        </li>
    }
    .into_any()
}

/// A file was chosen: it is read and opened.
fn chosen(maker: Maker, words: &'static MakingWords, event: &Event) {
    let Some(input) = event
        .target()
        .and_then(|it| it.dyn_into::<HtmlInputElement>().ok())
    else {
        return;
    };
    let Some(file) = input.files().and_then(|it| it.get(0)) else {
        return;
    };
    // The same file can be chosen again, once it is mended.
    input.set_value("");
    if file.size() > LONGEST_FILE as f64 {
        maker.refuse(words.file_too_long.to_owned());
        return;
    }
    spawn_local(async move {
        match JsFuture::from(file.text())
            .await
            .ok()
            .and_then(|it| it.as_string())
        {
            Some(text) => maker.begin_of_file(&text),
            None => maker.refuse(words.file_unread.to_owned()),
        }
    });
}

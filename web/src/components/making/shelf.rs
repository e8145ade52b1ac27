//! What is kept: open it, delete it, put it back; begin another.

use super::{Look, button, press};
use crate::cockpit::use_cockpit;
use crate::download::download;
use crate::making;
use crate::making::{Maker, Shelf, use_maker};
use crate::words::MakingWords;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use lessons::demonstration::LONGEST_FILE;
use web_sys::js_sys::futures::JsFuture;
use web_sys::{Event, HtmlInputElement};

/// The list, unfolded while no draft is open, and the ways to begin one.
#[component]
pub(super) fn Kept() -> impl IntoView {
    let maker = use_maker();
    // Unfolded by hand, it stays so.
    let open = Memo::new(move |_| maker.is_open());
    let words = use_cockpit().words.making();
    view! {
        <details class="shelf" id="shelf" prop:open=move || !open.get()>
            <summary>{move || (words.mine)(maker.shelf().kept.len())}</summary>
            <ul>
                {move || {
                    let Shelf { kept, open, .. } = maker.shelf();
                    let row = |it| row(maker, words, it, open.as_deref());
                    kept.into_iter().map(row).collect_view()
                }}
            </ul>
            <p class="hint" hidden=move || !maker.shelf().kept.is_empty()>{words.none_yet}</p>
            <div class="row">
                {button(words.of_flight, move || maker.begin_of_flight())}
                <label class="file">
                    <input type="file" accept=".json,application/json" on:change=move |event| {
                        chosen(maker, words, &event);
                    }/>
                    <span>{words.open_file}</span>
                </label>
            </div>
        </details>
        <div class="put-back" role="status" hidden=move || maker.shelf().deleted.is_none()>
            <span>{move || maker.shelf().deleted.map(|it| (words.deleted)(&it.title))}</span>
            {button(words.put_back, move || maker.undelete())}
        </div>
        <p class="wrong" role="alert" id="not-opened">{move || maker.shelf().refused}</p>
    }
}

fn row(
    maker: Maker,
    words: &'static MakingWords,
    kept: making::Kept,
    open: Option<&str>,
) -> AnyView {
    let is_open = open == Some(kept.id.as_str());
    let title = match &kept.title {
        None => words.unreadable,
        Some(title) if title.trim().is_empty() => words.untitled,
        Some(title) => title,
    };
    let deletes = (words.delete)(title);
    let look = Look {
        class: "title",
        chosen: Signal::stored(is_open),
        ..Look::named(title, title.to_owned())
    };
    let (id, delete, readable) = (kept.id.clone(), kept.id, kept.title.is_some());
    let opens = press(look, move || {
        if readable {
            maker.open(&id);
        } else {
            // What cannot be read can still be taken home.
            download("dipwise-unread.txt", "text/plain", &maker.raw(&id));
        }
    });
    let deletes = Look {
        class: "quiet",
        ..Look::named("×", deletes)
    };
    view! { <li>{opens}{press(deletes, move || maker.delete(&delete))}</li> }.into_any()
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

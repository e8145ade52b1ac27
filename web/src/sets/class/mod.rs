//! The results of a class: files opened, marked again, and laid together.

mod gather;
mod table;

use super::app::said;
use crate::chosen_file::{Unread, chosen};
use crate::words::SetWords;
use gather::{Gather, Refusal, Taken};
use leptos::ev::DragEvent;
use leptos::prelude::*;
use table::Table;
use web_sys::File;

/// The class.
#[component]
pub(crate) fn Class() -> impl IntoView {
    let all = said().own;
    let words = &all.class;
    let gather = Gather::new();
    let over = RwSignal::new(false);
    let drop = move |event: DragEvent| {
        event.prevent_default();
        over.set(false);
        gather.add(dropped(&event));
    };
    view! {
        <section class="class-files" aria-labelledby="class-title">
            <h2 id="class-title">{words.title}</h2>
            <p class="about">{words.about}</p>
            <div
                class="drop"
                class:over=move || over.get()
                on:dragover=move |event| {
                    event.prevent_default();
                    over.set(true);
                }
                on:dragleave=move |_| over.set(false)
                on:drop=drop
            >
                <label class="file">
                    <input
                        type="file"
                        multiple
                        accept=".json,application/json"
                        on:change=move |event| gather.add(chosen(&event))
                    />
                    <span>{words.choose}</span>
                </label>
                <span class="hint">{words.drop}</span>
            </div>
            <Progress gather/>
            <p role="status">{move || gather.is_cancelled().then_some(words.cancelled)}</p>
            <div role="alert">
                {move || gather.refused().with(|it| {
                    (!it.is_empty()).then(|| view! { <Refused refused=it.clone()/> })
                })}
            </div>
            <Kept gather/>
        </section>
        <Show when=move || gather.taken().with(|it| !it.is_empty())>
            <Table gather/>
        </Show>
    }
}

/// The files that were dropped.
fn dropped(event: &DragEvent) -> Vec<File> {
    let files = event.data_transfer().and_then(|it| it.files());
    files.map_or(Vec::new(), |list| {
        (0..list.length()).filter_map(|at| list.get(at)).collect()
    })
}

#[component]
fn Progress(gather: Gather) -> impl IntoView {
    let words = &said().own.class;
    let now = gather.now();
    let is_at_work = Memo::new(move |_| now.with(Option::is_some));
    let said = move || now.with(|it| it.as_ref().map(|it| (words.progress)(&it.file, it.done)));
    let done = move || now.with(|it| it.as_ref().map_or(0, |it| it.done));
    let all = move || now.with(|it| it.as_ref().map_or(1, |it| it.all.max(1)));
    view! {
        <Show when=move || is_at_work.get()>
            <div class="progress">
                <span>{said}", "{move || (words.left)(gather.left())}</span>
                <progress aria-label=move || said().unwrap_or_default() max=all value=done/>
                <button type="button" on:click=move |_| gather.cancel()>{words.cancel}</button>
            </div>
        </Show>
    }
}

#[component]
fn Refused(refused: Vec<(String, Refusal)>) -> impl IntoView {
    let all = said().own;
    let line = move |(file, refusal): (String, Refusal)| {
        view! { <li><b>{file}</b>": " {sentence(all, &refusal)}</li> }
    };
    view! {
        <div class="refused-files">
            <h3>{all.class.refused}</h3>
            <ul>{refused.into_iter().map(line).collect_view()}</ul>
        </div>
    }
}

fn sentence(words: &'static SetWords, refusal: &Refusal) -> String {
    let words = &words.class;
    match refusal {
        Refusal::Unread(Unread::Unreadable) => words.unread.to_owned(),
        Refusal::Unread(Unread::TooLong) => words.too_long.to_owned(),
        Refusal::Same(file) => (words.same)(file),
        Refusal::Wrong(reason) => format!("{reason}."),
    }
}

#[component]
fn Kept(gather: Gather) -> impl IntoView {
    let words = &said().own.class;
    let taken = gather.taken();
    let line = move |it: Taken| {
        let file = it.file.clone();
        let found = (words.file)(it.results.answers.len(), it.changed);
        view! {
            <li>
                <span><b>{it.file.clone()}</b>": "{found}</span>
                <button
                    type="button"
                    aria-label=(words.remove)(&file)
                    title=(words.remove)(&file)
                    on:click=move |_| gather.remove(&file)
                >
                    "×"
                </button>
            </li>
        }
    };
    view! {
        <Show when=move || taken.with(|it| !it.is_empty())>
            <h3>{words.kept}</h3>
            <ul class="kept-files">
                <For
                    each=move || taken.get()
                    key=|it| it.file.clone()
                    children=line
                />
            </ul>
        </Show>
    }
}

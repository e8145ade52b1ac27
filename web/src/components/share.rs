//! Passing on what the page shows: its link, the QR code of that, and the code of a frame.

use super::controls::keep_focus;
use super::link_forms::{Copied, QrCode};
use crate::cockpit::use_cockpit;
use crate::download::download;
use crate::link::{self, Code, Fault};
use crate::player::Player;
use crate::route::Route;
use crate::share::{Share, Subject, route_to};
use crate::teaching::leave;
use crate::words::LinkWords;
use drawing::qr_code::MOST_BYTES;
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::link::{Carried, LinkError};

/// The button that opens the dialog.
#[component]
pub(crate) fn ShareButton() -> impl IntoView {
    let cockpit = use_cockpit();
    let share: Option<Share> = use_context();
    let words = &cockpit.words.links;
    view! {
        <button
            type="button"
            class="quiet"
            id="share"
            aria-label=words.share.name
            title=words.share.name
            aria-haspopup="dialog"
            on:mousedown=keep_focus
            on:click=move |_| match share {
                Some(share) => share.show(true),
                None => leave(cockpit, &Route::Share),
            }
        >
            {words.share.label}
        </button>
    }
}

/// Why the link in the address was not opened.
#[component]
pub(crate) fn RefusedLink() -> impl IntoView {
    let share: Share = expect_context();
    let words = &use_cockpit().words.links;
    // Stands empty until there is something to say, so that screen readers hear it.
    view! {
        <div class="refused" role="alert">
            {move || share.refused().map(|fault| view! {
                <p>{(words.fault)(&fault)}</p>
                <button type="button" on:click=move |_| share.set_refused(None)>
                    {words.put_away}
                </button>
            })}
        </div>
    }
}

/// The way from a frame to the page itself.
#[component]
pub(crate) fn OpenInFull() -> impl IntoView {
    let words = &use_cockpit().words.links;
    let route = crate::route::use_route();
    view! {
        <a class="open-in-full" target="_blank" rel="noopener" href=move || address("", &route.get())>
            {words.open_in_full}
        </a>
    }
}

/// The dialog.
#[component]
pub(crate) fn ShareDialog() -> impl IntoView {
    let share: Share = expect_context();
    view! {
        <Show when=move || share.shown()>
            <Dialog share/>
        </Show>
    }
}

/// A link that was made.
#[derive(Clone)]
struct Made {
    route: Route,
    /// The whole address.
    link: String,
    /// None for a link that is too long for one.
    code: Option<Code>,
}

async fn make(player: Player, carried: Carried) -> Result<Made, Fault> {
    let route = route_to(player, carried).await?;
    let link = address("", &route);
    let code = link::code(&link).await?;
    Ok(Made { route, link, code })
}

#[component]
fn Dialog(share: Share) -> impl IntoView {
    let cockpit = use_cockpit();
    let player: Player = expect_context();
    let words = &cockpit.words.links;
    let dialog = NodeRef::<html::Dialog>::new();
    Effect::new(move || {
        if let Some(dialog) = dialog.get() {
            // Refused only for one that is shown already.
            let _ = dialog.show_modal();
        }
    });

    let mut there = Subject::ALL.to_vec();
    there.retain(|it| untrack(|| it.is_there(cockpit, player)));
    let subject = RwSignal::new(there[0]);
    let made = RwSignal::new(None::<Result<Made, Fault>>);
    let carried = StoredValue::new(None::<Carried>);
    Effect::new(move || {
        let chosen = subject.get();
        let now = chosen.carried(cockpit, player);
        carried.set_value(now.clone());
        made.set(None);
        spawn_local(async move {
            let link = match now {
                Some(carried) => make(player, carried).await,
                None => Err(Fault::NoStart),
            };
            // Something else may have been chosen meanwhile, or the dialog closed.
            if subject.try_get_untracked() == Some(chosen) {
                made.set(Some(link));
            }
        });
    });
    let option = move |it: Subject| {
        let name = (words.subject)(it);
        view! { <option value=name selected=it == subject.get_untracked()>{name}</option> }
    };
    let choices = there.clone();
    let choose = move |event| {
        let value = event_target_value(&event);
        let chosen = there.iter().find(|it| (words.subject)(**it) == value);
        if let Some(chosen) = chosen {
            subject.set(*chosen);
        }
    };
    view! {
        <dialog
            class="share"
            aria-labelledby="share-title"
            node_ref=dialog
            // Its keys are its own, not the aircraft's.
            on:keydown=|event| event.stop_propagation()
            on:close=move |_| share.show(false)
        >
            <header>
                <h2 id="share-title">{words.share.label}</h2>
                <select aria-label=words.what on:change=choose>
                    {choices.into_iter().map(option).collect_view()}
                </select>
                <button type="button" on:click=move |_| {
                    if let Some(dialog) = dialog.get_untracked() {
                        dialog.close();
                    }
                }>
                    {words.close}
                </button>
            </header>
            {move || match made.get() {
                None => view! { <p role="status">{words.making}</p> }.into_any(),
                Some(Ok(made)) => view! { <Link words made carried/> }.into_any(),
                Some(Err(fault)) => view! {
                    <p role="status">{(words.fault)(&fault)}</p>
                    {(fault == Fault::Link(LinkError::TooLong))
                        .then(|| view! { <SaveFile words carried/> })}
                }
                .into_any(),
            }}
        </dialog>
    }
}

/// A link that is made, in its three forms.
#[component]
fn Link(
    words: &'static LinkWords,
    made: Made,
    carried: StoredValue<Option<Carried>>,
) -> impl IntoView {
    let player: Player = expect_context();
    let is_demonstration = carried.with_value(|it| matches!(it, Some(Carried::Demonstration(_))));
    let Made { route, link, code } = made;
    let is_carried = matches!(route, Route::Carried(_));
    let open = untrack(|| player.open_now());
    let title = match open.filter(|_| is_demonstration) {
        Some(it) => format!("Dipwise: {}", it.said(&it.demonstration().title)),
        None => "Dipwise".to_owned(),
    };
    let frame = frame_code(&address("?embed", &route), &title);
    let length = link.len();
    let code = code.map(|code| view! { <QrCode words code/> }.into_any());
    let code = code.unwrap_or_else(|| {
        view! {
            <div class="qr">
                <p>{(words.no_qr_code)(length, MOST_BYTES)}</p>
                <SaveFile words carried/>
            </div>
        }
        .into_any()
    });
    view! {
        <div class="share-parts">
            {code}
            <div class="share-texts">
                <Copied words label=words.link id="share-link" text=link/>
                <p class="hint" id="share-length">{(words.length)(length, is_carried)}</p>
                <Copied words label=words.frame id="share-frame" text=frame/>
                <p class="hint">{words.frame_hint}</p>
            </div>
        </div>
    }
}

#[component]
fn SaveFile(words: &'static LinkWords, carried: StoredValue<Option<Carried>>) -> impl IntoView {
    let save = move |_| {
        carried.with_value(|it| {
            let (name, text) = match it {
                Some(Carried::Demonstration(it)) => (it.name.as_str(), it.to_json()),
                Some(Carried::Flight(it)) => ("dipwise-flight", it.to_json()),
                Some(Carried::Situation(it)) => ("dipwise-situation", it.to_json()),
                // A set is passed on from its own page.
                Some(Carried::Set(_)) | None => return,
            };
            download(&format!("{name}.json"), "application/json", &text);
        });
    };
    view! { <button type="button" on:click=save>{words.save_file}</button> }
}

/// The page's whole address for a route.
fn address(query: &str, route: &Route) -> String {
    let location = window().location();
    // A page always has both.
    let origin = location.origin().unwrap_or_default();
    let path = location.pathname().unwrap_or_default();
    format!("{origin}{path}{query}{}", route.address())
}

/// The code that puts the page into a frame; it needs no storage and asks for no rights.
fn frame_code(address: &str, title: &str) -> String {
    let plain = |text: &str| {
        text.replace('&', "&amp;")
            .replace('"', "&quot;")
            .replace('<', "&lt;")
    };
    format!(
        "<iframe src=\"{}\" title=\"{}\" width=\"720\" height=\"600\" loading=\"lazy\" \
         style=\"max-width:100%;border:0\"></iframe>",
        plain(address),
        plain(title)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_frames_code_has_no_loose_ends() {
        let code = frame_code("https://example.org/?embed#d=AB-_", "A \"<b>\" & c");
        assert!(code.starts_with("<iframe src=\"https://example.org/?embed#d=AB-_\" title="));
        assert!(code.contains("title=\"A &quot;&lt;b>&quot; &amp; c\" width"));
        assert!(code.ends_with("></iframe>"));
    }
}

//! A file that a user chose, as text.

use leptos::wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::futures::JsFuture;
use web_sys::{Event, File, HtmlInputElement};

/// A file longer than this is not read, bytes; chosen, as on the command line.
pub(crate) const LONGEST: f64 = 16.0 * 1024.0 * 1024.0;

/// Why a file was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unread {
    /// It is longer than [`LONGEST`].
    TooLong,
    /// The browser could not read it.
    Unreadable,
}

/// The files that were chosen in an input; they can be chosen again, once they are mended.
pub(crate) fn chosen(event: &Event) -> Vec<File> {
    let target = event
        .target()
        .and_then(|it| it.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = target else {
        return Vec::new();
    };
    let list = input.files();
    let files = list.map_or(Vec::new(), |list| {
        (0..list.length()).filter_map(|at| list.get(at)).collect()
    });
    input.set_value("");
    files
}

/// The text of the file that was chosen in an input; none where none was.
pub(crate) async fn chosen_text(event: &Event) -> Option<Result<String, Unread>> {
    let file = chosen(event).into_iter().next()?;
    Some(text(&file).await)
}

/// The text of a file.
pub(crate) async fn text(file: &File) -> Result<String, Unread> {
    if file.size() > LONGEST {
        return Err(Unread::TooLong);
    }
    let read: Result<JsValue, JsValue> = JsFuture::from(file.text()).await;
    read.ok()
        .and_then(|it| it.as_string())
        .ok_or(Unread::Unreadable)
}

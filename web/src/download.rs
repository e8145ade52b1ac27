//! Text and pictures that the user takes home as files. They are made here and asked of no server.

use crate::screen::call;
use crate::stage::Stage;
use drawing::shape::Shape;
use drawing::theme::Theme;
use kurbo::Size;
use leptos::prelude::*;
use leptos::wasm_bindgen::closure::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::time::Duration;
use web_sys::js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlCanvasElement, Url};

/// How many pixels a picture of dots has for each unit of its size; chosen: sharp in print at the
/// width of a page.
const DOTS: f64 = 2.0;

/// How long the file stays to be fetched, in seconds; chosen: a browser may ask its user first
/// where the file is to go, but has it by then.
const KEPT: u64 = 60;

/// Hands the browser a file to save.
pub(crate) fn download(name: &str, kind: &str, text: &str) {
    // Refused only by a browser out of memory: then there is no file.
    let _ = offer(name, kind, &text.into());
}

/// The same of bytes.
pub(crate) fn download_bytes(name: &str, kind: &str, bytes: &[u8]) {
    let _ = offer(name, kind, &Uint8Array::from(bytes).into());
}

/// Hands the browser a picture to save, painted from shapes that are drawn for `size`, as PNG.
pub(crate) fn download_png(name: &str, size: Size, theme: &Theme, shapes: &[Shape]) {
    // As for text: refused only for want of memory.
    let _ = offer_png(name, size, theme, shapes);
}

/// Puts a picture on the clipboard, painted likewise.
///
/// # Errors
/// A browser that lets no page put pictures there.
pub(crate) async fn copy_png(size: Size, theme: Theme, shapes: Vec<Shape>) -> Result<(), JsValue> {
    let canvas = painted(size, &theme, &shapes)?;
    let blob = Promise::new(&mut |put, _| {
        let painted = Closure::once_into_js(move |blob: Option<Blob>| {
            let _ = put.call1(&JsValue::UNDEFINED, &blob.into());
        });
        let _ = canvas.to_blob(painted.unchecked_ref());
    });
    // By name: older browsers lack it.
    let make: Function = Reflect::get(&window(), &"ClipboardItem".into())?.dyn_into()?;
    let parts = Object::new();
    Reflect::set(&parts, &"image/png".into(), &blob)?;
    let item = Reflect::construct(&make, &Array::of1(&parts))?;
    let clipboard = Reflect::get(&window().navigator(), &"clipboard".into())?;
    call(&clipboard, "write", &[Array::of1(&item).into()]).await?;
    Ok(())
}

fn painted(size: Size, theme: &Theme, shapes: &[Shape]) -> Result<HtmlCanvasElement, JsValue> {
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.unchecked_into();
    Stage::paint_apart(&canvas, size, DOTS, theme, shapes);
    Ok(canvas)
}

fn offer_png(name: &str, size: Size, theme: &Theme, shapes: &[Shape]) -> Result<(), JsValue> {
    let canvas = painted(size, theme, shapes)?;
    let name = name.to_owned();
    let painted = Closure::once_into_js(move |blob: Option<Blob>| {
        if let Some(blob) = blob {
            let _ = offer_blob(&name, &blob);
        }
    });
    canvas.to_blob(painted.unchecked_ref())
}

fn offer(name: &str, kind: &str, part: &JsValue) -> Result<(), JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    // Text and bytes alike: a blob takes either as one of its parts.
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(part), &options)?;
    offer_blob(name, &blob)
}

fn offer_blob(name: &str, blob: &Blob) -> Result<(), JsValue> {
    let address = Url::create_object_url_with_blob(blob)?;
    let anchor: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    set_timeout(
        move || {
            let _ = Url::revoke_object_url(&address);
        },
        Duration::from_secs(KEPT),
    );
    Ok(())
}

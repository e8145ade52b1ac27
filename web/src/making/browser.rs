//! The browser's own store.

use super::shelf::{Refused, Store};
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::Math;
use web_sys::{DomException, Storage};

/// The browser's local storage, asked for anew each time: it may be blocked at any moment.
pub(super) struct Browser;

fn storage() -> Result<Storage, Refused> {
    match window().local_storage() {
        Ok(Some(storage)) => Ok(storage),
        _ => Err(Refused::Blocked),
    }
}

/// Firefox has a name of its own for it.
fn why(error: JsValue) -> Refused {
    let name = error.dyn_into::<DomException>().map(|it| it.name());
    match name.as_deref() {
        Ok("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => Refused::Full,
        _ => Refused::Blocked,
    }
}

impl Store for Browser {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        storage()?.get_item(key).map_err(why)
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        storage()?.set_item(key, text).map_err(why)
    }

    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        storage()?.remove_item(key).map_err(why)
    }

    fn keys(&self) -> Result<Vec<String>, Refused> {
        let storage = storage()?;
        let count = storage.length().map_err(why)?;
        let keys = (0..count).map(|index| storage.key(index).map_err(why));
        Ok(keys
            .collect::<Result<Vec<_>, _>>()?
            .into_iter()
            .flatten()
            .collect())
    }
}

/// An id that no other tab has thought of.
pub(super) fn fresh_id() -> String {
    let part = || (Math::random() * f64::from(u32::MAX)) as u32;
    format!("{:08x}{:08x}", part(), part())
}

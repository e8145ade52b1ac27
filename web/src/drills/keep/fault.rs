//! What can be wrong with the browser's storage.

use idb::Error;
use leptos::wasm_bindgen::{JsCast, JsValue};
use web_sys::DomException;

/// What is wrong; practice goes on in memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fault {
    /// The browser gives none, as in some private windows.
    Refused,
    /// A tab with an older page holds it.
    Blocked,
    /// It was made by a newer page than this.
    Newer,
    /// There is no room.
    Full,
    /// It broke down.
    Lost,
    /// So many records cannot be read; all others are.
    Damaged(usize),
}

impl Fault {
    /// By what the browser says.
    pub(super) fn of(error: &Error) -> Self {
        let thrown: &JsValue = match error {
            Error::DomException(error) => error,
            Error::UpdateFailed(error)
            | Error::AddFailed(error)
            | Error::IndexedDbOpenFailed(error)
            | Error::TransactionOpenFailed(error) => error,
            _ => return Self::Lost,
        };
        let name = thrown.dyn_ref::<DomException>().map(DomException::name);
        match name.as_deref() {
            // Firefox has a name of its own for it.
            Some("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => Self::Full,
            Some("VersionError") => Self::Newer,
            _ => Self::Lost,
        }
    }

    /// What could not even be opened was refused, unless more is known.
    pub(super) fn or_refused(self) -> Self {
        match self {
            Self::Lost => Self::Refused,
            other => other,
        }
    }
}

//! Presenter mode: whether it runs, and what it hides from the class.

use leptos::prelude::*;

/// The state of presenter mode.
#[derive(Clone, Copy)]
pub(crate) struct Presenter {
    presenting: RwSignal<bool>,
    curtain: RwSignal<bool>,
    keys_shown: RwSignal<bool>,
}

impl Presenter {
    /// Not presenting.
    pub(crate) fn new() -> Self {
        Self {
            presenting: RwSignal::new(false),
            curtain: RwSignal::new(false),
            keys_shown: RwSignal::new(false),
        }
    }

    /// Whether presenter mode runs.
    pub(crate) fn presenting(self) -> bool {
        self.presenting.get()
    }

    /// Whether the curtain is down: nothing at all is shown.
    pub(crate) fn curtain(self) -> bool {
        self.curtain.get()
    }

    /// Whether the list of keys lies over the picture.
    pub(crate) fn keys_shown(self) -> bool {
        self.keys_shown.get()
    }

    /// Begins or ends; either way with the curtain up.
    pub(crate) fn set_presenting(self, presenting: bool) {
        self.curtain.set(false);
        self.keys_shown.set(false);
        self.presenting.set(presenting);
    }

    /// Lets the curtain down, or raises it.
    pub(crate) fn move_curtain(self) {
        self.curtain.update(|down| *down = !*down);
    }

    /// Shows the list of keys, or hides it.
    pub(crate) fn show_keys(self) {
        self.keys_shown.update(|shown| *shown = !*shown);
    }
}

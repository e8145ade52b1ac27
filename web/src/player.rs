//! A demonstration that is played: its flight is flown at once and replayed by the session, and
//! its cues act as they are passed.

use crate::cockpit::Cockpit;
use crate::later::later;
use flights::read_json;
use leptos::prelude::*;
use lessons::demonstration::{Demonstration, DemonstrationError, Flown};
use std::sync::Arc;

/// The demonstrations of the catalogue, in order; none where they cannot be fetched.
pub(crate) async fn catalogue() -> Vec<Demonstration> {
    let text = later("demonstrations").await.and_then(|it| it.as_string());
    text.and_then(|it| read_json(&it).ok()).unwrap_or_default()
}

/// The demonstration that is open, if one is.
#[derive(Clone, Copy)]
pub(crate) struct Player {
    open: RwSignal<Option<Arc<Flown>>>,
}

impl Player {
    /// A player with nothing in it.
    pub(crate) fn new() -> Self {
        Self {
            open: RwSignal::new(None),
        }
    }

    /// The demonstration that is open, with its flight and figures.
    pub(crate) fn open_now(self) -> Option<Arc<Flown>> {
        self.open.get()
    }

    /// Opens a demonstration at its start, in the place of what was flown.
    ///
    /// # Errors
    /// One that cannot be played: what was open stays.
    pub(crate) fn open(
        self,
        cockpit: Cockpit,
        demonstration: Demonstration,
    ) -> Result<(), DemonstrationError> {
        let flown = Flown::new(demonstration)?;
        cockpit.open(&flown.demonstration().scenario)?;
        self.open.set(Some(Arc::new(flown)));
        Ok(())
    }

    /// Puts it away; its flight stays.
    pub(crate) fn close(self) {
        self.open.set(None);
    }
}

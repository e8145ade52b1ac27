//! Making a demonstration: a draft of one, changed step by step, each of which can be undone.
//!
//! A draft need not be playable. What is wrong with it is told entry by entry
//! ([`Draft::faults`]), and it can be kept as it is meanwhile.
//!
//! ```
//! use lessons::demonstration::Act;
//! use lessons::making::{Draft, Entry, Making, Step};
//!
//! let flight = r#"{"field": {"latitude_deg": 45}, "start": {"heading_deg": 270, "speed_kt": 100},
//!     "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": 15}, {"seconds": 40}]}"#;
//! let mut making = Making::new(Draft::from_json(flight, "Onto north")?);
//! let id = making.change(Step::New, |draft| draft.put(12.0, Act::Caption(String::new())));
//! making.change(Step::In(Entry::CueText(id)), |draft| {
//!     draft.type_in(Entry::CueText(id), "Watch the card.");
//! });
//! making.undo();
//! assert_eq!(making.draft().text(Entry::CueText(id)), "");
//! making.redo();
//! assert!(making.draft().faults().is_empty());
//! # Ok::<(), lessons::demonstration::DemonstrationError>(())
//! ```

mod draft;
mod entry;
mod history;
mod offer;

pub use draft::{Draft, Placed};
pub use entry::{Entry, Fault};
pub use history::{History, KEPT, Step};
pub use offer::Kind;

/// A draft under its maker's hands.
#[derive(Clone, Debug)]
pub struct Making {
    draft: Draft,
    history: History<Draft, Entry>,
}

impl Making {
    /// A draft to which nothing was done yet.
    pub fn new(draft: Draft) -> Self {
        Self {
            draft,
            history: History::default(),
        }
    }

    /// The draft as it stands.
    pub fn draft(&self) -> &Draft {
        &self.draft
    }

    /// Changes the draft, so that it can be undone, and gives what the change gives. A change that
    /// changes nothing is none.
    pub fn change<T>(&mut self, step: Step<Entry>, by: impl FnOnce(&mut Draft) -> T) -> T {
        let before = self.draft.clone();
        let given = by(&mut self.draft);
        if self.draft != before {
            self.history.keep(before, step);
        }
        given
    }

    /// What was typed or dragged is done with.
    pub fn end_step(&mut self) {
        self.history.end_step();
    }

    /// Undoes the last change, and says whether there was one.
    pub fn undo(&mut self) -> bool {
        self.history.undo(&mut self.draft)
    }

    /// Does again what was undone last, and says whether there was anything.
    pub fn redo(&mut self) -> bool {
        self.history.redo(&mut self.draft)
    }

    /// Whether there is a change to undo.
    pub fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether there is one to do again.
    pub fn can_redo(&self) -> bool {
        self.history.can_redo()
    }
}

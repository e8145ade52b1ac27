//! The page of sets.
//!
//! | file | concern |
//! |---|---|
//! | `route.rs` | the part that the address asks for |
//! | `draft.rs`, `reading.rs` | a set as typed; what that means |
//! | `desk.rs` | the draft that is open: undo, address |
//! | `compose/` | the form, the handing out, the preview |
//! | `class/` | results that are marked again, and the class's table |

mod app;
mod class;
mod compose;
mod desk;
mod draft;
mod reading;
mod route;

pub(crate) use app::App;
pub(crate) use draft::{Fault, Field};
pub(crate) use route::Part;

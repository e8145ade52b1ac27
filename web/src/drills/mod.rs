//! The page of drills.
//!
//! | file | concern |
//! |---|---|
//! | `route.rs` | the part that the address asks for |
//! | `put.rs` | a task that is put, and the answer that is given to it |
//! | `keep.rs` | what this browser keeps of a student's practice |
//! | `play/` | a task from its question to its explanation |
//! | `today.rs`, `practise.rs`, `progress.rs`, `kept.rs`, `handed/` | the parts |

mod app;
mod handed;
mod keep;
mod kept;
mod play;
mod practise;
mod progress;
mod put;
mod route;
mod today;

pub(crate) use app::App;
pub(crate) use route::Part;

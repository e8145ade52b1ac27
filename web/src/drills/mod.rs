//! The page of drills.
//!
//! | file | concern |
//! |---|---|
//! | `route.rs` | the part that the address asks for |
//! | `put.rs` | a task that is put, and the answer that is given to it |
//! | `keep.rs` | what this browser keeps of a student's practice |
//! | `asked.rs` | the task that an address asks for |
//! | `play/` | a task from its question to its explanation |
//! | `today.rs`, `practise.rs`, `progress.rs`, `kept.rs`, `handed.rs` | the parts |

mod app;
mod asked;
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
pub(crate) use asked::Unread;
pub(crate) use play::Verdict;
pub(crate) use route::Part;

//! The page of drills.
//!
//! | file | concern |
//! |---|---|
//! | `route.rs` | the part that the address asks for |
//! | `put.rs` | a task that is put, and the answer that is given to it |
//! | `keep.rs`, `keep/` | what this browser keeps of a student's practice; its database |
//! | `asked.rs` | the task that an address asks for |
//! | `play/` | a task from its question to its explanation |
//! | `settings.rs` | what a student chooses for the tasks of a day |
//! | `today.rs`, `practise.rs`, `progress.rs`, `kept.rs`, `handed/` | the parts |

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
mod settings;
mod today;

pub(crate) use app::App;
pub(crate) use asked::Unread;
pub(crate) use keep::Fault;
pub(crate) use play::Verdict;
pub(crate) use route::Part;

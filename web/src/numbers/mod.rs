//! The page of numbers.
//!
//! | file | concern |
//! |---|---|
//! | `asked.rs` | what is typed into the fields, and the address that says it |
//! | `meant.rs` | fields → numbers, or what is wrong with them |
//! | `work.rs` | roll-outs, planned between frames |
//! | `board.rs` | what all parts of the page share |
//! | `fields.rs`, `taken.rs` | fields; tables, pictures, and what is taken home of them |
//! | `planner.rs`, `hand_outs.rs`, `corrections.rs`, `swing.rs`, `swing_record.rs` | the parts |

mod app;
mod asked;
mod board;
mod corrections;
mod fields;
mod hand_outs;
mod meant;
mod planner;
mod swing;
mod swing_record;
mod taken;
mod work;

pub(crate) use app::App;
pub(crate) use asked::{Key, Part};

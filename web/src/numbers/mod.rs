//! The page of numbers.
//!
//! | file | concern |
//! |---|---|
//! | `key.rs`, `asked.rs` | the fields, and what stands in them and in the address |
//! | `stands.rs` | which fields stand on the page |
//! | `meant.rs` | fields → numbers, or what is wrong with them |
//! | `work.rs` | roll-outs, planned between frames |
//! | `board.rs` | what all parts of the page share |
//! | `fields.rs`, `taken.rs` | fields; tables, pictures, and what is taken home of them |
//! | `planner.rs`, `hand_outs.rs`, `lesson.rs`, `corrections.rs`, `wind.rs` | the parts |
//! | `swing.rs`, `iron.rs`, `swing_record.rs`, `heeling.rs` | the part of the swing |

mod app;
mod asked;
mod board;
mod corrections;
mod fields;
mod hand_outs;
mod heeling;
mod iron;
mod key;
mod lesson;
mod meant;
mod planner;
mod stands;
mod swing;
mod swing_record;
mod taken;
mod wind;
mod work;

pub(crate) use app::App;
pub(crate) use asked::Part;
pub(crate) use key::Key;
pub(crate) use taken::{TableOf, as_csv, as_text};

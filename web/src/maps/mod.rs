//! The page of maps.
//!
//! | file | concern |
//! |---|---|
//! | `key.rs`, `asked.rs` | the fields, what stands in them and in the address, what it means |
//! | `computed.rs`, `workers.rs`, `work.rs` | what workers compute; the workers; what is wanted of them |
//! | `shown.rs`, `figures.rs` | field and lags → a map's lines and areas; → tables |
//! | `atlas.rs` | what all parts of the page share |
//! | `fields.rs`, `form.rs`, `world.rs`, `point.rs` | what is asked; the map; the point |
//! | `dip.rs` | from dip to latitude |

mod app;
mod asked;
mod atlas;
mod computed;
mod dip;
mod fields;
mod figures;
mod form;
mod key;
mod point;
mod shown;
mod work;
mod workers;
mod world;

pub(crate) use app::App;
pub(crate) use asked::Part;
pub use computed::{lags_of_nodes, surveyed_rows};
pub(crate) use key::Key;
pub(crate) use shown::Show;

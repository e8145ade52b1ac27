//! What can be flown again: scripted flights and their files, and air that is as rough every
//! time it is flown in.
//!
//! A [`scenario`] file says where, with which float and along which legs; checked, it becomes a
//! [`Scenario`], whose [`rows`](Scenario::rows) are the flight. What a pilot flew freely is [`Recorded`]
//! as such a file.

pub mod air;
pub mod events;
mod file;
pub mod manoeuvre;
mod recorded;
pub mod samples;
pub mod scenario;
mod table;
pub mod track;

pub use file::{ScenarioFile, read_json};
pub use recorded::{Recorded, Start};
pub use scenario::{Scenario, ScenarioError};
pub use table::{INTERVAL, Row, heading_to_six_decimals, moment_within_step, six_decimals};

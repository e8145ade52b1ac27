//! What is taught with the simulation.
//!
//! [`roll_out`] plans when to begin to roll out of a turn that is flown by the compass: by the
//! rules of thumb, by the closed form, and by flying the turn. [`rule_map`] says how good the rule
//! is anywhere, [`dip_latitude`] goes from dip to latitude. [`corrections`] goes from true to
//! magnetic to compass and back, [`wind`] from track to heading and back. [`swing`] adjusts a
//! compass against an aircraft's hidden iron.
//!
//! A [`demonstration`] is a flight with cues and with figures that are measured on it; [`making`]
//! changes one step by step, each of which can be undone. A [`link`] carries one, or a flight, in
//! the text of an address. [`drill`] makes tasks from a seed and marks them. [`sheet`] puts words
//! and figures together for hand-outs.
//!
//! For training, not for navigation.

pub mod corrections;
pub mod demonstration;
pub mod dip_latitude;
pub mod drill;
pub mod link;
pub mod making;
pub mod roll_out;
pub mod rule_map;
pub mod sheet;
pub mod swing;
pub mod wind;

//! What is taught with the simulation.
//!
//! [`roll_out`] plans when to begin to roll out of a turn that is flown by the compass: by the
//! rules of thumb, by the closed form, and by flying the turn. [`corrections`] goes from true to
//! magnetic to compass and back. [`swing`] adjusts a compass against an aircraft's hidden iron.
//! [`drill`] makes tasks from a seed and marks them.
//!
//! For training, not for navigation.

pub mod corrections;
pub mod drill;
pub mod roll_out;
pub mod swing;

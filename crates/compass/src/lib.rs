//! The floating magnetic compass of an aircraft: the physics alone.

pub mod angle;
pub mod field;
pub mod frame;
pub mod heading;
pub mod maths;
pub mod range;
pub mod unit;

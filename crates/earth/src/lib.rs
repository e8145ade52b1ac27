//! The Earth's magnetic field at a place and a date.

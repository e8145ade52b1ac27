//! Published values, independent routes and invariants.

//! The dipwise command.

fn main() {}

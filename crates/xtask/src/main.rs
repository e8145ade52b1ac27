//! Build, serve and check everything with one command.

fn main() {}

//! The page: a compass to fly in the browser.

fn main() {}

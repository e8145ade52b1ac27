//! The page of numbers.

mod app;

pub(crate) use app::App;

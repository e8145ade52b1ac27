//! The page of sets.

mod app;

pub(crate) use app::App;

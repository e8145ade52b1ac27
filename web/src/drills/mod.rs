//! The page of drills.

mod app;

pub(crate) use app::App;

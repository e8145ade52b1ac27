//! The page of maps.

mod app;

pub(crate) use app::App;

//! The parts of the page. Each reads the cockpit and sends it intents.

pub(crate) mod controls;
pub(crate) mod key_list;
pub(crate) mod marks;
pub(crate) mod pictures;
pub(crate) mod readings;
pub(crate) mod situation;
mod situation_panel;
pub(crate) mod timeline;
pub(crate) mod top_bar;
pub(crate) mod why;

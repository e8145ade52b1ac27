//! The parts of the page. Each reads the cockpit and sends it intents.

pub(crate) mod aside;
pub(crate) mod beside;
pub(crate) mod controls;
pub(crate) mod cover;
pub(crate) mod demonstrations;
pub(crate) mod error_chart;
pub(crate) mod film_panel;
pub(crate) mod indicator;
pub(crate) mod key_list;
pub(crate) mod lesson_plan;
pub(crate) mod link_forms;
pub(crate) mod making;
pub(crate) mod marks;
pub(crate) mod pictures;
pub(crate) mod player;
pub(crate) mod presenter;
pub(crate) mod readings;
pub(crate) mod share;
pub(crate) mod situation;
mod situation_panel;
pub(crate) mod stick_panel;
pub(crate) mod timeline;
pub(crate) mod top_bar;
pub(crate) mod track;
pub(crate) mod why;

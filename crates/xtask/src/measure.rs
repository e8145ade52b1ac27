//! Measuring the page in a browser.

use anyhow::Result;

use crate::stages::node_beside_page;
use crate::tools;
use crate::workspace::{Workspace, run as run_command};

/// What to measure.
#[derive(clap::Args)]
pub(crate) struct Options {
    /// How long a minute of video takes to render, instead
    #[arg(long)]
    film: bool,
}

/// Builds and serves the page, and prints what `tests/browser/measure.js` or `measure-film.js`
/// measures of it.
pub(crate) fn run(workspace: &Workspace, options: &Options) -> Result<()> {
    // The whole browser, as those have it who look at the page.
    let (mut command, built) = node_beside_page(workspace, &tools::chromium()?.browser)?;
    built.print();
    let script = if options.film {
        "measure-film.js"
    } else {
        "measure.js"
    };
    run_command(command.arg(script))
}

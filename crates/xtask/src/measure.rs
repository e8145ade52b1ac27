//! Measuring the page in a browser.

use anyhow::Result;

use crate::stages::node_beside_page;
use crate::workspace::{Workspace, run as run_command};

/// Builds and serves the page, and prints what `tests/browser/measure.js` measures of it.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    let (mut command, built) = node_beside_page(workspace)?;
    built.print();
    run_command(command.arg("measure.js"))
}

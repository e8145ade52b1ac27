//! Measuring the page in a browser.

use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::stages::serve_for_tests;
use crate::workspace::{Workspace, find_program, spell};
use crate::{dist, tools};

/// Builds and serves the page, and prints what `tests/browser/measure.js` measures of it.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    tools::npm_packages(workspace)?;
    let chromium = tools::chromium()?;
    dist::build(workspace)?.print();
    let address = serve_for_tests(workspace)?;
    let node =
        find_program(&["node"]).context("node is not to be had: install Node 20 or newer")?;
    let mut command = Command::new(node);
    command
        .current_dir(workspace.browser_tests())
        .arg("measure.js")
        .env("BASE_URL", address)
        .env("CHROMIUM_PATH", &chromium.browser);
    let status = command
        .status()
        .with_context(|| format!("could not start {}", spell(&command)))?;
    ensure!(status.success(), "the page could not be measured");
    Ok(())
}

//! Rules about the source that no compiler holds.
//!
//! Each rule is a pure function over text or names, so that each has a test of what it passes and
//! of what it refuses.

mod direction;
mod maths;
mod named_paths;
mod physics;
mod tokens;
mod top_level;

use std::fmt;
use std::fs;

use anyhow::{Context, Result, bail};

use crate::workspace::Workspace;

/// Where a rule is broken, and how to mend it.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Fault {
    file: String,
    line: usize,
    what: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.what)
    }
}

/// Checks every rule and prints every fault.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    let files = workspace.files()?;
    let read = |name: &str| {
        fs::read_to_string(workspace.root().join(name))
            .with_context(|| format!("could not read {name}"))
    };

    let mut faults = top_level::check(&files);
    faults.extend(direction::check(workspace)?);
    if files.iter().any(|name| name == named_paths::MAP) {
        let missing = named_paths::check(&read(named_paths::MAP)?, &files);
        faults.extend(named_paths::less_ignored(workspace, missing)?);
    }
    for file in files.iter().filter(|name| name.ends_with(".rs")) {
        if maths::holds_for(file) {
            faults.extend(maths::check(file, &read(file)?)?);
        }
        if physics::holds_for(file) {
            faults.extend(physics::check(file, &read(file)?)?);
        }
    }

    for fault in &faults {
        println!("{fault}");
    }
    match faults.len() {
        0 => Ok(()),
        1 => bail!("1 rule is broken"),
        more => bail!("{more} rules are broken"),
    }
}

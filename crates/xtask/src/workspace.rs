//! Where things are, and how other programs are run.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};
use cargo_metadata::{Metadata, MetadataCommand};

/// The project on this machine.
pub(crate) struct Workspace {
    /// What cargo knows of the members, without their dependencies' own.
    pub(crate) metadata: Metadata,
}

impl Workspace {
    /// Asks cargo where the project is, from any folder inside it.
    pub(crate) fn find() -> Result<Self> {
        let metadata = MetadataCommand::new()
            .no_deps()
            .exec()
            .context("cargo could not describe the workspace")?;
        Ok(Self { metadata })
    }

    /// The top folder.
    pub(crate) fn root(&self) -> &Path {
        self.metadata.workspace_root.as_std_path()
    }

    /// Cargo's target folder.
    pub(crate) fn target(&self) -> &Path {
        self.metadata.target_directory.as_std_path()
    }

    /// The folder that the page is written to.
    pub(crate) fn dist(&self) -> PathBuf {
        self.root().join("dist")
    }

    /// The folder of the browser tests and of the npm packages.
    pub(crate) fn browser_tests(&self) -> PathBuf {
        self.root().join("tests/browser")
    }

    /// A cargo command in the top folder.
    pub(crate) fn cargo<I, S>(&self, arguments: I) -> Command
    where
        I: IntoIterator<Item = S>,
        S: AsRef<OsStr>,
    {
        let mut command = Command::new(std::env::var_os("CARGO").unwrap_or("cargo".into()));
        command.current_dir(self.root()).args(arguments);
        command
    }

    /// Every file that is in the project or about to be: tracked, or new and not ignored.
    pub(crate) fn files(&self) -> Result<Vec<String>> {
        let listing = output(Command::new("git").current_dir(self.root()).args([
            "ls-files",
            "-z",
            "--cached",
            "--others",
            "--exclude-standard",
        ]))?;
        let mut files: Vec<String> = listing
            .split('\0')
            .filter(|name| self.root().join(name).is_file())
            .map(str::to_owned)
            .collect();
        files.sort();
        files.dedup();
        Ok(files)
    }
}

/// Has clippy look at the members of the workspace while they are compiled, in the way of `cargo
/// clippy`, so that nothing is compiled twice for it. What it finds is an error.
pub(crate) fn linted(command: &mut Command) -> &mut Command {
    command
        .env("RUSTC_WORKSPACE_WRAPPER", "clippy-driver")
        // The mark that ends an argument.
        .env("CLIPPY_ARGS", "--deny=warnings__CLIPPY_HACKERY__")
}

/// Runs a command, its output going to the terminal; an exit code other than 0 is an error.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let status = command
        .status()
        .with_context(|| format!("could not start {}", spell(command)))?;
    if !status.success() {
        bail!("{} ended with {status}", spell(command));
    }
    Ok(())
}

/// Runs a command and takes its standard output; an exit code other than 0 is an error.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("could not start {}", spell(command)))?;
    if !output.status.success() {
        bail!("{} ended with {}", spell(command), output.status);
    }
    String::from_utf8(output.stdout)
        .with_context(|| format!("the output of {} is not text", spell(command)))
}

/// A command as a person would type it.
pub(crate) fn spell(command: &Command) -> String {
    let program = Path::new(command.get_program())
        .file_name()
        .unwrap_or_default();
    let words = std::iter::once(program).chain(command.get_args());
    let words: Vec<_> = words.map(|word| word.to_string_lossy()).collect();
    format!("`{}`", words.join(" "))
}

/// The first of these programs that the search path holds.
pub(crate) fn find_program(names: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    names.iter().find_map(|name| {
        std::env::split_paths(&path)
            .map(|folder| folder.join(format!("{name}{}", std::env::consts::EXE_SUFFIX)))
            .find(|file| file.is_file())
    })
}

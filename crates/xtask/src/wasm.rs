//! The apps as WebAssembly, each with the JavaScript glue that starts it.
//!
//! Each HTML page of the static folder has an app of its own, a program of the package `web`, so
//! that a visitor fetches only what the page needs. `links` has no page: another app loads it.
//!
//! Nothing shrinks the modules further: measured, wasm-opt took a twentieth off their bytes and
//! nothing off them by Brotli, and as long as the compiler.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::assets::digest;
use crate::tools::{self, WASM_TARGET};
use crate::workspace::{Workspace, linted, run};

/// The programs of the package `web`.
const APPS: [&str; 7] = ["web", "teach", "numbers", "drills", "sets", "maps", "links"];

/// What the page is built for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Grade {
    /// To be given out: small, and nothing for clippy to find.
    Release,
    /// To be looked at while it is worked on: soon built.
    Draft,
}

impl Grade {
    /// The profile of the root manifest that the page is built with.
    fn profile(self) -> &'static str {
        match self {
            Self::Release => "page",
            Self::Draft => "draft",
        }
    }
}

/// Builds the apps; the result is glue, modules and any snippets, by file name.
pub(crate) fn build(workspace: &Workspace, grade: Grade) -> Result<BTreeMap<String, Vec<u8>>> {
    tools::wasm_target(workspace)?;
    let mut cargo = workspace.cargo([
        "build",
        "--package=web",
        "--bins",
        &format!("--profile={}", grade.profile()),
        &format!("--target={WASM_TARGET}"),
    ]);
    if grade == Grade::Release {
        tools::component(workspace, "clippy")?;
        linted(&mut cargo);
    }
    run(&mut cargo)?;
    let mut files = BTreeMap::new();
    for app in APPS {
        files.extend(bind(workspace, grade, app)?);
    }
    Ok(files)
}

/// Binds one app.
fn bind(workspace: &Workspace, grade: Grade, app: &str) -> Result<BTreeMap<String, Vec<u8>>> {
    let built = workspace
        .target()
        .join(WASM_TARGET)
        .join(grade.profile())
        .join(format!("{app}.wasm"));
    let module = fs::read(&built).with_context(|| format!("cargo built no {app}.wasm"))?;
    let folder = workspace
        .target()
        .join(format!("{app}-{}-bound", grade.profile()));
    let (bound, stamp) = (folder.join("files"), folder.join("stamp"));
    // The options stand in this file, and the module carries wasm-bindgen's version.
    let options = include_bytes!("wasm.rs");
    let inputs = digest(&[&module, options]);
    if fs::read_to_string(&stamp).is_ok_and(|last| last == inputs) {
        return read_folder(&bound);
    }

    if folder.exists() {
        fs::remove_dir_all(&folder).context("could not empty the folder of the last build")?;
    }
    Bindgen::new()
        .input_path(&built)
        .web(true)?
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .out_name(app)
        .generate(&bound)
        .with_context(|| format!("wasm-bindgen could not bind {app}.wasm"))?;
    fs::write(&stamp, inputs).context("could not mark the module as built")?;
    read_folder(&bound)
}

/// Every file below a folder, by its path from there with forward slashes.
pub(crate) fn read_folder(folder: &Path) -> Result<BTreeMap<String, Vec<u8>>> {
    let mut files = BTreeMap::new();
    let mut waiting = vec![folder.to_owned()];
    while let Some(current) = waiting.pop() {
        let entries = fs::read_dir(&current)
            .with_context(|| format!("could not list {}", current.display()))?;
        for entry in entries {
            let path = entry?.path();
            if path.is_dir() {
                waiting.push(path);
                continue;
            }
            let parts = path.strip_prefix(folder)?.iter();
            let parts: Vec<_> = parts.map(|part| part.to_string_lossy()).collect();
            let name = parts.join("/");
            let bytes =
                fs::read(&path).with_context(|| format!("could not read {}", path.display()))?;
            files.insert(name, bytes);
        }
    }
    Ok(files)
}

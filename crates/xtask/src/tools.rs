//! Installing what a fresh machine lacks. Only rustup, and Node for the browser, are assumed.

use std::fs;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use crate::assets::digest;
use crate::workspace::{Workspace, find_program, output, run};

/// The target of the page.
pub(crate) const WASM_TARGET: &str = "wasm32-unknown-unknown";

/// Adds the WebAssembly target to the toolchain.
pub(crate) fn wasm_target(workspace: &Workspace) -> Result<()> {
    let mut rustc = Command::new("rustc");
    rustc
        .current_dir(workspace.root())
        .args(["--print", "target-libdir", "--target", WASM_TARGET]);
    if PathBuf::from(output(&mut rustc)?.trim()).is_dir() {
        return Ok(());
    }
    let mut rustup = Command::new("rustup");
    run(rustup
        .current_dir(workspace.root())
        .args(["target", "add", WASM_TARGET]))
}

/// Adds a cargo command that comes as a component of the toolchain.
pub(crate) fn component(workspace: &Workspace, name: &str) -> Result<()> {
    let known = workspace
        .cargo([name.trim_start_matches("rust"), "--version"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    if known {
        return Ok(());
    }
    let mut rustup = Command::new("rustup");
    run(rustup
        .current_dir(workspace.root())
        .args(["component", "add", name]))
}

/// Installs the npm packages of the lock file, unless they are there already.
pub(crate) fn npm_packages(workspace: &Workspace) -> Result<()> {
    let folder = workspace.browser_tests();
    let lock = fs::read(folder.join("package-lock.json"))
        .context("could not read tests/browser/package-lock.json")?;
    let (wanted, stamp) = (digest(&[&lock]), folder.join("node_modules/.dipwise-lock"));
    if fs::read_to_string(&stamp).is_ok_and(|installed| installed == wanted) {
        return Ok(());
    }
    let Some(npm) = find_program(&["npm"]) else {
        bail!("npm is not to be had: install Node 20 or newer");
    };
    println!("Installing the npm packages of tests/browser/package-lock.json");
    run(Command::new(npm).current_dir(&folder).args([
        "ci",
        "--no-audit",
        "--no-fund",
        "--loglevel=error",
    ]))?;
    fs::write(&stamp, wanted).context("could not mark the npm packages as installed")
}

/// Debian's packages of Chromium, which go together in one version.
const CHROMIUM_PACKAGES: [&str; 3] = ["chromium", "chromium-driver", "chromium-headless-shell"];

/// A browser and the driver that goes with it.
pub(crate) struct Chromium {
    pub(crate) browser: PathBuf,
    pub(crate) driver: PathBuf,
}

/// Finds Chromium and its driver; installs them where that is possible without a password.
pub(crate) fn chromium() -> Result<Chromium> {
    if let Some(found) = find_chromium() {
        return Ok(found);
    }
    install(
        &CHROMIUM_PACKAGES,
        "Chromium and chromedriver are needed",
        "put both on the path (or in CHROMIUM_PATH and CHROMEDRIVER)",
    )?;
    find_chromium().context("apt-get installed Chromium, and yet it is not on the path")
}

/// Finds Chromium without its windows, which opens a page with less than half the work, and
/// installs it where that is possible without a password; else the whole browser.
pub(crate) fn headless_chromium() -> Result<PathBuf> {
    let find = || {
        let named = std::env::var_os("CHROMIUM_PATH").map(PathBuf::from);
        named.or_else(|| find_program(&["chromium-headless-shell", "chrome-headless-shell"]))
    };
    if let Some(found) = find() {
        return Ok(found);
    }
    let installed = install(
        &CHROMIUM_PACKAGES,
        "Chromium without windows is not there",
        "let the whole browser do its work",
    );
    if let Err(error) = installed {
        println!("{error:#}");
    }
    find().map_or_else(|| Ok(chromium()?.browser), Ok)
}

/// Finds what reads videos back; installs it where that is possible without a password.
pub(crate) fn ffprobe() -> Result<PathBuf> {
    let find = || {
        let named = std::env::var_os("FFPROBE").map(PathBuf::from);
        named.or_else(|| find_program(&["ffprobe"]))
    };
    if let Some(found) = find() {
        return Ok(found);
    }
    install(
        &["ffmpeg"],
        "ffprobe is needed",
        "put it on the path (or in FFPROBE)",
    )?;
    find().context("apt-get installed ffmpeg, and yet ffprobe is not on the path")
}

/// Installs packages of Debian, or says how.
fn install(packages: &[&str], needed: &str, otherwise: &str) -> Result<()> {
    let apt = find_program(&["apt-get"]);
    let Some(apt) = apt.filter(|_| is_root()) else {
        bail!(
            "{needed}: `sudo apt-get install {}`, or {otherwise}",
            packages.join(" ")
        );
    };
    println!("Installing {}", packages.join(" and "));
    let get = |arguments: &[&str]| {
        run(Command::new(&apt)
            .env("DEBIAN_FRONTEND", "noninteractive")
            .args(arguments)
            .stdin(Stdio::null()))
    };
    get(&["update", "-qq"])?;
    let quietly = ["install", "-qq", "--yes", "--no-install-recommends"];
    get(&[&quietly, packages].concat())
}

fn find_chromium() -> Option<Chromium> {
    let named = |variable| std::env::var_os(variable).map(PathBuf::from);
    let browsers = [
        "chromium",
        "chromium-browser",
        "google-chrome",
        "google-chrome-stable",
    ];
    Some(Chromium {
        browser: named("CHROMIUM_PATH").or_else(|| find_program(&browsers))?,
        driver: named("CHROMEDRIVER").or_else(|| find_program(&["chromedriver"]))?,
    })
}

fn is_root() -> bool {
    let id = Command::new("id").arg("-u").output();
    id.is_ok_and(|id| id.stdout.trim_ascii() == b"0")
}

//! The checks, stage by stage.

use std::env::current_exe;
use std::fs;
use std::io::{BufRead, BufReader};
use std::net::{IpAddr, Ipv4Addr};
use std::path::Path;
use std::process::{Command, ExitCode, Stdio};
use std::time::Instant;

use anyhow::{Context, Result};
use clap::builder::PossibleValuesParser;

use crate::serve::Server;
use crate::tally::Tally;
use crate::tools::{self, WASM_TARGET};
use crate::workspace::{Workspace, find_program, linted, run as run_command, spell};
use crate::{dist, tidy};

/// What to check.
#[derive(clap::Args)]
pub(crate) struct Options {
    /// The stages to run; all of them, in this order, when none is named
    #[arg(value_name = "STAGE", value_parser = PossibleValuesParser::new(STAGES.map(|s| s.name)))]
    stages: Vec<String>,
    /// For the browser stage: arguments to hand on to Playwright, such as `--grep card`
    #[arg(last = true, value_name = "PLAYWRIGHT")]
    playwright: Vec<String>,
}

struct Stage {
    name: &'static str,
    about: &'static str,
    check: fn(&Workspace, &Options) -> Result<Tally>,
}

/// In the order of a whole run: the quickest to tell of a fault come first.
const STAGES: [Stage; 6] = [
    Stage {
        name: "format",
        about: "the source is formatted",
        check: format,
    },
    Stage {
        name: "tidy",
        about: "the rules that no compiler holds",
        check: tidy,
    },
    Stage {
        name: "native",
        about: "lints; unit, integration and doc tests",
        check: native,
    },
    Stage {
        name: "wasm",
        about: "WebAssembly tests in a browser",
        check: wasm,
    },
    Stage {
        name: "dist",
        about: "the page in release, and its lints",
        check: build_page,
    },
    Stage {
        name: "browser",
        about: "the served page in a browser",
        check: browser,
    },
];

/// The test programs that must give the same in WebAssembly: package and name.
const WASM_TESTS: [(&str, &str); 1] = [("checks", "same_bits")];

/// Cargo's name for what runs WebAssembly.
const RUNNER: &str = "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER";

/// The members that are tested together: compiled with the same features of other packages, so that
/// no stage compiles those again.
const MEMBERS: [&str; 2] = ["--workspace", "--exclude=xtask"];

/// Where the browser tests find the page: below a path, as on a shared static host.
const PREFIX: &str = "/club/lessons/";

/// Runs the stages; one that fails does not keep the others from running.
pub(crate) fn run(workspace: &Workspace, options: &Options) -> Result<ExitCode> {
    let asked = |stage: &&Stage| {
        options.stages.is_empty() || options.stages.iter().any(|name| name == stage.name)
    };
    let mut total = Tally::default();
    let mut summary = Vec::new();
    for stage in STAGES.iter().filter(asked) {
        println!("\n── {}: {}", stage.name, stage.about);
        let start = Instant::now();
        let tally = (stage.check)(workspace, options).unwrap_or_else(|error| {
            println!("{} failed: {error:#}", stage.name);
            Tally::of_one(false)
        });
        let line = format!(
            "{:<12} {:>6} passed {:>4} failed {:>7.1} s   cargo xtask test {}",
            stage.name,
            tally.passed,
            tally.failed,
            start.elapsed().as_secs_f64(),
            stage.name,
        );
        println!("{line}");
        summary.push(line);
        total += tally;
    }
    println!("\n{}\n", summary.join("\n"));
    println!("{total}");
    Ok(if total.failed == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

fn format(workspace: &Workspace, _: &Options) -> Result<Tally> {
    tools::component(workspace, "rustfmt")?;
    run_command(&mut workspace.cargo(["fmt", "--all", "--check"]))
        .context("`cargo fmt` mends this")?;
    Ok(Tally::of_one(true))
}

fn tidy(workspace: &Workspace, _: &Options) -> Result<Tally> {
    tidy::run(workspace)?;
    Ok(Tally::of_one(true))
}

/// This tool is tested in its own profile, in which it is compiled already.
fn native(workspace: &Workspace, _: &Options) -> Result<Tally> {
    tools::component(workspace, "clippy")?;
    let mut tally = cargo_test(workspace, &MEMBERS)?;
    tally += cargo_test(workspace, &["--package=xtask", "--profile=xtask"])?;
    Ok(tally)
}

fn wasm(workspace: &Workspace, _: &Options) -> Result<Tally> {
    tools::wasm_target(workspace)?;
    let chromium = tools::chromium()?;
    let target = format!("--target={WASM_TARGET}");
    let mut tally = Tally::default();
    for (package, test) in WASM_TESTS {
        let mut command = workspace.cargo(["test", &target, "--package", package, "--test", test]);
        linted(&mut command).env("CHROMEDRIVER", &chromium.driver);
        // This program runs them; a cargo inside cargo would build it once more.
        command.env(RUNNER, format!("{} wasm-runner", current_exe()?.display()));
        tally += counted(&mut command)?;
    }
    Ok(tally)
}

fn build_page(workspace: &Workspace, _: &Options) -> Result<Tally> {
    dist::build(workspace, dist::Options::RELEASE)?.print();
    Ok(Tally::of_one(true))
}

/// Node in the folder of the browser tests, beside the page built and served until this program
/// ends: the environment says where the page and this browser are. With it what was built.
pub(crate) fn node_beside_page(
    workspace: &Workspace,
    browser: &Path,
) -> Result<(Command, dist::Report)> {
    tools::npm_packages(workspace)?;
    let built = dist::build(workspace, dist::Options::RELEASE)?;
    let server = Server::bind(
        &workspace.dist(),
        PREFIX,
        IpAddr::V4(Ipv4Addr::LOCALHOST),
        0,
    )?;
    let address = server.address.clone();
    std::thread::spawn(|| server.serve());
    let node =
        find_program(&["node"]).context("node is not to be had: install Node 20 or newer")?;
    let mut command = Command::new(node);
    command
        .current_dir(workspace.browser_tests())
        .env("BASE_URL", address)
        .env("CHROMIUM_PATH", browser);
    Ok((command, built))
}

/// Figures on the page are compared with those of the `dipwise` command, which is compiled with its
/// tests, films by ffprobe.
fn browser(workspace: &Workspace, options: &Options) -> Result<Tally> {
    tools::component(workspace, "clippy")?;
    run_command(linted(
        workspace
            .cargo(["test", "--no-run"])
            .args(MEMBERS)
            .args(["--test", "commands"]),
    ))?;
    let dipwise = format!("debug/dipwise{}", std::env::consts::EXE_SUFFIX);
    let (mut command, _) = node_beside_page(workspace, &tools::headless_chromium()?)?;
    command.env("DIPWISE", workspace.target().join(dipwise));
    command.env("FFPROBE", tools::ffprobe()?);
    let report = workspace.browser_tests().join("results/report.json");
    if report.exists() {
        fs::remove_file(&report).context("could not remove the last browser report")?;
    }
    command
        .args(["node_modules/@playwright/test/cli.js", "test"])
        .args(&options.playwright);
    let success = command
        .status()
        .with_context(|| format!("could not start {}", spell(&command)))?
        .success();
    let report = fs::read_to_string(&report).context("Playwright left no report")?;
    Ok(Tally::from_playwright(&report)?.ended(success))
}

fn cargo_test(workspace: &Workspace, which: &[&str]) -> Result<Tally> {
    counted(linted(&mut workspace.cargo(["test", "--no-fail-fast"])).args(which))
}

/// Runs a test command, showing its output as it comes and counting the tests in it.
fn counted(command: &mut Command) -> Result<Tally> {
    let mut child = command
        .stdout(Stdio::piped())
        .spawn()
        .with_context(|| format!("could not start {}", spell(command)))?;
    let mut tally = Tally::default();
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).split(b'\n') {
            let line = line?;
            let line = String::from_utf8_lossy(&line);
            println!("{line}");
            if let Some(more) = Tally::from_cargo_line(&line) {
                tally += more;
            }
        }
    }
    let status = child.wait()?;
    if !status.success() {
        println!("{} ended with {status}", spell(command));
    }
    Ok(tally.ended(status.success()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A program that prints these lines and ends with this code.
    fn runner(lines: &str, code: u8) -> Command {
        let mut command = Command::new("sh");
        command.args(["-c", &format!("printf '{lines}'; exit {code}")]);
        command
    }

    #[test]
    fn every_test_program_of_a_run_counts() {
        let lines = "test result: ok. 2 passed; 0 failed\\nnoise \\377\\ntest result: FAILED. 1 passed; 3 failed";
        let tally = counted(&mut runner(lines, 101)).unwrap();
        assert_eq!(
            tally,
            Tally {
                passed: 3,
                failed: 3,
                ..Tally::default()
            }
        );
    }

    #[test]
    fn a_run_that_did_not_compile_counts_as_a_failure() {
        let tally = counted(&mut runner("error: no such thing", 101)).unwrap();
        assert_eq!(tally, Tally::of_one(false));
    }

    #[test]
    fn a_program_that_is_not_there_is_an_error() {
        assert!(counted(&mut Command::new("no-such-program-here")).is_err());
    }
}

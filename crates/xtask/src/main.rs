//! Build, serve and check everything with one command: `cargo xtask --help`.
//!
//! | file | concern |
//! |---|---|
//! | `workspace.rs` | where things are; running other programs |
//! | `tools.rs` | installing what a fresh machine lacks |
//! | `wasm.rs` | the app as WebAssembly and its JavaScript glue |
//! | `assets.rs` | content-hashed names and the references between files |
//! | `pages.rs`, `frame/` | the frame that the pages share |
//! | `dist.rs` | the static folder, compressed copies, sizes |
//! | `serve.rs` | the server |
//! | `measure.rs` | measuring the page in a browser |
//! | `stages.rs`, `tally.rs` | the checks, and counting what passed |
//! | `tidy/` | rules about the source that no compiler holds |

mod assets;
mod dist;
mod measure;
mod pages;
mod serve;
mod stages;
mod tally;
mod tidy;
mod tools;
mod wasm;
mod workspace;

use std::ffi::OsString;
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

use crate::workspace::Workspace;

/// Builds, serves and checks Dipwise. Installs what a fresh machine lacks.
#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Build the page in release and serve it on this machine
    Serve(serve::Options),
    /// Check everything, or only the stages named
    Test(stages::Options),
    /// Build the page into the static folder `dist`
    Dist(dist::Options),
    /// Measure the page in a browser: speed of the simulation, script of a frame, download
    Measure(measure::Options),
    /// Check the rules about the source that no compiler holds
    Tidy,
    /// Run WebAssembly tests in a headless browser (cargo calls this)
    #[command(hide = true, disable_help_flag = true)]
    WasmRunner {
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<OsString>,
    },
}

fn main() -> ExitCode {
    match run(Arguments::parse().command) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("cargo xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(command: Command) -> Result<ExitCode> {
    if let Command::WasmRunner { arguments } = command {
        let program = OsString::from("wasm-runner");
        wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
            std::iter::once(program).chain(arguments),
        )?;
        return Ok(ExitCode::SUCCESS);
    }

    let workspace = Workspace::find()?;
    match command {
        Command::Serve(options) => serve::run(&workspace, &options)?,
        Command::Test(options) => return stages::run(&workspace, &options),
        Command::Dist(options) => dist::build(&workspace, options)?.print(),
        Command::Measure(options) => measure::run(&workspace, &options)?,
        Command::Tidy => tidy::run(&workspace)?,
        Command::WasmRunner { .. } => {}
    }
    Ok(ExitCode::SUCCESS)
}

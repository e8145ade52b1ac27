//! Writing results.

use crate::failure::Failure;
use clap::ValueEnum;
use serde::Serialize;
use std::io::{BufWriter, StdoutLock, Write};

/// How a result is written where people may read it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For reading.
    Text,
    /// For programs.
    Json,
}

/// Standard output, written in large pieces.
pub(crate) fn standard() -> BufWriter<StdoutLock<'static>> {
    BufWriter::new(std::io::stdout().lock())
}

/// Writes a value as JSON for reading, and a line's end.
pub(crate) fn json(value: &impl Serialize) -> Result<(), Failure> {
    let mut out = standard();
    serde_json::to_writer_pretty(&mut out, value)?;
    writeln!(out)?;
    Ok(out.flush()?)
}

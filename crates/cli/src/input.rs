//! Reading the file that an argument names.

use crate::failure::Failure;
use std::fs::File;
use std::io::{self, Read};

/// A file longer than this is refused; chosen, ten times what the most legs need.
const LONGEST_FILE: u64 = 16 * 1024 * 1024;

/// What a sentence calls the file.
pub(crate) fn name(argument: &str) -> &str {
    match argument {
        "-" => "standard input",
        path => path,
    }
}

/// The text of the file; - is standard input.
///
/// # Errors
/// A file that cannot be read, is no text or is too long.
pub(crate) fn text(argument: &str) -> Result<String, Failure> {
    read(argument).map_err(|error| Failure::at(name(argument), error))
}

fn read(argument: &str) -> Result<String, String> {
    let cannot = |error: io::Error| format!("cannot be read: {error}");
    let reader: Box<dyn Read> = match argument {
        "-" => Box::new(io::stdin()),
        path => Box::new(File::open(path).map_err(cannot)?),
    };
    let mut text = String::new();
    reader
        .take(LONGEST_FILE + 1)
        .read_to_string(&mut text)
        .map_err(cannot)?;
    if text.len() as u64 > LONGEST_FILE {
        return Err(format!("a file can have at most {LONGEST_FILE} bytes"));
    }
    Ok(text)
}

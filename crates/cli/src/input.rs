//! Reading a file that a command is given.

use crate::failure::Failure;
use std::fs::File;
use std::io::{self, Read};

/// A file longer than this is refused; chosen, ten times what the most legs need.
const LONGEST_FILE: u64 = 16 * 1024 * 1024;

/// What a file is called in a sentence; - is standard input.
pub(crate) fn place(path: &str) -> &str {
    match path {
        "-" => "standard input",
        path => path,
    }
}

/// The text of a file, or of standard input for -.
pub(crate) fn text(path: &str) -> Result<String, Failure> {
    let read = || {
        let reader: Box<dyn Read> = match path {
            "-" => Box::new(io::stdin()),
            path => Box::new(File::open(path).map_err(|error| cannot_read(&error))?),
        };
        let mut text = String::new();
        reader
            .take(LONGEST_FILE + 1)
            .read_to_string(&mut text)
            .map_err(|error| cannot_read(&error))?;
        if text.len() as u64 > LONGEST_FILE {
            return Err(format!("a file can have at most {LONGEST_FILE} bytes"));
        }
        Ok(text)
    };
    read().map_err(|error: String| Failure::at(place(path), error))
}

fn cannot_read(error: &io::Error) -> String {
    format!("cannot be read: {error}")
}

//! What went wrong, in one sentence.

use std::fmt::Display;
use std::io;
use std::process::ExitCode;

/// Why a command ends without doing what was asked.
#[derive(Debug)]
pub(crate) enum Failure {
    /// Bad input: where, and what is wrong.
    Input(String),
    /// A demonstration promises what its flight does not bear out: which, and what.
    Unproved(String),
    /// The output could not be written.
    Output(io::Error),
}

impl Failure {
    /// Bad input at `place`: a file or an option.
    pub(crate) fn at(place: &str, reason: impl Display) -> Self {
        Self::Input(format!("{place}: {reason}"))
    }

    /// Says it on standard error and gives the exit code. A reader that has had enough and closes
    /// the pipe is no failure.
    pub(crate) fn exit(self) -> ExitCode {
        match self {
            Self::Input(sentence) => {
                eprintln!("{sentence}");
                ExitCode::from(2)
            }
            Self::Unproved(sentence) => {
                eprintln!("{sentence}");
                ExitCode::FAILURE
            }
            Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
            Self::Output(error) => {
                eprintln!("the output cannot be written: {error}");
                ExitCode::FAILURE
            }
        }
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self::Output(error)
    }
}

impl From<serde_json::Error> for Failure {
    /// Only writing goes through here, so it is the output that failed.
    fn from(error: serde_json::Error) -> Self {
        Self::Output(error.into())
    }
}

/// What the standard library says of text that is no number, and what is said here.
const PLAIN: [(&str, &str); 5] = [
    ("invalid float literal", "it must be a number"),
    (
        "cannot parse float from empty string",
        "it must be a number",
    ),
    (
        "invalid digit found in string",
        "it must be a whole number, 0 or above",
    ),
    (
        "cannot parse integer from empty string",
        "it must be a whole number, 0 or above",
    ),
    (
        "number too large to fit in target type",
        "it must be a smaller number",
    ),
];

impl From<clap::Error> for Failure {
    /// The first sentence of what the parser says, which names option and value; the rest is a
    /// reminder of the usage.
    fn from(error: clap::Error) -> Self {
        let said = error.render().to_string();
        let sentence: Vec<&str> = said
            .lines()
            .map(str::trim)
            .take_while(|line| !line.is_empty())
            .collect();
        let mut sentence = sentence.join(" ").trim_start_matches("error: ").to_owned();
        for (jargon, plain) in PLAIN {
            if let Some(start) = sentence.strip_suffix(jargon) {
                sentence = format!("{start}{plain}");
            }
        }
        Self::Input(sentence)
    }
}

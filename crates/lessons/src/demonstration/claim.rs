//! What a demonstration promises, and what is not so.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A figure's number lies within bounds: 1 to 90 of a lag says that the compass lags, −1.4 to 1.4
/// that it agrees.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// The figure's name.
    pub figure: String,
    /// The least number, in the figure's unit.
    pub least: f64,
    /// The greatest.
    pub most: f64,
}

/// Something in a demonstration that its flight does not bear out.
#[derive(Clone, Debug, PartialEq)]
pub enum Unproved {
    /// A claim that does not hold, and what was measured.
    Claim(Claim, Option<f64>),
    /// A question whose right answer could be argued about.
    TooClose(String),
    /// A text with a number that no figure stands for: where, and the text.
    FixedNumber(String, String),
    /// A figure that nothing speaks of.
    Unused(String),
    /// A figure that says which way the compass goes, and is told, but is not claimed.
    Unclaimed(String),
}

impl Unproved {
    /// Whether it is a claim that does not hold.
    pub fn is_claim(&self) -> bool {
        matches!(self, Self::Claim(..))
    }
}

impl fmt::Display for Unproved {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Claim(claim, measured) => {
                let Claim {
                    figure,
                    least,
                    most,
                } = claim;
                write!(f, "{figure} is claimed to be from {least} to {most}, ")?;
                match measured {
                    Some(number) => write!(f, "but is {number:.2}"),
                    None => write!(f, "but has no number"),
                }
            }
            Self::TooClose(figure) => {
                write!(f, "{figure} is too near to a border to be asked about")
            }
            Self::FixedNumber(path, text) => {
                write!(
                    f,
                    "{path} states a number that no figure stands for: {text:?}"
                )
            }
            Self::Unused(figure) => write!(f, "no text, question or claim speaks of {figure}"),
            Self::Unclaimed(figure) => write!(f, "{figure} is told but nothing is claimed of it"),
        }
    }
}

//! Texts that name figures: `On north the compass {on_north}.`
//!
//! `{name}` stands for what the figure says, `{name:n}` for its number alone.

use super::Measured;
use std::collections::BTreeMap;

/// A piece of a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Piece<'a> {
    /// As it stands.
    Plain(&'a str),
    /// A figure's name, and whether its number alone is meant.
    Figure { name: &'a str, number: bool },
}

/// Cuts a text into its pieces; a brace that is never closed stands as it is.
pub(crate) fn pieces(text: &str) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some((plain, after)) = rest.split_once('{') {
        let Some((inside, further)) = after.split_once('}') else {
            break;
        };
        pieces.push(Piece::Plain(plain));
        let (name, number) = match inside.strip_suffix(":n") {
            Some(name) => (name, true),
            None => (inside, false),
        };
        pieces.push(Piece::Figure { name, number });
        rest = further;
    }
    pieces.push(Piece::Plain(rest));
    pieces
}

/// The text with every figure said. A name that is none stands in its braces.
pub(crate) fn filled(text: &str, figures: &BTreeMap<String, Measured>) -> String {
    let said = pieces(text).into_iter().map(|piece| match piece {
        Piece::Plain(plain) => plain.to_owned(),
        Piece::Figure { name, number } => match figures.get(name) {
            Some(measured) if number => measured.figure(),
            Some(measured) => measured.words(),
            None => format!("{{{name}}}"),
        },
    });
    said.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_said_and_everything_else_stays() {
        let figures = BTreeMap::from([("lag".to_owned(), Measured::Lag(22.7))]);
        let said = |text: &str| filled(text, &figures);
        assert_eq!(said("It {lag}, by {lag:n}."), "It lags by 23°, by 23°.");
        assert_eq!(said("No figure"), "No figure");
        assert_eq!(said("{none} and {"), "{none} and {");
        assert_eq!(said("}{{lag}"), "}{{lag}");
        assert_eq!(said(""), "");
    }
}

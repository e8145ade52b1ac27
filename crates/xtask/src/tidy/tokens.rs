//! Rust source as a flat run of words and marks, without comments and strings.

use anyhow::{Result, anyhow};
use proc_macro2::{TokenStream, TokenTree};

/// A word or a mark, and the line it stands on.
pub(crate) struct Token {
    pub(crate) text: String,
    pub(crate) line: usize,
}

/// Splits a source file, macros' insides included. Literals stand as a mark of their own.
pub(crate) fn read(file: &str, source: &str) -> Result<Vec<Token>> {
    let stream: TokenStream = source
        .parse()
        .map_err(|error| anyhow!("{file} is not Rust: {error}"))?;
    let mut tokens = Vec::new();
    flatten(stream, &mut tokens);
    Ok(tokens)
}

fn flatten(stream: TokenStream, tokens: &mut Vec<Token>) {
    for tree in stream {
        let line = tree.span().start().line;
        match tree {
            TokenTree::Group(group) => {
                let (open, close) = match group.delimiter() {
                    proc_macro2::Delimiter::Parenthesis => ("(", ")"),
                    proc_macro2::Delimiter::Brace => ("{", "}"),
                    proc_macro2::Delimiter::Bracket => ("[", "]"),
                    proc_macro2::Delimiter::None => ("", ""),
                };
                tokens.push(Token {
                    text: open.into(),
                    line,
                });
                let last = group.span_close().start().line;
                flatten(group.stream(), tokens);
                tokens.push(Token {
                    text: close.into(),
                    line: last,
                });
            }
            TokenTree::Ident(word) => tokens.push(Token {
                text: word.to_string(),
                line,
            }),
            TokenTree::Punct(mark) => tokens.push(Token {
                text: mark.to_string(),
                line,
            }),
            TokenTree::Literal(_) => tokens.push(Token {
                text: "literal".into(),
                line,
            }),
        }
    }
}

/// Where these words and marks follow one another: the index of the first of them.
pub(crate) fn find<'a>(
    tokens: &'a [Token],
    pattern: &'a [&'a str],
) -> impl Iterator<Item = usize> + 'a {
    let matches = move |window: &[Token]| {
        window
            .iter()
            .zip(pattern)
            .all(|(token, wanted)| token.text == *wanted)
    };
    let windows = tokens.windows(pattern.len()).enumerate();
    windows
        .filter(move |(_, window)| matches(window))
        .map(|(index, _)| index)
}

//! The physics depends on its inputs alone: no clock, no chance, no order that changes from run to
//! run, nothing from outside.

use anyhow::Result;

use super::{Fault, tokens};

/// Words that bring in what the physics must not know, and why.
const WORDS: [(&str, &str); 7] = [
    ("Instant", "a clock: count steps"),
    ("SystemTime", "a clock: count steps"),
    ("rand", "chance: take numbers from the caller"),
    ("getrandom", "chance: take numbers from the caller"),
    ("RandomState", "chance: take numbers from the caller"),
    (
        "HashMap",
        "an order that changes from run to run: use BTreeMap or a slice",
    ),
    (
        "HashSet",
        "an order that changes from run to run: use BTreeSet or a slice",
    ),
];

/// Modules of the standard library that reach outside.
const MODULES: [&str; 7] = ["env", "fs", "io", "net", "process", "thread", "time"];

/// Whether the rule holds in a file.
pub(crate) fn holds_for(file: &str) -> bool {
    file.starts_with("crates/compass/src/")
}

/// The places that reach outside.
pub(crate) fn check(file: &str, source: &str) -> Result<Vec<Fault>> {
    let tokens = tokens::read(file, source)?;
    let mut faults = Vec::new();
    let mut refuse = |line, what: String| {
        faults.push(Fault {
            file: file.into(),
            line,
            what,
        })
    };
    for (word, why) in WORDS {
        for at in tokens::find(&tokens, &[word]) {
            refuse(tokens[at].line, format!("{word} brings in {why}"));
        }
    }
    for module in MODULES {
        for at in tokens::find(&tokens, &["std", ":", ":", module]) {
            let what = format!("std::{module} reaches outside: let the caller hand it in");
            refuse(tokens[at].line, what);
        }
    }
    faults.sort_by_key(|fault| fault.line);
    Ok(faults)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(source: &str) -> Vec<usize> {
        let faults = check("crates/compass/src/gust.rs", source).unwrap();
        faults.iter().map(|fault| fault.line).collect()
    }

    #[test]
    fn the_inputs_alone_pass() {
        let source = r#"
            //! No Instant, no rand.
            use std::collections::BTreeMap;
            use std::f64::consts::TAU;
            fn at(time: f64, random: &[f64]) -> f64 { time * random[0] * TAU }
            const WORD: &str = "SystemTime";
        "#;
        assert!(lines(source).is_empty(), "{:?}", lines(source));
    }

    #[test]
    fn clocks_chance_and_loose_order_are_refused() {
        let source = "
            use std::time::Duration;
            use std::{time::Instant};
            fn f() -> u64 { rand::random() }
            use std::collections::HashMap;
            fn g() { std::fs::read(\"x\"); }
        ";
        assert_eq!(lines(source), [2, 3, 4, 5, 6]);
    }
}

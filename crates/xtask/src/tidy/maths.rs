//! Sines and their like go through one door, so that every platform gives the same bits.

use anyhow::Result;

use super::{Fault, tokens};

/// The door.
const DOOR: &str = "crates/compass/src/maths.rs";

/// Where the rule holds.
const FOLDERS: [&str; 5] = [
    "crates/compass/src/",
    "crates/earth/src/",
    "crates/flights/src/",
    "crates/drawing/src/",
    "web/src/",
];

/// What a platform may round in its own way, by the number of arguments after the first: vectors
/// have a `hypot` of their own, which takes none and is safe.
const ALONE: [&str; 21] = [
    "sin", "cos", "tan", "sin_cos", "asin", "acos", "atan", "sinh", "cosh", "tanh", "asinh",
    "acosh", "atanh", "exp", "exp2", "exp_m1", "ln", "ln_1p", "log2", "log10", "cbrt",
];
const WITH_OTHERS: [&str; 6] = ["atan2", "hypot", "log", "mul_add", "powf", "powi"];

/// Whether the rule holds in a file.
pub(crate) fn holds_for(file: &str) -> bool {
    file != DOOR && FOLDERS.iter().any(|folder| file.starts_with(folder))
}

/// The places that go past the door.
pub(crate) fn check(file: &str, source: &str) -> Result<Vec<Fault>> {
    let tokens = tokens::read(file, source)?;
    let mut faults = Vec::new();
    let mut refuse = |line, what: &str| {
        let what = format!("{what} may round differently elsewhere: use compass::maths ({DOOR})");
        faults.push(Fault {
            file: file.into(),
            line,
            what,
        });
    };
    for (functions, others) in [(&ALONE[..], false), (&WITH_OTHERS, true)] {
        for function in functions {
            let call = [".", function, "("];
            for at in tokens::find(&tokens, &call) {
                let takes_others = tokens[at + call.len()].text != ")";
                if takes_others == others {
                    refuse(tokens[at].line, &format!(".{function}()"));
                }
            }
            for kind in ["f32", "f64"] {
                for at in tokens::find(&tokens, &[kind, ":", ":", function]) {
                    refuse(tokens[at].line, &format!("{kind}::{function}"));
                }
            }
        }
    }
    for at in tokens::find(&tokens, &["libm", ":", ":"]) {
        refuse(tokens[at].line, "libm");
    }
    faults.sort_by_key(|fault| fault.line);
    Ok(faults)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(source: &str) -> Vec<usize> {
        check("web/src/main.rs", source)
            .unwrap()
            .iter()
            .map(|fault| fault.line)
            .collect()
    }

    #[test]
    fn the_door_and_what_is_not_a_call_pass() {
        let source = r#"
            //! Not x.sin() here, nor libm::sin.
            use compass::maths::{cos, sin};
            /* x.cos() */
            fn f(x: f64) -> f64 { sin(x) + maths::atan2(x, 1.0) + x.sqrt() + f64::consts::PI }
            const WORDS: &str = "x.sin() and libm::sin";
            struct Wave { sin: f64 }
            fn g(wave: &Wave) -> f64 { wave.sin }
            fn h(v: kurbo::Vec2) -> f64 { v.hypot() }
        "#;
        assert!(lines(source).is_empty(), "{:?}", lines(source));
    }

    #[test]
    fn ways_past_the_door_are_refused() {
        let source = "
            fn f(x: f64) -> f64 { x.sin() }
            fn g(x: f64) -> f64 { x
                .atan2(1.0) }
            fn h(x: &[f64]) -> f64 { x.iter().copied().map(f64::cos).sum() }
            fn i(x: f64) -> f64 { libm::exp(x) }
            fn k(x: f64) -> f64 { x.hypot(1.0) }
            fn j(x: f64) { assert!((x.powi(2) - 1.0).abs() < 1e-9); }
        ";
        assert_eq!(lines(source), [2, 4, 5, 6, 7, 8]);
    }

    #[test]
    fn the_rule_holds_below_the_browser_and_in_it_but_not_at_the_door() {
        assert!(holds_for("crates/earth/src/dipole.rs"));
        assert!(holds_for("web/src/main.rs"));
        assert!(!holds_for(DOOR));
        assert!(!holds_for("tests/tests/reference.rs"));
    }

    #[test]
    fn the_fault_says_where_and_how_to_mend_it() {
        let fault = &check("web/src/main.rs", "fn f(x: f64) -> f64 { x.tan() }").unwrap()[0];
        let text = fault.to_string();
        assert!(text.starts_with("web/src/main.rs:1: .tan()"), "{text}");
        assert!(text.contains("compass::maths"), "{text}");
    }
}

//! Counting what passed, from what test runners print.

use std::fmt::{self, Display, Formatter};
use std::ops::AddAssign;

use anyhow::{Context, Result};

/// How many tests passed and failed, and how many of the passed ones only when tried again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) passed: u64,
    pub(crate) failed: u64,
    pub(crate) tried_again: u64,
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
        self.tried_again += other.tried_again;
    }
}

impl Tally {
    /// A check that is passed or failed as a whole.
    pub(crate) fn of_one(passed: bool) -> Self {
        Self {
            passed: passed.into(),
            failed: (!passed).into(),
            tried_again: 0,
        }
    }

    /// The tally of a runner that has ended. One that did not succeed has failed at least once:
    /// what does not compile runs no test.
    pub(crate) fn ended(self, success: bool) -> Self {
        let failed = if success {
            self.failed
        } else {
            self.failed.max(1)
        };
        Self { failed, ..self }
    }

    /// The counts of a line such as `test result: ok. 12 passed; 0 failed; 1 ignored; …`, which
    /// cargo's own test programs print, and those of wasm-bindgen too.
    pub(crate) fn from_cargo_line(line: &str) -> Option<Self> {
        let plain = without_colours(line);
        let (_, counts) = plain
            .trim()
            .strip_prefix("test result: ")?
            .split_once(". ")?;
        let count = |what: &str| {
            counts
                .split(';')
                .find_map(|part| part.trim().strip_suffix(what)?.trim().parse().ok())
        };
        Some(Self {
            passed: count("passed")?,
            failed: count("failed")?,
            tried_again: 0,
        })
    }

    /// The counts of Playwright's JSON report.
    pub(crate) fn from_playwright(report: &str) -> Result<Self> {
        let report: serde_json::Value =
            serde_json::from_str(report).context("Playwright's report is not JSON")?;
        let count = |key: &str| {
            let count = report["stats"][key].as_u64();
            count.with_context(|| format!("Playwright's report has no number at stats.{key}"))
        };
        let tried_again = count("flaky")?;
        Ok(Self {
            passed: count("expected")? + tried_again,
            failed: count("unexpected")?,
            tried_again,
        })
    }
}

impl Display for Tally {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{} passed, {} failed", self.passed, self.failed)?;
        match self.tried_again {
            0 => Ok(()),
            again => write!(f, ", {again} of the passed when tried again"),
        }
    }
}

/// A line of a terminal less its colours.
fn without_colours(line: &str) -> String {
    let mut parts = line.split("\u{1b}[");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |plain, part| {
        plain
            + part
                .split_once(|c: char| c.is_ascii_alphabetic())
                .map_or("", |(_, rest)| rest)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(passed: u64, failed: u64) -> Tally {
        Tally {
            passed,
            failed,
            tried_again: 0,
        }
    }

    #[test]
    fn cargo_lines_are_counted() {
        let cases = [
            (
                "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; \
                 finished in 0.52s",
                tally(12, 0),
            ),
            (
                "test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured; 7 filtered out; \
                 finished in 12.00s",
                tally(3, 2),
            ),
            (
                "test result: ok. 4 passed; 0 failed; 0 ignored; 0 filtered out",
                tally(4, 0),
            ),
            (
                "test result: \u{1b}[32mok\u{1b}[0m. 5 passed; 0 failed; 0 ignored; 0 measured",
                tally(5, 0),
            ),
            ("  test result: ok. 1 passed; 0 failed\r", tally(1, 0)),
        ];
        for (line, wanted) in cases {
            assert_eq!(Tally::from_cargo_line(line), Some(wanted), "{line}");
        }
    }

    #[test]
    fn other_lines_are_not_counted() {
        for line in [
            "",
            "running 12 tests",
            "test tally::counts ... ok",
            "12 passed, 0 failed",
            "test result: ok. many passed; 0 failed",
            "test result: ok.",
        ] {
            assert_eq!(Tally::from_cargo_line(line), None, "{line}");
        }
    }

    #[test]
    fn playwright_reports_are_counted() {
        let report = r#"{"suites": [], "stats": {"expected": 7, "unexpected": 2, "flaky": 1, "skipped": 3}}"#;
        let counted = Tally {
            tried_again: 1,
            ..tally(8, 2)
        };
        assert_eq!(Tally::from_playwright(report).unwrap(), counted);
    }

    #[test]
    fn a_report_without_numbers_is_an_error() {
        for report in ["", "{}", r#"{"stats": {"expected": "7"}}"#] {
            assert!(Tally::from_playwright(report).is_err(), "{report}");
        }
    }

    #[test]
    fn a_runner_that_did_not_succeed_failed_at_least_once() {
        assert_eq!(tally(0, 0).ended(false), tally(0, 1));
        assert_eq!(tally(5, 2).ended(false), tally(5, 2));
        assert_eq!(tally(5, 0).ended(true), tally(5, 0));
    }

    #[test]
    fn tallies_add_up() {
        let mut sum = Tally::of_one(true);
        sum += Tally::of_one(false);
        sum += tally(3, 4);
        assert_eq!(sum, tally(4, 5));
        assert_eq!(sum.to_string(), "4 passed, 5 failed");
        sum.tried_again += 2;
        assert_eq!(
            sum.to_string(),
            "4 passed, 5 failed, 2 of the passed when tried again"
        );
    }
}

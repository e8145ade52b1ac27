//! The top folder holds what a newcomer should see first, and nothing else.

use std::collections::BTreeSet;

use super::Fault;

/// Exactly these, besides names with a dot in front.
const TOP: [&str; 9] = [
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "crates",
    "static",
    "tests",
    "web",
];

/// What is missing at the top, and what is too much. Ignored files are not among those given.
pub(crate) fn check(files: &[String]) -> Vec<Fault> {
    let found: BTreeSet<&str> = files
        .iter()
        .map(|file| file.split('/').next().unwrap_or(file))
        .collect();
    let fault = |name: &str, what: &str| Fault {
        file: name.into(),
        line: 1,
        what: what.into(),
    };
    let missing = TOP.iter().filter(|name| !found.contains(*name));
    let strange = found
        .iter()
        .filter(|name| !name.starts_with('.') && !TOP.contains(name));
    missing
        .map(|name| fault(name, "the top folder lacks it: write it"))
        .chain(strange.map(|name| {
            fault(
                name,
                "it does not belong in the top folder: move it into a folder there",
            )
        }))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn top(names: &[&str]) -> Vec<String> {
        names.iter().map(|name| (*name).to_owned()).collect()
    }

    #[test]
    fn the_agreed_names_and_dot_files_pass() {
        let mut files = top(&TOP);
        files.extend(top(&[".ci/run", ".gitignore", "crates/compass/src/lib.rs"]));
        assert_eq!(check(&files), []);
    }

    #[test]
    fn a_missing_name_and_a_strange_one_are_refused() {
        let mut files = top(&TOP[1..]);
        files.push("scripts/run.sh".to_owned());
        let named: Vec<_> = check(&files).into_iter().map(|fault| fault.file).collect();
        assert_eq!(named, ["Cargo.lock", "scripts"]);
    }
}

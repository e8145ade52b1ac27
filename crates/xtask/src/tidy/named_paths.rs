//! Every path that the developers' map names exists.

use std::io::Write;
use std::process::{Command, Stdio};

use anyhow::{Context, Result};

use super::Fault;
use crate::workspace::Workspace;

/// The map.
pub(crate) const MAP: &str = "DEVELOPERS.md";

/// A bare name with one of these ends is a file's; in a block of code only the first counts,
/// since commands name files that their readers are to make.
const ENDS: [&str; 9] = [
    ".rs", ".toml", ".md", ".js", ".mjs", ".json", ".css", ".html", ".svg",
];

/// The paths that the map names and the project does not hold.
pub(crate) fn check(map: &str, files: &[String]) -> Vec<Fault> {
    named(map)
        .into_iter()
        .filter(|(_, path)| !exists(path, files))
        .map(|(line, path)| Fault {
            file: MAP.into(),
            line,
            what: format!("{path} does not exist: name what replaced it, or leave it out"),
        })
        .collect()
}

/// Leaves out what git ignores: a build makes it, and a fresh clone lacks it.
pub(crate) fn less_ignored(workspace: &Workspace, faults: Vec<Fault>) -> Result<Vec<Fault>> {
    if faults.is_empty() {
        return Ok(faults);
    }
    let path_of = |fault: &Fault| fault.what.split(' ').next().unwrap_or_default().to_owned();
    let mut git = Command::new("git")
        .current_dir(workspace.root())
        .args(["check-ignore", "--stdin"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .context("could not start git")?;
    if let Some(mut input) = git.stdin.take() {
        for fault in &faults {
            writeln!(input, "{}", path_of(fault))?;
        }
    }
    let output = git.wait_with_output()?;
    let ignored = String::from_utf8_lossy(&output.stdout);
    let is_ignored = |fault: &Fault| ignored.lines().any(|line| line == path_of(fault));
    Ok(faults
        .into_iter()
        .filter(|fault| !is_ignored(fault))
        .collect())
}

/// The lines and paths in backticks, links and blocks of code.
fn named(map: &str) -> Vec<(usize, String)> {
    let mut paths = Vec::new();
    let mut fenced = false;
    for (line, text) in (1..).zip(map.lines()) {
        if text.trim_start().starts_with("```") {
            fenced = !fenced;
            continue;
        }
        if fenced || text.starts_with("    ") {
            let words = text.split_whitespace().filter_map(path);
            let words = words.filter(|word| word.contains('/') || word.ends_with(".rs"));
            paths.extend(words.map(|word| (line, word)));
            continue;
        }
        let quoted = text.split('`').skip(1).step_by(2);
        let links = text
            .split("](")
            .skip(1)
            .filter_map(|rest| rest.split(')').next());
        paths.extend(
            quoted
                .chain(links)
                .filter_map(path)
                .map(|path| (line, path)),
        );
    }
    paths
}

/// The path that a word is, less its end marks and any place within the file.
fn path(word: &str) -> Option<String> {
    let word = word
        .split('#')
        .next()?
        .trim_end_matches([',', ';', ':', '.']);
    let word = word.strip_prefix("./").unwrap_or(word);
    let strange = |c: char| c.is_whitespace() || "*{}<>…|\"'()$=!@:".contains(c);
    if word.contains(strange) || word.starts_with("..") || word.starts_with(['/', '-', '~']) {
        return None;
    }
    let bare = ENDS
        .iter()
        .any(|end| word.ends_with(end) && word.len() > end.len());
    let folders = word.contains('/') && word.contains(char::is_alphabetic);
    (bare || folders).then(|| word.to_owned())
}

/// A path counts from the top folder; a bare name may stand in any.
fn exists(path: &str, files: &[String]) -> bool {
    let folder = format!("{}/", path.trim_end_matches('/'));
    files.iter().any(|file| {
        file == path
            || file.starts_with(&folder)
            || (!path.contains('/') && file.rsplit('/').next() == Some(path))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn missing(map: &str) -> Vec<(usize, String)> {
        let files = [
            ".ci/run",
            "Cargo.toml",
            "crates/compass/src/maths.rs",
            "tests/browser/page.spec.js",
            "web/src/main.rs",
        ];
        let files = files.map(str::to_owned);
        check(map, &files)
            .into_iter()
            .map(|fault| (fault.line, fault.what.split(' ').next().unwrap().to_owned()))
            .collect()
    }

    #[test]
    fn paths_that_exist_pass() {
        let map = "\
The physics is in `crates/compass/`, its door `maths.rs`; see [the page](web/src/main.rs#top).
`.ci/run` and `Cargo.toml` too, `tests/browser`.

    crates/compass/   physics alone
        maths.rs      the door

```
cargo xtask test native
dipwise fly circuit.json
```
";
        assert_eq!(missing(map), []);
    }

    #[test]
    fn what_is_not_a_path_passes() {
        let map = "`f64::sin`, `cargo xtask test`, `1/8`, `N passed, N failed`, `tests/**`, \
                   `<crate>/src`, `/etc/hosts`, `../shared`, `.rs`, [Leptos](https://leptos.dev/), `--port`, `KB/s…`";
        assert_eq!(missing(map), []);
    }

    #[test]
    fn paths_that_are_gone_are_refused() {
        let map = "\
See `crates/compass/src/gone.rs`, [the old page](web/old.html), and `lost.rs`.

    crates/gone/   nothing
        away.rs    nothing
";
        let wanted = [
            (1, "crates/compass/src/gone.rs"),
            (1, "lost.rs"),
            (1, "web/old.html"),
            (3, "crates/gone/"),
            (4, "away.rs"),
        ];
        assert_eq!(
            missing(map),
            wanted.map(|(line, path)| (line, path.to_owned()))
        );
    }
}

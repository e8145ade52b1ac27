//! Dependencies run one way.

use anyhow::Result;
use cargo_metadata::DependencyKind;

use super::Fault;
use crate::workspace::Workspace;

/// What each member may use of the others. The order is that of the build: nobody uses what
/// stands further down.
const MAY_USE: [(&str, &[&str]); 10] = [
    ("compass", &[]),
    ("earth", &["compass"]),
    ("flights", &["compass", "earth"]),
    ("lessons", &["compass", "earth", "flights"]),
    ("drawing", &["compass"]),
    ("handouts", &["compass", "lessons", "drawing"]),
    (
        "cli",
        &[
            "compass", "earth", "flights", "lessons", "drawing", "handouts",
        ],
    ),
    (
        "web",
        &[
            "compass", "earth", "flights", "lessons", "drawing", "handouts",
        ],
    ),
    (
        "checks",
        &[
            "compass", "earth", "flights", "lessons", "drawing", "handouts", "cli",
        ],
    ),
    ("xtask", &[]),
];

/// The only members that may know a browser.
const KNOW_A_BROWSER: [&str; 2] = ["web", "checks"];

/// What binds to a browser, by the starts of package names.
const OF_THE_BROWSER: [&str; 5] = ["wasm-bindgen", "web-sys", "js-sys", "leptos", "gloo"];

/// The build tool reads what the compiler made; it runs in no browser.
const READS_BINDINGS: (&str, [&str; 2]) =
    ("xtask", ["wasm-bindgen-cli", "wasm-bindgen-cli-support"]);

/// The members' dependencies that run the wrong way, as their manifests have them.
pub(crate) fn check(workspace: &Workspace) -> Result<Vec<Fault>> {
    let packages = workspace.metadata.workspace_packages();
    let members: Vec<&str> = packages
        .iter()
        .map(|package| package.name.as_str())
        .collect();
    let mut faults = Vec::new();
    for package in &packages {
        let uses: Vec<&str> = package
            .dependencies
            .iter()
            // Tests and examples may look further down: nobody builds on them.
            .filter(|dependency| dependency.kind != DependencyKind::Development)
            .map(|dependency| dependency.name.as_str())
            .collect();
        let manifest = package
            .manifest_path
            .strip_prefix(workspace.root())?
            .as_str();
        let source = std::fs::read_to_string(&package.manifest_path)?;
        faults.extend(
            wrong_ways(&package.name, &uses, &members)
                .into_iter()
                .map(|wrong| Fault {
                    file: manifest.into(),
                    line: line_of(&source, wrong.word),
                    what: wrong.what,
                }),
        );
    }
    Ok(faults)
}

struct Wrong<'a> {
    /// The name in the manifest that is wrong.
    word: &'a str,
    what: String,
}

fn wrong_ways<'a>(package: &'a str, uses: &[&'a str], members: &[&str]) -> Vec<Wrong<'a>> {
    let Some((_, may_use)) = MAY_USE.iter().find(|(name, _)| *name == package) else {
        let what = format!(
            "{package} is new: say in crates/xtask/src/tidy/direction.rs which members it may use"
        );
        return vec![Wrong {
            word: package,
            what,
        }];
    };
    let mut wrong = Vec::new();
    for &used in uses {
        if members.contains(&used) && !may_use.contains(&used) {
            let allowed = if may_use.is_empty() {
                "no member".into()
            } else {
                may_use.join(", ")
            };
            let what = format!(
                "{package} uses {used}, but may use {allowed}: move what is shared further down"
            );
            wrong.push(Wrong { word: used, what });
        }
        let browser = OF_THE_BROWSER.iter().any(|start| used.starts_with(start));
        let reader = package == READS_BINDINGS.0 && READS_BINDINGS.1.contains(&used);
        if browser && !reader && !KNOW_A_BROWSER.contains(&package) {
            let what = format!(
                "{package} uses {used}, but nothing below web knows a browser: do it there"
            );
            wrong.push(Wrong { word: used, what });
        }
    }
    wrong
}

/// The first line that starts with a word, or that holds it, or else the first line.
fn line_of(source: &str, word: &str) -> usize {
    let starts = |line: &str| {
        line.strip_prefix(word)
            .is_some_and(|rest| rest.starts_with(['.', ' ', '=']))
    };
    let mut lines = source.lines();
    lines
        .position(starts)
        .or_else(|| source.lines().position(|line| line.contains(word)))
        .map_or(1, |index| index + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    const MEMBERS: [&str; 4] = ["compass", "earth", "web", "lessons"];

    fn faults(package: &'static str, uses: &[&'static str]) -> Vec<String> {
        wrong_ways(package, uses, &MEMBERS)
            .into_iter()
            .map(|wrong| wrong.what)
            .collect()
    }

    #[test]
    fn dependencies_along_the_way_pass() {
        assert!(faults("compass", &["glam", "libm"]).is_empty());
        assert!(faults("earth", &["compass", "thiserror"]).is_empty());
        assert!(faults("web", &["compass", "earth", "leptos", "web-sys"]).is_empty());
        assert!(faults("checks", &["compass", "wasm-bindgen-test"]).is_empty());
        assert!(faults("xtask", &["wasm-bindgen-cli-support"]).is_empty());
    }

    #[test]
    fn dependencies_against_the_way_are_refused() {
        let against = faults("compass", &["earth"]);
        assert!(
            against[0].contains("compass uses earth, but may use no member"),
            "{against:?}"
        );
        assert_eq!(faults("earth", &["web", "compass"]).len(), 1);
    }

    #[test]
    fn a_browser_below_web_is_refused() {
        for used in ["wasm-bindgen", "web-sys", "js-sys", "leptos", "leptos-use"] {
            let refused = faults("earth", &[used]);
            assert!(
                refused[0].contains("nothing below web knows a browser"),
                "{refused:?}"
            );
        }
    }

    #[test]
    fn a_new_member_must_be_given_its_place() {
        assert!(faults("newcomer", &["compass"])[0].contains("newcomer is new"));
    }

    #[test]
    fn a_fault_points_to_the_line_of_the_manifest() {
        let manifest =
            "[package]\nname = \"earth\"\n[dependencies]\nweb-sys = \"1\"\nweb.workspace = true\n";
        assert_eq!(line_of(manifest, "web"), 5);
        assert_eq!(line_of(manifest, "earth"), 2);
    }
}

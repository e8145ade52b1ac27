//! Content-hashed names, and the references between the files of the page.
//!
//! A file is published as `stem-HASH.ext`, where HASH is of its published content; so a server may
//! let browsers keep it for ever. Files name one another by plain names, as they stand in
//! `static/`, from the top folder of the page and between quotes or brackets: `"style.css"`,
//! `'./web.js'`, `url(fonts/text.woff2)`. Publishing puts the hashed names in their place.
//!
//! A file that is only ever named as `import('./film.js')` or `fetch('./list.json')` is loaded
//! later, when it is asked for, and is no part of the first load.

use std::collections::{BTreeMap, BTreeSet};
use std::hash::Hasher;

use anyhow::{Result, bail};
use siphasher::sip128::{Hasher128, SipHasher13};

/// The page's entrance.
pub(crate) const INDEX: &str = "index.html";
/// The worker that keeps the page for use without a network.
pub(crate) const SERVICE_WORKER: &str = "service-worker.js";

/// A file as the browser gets it.
#[derive(Debug)]
pub(crate) struct Asset {
    /// Its path from the page's top folder.
    pub(crate) name: String,
    pub(crate) content: Vec<u8>,
    /// The pages for which the browser fetches it before they are ready.
    pub(crate) first_load: Vec<String>,
}

/// Gives every file its published name and content.
pub(crate) fn publish(files: &BTreeMap<String, Vec<u8>>) -> Result<Vec<Asset>> {
    let mut publisher = Publisher {
        files,
        done: BTreeMap::new(),
        open: Vec::new(),
    };
    for name in files.keys() {
        publisher.publish(name)?;
    }

    let pages = files.keys().filter(|name| extension(name) == "html");
    let first: Vec<(&String, BTreeSet<String>)> = pages
        .map(|page| (page, publisher.first_load(page)))
        .collect();

    let mut assets: Vec<Asset> = publisher
        .done
        .into_iter()
        .map(|(plain, Published { name, content, .. })| Asset {
            name,
            content,
            first_load: (first.iter())
                .filter(|(_, files)| files.contains(&plain))
                .map(|(page, _)| (*page).clone())
                .collect(),
        })
        .collect();
    feed_service_worker(&mut assets);
    Ok(assets)
}

/// Whether a published name changes with its content.
pub(crate) fn is_hashed(name: &str) -> bool {
    let file = name.rsplit('/').next().unwrap_or(name);
    let stem = file.split('.').next().unwrap_or(file);
    stem.rsplit_once('-').is_some_and(|(_, hash)| {
        hash.len() == 16 && hash.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
    })
}

/// Sixteen hexadecimal digits that tell contents apart.
pub(crate) fn digest(parts: &[&[u8]]) -> String {
    let mut hasher = SipHasher13::new();
    for part in parts {
        hasher.write_usize(part.len());
        hasher.write(part);
    }
    format!("{:016x}", hasher.finish128().h1)
}

struct Published {
    name: String,
    content: Vec<u8>,
    /// The other files that it names.
    uses: Vec<Use>,
}

struct Use {
    plain: String,
    /// Whether it is fetched only when it is asked for.
    later: bool,
}

struct Publisher<'a> {
    files: &'a BTreeMap<String, Vec<u8>>,
    done: BTreeMap<String, Published>,
    /// The files being published now, each used by the one before it.
    open: Vec<String>,
}

impl Publisher<'_> {
    /// What the browser fetches before a published page is ready.
    fn first_load(&self, page: &str) -> BTreeSet<String> {
        let mut first = BTreeSet::new();
        let mut waiting = vec![page];
        while let Some(name) = waiting.pop() {
            if first.insert(name.to_owned())
                && let Some(published) = self.done.get(name)
            {
                let at_once = published.uses.iter().filter(|used| !used.later);
                waiting.extend(at_once.map(|used| used.plain.as_str()));
            }
        }
        first
    }

    fn publish(&mut self, plain: &str) -> Result<String> {
        if let Some(published) = self.done.get(plain) {
            return Ok(published.name.clone());
        }
        if self.open.iter().any(|open| open == plain) {
            bail!(
                "{} and {plain} name each other, so neither can be hashed",
                self.open.join(", ")
            );
        }
        self.open.push(plain.to_owned());
        let mut content = self.files[plain].clone();
        let mut uses = Vec::new();
        if let Some(text) = references_others(plain).then(|| str::from_utf8(&content)) {
            let mut text = text?.to_owned();
            for other in self.files.keys() {
                let found = spellings(other)
                    .into_iter()
                    .filter(|(quoted, _)| text.contains(quoted));
                let found: Vec<_> = found.collect();
                if other == plain || keeps_its_name(other) || found.is_empty() {
                    continue;
                }
                let name = self.publish(other)?;
                let count = |text: &str, part: &str| text.matches(part).count();
                let later = found.iter().all(|(quoted, _)| {
                    let asked =
                        ["import", "fetch"].map(|by| count(&text, &format!("{by}({quoted})")));
                    count(&text, quoted) == asked.iter().sum::<usize>()
                });
                for (quoted, around) in found {
                    text = text.replace(&quoted, &around.replace('*', &name));
                }
                uses.push(Use {
                    plain: other.clone(),
                    later,
                });
            }
            let published: BTreeSet<&str> = uses
                .iter()
                .map(|used| self.done[&used.plain].name.as_str())
                .collect();
            if let Some(stranger) = fetched(plain, &text)
                .into_iter()
                .find(|name| !published.contains(name))
            {
                bail!(
                    "static/{plain} fetches {stranger:?}, which is not a file of the page: put it \
                     in static/ and name it by its path from there"
                );
            }
            content = text.into_bytes();
        }
        self.open.pop();
        let name = published_name(plain, &content);
        self.done.insert(
            plain.to_owned(),
            Published {
                name: name.clone(),
                content,
                uses,
            },
        );
        Ok(name)
    }
}

/// Whether a file is searched for the names of others.
fn references_others(name: &str) -> bool {
    matches!(
        extension(name),
        "css" | "html" | "js" | "mjs" | "webmanifest"
    )
}

/// How a file may be named by another, each with a `*` where the published name goes.
fn spellings(name: &str) -> Vec<(String, &'static str)> {
    let arounds = [
        "\"*\"", "\"./*\"", "'*'", "'./*'", "`*`", "`./*`", "(*)", "(./*)",
    ];
    arounds
        .into_iter()
        .map(|around| (around.replace('*', name), around))
        .collect()
}

/// The addresses that a browser fetches by itself, less those that stand in the file.
fn fetched<'a>(name: &str, text: &'a str) -> Vec<&'a str> {
    let addresses: Vec<&str> = match extension(name) {
        "html" => text
            .split('<')
            .filter(|tag| {
                ["img", "link", "script", "source"]
                    .iter()
                    .any(|kind| tag.starts_with(kind))
            })
            .flat_map(|tag| {
                let tag = tag.split('>').next().unwrap_or(tag);
                [" href=\"", " src=\""].into_iter().filter_map(move |key| {
                    tag.split_once(key)
                        .and_then(|(_, rest)| rest.split('"').next())
                })
            })
            .collect(),
        "css" => text
            .split("url(")
            .skip(1)
            .filter_map(|rest| rest.split(')').next())
            .map(|address| address.trim_matches(['"', '\'']))
            .collect(),
        _ => Vec::new(),
    };
    addresses
        .into_iter()
        .filter(|address| !address.starts_with("data:") && !address.starts_with('#'))
        .map(|address| address.trim_start_matches("./"))
        .collect()
}

/// Pages, the service worker and licence texts are looked for by name.
fn keeps_its_name(plain: &str) -> bool {
    plain == SERVICE_WORKER || matches!(extension(plain), "html" | "txt")
}

/// `style.css` → `style-0123456789abcdef.css`.
fn published_name(plain: &str, content: &[u8]) -> String {
    if keeps_its_name(plain) {
        return plain.to_owned();
    }
    let (stem, extension) = plain.rsplit_once('.').unwrap_or((plain, "bin"));
    format!("{stem}-{}.{extension}", digest(&[content]))
}

/// Tells the service worker which files make up this build, and a name for all of them together.
fn feed_service_worker(assets: &mut [Asset]) {
    let kept: Vec<&Asset> = assets
        .iter()
        .filter(|asset| is_hashed(&asset.name))
        .collect();
    let names: Vec<&str> = kept.iter().map(|asset| asset.name.as_str()).collect();
    let is_page = |asset: &&Asset| extension(&asset.name) == "html";
    let pages: Vec<&Asset> = assets.iter().filter(is_page).collect();
    let all: Vec<&[u8]> = names
        .iter()
        .map(|name| name.as_bytes())
        .chain(pages.iter().map(|page| page.content.as_slice()))
        .collect();
    let others = pages.iter().map(|page| page.name.as_str());
    let others: Vec<&str> = others.filter(|name| *name != INDEX).collect();
    let build = serde_json::json!({ "digest": digest(&all), "files": names, "pages": others });
    let line = format!("const BUILD = {build};\n");
    if let Some(worker) = assets.iter_mut().find(|asset| asset.name == SERVICE_WORKER) {
        worker.content.splice(0..0, line.into_bytes());
    }
}

/// What follows the last dot of a file's name.
pub(crate) fn extension(name: &str) -> &str {
    name.rsplit_once('.').map_or("", |(_, extension)| extension)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(files: &[(&str, &str)]) -> BTreeMap<String, Vec<u8>> {
        files
            .iter()
            .map(|(name, text)| (name.to_string(), text.as_bytes().to_vec()))
            .collect()
    }

    fn text<'a>(assets: &'a [Asset], start: &str) -> (&'a str, &'a str) {
        let asset = assets
            .iter()
            .find(|asset| asset.name.starts_with(start))
            .unwrap();
        (&asset.name, str::from_utf8(&asset.content).unwrap())
    }

    #[test]
    fn hashed_names_replace_plain_ones_through_chains() {
        let assets = publish(&site(&[
            ("index.html", "<script src=\"start.js\"></script>"),
            ("start.js", "import init from './web.js';"),
            ("web.js", "new URL('web_bg.wasm', import.meta.url)"),
            ("web_bg.wasm", "module"),
        ]))
        .unwrap();
        let (wasm, _) = text(&assets, "web_bg-");
        let (glue, glue_text) = text(&assets, "web-");
        let (start, start_text) = text(&assets, "start-");
        let (index, index_text) = text(&assets, "index");
        assert_eq!(index, "index.html");
        assert_eq!(glue_text, format!("new URL('{wasm}', import.meta.url)"));
        assert_eq!(start_text, format!("import init from './{glue}';"));
        assert_eq!(index_text, format!("<script src=\"{start}\"></script>"));
        assert!([wasm, glue, start].into_iter().all(is_hashed));
    }

    #[test]
    fn a_change_at_the_end_of_a_chain_renames_every_file_before_it() {
        let names = |module| {
            let assets = publish(&site(&[
                ("web.js", "'web_bg.wasm'"),
                ("web_bg.wasm", module),
                ("icon.svg", "<svg/>"),
            ]))
            .unwrap();
            ["web-", "web_bg-", "icon-"].map(|start| text(&assets, start).0.to_owned())
        };
        let (before, after) = (names("one"), names("two"));
        assert_ne!(before[0], after[0]);
        assert_ne!(before[1], after[1]);
        assert_eq!(before[2], after[2]);
    }

    #[test]
    fn a_name_inside_a_longer_one_is_left_alone() {
        let assets = publish(&site(&[
            ("start.js", "'other-web.js' + 'web.js'"),
            ("web.js", ""),
        ]))
        .unwrap();
        let (glue, _) = text(&assets, "web-");
        assert_eq!(
            text(&assets, "start-").1,
            format!("'other-web.js' + '{glue}'")
        );
    }

    #[test]
    fn only_what_the_index_reaches_is_in_the_first_load() {
        let assets = publish(&site(&[
            ("index.html", "<link rel=\"stylesheet\" href=\"style.css\">"),
            ("style.css", "src: url(fonts/text.woff2)"),
            ("fonts/text.woff2", "font"),
            ("fonts/OFL.txt", "licence"),
        ]))
        .unwrap();
        let first: Vec<_> = assets
            .iter()
            .filter(|asset| asset.first_load == [INDEX])
            .map(|asset| &asset.name)
            .collect();
        assert_eq!(first.len(), 3, "{first:?}");
        assert!(
            assets
                .iter()
                .any(|asset| asset.name == "fonts/OFL.txt" && asset.first_load.is_empty())
        );
    }

    #[test]
    fn each_page_has_a_first_load_of_its_own() {
        let assets = publish(&site(&[
            (
                "index.html",
                "<script src=\"a.js\"></script> <a href=\"more.html\">",
            ),
            (
                "more.html",
                "<script src=\"b.js\"></script> <link href=\"both.css\">",
            ),
            ("a.js", "import './both.css'"),
            ("b.js", ""),
            ("both.css", ""),
        ]))
        .unwrap();
        let pages = |start: &str| {
            let asset = assets.iter().find(|it| it.name.starts_with(start));
            asset.unwrap().first_load.clone()
        };
        assert_eq!(pages("a-"), ["index.html"]);
        assert_eq!(pages("b-"), ["more.html"]);
        assert_eq!(pages("both-"), ["index.html", "more.html"]);
    }

    #[test]
    fn what_is_only_asked_for_later_is_not_in_the_first_load() {
        let assets = publish(&site(&[
            ("index.html", "<script src=\"start.js\"></script>"),
            (
                "start.js",
                "() => import('./film.js'); () => fetch('./list.json'); import('./both.js'); \
                 import './both.js';",
            ),
            ("film.js", "import './muxer.mjs';"),
            ("muxer.mjs", ""),
            ("both.js", ""),
            ("list.json", "[]"),
        ]))
        .unwrap();
        let first = |start: &str| {
            assets
                .iter()
                .any(|it| it.name.starts_with(start) && !it.first_load.is_empty())
        };
        assert!(first("start-") && first("both-"));
        for later in ["film-", "muxer-", "list-"] {
            assert!(!first(later), "{later}");
        }
        let (film, _) = text(&assets, "film-");
        assert!(
            text(&assets, "start-")
                .1
                .contains(&format!("import('./{film}')"))
        );
    }

    #[test]
    fn what_the_page_does_not_hold_is_refused() {
        let refused = [
            (
                "index.html",
                "<img src=\"https://elsewhere.example/a.png\">",
            ),
            ("index.html", "<link rel=\"icon\" href=\"/icon.svg\">"),
            ("style.css", "src: url(\"fonts/gone.woff2\")"),
        ];
        for (name, content) in refused {
            let error = publish(&site(&[(name, content)])).unwrap_err().to_string();
            assert!(error.contains("is not a file of the page"), "{error}");
        }
        publish(&site(&[(
            "style.css",
            "url(data:image/png;base64,AA==) url(#clip)",
        )]))
        .unwrap();
    }

    #[test]
    fn files_that_name_each_other_are_refused() {
        let error = publish(&site(&[("a.js", "'b.js'"), ("b.js", "'a.js'")])).unwrap_err();
        assert!(error.to_string().contains("name each other"), "{error}");
    }

    #[test]
    fn files_that_keep_their_names_may_be_named_by_all() {
        let assets = publish(&site(&[
            ("index.html", "<script src=\"start.js\"></script>"),
            ("start.js", "register('service-worker.js')"),
            ("service-worker.js", "'index.html'"),
        ]))
        .unwrap();
        let (start, start_text) = text(&assets, "start-");
        assert_eq!(start_text, "register('service-worker.js')");
        assert!(text(&assets, "index").1.contains(start));
    }

    #[test]
    fn the_service_worker_gets_the_hashed_files_and_a_digest_of_all() {
        let digest_of = |style| {
            let assets = publish(&site(&[
                ("service-worker.js", "keep();"),
                ("style.css", style),
                ("fonts/OFL.txt", "licence"),
            ]))
            .unwrap();
            let (style, worker) = (text(&assets, "style-").0, text(&assets, "service-worker").1);
            let (first, rest) = worker.split_once('\n').unwrap();
            assert_eq!(rest, "keep();");
            let build: serde_json::Value = serde_json::from_str(
                first
                    .strip_prefix("const BUILD = ")
                    .unwrap()
                    .trim_end_matches(';'),
            )
            .unwrap();
            assert_eq!(build["files"], serde_json::json!([style]));
            build["digest"].as_str().unwrap().to_owned()
        };
        assert_ne!(digest_of("a{}"), digest_of("b{}"));
    }

    #[test]
    fn names_with_a_hash_are_told_from_names_without() {
        assert!(is_hashed("fonts/text-0123456789abcdef.woff2.br"));
        assert!(!is_hashed("index.html"));
        assert!(!is_hashed("service-worker.js"));
        assert!(!is_hashed("hyphenated-name.js"));
    }
}

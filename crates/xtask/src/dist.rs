//! The static folder: every file under a content-hashed name, with compressed copies beside it.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::Write;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};

use anyhow::{Context, Result, bail};
use flate2::{Compression, write::GzEncoder};

use crate::assets::{self, Asset, INDEX, SERVICE_WORKER, extension, is_hashed};
use crate::pages;
use crate::tools;
use crate::wasm::{self, Grade, read_folder};
use crate::workspace::Workspace;

/// What was written, and how large it is.
pub(crate) struct Report {
    rows: Vec<Row>,
}

struct Row {
    name: String,
    first_load: Vec<String>,
    raw: usize,
    gzip: usize,
    brotli: usize,
}

/// How to build.
#[derive(Clone, Copy, clap::Args)]
#[group(skip)]
pub(crate) struct Options {
    /// Build soon rather than small, to look at what is worked on
    #[arg(long)]
    draft: bool,
}

impl Options {
    /// To be given out.
    pub(crate) const RELEASE: Self = Self { draft: false };

    fn grade(self) -> Grade {
        match self.draft {
            true => Grade::Draft,
            false => Grade::Release,
        }
    }
}

/// Builds the page into `dist`.
pub(crate) fn build(workspace: &Workspace, options: Options) -> Result<Report> {
    let grade = options.grade();
    let mut files = read_folder(&workspace.root().join("static"))?;
    files.extend(pages::files());
    for (name, content) in wasm::build(workspace, grade)? {
        if files.insert(name.clone(), content).is_some() {
            bail!("static/{name} has the name of a file that wasm-bindgen makes: rename it");
        }
    }
    files.insert("demonstrations.json".to_owned(), demonstrations(workspace)?);
    match packages(workspace) {
        Ok(packages) => files.extend(packages),
        Err(error) => println!("The page is built without what makes films: {error:#}"),
    }
    let quality = match grade {
        Grade::Release => BEST,
        Grade::Draft => QUICK,
    };
    write(&workspace.dist(), assets::publish(&files)?, quality)
}

/// The packages of npm that the page loads when films are made, as they come, with their licences:
/// from where, by the lock file's names, and where to.
const PACKAGES: [(&str, &str); 4] = [
    (
        "mediabunny/dist/bundles/mediabunny.min.mjs",
        "film/mediabunny.js",
    ),
    ("mediabunny/LICENSE", "film/mediabunny.txt"),
    ("gifenc/dist/gifenc.esm.js", "film/gifenc.js"),
    ("gifenc/LICENSE.md", "film/gifenc.txt"),
];

fn packages(workspace: &Workspace) -> Result<Vec<(String, Vec<u8>)>> {
    tools::npm_packages(workspace)?;
    let folder = workspace.browser_tests().join("node_modules");
    let read = |(from, to): (&str, &str)| {
        let content = fs::read(folder.join(from));
        let content = content.with_context(|| format!("could not read node_modules/{from}"))?;
        Ok((to.to_owned(), content))
    };
    PACKAGES.into_iter().map(read).collect()
}

/// The catalogue of demonstrations as one file, in its order.
fn demonstrations(workspace: &Workspace) -> Result<Vec<u8>> {
    let folder = workspace.root().join("crates/lessons/demonstrations");
    let read = |name: &str| {
        let path = folder.join(format!("{name}.json"));
        let text = fs::read(&path).with_context(|| format!("could not read {}", path.display()))?;
        serde_json::from_slice(&text).with_context(|| format!("{name}.json is no JSON"))
    };
    let order: Vec<String> = serde_json::from_value(read("order")?)?;
    let all = order.iter().map(|name| read(name));
    let all = all.collect::<Result<Vec<serde_json::Value>>>()?;
    Ok(serde_json::to_vec(&all)?)
}

/// Writes the page; what is there already with the same content stays as it is.
fn write(dist: &Path, mut assets: Vec<Asset>, quality: Quality) -> Result<Report> {
    fs::create_dir_all(dist).with_context(|| format!("could not make {}", dist.display()))?;
    let present = read_folder(dist)?;

    // The entrance comes last, so that it never names a file that is not there yet.
    assets.sort_by_key(|asset| (asset.name == INDEX, asset.name == SERVICE_WORKER));
    let copies = compress_all(&assets, &present, quality)?;

    let (mut rows, mut kept) = (Vec::new(), BTreeSet::new());
    for (asset, copies) in assets.iter().zip(&copies) {
        let mut put = |suffix: &str, content: &[u8]| {
            let name = format!("{}{suffix}", asset.name);
            if present.get(&name).is_none_or(|old| old != content) {
                put_file(&dist.join(&name), content)?;
            }
            kept.insert(name);
            anyhow::Ok(content.len())
        };
        let raw = put("", &asset.content)?;
        let (brotli, gzip) = match copies {
            Some(Copies { brotli, gzip }) => (put(".br", brotli)?, put(".gz", gzip)?),
            None => (raw, raw),
        };
        let (name, first_load) = (asset.name.clone(), asset.first_load.clone());
        rows.push(Row {
            name,
            first_load,
            raw,
            gzip,
            brotli,
        });
    }
    for old in present.keys().filter(|name| !kept.contains(*name)) {
        fs::remove_file(dist.join(old)).with_context(|| format!("could not remove dist/{old}"))?;
    }
    rows.sort_by(|a, b| {
        (a.first_load.is_empty(), &a.name).cmp(&(b.first_load.is_empty(), &b.name))
    });
    Ok(Report { rows })
}

/// Writes beside and renames, so that a server never gives out half a file.
fn put_file(path: &Path, content: &[u8]) -> Result<()> {
    let beside = path.with_added_extension("part");
    let written = path
        .parent()
        .map_or(Ok(()), fs::create_dir_all)
        .and_then(|()| fs::write(&beside, content))
        .and_then(|()| fs::rename(&beside, path));
    written.with_context(|| format!("could not write {}", path.display()))
}

/// How hard the copies are compressed: Brotli's quality and gzip's level.
type Quality = (i32, u32);
const BEST: Quality = (11, 9);
const QUICK: Quality = (2, 1);

struct Copies {
    brotli: Vec<u8>,
    gzip: Vec<u8>,
}

/// Compresses what can be, on every core; copies of files that did not change are taken over.
fn compress_all(
    assets: &[Asset],
    present: &BTreeMap<String, Vec<u8>>,
    quality: Quality,
) -> Result<Vec<Option<Copies>>> {
    let next = AtomicUsize::new(0);
    let work = || {
        let mut done = Vec::new();
        while let Some(asset) = assets.get(next.fetch_add(1, Ordering::Relaxed)) {
            if is_compressible(&asset.name) {
                done.push((asset.name.as_str(), copies_of(asset, present, quality)?));
            }
        }
        anyhow::Ok(done)
    };
    let workers = std::thread::available_parallelism().map_or(1, Into::into);
    let mut found = BTreeMap::new();
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
        for worker in workers {
            let Ok(done) = worker.join() else {
                bail!("a compressor stopped")
            };
            found.extend(done?);
        }
        Ok(())
    })?;
    Ok(assets
        .iter()
        .map(|asset| found.remove(asset.name.as_str()))
        .collect())
}

/// Fonts are compressed in themselves; licence texts are not worth it.
fn is_compressible(name: &str) -> bool {
    matches!(
        extension(name),
        "css" | "html" | "js" | "json" | "mjs" | "svg" | "wasm" | "webmanifest"
    )
}

fn copies_of(
    asset: &Asset,
    present: &BTreeMap<String, Vec<u8>>,
    (quality, level): Quality,
) -> Result<Copies> {
    let old = |suffix: &str| present.get(&format!("{}{suffix}", asset.name)).cloned();
    if is_hashed(&asset.name)
        && old("").is_some_and(|content| content == asset.content)
        && let (Some(brotli), Some(gzip)) = (old(".br"), old(".gz"))
    {
        return Ok(Copies { brotli, gzip });
    }
    let mut brotli = Vec::new();
    let best = brotli::enc::BrotliEncoderParams {
        quality,
        lgwin: 22,
        size_hint: asset.content.len(),
        ..Default::default()
    };
    brotli::BrotliCompress(&mut asset.content.as_slice(), &mut brotli, &best)?;
    let mut gzip = GzEncoder::new(Vec::new(), Compression::new(level));
    gzip.write_all(&asset.content)?;
    Ok(Copies {
        brotli,
        gzip: gzip.finish()?,
    })
}

impl Report {
    /// The size of what a first visit to a page downloads, by Brotli.
    fn first_load(&self, page: &str) -> usize {
        self.rows
            .iter()
            .filter(|row| row.first_load.iter().any(|it| it == page))
            .map(|row| row.brotli)
            .sum()
    }

    /// Prints the sizes, in thousands of bytes.
    pub(crate) fn print(&self) {
        let thousands = |bytes: usize| format!("{:.1}", bytes as f64 / 1000.0);
        println!("{:>10} {:>10} {:>10}  dist/", "KB", "gzip", "Brotli");
        for row in &self.rows {
            let [raw, gzip, brotli] = [row.raw, row.gzip, row.brotli].map(thousands);
            let note = if row.first_load.is_empty() {
                " (in no first load)"
            } else {
                ""
            };
            println!("{raw:>10} {gzip:>10} {brotli:>10}  {}{note}", row.name);
        }
        for row in self
            .rows
            .iter()
            .filter(|row| extension(&row.name) == "html")
        {
            let size = thousands(self.first_load(&row.name));
            println!("First load of {} by Brotli: {size} KB", row.name);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asset(name: &str, content: &str, first_load: bool) -> Asset {
        Asset {
            name: name.into(),
            content: content.into(),
            first_load: if first_load {
                vec![INDEX.into()]
            } else {
                Vec::new()
            },
        }
    }

    #[test]
    fn the_folder_holds_this_build_and_nothing_of_the_last() {
        let folder = tempfile::tempdir().unwrap();
        let folder = folder.path();
        let style = "a { color: red } ".repeat(40);
        let hashed = "style-0123456789abcdef.css";
        write(
            folder,
            vec![asset("old-0123456789abcdef.js", "old", true)],
            BEST,
        )
        .unwrap();
        let report = write(
            folder,
            vec![
                asset(INDEX, "<html>", true),
                asset(hashed, &style, true),
                asset("OFL.txt", "licence", false),
            ],
            BEST,
        )
        .unwrap();
        let written = read_folder(folder).unwrap();

        let names: Vec<_> = written.keys().map(String::as_str).collect();
        let wanted = ["OFL.txt", "index.html", "index.html.br", "index.html.gz"];
        assert_eq!(names[..4], wanted);
        assert_eq!(
            names[4..],
            [hashed, &format!("{hashed}.br"), &format!("{hashed}.gz")]
        );

        let mut plain = Vec::new();
        let mut brotli = written[&format!("{hashed}.br")].as_slice();
        assert!(brotli.len() < style.len() / 4);
        brotli::BrotliDecompress(&mut brotli, &mut plain).unwrap();
        assert_eq!(plain, style.as_bytes());

        let sizes = |name: &str| written[&format!("{name}.br")].len();
        assert_eq!(report.first_load(INDEX), sizes(INDEX) + sizes(hashed));
    }
}

//! The browser's database: opened and brought up to date, read, written.
//!
//! A record is JSON text, so that what is stored is what a file holds, and one that is damaged is
//! left alone while all others are read. Every answer is a record of its own; what two tabs may
//! both change is read and written within one transaction.

use super::fault::Fault;
use idb::{Database, DatabaseEvent, Error, Event, Factory, ObjectStoreParams, Request};
use idb::{Transaction, TransactionMode, TransactionResult};
use leptos::wasm_bindgen::JsValue;
use lessons::drill::TaskId;
use lessons::drill::kept::{
    Kept, Logged, Settings, begun_from_json, begun_key, handed_key, joined, text,
};
use lessons::drill::results::Results;

/// The database.
const NAME: &str = "dipwise-drills";
const ANSWERS: &str = "answers";
const HANDED: &str = "handed";
const BEGUN: &str = "begun";
const SETTINGS: &str = "settings";
const STORES: [&str; 4] = [ANSWERS, HANDED, BEGUN, SETTINGS];
/// The one record of its store.
const OWN: &str = "own";

/// Brings a database from one version to the next.
type Upgrade = fn(&Database) -> Result<(), Error>;

/// What brings a database from each version to the next, in order. A step that was ever handed
/// out is never changed.
const STEPS: [Upgrade; 2] = [
    // Answers of practice, and results of sets.
    |base| make(base, &[ANSWERS, HANDED]),
    // What was begun and left, and what the student chose.
    |base| make(base, &[BEGUN, SETTINGS]),
];

/// A change to what is kept.
#[derive(Clone, Debug)]
pub(super) enum Change {
    /// An answer more.
    Answer(Logged),
    /// A task more that was begun.
    Begun(TaskId),
    /// The results of a set as they are now.
    Handed(Results),
    /// What the student chose.
    Settings(Settings),
    /// All of this more, but for its settings; nothing that another tab kept is lost by it.
    Add(Box<Kept>),
    /// All of this less.
    Remove(Box<Kept>),
    /// Nothing is left.
    Clear,
}

/// Opens the database and brings it up to date. `on_blocked` is called while a tab of an older
/// version holds it; `on_lost` when this one is to let go of it, or loses it.
pub(super) async fn open(
    on_blocked: impl FnOnce() + 'static,
    on_lost: impl Fn(Fault) + Clone + 'static,
) -> Result<Database, Fault> {
    let version = STEPS.len() as u32;
    let opened = Factory::new().and_then(|it| it.open(NAME, Some(version)));
    let mut request = opened.map_err(|error| Fault::of(&error).or_refused())?;
    request.on_blocked(move |_| on_blocked());
    request.on_upgrade_needed(|event| {
        let upgraded = event.old_version().and_then(|old| {
            let base = event.database()?;
            let steps = STEPS.iter().skip(old as usize);
            steps.into_iter().try_for_each(|step| step(&base))
        });
        if upgraded.is_err() {
            // What was there stays as it was.
            let under_way = event.target().ok().and_then(|it| it.transaction());
            let _ = under_way.map(Transaction::abort);
        }
    });
    let mut base = request
        .await
        .map_err(|error| Fault::of(&error).or_refused())?;
    let lost = on_lost.clone();
    base.on_version_change(move |event| {
        // A newer page in another tab waits for this one to let go.
        if let Some(base) = event.target() {
            let _ = Database::try_from(base).map(|it| it.close());
        }
        lost(Fault::Newer);
    });
    base.on_close(move |_| on_lost(Fault::Lost));
    Ok(base)
}

fn make(base: &Database, stores: &[&str]) -> Result<(), Error> {
    for store in stores {
        base.create_object_store(store, ObjectStoreParams::new())?;
    }
    Ok(())
}

/// All that is kept, and how many records could not be read.
pub(super) async fn read(base: &Database) -> Result<(Kept, usize), Fault> {
    let found = texts(base).await.map_err(|error| Fault::of(&error))?;
    let mut kept = Kept::default();
    let mut damaged = 0;
    for (store, texts) in STORES.into_iter().zip(found) {
        for text in texts {
            let taken = text.is_some_and(|text| take(&mut kept, store, &text));
            damaged += usize::from(!taken);
        }
    }
    kept.tidy();
    Ok((kept, damaged))
}

/// The records of every store; none for one that is no text.
async fn texts(base: &Database) -> Result<Vec<Vec<Option<String>>>, Error> {
    let reading = base.transaction(&STORES, TransactionMode::ReadOnly)?;
    let mut found = Vec::with_capacity(STORES.len());
    for store in STORES {
        let records = reading.object_store(store)?.get_all(None, None)?.await?;
        found.push(records.iter().map(JsValue::as_string).collect());
    }
    Ok(found)
}

/// Takes in a record, and says whether it could be read.
fn take(kept: &mut Kept, store: &str, text: &str) -> bool {
    match store {
        ANSWERS => Logged::from_json(text).map(|it| kept.answers.push(it)),
        HANDED => Results::from_json(text).map(|it| kept.put_handed(it)),
        BEGUN => begun_from_json(text).map(|it| kept.begun.push(it)),
        _ => Settings::from_json(text).map(|it| kept.settings = it),
    }
    .is_ok()
}

/// Makes changes, all of them or none.
pub(super) async fn write(base: &Database, changes: &[Change]) -> Result<(), Fault> {
    let writing = base
        .transaction(&STORES, TransactionMode::ReadWrite)
        .map_err(|error| Fault::of(&error))?;
    for change in changes {
        if let Err(error) = apply(&writing, change).await {
            // Nothing that was cleared before is to stay so.
            let _ = writing.abort();
            return Err(Fault::of(&error));
        }
    }
    match writing.await {
        Ok(TransactionResult::Committed) => Ok(()),
        // A disk that is full is often found only when all is put down.
        Ok(TransactionResult::Aborted) => Err(Fault::Full),
        Err(error) => Err(Fault::of(&error)),
    }
}

async fn apply(writing: &Transaction, change: &Change) -> Result<(), Error> {
    match change {
        Change::Answer(answer) => put(writing, ANSWERS, &answer.key(), &text(answer)).await,
        Change::Begun(task) => put(writing, BEGUN, &begun_key(task), &text(task)).await,
        Change::Settings(settings) => put(writing, SETTINGS, OWN, &text(settings)).await,
        Change::Handed(results) => put_handed(writing, results).await,
        Change::Add(kept) => {
            for answer in &kept.answers {
                put(writing, ANSWERS, &answer.key(), &text(answer)).await?;
            }
            for task in &kept.begun {
                put(writing, BEGUN, &begun_key(task), &text(task)).await?;
            }
            for results in &kept.handed {
                put_handed(writing, results).await?;
            }
            Ok(())
        }
        Change::Remove(kept) => {
            let answers = kept.answers.iter().map(|it| (ANSWERS, it.key()));
            let begun = kept.begun.iter().map(|it| (BEGUN, begun_key(it)));
            let handed = kept.handed.iter().map(|it| (HANDED, handed_key(it)));
            for (store, key) in answers.chain(begun).chain(handed) {
                let store = writing.object_store(store)?;
                store.delete(JsValue::from(&key))?.await?;
            }
            Ok(())
        }
        Change::Clear => {
            for store in STORES {
                writing.object_store(store)?.clear()?.await?;
            }
            Ok(())
        }
    }
}

async fn put_handed(writing: &Transaction, results: &Results) -> Result<(), Error> {
    let key = handed_key(results);
    let store = writing.object_store(HANDED)?;
    let had = store.get(JsValue::from(&key))?.await?;
    let had = had.and_then(|it| Results::from_json(&it.as_string()?).ok());
    let now = match had {
        Some(had) => joined(&had, results.clone()),
        None => results.clone(),
    };
    put(writing, HANDED, &key, &text(&now)).await
}

async fn put(writing: &Transaction, store: &str, key: &str, text: &str) -> Result<(), Error> {
    let store = writing.object_store(store)?;
    store.put(&text.into(), Some(&key.into()))?.await?;
    Ok(())
}

//! Where demonstrations are kept between visits: each under a key of its own, so that two tabs
//! never write over each other's.
//!
//! What is kept is one line, `dipwise made COUNT TITLE`, and the demonstration's file. The count
//! goes up by one with each saving: who finds another count than the one left behind knows that
//! another tab saved there meanwhile.

/// Every key of a demonstration begins so.
const PREFIX: &str = "dipwise.made.";
/// The key for which of them was open last.
const LAST: &str = "dipwise.making";
/// What is kept begins so.
const MARK: &str = "dipwise made ";

/// Why nothing can be kept or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Refused {
    /// The browser keeps nothing for this page.
    Blocked,
    /// There is no room left.
    Full,
}

/// What keeps texts by their keys.
pub(crate) trait Store {
    /// The text of a key.
    fn read(&self, key: &str) -> Result<Option<String>, Refused>;
    /// Keeps a text under a key.
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused>;
    /// Forgets a key.
    fn remove(&mut self, key: &str) -> Result<(), Refused>;
    /// Every key.
    fn keys(&self) -> Result<Vec<String>, Refused>;
}

/// A demonstration that is kept: which, and how often it had been saved when it was last seen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Document {
    id: String,
    saved: u64,
}

/// A line of the list of what is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Kept {
    /// Its own key, without what all begin with.
    pub(crate) id: String,
    /// Its title; none for what cannot be read.
    pub(crate) title: Option<String>,
}

impl Document {
    /// One that was never saved; `id` must be its own.
    pub(crate) fn new(id: String) -> Self {
        Self { id, saved: 0 }
    }

    /// Whether it was never saved.
    pub(crate) fn is_new(&self) -> bool {
        self.saved == 0
    }

    /// Its own key, without what all begin with.
    pub(crate) fn id(&self) -> &str {
        &self.id
    }

    /// Whether another tab has saved under this key since.
    pub(crate) fn is_changed_elsewhere(&self, store: &impl Store) -> Result<bool, Refused> {
        // What was forgotten meanwhile is saved anew; what cannot be read is not written over.
        let kept = store.read(&key(&self.id))?;
        Ok(kept.is_some_and(|it| counted(&it).is_none_or(|(count, ..)| count != self.saved)))
    }

    /// Keeps it; what stood there is replaced.
    pub(crate) fn save(
        &mut self,
        store: &mut impl Store,
        title: &str,
        file: &str,
    ) -> Result<(), Refused> {
        let saved = self.saved + 1;
        let title = title.replace(['\r', '\n'], " ");
        store.write(&key(&self.id), &format!("{MARK}{saved} {title}\n{file}"))?;
        self.saved = saved;
        Ok(())
    }
}

/// All that is kept, by title.
pub(crate) fn list(store: &impl Store) -> Result<Vec<Kept>, Refused> {
    let mut all: Vec<Kept> = Vec::new();
    for key in store.keys()? {
        if let Some(id) = key.strip_prefix(PREFIX)
            && let Some(text) = store.read(&key)?
        {
            let kept = Kept {
                id: id.to_owned(),
                title: counted(&text).map(|(_, title, _)| title.to_owned()),
            };
            // There are few: to sort them is code more to load.
            let before = |it: &Kept| (&it.title, &it.id) < (&kept.title, &kept.id);
            let place = all.iter().position(|it| !before(it)).unwrap_or(all.len());
            all.insert(place, kept);
        }
    }
    Ok(all)
}

/// Takes a demonstration out to be changed, with its file; none where there is none that can be
/// read.
pub(crate) fn take_out(
    store: &impl Store,
    id: &str,
) -> Result<Option<(Document, String)>, Refused> {
    let Some(text) = store.read(&key(id))? else {
        return Ok(None);
    };
    let taken = counted(&text).map(|(saved, _, file)| {
        let id = id.to_owned();
        (Document { id, saved }, file.to_owned())
    });
    Ok(taken)
}

/// What is kept under an id, as it is kept.
pub(crate) fn raw(store: &impl Store, id: &str) -> Result<Option<String>, Refused> {
    store.read(&key(id))
}

/// Forgets a demonstration.
pub(crate) fn forget(store: &mut impl Store, id: &str) -> Result<(), Refused> {
    store.remove(&key(id))
}

/// Keeps what was forgotten, as it was.
pub(crate) fn put_back(store: &mut impl Store, id: &str, raw: &str) -> Result<(), Refused> {
    store.write(&key(id), raw)
}

/// Which was open last.
pub(crate) fn last(store: &impl Store) -> Option<String> {
    store.read(LAST).ok().flatten()
}

/// Remembers which is open.
pub(crate) fn set_last(store: &mut impl Store, id: &str) -> Result<(), Refused> {
    store.write(LAST, id)
}

fn key(id: &str) -> String {
    format!("{PREFIX}{id}")
}

/// Count, title and file of what is kept.
fn counted(text: &str) -> Option<(u64, &str, &str)> {
    let (line, file) = text.strip_prefix(MARK)?.split_once('\n')?;
    let (count, title) = line.split_once(' ')?;
    Some((count.parse().ok()?, title, file))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;

    /// A store with room for so many bytes; none is a store that is blocked.
    #[derive(Default)]
    struct Shelf {
        texts: BTreeMap<String, String>,
        room: Option<usize>,
    }

    impl Shelf {
        fn with_room(room: usize) -> Self {
            Self {
                room: Some(room),
                ..Self::default()
            }
        }

        fn room(&self) -> Result<usize, Refused> {
            self.room.ok_or(Refused::Blocked)
        }
    }

    impl Store for Shelf {
        fn read(&self, key: &str) -> Result<Option<String>, Refused> {
            self.room()?;
            Ok(self.texts.get(key).cloned())
        }

        fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
            if text.len() > self.room()? {
                return Err(Refused::Full);
            }
            self.texts.insert(key.to_owned(), text.to_owned());
            Ok(())
        }

        fn remove(&mut self, key: &str) -> Result<(), Refused> {
            self.room()?;
            self.texts.remove(key);
            Ok(())
        }

        fn keys(&self) -> Result<Vec<String>, Refused> {
            self.room()?;
            Ok(self.texts.keys().cloned().collect())
        }
    }

    #[test]
    fn what_is_saved_is_listed_and_taken_out_again() {
        let mut shelf = Shelf::with_room(1000);
        let mut one = Document::new("a".to_owned());
        one.save(&mut shelf, "Zwei\nZeilen", "{\n}").unwrap();
        one.save(&mut shelf, "Onto  north", "{\n1}").unwrap();
        let mut other = Document::new("b".to_owned());
        other.save(&mut shelf, "", "{}").unwrap();
        let titles = list(&shelf)
            .unwrap()
            .into_iter()
            .map(|it| (it.id, it.title));
        let expected = [("b", ""), ("a", "Onto  north")];
        let expected = expected.map(|(id, title)| (id.to_owned(), Some(title.to_owned())));
        assert_eq!(titles.collect::<Vec<_>>(), expected);
        let (taken, file) = take_out(&shelf, "a").unwrap().unwrap();
        assert_eq!((taken, file.as_str()), (one, "{\n1}"));
        assert_eq!(take_out(&shelf, "c"), Ok(None));
    }

    #[test]
    fn a_tab_knows_when_another_saved_there() {
        let mut shelf = Shelf::with_room(1000);
        let mut here = Document::new("a".to_owned());
        here.save(&mut shelf, "T", "1").unwrap();
        let (mut there, _) = take_out(&shelf, "a").unwrap().unwrap();
        assert_eq!(here.is_changed_elsewhere(&shelf), Ok(false));
        there.save(&mut shelf, "T", "2").unwrap();
        assert_eq!(here.is_changed_elsewhere(&shelf), Ok(true));
        assert_eq!(there.is_changed_elsewhere(&shelf), Ok(false));
        // What was deleted elsewhere is saved anew.
        forget(&mut shelf, "a").unwrap();
        assert_eq!(here.is_changed_elsewhere(&shelf), Ok(false));
    }

    #[test]
    fn what_cannot_be_read_is_listed_and_never_written_over() {
        let mut shelf = Shelf::with_room(1000);
        for text in [
            "",
            "{}",
            "dipwise made x T\n{}",
            "dipwise made 3 T",
            "dipwise made 3\n{}",
        ] {
            put_back(&mut shelf, "a", text).unwrap();
            assert_eq!(list(&shelf).unwrap()[0].title, None, "{text:?}");
            assert_eq!(take_out(&shelf, "a"), Ok(None));
            assert_eq!(raw(&shelf, "a"), Ok(Some(text.to_owned())));
            let document = Document::new("a".to_owned());
            assert_eq!(document.is_changed_elsewhere(&shelf), Ok(true));
        }
    }

    #[test]
    fn what_is_deleted_can_be_put_back_as_it_was() {
        let mut shelf = Shelf::with_room(1000);
        let mut document = Document::new("a".to_owned());
        document.save(&mut shelf, "T", "{}").unwrap();
        let before = raw(&shelf, "a").unwrap().unwrap();
        forget(&mut shelf, "a").unwrap();
        assert_eq!(list(&shelf), Ok(Vec::new()));
        put_back(&mut shelf, "a", &before).unwrap();
        assert_eq!(take_out(&shelf, "a").unwrap().unwrap().0, document);
    }

    #[test]
    fn a_full_or_blocked_store_is_told_and_what_was_saved_stays() {
        let mut shelf = Shelf::with_room(30);
        let mut document = Document::new("a".to_owned());
        document.save(&mut shelf, "T", "{}").unwrap();
        let long = "x".repeat(100);
        assert_eq!(document.save(&mut shelf, "T", &long), Err(Refused::Full));
        assert_eq!(take_out(&shelf, "a").unwrap().unwrap().1, "{}");
        assert_eq!(document.is_changed_elsewhere(&shelf), Ok(false));
        shelf.room = None;
        assert_eq!(document.save(&mut shelf, "T", "{}"), Err(Refused::Blocked));
        assert_eq!(list(&shelf), Err(Refused::Blocked));
        assert_eq!(last(&shelf), None);
    }
}

//! What the class answered: which choice it settled on, and how many hands went up for each.

use leptos::prelude::*;
use std::collections::BTreeMap;

/// The most hands that are counted for a choice; chosen: more than a lecture hall holds.
pub(crate) const MOST_HANDS: u16 = 999;

/// What is chosen for a cue, and the hands for a cue and a choice.
#[derive(Default)]
struct Given {
    chosen: BTreeMap<usize, usize>,
    hands: BTreeMap<(usize, usize), u16>,
}

/// What the class answered to the questions of a demonstration, by their cues.
#[derive(Clone, Copy)]
pub(crate) struct Answers {
    given: RwSignal<Given>,
}

impl Answers {
    /// Nothing yet.
    pub(crate) fn new() -> Self {
        Self {
            given: RwSignal::default(),
        }
    }

    /// Forgets everything.
    pub(crate) fn clear(self) {
        self.given.set(Given::default());
    }

    /// What was chosen.
    pub(crate) fn chosen(self, cue: usize) -> Option<usize> {
        self.given.with(|it| it.chosen.get(&cue).copied())
    }

    /// Chooses; what was chosen already is chosen no more.
    pub(crate) fn choose(self, cue: usize, choice: usize) {
        self.given.update(|it| {
            if it.chosen.insert(cue, choice) == Some(choice) {
                it.chosen.remove(&cue);
            }
        });
    }

    /// How many hands went up for a choice, if they were counted.
    pub(crate) fn hands(self, cue: usize, choice: usize) -> Option<u16> {
        self.given.with(|it| it.hands.get(&(cue, choice)).copied())
    }

    /// Takes the count of hands as it is typed; nothing typed is nothing counted.
    ///
    /// # Errors
    /// What is no whole number up to [`MOST_HANDS`]; the count stays as it was.
    pub(crate) fn count(self, cue: usize, choice: usize, typed: &str) -> Result<(), ()> {
        let count = counted(typed)?;
        self.given.update(|it| {
            match count {
                Some(count) => it.hands.insert((cue, choice), count),
                None => it.hands.remove(&(cue, choice)),
            };
        });
        Ok(())
    }

    /// How long a choice's bar is, in per cent of the longest.
    pub(crate) fn share(self, cue: usize, choice: usize) -> u16 {
        self.given.with(|given| {
            let hands = &given.hands;
            let of = hands.range((cue, 0)..=(cue, usize::MAX));
            let most = of.map(|(_, count)| *count).max().unwrap_or(0).max(1);
            let count = hands.get(&(cue, choice)).copied().unwrap_or(0);
            (100 * u32::from(count) / u32::from(most)) as u16
        })
    }
}

fn counted(typed: &str) -> Result<Option<u16>, ()> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(None);
    }
    match typed.parse() {
        Ok(count) if count <= MOST_HANDS => Ok(Some(count)),
        _ => Err(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hands_are_whole_numbers_or_not_counted() {
        assert_eq!(counted(" 12 "), Ok(Some(12)));
        assert_eq!(counted("0"), Ok(Some(0)));
        assert_eq!(counted(""), Ok(None));
        for typed in ["-1", "1000", "2.5", "many", "99999999999"] {
            assert_eq!(counted(typed), Err(()), "{typed}");
        }
    }

    #[test]
    fn bars_are_shares_of_the_longest_of_their_question() {
        let owner = Owner::new();
        owner.set();
        let answers = Answers::new();
        for (choice, typed) in [(0, "6"), (1, "12")] {
            answers.count(3, choice, typed).unwrap();
        }
        answers.count(5, 0, "400").unwrap();
        assert_eq!([0, 1, 2].map(|it| answers.share(3, it)), [50, 100, 0]);
        answers.count(3, 1, "").unwrap();
        assert_eq!(answers.share(3, 0), 100);
        answers.choose(3, 1);
        assert_eq!(answers.chosen(3), Some(1));
        answers.choose(3, 1);
        assert_eq!(answers.chosen(3), None);
    }
}

//! A set as it is composed: what stands in the fields, as typed.

use crate::situation_form::{Wrong, typed};
use lessons::drill::Kind;
use lessons::drill::record::Help;
use lessons::drill::set::{Order, PARTS, PracticeSet};

/// A minute, s.
pub(super) const MINUTE: f64 = 60.0;
/// The longest text that an address can put into a field; chosen, longer than any that means
/// something.
const LONGEST: usize = 200;

/// What may help, in the order in which it stands on the page.
pub(crate) const HELPS: [Help; 5] = [
    Help::Pause,
    Help::SlowMotion,
    Help::GoBack,
    Help::Reload,
    Help::Uncover,
];

/// A set as typed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Draft {
    pub(crate) title: String,
    /// The time limit in minutes; empty for none.
    pub(crate) minutes: String,
    /// Empty for a fresh one each.
    pub(crate) seed: String,
    pub(crate) mixed: bool,
    /// In their order.
    pub(crate) allowed: Vec<Help>,
    pub(crate) parts: Vec<DraftPart>,
}

/// A part of a set as typed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct DraftPart {
    /// Tells it from the other parts while it is moved about.
    pub(crate) id: u32,
    pub(crate) kind: Kind,
    pub(crate) count: String,
    /// Empty for any.
    pub(crate) latitude: String,
    pub(crate) level: u8,
    pub(crate) tolerance: String,
}

/// A field that can be wrong; those of a part by its id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Field {
    Title,
    Minutes,
    Seed,
    Parts,
    Count(u32),
    Latitude(u32),
    Tolerance(u32),
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Fault {
    /// As with any number that is typed.
    Number(Wrong),
    /// It has so many characters.
    TooLong(usize),
    /// It has other characters than letters.
    NotText,
    /// This kind asks for a latitude at least so far from the equator, degrees.
    TooNearTheEquator(Kind, f64),
    /// There is no part.
    NoParts,
    /// All parts together ask for so many.
    TooMany(u32),
}

impl Default for Draft {
    /// A set to begin with: something of what is known and something flown.
    fn default() -> Self {
        let part = |id, kind, count: &str, level| DraftPart {
            count: count.to_owned(),
            level,
            ..DraftPart::new(id, kind)
        };
        Self {
            title: "Compass turns".to_owned(),
            minutes: "30".to_owned(),
            seed: String::new(),
            mixed: false,
            allowed: Vec::new(),
            parts: vec![
                part(0, Kind::Predict, "6", 1),
                part(1, Kind::RollOut, "4", 2),
            ],
        }
    }
}

impl DraftPart {
    /// A part as it is added: any latitude, the middle level, ±10°.
    pub(crate) fn new(id: u32, kind: Kind) -> Self {
        Self {
            id,
            kind,
            count: "5".to_owned(),
            latitude: String::new(),
            level: 2,
            tolerance: "10".to_owned(),
        }
    }
}

impl Draft {
    /// The draft that gives a set.
    pub(crate) fn of(set: &PracticeSet) -> Self {
        Self {
            title: set.title.clone(),
            minutes: set
                .time_limit_s
                .map_or(String::new(), |it| typed(it / MINUTE)),
            seed: set.seed.map_or(String::new(), |it| it.to_string()),
            mixed: set.order == Order::Mixed,
            allowed: HELPS
                .into_iter()
                .filter(|it| set.allowed.contains(it))
                .collect(),
            parts: (set.parts.iter().zip(0..))
                .map(|(part, id)| DraftPart {
                    id,
                    kind: part.kind,
                    count: part.count.to_string(),
                    latitude: part.latitude_deg.map_or(String::new(), typed),
                    level: part.level,
                    tolerance: typed(part.tolerance_deg),
                })
                .collect(),
        }
    }

    /// Whether another part fits.
    pub(crate) fn has_room(&self) -> bool {
        (self.parts.len() as f64) < PARTS.most
    }

    /// What an address says of it: names and texts, those of a part in the order of the parts.
    pub(crate) fn named(&self) -> Vec<(&'static str, String)> {
        let mut named = vec![
            ("title", self.title.clone()),
            ("minutes", self.minutes.clone()),
            ("seed", self.seed.clone()),
            ("order", if self.mixed { "mixed" } else { "" }.to_owned()),
        ];
        named.retain(|(name, text)| *name == "title" || !text.is_empty());
        named.extend(
            self.allowed
                .iter()
                .map(|it| ("help", help_name(*it).to_owned())),
        );
        for part in &self.parts {
            named.extend([
                ("kind", part.kind.name().to_owned()),
                ("count", part.count.clone()),
                ("lat", part.latitude.clone()),
                ("level", part.level.to_string()),
                ("within", part.tolerance.clone()),
            ]);
        }
        named
    }

    /// The draft of an address; `given` has all texts of a name. None where it says nothing of a
    /// draft.
    pub(crate) fn at(given: impl Fn(&str) -> Vec<String>) -> Option<Self> {
        let short = |text: &String| text.chars().take(LONGEST).collect::<String>();
        let one = |name: &str| given(name).first().map(short).unwrap_or_default();
        if given("title").is_empty() && given("kind").is_empty() {
            return None;
        }
        let [counts, latitudes, levels, tolerances] =
            ["count", "lat", "level", "within"].map(&given);
        let text = |of: &[String], at: usize| of.get(at).map(short).unwrap_or_default();
        let kinds = given("kind").into_iter().take(PARTS.most as usize);
        let parts = kinds.zip(0_u32..).map(|(kind, id)| {
            let at = id as usize;
            DraftPart {
                id,
                kind: named(&kind),
                count: text(&counts, at),
                latitude: text(&latitudes, at),
                level: text(&levels, at)
                    .parse()
                    .ok()
                    .filter(|it| (1..=3).contains(it))
                    .unwrap_or(2),
                tolerance: text(&tolerances, at),
            }
        });
        let helps = given("help");
        Some(Self {
            title: one("title"),
            minutes: one("minutes"),
            seed: one("seed"),
            mixed: one("order") == "mixed",
            allowed: HELPS
                .into_iter()
                .filter(|it| helps.iter().any(|name| name == help_name(*it)))
                .collect(),
            parts: parts.collect(),
        })
    }

    /// The place of a part.
    pub(crate) fn place(&self, id: u32) -> Option<usize> {
        self.parts.iter().position(|it| it.id == id)
    }

    /// A part by its id.
    pub(crate) fn part_mut(&mut self, id: u32) -> Option<&mut DraftPart> {
        self.parts.iter_mut().find(|it| it.id == id)
    }

    /// Moves a part by one place, where there is one.
    pub(crate) fn shift(&mut self, id: u32, later: bool) {
        let Some(at) = self.place(id) else {
            return;
        };
        let to = if later { at + 1 } else { at.wrapping_sub(1) };
        if to < self.parts.len() {
            self.parts.swap(at, to);
        }
    }
}

/// A help by its name in an address.
fn help_name(help: Help) -> &'static str {
    match help {
        Help::Pause => "pause",
        Help::SlowMotion => "slow-motion",
        Help::GoBack => "go-back",
        Help::Reload => "reload",
        Help::Uncover => "uncover",
    }
}

/// A kind by its name; the first where it is none.
fn named(name: &str) -> Kind {
    let found = Kind::ALL.into_iter().find(|it| it.name() == name);
    found.unwrap_or(Kind::Predict)
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    pub(crate) fn full() -> Draft {
        let mut draft = Draft {
            seed: "18446744073709551615".to_owned(),
            minutes: "12.5".to_owned(),
            mixed: true,
            allowed: vec![Help::Pause, Help::Uncover],
            ..Draft::default()
        };
        draft.parts[1].latitude = "34 S".to_owned();
        draft.parts[1].tolerance = "5".to_owned();
        draft
    }

    fn again(draft: &Draft) -> Option<Draft> {
        let named = draft.named();
        Draft::at(|name| {
            let those = named.iter().filter(|(it, _)| *it == name);
            those.map(|(_, text)| text.clone()).collect()
        })
    }

    #[test]
    fn a_draft_comes_back_from_its_address_whatever_is_typed() {
        assert_eq!(again(&Draft::default()), Some(Draft::default()));
        assert_eq!(again(&full()), Some(full()));
        let mut odd = full();
        odd.parts[0].count = "a & b = ~_%".to_owned();
        odd.title = String::new();
        assert_eq!(again(&odd), Some(odd));
        let none = Draft {
            parts: Vec::new(),
            ..Draft::default()
        };
        assert_eq!(again(&none), Some(none));
        assert_eq!(Draft::at(|_| Vec::new()), None);
        let long = Draft::at(|_| vec!["9".repeat(5000); 90]).unwrap();
        assert_eq!((long.title.len(), long.parts.len()), (LONGEST, 50));
    }

    #[test]
    fn parts_move_by_one_place_and_no_further() {
        let mut draft = full();
        draft.shift(0, false);
        draft.shift(1, true);
        draft.shift(9, true);
        assert_eq!(draft, full());
        draft.shift(0, true);
        assert_eq!(draft.place(0), Some(1));
        draft.shift(0, false);
        assert_eq!(draft, full());
    }
}

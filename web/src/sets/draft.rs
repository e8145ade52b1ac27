//! A set as it is composed: what stands in the fields, as typed, and what that means.

use crate::situation_form::{NORTH_SOUTH, Wrong, typed, within};
use compass::range::Range;
use compass::unit::Unit;
use lessons::drill::record::Help;
use lessons::drill::set::{MOST_CHARACTERS, Order, PARTS, Part, PracticeSet, TIME_LIMIT, VERSION};
use lessons::drill::{COUNT, Kind, LATITUDE, TOLERANCE};

/// A minute, s.
const MINUTE: f64 = 60.0;
/// How long a student may take, as it is typed: minutes.
const MINUTES: Range = Range::new("time limit", Unit::Number, 1.0, TIME_LIMIT.most / MINUTE);
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

    /// The set that it means.
    ///
    /// # Errors
    /// Everything that is wrong, in the order of the page; at least one fault.
    pub(crate) fn set(&self) -> Result<PracticeSet, Vec<(Field, Fault)>> {
        let mut faults = Vec::new();
        let title = self.title.trim();
        let length = title.chars().count();
        if length > MOST_CHARACTERS {
            faults.push((Field::Title, Fault::TooLong(length)));
        } else if title.chars().any(char::is_control) {
            faults.push((Field::Title, Fault::NotText));
        }
        let minutes = optional(&self.minutes, MINUTES, &mut faults, Field::Minutes);
        let seed = match self.seed.trim() {
            "" => None,
            text => match text.parse() {
                Ok(seed) => Some(seed),
                Err(_) => {
                    faults.push((Field::Seed, Fault::Number(not_whole(text))));
                    None
                }
            },
        };
        let parts: Vec<Part> = self
            .parts
            .iter()
            .map(|part| part.read(&mut faults))
            .collect();
        let all: u32 = parts.iter().map(|part| part.count).sum();
        if parts.is_empty() {
            faults.push((Field::Parts, Fault::NoParts));
        } else if f64::from(all) > COUNT.most {
            faults.push((Field::Parts, Fault::TooMany(all)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(PracticeSet {
            version: VERSION,
            title: title.to_owned(),
            seed,
            order: if self.mixed {
                Order::Mixed
            } else {
                Order::AsGiven
            },
            time_limit_s: minutes.map(|it| it * MINUTE),
            allowed: self.allowed.clone(),
            parts,
        })
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

impl DraftPart {
    /// What it means; what is wrong stands at its least.
    fn read(&self, faults: &mut Vec<(Field, Fault)>) -> Part {
        let count = number(&self.count, COUNT, faults, Field::Count(self.id));
        if count.fract() != 0.0 {
            let wrong = Fault::Number(not_whole(&self.count));
            faults.push((Field::Count(self.id), wrong));
        }
        let at = Field::Latitude(self.id);
        let latitude = optional(&self.latitude, LATITUDE, faults, at);
        let least = self.kind.least_latitude_deg();
        if latitude.is_some_and(|it| it.abs() < least) {
            faults.push((at, Fault::TooNearTheEquator(self.kind, least)));
        }
        let tolerance = if self.kind.is_flown() {
            number(
                &self.tolerance,
                TOLERANCE,
                faults,
                Field::Tolerance(self.id),
            )
        } else {
            // Nothing is flown off by anything: what stands there does not show.
            within(&self.tolerance, TOLERANCE, &[]).map_or(10.0, in_degrees)
        };
        Part {
            kind: self.kind,
            count: count as u32,
            latitude_deg: latitude,
            level: self.level,
            tolerance_deg: tolerance,
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

fn not_whole(text: &str) -> Wrong {
    Wrong::NotANumber(text.trim().chars().take(20).collect())
}

/// Radians as the degrees that were typed.
fn in_degrees(angle: f64) -> f64 {
    flights::six_decimals(angle.to_degrees())
}

/// A number in the range's own unit; its least where it is wrong.
fn number(text: &str, range: Range, faults: &mut Vec<(Field, Fault)>, field: Field) -> f64 {
    let sides = if matches!(field, Field::Latitude(_)) {
        NORTH_SOUTH
    } else {
        &[]
    };
    match within(text, range, sides) {
        Ok(value) if range.unit == Unit::Degree => in_degrees(value),
        Ok(value) => value,
        Err(wrong) => {
            faults.push((field, Fault::Number(wrong)));
            range.least
        }
    }
}

/// The same where nothing need be typed.
fn optional(
    text: &str,
    range: Range,
    faults: &mut Vec<(Field, Fault)>,
    field: Field,
) -> Option<f64> {
    (!text.trim().is_empty()).then(|| number(text, range, faults, field))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn full() -> Draft {
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
    fn a_draft_is_a_set_and_a_set_a_draft() {
        let set = full().set().unwrap();
        assert_eq!(set.check(), Ok(()));
        assert_eq!(set.time_limit_s, Some(750.0));
        assert_eq!(set.parts[1].latitude_deg, Some(-34.0));
        assert_eq!(set.seed, Some(u64::MAX));
        assert_eq!(Draft::of(&set).set(), Ok(set));
        let plain = Draft::default().set().unwrap();
        assert_eq!((plain.seed, plain.parts[0].latitude_deg), (None, None));
    }

    #[test]
    fn every_fault_is_noted_at_its_field() {
        let mut draft = full();
        draft.title = "x".repeat(121);
        draft.minutes = "0".to_owned();
        draft.seed = "-1".to_owned();
        draft.parts[0].count = "2.5".to_owned();
        draft.parts[1].count = "499".to_owned();
        draft.parts[1].latitude = "71".to_owned();
        draft.parts[1].tolerance = String::new();
        draft.parts.push(DraftPart {
            latitude: "5".to_owned(),
            ..DraftPart::new(7, Kind::Read)
        });
        let faults = draft.set().unwrap_err();
        let fields: Vec<Field> = faults.iter().map(|(field, _)| *field).collect();
        let wrong = [
            Field::Title,
            Field::Minutes,
            Field::Seed,
            Field::Count(0),
            Field::Latitude(1),
            Field::Tolerance(1),
            Field::Latitude(7),
            Field::Parts,
        ];
        assert_eq!(fields, wrong);
        assert_eq!(faults[7].1, Fault::TooMany(506));
        // A tolerance counts only where something is flown.
        let mut chosen = full();
        chosen.parts[0].tolerance = "wide".to_owned();
        assert!(chosen.set().is_ok());
        chosen.parts.clear();
        assert_eq!(chosen.set(), Err(vec![(Field::Parts, Fault::NoParts)]));
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

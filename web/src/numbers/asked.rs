//! What is asked of the page: which part of it, and what stands in its fields, as typed.
//!
//! All of it is in the address, so that a link gives the same again.

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Part {
    /// When to begin to roll out.
    #[default]
    Planner,
    /// Sheets for print.
    HandOuts,
    /// True, magnetic, compass.
    Corrections,
    /// The compass swing.
    Swing,
}

impl Part {
    /// Every part once.
    pub(crate) const ALL: [Self; 4] = [
        Self::Planner,
        Self::HandOuts,
        Self::Corrections,
        Self::Swing,
    ];

    /// What the address calls it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Planner => "planner",
            Self::HandOuts => "hand-outs",
            Self::Corrections => "corrections",
            Self::Swing => "swing",
        }
    }

    /// The fields that it has.
    pub(crate) fn keys(self) -> &'static [Key] {
        match self {
            Self::Planner => &[
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Turning,
                Key::Bank,
                Key::Rate,
                Key::Airspeed,
                Key::Side,
                Key::Target,
                Key::Float,
                Key::Every,
                Key::Beside,
            ],
            Self::HandOuts => &[
                Key::Sheet,
                Key::Paper,
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Turning,
                Key::Bank,
                Key::Rate,
                Key::Airspeed,
                Key::Float,
                Key::Beside,
                Key::Seed,
            ],
            Self::Corrections => &[
                Key::From,
                Key::Heading,
                Key::VariationBy,
                Key::Variation,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Deviation(0),
                Key::Deviation(1),
                Key::Deviation(2),
                Key::Deviation(3),
                Key::Deviation(4),
                Key::Deviation(5),
                Key::Deviation(6),
                Key::Deviation(7),
            ],
            Self::Swing => &[
                Key::Way,
                Key::Latitude,
                Key::Longitude,
                Key::Date,
                Key::Seed,
                Key::Ramp,
                Key::Step,
                Key::NorthSouth,
                Key::EastWest,
                Key::Electric,
                Key::Swing,
                Key::Swung,
            ],
        }
    }
}

/// A field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Key {
    /// By latitude, or by place and date.
    Way,
    /// Latitude in degrees.
    Latitude,
    /// Longitude in degrees.
    Longitude,
    /// Year-month-day.
    Date,
    /// By bank, or by rate of turn.
    Turning,
    /// Bank in degrees.
    Bank,
    /// Rate of turn in degrees a second.
    Rate,
    /// Airspeed in knots.
    Airspeed,
    /// Turn left or right.
    Side,
    /// The heading to come out on, in degrees.
    Target,
    /// The float.
    Float,
    /// Degrees between two targets of the table.
    Every,
    /// The second latitude on the rose; may be empty.
    Beside,
    /// The kind of hand-out.
    Sheet,
    /// The size of paper.
    Paper,
    /// Of a worksheet's tasks, of an aircraft's iron.
    Seed,
    /// Which heading is given.
    From,
    /// That heading in degrees.
    Heading,
    /// Variation typed, or by place.
    VariationBy,
    /// Variation in degrees.
    Variation,
    /// Deviation in degrees at so many times 45° by compass.
    Deviation(u8),
    /// The heading of the aircraft on the ramp.
    Ramp,
    /// How many of the four adjustments are done.
    Step,
    /// The north–south adjuster in nanotesla.
    NorthSouth,
    /// The east–west adjuster in nanotesla.
    EastWest,
    /// Radios and lights.
    Electric,
    /// Degrees between two headings of the swing of record.
    Swing,
    /// Whether the swing of record was done.
    Swung,
}

impl Key {
    const ALL: [Self; 35] = [
        Self::Way,
        Self::Latitude,
        Self::Longitude,
        Self::Date,
        Self::Turning,
        Self::Bank,
        Self::Rate,
        Self::Airspeed,
        Self::Side,
        Self::Target,
        Self::Float,
        Self::Every,
        Self::Beside,
        Self::Sheet,
        Self::Paper,
        Self::Seed,
        Self::From,
        Self::Heading,
        Self::VariationBy,
        Self::Variation,
        Self::Deviation(0),
        Self::Deviation(1),
        Self::Deviation(2),
        Self::Deviation(3),
        Self::Deviation(4),
        Self::Deviation(5),
        Self::Deviation(6),
        Self::Deviation(7),
        Self::Ramp,
        Self::Step,
        Self::NorthSouth,
        Self::EastWest,
        Self::Electric,
        Self::Swing,
        Self::Swung,
    ];

    /// What the address and the page's own names call it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Way => "by",
            Self::Latitude => "lat",
            Self::Longitude => "lon",
            Self::Date => "date",
            Self::Turning => "turning",
            Self::Bank => "bank",
            Self::Rate => "rate",
            Self::Airspeed => "kt",
            Self::Side => "turn",
            Self::Target => "to",
            Self::Float => "float",
            Self::Every => "every",
            Self::Beside => "beside",
            Self::Sheet => "sheet",
            Self::Paper => "paper",
            Self::Seed => "seed",
            Self::From => "from",
            Self::Heading => "heading",
            Self::VariationBy => "variation-by",
            Self::Variation => "variation",
            Self::Deviation(0) => "d000",
            Self::Deviation(1) => "d045",
            Self::Deviation(2) => "d090",
            Self::Deviation(3) => "d135",
            Self::Deviation(4) => "d180",
            Self::Deviation(5) => "d225",
            Self::Deviation(6) => "d270",
            Self::Deviation(_) => "d315",
            Self::Ramp => "on",
            Self::Step => "step",
            Self::NorthSouth => "ns",
            Self::EastWest => "ew",
            Self::Electric => "radios",
            Self::Swing => "swing",
            Self::Swung => "swung",
        }
    }

    /// The words that it can hold, the usual one first; none where it is typed freely.
    pub(crate) fn choices(self) -> &'static [&'static str] {
        match self {
            Self::Way => &["latitude", "place"],
            Self::Turning => &["bank", "rate"],
            Self::Side => &["right", "left"],
            Self::Float => &[
                "standard",
                "brisk",
                "sluggish",
                "lightly-damped",
                "sticky-pivot",
            ],
            Self::Every => &["30", "10"],
            Self::Sheet => &["roll-outs", "aids", "worksheet", "deviation"],
            Self::Paper => &["a4", "letter"],
            Self::From => &["true", "magnetic", "compass"],
            Self::VariationBy => &["typed", "place"],
            Self::Step => &["0", "1", "2", "3", "4"],
            Self::Electric => &["off", "on"],
            Self::Swing => &["30", "45"],
            Self::Swung => &["no", "yes"],
            _ => &[],
        }
    }

    /// What stands in it at first. The deviations are an invented card's, as in the worked
    /// examples of `lessons`; the variation is an invented one to the west.
    fn at_first(self) -> &'static str {
        match self {
            Self::Latitude => "52",
            Self::Bank => "15",
            Self::Rate => "3",
            Self::Airspeed => "100",
            Self::Target => "360",
            Self::Seed => "1",
            Self::Heading => "75",
            Self::Variation => "10 W",
            Self::Deviation(0) => "2 E",
            Self::Deviation(1) => "1 E",
            Self::Deviation(2) => "3 W",
            Self::Deviation(3) => "4 W",
            Self::Deviation(4) => "1 W",
            Self::Deviation(6) => "3 E",
            Self::Deviation(7) => "4 E",
            Self::Beside => "",
            _ => self.choices().first().copied().unwrap_or("0"),
        }
    }
}

/// The longest text that an address can put into a field: longer than any that means something.
const LONGEST: usize = 40;

/// What is asked of the page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Asked {
    /// The part that is shown.
    pub(crate) part: Part,
    today: String,
    texts: Vec<String>,
}

impl Asked {
    /// As the page opens without an address; `today` is year-month-day.
    pub(crate) fn new(today: String) -> Self {
        let first = |key: Key| match key {
            Key::Date => today.clone(),
            key => key.at_first().to_owned(),
        };
        Self {
            part: Part::default(),
            texts: Key::ALL.map(first).to_vec(),
            today,
        }
    }

    /// The same after another address was asked for: its part, and in that part's fields what the
    /// address says (`given`, by name) or what stands there at first.
    pub(crate) fn at(&self, part: &str, given: impl Fn(&str) -> Option<String>) -> Self {
        let named = Part::ALL.into_iter().find(|it| it.name() == part);
        let mut asked = Self {
            part: named.unwrap_or_default(),
            ..self.clone()
        };
        for key in asked.part.keys() {
            let text = given(key.name()).unwrap_or_else(|| asked.first(*key));
            asked.set(*key, text.chars().take(LONGEST).collect());
        }
        asked
    }

    /// The fields that an address for `part` must name, and what stands in them.
    pub(crate) fn named(&self, part: Part) -> impl Iterator<Item = (&'static str, &str)> {
        (part.keys().iter())
            .map(|key| (*key, self.text(*key)))
            .filter(|(key, text)| self.first(*key) != *text)
            .map(|(key, text)| (key.name(), text))
    }

    /// What stands in a field.
    pub(crate) fn text(&self, key: Key) -> &str {
        (Key::ALL.iter().zip(&self.texts))
            .find(|(it, _)| **it == key)
            .map_or("", |(_, text)| text)
    }

    /// What was chosen in a field of choices; the usual where its text is none of them.
    pub(crate) fn choice(&self, key: Key) -> &'static str {
        let text = self.text(key);
        let choices = key.choices();
        let chosen = choices.iter().find(|choice| **choice == text);
        chosen.or(choices.first()).copied().unwrap_or("")
    }

    /// Puts a text into a field.
    pub(crate) fn set(&mut self, key: Key, text: String) {
        let place = Key::ALL.iter().position(|it| *it == key);
        if let Some(into) = place.and_then(|index| self.texts.get_mut(index)) {
            *into = text;
        }
    }

    fn first(&self, key: Key) -> String {
        match key {
            Key::Date => self.today.clone(),
            key => key.at_first().to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked() -> Asked {
        Asked::new("2026-05-01".to_owned())
    }

    #[test]
    fn every_field_has_its_own_name_and_place() {
        let mut asked = asked();
        for (index, key) in Key::ALL.into_iter().enumerate() {
            asked.set(key, index.to_string());
        }
        let mut names: Vec<&str> = Key::ALL.iter().map(|key| key.name()).collect();
        for (index, key) in Key::ALL.into_iter().enumerate() {
            assert_eq!(asked.text(key), index.to_string());
        }
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Key::ALL.len());
        for part in Part::ALL {
            assert!(part.keys().iter().all(|key| Key::ALL.contains(key)));
        }
    }

    #[test]
    fn what_is_asked_comes_back_from_its_address() {
        let mut there = asked();
        there.part = Part::Swing;
        there.set(Key::NorthSouth, "-1200".to_owned());
        there.set(Key::Step, "2".to_owned());
        let named: Vec<(&str, String)> = (there.named(Part::Swing))
            .map(|(name, text)| (name, text.to_owned()))
            .collect();
        assert_eq!(named.len(), 2);
        let find = |name: &str| {
            let found = named.iter().find(|(it, _)| *it == name);
            found.map(|(_, text)| text.clone())
        };
        assert_eq!(asked().at("swing", find), there);
    }

    #[test]
    fn an_address_that_means_nothing_gives_the_page_as_it_opens() {
        assert_eq!(asked().at("elsewhere", |_| None), asked());
        let long = asked().at("planner", |_| Some("9".repeat(5000)));
        assert_eq!(long.text(Key::Bank).len(), LONGEST);
        assert_eq!(long.choice(Key::Side), "right");
    }

    #[test]
    fn what_other_parts_hold_is_kept() {
        let mut here = asked();
        here.set(Key::Variation, "3 E".to_owned());
        let there = here.at("planner", |_| None);
        assert_eq!(there.text(Key::Variation), "3 E");
    }
}

//! The fields of the page: what the address calls each, and what can stand in it.

/// What the address calls soft iron: by Poisson's letters.
const SOFT: [&str; 9] = [
    "soft-a", "soft-b", "soft-c", "soft-d", "soft-e", "soft-f", "soft-g", "soft-h", "soft-k",
];

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
    /// Lead by half the bank, or by the rate of roll.
    Lead,
    /// Rate of roll in degrees a second.
    RollRate,
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
    /// The track that is given instead, in degrees.
    Track,
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
    /// Iron hidden, or set.
    Iron,
    /// Hard iron forward, right and down, in nanotesla.
    Hard(u8),
    /// Soft iron, row by row.
    Soft(u8),
    /// Banked in a turn, or with a wing down.
    Banked,
    /// Wind left out, or typed.
    Wind,
    /// Where the wind blows from, in degrees from true north.
    WindFrom,
    /// Its speed in knots.
    WindSpeed,
    /// The demonstration of a lesson plan, by its name.
    Lesson,
}

impl Key {
    /// Every field once.
    pub(crate) const ALL: [Self; 56] = [
        Self::Way,
        Self::Latitude,
        Self::Longitude,
        Self::Date,
        Self::Turning,
        Self::Bank,
        Self::Rate,
        Self::Lead,
        Self::RollRate,
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
        Self::Track,
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
        Self::Iron,
        Self::Hard(0),
        Self::Hard(1),
        Self::Hard(2),
        Self::Soft(0),
        Self::Soft(1),
        Self::Soft(2),
        Self::Soft(3),
        Self::Soft(4),
        Self::Soft(5),
        Self::Soft(6),
        Self::Soft(7),
        Self::Soft(8),
        Self::Banked,
        Self::Wind,
        Self::WindFrom,
        Self::WindSpeed,
        Self::Lesson,
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
            Self::Lead => "lead",
            Self::RollRate => "roll",
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
            Self::Track => "track",
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
            Self::Iron => "iron",
            Self::Hard(part) => ["hard-p", "hard-q", "hard-r"][usize::from(part.min(2))],
            Self::Soft(part) => SOFT[usize::from(part.min(8))],
            Self::Banked => "banked",
            Self::Wind => "wind",
            Self::WindFrom => "wind-from",
            Self::WindSpeed => "wind-kt",
            Self::Lesson => "lesson",
        }
    }

    /// The words that it can hold, the usual one first; none where it is typed freely.
    pub(crate) fn choices(self) -> &'static [&'static str] {
        match self {
            Self::Way => &["latitude", "place"],
            Self::Turning => &["bank", "rate"],
            Self::Lead => &["half", "roll"],
            Self::Side => &["right", "left"],
            Self::Float => &[
                "standard",
                "brisk",
                "sluggish",
                "lightly-damped",
                "sticky-pivot",
            ],
            Self::Every => &["30", "10"],
            Self::Sheet => &["roll-outs", "aids", "worksheet", "deviation", "plan"],
            Self::Paper => &["a4", "letter"],
            Self::From => &["true", "magnetic", "compass", "track"],
            Self::VariationBy => &["typed", "place"],
            Self::Step => &["0", "1", "2", "3", "4"],
            Self::Electric => &["off", "on"],
            Self::Swing => &["30", "45"],
            Self::Swung => &["no", "yes"],
            Self::Iron => &["hidden", "set"],
            Self::Banked => &["turn", "wing-down"],
            Self::Wind => &["out", "typed"],
            _ => &[],
        }
    }

    /// What stands in it at first. The deviations are an invented card's, as in the worked
    /// examples of `lessons`; the variation is an invented one to the west.
    pub(crate) fn at_first(self) -> &'static str {
        match self {
            Self::Latitude => "52",
            Self::Bank => "15",
            Self::Rate => "3",
            Self::RollRate => "10",
            Self::Airspeed => "100",
            Self::Target => "360",
            Self::Seed => "1",
            Self::Heading | Self::Track => "75",
            Self::Variation => "10 W",
            Self::Deviation(0) => "2 E",
            Self::Deviation(1) => "1 E",
            Self::Deviation(2) => "3 W",
            Self::Deviation(3) => "4 W",
            Self::Deviation(4) => "1 W",
            Self::Deviation(6) => "3 E",
            Self::Deviation(7) => "4 E",
            Self::Beside => "",
            Self::Hard(0) => "3200",
            Self::Hard(1) => "-1600",
            Self::WindFrom => "240",
            Self::WindSpeed => "20",
            Self::Lesson => "north-from-west",
            _ => self.choices().first().copied().unwrap_or("0"),
        }
    }
}

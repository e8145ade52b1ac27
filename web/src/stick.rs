//! A stick in the hand: from its axes and buttons to what it asks of the flight.
//!
//! Knows no browser. Axes run from −1 to 1, as the Gamepad specification has them; what is
//! missing or no number asks for nothing.

use crate::cover::Cover;
use crate::intent::Intent;
use compass::unit::KNOT;
use std::fmt;
use std::str::FromStr;

/// Bank at full stick, in degrees; chosen: the steepest turn of a usual lesson.
pub(crate) const FULL_BANK: f64 = 45.0;
/// Airspeed at the two ends of the throttle, in knots; chosen: about the first flight's 100.
pub(crate) const SPEEDS: [f64; 2] = [70.0, 150.0];
/// The widest dead zone, in per cent; chosen: half of the way is left to fly with.
pub(crate) const WIDEST: u8 = 50;
/// The highest axis that can be chosen; chosen: more than any stick has.
const LAST_AXIS: usize = 31;
/// How far an axis must move, of its way from −1 to 1, to count as moved; chosen: above the
/// noise of a worn stick.
const MOVED: f64 = 0.02;
/// How far an axis must move to be found; chosen: beyond what a hand does by mistake.
const FOUND: f64 = 0.5;

/// What the buttons ask for, in the order of the Gamepad specification.
const BUTTONS: [Intent; 6] = [
    Intent::LevelWings,
    Intent::Pause,
    Intent::ToggleCover(Cover::Compass),
    Intent::Tell,
    Intent::Speed(-5),
    Intent::Speed(5),
];

/// An axis, and whether it is read backwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Axis {
    /// Counted from zero.
    pub(crate) index: usize,
    /// Read backwards.
    pub(crate) reversed: bool,
}

/// What an axis is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum AxisUse {
    /// Banks the aircraft: right positive.
    Bank,
    /// Sets the airspeed: fast positive.
    Speed,
}

/// Which axis does what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct StickMap {
    bank: Axis,
    speed: Option<Axis>,
    /// How far the stick may stand from its middle and still count as there, in per cent of its
    /// way, 0 to [`WIDEST`].
    dead_zone: u8,
}

impl Default for StickMap {
    /// The first axis banks; the fourth is the throttle, whose front end most sticks call −1. A
    /// dead zone of a tenth; chosen.
    fn default() -> Self {
        Self {
            bank: Axis {
                index: 0,
                reversed: false,
            },
            speed: Some(Axis {
                index: 3,
                reversed: true,
            }),
            dead_zone: 10,
        }
    }
}

impl StickMap {
    /// The axis for a use; only the airspeed may have none.
    pub(crate) fn axis(self, used: AxisUse) -> Option<Axis> {
        match used {
            AxisUse::Bank => Some(self.bank),
            AxisUse::Speed => self.speed,
        }
    }

    /// With another axis for a use. The bank keeps its own where none is given.
    #[must_use]
    pub(crate) fn with_axis(self, used: AxisUse, axis: Option<Axis>) -> Self {
        match used {
            AxisUse::Bank => Self {
                bank: axis.unwrap_or(self.bank),
                ..self
            },
            AxisUse::Speed => Self {
                speed: axis,
                ..self
            },
        }
    }

    /// The dead zone in per cent of the stick's way.
    pub(crate) fn dead_zone(self) -> u8 {
        self.dead_zone
    }

    /// With another dead zone, in per cent, or the nearest allowed.
    #[must_use]
    pub(crate) fn with_dead_zone(self, per_cent: u8) -> Self {
        Self {
            dead_zone: per_cent.min(WIDEST),
            ..self
        }
    }

    /// How far the stick is moved, −1 full left to 1 full right: nothing within the dead zone,
    /// and from its edge on all of the way.
    fn deflection(self, pad: &Pad) -> Option<f64> {
        let value = pad.along(self.bank)?;
        let dead = f64::from(self.dead_zone) / 100.0;
        let beyond = ((value.abs() - dead) / (1.0 - dead)).max(0.0);
        Some(beyond.copysign(value))
    }
}

/// A stick map that is stored and means nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct NoMap;

impl fmt::Display for Axis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", if self.reversed { '-' } else { '+' }, self.index)
    }
}

impl FromStr for Axis {
    type Err = NoMap;

    fn from_str(text: &str) -> Result<Self, NoMap> {
        let (reversed, digits) = match text.split_at_checked(1) {
            Some(("+", digits)) => (false, digits),
            Some(("-", digits)) => (true, digits),
            _ => return Err(NoMap),
        };
        // `parse` alone would take another sign.
        if !digits.bytes().all(|byte| byte.is_ascii_digit()) {
            return Err(NoMap);
        }
        match digits.parse() {
            Ok(index) if index <= LAST_AXIS => Ok(Self { index, reversed }),
            _ => Err(NoMap),
        }
    }
}

impl fmt::Display for StickMap {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ", self.bank)?;
        match self.speed {
            Some(axis) => write!(f, "{axis}")?,
            None => f.write_str("none")?,
        }
        write!(f, " {}", self.dead_zone)
    }
}

impl FromStr for StickMap {
    type Err = NoMap;

    fn from_str(text: &str) -> Result<Self, NoMap> {
        let parts: Vec<&str> = text.split(' ').collect();
        let [bank, speed, dead_zone] = parts[..] else {
            return Err(NoMap);
        };
        Ok(Self {
            bank: bank.parse()?,
            speed: match speed {
                "none" => None,
                axis => Some(axis.parse()?),
            },
            dead_zone: match dead_zone.parse() {
                Ok(per_cent) if per_cent <= WIDEST => per_cent,
                _ => return Err(NoMap),
            },
        })
    }
}

/// A stick as it stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Pad {
    /// Its axes.
    pub(crate) axes: Vec<f64>,
    /// Which of its buttons are down.
    pub(crate) buttons: Vec<bool>,
}

impl Pad {
    /// Where an axis stands, from −1 to 1.
    fn along(&self, axis: Axis) -> Option<f64> {
        let value = *self.axes.get(axis.index)?;
        let value = if axis.reversed { -value } else { value };
        value.is_finite().then(|| value.clamp(-1.0, 1.0))
    }

    /// The axis that moved most since the stick stood like `rest`, if one moved far enough; read
    /// so that this movement counts as positive.
    pub(crate) fn moved_since(&self, rest: &Self) -> Option<Axis> {
        let moved = |index: usize| {
            let axis = Axis {
                index,
                reversed: false,
            };
            Some(self.along(axis)? - rest.along(axis)?)
        };
        (0..self.axes.len().min(LAST_AXIS + 1))
            .filter_map(|index| Some((index, moved(index)?)))
            .max_by(|(_, a), (_, b)| a.abs().total_cmp(&b.abs()))
            .filter(|(_, by)| by.abs() > FOUND)
            .map(|(index, by)| Axis {
                index,
                reversed: by < 0.0,
            })
    }
}

/// What a stick asks for since it was read last.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Asked {
    /// Bank in radians, right positive.
    pub(crate) bank: Option<f64>,
    /// Airspeed in m/s.
    pub(crate) airspeed: Option<f64>,
    /// What its buttons ask for.
    pub(crate) intents: Vec<Intent>,
}

/// Remembers where a stick stood, so that one that rests asks for nothing and the keys fly too.
#[derive(Clone, Debug, Default)]
pub(crate) struct StickReader {
    last: Option<Last>,
}

#[derive(Clone, Debug)]
struct Last {
    deflection: Option<f64>,
    speed: Option<f64>,
    buttons: Vec<bool>,
}

impl StickReader {
    /// Reads a stick. At its first sight it asks for nothing, wherever it stands.
    pub(crate) fn read(&mut self, map: StickMap, pad: &Pad) -> Asked {
        let deflection = map.deflection(pad);
        let speed = map.speed.and_then(|axis| pad.along(axis));
        let Some(last) = &mut self.last else {
            self.last = Some(Last {
                deflection,
                speed,
                buttons: pad.buttons.clone(),
            });
            return Asked::default();
        };
        let pressed = |index: usize| {
            let is = |buttons: &[bool]| buttons.get(index).copied().unwrap_or(false);
            is(&pad.buttons) && !is(&last.buttons)
        };
        let intents = BUTTONS
            .into_iter()
            .enumerate()
            .filter_map(|(index, intent)| pressed(index).then_some(intent))
            .collect();
        last.buttons.clone_from(&pad.buttons);
        Asked {
            bank: changed(&mut last.deflection, deflection).map(|by| (FULL_BANK * by).to_radians()),
            airspeed: changed(&mut last.speed, speed).map(|at| {
                let [slow, fast] = SPEEDS;
                (slow + (fast - slow) * (at + 1.0) / 2.0) * KNOT
            }),
            intents,
        }
    }
}

/// The new value, if it moved from the last one that was taken. The middle and the ends are
/// reached however little is missing.
fn changed(last: &mut Option<f64>, now: Option<f64>) -> Option<f64> {
    let now = now?;
    let Some(before) = *last else {
        *last = Some(now);
        return None;
    };
    let exact = now == 0.0 || now.abs() == 1.0;
    if now == before || !(exact || (now - before).abs() > MOVED) {
        return None;
    }
    *last = Some(now);
    Some(now)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pad(axes: &[f64]) -> Pad {
        Pad {
            axes: axes.to_vec(),
            buttons: Vec::new(),
        }
    }

    /// What a stick asks for that rested at all zeros and now stands so.
    fn moved_to(map: StickMap, axes: &[f64]) -> Asked {
        let mut reader = StickReader::default();
        assert_eq!(reader.read(map, &pad(&[0.0; 4])), Asked::default());
        reader.read(map, &pad(axes))
    }

    fn bank(map: StickMap, axes: &[f64]) -> Option<f64> {
        moved_to(map, axes).bank.map(f64::to_degrees)
    }

    fn near(value: Option<f64>, expected: f64) -> bool {
        value.is_some_and(|value| (value - expected).abs() < 1e-9)
    }

    #[test]
    fn the_dead_zone_asks_for_nothing_and_the_rest_begins_at_zero() {
        let map = StickMap::default();
        for within in [0.0, 0.05, -0.1, 0.1] {
            assert_eq!(bank(map, &[within, 0.0, 0.0, 0.0]), None, "{within}");
        }
        assert!(near(bank(map, &[1.0]), 45.0));
        assert!(near(bank(map, &[-1.0]), -45.0));
        // Half of the way between the edge, 0.1, and the end.
        assert!(near(bank(map, &[0.55]), 22.5));
        let wide = map.with_dead_zone(50);
        assert_eq!(bank(wide, &[0.45]), None);
        assert!(near(bank(wide, &[0.75]), 22.5));
        let none = map.with_dead_zone(0);
        assert!(near(bank(none, &[0.1]), 4.5));
        assert_eq!(map.with_dead_zone(255).dead_zone(), WIDEST);
    }

    #[test]
    fn the_airspeed_may_have_no_axis_and_the_bank_always_has_one() {
        let map = StickMap::default()
            .with_axis(AxisUse::Bank, None)
            .with_axis(AxisUse::Speed, None);
        assert_eq!(map.to_string(), "+0 none 10");
        assert_eq!(moved_to(map, &[0.0, 1.0, 1.0, 1.0]), Asked::default());
    }

    #[test]
    fn a_reversed_axis_is_read_backwards() {
        let map = "-1 +0 10".parse().unwrap();
        assert!(near(bank(map, &[0.0, -1.0]), 45.0));
        let speed = moved_to(map, &[1.0]).airspeed.map(|speed| speed / KNOT);
        assert!(near(speed, SPEEDS[1]));
        let default = moved_to(StickMap::default(), &[0.0, 0.0, 0.0, 1.0]);
        assert!(near(default.airspeed.map(|it| it / KNOT), SPEEDS[0]));
    }

    #[test]
    fn axes_that_are_missing_or_no_numbers_ask_for_nothing() {
        let map = StickMap::default();
        for axes in [&[][..], &[f64::NAN; 4], &[f64::INFINITY; 4]] {
            assert_eq!(moved_to(map, axes), Asked::default(), "{axes:?}");
        }
        // Beyond its end, an axis stands at its end.
        assert!(near(bank(map, &[7.0]), 45.0));
        // A stick whose axis comes back asks for nothing by that alone.
        let mut reader = StickReader::default();
        for axes in [&[0.0][..], &[f64::NAN], &[], &[0.0]] {
            assert_eq!(reader.read(map, &pad(axes)), Asked::default());
        }
    }

    #[test]
    fn a_stick_that_rests_leaves_the_aircraft_to_the_keys() {
        let map = StickMap::default();
        let mut reader = StickReader::default();
        // Held over when it is first seen.
        assert_eq!(
            reader.read(map, &pad(&[0.8, 0.0, 0.0, -1.0])),
            Asked::default()
        );
        assert_eq!(
            reader.read(map, &pad(&[0.805, 0.0, 0.0, -1.0])),
            Asked::default()
        );
        assert!(
            reader
                .read(map, &pad(&[0.9, 0.0, 0.0, -1.0]))
                .bank
                .is_some()
        );
        // Let go, it levels once.
        assert_eq!(
            reader.read(map, &pad(&[0.05, 0.0, 0.0, -1.0])).bank,
            Some(0.0)
        );
        assert_eq!(
            reader.read(map, &pad(&[-0.05, 0.0, 0.0, -1.0])),
            Asked::default()
        );
    }

    #[test]
    fn a_button_asks_once_until_it_is_let_go() {
        let map = StickMap::default();
        let mut reader = StickReader::default();
        let with = |buttons: &[bool]| Pad {
            axes: Vec::new(),
            buttons: buttons.to_vec(),
        };
        // Down when first seen: nobody pressed it for us.
        assert_eq!(reader.read(map, &with(&[true])), Asked::default());
        assert_eq!(reader.read(map, &with(&[])), Asked::default());
        assert_eq!(
            reader.read(map, &with(&[true, true])).intents,
            [Intent::LevelWings, Intent::Pause]
        );
        assert_eq!(reader.read(map, &with(&[true, true])), Asked::default());
        assert_eq!(
            reader.read(map, &with(&[true; 40])).intents.len(),
            BUTTONS.len() - 2
        );
    }

    #[test]
    fn the_axis_that_moves_is_found_with_its_direction() {
        let rest = pad(&[0.0, 1.0, 0.0]);
        let found = |axes: &[f64]| pad(axes).moved_since(&rest).map(|axis| axis.to_string());
        assert_eq!(found(&[0.1, 1.0, 0.0]), None);
        assert_eq!(found(&[0.2, -1.0, 0.9]), Some("-1".to_owned()));
        assert_eq!(found(&[f64::NAN, 1.0, 0.9, 1.0]), Some("+2".to_owned()));
        assert_eq!(found(&[]), None);
    }

    #[test]
    fn what_is_stored_is_read_again_and_nonsense_is_not() {
        for text in ["+0 -3 10", "-31 none 0", "+2 +2 50"] {
            assert_eq!(text.parse::<StickMap>().unwrap().to_string(), text);
        }
        assert_eq!(StickMap::default().to_string(), "+0 -3 10");
        for text in [
            "",
            " ",
            "+0",
            "0 -3 10",
            "+0 -3 51",
            "+0 -3 -1",
            "+32 none 10",
            "++1 none 10",
            "+0 some 10",
            "+0  10",
            "+0 -3 10 1",
            "é0 -3 10",
            "+ -3 10",
            "+0 -3 1e1",
            "+99999999999999999999 none 10",
        ] {
            assert_eq!(text.parse::<StickMap>(), Err(NoMap), "{text:?}");
        }
    }
}

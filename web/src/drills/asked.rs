//! The task that an address asks for, as `kind=roll-out&seed=7&lat=45&level=1&tol=5`.

use lessons::drill::record::Help;
use lessons::drill::{DrillError, Kind, TaskId};

/// What cannot be read: the field, and what stands there.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Unread {
    /// The kind.
    Kind(String),
    /// The seed.
    Seed(String),
    /// Which task of the seed.
    Number(String),
    /// The latitude.
    Latitude(String),
    /// A latitude in the hemisphere that is not chosen.
    OtherSide(String),
    /// How hard.
    Level(String),
    /// The tolerance.
    Tolerance(String),
    /// Of which other task it is.
    Of(String),
    /// The task as a whole: there is none.
    Task(DrillError),
}

/// A kind by its name in files.
pub(crate) fn kind(name: &str) -> Option<Kind> {
    Kind::ALL.into_iter().find(|it| it.name() == name)
}

/// A latitude in degrees, as it is typed: with a sign or with N or S.
///
/// # Errors
/// What is none.
pub(crate) fn latitude(text: &str) -> Result<f64, Unread> {
    let typed = text.trim().replace('−', "-").to_ascii_uppercase();
    let [north, south] = ['N', 'S'].map(|it| typed.strip_suffix(it));
    let figures = north
        .or(south)
        .unwrap_or(&typed)
        .trim_end_matches(['°', ' ']);
    let degrees = figures.parse().ok().filter(|it: &f64| it.is_finite());
    // With a letter there is no sign, which would say it twice.
    match degrees {
        Some(it) if north.or(south).is_none() => Ok(it),
        Some(it) if it >= 0.0 => Ok(if south.is_some() { 0.0 - it } else { it }),
        _ => Err(Unread::Latitude(text.to_owned())),
    }
}

/// The task of an address; none where it names no kind or no seed.
///
/// # Errors
/// The first field that cannot be read, or a task that there cannot be.
pub(crate) fn task(fields: &str) -> Result<Option<TaskId>, Unread> {
    let field = |name| field(fields, name);
    let Some((name, seed)) = field("kind").zip(field("seed")) else {
        return Ok(None);
    };
    let kind = kind(name).ok_or_else(|| Unread::Kind(name.to_owned()))?;
    let seed = seed.parse().map_err(|_| Unread::Seed(seed.to_owned()))?;
    let mut id = TaskId::new(kind, seed);
    if let Some(text) = field("number") {
        id.number = text.parse().map_err(|_| Unread::Number(text.to_owned()))?;
    }
    if let Some(text) = field("lat") {
        id.latitude_deg = Some(latitude(text)?);
    }
    if let Some(text) = field("level") {
        id.level = text.parse().map_err(|_| Unread::Level(text.to_owned()))?;
    }
    if let Some(text) = field("tol") {
        let tolerance = text.parse().ok().filter(|it: &f64| it.is_finite());
        id.tolerance_deg = tolerance.ok_or_else(|| Unread::Tolerance(text.to_owned()))?;
    }
    if let Some(text) = field("of") {
        id.of_timed_turn = text == Kind::TimedTurn.name();
        if !id.of_timed_turn {
            return Err(Unread::Of(text.to_owned()));
        }
    }
    id.check().map_err(Unread::Task)?;
    Ok(Some(id))
}

/// What a field says; nothing where it is missing or empty.
fn field<'a>(fields: &'a str, name: &str) -> Option<&'a str> {
    let pairs = fields.split('&').filter_map(|it| it.split_once('='));
    let mut found = pairs.filter(|(it, _)| *it == name).map(|(_, value)| value);
    found.next_back().filter(|it| !it.is_empty())
}

/// What of an address can be read, for the form that chooses another task: an easy
/// prediction where it says nothing. Together it need not be a task.
pub(crate) fn readable(fields: &str) -> TaskId {
    let field = |name| field(fields, name);
    let kind = field("kind").and_then(kind).unwrap_or(Kind::Predict);
    let seed = field("seed").and_then(|it| it.parse().ok()).unwrap_or(0);
    let level = field("level").and_then(|it| it.parse().ok());
    let tolerance: Option<f64> = field("tol").and_then(|it| it.parse().ok());
    TaskId {
        latitude_deg: field("lat").and_then(|it| latitude(it).ok()),
        level: level.filter(|it| (1..=3).contains(it)).unwrap_or(1),
        tolerance_deg: tolerance.filter(|it| it.is_finite()).unwrap_or(10.0),
        ..TaskId::new(kind, seed)
    }
}

/// The address's fields for a task, which [`task`] reads again.
pub(crate) fn fields(id: &TaskId) -> String {
    let mut text = format!("kind={}&seed={}", id.kind.name(), id.seed);
    if id.number > 0 {
        text.push_str(&format!("&number={}", id.number));
    }
    if let Some(latitude) = id.latitude_deg {
        text.push_str(&format!("&lat={latitude}"));
    }
    text.push_str(&format!("&level={}&tol={}", id.level, id.tolerance_deg));
    if id.of_timed_turn {
        text.push_str(&format!("&of={}", Kind::TimedTurn.name()));
    }
    text
}

/// What may help in practice of one's own: nothing, so that it is practice for the air.
pub(crate) const ALLOWED: Vec<Help> = Vec::new();

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_task_is_had_again_by_its_address() {
        for kind in Kind::ALL {
            for (latitude_deg, level, number) in [(None, 1, 0), (Some(-45.5), 3, 7)] {
                let id = TaskId {
                    latitude_deg,
                    level,
                    number,
                    tolerance_deg: 5.0,
                    ..TaskId::new(kind, u64::MAX)
                };
                assert_eq!(task(&fields(&id)), Ok(Some(id)));
                if let Some(id) = id.by_the_compass() {
                    assert_eq!(task(&fields(&id)), Ok(Some(id)));
                }
            }
        }
    }

    #[test]
    fn what_cannot_be_read_is_named_and_what_is_missing_is_none() {
        assert_eq!(task(""), Ok(None));
        assert_eq!(task("kind=predict"), Ok(None));
        assert_eq!(task("kind=predict&seed="), Ok(None));
        let with = |more: &str| task(&format!("kind=read&seed=1&{more}")).unwrap_err();
        assert_eq!(task("kind=fly&seed=1"), Err(Unread::Kind("fly".to_owned())));
        assert_eq!(
            task("kind=read&seed=-1"),
            Err(Unread::Seed("-1".to_owned()))
        );
        assert_eq!(with("lat=x"), Unread::Latitude("x".to_owned()));
        assert_eq!(with("level=easy"), Unread::Level("easy".to_owned()));
        assert_eq!(with("tol=inf"), Unread::Tolerance("inf".to_owned()));
        assert_eq!(with("number=1.5"), Unread::Number("1.5".to_owned()));
        assert_eq!(with("of=read"), Unread::Of("read".to_owned()));
        for beyond in ["lat=80", "lat=5", "level=4", "tol=0", "of=timed-turn"] {
            assert!(matches!(with(beyond), Unread::Task(_)), "{beyond}");
        }
    }

    #[test]
    fn what_can_be_read_of_an_address_that_is_wrong_fills_the_form() {
        let read = readable("kind=read&seed=x&lat=5&level=9&tol=5");
        let expected = TaskId {
            latitude_deg: Some(5.0),
            level: 1,
            tolerance_deg: 5.0,
            ..TaskId::new(Kind::Read, 0)
        };
        assert_eq!(read, expected);
        assert_eq!(readable("").kind, Kind::Predict);
    }

    #[test]
    fn a_latitude_is_typed_with_a_sign_or_a_letter() {
        for (text, degrees) in [
            ("45", 45.0),
            ("-45.5", -45.5),
            ("−45", -45.0),
            ("45 S", -45.0),
            ("30°n", 30.0),
            ("0 s", 0.0),
        ] {
            assert_eq!(latitude(text), Ok(degrees), "{text}");
        }
        for text in ["", "S", "-45 S", "45 E", "NaN", "inf"] {
            assert!(latitude(text).is_err(), "{text}");
        }
    }
}

//! A demonstration's views, covers and comparisons as the cockpit has them.

use crate::beside::Change;
use crate::cockpit::{Against, Shown};
use crate::cover;
use crate::preferences::Aside;
use lessons::demonstration::{Compare, Cover, View};

/// What stands on the screen for these views, where `before` stood; without any, as before. Cues
/// alone cover and compare.
pub(super) fn shown(views: &[View], before: Shown) -> Shown {
    let mut shown = Shown {
        keys: false,
        situation: false,
        beside: None,
        cover: cover::Cover::Nothing,
        ..before
    };
    if views.is_empty() {
        return shown;
    }
    shown.why = false;
    shown.timeline = None;
    for view in views {
        match view {
            View::Rose => shown.aside = Aside::Rose,
            View::Track => shown.aside = Aside::Track,
            View::Indicator => shown.aside = Aside::Indicator,
            View::Reasons => shown.why = true,
            // There is room for one chart: the one that is named first.
            View::Timeline => shown.timeline = shown.timeline.or(Some(Against::Time)),
            View::ErrorChart => shown.timeline = shown.timeline.or(Some(Against::Heading)),
        }
    }
    shown
}

/// The cover.
pub(super) fn cover(cover: Cover) -> cover::Cover {
    match cover {
        Cover::Nothing => cover::Cover::Nothing,
        Cover::Compass => cover::Cover::Compass,
        Cover::Heading => cover::Cover::Heading,
    }
}

/// What is changed for the second situation, if there is one.
pub(super) fn change(compare: Compare) -> Option<Change> {
    Some(match compare {
        Compare::Alone => return None,
        Compare::OtherHemisphere => Change::OtherHemisphere,
        Compare::LatitudeDeg(degrees) => Change::Latitude(degrees),
        Compare::NoVerticalField => Change::NoVerticalField,
        Compare::NoSwirl => Change::NoSwirl,
        Compare::OtherIron => Change::OtherIron,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const BEFORE: Shown = Shown {
        aside: Aside::Rose,
        keys: true,
        why: true,
        situation: true,
        timeline: Some(Against::Time),
        beside: Some(Change::NoSwirl),
        cover: cover::Cover::Heading,
    };

    #[test]
    fn views_take_the_place_of_what_stood_and_the_first_chart_wins() {
        let with = |views: &[View]| shown(views, BEFORE);
        let of_track = with(&[View::Track, View::ErrorChart, View::Timeline]);
        assert_eq!(of_track.aside, Aside::Track);
        assert_eq!(of_track.timeline, Some(Against::Heading));
        assert!(!of_track.why && !of_track.keys);
        let of_none = with(&[]);
        assert!(of_none.why && of_none.timeline.is_some());
        for shown in [of_track, of_none] {
            assert_eq!((shown.beside, shown.cover), (None, cover::Cover::Nothing));
        }
    }
}

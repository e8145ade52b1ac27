//! A demonstration's views, covers and comparisons as the cockpit has them.

use crate::beside::Change;
use crate::cockpit::{Against, Shown};
use crate::cover;
use crate::preferences::Aside;
use lessons::demonstration::{Compare, Cover, View};

/// What stands on the screen for these views, where `before` stood; without any, as before.
pub(super) fn shown(views: &[View], before: Shown) -> Shown {
    let mut shown = Shown {
        keys: false,
        situation: false,
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

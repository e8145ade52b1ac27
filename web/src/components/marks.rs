//! The marks of the two meanings: an open triangle on a solid line, a filled diamond on a
//! dashed one.

use leptos::prelude::*;

/// The heading's mark.
#[component]
pub(crate) fn HeadingMark() -> impl IntoView {
    view! {
        <svg class="mark heading-mark" viewBox="0 0 40 24" aria-hidden="true">
            <path class="mark-line" d="M0 12H11M29 12H40"/>
            <path class="mark-sign" d="M20 4.5 27 19.5H13Z"/>
        </svg>
    }
}

/// The compass's mark.
#[component]
pub(crate) fn CompassMark() -> impl IntoView {
    view! {
        <svg class="mark compass-mark" viewBox="0 0 40 24" aria-hidden="true">
            <path class="mark-line" d="M1 12H11M29 12H39"/>
            <path class="mark-sign" d="M20 3 27 12 20 21 13 12Z"/>
        </svg>
    }
}

//! A picture in the colours of the page, for the pages that share a frame.

use crate::preferences::Preferences;
use drawing::shape::Shape;
use drawing::svg::Picture;
use kurbo::Size;
use leptos::prelude::*;

/// A picture as wide as its box, with what it shows in words for those who do not see it.
#[component]
pub(crate) fn Drawn<F>(
    /// Begins the names inside it.
    id: &'static str,
    /// What it is.
    #[prop(into)]
    title: Signal<String>,
    /// What it shows.
    #[prop(into)]
    description: Signal<String>,
    /// The size that it is drawn for.
    size: Size,
    /// Draws it.
    draw: F,
) -> impl IntoView
where
    F: Fn(Size) -> Vec<Shape> + Send + Sync + 'static,
{
    let preferences: Preferences = expect_context();
    let document = move || {
        Picture {
            size,
            shapes: &draw(size),
            theme: &preferences.theme(),
            id,
            title: &title.get(),
            description: &description.get(),
            ground: false,
        }
        .to_svg()
    };
    view! { <div class="drawn" id=id inner_html=document></div> }
}

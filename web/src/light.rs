//! The page's light and language, as the browser and the style sheets know them.

use crate::preferences::Preferences;
use crate::words::Words;
use drawing::theme::Light;
use leptos::prelude::*;

/// Keeps `data-light` and `lang` on the page's root as they are chosen.
pub(crate) fn follow_light(preferences: Preferences, words: &'static Words) {
    let root = document().document_element();
    Effect::new(move || {
        let light = match preferences.light() {
            Light::Day => "day",
            Light::Night => "night",
        };
        if let Some(root) = &root {
            let _ = root.set_attribute("data-light", light);
            let _ = root.set_attribute("lang", words.tag);
        }
    });
}

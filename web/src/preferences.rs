//! What the page remembers about its user: light, views, whether keys fly, and the stick.
//!
//! Kept in the browser's local storage, if there is one. A stored value that means nothing, and
//! a storage that is refused, count as nothing stored. In a frame on another page nothing is
//! kept.

use crate::embed::embedded;
use crate::stick::StickMap;
use codee::string::FromToStringCodec;
use drawing::theme::{Light, Theme};
use leptos::prelude::*;
use leptos_use_preferences::use_preferred_dark;
use leptos_use_storage::{StorageType, UseStorageOptions, use_storage_with_options};
use std::fmt;
use std::str::FromStr;

/// Day, night, or as the system has it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum LightChoice {
    /// As the system has it.
    #[default]
    System,
    /// Chosen by hand.
    Chosen(Light),
}

/// What the middle of a narrow page shows. A wide one shows both.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum View {
    /// The card face.
    #[default]
    Card,
    /// What stands beside it.
    Aside,
}

/// What stands beside the card.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Aside {
    /// The rose.
    #[default]
    Rose,
    /// The track from above.
    Track,
    /// The heading indicator.
    Indicator,
}

impl Aside {
    /// Each of them once.
    pub(crate) const ALL: [Self; 3] = [Self::Rose, Self::Track, Self::Indicator];

    /// The one after this, and after the last the first.
    fn next(self) -> Self {
        match self {
            Self::Rose => Self::Track,
            Self::Track => Self::Indicator,
            Self::Indicator => Self::Rose,
        }
    }
}

/// A stored word that means nothing here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Unknown;

impl fmt::Display for LightChoice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::System => "system",
            Self::Chosen(Light::Day) => "day",
            Self::Chosen(Light::Night) => "night",
        })
    }
}

impl FromStr for LightChoice {
    type Err = Unknown;

    fn from_str(text: &str) -> Result<Self, Unknown> {
        match text {
            "system" => Ok(Self::System),
            "day" => Ok(Self::Chosen(Light::Day)),
            "night" => Ok(Self::Chosen(Light::Night)),
            _ => Err(Unknown),
        }
    }
}

impl fmt::Display for View {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Card => "card",
            Self::Aside => "aside",
        })
    }
}

impl FromStr for View {
    type Err = Unknown;

    fn from_str(text: &str) -> Result<Self, Unknown> {
        match text {
            "card" => Ok(Self::Card),
            "aside" => Ok(Self::Aside),
            _ => Err(Unknown),
        }
    }
}

impl fmt::Display for Aside {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Rose => "rose",
            Self::Track => "track",
            Self::Indicator => "indicator",
        })
    }
}

impl FromStr for Aside {
    type Err = Unknown;

    fn from_str(text: &str) -> Result<Self, Unknown> {
        let all = Self::ALL.into_iter();
        all.map(|it| (it, it.to_string()))
            .find_map(|(it, word)| (word == text).then_some(it))
            .ok_or(Unknown)
    }
}

/// The preferences, each to be read and set.
#[derive(Clone, Copy)]
pub(crate) struct Preferences {
    light: Stored<LightChoice>,
    dark_system: Signal<bool>,
    view: Stored<View>,
    aside: Stored<Aside>,
    keys_fly: Stored<bool>,
    stick: Stored<StickMap>,
}

impl Preferences {
    /// Reads what is stored.
    pub(crate) fn load() -> Self {
        Self {
            light: Stored::new("dipwise.light", LightChoice::default()),
            dark_system: use_preferred_dark(),
            view: Stored::new("dipwise.view", View::default()),
            aside: Stored::new("dipwise.aside", Aside::default()),
            keys_fly: Stored::new("dipwise.keys-fly", true),
            stick: Stored::new("dipwise.stick", StickMap::default()),
        }
    }

    /// Day or night, as chosen or as the system has it.
    pub(crate) fn light(self) -> Light {
        match self.light.get() {
            LightChoice::Chosen(light) => light,
            LightChoice::System if self.dark_system.get() => Light::Night,
            LightChoice::System => Light::Day,
        }
    }

    /// The colours by day or by night.
    pub(crate) fn theme(self) -> Theme {
        match self.light() {
            Light::Day => Theme::day(),
            Light::Night => Theme::night(),
        }
    }

    /// Changes between day and night.
    pub(crate) fn change_light(self) {
        let other = match untrack(|| self.light()) {
            Light::Day => Light::Night,
            Light::Night => Light::Day,
        };
        self.light.set(LightChoice::Chosen(other));
    }

    /// What the middle of a narrow page shows.
    pub(crate) fn view(self) -> View {
        self.view.get()
    }

    /// Changes between the card and what stands beside it.
    pub(crate) fn change_view(self) {
        self.view.set(match untrack(|| self.view.get()) {
            View::Card => View::Aside,
            View::Aside => View::Card,
        });
    }

    /// What stands beside the card.
    pub(crate) fn aside(self) -> Aside {
        self.aside.get()
    }

    /// Puts something else beside the card.
    pub(crate) fn set_aside(self, aside: Aside) {
        self.aside.set(aside);
    }

    /// What comes beside the card next.
    pub(crate) fn next_aside(self) -> Aside {
        untrack(|| self.aside.get()).next()
    }

    /// Whether keys fly the aircraft.
    pub(crate) fn keys_fly(self) -> bool {
        self.keys_fly.get()
    }

    /// Lets keys fly the aircraft, or not.
    pub(crate) fn set_keys_fly(self, fly: bool) {
        self.keys_fly.set(fly);
    }

    /// What the axes of a stick do.
    pub(crate) fn stick(self) -> StickMap {
        self.stick.get()
    }

    /// Lets the axes of a stick do this.
    pub(crate) fn set_stick(self, map: StickMap) {
        self.stick.set(map);
    }
}

/// A value in local storage. It stands there as text, and so it does here: what keeps a text is
/// in the page once, whatever the texts mean.
#[derive(Clone, Copy)]
struct Stored<T> {
    text: Signal<String>,
    set_text: WriteSignal<String>,
    /// What no text, or one that means nothing, stands for.
    initial: T,
}

impl<T: Copy + FromStr + fmt::Display> Stored<T> {
    fn new(key: &'static str, initial: T) -> Self {
        let (text, set_text) = stored(key);
        Self {
            text,
            set_text,
            initial,
        }
    }

    fn get(self) -> T {
        self.text.with(|text| text.parse().unwrap_or(self.initial))
    }

    fn set(self, value: T) {
        self.set_text.set(value.to_string());
    }
}

/// A text in local storage, and the way to set it.
fn stored(key: &'static str) -> (Signal<String>, WriteSignal<String>) {
    if embedded() {
        let (text, set_text) = signal(String::new());
        return (text.into(), set_text);
    }
    let options = UseStorageOptions::default().on_error(|_| {});
    let (text, set_text, _) =
        use_storage_with_options::<String, FromToStringCodec>(StorageType::Local, key, options);
    (text, set_text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again_and_nothing_else() {
        for choice in [
            LightChoice::System,
            LightChoice::Chosen(Light::Day),
            LightChoice::Chosen(Light::Night),
        ] {
            assert_eq!(choice.to_string().parse(), Ok(choice));
        }
        for view in [View::Card, View::Aside] {
            assert_eq!(view.to_string().parse(), Ok(view));
        }
        for aside in Aside::ALL {
            assert_eq!(aside.to_string().parse(), Ok(aside));
        }
        assert_eq!("dusk".parse::<LightChoice>(), Err(Unknown));
        assert_eq!("".parse::<View>(), Err(Unknown));
    }
}

//! Wind, where it is asked for: its fields, and what it makes of a correction.

use super::board::use_board;
use super::fields::{Segments, Typed};
use super::key::Key;
use super::meant::Reader;
use compass::free_flight::AIRSPEED_COMMAND;
use leptos::prelude::*;
use lessons::corrections::{DeviationCard, Working};
use lessons::wind::{Triangle, TrueTrack, WIND_SPEED, Wind, WindError};

/// A correction, and the triangle of the wind where one is asked for.
pub(crate) type Worked = Result<(Working, Option<Triangle>), WindError>;

impl Reader<'_> {
    /// The wind and the airspeed, m/s, where they are asked for; none where one is wrong.
    pub(crate) fn wind(&mut self) -> Option<Option<(Wind, f64)>> {
        if !is_asked(self.choice(Key::Wind), self.choice(Key::From)) {
            return Some(None);
        }
        let from = self.heading(Key::WindFrom);
        let speed = self.number(Key::WindSpeed, WIND_SPEED, &[]);
        let airspeed = self.number(Key::Airspeed, AIRSPEED_COMMAND, &[]);
        let wind = Wind::new(from?, speed?).ok()?;
        Some(Some((wind, airspeed?)))
    }

    /// The correction that is asked for, by a variation and a card.
    pub(crate) fn worked(&mut self, variation: f64, card: &DeviationCard) -> Option<Worked> {
        let wind = self.wind()?;
        if let ("track", Some((wind, airspeed))) = (self.choice(Key::From), wind) {
            let track = TrueTrack::from_radians(self.heading(Key::Track)?);
            return Some(wind.holding(track, airspeed).map(|held| {
                let working = Working::from_true(held.heading, variation, card);
                (working, Some(held))
            }));
        }
        let working = self.working(variation, card)?;
        let blown = wind.map(|(wind, airspeed)| wind.blowing(working.true_heading, airspeed));
        Some(blown.transpose().map(|blown| (working, blown)))
    }
}

/// A track has no heading without a wind.
fn is_asked(wind: &str, from: &str) -> bool {
    wind == "typed" || from == "track"
}

/// The wind's fields.
#[component]
pub(crate) fn WindFields() -> impl IntoView {
    let board = use_board();
    let (wind, from) = (board.choice(Key::Wind), board.choice(Key::From));
    view! {
        <Show when=move || from.get() != "track"><Segments key=Key::Wind/></Show>
        <Show when=move || is_asked(wind.get(), from.get())>
            <Typed key=Key::WindFrom/>
            <Typed key=Key::WindSpeed/>
            <Typed key=Key::Airspeed/>
        </Show>
    }
}

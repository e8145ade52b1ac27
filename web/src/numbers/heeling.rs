//! After the swing: what is left in the bank, and a flight with it.

use super::board::use_board;
use super::fields::Segments;
use super::key::Key;
use super::meant::OnTheRamp;
use super::swing_record::table_home;
use super::taken::{TableOf, TakeHome};
use crate::drawn::Drawn;
use crate::link;
use compass::heading::MagneticHeading;
use drawing::heeling_chart::{HeelingChartView, heeling_chart};
use kurbo::Size;
use leptos::prelude::*;
use lessons::link::Kind;
use lessons::swing::Banked;

/// Banks from 30° left to 30° right; the table has every third.
const BANKS: usize = 13;
/// Degrees between two of them.
const STEP: f64 = 5.0;
/// The headings of the table, in degrees.
const ON: [f64; 4] = [0.0, 90.0, 180.0, 270.0];

/// What is left in the bank, and the way to the flight.
#[component]
pub(crate) fn InTheBank(ramp: Memo<Option<OnTheRamp>>) -> impl IntoView {
    let board = use_board();
    let words = &board.own().swing;
    let banked = board.choice(Key::Banked);
    let found = Memo::new(move |_| {
        let it = ramp.get()?;
        let banked = match banked.get() {
            "wing-down" => Banked::WingDown,
            _ => Banked::InATurn,
        };
        let on = |heading: f64, bank: f64| {
            let heading = MagneticHeading::from_degrees(heading);
            let found = it.ramp.deviation_in_bank(heading, bank, banked);
            found.unwrap_or(f64::NAN)
        };
        Some(ON.map(|heading| banks().map(|bank| on(heading, bank))))
    });
    let fly = move |_| {
        let Some(it) = ramp.get_untracked() else {
            return;
        };
        let mut setting = it.setting;
        setting.iron = it.ramp.iron();
        setting.heading = it.heading.whole_degrees();
        leptos::task::spawn_local(async move {
            let situation = setting.to_file().to_json();
            let gone = match link::sealed(Kind::Situation, situation).await {
                Ok(text) => window()
                    .location()
                    .set_href(&format!("index.html#d={text}"))
                    .is_ok(),
                Err(_) => false,
            };
            if !gone {
                let _ = board.told().try_set(words.not_flown);
            }
        });
    };
    view! {
        <div class="heeling">
            <h3>{words.heeling}</h3>
            <p class="hint">{words.heeling_note}</p>
            <Segments key=Key::Banked/>
            {move || found.get().map(|found| {
                let tabled = found.map(|row| std::array::from_fn(|index| row[3 * index]));
                let table = (words.in_bank)(&tabled);
                let home = table_home("dipwise-heeling", words.heeling, table.clone());
                view! {
                    <div class="found">
                        <TableOf caption=words.heeling table/>
                        <Drawn
                            id="heeling-chart"
                            title=words.heeling.to_owned()
                            description=(words.heeling_told)(&tabled)
                            size=Size::new(560.0, 260.0)
                            draw=move |size| {
                                let mut bank_words = [""; BANKS];
                                for (index, name) in words.banks.into_iter().enumerate() {
                                    bank_words[3 * index] = name;
                                }
                                let lines: Vec<(&str, &[f64])> = words.cardinals.into_iter()
                                    .zip(found.iter().map(<[f64; BANKS]>::as_slice))
                                    .collect();
                                heeling_chart(&HeelingChartView {
                                    banks: &banks(),
                                    bank_words: &bank_words,
                                    lines: &lines,
                                    east: words.east,
                                    west: words.west,
                                }, size)
                            }
                        />
                    </div>
                    <TakeHome home of=words.heeling/>
                }
            })}
            <div class="take-home">
                <button type="button" id="fly-it" on:click=fly>{words.fly_it}</button>
            </div>
            <p class="hint">{words.fly_note}</p>
        </div>
    }
}

/// The banks, rad, right positive.
fn banks() -> [f64; BANKS] {
    std::array::from_fn(|index| {
        let middle = (BANKS / 2) as f64;
        (STEP * (index as f64 - middle)).to_radians()
    })
}

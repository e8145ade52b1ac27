//! The figures at the point: the field, how far a compass can be relied on, and the three lags.

use super::atlas::use_atlas;
use super::fields::Typed;
use super::key::Key;
use earth::PlaceField;
use leptos::prelude::*;
use lessons::rule_map::{rule_lag, steady_lag};
use std::time::Duration;

/// How long a point must stand before a turn is flown there: a drag goes through many.
const SETTLED: Duration = Duration::from_millis(200);

/// Where the point is, and what is there.
#[component]
pub(crate) fn AtPoint() -> impl IntoView {
    let atlas = use_atlas();
    let words = atlas.own();
    let meant = atlas.meant();
    let field =
        Memo::new(move |_| meant.with(|meant| PlaceField::at(meant.place?, meant.date?).ok()));
    let latitude = Memo::new(move |_| meant.with(|meant| meant.place.map(|it| it.latitude())));
    let turn = Memo::new(move |_| meant.with(|meant| meant.turn));
    let simulated = simulated(field, turn);
    let rule = move || latitude.get().map(rule_lag);
    let steady = move || Some(steady_lag(field.get()?.dip(), turn.get()?.bank));
    let lag = move |lag: Option<f64>| lag.map_or_else(|| "–".to_owned(), words.lag);
    let off = move |lag: Option<f64>| {
        let off = lag? - rule()?;
        Some((words.off)(off))
    };
    let row = move |id: &'static str,
                    name: &'static str,
                    value: Signal<String>,
                    note: Signal<Option<String>>| {
        view! {
            <div>
                <dt>{name}</dt>
                <dd id=id>{move || value.get()} <span class="hint">{move || note.get()}</span></dd>
            </div>
        }
    };
    let none = Signal::derive(|| None);
    let of_field = move |say: fn(&PlaceField) -> String| {
        Signal::derive(move || field.get().map_or_else(|| "–".to_owned(), |it| say(&it)))
    };
    let said = move || {
        field
            .get()
            .map(|field| (words.said)(&field, rule(), steady()))
    };
    view! {
        <section class="point" aria-label=words.point>
            <h3>{words.point}</h3>
            <div class="where">
                <Typed key=Key::Latitude/>
                <Typed key=Key::Longitude/>
            </div>
            <dl class="figures">
                {row("at-dip", words.dip, of_field(words.dip_of), none)}
                {row("at-variation", words.variation_name, of_field(words.variation_of), none)}
                {row("at-horizontal", words.horizontal, of_field(words.horizontal_of), none)}
                {row("at-zone", words.zone, of_field(words.zone_of), none)}
            </dl>
            <h4>{move || (words.lags)(turn.get().map(|turn| turn.bank))}</h4>
            <dl class="figures">
                {row("at-rule", words.by_rule, Signal::derive(move || lag(rule())), none)}
                {row(
                    "at-steady",
                    words.by_steady,
                    Signal::derive(move || lag(steady())),
                    Signal::derive(move || off(steady())),
                )}
                {row(
                    "at-simulated",
                    words.by_simulated,
                    Signal::derive(move || match simulated.get() {
                        Some(found) => lag(found),
                        None => "…".to_owned(),
                    }),
                    Signal::derive(move || off(simulated.get().flatten())),
                )}
            </dl>
            <p class="unseen" id="point-said" role="status">{said}</p>
        </section>
    }
}

/// The lag of the float that is flown at the point, a while after the point stands; none until
/// then, and nothing where none can be flown.
fn simulated(
    field: Memo<Option<PlaceField>>,
    turn: Memo<Option<lessons::rule_map::OntoNorth>>,
) -> RwSignal<Option<Option<f64>>> {
    let found = RwSignal::new(None);
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move || {
        let (field, turn) = (field.get(), turn.get());
        found.set(None);
        let fly = move || {
            let lag = turn
                .zip(field)
                .and_then(|(turn, it)| turn.lag(it.field()).ok());
            found.try_set(Some(lag));
        };
        let next = set_timeout_with_handle(fly, SETTLED).ok();
        let before = waiting.try_update_value(|it| std::mem::replace(it, next));
        if let Some(before) = before.flatten() {
            before.clear();
        }
    });
    found
}

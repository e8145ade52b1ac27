//! What the figures of a demonstration are called on its page.

use crate::demonstration::{Compare, Figure, On};

/// What a figure is called; none for one that the page says elsewhere.
pub(super) fn name(figure: &Figure) -> Option<String> {
    let on = |what: &str, on: &On| format!("{what} on {}", heading(on.heading_deg));
    let at = |what: &str, time: &f64| format!("{what} at {}", clock(*time));
    let over =
        |what: &str, [from, to]: &[f64; 2]| format!("{what}, {} to {}", clock(*from), clock(*to));
    Some(match figure {
        Figure::LagOn(it) => on("compass", it),
        Figure::RuleOn(it) => on("by the rule of thumb", it),
        Figure::RollOutOn(it) => format!(
            "by the rule, begin to roll out onto {} at",
            heading(it.heading_deg)
        ),
        Figure::ClosedFormOn(it) => on("by the closed form", it),
        Figure::LagAt(it) | Figure::ErrorAt(it) => at("compass", it),
        Figure::GreatestLag(it) => over("greatest lag", it),
        Figure::GreatestLead(it) => over("greatest lead", it),
        Figure::GreatestError(it) => over("greatest error", it),
        Figure::AverageError(it) => over("average error", it),
        Figure::Swing(it) => over("the error swings by", it),
        Figure::TowardNorth(it) => over("card", it),
        Figure::FirstWay(it) => over("card", it),
        Figure::ShortOf(it) => format!(
            "when the compass reads {}, the nose is",
            heading(it.heading_deg)
        ),
        Figure::ReadingTravel(it) => over("the reading travels", it),
        Figure::HeadingTravel(it) => over("the nose travels", it),
        Figure::Round(it) => over("card", it),
        Figure::SettlesAfter(it) => format!("from {} the card settles within", clock(*it)),
        Figure::IndicatorErrorAt(it) => at("heading indicator", it),
        Figure::Dip => "dip".to_owned(),
        Figure::BankWithoutRevolution => "no card comes round beyond a bank of".to_owned(),
        Figure::Beside(it) => format!("{}: {}", beside(it.situation), name(&it.measure)?),
        Figure::HeadingAt(_)
        | Figure::ReadingAt(_)
        | Figure::BankAt(_)
        | Figure::RateOfTurnAt(_)
        | Figure::SpeedAt(_)
        | Figure::Latitude
        | Figure::Aid(_) => return None,
    })
}

/// What is set beside the flight.
pub(super) fn beside(situation: Compare) -> String {
    match situation {
        Compare::Alone => "alone".to_owned(),
        Compare::OtherHemisphere => "other hemisphere".to_owned(),
        Compare::LatitudeDeg(degrees) => {
            let side = if degrees < 0 { 'S' } else { 'N' };
            format!("at {}° {side}", degrees.unsigned_abs())
        }
        Compare::NoVerticalField => "no vertical field".to_owned(),
        Compare::NoSwirl => "no swirl".to_owned(),
        Compare::OtherIron => "other iron".to_owned(),
    }
}

/// Minutes and seconds.
pub(super) fn clock(seconds: f64) -> String {
    let whole = seconds.round();
    format!("{:.0}:{:02.0}", (whole / 60.0).floor(), whole % 60.0)
}

fn heading(degrees: f64) -> String {
    let whole = degrees.round().rem_euclid(360.0);
    let whole = if whole == 0.0 { 360.0 } else { whole };
    format!("{whole:03.0}°")
}

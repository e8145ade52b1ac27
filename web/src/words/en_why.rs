//! English, for the reasons: sentences chosen by the numbers.

use super::WhyWords;
use compass::cause::{Cause, Effect, End, Explanation, Pull, Turns, Way, Wing};
use compass::reading::Difference;
use compass::unit::NANOTESLA;
use drawing::torque_ledger;

/// The words that explain the card.
pub(super) const WHY: WhyWords = WhyWords {
    title: "Why",
    sentence,
    bowl: |readout| {
        let field = readout.setting.field();
        format!(
            "The bowl cut away. The field dips {}°. The card is tilted {}° in its bowl, the bank is {}°.",
            field.dip().to_degrees().round(),
            readout.tilt.round(),
            readout.bank.abs().round(),
        )
    },
    ledger: |readout| {
        let torques = &readout.moment.torques;
        let mut said = String::from("Torques on the card, of each hundred of the largest:");
        let parts = torque_ledger::parts(torques);
        let largest = parts
            .iter()
            .fold(1e-9_f64, |most, part| most.max(part.abs()));
        for (name, part) in WHY.torques.iter().zip(parts) {
            said.push_str(&format!(" {name} {},", (100.0 * part / largest).round()));
        }
        said.push_str(&format!(
            " net {}.",
            (100.0 * torques.net() / largest).round()
        ));
        said
    },
    true_vertical: "true vertical",
    apparent_vertical: "apparent vertical",
    vertical_pull: "Z pulls",
    dip: |degrees| format!("dip {degrees}°"),
    bank: |degrees| match degrees {
        0 => "wings level".to_owned(),
        1.. => format!("bank {degrees}° right"),
        _ => format!("bank {}° left", -degrees),
    },
    torques: [
        "vertical field",
        "balance weight",
        "aircraft’s iron",
        "liquid’s drag",
        "friction",
        "horizontal field",
    ],
    net: "net torque",
    clockwise: "turns the card clockwise",
    anticlockwise: "turns the card anticlockwise",
    seen_from: "Seen from",
    cameras: ["Corner", "Seat", "Behind", "Side", "Above"],
    shown: "Shown in the picture",
    parts: [
        "Bowl",
        "Liquid",
        "Pivot",
        "Card",
        "Magnet",
        "Field F",
        "Its parts H and Z",
        "Their pull",
        "Verticals",
        "Bank",
    ],
};

fn sentence(explanation: &Explanation) -> String {
    let state = state(explanation.difference);
    match explanation.cause {
        Cause::Steady => format!("Nothing turns the card: {state}."),
        Cause::AtStop { tilt } => format!(
            "The card leans {}° in its bowl and touches the stop: do not trust the reading.",
            whole(tilt)
        ),
        Cause::WeakField { horizontal } => format!(
            "The horizontal field is only {:.0} nT, too weak to steady the card.",
            horizontal / NANOTESLA
        ),
        Cause::LeaningCard { lean, .. } => format!(
            "The card leans {}°, and a leaning card shows another direction: {state}.",
            whole(lean)
        ),
        Cause::VerticalFieldThroughBank { bank, toward, pull } => {
            let wing = match toward {
                Wing::Low => "low",
                Wing::High => "high",
            };
            closed(
                format!(
                    "The vertical field, through {}° of bank, pulls the north mark toward the {wing} wing",
                    whole(bank)
                ),
                pull,
                &state,
            )
        }
        Cause::VerticalFieldThroughSpeedChange {
            airspeed_rate,
            toward,
            pull,
            ..
        } => {
            let change = if airspeed_rate > 0.0 {
                "gaining"
            } else {
                "losing"
            };
            let end = match toward {
                End::Nose => "nose",
                End::Tail => "tail",
            };
            closed(
                format!(
                    "The vertical field, through the tilt that {change} speed gives the card, pulls the north mark toward the {end}"
                ),
                pull,
                &state,
            )
        }
        Cause::VerticalFieldThroughTilt { lean, toward, pull } => {
            let way = match toward {
                Way::Left => "left",
                Way::Right => "right",
                Way::Nose => "nose",
                Way::Tail => "tail",
            };
            closed(
                format!(
                    "The vertical field, through {}° of tilt, pulls the north mark toward the {way}",
                    whole(lean)
                ),
                pull,
                &state,
            )
        }
        Cause::BalanceWeight(pull) => closed(
            format!(
                "Apparent gravity on the balance weight turns the card {}",
                way(pull)
            ),
            pull,
            &state,
        ),
        Cause::Iron(pull) => closed(
            format!("The aircraft’s iron turns the card {}", way(pull)),
            pull,
            &state,
        ),
        Cause::HorizontalField(pull) => closed(
            format!("The horizontal field turns the card {}", way(pull)),
            pull,
            &state,
        ),
        Cause::LiquidCarries(pull) => closed(
            format!(
                "The liquid, turning with the bowl, carries the card {}",
                way(pull)
            ),
            pull,
            &state,
        ),
        Cause::LiquidBrakes(_) => format!("The liquid brakes the card: {state}."),
        Cause::Friction(_) => format!("The pivot’s friction holds the card: {state}."),
    }
}

/// Ends a sentence about a pull by what it does to the reading now.
fn closed(pulls: String, pull: Pull, state: &str) -> String {
    match pull.effect {
        Effect::Makes => format!("{pulls}: {state}."),
        Effect::Lessens => format!("{pulls}, against the error: {state}."),
        Effect::NoError => format!("{pulls}, by little: {state}."),
    }
}

fn way(pull: Pull) -> &'static str {
    match pull.turns {
        Turns::Clockwise => "clockwise",
        Turns::Anticlockwise => "anticlockwise",
    }
}

fn state(difference: Difference) -> String {
    match difference {
        Difference::Agrees => "the compass agrees".to_owned(),
        Difference::Lags(by) => format!("the card lags by {by}°"),
        Difference::Leads(by) => format!("the card leads by {by}°"),
        Difference::ReadsMore(by) => format!("the compass reads {by}° more"),
        Difference::ReadsLess(by) => format!("the compass reads {by}° less"),
    }
}

fn whole(angle: f64) -> f64 {
    angle.to_degrees().abs().round()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn through_bank(effect: Effect, difference: Difference) -> String {
        sentence(&Explanation {
            cause: Cause::VerticalFieldThroughBank {
                bank: -17.0_f64.to_radians(),
                toward: Wing::Low,
                pull: Pull {
                    torque: 0.3,
                    turns: Turns::Clockwise,
                    effect,
                },
            },
            difference,
        })
    }

    #[test]
    fn a_sentence_says_what_pulls_and_what_comes_of_it() {
        assert_eq!(
            through_bank(Effect::Makes, Difference::Lags(23)),
            "The vertical field, through 17° of bank, pulls the north mark toward the low wing: \
             the card lags by 23°."
        );
    }

    #[test]
    fn a_pull_against_the_error_is_not_said_to_make_it() {
        let said = through_bank(Effect::Lessens, Difference::Leads(5));
        assert!(
            said.contains("against the error: the card leads by 5°"),
            "{said}"
        );
        let said = through_bank(Effect::NoError, Difference::Agrees);
        assert!(said.ends_with("by little: the compass agrees."), "{said}");
    }
}

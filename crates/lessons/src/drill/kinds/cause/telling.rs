//! How a stretch is put as a question, and explained.

use super::super::super::words;
use super::Named;
use super::laid_out::LaidOut;
use compass::field::MagneticField;
use compass::gust::RoughAir;
use compass::simulation::Moment;

/// What a student sees: the stretch, as instruments would show it.
pub(super) fn question(laid_out: &LaidOut, [first, last]: [&Moment; 2], error: f64) -> String {
    let [from, to] = laid_out.watch_s;
    let turning = match laid_out.turn {
        Some(turn) if laid_out.turn_lasts_into_stretch() => format!(
            "in a turn to the {} at {}° of bank",
            words::way(turn.bank_deg),
            turn.bank_deg.abs()
        ),
        Some(turn) => format!(
            "straight again for {} s after {} s in a turn to the {}",
            from - turn.to_s,
            turn.to_s - turn.from_s,
            words::way(turn.bank_deg)
        ),
        None => "straight and level".to_owned(),
    };
    let speed = match laid_out.speed {
        Some((_, to_kt)) if to_kt > laid_out.speed_kt => "gaining speed",
        Some(_) => "losing speed",
        None => "at a steady speed",
    };
    let air = match laid_out.air {
        RoughAir::Still => "smooth",
        RoughAir::Light => "a little rough",
        RoughAir::Moderate | RoughAir::Severe => "rough",
    };
    let north = if laid_out.refers_to_true {
        "the true heading off the chart"
    } else {
        "the magnetic heading"
    };
    // What would be written as nought is no figure.
    let by = if error < 1.0 {
        "less than 1".to_owned()
    } else {
        words::tidy(error)
    };
    let headings = [first, last].map(|it| words::heading(it.motion.heading.degrees()));
    let [begins, ends] = headings;
    let way = if begins == ends {
        format!("on {begins} magnetic")
    } else {
        format!("from {begins} to {ends} magnetic")
    };
    format!(
        "At {} the aircraft flies from {from} s to {to} s {way}, {turning}, {speed}; the air is \
         {air}. The compass differs from {north} by {by}° on the whole (root mean square). Which \
         error is that, for the most part?",
        words::latitude(laid_out.latitude_deg)
    )
}

/// What was seen, and what is left without the cause.
pub(super) fn happened(meant: Named, error: f64, without: f64) -> String {
    let [error, without] = [error, without].map(words::tidy);
    let taken = match meant {
        Named::Nothing => {
            return format!("The difference was {error}° on the whole: none to speak of.");
        }
        Named::Turn => "without the turn",
        Named::SpeedChange => "without the change of speed",
        Named::Swirl => "with a liquid that stops when the turn does",
        Named::RoughAir => "in still air",
        Named::Iron => "without the iron",
        Named::Variation => "against the magnetic heading",
    };
    format!("The difference was {error}°; the same flight {taken} shows {without}°.")
}

/// The rule of thumb for it, and how good it was.
pub(super) fn rule(laid_out: &LaidOut, meant: Named, error: f64, field: &MagneticField) -> String {
    match meant {
        Named::Turn => format!(
            "Rule of thumb: in turns the greatest lag or lead is the latitude, {}° here, on north \
             and south; {}° were seen.",
            words::tidy(laid_out.latitude_deg.abs()),
            words::tidy(error)
        ),
        Named::SpeedChange => "Rule of thumb: a change of speed shows most on east and west and \
                               nothing on north and south; it is over when the speed is steady."
            .to_owned(),
        Named::Swirl => format!(
            "Rule of thumb: give the compass time after a turn. Swirl fades with the liquid's own \
             spin, here to a third in 20 s; {}° were left.",
            words::tidy(error)
        ),
        Named::RoughAir => "Rule of thumb: in rough air read the middle of the swing, over ten \
                            seconds or so."
            .to_owned(),
        Named::Iron => format!(
            "Rule of thumb: deviation stays as long as the heading does, and may be 10° at the \
             most (14 CFR 25.1327(b)); here it was {}°.",
            words::tidy(error)
        ),
        Named::Variation => format!(
            "Rule of thumb: variation east, magnetic least; variation west, magnetic best. Here it \
             is {}.",
            words::east_west(field.variation().to_degrees())
        ),
        Named::Nothing => "Rule of thumb: in steady straight and level flight, and in a change of \
                           speed on north or south, the compass can be trusted."
            .to_owned(),
    }
}

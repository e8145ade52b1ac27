//! The pictures: the card, the flight from above, the bowl, the torques, the indicator, the mark.

use super::attempt::{Shown, Stage};
use super::board::{Board, indication, use_board};
use crate::components::pictures::{Painted, face};
use crate::components::why::{bowl, ledger};
use compass::heading_indicator::GyroHeading;
use compass::simulation::Moment;
use drawing::bowl_view::Parts;
use drawing::heading_dial::{DialView, heading_dial};
use drawing::mark_scale::{self, MarkScaleView, mark_scale};
use drawing::plan_view::{self, Fit, PlanView, plan_view};
use drawing::shape::Shape;
use drawing::stage3d::Camera;
use drawing::torque_ledger::SMALLEST_SCALE;
use kurbo::Size;
use leptos::prelude::*;
use std::cell::Cell;

/// A picture of what is seen.
#[component]
fn Seen<F>(id: &'static str, #[prop(into)] label: Signal<String>, draw: F) -> impl IntoView
where
    F: Fn(Board, &Shown, &Moment, Size) -> Vec<Shape> + 'static,
{
    let board = use_board();
    let draw = move |size| match board.shown() {
        Some(shown) => match &shown.moment {
            Some(moment) => draw(board, &shown, moment, size),
            None => Vec::new(),
        },
        None => Vec::new(),
    };
    view! { <Painted id label theme=move || board.preferences.theme() draw/> }
}

/// The floating card.
#[component]
pub(super) fn Card() -> impl IntoView {
    let draw = |board: Board, shown: &Shown, moment: &Moment, size| {
        face(board.page, moment, moment.difference(), shown.cover, size)
    };
    view! { <Seen id="card" label=use_board().seen() draw/> }
}

/// The flight from above. Before it is explained the way lies ahead, and the compass is left out.
#[component]
pub(super) fn Plan() -> impl IntoView {
    let draw = |board: Board, shown: &Shown, moment: &Moment, size| {
        let views = &board.page.views;
        let explained = shown.stage == Stage::Explained;
        let heading = (views.heading_ray)(moment.motion.heading.whole_degrees());
        let compass = (views.compass_ray)(moment.reading.compass.whole_degrees());
        let error = (board.page.error)(moment.difference());
        board
            .of(|attempt| {
                let (track, later) = attempt.flown()?.track(moment);
                let view = PlanView {
                    heading: moment.motion.heading,
                    reading: moment.reading.compass,
                    variation: 0.0,
                    track: &track,
                    later: &later,
                    fit: Fit::Whole,
                    show_heading: true,
                    show_compass: explained,
                    words: plan_view::Words::default(),
                };
                let scale = plan_view::scale_bar(&view, size).map(views.scale);
                let words = plan_view::Words {
                    magnetic_north: Some(views.magnetic_north),
                    heading: Some(&heading),
                    compass: Some(&compass),
                    error: (explained && !error.is_empty()).then_some(error.as_str()),
                    scale: scale.as_deref(),
                    ..plan_view::Words::default()
                };
                Some(plan_view(&PlanView { words, ..view }, size))
            })
            .flatten()
            .unwrap_or_default()
    };
    view! { <Seen id="plan" label=use_board().words.from_above.to_owned() draw/> }
}

/// The bowl, cut away.
#[component]
pub(super) fn Bowl() -> impl IntoView {
    let draw = |board: Board, _: &Shown, moment: &Moment, size| {
        let field = board.of(|attempt| Some(attempt.scenario()?.situation().field));
        let seen = (Camera::default(), Parts::ALL);
        field.flatten().map_or(Vec::new(), |field| {
            bowl(&board.page.why, moment, &field, seen, size)
        })
    };
    view! { <Seen id="bowl" label=use_board().words.bowl.to_owned() draw/> }
}

/// The torques, as bars that sum to the net.
#[component]
pub(super) fn Torques() -> impl IntoView {
    let scale = Cell::new(SMALLEST_SCALE);
    let draw = move |board: Board, _: &Shown, moment: &Moment, size| {
        ledger(&board.page.why, moment, &scale, size)
    };
    view! { <Seen id="torques" label=use_board().words.torques.to_owned() draw/> }
}

/// The heading indicator; how it errs is shown once it is explained.
#[component]
pub(super) fn Dial() -> impl IntoView {
    let draw = |_: Board, shown: &Shown, moment: &Moment, size| {
        let explained = shown.stage == Stage::Explained;
        let view = |indication: GyroHeading| DialView {
            indication,
            heading: explained.then_some(moment.motion.heading),
            compass: explained.then_some(moment.reading.compass),
        };
        indication(shown).map_or(Vec::new(), |it| heading_dial(&view(it), size))
    };
    view! { <Seen id="dial" label=use_board().seen() draw/> }
}

/// How far off a flown task ended.
#[component]
pub(super) fn MarkScale(error_deg: f64, tolerance_deg: f64, has_side: bool) -> impl IntoView {
    let board = use_board();
    let words = board.words;
    let (error, within) = (
        (words.off)(error_deg, has_side),
        (words.within)(tolerance_deg),
    );
    let draw = move |size| {
        let view = MarkScaleView {
            error_deg,
            tolerance_deg,
            has_side,
            words: mark_scale::Words {
                error: &error,
                within: &within,
            },
        };
        mark_scale(&view, size)
    };
    let label = (words.mark)(error_deg, tolerance_deg, has_side);
    view! {
        <Painted id="mark-scale" label=label theme=move || board.preferences.theme() draw/>
    }
}

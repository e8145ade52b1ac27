//! The lane under the timeline: a handle for each cue, moved by pointer or by arrow keys.

use crate::cockpit::use_cockpit;
use crate::components::timeline::strip_layout;
use crate::making::{Maker, use_maker};
use drawing::strip_chart::StripLayout;
use kurbo::Size;
use leptos::html;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos_use_element_size::{UseElementSizeReturn, use_element_size};
use lessons::making::Step;
use web_sys::{HtmlElement, KeyboardEvent, PointerEvent};

/// Pixels that a handle is wide; as in static/style/making.css.
const WIDE: f64 = 52.0;
/// The most handles that stand over each other; chosen: more would hide the card.
const ROWS: usize = 3;
/// A chart's height in pixels where none is seen; it hardly matters for where its axis stands.
const HIGH: f64 = 160.0;

/// The lane, while a draft is open.
#[component]
pub(crate) fn CueLane() -> impl IntoView {
    let maker = use_maker();
    view! {
        <Show when=move || maker.shown() && maker.is_open()>
            <Lane/>
        </Show>
    }
}

#[component]
fn Lane() -> impl IntoView {
    let cockpit = use_cockpit();
    let maker = use_maker();
    let words = cockpit.words.making();
    let frame = NodeRef::<html::Div>::new();
    let UseElementSizeReturn { width, .. } = use_element_size(frame);
    let flown = cockpit.part(|readout| readout.flown);
    // The same time axis as that of the chart above.
    let layout = RwSignal::new_local(None::<StripLayout>);
    Effect::new(move || {
        flown.track();
        let width = width.get();
        if width > 0.0 {
            let chart = document().get_element_by_id("strips");
            let high = chart.map_or(0.0, |it| it.get_bounding_client_rect().height());
            let high = if high > 0.0 { high } else { HIGH };
            layout.set(Some(strip_layout(cockpit, Size::new(width, high))));
        }
    });
    let x_of = move |time: f64| layout.with(|it| it.as_ref().map_or(0.0, |it| it.x_of(time)));
    let time_at = move |x: f64| {
        layout.with_untracked(|it| {
            let area = it.as_ref()?.heading.area;
            it.as_ref()?.time_at(x.clamp(area.x0, area.x1))
        })
    };

    let order = maker.numbers(|draft| draft.cues().iter().map(|it| it.id).collect());
    let rows = maker.numbers(move |draft| rows(draft.cues().iter().map(|it| x_of(it.cue.at_s))));
    let high = move || rows.with(|it| it.iter().max().map_or(1, |most| most + 1));
    let plays = maker.part(|draft| draft.plays());
    let now = cockpit.part(|readout| readout.time);

    // The cue that is dragged, and how far its handle's edge is from the pointer.
    let dragged = StoredValue::new(None::<(u32, f64)>);
    let inside = move |event: &PointerEvent| {
        let frame = frame.get_untracked()?;
        Some(f64::from(event.client_x()) - frame.get_bounding_client_rect().left())
    };
    let grip = move |id: u32, at: f64, event: &PointerEvent| {
        if event.button() != 0 || !event.is_primary() {
            return;
        }
        maker.select(id);
        maker.end_step();
        if let (Some(frame), Some(x)) = (frame.get_untracked(), inside(event)) {
            // The handle may change its place among the others: the lane holds the pointer.
            let _ = frame.set_pointer_capture(event.pointer_id());
            let from_edge = x - untrack(|| x_of(at));
            dragged.set_value(Some((id, from_edge)));
        }
    };
    let moved = move |event: PointerEvent| {
        if let Some((id, from_edge)) = dragged.get_value()
            && let Some(time) = inside(&event).and_then(|x| time_at(x - from_edge))
        {
            maker.change(Step::GoesOn, |draft| draft.move_cue(id, time));
        }
    };
    let left = move |_: PointerEvent| {
        if let Some((id, _)) = dragged.get_value() {
            dragged.set_value(None);
            maker.end_step();
            focus(id);
        }
    };

    let handle = move |id: u32| {
        let at = maker.part(move |draft| draft.cue(id).map(|it| it.at_s).unwrap_or_default());
        let says = maker.part(move |draft| {
            let cue = draft.cue(id);
            cue.map(|it| ((words.cue)(it), (words.sign)(&it.act)))
                .unwrap_or_default()
        });
        let row = move || {
            let place = order.with(|order| order.iter().position(|it| *it == id));
            rows.with(|rows| place.and_then(|it| rows.get(it).copied()))
                .unwrap_or_default()
        };
        let length = maker.part(|draft| draft.length());
        view! {
            <div
                class="cue-handle"
                class:cut=move || { let [from, to] = plays(); !(from..=to).contains(&at()) }
                class:selected=move || maker.selected() == Some(id)
                id=handle_id(id)
                role="slider"
                tabindex="0"
                aria-label=move || says().0
                title=move || says().0
                aria-valuemin="0"
                aria-valuemax=move || length().to_string()
                aria-valuenow=move || at().to_string()
                aria-valuetext=move || (words.time)(at())
                style:left=move || format!("{:.1}px", x_of(at()))
                style:--row=move || row().to_string()
                on:focus=move |_| maker.select(id)
                on:pointerdown=move |event| grip(id, untrack(at), &event)
                on:keydown=move |event| slide(maker, id, &event)
                on:keyup=move |_| maker.end_step()
            >
                {move || says().1}
            </div>
        }
        .into_any()
    };
    let pixels = |x: f64| format!("{x:.1}px");
    view! {
        <div
            class="cue-lane"
            id="cue-lane"
            role="group"
            aria-label=words.lane
            node_ref=frame
            style:--rows=move || high().to_string()
            on:pointermove=moved
            on:pointerup=left
            on:pointercancel=left
        >
            <div class="lane-played" style:left=move || pixels(x_of(plays()[0]))
                style:width=move || pixels(x_of(plays()[1]) - x_of(plays()[0]))></div>
            <div class="lane-now" style:left=move || pixels(x_of(now.get()))></div>
            {move || order.get().into_iter().map(handle).collect_view()}
        </div>
    }
}

/// The row in which each handle stands, in order of time: the first that is free there.
fn rows(places: impl Iterator<Item = f64>) -> Vec<u32> {
    let mut ends = [f64::NEG_INFINITY; ROWS];
    let row = |x: f64| {
        let free = ends.iter().position(|end| *end <= x);
        let row = free.unwrap_or(ROWS - 1);
        ends[row] = x + WIDE;
        row as u32
    };
    places.map(row).collect()
}

/// A key moves the cue in focus, or deletes it.
fn slide(maker: Maker, id: u32, event: &KeyboardEvent) {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    let by = if event.shift_key() { 1.0 } else { 0.1 };
    let (at, [from, to]) = maker
        .with_draft(|draft| (draft.cue(id).map(|it| it.at_s), draft.plays()))
        .unwrap_or_default();
    let Some(at) = at else {
        return;
    };
    let at = match event.key().as_str() {
        "ArrowLeft" | "ArrowDown" => at - by,
        "ArrowRight" | "ArrowUp" => at + by,
        "PageDown" => at - 5.0,
        "PageUp" => at + 5.0,
        "Home" => from,
        "End" => to,
        "Delete" | "Backspace" => {
            event.prevent_default();
            maker.change(Step::New, |draft| draft.remove_cue(id));
            return;
        }
        _ => return,
    };
    event.prevent_default();
    // A key that is held down is one step.
    let step = if event.repeat() {
        Step::GoesOn
    } else {
        Step::New
    };
    maker.change(step, |draft| draft.move_cue(id, at));
    focus(id);
}

fn handle_id(id: u32) -> String {
    format!("cue-{id}")
}

/// Brings the keyboard to a handle again, once it stands in its place.
fn focus(id: u32) {
    request_animation_frame(move || {
        if let Some(handle) = document().get_element_by_id(&handle_id(id))
            && let Ok(handle) = handle.dyn_into::<HtmlElement>()
        {
            // Refused only by an element that cannot have the focus.
            let _ = handle.focus();
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn handles_stand_over_each_other_only_where_they_must() {
        assert_eq!(rows([0.0, 60.0, 120.0].into_iter()), [0, 0, 0]);
        assert_eq!(rows([0.0, 20.0, 52.0, 60.0].into_iter()), [0, 1, 0, 2]);
        assert_eq!(
            rows([0.0, 1.0, 2.0, 3.0, 100.0].into_iter()),
            [0, 1, 2, 2, 0]
        );
        assert_eq!(rows(std::iter::empty()), Vec::<u32>::new());
    }
}

//! The sticks that the browser knows: which one flies, and what its owner has set.

use crate::cockpit::Cockpit;
use crate::stick::{Axis, AxisUse, Pad, StickMap, StickReader};
use leptos::ev::Custom;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos_use_event_listener::use_event_listener;
use web_sys::{Event, Gamepad, GamepadButton};

/// A stick that is there: its name, and how many axes it has.
pub(crate) type Seen = Option<(String, usize)>;

/// The stick that flies.
#[derive(Clone, Copy)]
pub(crate) struct Hands {
    cockpit: Cockpit,
    /// Whether to look for sticks at all: without one, nothing is asked of the browser.
    connected: StoredValue<bool>,
    seen: RwSignal<Seen>,
    reader: StoredValue<StickReader>,
    sought: RwSignal<Option<AxisUse>>,
    /// How the stick stood when the search began.
    rest: StoredValue<Option<Pad>>,
}

impl Hands {
    /// Waits for a stick.
    pub(crate) fn new(cockpit: Cockpit) -> Self {
        let hands = Self {
            cockpit,
            connected: StoredValue::new(false),
            seen: RwSignal::new(None),
            reader: StoredValue::default(),
            sought: RwSignal::new(None),
            rest: StoredValue::new(None),
        };
        let event = Custom::<Event>::new("gamepadconnected");
        let _ = use_event_listener(window(), event, move |_| hands.connected.set_value(true));
        hands
    }

    /// The stick that is there.
    pub(crate) fn seen(self) -> Seen {
        self.seen.get()
    }

    /// What an axis is sought for now.
    pub(crate) fn sought(self) -> Option<AxisUse> {
        self.sought.get()
    }

    /// Seeks an axis, or stops if it is sought already.
    pub(crate) fn seek(self, what: AxisUse) {
        self.rest.set_value(None);
        self.sought
            .update(|sought| *sought = (*sought != Some(what)).then_some(what));
    }

    /// Sets which axis does what.
    pub(crate) fn set_map(self, map: StickMap) {
        // What moves by the change alone asks for nothing.
        self.reader.set_value(StickReader::default());
        self.cockpit.preferences.set_stick(map);
    }

    /// A frame of the browser: hands on what the stick asks for.
    pub(crate) fn frame(self) {
        if !self.connected.get_value() {
            return;
        }
        let Some(stick) = first_stick() else {
            self.connected.set_value(false);
            self.reader.set_value(StickReader::default());
            self.sought.set(None);
            self.seen.set(None);
            return;
        };
        let pad = pad(&stick);
        let seen = Some((stick.id(), pad.axes.len()));
        if self.seen.with_untracked(|last| *last != seen) {
            self.reader.set_value(StickReader::default());
            self.seen.set(seen);
        }
        let map = untrack(|| self.cockpit.preferences.stick());
        if let Some(sought) = self.sought.get_untracked() {
            self.find(sought, map, pad);
            return;
        }
        let asked = self.reader.try_update_value(|it| it.read(map, &pad));
        let asked = asked.unwrap_or_default();
        if asked.bank.is_some() || asked.airspeed.is_some() {
            self.cockpit.fly_to(asked.bank, asked.airspeed);
        }
        for intent in asked.intents {
            self.cockpit.ask(intent);
        }
    }

    /// Takes the axis that was moved since the search began, if there is one.
    fn find(self, sought: AxisUse, map: StickMap, pad: Pad) {
        let found: Option<Axis> = match self.rest.get_value() {
            Some(rest) => pad.moved_since(&rest),
            None => {
                self.rest.set_value(Some(pad));
                None
            }
        };
        if let Some(axis) = found {
            self.sought.set(None);
            self.set_map(map.with_axis(sought, Some(axis)));
        }
    }
}

/// The hands of the page that this component stands in.
pub(crate) fn use_hands() -> Hands {
    expect_context()
}

/// The first stick that the browser lists; a browser that has no list has none.
fn first_stick() -> Option<Gamepad> {
    let listed = window().navigator().get_gamepads().ok()?;
    let mut sticks = listed.iter().filter(JsValue::is_object);
    sticks
        .next()
        .map(leptos::wasm_bindgen::JsCast::unchecked_into)
}

/// How a stick stands.
fn pad(stick: &Gamepad) -> Pad {
    let axis = |value: JsValue| value.as_f64().unwrap_or(f64::NAN);
    let button = |value: JsValue| value.unchecked_into::<GamepadButton>().pressed();
    Pad {
        axes: stick.axes().iter().map(axis).collect(),
        buttons: stick.buttons().iter().map(button).collect(),
    }
}

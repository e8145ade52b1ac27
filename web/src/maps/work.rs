//! What the maps are made from, computed by workers: the field all over the world on a day, and
//! the lags of a float, for one way to turn onto north.

use super::computed::{field_grid, mesh};
use super::workers::{Errand, Workers};
use compass::field::MagneticField;
use earth::Date;
use earth::grid::{FieldGrid, Node};
use leptos::prelude::*;
use lessons::rule_map::{LagTable, OntoNorth};
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;
use web_sys::js_sys::{Date as Clock, Uint32Array};

/// Rows of the mesh for a worker at a time; chosen: a tenth of a second of work at most.
const ROWS: usize = 8;
/// Turns for a worker at a time; chosen likewise.
const TURNS: usize = 4;

/// What a map needs.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Wanted {
    /// The day.
    pub(crate) date: Date,
    /// How the turn is flown, and the float's name, where the map shows a simulated float.
    pub(crate) turn: Option<(OntoNorth, &'static str)>,
}

/// The field all over the world on a day.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct World {
    /// The day.
    pub(crate) date: Date,
    /// The field.
    pub(crate) field: FieldGrid,
}

/// The lags of a way to turn onto north.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lags {
    /// The way.
    pub(crate) turn: OntoNorth,
    /// The lags, solved for the field on that day.
    pub(crate) table: LagTable,
    date: Date,
}

/// How far the work is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Progress {
    /// Errands that came back.
    pub(crate) done: usize,
    /// Errands of this job.
    pub(crate) whole: usize,
    /// Whether turns are flown, or the field is surveyed.
    pub(crate) flies: bool,
    /// Whether it was cancelled.
    pub(crate) cancelled: bool,
    /// Whether it failed.
    pub(crate) failed: bool,
    /// Seconds that the survey of the field took.
    pub(crate) surveyed: Option<f64>,
    /// Turns flown, and the seconds that they took.
    pub(crate) flown: Option<(usize, f64)>,
}

/// The work of a page.
#[derive(Clone, Copy)]
pub(crate) struct Work {
    workers: StoredValue<Workers, LocalStorage>,
    wanted: StoredValue<Option<Wanted>>,
    world: RwSignal<Option<Arc<World>>>,
    lags: RwSignal<Option<Arc<Lags>>>,
    progress: RwSignal<Progress>,
}

impl Work {
    /// Nothing to do yet.
    pub(crate) fn new() -> Self {
        Self {
            workers: StoredValue::new_local(Workers::default()),
            wanted: StoredValue::new(None),
            world: RwSignal::new(None),
            lags: RwSignal::new(None),
            progress: RwSignal::new(Progress::default()),
        }
    }

    /// The field, as soon as it is surveyed; that of another day until then.
    pub(crate) fn world(self) -> RwSignal<Option<Arc<World>>> {
        self.world
    }

    /// The lags, as soon as they are flown; others until then.
    pub(crate) fn lags(self) -> RwSignal<Option<Arc<Lags>>> {
        self.lags
    }

    /// How far it is.
    pub(crate) fn progress(self) -> RwSignal<Progress> {
        self.progress
    }

    /// Computes what is wanted from now on; what is there is kept.
    pub(crate) fn ask(self, wanted: Option<Wanted>) {
        if self.wanted.with_value(|before| *before == wanted) {
            return;
        }
        self.wanted.set_value(wanted);
        self.go_on();
    }

    /// Stops.
    pub(crate) fn cancel(self) {
        self.workers.with_value(Workers::cancel);
        self.progress.update(|progress| progress.cancelled = true);
    }

    /// Computes what is missing of what is wanted.
    pub(crate) fn go_on(self) {
        self.workers.with_value(Workers::cancel);
        let Some(wanted) = self.wanted.get_value() else {
            return;
        };
        self.progress.update(|progress| {
            *progress = Progress {
                surveyed: progress.surveyed,
                flown: progress.flown,
                ..Progress::default()
            };
        });
        let here = self.world.get_untracked();
        match here.filter(|world| world.date == wanted.date) {
            None => self.survey(wanted.date),
            Some(world) => {
                if let Some((turn, float)) = wanted.turn {
                    self.fly(&world, turn, float);
                }
            }
        }
    }

    fn survey(self, date: Date) {
        let rows = mesh().map_or(0, |mesh| mesh.rows());
        let errands: Vec<Errand> = (0..rows)
            .step_by(ROWS)
            .map(|from| Errand {
                name: "survey",
                given: vec![
                    date.to_string().into(),
                    (from as f64).into(),
                    (ROWS as f64).into(),
                ],
            })
            .collect();
        let parts = Rc::new(RefCell::new(vec![Vec::new(); errands.len()]));
        let done = move |parts: &[Vec<f64>], seconds: f64| match field_grid(parts) {
            Some(field) => {
                self.world.set(Some(Arc::new(World { date, field })));
                self.progress
                    .update(|progress| progress.surveyed = Some(seconds));
                self.go_on();
            }
            None => self.progress.update(|progress| progress.failed = true),
        };
        self.begin(errands, parts, false, done);
    }

    fn fly(self, world: &World, turn: OntoNorth, float: &'static str) {
        let before = self.lags.get_untracked().filter(|lags| lags.turn == turn);
        if before.as_ref().is_some_and(|lags| lags.date == world.date) {
            return;
        }
        let mut table = before.map_or_else(LagTable::default, |lags| lags.table.clone());
        let fields: Vec<MagneticField> = (world.field.nodes().iter())
            .filter_map(Node::field)
            .collect();
        let needed = LagTable::needed(fields);
        let missing: Vec<u32> = (needed.into_iter())
            .filter(|&node| !table.is_solved(node))
            .map(|node| node as u32)
            .collect();
        let date = world.date;
        if missing.is_empty() {
            self.lags.set(Some(Arc::new(Lags { turn, table, date })));
            return;
        }
        let errands: Vec<Errand> = (missing.chunks(TURNS))
            .map(|nodes| Errand {
                name: "lags",
                given: vec![
                    turn.bank.into(),
                    turn.airspeed.into(),
                    float.into(),
                    Uint32Array::from(nodes).into(),
                ],
            })
            .collect();
        let parts = Rc::new(RefCell::new(vec![Vec::new(); errands.len()]));
        let done = move |parts: &[Vec<f64>], seconds: f64| {
            for (&node, lag) in missing.iter().zip(parts.concat()) {
                table.put(node as usize, lag);
            }
            let table = table.clone();
            self.lags.set(Some(Arc::new(Lags { turn, table, date })));
            self.progress
                .update(|progress| progress.flown = Some((missing.len(), seconds)));
        };
        self.begin(errands, parts, true, done);
    }

    /// Sends errands out, and calls `done` with all numbers and the seconds they took.
    fn begin(
        self,
        errands: Vec<Errand>,
        parts: Rc<RefCell<Vec<Vec<f64>>>>,
        flies: bool,
        mut done: impl FnMut(&[Vec<f64>], f64) + 'static,
    ) {
        let begun = Clock::now();
        self.progress.update(|progress| {
            progress.whole = errands.len();
            progress.done = 0;
            progress.flies = flies;
        });
        let taken = move |part: usize, numbers: Option<Vec<f64>>| {
            let Some(numbers) = numbers else {
                self.workers.with_value(Workers::cancel);
                self.progress.update(|progress| progress.failed = true);
                return;
            };
            if let Some(into) = parts.borrow_mut().get_mut(part) {
                *into = numbers;
            }
            let mut whole = false;
            self.progress.update(|progress| {
                progress.done += 1;
                whole = progress.done == progress.whole;
            });
            if whole {
                let all = parts.borrow().clone();
                done(&all, (Clock::now() - begun) / 1000.0);
            }
        };
        self.workers
            .with_value(|workers| workers.begin(errands, taken));
    }
}

//! Workers that compute apart from the page, as many as the machine has cores.
//!
//! A job is a list of errands, each for one worker. The next job, or none, makes the last one void:
//! what still comes of it is thrown away.

use crate::later::later;
use leptos::prelude::*;
use leptos::wasm_bindgen::closure::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;
use web_sys::js_sys::{Array, Float64Array, Function, Reflect};
use web_sys::{MessageEvent, Worker};

/// More workers than this gain little for so short a job; chosen.
const MOST: usize = 8;

/// What a worker is to do: the name of a function of `web/src/bin/maps.rs`, and with what.
pub(crate) struct Errand {
    /// Its name.
    pub(crate) name: &'static str,
    /// What it takes.
    pub(crate) given: Vec<JsValue>,
}

/// Takes the numbers that came of an errand, by its place in the job; none where it failed.
type Taken = Box<dyn FnMut(usize, Option<Vec<f64>>)>;

#[derive(Default)]
struct Held {
    workers: Vec<Worker>,
    idle: Vec<usize>,
    starting: bool,
    job: u32,
    waiting: VecDeque<(usize, Errand)>,
    taken: Option<Taken>,
}

/// The workers of a page; started with the first job.
#[derive(Clone, Default)]
pub(crate) struct Workers(Rc<RefCell<Held>>);

impl Workers {
    /// Begins a job; the one before is given up.
    pub(crate) fn begin(
        &self,
        errands: Vec<Errand>,
        taken: impl FnMut(usize, Option<Vec<f64>>) + 'static,
    ) {
        let start = {
            let mut held = self.0.borrow_mut();
            held.job = held.job.wrapping_add(1);
            held.waiting = errands.into_iter().enumerate().collect();
            held.taken = Some(Box::new(taken));
            let start = held.workers.is_empty() && !held.starting;
            held.starting |= start;
            start
        };
        if start {
            let workers = self.clone();
            leptos::task::spawn_local(async move { workers.start().await });
        } else {
            self.hand_out();
        }
    }

    /// Gives the job up.
    pub(crate) fn cancel(&self) {
        let mut held = self.0.borrow_mut();
        held.job = held.job.wrapping_add(1);
        held.waiting.clear();
        held.taken = None;
    }

    async fn start(self) {
        let cores = window().navigator().hardware_concurrency() as usize;
        let module = later("worker").await;
        let start = module.and_then(|it| Reflect::get(&it, &"start".into()).ok());
        let start: Option<Function> = start.and_then(|it| it.dyn_into().ok());
        for index in 0..cores.clamp(1, MOST) {
            let made = start.as_ref().and_then(|it| it.call0(&JsValue::NULL).ok());
            let Some(worker) = made.and_then(|it| it.dyn_into::<Worker>().ok()) else {
                break;
            };
            let workers = self.clone();
            let answered = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
                workers.answered(index, &event.data());
            });
            worker.set_onmessage(Some(answered.as_ref().unchecked_ref()));
            // It lasts as long as the page.
            answered.forget();
            let mut held = self.0.borrow_mut();
            held.workers.push(worker);
            held.idle.push(index);
        }
        self.0.borrow_mut().starting = false;
        if self.0.borrow().workers.is_empty() {
            // Without a network, and without a copy: every errand fails.
            let failed: Vec<usize> = {
                let mut held = self.0.borrow_mut();
                held.waiting.drain(..).map(|(part, _)| part).collect()
            };
            for part in failed {
                self.take(part, None);
            }
        }
        self.hand_out();
    }

    fn hand_out(&self) {
        let mut held = self.0.borrow_mut();
        while !held.waiting.is_empty() {
            let Some(index) = held.idle.pop() else {
                break;
            };
            let Some((part, errand)) = held.waiting.pop_front() else {
                break;
            };
            let message = Array::of3(&held.job.into(), &(part as f64).into(), &errand.name.into());
            for given in &errand.given {
                message.push(given);
            }
            // Refused only for what cannot be copied, and numbers and texts can.
            let _ = held.workers[index].post_message(&message);
        }
    }

    fn answered(&self, index: usize, data: &JsValue) {
        let answer = Array::from(data);
        let number = |place: u32| answer.get(place).as_f64().unwrap_or(-1.0);
        let (job, part) = (number(0), number(1));
        let current = {
            let mut held = self.0.borrow_mut();
            held.idle.push(index);
            f64::from(held.job) == job
        };
        self.hand_out();
        if current {
            let numbers = answer.get(2).dyn_into::<Float64Array>().ok();
            self.take(part as usize, numbers.map(|it| it.to_vec()));
        }
    }

    /// Passes numbers on; what takes them may begin another job.
    fn take(&self, part: usize, numbers: Option<Vec<f64>>) {
        let Some(mut taken) = self.0.borrow_mut().taken.take() else {
            return;
        };
        let job = self.0.borrow().job;
        taken(part, numbers);
        let mut held = self.0.borrow_mut();
        if held.job == job && held.taken.is_none() {
            held.taken = Some(taken);
        }
    }
}

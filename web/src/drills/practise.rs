//! Practise: a kind of task is chosen, and its tasks come one after another, each with an address
//! of its own.

use super::asked::{self, ALLOWED, Unread};
use super::keep::use_keep;
use super::play::Play;
use super::put::{Given, Put};
use super::route::Part;
use crate::pages::browser_words;
use crate::today::local_day;
use crate::words::DrillWords;
use crate::words::play::PlayWords;
use leptos::prelude::*;
use lessons::drill::{Kind, TaskId};
use web_sys::js_sys::Math;

/// How far from the equator a hemisphere's tasks lie where no latitude is typed, degrees; chosen:
/// where most people fly, and every kind can be asked.
const LATITUDES: [f64; 2] = [25.0, 60.0];

/// The form, or the task that the address asks for.
#[component]
pub(crate) fn Practise(fields: String) -> impl IntoView {
    let words = DrillWords::for_tag(browser_words().tag).play;
    let wrong = match asked::task(&fields) {
        Ok(Some(id)) => return view! { <Asked id words/> }.into_any(),
        Ok(None) => String::new(),
        Err(unread) => (words.practise.unread)(&unread),
    };
    // What of a task stands in the address fills the form.
    let at_first = asked::readable(&fields);
    view! { <Form words wrong at_first/> }.into_any()
}

/// A task, and the next one after it.
#[component]
fn Asked(id: TaskId, words: &'static PlayWords) -> impl IntoView {
    let keep = use_keep();
    let put = Put {
        task: id,
        allowed: ALLOWED,
        begun_before: keep.was_begun(&id),
    };
    let next = move |()| {
        go_to(&TaskId {
            seed: fresh(),
            number: 0,
            of_timed_turn: false,
            // A latitude that was drawn for a hemisphere stays, as one that was typed does.
            ..id
        });
    };
    let to_form = format!("#{}?{}", Part::Practise.name(), form_fields(&id));
    let by_compass = id.by_the_compass().map(|id| {
        let address = format!("#{}?{}", Part::Practise.name(), asked::fields(&id));
        view! { <a href=address>{words.turns.title}</a> }
    });
    view! {
        <Play
            put
            was_begun=Callback::new(move |()| keep.was_begun(&id))
            on_begun=Callback::new(move |()| keep.begin(id))
            on_given=Callback::new(move |given: Given| keep.answered(&given, local_day()))
            on_next=Callback::new(next)
        />
        <p class="had-again">
            {(words.practise.had_again)(id.seed)} " "
            {by_compass} " "
            <a href=to_form>{words.practise.change}</a>
        </p>
    }
}

/// What the form is filled with: all of a task but its seed.
fn form_fields(id: &TaskId) -> String {
    let fields = asked::fields(id);
    let without = fields.split('&').filter(|it| !it.starts_with("seed="));
    without.collect::<Vec<_>>().join("&")
}

/// The form that chooses a task.
#[component]
fn Form(words: &'static PlayWords, wrong: String, at_first: TaskId) -> impl IntoView {
    let own = &words.practise;
    let kind = RwSignal::new(at_first.kind);
    let level = RwSignal::new(at_first.level);
    let tolerance = RwSignal::new(at_first.tolerance_deg);
    let hemisphere = RwSignal::new(Side::Any);
    // As it is typed, not with a sign.
    let typed = at_first.latitude_deg.map(|it| match it {
        south if south < 0.0 => format!("{} S", -south),
        north => north.to_string(),
    });
    let latitude = RwSignal::new(typed.unwrap_or_default());
    let seed = RwSignal::new(String::new());
    let wrong = RwSignal::new(wrong);
    let start = move || {
        let chosen = Chosen {
            kind: kind.get_untracked(),
            level: level.get_untracked(),
            tolerance: tolerance.get_untracked(),
            hemisphere: hemisphere.get_untracked(),
            latitude: latitude.get_untracked(),
            seed: seed.get_untracked(),
        };
        match chosen.task(fresh(), Math::random()) {
            Ok(id) => go_to(&id),
            Err(unread) => wrong.set((own.unread)(&unread)),
        }
    };
    let kind_of = move |it: Kind| {
        view! {
            <label class="kind">
                <input
                    type="radio"
                    name="kind"
                    value=it.name()
                    prop:checked=move || kind.get() == it
                    on:change=move |_| kind.set(it)
                />
                <span><strong>{(words.kind)(it)}</strong> <small>{it.description()}</small></span>
            </label>
        }
    };
    let levels = own.levels.into_iter().zip(1_u8..).map(|(name, it)| {
        view! { <Segment group="level" name chosen=Signal::derive(move || level.get() == it)
        choose=Callback::new(move |()| level.set(it))/> }
    });
    let tolerances = [("±10°", 10.0), ("±5°", 5.0)].map(|(name, it)| {
        view! { <Segment group="tolerance" name chosen=Signal::derive(move || tolerance.get() == it)
        choose=Callback::new(move |()| tolerance.set(it))/> }
    });
    let hemispheres = own.hemispheres.into_iter().zip(Side::ALL).map(|(name, it)| {
        view! { <Segment group="hemisphere" name chosen=Signal::derive(move || hemisphere.get() == it)
            choose=Callback::new(move |()| hemisphere.set(it))/> }
    });
    view! {
        <form
            class="practise"
            on:submit=move |event| {
                event.prevent_default();
                start();
            }
        >
            <h2>{own.title}</h2>
            <p class="hint">{own.hint}</p>
            <fieldset class="kinds">
                <legend>{own.kind}</legend>
                {Kind::ALL.map(kind_of).collect_view()}
            </fieldset>
            <fieldset class="ways"><legend>{own.level}</legend>
                <div class="segments">{levels.collect_view()}</div></fieldset>
            <fieldset class="ways"><legend>{own.tolerance}</legend>
                <div class="segments">{tolerances.collect_view()}</div></fieldset>
            <fieldset class="ways"><legend>{own.place}</legend>
                <div class="segments">{hemispheres.collect_view()}</div></fieldset>
            <Typed id="latitude" name=own.latitude hint=own.latitude_hint value=latitude/>
            <Typed id="seed" name=own.seed hint=own.seed_hint value=seed/>
            <p class="wrong" role="alert">{move || wrong.get()}</p>
            <div class="acts"><button type="submit" class="strong">{own.start}</button></div>
        </form>
    }
}

/// One of a few that stand side by side.
#[component]
fn Segment(
    group: &'static str,
    name: &'static str,
    chosen: Signal<bool>,
    choose: Callback<()>,
) -> impl IntoView {
    view! {
        <label>
            <input
                type="radio"
                name=group
                prop:checked=move || chosen.get()
                on:change=move |_| choose.run(())
            />
            <span>{name}</span>
        </label>
    }
}

#[component]
fn Typed(
    id: &'static str,
    name: &'static str,
    hint: &'static str,
    value: RwSignal<String>,
) -> impl IntoView {
    let hint_id = format!("{id}-hint");
    view! {
        <div class="entry">
            <label for=id>{name}</label>
            <input
                id=id
                type="text"
                autocomplete="off"
                maxlength="24"
                aria-describedby=hint_id.clone()
                prop:value=move || value.get()
                on:input=move |event| value.set(event_target_value(&event))
            />
            <span class="hint" id=hint_id>{hint}</span>
        </div>
    }
}

/// What stands in the form.
#[derive(Clone, Debug)]
struct Chosen {
    kind: Kind,
    level: u8,
    tolerance: f64,
    hemisphere: Side,
    latitude: String,
    seed: String,
}

/// Which hemisphere is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Any,
    North,
    South,
}

impl Side {
    const ALL: [Self; 3] = [Self::Any, Self::North, Self::South];
}

impl Chosen {
    /// The task of a seed where none is typed; `drawn`, from 0 to 1, says how far from the equator
    /// a hemisphere's task lies where no latitude is typed.
    fn task(&self, fresh: u64, drawn: f64) -> Result<TaskId, Unread> {
        let seed = match self.seed.trim() {
            "" => fresh,
            typed => typed.parse().map_err(|_| Unread::Seed(typed.to_owned()))?,
        };
        let [least, most] = LATITUDES;
        let somewhere = (least + (most - least) * drawn).round();
        let typed = match self.latitude.trim() {
            "" => None,
            typed => Some(asked::latitude(typed)?),
        };
        let latitude_deg = match (typed, self.hemisphere) {
            (None, Side::Any) => None,
            (None, Side::North) => Some(somewhere),
            (None, Side::South) => Some(-somewhere),
            (Some(it), Side::Any) => Some(it),
            // A latitude without a side is on the side that is chosen; one against it is none.
            (Some(it), Side::North) if it >= 0.0 => Some(it),
            (Some(it), Side::South) if it <= 0.0 || !has_side(&self.latitude) => Some(-it.abs()),
            _ => return Err(Unread::OtherSide(self.latitude.trim().to_owned())),
        };
        let id = TaskId {
            level: self.level,
            tolerance_deg: self.tolerance,
            latitude_deg,
            ..TaskId::new(self.kind, seed)
        };
        id.check().map_err(Unread::Task)?;
        Ok(id)
    }
}

/// Whether a latitude says on which side of the equator it is.
fn has_side(text: &str) -> bool {
    text.to_ascii_uppercase().contains(['N', 'S', '-', '−'])
}

/// A seed that nobody typed: short, to be read out.
fn fresh() -> u64 {
    // Below 2³², so that nothing is lost on the way.
    (Math::random() * f64::from(u32::MAX)) as u64
}

fn go_to(id: &TaskId) {
    let hash = format!("#{}?{}", Part::Practise.name(), asked::fields(id));
    // An address of this page is always one.
    let _ = window().location().set_hash(&hash);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chosen(hemisphere: Side, latitude: &str, seed: &str) -> Result<TaskId, Unread> {
        let form = Chosen {
            kind: Kind::RollOut,
            level: 1,
            tolerance: 5.0,
            hemisphere,
            latitude: latitude.to_owned(),
            seed: seed.to_owned(),
        };
        form.task(9, 0.5)
    }

    #[test]
    fn a_hemisphere_draws_its_latitude_and_a_typed_one_is_kept() {
        let latitude = |side, text| chosen(side, text, "").map(|it| it.latitude_deg);
        assert_eq!(latitude(Side::Any, ""), Ok(None));
        assert_eq!(latitude(Side::North, " "), Ok(Some(43.0)));
        assert_eq!(latitude(Side::South, ""), Ok(Some(-43.0)));
        assert_eq!(latitude(Side::Any, "33 S"), Ok(Some(-33.0)));
        assert_eq!(latitude(Side::South, "33"), Ok(Some(-33.0)));
        assert_eq!(latitude(Side::North, "33"), Ok(Some(33.0)));
        for against in [(Side::South, "33 N"), (Side::North, "33 S")] {
            let text = against.1.to_owned();
            assert_eq!(latitude(against.0, against.1), Err(Unread::OtherSide(text)));
        }
    }

    #[test]
    fn a_typed_seed_is_kept_and_one_that_is_none_is_said() {
        assert_eq!(chosen(Side::Any, "", "").map(|it| it.seed), Ok(9));
        assert_eq!(chosen(Side::Any, "", " 77 ").map(|it| it.seed), Ok(77));
        let wrong = chosen(Side::Any, "", "7.5");
        assert_eq!(wrong, Err(Unread::Seed("7.5".to_owned())));
        assert!(matches!(chosen(Side::Any, "80", ""), Err(Unread::Task(_))));
    }
}

//! The fields of a form on any page: typed into, or chosen from.

use leptos::prelude::*;

/// A field: its words, what stands in it, and what is wrong with that.
#[derive(Clone)]
pub(crate) struct Field {
    /// What the address and the page's own names call it.
    pub(crate) id: &'static str,
    pub(crate) label: &'static str,
    pub(crate) hint: &'static str,
    /// What its slider is called.
    pub(crate) slider: &'static str,
    /// Whether it holds a day.
    pub(crate) is_date: bool,
    /// What can stand in it, and what each is called; nothing where it is typed into.
    pub(crate) choices: Vec<(&'static str, &'static str)>,
    pub(crate) text: Memo<String>,
    /// What is chosen; the usual where the text is none of the choices.
    pub(crate) chosen: Memo<&'static str>,
    pub(crate) wrong: Memo<Option<String>>,
    /// Takes what is typed or chosen.
    pub(crate) set: Callback<String>,
}

/// A field that is typed into; with its least and greatest value and its step where a slider
/// stands below it.
pub(crate) fn typed(field: Field, slides: Option<[f64; 3]>) -> impl IntoView {
    let Field {
        id,
        text,
        wrong,
        set,
        is_date,
        ..
    } = field;
    let slider = slides.map(|[least, most, step]| {
        view! {
            <input
                type="range"
                class="slider"
                min=least
                max=most
                step=step
                aria-label=field.slider
                prop:value=move || text.get()
                on:input=move |event| set.run(event_target_value(&event))
            />
        }
    });
    view! {
        <div class="entry">
            <label for=id>{field.label}</label>
            <input
                id=id
                type=if is_date { "date" } else { "text" }
                min=is_date.then_some("2025-01-01")
                max=is_date.then_some("2029-12-31")
                autocomplete="off"
                aria-describedby=format!("{id}-hint {id}-wrong")
                aria-invalid=move || wrong.with(Option::is_some).to_string()
                prop:value=move || text.get()
                on:input=move |event| set.run(event_target_value(&event))
            />
            <span class="hint" id=format!("{id}-hint")>{field.hint}</span>
            {slider}
            <p class="wrong" id=format!("{id}-wrong") aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

/// A field that is chosen from, all choices side by side.
pub(crate) fn segments(field: Field) -> impl IntoView {
    let Field {
        id,
        chosen,
        wrong,
        set,
        ..
    } = field;
    let option = move |(choice, name): (&'static str, &'static str)| {
        view! {
            <label>
                <input
                    type="radio"
                    name=id
                    value=choice
                    prop:checked=move || chosen.get() == choice
                    on:change=move |_| set.run(choice.to_owned())
                />
                <span>{name}</span>
            </label>
        }
    };
    view! {
        <fieldset class="ways" id=id>
            <legend>{field.label}</legend>
            <div class="segments">{field.choices.into_iter().map(option).collect_view()}</div>
            <p class="wrong" aria-live="polite">{move || wrong.get()}</p>
        </fieldset>
    }
}

/// A field that is chosen from, folded together.
pub(crate) fn folded(field: Field) -> impl IntoView {
    let Field {
        id,
        chosen,
        wrong,
        set,
        ..
    } = field;
    let option = move |(choice, name): (&'static str, &'static str)| {
        view! {
            <option value=choice prop:selected=move || chosen.get() == choice>{name}</option>
        }
    };
    view! {
        <div class="entry">
            <label for=id>{field.label}</label>
            <select
                id=id
                prop:value=move || chosen.get()
                on:change=move |event| set.run(event_target_value(&event))
            >
                {field.choices.into_iter().map(option).collect_view()}
            </select>
            <p class="wrong" aria-live="polite">{move || wrong.get()}</p>
        </div>
    }
}

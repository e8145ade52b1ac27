//! Tables, and the ways in which they are taken home.

use super::board::{Board, use_board};
use crate::download::{copy_png, download, download_png};
use drawing::sheet::Paper;
use leptos::prelude::*;
use lessons::sheet::{Sheet, Table};

/// A table of a sheet as a table of the page.
#[component]
pub(crate) fn TableOf(
    /// What it is called.
    caption: &'static str,
    /// What stands in it.
    table: Table,
) -> impl IntoView {
    let groups = (!table.groups.is_empty()).then(|| {
        let cells = table.groups.iter().map(|(name, over)| {
            let (name, over) = (name.clone(), over.to_string());
            if name.is_empty() {
                view! { <td colspan=over></td> }.into_any()
            } else {
                view! { <th scope="colgroup" colspan=over>{name}</th> }.into_any()
            }
        });
        view! { <tr class="groups">{cells.collect_view()}</tr> }
    });
    let columns = table.columns.iter().map(|column| {
        let title = column.title.clone();
        if title.is_empty() {
            view! { <td></td> }.into_any()
        } else {
            view! { <th scope="col">{title}</th> }.into_any()
        }
    });
    let rows = table.rows.iter().map(|row| {
        let mut cells = row.iter().cloned();
        let first = cells.next();
        view! {
            <tr>
                <th scope="row">{first}</th>
                {cells.map(|cell| view! { <td>{cell}</td> }).collect_view()}
            </tr>
        }
    });
    let has_titles = table.columns.iter().any(|column| !column.title.is_empty());
    view! {
        <div class="table" tabindex="0" role="region" aria-label=caption>
            <table>
                <caption class="unseen">{caption}</caption>
                <thead>
                    {groups}
                    {has_titles.then(|| view! { <tr>{columns.collect_view()}</tr> })}
                </thead>
                <tbody>{rows.collect_view()}</tbody>
            </table>
        </div>
    }
}

/// A table as lines of text, its columns apart.
pub(crate) fn as_text(table: &Table) -> String {
    let lines = lines(table);
    let wide = |column: usize| {
        let cells = lines.iter().filter_map(|line| line.get(column));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..table.columns.len()).map(wide).collect();
    let padded = lines.iter().map(|line| {
        let cells = line.iter().zip(&widths);
        let cells: Vec<String> = cells.map(|(cell, wide)| format!("{cell:<wide$}")).collect();
        format!("{}\n", cells.join("  ").trim_end())
    });
    padded.collect()
}

/// A table as CSV (RFC 4180), its figures with a plain minus and without the sign of degrees.
pub(crate) fn as_csv(table: &Table) -> String {
    let cell = |cell: &String| {
        let plain = cell.replace('−', "-").replace('°', "");
        if plain.contains([',', '"', '\n']) {
            format!("\"{}\"", plain.replace('"', "\"\""))
        } else {
            plain
        }
    };
    let line = |line: &Vec<String>| {
        let cells: Vec<String> = line.iter().map(cell).collect();
        format!("{}\r\n", cells.join(","))
    };
    lines(table).iter().map(line).collect()
}

/// Titles, with the groups that they stand in, and rows.
fn lines(table: &Table) -> Vec<Vec<String>> {
    let groups = (table.groups.iter())
        .flat_map(|(name, over)| std::iter::repeat_n(name.as_str(), *over))
        .chain(std::iter::repeat(""));
    let titles: Vec<String> = (table.columns.iter().zip(groups))
        .map(|(column, group)| format!("{group} {}", column.title).trim().to_owned())
        .collect();
    let titled = titles.iter().any(|title| !title.is_empty());
    let head = titled.then_some(titles);
    head.into_iter().chain(table.rows.iter().cloned()).collect()
}

/// What is taken home of a part of the page, made when it is asked for.
#[derive(Clone, Copy)]
pub(crate) struct Home {
    /// The name of its files.
    pub(crate) name: &'static str,
    /// As text and as CSV; none where there is no table.
    pub(crate) words: Option<Callback<(), [String; 2]>>,
    /// As a sheet.
    pub(crate) sheets: Callback<(), Vec<Sheet>>,
}

/// The buttons that take something home.
#[component]
pub(crate) fn TakeHome(
    home: Home,
    /// What is taken, where there are several such groups on the page.
    #[prop(optional)]
    of: Option<&'static str>,
) -> impl IntoView {
    let board = use_board();
    let words = board.own();
    let copies = home.words.map(|made| {
        view! {
            <button type="button" on:click=move |_| board.copy(made.run(())[0].clone())>
                {words.copy_text}
            </button>
            <button type="button" on:click=move |_| board.copy(made.run(())[1].clone())>
                {words.copy_csv}
            </button>
        }
    });
    let svg = move |_| {
        let document = handouts::svg(&home.sheets.run(()), paper(board), 1.0);
        download(&format!("{}.svg", home.name), "image/svg+xml", &document);
    };
    let png = move |_| {
        let (size, shapes) = handouts::shapes(&home.sheets.run(()), paper(board));
        download_png(
            &format!("{}.png", home.name),
            size,
            &handouts::theme(),
            &shapes,
        );
    };
    let image = move |_| {
        let (size, shapes) = handouts::shapes(&home.sheets.run(()), paper(board));
        board.tell(copy_png(size, handouts::theme(), shapes));
    };
    view! {
        <div class="take-home" role="group" aria-label=of.unwrap_or(words.take_home)>
            {copies}
            <button type="button" on:click=image>{words.copy_image}</button>
            <button type="button" on:click=svg>{words.save_svg}</button>
            <button type="button" on:click=png>{words.save_png}</button>
            <button type="button" on:click=move |_| board.copy(link(board))>{words.copy_link}</button>
        </div>
    }
}

fn paper(board: Board) -> Paper {
    untrack(|| board.paper())
}

/// The address of the page as it stands.
fn link(board: Board) -> String {
    crate::address::link(&untrack(|| {
        board.address(board.part(|asked| asked.part).get())
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::sheet::Column;

    #[test]
    fn a_table_is_written_as_text_and_as_csv() {
        let table = Table {
            groups: vec![(String::new(), 1), ("left turn".to_owned(), 2)],
            columns: vec![
                Column::figures("target", 1.0),
                Column::figures("float", 1.0),
                Column::figures("off, if bare", 1.0),
            ],
            rows: vec![["360°", "007°", "−3°"].map(str::to_owned).to_vec()],
            to_write_in: false,
        };
        assert_eq!(
            as_text(&table),
            "target  left turn float  left turn off, if bare\n360°    007°             −3°\n"
        );
        assert_eq!(
            as_csv(&table),
            "target,left turn float,\"left turn off, if bare\"\r\n360,007,-3\r\n"
        );
    }
}

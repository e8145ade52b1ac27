//! The pages beside `index.html`: each has a program of the same name, and they share one frame,
//! `frame/page.html`, and what starts them, `frame/start.js`.

/// A page.
struct Page {
    /// Its program, and its file's name without the ending.
    app: &'static str,
    title: &'static str,
    description: &'static str,
    /// Its style sheets of `static/style`, in order, after the one that all pages share.
    styles: &'static [&'static str],
}

const PAGES: [Page; 4] = [
    Page {
        app: "numbers",
        title: "numbers",
        description: "Roll-out tables, hand-outs, corrections and the compass swing, computed for \
                      where you fly.",
        styles: &["situation", "controls", "pages", "numbers", "system"],
    },
    Page {
        app: "drills",
        title: "drills",
        description: "Practise lag and lead until they are second nature: tasks from the \
                      simulation, explained after every answer.",
        styles: &[
            "situation",
            "controls",
            "pages",
            "readings",
            "drills",
            "progress",
            "sets",
            "system",
        ],
    },
    Page {
        app: "sets",
        title: "sets of tasks",
        description: "Compose tasks for a class, hand them out, and gather what comes back.",
        styles: &["situation", "controls", "links", "pages", "sets", "system"],
    },
    Page {
        app: "maps",
        title: "maps",
        description: "Dip, variation and how good the rule of thumb is, all over the Earth.",
        styles: &["situation", "controls", "pages", "maps", "system"],
    },
];

const FRAME: &str = include_str!("frame/page.html");
const START: &str = include_str!("frame/start.js");

/// The pages and what starts them, by file name.
pub(crate) fn files() -> impl Iterator<Item = (String, Vec<u8>)> {
    PAGES.iter().flat_map(|page| {
        let app = page.app;
        [
            (format!("{app}.html"), page.html().into_bytes()),
            (
                format!("start-{app}.js"),
                START.replace("{app}", app).into_bytes(),
            ),
        ]
    })
}

impl Page {
    fn html(&self) -> String {
        let style =
            |name: &&str| format!("    <link rel=\"stylesheet\" href=\"style/{name}.css\">");
        let styles: Vec<String> = self.styles.iter().map(style).collect();
        FRAME
            .replace("{title}", self.title)
            .replace("{description}", self.description)
            .replace("{styles}", &styles.join("\n"))
            .replace("{app}", self.app)
    }
}

//! The pages: each has a program, and they share one frame, `frame/page.html`. What starts them is
//! `frame/start.js`; the flight, `index.html`, has a `static/start.js` of its own, as it is two
//! programs.

/// A page.
struct Page {
    /// Its file's name without the ending.
    file: &'static str,
    /// Its program.
    app: &'static str,
    /// What starts it, without the ending.
    start: &'static str,
    title: &'static str,
    description: &'static str,
    /// Its style sheets of `static/style`, in order, after the one that all pages share.
    styles: &'static [&'static str],
}

const PAGES: [Page; 5] = [
    Page {
        file: "index",
        app: "web",
        start: "start",
        title: "Dipwise",
        description: "See why an aircraft's floating magnetic compass lags, leads and swings.",
        styles: &[
            "readings",
            "timeline",
            "situation",
            "keys",
            "controls",
            "pages",
            "ways",
            "narrow",
            "why",
            "two",
            "cover",
            "presenter",
            "stick",
            "aside",
            "errors",
            "form",
            "embed",
            "system",
        ],
    },
    Page {
        file: "numbers",
        app: "numbers",
        start: "start-numbers",
        title: "Dipwise: numbers",
        description: "Roll-out tables, hand-outs, corrections and the compass swing, computed for \
                      where you fly.",
        styles: &["situation", "controls", "pages", "numbers", "system"],
    },
    Page {
        file: "drills",
        app: "drills",
        start: "start-drills",
        title: "Dipwise: drills",
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
        file: "sets",
        app: "sets",
        start: "start-sets",
        title: "Dipwise: sets of tasks",
        description: "Compose tasks for a class, hand them out, and gather what comes back.",
        styles: &["situation", "controls", "links", "pages", "sets", "system"],
    },
    Page {
        file: "maps",
        app: "maps",
        start: "start-maps",
        title: "Dipwise: maps",
        description: "Dip, variation and how good the rule of thumb is, all over the Earth.",
        styles: &["situation", "controls", "pages", "maps", "system"],
    },
];

const FRAME: &str = include_str!("frame/page.html");
const START: &str = include_str!("frame/start.js");

/// The pages and what starts them, by file name.
pub(crate) fn files() -> impl Iterator<Item = (String, Vec<u8>)> {
    let starts = PAGES.iter().filter(|page| page.file == page.app);
    let starts = starts.map(|page| {
        let start = START.replace("{app}", page.app);
        (format!("{}.js", page.start), start.into_bytes())
    });
    let html = |page: &Page| (format!("{}.html", page.file), page.html().into_bytes());
    PAGES.iter().map(html).chain(starts)
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
            .replace("{start}", self.start)
            .replace("{app}", self.app)
    }
}

// The style of what is taught with the flight; the flight alone does without it.

const sheets = [
  'style/making.css',
  'style/demonstrations.css',
  'style/links.css',
  'style/film.css',
];

// Before the last of the page's own, which has the last word.
const last = document.querySelector('link[rel=stylesheet]:last-of-type');
await Promise.all(
  sheets.map((sheet) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = sheet;
    const loaded = new Promise((done) => {
      link.onload = done;
      link.onerror = done;
    });
    last.before(link);
    return loaded;
  }),
);

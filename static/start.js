// Starts the app, then says so: `data-ready` on the root element is "true" once it runs.

const root = document.documentElement;

// In a frame on another page: web/src/embed.rs.
const embedded = new URLSearchParams(location.search).has('embed');
root.toggleAttribute('data-embed', embedded);

// What the app fetches only when it is asked for, and so is no part of the first load: see
// web/src/later.rs.
globalThis.dipwiseLater = {
  links: async () => {
    const links = await import('./links.js');
    await links.default({ module_or_path: fetch('./links_bg.wasm') });
    return links;
  },
  film: () => import('./film.js'),
  demonstrations: () => fetch('./demonstrations.json').then((answer) => answer.text()),
};

// Who only flies fetches the flight alone, which is also what the index preloads; whatever else the
// address asks for is in the whole program: web/src/teaching.rs.
const whole = /^#(\/(demonstrations|make|film|share)|d=)/.test(location.hash);
const programs = {
  flight: async () => [await import('./web.js'), fetch('./web_bg.wasm')],
  whole: async () => {
    const module = fetch('./teach_bg.wasm');
    const [program] = await Promise.all([import('./teach.js'), import('./teach-style.js')]);
    return [program, module];
  },
};

try {
  const [program, module] = await (whole ? programs.whole() : programs.flight());
  await program.default({ module_or_path: module });
  root.dataset.ready = 'true';
} catch (error) {
  root.dataset.ready = 'false';
  document.getElementById('not-started').hidden = false;
  console.error(error);
}

// Without a service worker the page works all the same, while there is a network. In a frame it
// keeps nothing.
try {
  if (!embedded) {
    navigator.serviceWorker
      ?.register(new URL('service-worker.js', document.baseURI))
      .catch(() => {});
  }
} catch {
  // A frame without an origin of its own may not even ask.
}

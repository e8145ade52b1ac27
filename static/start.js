// Starts the app, then says so: `data-ready` on the root element is "true" once it runs.

import init from './web.js';

const root = document.documentElement;

// What the app fetches only when it is asked for, and so is no part of the first load: see
// web/src/later.rs.
globalThis.dipwiseLater = {
  film: () => import('./film.js'),
  demonstrations: () => fetch('./demonstrations.json').then((answer) => answer.text()),
};

try {
  await init({ module_or_path: new URL('./web_bg.wasm', import.meta.url) });
  root.dataset.ready = 'true';
} catch (error) {
  root.dataset.ready = 'false';
  document.getElementById('not-started').hidden = false;
  console.error(error);
}

// Without a service worker the page works all the same, while there is a network.
navigator.serviceWorker
  ?.register(new URL('service-worker.js', document.baseURI))
  .catch(() => {});

// Starts a page, as start.js does that of the flight.

import init from './{app}.js';

const root = document.documentElement;

// What pages fetch only when it is asked for: see web/src/later.rs.
globalThis.dipwiseLater = {
  links: async () => {
    const links = await import('./links.js');
    await links.default({ module_or_path: fetch('./links_bg.wasm') });
    return links;
  },
  demonstrations: () => fetch('./demonstrations.json').then((answer) => answer.text()),
  worker: () => import('./map-work.js'),
};

try {
  await init({ module_or_path: new URL('./{app}_bg.wasm', import.meta.url) });
  root.dataset.ready = 'true';
} catch (error) {
  root.dataset.ready = 'false';
  document.getElementById('not-started').hidden = false;
  console.error(error);
}

navigator.serviceWorker
  ?.register(new URL('service-worker.js', document.baseURI))
  .catch(() => {});

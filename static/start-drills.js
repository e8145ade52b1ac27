// Starts the page of drills, as start.js does that of the flight.

import init from './drills.js';

const root = document.documentElement;

try {
  await init({ module_or_path: new URL('./drills_bg.wasm', import.meta.url) });
  root.dataset.ready = 'true';
} catch (error) {
  root.dataset.ready = 'false';
  document.getElementById('not-started').hidden = false;
  console.error(error);
}

navigator.serviceWorker
  ?.register(new URL('service-worker.js', document.baseURI))
  .catch(() => {});

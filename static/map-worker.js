// Computes for the maps, apart from the page: it takes [job, part, what to do, ...with what] and
// answers [job, part, numbers], or null for numbers where it failed.

import init, * as maps from './maps.js';

const ready = init({ module_or_path: new URL('./maps_bg.wasm', import.meta.url) });

addEventListener('message', async ({ data: [job, part, name, ...given] }) => {
  let numbers = null;
  try {
    await ready;
    numbers = maps[name](...given);
  } catch (error) {
    console.error(error);
  }
  postMessage([job, part, numbers]);
});

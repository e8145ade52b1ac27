// Starts a worker that computes for the maps: web/src/maps/workers.rs.

export const start = () =>
  new Worker(new URL('./map-worker.js', import.meta.url), { type: 'module' });

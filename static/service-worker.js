// Keeps one whole build, so that the page works without a network after the first visit and never
// mixes the module of one build with the glue of another.
//
// `cargo xtask dist` puts BUILD in front of this file: a digest, the names of the files, each of
// which changes with its content, and the pages beside index.html, which keep their names.

const SCOPE = self.registration.scope;
// Caches belong to the whole origin, which may hold other pages, even this one in another folder.
const OURS = `dipwise ${SCOPE} `;
const CACHE = OURS + BUILD.digest;

// How long a slow network may take before the kept page is shown.
const PATIENCE_MS = 3000;

self.addEventListener('install', (event) => {
  event.waitUntil(keepBuild());
  self.skipWaiting();
});

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOthers().then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || !url.href.startsWith(SCOPE)) return;
  const name = url.pathname.slice(new URL(SCOPE).pathname.length);
  if (name === '' || name === 'index.html') {
    event.respondWith(newestPage(request, './'));
  } else if (BUILD.pages.includes(name)) {
    event.respondWith(newestPage(request, name));
  } else if (BUILD.files.includes(name)) {
    event.respondWith(keptFile(request));
  }
});

async function keepBuild() {
  const cache = await caches.open(CACHE);
  await cache.addAll(BUILD.files);
  // Only pages keep their names, so copies from before this build must not be taken.
  const pages = ['./', ...BUILD.pages];
  await cache.addAll(pages.map((page) => new Request(page, { cache: 'reload' })));
}

async function dropOthers() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

// From the network when it answers in time, else from this build.
async function newestPage(request, page) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(page);
  const patience = kept && AbortSignal.timeout(PATIENCE_MS);
  try {
    return await fetch(request, { signal: patience });
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}

async function keptFile(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request.url)) ?? fetch(request);
}

// Keeps the teacher's rooms at hand without a network. Sent to the browser as offline-worker.js, with its list filled in.
const KEPT = /* path: hash of the file */ {};
const SLOW_ms = 4000;
const scope = new URL(self.registration.scope);
const PREFIX = `pailside ${scope.pathname} `;
const NAME = `${PREFIX}${/* hash of the list */ ''}`;

// A new site is switched to only when all of its files are here; until then the worker before this one serves its own.
self.addEventListener('install', (event) => event.waitUntil(fill().then(() => self.skipWaiting())));
self.addEventListener('activate', (event) =>
  event.waitUntil(forgetOthers().then(() => self.clients.claim())),
);
self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url);
  const path = pathname.slice(scope.pathname.length);
  // Figures, printed sheets and the Barn board are not on the list: they are always asked for.
  if (event.request.method !== 'GET' || origin !== scope.origin || !Object.hasOwn(KEPT, path)) return;
  // The name of an asset changes with what is in it; a page's does not.
  event.respondWith(
    path.startsWith('assets/') ? keptFirst(event.request, path) : newFirst(event.request, path),
  );
});

async function kept(path) {
  const found = await (await caches.open(NAME)).match(new URL(path, scope));
  return found && new Response(found.body.pipeThrough(new DecompressionStream('gzip')), found);
}
const keptFirst = async (request, path) => (await kept(path)) ?? fetch(request);

async function newFirst(request, path) {
  const asked = fetch(request).then(
    (response) => (response.status >= 500 ? null : response),
    () => null,
  );
  const late = new Promise((done) => setTimeout(done, SLOW_ms, null));
  return (await Promise.race([asked, late])) ?? (await kept(path)) ?? (await asked) ?? Response.error();
}

async function fill() {
  const cache = await caches.open(NAME);
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME);
  const paths = Object.keys(KEPT);
  const some = async () => {
    for (let path = paths.pop(); path !== undefined; path = paths.pop()) await keep(cache, older, path);
  };
  try {
    await Promise.all([some(), some(), some(), some()]);
  } catch (error) {
    paths.length = 0;
    await caches.delete(NAME);
    throw error;
  }
}

/** Takes a file over from an older cache where it is the same, or fetches it; a file of another build ends it all. */
async function keep(cache, older, path) {
  const url = new URL(path, scope);
  for (const name of older) {
    const known = await (await caches.open(name)).match(url);
    if (known?.headers.get('Kept-Hash') === KEPT[path]) return cache.put(url, known);
  }
  const response = await fetch(url, { cache: 'no-cache' });
  const bytes = await response.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const hash = [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  if (!response.ok || hash !== KEPT[path]) throw new Error(`${path} is not of this build.`);
  const headers = new Headers(response.headers);
  for (const name of ['Content-Encoding', 'Content-Length']) headers.delete(name);
  headers.set('Kept-Hash', hash);
  // Kept pressed: a fifth of the room on a telephone.
  const pressed = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return cache.put(url, new Response(pressed, { headers }));
}

async function forgetOthers() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME);
  await Promise.all(names.map((name) => caches.delete(name)));
}

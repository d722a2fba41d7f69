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
// A page asks here what the head of its own address says: one that asks by itself, in vain, complains.
self.addEventListener('message', (event) => {
  if (event.data?.ask !== 'head') return;
  event.waitUntil(headOf(event.data.address).then((told) => event.ports[0]?.postMessage(told)));
});

async function headOf(address) {
  try {
    const { ok, headers } = await fetch(new URL(address, scope), { method: 'HEAD', cache: 'no-store' });
    const of = (name) => headers.get(name);
    return ok
      ? { live: of('Pailside-Live'), rebuilds: of('Pailside-Rebuilds'), modified: of('Last-Modified') }
      : null;
  } catch {
    return null;
  }
}

async function kept(path) {
  const found = await (await caches.open(NAME)).match(new URL(path, scope));
  return found && unpressed(found);
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
  const older = await others();
  try {
    await keepFiles(cache, older, KEPT, scope);
  } catch (error) {
    await caches.delete(NAME);
    throw error;
  }
}

const others = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME);
const forgetOthers = async () => Promise.all((await others()).map((name) => caches.delete(name)));

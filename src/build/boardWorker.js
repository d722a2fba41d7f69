// Keeps the whole Barn board at hand without a network. Sent to the browser as board-worker.js, with its lists filled in.
// Every language's board has a worker of its own, and all share the caches: a build is filled in whole beside the one
// that stands, and stands only when a page at home asks for it. Which build stands is written down in one place, so
// that all languages change at once, whichever worker is awake.
const FILES = /* path: hash of the file */ {};
const SOUNDS = /* path: hash of the sound */ {};
const VERSION = /* hash of the lists */ '';
const root = new URL('./', self.location.href);
const PREFIX = `pailside-board ${root.pathname} `;
const NAME = `${PREFIX}${VERSION}`;
const STANDS = `${PREFIX}stands`;
const HEARD = `${PREFIX}heard`;
// Where a cache keeps the list of its build, and STANDS the name of the one that stands; no page has this address.
const LIST = new URL('board-worker.js?list', root);

const isBuild = (name) => name.startsWith(PREFIX) && name !== STANDS && name !== HEARD;
const addressOf = (path) => new URL(path, root);
// Two workers that fill the same cache wait for each other.
const alone = (act) => (navigator.locks ? navigator.locks.request(PREFIX, act) : act());

self.addEventListener('install', (event) => event.waitUntil(alone(install)));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('message', (event) => {
  const act = { 'take over': takeOver, desk: hasDesk, sounds: keepSounds }[event.data?.ask];
  if (act) event.waitUntil(act(event).then((told) => event.ports[0]?.postMessage(told)));
});
self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== root.origin) return;
  const path = pathname.slice(root.pathname.length);
  // Figures, the desk's events and the teacher's rooms are not the board's.
  if (Object.hasOwn(FILES, path) || /^assets\/|^(?:[a-z]{2,3}(?:-[\w-]+)?\/)?barn\//.test(path))
    event.respondWith(answer(event, path));
});

async function install() {
  const stands = await standingName();
  for (const name of await caches.keys())
    if (isBuild(name) && name !== NAME && name !== stands) await caches.delete(name);
  await fill();
  if (stands === null) await stand(NAME);
}

/** Fills this build's cache whole, or leaves none. Its list comes last: a cache without one was cut off. */
async function fill() {
  const before = await listIn(NAME);
  const builds = await wholeBuilds();
  const cache = await caches.open(NAME);
  try {
    await keepFiles(cache, builds.map(({ name }) => name), FILES, root); // prettier-ignore
  } catch (error) {
    if (before === null) await caches.delete(NAME);
    throw error;
  }
  // A board's clock may run backwards after a power cut, so turns are counted.
  const turn = 1 + Math.max(0, ...builds.map((build) => build.turn));
  await cache.put(LIST, new Response(JSON.stringify({ files: FILES, sounds: SOUNDS, turn })));
}

/** What a whole build consists of; null where a cache is missing, cut off or spoilt. */
async function listIn(name) {
  if (!(await caches.has(name))) return null;
  try {
    const list = await (await (await caches.open(name)).match(LIST))?.json();
    return list?.files && list.sounds && Number.isInteger(list.turn) ? { name, ...list } : null;
  } catch {
    return null;
  }
}

/** The builds that are here whole, the newest first. */
async function wholeBuilds() {
  const lists = await Promise.all((await caches.keys()).filter(isBuild).map(listIn));
  return lists.filter((list) => list !== null).sort((a, b) => b.turn - a.turn);
}

/** The name of the build that was told to stand, if it is here whole. */
async function standingName() {
  const told = await (await caches.open(STANDS)).match(LIST);
  const name = told ? await told.text() : '';
  return isBuild(name) && (await listIn(name)) ? name : null;
}
const stand = async (name) => (await caches.open(STANDS)).put(LIST, new Response(name));

let lastKnown = null;
/** The build that stands. Where what was told is lost, the newest whole one; where none is whole, what is left of ours. */
async function standing(isPage) {
  // The files of a page come quickly one after the other, and belong to its build.
  if (!isPage && lastKnown) return lastKnown;
  const name = await standingName();
  const [newest] = name === null ? await wholeBuilds() : [await listIn(name)];
  lastKnown = newest ?? { name: NAME, files: FILES, sounds: SOUNDS, turn: 0 };
  return lastKnown;
}

/** Lets the newest whole build stand, unless a child is on a page somewhere. Tells whether that is another one than before. */
function takeOver({ data, source }) {
  return alone(async () => {
    const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
    const homes = new Set([data.home, source?.url]);
    const inUse = windows.some(({ id, url }) => id !== source?.id && isBoard(url) && !homes.has(url));
    if (inUse) return false;
    const before = await standingName();
    const [newest] = await wholeBuilds();
    if (!newest) return false;
    await stand(newest.name);
    lastKnown = null;
    void self.skipWaiting();
    return newest.name !== before;
  });
}
const isBoard = (url) => /^(?:[^/]+\/)?barn\//.test(new URL(url).pathname.slice(root.pathname.length));

async function answer(event, path) {
  const { request } = event;
  const isPage = request.mode === 'navigate';
  const build = await standing(isPage);
  if (Object.hasOwn(build.sounds, path)) return heard(request, path, build.sounds[path]);
  if (!Object.hasOwn(build.files, path))
    return (path.startsWith('assets/') && (await ofAnyBuild(path))) || fetch(request);
  const url = addressOf(path);
  const cache = await caches.open(build.name);
  const copy = await soundCopy(cache, url, build.files[path]);
  if (copy) return copy;
  // Lost or spoilt: mended from another build that has the same file, or from the network.
  try {
    await keepFile(cache, (await wholeBuilds()).map(({ name }) => name), url, build.files[path]); // prettier-ignore
    return (await soundCopy(cache, url, build.files[path])) ?? fetch(request);
  } catch {
    // The network has another build by now; it may be filled in whole while the child goes on.
    event.waitUntil(self.registration.update().catch(() => undefined));
    return isPage ? insteadOf(request, path, build) : fetch(request);
  }
}

/** In the place of a page that is lost and cannot be mended: its board's home, or what the network has. */
async function insteadOf(request, path, build) {
  const home = path.replace(/(^|\/)barn\/.*$/, '$1barn/');
  const cache = await caches.open(build.name);
  if (path !== home && (await soundCopy(cache, addressOf(home), build.files[home])))
    return Response.redirect(addressOf(home), 302);
  try {
    return await fetch(request);
  } catch (error) {
    for (const { name, files } of await wholeBuilds()) {
      const copy = await soundCopy(await caches.open(name), addressOf(path), files[path]);
      if (copy) return copy;
    }
    throw error;
  }
}

/** A hashed file of a page from before the change; its name says what is in it. */
async function ofAnyBuild(path) {
  for (const { name, files } of await wholeBuilds())
    if (Object.hasOwn(files, path)) {
      const copy = await soundCopy(await caches.open(name), addressOf(path), files[path]);
      if (copy) return copy;
    }
  return null;
}

/** A sound, kept when it is first heard; in the part that a player asks for. */
async function heard(request, path, hash) {
  const url = addressOf(path);
  const cache = await caches.open(HEARD);
  try {
    await keepFile(cache, [], url, hash);
    const copy = await soundCopy(cache, url, hash);
    return copy ? partOf(copy, request.headers.get('Range')) : await fetch(request);
  } catch {
    return fetch(request);
  }
}

async function partOf(copy, range) {
  const asked = /^bytes=(\d+)-(\d*)$/.exec(range ?? '');
  if (!asked) return copy;
  const whole = await copy.blob();
  const from = Number(asked[1]);
  const to = asked[2] === '' ? whole.size - 1 : Math.min(Number(asked[2]), whole.size - 1);
  if (from > to) return new Response(null, { status: 416, headers: { 'Content-Range': `bytes */${whole.size}` } }); // prettier-ignore
  const headers = new Headers(copy.headers);
  headers.set('Content-Range', `bytes ${from}-${to}/${whole.size}`);
  headers.set('Content-Length', String(to - from + 1));
  return new Response(whole.slice(from, to + 1), { status: 206, headers });
}

/** Keeps all sounds of the build that stands, one after the other, and lets go of others. Tells whether all are here. */
async function keepSounds() {
  const { sounds } = await standing(true);
  const cache = await caches.open(HEARD);
  for (const { url } of await cache.keys())
    if (!Object.hasOwn(sounds, new URL(url).pathname.slice(root.pathname.length))) await cache.delete(url);
  try {
    for (const [path, hash] of Object.entries(sounds)) await keepFile(cache, [], addressOf(path), hash);
    return true;
  } catch {
    return false;
  }
}

/** Whether the machine that serves the board sends live numbers; asked here, since a page that asks in vain complains. */
async function hasDesk() {
  try {
    const { headers } = await fetch(addressOf('barn/'), { method: 'HEAD', cache: 'no-store' });
    return headers.get('Pailside-Live') === 'yes';
  } catch {
    return false;
  }
}

// What the site's two workers share: files kept pressed, each with the hash that says whose build it is of.
// It is put in front of each worker when the site is built.

/** The first 16 hex digits of the SHA-256 of some bytes. */
async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What was kept, as it was before it was pressed. */
function unpressed(found) {
  return new Response(found.body.pipeThrough(new DecompressionStream('gzip')), found);
}

/** A kept file if its very bytes are those of the hash; what a power cut has spoilt is as good as not there. */
async function soundCopy(cache, url, hash) {
  const found = await cache.match(url);
  if (found?.headers.get('Kept-Hash') !== hash) return null;
  try {
    const bytes = await unpressed(found).arrayBuffer();
    if ((await hashOf(bytes)) !== hash) return null;
    return new Response(bytes, { status: found.status, headers: found.headers });
  } catch {
    return null;
  }
}

/** Keeps a file: left as it is, taken over from another cache, or fetched. A file of another build throws. */
async function keepFile(cache, others, url, hash) {
  if (await soundCopy(cache, url, hash)) return;
  for (const name of others) {
    const other = await caches.open(name);
    if (await soundCopy(other, url, hash)) return cache.put(url, await other.match(url));
  }
  const response = await fetch(url, { cache: 'no-cache' });
  const bytes = await response.arrayBuffer();
  if (!response.ok || (await hashOf(bytes)) !== hash)
    throw new Error(`${url.pathname} is not of this build.`);
  const headers = new Headers(response.headers);
  for (const name of ['Content-Encoding', 'Content-Length']) headers.delete(name);
  headers.set('Kept-Hash', hash);
  // Kept pressed: a fifth of the room on a telephone.
  const pressed = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return cache.put(url, new Response(pressed, { headers }));
}

/** Keeps all files of a list (path: hash), four at a time; the first that fails ends it all. */
async function keepFiles(cache, others, list, root) {
  const paths = Object.keys(list);
  const some = async () => {
    for (let path = paths.pop(); path !== undefined; path = paths.pop())
      await keepFile(cache, others, new URL(path, root), list[path]);
  };
  try {
    await Promise.all([some(), some(), some(), some()]);
  } catch (error) {
    paths.length = 0;
    throw error;
  }
}

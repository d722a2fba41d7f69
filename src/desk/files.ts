// Which file answers an address, so that no address leads out of its folder.
import { lstatSync, realpathSync, statSync, type Stats } from 'node:fs';
import { join, sep } from 'node:path';

/** What an address leads to inside a folder. */
export type Found = { kind: 'file'; path: string; stats: Stats } | { kind: 'folder' } | { kind: 'none' };

/**
 * Looks an address's path (still percent-encoded, from its first `/`) up in a folder. Names that
 * begin with a dot are ours and not shown; a link that leads out of the folder leads to nothing.
 */
export function findFile(folder: string, address: string): Found {
  const names = namesIn(address);
  if (names === null) return { kind: 'none' };
  const path = join(folder, ...names);
  const stats = insideStats(folder, path);
  if (stats === null) return { kind: 'none' };
  if (stats.isDirectory()) {
    if (!address.endsWith('/')) return { kind: 'folder' };
    const index = join(path, 'index.html');
    const indexStats = insideStats(folder, index);
    return indexStats?.isFile() ? { kind: 'file', path: index, stats: indexStats } : { kind: 'none' };
  }
  if (!stats.isFile() || address.endsWith('/')) return { kind: 'none' };
  return { kind: 'file', path, stats };
}

/** The names between the slashes, decoded once; null where one of them is no plain name. */
function namesIn(address: string): string[] | null {
  if (!address.startsWith('/')) return null;
  const encoded = address.slice(1).split('/');
  if (encoded.at(-1) === '') encoded.pop();
  const names: string[] = [];
  for (const one of encoded) {
    const name = decoded(one);
    if (name === null || name === '' || name.startsWith('.') || /[/\\\0]/.test(name)) return null;
    names.push(name);
  }
  return names;
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

function insideStats(folder: string, path: string): Stats | null {
  try {
    const home = realpathSync(folder);
    const real = realpathSync(path);
    if (real !== home && !real.startsWith(home + sep)) return null;
    return statSync(real);
  } catch {
    return null;
  }
}

/** Whether a folder is there at all: for a moment in a swap it is not. */
export function isThere(folder: string): boolean {
  return lstatSync(folder, { throwIfNoEntry: false }) !== undefined;
}

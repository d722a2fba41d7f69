// Notices that files have changed, by the system's own word where it gives one, and by looking now and then.
import { readdirSync, statSync, watch, type FSWatcher } from 'node:fs';
import { join, sep } from 'node:path';
import { DESK_FOLDER } from '../build/fingerprint.ts';

/** How soon and how often a folder is looked at. */
export interface Watching {
  /** Quiet after the last sign of a change, ms: a file is seldom written in one go. */
  readonly settle_ms: number;
  /** Between two looks of our own, ms: folders on another machine send no signs, nor does a file that was replaced twice. */
  readonly look_ms: number;
}

/**
 * Calls `changed` some time after a file below a folder has changed. The folder `besides` in it does not count: in a
 * farm folder what the desk keeps there for itself. Returns what ends the watch.
 */
export function watchFolder(
  dir: string,
  { settle_ms, look_ms }: Watching,
  changed: () => void,
  besides = DESK_FOLDER,
): () => void {
  const isSeen = (name: string) => !`${name}${sep}`.startsWith(`${besides}${sep}`);
  let settling: NodeJS.Timeout | undefined;
  let seen = signature(dir, isSeen);
  const sign = () => {
    clearTimeout(settling);
    settling = setTimeout(() => {
      seen = signature(dir, isSeen);
      changed();
    }, settle_ms);
    settling.unref();
  };
  const watcher = systemWatch(dir, (name) => {
    if (name === null || isSeen(name)) sign();
  });
  const looking = setInterval(() => {
    if (signature(dir, isSeen) !== seen) sign();
  }, look_ms);
  looking.unref();
  return () => {
    watcher?.close();
    clearInterval(looking);
    clearTimeout(settling);
  };
}

/** Null where the system watches no more folders, or never does; then only looking is left. */
function systemWatch(dir: string, sign: (name: string | null) => void): FSWatcher | null {
  try {
    const watcher = watch(dir, { recursive: true, persistent: false }, (_, name) => sign(name));
    watcher.on('error', () => watcher.close());
    return watcher;
  } catch {
    return null;
  }
}

/** Names, sizes and times of all files below a folder. */
function signature(dir: string, isSeen: (name: string) => boolean): string {
  try {
    const names = readdirSync(dir, { recursive: true, encoding: 'utf8' }).filter(isSeen).sort();
    return names.map((name) => fileMark(join(dir, name))).join('\n');
  } catch {
    return '';
  }
}

function fileMark(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats?.isFile() ? `${path} ${stats.size} ${stats.mtimeMs}` : path;
}

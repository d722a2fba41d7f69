// Notices that files have changed, by the system's own word where it gives one, and by looking now and then.
import { readdirSync, statSync, watch, type FSWatcher } from 'node:fs';
import { join } from 'node:path';

/** How soon and how often a folder is looked at. */
export interface Watching {
  /** Quiet after the last sign of a change, ms: a file is seldom written in one go. */
  readonly settle_ms: number;
  /** Between two looks of our own, ms: folders on another machine send no signs. */
  readonly look_ms: number;
}

/** Calls `changed` some time after a file below a folder has changed. Returns what ends the watch. */
export function watchFolder(dir: string, { settle_ms, look_ms }: Watching, changed: () => void): () => void {
  let settling: NodeJS.Timeout | undefined;
  let seen = signature(dir);
  const sign = () => {
    clearTimeout(settling);
    settling = setTimeout(() => {
      seen = signature(dir);
      changed();
    }, settle_ms);
    settling.unref();
  };
  const watcher = systemWatch(dir, sign);
  const looking = setInterval(() => {
    if (signature(dir) !== seen) sign();
  }, look_ms);
  looking.unref();
  return () => {
    watcher?.close();
    clearInterval(looking);
    clearTimeout(settling);
  };
}

/** Null where the system watches no more folders, or never does; then only looking is left. */
function systemWatch(dir: string, sign: () => void): FSWatcher | null {
  try {
    const watcher = watch(dir, { recursive: true, persistent: false }, sign);
    watcher.on('error', () => watcher.close());
    return watcher;
  } catch {
    return null;
  }
}

/** Names, sizes and times of all files below a folder. */
function signature(dir: string): string {
  try {
    const names = readdirSync(dir, { recursive: true, encoding: 'utf8' }).sort();
    return names.map((name) => fileMark(join(dir, name))).join('\n');
  } catch {
    return '';
  }
}

function fileMark(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats?.isFile() ? `${path} ${stats.size} ${stats.mtimeMs}` : path;
}

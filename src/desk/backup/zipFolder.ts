// A whole folder as one zip file, with the sum of every file in it, and the way back.
import { createHash } from 'node:crypto';
import { open, readdir, readFile, realpath, stat, type FileHandle } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { unzipSync, Zip, ZipDeflate, ZipPassThrough } from 'fflate';

/** The list of sums within a copy, as `sha256sum -c` reads it. */
const SUMS_FILE = '.sha256sums';
/** The lock of the milk book's one writer, in the desk's folder. */
export const WRITER_LOCK = '.writing';
// What version control keeps is not the farm's book, and would double each copy; a writer's lock is of its moment alone.
const LEFT_OUT = new Set(['.git', WRITER_LOCK, SUMS_FILE]);

const PIECE_bytes = 65_536;
// Pictures and sounds are pressed already, and folders are empty.
const isPressed = (name: string) => /\/$|\.(avif|gif|gz|heic|jpe?g|m4a|mp[34]|og[ag]|opus|pdf|png|web[mp]|xlsx|zip)$/i.test(name); // prettier-ignore

/** Whether a name within the farm folder has no place in a copy. A restore carries such files over. */
export const isLeftOut = (name: string): boolean => LEFT_OUT.has(name);

/** A file or a folder (its path ends in `/`) below a root, with slashes between. */
type Entry = string;

/** Everything below a folder but what is left out. Links are followed: what they lead to is what would be lost. */
async function entriesIn(folder: string, below = '', within: readonly string[] = []): Promise<Entry[]> {
  const here = await realpath(folder);
  // A link to a folder above leads round in a circle.
  if (within.includes(here)) return [];
  const entries: Entry[] = [];
  for (const name of (await readdir(folder)).sort()) {
    if (isLeftOut(name)) continue;
    const path = join(folder, name);
    // A link to nothing, or a file that has gone this moment.
    const found = await stat(path).catch(() => null);
    if (found?.isDirectory()) {
      entries.push(`${below}${name}/`, ...(await entriesIn(path, `${below}${name}/`, [...within, here])));
    } else if (found?.isFile()) entries.push(`${below}${name}`);
  }
  return entries;
}

/**
 * Writes a folder as a zip into a new file and onto the disk, file by file, so that the desk goes on answering meanwhile.
 * Throws where a file cannot be read or the disk does not take it; what was written by then is the caller's to remove.
 */
export async function zipFolder(folder: string, target: string, now_ms: number): Promise<void> {
  const file = await open(target, 'wx', 0o600);
  try {
    await writeZip(folder, file, zipTime(now_ms));
    await file.sync();
  } finally {
    await file.close();
  }
}

async function writeZip(folder: string, file: FileHandle, mtime: Date): Promise<void> {
  let chunks: Uint8Array[] = [];
  let failed: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error) failed = error;
    else chunks.push(chunk);
  });
  const flush = async () => {
    if (failed) throw failed;
    const bytes = Buffer.concat(chunks);
    chunks = [];
    await file.appendFile(bytes);
  };
  const add = async (name: string, bytes: Uint8Array) => {
    const entry = isPressed(name) ? new ZipPassThrough(name) : new ZipDeflate(name, { level: 6 });
    entry.mtime = mtime;
    // Said to come from Unix: some programs read letters beyond ASCII wrongly in what comes from DOS.
    entry.os = 3;
    entry.attrs = (name.endsWith('/') ? 0o40755 : 0o100644) * 0x10000;
    zip.add(entry);
    // Pressing is work: between two pieces others have their turn.
    for (let from = 0; from === 0 || from < bytes.length; from += PIECE_bytes) {
      entry.push(bytes.subarray(from, from + PIECE_bytes), from + PIECE_bytes >= bytes.length);
      await flush();
      await turn();
    }
  };
  const sums: string[] = [];
  for (const entry of await entriesIn(folder)) {
    const bytes = entry.endsWith('/') ? new Uint8Array() : await readFile(join(folder, entry));
    if (!entry.endsWith('/')) sums.push(`${sumOf(bytes)}  ${entry}\n`);
    await add(entry, bytes);
  }
  await add(SUMS_FILE, Buffer.from(sums.join('')));
  zip.end();
  await flush();
}

/** A zip file that has been read and found whole. */
export interface CheckedZip {
  /** Folders, each before what lies in it; their paths end in `/`. */
  readonly folders: readonly string[];
  readonly files: readonly string[];
  read(file: string): Uint8Array;
}

/** Thrown where a copy is not what it was when it was made. */
export class DamagedCopy extends Error {}

/** Reads a copy and holds every file in it against its sum. Throws DamagedCopy where one does not fit. */
export async function checkZip(path: string): Promise<CheckedZip> {
  const bytes = await readFile(path);
  const names: string[] = [];
  const read = (name: string): Uint8Array => {
    const found = attempt(() => unzipSync(bytes, { filter: (entry) => entry.name === name }))[name];
    if (!found) throw new DamagedCopy(`${name} is missing in it`);
    return found;
  };
  attempt(() => unzipSync(bytes, { filter: ({ name }) => names.push(name) < 0 }));
  const odd = names.find((name) => !isInside(name));
  if (odd !== undefined) throw new DamagedCopy(`${JSON.stringify(odd)} would lie outside of the folder`);
  const sums = new Map(Buffer.from(read(SUMS_FILE)).toString('utf8').split('\n').filter(Boolean).map((line) => [line.slice(66), line.slice(0, 64)])); // prettier-ignore
  const files = names.filter((name) => !name.endsWith('/') && name !== SUMS_FILE);
  if (files.length !== sums.size) throw new DamagedCopy('a file is missing in it, or there is one too many');
  for (const file of files) {
    if (sumOf(read(file)) !== sums.get(file)) throw new DamagedCopy(`${file} is damaged in it`);
    // Other requests have their turn between two files.
    await turn();
  }
  return { folders: names.filter((name) => name.endsWith('/')), files, read };
}

function attempt<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw new DamagedCopy(error instanceof Error ? error.message : String(error));
  }
}

const isInside = (name: string) =>
  !/[\\\0:]/.test(name) && name.replace(/\/$/, '').split('/').every((part) => part !== '' && part !== '.' && part !== '..'); // prettier-ignore

const sumOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** A time that a zip can hold: its years go from 1980 to 2099. */
function zipTime(now_ms: number): Date {
  return new Date(Math.min(Math.max(now_ms, Date.UTC(1980, 0, 2)), Date.UTC(2099, 11, 30)));
}

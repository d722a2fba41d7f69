// Gives every text of the Barn board its sound, once the pages stand: the farm's own recording, else the voice of this machine.
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'; // prettier-ignore
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { counted } from '../farm/fault.ts';
import { NOTED, SAID } from './soundLines.ts';
import { readRecordings, type Recording, type Recordings } from './soundOwn.ts';
import { fillRecordingsPages } from './soundPage.ts';
import { spelledFor } from './soundSpelling.ts';
import { soundTexts, type SoundText } from './soundTexts.ts';
import { findSpeaker, type Speaker, type Voice } from './soundVoice.ts';

/** Where the sounds lie in a built site, and beside them one list for each language. */
export const SOUND_FOLDER = 'barn/sound';
/** What making the sounds takes from outside. */
export interface SoundWorld {
  readonly dist: string;
  readonly farm: string;
  /** What was spoken before, so that only new texts are spoken. */
  readonly cache: string;
  readonly speaker: Speaker | null;
  /** Why there is no speaker. */
  readonly whySilent: string;
  readonly now_ms: () => number;
}

/** How it went: lines for the person who builds, and what that person should look at. */
export interface SoundReport {
  readonly said: readonly string[];
  readonly notes: readonly string[];
}

const AT_ONCE = 2;
const KEPT_ms = 90 * 24 * 60 * 60 * 1000;
const TEXTS_FILE = 'texts.json';
const MISSING = 'espeak-ng is not installed (on Debian: apt-get install espeak-ng opus-tools)';

/** The step of the site's build. */
export function sound() {
  return {
    name: 'sound',
    hooks: {
      'astro:build:done': async ({ dir }: { readonly dir: URL }): Promise<void> => {
        const report = await makeSounds({
          dist: fileURLToPath(dir),
          farm: resolve(process.env['FARM_DIR'] || 'content/farm'),
          cache: resolve('.pailside/sound'),
          speaker: await findSpeaker(process.env),
          whySilent: process.env['PAILSIDE_SILENT'] ? 'PAILSIDE_SILENT is set' : MISSING,
          now_ms: () => Date.now(),
        });
        for (const line of report.said) console.log(`${SAID}${line}`);
        for (const line of report.notes) console.log(`${NOTED}${line}`);
      },
    },
  };
}

/** Puts the sounds and their lists into a built site. What fails is told, and that text stays silent. */
export async function makeSounds(world: SoundWorld): Promise<SoundReport> {
  const { dist, cache } = world;
  const start_ms = world.now_ms();
  const { texts, clashes } = soundTexts(dist);
  mkdirSync(cache, { recursive: true });
  const recordings = readRecordings(world.farm, texts, remember(cache, texts));
  const own = new Map(recordings.found.map((one) => [`${one.lang} ${one.key}`, one]));
  const silent = texts.filter((one) => !own.has(`${one.lang} ${one.key}`));
  const spoken = await speakAll(silent, recordings, world);
  const bytes = place(world, texts, own, spoken.files);
  fillRecordingsPages(dist, texts, new Set(own.keys()));
  prune(cache, world.now_ms());
  const took_s = (world.now_ms() - start_ms) / 1000;
  return {
    said: tell(world, { texts, own: own.size, spoken, bytes, took_s }),
    notes: [
      ...recordings.notices,
      ...clashes.map((text) => `"${text}" stays silent: another text has the same key. Change a word of it.`),
      ...tellFailures(spoken.failed),
    ],
  };
}

interface Spoken {
  /** Files in the cache by `lang key`. */
  readonly files: ReadonlyMap<string, string>;
  /** How many had to be spoken now. */
  readonly fresh: number;
  readonly failed: readonly { readonly text: string; readonly why: string }[];
  /** Languages without a voice on this machine. */
  readonly mute: readonly string[];
}

/** Speaks what is not in the cache, some at once. */
async function speakAll(texts: readonly SoundText[], { sayAs }: Recordings, world: SoundWorld): Promise<Spoken> {
  const files = new Map<string, string>();
  const failed: { text: string; why: string }[] = [];
  const jobs: { text: SoundText; words: string; voice: Voice; file: string }[] = [];
  const voices = new Map([...new Set(texts.map(({ lang }) => lang))].map((lang) => [lang, world.speaker?.voiceOf(lang) ?? null])); // prettier-ignore
  for (const text of texts) {
    const voice = voices.get(text.lang) ?? null;
    if (voice === null) continue;
    const words = spelledFor(text.lang, text.text, sayAs[text.lang]);
    const file = join(world.cache, `${hashOf(`${voice.manner}\n${words}`)}.${voice.end}`);
    if (existsSync(file)) files.set(`${text.lang} ${text.key}`, file);
    else jobs.push({ text, words, voice, file });
  }
  const fresh = jobs.length;
  const one = async () => {
    for (let job = jobs.pop(); job !== undefined; job = jobs.pop()) {
      // Written aside and renamed: whoever is stopped in between leaves no half of a sound behind. Named by its text as
      // well, since two texts that are said alike may be spoken at the same moment.
      const part = `${job.file}.${job.text.key}.${process.pid}`;
      try {
        // Another build, or another text that is said alike, may have brought it meanwhile.
        if (!existsSync(job.file)) {
          await job.voice.speak(job.words, part);
          renameSync(part, job.file);
        }
        files.set(`${job.text.lang} ${job.text.key}`, job.file);
      } catch (error) {
        rmSync(part, { force: true });
        failed.push({ text: job.text.text, why: error instanceof Error ? error.message : String(error) });
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  const mute = [...voices].filter(([, voice]) => voice === null).map(([lang]) => lang);
  return { files, fresh: fresh - failed.length, failed, mute };
} // prettier-ignore

/** Copies the sounds into the site and writes the lists; gives the bytes of the sounds. */
function place(
  { dist, now_ms }: SoundWorld,
  texts: readonly SoundText[],
  own: ReadonlyMap<string, Recording>,
  spoken: ReadonlyMap<string, string>,
): number {
  const folder = join(dist, SOUND_FOLDER);
  const lists: Record<string, Record<string, string[]>> = {};
  const now_s = now_ms() / 1000;
  let bytes = 0;
  rmSync(folder, { recursive: true, force: true });
  for (const { lang, key } of texts) {
    const list = (lists[lang] ??= {});
    const recording = own.get(`${lang} ${key}`);
    const from = recording?.file ?? spoken.get(`${lang} ${key}`);
    if (from === undefined) continue;
    const end = recording?.end ?? from.slice(from.lastIndexOf('.') + 1);
    const name = recording ? `${key}-${recording.stamp}` : key;
    const to = join(folder, lang, `${name}.${end}`);
    mkdirSync(dirname(to), { recursive: true });
    copyFileSync(from, to);
    bytes += statSync(to).size;
    // What is in use is not thrown out of the cache.
    if (!recording) utimesSync(from, now_s, now_s);
    (list[end] ??= []).push(name);
  }
  mkdirSync(folder, { recursive: true });
  for (const [lang, list] of Object.entries(lists)) {
    const ends = Object.entries(list).map(([end, names]) => [end, names.sort().join(' ')] as const);
    writeFileSync(join(folder, `${lang}.json`), JSON.stringify(Object.fromEntries(ends)));
  }
  return bytes;
}

type Known = Record<string, Record<string, string>>;

/** Adds these texts to what keys have stood for so far, so that a recording out of date can be told by its text. */
function remember(cache: string, texts: readonly SoundText[]): Known {
  const file = join(cache, TEXTS_FILE);
  let known: Known = {};
  try {
    known = JSON.parse(readFileSync(file, 'utf8')) as Known;
  } catch {
    // None yet, or torn: it only helps to name things.
  }
  for (const { lang, key, text } of texts) (known[lang] ??= {})[key] = text;
  writeFileSync(`${file}.${process.pid}`, JSON.stringify(known));
  renameSync(`${file}.${process.pid}`, file);
  return known;
}

/** Throws sounds out that no build has used for a quarter of a year. */
function prune(cache: string, now_ms: number): void {
  for (const name of readdirSync(cache)) {
    const file = join(cache, name);
    const stats = statSync(file, { throwIfNoEntry: false });
    if (name !== TEXTS_FILE && stats && now_ms - stats.mtimeMs > KEPT_ms) rmSync(file, { force: true });
  }
}

const hashOf = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 24);

function tell(
  { speaker, whySilent }: SoundWorld,
  { texts, own, spoken, bytes, took_s }: { texts: readonly SoundText[]; own: number; spoken: Spoken; bytes: number; took_s: number }, // prettier-ignore
): string[] {
  if (texts.length === 0) return [];
  if (speaker === null)
    return own === 0
      ? [`the board stays silent and shows no Listen button: ${whySilent}.`]
      : [`the board has ${counted(own, 'recording')} of the farm and no other voice: ${whySilent}.`];
  const size = `${Math.max(1, Math.round(bytes / 1e6))} MB`;
  const recorded = own === 0 ? '' : `, ${own} of them recorded by the farm`;
  const lines = [`${counted(spoken.files.size + own, 'text')} of the board can be heard${recorded}; ${spoken.fresh} spoken anew; ${size} (${took_s.toFixed(1)} s)`]; // prettier-ignore
  if (speaker.packedBy === null)
    lines.push(`there is nothing here to pack the sounds with, so they take ${size}, some ten times of what they need (on Debian: apt-get install opus-tools).`); // prettier-ignore
  for (const lang of spoken.mute) lines.push(`espeak-ng has no voice for the language "${lang}".`);
  return lines;
}

const SHOWN_FAILURES = 3;
function tellFailures(failed: Spoken['failed']): string[] {
  const shown = failed.slice(0, SHOWN_FAILURES).map(({ text, why }) => `"${text}" could not be spoken and stays silent: ${why}`); // prettier-ignore
  const rest = failed.length - shown.length;
  return rest > 0 ? [...shown, `${counted(rest, 'more text')} could not be spoken.`] : shown;
}

// The farm's own recordings: which text each one is of, and which belong to no text any more.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { SOUND_KEY_LENGTH, SOUND_TYPES } from '../../shared/board/soundKey.ts';
import type { SayAs } from './soundSpelling.ts';
import type { SoundText } from './soundTexts.ts';

/** The folder of recordings in a farm folder. */
export const RECORDINGS_FOLDER = 'recordings';
/** In a language's folder: how the voice shall say a name or a word, one a line. */
export const SAY_AS_FILE = 'say-as.txt';

/** A recording of a text of the board. */
export interface Recording {
  readonly lang: string;
  readonly key: string;
  /** Where it lies. */
  readonly file: string;
  readonly end: string;
  /** Changes with what is in the file. */
  readonly stamp: string;
}

/** A folder of recordings as it was found. */
export interface Recordings {
  readonly found: readonly Recording[];
  readonly sayAs: Readonly<Record<string, SayAs>>;
  /** What a person should know of: a recording out of date, a name that cannot be read. */
  readonly notices: readonly string[];
}

const NAME = new RegExp(`(?:^|[.])([a-z0-9]{${SOUND_KEY_LENGTH}})[.]([a-z0-9]+)$`, 'i');

/**
 * Reads `recordings/<lang>/<anything>.<key>.<end>` of a farm folder. `knownAs` is what each key stood for in builds
 * before this one, by language.
 */
export function readRecordings(
  farm: string,
  texts: readonly SoundText[],
  knownAs: Readonly<Record<string, Readonly<Record<string, string>>>>,
): Recordings {
  const folder = join(farm, RECORDINGS_FOLDER);
  const found = new Map<string, Recording>();
  const notices: string[] = [];
  const sayAs: Record<string, SayAs> = {};
  const langs = new Set(texts.map(({ lang }) => lang));
  for (const lang of namesIn(folder)) {
    if (!statSync(join(folder, lang)).isDirectory()) {
      if (isOfUse(lang)) notices.push(`${RECORDINGS_FOLDER}/${lang} is in no folder of a language (${[...langs].join(', ')}): it is not used.`); // prettier-ignore
      continue;
    }
    const own = texts.filter((one) => one.lang === lang);
    const keys = new Map(own.map((one) => [one.key, one]));
    for (const name of namesIn(join(folder, lang)).filter(isOfUse)) {
      const file = join(folder, lang, name);
      const place = `${RECORDINGS_FOLDER}/${lang}/${name}`;
      if (name === SAY_AS_FILE) {
        sayAs[lang] = readSayAs(readFileSync(file, 'utf8'));
        continue;
      }
      const [, key = '', end = ''] = NAME.exec(name.toLowerCase()) ?? [];
      if (SOUND_TYPES[end] === undefined || key === '') notices.push(wrongName(place));
      else if (!keys.has(key)) notices.push(outOfDate(place, own, knownAs[lang]?.[key] ?? labelOf(name)));
      else if (found.has(`${lang} ${key}`))
        notices.push(`${place} is a second recording of one text: it is not used.`); // prettier-ignore
      else found.set(`${lang} ${key}`, { lang, key, file, end, stamp: stampOf(file) });
    }
  }
  return { found: [...found.values()], sayAs, notices };
}

const namesIn = (folder: string) => (existsSync(folder) ? readdirSync(folder).sort() : []);
// What an operating system leaves lying about, and a word to whoever opens the folder.
const isOfUse = (name: string) => !/^(?:\.|~|Thumbs\.db$|desktop\.ini$|README)/i.test(name);
const stampOf = (file: string) => createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 6);
const labelOf = (name: string) =>
  name
    .replace(NAME, '')
    .replace(/[-_.]+/g, ' ')
    .trim();

const wrongName = (place: string) =>
  `${place}: its name should end in the key of its text, a point, and one of ${Object.keys(SOUND_TYPES).join(', ')}. The page /${RECORDINGS_FOLDER}/ of the site lists every text with its key.`;

function outOfDate(place: string, texts: readonly SoundText[], wasSaid: string): string {
  const near = nearestText(wasSaid, texts);
  const now = near === null ? '' : ` Nearest to it is now "${near.text}" (key ${near.key}).`;
  return `${place} is out of date: the board has no such text any more${wasSaid === '' ? '' : ` ("${wasSaid}")`}.${now}`;
}

/** The text that shares most words with another, by Dice's measure (twice what is shared, over all words of both); null where it is less than a third. */
export function nearestText(text: string, texts: readonly SoundText[]): SoundText | null {
  const wanted = wordsIn(text);
  let best: { text: SoundText; share: number } | null = null;
  for (const one of texts) {
    const words = wordsIn(one.text);
    const shared = [...words].filter((word) => wanted.has(word)).length;
    const share = (2 * shared) / Math.max(1, words.size + wanted.size);
    if (share >= 1 / 3 && (best === null || share > best.share)) best = { text: one, share };
  }
  return best?.text ?? null;
}

const wordsIn = (text: string) => new Set(text.toLowerCase().match(/[\p{L}\d]+/gu) ?? []);

/** Lines such as `Wren = Ren`: the word as it is written, and as the voice shall read it. */
function readSayAs(text: string): SayAs {
  const pairs = text.split('\n').flatMap((line) => {
    const [, word, said] = /^\s*(\p{L}[^=]*?)\s*=\s*(\S.*?)\s*$/u.exec(line) ?? [];
    return word !== undefined && said !== undefined ? [[word, said] as const] : [];
  });
  return new Map(pairs);
}

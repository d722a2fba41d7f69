// The farm as every page sees it: read once, computed once, the same for all.
import { resolve } from 'node:path';
import { isoDate } from '../../shared/calendar/day.ts';
import { figuresOf, type FiguresFile } from '../../shared/herd/figures.ts';
import { openLedger, type Ledger } from '../../shared/herd/ledger.ts';
import type { Book, Farm } from '../../shared/herd/types.ts';
import { weekView, type WeekView } from '../../shared/herd/week.ts';
import { UNIT_ML } from '../../shared/quantity/units.ts';
import { takenSpans, type TakenSpan } from '../../shared/trip/visits/taken.ts';
import { servedLanguages } from '../content/languages.ts';
import { readFarm, type Notice } from '../farm/readFarm.ts';
import { tellFaults } from '../farm/tell.ts';
import { VISITS_FOLDER } from '../farm/visitFiles.ts';
import { knownLanguages } from './words.ts';

export { wordsOf, wordsUnder } from './words.ts';

/** What pages load. */
export interface Site {
  readonly farm: Farm;
  readonly book: Book;
  readonly ledger: Ledger;
  readonly figures: FiguresFile;
  readonly week: WeekView;
  /** The day that `asOf` or `AS_OF` sets, ISO; null where the clock does. */
  readonly fixedDay: string | null;
  /** Volume of the farm's jar, mL. */
  readonly jar_mL: number;
  readonly notices: readonly Notice[];
  /** When other groups are here. Pages know no more of a visit: the built site may be read by anybody. */
  readonly taken: readonly TakenSpan[];
  /** The farm's languages that we have words in, its first one first. */
  readonly languages: readonly string[];
}

let opened: Site | null = null;

/** Reads the farm folder of `FARM_DIR` (the demo farm without one) for `AS_OF`. Throws the whole list of faults. */
export function openSite(): Site {
  if (opened) return opened;
  const dir = resolve(process.env['FARM_DIR'] || 'content/farm');
  const reading = readFarm(dir, { asOf: process.env['AS_OF'], now_ms: Date.now() });
  if (!reading.ok) throw new Error(tellFaults(reading.faults, dir));
  const { farm, book, visits, asOf, asOfFrom, notices } = reading;
  const ledger = openLedger(book, asOf);
  const known = knownLanguages();
  const { served, without } = servedLanguages(farm.languages, known);
  opened = {
    farm,
    book,
    ledger,
    figures: figuresOf(book, ledger),
    week: weekView(book, ledger),
    fixedDay: asOfFrom === 'clock' ? null : isoDate(asOf),
    jar_mL: UNIT_ML[farm.jar.unit].mul(farm.jar.size).valueOf(),
    // The name of a visit's file may tell a school, and pages show notices to anybody.
    notices: [
      ...notices.filter(({ file }) => !file?.startsWith(`${VISITS_FOLDER}/`)),
      ...languageNotices(without, known),
    ],
    taken: takenSpans(visits ?? []),
    languages: served,
  };
  return opened;
}

function languageNotices(without: readonly string[], known: readonly string[]): Notice[] {
  return without.map((lang) => ({
    file: 'farm.yaml',
    line: null,
    text: `There are no words in "${lang}" yet, so its pages are left out. There are: ${known.join(', ')}.`,
  }));
}

/** The address of a file that is the same in every language, under the base path that the site is built for. */
export function fileHref(path: string): string {
  return `${import.meta.env.BASE_URL.replace(/\/$/, '')}${path}`;
}

/** The address of a page in a language, under the base path that the site is built for. */
export function href(lang: string, path: string): string {
  const prefix = lang === openSite().languages[0] ? '' : `/${lang}`;
  return fileHref(`${prefix}${path}`);
}

/** The site's other language, where it has one. */
export function otherThan(lang: string): string | undefined {
  return openSite().languages.find((one) => one !== lang);
}

/** One route a language for pages under `src/pages/[...lang]/`; the first language stands at `/`. */
export function langPaths(): { params: { lang: string | undefined }; props: { lang: string } }[] {
  return openSite().languages.map((lang, index) => ({
    params: { lang: index === 0 ? undefined : lang },
    props: { lang },
  }));
}

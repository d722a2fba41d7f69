// What the print room's page hands to the browser, and how another language is fetched when a pack is ordered in it.
import type { Shelf } from '../../../shared/pack/order.ts';
import type { SheetStem } from '../../../shared/pack/findCode.ts';
import type { SheetFront } from '../../../shared/sheet/plan.ts';
import type { EarlierWeeks, SheetSource } from '../../../shared/tasks/context.ts';
import type { Words } from '../../../shared/words/words.ts';

/** A language that sheets are printed in: its words, and title and texts of each sheet by name. */
export interface Tongue {
  readonly words: Words;
  readonly fronts: Readonly<Record<string, SheetFront>>;
}

/** Where a language is to be found: its own name, its print room, and the file with its tongue. */
export interface TonguePlace {
  readonly lang: string;
  readonly name: string;
  readonly room: string;
  readonly file: string;
}

/** Everything that the print room works with, as plain JSON. */
export interface RoomProps {
  readonly lang: string;
  readonly farm: string;
  readonly shelf: Shelf;
  /** The words of the room itself. */
  readonly words: Words;
  /** The language of the page, for sheets. */
  readonly tongue: Tongue;
  readonly tongues: readonly TonguePlace[];
  readonly source: Omit<SheetSource, 'earlier'>;
  readonly earlier: Readonly<Record<string, EarlierWeeks>>;
  /** Names of the kinds of tasks of each sheet. */
  readonly tasks: Readonly<Record<string, readonly string[]>>;
  /** Addresses of other pages: the front page, all sheets, and each sheet's own page by name. */
  readonly front: string;
  readonly all: string;
  readonly pages: Readonly<Record<string, string>>;
  /** Where the farm's own machine prints, if the page is served by it. */
  readonly pdf: string;
  readonly pdfState: string;
}

/** Every sheet of the shelf, ready to be made for a grade and a seed. */
export function stemsOf({ shelf, source, earlier, tasks }: RoomProps): readonly SheetStem[] {
  return shelf.sheets.map(({ name, band }) => ({
    ...source,
    earlier: earlier[band],
    name,
    band,
    tasks: tasks[name] ?? [],
  }));
}

/** The tongue of a language: the page's own, or fetched once from the site. Throws where it cannot be had. */
export function tongueReader(props: RoomProps): (lang: string) => Promise<Tongue> {
  const known = new Map<string, Promise<Tongue>>([[props.lang, Promise.resolve(props.tongue)]]);
  return (lang) => {
    const place = props.tongues.find((one) => one.lang === lang);
    const fetched = known.get(lang) ?? fetchTongue(place?.file ?? '');
    known.set(lang, fetched);
    // What failed may work the next time.
    fetched.catch(() => known.delete(lang));
    return fetched;
  };
}

async function fetchTongue(file: string): Promise<Tongue> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`${file} answered ${answer.status}.`);
  return (await answer.json()) as Tongue;
}

// Keeps the herd's tables: reads them for the page, and writes one change at a time.
import { join } from 'node:path';
import {
  HERD_COLUMNS,
  type HerdAnswer,
  type HerdBook,
  type HerdFile,
  type HerdPost,
  type SpokenMilking,
} from '../../../shared/book/herdBook.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import { standingRows } from '../../../shared/herd/standing.ts';
import { isTreated } from '../../../shared/herd/treated.ts';
import type { Book, MilkingRow } from '../../../shared/herd/types.ts';
import { decodeText } from '../../farm/encoding.ts';
import { faultAt } from '../../farm/fault.ts';
import { readBytes, writtenRows } from '../../farm/herdTables.ts';
import { readSoundParts } from '../../farm/readFarm.ts';
import { listedFaults } from '../../farm/tell.ts';
import { codeOf, thisDisk, type Disk } from './disk.ts';
import { editTable } from './editTable.ts';
import { recordChange } from './herdJournal.ts';
import { faultsWith } from './herdTrial.ts';
import { clearSide, markOfBytes, OtherTable, replaceTable } from './replaceTable.ts';

/** What the herd is read from. */
export interface HerdSource {
  /** The farm folder. */
  readonly farm: string;
  /** `AS_OF` as it was given. */
  readonly asOf?: string | undefined;
  readonly now_ms: () => number;
}

/** The herd under one writer. */
export interface HerdKeeper {
  read(): HerdBook;
  /** Makes one change, after those that were asked for before it. */
  change(post: HerdPost): Promise<HerdAnswer>;
}

const FILES = Object.keys(HERD_COLUMNS) as HerdFile[];
// Texts that pages may still have before them, so that they can be told what has changed.
const MOST_REMEMBERED = 20;
const MOST_SPOKEN = 60;
// A doe's name that is changed is missed by every row of the milk book.
const MOST_TOLD = 12;

/** Opens the herd of a farm. */
export function openHerd(source: HerdSource, disk: Disk = thisDisk, replace = replaceTable): HerdKeeper {
  const seen = new Map<string, string>();
  for (const file of FILES) clearSide(join(source.farm, file));
  let last: Promise<unknown> = Promise.resolve();
  return {
    read: () => readHerd(source, seen),
    change: (post) => {
      const answer = last.then(() => makeChange(source, post, { seen, disk, replace }));
      last = answer.catch(() => undefined);
      return answer;
    },
  };
}

function readHerd({ farm, asOf, now_ms }: HerdSource, seen: Map<string, string>): HerdBook {
  const bytes = Object.fromEntries(FILES.map((file) => [file, bytesOrNone(farm, file)])) as Record<HerdFile, Buffer | null>; // prettier-ignore
  const marks = Object.fromEntries(FILES.map((file) => [file, markOfBytes(bytes[file])])) as Record<HerdFile, string | null>; // prettier-ignore
  for (const file of FILES) remember(seen, marks[file], bytes[file]);
  const parts = readSoundParts(farm, { asOf, now_ms: now_ms() });
  return {
    today: isoDate(parts.asOf.asOf),
    milkings: parts.settings.fields.milkings ?? { am: '06:00', pm: '18:00' },
    does: writtenRows(bytes['does.csv'], 'does.csv'),
    kiddings: writtenRows(bytes['kiddings.csv'], 'kiddings.csv'),
    treatments: writtenRows(bytes['treatments.csv'], 'treatments.csv'),
    spoken: spokenIn(parts.book, parts.asOf.asOf),
    marks,
    faults: listedFaults(parts.faults),
  };
}

// A file that the system does not hand over is told of as a fault of the folder.
function bytesOrNone(farm: string, file: HerdFile): Buffer | null {
  try {
    return readBytes(farm, file);
  } catch {
    return null;
  }
}

function remember(seen: Map<string, string>, mark: string | null, bytes: Buffer | null): void {
  if (mark === null || bytes === null || seen.has(mark)) return;
  seen.set(mark, bytes.toString('utf8'));
  const [oldest] = seen.keys();
  if (seen.size > MOST_REMEMBERED * FILES.length && oldest !== undefined) seen.delete(oldest);
}

/** Milkings of treated does that stand as kept or fed: they do so only where somebody wrote it. Newest first. */
function spokenIn({ rows, treatments = [] }: Book, today: number): SpokenMilking[] {
  const isOne = ({ doe, day }: MilkingRow) => day <= today && isTreated(treatments, doe, day);
  const own = treatments.length === 0 ? [] : rows.filter(isOne);
  return standingRows(own)
    .rows.flatMap(({ doe, day, milking, use }) =>
      use === 'kept' || use === 'fed' ? [{ doe, date: isoDate(day), milking, use }] : [],
    )
    .sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))
    .slice(0, MOST_SPOKEN);
}

interface Tools {
  readonly seen: Map<string, string>;
  readonly disk: Disk;
  readonly replace: typeof replaceTable;
}

async function makeChange(source: HerdSource, { change, saw }: HerdPost, tools: Tools): Promise<HerdAnswer> {
  const { farm, asOf, now_ms } = source;
  const { file } = change;
  const read = () => readHerd(source, tools.seen);
  try {
    const bytes = readBytes(farm, file);
    const before = markOfBytes(bytes);
    if (before !== saw) return changedMeanwhile(tools.seen, saw, bytes, read());
    const decoded = bytes && decodeText(bytes);
    if (decoded?.fault)
      return { ok: false, why: 'faulty', faults: listedFaults([faultAt(file, decoded.fault.place, decoded.fault)]), herd: read() }; // prettier-ignore
    const edited = editTable(bytes && new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes), change);
    if (!edited.ok) {
      if (edited.why === 'no such row') return { ok: false, why: 'malformed' };
      return { ok: false, why: 'faulty', faults: listedFaults(edited.faults), herd: read() };
    }
    const after = Buffer.from(edited.text);
    if (bytes?.equals(after)) return { ok: true, herd: read() };
    const faults = faultsWith(farm, file, after, { asOf, now_ms: now_ms() });
    if (faults.length > 0)
      return { ok: false, why: 'faulty', faults: listedFaults(faults).slice(0, MOST_TOLD), herd: read() };
    const at = new Date(now_ms()).toISOString();
    const { old, new: line } = edited;
    await recordChange(farm, { at, file, old, new: line, before, after: markOfBytes(after) ?? '' }, tools.disk); // prettier-ignore
    tools.replace(join(farm, file), after, before);
    return { ok: true, herd: read() };
  } catch (error) {
    if (error instanceof OtherTable) return changedMeanwhile(tools.seen, saw, readBytes(farm, file), read());
    const code = codeOf(error);
    if (code === '') throw error;
    return { ok: false, why: 'not written', code };
  }
}

function changedMeanwhile(
  seen: Map<string, string>,
  saw: string | null,
  bytes: Buffer | null,
  herd: HerdBook,
): HerdAnswer {
  const before = saw === null ? '' : seen.get(saw);
  if (before === undefined) return { ok: false, why: 'changed', gone: null, come: null, herd };
  const [old, now] = [linesIn(before), linesIn(bytes?.toString('utf8') ?? '')];
  return { ok: false, why: 'changed', gone: without(old, now), come: without(now, old), herd };
}

const linesIn = (text: string) => text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/).filter((line) => line !== ''); // prettier-ignore

/** The lines of one text that another does not have, each as often as it is missing. */
function without(lines: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return lines.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

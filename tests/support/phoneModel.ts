// A plain model of phones and a desk, to hold the phone's queue against.
import {
  ended, EMPTY_QUEUE, entered, laidOver, lastTurn, nextPost, sent, settled, waitingOf, type Queue, type Queued,
} from '../../shared/book/queue.ts'; // prettier-ignore
import type { BookEntry, BookRow, BookState, EntryAnswer } from '../../shared/book/types.ts';

const FARM = {
  name: 'Test',
  timeZone: 'UTC',
  units: 'us',
  recordUnit: 'cup',
  milkings: { am: '06:30', pm: '17:30' },
  jar: { size: 64, unit: 'fl oz' },
  largestMilking: { amount: 24, unit: 'cup' },
  fixedDay: null,
} as const;
export const DATE = '2026-05-14';
export const bookOf = (rows: readonly BookRow[], more: Partial<BookState> = {}): BookState => ({
  farm: FARM, today: DATE, does: [], rows, treatments: [], clashes: [], faults: null, fingerprint: '', ...more,
}); // prettier-ignore
export const entryOf = (id: string, more: Partial<BookEntry> = {}): BookEntry => ({
  id, doe: 'clover', date: DATE, milking: 'am', amount: '9', unit: 'cup', use: 'kept', note: '', sure: false,
  saw: null, entered_ms: 0, ...more,
}); // prettier-ignore
export const rowOf = (doe: string, mark: string, cups = 9): BookRow => ({
  doe, date: DATE, milking: 'am', amount: { num: cups, den: 1, unit: 'cup' }, use: 'kept', note: '', mark, corrects: 0,
}); // prettier-ignore

/** Adds an entry as the shelf does: at the end, with what it deals with. */
export function add(all: readonly Queued[], entry: BookEntry): Queued[] {
  const { added, dealt } = entered(all, entry);
  const seq = (all.at(-1)?.seq ?? 0) + 1;
  return [...put(all, dealt), { ...added, seq }];
}
export const put = (all: readonly Queued[], newer: readonly Queued[]) =>
  all.map((one) => newer.find(({ seq }) => seq === one.seq) ?? one);

/** A desk as simple as can be: it keeps rows by id, and refuses an amount of 99. */
export class PlainDesk {
  readonly rows: { id: string; entry: BookEntry; mark: string }[] = [];
  /** Entries that had not seen the row that stood. */
  readonly strangers: string[] = [];

  take(entry: BookEntry): EntryAnswer {
    const known = this.rows.find(({ id }) => id === entry.id);
    if (known) return { id: entry.id, kept: true, mark: known.mark };
    if (entry.amount === '99') return { id: entry.id, kept: false, why: 'too much' };
    const stood = this.rows.findLast((one) => one.entry.doe === entry.doe);
    if (entry.saw !== (stood?.mark ?? null)) this.strangers.push(entry.id);
    const mark = `row ${this.rows.length}`;
    this.rows.push({ id: entry.id, entry, mark });
    return { id: entry.id, kept: true, mark };
  }

  book(): BookState {
    const does = [...new Set(this.rows.map(({ entry }) => entry.doe))];
    return bookOf(
      does.map((doe) => {
        const { entry, mark } = this.rows.findLast((one) => one.entry.doe === doe) ?? fail(doe);
        return rowOf(doe, mark, Number(entry.amount));
      }),
    );
  }
}
export const fail = (what: string): never => {
  throw new Error(what);
};

/** A phone: what is on its disk outlives a crash, the rest does not. */
export class Phone {
  all: Queued[] = [];
  book: { state: BookState; turn: number } = { state: bookOf([]), turn: 0 };
  ways: Pick<Queue, 'out' | 'tries'> = EMPTY_QUEUE;
  /** Answers and books on their way, in no order. */
  air: { entries: BookEntry[]; answers: EntryAnswer[]; state: BookState; turn: number | null }[] = [];
  readonly desk: PlainDesk;

  constructor(desk: PlainDesk) {
    this.desk = desk;
  }

  shown = () => laidOver(this.book.state, this.all, this.book.turn);
  queue = (): Queue => ({ ...this.ways, all: this.all });

  enter(id: string, doe: string, amount: string): void {
    const saw = this.shown().rows.find((one) => one.doe === doe)?.mark ?? null;
    this.all = add(this.all, entryOf(id, { doe, amount, saw }));
  }

  /** Sends; `isHeard`: whether it reaches the desk. */
  send(most: number, isHeard: boolean): void {
    const entries = nextPost(this.queue(), most);
    if (entries.length === 0) return;
    this.ways = sent(this.queue(), entries);
    const answers = isHeard ? entries.map((one) => this.desk.take(one)) : [];
    this.air.push({ entries, answers, state: this.desk.book(), turn: null });
  }

  ask(): void {
    const turn = lastTurn(this.all, this.book.turn);
    this.air.push({ entries: [], answers: [], state: this.desk.book(), turn });
  }

  /** One of the answers on their way comes, or is lost. */
  hear(which: number, isLost: boolean): void {
    const [one] = this.air.splice(which % Math.max(1, this.air.length), 1);
    if (!one) return;
    const answers = isLost ? [] : one.answers;
    this.ways = ended(this.queue(), one.entries, answers);
    if (isLost) return;
    if (one.turn === null) {
      if (answers.length === 0) return;
      const turn = lastTurn(this.all, this.book.turn) + 1;
      this.all = put(this.all, settled(this.all, answers, { now_ms: 0, turn }));
      this.book = { state: one.state, turn };
    } else if (this.book.turn <= one.turn) this.book = { state: one.state, turn: one.turn };
  }

  crash(): void {
    [this.ways, this.air] = [EMPTY_QUEUE, []];
  }

  /** The network is back for good. */
  drain(): void {
    this.crash();
    for (let left = 500; waitingOf(this.queue()).length > 0; left -= 1) {
      if (left === 0) fail('The queue does not empty.');
      this.send(3, true);
      this.hear(0, false);
    }
    this.ask();
    this.hear(0, false);
  }
}

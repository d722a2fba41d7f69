// What the pad of one doe holds while it is open: an amount in the making, its use, its note, and what must be asked.
import type { DoeLine } from '../../../../shared/book/milkingLines.ts';
import { readNote, noteText, type NoteWords, type StripNote } from '../../../../shared/book/stripNote.ts';
import {
  amountOf,
  jarsAmount,
  keyed,
  keyedAmount,
  padOf,
  tapped,
  valueIn,
  writtenAmount,
  type Key,
  type Pad,
  type Value,
} from '../../../../shared/book/taps.ts';
import { judgeAmount } from '../../../../shared/book/usual.ts';
import type { BookFarm } from '../../../../shared/book/types.ts';
import type { Use } from '../../../../shared/herd/types.ts';
import type { PadDraft, PadPart, PadQuestion } from './entry.ts';

/** One open pad. */
export class PadState {
  readonly line: DoeLine;
  readonly pad: Pad;
  readonly farm: BookFarm;
  readonly noteWords: NoteWords;
  /** The mark of the row that the milker saw when she opened the pad; what comes in later she has not seen. */
  readonly saw: string | null;

  part = $state<PadPart>('taps');
  value = $state.raw<Value | null>(null);
  /** What the keys hold; null while the amount comes from elsewhere. */
  typed = $state<string | null>(null);
  /** Jars that were tapped, as shares of a full one; empty while the amount comes from elsewhere. */
  jars = $state.raw<readonly Value[]>([]);
  use = $state<Use>('kept');
  note = $state.raw<StripNote>({ findings: [], halves: [], free: '' });
  question = $state<PadQuestion | null>(null);
  /** Somebody pressed "put down" without an amount. */
  lacks = $state(false);

  #useChosen = false;
  #sureOfKept = false;
  #sureOf: Value | null = null;
  #before: string;

  constructor(line: DoeLine, farm: BookFarm, noteWords: NoteWords) {
    this.line = line;
    this.farm = farm;
    this.noteWords = noteWords;
    const { row } = line;
    // A row in another unit is mended in its own: turned over it would no longer be what was measured.
    this.pad = padOf(row?.amount.unit ?? farm.recordUnit);
    this.saw = line.clash?.amounts.at(-1)?.mark ?? row?.mark ?? null;
    if (row) {
      this.value = valueIn(row.amount);
      this.use = row.use;
      this.note = readNote(row.note, noteWords);
      this.#sureOf = this.value;
      this.#useChosen = true;
    } else this.use = line.startingUse;
    this.#before = this.#written();
  }

  #written(): string {
    return `${this.value?.toFraction() ?? ''} ${this.use} ${noteText(this.note, this.noteWords)}`;
  }

  /** Whether anything differs from what stands. */
  get isChanged(): boolean {
    return this.#written() !== this.#before || this.line.clash !== null;
  }

  set(value: Value): void {
    [this.value, this.typed, this.jars, this.lacks] = [value, null, [], false];
  }

  tap(by: Value): void {
    this.set(tapped(this.value, by));
  }

  press(key: Key): void {
    // The first key starts an amount of its own.
    this.typed = keyed(this.typed ?? '', key);
    [this.value, this.jars, this.lacks] = [keyedAmount(this.typed), [], false];
  }

  addJar(share: Value): void {
    this.#fill([...this.jars, share]);
  }

  takeJar(): void {
    this.#fill(this.jars.slice(0, -1));
  }

  #fill(jars: readonly Value[]): void {
    const value = jars.length === 0 ? null : jarsAmount(jars, this.farm.jar, this.pad);
    [this.value, this.typed, this.jars, this.lacks] = [value, null, jars, false];
  }

  /** Takes a use; kept milk of a doe under treatment is asked about first. */
  choose(use: Use): void {
    if (use === 'kept' && this.line.treated && !this.#sureOfKept) {
      this.question = 'treated';
      return;
    }
    [this.use, this.part, this.#useChosen] = [use, 'taps', true];
  }

  /** Sets a sign of the strip cup on or off. The milk of a doe who shows one is withheld until somebody says otherwise. */
  mark(note: StripNote): void {
    this.note = note;
    if (note.findings.length > 0 && this.use === 'kept' && !this.#useChosen) this.use = 'withheld';
  }

  /** What must be asked before this amount is put down; null where nothing must. */
  ask(): PadQuestion | null {
    if (this.value === null) return null;
    const verdict = judgeAmount(
      amountOf(this.value, this.pad.unit),
      this.line.usual,
      this.farm.largestMilking,
    );
    if (verdict === 'too much') return verdict;
    if (this.use === 'kept' && this.line.treated && !this.#sureOfKept) return 'treated';
    if (verdict === 'fine' || this.#sureOf?.equals(this.value)) return null;
    return verdict;
  }

  /** Somebody has answered yes to what was asked. */
  confirm(): void {
    if (this.question === 'treated') [this.#sureOfKept, this.use, this.#useChosen] = [true, 'kept', true];
    else if (this.question === 'less' || this.question === 'more') this.#sureOf = this.value;
    this.question = null;
  }

  /** Whether somebody knew that she is treated. A surprising amount is asked about on this page alone. */
  #isSure(): boolean {
    return this.use === 'kept' && this.line.treated !== null && this.#sureOfKept;
  }

  /** The draft of what the pad holds. */
  draft(): PadDraft {
    return {
      amount: this.value === null ? null : writtenAmount(this.value, this.pad),
      unit: this.pad.unit,
      use: this.use,
      note: noteText(this.note, this.noteWords),
      sure: this.#isSure(),
      saw: this.saw,
    };
  }

  /** The draft that strikes out what stands. */
  strike(): PadDraft {
    return { ...this.draft(), amount: null, note: '' };
  }
}

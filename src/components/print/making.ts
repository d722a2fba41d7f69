// Makes the copies of a pack in small steps, so that the page answers to keys and fingers meanwhile.
import { classCopies } from '../../../shared/sheet/classSet.ts';
import type { SheetStem } from '../../../shared/pack/findCode.ts';
import type { PackOrder } from '../../../shared/pack/order.ts';
import type { Sheet } from '../../../shared/sheet/sheet.ts';

/** How long one step may take before the page gets its turn, ms: less than two frames of a screen. */
const STEP_ms = 24;

/** The copies of one sheet. */
export interface CopySet {
  readonly name: string;
  readonly copies: readonly Sheet[];
}

/** How many keys a pack ends with. */
export function keysOf({ key, sheets, copies }: PackOrder): number {
  return key === 'none' ? 0 : key === 'short' ? sheets.length : sheets.length * copies;
}

/** Lets the page draw and listen. Unlike a timer it does not grow slower the more often it is asked. */
export function breath(): Promise<void> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });
}

/** A clock for steps: true once the step has taken its time, and then counts anew. */
export function stepClock(): () => boolean {
  let start_ms = performance.now();
  return () => {
    const isOver = performance.now() - start_ms > STEP_ms;
    if (isOver) start_ms = performance.now();
    return isOver;
  };
}

/**
 * Makes every copy of an order. `tell` hears how many are made; once it answers false the making stops and null is given.
 */
export async function makeCopies(
  order: PackOrder,
  stems: readonly SheetStem[],
  tell: (made: number, of: number) => boolean,
): Promise<CopySet[] | null> {
  const chosen = order.sheets.flatMap((name) => stems.find((stem) => stem.name === name) ?? []);
  const of = chosen.length * order.copies;
  const isOver = stepClock();
  const sets: CopySet[] = [];
  let made = 0;
  for (const stem of chosen) {
    const copies: Sheet[] = [];
    for (const sheet of classCopies({ ...stem, grade: order.grade }, order.word, order.copies)) {
      copies.push(sheet);
      made += 1;
      if (!isOver()) continue;
      await breath();
      if (!tell(made, of)) return null;
    }
    sets.push({ name: stem.name, copies });
  }
  return tell(made, of) ? sets : null;
}

// Which milkings are expected of a doe on a day, from her kidding rows.
import type { Kidding, MilkingTime } from './types.ts';

/** The part of her year that a doe is in. `none` before her first kidding on record. */
export type Phase = 'none' | 'with kids' | 'nights apart' | 'twice a day' | 'dry';

/** A run of days in one phase; `to` is null while nothing on record ends it. Both ends included. */
export interface PhaseSpan {
  readonly phase: Exclude<Phase, 'none'>;
  readonly from: number;
  readonly to: number | null;
}

const EXPECTED: Readonly<Record<Phase, readonly MilkingTime[]>> = Object.freeze({
  none: [],
  'with kids': [],
  'nights apart': ['am'],
  'twice a day': ['am', 'pm'],
  dry: [],
});

/** The milkings expected in a phase. Source: the farm folder's contract. */
export function milkingsOf(phase: Phase): readonly MilkingTime[] {
  return EXPECTED[phase];
}

/**
 * The phases of one doe's kiddings in order of time. `apart` empty is the same as `weaned`; both
 * empty (kids reared by bottle) is both milkings from the day after kidding; a kidding ends the
 * phase that an older one left open. Days before her first kidding have no span.
 */
export function phaseSpans(kiddings: readonly Kidding[]): PhaseSpan[] {
  const inOrder = [...kiddings].sort((a, b) => a.day - b.day);
  return inOrder.flatMap((kidding, index) => {
    const next = inOrder[index + 1];
    return spansOf(kidding, next ? next.day - 1 : null);
  });
}

function spansOf(kidding: Kidding, last: number | null): PhaseSpan[] {
  const bottle = kidding.apart === null && kidding.weaned === null;
  const twice = bottle ? kidding.day + 1 : kidding.weaned;
  const apart = kidding.apart ?? twice;
  const starts: [PhaseSpan['phase'], number | null][] = [
    ['with kids', kidding.day],
    ['nights apart', apart],
    ['twice a day', twice],
    ['dry', kidding.dry],
  ];
  const known = starts.filter((start): start is [PhaseSpan['phase'], number] => start[1] !== null);
  // A later phase that starts on the same day or sooner leaves no day to the ones before it.
  return known.flatMap(([phase, start], index) => {
    const laterStart = Math.min(...known.slice(index + 1).map(([, day]) => day));
    const from = Math.max(start, kidding.day);
    const ends = [laterStart - 1, last ?? Number.POSITIVE_INFINITY];
    const to = Math.min(...ends);
    return to < from ? [] : [{ phase, from, to: Number.isFinite(to) ? to : null }];
  });
}

/** The phase of a doe on a day. */
export function phaseOn(spans: readonly PhaseSpan[], day: number): Phase {
  const span = spans.find((one) => one.from <= day && (one.to === null || day <= one.to));
  return span?.phase ?? 'none';
}

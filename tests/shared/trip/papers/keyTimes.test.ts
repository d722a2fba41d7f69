// The few times that everybody asks for, of parties that do the same thing at different times.
import { expect, it } from 'vitest';
import { isTogether, wholeSpan } from '../../../../shared/trip/papers/keyTimes.ts';
import type { Slot, SlotKind } from '../../../../shared/trip/types.ts';

const slot = (kind: SlotKind, from: number, to: number): Slot => ({
  kind,
  from,
  to,
  station: null,
  for: null,
});
const day = {
  parties: [
    [slot('unload', 570, 580), slot('wash', 700, 706), slot('lunch', 706, 736)],
    [slot('unload', 570, 580), slot('wash', 706, 711), slot('lunch', 711, 741)],
  ],
};

it('wholeSpan reaches from the first beginning to the last end', () => {
  expect(wholeSpan(day, 'lunch')).toEqual({ from: 706, to: 741 });
  expect(wholeSpan({ parties: [...day.parties].reverse() }, 'wash')).toEqual({ from: 700, to: 711 });
  expect(wholeSpan(day, 'toilets')).toBeNull();
});

it('isTogether holds where all parties do it at once, or nobody does', () => {
  expect(isTogether(day, 'unload')).toBe(true);
  expect(isTogether(day, 'lunch')).toBe(false);
  expect(isTogether(day, 'toilets')).toBe(true);
});

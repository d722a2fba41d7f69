// Ticks belong to one milking: the next one begins with none.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepRuns, type RoutineStep } from '../../../shared/routine/routine.ts';
import {
  freshTicks,
  isClock,
  readTicks,
  tickDoe,
  tickStep,
  type Ticks,
} from '../../../shared/routine/ticks.ts';

const MILKING = '2026-05-21 am';
const some: Ticks = {
  milking: MILKING,
  done: [1, 3],
  does: ['ida'],
  start: '06:20',
  end: null,
  readings: [{ at: '08:05', degrees: 44.5, unit: 'F' }],
};

describe('readTicks()', () => {
  it('reads back what was kept for this milking', () => {
    expect(readTicks(JSON.stringify(some), MILKING)).toEqual(some);
  });

  it('begins anew with the next milking, and where nothing was kept', () => {
    expect(readTicks(JSON.stringify(some), '2026-05-21 pm')).toEqual(freshTicks('2026-05-21 pm'));
    expect(readTicks(null, MILKING)).toEqual(freshTicks(MILKING));
  });

  it('takes nothing that is not ours, whatever stands there', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.jsonValue().map((value) => JSON.stringify({ ...some, done: value, does: value, start: value, readings: [value] }))), (text) => {
        const read = readTicks(text, MILKING);
        expect(read.milking).toBe(MILKING);
        expect(read.done.every(Number.isInteger)).toBe(true);
        expect(read.does.every((one) => typeof one === 'string')).toBe(true);
        expect(read.start === null || isClock(read.start)).toBe(true);
        expect(read.readings.every(({ at, degrees }) => isClock(at) && Number.isFinite(degrees))).toBe(true);
      }),
    ); // prettier-ignore
  });
});

describe('tickStep(), tickDoe()', () => {
  it('sets a tick and takes it away', () => {
    const once = tickStep(some, 2);
    expect(once.done).toEqual([1, 2, 3]);
    expect(tickStep(once, 2)).toEqual(some);
  });

  it('frees the steps of a doe for the next one, and leaves those that are taken once', () => {
    const milked = tickDoe({ ...some, done: [1, 2, 3, 8] }, 'fern', [2, 3]);
    expect(milked).toEqual({ ...some, done: [1, 8], does: ['ida', 'fern'] });
    // A slip of the finger takes no tick away.
    expect(tickDoe({ ...milked, done: [1, 2] }, 'ida', [2, 3])).toEqual({
      ...some,
      done: [1, 2],
      does: ['fern'],
    });
  });
});

describe('stepRuns()', () => {
  it('parts the steps where they change from once to each doe, and numbers go on', () => {
    const step = (each: RoutineStep['each']): RoutineStep => ({ picture: 'none', each, name: 'n', do: 'd', why: 'w', child: 'c' }); // prettier-ignore
    const each = ['milking', 'doe', 'doe', 'milking'] as const;
    expect(stepRuns(each.map(step)).map((run) => [run.each, run.first, run.steps.length])).toEqual([
      ['milking', 1, 1],
      ['doe', 2, 2],
      ['milking', 4, 1],
    ]);
    expect(stepRuns([])).toEqual([]);
  });
});

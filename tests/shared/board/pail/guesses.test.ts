// Guesses kept, laid out as dots, and what is said of them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guessPlot } from '../../../../shared/board/pail/guessPlot.ts';
import type { GuessRow } from '../../../../shared/board/pail/guessRow.ts';
import { addGuess, guessesOf, readGuesses, type GuessSet } from '../../../../shared/board/pail/kept.ts';
import { nearness, placeOf } from '../../../../shared/board/pail/sayPail.ts';
import { partsShown } from '../../../../shared/board/pail/sheetNumbers.ts';
import { pailLine, pailTasks } from '../../../../shared/board/pail/pailSheet.ts';
import { tickLabels } from '../../../../shared/sheet/tickLabels.ts';

const ASH = { date: '2026-05-21', milking: 'am', doe: 'ash' } as const;
const ROW: GuessRow = { part: 'cup', from: 2, stride: 1, count: 9 };

describe('guesses that are kept', () => {
  it('are counts by milking, doe and number, and come back as they were', () => {
    let sets: GuessSet[] = [];
    for (const parts of [6, 7, 6]) sets = addGuess(sets, ASH, 'cup', parts);
    const text = JSON.stringify(sets);
    expect(JSON.parse(text)).toEqual([{ ...ASH, part: 'cup', counts: { 6: 2, 7: 1 } }]);
    expect(guessesOf(readGuesses(text), ASH, 'cup')).toEqual([6, 6, 7]);
  });

  it('are dropped six weeks after the newest, and begin anew in other units', () => {
    const old = addGuess([], { ...ASH, date: '2026-04-01' }, 'cup', 5);
    expect(addGuess(old, ASH, 'cup', 6).map((one) => one.date)).toEqual(['2026-05-21']);
    const sets = addGuess(addGuess([], ASH, 'cup', 6), ASH, 'half-L', 3);
    expect(guessesOf(sets, ASH, 'cup')).toEqual([]);
    expect(guessesOf(sets, ASH, 'half-L')).toEqual([3]);
  });

  it('are read from anything without an error, and what is sound survives', () => {
    const sound = { ...ASH, part: 'cup', counts: { 6: 2 } };
    const mixed = [
      null,
      7,
      { ...sound, date: '2026-02-30' },
      { ...sound, counts: { a: 1, 6: 2, 7: -1, 8: 1.5 } },
    ];
    expect(readGuesses(JSON.stringify(mixed))).toEqual([sound]);
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.constant(null)), (text) => {
        expect(Array.isArray(readGuesses(text))).toBe(true);
      }),
    );
  });
});

describe('the dots', () => {
  it('stand over their numbers, equal ones stacked, and the line holds the truth', () => {
    const plot = guessPlot([4, 6, 6], ROW, 11.25, 900, 300);
    expect(plot.axis.ticks).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(plot.dots.map(({ x }) => x)).toEqual([180, 360, 360]);
    expect(plot.dots[2]!.y).toBeLessThan(plot.dots[1]!.y);
    expect(plot).toMatchObject({ middle: 6, truth: 11.25 });
  });

  it('never leave their room nor touch, however many there are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 120 }), (guesses) => {
        const { dots, radius } = guessPlot(guesses, ROW, null, 900, 300);
        expect(dots).toHaveLength(guesses.length);
        for (const dot of dots) {
          expect(dot.y - radius).toBeGreaterThanOrEqual(-1e-6);
          expect(dot.y + radius).toBeLessThanOrEqual(300);
        }
        const apart = dots.flatMap((a, i) => dots.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
        for (const distance of apart) expect(distance).toBeGreaterThan(radius * 2);
      }),
      { numRuns: 40 },
    );
  });
});

describe('what is said', () => {
  it('tells where a guess falls', () => {
    expect([
      placeOf(5, []),
      placeOf(3, [5, 7]),
      placeOf(9, [5, 7]),
      placeOf(6, [5, 7]),
      placeOf(5, [5, 5]),
    ]).toEqual(['first', 'least', 'most', 'among', 'same']);
  });

  // F. Galton, "Vox Populi", Nature 75 (1907) 450-451: 787 guesses of an ox, the middle one 1207 lb, the ox 1198 lb
  // (from memory). He calls it nine pounds, 0.8 per cent, too high: near, and no hit.
  it("calls Galton's ox near", () => {
    expect(nearness(1207, 1198)).toBe('near');
    expect(nearness(6.25, 6)).toBe('hit');
    expect(nearness(9, 6)).toBe('far');
  });
});

describe('the data sheet', () => {
  const request = {
    part: 'cup',
    guesses: [5, 6, 6, 8, 11],
    truth: 6.75,
    name: 'Ash',
    from: 3,
    to: 12,
  } as const;
  const values = (band: 'k-2' | '3-5' | '6-8') =>
    pailTasks({ ...request, band }).map(({ asks }) =>
      asks.map((ask) => ask.values.map((one) => (typeof one === 'string' ? one : one.num / one.den))),
    );

  // Worked by hand: 5 6 6 8 11; most 6, range 11 - 5 = 6, middle 6, off 6.75 - 6 = 0.75, none nearer than 0.75 but two at it.
  it('has the right key for each grade', () => {
    expect(values('k-2')).toEqual([[[6], [5]], [[5, 6, 6, 8, 11], [7]], [[0]]]);
    expect(values('3-5')).toEqual([
      [[6], [6]],
      [[5, 6, 6, 8, 11], [6.75]],
      [[6], [0.75]],
    ]);
    expect(values('6-8')).toEqual([
      [[6], [6]],
      [[5, 6, 6, 8, 11], [6.75]],
      [[6], [0.75], [0], []],
    ]);
  });

  it('draws a line true to the ruler: ten millimeters a cup', () => {
    const line = pailTasks({ ...request, band: '3-5' })[1]?.picture;
    expect(line).toMatchObject({
      is: 'dot-plot',
      step_mm: 10,
      from: { num: 3, den: 1 },
      to: { num: 12, den: 1 },
    });
  });

  it('writes halves of a liter as fractions for the young and decimals for the older', () => {
    expect(partsShown(3, 'half-L', '3-5')).toEqual({ num: 3, den: 2 });
    expect(partsShown(3, 'half-L', '6-8')).toEqual({ num: 3, den: 2, places: 1 });
    expect(partsShown(6.75, 'cup', '6-8')).toEqual({ num: 27, den: 4, places: 2 });
  });

  it('names half liters under the line as they are, and only as many as have room', () => {
    const line = (band: '3-5' | '6-8', to: number) => pailLine({ guesses: [2, 5], truth: 5, part: 'half-L', band, from: 2, to, name: 'Juniper' }); // prettier-ignore
    const labels = ({ from, step }: ReturnType<typeof line>) => tickLabels(from, step, 4);
    expect(labels(line('3-5', 6))).toEqual(['1', '1 1/2', '2', '2 1/2']);
    expect(labels(line('6-8', 6))).toEqual(['1.0', '1.5', '2.0', '2.5']);
    expect(line('3-5', 6)).toMatchObject({ step_mm: 20, labelEvery: 1 });
    expect(line('3-5', 16)).toMatchObject({ step_mm: 10, labelEvery: 2 });
  });
});

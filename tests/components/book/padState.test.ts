// The pad of one doe: what it asks, what it hands on, and that no question is asked twice.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PadState } from '../../../src/components/book/entry/padState.svelte.ts';
import { milkingLines, type LineRow } from '../../../shared/book/milkingLines.ts';
import { FINDINGS, HALVES, NO_NOTE, type NoteWords } from '../../../shared/book/stripNote.ts';
import { JAR_LEVELS, keyedAmount } from '../../../shared/book/taps.ts';
import type { BookFarm, BookRow, Treatment } from '../../../shared/book/types.ts';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import { readNumber } from '../../../shared/quantity/amount.ts';

const DAY = dayNumber('2026-05-21') ?? NaN;
const farm: BookFarm = {
  name: 'Test', timeZone: 'UTC', units: 'us', recordUnit: 'cup', milkings: { am: '06:30', pm: '17:30' },
  jar: { size: 64, unit: 'fl oz' }, largestMilking: { amount: 24, unit: 'cup' }, fixedDay: null,
}; // prettier-ignore
const plainWords = Object.fromEntries([...FINDINGS, ...HALVES].map((one) => [one, one]));
const words = { title: 'Strip cup', findings: plainWords, halves: plainWords } as unknown as NoteWords;
const row = (back: number, cups: number, more: Partial<LineRow> = {}): LineRow => ({
  doe: 'hester', date: isoDate(DAY - back), milking: 'am', amount: { num: cups, den: 1, unit: 'cup' },
  use: 'kept', note: '', mark: `mark ${back}`, corrects: 0, ...more,
}); // prettier-ignore
const week = [1, 2, 3, 4, 5].map((back) => row(back, 9));
const treated: Treatment = { doe: 'hester', from: DAY - 1, until: DAY + 3, what: '' };

function openPad(rows: readonly BookRow[] = week, treatments: readonly Treatment[] = []): PadState {
  const doe = { id: 'hester', name: 'Hester', breed: '', spans: [{ phase: 'twice a day', from: 0, to: null }] } as const; // prettier-ignore
  const [line] = milkingLines({ does: [doe], rows, treatments, clashes: [] }, { day: DAY, milking: 'am' });
  if (!line) throw new Error('She has no line.');
  return new PadState(line, farm, words);
}
const put = (pad: PadState, text: string) => {
  const value = keyedAmount(text);
  if (value) pad.set(value);
};

describe('an ordinary amount', () => {
  it('is put down without a question', () => {
    const pad = openPad();
    put(pad, '9 1/2');
    expect(pad.ask()).toBeNull();
    expect(pad.draft()).toEqual({
      amount: '9 1/2',
      unit: 'cup',
      use: 'kept',
      note: '',
      sure: false,
      saw: null,
    });
  });

  it('comes from taps, keys or jars, and the last of them counts', () => {
    const pad = openPad();
    pad.addJar(JAR_LEVELS[3] ?? pad.pad.step);
    pad.addJar(JAR_LEVELS[1] ?? pad.pad.step);
    expect(pad.draft().amount).toBe('12');
    pad.takeJar();
    expect(pad.draft().amount).toBe('8');
    pad.tap(pad.pad.step);
    expect(pad.draft().amount).toBe('8 1/4');
    pad.press('9');
    pad.press('½');
    expect(pad.draft().amount).toBe('9 1/2');
    pad.press('back');
    pad.press('back');
    expect(pad.draft().amount).toBeNull();
    pad.tap(pad.pad.step);
    expect([pad.typed, pad.draft().amount]).toEqual([null, '1/4']);
  });
});

describe('a surprising amount', () => {
  it.each([['3', 'less'], ['15', 'more']])('of %s cups is asked about once', (amount, question) => {
    const pad = openPad();
    put(pad, amount);
    expect(pad.ask()).toBe(question);
    pad.question = pad.ask();
    pad.confirm();
    // To be sure of an amount is not to know of a treatment, which this phone may not have heard of.
    expect([pad.question, pad.ask(), pad.draft().sure]).toEqual([null, null, false]);
    // Another amount is another question.
    put(pad, '2');
    expect(pad.ask()).toBe('less');
    put(pad, '9');
    expect([pad.ask(), pad.draft().sure]).toEqual([null, false]);
  }); // prettier-ignore

  it('above the largest milking is not put down, however often it is asked for', () => {
    const pad = openPad();
    put(pad, '24 1/4');
    pad.question = pad.ask();
    expect(pad.question).toBe('too much');
    pad.confirm();
    expect(pad.ask()).toBe('too much');
  });

  it('that already stands is not asked about again when only its note changes', () => {
    const pad = openPad([...week, row(0, 3)]);
    pad.mark({ ...NO_NOTE, free: 'kicked the pail' });
    expect([pad.ask(), pad.isChanged, pad.draft().note]).toEqual([null, true, 'kicked the pail']);
  });
});

describe('a doe under treatment', () => {
  it('has her milk withheld, and kept only once somebody says that she knows', () => {
    const pad = openPad(week, [treated]);
    put(pad, '9');
    expect([pad.use, pad.ask()]).toEqual(['withheld', null]);
    pad.choose('kept');
    expect([pad.use, pad.question]).toEqual(['withheld', 'treated']);
    pad.confirm();
    expect([pad.use, pad.ask(), pad.draft().sure]).toEqual(['kept', null, true]);
  });

  it('is asked about when a row that somebody kept is mended', () => {
    const pad = openPad([...week, row(0, 9)], [treated]);
    put(pad, '9 1/4');
    expect([pad.use, pad.ask()]).toEqual(['kept', 'treated']);
  });

  it('never hands on kept milk that nobody is sure of, whatever is tapped', () => {
    const act = fc.constantFrom('kept', 'withheld', 'fed', 'lost', 'yes', 'no', 'more', 'note');
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        const pad = openPad(week, [treated]);
        put(pad, '9');
        let said = false;
        for (const one of acts) {
          if (one === 'yes') {
            said ||= pad.question === 'treated';
            pad.confirm();
          } else if (one === 'no') pad.question = null;
          else if (one === 'more') pad.tap(pad.pad.step);
          else if (one === 'note') pad.mark({ ...NO_NOTE, findings: ['clots'] });
          else pad.choose(one);
        }
        const { use, sure } = pad.draft();
        if (use === 'kept') expect([said, sure]).toEqual([true, true]);
      }),
    );
  });
});

describe('a sign in the strip cup', () => {
  it('has the milk withheld until somebody says otherwise', () => {
    const pad = openPad();
    put(pad, '9');
    pad.mark({ ...NO_NOTE, findings: ['clots'], halves: ['left'] });
    expect(pad.draft()).toMatchObject({ use: 'withheld', note: 'Strip cup: clots, left' });
    pad.choose('kept');
    pad.mark({ ...pad.note, findings: ['clots', 'blood'] });
    expect(pad.use).toBe('kept');
  });
});

describe('a row that stands', () => {
  it('is mended over what was seen when the pad was opened, in its own unit', () => {
    const pad = openPad([
      ...week,
      row(0, 5, { amount: { num: 5, den: 1, unit: 'lb' }, use: 'fed', note: 'late' }),
    ]);
    expect([pad.pad.unit, pad.use, pad.isChanged]).toEqual(['lb', 'fed', false]);
    pad.tap(pad.pad.step);
    expect(pad.draft()).toEqual({
      amount: '5.1',
      unit: 'lb',
      use: 'fed',
      note: 'late',
      sure: false,
      saw: 'mark 0',
    });
    expect(pad.strike()).toMatchObject({ amount: null, note: '', saw: 'mark 0' });
  });

  it('goes through the pad untouched as the same amount', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 90 }), fc.constantFrom(1, 2, 3, 4, 8, 10, 100), (num, den) => {
        const pad = openPad([...week, row(0, 0, { amount: { num, den, unit: 'cup' } })]);
        const read = readNumber(pad.draft().amount ?? '');
        expect(read.ok && read.num * den === num * read.den).toBe(true);
        expect(pad.isChanged).toBe(false);
      }),
    );
  });
});

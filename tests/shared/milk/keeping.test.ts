// Use-by dates, the pasteurizing table and the cooling clock at their edges.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolingDeadlines, judgeDeadline } from '../../../shared/milk/cooling.ts';
import { FREEZER_C, FRIDGE_C, KEPT_KINDS, rawCheeseFrom, useBy } from '../../../shared/milk/keeping.ts';
import { HEAT_ROWS, isPasteurized, type HeatedKind } from '../../../shared/milk/pasteurizing.ts';
import { day } from '../../support/bookOf.ts';

describe('useBy()', () => {
  it('has a date for every kind in its cold, and none above it', () => {
    for (const kind of KEPT_KINDS) {
      const frozen = kind === 'frozen milk' || kind === 'ice cream';
      const cold = frozen ? FREEZER_C : FRIDGE_C;
      const date = useBy(kind, 100, cold);
      expect(date.ok && date.day, kind).toBeGreaterThan(100);
      expect(useBy(kind, 100, cold + 1), kind).toMatchObject({ ok: false, why: 'too warm to keep' });
      expect(useBy(kind, 100, Number.NaN).ok, kind).toBe(false);
    }
  });

  it('counts in days, over the end of a month', () => {
    expect(useBy('pasteurized milk', day('2026-05-28'), 4)).toMatchObject({ what: 'use by', day: day('2026-06-04') }); // prettier-ignore
  });

  it('has no date for drinking raw milk, only one for pasteurizing it', () => {
    expect(useBy('raw milk', 0, 4)).toMatchObject({
      what: 'pasteurize by',
      days: 3,
      facts: ['raw-waits', 'raw-milk'],
    });
  });

  it('takes a thermometer that says 40 °F or −18 °C at its word', () => {
    expect(useBy('yogurt', 0, 4.5).ok).toBe(true);
    expect(useBy('ice cream', 0, -18).ok).toBe(true);
    expect(useBy('ice cream', 0, -17).ok).toBe(false);
    expect(useBy('pasteurized milk', 0, 22)).toMatchObject({ facts: ['milk-keeps', 'two-hour-rule'] });
  });
});

describe('rawCheeseFrom()', () => {
  it('asks for the days and the warmth', () => {
    expect(rawCheeseFrom(0, 10)).toEqual({ ok: true, day: 60 });
    expect(rawCheeseFrom(0, 1.6)).toEqual({ ok: false, why: 'too cold to ripen' });
  });
});

describe('isPasteurized()', () => {
  const kinds: HeatedKind[] = ['milk', 'rich milk', 'frozen dessert mix'];

  it('is met by each printed row in either scale, and not by a second or a degree less', () => {
    for (const kind of kinds)
      for (const row of HEAT_ROWS[kind]) {
        expect(isPasteurized(kind, { degrees: row.at_C, scale: 'C' }, row.hold_s).ok).toBe(true);
        expect(isPasteurized(kind, { degrees: row.at_F, scale: 'F' }, row.hold_s).ok).toBe(true);
      }
    expect(isPasteurized('milk', { degrees: 63, scale: 'C' }, 1799)).toMatchObject({ why: 'not held long enough', needs: { hold_s: 1800 } }); // prettier-ignore
    expect(isPasteurized('milk', { degrees: 144.9, scale: 'F' }, 9999)).toMatchObject({
      ok: false,
      why: 'not hot enough',
      needs: { at_F: 145 },
    });
  });

  it('never interpolates: 70 °C still needs thirty minutes', () => {
    expect(isPasteurized('milk', { degrees: 70, scale: 'C' }, 1799).ok).toBe(false);
    expect(isPasteurized('milk', { degrees: 71.9, scale: 'C' }, 15).ok).toBe(false);
  });

  it('asks more of rich milk than of milk', () => {
    expect(isPasteurized('rich milk', { degrees: 63, scale: 'C' }, 1800).ok).toBe(false);
    expect(isPasteurized('rich milk', { degrees: 66, scale: 'C' }, 1800).ok).toBe(true);
    expect(isPasteurized('frozen dessert mix', { degrees: 72, scale: 'C' }, 15).ok).toBe(false);
  });

  it('is not undone by more heat or more time', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 50, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 4000, noNaN: true }),
        (kind, degrees, held_s) => {
          if (!isPasteurized(kind, { degrees, scale: 'C' }, held_s).ok) return;
          expect(isPasteurized(kind, { degrees: degrees + 1, scale: 'C' }, held_s).ok).toBe(true);
          expect(isPasteurized(kind, { degrees, scale: 'C' }, held_s + 1).ok).toBe(true);
        },
      ),
    );
  });

  it('has no answer of yes for a reading that is none', () => {
    expect(isPasteurized('milk', { degrees: Number.NaN, scale: 'C' }, 1800).ok).toBe(false);
    expect(isPasteurized('milk', { degrees: 63, scale: 'C' }, Number.NaN).ok).toBe(false);
  });
});

describe('coolingDeadlines(), judgeDeadline()', () => {
  const clock = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
  const deadlines = (start: string, end: string) => {
    const found = coolingDeadlines(clock(start), clock(end));
    if (!found.ok) throw new Error(found.why);
    return found.deadlines;
  };

  it('turn about with the length of milking', () => {
    expect(deadlines('06:00', '07:30').map(({ from }) => from)).toEqual(['end of milking', 'start of milking']);
    expect(deadlines('06:00', '09:00').map(({ from }) => from)).toEqual(['start of milking', 'end of milking']);
  }); // prettier-ignore

  it('run past midnight, and not for a milking of half a day', () => {
    expect(deadlines('23:00', '00:30').map(({ by_min }) => by_min)).toEqual([
      clock('24:30') + 120,
      clock('27:00'),
    ]);
    expect(coolingDeadlines(clock('06:00'), clock('18:00')).ok).toBe(false);
    expect(coolingDeadlines(Number.NaN, 0).ok).toBe(false);
  });

  it('are met, missed or not known, by what the thermometer was read to say', () => {
    const [seven] = deadlines('06:00', '07:30');
    if (!seven) throw new Error('no deadline');
    const read = (...pairs: [string, number][]) =>
      judgeDeadline(seven, pairs.map(([at, milk_C]) => ({ at_min: clock(at), milk_C }))); // prettier-ignore
    expect(read(['09:00', 6.9])).toBe('met');
    expect(read(['09:30', 7])).toBe('met');
    expect(read(['09:30', 7.1])).toBe('missed');
    expect(read(['08:00', 12], ['10:00', 8])).toBe('missed');
    expect(read(['08:00', 12], ['10:00', 5])).toBe('not known');
    expect(read(['08:00', 6], ['09:00', 9], ['11:00', 9])).toBe('missed');
    expect(read()).toBe('not known');
  });
});

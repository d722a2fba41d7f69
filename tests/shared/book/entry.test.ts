// What a phone sends, read from any JSON: bounded, strict, and never a row that the farm's reader would refuse.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../shared/calendar/day.ts';
import { judgeEntry, LONGEST_NOTE, MOST_ENTRIES, readEntry, readPost } from '../../../shared/book/entry.ts';
import type { BookEntry } from '../../../shared/book/types.ts';

const ENTRY: BookEntry = {
  id: 'AAAAAAAAAAAAAAAAAAAAA_',
  doe: 'bell',
  date: '2026-05-21',
  milking: 'pm',
  amount: '9 1/2',
  unit: 'cup',
  use: 'kept',
  note: 'quiet',
  sure: false,
  saw: null,
  entered_ms: 1_780_000_000_000,
};

describe('readEntry', () => {
  it('takes an entry over, without what it does not know', () => {
    expect(readEntry({ ...ENTRY, more: 1 })).toEqual({ ok: true, entry: ENTRY });
  });

  it('takes the blanks around a note off, and puts letters of a doe together as does.csv has them', () => {
    const read = readEntry({ ...ENTRY, note: ' quiet ', doe: 'nin\u0303a' });
    expect(read).toMatchObject({ ok: true, entry: { note: 'quiet', doe: 'ni\u00f1a' } });
  });

  it.each<[string, Record<string, unknown>]>([
    ['a short id', { id: 'abc' }],
    ['an id of other signs', { id: 'AAAAAAAAAAAAAAAAAAAAA=' }],
    ['a third milking', { milking: 'noon' }],
    ['an unknown unit', { unit: 'bucket' }],
    ['a unit that is a word of every object', { unit: 'constructor' }],
    ['an unknown use', { use: 'sold' }],
    ['an amount that is a number', { amount: 9.5 }],
    ['a long amount', { amount: '1'.repeat(61) }],
    ['a note of more lines', { note: 'a\nb' }],
    ['a note with a line separator', { note: 'a\u2028b' }],
    ['a note with a bell', { note: 'a\u0007' }],
    ['half a letter', { note: '\ud83d' }],
    ['a long note', { note: 'n'.repeat(LONGEST_NOTE + 1) }],
    ['no word on sureness', { sure: undefined }],
    ['a mark that is none', { saw: 7 }],
    ['no time', { entered_ms: null }],
    ['an endless time', { entered_ms: Number.POSITIVE_INFINITY }],
  ])('refuses %s by its id', (_, change) => {
    const id = typeof change['id'] === 'string' ? change['id'] : ENTRY.id;
    expect(readEntry({ ...ENTRY, ...change })).toEqual({ ok: false, id });
  });

  it('never throws, whatever JSON comes', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(readEntry(value).ok).toBe(false);
        const read = readPost(value);
        if (read.ok) expect(read.entries.length).toBeLessThanOrEqual(MOST_ENTRIES);
      }),
    );
  });
});

describe('judgeEntry', () => {
  const day = (iso: string) => dayNumber(iso) ?? 0;
  const rules = {
    isDoe: (id: string) => id === 'bell',
    today: day('2026-05-21'),
    largestMilking: { amount: 24, unit: 'cup' as const },
    treatments: [{ doe: 'bell', from: day('2026-05-10'), until: day('2026-05-14'), what: 'for worms' }],
  };

  it('gives the day and the amount as the file will hold them', () => {
    expect(judgeEntry({ ...ENTRY, amount: '19/2' }, rules)).toEqual({ ok: true, day: day('2026-05-21'), milking: 'pm', amount: { num: 19, den: 2, unit: 'cup' } }); // prettier-ignore
  });

  it.each<[string, Partial<BookEntry>]>([
    ['unknown doe', { doe: 'Bell' }],
    ['no date', { date: '21.5.2026' }],
    ['still to come', { date: '2026-05-22' }],
    ['no amount', { amount: 'much' }],
    ['too much', { amount: '24 1/8' }],
    ['treated', { date: '2026-05-13' }],
  ])('refuses: %s', (why, change) => {
    expect(judgeEntry({ ...ENTRY, ...change }, rules)).toEqual({ ok: false, why });
  });

  it.each<[string, Partial<BookEntry>]>([
    ['as much as the farm calls its largest', { amount: '24' }],
    ['milk of the first day on which it may be kept again', { date: '2026-05-14' }],
    ['milk of a treated doe that is withheld', { date: '2026-05-13', use: 'withheld' }],
    ['milk of a treated doe that somebody is sure of', { date: '2026-05-13', sure: true }],
    ['a row that strikes out', { date: '2026-05-13', amount: null }],
  ])('takes %s', (_, change) => expect(judgeEntry({ ...ENTRY, ...change }, rules).ok).toBe(true));
});

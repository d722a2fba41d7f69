// What the outlook says of does we know: events on record, milk of their own or none, odd books.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { BREED_YEARS, breedYear } from '../../../shared/outlook/breeds.ts';
import { openOutlook } from '../../../shared/outlook/outlook.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';

const on = (book: Book, asOf: string, date: string) =>
  openOutlook(book, openLedger(book, day(asOf))).on(day(date));
const first = (book: Book, asOf: string, date: string) => {
  const [doe] = on(book, asOf, date).does;
  if (!doe) throw new Error('no doe');
  return doe;
};
const milkOf = (book: Book, asOf: string, date: string) => {
  const doe = first(book, asOf, date);
  if (!doe.ok) throw new Error(JSON.stringify(doe.why));
  return doe;
};
const bred = (book: Book, breed: string): Book => ({ ...book, does: book.does.map((one) => ({ ...one, breed })) }); // prettier-ignore
const mornings = (doe: string, from: string, to: string, amount: string) => dates(from, to).map((date) => `${date} am ${doe} ${amount}`); // prettier-ignore

describe('a doe milked twice a day', () => {
  const book = bookOf(['clover 2026-01-01'], twice('clover', dates('2026-01-02', '2026-04-10'), '1 L'));

  it('is expected to give about what she gives now, within a range', () => {
    const told = milkOf(book, '2026-04-10', '2026-04-17');
    expect(told.event).toEqual({ kind: 'twice a day', daysInMilk: 106 });
    expect(told.middle_L).toBeGreaterThan(1.85);
    expect(told.middle_L).toBeLessThan(2.05);
    expect(told.low_L).toBeLessThan(told.middle_L);
    expect(told.high_L).toBeGreaterThan(told.middle_L);
    expect(told.basis).toEqual({ kind: 'own', whole_days: 99, newest: day('2026-04-10') });
  });

  it('is told in parts that a pocket calculator can multiply', () => {
    const { parts, middle_L } = milkOf(book, '2026-04-10', '2026-05-10');
    if (!parts) throw new Error('no parts');
    expect(parts.level_daysInMilk).toBe(99);
    expect(parts.level_LPerDay).toBeCloseTo(2, 1);
    expect(parts.level_LPerDay * parts.curve * parts.change).toBeCloseTo(middle_L, 12);
  });

  it('has no outlook for a day that is not coming', () => {
    const told = on(book, '2026-04-10', '2026-04-10');
    expect(told.does[0]).toEqual({ ok: false, doe: 'clover', why: { kind: 'not coming', asOf: day('2026-04-10') } }); // prettier-ignore
    expect(told.herd).toEqual({ ok: false, why: 'not coming' });
  });

  it('is not told from rows after the day the book is read for', () => {
    const early = first(book, '2026-03-01', '2026-03-15');
    const cut = { ...book, rows: book.rows.filter((row) => row.day <= day('2026-03-01')) };
    expect(first(cut, '2026-03-01', '2026-03-15')).toEqual(early);
  });

  it('is cautioned about past a usual lactation without a dry date', () => {
    expect(milkOf(book, '2026-04-10', '2026-11-01').cautions).toEqual([]);
    expect(milkOf(book, '2026-04-10', '2026-12-01').cautions).toEqual([
      { kind: 'long lactation', daysInMilk: 334, usual_days: 305 },
    ]);
  });

  it('has no outlook once her rows have stopped for three weeks', () => {
    expect(first(book, '2026-04-30', '2026-05-05').ok).toBe(true);
    expect(first(book, '2026-05-01', '2026-05-05')).toEqual({
      ok: false,
      doe: 'clover',
      why: { kind: 'silent', newest: day('2026-04-10'), expected_days: 21 },
    });
  });
});

describe('events on record', () => {
  const plan = ['clover 2026-01-01 apart 2026-01-20 weaned 2026-03-01 dry 2026-10-15', 'clover 2027-01-05 apart 2027-01-25 weaned 2027-03-10']; // prettier-ignore
  const book = bookOf(plan, mornings('clover', '2026-01-20', '2026-02-20', '1 L'));
  const told = (date: string) => milkOf(book, '2026-02-20', date);

  it('keep a doe on nights apart at her morning, by her own mornings', () => {
    const apart = told('2026-02-27');
    expect(apart.event.kind).toBe('nights apart');
    expect(apart.middle_L).toBeGreaterThan(0.9);
    expect(apart.middle_L).toBeLessThan(1.05);
    expect(apart.parts?.change).toBe(1);
  });

  it('make a full day of it from weaning on, about twice her morning and less surely', () => {
    const [apart, weaned] = [told('2026-02-28'), told('2026-03-01')];
    expect(weaned.event.kind).toBe('twice a day');
    expect(weaned.parts?.change).toBeCloseTo(2, 1);
    expect(weaned.middle_L / apart.middle_L).toBeCloseTo(2, 1);
    expect(weaned.high_L / weaned.low_L).toBeGreaterThan(apart.high_L / apart.low_L);
  });

  it('are zero when dry, and when the kids take it all', () => {
    const none = { middle_L: 0, low_L: 0, high_L: 0, basis: null, parts: null, spread: null };
    expect(told('2026-10-14').middle_L).toBeGreaterThan(0);
    expect(told('2026-10-15')).toMatchObject({ ...none, event: { kind: 'dry', since: day('2026-10-15') } });
    expect(told('2027-01-05')).toMatchObject({
      ...none,
      event: { kind: 'with kids', since: day('2027-01-05'), until: day('2027-01-24') },
    });
  });

  it('start again at the next kidding, from the last lactation and less surely', () => {
    const next = told('2027-01-25');
    expect(next.event).toEqual({ kind: 'nights apart', daysInMilk: 20 });
    expect(next.basis).toEqual({ kind: 'last', whole_days: 32, newest: day('2026-02-20') });
    expect(next.middle_L).toBeGreaterThan(0.7);
    expect(next.middle_L).toBeLessThan(1.4);
    expect(next.high_L / next.low_L).toBeGreaterThan(told('2026-02-27').high_L / told('2026-02-27').low_L);
    expect(told('2027-04-01').middle_L).toBeGreaterThan(1.5 * next.middle_L);
  });

  it('give a doe without a dry date the usual rest before her next kidding', () => {
    const open = bookOf(['clover 2026-01-01', 'clover 2027-01-05'], twice('clover', dates('2026-05-01', '2026-06-01'))); // prettier-ignore
    expect(milkOf(open, '2026-06-01', '2026-11-05').middle_L).toBeGreaterThan(0);
    expect(milkOf(open, '2026-06-01', '2026-11-06')).toMatchObject({
      middle_L: 0,
      event: { kind: 'rest before kidding', kidding: day('2027-01-05'), rest_days: 60 },
    });
  });

  it('expect nothing of a doe that has not kidded', () => {
    const young = bookOf(['clover 2026-05-01']);
    expect(milkOf(young, '2026-03-01', '2026-04-01')).toMatchObject({
      middle_L: 0,
      event: { kind: 'not kidded', first: day('2026-05-01') },
    });
  });
});

describe('a doe without milk of her own', () => {
  const book = bookOf(['clover 2026-05-01', 'clover 2027-05-01']);

  it("is told by her breed's year, spread over a usual lactation", () => {
    const alpine = bred(bookOf(['clover 2026-05-01']), 'alpine');
    const opened = openOutlook(alpine, openLedger(alpine, day('2026-05-01')));
    const days = Array.from({ length: 305 }, (_, i) => opened.on(day('2026-05-02') + i).does[0]);
    const sum = days.reduce((total, one) => total + (one?.ok ? one.middle_L : 0), 0);
    // 2,534 lb a year (US herd average of 2024) at 0.45359237 kg a pound and 1.03 kg/L.
    expect(sum).toBeCloseTo((2534 * 0.45359237) / 1.03, 6);
    expect(days[0]).toMatchObject({
      ok: true,
      basis: { kind: 'breed', ...breedYear(BREED_YEARS, 'Alpine') },
    });
  });

  it('has none where the table has none', () => {
    const why = { kind: 'no figures', breed: 'Alpine x Saanen' };
    expect(first(bred(book, 'Alpine x Saanen'), '2026-05-01', '2026-06-15')).toEqual({ ok: false, doe: 'clover', why }); // prettier-ignore
    expect(on(bred(book, ''), '2026-05-01', '2026-06-15').herd).toEqual({
      ok: false,
      why: 'no doe has an outlook',
    });
  });

  it('has none where milk stands in the book without a kidding', () => {
    const loose = bookOf([], twice('clover', dates('2026-05-01', '2026-05-10')));
    expect(first(loose, '2026-05-10', '2026-05-12')).toEqual({ ok: false, doe: 'clover', why: { kind: 'no kidding', rows: 20 } }); // prettier-ignore
  });
});

describe('a herd', () => {
  const does = ['clover', 'wren', 'tansy', 'hester'];
  const rows = does.flatMap((doe) => twice(doe, dates('2026-03-01', '2026-05-10'), '1 L'));
  const book = bookOf(
    [...does, 'pepita'].map((doe) => `${doe} 2026-02-01`),
    rows,
  );

  it('is the sum of its does, with a range narrower than all their extremes together', () => {
    const told = on(book, '2026-05-10', '2026-05-17');
    if (!told.herd.ok) throw new Error(told.herd.why);
    const sums = { middle: 0, low: 0, high: 0 };
    for (const one of told.does) {
      if (!one.ok) continue;
      sums.middle += one.middle_L;
      sums.low += one.low_L;
      sums.high += one.high_L;
    }
    expect(told.herd.middle_L).toBeCloseTo(sums.middle, 12);
    expect(told.herd.low_L).toBeGreaterThan(sums.low);
    expect(told.herd.high_L).toBeLessThan(sums.high);
  });

  it('says which does are in it and which are left out', () => {
    const { herd } = on(book, '2026-05-10', '2026-05-17');
    expect(herd).toMatchObject({ ok: true, does, without: ['pepita'] });
  });

  it('of no does has no outlook', () => {
    expect(on(bookOf([]), '2026-05-10', '2026-05-11')).toEqual({ day: day('2026-05-11'), does: [], herd: { ok: false, why: 'no does' } }); // prettier-ignore
  });

  it('that is dry has an outlook of zero', () => {
    const dry = bookOf(['clover 2026-01-01 dry 2026-03-01'], twice('clover', dates('2026-01-02', '2026-02-28'))); // prettier-ignore
    expect(on(dry, '2026-03-10', '2026-03-11').herd).toMatchObject({ ok: true, middle_L: 0, low_L: 0, high_L: 0, does: [], without: [] }); // prettier-ignore
  });
});

describe('odd books', () => {
  const isSound = (book: Book, asOf: string) => {
    const opened = openOutlook(book, openLedger(book, day(asOf)));
    for (const after of [1, 7, 30, 100, 400, 4000]) {
      const [doe] = opened.on(day(asOf) + after).does;
      if (!doe?.ok) continue;
      const numbers = [doe.low_L, doe.middle_L, doe.high_L];
      expect(numbers.every((one) => Number.isFinite(one) && one >= 0)).toBe(true);
      expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    }
    return opened;
  };

  it('of one row, of yields of zero, of two kiddings in a year have sound answers', () => {
    expect(isSound(bookOf(['clover 2026-01-01'], twice('clover', ['2026-01-02'])), '2026-01-02').on(day('2026-01-03')).does[0]?.ok).toBe(true); // prettier-ignore
    const zero = bookOf(['clover 2026-01-01'], twice('clover', dates('2026-01-02', '2026-02-20'), '0 L'));
    isSound(zero, '2026-02-20');
    expect(milkOf(zero, '2026-02-20', '2026-02-27').middle_L).toBeLessThan(0.05);
    const two = bookOf(['clover 2026-01-01', 'clover 2026-07-01'], twice('clover', dates('2026-01-02', '2026-09-01'))); // prettier-ignore
    isSound(two, '2026-09-01');
    expect(milkOf(two, '2026-09-01', '2026-09-10').event).toMatchObject({ daysInMilk: 71 });
  });

  it('of ten years without a dry date, and of one kidding written twice, have too', () => {
    const long = bookOf(['clover 2016-01-01'], twice('clover', dates('2016-01-02', '2026-01-01')));
    isSound(long, '2026-01-01');
    expect(milkOf(long, '2026-01-01', '2026-01-08').middle_L).toBeCloseTo(4, 0);
    const same = bookOf(['clover 2026-01-01', 'clover 2026-01-01'], twice('clover', dates('2026-01-02', '2026-02-01'))); // prettier-ignore
    isSound(same, '2026-02-01');
  });
});

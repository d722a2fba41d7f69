// Which milkings are expected of a doe, phase by phase.
import { describe, expect, it } from 'vitest';
import { milkingsOf, phaseOn, phaseSpans } from '../../../shared/herd/expected.ts';
import { dates, day, kidding } from '../../support/bookOf.ts';

/** Runs of equal phases from a date to another, as `first day: phase (milkings)`. */
function told(kiddings: readonly string[], from: string, to: string): string[] {
  const spans = phaseSpans(kiddings.map(kidding));
  const lines: string[] = [];
  let before = '';
  for (const date of dates(from, to)) {
    const phase = phaseOn(spans, day(date));
    const text = `${phase} (${milkingsOf(phase).join(' ')})`;
    if (text !== before) lines.push(`${date}: ${text}`);
    before = text;
  }
  return lines;
}

describe('phaseSpans', () => {
  it('goes from her kids by nights apart and twice a day to dry', () => {
    const lines = told(
      ['a 2026-03-01 apart 2026-03-22 weaned 2026-05-10 dry 2026-10-31'],
      '2026-02-27',
      '2026-11-02',
    );
    expect(lines).toEqual([
      '2026-02-27: none ()',
      '2026-03-01: with kids ()',
      '2026-03-22: nights apart (am)',
      '2026-05-10: twice a day (am pm)',
      '2026-10-31: dry ()',
    ]);
  });

  it('takes an empty apart as the same as weaned', () => {
    expect(told(['a 2026-03-01 weaned 2026-05-10'], '2026-03-01', '2026-05-12')).toEqual([
      '2026-03-01: with kids ()',
      '2026-05-10: twice a day (am pm)',
    ]);
  });

  it('expects both milkings from the day after kidding when both are empty', () => {
    expect(told(['a 2026-03-01'], '2026-02-28', '2026-03-10')).toEqual([
      '2026-02-28: none ()',
      '2026-03-01: with kids ()',
      '2026-03-02: twice a day (am pm)',
    ]);
  });

  it('expects the morning only where she was never weaned', () => {
    expect(told(['a 2026-03-01 apart 2026-03-05 dry 2026-03-09'], '2026-03-01', '2026-03-12')).toEqual([
      '2026-03-01: with kids ()',
      '2026-03-05: nights apart (am)',
      '2026-03-09: dry ()',
    ]);
  });

  it('expects nothing after her next kidding until that row allows it', () => {
    const lines = told(
      ['a 2025-03-01 weaned 2025-04-01', 'a 2026-03-01 apart 2026-03-22'],
      '2026-02-27',
      '2026-03-23',
    );
    expect(lines).toEqual([
      '2026-02-27: twice a day (am pm)',
      '2026-03-01: with kids ()',
      '2026-03-22: nights apart (am)',
    ]);
  });

  it('lets the next kidding end a dry date that comes after it', () => {
    const lines = told(['a 2026-01-01 dry 2026-06-01', 'a 2026-05-01'], '2026-04-30', '2026-06-02');
    expect(lines).toEqual([
      '2026-04-30: twice a day (am pm)',
      '2026-05-01: with kids ()',
      '2026-05-02: twice a day (am pm)',
    ]);
  });

  it('keeps a dry doe dry until she kids again', () => {
    const lines = told(
      ['a 2025-01-01 dry 2025-10-01', 'a 2026-03-01 weaned 2026-03-03'],
      '2026-02-27',
      '2026-03-04',
    );
    expect(lines).toEqual([
      '2026-02-27: dry ()',
      '2026-03-01: with kids ()',
      '2026-03-03: twice a day (am pm)',
    ]);
  });

  it('does not mind the order of the rows', () => {
    const rows = ['a 2025-03-01 weaned 2025-04-01', 'a 2026-03-01 apart 2026-03-22'].map(kidding);
    expect(phaseSpans([...rows].reverse())).toEqual(phaseSpans(rows));
  });

  it('leaves no day to a phase that a later one starts on', () => {
    expect(
      told(['a 2026-03-01 apart 2026-03-05 weaned 2026-03-05 dry 2026-03-05'], '2026-03-04', '2026-03-06'),
    ).toEqual(['2026-03-04: with kids ()', '2026-03-05: dry ()']);
  });
});

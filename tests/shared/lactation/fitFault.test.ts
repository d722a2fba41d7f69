// Every reason has its sentence in both languages, with every slot filled.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { faultMessage, type FitFault } from '../../../shared/lactation/fitFault.ts';
import { flatten, say, type Words } from '../../../shared/words/words.ts';

const wordsOf = (lang: string): Words => {
  const text = readFileSync(join('content/words', lang, 'lactation.yaml'), 'utf8');
  return { lang, entries: flatten(parse(text) as Record<string, unknown>) };
};
const FAULTS: readonly FitFault[] = [
  { kind: 'tooFew', days: 0, need: 8 },
  { kind: 'tooFew', days: 1, need: 8 },
  { kind: 'tooFew', days: 7, need: 8 },
  { kind: 'allZero', days: 1 },
  { kind: 'allZero', days: 31 },
  { kind: 'notConverged', days: 40 },
  { kind: 'noPeak', run: 'falling' },
  { kind: 'noPeak', run: 'rising' },
  { kind: 'noPeak', run: 'level' },
  { kind: 'noPeak', run: 'sagging' },
  { kind: 'peakOutside', side: 'before', peak_day: 12.4, first_day: 61, last_day: 200 },
  { kind: 'peakOutside', side: 'after', peak_day: 50.1, first_day: 1, last_day: 40 },
  { kind: 'poorFit', r2: 0.043, need: 0.1 },
  { kind: 'peakUnsure', peak_day: 31.2, peak_day_se: 20, first_day: 1, last_day: 44 },
];
const EXTRA = [
  ...['noTests', 'noDays'].map((name) => `lactation.total.${name}`),
  ...['entered', 'notExpected', 'noMilkBeside', 'tooFewDays', 'estimated'].map(
    (name) => `lactation.missed.${name}`,
  ),
  ...['kidsNotCounted', 'pastWeaning', 'estimated'].map((name) => `lactation.kids.${name}`),
];

describe.each(['en', 'es'])('in %s', (lang) => {
  const words = wordsOf(lang);

  it.each(FAULTS)('$kind is a whole sentence', (fault) => {
    const { key, slots } = faultMessage(fault);
    const text = say(words, key, slots);
    expect(text).toMatch(/^\p{Lu}.*\.$/u);
    expect(text).not.toMatch(/[{}]|NaN|undefined|Infinity|-\d/);
  });

  it('every other reason is there', () => {
    expect(EXTRA.map((key) => say(words, key)).filter((text) => !text.endsWith('.'))).toEqual([]);
  });
});

describe('the numbers in the sentences', () => {
  it('are those of the fault', () => {
    const [en] = ['en'].map(wordsOf);
    const told = (fault: FitFault) => say(en ?? wordsOf('en'), faultMessage(fault).key, faultMessage(fault).slots); // prettier-ignore
    expect(told({ kind: 'tooFew', days: 3, need: 8 })).toMatch(/^Only 3 days .* needs 8 days/);
    expect(told({ kind: 'peakOutside', side: 'after', peak_day: 50, first_day: 1, last_day: 40 })).toContain('after day 40'); // prettier-ignore
    expect(told({ kind: 'poorFit', r2: 0.043, need: 0.1 })).toMatch(/only 4 of every 100 .* least 10 /);
    expect(told({ kind: 'peakUnsure', peak_day: 31, peak_day_se: 20, first_day: 1, last_day: 44 })).toContain('from day 1 to day 71 after kidding, and the book reaches day 44'); // prettier-ignore
  });
});

// The text on labels: whole, within its label, and large enough to be read in a cold store.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brokenText, fitLabel, LINE } from '../../../shared/labels/fitLabel.ts';
import { labelPages, type ToLabel } from '../../../shared/labels/labelPages.ts';
import { COMMON_SHEETS, COMMON_SINGLES } from '../../../shared/labels/labelSheet.ts';
import { labelLines } from '../../../shared/labels/labelText.ts';
import { textWidth_em } from '../../../shared/labels/typeWidths.ts';
import type { JarUse } from '../../../shared/labels/jars.ts';
import { wordsOf } from '../../../src/site/words.ts';

const HAIR = 1e-6;
const ALL = [...COMMON_SHEETS, ...COMMON_SINGLES];
const words = { en: wordsOf('en'), es: wordsOf('es') };

function toLabel(
  name: string,
  use: JarUse,
  lang: 'en' | 'es',
  pasteurized: number | null,
  key = 'k',
): ToLabel {
  const jar = {
    key,
    of: 'doe',
    doe: 'a',
    names: [name],
    use,
    volume_mL: 1892,
    fill: 1,
    nth: 2,
    count: 12,
  } as const;
  const setting = { words: words[lang], farm: 'Hobnail Hill Teaching Dairy', units: 'us', day: 20_593, milking: 'pm', pasteurized, keptAgain: 20_599 } as const; // prettier-ignore
  return { key, barred: use !== 'kept', lines: labelLines(jar, setting) };
}

const anyName = fc.oneof(
  fc.string({ minLength: 1, maxLength: 300 }),
  fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }),
  fc.constantFrom('Ñandú de la Sierra Ábrego', 'W'.repeat(80), 'Łucja', '山羊花子', 'Maximiliana-Guadalupe von Hohenzollern-Sigmaringen'), // prettier-ignore
);

describe('labelPages()', () => {
  it('puts every jar on one label, and every letter of it within that label, whatever the name', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL),
        fc.integer({ min: 1, max: 30 }),
        fc.array(fc.record({ name: anyName, use: fc.constantFrom<JarUse>('kept', 'withheld', 'fed') }), { maxLength: 6 }), // prettier-ignore
        fc.constantFrom('en' as const, 'es' as const),
        fc.option(fc.integer({ min: 20_593, max: 20_596 })),
        (paper, start, jars, lang, pasteurized) => {
          const given = jars.map(({ name, use }, index) =>
            toLabel(name, use, lang, pasteurized, String(index)),
          );
          const pages = labelPages(paper, start, given);
          expect(pages.labels.map(({ key }) => key)).toEqual(given.map(({ key }) => key));
          for (const [index, label] of pages.labels.entries()) {
            const inset = label.frame_mm;
            const right = (label.jar?.x_mm ?? label.width_mm - inset) + HAIR;
            for (const line of label.lines) {
              expect(label.textX_mm).toBeGreaterThan(inset);
              expect(label.textX_mm + textWidth_em(line.text, line.face) * line.size_mm).toBeLessThanOrEqual(right); // prettier-ignore
              expect(line.y_mm - line.size_mm).toBeGreaterThanOrEqual(inset - HAIR);
              expect(line.y_mm + line.size_mm * 0.25).toBeLessThanOrEqual(label.height_mm - inset + HAIR);
            }
            // Nothing is cut off: the lines hold every letter that was asked for, but for a line that is left out whole.
            const flat = (texts: readonly { text: string }[]) => texts.map(({ text }) => text).join('').replace(/\s/g, ''); // prettier-ignore
            const lines = given[index]?.lines ?? [];
            const needed = lines.filter(({ optional }) => !optional);
            expect([flat(lines), flat(needed)]).toContain(flat(label.lines));
            for (const [at, line] of label.lines.entries()) {
              const before = label.lines[at - 1];
              if (before) expect(line.y_mm - before.y_mm).toBeGreaterThanOrEqual(line.size_mm * 0.95);
            }
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  // Capitals are 0.72 of Andika's type size. At arm's length (0.6 m) letters of 1.75 mm are twice as large as what good
  // eyes just read (5 minutes of arc, the definition of 20/20): common practice, no source for labels.
  it.each(ALL)('is readable at arm’s length on $id, with the longest words of both languages', (paper) => {
    for (const lang of ['en', 'es'] as const)
      for (const use of ['kept', 'withheld', 'fed'] as const) {
        const [label] = labelPages(paper, 1, [toLabel('Maribel', use, lang, null)]).labels;
        const least = Math.min(...(label?.lines ?? []).filter(({ role }) => role !== 'farm').map(({ size_mm }) => size_mm)); // prettier-ignore
        expect(least * 0.72).toBeGreaterThanOrEqual(1.75);
        const large = label?.lines.find(({ role }) => role === 'withheld');
        if (use !== 'kept') expect(large?.size_mm).toBeGreaterThan(1.3 * least);
      }
  });

  it('makes each single label a page of its own size', () => {
    const [single] = COMMON_SINGLES;
    if (!single) throw new Error('no single label');
    const pages = labelPages(single, 5, [toLabel('Ida', 'kept', 'en', null, 'a'), toLabel('Fern', 'kept', 'en', null, 'b')]); // prettier-ignore
    expect(pages).toMatchObject({ width_mm: single.width_mm, height_mm: single.height_mm, count: 2 });
    expect(pages.labels.map(({ page, x_mm, y_mm }) => [page, x_mm, y_mm])).toEqual([[0, 0, 0], [1, 0, 0]]); // prettier-ignore
  });

  it('has no page without a label', () => {
    const [sheet] = COMMON_SHEETS;
    if (!sheet) throw new Error('no sheet');
    expect(labelPages(sheet, 1, []).count).toBe(0);
  });
});

describe('fitLabel(), brokenText()', () => {
  it('leaves the farm out where it would make the rest small, and never half of it', () => {
    const lines = toLabel('Ida', 'kept', 'en', null).lines;
    expect(fitLabel(lines, 90, 45).map(({ role }) => role)).toContain('farm');
    expect(fitLabel(lines, 47, 22).map(({ role }) => role)).not.toContain('farm');
    const used = fitLabel(lines, 47, 22).reduce((sum, { size_mm }) => sum + size_mm * LINE, 0);
    expect(used).toBeLessThanOrEqual(22);
  });

  it('breaks a word only where a line is too short for it', () => {
    expect(brokenText('a goat', 'plain', 3)).toEqual(['a goat']);
    expect(brokenText('Guadalupe', 'plain', 3).join('')).toBe('Guadalupe');
    expect(brokenText('', 'plain', 3)).toEqual([]);
  });
});

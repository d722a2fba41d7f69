// Every figure drawn again from its markup: what a ruler and an eye would read is what the task says.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeSheet } from '../../shared/sheet/sheet.ts';
import { tellText } from '../../shared/sheet/tell.ts';
import type { Picture } from '../../shared/sheet/picture.ts';
import { GRADES_OF } from '../../shared/tasks/standards.ts';
import type { PrintSize } from '../../shared/sheet/pageMeasures.ts';
import { wordsOf } from '../../src/site/words.ts';
import { requestArb } from '../shared/tasks/randomWeek.ts';
import { marksIn, markupOf } from './drawn.ts';
import { READERS } from './readers.ts';

const RUNS = 1500;

/** Figures of a random sheet: as printed, and as the key shows them done. */
const figuresArb = fc
  .tuple(requestArb, fc.constantFrom('en', 'es'), fc.nat(3), fc.constantFrom<PrintSize>('ordinary', 'large'))
  .map(([request, lang, place, print]) => {
    const grades = GRADES_OF[request.band];
    const sheet = makeSheet({ ...request, grade: grades[place % grades.length] });
    const figures = sheet.tasks.flatMap(({ kind, picture, asks }) => [
      ...(picture ? [{ kind, picture, done: false }] : []),
      ...asks.flatMap((ask) => (ask.picture ? [{ kind, picture: ask.picture, done: true }] : [])),
    ]);
    return { grade: sheet.grade, lang, print, figures };
  });

describe('figures', () => {
  it('show the numbers of their task, read back from the drawing', () => {
    const met = new Map<Picture['is'], number>();
    fc.assert(
      fc.property(figuresArb, ({ grade, lang, print, figures }) => {
        for (const { kind, picture, done } of figures) {
          const read = READERS[picture.is];
          const markup = markupOf(picture, grade, lang, done, print);
          try {
            read(picture as never, marksIn(markup), markup, (message) => tellText(wordsOf(lang), message), done);
          } catch (fault) {
            throw new Error(`${kind}: ${(fault as Error).message}\n${JSON.stringify(picture)}\n${markup}`, { cause: fault });
          }
          met.set(picture.is, (met.get(picture.is) ?? 0) + 1);
        }
      }),
      { numRuns: RUNS },
    );
    const seldom = Object.keys(READERS).filter((is) => (met.get(is as Picture['is']) ?? 0) < 8);
    expect(seldom).toEqual([]);
    // Drawings of goats are dear to render.
  }, 180_000);

  it('are each told to who cannot see them', () => {
    fc.assert(
      fc.property(figuresArb, ({ grade, lang, print, figures }) => {
        for (const { kind, picture, done } of figures) {
          if (picture.is === 'table' || picture.is === 'cards' || picture.is === 'steps') continue;
          // Lists and tables name themselves; what they hold is read as it stands.
          if (picture.is === 'picks' || picture.is === 'tally') continue;
          const label = marksIn(markupOf(picture, grade, lang, done, print)).find(({ of }) => of['role'] === 'img')?.of['aria-label'];
          expect(label, kind).toMatch(/\p{L}{3}/u);
          expect(label, kind).not.toMatch(/[{}]|undefined|NaN/);
        }
      }),
      { numRuns: 100 },
    );
  });
}); // prettier-ignore

// Every figure drawn again from its markup: what a ruler and an eye would read is what the task says.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../shared/quantity/grade.ts';
import type { Message } from '../../shared/sheet/message.ts';
import { makeSheet, type SheetRequest } from '../../shared/sheet/sheet.ts';
import { tellText } from '../../shared/sheet/tell.ts';
import type { Picture } from '../../shared/sheet/picture.ts';
import { kindsOf } from '../../shared/tasks/kinds.ts';
import { GRADES_OF, type Grade } from '../../shared/tasks/standards.ts';
import type { PrintSize } from '../../shared/sheet/pageMeasures.ts';
import { sheetSource } from '../../src/site/sheets.ts';
import { wordsOf } from '../../src/site/words.ts';
import { requestArb } from '../shared/tasks/randomWeek.ts';
import { marksIn, markupOf } from './drawn.ts';
import { READERS } from './readers.ts';

interface Figures {
  readonly grade: Grade;
  readonly lang: string;
  readonly print: PrintSize;
  readonly figures: readonly { readonly kind: string; readonly picture: Picture; readonly done: boolean }[];
}

/** Figures of a sheet: as printed, and as the key shows them done. */
function figuresOf(request: SheetRequest, lang: string, print: PrintSize): Figures {
  const sheet = makeSheet(request);
  const figures = sheet.tasks.flatMap(({ kind, picture, asks }) => [
    ...(picture ? [{ kind, picture, done: false }] : []),
    ...asks.flatMap((ask) => (ask.picture ? [{ kind, picture: ask.picture, done: true }] : [])),
  ]);
  return { grade: sheet.grade, lang, print, figures };
}

const figuresArb = fc
  .tuple(requestArb, fc.constantFrom('en', 'es'), fc.nat(3), fc.constantFrom<PrintSize>('ordinary', 'large'))
  .map(([request, lang, place, print]) => {
    const grades = GRADES_OF[request.band];
    return figuresOf({ ...request, grade: grades[place % grades.length] }, lang, print);
  });

/** Reads every figure back; throws with the drawing where it shows something else. */
function readBack({ grade, lang, print, figures }: Figures): Picture['is'][] {
  return figures.map(({ kind, picture, done }) => {
    const markup = markupOf(picture, grade, lang, done, print);
    try {
      const tell = (message: Message) => tellText(wordsOf(lang), message);
      READERS[picture.is](picture as never, marksIn(markup), markup, tell, done);
    } catch (fault) {
      throw new Error(`${kind}: ${(fault as Error).message}\n${JSON.stringify(picture)}\n${markup}`, {
        cause: fault,
      });
    }
    return picture.is;
  });
}

describe('figures', () => {
  it('show the numbers of their task, read back from the drawing', () => {
    fc.assert(fc.property(figuresArb, (figures) => void readBack(figures)), { numRuns: 1200 });
    // Drawings of goats are dear to render.
  }, 180_000);

  it('of every kind come up on the demo farm and are read back', () => {
    const met = BANDS.flatMap((band) =>
      ['fern', 'hay', 'oats'].flatMap((seed) => {
        const tasks = kindsOf(band).map(({ name }) => name);
        return readBack(figuresOf({ ...sheetSource(band), name: 'a-sheet', band, seed, tasks }, 'en', 'ordinary'));
      }),
    );
    expect([...new Set(met)].sort()).toEqual(Object.keys(READERS).sort());
  });

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

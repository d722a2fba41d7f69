// A lesson from the bench as a file: the reader of content/lessons reads the same steps, with the new minutes.
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { composeLesson } from '../../../shared/lesson/compose.ts';
import { lengthened } from '../../../shared/lesson/edits.ts';
import { lessonMdx } from '../../../shared/lesson/lessonMdx.ts';
import { planHead } from '../../../shared/lesson/planHead.ts';
import { poolFor, type PlannedStep } from '../../../shared/lesson/pool.ts';
import { PLACES, type Lesson } from '../../../shared/lesson/types.ts';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { topGrade } from '../../../shared/tasks/standards.ts';
import { readLessonFile, type LessonFile } from '../../../src/content/lessonFile.ts';
import { readSheetFiles } from '../../../src/content/sheetFiles.ts';
import { anyLessons, anyWish, wishOf } from '../../support/lessonPool.ts';

const LANGS = ['en', 'es'];
const figures = [...idsIn('content/lessons')];
const known = {
  figures,
  sheets: readSheetFiles('content/sheets', LANGS, figures).sheets.map(({ plan }) => ({ name: plan.name, band: plan.band })), // prettier-ignore
};

/** Every figure that the lessons name: here they are only carried along. */
function idsIn(dir: string): Set<string> {
  const files = readdirSync(dir, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.mdx'));
  const texts = files.map((one) => readFileSync(`${dir}/${one}`, 'utf8'));
  return new Set(texts.flatMap((text) => [...text.matchAll(/<Figure\s+id="([^"]+)"/g)].map(([, id]) => id ?? ''))); // prettier-ignore
}

function reread(mdx: string): LessonFile {
  const reading = readLessonFile('new.mdx', 'new', mdx, known);
  if (!reading.ok) throw new Error(`${JSON.stringify(reading.faults, null, 1)}\n${mdx}`);
  return reading.lesson;
}

/** A lesson as pages have it; its figures are not filled in, which nothing here looks at. */
function asLesson(file: LessonFile): Lesson {
  const { name } = file;
  const steps = file.steps.map((step) => ({ ...step, id: `${name}.${step.name}`, blocks: [] }));
  return { ...file, steps };
}

const plainSteps = (steps: readonly PlannedStep[]) =>
  steps.map(({ minutes, step: { title, kind, least, most, topics, must, sheet, source } }) => ({ title, kind, minutes, least, most, topics, must, sheet, source })); // prettier-ignore
const rereadSteps = (lesson: LessonFile) =>
  lesson.steps.map(({ title, kind, minutes, least, most, topics, must, sheet, source }) => ({ title, kind, minutes, least, most, topics, must, sheet, source })); // prettier-ignore

describe.each(LANGS)('lessons of content/lessons/%s, put together anew', (lang) => {
  const dir = `content/lessons/${lang}`;
  const lessons = readdirSync(dir)
    .filter((one) => one.endsWith('.mdx'))
    .map((one) => {
      const reading = readLessonFile(
        one,
        one.replace('.mdx', ''),
        readFileSync(`${dir}/${one}`, 'utf8'),
        known,
      );
      return reading.ok ? asLesson(reading.lesson) : null;
    })
    .filter((one) => one !== null);

  it('are there to be read', () => {
    expect(lessons.length).toBeGreaterThanOrEqual(4);
  });

  it.each(BANDS.flatMap((band) => PLACES.map((place) => [band, place] as const)))(
    'come back from the file of %s, %s with the same steps',
    (band, place) => {
      for (const minutes of [15, 30, 45, 60, 90]) {
        const wish = wishOf({ grade: topGrade(band), place, minutes });
        let steps = composeLesson(poolFor(lessons, wish.grade), wish);
        if (steps.length === 0) continue;
        const first = steps[0]?.step;
        steps = lengthened(steps, first?.id ?? '', first?.most ?? 0);
        const lesson = reread(lessonMdx('“Milk”, for us: 100 % & more', steps, wish));
        const head = planHead(steps, wish.children, place);
        expect(rereadSteps(lesson)).toEqual(plainSteps(steps));
        expect(lesson.minutes).toBe(steps.reduce((sum, one) => sum + one.minutes, 0));
        expect(lesson).toMatchObject({ title: '“Milk”, for us: 100 % & more', band, place });
        expect([lesson.aims, lesson.standards, lesson.words, lesson.cautions]).toEqual([head.aims, head.standards, head.words, head.cautions]); // prettier-ignore
      }
    },
  );
});

describe('lessonMdx', () => {
  const odd = fc
    .string({ minLength: 1, unit: fc.constantFrom(...'aé"\'\\<>{}&;:#-[]|ñ%—') })
    .map((one) => `x${one}x`);

  it('writes any title, word and thing so that it is read again', () => {
    fc.assert(
      fc.property(anyLessons({ lessons: 2, steps: 3 }), anyWish, odd, odd, (lessons, wish, title, odder) => {
        const retold = lessons.map((one): Lesson => ({
          ...one,
          aims: [odder],
          words: [{ word: odder, means: title }],
          materials: [{ what: odder, count: 2, per: 'group', groupOf: 3 }],
          steps: one.steps.map((step) => ({ ...step, title, topics: ['milk'], kind: step.kind === 'sheet' ? 'do' : step.kind })), // prettier-ignore
        })); // prettier-ignore
        const steps = composeLesson(poolFor(retold, wish.grade), { ...wish, minutes: 60 });
        fc.pre(steps.length > 0);
        const lesson = reread(lessonMdx(title, steps, wish));
        expect(rereadSteps(lesson)).toEqual(plainSteps(steps));
        expect([lesson.title, lesson.aims, lesson.words]).toEqual([title, [odder], [{ word: odder, means: title }]]);
        expect(lesson.materials).toEqual([{ what: odder, count: 2, per: 'group', groupOf: 3 }]);
      }),
    ); // prettier-ignore
  });
});

// The farm's steps of milking: content/routine, one file a language, held against each other.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { judge } from '../../shared/reading/judge.ts';
import { STEP_PICTURES, type Routine } from '../../shared/routine/routine.ts';
import type { ContentFault, ContentNotice } from './contentFault.ts';
import { readFields } from './frontMatter.ts';
import { oneOf, text } from './headFields.ts';
import { READING_LANGUAGES } from './lessonReading.ts';

// The poster is one page and the card half a one: longer texts would be too small to read on a wall.
const MOST = { steps: 12, name: 22, do: 120, why: 140, child: 40 } as const;
const short = (most: number) =>
  text.max(most, `at most ${most} letters stand here, so that it can be read on a wall`);

const shape = z.strictObject({
  title: short(40),
  steps: z
    .array(
      z.strictObject({
        picture: oneOf(STEP_PICTURES),
        each: oneOf(['doe', 'milking']),
        name: short(MOST.name),
        do: short(MOST.do),
        why: short(MOST.why),
        child: short(MOST.child),
      }),
      'a list of steps stands here, each beginning with a dash',
    )
    .min(1, 'a list of steps stands here, each beginning with a dash')
    .max(MOST.steps, `at most ${MOST.steps} steps stand here, so that they fit on one page`),
});

// Words that the drawing beside the sentence explains.
const EXPLAINED = ['germs', 'udder', 'teat', 'pail', 'dip', 'squeeze', 'drain', 'smooth', 'cloth', 'softly'];

/** The steps in each language that has them, with all that is wrong. */
export interface RoutineShelf {
  readonly routine: Readonly<Record<string, Routine>>;
  readonly faults: readonly ContentFault[];
  readonly notices: readonly ContentNotice[];
}

/** Reads `dir/LANG.yaml` for each language. */
export function readRoutineFiles(dir: string, languages: readonly string[]): RoutineShelf {
  const faults: ContentFault[] = [];
  // A farm that has written none at all is not told so in every language.
  const notices = missingFiles(dir, languages);
  const found: { lang: string; file: string; routine: Routine; lineOf: (path: PropertyKey[]) => number }[] =
    [];
  for (const lang of languages) {
    const path = join(dir, `${lang}.yaml`);
    const file = `content/routine/${lang}.yaml`;
    if (!existsSync(path)) continue;
    const written = readFileSync(path, 'utf8').replace(/^\uFEFF/, '');
    const read = readFields(file, written, shape, { above: 0, what: 'file' });
    if (!read.ok) faults.push(...read.faults.map(byStep));
    else {
      found.push({ lang, file, routine: read.values, lineOf: read.lineOf });
      faults.push(...hardForChildren(file, lang, read.values, read.lineOf));
    }
  }
  const [first, ...others] = found;
  for (const other of others) if (first) faults.push(...differences(first, other));
  return { routine: Object.fromEntries(found.map(({ lang, routine }) => [lang, routine])), faults, notices };
}

function missingFiles(dir: string, languages: readonly string[]): ContentNotice[] {
  const isThere = (lang: string) => existsSync(join(dir, `${lang}.yaml`));
  if (!languages.some(isThere)) return [];
  return languages
    .filter((lang) => !isThere(lang))
    .map((lang) => ({
      file: `content/routine/${lang}.yaml`,
      text: `There is no such file, so the page of milking has no steps in "${lang}".`,
    }));
}

/** Nobody counts from nought: `"steps.0.why"` is told as `"why" of step 1`. */
function byStep(fault: ContentFault): ContentFault {
  const text = fault.text.replace(/"steps\.(\d+)(?:\.(\w+))?"/, (_, index: string, field?: string) => {
    const step = `step ${Number(index) + 1}`;
    return field === undefined ? step : `"${field}" of ${step}`;
  });
  return { ...fault, text };
}

type Found = { file: string; routine: Routine; lineOf: (path: PropertyKey[]) => number };

function differences(first: Found, other: Found): ContentFault[] {
  const [here, there] = [other.routine.steps, first.routine.steps];
  const both = 'all languages need the same.';
  const faults = here.flatMap((step, index) => {
    const twin = there[index];
    if (!twin) return [];
    return (['picture', 'each'] as const).flatMap((field) =>
      step[field] === twin[field]
        ? []
        : [
            {
              file: other.file,
              line: other.lineOf(['steps', index, field]),
              column: null,
              text: `"${field}" of step ${index + 1} is ${step[field]} here and ${twin[field]} in ${first.file}; ${both}`,
            },
          ],
    );
  });
  if (here.length === there.length) return faults;
  const text = `there are ${here.length} steps here and ${there.length} in ${first.file}; ${both}`;
  return [...faults, { file: other.file, line: other.lineOf(['steps']), column: null, text }];
}

/** Sentences that a child of the first grades cannot read. A language that we cannot measure has none. */
function hardForChildren(
  file: string,
  lang: string,
  { steps }: Routine,
  lineOf: (path: PropertyKey[]) => number,
): ContentFault[] {
  const measured = READING_LANGUAGES.find((one) => one === lang.split('-')[0]);
  if (!measured) return [];
  const parts = steps.map(({ child }, index) => ({ text: child, step: String(index) }));
  return judge(parts, 'k-2', measured, EXPLAINED)
    .broken.filter(({ rule }) => ['longest', 'new', 'grade', 'ease'].includes(rule))
    .map(({ rule, part, sentence, found, limit, unknown }) => ({
      file,
      line: lineOf(['steps', part, 'child']),
      column: null,
      text:
        rule === 'longest'
          ? `"${sentence.text}" has ${found} words, and the card is for children who read ${limit} at most; make two of it.`
          : `"${sentence.text}" is hard for children of the first grades${unknown.length > 0 ? `: ${unknown.join(', ')}` : ''}; say it in easier words.`,
    }));
}

// The head of a lesson file: its fields, and what no shape can say about them.
import * as z from 'zod';
import { CAUTIONS } from '../../shared/lesson/topics.ts';
import { PLACES, type Place } from '../../shared/lesson/types.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { nearestName } from '../farm/nearest.ts';
import type { ContentFault } from './contentFault.ts';
import { oneOf, standardFault, text, wholeNumber } from './headFields.ts';

const textList = z.array(text, 'a list stands here, each line with a dash before it');

const material = z
  .strictObject({
    what: text,
    count: wholeNumber(1, 500),
    per: oneOf(['child', 'group', 'class']),
    groupOf: wholeNumber(2, 60).nullable().default(null),
  })
  .refine(({ per, groupOf }) => (per === 'group') === (groupOf !== null), {
    message: 'a thing "per: group" says with "groupOf" how many children share it, and nothing else has it',
  });

/** The shape of a lesson's head. */
export const lessonShape = z.strictObject({
  title: text.describe('The name of the lesson, as pages show it.'),
  band: oneOf<Band>(BANDS).describe('The grade band.'),
  place: oneOf<Place>(PLACES).describe('In class before the visit, in the barn, or in class after it.'),
  aims: textList.min(1, 'a lesson has at least one aim').describe('What a child can do after it.'),
  standards: textList.describe('Codes of the standards that it supports.'),
  words: z
    .array(z.strictObject({ word: text, means: text }), 'a list of { word: …, means: … } stands here')
    .default([])
    .describe('Words to know, each with what it means in the words of the band.'),
  materials: z
    .array(material, 'a list of { what: …, count: …, per: … } stands here')
    .default([])
    .describe('What to have at hand, for each child, group or class.'),
  cautions: textList.default([]).describe('Names of the cautions that hold.'),
});

/** The head of a lesson as written. */
export type LessonHead = z.infer<typeof lessonShape>;

/** What is wrong in a head that has the shape: codes, names, and what a lesson in the barn cannot do without. */
export function headFaults(
  file: string,
  head: LessonHead,
  lineOf: (path: readonly PropertyKey[]) => number,
): ContentFault[] {
  const fault = (path: readonly PropertyKey[], told: string): ContentFault => ({
    file,
    line: lineOf(path),
    column: null,
    text: told,
  });
  const faults = [
    ...head.standards.flatMap((code, index) => {
      const told = standardFault(code, head.band);
      return told ? [fault(['standards', index], told)] : [];
    }),
    ...head.cautions.flatMap((name, index) => {
      const told = CAUTIONS.includes(name) ? null : `there is no caution "${name}"; ${meant(name, CAUTIONS)}`;
      return told ? [fault(['cautions', index], told)] : [];
    }),
    ...twice('standards', head.standards),
    ...twice('cautions', head.cautions),
    ...twice('words', head.words.map(({ word }) => word.toLowerCase())), // prettier-ignore
  ];
  if (head.place === 'barn' && !head.cautions.includes('wash'))
    faults.push(
      fault(['cautions'], 'a lesson in the barn has the caution "wash"; add it to the list "cautions".'),
    );
  return faults;

  function twice(field: 'standards' | 'cautions' | 'words', names: readonly string[]): ContentFault[] {
    return names.flatMap((name, index) =>
      names.indexOf(name) < index
        ? [fault([field, index], `"${name}" stands in "${field}" twice; take one out.`)]
        : [],
    );
  }
}

/** What to do about a name that is none: the nearest one, or all there are. */
export function meant(name: string, names: readonly string[]): string {
  const near = nearestName(name, names);
  if (near) return `did you mean "${near}"?`;
  return names.length > 0 ? `there are ${names.join(', ')}.` : 'there is none yet.';
}

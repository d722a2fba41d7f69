// All lessons of content/lessons, one folder a language, held against each other.
import { readFileSync } from 'node:fs';
import { PLACES } from '../../shared/lesson/types.ts';
import { BANDS } from '../../shared/quantity/grade.ts';
import type { ContentFault, ContentNotice } from './contentFault.ts';
import { contentFiles } from './contentFiles.ts';
import { readLessonFile, type LessonFile } from './lessonFile.ts';
import type { LessonKnown } from './lessonParts.ts';
import { readingFaults } from './lessonReading.ts';

/** One lesson in all languages in which it is written. */
export interface LessonEntry {
  readonly name: string;
  readonly inLanguage: Readonly<Record<string, LessonFile>>;
}

/** The lessons in the order of bands and of a visit, with everything that is wrong. */
export interface LessonShelf {
  readonly lessons: readonly LessonEntry[];
  readonly faults: readonly ContentFault[];
  readonly notices: readonly ContentNotice[];
}

/** Reads `dir/LANG/NAME.mdx` for each language. */
export function readLessonFiles(dir: string, languages: readonly string[], known: LessonKnown): LessonShelf {
  const faults: ContentFault[] = [];
  const notices: ContentNotice[] = [];
  const found = new Map<string, Record<string, LessonFile>>();
  const written = new Set<string>();
  for (const lang of languages) {
    const { files, faults: misnamed } = contentFiles('lesson', dir, lang);
    faults.push(...misnamed);
    for (const { name, path, told } of files) {
      written.add(`${lang} ${name}`);
      const reading = readLessonFile(told, name, readFileSync(path, 'utf8'), known);
      if (reading.ok) {
        found.set(name, { ...found.get(name), [lang]: reading.lesson });
        faults.push(...readingFaults(reading.lesson, lang));
      } else faults.push(...reading.faults);
    }
  }
  const lessons = [...found].map(([name, inLanguage]): LessonEntry => {
    const [first, ...others] = Object.values(inLanguage) as [LessonFile, ...LessonFile[]];
    for (const other of others) faults.push(...differences(first, other));
    for (const lang of languages)
      if (!written.has(`${lang} ${name}`))
        notices.push({
          file: first.file,
          text: `This lesson is not written in "${lang}" yet, so the pages in it leave it out.`,
        });
    return { name, inLanguage };
  });
  const order = ({ inLanguage }: LessonEntry) => {
    const [{ band, place }] = Object.values(inLanguage) as [LessonFile];
    return BANDS.indexOf(band) * PLACES.length + PLACES.indexOf(place);
  };
  lessons.sort((a, b) => order(a) - order(b) || a.name.localeCompare(b.name));
  return { lessons, faults, notices };
}

type Told = string | number | boolean | null | readonly string[];

/** Where the same lesson says one thing in one language and another in the other. */
function differences(first: LessonFile, other: LessonFile): ContentFault[] {
  const both = 'both languages need the same.';
  const differs = (line: number, what: string, here: Told, there: Told): ContentFault[] =>
    String(here) === String(there)
      ? []
      : [
          {
            file: other.file,
            line,
            column: null,
            text: `${what} is ${shown(here)} here and ${shown(there)} in ${first.file}; ${both}`,
          },
        ];
  const head = (['band', 'place', 'standards', 'cautions'] as const).flatMap((field) =>
    differs(other.lineOf([field]), `"${field}"`, other[field], first[field]),
  );
  const materials = differs(
    other.lineOf(['materials']),
    '"materials"',
    other.materials.map(amountOf).join('; '),
    first.materials.map(amountOf).join('; '),
  );
  const names = (lesson: LessonFile) => lesson.steps.map(({ name }) => name);
  const order = differs(other.steps[0]?.line ?? 1, 'the order of the steps', names(other), names(first));
  const steps = other.steps.flatMap((step) => {
    const twin = first.steps.find(({ name }) => name === step.name);
    if (!twin) return [];
    return (['kind', 'minutes', 'least', 'most', 'topics', 'must', 'sheet'] as const).flatMap((field) =>
      differs(step.line, `"${field}" of the step "${step.name}"`, step[field], twin[field]),
    );
  });
  return [...head, ...materials, ...order, ...steps];
}

const amountOf = ({ count, per, groupOf }: LessonFile['materials'][number]) =>
  `${count} per ${per}${groupOf === null ? '' : ` of ${groupOf}`}`;

function shown(value: Told): string {
  if (typeof value === 'object' && value !== null) return value.length > 0 ? value.join(', ') : 'empty';
  if (typeof value === 'boolean') return value ? 'there' : 'not there';
  return value === null || value === '' ? 'empty' : String(value);
}

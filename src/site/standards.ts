// The page of standards: which sheets and lessons support each, by framework and grade band.
import type { Lesson } from '../../shared/lesson/types.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { standardsOf } from '../../shared/sheet/support.ts';
import { bandOfStandard, FRAMEWORKS, STANDARDS, type Framework } from '../../shared/tasks/standards.ts';
import { sheetEntries } from './sheets.ts';

/** A sheet or a lesson by its name, which is its address, and its title. */
export interface Supporter {
  readonly name: string;
  readonly title: string;
}

/** A standard with what supports it; where both lists are empty nothing does yet. */
export interface SupportedStandard {
  readonly code: string;
  readonly sheets: readonly Supporter[];
  readonly lessons: readonly Supporter[];
}

/** The standards of a framework, band by band. */
export interface FrameworkShelf {
  readonly framework: Framework;
  readonly bands: readonly {
    readonly band: Band;
    readonly supported: readonly SupportedStandard[];
    readonly notYet: readonly string[];
  }[];
}

type LessonHead = Pick<Lesson, 'name' | 'title' | 'standards'>;

/** Every standard of our list, with the sheets of a language and the lessons that are handed in. */
export function standardsShelf(lang: string, lessons: readonly LessonHead[]): readonly FrameworkShelf[] {
  const sheets = sheetEntries().flatMap(({ plan, inLanguage }) => {
    const title = inLanguage[lang]?.title;
    return title === undefined ? [] : [{ name: plan.name, title, standards: standardsOf(plan) }];
  });
  const having = (code: string, from: readonly LessonHead[]): Supporter[] =>
    from.filter(({ standards }) => standards.includes(code)).map(({ name, title }) => ({ name, title }));
  const all = Object.keys(STANDARDS).map((code): SupportedStandard & { readonly band: Band } => ({
    code,
    band: bandOfStandard(code),
    sheets: having(code, sheets),
    lessons: having(code, lessons),
  }));
  return FRAMEWORKS.map((framework) => ({
    framework,
    bands: BANDS.map((band) => {
      const own = all.filter((one) => one.band === band && STANDARDS[one.code] === framework);
      const isSupported = (one: SupportedStandard) => one.sheets.length + one.lessons.length > 0;
      return {
        band,
        supported: own.filter(isSupported),
        notYet: own.filter((one) => !isSupported(one)).map(({ code }) => code),
      };
    }).filter(({ supported, notYet }) => supported.length + notYet.length > 0),
  }));
}

// What the Lesson bench is given: all lessons of a language, the words it needs, and the sheets that its steps hand out.
import type { BenchProps } from '../../shared/lesson/benchProps.ts';
import { BANDS } from '../../shared/quantity/grade.ts';
import { paperOf } from '../../shared/sheet/pageMeasures.ts';
import { GRADES_OF, type Grade } from '../../shared/tasks/standards.ts';
import type { Words } from '../../shared/words/words.ts';
import { lessonsIn } from './lessons.ts';
import { sheetEntries, sheetFront } from './sheets.ts';
import { href, openSite, wordsOf } from './site.ts';

// Young classes come most; the bench opens for one of them where it has a lesson.
const FIRST_GRADE: Grade = 2;

/** Everything that the bench of a language carries to the browser. */
export function benchProps(lang: string): BenchProps {
  const { farm } = openSite();
  const lessons = lessonsIn(lang);
  const bands = BANDS.filter((band) => lessons.some((one) => one.band === band));
  const grades = bands.flatMap((band) => GRADES_OF[band]);
  const named = new Set(lessons.flatMap(({ steps }) => steps.flatMap(({ sheet }) => sheet ?? [])));
  const sheets = sheetEntries()
    .filter(({ plan }) => named.has(plan.name))
    .flatMap((entry) => {
      const front = sheetFront(entry, lang);
      const { name } = entry.plan;
      return front ? [[name, { title: front.title, href: href(lang, `/sheets/${name}/`) }] as const] : [];
    });
  return {
    lessons,
    grades,
    firstGrade: grades.includes(FIRST_GRADE) ? FIRST_GRADE : (grades[0] ?? FIRST_GRADE),
    sheets: Object.fromEntries(sheets),
    lessonsHref: href(lang, '/lessons/'),
    words: benchWords(lang, new Set(lessons.flatMap(({ standards }) => standards))),
    farm: farm.name,
    paper: paperOf(farm.units),
  };
}

/** The words of the bench, of lessons, and of the standards that lessons name. */
function benchWords(lang: string, standards: ReadonlySet<string>): Words {
  const { entries } = wordsOf(lang);
  const kept = Object.entries(entries).filter(
    ([key]) =>
      /^(?:bench|lesson)\.|^sheet\.colophon\./.test(key) ||
      (key.startsWith('sheet.standard.') && standards.has(key.slice('sheet.standard.'.length))),
  );
  return { lang, entries: Object.fromEntries(kept) };
}

// What a sheet's or a lesson's page tells machines about it: JSON-LD, ready to stand in a script element.
import type { Lesson } from '../../shared/lesson/types.ts';
import { learningResource, type LearningMatter } from '../../shared/sheet/learningResource.ts';
import type { SheetFront, SheetPlan } from '../../shared/sheet/plan.ts';
import { standardsOf } from '../../shared/sheet/support.ts';
import { openSite, wordsOf } from './site.ts';

/** A sheet of a language. */
export function sheetLearning(plan: SheetPlan, front: SheetFront, lang: string): string {
  const { band, minutes } = plan;
  return carried({ kind: 'sheet', name: front.title, about: front.about, band, minutes, teaches: [], standards: standardsOf(plan) }, lang); // prettier-ignore
}

/** A lesson of a language; its aims are what it teaches. */
export function lessonLearning(
  lesson: Pick<Lesson, 'title' | 'band' | 'minutes' | 'aims' | 'standards'>,
  lang: string,
): string {
  const { title, band, minutes, aims, standards } = lesson;
  return carried({ kind: 'lesson', name: title, about: aims.join(' '), band, minutes, teaches: aims, standards }, lang); // prettier-ignore
}

function carried(matter: Omit<LearningMatter, 'farm'>, lang: string): string {
  const resource = learningResource({ ...matter, farm: openSite().farm.name }, wordsOf(lang));
  // No text in it may end the script that carries it.
  return JSON.stringify(resource).replaceAll('<', '\\u003c');
}

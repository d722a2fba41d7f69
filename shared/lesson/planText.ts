// The words around a lesson on the bench: its title, its file's name, its minutes, its clock.
import { gradeSign } from '../tasks/standards.ts';
import { say, type Words } from '../words/words.ts';
import { clockText, type Span } from './clock.ts';
import type { PlannedStep } from './pool.ts';
import type { Material } from './types.ts';
import type { Wish } from './wish.ts';

/** "Grade 2", "Kindergarten". */
export function gradeText(words: Words, grade: Wish['grade']): string {
  return say(words, grade === 0 ? 'bench.grade.K' : 'bench.grade.other', { grade: gradeSign(grade) });
}

/** "10 minutes". */
export function minutesText(words: Words, n: number): string {
  return say(words, 'lesson.minutes', { n });
}

/** "9:30 to 9:40". */
export function spanText(words: Words, { from, to }: Span): string {
  return say(words, 'bench.from-to', { from: clockText(from), to: clockText(to) });
}

/** The sum of the steps, minutes. */
export function totalOf(steps: readonly PlannedStep[]): number {
  return steps.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** "Grade 2, 45 minutes, before the visit", with the chosen topics behind it. */
export function planTitle(words: Words, wish: Wish, total: number): string {
  const title = say(words, 'bench.plan-title', {
    grade: gradeText(words, wish.grade),
    minutes: minutesText(words, total),
    place: say(words, `bench.place-short.${wish.place}`),
  });
  if (wish.topics.length === 0) return title;
  const topics = wish.topics.map((topic) => say(words, `lesson.topic.${topic}`)).join(', ');
  return say(words, 'bench.plan-topics', { title, topics });
}

/** A plain file name without its ending: small letters, digits and hyphens. */
export function planFileName(words: Words, wish: Wish, total: number): string {
  const place = say(words, `bench.file-place.${wish.place}`);
  return say(words, 'bench.file', { place, grade: gradeSign(wish.grade).toLowerCase(), n: total });
}

/** How full the time is. */
export function fullText(words: Words, total: number, minutes: number): string {
  const told = { total: minutesText(words, total) };
  if (total === minutes) return say(words, 'bench.strip.full', told);
  const key = total < minutes ? 'bench.strip.free' : 'bench.strip.over';
  return say(words, key, { ...told, n: Math.abs(minutes - total) });
}

/** How a material's number comes about: "2 for each child". */
export function perText(words: Words, { per, count, groupOf }: Material): string {
  return say(words, `bench.facts.per.${per}`, { count, groupOf: groupOf ?? '' });
}

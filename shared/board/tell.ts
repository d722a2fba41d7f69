// The words of an answer at a reading level, its slots filled and its variant chosen.
import { say, type Words } from '../words/words.ts';
import type { Answer } from './types.ts';

/** The board's two reading levels: about five to eight years, and nine and more. */
export const LEVELS = ['younger', 'older'] as const;
/** One of the two levels. */
export type Level = (typeof LEVELS)[number];

/** The texts of an answer that each level has for itself, in the order in which they are read. */
export const LEVEL_TEXTS = [
  'headline',
  'why.first',
  'why.second',
  'why.third',
  'concrete',
  'belief',
  'think',
] as const;
/** One of these texts. */
export type LevelText = (typeof LEVEL_TEXTS)[number];

/** A text of a level; null where the question's file has none. The concrete text counts what the answer counts. */
export function tellLevel(own: Words, answer: Answer, level: Level, text: LevelText): string | null {
  const slots = text === 'concrete' ? { ...answer.slots, n: answer.concrete } : answer.slots;
  return tellKey(own, answer, `${level}.${text}`, text, slots);
}

/** A text that both levels share: what the number counts, its rule, what would change it, or why it is missing. */
export function tell(own: Words, answer: Answer, text: 'unit' | 'missing' | 'rule' | 'change'): string {
  const told = tellKey(own, answer, text, text, answer.slots);
  if (told === null) throw new Error(`The question "${answer.name}" has no "${text}" in ${own.lang}.`);
  return told;
}

// A question may need a variant at one level and none at the other.
function tellKey(
  own: Words,
  { variants }: Answer,
  key: string,
  text: string,
  slots: Answer['slots'],
): string | null {
  const variant = variants[text];
  for (const one of variant ? [`${key}.${variant}`, key] : [key])
    if (own.entries[one] !== undefined) return say(own, one, slots);
  return null;
}

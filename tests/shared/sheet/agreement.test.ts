// One cup, two cups; una taza, dos tazas: every number on many random sheets stands before a noun of its own number.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeSheet, type SheetTask } from '../../../shared/sheet/sheet.ts';
import { tellText } from '../../../shared/sheet/tell.ts';
import type { Message } from '../../../shared/sheet/message.ts';
import { GRADES_OF } from '../../../shared/tasks/standards.ts';
import { wordsUnder } from '../../../src/site/words.ts';
import { requestArb } from '../tasks/randomWeek.ts';

const NOUNS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  en: ['cup', 'jar', 'day', 'milking', 'kid', 'hour', 'minute', 'quart', 'pint', 'gallon', 'liter', 'milliliter', 'doe', 'goat', 'dot', 'row', 'pound', 'kilogram', 'gram', 'ear', 'leg', 'week', 'child/children', 'square', 'point', 'bale'].map((noun) => noun.includes('/') ? (noun.split('/') as [string, string]) : [noun, `${noun}s`]),
  es: ['taza', 'frasco', 'día', 'ordeño', 'cabrito', 'hora', 'minuto', 'cuarto de galón/cuartos de galón', 'pinta', 'galón/galones', 'litro', 'mililitro', 'cabra', 'punto', 'fila', 'libra', 'kilogramo', 'gramo', 'oreja', 'pata', 'semana', 'niño', 'paca'].map((noun) => noun.includes('/') ? (noun.split('/') as [string, string]) : [noun, `${noun}s`]),
}; // prettier-ignore

// A number as sheets write it: whole with commas, decimal, mixed or a plain fraction; not the end of a longer one.
const NUMBER = String.raw`(?<![\d.,/:\p{L}])(?:(\d{1,3}(?:,\d{3})+|\d+)(\.\d+)?(?: (\d+\/\d+))?|(\d+\/\d+))`;

// One pattern a language: the longest noun first, so that "cuartos de galón" is not taken for a shorter one.
const PATTERNS = Object.fromEntries(
  Object.entries(NOUNS).map(([lang, pairs]) => {
    const nouns = pairs.flat().sort((a, b) => b.length - a.length);
    return [lang, new RegExp(`${NUMBER} (${nouns.join('|')})(?![\\p{L}])`, 'giu')];
  }),
);

/** Every number whose noun has the wrong form. */
function disagreements(lang: string, told: string): string[] {
  return [...told.matchAll(PATTERNS[lang] as RegExp)].flatMap(
    ([all, digits, decimals, part, , noun = '']) => {
      // A part of a unit is singular ("3/4 cup", "3/4 de taza"); a decimal below or above one is not held to one rule.
      if (decimals !== undefined) return [];
      const singular = digits === undefined || (digits === '1' && part === undefined);
      const pair = NOUNS[lang]?.find((both) => both.includes(noun.toLowerCase()));
      return noun.toLowerCase() === pair?.[singular ? 0 : 1] ? [] : [all];
    },
  );
}

const saysOf = ({ lead, asks, mistake }: SheetTask): Message[] => [
  ...lead,
  mistake.what,
  mistake.why,
  ...asks.flatMap(({ prompt, answer, accepted, steps }) => [prompt, answer, ...accepted, ...steps]),
];

describe('numbers and their nouns', () => {
  it('are told apart by the check itself', () => {
    expect(disagreements('en', '1 cups, 2 cup, 1,000 cup, 1 1/2 cup; 1 cup, 2 cups, 3/4 cup, 11 cups, 2.5 cups')).toEqual(['1 cups', '2 cup', '1,000 cup', '1 1/2 cup']);
    expect(disagreements('es', '1 tazas, 2 taza, 21 taza; 1 taza, 21 tazas, 1 cuarto de galón, 2 cuartos de galón')).toEqual(['1 tazas', '2 taza', '21 taza']);
  });

  it('agree on every sheet, in both languages', () => {
    const both = ['en', 'es'].map((lang) => wordsUnder(lang, ['sheet', 'task']));
    fc.assert(
      fc.property(requestArb, fc.nat(3), (request, place) => {
        const grades = GRADES_OF[request.band];
        for (const task of makeSheet({ ...request, grade: grades[place % grades.length] }).tasks)
          for (const words of both)
            for (const message of saysOf(task)) {
              const told = tellText(words, message);
              expect(disagreements(words.lang, told), `${task.kind} ${message.key}: ${told}`).toEqual([]);
            }
      }),
      { numRuns: 1000 },
    );
  });
}); // prettier-ignore

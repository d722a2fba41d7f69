// What is said of a date: once each, since two schools may come at the same hours.
import { expect, it } from 'vitest';
import { dayNumber } from '../../../shared/calendar/day.ts';
import { dateNotes } from '../../../shared/trip/dateNotes.ts';
import { wordsOf } from '../../../src/site/words.ts';

const asOf = dayNumber('2026-05-21') as number;
const span = (date: string, from: number) => ({ date, from, to: from + 120, children: 24 });
const taken = [
  span('2026-05-27', 570),
  span('2026-05-27', 570),
  span('2026-05-27', 780),
  span('2026-05-30', 570),
];

it('tells the hours of other groups, each once', () => {
  const notes = dateNotes(wordsOf('en'), '2026-05-27', asOf, taken);
  expect(notes).toEqual([expect.stringMatching(/9:30.*11:30/), expect.stringMatching(/1:00.*3:00/)]);
  expect(dateNotes(wordsOf('en'), '2026-05-28', asOf, taken)).toEqual([]);
});

it('says first that a date is odd', () => {
  // 2026-05-30 is a Saturday: ISO 8601 week date 2026-W22-6 (from memory; checked with cal).
  const [odd, other] = dateNotes(wordsOf('es'), '2026-05-30', asOf, taken);
  expect(odd).toMatch(/sábado/);
  expect(other).toMatch(/9:30/);
  expect(dateNotes(wordsOf('en'), '2026-05-20', asOf, taken)).toEqual([
    expect.stringMatching(/May 21, 2026/),
  ]);
});

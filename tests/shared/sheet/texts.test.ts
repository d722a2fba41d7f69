// Texts between tasks: each before the task that it leads to, and left out where that task gave its place to another.
import { describe, expect, it } from 'vitest';
import { makeSheet } from '../../../shared/sheet/sheet.ts';
import { textsAfter, textsByTask } from '../../../shared/sheet/texts.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { bookOf, day } from '../../support/bookOf.ts';

const book = bookOf([]);
const week = weekView(book, openLedger(book, day('2026-05-21')));
// Of an empty book: the cups give their place to other tasks, ears and needs stay.
const sheet = makeSheet({
  week,
  units: 'us',
  jar_mL: 946.352946,
  name: 'a-sheet',
  band: 'k-2',
  seed: 'fern',
  tasks: ['count-cups', 'goat-ears', 'fill-up', 'goat-needs'],
});
const texts = [
  { before: 0, text: 'Hello.' },
  { before: 1, text: 'Ears now.' },
  { before: 2, text: 'A jar now.' },
  { before: 3, text: 'Needs now.' },
  { before: 4, text: 'Wash.' },
];

describe('textsByTask', () => {
  it('leaves out what leads to a task that another stands in for, but never the opening', () => {
    expect(sheet.tasks.map(({ standsIn }) => standsIn === true)).toEqual([true, false, true, false]);
    const told = sheet.tasks.map((_, index) => textsByTask(sheet, texts)(index));
    expect(told).toEqual([['Hello.'], ['Ears now.'], [], ['Needs now.']]);
  });
});

describe('textsAfter', () => {
  it('gives what ends the sheet', () => {
    expect(textsAfter(sheet, texts)).toEqual(['Wash.']);
  });
});

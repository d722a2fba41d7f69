// What a class's data sheet is made from, kept in the page's address alone; only what was understood is written there.
import { dayNumber } from '../../../calendar/day.ts';
import { PAPERS, type Paper } from '../../../sheet/pageMeasures.ts';
import { gradeOf, gradeSign, type Grade } from '../../../tasks/grades.ts';
import { MEASURED_BY, measuresFor, type Measure } from './measures.ts';
import type { SheetDoe } from './measuredSheet.ts';
import { numberOf, readCounts, readOfDoes } from './typed.ts';

/** Everything that can be filled in. */
export interface AfterWish {
  readonly grade: Grade;
  readonly paper: Paper;
  /** The day of the visit, ISO; empty where it is not said. */
  readonly date: string;
  /** Whose milk was guessed: her short name; empty where nobody guessed. */
  readonly doe: string;
  /** Guesses as they are typed. */
  readonly guesses: string;
  /** What she gave, as typed; empty where it is not known. */
  readonly gave: string;
  readonly measure: Measure;
  /** Numbers as they are typed. */
  readonly numbers: string;
}

/** The query, with its question mark. */
export function writeAfter(wish: AfterWish, does: readonly SheetDoe[]): string {
  const asked = new URLSearchParams({ grade: gradeSign(wish.grade), paper: wish.paper });
  const put = (name: string, value: string) => {
    if (value !== '') asked.set(name, value);
  };
  put('date', wish.date);
  put('doe', wish.doe);
  put('guesses', countsText(wish.guesses));
  put('gave', numberOf(wish.gave)?.toFraction() ?? '');
  asked.set('measure', wish.measure);
  put('numbers', MEASURED_BY[wish.measure] === 'doe' ? doesText(wish.numbers, does) : countsText(wish.numbers));
  return `?${asked.toString()}`;
} // prettier-ignore

const countsText = (typed: string) =>
  readCounts(typed)
    .rows.map(({ value, times }) => `${value.toFraction()}x${times}`)
    .join('_');

const doesText = (typed: string, does: readonly SheetDoe[]) =>
  readOfDoes(typed, does)
    .rows.map(({ doe, value }) => `${doe}:${value.toFraction()}`)
    .join('_');

/** Reads a query; what cannot be used takes the usual. Numbers come back one a line. */
export function readAfter(query: string, does: readonly SheetDoe[], usual: AfterWish): AfterWish {
  const asked = new URLSearchParams(query);
  const text = (name: string) => asked.get(name) ?? '';
  const lines = (name: string) => text(name).replaceAll('_', '\n');
  const grade = gradeOf(text('grade')) ?? usual.grade;
  const measure = measuresFor(grade).find((one) => one === text('measure')) ?? usual.measure;
  return {
    grade,
    paper: PAPERS.find((one) => one === text('paper')) ?? usual.paper,
    date: dayNumber(text('date')) === null ? '' : text('date'),
    doe: does.find(({ id }) => id === text('doe'))?.id ?? usual.doe,
    guesses: countedLines(lines('guesses')),
    gave: numberOf(text('gave'))?.toFraction(true) ?? '',
    measure,
    numbers: MEASURED_BY[measure] === 'doe' ? named(lines('numbers'), does) : countedLines(lines('numbers')),
  };
} // prettier-ignore

/** Numbers with how often each came, one a line. */
function countedLines(text: string): string {
  return readCounts(text)
    .rows.map(({ value, times }) =>
      times === 1 ? value.toFraction(true) : `${value.toFraction(true)} x ${times}`,
    )
    .join('\n');
}

/** Lines that name does by their short names, with their names as people say them. */
function named(text: string, does: readonly SheetDoe[]): string {
  return readOfDoes(text, does)
    .rows.map(({ doe, value }) => `${does.find(({ id }) => id === doe)?.name ?? doe} ${value.toFraction(true)}`)
    .join('\n');
} // prettier-ignore

// How each kind of figure is read back: from the places of its marks to the numbers that a child would read.
import { expect } from 'vitest';
import type { Shown } from '../../shared/quantity/grade.ts';
import type { Message } from '../../shared/sheet/message.ts';
import type { Cell, Label, Picture } from '../../shared/sheet/picture.ts';
import { readBoxPlots, readCurve, readFlow, readSquare } from './readersOlder.ts';
import { DRAWN_READERS } from './readersDrawn.ts';
import { at, labelled, numberIn, readOff, withClass, type Mark } from './drawn.ts';

type Tell = (message: Message) => string;
type Reader<P> = (picture: P, marks: readonly Mark[], markup: string, tell: Tell, done: boolean) => void;
type Readers = { readonly [K in Picture['is']]: Reader<Extract<Picture, { is: K }>> };

const valueOf = ({ num, den }: Shown): number => num / den;
const close = (read: readonly number[], said: readonly number[]): void => {
  expect(read.length).toBe(said.length);
  read.forEach((value, index) => expect(value).toBeCloseTo(said[index] as number, 3));
};
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const labelOf = (label: Label, tell: Tell): string =>
  capital(typeof label === 'string' ? label : tell(label));
/** The text of a markup, without its tags. */
const textOf = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/(\d+) ?\/ ?(\d+)/g, '$1/$2')
    .replaceAll('&amp;', '&');
/** The markup between one opening and the next of the same kind. */
const pieces = (markup: string, opening: RegExp): string[] => markup.split(opening).slice(1);

/** One reader for each kind of figure. */
export const READERS: Readers = {
  ...DRAWN_READERS,
  bars: (picture, marks) => {
    const ticks = labelled(marks, 'y', (mark) => mark.of['text-anchor'] === 'end');
    const rise = (withClass(marks, 'rect', 'edge')).map((mark) => at(mark, 'height'));
    const unit = Math.abs((ticks[0]?.at ?? 0) - (ticks.at(-1)?.at ?? 0)) / Math.abs((ticks[0]?.value ?? 0) - (ticks.at(-1)?.value ?? 0));
    close(rise.map((height) => height / unit), picture.bars.map(({ value }) => valueOf(value)));
  },
  'dot-plot': (picture, marks) => {
    const axis = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle');
    const dots = withClass(marks, 'circle', 'solid');
    close(sorted(dots.map((dot) => readOff(axis, at(dot, 'cx')))), sorted(picture.values.map(valueOf)));
    // No two dots lie on each other.
    expect(new Set(dots.map((dot) => `${dot.of['cx']}|${dot.of['cy']}`)).size).toBe(dots.length);
  },
  scatter: (picture, marks) => {
    const dots = withClass(marks, 'circle', 'solid');
    if (picture.bare) return expect(dots.length).toBe(0);
    const x = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle');
    // A label of the upright axis stands a third of its size below its line.
    const y = labelled(marks, 'y', (mark) => mark.of['text-anchor'] === 'end');
    const drop = Number(marks.find(({ tag, of }) => tag === 'text' && of['text-anchor'] === 'end')?.of['font-size']) * 0.34;
    close(dots.map((dot) => readOff(x, at(dot, 'cx'))), picture.points.map((point) => point.x));
    close(dots.map((dot) => readOff(y, at(dot, 'cy') + drop)), picture.points.map((point) => valueOf(point.y)));
    const [line] = withClass(marks, 'line', 'stroke');
    expect(line !== undefined).toBe(picture.line !== null);
    if (!line || !picture.line) return undefined;
    const ends = ['1', '2'].map((end) => [readOff(x, at(line, `x${end}`)), readOff(y, at(line, `y${end}`) + drop)] as const);
    const { slope, intercept } = picture.line;
    return close(ends.map(([, height]) => height), ends.map(([day]) => valueOf(intercept) + valueOf(slope) * day));
  },
  'number-line': (picture, marks) => {
    const axis = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle' && !mark.text.includes('.') && numberIn(mark.text) % 1 === 0 && at(mark, 'y') > 14);
    close(axis.map(({ value }) => value), Array.from({ length: picture.to - picture.from + 1 }, (_, index) => picture.from + index));
    close(withClass(marks, 'circle', 'solid').map((dot) => readOff(axis, at(dot, 'cx'))), picture.marks.map(valueOf));
  },
  clocks: (picture, _, markup) => {
    const turns = [...markup.matchAll(/rotate\((-?[\d.]+)\)/g)].map(([, angle]) => Number(angle));
    const times = picture.clocks.map(({ time }) => time.split(':').map(Number) as [number, number]);
    expect(turns.length).toBe(times.length * 2);
    times.forEach(([hours, minutes], index) => {
      expect(turns[index * 2]).toBeCloseTo(minutes * 6, 6);
      expect(turns[index * 2 + 1]).toBeCloseTo((hours % 12) * 30 + minutes / 2, 6);
    });
  },
  cups: (picture, _, markup) => {
    const groups = pieces(markup, /class="group[ "]/);
    expect(groups.map((group) => pieces(group, /class="cup[ "]/).length)).toEqual(picture.groups.map(({ count }) => count));
  },
  'picture-graph': (picture, _, markup, tell) => {
    const rows = pieces(markup, /class="whose[ "]/);
    expect(rows.map((row) => pieces(row, /class="cup[ "]/).length)).toEqual(picture.rows.map(({ count }) => count));
    rows.forEach((row, index) => expect(textOf(row)).toContain(labelOf(picture.rows[index]?.label ?? '', tell)));
  },
  jars: (picture, marks, markup) => {
    expect(pieces(markup, /translate\(/).length).toBe(picture.jars);
    // The surface of the milk is the one full line of a jar; the dashed one is its brim.
    const surfaces = marks.filter(({ tag, of }) => tag === 'line' && of['stroke-width'] === '2');
    const brims = marks.filter(({ of }) => of['stroke-dasharray'] !== undefined);
    const foot = 93;
    const cups = surfaces.map((line) => ((foot - at(line, 'y1')) / (foot - at(brims[0] as Mark, 'y1'))) * picture.cupsPerJar);
    expect(cups.reduce((sum, one) => sum + one, 0)).toBeCloseTo(picture.filled, 6);
  },
  cards: (picture, _, markup, tell) => {
    const cards = pieces(markup, /<li(?=[ >])/).map((card) => textOf(`<li${card}`));
    expect(cards.length).toBe(picture.cards.length);
    picture.cards.forEach(({ label, value }, index) => {
      const card = cards[index] as string;
      expect(card).toContain(labelOf(label, tell));
      const [, number = '', unit = ''] = /(\d[\d.,]*(?: \d+\/\d+)?|\d+\/\d+) (\D+)$/.exec(card.trim()) ?? [];
      expect(numberIn(number)).toBeCloseTo(valueOf(value), 6);
      // "1 cup", "1/4 cup", "3 cups"; "1 taza", "1/4 de taza", "3 tazas".
      expect(/s$/.test(unit.trim()), card).toBe(valueOf(value) > 1);
    });
  },
  table: (picture, _, markup, tell, done) => {
    const printed = pieces(markup, /<tr(?=[ >])/).map((row) =>
      pieces(row, /<t[hd](?=[ >])/).map((cell) => textOf(`<td${cell}`).trim()),
    );
    const rows = asWritten(printed, picture.columns.length, picture.rows.length + 1).slice(1);
    expect(rows.length).toBe(picture.rows.length);
    rows.forEach((cells, index) => {
      const said = picture.rows[index] as readonly Cell[];
      expect(cells.length).toBe(said.length);
      said.forEach((cell, place) => cellShows(cells[place] ?? '', cell, tell, done));
    });
  },
  steps: (picture, _, markup, tell) => {
    const text = textOf(markup);
    for (const { words } of picture.steps) expect(text).toContain(textOf(tell(words)));
  },
  flow: (picture, marks, _, tell) => readFlow(picture, marks, tell),
  square: (picture, marks, _, __, done) => readSquare(picture, marks, done),
  'box-plots': (picture, marks) => readBoxPlots(picture, marks),
  curve: (picture, marks, markup) => readCurve(picture, marks, markup),
}; // prettier-ignore

/** A table that was turned on its side or set in two halves to fit the page, as it was written. */
function asWritten(printed: readonly string[][], columns: number, rows: number): string[][] {
  const fits = (table: readonly string[][]): boolean =>
    table.length === rows && table.every((row) => row.length === columns);
  const turned = (table: readonly string[][]): string[][] =>
    (table[0] ?? []).map((_, place) => table.map((row) => row[place] ?? ''));
  const unfolded = (table: readonly string[][]): string[][] => {
    const half = (table[0]?.length ?? 0) / 2;
    const [head = [], ...body] = table.map((row) => row.slice(0, half));
    return [
      head,
      ...body,
      ...table
        .slice(1)
        .map((row) => row.slice(half))
        .filter((row) => row.length > 0),
    ];
  };
  const ways = [printed, turned(printed), unfolded(printed), turned(unfolded(printed))];
  return (ways.find(fits) ?? printed).map((row) => [...row]);
}

function cellShows(text: string, cell: Cell, tell: Tell, done: boolean): void {
  if ('blank' in cell) {
    if (done) expect(numberIn(text)).toBeCloseTo(valueOf(cell.blank), 6);
    else expect(text).not.toMatch(/\d/);
  } else if ('free' in cell) expect(text).toBe('');
  else if ('num' in cell) expect(numberIn(text)).toBeCloseTo(valueOf(cell), 6);
  else expect(text.toLowerCase()).toBe(tell(cell).toLowerCase());
}

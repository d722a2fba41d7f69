// Reads back the figures of the older grades: flows, squares of inheritance, box plots, curves.
import { expect } from 'vitest';
import type { Shown } from '../../shared/quantity/grade.ts';
import type { Message } from '../../shared/sheet/message.ts';
import type {
  BoxPlotsPicture,
  CurvePicture,
  FlowPicture,
  SquarePicture,
} from '../../shared/sheet/picture.ts';
import { at, labelled, readOff, withClass, type Mark } from './drawn.ts';

type Tell = (message: Message) => string;
const valueOf = ({ num, den }: Shown): number => num / den;

/** Box by its place: whose edge a point lies on, at most 2 mm away. */
function boxAt(marks: readonly Mark[], x: number, y: number): number {
  return withClass(marks, 'rect', 'edge').findIndex((box) => {
    const [left, top] = [at(box, 'x'), at(box, 'y')];
    return x > left - 2 && x < left + at(box, 'width') + 2 && y > top - 2 && y < top + at(box, 'height') + 2;
  });
}

export function readFlow(picture: FlowPicture, marks: readonly Mark[], tell: Tell): void {
  const texts = marks.filter(({ tag }) => tag === 'text').map(({ text }) => text);
  expect(texts.slice(0, picture.boxes.length)).toEqual(picture.boxes.map(({ label }) => tell(label)));
  const shafts = withClass(marks, 'line', 'stroke');
  const heads = withClass(marks, 'path', 'solid').map((head) =>
    (/M([\d.]+) ([\d.]+)/.exec(head.of['d'] ?? '') ?? []).slice(1).map(Number),
  );
  const numbers = texts.slice(picture.boxes.length).map(Number);
  expect(shafts.length).toBe(picture.arrows.length);
  picture.arrows.forEach(({ from, to, number }, index) => {
    const shaft = shafts[index] as Mark;
    const [x = 0, y = 0] = heads[index] ?? [];
    expect([boxAt(marks, at(shaft, 'x1'), at(shaft, 'y1')), boxAt(marks, x, y), numbers[index]]).toEqual([from, to, number]);
  });
} // prettier-ignore

export function readSquare(picture: SquarePicture, marks: readonly Mark[], done: boolean): void {
  const cells = withClass(marks, 'rect', 'edge');
  expect(cells.length).toBe(4);
  const texts = marks.filter(({ tag }) => tag === 'text');
  const inside = cells.map((cell) =>
    texts
      .filter((one) => at(one, 'x') > at(cell, 'x') && at(one, 'x') < at(cell, 'x') + at(cell, 'width') && at(one, 'y') > at(cell, 'y') && at(one, 'y') < at(cell, 'y') + at(cell, 'height'))
      .map(({ text }) => text),
  );
  expect(inside).toEqual(picture.cells.flat().map((pair) => (done ? [pair] : [])));
  // Each form stands over its column or beside its row.
  const over = texts.filter((one) => at(one, 'y') < at(cells[0] as Mark, 'y')).slice(-2);
  expect(over.map(({ text }) => text)).toEqual(picture.top.forms);
  expect(over.map((one) => at(one, 'x'))).toEqual([cells[0], cells[1]].map((cell) => at(cell as Mark, 'x') + at(cell as Mark, 'width') / 2));
} // prettier-ignore

export function readBoxPlots(picture: BoxPlotsPicture, marks: readonly Mark[]): void {
  const axis = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle');
  const boxes = withClass(marks, 'rect', 'edge');
  const whiskers = marks.filter(({ tag, of }) => tag === 'path' && (of['d'] ?? '').split('M').length === 5);
  const middles = withClass(marks, 'path', 'thick');
  expect(boxes.length).toBe(picture.boxes.length);
  const names = marks.filter(({ tag, of }) => tag === 'text' && of['font-weight'] === '700').map(({ text }) => text);
  expect(names.join(' ')).toBe(picture.boxes.map(({ label }) => (typeof label === 'string' ? label : label.key)).join(' '));
  picture.boxes.forEach((one, index) => {
    const box = boxes[index] as Mark;
    const ends = [...(whiskers[index]?.of['d'] ?? '').matchAll(/[MH]([\d.]+)/g)].map(([, x]) => Number(x));
    const median = Number(/M([\d.]+)/.exec(middles[index]?.of['d'] ?? '')?.[1]);
    const read = [ends[0] ?? 0, at(box, 'x'), median, at(box, 'x') + at(box, 'width'), Math.max(...ends)].map((x) => readOff(axis, x));
    [one.low, one.q1, one.median, one.q3, one.high].forEach((said, place) => expect(read[place]).toBeCloseTo(valueOf(said), 6));
  });
} // prettier-ignore

export function readCurve(picture: CurvePicture, marks: readonly Mark[], markup: string): void {
  const x = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle');
  const y = labelled(marks, 'y', (mark) => mark.of['text-anchor'] === 'end');
  const type = Number(marks.find(({ tag, of }) => tag === 'text' && of['text-anchor'] === 'end')?.of['font-size']);
  const [, left = 0, top = 0] = (/translate\(([\d.]+) ([\d.]+)\)/.exec(markup) ?? []).map(Number);
  const place = (mm_x: number, mm_y: number) => [readOff(x, mm_x + left), readOff(y, mm_y + top + type * 0.34)] as const;
  const dots = withClass(marks, 'circle', 'solid').map((dot) => place(at(dot, 'cx'), at(dot, 'cy')));
  expect(dots.length).toBe(picture.points.length);
  dots.forEach(([read_x, read_y], index) => {
    expect(read_x).toBeCloseTo(picture.points[index]?.x ?? Number.NaN, 3);
    expect(read_y).toBeCloseTo(valueOf(picture.points[index]?.y as Shown), 3);
  });
  const [line] = withClass(marks, 'line', 'stroke');
  if (picture.line) {
    const { slope, intercept } = picture.line;
    for (const end of ['1', '2']) {
      const [day, height] = place(at(line as Mark, `x${end}`), at(line as Mark, `y${end}`));
      expect(height).toBeCloseTo(Math.max(0, valueOf(intercept) + valueOf(slope) * day), 3);
    }
  }
  const path = marks.find(({ tag, of }) => tag === 'path' && (of['d'] ?? '').split('L').length > 50)?.of['d'] ?? '';
  expect(path !== '').toBe(picture.wood !== null);
  if (!picture.wood) return;
  const [a, b, c] = [picture.wood.a, picture.wood.b, picture.wood.c].map(valueOf) as [number, number, number];
  for (const [, mm_x, mm_y] of [...path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].slice(1)) {
    const [day, height] = place(Number(mm_x), Number(mm_y));
    // Half a hundredth of a millimetre either way, where the curve is steep.
    expect(Math.abs(height - a * day ** b * Math.exp(-c * day))).toBeLessThan(0.02 * Math.max(...y.map(({ value }) => value)));
  }
} // prettier-ignore

// How the figures that a child draws into, sorts or puts in order are read back from their marks.
import { expect } from 'vitest';
import type { DrawnPicture } from '../../shared/sheet/drawnPicture.ts';
import type { Message } from '../../shared/sheet/message.ts';
import { at, labelled, numberIn, readOff, withClass, type Mark } from './drawn.ts';

type Tell = (message: Message) => string;
type Reader<P> = (picture: P, marks: readonly Mark[], markup: string, tell: Tell, done: boolean) => void;
type Readers = { readonly [K in DrawnPicture['is']]: Reader<Extract<DrawnPicture, { is: K }>> };

const pieces = (markup: string, opening: RegExp): string[] => markup.split(opening).slice(1);
const textOf = (markup: string): string => markup.replace(/<title>.*?<\/title>/gs, ' ').replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ').replaceAll('&amp;', '&').trim(); // prettier-ignore
const turn = (markup: string, hand: string): number => Number(new RegExp(`class="${hand}[^"]*" transform="rotate\\((-?[\\d.]+)\\)`).exec(markup)?.[1] ?? Number.NaN); // prettier-ignore
const valueOf = ({ num, den }: { num: number; den: number }): number => num / den;
const close = (read: readonly number[], said: readonly number[]): void => {
  expect(read.length).toBe(said.length);
  read.forEach((value, index) => expect(value).toBeCloseTo(said[index] as number, 3));
};
/** What stands in the boxes of cards, and the words beside them. */
const boxesOf = (markup: string): { box: string; words: string }[] =>
  pieces(markup, /<li(?=[ >])/).map((card) => {
    const [, box = '', rest = ''] = /class="box[^"]*"[^>]*>([^<]*)<\/span>(.*)/s.exec(card) ?? [];
    return { box: box.trim(), words: textOf(rest) };
  });

/** One reader for each kind of these figures. */
export const DRAWN_READERS: Readers = {
  dials: (picture, _, markup, __, done) => {
    const dials = pieces(markup, /<g transform="translate/);
    expect(dials.length).toBe(picture.dials.length);
    picture.dials.forEach(({ time, hands }, index) => {
      const [hours = 0, minutes = 0] = time.split(':').map(Number);
      const [hour, minute] = ['hour-hand', 'minute-hand'].map((hand) => turn(dials[index] as string, hand));
      if (hands || done) {
        expect(minute).toBeCloseTo(minutes * 6, 6);
        expect(hour).toBeCloseTo((hours % 12) * 30 + minutes / 2, 6);
      } else expect([hour, minute]).toEqual([Number.NaN, Number.NaN]);
      // Twelve hours stand on every face, and the time in digits in the key alone.
      expect(/\d:\d\d/.test(textOf(dials[index] as string))).toBe(done);
    });
  },
  'block-graph': (picture, marks, markup, _, done) => {
    const rows = pieces(markup, /class="whose[ "]/);
    expect(rows.length).toBe(picture.rows.length);
    const squares = withClass(marks, 'rect', 'square');
    const levels = [...new Set(squares.map((one) => at(one, 'y')))];
    picture.rows.forEach(({ count }, index) => {
      const row = squares.filter((one) => at(one, 'y') === levels[index]);
      expect(row.length).toBe(picture.most);
      const filled = row.filter((one) => (one.of['class'] ?? '').includes('filled'));
      expect(filled.length).toBe(done ? count : 0);
      expect(textOf(rows[index] as string)).toContain(String(count));
    });
    // A square is a centimeter on paper, as the box and its width in millimeters are the same.
    for (const one of squares) expect([at(one, 'width'), at(one, 'height')]).toEqual([10, 10]);
  },
  scenes: (picture, _, markup, __, done) => {
    const boxes = pieces(markup, /<li(?=[ >])/).map((card) => /class="box[^"]*"[^>]*>([^<]*)</.exec(card)?.[1]?.trim());
    expect(boxes).toEqual(picture.scenes.map(({ place }) => (done ? String(place) : '')));
  },
  picks: (picture, _, markup, tell, done) => {
    const cards = pieces(markup, /<li(?=[ >])/);
    expect(cards.map(textOf).map((text) => text.replace(/^[^>]*>/, '').trim())).toEqual(picture.picks.map(({ words }) => tell(words)));
    expect(cards.map((card) => /^[^>]*ringed/.test(card))).toEqual(picture.picks.map(({ right }) => done && right));
  },
  faces: (picture, _, markup) => {
    expect(pieces(markup, /class="goat[ "]/).length).toBe(picture.faces.length);
  },
  tally: (picture, marks, markup, tell) => {
    expect(withClass(marks, 'td', 'marks').length).toBe(picture.rows.length);
    expect(pieces(markup, /<th scope="row"/).map((row) => textOf(`<th${row}`).split(' ').slice(0, 1))).toEqual(picture.rows.map((row) => tell(row).split(' ').slice(0, 1)));
  },
  parts: (picture, marks, _, __, done) => {
    const cuts = withClass(marks, 'path', 'cut');
    if (!done) return expect(cuts.length).toBe(0);
    if (picture.shape === 'circle') return expect(cuts.length).toBe(picture.parts);
    const edge = marks.find(({ tag, of }) => tag === 'rect' && (of['class'] ?? '').includes('edge')) as Mark;
    const places = cuts.map((cut) => Number(/^M([\d.]+)/.exec(cut.of['d'] ?? '')?.[1]));
    const walls = [at(edge, 'x'), ...places, at(edge, 'x') + at(edge, 'width')];
    return close(walls.slice(1).map((wall, index) => (wall - (walls[index] as number)) / at(edge, 'width')), Array.from({ length: picture.parts }, () => 1 / picture.parts));
  },
  jugs: (picture, _, markup) => {
    const jugs = pieces(markup, /class="jug[ "]/);
    expect(jugs.length).toBe(picture.jugs.length);
    const yOf = (path: string): number => Number(/d="M[\d.]+ ([\d.]+)/.exec(path)?.[1]);
    picture.jugs.forEach(({ litres }, index) => {
      const paths = (jugs[index] as string).match(/<path[^>]*>/g) ?? [];
      const ticks = paths.filter((path) => /class="[^"]*tick/.test(path)).map(yOf);
      const level = yOf(paths.find((path) => /class="[^"]*level/.test(path)) ?? '');
      expect(ticks.length).toBe(picture.top);
      // The level lies on the mark of its number, counted from the floor up.
      expect(ticks.findIndex((tick) => Math.abs(tick - level) < 1e-6) + 1).toBe(valueOf(litres));
    });
  },
  wheel: (picture, marks, markup, tell, done) => {
    const inBoxes = marks.filter(({ tag, text }) => tag === 'text' && /^\d+$/.test(text)).map(({ text }) => Number(text));
    const order = picture.cards.map((_, place) => picture.cards.findIndex((card) => card.place === place + 1) + 1);
    expect(inBoxes).toEqual(done ? order : []);
    expect(withClass(marks, 'rect', 'edge').length).toBe(picture.cards.length + 1);
    expect(textOf(markup)).toContain(tell(picture.given));
    picture.cards.forEach(({ words }, index) => expect(textOf(markup)).toContain(`${index + 1} ${tell(words)}`));
  },
  'part-cups': (picture, _, markup) => {
    const cups = pieces(markup, /<span style="inline-size/);
    expect(cups.length).toBe(picture.count);
    for (const cup of cups) {
      const inside = /<rect x="18" y="24" width="64" height="76"/.test(cup);
      const level = Number(/y1="([\d.]+)" y2="[\d.]+"[^>]*stroke-width="3.4"/.exec(cup)?.[1]);
      expect(inside).toBe(true);
      expect((100 - level) / 76).toBeCloseTo(valueOf(picture.of), 3);
    }
  },
  'doe-parts': (picture, marks, markup, tell, done) => {
    expect(marks.filter(({ tag, text }) => tag === 'text' && text !== '').map(({ text }) => numberIn(text))).toEqual(picture.parts.map((_, index) => index + 1));
    expect(boxesOf(markup)).toEqual(picture.cards.map(({ number, words }) => ({ box: done ? String(number) : '', words: tell(words) })));
  },
  notes: (picture, marks, markup, tell) => {
    expect(withClass(marks, 'span', 'note-line').length).toBe(picture.heads.length * picture.lines);
    for (const head of picture.heads) expect(textOf(markup)).toContain(tell(head));
  },
  grid: (picture, marks) => {
    const x = labelled(marks, 'x', (mark) => mark.of['text-anchor'] === 'middle');
    const y = labelled(marks, 'y', (mark) => mark.of['text-anchor'] === 'end');
    const drop = Number(marks.find(({ tag, of }) => tag === 'text' && of['text-anchor'] === 'end')?.of['font-size']) * 0.34;
    const dots = withClass(marks, 'circle', 'point');
    close(dots.map((dot) => readOff(x, at(dot, 'cx'))), picture.points.map((point) => point.x));
    close(dots.map((dot) => readOff(y, at(dot, 'cy') + drop)), picture.points.map((point) => valueOf(point.y)));
    close(x.map(({ value }) => value), Array.from({ length: picture.xTop }, (_, index) => index + 1));
  },
}; // prettier-ignore

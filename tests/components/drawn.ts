// Reads a drawing back from its markup: which marks stand where, without the code that put them there.
import { render } from 'svelte/server';
import type { Component } from 'svelte';
import Picture from '../../src/components/sheets/Picture.svelte';
import { measuresFor, type PrintSize } from '../../shared/sheet/pageMeasures.ts';
import type { Picture as PictureOf } from '../../shared/sheet/picture.ts';
import type { Grade } from '../../shared/tasks/standards.ts';
import { wordsOf } from '../../src/site/words.ts';

/** An element of a drawing: its attributes, and the text right inside it. */
export interface Mark {
  readonly tag: string;
  readonly of: Readonly<Record<string, string>>;
  readonly text: string;
}

const UNESCAPED: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** The markup of a figure as a sheet of a grade prints it. */
export function markupOf(
  picture: PictureOf,
  grade: Grade,
  lang: string,
  done = false,
  print: PrintSize = 'ordinary',
): string {
  const props = { picture, words: wordsOf(lang), m: measuresFor(grade, print), done };
  return render(Picture as unknown as Component<typeof props>, { props }).body.replace(/<!--.*?-->/gs, '');
}

/** Every element of a markup in order. */
export function marksIn(markup: string): Mark[] {
  return [...markup.matchAll(/<([a-z]+)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*\/?>([^<]*)/gi)].map(
    ([, tag = '', attributes = '', text = '']) => ({
      tag,
      text: plain(text).trim(),
      of: Object.fromEntries(
        [...attributes.matchAll(/([\w:-]+)(?:="([^"]*)")?/g)].map(([, name = '', value = '']) => [
          name,
          plain(value),
        ]),
      ),
    }),
  );
}

const plain = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot);/g, (sign) => UNESCAPED[sign] ?? sign);

/** Elements of a tag that carry all of some classes. */
export function withClass(marks: readonly Mark[], tag: string, ...classes: string[]): Mark[] {
  return marks.filter(
    (mark) => mark.tag === tag && classes.every((one) => (mark.of['class'] ?? '').split(/\s+/).includes(one)),
  );
}

/** An attribute as a number. */
export const at = (mark: Mark, name: string): number => Number(mark.of[name]);

/** Labels that are numbers, with the place of their text along one direction. */
export function labelled(
  marks: readonly Mark[],
  along: 'x' | 'y',
  keep: (mark: Mark) => boolean,
): { value: number; at: number }[] {
  return marks
    .filter((mark) => mark.tag === 'text' && /^[−\d][\d.,]*(?: \d+\/\d+)?$/.test(mark.text) && keep(mark))
    .map((mark) => ({ value: numberIn(mark.text), at: at(mark, along) }));
}

/** A printed number as a double: "1,200", "−0.5", "2 3/4". */
export function numberIn(text: string): number {
  const [, sign, whole = '0', top, bottom] =
    /^(−?)(?:([\d.,]+)(?!\/))?(?: ?(\d+)\/(\d+))?$/.exec(text.trim()) ?? [];
  const part = top && bottom ? Number(top) / Number(bottom) : 0;
  return (Number(whole.replaceAll(',', '')) + part) * (sign === '−' ? -1 : 1);
}

/** The value at a place, read off an axis by two of its labels. */
export function readOff(
  axis: readonly { readonly value: number; readonly at: number }[],
  place: number,
): number {
  const [first, last] = [axis[0], axis.at(-1)];
  if (!first || !last || first.at === last.at) throw new Error('An axis needs two labels.');
  return first.value + ((place - first.at) * (last.value - first.value)) / (last.at - first.at);
}

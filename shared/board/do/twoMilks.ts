// Two milks on one scale: a guess whether goat's or cow's has more of something, then all milks of the table beside each other.
import type { DoeLook } from '../../drawing/doeLook.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { textsOf, type Told } from './told.ts';

/** A milk that the published table holds. */
export type MilkName = 'goat' | 'cow' | 'sheep' | 'human';
/** What a cup of it can be asked for. */
export type MilkPart = 'protein' | 'fat' | 'sugar' | 'calcium' | 'vitaminA' | 'folate';

/** One milk's amount in a cup. */
export interface MilkBar {
  readonly milk: MilkName;
  readonly value: number;
  /** As a whole number, and as exact as its size asks for. */
  readonly whole: string;
  readonly exact: string;
}

/** Something in milk, and how much of it a cup of each milk has. */
export interface MilkScale {
  readonly part: MilkPart;
  readonly unit: string;
  /** The scale's marks from 0, the last one at or above the largest amount. */
  readonly marks: readonly number[];
  /** Goat first, then cow, then the others that the table has. */
  readonly bars: readonly MilkBar[];
}

/** All that can be compared. */
export interface TwoMilksPlan {
  /** The goat that stands for her milk. */
  readonly goat: DoeLook;
  readonly scales: readonly MilkScale[];
}

/** What there is to choose from, in an order that the seed gives. */
export function milkParts({ scales }: TwoMilksPlan, seed: number): MilkPart[] {
  return chanceOf(`milks/${seed}`).shuffle(scales.map(({ part }) => part));
}

/** The scale of a part; throws where the plan has none. */
export function scaleOf({ scales }: TwoMilksPlan, part: MilkPart): MilkScale {
  const scale = scales.find((one) => one.part === part);
  if (!scale) throw new Error(`The plan has no scale of "${part}".`);
  return scale;
}

/** Which of goat's and cow's milk has more of it. */
export function richerMilk({ bars: [goat, cow] }: MilkScale): 'goat' | 'cow' {
  return (goat?.value ?? 0) > (cow?.value ?? 0) ? 'goat' : 'cow';
}

/** What the board says after a guess; that one milk is no safe swap for the other stands on the page all the time. */
export function milksVerdict(words: Words, scale: MilkScale, guess: 'goat' | 'cow'): Told {
  const right = guess === richerMilk(scale);
  const [goat, cow] = scale.bars;
  const slots = {
    part: say(words, `barn.do.two-milks.part.${scale.part}`),
    goat: goat?.whole ?? '',
    cow: cow?.whole ?? '',
    unit: say(words, `barn.do.two-milks.unit.${scale.unit}`),
  };
  const found = say(words, `barn.do.two-milks.${right ? 'right' : 'other'}.${richerMilk(scale)}`, slots);
  return {
    right,
    text: `${found} ${say(words, `barn.do.two-milks.for.${scale.part}`)}`,
    more: say(words, `barn.do.two-milks.more.${scale.part}`),
  };
}

/** The question about a part. */
export function milksAsk(words: Words, part: MilkPart): string {
  return say(words, 'barn.do.two-milks.ask', { part: say(words, `barn.do.two-milks.part.${part}`) });
}

/** Everything that this page may say. */
export function twoMilksSays(words: Words, { scales }: TwoMilksPlan): string[] {
  return [
    say(words, 'barn.do.two-milks.choose'),
    say(words, 'barn.do.two-milks.allergy'),
    ...scales.flatMap((scale) => [
      milksAsk(words, scale.part),
      ...textsOf([milksVerdict(words, scale, 'goat'), milksVerdict(words, scale, 'cow')]),
    ]),
  ];
}

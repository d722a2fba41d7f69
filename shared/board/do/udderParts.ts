// Find the parts of the udder: the board names one, a child taps it in the cut-open drawing.
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { daySlots, type DayPlan } from './doeDay.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** A part of the udder, as the drawing shows it. */
export type UdderPart = 'half' | 'cells' | 'cistern' | 'teat' | 'canal';

/** The parts, from where milk is made to where it leaves; the whole half first. */
export const UDDER_PARTS: readonly UdderPart[] = Object.freeze(['half', 'cells', 'cistern', 'teat', 'canal']);

/** The parts in the order in which they are asked for. Any seed gives one. */
export function udderPartsAsked(seed: number): UdderPart[] {
  return chanceOf(`udder-${seed}`).shuffle(UDDER_PARTS);
}

/** What the board says when a part was asked for and another, or this one, was tapped. */
export function udderPartsVerdict(words: Words, asked: UdderPart, tapped: UdderPart): Told {
  const found = asked === tapped;
  return tellTap(words, `barn.do.udder-parts.${found ? 'found' : 'other'}.${tapped}`, found);
}

/** What is said when all parts are found: the way of a doe's own milk, where the book knows one. */
export function udderPartsEnd(words: Words, plan: DayPlan): string {
  const { key, slots } = daySlots(words, plan.day);
  return say(words, `barn.do.udder-parts.done.${key}`, slots);
}

/** Everything that this page may say. */
export function udderPartsSays(words: Words, plan: DayPlan): string[] {
  const taps = UDDER_PARTS.flatMap((asked) =>
    UDDER_PARTS.map((tapped) => udderPartsVerdict(words, asked, tapped)),
  );
  return [
    ...UDDER_PARTS.map((part) => say(words, `barn.do.udder-parts.ask.${part}`)),
    udderPartsEnd(words, plan),
    ...textsOf(taps),
  ];
}

// Milk one teat by hand, finger by finger: which order brings the milk out, and why another does not.
// The order of the fingers is common practice, no source.
import { say, type Words } from '../../words/words.ts';
import { daySlots, type DayPlan } from './doeDay.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** What a hand can do at the teat. `top` is thumb and first finger together. */
export type Squeeze = 'top' | 'second' | 'third' | 'little' | 'letgo' | 'pull';

/** One squeeze in its right order. */
export const SQUEEZE_IN_ORDER: readonly Squeeze[] = Object.freeze([
  'top',
  'second',
  'third',
  'little',
  'letgo',
]);
/** Everything that can be tapped: the fingers from the top down, then the whole hand. */
export const SQUEEZE_TAPS: readonly Squeeze[] = Object.freeze([...SQUEEZE_IN_ORDER, 'pull']);

/** What happens in the drawing after a tap. */
export interface SqueezeTold extends Told {
  /** Steps of the squeeze that are done now; 0 again after the hand has let go. */
  readonly done: number;
  /** Where the milk goes: out below, back up, into the empty teat, or nowhere. */
  readonly flow: 'out' | 'up' | 'refill' | 'none';
}

/** What the board says and shows when `tapped` is tapped after `done` right steps of this squeeze (0..4). */
export function squeezeVerdict(words: Words, plan: DayPlan, done: number, tapped: Squeeze): SqueezeTold {
  const said = (key: string, right: boolean) => tellTap(words, `barn.do.squeeze.${key}`, right);
  const place = SQUEEZE_IN_ORDER.indexOf(tapped);
  if (tapped === 'pull') return { ...said('wrong.pull', false), done, flow: 'none' };
  if (place < done) return { ...said('wrong.shut', false), done, flow: 'none' };
  if (tapped === 'letgo' && done < place)
    return { ...said(done === 0 ? 'wrong.open' : 'wrong.early', false), done, flow: 'none' };
  if (place > done) {
    // Without the ring on top the milk takes the wide way, back into the udder.
    return done === 0
      ? { ...said('wrong.up', false), done, flow: 'up' }
      : { ...said('wrong.skipped', false), done, flow: 'none' };
  }
  if (tapped === 'letgo') {
    const { key, slots } = daySlots(words, plan.day);
    return { ...tellTap(words, `barn.do.squeeze.right.letgo.${key}`, true, slots), done: 0, flow: 'refill' };
  }
  return { ...said(`right.${tapped}`, true), done: done + 1, flow: tapped === 'top' ? 'none' : 'out' };
}

/** Everything that this page may say. */
export function squeezeSays(words: Words, plan: DayPlan): string[] {
  const taps = SQUEEZE_IN_ORDER.flatMap((_, done) =>
    SQUEEZE_TAPS.map((tapped) => squeezeVerdict(words, plan, done, tapped)),
  );
  return [
    say(words, 'barn.do.squeeze.ask'),
    ...SQUEEZE_TAPS.map((tapped) => say(words, `barn.do.squeeze.name.${tapped}`)),
    ...textsOf(taps),
  ];
}

// What a doe does on a day of the coming year: by the book, and after a kidding that is not on record by what is likely.
import { phaseOn, type Phase, type PhaseSpan } from '../herd/expected.ts';
import { LACTATION_DAYS, NIGHTS_APART_DAYS, WITH_KIDS_DAYS } from '../year/defaults.ts';
import { DRY_DAYS } from '../year/gestation.ts';
import type { SeasonDoe } from './visitTypes.ts';

/** A doe's state on a day; `unknown` where nothing has been written down of her for long, or she may be in either of two. */
export type DoeState = Exclude<Phase, 'none'> | 'not kidded' | 'unknown';

/** Days after a kidding at which the likely phases begin; by common practice. */
export const LIKELY = Object.freeze({
  apart: WITH_KIDS_DAYS,
  weaned: WITH_KIDS_DAYS + NIGHTS_APART_DAYS.usual,
  weanedLate: WITH_KIDS_DAYS + NIGHTS_APART_DAYS.high,
});
// A lactation on record outside these is a loss, or two years in one, and tells nothing of the next.
const OWN_DAYS = Object.freeze({ low: 120, high: 400 });

/** Whether a phase has milkings. */
export function isMilked(state: DoeState | Phase): boolean {
  return state === 'nights apart' || state === 'twice a day';
}

/** Whether her kids of the last time stayed with her; those of a first time are taken to. */
export function isReared(spans: readonly PhaseSpan[], kiddings: readonly number[]): boolean {
  const last = kiddings.at(-1);
  if (last === undefined) return true;
  // Bottle kids are with her on the day of the kidding alone.
  return !spans.some(({ phase, from }) => phase === 'twice a day' && from === last + 1);
}

/** Days after her next kidding at which she is likely dried off: as many as the last time on record, else the usual. */
export function milkDays(spans: readonly PhaseSpan[], kiddings: readonly number[]): number {
  const dry = spans.findLast(({ phase }) => phase === 'dry')?.from;
  const own = dry === undefined ? NaN : dry - (kiddings.findLast((day) => day <= dry) ?? NaN);
  return own >= OWN_DAYS.low && own <= OWN_DAYS.high ? own : LACTATION_DAYS.usual;
}

/** Her state on a day, and whether it rests on what is likely instead of the book. */
export function stateOn(doe: SeasonDoe, day: number): { readonly state: DoeState; readonly likely: boolean } {
  const { due, spans, quiet } = doe;
  const phase = phaseOn(spans, day);
  const isReckoned = due !== null && due.basis !== 'book' && day >= due.from;
  // What the book says of a rest or of kids holds; of her milk, and of what follows, it says too little.
  if (quiet && (isReckoned || phase === 'none' || isMilked(phase)))
    return { state: 'unknown', likely: false };
  if (isReckoned) return { state: likelyAfter(doe, day - due.day), likely: true };
  if (phase === 'none') return { state: 'not kidded', likely: false };
  // Nobody has written down when she goes dry, but she rests before her next kids are born.
  const rests = isMilked(phase) && due !== null && day < due.day && due.day - day <= DRY_DAYS.usual;
  return rests ? { state: 'dry', likely: true } : { state: phase, likely: false };
}

function likelyAfter(doe: SeasonDoe, days: number): DoeState {
  if (days < 0) return 'dry';
  if (days >= milkDays(doe.spans, doe.kiddings)) return 'dry';
  if (!isReared(doe.spans, doe.kiddings)) return days < 1 ? 'with kids' : 'twice a day';
  if (days < LIKELY.apart) return 'with kids';
  return days < LIKELY.weaned ? 'nights apart' : 'twice a day';
}

/**
 * How she is surely milked on a day: in the morning, or twice; null where she is not, or where it hangs on the day
 * of a kidding that is not on record.
 */
export function wayOn(doe: SeasonDoe, day: number): 'am' | 'both' | null {
  const { due } = doe;
  const { state, likely } = stateOn(doe, day);
  if (!isMilked(state)) return null;
  if (!likely || !due) return state === 'twice a day' ? 'both' : 'am';
  const [least, most] = [day - due.to, day - due.from];
  if (most >= Math.min(LACTATION_DAYS.low, milkDays(doe.spans, doe.kiddings))) return null;
  if (!isReared(doe.spans, doe.kiddings)) return least >= 1 ? 'both' : null;
  if (least < LIKELY.apart) return null;
  return least >= LIKELY.weanedLate ? 'both' : 'am';
}

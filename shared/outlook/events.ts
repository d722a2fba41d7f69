// What happens to a doe on a coming day: her phases on record, and the usual rest before a kidding.
import { phaseOn, type PhaseSpan } from '../herd/expected.ts';
import type { Kidding } from '../herd/types.ts';
import type { DoeEvent, Way } from './outcome.ts';

// Days of rest before a kidding where no dry date is on record. Source: about 60 days dry (45 to 60 usual).
const REST_DAYS = 60;

/** The way a doe is milked on a day with this event; null where she is not. */
export function wayOf(event: DoeEvent): Way | null {
  if (event.kind === 'twice a day') return 'both';
  return event.kind === 'nights apart' ? 'am' : null;
}

/** The kidding that a day belongs to, of a doe's kiddings in order of time. */
export function kiddingOn(kiddings: readonly Kidding[], day: number): Kidding | null {
  return kiddings.findLast((one) => one.day <= day) ?? null;
}

/**
 * What happens to a doe on a day. `kiddings` are hers in order of time, those to come included, and
 * `spans` their phases.
 */
export function eventOn(kiddings: readonly Kidding[], spans: readonly PhaseSpan[], day: number): DoeEvent {
  const kidding = kiddingOn(kiddings, day);
  if (!kidding) return { kind: 'not kidded', first: kiddings[0]?.day ?? null };
  const phase = phaseOn(spans, day);
  if (phase === 'dry') return { kind: 'dry', since: Math.max(kidding.dry ?? kidding.day, kidding.day) };
  if (phase === 'with kids' || phase === 'none') return withKids(kidding, spans, day);
  const next = kiddings.find((one) => one.day > day);
  if (next && kidding.dry === null && next.day - day <= REST_DAYS)
    return { kind: 'rest before kidding', kidding: next.day, rest_days: REST_DAYS };
  return { kind: phase, daysInMilk: day - kidding.day };
}

function withKids(kidding: Kidding, spans: readonly PhaseSpan[], day: number): DoeEvent {
  const until = spans.find(
    (one) => one.phase === 'with kids' && one.from <= day && (one.to ?? day) >= day,
  )?.to;
  return { kind: 'with kids', since: kidding.day, until: until ?? null };
}

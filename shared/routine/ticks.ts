// What is ticked of a milking: kept on one phone, for this milking only, and begun anew with the next.

/** A reading of the thermometer, in the unit that it shows. `at` is a clock time, `HH:MM`. */
export interface TickedReading {
  readonly at: string;
  readonly degrees: number;
  readonly unit: 'F' | 'C';
}

/** Everything that was ticked and read at one milking. */
export interface Ticks {
  /** `2026-05-21 am`: another milking's ticks are of no use. */
  readonly milking: string;
  /** Numbers of the steps that are done, from 1; those taken for each doe are about the doe who stands there now. */
  readonly done: readonly number[];
  /** Ids of the does who have been milked. */
  readonly does: readonly string[];
  /** Clock times, `HH:MM`; null while nobody has written them. */
  readonly start: string | null;
  readonly end: string | null;
  readonly readings: readonly TickedReading[];
}

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

/** Whether a text is a clock time, `HH:MM`. */
export function isClock(text: unknown): text is string {
  return typeof text === 'string' && CLOCK.test(text);
}

/** A milking of which nothing is done yet. */
export function freshTicks(milking: string): Ticks {
  return { milking, done: [], does: [], start: null, end: null, readings: [] };
}

/** What was kept, or a fresh start: for another milking, and for a text that is none of ours. */
export function readTicks(text: string | null, milking: string): Ticks {
  const fresh = freshTicks(milking);
  if (text === null) return fresh;
  let kept: unknown;
  try {
    kept = JSON.parse(text);
  } catch {
    return fresh;
  }
  if (typeof kept !== 'object' || kept === null) return fresh;
  const { milking: of, done, does, start, end, readings } = kept as Record<string, unknown>;
  if (of !== milking) return fresh;
  const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
  return {
    milking,
    done: list(done).filter((one): one is number => Number.isInteger(one)),
    does: list(does).filter((one): one is string => typeof one === 'string'),
    start: isClock(start) ? start : null,
    end: isClock(end) ? end : null,
    readings: list(readings).filter(isReading),
  };
}

function isReading(value: unknown): value is TickedReading {
  if (typeof value !== 'object' || value === null) return false;
  const { at, degrees, unit } = value as Record<string, unknown>;
  return (
    isClock(at) && typeof degrees === 'number' && Number.isFinite(degrees) && (unit === 'F' || unit === 'C')
  );
}

/** Ticks a step, or takes its tick away. */
export function tickStep(ticks: Ticks, step: number): Ticks {
  const done = ticks.done.includes(step)
    ? ticks.done.filter((one) => one !== step)
    : [...ticks.done, step].sort((a, b) => a - b);
  return { ...ticks, done };
}

/**
 * Says that a doe is milked, or that she is not after all. The steps in `eachDoe` are then free again, for the next doe.
 */
export function tickDoe(ticks: Ticks, doe: string, eachDoe: readonly number[]): Ticks {
  if (ticks.does.includes(doe)) return { ...ticks, does: ticks.does.filter((one) => one !== doe) };
  return { ...ticks, does: [...ticks.does, doe], done: ticks.done.filter((one) => !eachDoe.includes(one)) };
}

// When a row was written: ISO 8601, by the farm's own clock where no zone is named.
import { Temporal } from 'temporal-polyfill';
import { readDay } from './dates.ts';
import { isoDate } from '../../shared/calendar/day.ts';

const MOMENT =
  /^(\d{4}-\d{2}-\d{2})(?:[Tt ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(Z|z|[+-]\d{2}(?::?\d{2})?)?)?$/;
const DAY_MS = 86_400_000;

/** Reads a moment as ms since 1970-01-01T00:00Z, or null where the text is none. */
export type ReadMoment = (text: string) => number | null;

/**
 * A reader for a farm's time zone. It remembers dates and the zone's offset on them, so that a
 * long book stays quick; only on days when the clocks change is each time looked up.
 */
export function momentReader(timeZone: string): ReadMoment {
  const days = new Map<string, number | null>();
  const offsets = new Map<number, number | null>();
  const dayOf = (date: string) => {
    let day = days.get(date);
    if (day === undefined) days.set(date, (day = readDay(date)));
    return day;
  };
  const offsetOf = (day: number) => {
    let offset = offsets.get(day);
    if (offset === undefined) offsets.set(day, (offset = steadyOffset_ms(day, timeZone)));
    return offset;
  };
  return (text) => {
    const match = MOMENT.exec(text);
    if (!match) return null;
    const day = dayOf(match[1] ?? '');
    const [hour, minute, second] = [Number(match[2] ?? 0), Number(match[3] ?? 0), Number(match[4] ?? 0)];
    if (day === null || hour > 23 || minute > 59 || second > 59) return null;
    const part_ms = match[5] ? Math.floor(Number(`0.${match[5]}`) * 1000) : 0;
    const clock_ms = day * DAY_MS + ((hour * 60 + minute) * 60 + second) * 1000 + part_ms;
    if (match[6]) return withZone(clock_ms, match[6]);
    const offset = offsetOf(day);
    return offset === null ? lookedUp(clock_ms, timeZone) : clock_ms - offset;
  };
}

function withZone(clock_ms: number, zone: string): number | null {
  if (zone === 'Z' || zone === 'z') return clock_ms;
  const [hours, minutes] = [Number(zone.slice(1, 3)), Number(zone.slice(3).replace(':', '') || 0)];
  if (hours > 23 || minutes > 59) return null;
  const offset_ms = (hours * 60 + minutes) * 60_000;
  return zone[0] === '-' ? clock_ms + offset_ms : clock_ms - offset_ms;
}

/** The zone's offset on a day on which the clocks do not change, else null. */
function steadyOffset_ms(day: number, timeZone: string): number | null {
  const offsetAt = (date: string) =>
    Temporal.PlainDate.from(date).toZonedDateTime(timeZone).offsetNanoseconds / 1e6;
  const offset = offsetAt(isoDate(day));
  return offset === offsetAt(isoDate(day + 1)) ? offset : null;
}

// A time that the clocks pass twice is the first of the two; one that they skip is as long after.
function lookedUp(clock_ms: number, timeZone: string): number {
  const plain = Temporal.Instant.fromEpochMilliseconds(clock_ms).toZonedDateTimeISO('UTC').toPlainDateTime();
  return plain.toZonedDateTime(timeZone).epochMilliseconds;
}

/** The day on a farm's calendar at a moment. */
export function dayAt(now_ms: number, timeZone: string): string {
  return Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

const QUARTER_ms = 900_000;

/**
 * A writer of moments as ISO 8601 with milliseconds and the farm's offset: `2026-05-21T06:40:12.345-05:00`. It remembers
 * the offset of each quarter of an hour, since clocks change at no other moment.
 */
export function momentWriter(timeZone: string): (moment_ms: number) => string {
  const offsets = new Map<number, number>();
  return (moment_ms) => {
    const quarter = Math.floor(moment_ms / QUARTER_ms);
    let offset_min = offsets.get(quarter);
    if (offset_min === undefined) {
      const zoned = Temporal.Instant.fromEpochMilliseconds(quarter * QUARTER_ms).toZonedDateTimeISO(timeZone);
      // A few old offsets have seconds, which ISO 8601 does not write.
      offset_min = Math.trunc(zoned.offsetNanoseconds / 6e10);
      if (offsets.size > 1000) offsets.clear();
      offsets.set(quarter, offset_min);
    }
    const clock = new Date(moment_ms + offset_min * 60_000).toISOString().slice(0, -1);
    const away = Math.abs(offset_min);
    const pad = (value: number) => String(value).padStart(2, '0');
    return `${clock}${offset_min < 0 ? '-' : '+'}${pad(Math.floor(away / 60))}:${pad(away % 60)}`;
  };
}

/** The farm's own clock at RFC 3339 moments: date, and minutes after midnight; null where a text is none. */
export function localTime(timeZone: string): (at: string) => { date: string; minutes: number } | null {
  return (at) => {
    try {
      const local = Temporal.Instant.from(at).toZonedDateTimeISO(timeZone);
      return { date: local.toPlainDate().toString(), minutes: local.hour * 60 + local.minute };
    } catch {
      return null;
    }
  };
}

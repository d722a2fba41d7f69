// The clock of a time zone as iCalendar tells it: one part for each change, in the years that are asked for.
import { Temporal } from 'temporal-polyfill';

/**
 * The VTIMEZONE of an IANA zone (RFC 5545, 3.6.5), lines ended by CRLF: the offset that holds when `firstYear` begins, then
 * every change until `lastYear` ends, each told by itself. A rule for all years would promise what no law does.
 * Throws RangeError for a zone that there is not.
 */
export function zoneText(zone: string, firstYear: number, lastYear: number): string {
  const start = yearStart(firstYear, zone);
  const end = yearStart(lastYear + 1, zone);
  const parts = [firstPart(start)];
  for (let at = start.getTimeZoneTransition('next'); at; at = at.getTimeZoneTransition('next')) {
    if (Temporal.ZonedDateTime.compare(at, end) >= 0) break;
    parts.push(changePart(at));
  }
  return [`BEGIN:VTIMEZONE`, `TZID:${zone}`, ...parts.flat(), `END:VTIMEZONE`, ''].join('\r\n');
}

const yearStart = (year: number, zone: string): Temporal.ZonedDateTime =>
  Temporal.PlainDate.from({ year, month: 1, day: 1 }).toZonedDateTime(zone);

/** What holds at the start: the change that brought it, or the beginning of the count where none is known. */
function firstPart(start: Temporal.ZonedDateTime): string[] {
  // A change in the very first instant of the year is the one that holds from then on.
  const change = start.add({ nanoseconds: 1 }).getTimeZoneTransition('previous');
  if (change) return changePart(change);
  return part('STANDARD', '19700101T000000', start.offset, start.offset);
}

function changePart(at: Temporal.ZonedDateTime): string[] {
  const before = at.subtract({ nanoseconds: 1 });
  // A change is written in the clock time that would have come without it.
  const onset = at.toInstant().toZonedDateTimeISO(before.offset).toPlainDateTime();
  return part(isAhead(at, before) ? 'DAYLIGHT' : 'STANDARD', basic(onset), before.offset, at.offset);
}

/** Whether a change puts the clock forward for no more than a year: summer time. */
function isAhead(at: Temporal.ZonedDateTime, before: Temporal.ZonedDateTime): boolean {
  const next = at.getTimeZoneTransition('next');
  const isBrief = next !== null && Temporal.ZonedDateTime.compare(next, at.add({ years: 1 })) < 0;
  return at.offsetNanoseconds > before.offsetNanoseconds && isBrief;
}

const part = (kind: 'STANDARD' | 'DAYLIGHT', onset: string, from: string, to: string): string[] => [
  `BEGIN:${kind}`,
  `DTSTART:${onset}`,
  `TZOFFSETFROM:${from.replaceAll(':', '')}`,
  `TZOFFSETTO:${to.replaceAll(':', '')}`,
  `END:${kind}`,
];

const basic = (time: Temporal.PlainDateTime): string =>
  time.round('second').toString({ smallestUnit: 'second' }).replaceAll(/[-:]/g, '');

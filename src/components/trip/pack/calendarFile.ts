// A visit as a calendar file (iCalendar, RFC 5545). Fetched only when somebody wants one.
import ical, { type ICalDayJsStub } from 'ical-generator';
import type { CalendarVisit } from '../../../../shared/trip/pack/calendarVisit.ts';

/** The file's text, lines ended by CRLF and folded. */
export function calendarFile(visit: CalendarVisit): string {
  const { entries, date, place, page, zone } = visit;
  const calendar = ical({ name: visit.name, prodId: { company: 'Pailside', product: 'Trip plan' } });
  // A zone of the calendar as a whole would be told by a property that no standard has.
  calendar.timezone({ name: null, generator: () => zone.text });
  for (const { id, from, to, title, text } of entries)
    calendar.createEvent({
      id: `${id}@pailside`,
      stamp: new Date(visit.made_ms),
      start: onClock(date, from),
      end: onClock(date, to),
      timezone: zone.name,
      summary: title,
      description: text,
      ...(place === '' ? {} : { location: place }),
      ...(page === null ? {} : { url: page }),
    });
  // The library leaves out the end of the last line.
  return `${calendar.toString()}\r\n`;
}

/**
 * Clock time that no other clock touches: a Date would be read on this machine's clock, which may have no such time. The
 * library asks for a day and a time by these two patterns.
 */
function onClock(date: string, minutes: number): ICalDayJsStub {
  const day = date.replaceAll('-', '');
  const clock = `${pad(Math.floor(minutes / 60))}${pad(minutes % 60)}00`;
  const self: ICalDayJsStub = {
    tz: () => self,
    isValid: () => true,
    format: (pattern) => (pattern === 'YYYYMMDD' ? day : pattern === 'HHmmss' ? clock : `T${clock}`),
    toDate: () => new Date(Date.parse(`${date}T00:00:00Z`) + minutes * 60_000),
    toJSON: () => `${day}T${clock}`,
  };
  return self;
}

const pad = (number: number): string => String(number).padStart(2, '0');

// The clock of a zone as iCalendar tells it, against the time zone database's own offsets.
import ICAL from 'ical.js';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { zoneText } from '../../../src/farm/zoneText.ts';

// Summer time north and south of the equator, half an hour of it, none at all, offsets with quarters of an hour, summer
// time that ends before Ramadan, and a zone that moved for good in March 2024 (time zone database, IANA).
const ZONES = [
  'America/Chicago',
  'Australia/Adelaide',
  'Australia/Lord_Howe',
  'America/Phoenix',
  'Asia/Kathmandu',
  'Africa/Casablanca',
  'Asia/Almaty',
  'Europe/Dublin',
  'UTC',
];

/** A text read by ical.js: the offset in minutes that it gives for a clock time. */
function offsetsOf(text: string): (local: Temporal.PlainDateTime) => number {
  const zone = new ICAL.Timezone(ICAL.Component.fromString(text.trim()));
  return ({ year, month, day, hour, minute }) =>
    zone.utcOffset(
      new ICAL.Time({ year, month, day, hour, minute, second: 0 }, ICAL.Timezone.localTimezone),
    ) / 60;
}

describe('zoneText', () => {
  it.each(ZONES)('gives the offset of every quarter of an hour around each change in %s', (zone) => {
    const offsetAt = offsetsOf(zoneText(zone, 2023, 2027));
    const start = Temporal.PlainDate.from('2023-01-01').toZonedDateTime(zone);
    const days = ['2023-01-01', '2025-07-01', '2027-12-31'];
    for (
      let at = start.getTimeZoneTransition('next');
      at && at.year <= 2027;
      at = at.getTimeZoneTransition('next')
    )
      for (const shift of [-1, 0, 1]) days.push(at.add({ days: shift }).toPlainDate().toString());
    let looked = 0;
    for (const day of days)
      for (let quarter = 0; quarter < 96; quarter += 1) {
        const local = Temporal.PlainDate.from(day).toPlainDateTime({ hour: Math.floor(quarter / 4), minute: (quarter % 4) * 15 }); // prettier-ignore
        // A time that does not come, or comes twice, has no one offset.
        const [early, late] = (['earlier', 'later'] as const).map((disambiguation) => local.toZonedDateTime(zone, { disambiguation })); // prettier-ignore
        if (!early || !late || early.epochMilliseconds !== late.epochMilliseconds) continue;
        looked += 1;
        expect(offsetAt(local), `${zone} ${local.toString()}`).toBe(early.offsetNanoseconds / 6e10);
      }
    expect(looked).toBeGreaterThan(200);
  });

  it('calls summer time what puts the clock forward for less than a year, and nothing else', () => {
    const kinds = (zone: string) =>
      [...zoneText(zone, 2026, 2026).matchAll(/BEGIN:(STANDARD|DAYLIGHT)/g)].map(([, kind]) => kind);
    expect(kinds('America/Chicago')).toEqual(['STANDARD', 'DAYLIGHT', 'STANDARD']);
    expect(kinds('Australia/Adelaide')).toEqual(['DAYLIGHT', 'STANDARD', 'DAYLIGHT']);
    expect(kinds('America/Phoenix')).toEqual(['STANDARD']);
    expect(kinds('Asia/Kathmandu')).toEqual(['STANDARD']);
  });

  it('writes what RFC 5545 3.6.5 shows for New York: onset in the time that was, both offsets, CRLF', () => {
    // The changes of 11 March and 4 November 2007 at 2:00 are those of the RFC's own example.
    const text = zoneText('America/New_York', 2007, 2007);
    expect(text).toContain(
      'BEGIN:DAYLIGHT\r\nDTSTART:20070311T020000\r\nTZOFFSETFROM:-0500\r\nTZOFFSETTO:-0400\r\nEND:DAYLIGHT\r\n',
    );
    expect(text).toContain(
      'BEGIN:STANDARD\r\nDTSTART:20071104T020000\r\nTZOFFSETFROM:-0400\r\nTZOFFSETTO:-0500\r\nEND:STANDARD\r\n',
    );
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('throws for a zone that there is not', () => {
    expect(() => zoneText('Mars/Crater', 2026, 2026)).toThrow(RangeError);
  });
});

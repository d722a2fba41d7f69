// The calendar file of a visit, read back by two readers that know nothing of us.
import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { calendarEntries } from '../../../../shared/trip/pack/calendarEvents.ts';
import type { CalendarVisit } from '../../../../shared/trip/pack/calendarVisit.ts';
import { calendarFile } from '../../../../src/components/trip/pack/calendarFile.ts';
import { zoneText } from '../../../../src/farm/zoneText.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { LOOP_DAY, WISH } from './loopDay.ts';

const NAMES = { 'goat-barn': 'Establo de las cabras; aquí, señor', 'kid-table': 'Mesa' };
// The days before, of and after both changes of summer time in 2026, and two days far from one.
const DAYS: Readonly<Record<string, readonly string[]>> = {
  'America/Chicago': ['2026-03-07', '2026-03-08', '2026-03-09', '2026-10-31', '2026-11-01', '2026-11-02'],
  'Australia/Adelaide': ['2026-04-04', '2026-04-05', '2026-04-06', '2026-10-03', '2026-10-04', '2026-10-05'],
  'America/Phoenix': ['2026-03-08', '2026-05-27', '2026-11-02'],
  'Asia/Kathmandu': ['2026-05-27', '2026-12-09'],
};
const CASES = Object.entries(DAYS).flatMap(([zone, days]) => days.map((date) => ({ zone, date })));

function visitOn(date: string, zone: string, over: Partial<CalendarVisit> = {}): CalendarVisit {
  const tell = {
    words: wordsOf('es'),
    names: NAMES,
    farm: 'Finca Ñandú',
    page: 'https://farm.example/trip/',
  };
  return {
    entries: calendarEntries({ ...WISH, date }, LOOP_DAY, tell),
    date,
    name: 'Visita',
    place: 'Camino del Peñón 5, Río Verde',
    page: 'https://farm.example/trip/?date=2026-05-27&children=54',
    zone: { name: zone, text: zoneText(zone, 2025, 2028), firstYear: 2025, lastYear: 2028 },
    made_ms: Date.UTC(2026, 4, 1, 12, 0, 0),
    ...over,
  };
}

const utcOf = (date: string, minutes: number, zone: string): number =>
  Temporal.PlainDate.from(date)
    .toPlainDateTime({ hour: Math.floor(minutes / 60), minute: minutes % 60 })
    .toZonedDateTime(zone).epochMilliseconds;

describe('calendarFile', () => {
  it.each(CASES)('on $date in $zone gives ical.js the very moments of the zone', ({ zone, date }) => {
    const visit = visitOn(date, zone);
    const calendar = ICAL.Component.fromString(calendarFile(visit));
    // Nothing but the file's own VTIMEZONE tells ical.js what the zone is.
    const own = calendar.getFirstSubcomponent('vtimezone');
    expect(own?.getFirstPropertyValue('tzid')).toBe(zone);
    const events = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(events).toHaveLength(visit.entries.length);
    events.forEach((event, place) => {
      const entry = visit.entries[place];
      if (!entry) throw new Error('an entry is missing');
      expect(event.startDate.zone?.tzid).toBe(zone);
      expect(event.startDate.toUnixTime() * 1000).toBe(utcOf(date, entry.from, zone));
      expect(event.endDate.toUnixTime() * 1000).toBe(utcOf(date, entry.to, zone));
      expect(event.uid).toBe(`${entry.id}@pailside`);
    });
  });

  it.each(CASES)('on $date in $zone gives node-ical the same moments', ({ zone, date }) => {
    const visit = visitOn(date, zone);
    const read = nodeIcal.sync.parseICS(calendarFile(visit));
    for (const entry of visit.entries) {
      const event = read[`${entry.id}@pailside`];
      if (event?.type !== 'VEVENT') throw new Error(`${entry.id} is missing`);
      expect(event.start.getTime()).toBe(utcOf(date, entry.from, zone));
      expect(event.end?.getTime()).toBe(utcOf(date, entry.to, zone));
      expect(event.summary).toBe(entry.title);
      expect(event.description).toBe(entry.text);
      expect(event.location).toBe('Camino del Peñón 5, Río Verde');
    }
  });

  it('keeps accents, semicolons, commas, backslashes and lines through folds at every place', () => {
    for (let length = 0; length < 90; length += 1) {
      const text = `${'x'.repeat(length)}ñandú; coma, barra \\ y\notra línea ${'áéíóúü¿¡'.repeat(12)}`;
      const entry = { id: 'one', from: 570, to: 600, title: text.replace('\n', ' '), text };
      const file = calendarFile(visitOn('2026-05-27', 'America/Chicago', { entries: [entry] }));
      const event = new ICAL.Event(ICAL.Component.fromString(file).getFirstSubcomponent('vevent')!);
      expect([event.summary, event.description]).toEqual([entry.title, text]);
      const other = nodeIcal.sync.parseICS(file)['one@pailside'];
      expect(other?.type === 'VEVENT' && other.description).toBe(text);
      // RFC 5545, 3.1: lines of at most 75 octets without their CRLF; no octet sequence of a sign is torn apart.
      for (const line of file.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    }
  });

  it('has CRLF alone, its end too, and what RFC 5545 asks of every entry', () => {
    const file = calendarFile(visitOn('2026-05-27', 'America/Chicago'));
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(file).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:/);
    const calendar = ICAL.Component.fromString(file);
    for (const event of calendar.getAllSubcomponents('vevent')) {
      for (const name of ['uid', 'dtstamp', 'dtstart', 'dtend', 'summary'])
        expect(event.getAllProperties(name), name).toHaveLength(1);
      expect(event.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-05-01T12:00:00Z');
    }
    // Calendar properties come before components (RFC 5545, 3.4 and 3.6).
    const [head = ''] = file.split('BEGIN:VTIMEZONE');
    const rest = file.slice(head.length).replace(/BEGIN:(VTIMEZONE|VEVENT)[\s\S]*?END:\1\r\n/g, '');
    expect(rest).toBe('END:VCALENDAR\r\n');
  });

  it('asks no clock of this machine: a time that the machine’s own zone lacks stays as it is', () => {
    const before = process.env['TZ'];
    try {
      // Santiago skips from midnight to one o'clock on 6 September 2026 (time zone database).
      process.env['TZ'] = 'America/Santiago';
      const entry = { id: 'one', from: 15, to: 45, title: 'x', text: 'x' };
      const file = calendarFile(visitOn('2026-09-06', 'America/Chicago', { entries: [entry] }));
      expect(file).toContain('DTSTART;TZID=America/Chicago:20260906T001500');
    } finally {
      if (before === undefined) delete process.env['TZ'];
      else process.env['TZ'] = before;
    }
  });

  it('tells one child and one adult as one, in both languages', () => {
    const people = (lang: string) =>
      calendarEntries({ ...WISH, children: 1, adults: 1 }, LOOP_DAY, { words: wordsOf(lang), names: {}, farm: 'F', page: null })[0]?.text.split('\n')[0]; // prettier-ignore
    expect([people('en'), people('es')]).toEqual(['1 child, 1 adult', '1 estudiante, 1 adulto']);
  });

  it('tells the visit first, then what is done in the order of the day', () => {
    const [visit, ...entries] = visitOn('2026-05-27', 'America/Chicago').entries;
    const starts = entries.map(({ from }) => from);
    expect(new Set(starts).size).toBeGreaterThan(3);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    const lines = [...(visit?.text ?? '').matchAll(/^(\d+):(\d\d)-/gm)].map(([, hour, minute]) => Number(hour) * 60 + Number(minute)); // prettier-ignore
    expect(lines).toEqual(starts);
  });

  it('names nobody and keeps its ids when the same visit is planned again', () => {
    const ids = (wish: typeof WISH) =>
      calendarEntries(wish, LOOP_DAY, { words: wordsOf('en'), names: {}, farm: 'F', page: null }).map(({ id }) => id); // prettier-ignore
    expect(new Set(ids(WISH)).size).toBe(ids(WISH).length);
    expect(ids({ ...WISH, adults: 9, lunch: 700 })).toEqual(ids(WISH));
    expect(ids({ ...WISH, date: '2026-05-28' })[0]).not.toBe(ids(WISH)[0]);
    expect(ids(WISH).filter((id) => !/^[a-z0-9-]+$/.test(id))).toEqual([]);
  });
});

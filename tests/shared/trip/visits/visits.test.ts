// The calendar: months, taken spans, the sheet of a day, kiddings; over the demo farm's own visits as well.
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate } from '../../../../shared/calendar/day.ts';
import { openLedger } from '../../../../shared/herd/ledger.ts';
import { groundOn } from '../../../../shared/trip/season.ts';
import { USUAL_FARM } from '../../../../shared/trip/usualRules.ts';
import { daySheet } from '../../../../shared/trip/visits/daySheet.ts';
import { viewVisits } from '../../../../shared/trip/visits/findings.ts';
import { kiddingsNear } from '../../../../shared/trip/visits/kiddings.ts';
import { monthAfter, monthOf, monthWeeks } from '../../../../shared/trip/visits/monthWeeks.ts';
import { takenOn, takenSpans } from '../../../../shared/trip/visits/taken.ts';
import { tripSeason } from '../../../../shared/trip/yearAhead.ts';
import { ROOT } from '../../../../src/build/places.ts';
import { visitNotices } from '../../../../src/build/visitNotices.ts';
import { queryOf } from '../../../../src/components/visits/queryOf.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';

const reading = readFarm(join(ROOT, 'content', 'farm'), { now_ms: 0 });
if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
const { farm: ourFarm, book, asOf, visits = [] } = reading;
const farm = ourFarm.trip?.farm ?? USUAL_FARM;
const season = tripSeason(book, openLedger(book, asOf), ourFarm);

describe("the demo farm's visits", () => {
  it('each work, and those of one day get along', () => {
    const { planned, findings } = viewVisits(visits, farm, season);
    expect(planned.every(({ plan }) => plan.ok)).toBe(true);
    expect(findings).toEqual([]);
    expect([...Map.groupBy(planned, ({ visit }) => visit.wish.date).values()].some((day) => day.length > 1)).toBe(true); // prettier-ignore
    expect(visitNotices(reading)).toEqual([]);
  });

  it('would be told of at the build where they did not, without a school', () => {
    const oak = visits.find(({ wish }) => wish.word === 'oak');
    if (!oak) throw new Error('There is no visit of oak.');
    const other = { ...oak, file: 'visits/x.yaml', school: 'Secret School' };
    const told = visitNotices({ ...reading, visits: [oak, other] });
    expect(told.map(({ text }) => text).join('\n')).toMatch(/taps are wanted at the same time/);
    expect(JSON.stringify(told)).not.toContain('Secret School');
    const short = { ...oak, wish: { ...oak.wish, adults: 1, leave: oak.wish.arrive + 60 } };
    expect(visitNotices({ ...reading, visits: [short] }).map(({ text }) => text).join()).toMatch(/does not work \(too few adults, too little time/); // prettier-ignore
    const over = [oak, other].map((one) => ({ ...one, state: 'held' as const }));
    expect(viewVisits(over, farm, season).findings).toEqual([]);
  });
});

describe('daySheet', () => {
  const { planned } = viewVisits(visits, farm, season);
  const sheet = daySheet('2026-05-27', planned, farm);
  it('has every slot of every group at a place, once', () => {
    const told = sheet.places.flatMap(({ station, uses }) => station === null ? [] : uses.flatMap(({ letter, groups, from, to }) => groups.map((group) => `${letter}${group} ${station} ${from}-${to}`))); // prettier-ignore
    const slow: string[] = [];
    for (const { letter, planned: { plan } } of sheet.visits) {
      if (!plan.ok) throw new Error('no plan');
      for (const group of plan.day.groups)
        for (const { kind, station, from, to } of plan.day.parties[group.party] ?? [])
          if (kind === 'station') slow.push(`${letter}${group.id} ${station} ${from}-${to}`);
    } // prettier-ignore
    expect(slow.length).toBeGreaterThan(10);
    expect(told.sort()).toEqual(slow.sort());
  });

  it('counts the stations that are open at once, from first to last group', () => {
    const stations = sheet.places.filter(({ station }) => station !== null);
    const open = Array.from({ length: 1440 }, (_, minute) => stations.filter(({ from, to }) => from <= minute && minute < to).length); // prettier-ignore
    const most = Math.max(...open);
    expect(sheet.most).toEqual({ stations: most, from: open.indexOf(most) });
  });

  it('letters the visits by their coming, and has nobody on another day', () => {
    expect(sheet.visits.map(({ letter, planned: { visit } }) => [letter, visit.wish.word])).toEqual([['A', 'fern'], ['B', 'oak']]); // prettier-ignore
    expect(daySheet('2026-05-28', planned, farm)).toMatchObject({ visits: [], places: [], span: null, most: null }); // prettier-ignore
  });
});

it('kiddingsNear names a doe exactly on the days on which the ground closes the pen', () => {
  for (let day = asOf - 60; day < asOf + 370; day += 1) {
    const near = kiddingsNear(farm, season, day);
    expect(near.length > 0, isoDate(day)).toBe(groundOn(farm, season, day).kiddingNear);
    for (const { name } of near) expect(name).not.toBe('');
  }
});

describe('taken spans', () => {
  it('come from visits that are agreed or held, and carry nothing but times and a count', () => {
    const [first] = visits;
    if (!first) throw new Error('no visit');
    const states = ['asked', 'agreed', 'held', 'called off'] as const;
    const spans = takenSpans(states.map((state, index) => ({ ...first, state, wish: { ...first.wish, children: 10 + index } }))); // prettier-ignore
    expect(spans.map(({ children }) => children)).toEqual([11, 12]);
    for (const span of spans) expect(Object.keys(span).sort()).toEqual(['children', 'date', 'from', 'to']);
    expect(takenOn(spans, first.wish.date)).toEqual(spans);
    expect(takenOn(spans, '1999-01-01')).toEqual([]);
  });
});

describe('monthWeeks', () => {
  it('has every day of a month once, in weeks from Sunday to Saturday', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1900, max: 2199 }), fc.integer({ min: 1, max: 12 }), (year, number) => {
        const month = `${year}-${String(number).padStart(2, '0')}`;
        const weeks = monthWeeks(month);
        const days = weeks.flat();
        expect(weeks.every((week) => week.length === 7)).toBe(true);
        expect(new Date(`${days[0]?.date}T12:00:00Z`).getUTCDay()).toBe(0);
        expect(days.map(({ date }) => dayNumber(date))).toEqual(days.map((_, index) => (dayNumber(days[0]?.date ?? '') ?? 0) + index)); // prettier-ignore
        const own = days.filter(({ isOther }) => !isOther);
        expect(own.length).toBe(new Date(Date.UTC(year, number, 0)).getUTCDate());
        expect(own.every(({ date }) => monthOf(date) === month)).toBe(true);
        expect(monthAfter(monthAfter(month, 7), -7)).toBe(month);
      }),
    );
  });
});

it.each([
  ['https://farm.example/trip/?date=2026-05-27&grade=2#top', '?date=2026-05-27&grade=2'],
  ['  Here it is: http://localhost:4173/visit/es/trip/?date=2026-05-27 thanks', '?date=2026-05-27'],
  ['https://a.example/trip/?date=2026-05-27&amp;children=24', '?date=2026-05-27&children=24'],
  ['?date=2026-05-27', '?date=2026-05-27'],
  ['https://farm.example/trip/', null],
  [
    'Would this day do? https://a.example/trip/?date=2026-05-27&grade=2 Greetings',
    '?date=2026-05-27&grade=2',
  ],
  ['hello?', null],
  ['https://a.example/?q=goats', null],
])('queryOf reads of %s only its query', (pasted, query) => expect(queryOf(pasted)).toBe(query));

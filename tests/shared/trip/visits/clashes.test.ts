// Clashes: cases made by hand, and over random days the same answer as a count of every single minute.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayPlan, Slot, SlotKind, TripFarm } from '../../../../shared/trip/types.ts';
import { USUAL_FARM } from '../../../../shared/trip/usualRules.ts';
import { usualWish } from '../../../../shared/trip/usualWish.ts';
import { visitClashes } from '../../../../shared/trip/visits/clashes.ts';
import type { PlannedVisit } from '../../../../shared/trip/visits/plannedVisit.ts';

const stations = USUAL_FARM.stations.map((one) => ({ ...one, capacity: 18 }));
const farm: TripFarm = { ...USUAL_FARM, stations, seats: 40, busesAtOnce: 2 };
const slot = (kind: SlotKind, from: number, to: number, station: string | null = null): Slot => ({ kind, from, to, station, for: null }); // prettier-ignore

interface Made {
  readonly file: string;
  readonly date?: string;
  readonly buses?: number;
  /** Children and adults of each party, and its slots. */
  readonly parties: readonly { readonly children: number; readonly adults: number; readonly slots: readonly Slot[] }[]; // prettier-ignore
}
function planned({ file, date = '2026-05-27', buses = 1, parties }: Made): PlannedVisit {
  const groups = parties.map(({ children, adults }, party) => ({ id: party + 1, children, adults, party, wheelchair: false })); // prettier-ignore
  const day: DayPlan = {
    groups, spare: 0, parties: parties.map(({ slots }) => slots), stations: [], roundsBefore: 0, manner: 'loop', wash_min: 0,
  }; // prettier-ignore
  const wish = { ...usualWish(20594), date, buses };
  return {
    visit: { file, school: file, state: 'agreed', wish, note: '' },
    plan: { ok: true, day, notes: [] },
  };
}
const at = (file: string, children: number, ...slots: Slot[]): PlannedVisit => planned({ file, parties: [{ children, adults: 2, slots }] }); // prettier-ignore

describe('visitClashes', () => {
  it('names a station that is too small for two visits at once, for as long as it is', () => {
    const found = visitClashes([at('a', 10, slot('station', 600, 620, 'goat-barn')), at('b', 9, slot('station', 610, 630, 'goat-barn'))], farm); // prettier-ignore
    expect(found).toEqual([
      { kind: 'station', station: 'goat-barn', date: '2026-05-27', from: 610, to: 620, visits: ['a', 'b'], load: 19, holds: 18 },
    ]); // prettier-ignore
  });

  it('lets two share a station that holds both, follow each other without a gap, or come on other dates', () => {
    const b = at('b', 18, slot('station', 620, 640, 'goat-barn'));
    expect(visitClashes([at('a', 9, slot('station', 600, 620, 'kid-pen')), at('b', 9, slot('station', 600, 620, 'kid-pen'))], farm)).toEqual([]); // prettier-ignore
    expect(visitClashes([at('a', 18, slot('station', 600, 620, 'goat-barn')), b], farm)).toEqual([]);
    const other = planned({ file: 'c', date: '2026-05-28', parties: [{ children: 18, adults: 2, slots: [slot('station', 620, 640, 'goat-barn')] }] }); // prettier-ignore
    expect(visitClashes([b, other], farm)).toEqual([]);
  });

  it('lets nobody share taps or toilets, since each plan reckons with all of them', () => {
    for (const [kind, place] of [['wash', 'taps'], ['toilets', 'toilets']] as const)
      expect(visitClashes([at('a', 5, slot(kind, 600, 606)), at('b', 5, slot(kind, 605, 611))], farm)).toMatchObject([
        { kind: place, from: 605, to: 606, load: 2, holds: 1 },
      ]); // prettier-ignore
  });

  it('counts everybody on the seats, buses in the yard, and calls a milking by its name', () => {
    const [a, b] = [at('a', 25, slot('lunch', 700, 730)), at('b', 14, slot('lunch', 720, 750))];
    expect(visitClashes([a, b], farm)).toMatchObject([{ kind: 'seats', from: 720, to: 730, load: 43, holds: 40 }]); // prettier-ignore
    const buses = [2, 1].map((n, index) => planned({ file: `${index}`, buses: n, parties: [{ children: 5, adults: 1, slots: [slot('unload', 540 + index, 550 + index)] }] })); // prettier-ignore
    expect(visitClashes(buses, farm)).toMatchObject([
      { kind: 'yard', from: 541, to: 550, load: 3, holds: 2 },
    ]);
    const milking = ['a', 'b'].map((file) => at(file, 12, slot('station', 600, 615, 'milking-stand')));
    expect(visitClashes(milking, farm)).toMatchObject([{ kind: 'milking', station: 'milking-stand', load: 24 }]); // prettier-ignore
  });

  it('finds a clash exactly in the minutes in which counting finds one', () => {
    const span = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 12 }));
    const place = fc.constantFrom<[SlotKind, string | null]>(
      ['station', 'goat-barn'], ['station', 'milking-stand'], ['station', 'kid-pen'], ['wash', null], ['toilets', null], ['lunch', null], ['unload', null], ['walk', null],
    ); // prettier-ignore
    const slots = fc.array(fc.tuple(place, span).map(([[kind, station], [from, long]]) => slot(kind, from, from + long, station)), { maxLength: 5 }); // prettier-ignore
    const party = fc.record({ children: fc.integer({ min: 1, max: 14 }), adults: fc.integer({ min: 0, max: 3 }), slots }); // prettier-ignore
    const visit = fc.record({ parties: fc.array(party, { minLength: 1, maxLength: 3 }), buses: fc.integer({ min: 0, max: 3 }) }); // prettier-ignore
    fc.assert(
      fc.property(fc.array(visit, { maxLength: 3 }), (visits) => {
        const made = visits.map((one, index) => ({ ...one, file: String(index) }));
        const found = visitClashes(made.map(planned), farm);
        const told = new Set(found.flatMap(({ kind, station, from, to }) => minutes(from, to).map((minute) => `${kind} ${station} ${minute}`))); // prettier-ignore
        expect([...told].sort()).toEqual([...byTheMinute(made)].sort());
        for (const clash of found) expect(clash.load).toBeGreaterThan(clash.holds);
      }),
      { numRuns: 3_000 },
    );
  });
});

const minutes = (from: number, to: number) => Array.from({ length: to - from }, (_, index) => from + index);

/** Every place and minute with two visits or more and too much of them, counted one by one. */
function byTheMinute(visits: readonly Made[]): Set<string> {
  const wrong = new Set<string>();
  for (let minute = 0; minute < 60; minute += 1) {
    const here = visits.flatMap(({ file, buses = 1, parties }) =>
      parties.flatMap(({ children, adults, slots }) =>
        slots
          .filter(({ from, to }) => from <= minute && minute < to)
          .map(({ kind, station }) => ({ file, buses, children, people: children + adults, kind, station })),
      ),
    );
    const check = (name: string, own: typeof here, load: number, holds: number) => {
      if (new Set(own.map(({ file }) => file)).size > 1 && load > holds) wrong.add(`${name} ${minute}`);
    };
    for (const { id, milking, capacity } of farm.stations) {
      const own = here.filter((one) => one.kind === 'station' && one.station === id);
      check(`${milking ? 'milking' : 'station'} ${id}`, own, own.reduce((sum, one) => sum + one.children, 0), capacity); // prettier-ignore
    }
    const of = (kind: SlotKind) => here.filter((one) => one.kind === kind);
    const visitsOf = (own: typeof here) => [...new Set(own.map(({ file }) => file))];
    check('taps null', of('wash'), visitsOf(of('wash')).length, 1);
    check('toilets null', of('toilets'), visitsOf(of('toilets')).length, 1);
    check(
      'seats null',
      of('lunch'),
      of('lunch').reduce((sum, one) => sum + one.people, 0),
      40,
    );
    const buses = visitsOf(of('unload')).reduce((sum, file) => sum + Math.min(2, visits.find((one) => one.file === file)?.buses ?? 0), 0); // prettier-ignore
    check('yard null', of('unload'), buses, 2);
  }
  return wrong;
}

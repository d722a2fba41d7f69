// Which papers a visit needs and what they hold: every slot once, and only what applies.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { papersFor, rainMatters, seesMilking } from '../../../../shared/trip/papers/applies.ts';
import { gridsOf } from '../../../../shared/trip/papers/grid.ts';
import { leaderCards, type CardLine } from '../../../../shared/trip/papers/leaderCards.ts';
import { rainPlan } from '../../../../shared/trip/papers/rainPlan.ts';
import {
  otherStationCards,
  stationCards,
  stationWeather,
} from '../../../../shared/trip/papers/stationCards.ts';
import { teacherPassages } from '../../../../shared/trip/papers/teacher.ts';
import type { TripCase } from '../../../../shared/trip/papers/types.ts';
import type { Slot } from '../../../../shared/trip/types.ts';
import { tripArb } from '../../../support/randomTrip.ts';
import { caseOf, paperCase, tongueOf } from '../../../support/tripPaperCase.ts';

const cases = (check: (trip: TripCase) => void, numRuns: number): number => {
  let made = 0;
  fc.assert(
    fc.property(tripArb({ children: 120, stations: 6 }, true), (asked) => {
      const trip = caseOf(asked);
      if (!trip) return;
      made += 1;
      check(trip);
    }),
    { numRuns },
  );
  return made;
};

/** The slots that a card's lines tell of: each line's own, and the walk before it. */
const slotsTold = (lines: readonly CardLine[]): string[] =>
  lines.flatMap(({ go, slot }) => [...(go === null ? [] : [`walk ${go}-${slot.from}`]), told(slot)]);
const told = ({ kind, from, to }: Slot): string => `${kind} ${from}-${to}`;

describe('over random days', () => {
  it('every group has a card, and it carries the slots of its party exactly', () => {
    const made = cases((trip) => {
      const cards = leaderCards(trip);
      expect(cards.map(({ group }) => group)).toEqual(trip.day.groups);
      for (const { group, lines } of cards) {
        expect(slotsTold(lines)).toEqual((trip.day.parties[group.party] ?? []).map(told));
        expect(lines.map(({ slot }) => slot.station).filter((id) => id !== null)).toEqual(
          (trip.day.parties[group.party] ?? []).filter(({ kind }) => kind === 'station').map((slot) => slot.station),
        ); // prettier-ignore
      }
    }, 400);
    expect(made).toBeGreaterThan(100);
  });

  it('the tables of the timetable hold every minute of every party once', () => {
    cases(({ day }) => {
      const minutes = new Map<string, number>();
      for (const { parties, rows } of gridsOf(day))
        for (const { at, cells } of rows)
          for (const { slot, party, columns } of cells) {
            expect(slot.from).toBe(at);
            const covered = parties.slice(parties.indexOf(party), parties.indexOf(party) + columns);
            for (const one of covered)
              minutes.set(`${one} ${told(slot)}`, (minutes.get(`${one} ${told(slot)}`) ?? 0) + 1);
          }
      const all = day.parties.flatMap((slots, party) => slots.filter(({ from, to }) => to > from).map((slot) => `${party} ${told(slot)}`)); // prettier-ignore
      expect([...minutes.keys()].sort()).toEqual(all.sort());
      expect([...minutes.values()].every((times) => times === 1)).toBe(true);
    }, 300);
  });

  it('a row of a table is as wide as its parties, with what reaches down into it', () => {
    cases(({ day }) => {
      for (const { parties, rows } of gridsOf(day)) {
        const wide = rows.map(() => 0);
        rows.forEach(({ cells }, row) => {
          for (const { rows: tall, columns } of cells)
            for (let down = 0; down < tall; down += 1) wide[row + down] = (wide[row + down] ?? 0) + columns;
        });
        expect(wide.every((columns) => columns === parties.length)).toBe(true);
      }
    }, 300);
  });

  it('there is a rain plan only where rain changes something, and it tells what', () => {
    const seen = { with: 0, without: 0 };
    cases((trip) => {
      const open = trip.farm.stations.filter(({ roofed }) => !roofed).map(({ id }) => id);
      const asks = papersFor(trip).includes('rain');
      seen[asks ? 'with' : 'without'] += 1;
      if (!trip.wish.rain) expect(asks).toBe(trip.day.stations.some((id) => open.includes(id)));
      if (asks) expect(rainPlan(trip).swaps.length).toBeGreaterThan(0);
      else expect(rainMatters(trip)).toBe(false);
      for (const { fine } of rainPlan(trip).swaps) expect(open).toContain(fine);
    }, 500);
    expect(Math.min(seen.with, seen.without)).toBeGreaterThan(20);
  });

  it('the rain plan tells of no station that a wheelchair has closed on a dry day as well', () => {
    const needs = ['wheelchair'] as const;
    // Of the usual stations the pasture rail alone lies under the open sky, and no wheelchair can reach it.
    for (const rain of [false, true]) {
      const trip = paperCase({ needs, rain });
      expect(trip.day.stations).toContain('hay-loft');
      expect(rainMatters(trip)).toBe(false);
      expect(rainPlan(trip).swaps).toEqual([]);
      expect(rainPlan(paperCase({ rain })).swaps).toEqual([{ fine: 'pasture-rail', wet: 'hay-loft' }]);
    }
  });

  it('station cards list every coming of every party once', () => {
    cases((trip) => {
      const cards = stationCards(trip, tongueOf('en', trip.farm));
      const listed = cards.flatMap(({ station, comings }) => comings.map(({ party, from, to }) => `${party} ${station.id} ${from}-${to}`)); // prettier-ignore
      const slots = trip.day.parties.flatMap((party, index) =>
        party.filter(({ kind }) => kind === 'station').map(({ station, from, to }) => `${index} ${station} ${from}-${to}`),
      ); // prettier-ignore
      expect(listed.sort()).toEqual(slots.sort());
      for (const { comings } of cards)
        expect(comings.reduce((sum, { children }) => sum + children, 0)).toBe(trip.wish.children);
    }, 300);
  });

  it('the letter to the teacher speaks of milking as it is on the day, and of nothing empty', () => {
    const seen = { milking: 0, none: 0 };
    cases((trip) => {
      const passages = teacherPassages(trip, tongueOf('es', trip.farm));
      const has = (id: string) => passages.some((passage) => passage.id === id);
      for (const { text, points } of passages) expect(text.length + points.length).toBeGreaterThan(0);
      seen[seesMilking(trip) ? 'milking' : 'none'] += 1;
      // Where none is due, the letter says so and what is seen; where one is seen, it has no reason to.
      if (seesMilking(trip)) expect(has('instead')).toBe(false);
      else if (trip.ground.noMilking !== null) expect(has('instead')).toBe(true);
    }, 400);
    expect(Math.min(seen.milking, seen.none)).toBeGreaterThan(10);
  });
});

describe('the cards of stations for the other weather', () => {
  /** Who comes to a station when, counted from the parties themselves. */
  const comingTo = ({ parties }: TripCase['day'], id: string): string[] =>
    parties.flatMap((slots, party) => slots.filter(({ station, kind }) => kind === 'station' && station === id).map(({ from, to }) => `${party} ${from}-${to}`)).sort(); // prettier-ignore

  it('stand for every station to which others come in rain, or at other times, and say what they are for', () => {
    let anew = 0;
    cases((trip) => {
      const tongue = tongueOf('en', trip.farm);
      const { trip: other, cards } = otherStationCards(trip, tongue);
      if (!trip.otherWeather.ok || !rainMatters(trip)) {
        expect(cards).toEqual([]);
        return;
      }
      expect(other.day).toEqual(trip.otherWeather.day);
      if (other.day.groups.length !== trip.day.groups.length) return;
      const own = new Set(cards.map(({ station }) => station.id));
      for (const id of other.day.stations) {
        const isOther = comingTo(trip.day, id).join() !== comingTo(other.day, id).join();
        expect(own.has(id), id).toBe(isOther);
      }
      anew += own.size;
      for (const card of stationCards(trip, tongue)) {
        const weather = stationWeather(trip, card);
        if (own.has(card.station.id)) expect(weather).toBe(trip.wish.rain ? 'rain-day' : 'dry-day');
        else if (!trip.wish.rain) expect(weather).toBeNull();
      }
    }, 400);
    expect(anew).toBeGreaterThan(30);
  });
});

// A small day written out by hand: two parties, two stations, lunch between.
import type { DayPlan, Slot, TripWish } from '../../../../shared/trip/types.ts';

export const WISH: TripWish = {
  date: '2026-05-27',
  grade: 2,
  children: 12,
  adults: 4,
  arrive: 570,
  leave: 700,
  buses: 1,
  lunch: 650,
  stations: [],
  needs: [],
  rain: false,
  word: 'fern',
};

const slot = (kind: Slot['kind'], from: number, to: number, station: string | null = null): Slot => ({
  kind,
  from,
  to,
  station,
  for: null,
});

const day = (first: string, second: string): Slot[] => [
  slot('unload', 570, 580),
  slot('walk', 580, 585),
  slot('welcome', 585, 595),
  slot('toilets', 595, 600),
  slot('walk', 600, 605, first),
  slot('station', 605, 620, first),
  slot('walk', 620, 625, second),
  slot('station', 625, 640, second),
  slot('walk', 640, 645),
  slot('wash', 645, 650),
  slot('lunch', 650, 680),
  slot('walk', 680, 685),
  slot('load', 685, 695),
  slot('wait', 695, 700),
];

/** Three groups, of which two walk together. */
export const LOOP_DAY: DayPlan = {
  groups: [
    { id: 1, children: 4, adults: 1, party: 0, wheelchair: false },
    { id: 2, children: 4, adults: 1, party: 0, wheelchair: false },
    { id: 3, children: 4, adults: 2, party: 1, wheelchair: false },
  ],
  spare: 0,
  parties: [day('goat-barn', 'kid-table'), day('kid-table', 'goat-barn')],
  stations: ['goat-barn', 'kid-table'],
  roundsBefore: 2,
  manner: 'loop',
  wash_min: 5,
};

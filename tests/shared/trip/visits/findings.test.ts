// In which order a coordinator reads what is found: by date, and of one date the clashes first.
import { expect, it } from 'vitest';
import { dayNumber } from '../../../../shared/calendar/day.ts';
import { USUAL_FARM } from '../../../../shared/trip/usualRules.ts';
import { usualWish } from '../../../../shared/trip/usualWish.ts';
import { viewVisits } from '../../../../shared/trip/visits/findings.ts';
import type { TripSeason, Visit } from '../../../../shared/trip/visitTypes.ts';

const asOf = dayNumber('2026-05-21') as number;
const doe = { id: 'fern', name: 'Fern', breed: 'alpine', spans: [], kiddings: [asOf + 6], due: null };
const season: TripSeason = {
  asOf,
  unit: 'cup',
  jar_mL: 946,
  milkings: { am: { from: 360, to: 370 }, pm: { from: 1020, to: 1030 } },
  does: [doe],
  milk: [],
};
const visit = (file: string, date: string): Visit => ({
  file,
  school: file,
  state: 'agreed',
  note: '',
  wish: { ...usualWish(asOf), date, stations: ['goat-barn', 'measuring-table'], children: 12 },
});

it('says why a day does not work, and leaves the looking for changes to the plan of the visit', () => {
  const short: Visit = {
    ...visit('a', '2026-06-30'),
    wish: { ...visit('a', '2026-06-30').wish, leave: 600 },
  };
  const { planned, findings } = viewVisits([short], USUAL_FARM, season);
  expect(findings).toMatchObject([{ kind: 'no plan', whys: [{ kind: 'time' }, { kind: 'lunch' }] }]);
  expect(planned[0]?.plan).toMatchObject({ ok: false, ways: [] });
});

it('puts dates in order, and the clashes of a date before its kiddings', () => {
  const later = [visit('c', '2026-05-28'), visit('d', '2026-05-28')];
  const sooner = [visit('a', '2026-05-27'), visit('b', '2026-05-27')];
  const told = viewVisits([...later, ...sooner], USUAL_FARM, season).findings.map(
    ({ date, kind }) => `${date} ${kind}`,
  );
  expect(new Set(told)).toEqual(
    new Set(['2026-05-27 clash', '2026-05-27 kidding', '2026-05-28 clash', '2026-05-28 kidding']),
  );
  // `clash` comes before `kidding` in the alphabet too.
  expect(told).toEqual([...told].sort());
});

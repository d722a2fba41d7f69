// What a link has wrong is told in a few lines that somebody reads, whatever the link is.
import { expect, it } from 'vitest';
import { toldAsides } from '../../../shared/words/asides.ts';
import { readTrip } from '../../../shared/trip/tripQuery.ts';
import { usualWish } from '../../../shared/trip/usualWish.ts';
import { TEST_FARM } from '../../support/tripFarm.ts';

it('leaves what is short as it is', () => {
  const asides = [
    { what: 'value', found: 'children=0' },
    { what: 'unknown', found: 'ñ'.repeat(80) },
  ];
  expect(toldAsides(asides)).toEqual(asides);
});

it('cuts what is long between letters', () => {
  const [told] = toldAsides([{ found: `${'🐐'.repeat(80)}a` }]);
  expect(told?.found).toBe(`${'🐐'.repeat(80)}…`);
});

it('tells twelve of a hundred thousand, soon', () => {
  const query = `?${Array.from({ length: 100_000 }, (_, at) => `x${at}=1`).join('&')}&${'y'.repeat(100_000)}=1`;
  const { aside } = readTrip(query, TEST_FARM, usualWish(20_000));
  expect(aside).toHaveLength(100_001);
  expect(toldAsides(aside).map(({ found }) => found)).toEqual(
    Array.from({ length: 12 }, (_, at) => `x${at}`),
  );
});

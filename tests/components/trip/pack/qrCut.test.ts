// The code of a trip's address, read by another program.
import { describe, expect, it } from 'vitest';
import { NEEDS, type TripWish } from '../../../../shared/trip/types.ts';
import { USUAL_FARM } from '../../../../shared/trip/usualRules.ts';
import { usualWish } from '../../../../shared/trip/usualWish.ts';
import { writeTrip } from '../../../../shared/trip/tripQuery.ts';
import { qrCut } from '../../../../src/components/trip/pack/qrCut.ts';
import { sharedAddress } from '../../../../src/components/trip/pack/sharedAddress.ts';
import { hasQrReader, readBack, squares } from '../../../support/qrReader.ts';
import { WISH } from './loopDay.ts';

const USUAL = usualWish(20_000);
/** Everything said that can be said, so that no address is longer. */
const LONGEST: TripWish = {
  ...WISH,
  stations: USUAL_FARM.stations.map(({ id }) => id),
  needs: NEEDS,
  rain: true,
  word: 'ñandúes_y_cabritos-de-la-granja-del-cerro'.slice(0, 40),
  lunch: null,
};

describe('qrCut', () => {
  it.skipIf(!hasQrReader).each([
    ['a short one', USUAL],
    ['the longest one', LONGEST],
  ])(
    'draws %s so that another program reads the address (skipped where zbarimg is not installed)',
    (_, wish) => {
      const address = `https://dairy.example/es/trip/${writeTrip(wish, USUAL)}`;
      const { side, path } = qrCut(address);
      expect(readBack(squares(path, side))).toBe(address);
    },
  );

  it('leaves four units white on each side (ISO/IEC 18004, quiet zone)', () => {
    const { side, path } = qrCut('https://dairy.example/trip/?date=2026-05-27');
    const places = [...path.matchAll(/M(\d+) (\d+)h/g)].flatMap(([, x, y]) => [Number(x), Number(y)]);
    expect(Math.min(...places)).toBe(4);
    expect(Math.max(...places)).toBe(side - 5);
  });
});

describe('sharedAddress', () => {
  const at = (href: string, site?: string) =>
    sharedAddress({ path: '/kit/trip/?date=2026-05-27', below: 'trip/?date=2026-05-27' }, site, new URL(href) as unknown as Location); // prettier-ignore
  it('is the whole address on a host that others reach, whatever the farm has named', () => {
    expect(at('https://dairy.example/kit/trip/pack/?x=1')).toBe('https://dairy.example/kit/trip/?date=2026-05-27');
    expect(at('http://192.168.1.5:4173/kit/trip/pack/', 'https://farm.example')).toBe('http://192.168.1.5:4173/kit/trip/?date=2026-05-27');
  }); // prettier-ignore
  it.each(['http://localhost:4173/', 'http://127.0.0.1:4173/', 'http://[::1]/', 'http://barn.localhost/', 'file:///home/x/index.html'])(
    'on %s, where nobody else comes, is the one that the farm has named, or none',
    (href) => {
      expect(at(href)).toBeNull();
      for (const site of ['https://farm.example/kit/', 'https://farm.example/kit'])
        expect(at(href, site)).toBe('https://farm.example/kit/trip/?date=2026-05-27');
    },
  ); // prettier-ignore
});

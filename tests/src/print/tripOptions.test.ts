// What `npm run trip` is asked for: as options, as a pasted link, as a visit on file; all that is wrong in one list.
import { describe, expect, it } from 'vitest';
import { packCase } from '../../../shared/trip/pack/packCase.ts';
import type { Visit } from '../../../shared/trip/visitTypes.ts';
import { readTripOptions, type TripOptions } from '../../../src/print/tripOptions.ts';
import { tripJob, tripOrder } from '../../../src/print/tripOrder.ts';
import { GROUND } from '../../support/tripGround.ts';

const VISIT: Visit = {
  file: '2026-05-27-elm.yaml',
  school: 'Elm',
  state: 'agreed',
  wish: { ...GROUND.usual, date: '2026-05-27', children: 30, adults: 6, needs: ['asthma'] },
  note: '',
};
const read = (...args: string[]) => readTripOptions(args, GROUND, [VISIT]);
function good(...args: string[]): TripOptions {
  const reading = read(...args);
  if (!reading.ok) throw new Error(reading.faults.join('\n'));
  return reading.options;
}
function faults(...args: string[]): string[] {
  const reading = read(...args);
  return reading.ok ? [] : reading.faults;
}
const wishOf = (options: TripOptions) => packCase(options.query, GROUND).wish;

describe('readTripOptions', () => {
  it('takes a whole visit by options', () => {
    const options = good(
      ...'--date 2026-05-27 --grade 2 --children 54 --adults 7 --arrive 9:30 --leave 13:00 --buses 2 --lunch 11:45 --lang es'.split(' '),
    ); // prettier-ignore
    expect(wishOf(options)).toMatchObject({ date: '2026-05-27', grade: 2, children: 54, adults: 7, arrive: 570, leave: 780, buses: 2, lunch: 705 }); // prettier-ignore
    expect(options.langs).toEqual(['es']);
  });

  it('takes a pasted link, with what stands before its ? and behind a #', () => {
    for (const link of ['?date=2026-05-27&children=54&paper=a4', 'https://dairy.example/es/trip/?date=2026-05-27&children=54&paper=a4#rain']) {
      const options = good(link);
      expect(wishOf(options)).toMatchObject({ date: '2026-05-27', children: 54 });
      expect(packCase(options.query, GROUND).choice.paper).toBe('a4');
    }
    expect(good('?date=2026-05-27&pack=home.keys').query).toContain('pack=home.keys');
    expect(good('?date=2026-05-27').langs).toEqual(['en']);
  }); // prettier-ignore

  it('takes a visit on file, by its name with or without its ending, and changes single things of it', () => {
    for (const name of ['2026-05-27-elm', '2026-05-27-elm.yaml', 'visits/2026-05-27-elm.yaml'])
      expect(wishOf(good('--visit', name))).toEqual(VISIT.wish);
    expect(wishOf(good('--visit', '2026-05-27-elm', '--children', '31', '--rain'))).toEqual({ ...VISIT.wish, children: 31, rain: true }); // prettier-ignore
  });

  it('takes lists with commas, points or spaces, and a lunch that is none', () => {
    const wish = wishOf(good('--date=2026-05-27', '--stations', 'kid-pen,goat-barn', '--needs=asthma. quiet', '--lunch', 'no')); // prettier-ignore
    expect(wish).toMatchObject({
      stations: ['goat-barn', 'kid-pen'],
      needs: ['asthma', 'quiet'],
      lunch: null,
    });
  });

  it('names everything that is wrong at once, with what is allowed and the nearest name', () => {
    const found = faults('--date', '2026-02-30', '--grade', '13', '--children', '0', '--station', 'x', '--stations', 'goat-bran', '--needs', 'asthmas', '--lang', 'fr', '--paper', 'leter', '--pack', 'home,leader', 'please'); // prettier-ignore
    const told = found.join('\n');
    for (const part of [
      '"please": nothing is expected here',
      'Did you mean "--stations"?',
      '--date "2026-02-30": allowed is a day such as 2026-05-27',
      '--grade "13": allowed is K, 1, 2',
      '--children "0": allowed is a whole number from 1 to 400',
      'Did you mean "goat-barn"?',
      'Did you mean "asthma"?',
      '--lang "fr": allowed is en, es',
      '--paper "leter": allowed is letter, a4. Did you mean "letter"?',
      '--pack "leader": there is no such part. There are: teacher, home, timetable, leaders, rain',
      'Did you mean "leaders"?',
    ])
      expect(told).toContain(part);
    expect(found).toHaveLength(10);
  });

  it('says so where no visit is meant, where the visit is not on file, and where two links stand', () => {
    expect(faults().join()).toContain('Nothing says which visit is meant');
    expect(faults('--visit', '2026-05-27-elk').join()).toContain('Did you mean "2026-05-27-elm"?');
    expect(faults('?date=2026-05-27', '?date=2026-05-28').join()).toContain('more than one link');
    expect(faults('?date=2026-05-27&date=2026-05-28').join()).toContain('stands more than once');
    expect(faults('?date=2026-05-27&childern=5').join()).toContain('Did you mean "children"?');
  });
});

describe('tripOrder', () => {
  const order = (query: string) => tripOrder(new URLSearchParams(query), GROUND);

  it('hands on what it read, written anew, to the page of the language', () => {
    const read = order('date=2026-05-27&children=24&adults=5&lang=es&pack=home.keys&paper=a4');
    if (!read.ok) throw new Error(read.faults.join());
    expect(tripJob(read.order, GROUND)).toMatchObject({
      address: 'es/trip/pack/?date=2026-05-27&adults=5&pack=home.keys&paper=a4',
      file: 'trip-2026-05-27-grade-2-24-children-0930-es-a4.pdf',
    });
    // Two classes that are alike in all else go by their words.
    const named = order('date=2026-05-27&children=24&adults=5&word=oak');
    if (!named.ok) throw new Error(named.faults.join());
    expect(tripJob(named.order, GROUND).file).toBe(
      'trip-2026-05-27-grade-2-24-children-0930-oak-en-letter.pdf',
    );
  });

  it('refuses what it cannot read and a day that does not work', () => {
    expect(order('date=2026-05-27&children=24&adults=5&x=<script>')).toMatchObject({ ok: false });
    expect(order('date=2026-05-27&children=24&adults=5&lang=fr')).toMatchObject({ ok: false });
    expect(order('date=2026-05-27&children=24&adults=5&pack=a%20b')).toMatchObject({ ok: false });
    expect(order('date=2026-05-27&children=24&adults=5&pack=home.cards')).toEqual({ ok: false, faults: ['pack=cards cannot be printed.'] }); // prettier-ignore
    expect(order('date=2026-05-27&children=54&adults=1')).toEqual({ ok: false, faults: [expect.stringContaining('does not work')] }); // prettier-ignore
  });
});

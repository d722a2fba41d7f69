// The panel of what to expect, as it stands on a page: jars and names are the day's, in May, in December, and with an empty book.
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Farm } from '../../../shared/herd/types.ts';
import { dayTold } from '../../../shared/trip/dayTold.ts';
import { USUAL_FARM } from '../../../shared/trip/usualRules.ts';
import { tripSeason } from '../../../shared/trip/yearAhead.ts';
import Expect from '../../../src/components/trip/expect/Expect.svelte';
import { readStationFiles } from '../../../src/content/stationFile.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { wordsOf } from '../../../src/site/words.ts';
import { day } from '../../support/bookOf.ts';

const texts = readStationFiles('content/stations', ['en', 'es']).stations;
const SETTINGS: Pick<Farm, 'milkings' | 'units' | 'jar'> = {
  milkings: { am: '06:30', pm: '17:30' },
  units: 'us',
  jar: { size: 64, unit: 'fl oz' },
};

function demo(asOf: string) {
  const read = readFarm('content/farm', { asOf, now_ms: 0 });
  if (!read.ok) throw new Error('the demo farm has faults');
  return tripSeason(read.book, openLedger(read.book, read.asOf), read.farm);
}
const empty = { does: [], kiddings: [], rows: [] };
const SEASONS = {
  may: demo('2026-05-21'),
  december: demo('2026-12-08'),
  empty: tripSeason(empty, openLedger(empty, day('2026-05-21')), SETTINGS),
};

function shown(when: keyof typeof SEASONS, date: string, lang: 'en' | 'es' = 'en', more: object = {}): string {
  const season = SEASONS[when];
  const told = dayTold(USUAL_FARM, season, day(date));
  const props = { told, season, band: 'k-2' as const, stations: texts[lang] ?? [], words: wordsOf(lang), ...more };
  return render(Expect, { props }).body.replace(/<!--.*?-->/gs, '');
} // prettier-ignore
const textIn = (markup: string) => markup.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
const headings = (markup: string) => [...markup.matchAll(/<h[23][^>]*>([^<]*)</g)].map(([, text]) => text);

describe('the panel', () => {
  it('draws the milk of a May day in whole jars and a part, and every doe with her name', () => {
    const markup = shown('may', '2026-05-27');
    // 74 cups at eight to the jar: nine full ones and a quarter.
    expect(markup).toMatch(/<title[^>]*>74 cups of milk in the farm’s jars<\/title>/);
    const jars = markup.slice(markup.indexOf('class="jars'), markup.indexOf('about 74'));
    expect(jars.match(/<g transform="translate\(/g)).toHaveLength(10);
    expect(textIn(markup)).toContain('That fits into 10 jars of ours.');
    for (const name of ['Juniper', 'Hester', 'Tansy', 'Maribel', 'Pepita', 'Wren'])
      expect(textIn(markup)).toContain(name);
    // Faces say nothing to who cannot see them: the name stands beside each.
    expect(markup.match(/class="face[^"]*" aria-hidden="true"/g)).toHaveLength(6);
    expect(markup).not.toContain('id="expect-instead"');
  });

  it('shows an empty jar and another day’s stations in December, and a button only where it leads somewhere', () => {
    const markup = shown('december', '2026-12-15');
    expect(textIn(markup)).toContain('No milk is expected that day.');
    expect(textIn(markup)).not.toContain('jars of ours');
    expect(headings(markup)).toContain('Another day, not an empty one');
    expect(textIn(markup)).toMatch(/Goat barn\..*Measuring table\..*Practice stand\..*Kid table\./);
    expect(markup).not.toContain('<button');
    const ids = ['goat-barn', 'measuring-table', 'practice-stand', 'kid-table'];
    expect(shown('december', '2026-12-15', 'en', { ontake: () => undefined, planned: ['goat-barn'] })).toContain('<button');
    const taken = shown('december', '2026-12-15', 'en', { ontake: () => undefined, planned: ids });
    expect(taken).not.toContain('<button');
    expect(textIn(taken)).toContain('These stations are in the plan now.');
  }); // prettier-ignore

  it('says of a spring that is not in the book yet that it goes by other years', () => {
    const markup = shown('december', '2027-05-27');
    expect(textIn(markup)).toMatch(/most likely/);
    expect(textIn(markup)).toContain('Ask the farm again nearer the day.');
  });

  it('holds for an empty book, a past day and one too far ahead, without a hole in the text', () => {
    for (const [when, date] of [['empty', '2026-05-27'], ['may', '2026-05-01'], ['may', '2026-05-21'], ['may', '2028-05-01']] as const)
      for (const lang of ['en', 'es'] as const) {
        const text = textIn(shown(when, date, lang));
        expect(text).not.toMatch(/NaN|undefined|null|\{/);
        expect(text.length).toBeGreaterThan(80);
      }
    expect(headings(shown('empty', '2026-05-27'))).toEqual([
      'What to expect that day',
      'What the children can see',
      'Another day, not an empty one',
    ]);
  }); // prettier-ignore

  it('names each of its parts once', () => {
    const ids = [...shown('december', '2027-05-27').matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('tells a large herd by number where faces would be too many', () => {
    const does = Array.from({ length: 40 }, (_, at) => ({ id: `d${at}`, name: `Doe ${at}`, breed: 'Alpine', born: null, weight_kg: null }));
    const kiddings = does.map(({ id }) => ({ doe: id, day: day('2026-03-01'), kids: 2, apart: null, weaned: null, dry: null }));
    const book = { does, kiddings, rows: [] };
    const season = tripSeason(book, openLedger(book, day('2026-03-10')), SETTINGS);
    const told = dayTold(USUAL_FARM, season, day('2026-03-20'));
    const { body } = render(Expect, { props: { told, season, band: 'k-2', stations: [], words: wordsOf('en') } });
    expect(body.match(/class="face/g)?.length).toBeLessThan(15);
    expect(textIn(body)).toContain('and 28 more');
  }); // prettier-ignore
});

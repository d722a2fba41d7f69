// The papers as they are printed: nothing missing in either language, no field for a name, each group's times on its card.
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { papersFor } from '../../../shared/trip/papers/applies.ts';
import { shortClock } from '../../../shared/trip/papers/tell.ts';
import { PAPER_NAMES, type TripCase } from '../../../shared/trip/papers/types.ts';
import { NEEDS } from '../../../shared/trip/types.ts';
import { NO_CONTACT } from '../../../shared/trip/farmTrip.ts';
import Papers from '../../../src/components/trip/papers/Papers.svelte';
import { paperCase, tongueOf } from '../../support/tripPaperCase.ts';

const NO_WHEELS = NEEDS.filter((need) => need !== 'wheelchair');
const CASES: Readonly<Record<string, () => TripCase>> = {
  'a fine day': () => paperCase({ needs: NO_WHEELS }),
  'a wet day': () => paperCase({ rain: true }),
  'a day without milking': () =>
    paperCase({ stations: ['milking-stand', 'goat-barn', 'hay-loft', 'barn-board'] }, { milkings: [], noMilking: 'with kids', doesDue: 0, kiddingNear: true }), // prettier-ignore
  'a day without lunch, at a farm that has said nothing': () =>
    paperCase({ lunch: null, buses: 0, grade: 0 }, {}, NO_CONTACT),
  'all stations and many groups': () =>
    paperCase({
      stations: paperCase().farm.stations.map(({ id }) => id),
      grade: 7,
      children: 110,
      adults: 14,
      arrive: 480,
      leave: 1200,
    }), // prettier-ignore
};

function printed(trip: TripCase, langs: readonly string[], papers = papersFor(trip)): string {
  const tongues = langs.map((lang) => tongueOf(lang, trip.farm));
  const link = {
    address: 'https://alderbend.example/trip/?children=40',
    qr: { side: 3, path: 'M1 1h1v1h-1z' },
  };
  const home = tongues.map(({ words }) => words);
  const props = { papers, trip, tongues, home, paper: 'letter' as const, link };
  return render(Papers, { props }).body.replace(/<!--.*?-->/gs, '');
}

const textOf = (markup: string): string => markup.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

describe.each(Object.keys(CASES))('on %s', (name) => {
  const trip = (): TripCase => CASES[name]?.() ?? paperCase();

  it.each([['en', 'es'], ['es', 'en']])('every paper has all its words with %s first', (...langs) => {
    const markup = printed(trip(), langs);
    const text = textOf(markup);
    // A long text would fill the report.
    expect(text.match(/undefined|NaN|null|\[object|trip-papers\.|\{|\}/)).toBeNull();
    expect(text.match(/.{20}(\.\.|\s,|: *\.)/)).toBeNull();
    // Every paper that applies stands there, letter home and board in both languages.
    for (const paper of PAPER_NAMES)
      expect(markup.includes(`trip-paper of-${paper}`)).toBe(papersFor(trip()).includes(paper));
    for (const lang of ['en', 'es'])
      expect(markup).toMatch(new RegExp(`<article[^>]*of-home[^>]*lang="${lang}"`));
  }); // prettier-ignore

  it('has no field, and no line for anybody’s name', () => {
    const markup = printed(trip(), ['en', 'es']);
    expect(markup).not.toMatch(/<(input|textarea|select|form|button)\b/);
    expect(textOf(markup)).not.toMatch(/\b(Name|Nombre|Signature|Firma|First name|Last name)s?\s*:/i);
  });

  it('has the times of each group on its card', () => {
    const visit = trip();
    const cards = printed(visit, ['en'], ['leaders'])
      .split('<section class="leader-card')
      .slice(1)
      .map(textOf);
    expect(cards).toHaveLength(visit.day.groups.length);
    visit.day.groups.forEach(({ party }, index) => {
      for (const slot of visit.day.parties[party] ?? []) {
        expect(cards[index]).toContain(shortClock(slot.from));
        if (slot.kind === 'station') expect(cards[index]).toContain(`&lt;${slot.station}>`);
      }
    });
  });
});

it('a card says that it is for rain only where rain changes something', () => {
  const roofed = ['goat-barn', 'hay-loft', 'barn-board', 'measuring-table'];
  expect(printed(paperCase({ rain: true }), ['en'], ['leaders'])).toContain('For rain');
  expect(printed(paperCase({ rain: true, stations: roofed }), ['en'], ['leaders'])).not.toContain('For rain');
});

it('the rain plan has a message to families in every language of the letter home', () => {
  const text = textOf(printed(paperCase(), ['en', 'es'], ['rain']));
  expect(text).toContain('Rain is likely for our visit to Alder Bend Dairy on May 27, 2026.');
  expect(text).toContain('Por el mal tiempo no vamos a Alder Bend Dairy el 27 de mayo de 2026.');
});

it('nothing of a sentence with a colon in brackets is set bold', () => {
  const markup = printed(paperCase({ needs: ['asthma'] }), ['en'], ['teacher']);
  expect(markup).toContain('<b>Asthma, hay fever:</b>');
  expect(markup).not.toMatch(/<b>[^<]*\([^<)]*<\/b>/);
});

it('the same id never stands twice', () => {
  const ids = [...printed(paperCase(), ['en', 'es']).matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
});

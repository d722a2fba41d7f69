// Stations, taps, visits and contact in farm.yaml: what is filled in, every slip at its place, notices below guidance.
import { describe, expect, it } from 'vitest';
import type { Farm } from '../../../shared/herd/types.ts';
import { belowGuidance } from '../../../shared/trip/ruleSources.ts';
import { USUAL_FARM, USUAL_STATIONS } from '../../../shared/trip/usualRules.ts';
import { noticesOf, reading, SOUND_FARM, told } from './farmFolder.ts';

// Eight lines; what a test adds begins on the ninth.
const SOUND = String(SOUND_FARM['farm.yaml']);
const withYaml = (more: string) => ({ 'farm.yaml': `${SOUND}${more}` });
const faults = (more: string) => told(withYaml(more)).split('\n');

function tripOf(more: string): NonNullable<Farm['trip']> {
  const read = reading(withYaml(more));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  if (!read.farm.trip) throw new Error('no trip');
  return read.farm.trip;
}

describe('what a farm leaves out', () => {
  it('has nothing of its own where it says nothing', () => {
    const read = reading({});
    expect(read.ok && 'trip' in read.farm).toBe(false);
  });
  it('is the usual, with a word of any section', () => {
    for (const more of ['taps: 4\n', 'visits: { toilets: 4 }\n', 'contact: { name: Ada }\n'])
      expect(tripOf(more).farm).toEqual(USUAL_FARM);
    const stations = USUAL_STATIONS.map(({ id }) => `  - { id: ${id} }\n`).join('');
    expect(tripOf(`stations:\n${stations}`).farm).toEqual(USUAL_FARM);
  });
  it('of a station is as of Pailside’s station of that name, or plain', () => {
    const { stations } = tripOf('stations: [{ id: kid-pen, capacity: 9 }, { id: duck-pond, zone: animal }]\n').farm;
    const [pen, pond] = stations;
    // The stand-in is not on this farm's list, so there is none.
    expect(pen).toMatchObject({ id: 'kid-pen', capacity: 9, kidding: true, touch: true, standIn: null });
    expect(pond).toMatchObject({ id: 'duck-pond', zone: 'animal', roofed: true, touch: false, kidding: false, standIn: null });
  }); // prettier-ignore
  it('of a contact is empty', () => {
    const { contact } = tripOf("contact:\n  name: Ada\n  phone: 5550100\n  email:\n  emergency: '911'\n");
    expect(contact).toMatchObject({ name: 'Ada', phone: '5550100', email: '', emergency: '911', gate: '' });
  });
  it('of the pages’ own address is nothing, and an address is kept whole', () => {
    expect(tripOf('contact: { name: Ada }\n').contact.site).toBeUndefined();
    expect(tripOf('contact: { site: https://farm.example/kit/ }\n').contact.site).toBe(
      'https://farm.example/kit/',
    );
    expect(faults('contact: { site: javascript:alert(1) }\n').join()).toContain(
      'farm.yaml:9:18  found "javascript:alert(1)" for contact.site; expected the address at which others open these pages',
    );
  });
});

describe('what a farm says', () => {
  it('of stations is kept, minutes for all or by grade, yes and no', () => {
    const { stations, usual } = tripOf(
      'stations:\n  - { id: a, zone: clean, minutes: 12, walk: 0, wheelchair: no, standIn: b, chosenFor: [3-5] }\n' +
        '  - { id: b, zone: between, minutes: { k-2: 10, 3-5: 12, 6-8: 14, 9-12: 16 }, roofed: true }\n',
    ).farm;
    expect(stations[0]).toMatchObject({
      minutes: { 'k-2': 12, '9-12': 12 },
      walk_min: 0,
      wheelchair: false,
      standIn: 'b',
    });
    expect(stations[1]).toMatchObject({ minutes: { 'k-2': 10, '9-12': 16 }, roofed: true });
    // Nothing is chosen for the youngest, so the first of the loop are, without the ones that only stand in.
    expect(usual).toEqual({ 'k-2': ['a'], '3-5': ['a'], '6-8': ['a'], '9-12': ['a'] });
  });
  it('of thresholds is kept, for one band alone', () => {
    const { farm, shownMilking } = tripOf(
      "taps: 7\nvisits:\n  buses: 3\n  walks: { gate: 6 }\n  washing: { spare: 0.3 }\n  shownMilking: { from: '9:45', to: '11:30' }\n" +
        '  kiddingPen: { after: 30 }\n  3-5: { most: 7, wash: 65 }\n',
    );
    expect(farm).toMatchObject({ taps: 7, busesAtOnce: 3, gateWalk_min: 6, tapsWalk_min: 2, washSpare: 0.3 });
    expect(farm.kiddingDays).toEqual({ before: 14, after: 30 });
    expect(shownMilking).toEqual({ from: 585, to: 690 });
    // What is aimed at is never more than what is allowed.
    expect(farm.rules['3-5']).toEqual({
      ...USUAL_FARM.rules['3-5'],
      perAdult: { aim: 7, most: 7 },
      wash_s: 65,
    });
    expect(farm.rules['k-2']).toEqual(USUAL_FARM.rules['k-2']);
  });
});

describe('a slip', () => {
  it('of a word or a number is told at its place', () => {
    expect(faults('taps: eight\n')).toEqual([
      'farm.yaml:9:7  found "eight" for taps; expected a whole number from 1 to 200: taps that visitors wash their hands at; do: count them',
    ]);
    expect(faults("taps: '8'\n")).toEqual([
      'farm.yaml:9:7  found "8" in quotes for taps; expected a whole number from 1 to 200: taps that visitors wash their hands at; do: take the quotes away',
    ]);
    expect(faults('stations:\n  - { id: goat-barn, walk: -1 }\n')[0]).toMatch(
      /^farm\.yaml:10:28 {2}found "-1" for stations\.walk; expected whole minutes from 0 to 30/,
    );
    expect(faults('visits: { k-2: { lunsh: 3 } }\n')[0]).toMatch(
      /^farm\.yaml:9:18 {2}found "visits\.k-2\.lunsh", which no page reads; .*nearest "lunch"/,
    );
    expect(faults('stations:\n  - { id: hay-loft, roof: no }\n')[0]).toMatch(/nearest "roofed"/);
    expect(faults("visits: { shownMilking: { from: '9:45', to: '9:45' } }\n")).toHaveLength(1);
    expect(faults("visits: { shownMilking: { from: '11:00', to: '9:45' } }\n")[0]).toMatch(
      /the first before the second/,
    );
    expect(faults('visits: { 6-8: { aim: 12, most: 9 } }\n')[0]).toMatch(/aim is no more than most/);
    expect(faults('contact: { phon: 5 }\n')[0]).toMatch(/nearest "phone"/);
  });
  it('between stations is told at the second of two, all at once', () => {
    expect(
      faults(
        'stations:\n  - { id: goat-barn }\n  - { id: goat-barn }\n  - { id: kid-pen, standIn: kid-tabel }\n  - { id: kid-table }\n  - { id: duck-pond }\n',
      ).map((line) => line.split(';')[0]),
    ).toEqual([
      'farm.yaml:11:11  found "goat-barn" for stations.id',
      'farm.yaml:12:29  found "kid-tabel" for stations.standIn',
      'farm.yaml:14:5  found no stations.zone',
    ]);
    expect(faults('stations:\n  - { id: kid-pen, standIn: kid-tabel }\n  - { id: kid-table }\n')[0]).toMatch(/nearest "kid-table"/); // prettier-ignore
  });
  it('of a stand-in says what to write where the list has no other station', () => {
    expect(faults('stations:\n  - { id: goat-barn, standIn: hay-loft }\n')).toEqual([
      'farm.yaml:10:31  found "hay-loft" for stations.standIn; expected none, since the list has no other station; do: write none, or put the missing station on the list',
    ]);
  });
  it('of stand-ins: no roof, no way for a wheelchair, a milking, a circle', () => {
    const slip = (first: string, second: string) =>
      faults(
        `stations:\n  - { id: a, zone: animal, standIn: b, ${first} }\n  - { id: b, zone: animal, ${second} }\n`,
      );
    expect(slip('roofed: no', 'roofed: no')).toEqual([expect.stringMatching(/^farm\.yaml:10:37 .*has a roof/)]);
    expect(slip('wheelchair: no', 'wheelchair: no')).toEqual([expect.stringMatching(/a wheelchair can reach/)]);
    expect(slip('milking: yes', 'milking: yes')).toEqual([expect.stringMatching(/needs no milking/)]);
    expect(slip('kidding: yes', 'kidding: yes')).toEqual([expect.stringMatching(/beside the kidding pen/)]);
    expect(slip('roofed: no', 'standIn: a')[0]).toMatch(/circle/);
    // A chain may do it in two steps.
    expect(faults('stations:\n  - { id: a, zone: animal, roofed: no, standIn: b }\n  - { id: b, zone: animal, roofed: no, standIn: c }\n  - { id: c, zone: clean }\n')).toEqual(['ok']);
  }); // prettier-ignore
  // Source: NASPHV, Compendium of Measures (2017): animals and the places where people eat are kept apart.
  it('of an animal where people eat', () => {
    expect(faults('stations:\n  - { id: a, zone: clean, touch: yes }\n')[0]).toMatch(
      /^farm\.yaml:10:20 .*children touch animals there/,
    );
    expect(faults('stations:\n  - { id: a, zone: clean, milking: yes }\n')[0]).toMatch(/a doe is milked there/); // prettier-ignore
  });
});

describe('a threshold below guidance', () => {
  it('is a notice that names the source and sends to the local rules', () => {
    const notices = noticesOf(withYaml('visits:\n  k-2: { most: 10, wash: 30 }\n  adults: { least: 1 }\n'));
    expect(notices).toHaveLength(3);
    for (const notice of notices) expect(notice).toMatch(/^farm\.yaml \| .*health department.*go first/);
    // Health and Safety Executive (UK), AIS23, teachers' supplement: 1 adult for 8 children under 8.
    expect(notices[0]).toMatch(/k-2, allows 10 children for one adult\. Published guidance is at most 8 \(.*AIS23/);
    // CDC and WHO: 40 to 60 seconds, drying included.
    expect(notices[1]).toMatch(/30 seconds to wash hands\. Published guidance is at least 40 \(CDC and WHO/);
    expect(notices[2]).toMatch(/1 adult\. Usual is at least 2 \(common practice, no source\)/);
  }); // prettier-ignore
  it('is none at the usual, nor where a farm asks for more care', () => {
    expect(belowGuidance(USUAL_FARM)).toEqual([]);
    expect(
      noticesOf(withYaml('visits: { k-2: { aim: 3, most: 4, wash: 90 }, kiddingPen: { after: 60 } }\n')),
    ).toEqual([]);
  });
});

// Visits: the forms that are read, the words of each fault with its place, and a state that changes and nothing else.
import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../shared/trip/visitTypes.ts';
import { howToText } from '../../../src/farm/layOutText.ts';
import { readVisit, withState } from '../../../src/farm/visitFile.ts';
import { noticesOf, reading, told } from './farmFolder.ts';

const LINES = [
  'school: Brook School', 'state: agreed', "date: '2026-05-27'", 'grade: 2', 'children: 24', 'adults: 5',
  "arrive: '9:15'", "leave: '12:30'",
]; // prettier-ignore
/** A visit's text with some lines put in the place of those of the same word, or behind them. */
function text(...changed: string[]): string {
  const word = (line: string) => line.split(':')[0];
  const kept = LINES.map((line) => changed.find((one) => word(one) === word(line)) ?? line);
  const added = changed.filter((one) => !LINES.some((line) => word(line) === word(one)));
  return [...kept, ...added, ''].join('\n');
}
const file = (...changed: string[]) => ({ 'visits/brook.yaml': text(...changed) });
const STATIONS = ['milking-stand', 'goat-barn', 'kid-pen'];
function visitOf(raw: string): Visit {
  const read = readVisit('visits/brook.yaml', raw, STATIONS);
  if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
  return read.visit;
}

describe('visits/', () => {
  it('need not be there, and is then no empty list', () => {
    const none = reading({});
    expect(none.ok && none.visits).toBeUndefined();
    const empty = reading({ 'visits/README.txt': 'One file a visit.' });
    expect(empty.ok && empty.visits).toEqual([]);
  });

  it('reads a visit with only what every visit has: nobody eats, no bus, the farm chooses', () => {
    expect(visitOf(text())).toEqual({
      file: 'visits/brook.yaml',
      school: 'Brook School',
      state: 'agreed',
      wish: {
        date: '2026-05-27', grade: 2, children: 24, adults: 5, arrive: 555, leave: 750, buses: 0, lunch: null,
        stations: [], needs: [], rain: false, word: '',
      },
      note: '',
    }); // prettier-ignore
  });

  it('reads times with and without quotes, any letter case, yes and no, and puts lists into the order of the farm', () => {
    const { school, state, wish } = visitOf(
      text('school: 4417', 'state: Called off', 'grade: k', 'arrive: 09:15', 'lunch: No', 'rain: yes',
        'stations: [kid-pen, milking-stand, kid-pen]', 'needs: [asthma, wheelchair]', 'word: fern').replaceAll('\n', '\r\n'),
    ); // prettier-ignore
    expect({ school, state }).toEqual({ school: '4417', state: 'called off' });
    expect(wish).toMatchObject({ grade: 0, arrive: 555, lunch: null, rain: true, word: 'fern' });
    expect(wish.stations).toEqual(['milking-stand', 'kid-pen']);
    expect(wish.needs).toEqual(['wheelchair', 'asthma']);
  });

  it('takes a visit without a fault into the farm, by date and time', () => {
    const early = text('date: 2026-05-20').replace('Brook', 'Elm');
    const read = reading({ ...file(), 'visits/b.yml': early, 'visits/a.yaml': text("arrive: '8:00'") });
    expect(read.ok && read.visits?.map((visit) => visit.file)).toEqual([
      'visits/b.yml',
      'visits/a.yaml',
      'visits/brook.yaml',
    ]);
  });

  it('tells every fault of every visit at once, each at its place', () => {
    const wrong = file('state: agred', 'date: 2026-02-30', 'grade: 13', 'children: 0', 'adults: five',
      "leave: '9:00'", 'needs: [wheelchare]', 'names: [one, two]'); // prettier-ignore
    const torn = { 'visits/torn.yaml': 'school: "Brook\nstate: asked\n', 'visits/words.yaml': 'nothing\n' };
    expect(told({ ...wrong, ...torn })).toMatchInlineSnapshot(`
      "visits/brook.yaml:2:8  found "agred" for state; expected one of asked, agreed, held, called off; nearest "agreed"; do: write how far the visit has come
      visits/brook.yaml:3:7  found "2026-02-30" for date; expected a date as YYYY-MM-DD that exists; do: write the day of the visit so
      visits/brook.yaml:4:8  found "13" for grade; expected K, or a grade from 1 to 12; do: write the oldest grade that comes; K is kindergarten
      visits/brook.yaml:5:11  found "0" for children; expected a whole number from 1 to 400; do: write how many children come
      visits/brook.yaml:6:9  found "five" for adults; expected a whole number from 0 to 100; do: write how many adults can lead a group; drivers and aides of one child are not counted
      visits/brook.yaml:8:8  found "9:00" for leave; expected when the buses leave, which is after they have come, a clock time from '0:00' to '23:59'; do: write hours and minutes, for instance '9:30'
      visits/brook.yaml:9:9  found "wheelchare" for needs; expected a list out of wheelchair, milk-allergy, asthma, pregnant, immune, medicine, quiet; nearest "wheelchair"; do: write them in square brackets, for the whole group; no child is named or counted
      visits/brook.yaml:10:1  found "names", which no page reads; expected one of school, state, date, grade, children, adults, arrive, leave, buses, lunch, stations, needs, rain, word, note; do: correct the word before the colon, or take the line out

      visits/torn.yaml:1:9  found a quote or bracket that is opened and not closed, or a word without its colon; expected lines of the form "word: what it is" (YAML); do: close it, or put the colon after the word

      visits/words.yaml:1:1  found no lines of the form "word: what it is"; expected a visit's school, state, date, grade, children, adults, arrive and leave; do: write them, one a line, or take the file away"
    `);
  });

  it('tells a word that stands twice, or a tab, beside the slips of other lines', () => {
    const lines = (raw: string) => {
      const read = readVisit('visits/x.yaml', raw, STATIONS);
      return read.ok ? [] : read.faults.map(({ line, found }) => `${line} ${found}`);
    };
    expect(lines(text('state: agred', 'children: 24\nchildren: many', "adults: '5'"))).toEqual([
      '6 the same word before a colon a second time',
      '2 "agred" for state',
      '7 "5" in quotes for adults',
    ]);
    expect(lines(text('date: 2026-06-31\n\train: yes', 'stations: kid-pen'))).toEqual([
      '4 a tab at the start of the line',
      '3 "2026-06-31" for date',
      '10 "kid-pen" for stations',
    ]);
    expect(readVisit('visits/x.yaml', text('children: 24\nchildren: 24'), STATIONS).ok).toBe(false);
  });

  it('names no nearer word for a right one that stands where a list must stand', () => {
    const read = readVisit('visits/x.yaml', text('stations: kid-pen'), STATIONS);
    expect(read).toMatchObject({ ok: false, faults: [{ nearest: null }] });
  });

  it('names a station that the farm does not have, with the nearest', () => {
    const read = readVisit('visits/x.yaml', text('stations: [milking-stand, goat-barm]'), STATIONS);
    expect(read).toMatchObject({ ok: false, faults: [{ file: 'visits/x.yaml', line: 9, column: 27, nearest: 'goat-barn' }] }); // prettier-ignore
    expect(readVisit('visits/x.yaml', text('stations: [anything]'), null).ok).toBe(true);
  });

  it('lets a visit that is over name a station that the farm has given up since', () => {
    expect(visitOf(text('state: held', 'stations: [goat-barn, old-pond]')).wish.stations).toEqual([
      'goat-barn',
    ]);
  });

  it.each(["lunch: '9:00'", "lunch: '12:30'", 'lunch: maybe', 'word: two words', 'rain: perhaps', 'school: ""'])('finds a fault in %s', (line) => {
    expect(readVisit('visits/x.yaml', text(line), STATIONS)).toMatchObject({ ok: false, faults: [{ line: expect.any(Number) as number }] });
  }); // prettier-ignore

  it('says what else lies in the folder, and tells of a folder with nearly its name', () => {
    expect(told({ 'visits/old/2025.yaml': text() })).toContain('found a folder with 1 file in it');
    expect(noticesOf({ 'visits/list.csv': 'a,b\n' }).join('\n')).toContain(
      'This is no visit and is not read',
    );
    expect(noticesOf({ 'visit/a.yaml': text() }).join('\n')).toContain('rename it to visits');
  });
});

it('the example of README.txt is a visit', () => {
  const [, example = ''] = /Example: {7}(school: [\s\S]*?)\n\n/.exec(howToText('milkings/2026.csv')) ?? [];
  expect(visitOf(example.replace(/^ +/gm, ''))).toMatchObject({
    school: 'Brook School',
    wish: { arrive: 570 },
  });
});

describe('withState', () => {
  it('changes the state and no other sign: remarks, order, quotes and line ends stay', () => {
    const before = "# ours\r\nstate:   'asked'   # call them on Monday\r\nschool: A\r\n";
    expect(withState(before, 'agreed')).toBe(
      '# ours\r\nstate:   agreed   # call them on Monday\r\nschool: A\r\n',
    );
    expect(withState(`\ufeff${text()}`, 'called off')).toBe(`\ufeff${text('state: called off')}`);
  });

  it('leaves a file alone that says no state, or is torn', () => {
    expect(withState('school: A\n', 'held')).toBeNull();
    expect(withState('school: "A\nstate: asked\n', 'held')).toBeNull();
  });
});

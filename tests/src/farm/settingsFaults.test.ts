// Each thing that can be wrong in farm.yaml, and the words that the coordinator reads.
import { describe, expect, it } from 'vitest';
import { bookWith, SOUND_FARM, told } from './farmFolder.ts';

const SOUND = String(SOUND_FARM['farm.yaml']);
/** What is said where one line of the settings is another one. */
const withLine = (start: string, line: string) =>
  told({ 'farm.yaml': SOUND.replace(new RegExp(`^${start}.*$`, 'm'), line) });

describe('fields', () => {
  it('that are missing or empty', () => {
    expect(told({ 'farm.yaml': 'jar:\n' })).toMatchInlineSnapshot(`
      "farm.yaml:1:1  found no name; expected the farm's name; do: add it: write it after "name:"; put it in quotes if it is a number
      farm.yaml:1:1  found no timeZone; expected a time zone written Continent/City, for instance America/Chicago; do: add it: name the city whose clock the farm goes by
      farm.yaml:1:1  found no units; expected us or metric; do: add it: write one of the two
      farm.yaml:1:1  found no recordUnit; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: add it: write one of these
      farm.yaml:1:1  found no milkings; expected two clock times, the morning's before the evening's, for instance { am: '06:30', pm: '17:30' }; do: add it: write both times"
    `);
    expect(withLine('name', 'name:')).toMatchInlineSnapshot(
      `"farm.yaml:1:6  found no name; expected the farm's name; do: add it: write it after "name:"; put it in quotes if it is a number"`,
    );
  });
  it('with an unknown word, and the nearest one', () => {
    expect(withLine('recordUnit', 'recordunit: cup')).toMatchInlineSnapshot(`
      "farm.yaml:1:1  found no recordUnit; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: add it: write one of these
      farm.yaml:4:1  found "recordunit", which no page reads; expected one of name, timeZone, units, recordUnit, languages, milkings, jar, largestMilking, board, labels, stations, taps, visits, contact, backups, asOf, lessons, sheets, feed, land; nearest "recordUnit"; do: correct the word before the colon, or take the line out"
    `);
    expect(withLine('jar', 'weather: sunny')).toMatchInlineSnapshot(
      `"farm.yaml:7:1  found "weather", which no page reads; expected one of name, timeZone, units, recordUnit, languages, milkings, jar, largestMilking, board, labels, stations, taps, visits, contact, backups, asOf, lessons, sheets, feed, land; do: correct the word before the colon, or take the line out"`,
    );
    expect(withLine('jar', 'jar: { size: 1, units: qt }')).toMatchInlineSnapshot(`
      "farm.yaml:7:1  found no jar.unit; expected a unit of volume: one of fl oz, cup, pt, qt, gal, mL, L; do: add it: write one of these
      farm.yaml:7:17  found "jar.units", which no page reads; expected one of size, unit; nearest "unit"; do: correct the word before the colon, or take the line out"
    `);
  });
  it('name', () => {
    expect(withLine('name', 'name: 1881')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found "1881" for name; expected the farm's name; do: write it after "name:"; put it in quotes if it is a number"`,
    );
    expect(withLine('name', 'name: [a, b]')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found "[a, b]" for name; expected the farm's name; do: write it after "name:"; put it in quotes if it is a number"`,
    );
  });
  it('timeZone', () => {
    expect(withLine('timeZone', 'timeZone: Chicago')).toMatchInlineSnapshot(
      `"farm.yaml:2:11  found "Chicago" for timeZone; expected a time zone written Continent/City, for instance America/Chicago; nearest "America/Chicago"; do: name the city whose clock the farm goes by"`,
    );
    expect(withLine('timeZone', 'timeZone: America/New York')).toMatchInlineSnapshot(
      `"farm.yaml:2:11  found "America/New York" for timeZone; expected a time zone written Continent/City, for instance America/Chicago; nearest "America/New_York"; do: name the city whose clock the farm goes by"`,
    );
    expect(withLine('timeZone', "timeZone: '-05:00'")).toMatchInlineSnapshot(
      `"farm.yaml:2:11  found "-05:00" for timeZone; expected a time zone written Continent/City, for instance America/Chicago; do: name the city whose clock the farm goes by"`,
    );
  });
  it('units and recordUnit', () => {
    expect(withLine('units', 'units: metrc')).toMatchInlineSnapshot(
      `"farm.yaml:3:8  found "metrc" for units; expected us or metric; nearest "metric"; do: write one of the two"`,
    );
    expect(withLine('recordUnit', 'recordUnit: bucket')).toMatchInlineSnapshot(
      `"farm.yaml:4:13  found "bucket" for recordUnit; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: write one of these"`,
    );
  });
  it('languages', () => {
    expect(withLine('languages', 'languages: en')).toMatchInlineSnapshot(
      `"farm.yaml:5:12  found "en" for languages; expected a list of languages, each once, for instance [en, es]; do: write them in square brackets"`,
    );
    expect(withLine('languages', 'languages: [en, Spanish]')).toMatchInlineSnapshot(
      `"farm.yaml:5:17  found "Spanish" for languages; expected a list of languages, each once, for instance [en, es]; do: write them in square brackets"`,
    );
    expect(withLine('languages', 'languages: [en, es, en]')).toMatchInlineSnapshot(
      `"farm.yaml:5:12  found "[en, es, en]" for languages; expected a list of languages, each once, for instance [en, es]; do: write them in square brackets"`,
    );
    expect(withLine('languages', 'languages: []')).toContain('farm.yaml:5:12');
  });
  it('milkings', () => {
    expect(withLine('milkings', "milkings: { am: '6.30', pm: '25:00' }")).toMatchInlineSnapshot(`
      "farm.yaml:6:17  found "6.30" for milkings.am; expected a clock time from '00:00' to '23:59'; do: write hours and minutes, for instance '06:30' or '17:30'
      farm.yaml:6:29  found "25:00" for milkings.pm; expected a clock time from '00:00' to '23:59'; do: write hours and minutes, for instance '06:30' or '17:30'"
    `);
    expect(withLine('milkings', "milkings: { am: '17:30', pm: '06:30' }")).toMatchInlineSnapshot(
      `"farm.yaml:6:11  found "{ am: '17:30', pm: '06:30' }" for milkings; expected two clock times, the morning's before the evening's, for instance { am: '06:30', pm: '17:30' }; do: write both times"`,
    );
    expect(withLine('milkings', "milkings: { am: '06:30' }")).toMatchInlineSnapshot(
      `"farm.yaml:6:1  found no milkings.pm; expected a clock time from '00:00' to '23:59'; do: add it: write hours and minutes, for instance '06:30' or '17:30'"`,
    );
  });
  it('jar and largestMilking', () => {
    expect(withLine('jar', 'jar: { size: 0, unit: lb }')).toMatchInlineSnapshot(`
      "farm.yaml:7:14  found "0" for jar.size; expected a number above 0; do: write the number alone, with a point for decimals; the unit has its own place
      farm.yaml:7:23  found "lb" for jar.unit; expected a unit of volume: one of fl oz, cup, pt, qt, gal, mL, L; do: write one of these"
    `);
    expect(withLine('jar', 'jar: 1 qt')).toMatchInlineSnapshot(
      `"farm.yaml:7:6  found "1 qt" for jar; expected a size and a unit, for instance { size: 1, unit: qt }; do: write both"`,
    );
    expect(withLine('largestMilking', 'largestMilking: { amount: lots }')).toMatchInlineSnapshot(`
      "farm.yaml:8:1  found no largestMilking.unit; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: add it: write one of these
      farm.yaml:8:27  found "lots" for largestMilking.amount; expected a number above 0; do: write the number alone, with a point for decimals; the unit has its own place"
    `);
  });
  it('asOf', () => {
    expect(withLine('jar', 'asOf: 2026-02-30')).toMatchInlineSnapshot(
      `"farm.yaml:7:7  found "2026-02-30" for asOf; expected a date as YYYY-MM-DD that exists; do: write it so, for instance '2026-05-21', or take the line out: today is then today"`,
    );
    expect(withLine('jar', 'asOf: 20260521')).toContain('farm.yaml:7:7');
  });
});

describe('the form of the file', () => {
  it('a tab, a word twice', () => {
    expect(told({ 'farm.yaml': `${SOUND}\tlessons: x\n` })).toMatchInlineSnapshot(
      `"farm.yaml:9:1  found a tab at the start of the line; expected lines of the form "word: what it is" (YAML); do: take it out and use spaces"`,
    );
    expect(told({ 'farm.yaml': `${SOUND}name: Other\n` })).toMatchInlineSnapshot(
      `"farm.yaml:9:1  found the same word before a colon a second time; expected lines of the form "word: what it is" (YAML); do: keep one of the two"`,
    );
  });
  it('colons, quotes, brackets, signs', () => {
    expect(withLine('name', 'name: Farm: the best')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found a second colon, or a line that stands too far right below this one; expected lines of the form "word: what it is" (YAML); do: put what follows the first colon in quotes, and start each line where its neighbours start"`,
    );
    expect(withLine('name', 'name: "Farm')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found a quote or bracket that is opened and not closed, or a word without its colon; expected lines of the form "word: what it is" (YAML); do: close it, or put the colon after the word"`,
    );
    expect(withLine('languages', 'languages: [en, es')).toMatchInlineSnapshot(
      `"farm.yaml:6:1  found a line that stands too far left or right, or a bracket that is not closed before it; expected lines of the form "word: what it is" (YAML); do: start the line where its neighbours start, and close every bracket"`,
    );
    expect(withLine('name', 'name: *Star')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found a text that begins with a sign which has a meaning of its own here, such as * & @ % ! \`; expected lines of the form "word: what it is" (YAML); do: put the whole text in quotes"`,
    );
    expect(withLine('name', 'name: @home')).toMatchInlineSnapshot(
      `"farm.yaml:1:7  found a text that begins with a sign which has a meaning of its own here, such as * & @ % ! \`; expected lines of the form "word: what it is" (YAML); do: put the whole text in quotes"`,
    );
    expect(told({ 'farm.yaml': `${SOUND}---\n${SOUND}` })).toMatchInlineSnapshot(
      `"farm.yaml:9:1  found a line of three hyphens; expected lines of the form "word: what it is" (YAML); do: take it out"`,
    );
    expect(told({ 'farm.yaml': `${SOUND}and more\n` })).toMatchInlineSnapshot(
      `"farm.yaml:9:1  found a quote or bracket that is opened and not closed, or a word without its colon; expected lines of the form "word: what it is" (YAML); do: close it, or put the colon after the word"`,
    );
  });
  it('nothing of use', () => {
    expect(told({ 'farm.yaml': '' })).toMatchInlineSnapshot(
      `"farm.yaml:1:1  found no lines of the form "word: what it is"; expected the farm's name, timeZone, units, recordUnit and milkings; do: write them, one a line; "npm run farm -- FOLDER" lays out a farm.yaml to fill in"`,
    );
    expect(told({ 'farm.yaml': '- a\n- b\n' })).toContain('farm.yaml:1:1');
  });
});

describe('where farm.yaml is torn', () => {
  const rows = bookWith(['2027-05-20,am,clover,500,,,,', '2026-05-20,am,clovr,7,,,,']);
  it('the tables are checked, save for what only farm.yaml can tell', () => {
    expect(told({ 'farm.yaml': 'name: "Farm', ...rows })).toMatchInlineSnapshot(`
      "farm.yaml:1:7  found a quote or bracket that is opened and not closed, or a word without its colon; expected lines of the form "word: what it is" (YAML); do: close it, or put the colon after the word

      milkings/2026-05.csv:3:15  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv"
    `);
  });
  it('a fault elsewhere in it keeps nothing from being checked', () => {
    const yaml = SOUND.replace('units: us', 'units: imperial');
    expect(told({ 'farm.yaml': yaml, ...rows })).toMatchInlineSnapshot(`
      "farm.yaml:3:8  found "imperial" for units; expected us or metric; do: write one of the two

      milkings/2026-05.csv:2:1  found 2027-05-20; expected a date up to today, 2026-06-01; do: correct the date: this milking is still to come
      milkings/2026-05.csv:2:22  found 500 cup; expected at most 24 cup from one doe at one milking (largestMilking in farm.yaml); do: check: correct the amount or its unit; or, if she truly gave so much, make largestMilking larger in farm.yaml
      milkings/2026-05.csv:3:15  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv"
    `);
  });
});

// The texts of stations: the eleven as they are written, and every slip told with its line, all at once.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import { USUAL_STATIONS } from '../../../shared/trip/usualRules.ts';
import { tellContentFaults } from '../../../src/content/contentFault.ts';
import { readStationFiles } from '../../../src/content/stationFile.ts';
import { factOf } from '../../../src/site/facts.ts';

const LANGUAGES = ['en', 'es'] as const;
const { stations, faults } = readStationFiles('content/stations', LANGUAGES, USUAL_STATIONS.map(({ id }) => id)); // prettier-ignore
const textOf = (lang: string, id: string) => (stations[lang] ?? []).find((one) => one.id === id);

const made: string[] = [];
afterAll(() => made.forEach((dir) => rmSync(dir, { recursive: true, force: true })));

/** The faults of Pailside's own texts with some files changed or taken out (null). */
function faultsWith(changes: Readonly<Record<string, ((text: string) => string) | string | null>>, needed: readonly string[] = []) {
  const dir = mkdtempSync(join(tmpdir(), 'stations-'));
  made.push(dir);
  cpSync('content/stations', dir, { recursive: true });
  for (const [file, change] of Object.entries(changes)) {
    const path = join(dir, file);
    mkdirSync(dirname(path), { recursive: true });
    if (change === null) rmSync(path);
    else writeFileSync(path, typeof change === 'string' ? change : change(readFileSync(path, 'utf8')));
  }
  return tellContentFaults(readStationFiles(dir, LANGUAGES, needed).faults).split('\n').filter((line) => line !== '');
} // prettier-ignore

describe('content/stations', () => {
  it('has no fault, and texts of all eleven in both languages', () => {
    expect(tellContentFaults(faults)).toBe('');
    for (const lang of LANGUAGES)
      expect(stations[lang]?.map(({ id }) => id).sort()).toEqual(USUAL_STATIONS.map(({ id }) => id).sort());
  });

  it('rests on facts that are there, the same in both languages', () => {
    for (const { id } of USUAL_STATIONS) {
      const [en, es] = LANGUAGES.map((lang) => {
        const { facts } = parse(readFileSync(`content/stations/${lang}/${id}.yaml`, 'utf8')) as { facts: string[] };
        for (const fact of facts) expect(() => factOf(fact), `${id}: ${fact}`).not.toThrow();
        return facts;
      });
      expect(en?.length, id).toBeGreaterThan(0);
      expect(es).toEqual(en);
    }
  }); // prettier-ignore

  // Longest sentence by band, words: the limits of every text that Pailside says to children.
  it('says nothing longer to children than their band follows', () => {
    const longest: Readonly<Record<Band, number>> = { 'k-2': 10, '3-5': 14, '6-8': 20, '9-12': 25 };
    for (const lang of LANGUAGES)
      for (const { id, say, ask } of stations[lang] ?? [])
        for (const band of BANDS)
          for (const text of [...say[band], ...ask[band].flatMap((one) => [one.ask, one.answer])])
            for (const sentence of text.split(/(?<=[.?!:;])\s+/))
              expect(sentence.split(/\s+/).filter((word) => /\p{L}/u.test(word)).length, `${lang} ${id} ${band}: ${sentence}`).toBeLessThanOrEqual(longest[band]);
  }); // prettier-ignore

  // CDC and NASPHV: no raw milk; hot milk behind glass; births are dangerous in pregnancy; nobody eats near animals.
  it('keeps the usual cautions where they belong', () => {
    expect(textOf('en', 'milking-stand')?.care.join(' ')).toMatch(/Nobody tastes the milk/);
    expect(textOf('es', 'milking-stand')?.care.join(' ')).toMatch(/Nadie prueba la leche/);
    expect(textOf('en', 'kitchen-window')?.care.join(' ')).toMatch(/Hot milk .* behind the glass.*Nobody tastes/s); // prettier-ignore
    expect(textOf('es', 'kitchen-window')?.care.join(' ')).toMatch(/leche caliente .* vidrio.*Nadie prueba/s);
    expect(textOf('en', 'kid-pen')?.care.join(' ')).toMatch(/pregnant.*stays outside.*doctor/);
    expect(textOf('es', 'kid-pen')?.care.join(' ')).toMatch(/embarazada.*se queda afuera.*médico/);
    expect(textOf('en', 'goat-barn')?.care.join(' ')).toMatch(/No food/);
    expect(textOf('es', 'goat-barn')?.care.join(' ')).toMatch(/no entran comida/);
  });
});

const spoken = (lang: string, id: string) => {
  const { say, ask } = textOf(lang, id) ?? { say: {}, ask: {} };
  const answers = Object.values(ask).flat().flatMap((one) => [one.ask, one.answer]);
  return [...Object.values(say).flat(), ...answers];
}; // prettier-ignore

describe('numbers at a station', () => {
  const numbers = (text: string) => text.replace(/(\d),(?=\d{3})/g, '$1').match(/\d+(?:\.\d+)?/g)?.sort() ?? [];

  it('are the same in both languages', () => {
    for (const { id } of USUAL_STATIONS) {
      const [en, es] = [spoken('en', id), spoken('es', id)];
      expect(en.length, id).toBeGreaterThan(20);
      en.forEach((text, index) => expect(numbers(es[index] ?? ''), text).toEqual(numbers(text)));
    }
  });

  // °F = °C × 9/5 + 32 (NIST SP 811). A farm reads one of the two, and children of both languages stand at one table.
  it('tell a temperature in both units, within a degree', () => {
    const degrees = (text: string, unit: string) =>
      [...text.matchAll(/([\d.]+)(?: (?:to|a) ([\d.]+))? °([FC])/g)]
        .filter((found) => found[3] === unit)
        .flatMap(([, low, high]) => [low, high].flatMap((one) => (one === undefined ? [] : [Number(one)])));
    const warm = LANGUAGES.flatMap((lang) => USUAL_STATIONS.flatMap(({ id }) => spoken(lang, id))).filter((text) => /°/.test(text));
    expect(warm.length).toBeGreaterThan(8);
    for (const text of warm) {
      const [inF, inC] = [degrees(text, 'F'), degrees(text, 'C')];
      expect(inF.length, text).toBe(inC.length);
      inF.forEach((f, index) => expect(Math.abs(f - ((inC[index] ?? 0) * 9) / 5 - 32), text).toBeLessThanOrEqual(1));
    }
  });
}); // prettier-ignore

describe('a slip', () => {
  it('of a field, a length or a number of lines is told with its line', () => {
    const told = faultsWith({
      'en/kid-table.yaml': (text) => text.replace(/^name: .*$/m, 'nam: Kid table').replace(/^ready:/m, 'redy:'),
      'es/hay-loft.yaml': (text) => text.replace(/^name: .*$/m, `name: ${'largo '.repeat(6)}`).replace(/^ {4}- El heno es.*\n/m, '    - a: b\n'),
    }); // prettier-ignore
    expect(told).toEqual([
      expect.stringMatching(/^content\/stations\/en\/kid-table\.yaml:1 {2}"name" is missing: write a text here/),
      expect.stringMatching(/^content\/stations\/en\/kid-table\.yaml:1 {2}"ready" is missing/),
      expect.stringMatching(/^content\/stations\/en\/kid-table\.yaml:1 {2}"nam" is no field of this file; did you mean "name"\?$/),
      expect.stringMatching(/^content\/stations\/en\/kid-table\.yaml:\d+ {2}"redy" is no field of this file; did you mean "ready"\?$/),
      expect.stringMatching(/^content\/stations\/es\/hay-loft\.yaml:1 {2}"name": at most 28 letters/),
      expect.stringMatching(/^content\/stations\/es\/hay-loft\.yaml:\d+ {2}"say\.k-2", number 1: write a text here, in quotes if/),
    ]); // prettier-ignore
  });

  it('of the reading level names the sentence', () => {
    const told = faultsWith({
      'en/goat-barn.yaml': (text) =>
        text.replace(/^ {4}- Walk slowly.*$/m, '    - Please walk slowly and talk softly so that she may come over to you.'),
    }); // prettier-ignore
    expect(told).toEqual([
      expect.stringMatching(/goat-barn\.yaml:\d+ {2}this sentence has 14 words and k-2 follows at most 10: "Please walk slowly .*Part it in two\.$/),
    ]); // prettier-ignore
  });

  it('between languages: another number of lines, a file in one language alone', () => {
    const told = faultsWith({
      'es/kid-pen.yaml': (text) => text.replace(/^ {4}- Siéntate.*\n/m, ''),
      'en/duck-pond.yaml': readFileSync('content/stations/en/kid-pen.yaml', 'utf8'),
    });
    expect(told).toEqual([
      'content/stations/es/duck-pond.yaml:1  there is no such file, but other languages have the station "duck-pond"; all languages need the same.',
      expect.stringMatching(/^content\/stations\/es\/kid-pen\.yaml:\d+ {2}"say\.k-2" has 3 here and 4 in content\/stations\/en\/kid-pen\.yaml/),
    ]); // prettier-ignore
  });

  it('of farm.yaml: a station without texts, and the nearest one that has some', () => {
    expect(faultsWith({}, ['kid-penn'])).toEqual(
      ['en', 'es'].map(
        (lang) =>
          `content/stations/${lang}/kid-penn.yaml:1  there is no such file, but farm.yaml has a station "kid-penn"; write its texts like those of the others, or correct it in farm.yaml: did you mean "kid-pen"?`,
      ),
    );
  });

  it('of a file’s name, or of its form', () => {
    const told = faultsWith({ 'en/Duck Pond.yaml': 'name: x\n', 'en/kid-pen.yaml': 'name: [Pen\n' });
    expect(told.join('\n')).toMatch(/Duck Pond\.yaml:1 {2}a station is a file whose name/);
    expect(told.join('\n')).toMatch(/kid-pen\.yaml:2:1 {2}the file is no YAML here/);
  });
});

// The steps of milking as the coordinator writes them: what is wrong is told with its line, all at once.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tellContentFaults } from '../../../src/content/contentFault.ts';
import { readRoutineFiles } from '../../../src/content/routineFile.ts';
import { ROUTINE_CAUTIONS, ROUTINE_FACTS } from '../../../shared/routine/routine.ts';
import { CHILL_FACTS } from '../../../shared/routine/chill.ts';
import { factOf } from '../../../src/site/facts.ts';

const made: string[] = [];
afterAll(() => made.forEach((dir) => rmSync(dir, { recursive: true, force: true })));

function shelfOf(files: Readonly<Record<string, string>>) {
  const dir = mkdtempSync(join(tmpdir(), 'routine-'));
  made.push(dir);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(dir, name), text);
  return readRoutineFiles(dir, ['en', 'es']);
}
const faultsOf = (files: Readonly<Record<string, string>>) => tellContentFaults(shelfOf(files).faults);

const step = (change = '', child = 'Germs go down the drain.') =>
  `  - picture: hands\n    each: milking\n    name: Wash hands\n    do: Wash your hands.\n    why: Hands carry germs.\n    child: ${child}\n${change}`;
const EN = `title: How we milk\nsteps:\n${step()}`;
const ES = `title: Así ordeñamos\nsteps:\n${step('', 'Los gérmenes se van con el agua.')}`;

describe('readRoutineFiles()', () => {
  it('reads the demo farm’s own steps, the same in both languages', () => {
    const { routine, faults, notices } = readRoutineFiles('content/routine', ['en', 'es']);
    expect([faults, notices]).toEqual([[], []]);
    expect(routine['en']?.steps.map(({ picture }) => picture)).toEqual(['hands', 'brush', 'stand', 'wipe', 'strip', 'milk', 'dip', 'strain', 'chill', 'washUp']); // prettier-ignore
    expect(routine['es']?.steps).toHaveLength(10);
  });

  it('names what is missing, miswritten, unknown or too long for a wall, each with its line', () => {
    const wrong = `title: How we milk\nstep: []\nsteps:\n${step().replace('hands', 'hand').replace('each: milking', 'each: goat')}  - picture: none\n    each: doe\n    name: ${'long '.repeat(9)}\n    do: Do it.\n    child: We look.\n`;
    expect(faultsOf({ 'en.yaml': wrong, 'es.yaml': ES })).toMatchInlineSnapshot(`
      "content/routine/en.yaml:2  "step" is no field of this file; did you mean "steps"?
      content/routine/en.yaml:4  "picture" of step 1: one of hands, brush, stand, wipe, strip, milk, dip, strain, chill, washUp, none stands here.
      content/routine/en.yaml:5  "each" of step 1: one of doe, milking stands here.
      content/routine/en.yaml:10  "why" of step 2 is missing: write something here.
      content/routine/en.yaml:12  "name" of step 2: at most 22 letters stand here, so that it can be read on a wall."
    `);
  });

  it('names a file that is no YAML, and a star that YAML takes for a name', () => {
    expect(faultsOf({ 'en.yaml': 'title: [How\nsteps:', 'es.yaml': 'title: *Así*\nsteps: []\n' })).toMatchInlineSnapshot(`
      "content/routine/en.yaml:2:1  the file is no YAML here: Flow sequence in block collection must be sufficiently indented and end with a ].
      content/routine/es.yaml:1:8  the file has a value that begins with a star; put it in quotation marks."
    `); // prettier-ignore
  });

  it('holds the languages against each other', () => {
    const more = `${ES}${step('', 'Miramos.')}`.replace('picture: hands', 'picture: brush').replace('each: milking', 'each: doe'); // prettier-ignore
    expect(faultsOf({ 'en.yaml': EN, 'es.yaml': more })).toMatchInlineSnapshot(`
      "content/routine/es.yaml:3  "picture" of step 1 is brush here and hands in content/routine/en.yaml; all languages need the same.
      content/routine/es.yaml:3  there are 2 steps here and 1 in content/routine/en.yaml; all languages need the same.
      content/routine/es.yaml:4  "each" of step 1 is doe here and milking in content/routine/en.yaml; all languages need the same."
    `);
  });

  it('holds what a child reads to what a child can read', () => {
    const hard = EN.replace('Germs go down the drain.', 'Pathogens contaminate lactation.');
    expect(faultsOf({ 'en.yaml': hard, 'es.yaml': ES })).toMatchInlineSnapshot(
      `"content/routine/en.yaml:8  "Pathogens contaminate lactation." is hard for children of the first grades: pathogens, contaminate, lactation; say it in easier words."`,
    );
  });

  it('is content without steps where nobody has written them, and says so', () => {
    const { routine, faults, notices } = shelfOf({ 'en.yaml': EN });
    expect([Object.keys(routine), faults]).toEqual([['en'], []]);
    expect(notices.map(({ file }) => file)).toEqual(['content/routine/es.yaml']);
  });
});

describe('the facts behind the steps', () => {
  it('are there, each with its source', () => {
    for (const id of [...ROUTINE_FACTS, ...ROUTINE_CAUTIONS, ...CHILL_FACTS, 'late-cold'])
      expect(factOf(id).source).not.toBe('');
  });
});

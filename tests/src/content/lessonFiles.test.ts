// Lessons in two languages held against each other, and against the reading level of their band.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { tellContentFaults } from '../../../src/content/contentFault.ts';
import { readLessonFiles } from '../../../src/content/lessonFiles.ts';
import type { LessonKnown } from '../../../src/content/lessonParts.ts';

const KNOWN: LessonKnown = { figures: ['herd.week.total'], sheets: [{ name: 'cups', band: 'k-2' }] };

function shelfOf(files: Readonly<Record<string, string>>, languages = ['en', 'es']) {
  const dir = mkdtempSync(join(tmpdir(), 'pailside-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(dir, path, '..'), { recursive: true });
    writeFileSync(join(dir, path), text);
  }
  return readLessonFiles(dir, languages, KNOWN);
}
const faultsOf = (files: Readonly<Record<string, string>>, languages?: string[]) =>
  tellContentFaults(shelfOf(files, languages).faults);

const step = (text: string, more = 'name="a" title="A" kind="do" minutes="5" least="3" most="8" topics="milk"') =>
  `<Step ${more}>\n\n${text}\n\n</Step>\n`; // prettier-ignore
const head = (more = '', band = 'k-2', place = 'class') =>
  `---\ntitle: Milk\nband: ${band}\nplace: ${place}\naims: [Say.]\nstandards: []\n${more}---\n\n`;

describe('readLessonFiles', () => {
  it('orders lessons by band, then by the order of a visit, then by name', () => {
    const wash = 'name="w" title="W" kind="close" minutes="5" least="3" most="8" topics="hands" must';
    const { lessons, faults } = shelfOf(
      {
        'en/z.mdx': head() + step('Hay.'),
        'en/a.mdx': head('', '3-5') + step('Hay.'),
        'en/y.mdx': head('', 'k-2', 'after') + step('Hay.'),
        'en/m.mdx': head('cautions: [wash]\n', 'k-2', 'barn') + step('Wash.', wash),
        'en/b.mdx': head() + step('Hay.'),
      },
      ['en'],
    );
    expect(faults).toEqual([]);
    expect(lessons.map(({ name }) => name)).toEqual(['b', 'z', 'm', 'y', 'a']);
  });

  it('names everything in which two languages differ', () => {
    const more = 'cautions: [wash, lye]\nmaterials:\n  - { what: cup, count: 1, per: child }\n';
    const otherMore = 'cautions: [wash]\nmaterials:\n  - { what: taza, count: 2, per: group, groupOf: 3 }\n';
    const sheet =
      'name="s" title="S" kind="sheet" minutes="9" least="9" most="9" topics="numbers" sheet="cups"';
    const files = {
      'en/l.mdx': head(more) + step('Hay.') + step('Cups.', sheet),
      'es/l.mdx': head(otherMore, '3-5', 'after') + step('Heno.', 'name="a" title="A" kind="talk" minutes="6" least="3" most="9" topics="milk kids" must') + step('Leche.', 'name="t" title="T" kind="do" minutes="9" least="9" most="9" topics="numbers"'),
    }; // prettier-ignore
    expect(faultsOf(files)).toMatchInlineSnapshot(`
      "content/lessons/es/l.mdx:3  "band" is 3-5 here and k-2 in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:4  "place" is after here and class in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:7  "cautions" is wash here and wash, lye in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:9  "materials" is 2 per group of 3 here and 1 per child in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  the order of the steps is a, t here and a, s in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  "kind" of the step "a" is talk here and do in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  "minutes" of the step "a" is 6 here and 5 in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  "most" of the step "a" is 9 here and 8 in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  "topics" of the step "a" is milk, kids here and milk in content/lessons/en/l.mdx; both languages need the same.
      content/lessons/es/l.mdx:12  "must" of the step "a" is there here and not there in content/lessons/en/l.mdx; both languages need the same."
    `);
    expect(faultsOf({ 'en/l.mdx': files['en/l.mdx'], 'es/l.mdx': files['en/l.mdx'] })).toBe('');
  });

  it('says which language lacks a lesson, but not where the lesson is there and has a fault', () => {
    const { notices } = shelfOf({
      'en/one.mdx': head() + step('Hay.'),
      'en/two.mdx': head() + step('Hay.'),
      'es/two.mdx': 'broken',
    });
    expect(notices).toEqual([
      {
        file: 'content/lessons/en/one.mdx',
        text: 'This lesson is not written in "es" yet, so the pages in it leave it out.',
      },
    ]);
  });

  it('names a file that is no lesson', () => {
    expect(faultsOf({ 'en/My Lesson.mdx': '', 'en/notes.txt': '' }, ['en'])).toMatchInlineSnapshot(`
      "content/lessons/en/My Lesson.mdx:1  a lesson is a file whose name is made of small letters a to z, numbers and "-", with the ending ".mdx"; rename it or take it out.
      content/lessons/en/notes.txt:1  a lesson is a file whose name is made of small letters a to z, numbers and "-", with the ending ".mdx"; rename it or take it out."
    `);
  });
});

describe('the reading level', () => {
  const words = (text: string) => `words:\n  - { word: udder, means: ${text} }\n`;

  it('is held for what the class hears, not for notes, titles and aims', () => {
    const long = 'This is a sentence that a child of six years old can never read alone.';
    const quiet = 'name="a" title="This is a title that a child of six years can never read alone" kind="do" minutes="5" least="3" most="8" topics="milk"'; // prettier-ignore
    expect(faultsOf({ 'en/l.mdx': head() + step(`Hay.\n\n<Note>${long}</Note>`, quiet) }, ['en'])).toBe('');
    const all = head(words(long)) + step(`Go.\nNow look.\n${long}\n\n- Hay.\n- ${long}\n\n1. **This** is *a sentence that a child* of six years old can never read.`); // prettier-ignore
    expect(faultsOf({ 'en/l.mdx': all }, ['en'])).toMatchInlineSnapshot(`
      "content/lessons/en/l.mdx:8  this sentence has 15 words and k-2 reads at most 10: "This is a sentence that a child of six years old can never read alone." Part it in two.
      content/lessons/en/l.mdx:15  this sentence has 15 words and k-2 reads at most 10: "This is a sentence that a child of six years old can never read alone." Part it in two.
      content/lessons/en/l.mdx:18  this sentence has 15 words and k-2 reads at most 10: "This is a sentence that a child of six years old can never read alone." Part it in two.
      content/lessons/en/l.mdx:20  this sentence has 14 words and k-2 reads at most 10: "This is a sentence that a child of six years old can never read." Part it in two."
    `);
  });

  it('counts a figure both as a number and as what stands where there is none', () => {
    const figure = (otherwise: string) => `Our does gave <Figure id="herd.week.total" otherwise="${otherwise}" /> of milk.`; // prettier-ignore
    expect(faultsOf({ 'en/l.mdx': head() + step(figure('a lot')) }, ['en'])).toBe('');
    expect(faultsOf({ 'en/l.mdx': head() + step(figure('more than anybody of us could ever drink up')) }, ['en'])).toMatchInlineSnapshot(`"content/lessons/en/l.mdx:11  this sentence has 14 words and k-2 reads at most 10: "Our does gave more than anybody of us could ever drink up of milk." Part it in two."`); // prettier-ignore
    const twice = `${figure('a lot')} All of our does gave <Figure id="herd.week.total" otherwise="lots" /> of good milk.`; // prettier-ignore
    expect(faultsOf({ 'en/l.mdx': head() + step(twice) }, ['en'])).toMatchInlineSnapshot(
      `"content/lessons/en/l.mdx:11  this sentence has 12 words and k-2 reads at most 10: "All of our does gave 245 cups of good milk." Part it in two."`,
    );
  });

  it('names new words, and takes those that the lesson explains', () => {
    const text = 'Her udder is soft. Her teats are small.';
    expect(faultsOf({ 'en/l.mdx': head() + step(text) }, ['en'])).toMatchInlineSnapshot(
      `"content/lessons/en/l.mdx:11  the step "a" has 2 words that k-2 may not know (udder, teats) and at most 1 may stand there; one too many stands in "Her teats are small." Explain them in "words:", or say it with words that children know."`,
    );
    expect(faultsOf({ 'en/l.mdx': head(words('the bag with milk')) + step(text) }, ['en'])).toBe('');
  });

  it('is held in Spanish by the length of sentences and the INFLESZ scale', () => {
    const hard = step(`${'La responsabilidad administrativa. '.repeat(40)}`);
    expect(faultsOf({ 'es/l.mdx': head() + hard }, ['es'])).toMatchInlineSnapshot(
      `"content/lessons/es/l.mdx:11  the text has the ease -66.1 (INFLESZ), and k-2 needs 86 or more; the hardest sentence is "La responsabilidad administrativa." Part it in two, or use shorter words."`,
    );
    const easy = step('La cabra da leche. '.repeat(40));
    expect(faultsOf({ 'es/l.mdx': head() + easy }, ['es'])).toBe('');
  });

  it('asks nothing of a language that it cannot measure', () => {
    expect(faultsOf({ 'fr/l.mdx': head() + step(`${'Le lait '.repeat(30)}.`) }, ['fr'])).toBe('');
  });
});

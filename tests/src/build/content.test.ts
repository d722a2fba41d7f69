// Teaching content with a fault stops the build before any page is made; what is only worth a word is told after it.
import { describe, expect, it } from 'vitest';
import { build } from '../../../src/build/build.ts';
import { contentsOf, ownFolder, smallWorld, SMALL_FARM, writeFiles } from './smallFarm.ts';

const SHEET =
  '---\ntitle: Cups\nband: k-2\nwhen: before\nminutes: 20\nabout: Count cups.\n---\n- count-cups\n';
const step = (text: string, more = '') =>
  `<Step name="hello" title="Hello" kind="open" minutes="5" least="3" most="8" topics="milk"${more}>\n\n${text}\n\n</Step>\n`;
const lesson = (steps: string) =>
  `---\ntitle: Milk\nband: k-2\nplace: class\naims: [Say what milk is for.]\nstandards: [1-LS1-2]\n---\n\n${steps}`;

describe('a build with teaching content', () => {
  it('tells every fault of sheets and lessons at once and leaves the site that stands', async () => {
    const root = ownFolder();
    const { world, heard } = smallWorld(root);
    writeFiles(root, {
      'content/words/en/site.yaml': 'a: b',
      'content/sheets/en/cups.md': SHEET,
      'content/lessons/en/milk.mdx': lesson(step('Goats give milk.')),
    });
    expect(await build(world)).toMatchObject({ ok: true });
    const before = contentsOf(world.places.dist);
    const long = 'The doe gives the kid her milk so that the little kid can grow up strong.';
    writeFiles(root, {
      'content/sheets/en/cups.md': SHEET.replace('count-cups', 'cuont-cups'),
      'content/lessons/en/milk.mdx': lesson(step(`${long} <Figure id="herd.weak.total" otherwise="x" />`)),
      'content/lessons/en/more.mdx': lesson(step(long)),
      'content/lessons/en/sheet.mdx': lesson(
        step('Count.', ' sheet="cups"').replace('"open"', '"sheet"') + step('Count.', ' sheet="pups"'),
      ),
    });
    expect(await build(world)).toMatchObject({ ok: false, why: 'content' });
    expect(contentsOf(world.places.dist)).toEqual(before);
    expect(heard.pagesMade).toBe(1);
    expect(heard.complaints.join('').replace(root, 'ROOT')).toMatchInlineSnapshot(`
      "The sheets and lessons were not taken: 6 things need a hand. Nothing was changed.
      The project's folder is ROOT. Each line says file:line:column.

      content/lessons/en/milk.mdx:11:83  there is no figure "herd.weak.total"; did you mean "herd.week.total"?

      content/lessons/en/more.mdx:11  this sentence has 16 words and k-2 reads at most 10: "The doe gives the kid her milk so that the little kid can grow up strong." Part it in two.

      content/lessons/en/sheet.mdx:14:91  only a step of kind="sheet" hands out a sheet.
      content/lessons/en/sheet.mdx:14:91  there is no sheet "pups" for k-2; did you mean "cups"?
      content/lessons/en/sheet.mdx:14  there is a step "hello" already; give this one another name.

      content/sheets/en/cups.md:8  there is no task "cuont-cups"; did you mean "count-cups"?

      The site that stands (dist/) is left as it is."
    `);
  });

  it('says which lesson and which sheet a language lacks', async () => {
    const root = ownFolder();
    const { world, heard } = smallWorld(root);
    writeFiles(root, {
      'farm/farm.yaml': (SMALL_FARM['farm.yaml'] ?? '').replace('[en]', '[en, es]'),
      'content/words/en/site.yaml': 'a: b',
      'content/words/es/site.yaml': 'a: b',
      'content/sheets/en/cups.md': SHEET,
      'content/lessons/en/milk.mdx': lesson(step('Goats give milk.')),
    });
    expect(await build(world)).toMatchObject({ ok: true });
    expect(heard.said.slice(-3)).toMatchInlineSnapshot(`
      [
        "  Note: content/sheets/en/cups.md  This sheet is not written in "es" yet, so the pages in it leave it out.",
        "  Note: content/lessons/en/milk.mdx  This lesson is not written in "es" yet, so the pages in it leave it out.",
        "Done: 2 pages, 2 notes above.",
      ]
    `);
  });

  it('reads no language that the farm does not ask for', async () => {
    const root = ownFolder();
    const { world } = smallWorld(root);
    writeFiles(root, {
      'content/words/en/site.yaml': 'a: b',
      'content/words/es/site.yaml': 'a: b',
      'content/lessons/es/milk.mdx': 'no head at all',
    });
    expect(await build(world)).toMatchObject({ ok: true });
  });
});

// Lessons as a coordinator writes them: what is read, and that every fault is told with its place, all at once.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tellContentFaults } from '../../../src/content/contentFault.ts';
import { readLessonFile } from '../../../src/content/lessonFile.ts';
import type { LessonKnown } from '../../../src/content/lessonParts.ts';

const KNOWN: LessonKnown = {
  figures: ['herd.week.total', 'herd.day.total', 'doe.juno.week.total'],
  sheets: [
    { name: 'cups-we-can-count', band: 'k-2' },
    { name: 'milk-in-parts', band: '3-5' },
    { name: 'has-a-fault', band: null },
  ],
};
const HEAD = 'title: Milk\nband: k-2\nplace: class\naims:\n  - Say why.\nstandards: [1-LS1-2]';
const TIMES = 'minutes="5" least="3" most="8"';
const step = (text: string, attributes = `name="hello" title="Hello" kind="open" ${TIMES} topics="milk"`) =>
  `<Step ${attributes}>\n\n${text}\n\n</Step>\n`;
const written = (body: string, head = HEAD) => `---\n${head}\n---\n\n${body}`;
const read = (body: string, head = HEAD) => readLessonFile('l.mdx', 'l', written(body, head), KNOWN);
const faultsOf = (body: string, head = HEAD): string => {
  const reading = read(body, head);
  return reading.ok ? 'no fault' : tellContentFaults(reading.faults);
};
const lessonOf = (body: string, head = HEAD) => {
  const reading = read(body, head);
  if (!reading.ok) throw new Error(tellContentFaults(reading.faults));
  return reading.lesson;
};

describe('readLessonFile', () => {
  it('reads the head, and steps with their minutes, topics and sheet', () => {
    const body =
      step('Look.', `name="a" title="One" kind="look" ${TIMES} topics="year kids" must`) +
      step('Count.', `name="b-2" title="Two" kind="sheet" minutes="10" least="10" most="10" topics="numbers, milk" sheet="cups-we-can-count"`); // prettier-ignore
    const { steps, ...head } = lessonOf(body, `${HEAD}\nmaterials:\n  - { what: cup, count: 2, per: group, groupOf: 4 }\n  - { what: pail, count: 1, per: class }`); // prettier-ignore
    expect({ ...head, lineOf: head.lineOf(['materials']) }).toEqual({
      lineOf: 9,
      file: 'l.mdx',
      name: 'l',
      title: 'Milk',
      band: 'k-2',
      place: 'class',
      minutes: 15,
      aims: ['Say why.'],
      standards: ['1-LS1-2'],
      topics: ['milk', 'kids', 'year', 'numbers'],
      words: [],
      materials: [
        { what: 'cup', count: 2, per: 'group', groupOf: 4 },
        { what: 'pail', count: 1, per: 'class', groupOf: null },
      ],
      cautions: [],
    });
    expect(steps).toMatchObject([
      { name: 'a', line: 13, title: 'One', kind: 'look', minutes: 5, least: 3, most: 8, topics: ['year', 'kids'], must: true, sheet: null },
      { name: 'b-2', line: 18, title: 'Two', kind: 'sheet', minutes: 10, least: 10, most: 10, topics: ['numbers', 'milk'], must: false, sheet: 'cups-we-can-count' },
    ]); // prettier-ignore
  });

  it('reads paragraphs, lists, marks, figures, the farm and notes, each piece with its line', () => {
    const text =
      'This is *a\ngoat* of <Farm />.\n\n1. She gave **<Figure id="herd.week.total" otherwise="much milk" />**.\n2. Good.\n\n- hay\n\n<Note>For **you**.</Note>\n\n<Note>\nOne.\n\nTwo.\n\n</Note>';
    const [only] = lessonOf(step(text)).steps;
    expect(only?.source).toBe(text);
    expect(only?.blocks).toEqual([
      {
        is: 'paragraph',
        pieces: [
          { is: 'text', text: 'This is ', line: 12 },
          { is: 'text', text: 'a ', line: 12, emphasis: true },
          { is: 'text', text: 'goat', line: 13, emphasis: true },
          { is: 'text', text: ' of ', line: 13 },
          { is: 'farm', line: 13 },
          { is: 'text', text: '.', line: 13 },
        ],
      },
      {
        is: 'list',
        ordered: true,
        lines: [
          [
            { is: 'text', text: 'She gave ', line: 15 },
            { is: 'figure', id: 'herd.week.total', otherwise: 'much milk', line: 15, strong: true },
            { is: 'text', text: '.', line: 15 },
          ],
          [{ is: 'text', text: 'Good.', line: 16 }],
        ],
      },
      { is: 'list', ordered: false, lines: [[{ is: 'text', text: 'hay', line: 18 }]] },
      {
        is: 'note',
        pieces: [
          { is: 'text', text: 'For ', line: 20 },
          { is: 'text', text: 'you', line: 20, strong: true },
          { is: 'text', text: '.', line: 20 },
        ],
      },
      { is: 'note', pieces: [{ is: 'text', text: 'One.', line: 23 }] },
      { is: 'note', pieces: [{ is: 'text', text: 'Two.', line: 25 }] },
    ]);
  });

  it('gives the same blocks for a step that is put together from its source again', () => {
    const texts = fc.array(fc.constantFrom('Hay.', '- one\n- two', '1. **Go**\n2. *Stop*', '<Note>For you.</Note>', '<Note>\n\nFor\nyou.\n\n</Note>', 'A\nB <Farm /> C.', '<Figure id="herd.day.total" otherwise="x" />', 'a \\< b \\{c}'), { minLength: 1, maxLength: 6 }); // prettier-ignore
    // Two lists next to each other are one to Markdown.
    const apart = (all: string[]) => all.filter((one, index) => !/^(-|1)/.test(one) || !/^(-|1)/.test(all[index - 1] ?? '')); // prettier-ignore
    fc.assert(
      fc.property(texts, (all) => {
        const [first] = lessonOf(step(apart(all).join('\n\n'))).steps;
        const [again] = lessonOf(step(first?.source ?? '')).steps;
        expect(again).toEqual(first);
      }),
    );
  });

  it('names everything that is wrong in the steps, at once and in its place', () => {
    const body = `Hi there.\n\n# Milk\n\n${step('Text `x` {y}\n\n<Figur id="x" />\n\nSee <Figure id="herd.weak.total" /> <Figure id="doe.juno.week.total" otherwise="x" /> [a](b)\n\n> quote\n\n- a\n  - b\n\n<Note tone="x">\n- k\n</Note>', 'nam="Hello" title="" kind="opn" minutes="5.5" least="3" most={8} topics="kid mlik" sheet="milk-in-parts" color="x" must="yes"')}\nimport a from "b"\n`;
    expect(faultsOf(body)).toMatchInlineSnapshot(`
      "l.mdx:10:1  this text stands outside a step; put it into a <Step>, between its first and its last line.
      l.mdx:12:1  lessons have no place for a heading; the title of a step stands in its "title". A text is paragraphs, lists, **strong** and *emphasis*.
      l.mdx:14:7  <Step> has no attribute "nam"; did you mean "name"?
      l.mdx:14:19  "title" is empty; write title="…" with a text in it.
      l.mdx:14:63  write most="text" with quotation marks; expressions in braces are not for lessons.
      l.mdx:14:112  <Step> has no attribute "color"; it has name, title, kind, minutes, least, most, topics, sheet, must.
      l.mdx:14:122  "must" stands alone, without a value.
      l.mdx:14:1  <Step> needs name="…".
      l.mdx:14:28  there is no kind of step "opn"; did you mean "open"?
      l.mdx:14:72  there is no topic "kid"; did you mean "kids"?
      l.mdx:14:72  there is no topic "mlik"; did you mean "milk"?
      l.mdx:14:90  the sheet "milk-in-parts" is for 3-5, and the lesson for k-2; there are cups-we-can-count, has-a-fault.
      l.mdx:14:39  minutes="5.5": a whole number of minutes from 1 to 120 stands here.
      l.mdx:16:6  lessons have no place for code marks (\`). A text is paragraphs, lists, **strong** and *emphasis*.
      l.mdx:16:10  lessons have no place for an expression in braces; write "\\{" for a brace that is text. A text is paragraphs, lists, **strong** and *emphasis*.
      l.mdx:18:1  there is no component <Figur>; did you mean <Figure>?
      l.mdx:20:5  <Figure> needs otherwise="…".
      l.mdx:20:13  there is no figure "herd.weak.total"; did you mean "herd.week.total"?
      l.mdx:20:45  "doe.juno.week.total" belongs to one doe, and a lesson is shared by all farms; there are herd.week.total, herd.day.total.
      l.mdx:20:87  lessons have no place for a link. A text is paragraphs, lists, **strong** and *emphasis*.
      l.mdx:22:1  lessons have no place for a quotation block (">"). A text is paragraphs, lists, **strong** and *emphasis*.
      l.mdx:25:3  a line of a list is one paragraph; lists in lists and more paragraphs are not for lessons.
      l.mdx:27:7  <Note> has no attribute "tone"; it has none.
      l.mdx:28:1  a note is made of paragraphs; write this as sentences, or move it out of the <Note>.
      l.mdx:33:1  lessons have no place for an import or export. A text is paragraphs, lists, **strong** and *emphasis*."
    `);
  });

  it('names minutes that are no whole number or out of order', () => {
    const timed = (times: string) => faultsOf(step('Hay.', `name="a" title="A" kind="do" ${times} topics="milk"`)); // prettier-ignore
    expect([
      timed('minutes="five" least="0" most="999"'),
      timed('minutes="9" least="10" most="8"'),
      timed('minutes="5" least="9" most="4"'),
    ]).toMatchInlineSnapshot(`
      [
        "l.mdx:10:36  minutes="five": a whole number of minutes from 1 to 120 stands here.
      l.mdx:10:51  least="0": a whole number of minutes from 1 to 120 stands here.
      l.mdx:10:61  most="999": a whole number of minutes from 1 to 120 stands here.",
        "l.mdx:10:36  the times are not in order: least (10) is at most minutes (9), and minutes at most most (8).",
        "l.mdx:10:36  the times are not in order: least (9) is at most minutes (5), and minutes at most most (4).",
      ]
    `);
  });

  it('names sheets that are none, of another band, missing, or where none belongs', () => {
    const one = (more: string, kind = 'sheet') => faultsOf(step('Hay.', `name="a" title="A" kind="${kind}" ${TIMES} topics="milk" ${more}`)); // prettier-ignore
    expect([one('sheet="cups-we-can-cuont"'), one('sheet="milk-in-parts"'), one(''), one('sheet="cups-we-can-count"', 'do'), one('sheet="has-a-fault"')]).toMatchInlineSnapshot(`
      [
        "l.mdx:10:84  there is no sheet "cups-we-can-cuont" for k-2; did you mean "cups-we-can-count"?",
        "l.mdx:10:84  the sheet "milk-in-parts" is for 3-5, and the lesson for k-2; there are cups-we-can-count, has-a-fault.",
        "l.mdx:10:26  a step of kind "sheet" hands one out: add sheet="NAME".",
        "l.mdx:10:81  only a step of kind="sheet" hands out a sheet.",
        "no fault",
      ]
    `); // prettier-ignore
  });

  it('names the place at which the text cannot be read', () => {
    // A step that is not closed, one closed by another name, a brace that is not closed, an attribute without its mark.
    const broken = ['<Step name="a">\n\nHay.', '<Step name="a">\n\nHay.\n\n</Stop>\n', step('Hay { and milk.'), '<Step name="a title="b">\n\nHay.\n\n</Step>']; // prettier-ignore
    expect(broken.map((body) => faultsOf(body).replace(/ Each <Step> and <Note> is closed.*$/, ' …'))).toMatchInlineSnapshot(`
      [
        "l.mdx:10:1  the text cannot be read here: Expected a closing tag for \`<Step>\` (10:1-10:16). …",
        "l.mdx:14:1  the text cannot be read here: Unexpected closing tag \`</Stop>\`, expected corresponding closing tag for \`<Step>\` (10:1-10:16). …",
        "l.mdx:12:16  the text cannot be read here: Unexpected end of file in expression, expected a corresponding closing brace for \`{\`. …",
        "l.mdx:10:23  the text cannot be read here: Unexpected character \`"\` (U+0022) in attribute name, expected an attribute name character such as letters, digits, \`$\`, or \`_\`; \`=\` to initialize a value; whitespace before attributes; or the end of the tag. …",
      ]
    `); // prettier-ignore
  });

  it('names what stands where it does not belong', () => {
    const bodies = {
      'a note in the middle of a text': step('Hay. <Note>For you.</Note> Milk.'),
      'a step in a step': step(step('Hay.')),
      'two steps of one name': step('Hay.') + step('Milk.'),
      'no step at all': '',
      'an empty step': step(''),
      'an empty note': step('Hay.\n\n<Note>\n</Note>'),
      'a farm with a text': step('<Farm>Hay</Farm> is here.'),
    };
    expect(Object.entries(bodies).map(([what, body]) => `${what}: ${faultsOf(body)}`)).toMatchInlineSnapshot(`
      [
        "a note in the middle of a text: l.mdx:12:6  a <Note> stands apart: put an empty line before and after it.",
        "a step in a step: l.mdx:10:1  this step has no text; write what is said, or take it out.
      l.mdx:12:1  <Step> does not belong into a step; move it.",
        "two steps of one name: l.mdx:15  there is a step "hello" already; give this one another name.",
        "no step at all: l.mdx:9  the lesson has no step; below its head stand <Step …> and </Step> with the text of the step between.",
        "an empty step: l.mdx:10:1  this step has no text; write what is said, or take it out.",
        "an empty note: l.mdx:14:1  this <Note> is empty; write it or take it out.",
        "a farm with a text: l.mdx:12:1  <Farm> holds no text; write it as <Farm … />.",
      ]
    `); // prettier-ignore
  });

  it('names everything that is wrong in the head, and what is wrong below it at the same time', () => {
    const head = 'title: Milk\nbnad: k-2\nplace: barnyard\naims: many\nwords:\n  - { word: doe, mean: a goat }\nmaterials:\n  - { what: cup, count: 1.5, per: group }\n'; // prettier-ignore
    expect(faultsOf('Hi.', head)).toMatchInlineSnapshot(`
      "l.mdx:1  "band" is missing: one of k-2, 3-5, 6-8, 9-12 stands here.
      l.mdx:1  "standards" is missing: a list stands here, each line with a dash before it.
      l.mdx:3  "bnad" is no field of this head; did you mean "band"?
      l.mdx:4  "place": one of class, barn, after stands here.
      l.mdx:5  "aims": a list stands here, each line with a dash before it.
      l.mdx:7  "words.0.means" is missing: write something here.
      l.mdx:7  "words.0.mean" is no field of this head; take it out or look for a slip of the pen.
      l.mdx:9  "materials.0.count": a whole number from 1 to 500 stands here.
      l.mdx:12  the lesson has no step; below its head stand <Step …> and </Step> with the text of the step between.
      l.mdx:13:1  this text stands outside a step; put it into a <Step>, between its first and its last line."
    `);
    const names = 'title: Milk\nband: k-2\nplace: barn\naims: [Say.]\nstandards: [1-LS1-22, 6.RP.A.1, 1-LS1-2, 1-LS1-2]\ncautions: [wahs, wash, lye, lye]\nwords:\n  - { word: doe, means: a goat }\n  - { word: Doe, means: a goat }\nmaterials:\n  - { what: cup, count: 1, per: child, groupOf: 3 }'; // prettier-ignore
    expect(faultsOf(step('Hay.'), names)).toMatchInlineSnapshot(
      `"l.mdx:12  "materials.0": a thing "per: group" says with "groupOf" how many children share it, and nothing else has it."`,
    );
    expect(faultsOf(step('Hay.'), names.replace(/\nmaterials.*\n.*/, ''))).toMatchInlineSnapshot(`
      "l.mdx:6  there is no standard "1-LS1-22" in our list; did you mean "1-LS1-2"?
      l.mdx:6  the standard "6.RP.A.1" is for older children than k-2; take it out or choose one of the band.
      l.mdx:6  "1-LS1-2" stands in "standards" twice; take one out.
      l.mdx:7  there is no caution "wahs"; did you mean "wash"?
      l.mdx:7  "lye" stands in "cautions" twice; take one out.
      l.mdx:10  "doe" stands in "words" twice; take one out.
      l.mdx:12  a lesson in the barn ends with washed hands: give one step the topic "hands" and the word must."
    `);
  });

  it('lets no lesson out of the barn with unwashed hands', () => {
    const barn = HEAD.replace('place: class', 'place: barn');
    expect(faultsOf(step('Hay.'), barn)).toMatchInlineSnapshot(`
      "l.mdx:1  a lesson in the barn has the caution "wash"; add it to the list "cautions".
      l.mdx:9  a lesson in the barn ends with washed hands: give one step the topic "hands" and the word must."
    `);
    const wash = step('Wash.', `name="w" title="W" kind="close" ${TIMES} topics="hands" must`);
    expect(faultsOf(step('Hay.') + wash, `${barn}\ncautions: [wash]`)).toBe('no fault');
  });

  it('reads Windows line ends and a byte order mark', () => {
    const text = `\uFEFF${written(step('Hay.')).replaceAll('\n', '\r\n')}`;
    expect(readLessonFile('l.mdx', 'l', text, KNOWN)).toMatchObject({ ok: true });
  });

  it('never throws, whatever stands in the file', () => {
    const bits = fc.constantFrom('---\n', HEAD, '\n\n', '<Step name="a">', '</Step>', '<Note>', '</Note>', '{', '}', '<', 'import x', '- a', '# b', '<Figure id="', '"', ' />', 'text', '**', '&', '`', '<!-- -->'); // prettier-ignore
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 25 }), (all) => {
        const reading = readLessonFile('l.mdx', 'l', all.join(''), KNOWN);
        if (!reading.ok) {
          expect(reading.faults.length).toBeGreaterThan(0);
          for (const { line, text } of reading.faults) {
            expect(line).toBeGreaterThanOrEqual(1);
            expect(text).not.toMatch(/undefined|NaN|\[object/);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});

// The number limits of each band, held over random weeks: what a child of that age may be asked.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UNIT_ML } from '../../../shared/quantity/units.ts';
import type { Shown } from '../../../shared/quantity/grade.ts';
import type { Message, Slot } from '../../../shared/sheet/message.ts';
import { makeSheet } from '../../../shared/sheet/sheet.ts';
import { STANDARDS } from '../../../shared/tasks/standards.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { requestArb } from './randomWeek.ts';
import { num } from './slots.ts';

/** Every number that a message prints, slot in slot. */
function numbersIn(message: Message): Shown[] {
  const ofSlot = (slot: Slot): Shown[] => {
    if (slot.is === 'number' || slot.is === 'quantity') return [slot];
    if (slot.is === 'message') return numbersIn(slot.message);
    if (slot.is === 'list') return slot.of.flatMap(ofSlot);
    return slot.is === 'math' ? slot.line.filter((one): one is Shown => typeof one !== 'string') : [];
  };
  return Object.values(message.slots).flatMap(ofSlot);
}

/** Every number that a child reads: told, drawn, or asked for. */
function numbersOf(task: Task): Shown[] {
  const told = [...task.lead, ...task.asks.map(({ prompt }) => prompt)].flatMap(numbersIn);
  const asked = task.asks.flatMap(({ values }) =>
    values.filter((value): value is Shown => typeof value !== 'string'),
  );
  const drawn = JSON.stringify(task.picture ?? {}).matchAll(/"num":(-?\d+),"den":(\d+)(?:,"places":(\d+))?/g);
  const shown = [...drawn].map(([, n, d, places]) => ({
    num: Number(n),
    den: Number(d),
    ...(places ? { places: Number(places) } : {}),
  }));
  return [...told, ...asked, ...shown];
}

// Sums of grade 2 stay within a hundred, and minutes below sixty.
const WITHIN_A_HUNDRED = ['add-days', 'pen-story', 'clock-faces'];
// Grades 4 and 5 meet thirds and sixths, twelfths in a sum of them, and decimals to hundredths.
const MORE_PARTS: Readonly<Record<string, readonly number[]>> = {
  'grain-cups': [1, 2, 3, 4],
  'recipe-parts': [1, 2, 3, 4, 6, 8, 9, 12, 16],
};

const overSheets = (runs: number, check: (task: Task, band: string) => void) =>
  fc.assert(
    fc.property(requestArb, (request) => {
      for (const task of makeSheet(request).tasks) check(task, request.band);
    }),
    { numRuns: runs },
  );

describe('limits by band', () => {
  it('K-2 counts whole numbers to twenty, sums to a hundred, and graphs of four rows at most', () => {
    overSheets(700, (task, band) => {
      if (band !== 'k-2') return;
      for (const shown of numbersOf(task)) {
        expect(shown.den, task.kind).toBe(1);
        expect(shown.num, task.kind).toBeLessThanOrEqual(WITHIN_A_HUNDRED.includes(task.kind) ? 100 : 20);
        expect(shown.num, task.kind).toBeGreaterThanOrEqual(0);
      }
      if (task.standards.includes('K.CC.C.6') || task.standards.includes('K.CC.C.7'))
        for (const shown of numbersOf(task)) expect(shown.num).toBeLessThanOrEqual(10);
      if (task.picture?.is === 'picture-graph')
        expect(task.picture.rows.length).toBeLessThanOrEqual(task.standards.includes('1.MD.C.4') ? 3 : 4);
    });
  });

  it('3-5 reads wholes, halves and quarters, and graphs scaled by two, five or ten', () => {
    overSheets(700, (task, band) => {
      if (band !== '3-5') return;
      for (const shown of numbersOf(task)) {
        if (shown.places === undefined)
          expect(MORE_PARTS[task.kind] ?? [1, 2, 4], task.kind).toContain(shown.den);
        else expect(shown.places, task.kind).toBeLessThanOrEqual(2);
      }
      if (task.picture?.is === 'bars') expect([2, 5, 10]).toContain(task.picture.scale);
      if (task.standards.includes('3.OA.A.3'))
        for (const shown of numbersOf(task)) expect(shown.num).toBeLessThanOrEqual(200);
    });
  });

  it('6-8 writes decimals of three places at most, 9-12 of four', () => {
    overSheets(700, (task, band) => {
      if (band === 'k-2' || band === '3-5') return;
      for (const shown of numbersOf(task))
        expect(shown.places ?? 0, task.kind).toBeLessThanOrEqual(band === '6-8' ? 3 : 4);
    });
  });
});

describe('tasks', () => {
  it('name standards that are known, with codes of their framework’s form', () => {
    const forms = {
      NGSS: /^(K|[1-5]|MS|HS|K-2|3-5)-(LS|PS|ESS|ETS)[1-4]-\d{1,2}$/,
      'CCSS Math': /^([K1-8]\.(CC|OA|NBT|NF|MD|G|RP|NS|EE|F|SP)\.[A-D]\.\d{1,2}(\.[a-d])?|HS(N|A|F|G|S)-[A-Z]{1,4}\.[A-D]\.\d{1,2}(\.?[a-e])?)$/,
      'CCSS ELA': /^(RI|RL|W|SL|RST|WHST)\.[\dK-]+\.\d{1,2}$/,
    };
    for (const [code, framework] of Object.entries(STANDARDS)) expect(code).toMatch(forms[framework]);
    overSheets(300, (task) => {
      expect(task.standards.length).toBeGreaterThan(0);
      for (const code of task.standards) expect(STANDARDS[code], code).toBeDefined();
    });
  });

  it('print beside the book’s amount the number that rounding it gives', () => {
    overSheets(700, (task) => {
      for (const { book, here } of task.fromBook) {
        const unit_mL = UNIT_ML[book.unit as keyof typeof UNIT_ML].valueOf();
        const written_mL = num(book) * unit_mL;
        // Half a step of the unit that the sheet reads, and half a mL where the book's units were mixed.
        const read = here.unit === 'cup' ? [236.5882365, 250] : [UNIT_ML[here.unit as 'L' | 'qt'].valueOf()];
        const step = task.kind === 'scaled-bars' ? 2.5 : task.kind === 'fill-jars' ? 1 : 0.5;
        const off = Math.min(...read.map((one) => Math.abs(num(here) * one - written_mL) / one));
        expect(off, `${task.kind} ${JSON.stringify({ book, here })}`).toBeLessThanOrEqual(step + 0.003);
      }
    });
  });

  it('have a common mistake, and working or an open answer, for every question', () => {
    overSheets(500, (task) => {
      for (const ask of task.asks) {
        const open = ask.work.is === 'lines' || ask.work.is === 'drawing' || ask.work.is === 'picture';
        if (!open && !task.kind.startsWith('am-pm')) expect(ask.steps.length, `${task.kind} ${ask.prompt.key}`).toBeGreaterThan(0);
      }
    });
  });
}); // prettier-ignore

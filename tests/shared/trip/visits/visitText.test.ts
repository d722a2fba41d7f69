// A new visit's file: whatever somebody types, it is read back as the same visit.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { NEEDS, type TripWish } from '../../../../shared/trip/types.ts';
import { visitFileName, visitText } from '../../../../shared/trip/visits/visitText.ts';
import { VISIT_STATES } from '../../../../shared/trip/visitTypes.ts';
import type { Grade } from '../../../../shared/tasks/standards.ts';
import { readVisit } from '../../../../src/farm/visitFile.ts';

const STATIONS = ['milking-stand', 'goat-barn', 'kid-pen', 'hay-loft'];
const wishes: fc.Arbitrary<TripWish> = fc.record({
  date: fc.date({ min: new Date('2020-01-01'), max: new Date('2039-12-31'), noInvalidDate: true }).map((day) => day.toISOString().slice(0, 10)),
  grade: fc.integer({ min: 0, max: 12 }) as fc.Arbitrary<Grade>,
  children: fc.integer({ min: 1, max: 400 }),
  adults: fc.integer({ min: 0, max: 100 }),
  arrive: fc.integer({ min: 0, max: 700 }),
  leave: fc.integer({ min: 720, max: 1439 }),
  buses: fc.integer({ min: 0, max: 12 }),
  lunch: fc.constantFrom(null, 700, 719),
  stations: fc.subarray(STATIONS),
  needs: fc.subarray([...NEEDS]),
  rain: fc.boolean(),
  word: fc.constantFrom('', 'fern', 'no', '7', 'null'),
}); // prettier-ignore
const texts = fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.constantFrom("it's", 'a: b # c', '- x', '[', '{', '"', 'no', '0x1f', '1e3', '~', '&a', '*a', '! x', 'two\nlines')); // prettier-ignore
const oneLine = (text: string) =>
  text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]+/g, ' ').trim();

describe('visitText', () => {
  it('is read back as the visit that it was made from', () => {
    fc.assert(
      fc.property(wishes, texts, texts, fc.constantFrom(...VISIT_STATES), (wish, school, note, state) => {
        fc.pre(oneLine(school) !== '' && school.isWellFormed() && note.isWellFormed());
        const text = visitText({ school, state, wish, note });
        expect(readVisit('visits/x.yaml', text, STATIONS)).toEqual({
          ok: true,
          visit: { file: 'visits/x.yaml', school: oneLine(school), state, wish, note: oneLine(note) },
        });
        // A reader of the older YAML 1.1 takes a bare 9:30 for a number in base sixty.
        expect(typeof (parse(text, { version: '1.1' }) as { arrive: unknown }).arrive).toBe('string');
      }),
      { numRuns: 500 },
    );
  });
});

describe('visitFileName', () => {
  it('is a plain name that no folder can hide in', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.integer({ min: 1, max: 99 }), (school, number) => {
        expect(visitFileName('2026-05-27', school, number)).toMatch(/^2026-05-27(-[a-z0-9]+)+\.yaml$/);
      }),
    );
  });

  it.each([
    ['Escuela Ñandú', 1, '2026-05-27-escuela-nandu.yaml'],
    ['../../does.csv', 1, '2026-05-27-does-csv.yaml'],
    ['学校', 2, '2026-05-27-visit-2.yaml'],
  ])('of %s', (school, number, name) => expect(visitFileName('2026-05-27', school, number)).toBe(name));
});

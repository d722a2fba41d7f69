// How a sheet suits a grade.
import { describe, expect, it } from 'vitest';
import { gradeMark, isOfGrade } from '../../../shared/pack/gradeMark.ts';
import type { Sheet, SheetTask } from '../../../shared/sheet/sheet.ts';
import type { Grade } from '../../../shared/tasks/standards.ts';

const sheetOf = (grade: Grade, tasks: readonly [kind: string, place: number, ...standards: string[]][]) =>
  ({ grade, tasks: tasks.map(([kind, place, ...standards]) => ({ kind, place, standards }) as unknown as SheetTask) }) as unknown as Sheet; // prettier-ignore

describe('isOfGrade', () => {
  it.each([
    ['K.OA.A.2', 0, true],
    ['K.OA.A.2', 1, false],
    ['1-LS1-2', 1, true],
    ['1-LS1-2', 2, false],
    ['K-2-ETS1-1', 2, true],
    ['RST.9-10.7', 10, true],
    ['HSS-ID.B.6.a', 12, true],
    ['HSS-ID.B.6.a', 8, false],
    ['6.SP.B.4', 8, false],
  ] as const)('%s for grade %i: %s', (code, grade, expected) => {
    expect(isOfGrade(code, grade)).toBe(expected);
  });
});

describe('gradeMark', () => {
  it('sees a standard of the grade itself', () => {
    expect(gradeMark(sheetOf(2, [['a', 0, 'K.CC.B.5'], ['b', 1, '2.MD.D.10']]), ['a', 'b'])).toEqual({ own: true, swapped: 0 }); // prettier-ignore
    expect(gradeMark(sheetOf(1, [['a', 0, 'K.CC.B.5']]), ['a'])).toEqual({ own: false, swapped: 0 });
  });

  it('counts tasks that were swapped or left out', () => {
    const sheet = sheetOf(0, [['a', 0, 'K.CC.B.5'], ['x', 1, 'K.CC.C.6']]); // prettier-ignore
    expect(gradeMark(sheet, ['a', 'b', 'c'])).toEqual({ own: true, swapped: 2 });
  });
});

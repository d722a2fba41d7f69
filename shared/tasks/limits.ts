// The number limits that a child of a grade may meet on a sheet, and what single standards narrow further.
// Source: the Common Core State Standards for mathematics, as our hand-outs for teaching digest them (K to 3 read in full,
// 4 to 8 read in part, denominators of grade 3 from memory). A test holds every task of many thousand sheets to them.
import type { SheetUnit } from '../quantity/grade.ts';
import type { Grade } from './standards.ts';

/** From one unit of volume or weight to another: not at all, larger to smaller, within a system, or across systems too. */
export type Conversion = 'none' | 'larger-to-smaller' | 'one-system' | 'any';

/** What a child may meet. A field that is left out sets no limit. */
export interface NumberLimits {
  /** Largest number read or written, whole or not. */
  readonly most?: number;
  /** Whether a number may stand below zero. */
  readonly negative?: boolean;
  /** Denominators of fractions that are written as such. */
  readonly denominators?: readonly number[];
  /** Decimal places. */
  readonly places?: number;
  /** Rows of a picture graph, bars of a bar graph. */
  readonly categories?: number;
  /** Units that a step of a graph's scale may stand for. */
  readonly scales?: readonly number[];
  readonly conversion?: Conversion;
  /** Units that may not stand after a number yet. */
  readonly noUnits?: readonly SheetUnit[];
}

const WHOLE: readonly number[] = [1];
const NOT_YET_MEASURED: readonly SheetUnit[] = [
  'mL',
  'L',
  'g',
  'kg',
  'oz',
  'lb',
  'fl oz',
  'pt',
  'qt',
  'gal',
  'percent',
];
const FIRST_FRACTIONS: readonly number[] = [1, 2, 3, 4, 6, 8];
const FRACTIONS: readonly number[] = [1, 2, 3, 4, 5, 6, 8, 10, 12, 100];

const GRADE_0: NumberLimits = {
  most: 20,
  negative: false,
  denominators: WHOLE,
  places: 0,
  categories: 3,
  scales: [1],
  conversion: 'none',
  noUnits: NOT_YET_MEASURED,
};
const GRADE_1: NumberLimits = { ...GRADE_0, most: 120 };
const GRADE_2: NumberLimits = { ...GRADE_1, most: 1000, categories: 4 };
const GRADE_3: NumberLimits = {
  most: 1000,
  negative: false,
  denominators: FIRST_FRACTIONS,
  places: 0,
  scales: [1, 2, 5, 10],
  conversion: 'none',
  noUnits: ['percent'],
};
const GRADE_4: NumberLimits = {
  most: 1_000_000,
  negative: false,
  denominators: FRACTIONS,
  places: 2,
  conversion: 'larger-to-smaller',
  noUnits: ['percent'],
};
const GRADE_5: NumberLimits = {
  most: 1_000_000,
  negative: false,
  places: 3,
  conversion: 'one-system',
  noUnits: ['percent'],
};
const MIDDLE: NumberLimits = { places: 3, conversion: 'any' };
const HIGH: NumberLimits = { places: 4, conversion: 'any' }; // prettier-ignore

/** The limits of each grade; 0 is kindergarten. */
export const GRADE_LIMITS: Readonly<Record<Grade, NumberLimits>> = Object.freeze({
  0: GRADE_0,
  1: GRADE_1,
  2: GRADE_2,
  3: GRADE_3,
  4: GRADE_4,
  5: GRADE_5,
  6: MIDDLE,
  7: MIDDLE,
  8: MIDDLE,
  9: HIGH,
  10: HIGH,
  11: HIGH,
  12: HIGH,
});

/** What a standard narrows beside its grade's limits. */
export const STANDARD_LIMITS: Readonly<Record<string, NumberLimits>> = Object.freeze({
  'K.CC.B.5': { most: 20 },
  'K.CC.C.6': { most: 10 },
  'K.CC.C.7': { most: 10 },
  'K.OA.A.2': { most: 10 },
  '1.OA.A.1': { most: 20 },
  '1.OA.A.2': { most: 20 },
  '1.OA.C.6': { most: 20 },
  '1.NBT.B.3': { most: 99 },
  '1.MD.C.4': { categories: 3 },
  '2.OA.A.1': { most: 100 },
  '2.OA.B.2': { most: 20 },
  '2.OA.C.3': { most: 20 },
  '2.NBT.B.6': { most: 396 },
  '2.MD.D.10': { categories: 4, scales: [1] },
  '3.OA.A.3': { most: 100, denominators: WHOLE },
  '3.NF.A.2.b': { denominators: FIRST_FRACTIONS },
  '3.MD.A.2': { conversion: 'none', noUnits: ['cup', 'pt', 'qt', 'gal', 'fl oz', 'oz', 'lb', 'percent'] },
  '3.MD.B.3': { scales: [2, 5, 10] },
  '4.NF.B.3.c': { denominators: FRACTIONS },
  '4.MD.A.1': { conversion: 'larger-to-smaller' },
  '4.MD.A.2': { conversion: 'larger-to-smaller' },
  '4.MD.B.4': { denominators: [1, 2, 4, 8] },
  '5.MD.A.1': { conversion: 'one-system' },
  '5.MD.B.2': { denominators: [1, 2, 4, 8] },
  '5.NBT.B.7': { places: 2 },
});

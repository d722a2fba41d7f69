// The standards that tasks support: framework and code. What each says in our words stands in the words files.
import { BANDS, type Band } from '../quantity/grade.ts';

/** Frameworks whose codes we print. */
export type Framework = 'CCSS Math' | 'CCSS ELA' | 'NGSS';

/** Codes of the standards that tasks support. A paraphrase of each stands under `sheet.standard.CODE`. */
export const STANDARDS: Readonly<Record<string, Framework>> = Object.freeze({
  'K.CC.B.5': 'CCSS Math',
  'K.CC.C.6': 'CCSS Math',
  'K.CC.C.7': 'CCSS Math',
  'K.OA.A.2': 'CCSS Math',
  '1.OA.A.1': 'CCSS Math',
  '1.OA.A.2': 'CCSS Math',
  '1.NBT.B.3': 'CCSS Math',
  '1.MD.C.4': 'CCSS Math',
  '2.OA.A.1': 'CCSS Math',
  '2.OA.C.3': 'CCSS Math',
  '2.NBT.B.6': 'CCSS Math',
  '2.MD.D.10': 'CCSS Math',
  '1-LS1-2': 'NGSS',
  '3.OA.A.3': 'CCSS Math',
  '3.NBT.A.2': 'CCSS Math',
  '3.NF.A.2.b': 'CCSS Math',
  '3.MD.B.3': 'CCSS Math',
  '4.OA.A.3': 'CCSS Math',
  '4.NBT.B.5': 'CCSS Math',
  '4.NF.B.3.c': 'CCSS Math',
  '4.MD.A.1': 'CCSS Math',
  '4.MD.A.2': 'CCSS Math',
  '4.MD.B.4': 'CCSS Math',
  '5.NF.A.1': 'CCSS Math',
  '5.MD.B.2': 'CCSS Math',
  '5-PS3-1': 'NGSS',
  '6.RP.A.1': 'CCSS Math',
  '6.RP.A.2': 'CCSS Math',
  '6.RP.A.3.b': 'CCSS Math',
  '6.RP.A.3.c': 'CCSS Math',
  '6.RP.A.3.d': 'CCSS Math',
  '6.SP.B.4': 'CCSS Math',
  '6.SP.B.5.c': 'CCSS Math',
  'MS-LS1-5': 'NGSS',
  'HSS-ID.A.2': 'CCSS Math',
  'HSS-ID.B.6.a': 'CCSS Math',
  'HSS-ID.B.6.b': 'CCSS Math',
  'HSS-ID.C.7': 'CCSS Math',
  'HSF-LE.B.5': 'CCSS Math',
  'HSN-Q.A.3': 'CCSS Math',
  'RST.9-10.7': 'CCSS ELA',
  'HS-LS3-3': 'NGSS',
});

/** Grades as numbers: 0 is kindergarten. */
export type Grade = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12;

/** Grades of each band, the lowest first. */
export const GRADES_OF: Readonly<Record<Band, readonly Grade[]>> = Object.freeze({
  'k-2': [0, 1, 2],
  '3-5': [3, 4, 5],
  '6-8': [6, 7, 8],
  '9-12': [9, 10, 11, 12],
});

/** The band that a grade belongs to. */
export function bandOfGrade(grade: Grade): Band {
  return BANDS.find((band) => GRADES_OF[band].includes(grade)) as Band;
}

/** The oldest grade of a band: its sheets without a grade named are for all up to it. */
export function topGrade(band: Band): Grade {
  return GRADES_OF[band].at(-1) as Grade;
}

/**
 * The grade from which a standard may be asked of a child, read from its code: `4.MD.A.1` from 4, `K-2-ETS1-1`
 * from kindergarten (0), `MS-LS1-6` and `RST.6-8.7` from 6, `HSS-ID.A.2` from 9. Throws for a code without a grade.
 * @example firstGrade('RI.3.7') // => 3
 */
export function firstGrade(code: string): number {
  if (/^HS/.test(code)) return 9;
  if (/^MS/.test(code)) return 6;
  const grade = /^(?:[A-Z]{1,4}\.)?(K|\d{1,2})/.exec(code)?.[1];
  if (grade === undefined) throw new Error(`The standard "${code}" names no grade.`);
  return grade === 'K' ? 0 : Number(grade);
}

// The standards that tasks, sheets and lessons support: framework and code. What each asks, in our words, stands in the words files.
import type { Band } from '../quantity/grade.ts';
import { bandOfGrade, type Grade } from './grades.ts';

export { bandOfGrade, GRADES_OF, gradeOf, gradeSign, topGrade, type Grade } from './grades.ts';

/** Frameworks whose codes we print. */
export type Framework = 'CCSS Math' | 'CCSS ELA' | 'NGSS';
/** All frameworks, in the order in which pages list them. */
export const FRAMEWORKS: readonly Framework[] = Object.freeze(['CCSS Math', 'CCSS ELA', 'NGSS']);

// prettier-ignore
const CODES: Readonly<Record<Framework, readonly string[]>> = {
  'CCSS Math': [
    'K.CC.A.3', 'K.CC.B.5', 'K.CC.C.6', 'K.CC.C.7',
    'K.OA.A.2', 'K.OA.A.5',
    'K.MD.A.1', 'K.MD.A.2', 'K.MD.B.3',
    '1.OA.A.1', '1.OA.A.2', '1.OA.C.5', '1.OA.C.6',
    '1.NBT.A.1', '1.NBT.B.3', '1.NBT.C.4', '1.NBT.C.5', '1.NBT.C.6',
    '1.MD.A.2', '1.MD.B.3', '1.MD.C.4', '1.G.A.3',
    '2.OA.A.1', '2.OA.B.2', '2.OA.C.3', '2.OA.C.4',
    '2.NBT.A.1', '2.NBT.A.2', '2.NBT.A.3', '2.NBT.A.4', '2.NBT.B.5', '2.NBT.B.6', '2.NBT.B.7', '2.NBT.B.8',
    '2.MD.A.1', '2.MD.A.2', '2.MD.A.3', '2.MD.A.4', '2.MD.B.5', '2.MD.B.6', '2.MD.C.7', '2.MD.C.8', '2.MD.D.9',
    '2.MD.D.10',
    '2.G.A.3',
    '3.OA.A.1', '3.OA.A.2', '3.OA.A.3', '3.OA.A.4', '3.OA.C.7', '3.OA.D.8',
    '3.NBT.A.1', '3.NBT.A.2', '3.NBT.A.3',
    '3.NF.A.1', '3.NF.A.2', '3.NF.A.2.b', '3.NF.A.3', '3.NF.A.3.d',
    '3.MD.A.1', '3.MD.A.2', '3.MD.B.3', '3.MD.B.4',
    '4.OA.A.1', '4.OA.A.2', '4.OA.A.3',
    '4.NBT.A.3', '4.NBT.B.4', '4.NBT.B.5', '4.NBT.B.6',
    '4.NF.A.1', '4.NF.A.2', '4.NF.B.3', '4.NF.B.3.c', '4.NF.B.3.d', '4.NF.B.4', '4.NF.B.4.c', '4.NF.C.5',
    '4.NF.C.6', '4.NF.C.7',
    '4.MD.A.1', '4.MD.A.2', '4.MD.B.4',
    '5.NBT.A.3', '5.NBT.A.4', '5.NBT.B.5', '5.NBT.B.6', '5.NBT.B.7',
    '5.NF.A.1', '5.NF.A.2', '5.NF.B.3', '5.NF.B.4', '5.NF.B.5', '5.NF.B.6', '5.NF.B.7',
    '5.MD.A.1', '5.MD.B.2',
    '5.G.A.1', '5.G.A.2',
    '6.RP.A.1', '6.RP.A.2', '6.RP.A.3', '6.RP.A.3.a', '6.RP.A.3.b', '6.RP.A.3.c', '6.RP.A.3.d',
    '6.NS.B.2', '6.NS.B.3',
    '6.EE.C.9',
    '6.SP.A.1', '6.SP.A.2', '6.SP.A.3', '6.SP.B.4', '6.SP.B.5', '6.SP.B.5.a', '6.SP.B.5.b', '6.SP.B.5.c',
    '6.SP.B.5.d',
    '7.RP.A.1', '7.RP.A.2', '7.RP.A.3',
    '7.SP.A.1', '7.SP.A.2', '7.SP.B.3', '7.SP.B.4',
    '8.EE.B.5',
    '8.F.A.1', '8.F.A.2', '8.F.A.3', '8.F.B.4', '8.F.B.5',
    '8.SP.A.1', '8.SP.A.2', '8.SP.A.3', '8.SP.A.4',
    'HSN-Q.A.1', 'HSN-Q.A.2', 'HSN-Q.A.3',
    'HSA-CED.A.2',
    'HSF-BF.A.1',
    'HSF-IF.B.4', 'HSF-IF.B.6', 'HSF-IF.C.7',
    'HSF-LE.A.1', 'HSF-LE.A.2', 'HSF-LE.B.5',
    'HSS-ID.A.1', 'HSS-ID.A.2', 'HSS-ID.A.3', 'HSS-ID.A.4', 'HSS-ID.B.5', 'HSS-ID.B.6', 'HSS-ID.B.6.a',
    'HSS-ID.B.6.b', 'HSS-ID.B.6.c', 'HSS-ID.C.7', 'HSS-ID.C.8', 'HSS-ID.C.9',
    'HSS-IC.A.1', 'HSS-IC.B.3', 'HSS-IC.B.4', 'HSS-IC.B.6',
    'HSS-CP.A.1', 'HSS-CP.A.2', 'HSS-CP.A.3', 'HSS-CP.A.4', 'HSS-CP.A.5',
  ],
  'CCSS ELA': [
    'RI.K.1', 'RI.K.7', 'RI.1.1', 'RI.1.7', 'RI.2.1', 'RI.2.4', 'RI.2.7', 'RI.3.1', 'RI.3.3', 'RI.3.7', 'RI.4.1', 'RI.4.7', 'RI.5.7',
    'W.K.2', 'W.1.2', 'W.2.2', 'W.2.8', 'W.3.2', 'W.4.2', 'W.5.2', 'W.3.8',
    'SL.2.2',
    'RST.6-8.1', 'RST.6-8.3', 'RST.6-8.4', 'RST.6-8.7', 'RST.9-10.3', 'RST.9-10.7', 'RST.11-12.1',
    'RST.11-12.7',
    'WHST.6-8.1', 'WHST.6-8.2', 'WHST.9-12.2',
  ],
  'NGSS': [
    'K-LS1-1', 'K-ESS2-2', 'K-ESS3-1',
    '1-LS1-1', '1-LS1-2', '1-LS3-1',
    '2-LS2-1', '2-LS4-1', '2-PS1-1', '2-PS1-4',
    'K-2-ETS1-1', 'K-2-ETS1-2', 'K-2-ETS1-3',
    '3-LS1-1', '3-LS2-1', '3-LS3-1', '3-LS3-2',
    '4-LS1-1', '4-LS1-2',
    '5-LS1-1', '5-PS3-1', '5-LS2-1',
    '3-5-ETS1-1', '3-5-ETS1-2', '3-5-ETS1-3',
    'MS-LS1-3', 'MS-LS1-4', 'MS-LS1-5', 'MS-LS1-6', 'MS-LS1-7', 'MS-LS2-1', 'MS-LS2-3', 'MS-LS3-2', 'MS-LS4-5',
    'MS-ETS1-1', 'MS-ETS1-2', 'MS-ETS1-3', 'MS-ETS1-4',
    'HS-LS1-2', 'HS-LS1-3', 'HS-LS1-5', 'HS-LS1-6', 'HS-LS1-7', 'HS-LS2-1', 'HS-LS2-2', 'HS-LS2-4', 'HS-LS2-5',
    'HS-LS3-2', 'HS-LS3-3', 'HS-ETS1-1', 'HS-ETS1-2', 'HS-ETS1-3', 'HS-ETS1-4',
  ],
};

/** The framework of each standard that a task, a sheet or a lesson may support. A paraphrase of each stands under `sheet.standard.CODE`. */
export const STANDARDS: Readonly<Record<string, Framework>> = Object.freeze(
  Object.fromEntries(FRAMEWORKS.flatMap((framework) => CODES[framework].map((code) => [code, framework]))),
);

/** The band in which a standard is first asked for. Throws for a code without a grade. */
export function bandOfStandard(code: string): Band {
  return bandOfGrade(firstGrade(code) as Grade);
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

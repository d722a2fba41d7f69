// School grades, the bands they belong to, and how they are written; apart from the standards, which weigh more.
import { BANDS, type Band } from '../quantity/band.ts';

/** Grades as numbers: 0 is kindergarten. */
export type Grade = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12;

/** Grades of each band, the lowest first. */
export const GRADES_OF: Readonly<Record<Band, readonly Grade[]>> = Object.freeze({
  'k-2': [0, 1, 2],
  '3-5': [3, 4, 5],
  '6-8': [6, 7, 8],
  '9-12': [9, 10, 11, 12],
});

/** All grades, the youngest first. */
export const GRADES: readonly Grade[] = Object.freeze(Object.values(GRADES_OF).flat());

/**
 * A grade as it is written in addresses: `K`, `1` … `12`.
 * @example gradeSign(0) // => 'K'
 */
export function gradeSign(grade: Grade): string {
  return grade === 0 ? 'K' : String(grade);
}

/**
 * The grade that a text means, or null.
 * @example gradeOf('k') // => 0
 * @example gradeOf('13') // => null
 */
export function gradeOf(text: string): Grade | null {
  const plain = text.trim().toUpperCase();
  return GRADES.find((one) => gradeSign(one) === plain) ?? null;
}

/** The band that a grade belongs to. */
export function bandOfGrade(grade: Grade): Band {
  return BANDS.find((band) => GRADES_OF[band].includes(grade)) as Band;
}

/** The oldest grade of a band: its sheets without a grade named are for all up to it. */
export function topGrade(band: Band): Grade {
  return GRADES_OF[band].at(-1) as Grade;
}

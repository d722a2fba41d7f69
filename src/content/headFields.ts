// The fields that heads of sheets and of lessons are made of, and what is wrong with a standard that they name.
import * as z from 'zod';
import type { Band } from '../../shared/quantity/grade.ts';
import { firstGrade, STANDARDS, topGrade } from '../../shared/tasks/standards.ts';
import { nearestName } from '../farm/nearest.ts';

/** A text that is not empty. */
export const text = z.string('write something here').trim().min(1, 'write something here');

/** One of a few names. */
export const oneOf = <T extends string>(names: readonly T[]) =>
  z.enum(names as unknown as [T, ...T[]], `one of ${names.join(', ')} stands here`);

/** A whole number within bounds. */
export function wholeNumber(least: number, most: number) {
  const told = `a whole number from ${least} to ${most} stands here`;
  return z.number(told).int(told).min(least, told).max(most, told);
}

/** What is wrong with a standard that a head of a band names, or null. */
export function standardFault(code: string, band: Band): string | null {
  if (!Object.hasOwn(STANDARDS, code)) {
    const near = nearestName(code, Object.keys(STANDARDS));
    return `there is no standard "${code}" in our list${near ? `; did you mean "${near}"?` : '; the page of standards shows all.'}`;
  }
  if (firstGrade(code) <= topGrade(band)) return null;
  return `the standard "${code}" is for older children than ${band}; take it out or choose one of the band.`;
}

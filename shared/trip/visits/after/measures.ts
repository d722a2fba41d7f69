// What a class can bring home as numbers of its own: of each doe, or of one thing measured by many.
import type { UnitSystem } from '../../../herd/types.ts';
import type { SheetUnit } from '../../../quantity/grade.ts';
import type { Grade } from '../../../tasks/grades.ts';

/** What was measured. Nothing tells of a child: neither what somebody drank nor who did what. */
export const MEASURES = Object.freeze(['milk', 'hay', 'minutes', 'height', 'ears', 'barn'] as const);
/** One of them. */
export type Measure = (typeof MEASURES)[number];

/** Whether a number stands beside a doe's name, or is one of many of the same thing. */
export const MEASURED_BY: Readonly<Record<Measure, 'doe' | 'count'>> = Object.freeze({
  milk: 'doe',
  hay: 'doe',
  minutes: 'doe',
  height: 'count',
  ears: 'count',
  barn: 'count',
});

/** What a grade may measure: with rulers only from grade 2 on (2.MD.A.1). */
export function measuresFor(grade: Grade): Measure[] {
  return MEASURES.filter((one) => one !== 'ears' || grade >= FIRST_RULER);
}

const FIRST_RULER = 2;
const FIRST_LITERS = 3;

/** The unit of a measure: hand spans, strides and handfuls need no ruler, so that the youngest can do it. */
export function measureUnit(measure: Measure, units: UnitSystem, grade: Grade): SheetUnit {
  const plain = { hay: 'handful', minutes: 'minute', height: 'hand-span', barn: 'stride' } as const;
  if (measure === 'milk') return units === 'us' || grade < FIRST_LITERS ? 'cup' : 'L';
  if (measure === 'ears') return units === 'us' ? 'in' : 'cm';
  return plain[measure];
}

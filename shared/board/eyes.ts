// Why are the pupils oblong? Told by how much of the circle around her a goat sees at once.
import type { Answer } from './types.ts';

/** A full circle, in degrees and in the slices of a clock. */
const CIRCLE = Object.freeze({ deg: 360, slices: 12 });
/**
 * Field of view of a goat in degrees. Fact `slit-pupil`, and `goat-view-unmeasured`: many pages repeat it, and
 * none that we saw says how it was measured.
 */
export const GOAT_VIEW_DEG = Object.freeze({ least: 320, most: 340 });
/** Field of view of a person with both eyes, in degrees; fact `person-view`. */
export const PERSON_VIEW_DEG = 200;

/** Slices of a clock in an angle, to the nearest one. */
export function slicesOf(angle_deg: number): number {
  return Math.round((angle_deg / CIRCLE.deg) * CIRCLE.slices);
}

/** The slices of a clock that a goat sees at once: the middle of the range that is told. The same for every herd. */
export function eyes(): Answer {
  const { least, most } = GOAT_VIEW_DEG;
  const middle = (least + most) / 2;
  const n = slicesOf(middle);
  const person = slicesOf(PERSON_VIEW_DEG);
  const slice_deg = CIRCLE.deg / CIRCLE.slices;
  return {
    name: 'eyes',
    missing: false,
    live: false,
    face: null,
    number: String(n),
    slots: {
      n,
      all: CIRCLE.slices,
      full: CIRCLE.deg,
      least,
      most,
      behind: CIRCLE.deg - most,
      hidden: CIRCLE.deg - least,
      person: PERSON_VIEW_DEG,
    },
    variants: {},
    concrete: person,
    picture: {
      kind: 'goats',
      goats: {
        what: 'view',
        least_deg: least,
        most_deg: most,
        person_deg: PERSON_VIEW_DEG,
        slices: CIRCLE.slices,
        seen: n,
        personSeen: person,
      },
    },
    proof: {
      figure: null,
      steps: [
        { label: '', key: 'slice', sum: `${CIRCLE.deg} ÷ ${CIRCLE.slices} = ${slice_deg}` },
        { label: '', key: 'viewMiddle', sum: `(${least} + ${most}) ÷ 2 = ${middle}` },
        { label: '', key: 'goatSlices', sum: `${middle} ÷ ${slice_deg} ≈ ${n}` },
        { label: '', key: 'personSlices', sum: `${PERSON_VIEW_DEG} ÷ ${slice_deg} ≈ ${person}` },
      ],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['slit-pupil', 'goat-view-unmeasured', 'eyes-roll-level', 'person-view'],
      table: null,
    },
  };
}

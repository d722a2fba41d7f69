// What has to be at hand for a class of so many children.
import type { Material } from './types.ts';

/** A thing and how many of it, rounded up to whole ones. */
export interface Needed {
  readonly material: Material;
  readonly count: number;
}

/**
 * How many of each material a class of `children` (a whole number, 0 or more) needs. A thing that is named more than
 * once, as by two lessons, is needed once: the larger number serves both. In the order in which they are named.
 */
export function materialsFor(materials: readonly Material[], children: number): Needed[] {
  const needed = new Map<string, Needed>();
  for (const material of materials) {
    const count = countOf(material, children);
    const name = material.what.trim().toLowerCase();
    const known = needed.get(name);
    if (!known || known.count < count) needed.set(name, { material, count });
  }
  return [...needed.values()];
}

function countOf({ count, per, groupOf }: Material, children: number): number {
  if (per === 'class') return count;
  if (per === 'child') return count * children;
  return count * Math.ceil(children / (groupOf ?? 1));
}

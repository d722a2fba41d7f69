// How many jars a milking fills: doe by doe, or as one mix of what is kept.
import { jarRow } from '../drawing/jarRow.ts';
import type { Use } from '../herd/types.ts';

/** One doe's milk of a milking, as far as its jars care. */
export interface PouredMilk {
  /** Her id; null where somebody typed a label by hand. */
  readonly doe: string | null;
  readonly name: string;
  readonly volume_mL: number;
  readonly use: Use;
}

/** What a jar is for: the kitchen, nobody, or the goat's kids. */
export type JarUse = Exclude<Use, 'lost'>;

/** A jar that wants a label. */
export interface Jar {
  /** The same for the same jar of the same milking: `kept:juniper:1`, `kept:mix:2`. */
  readonly key: string;
  /** Whose milk it is: one doe's, or a mix of several. */
  readonly of: 'doe' | 'mix';
  readonly doe: string | null;
  /** Names of the does in it, in the order of the book. */
  readonly names: readonly string[];
  readonly use: JarUse;
  readonly volume_mL: number;
  /** Share of the jar's full line, 0..1. */
  readonly fill: number;
  /** This jar's number, from 1, and how many there are of this milk. */
  readonly nth: number;
  readonly count: number;
}

/** How jars are filled. */
export interface Pouring {
  readonly way: 'doe' | 'mix';
  /** The jar's full line, mL. */
  readonly jar_mL: number;
  /** Whether milk for the goat's kids stands in jars, too. */
  readonly kids: boolean;
}

/**
 * The jars of a milking. Withheld milk is never poured together with any other, whatever the way: each doe's stands apart.
 * What was lost has no jar, and milk for the kids only where it is asked for. No milk, no jar.
 */
export function jarsOf(milk: readonly PouredMilk[], { way, jar_mL, kids }: Pouring): Jar[] {
  const poured = milk.filter((one) => one.volume_mL > 0);
  const of = (use: Use) => poured.filter((one) => one.use === use);
  const alone = (all: readonly PouredMilk[]) => all.flatMap((one, index) => jars([one], index, jar_mL));
  const together = (all: readonly PouredMilk[]) => (all.length > 0 ? jars(all, 0, jar_mL) : []);
  return [
    ...(way === 'mix' ? together(of('kept')) : alone(of('kept'))),
    ...alone(of('withheld')),
    ...(kids ? (way === 'mix' ? together(of('fed')) : alone(of('fed'))) : []),
  ];
}

function jars(milk: readonly PouredMilk[], index: number, jar_mL: number): Jar[] {
  const [first] = milk;
  if (!first || first.use === 'lost') return [];
  const { use } = first;
  const of = milk.length > 1 ? 'mix' : 'doe';
  const fills = jarRow(
    milk.reduce((sum, one) => sum + one.volume_mL, 0),
    jar_mL,
  );
  const stem = of === 'mix' ? 'mix' : (first.doe ?? `typed-${index + 1}`);
  return fills.map((fill, place) => ({
    key: `${use}:${stem}:${place + 1}`,
    of,
    doe: of === 'mix' ? null : first.doe,
    names: milk.map(({ name }) => name),
    use,
    volume_mL: fill * jar_mL,
    fill,
    nth: place + 1,
    count: fills.length,
  }));
}

// Points about a known Wood curve, with seeded noise, for tests and measurements of the fit.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Curve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Numbers of a standard normal distribution, by Box and Muller. */
export function normals(seed: number): () => number {
  // Neighbouring small seeds begin much alike: they are spread first, and the first draws thrown away.
  const chance = xoroshiro128plus(Math.imul(seed, 0x9e3779b1));
  for (let draw = 0; draw < 20; draw += 1) uniformFloat64(chance);
  return () => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniformFloat64(chance)));
    return radius * Math.cos(2 * Math.PI * uniformFloat64(chance));
  };
}

/** The curve's points on days `from` to `to`, each off by a normal error of spread `sd`, none below 0. */
export function woodPoints(
  { a, b, c }: Curve,
  from: number,
  to: number,
  sd = 0,
  seed = 1,
): { t: number; y: number }[] {
  const normal = normals(seed);
  return Array.from({ length: to - from + 1 }, (_, index) => {
    const t = from + index;
    const error = sd === 0 ? 0 : sd * normal();
    return { t, y: Math.max(0, a * t ** b * Math.exp(-c * t) + error) };
  });
}

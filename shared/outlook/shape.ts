// One common shape of a lactation, and how far a doe's own may lie from it.

/** Day in milk at which a doe's level is anchored: about where the shape stands at its top. */
export const ANCHOR_DAYS = 45;
/** Days in milk of a usual lactation. Source: 305 days standard; house goats 240 to 305. */
export const USUAL_DAYS = 305;

/**
 * Exponents of Wood's curve, y = a t^b e^(-ct), t in days. Breed hardly changes the shape (Gipson and
 * Grossman 1989, 18,693 US does), so one serves for all. Its top, b/c, stands on day 35: the fifth week
 * (Peris et al. 1997, Murciano-Granadina, fourth to fifth week). How steep it is has no source for goats:
 * with these values half a year after the top a third of the milk has gone, which is common practice.
 * The spreads are wide, so that a few weeks of her own milk outweigh them.
 */
export const COMMON_SHAPE = Object.freeze({ b: 0.105, c: 0.003, sd_b: 0.07, sd_c: 0.0018, together: 0.4 });

/** From this day on no projection rises: no source has the top of a first rise later (goats: day 30 to 60). */
const LAST_RISE_DAYS = 120;

/** What b and c are multiplied by in the logarithm of the curve, against its value at the anchor. */
export function shapeAt(daysInMilk: number): { b: number; c: number } {
  const t = Math.max(daysInMilk, 1);
  return { b: Math.log(t / ANCHOR_DAYS), c: -(t - ANCHOR_DAYS) };
}

/**
 * Natural logarithm of how many times the level of day `from` the curve stands at on day `to`. A curve
 * bent upwards by odd data would grow for ever: after day 120 it may fall or stay, not rise.
 */
export function shapeStep(b: number, c: number, from: number, to: number): number {
  const between = (start: number, end: number) => {
    const [one, two] = [shapeAt(start), shapeAt(end)];
    return b * (two.b - one.b) + c * (two.c - one.c);
  };
  if (to <= LAST_RISE_DAYS) return between(from, to);
  const turn = Math.max(from, LAST_RISE_DAYS);
  return between(from, turn) + Math.min(between(turn, to), 0);
}

/** Milk at the anchor, L a day, of a doe on the common shape that gives `year_L` in a usual lactation. */
export function anchorLevel(year_L: number): number {
  let days = 0;
  for (let t = 1; t <= USUAL_DAYS; t += 1) {
    const at = shapeAt(t);
    days += Math.exp(COMMON_SHAPE.b * at.b + COMMON_SHAPE.c * at.c);
  }
  return year_L / days;
}

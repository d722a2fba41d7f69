// Ice cream: mix with air in it.

/**
 * Air in ice cream, as a part of the mix: (ice cream − mix) ÷ mix, both by volume; null without mix, or
 * where there is less ice cream than mix.
 * @example overrun(1, 1.5) // => 0.5
 */
export function overrun(mix_L: number, iceCream_L: number): number | null {
  return mix_L > 0 && iceCream_L >= mix_L ? iceCream_L / mix_L - 1 : null;
}

/** Mix from a litre of milk with sugar and yolks, L. Common practice, no source. */
export const MIX_PER_MILK = 1.2;
/** Air that a hand-turned machine adds, as a part of the mix. Common practice, no source. */
export const HAND_OVERRUN = Object.freeze({ low: 0.2, high: 0.5 });
/** Milk fat that US trade asks of ice cream, %; goat's milk alone has less. Source: 21 CFR 135 (from memory). */
export const ICE_CREAM_FAT_PCT = 10;

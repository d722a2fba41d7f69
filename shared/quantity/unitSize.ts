// The units of the milk book in millilitres as plain numbers: for pages that show milk and never add it up.
import type { AmountUnit } from './units.ts';

/**
 * Millilitres in one of each unit, each the nearest double to the exact number of `UNIT_ML`, which a test holds it to.
 * Exact arithmetic would be the heaviest part of a page of the board that needs none.
 * Source: NIST Handbook 44, Appendix C; weights at 1.03 kg/L.
 */
export const UNIT_SIZE_mL: Readonly<Record<AmountUnit, number>> = Object.freeze({
  'fl oz': 29.5735295625,
  cup: 236.5882365,
  pt: 473.176473,
  qt: 946.352946,
  gal: 3785.411784,
  mL: 1,
  L: 1000,
  g: 0.970873786407767,
  kg: 970.8737864077669,
  oz: 27.5238088592233,
  lb: 440.3809417475728,
});

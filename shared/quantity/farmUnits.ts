// Volumes and weights of what is made and eaten, in the units that the farm's pages show.
import type { UnitSystem } from '../herd/types.ts';
import { UNIT_ML } from './units.ts';

/** Units for what is made, drunk and eaten; cups are for milk as it is milked. */
export type GoodsUnit = 'qt' | 'L' | 'lb' | 'kg';

/** A range in one of those units. */
export interface Goods {
  readonly low: number;
  readonly high: number;
  readonly unit: GoodsUnit;
}

const QUART_L = UNIT_ML.qt.valueOf() / 1000;
const POUND_KG = 0.45359237;

/**
 * A range of litres or kilograms as the farm tells it: quarts and pounds, or left as it is.
 * @example inFarmUnits({ low: 0.45359237, high: 0.90718474 }, 'kg', 'us') // => { low: 1, high: 2, unit: 'lb' }
 */
export function inFarmUnits(
  range: { readonly low: number; readonly high: number },
  unit: 'L' | 'kg',
  units: UnitSystem,
): Goods {
  if (units === 'metric') return { low: range.low, high: range.high, unit };
  const [size, told] = unit === 'L' ? ([QUART_L, 'qt'] as const) : ([POUND_KG, 'lb'] as const);
  return { low: range.low / size, high: range.high / size, unit: told };
}

/**
 * A volume of milk in the unit that the farm counts a day's milk in.
 * @example inVolumes(2, 'metric') // => { value: 2, unit: 'L' }
 */
export function inVolumes(volume_L: number, units: UnitSystem): { value: number; unit: 'cup' | 'L' } {
  return units === 'metric'
    ? { value: volume_L, unit: 'L' }
    : { value: (volume_L * 1000) / UNIT_ML.cup.valueOf(), unit: 'cup' };
}

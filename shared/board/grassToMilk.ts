// How does grass become milk? Told by the blood that carries it to the udder.
import { decimalText } from '../quantity/show.ts';
import { middleDoe } from './howMuch.ts';
import { dayAmount } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/**
 * Blood through the udder for as much milk. `told` is the lower of the textbooks' 400 to 500 (Linzell; from memory).
 * `veinFlow_mLPerMin` was measured in one of the two milk veins of a goat of `milk_mL` a day (Christensen and others
 * 1989, Comparative Biochemistry and Physiology), `cow` in cows (Journal of Animal Science 1979).
 */
export const BLOOD = Object.freeze({
  told: 400,
  upTo: 500,
  veinFlow_mLPerMin: 675,
  milk_mL: 3400,
  cow: 507,
});
/** Hours a day that a doe in milk chews cud, of an Alpine's 310 minutes. Source: LeShure and others 2016, Journal of Animal Science. */
export const CUD_HOURS = 5;
/** Hours until what is left of forage leaves a goat, of 38.7 to 41.1. Source: Hadjigeorgiou and others 2003 (abstract). */
export const THROUGH_HOURS = 40;
const MINUTES_A_DAY = 1440;

/**
 * Blood for as much milk that the measured goat stands for, by one vein and by both: the truth lies between.
 * @example Math.round(measuredBlood().oneVein) // => 286
 */
export function measuredBlood(): { oneVein: number; bothVeins: number } {
  const oneVein = (BLOOD.veinFlow_mLPerMin * MINUTES_A_DAY) / BLOOD.milk_mL;
  return { oneVein, bothVeins: 2 * oneVein };
}

/** Measures of blood for one of milk; and for the doe in the middle, her day's milk times that. */
export function grassToMilk(input: BoardInput): Answer {
  const { lang } = input;
  const middle = middleDoe(input);
  const { n: milk, text: milkText } = middle ? dayAmount(input, middle.mean_mL) : { n: 0, text: '' };
  const blood = Math.round(milk * BLOOD.told);
  const whole = (value: number) => decimalText(value, 0, lang);
  const { oneVein, bothVeins } = measuredBlood();
  const { veinFlow_mLPerMin: flow, milk_mL } = BLOOD;
  return {
    name: 'grass-to-milk',
    missing: false,
    live: blood > 0,
    face: null,
    number: String(BLOOD.told),
    slots: {
      n: BLOOD.told,
      upTo: BLOOD.upTo,
      cud: CUD_HOURS,
      hours: THROUGH_HOURS,
      least: whole(oneVein),
      most: whole(bothVeins),
      name: middle?.doe.name ?? '',
      milk: milkText,
      blood: whole(blood),
    },
    variants: { unit: input.units, concrete: blood > 0 ? input.units : 'none' },
    concrete: blood,
    picture: {
      kind: 'food',
      food: { kind: 'grass', blood: BLOOD.told, unit: input.units === 'us' ? 'cup' : 'L', cud_h: CUD_HOURS },
    },
    proof: {
      figure: middle ? `doe.${middle.doe.id}.week.dailyMean` : null,
      steps: [
        { label: '', key: 'grass.books', sum: `${BLOOD.told}–${BLOOD.upTo}` },
        {
          label: '',
          key: 'grass.oneVein',
          sum: `${flow} mL × ${whole(MINUTES_A_DAY)} ÷ ${whole(milk_mL)} mL ≈ ${whole(oneVein)}`,
        },
        { label: '', key: 'grass.bothVeins', sum: `2 × ${whole(oneVein)} = ${whole(bothVeins)}` },
        { label: '', key: 'grass.cow', sum: String(BLOOD.cow) },
        ...(middle ? [{ label: middle.doe.name, sum: `${milkText} × ${BLOOD.told} = ${whole(blood)}` }] : []),
      ],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['blood-for-milk', 'cud-hours', 'through-a-goat', 'rumen-beats', 'rumen-holds'],
      table: null,
    },
  };
}

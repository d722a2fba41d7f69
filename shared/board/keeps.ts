// How long does milk keep? By the careful rule for each kind, and as a date from the last day of milk.
import { dayNumber, isoDate } from '../calendar/day.ts';
import { FREEZER_C, FRIDGE_C, useBy, type KeptKind } from '../milk/keeping.ts';
import { dateText } from '../quantity/show.ts';
import { dayOf } from './herdOn.ts';
import type { KeptDays } from './kitchenPicture.ts';
import type { Answer, BoardInput } from './types.ts';

/** Hours that food which spoils may stand warm. Source: US Food and Drug Administration (fact `two-hour-rule`). */
export const WARM_H = 2;
const SHOWN = ['raw milk', 'pasteurized milk', 'yogurt', 'cut hard cheese'] as const;
const FACTS = ['raw-waits', 'milk-keeps', 'yogurt-keeps', 'hard-cheese-keeps', 'frozen-keeps'];

/** A temperature of the cold as the farm's pages tell it: the printed pair of 40 °F and 4 °C. */
export function fridgeText({ units }: Pick<BoardInput, 'units'>): string {
  return units === 'us' ? '40\u00a0°F' : '4\u00a0°C';
}

/** Days that pasteurized milk keeps in the cold, beside other kinds; a date where the book has a day of milk. */
export function keeps(input: BoardInput): Answer {
  const { week, lang } = input;
  const days = keptDays('pasteurized milk', FRIDGE_C);
  const made = dayNumber(week.window?.to ?? '');
  // In winter the last milk is past its date, and none is told.
  const until = made === null || made + days < dayOf(input) ? null : made + days;
  const dated = (day: number | null) => (day === null ? '' : dateText(isoDate(day), lang, 'day'));
  return {
    name: 'keeps',
    missing: false,
    live: false,
    face: null,
    number: String(days),
    slots: {
      n: days,
      fridge: fridgeText(input),
      raw: keptDays('raw milk', FRIDGE_C),
      cheese: keptDays('cut hard cheese', FRIDGE_C),
      frozen: keptDays('frozen milk', FREEZER_C),
      hours: WARM_H,
      made: dated(made),
      until: dated(until),
    },
    variants: { concrete: until === null ? 'plain' : 'dated' },
    concrete: days,
    picture: {
      kind: 'kitchen',
      kitchen: {
        of: 'days-kept',
        rows: SHOWN.map((kind) => ({ key: keyOf(kind), days: keptDays(kind, FRIDGE_C) })),
      },
    },
    proof: {
      figure: null,
      steps: [
        ...SHOWN.map((kind) => ({
          label: '',
          key: `keeps.${keyOf(kind)}`,
          sum: String(keptDays(kind, FRIDGE_C)),
        })),
        ...(until === null
          ? []
          : [{ label: '', key: 'keeps.date', sum: `${dated(made)} + ${days} = ${dated(until)}` }]),
      ],
      columns: [],
      rows: [],
      missing: 0,
      facts: [...FACTS, 'two-hour-rule', 'smell-tells-little'],
      table: null,
    },
  };
}

function keptDays(kind: KeptKind, kept_C: number): number {
  const rule = useBy(kind, 0, kept_C);
  if (!rule.ok) throw new Error(`The rule for ${kind} does not hold at ${kept_C} °C.`);
  return rule.days;
}

function keyOf(kind: (typeof SHOWN)[number]): KeptDays['key'] {
  const keys = { 'raw milk': 'raw', 'pasteurized milk': 'milk', yogurt: 'yogurt', 'cut hard cheese': 'cheese' } as const; // prettier-ignore
  return keys[kind];
}

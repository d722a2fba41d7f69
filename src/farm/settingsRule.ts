// The shape of farm.yaml, field by field, each with the sentence that its writer needs.
import * as z from 'zod';
import { dayNumber } from '../../shared/calendar/day.ts';
import { AMOUNT_UNITS, unitNamed, type AmountUnit, type VolumeUnit } from '../../shared/quantity/units.ts';
import { LABEL_WORDS, labelsRule } from './labelsRule.ts';
import { STATION_WORDS, stationsRule } from './stationsRule.ts';
import { contactRule, tapsRule, TRIP_WORDS, visitsRule } from './tripRule.ts';

/** The file of the farm's settings. */
export const SETTINGS_FILE = 'farm.yaml';

/** Sections that other parts read; this reader lets them stand as they are. */
export const OTHER_SECTIONS = ['lessons', 'sheets', 'feed', 'land'] as const;

const WEIGHTS: readonly AmountUnit[] = ['lb', 'oz', 'kg', 'g'];
const VOLUMES = AMOUNT_UNITS.filter((unit): unit is VolumeUnit => !WEIGHTS.includes(unit));
const CLOCK = /^([01]?\d|2[0-3]):[0-5]\d$/;
const LANGUAGE = /^[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/;

const unit = z.string().transform((text, context) => {
  const named = unitNamed(text);
  if (named) return named;
  context.issues.push({ code: 'custom', input: text, message: 'no unit' });
  return z.NEVER;
});
const volume = unit.refine((named): named is VolumeUnit => !WEIGHTS.includes(named));
const clock = z
  .string()
  .regex(CLOCK)
  .transform((text) => text.padStart(5, '0'));

/** The time zone's name, where it is one of the zone database's. */
export function isTimeZone(name: string): boolean {
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** Every field of farm.yaml that this reader knows. */
export const settingsRule = z.strictObject({
  name: z.string().trim().min(1),
  timeZone: z.string().refine(isTimeZone),
  units: z
    .string()
    .toLowerCase()
    .pipe(z.enum(['us', 'metric'])),
  recordUnit: unit,
  languages: z
    .array(z.string().regex(LANGUAGE))
    .min(1)
    .refine((all) => new Set(all).size === all.length)
    .optional(),
  milkings: z
    .strictObject({ am: clock, pm: clock })
    .refine(({ am, pm }) => !CLOCK.test(am) || !CLOCK.test(pm) || am < pm),
  jar: z.strictObject({ size: z.number().positive(), unit: volume }).optional(),
  largestMilking: z.strictObject({ amount: z.number().positive(), unit }).optional(),
  board: z
    .strictObject({
      screen: z.strictObject({
        diagonal: z.number().positive(),
        unit: z
          .string()
          .toLowerCase()
          .pipe(z.enum(['in', 'cm'])),
      }),
    })
    .optional(),
  labels: labelsRule.optional(),
  stations: stationsRule.optional(),
  taps: tapsRule.optional(),
  visits: visitsRule.optional(),
  contact: contactRule.optional(),
  backups: z.string().trim().min(1).optional(),
  asOf: z
    .string()
    .refine((text) => dayNumber(text) !== null)
    .optional(),
  ...(Object.fromEntries(OTHER_SECTIONS.map((name) => [name, z.unknown().optional()])) as Record<
    (typeof OTHER_SECTIONS)[number],
    z.ZodOptional<z.ZodUnknown>
  >),
});

/** What farm.yaml says, once its shape is right. */
export type Settings = z.output<typeof settingsRule>;

/** What a field must hold, in words. */
export interface FieldWords {
  readonly expected: string;
  readonly todo: string;
  readonly names?: () => readonly string[];
}

const unitWords: FieldWords = {
  expected: `one of ${AMOUNT_UNITS.join(', ')}`,
  todo: 'write one of these',
  names: () => AMOUNT_UNITS,
};
const clockWords: FieldWords = {
  expected: "a clock time from '00:00' to '23:59'",
  todo: "write hours and minutes, for instance '06:30' or '17:30'",
};
const sizeWords: FieldWords = {
  expected: 'a number above 0',
  todo: 'write the number alone, with a point for decimals; the unit has its own place',
};

/** The words for each field, by its path with points between. */
export const FIELD_WORDS: Readonly<Record<string, FieldWords>> = {
  name: { expected: "the farm's name", todo: 'write it after "name:"; put it in quotes if it is a number' },
  timeZone: {
    expected: 'a time zone written Continent/City, for instance America/Chicago',
    todo: 'name the city whose clock the farm goes by',
    names: () => Intl.supportedValuesOf('timeZone'),
  },
  units: { expected: 'us or metric', todo: 'write one of the two', names: () => ['us', 'metric'] },
  recordUnit: unitWords,
  languages: {
    expected: 'a list of languages, each once, for instance [en, es]',
    todo: 'write them in square brackets',
  },
  milkings: {
    expected:
      "two clock times, the morning's before the evening's, for instance { am: '06:30', pm: '17:30' }",
    todo: 'write both times',
  },
  'milkings.am': clockWords,
  'milkings.pm': clockWords,
  jar: { expected: 'a size and a unit, for instance { size: 1, unit: qt }', todo: 'write both' },
  'jar.size': sizeWords,
  'jar.unit': {
    expected: `a unit of volume: one of ${VOLUMES.join(', ')}`,
    todo: 'write one of these',
    names: () => VOLUMES,
  },
  largestMilking: {
    expected: 'an amount and a unit, for instance { amount: 24, unit: cup }',
    todo: 'write both, or take the line out (10 L is then the largest)',
  },
  board: {
    expected: "the barn's screen, for instance { screen: { diagonal: 21.5, unit: in } }",
    todo: 'measure the glass from corner to corner',
  },
  'board.screen': {
    expected: "the screen's diagonal, for instance { diagonal: 21.5, unit: in }",
    todo: 'measure the glass from corner to corner',
  },
  'board.screen.diagonal': sizeWords,
  'board.screen.unit': { expected: 'in or cm', todo: 'write one of the two', names: () => ['in', 'cm'] },
  ...LABEL_WORDS,
  ...STATION_WORDS,
  ...TRIP_WORDS,
  'largestMilking.amount': sizeWords,
  'largestMilking.unit': unitWords,
  backups: {
    expected: 'the folder for the daily copies of the farm folder, for instance /media/farm/stick',
    todo: 'write its path, or take the line out: the copies then stay beside the site',
  },
  asOf: {
    expected: 'a date as YYYY-MM-DD that exists',
    todo: "write it so, for instance '2026-05-21', or take the line out: today is then today",
  },
};

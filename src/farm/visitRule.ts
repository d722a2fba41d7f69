// The shape of a visit's file, field by field, each with the sentence that its writer needs.
import * as z from 'zod';
import { dayNumber } from '../../shared/calendar/day.ts';
import { readClock } from '../../shared/lesson/clock.ts';
import { isClassWord } from '../../shared/pack/order.ts';
import { gradeOf } from '../../shared/tasks/standards.ts';
import { MOST } from '../../shared/trip/tripQuery.ts';
import { NEEDS } from '../../shared/trip/types.ts';
import { VISIT_STATES } from '../../shared/trip/visitTypes.ts';
import type { FieldWords } from './settingsRule.ts';
import { yesOrNo } from './yesOrNo.ts';

/** Reads a text or a number with `read`; what it gives null for is a fault. */
const readWith = <T>(read: (text: string) => T | null) =>
  z.union([z.string(), z.number()]).transform((value, context) => {
    const result = read(String(value).trim());
    if (result !== null) return result;
    context.issues.push({ code: 'custom', input: value, message: 'not this' });
    return z.NEVER;
  });

const clock = readWith(readClock);
const plainText = z.union([z.string(), z.number()]).transform((value) => String(value).trim());
const whole = (least: number, most: number) => z.number().int().min(least).max(most);
const lunch = z
  .union([z.literal(false), z.string().toLowerCase().pipe(z.literal('no')).transform(() => false as const), clock])
  .transform((value) => (value === false ? null : value)); // prettier-ignore

// A rule of several fields holds also beside faults in others.
const areTimes =
  (...names: readonly string[]) =>
  ({ value }: { value: unknown }) =>
    names.every((name) => typeof (value as Record<string, unknown>)[name] === 'number');

/** The rule of a visit's file; `stations` are the farm's, null where it is not sure which there are. */
export function visitRule(stations: readonly string[] | null) {
  return z
    .strictObject({
      school: plainText.refine((text) => text !== ''),
      state: z.string().trim().toLowerCase().pipe(z.enum(VISIT_STATES)),
      date: z.string().refine((text) => dayNumber(text) !== null),
      grade: readWith(gradeOf),
      children: whole(1, MOST.children),
      adults: whole(0, MOST.adults),
      arrive: clock,
      leave: clock,
      buses: whole(0, MOST.buses).optional(),
      lunch: lunch.optional(),
      stations: z.array(z.string().refine((id) => stations?.includes(id) ?? true)).optional(),
      needs: z.array(z.enum(NEEDS)).optional(),
      rain: yesOrNo.optional(),
      word: plainText.refine((text) => text === '' || isClassWord(text)).optional(),
      note: plainText.optional(),
    })
    .refine(({ arrive, leave }) => leave > arrive, { path: ['leave'], when: areTimes('arrive', 'leave') })
    .refine(({ arrive, leave, lunch: food }) => Number(food) >= arrive && Number(food) < leave, {
      path: ['lunch'],
      when: areTimes('arrive', 'leave', 'lunch'),
    });
}

/** What a visit's file says, once its shape is right. */
export type VisitFields = z.output<ReturnType<typeof visitRule>>;

const clockWords = (what: string): FieldWords => ({
  expected: `${what}, a clock time from '0:00' to '23:59'`,
  todo: "write hours and minutes, for instance '9:30'",
});

/** The words for each field of a visit. */
export function visitWords(stations: readonly string[] | null): Readonly<Record<string, FieldWords>> {
  return {
    school: { expected: 'the school, or a code for it', todo: 'write one of the two after "school:"' },
    state: {
      expected: `one of ${VISIT_STATES.join(', ')}`,
      todo: 'write how far the visit has come',
      names: () => VISIT_STATES,
    },
    date: { expected: 'a date as YYYY-MM-DD that exists', todo: 'write the day of the visit so' },
    grade: { expected: 'K, or a grade from 1 to 12', todo: "write the oldest grade that comes; K is kindergarten" },
    children: { expected: `a whole number from 1 to ${MOST.children}`, todo: 'write how many children come' },
    adults: {
      expected: `a whole number from 0 to ${MOST.adults}`,
      todo: 'write how many adults can lead a group; drivers and aides of one child are not counted',
    },
    arrive: clockWords('when the buses stand at the gate'),
    leave: clockWords('when the buses leave, which is after they have come'),
    buses: { expected: `a whole number from 0 to ${MOST.buses}`, todo: 'write how many buses come' },
    lunch: {
      expected: 'the earliest time of food, between coming and leaving, or "no" where nobody eats on the farm',
      todo: "write for instance '11:45', or no",
    },
    stations: {
      expected: stations === null ? 'a list of the farm\'s stations' : `a list out of ${stations.join(', ')}`,
      todo: 'write their names in square brackets, or take the line out: the farm then chooses',
      names: () => stations ?? [],
    },
    needs: {
      expected: `a list out of ${NEEDS.join(', ')}`,
      todo: 'write them in square brackets, for the whole group; no child is named or counted',
      names: () => NEEDS,
    },
    rain: { expected: 'yes or no', todo: 'write yes only where the day is planned under roofs', names: () => ['yes', 'no'] },
    word: { expected: 'one class word without spaces', todo: 'write the word that picks the numbers of the sheets, no name' },
    note: { expected: 'a text', todo: 'put it in quotes if it holds a colon' },
  }; // prettier-ignore
}

// The letter home: what a family needs to know and is asked. It is the same for every family, whatever a class has told us.
import { clockText } from '../../quantity/show.ts';
import { hasSlot } from './applies.ts';
import { dayText, teller } from './tell.ts';
import type { Words } from '../../words/words.ts';
import type { Passage, TripCase } from './types.ts';

/** A question that the school asks the family; answered by a tick, never by a name. */
export type HomeQuestion = 'allergy' | 'inhaler' | 'medicine' | 'photo';
/** All of them, in order. */
export const HOME_QUESTIONS: readonly HomeQuestion[] = Object.freeze([
  'allergy',
  'inhaler',
  'medicine',
  'photo',
]);

/** Languages that the letter home is always printed in: families read it, whatever languages a farm has. */
export const HOME_LANGUAGES: readonly string[] = Object.freeze(['en', 'es']);

/** The words of the letters home: those of the farm's own languages, then those that it has not, each language once. */
export function homeWords(own: readonly Words[], others: readonly Words[]): Words[] {
  return [...own, ...others.filter(({ lang }) => !own.some((one) => one.lang === lang))];
}

/** The passages of the letter home. */
export function homePassages(trip: TripCase, words: Words): Passage[] {
  const tell = teller(words);
  const { wish, farmName } = trip;
  const eats = hasSlot(trip, 'lunch');
  const at = (minutes: number): string => clockText(minutes, words.lang);
  const passage = (id: string, points: readonly string[], text: readonly string[] = []): Passage => ({
    id,
    title: tell(`home.${id}.title`),
    text,
    points: points.map((point) => tell(`home.${id}.${point}`)),
  });
  return [
    {
      id: 'when',
      title: '',
      text: [
        tell('home.when.visit', { farm: farmName, date: dayText(wish.date, words) }),
        tell('home.when.times', { arrive: at(wish.arrive), leave: at(wish.leave) }),
        tell(eats ? 'home.when.lunch' : 'home.when.no-lunch'),
      ],
      points: [],
    },
    passage('wear', ['shoes', 'clothes', 'coat']),
    passage('bring', eats ? ['food', 'drink', 'leave'] : ['leave']),
    passage('health', ['allergy', 'asthma', 'cuts', 'after']),
    passage('care', ['who', 'birth', 'doctor']),
    passage('rules', ['wash', 'food', 'milk', 'animals']),
  ];
}

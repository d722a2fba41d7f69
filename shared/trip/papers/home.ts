// The letter home: what a family needs to know and is asked. It is the same for every family, whatever a class has told us.
import { clockText } from '../../quantity/show.ts';
import { hasSlot } from './applies.ts';
import { dayText, teller } from './tell.ts';
import type { Passage, PaperTongue, TripCase } from './types.ts';

/** A question that the school asks the family; answered by a tick, never by a name. */
export type HomeQuestion = 'allergy' | 'inhaler' | 'medicine' | 'photo';
/** All of them, in order. */
export const HOME_QUESTIONS: readonly HomeQuestion[] = Object.freeze([
  'allergy',
  'inhaler',
  'medicine',
  'photo',
]);

/** The passages of the letter home. */
export function homePassages(trip: TripCase, { words }: PaperTongue): Passage[] {
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

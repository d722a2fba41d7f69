// Where each question stands on the board, and what there is to do beside it.

/** Every question of the board. */
export type QuestionName =
  | 'why-milk'
  | 'how-much'
  | 'whose-milk'
  | 'goat-and-cow'
  | 'flavor'
  | 'how-to-milk'
  | 'why-clean'
  | 'does-it-hurt'
  | 'udder'
  | 'which-goat'
  | 'how-old'
  | 'who-rests'
  | 'males'
  | 'eyes'
  | 'stroke'
  | 'where-kids'
  | 'twins'
  | 'likeness'
  | 'winter'
  | 'eats-and-drinks'
  | 'grass-to-milk'
  | 'stomachs'
  | 'cans'
  | 'land'
  | 'where-it-goes'
  | 'cheese'
  | 'keeps'
  | 'drink-here';

/** Every thing to do by tapping. */
export type ActivityName =
  | 'pour'
  | 'guess'
  | 'steps'
  | 'whose-kid'
  | 'grass'
  | 'year'
  | 'two-milks'
  | 'udder-parts'
  | 'cups'
  | 'squeeze'
  | 'wash'
  | 'menu'
  | 'faces';

/** The topics that the board's home leads to. */
export type TopicName = 'milk' | 'milking' | 'goats' | 'kids' | 'food' | 'kitchen';

/** Questions by topic, in the board's order. */
export const TOPICS: Readonly<Record<TopicName, readonly QuestionName[]>> = Object.freeze({
  milk: ['why-milk', 'how-much', 'whose-milk', 'goat-and-cow', 'flavor'],
  milking: ['how-to-milk', 'why-clean', 'does-it-hurt', 'udder'],
  goats: ['which-goat', 'how-old', 'who-rests', 'males', 'eyes', 'stroke'],
  kids: ['where-kids', 'twins', 'likeness', 'winter'],
  food: ['eats-and-drinks', 'grass-to-milk', 'stomachs', 'cans', 'land'],
  kitchen: ['where-it-goes', 'cheese', 'keeps', 'drink-here'],
});

/** The thing to do that goes with a question. */
export const TO_DO: Readonly<Record<QuestionName, ActivityName>> = Object.freeze({
  'why-milk': 'whose-kid',
  'how-much': 'pour',
  'whose-milk': 'guess',
  'goat-and-cow': 'two-milks',
  flavor: 'menu',
  'how-to-milk': 'steps',
  'why-clean': 'steps',
  'does-it-hurt': 'squeeze',
  udder: 'udder-parts',
  'which-goat': 'faces',
  'how-old': 'faces',
  'who-rests': 'year',
  males: 'whose-kid',
  eyes: 'faces',
  stroke: 'wash',
  'where-kids': 'whose-kid',
  twins: 'whose-kid',
  likeness: 'whose-kid',
  winter: 'year',
  'eats-and-drinks': 'menu',
  'grass-to-milk': 'grass',
  stomachs: 'grass',
  cans: 'menu',
  land: 'two-milks',
  'where-it-goes': 'cups',
  cheese: 'pour',
  keeps: 'cups',
  'drink-here': 'wash',
});

/** The topic of a question. */
export function topicOf(question: QuestionName): TopicName {
  const found = Object.entries(TOPICS).find(([, questions]) => questions.includes(question));
  if (!found) throw new Error(`No topic holds the question "${question}".`);
  return found[0] as TopicName;
}

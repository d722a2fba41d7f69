// The names that a lesson may use: what its steps are about, and what its cautions warn of.

/** Topics of a step, in the order in which they are offered. The words of each stand under `lesson.topic`. */
export const TOPICS: readonly string[] = Object.freeze([
  'milk',
  'kids',
  'body',
  'feed',
  'year',
  'herd',
  'numbers',
  'kitchen',
  'hands',
]);

/** Cautions of a lesson. The text of each stands under `lesson.caution`. */
export const CAUTIONS: readonly string[] = Object.freeze([
  'wash',
  'raw-milk',
  'allergy',
  'animals',
  'hot-milk',
  'lye',
  'birthing',
  'asthma',
  'tools',
]);

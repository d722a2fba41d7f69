// How large the words of a station's card are printed, so that the card keeps to one page.

/** Sizes from the largest; the style sheet says what each is. */
export type CardSize = 'large' | 'middle' | 'plain' | 'small';

// Measured on letter paper with the texts of content/stations: a card of this fill still has a few lines to spare.
const MOST: readonly (readonly [CardSize, number])[] = [
  ['large', 500],
  ['middle', 600],
  ['plain', 780],
];
// What is minded is printed smaller and over the whole width.
const MINDED_PART = 1 / 3;
const NOTE_letters = 60;

/** What fills a card, in letters of what is said. */
export function cardFill(said: readonly string[], minded: readonly string[], notes: number): number {
  return said.join('').length + minded.join('').length * MINDED_PART + notes * NOTE_letters;
}

/** The size for what is said and asked, what is minded, and the notes below a card's head. */
export function cardSize(said: readonly string[], minded: readonly string[], notes: number): CardSize {
  const fill = cardFill(said, minded, notes);
  return MOST.find(([, most]) => fill < most)?.[0] ?? 'small';
}

// What the strip cup showed, as a note of the milk book: put together from taps, and taken apart again.

/** What the first squirts or the udder may show. Signs to stop at, after common mastitis fact sheets (from memory). */
export const FINDINGS = Object.freeze([
  'clots',
  'watery',
  'blood',
  'colour',
  'hard',
  'hot',
  'sore',
  'unwell',
] as const);
/** The two halves of an udder; an infection may sit in one alone. */
export const HALVES = Object.freeze(['left', 'right'] as const);

/** One thing that the strip cup or the udder may show. */
export type Finding = (typeof FINDINGS)[number];
/** One half of the udder, as the milker sees it. */
export type Half = (typeof HALVES)[number];

/** A note in its parts. */
export interface StripNote {
  readonly findings: readonly Finding[];
  readonly halves: readonly Half[];
  /** What was written by hand. */
  readonly free: string;
}

/** The words of a note in the page's language, none of which holds a comma, a colon or a semicolon. */
export interface NoteWords {
  /** Such as `Strip cup`. */
  readonly title: string;
  readonly findings: Readonly<Record<Finding, string>>;
  readonly halves: Readonly<Record<Half, string>>;
}

/** Most characters of a note. */
export const LONGEST_NOTE = 200;
/** A note without anything in it. */
export const NO_NOTE: StripNote = Object.freeze({ findings: [], halves: [], free: '' });

/**
 * The note as it stands in the book, on one line and at most 200 characters; what was written by hand is cut first.
 * `Strip cup: clots, left half; off her feed since Sunday`.
 */
export function noteText({ findings, halves, free }: StripNote, words: NoteWords): string {
  const found = [
    ...FINDINGS.filter((one) => findings.includes(one)).map((one) => words.findings[one]),
    ...HALVES.filter((one) => halves.includes(one)).map((one) => words.halves[one]),
  ];
  const plain = free.replace(/\s+/g, ' ').trim();
  const parts = [found.length === 0 ? '' : `${words.title}: ${found.join(', ')}`, plain];
  return [...parts.filter((part) => part !== '').join('; ')].slice(0, LONGEST_NOTE).join('').trim();
}

/** A note in its parts again. Words of another language, or a person's own, are left as they were written. */
export function readNote(text: string, words: NoteWords): StripNote {
  const own = `${words.title}: `;
  if (!text.startsWith(own)) return { ...NO_NOTE, free: text };
  const [found = '', ...rest] = text.slice(own.length).split('; ');
  const told = found.split(', ');
  const findings = FINDINGS.filter((one) => told.includes(words.findings[one]));
  const halves = HALVES.filter((one) => told.includes(words.halves[one]));
  // A word that no block has would be lost by taking the note apart.
  if (findings.length + halves.length !== told.length) return { ...NO_NOTE, free: text };
  return { findings, halves, free: rest.join('; ') };
}

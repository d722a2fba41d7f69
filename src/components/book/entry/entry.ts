// What the page of the Milk book hands to the browser, and the parts of its pad.
import type { EntryDraft } from '../store/types.ts';
import type { Words } from '../../../../shared/words/words.ts';

/** Everything that the page is built from, as plain JSON. */
export interface EntryProps {
  readonly lang: string;
  /** The words under `book`. */
  readonly words: Words;
  /** The site's path with its last slash: the desk lies below it. */
  readonly base: string;
  readonly links: EntryLinks;
}

/** Addresses of other pages. */
export interface EntryLinks {
  readonly home: string;
  readonly labels: string;
  readonly herd: string;
  readonly month: string;
  readonly routine: string;
}

/** What the pad shows between the amount and its foot. */
export type PadPart = 'taps' | 'jars' | 'keys' | 'use' | 'strip';

/** What the pad asks before it puts an amount down. */
export type PadQuestion = 'less' | 'more' | 'too much' | 'treated' | 'strike' | 'not kept';

/** What the pad hands to the page: everything of a draft but the milking. */
export type PadDraft = Pick<EntryDraft, 'amount' | 'unit' | 'use' | 'note' | 'sure' | 'saw'>;

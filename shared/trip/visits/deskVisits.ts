// What the calendar's pages and the desk say to each other: visits on file, and one change at a time.
import type { DeskFault } from '../../book/deskState.ts';
import type { Visit, VisitState } from '../visitTypes.ts';

/** A visit and the mark of the file that it was read from. */
export interface FiledVisit {
  readonly visit: Visit;
  readonly mark: string;
}

/** `GET desk/visits`. */
export interface VisitsBook {
  /** By date and time. */
  readonly filed: readonly FiledVisit[];
  /** What keeps a visit from being read, in the coordinator's words. */
  readonly faults: readonly DeskFault[];
}

/** What a page asks for: a new file with a text, or another state in a file whose mark it saw. */
export type VisitPost =
  | { readonly kind: 'add'; readonly text: string }
  | { readonly kind: 'state'; readonly file: string; readonly state: VisitState; readonly saw: string };

/** The desk's answer. Where it is not `ok` nothing was written. */
export type VisitAnswer =
  | { readonly ok: true; readonly file: string; readonly book: VisitsBook }
  /** The file was changed or taken away meanwhile. */
  | { readonly ok: false; readonly why: 'changed'; readonly book: VisitsBook }
  | { readonly ok: false; readonly why: 'faulty'; readonly faults: readonly DeskFault[]; readonly book: VisitsBook } // prettier-ignore
  | { readonly ok: false; readonly why: 'malformed' }
  /** The disk did not take it; `code` is the system's own word. */
  | { readonly ok: false; readonly why: 'not written'; readonly code: string };
